"""What calls a sign off: denial, other people, jokes, fiction, the long past, another cause. Finds no sign itself."""

from typing import Final

from core.model.acts import Sign
from core.read.moods import is_other
from core.read.stream import Stream
from core.read.telling import BODY_KINDS, Told

_AGED: Final = 100
"""An age in years is below it."""


def dismissed(s: Stream, told: Told, sentence: tuple[int, int], sign: Sign) -> bool:
    """Whether what tells the sign is no report of the lifter's own body, now."""
    a, b = told.first, told.last
    first, last = sentence[0], max(sentence[1], b + 1)
    if denied(s, a, first) or (b != a and denied(s, b, max(first, a + 1), told.said, of_it=True)):
        return True
    near = range(max(first, a - 30), min(last, b + 30))
    if any(s.all[i].has("JOKE") or long_past(s, i) for i in near):
        return True
    return (
        _told_of(s, a, first, last, near)
        or _accounted_for(s, told, sign, first, last)
        or _figure(s, told, sign, last, near)
        or _someone_elses(s, a, b)
    )


def _told_of(s: Stream, a: int, first: int, last: int, near: range) -> bool:
    """Fiction, a quotation, a worry, a question asked of anyone."""
    if any(s.all[i].has("FICTION") for i in near) and not any(s.all[i].is_word("oneself") for i in range(first, last)):
        return True
    if any(
        s.all[i].has("QUOTED")
        and not s.all[i].is_word("loose quotes")
        and not any(s.all[k].is_word("oneself") for k in range(i, a))
        for i in range(max(first, a - 8), a)
    ):
        return True
    if any(s.all[i].has("WORRY") for i in range(max(first, a - 6), a)):
        return True
    return _of_others_in_general(s, first, last)


def _accounted_for(s: Stream, told: Told, sign: Sign, first: int, last: int) -> bool:
    """Whether something harmless in the sentence accounts for the sign."""
    a, b = told.first, told.last
    near = s.all[max(first, a - 30) : min(last, b + 30)]
    if any(one.has(*_OFF.get(sign, ())) for one in near):
        return True
    if sign == "head" and any(one.has("DRUNK") for one in near):
        return not any(s.all[i].has("HIT") for i in range(a, b + 1))
    if sign == "injury" and not told.said and _of_a_thing(s, first, last):
        return True
    if sign in ("heart", "breath"):
        return any(s.all[i].has("SETTLED") and not _negated(s, i, first) for i in range(first, last))
    return sign == "chest" and any(s.all[i].has("CUDDLE") for i in range(max(first, a - 4), a))


def _figure(s: Stream, told: Told, sign: Sign, last: int, near: range) -> bool:
    """Words of a sign that mean something else: legs that are only tired, lights or water that go dark."""
    a = told.first
    if s.all[a].is_word("cant feel my", "couldnt feel my") and a == told.last:
        follow = s.all[a + 1].text if a + 1 < last else ""
        return follow.endswith("s") and any(s.all[i].is_word("haha", "lol", "leg", "jelly") for i in near)
    if sign == "nerve" and any(s.all[i].is_word("laughter") for i in near) and _unfelt(s, a, told.last):
        return True
    if sign != "faint":
        return False
    if s.all[a].is_word("objected") and s.is_(a + 1, "ARTICLE") and s.all[a + 1].is_word("the", "my", "all the"):
        return s.all[s.skip(a + 2, "FILLER")].has("WORD", "KNOWN", "DAY", "WEEKDAY", "THING") if a + 2 < last else False
    if a and (s.all[a - 1].has("URINE") or s.all[a - 1].is_word("water", "toilet water")):
        return True
    return any(s.all[i].is_word("bed", "couch", "sofa") for i in near)


_WORKED: Final = frozenset(
    {"legs", "arms", "quads", "glutes", "calves", "abs", "lats", "pecs", "hamstrings", "thighs", "biceps"}
)


def _unfelt(s: Stream, a: int, b: int) -> bool:
    """'Cant feel my legs haha': both of what was trained, and laughed about; not a finger, and not one side."""
    told = range(a, min(b + 3, len(s)))
    unfelt = any(s.all[i].text.startswith(("cant feel", "couldnt feel")) for i in told)
    return unfelt and any(word in _WORKED for i in told for word in s.all[i].text.split(" "))


def _someone_elses(s: Stream, a: int, b: int) -> bool:
    """Whether the sign is another's, or its part of the body is."""
    if any(k > 0 and s.all[k - 1].is_word("my", "me") for k in (a, b)):
        return False
    if a < b and s.all[a].has("SELF") and is_other(s, a + 1):
        return theirs(s, b)  # the word for oneself only says whose brother it is
    return theirs(s, a) or any(
        s.all[i].has("OTHER") and s.all[i].is_word("his", "her", "their") for i in range(a, b + 1)
    )


_OFF: Final[dict[Sign, tuple[str, ...]]] = {
    "injury": ("SKIN",), "bladder": ("LONGSIT",), "nerve": ("FROZEN", "SKIN", "LONGSIT"), "faint": ("WHIRLED",),
    "heart": ("EXCITED",),
}  # fmt: skip
"""What else in the sentence accounts for a sign."""


def _of_a_thing(s: Stream, first: int, last: int) -> bool:
    """Whether the sentence breaks a door or a strap, and names no part of the body."""
    sentence = s.all[first:last]
    return any(one.has("THING") for one in sentence) and not any(one.has("PART", "LIMB", "CRUSHER") for one in sentence)


def _of_others_in_general(s: Stream, first: int, last: int) -> bool:
    """can squats make you faint? Asked of anyone, not of the lifter."""
    if last >= len(s) or s.all[last].text != "?":
        return False
    said = s.all[first:last]
    while first < last and s.all[first].has("FILLER", "COMMA", "OTHER", "OPENER"):
        first += 1
    asked = first < last and s.all[first].has("ASKWORD")
    return asked and any(one.is_word("general") for one in said) and not any(one.is_word("oneself") for one in said)


def long_past(s: Stream, i: int) -> bool:
    """Words of the long past, a year, or "when I was" with an age behind it; "when I was squatting" is just now."""
    lexeme = s.all[i]
    if lexeme.k.get("LONGAGO") == "age":
        told, behind = ([*s.all[i + 1 : i + 3], None, None])[:2]
        whole = told is not None and "NUM" in told.k and told.value.is_integer() and 1 <= told.value < _AGED
        return whole and not (behind is not None and behind.has("SETS", "REPS", "MIN", "SEC"))
    return lexeme.has("LONGAGO") or year(s, i)


def year(s: Stream, i: int) -> bool:
    """in 2015, from 2011: a year, so long past."""
    lexeme = s.all[i]
    return (
        "NUM" in lexeme.k
        and len(lexeme.text) == 4
        and 1950 <= lexeme.value <= 2050
        and i > 0
        and (s.all[i - 1].has("IN", "ABOUT", "AT") or s.all[i - 1].is_word("before year"))
    )


def theirs(s: Stream, at: int) -> bool:
    """Whether the sign is told of someone else: the last person named before it in the sentence is not the lifter."""
    i = at
    if " my " in f" {s.all[at].text} ":
        return False
    while i >= 0 and not s.all[i].has("STOP", "NL"):
        lexeme = s.all[i]
        if is_other(s, i) or (i in s.used and "OTHER" in lexeme.k and lexeme.k["OTHER"] != "vocative"):
            return i <= at
        if lexeme.has("THING") and at - i <= 3 and i < at:
            return True
        if i < at and lexeme.is_word("oneself") and not (lexeme.is_word("mine") and s.all[i - 1].has("OF")):
            owner = i + 1 <= at and any(s.all[k].has("OTHER") for k in range(i + 1, min(i + 3, at + 1)))
            if not owner:
                return False
        i -= 1
    return False


def _negated(s: Stream, at: int, first: int) -> bool:
    """Whether a denial stands right before: hasnt come back to normal."""
    return any(s.all[i].has("NEG") for i in range(max(first, at - 4), at))


def denied(s: Stream, at: int, first: int, said: frozenset[int] = frozenset(), *, of_it: bool = False) -> bool:
    """'no', 'not', 'without' before the sign, with only a list or fillers between.

    ``of_it``: only what stands between a part of the body and what it does is looked at.
    """
    for i in range(at - 1, max(first, at - 14) - 1, -1):
        lexeme = s.all[i]
        unable = lexeme.is_word("not") and i > first and s.all[i - 1].is_word("can", "could", "will", "would")
        if i in said or unable or (lexeme.is_word("without") and _negated(s, i, first)):
            continue
        if "NUM" in lexeme.k and lexeme.value == 0 and at - i <= 2:
            return True
        if lexeme.is_word("nothing") and at - i <= 2:
            return True
        if lexeme.has("NEG") and (not lexeme.is_word("denying") or (lexeme.is_word("never", "doesnt") and at - i <= 3)):
            return not _goes_on(s, i, at, of_it=of_it)
        if lexeme.has("BUT", "THEN", "DONE", "STOP", "NL") or lexeme.is_word("i", "my", "im"):
            if (
                lexeme.is_word("i", "my", "im")
                and i > first
                and s.all[i - 1].has("IN", "ON", "NEG", "OF", "TO", "FROM", "PAIN", "CHESTSIGN")
            ):
                continue
            return False
    return False


def _goes_on(s: Stream, neg: int, at: int, *, of_it: bool) -> bool:
    """Whether something new is said between the denial and the sign: a comma with a verb, a number.

    A denial ``of_it``, between a part of the body and what it does, is of that part.
    """
    commas = [i for i in range(neg + 1, at) if s.all[i].has("COMMA")]
    if commas and not of_it and not any(s.all[i].has(*BODY_KINDS, *_DENIABLE) for i in range(neg + 1, commas[0])):
        return True
    return any(not _listed(s, i, at) for i in commas)


_DENIABLE: Final = (
    "SWELL",
    "DARK",
    "DROOP",
    "PAIN",
    "CHESTSIGN",
    "NERVESIGN",
    "INJURYSIGN",
    "HEARTSIGN",
    "BREATHPART",
    "SORENESS",
    "OTHER",
)
"""What a list of denied things may begin with; 'no idea, ...' denies nothing of the body."""


def _listed(s: Stream, comma: int, at: int) -> bool:
    return all(
        s.all[i].has(
            "COMMA", "OR", "AND", "ARTICLE", "FILLER", "IN", *BODY_KINDS, "PAIN", "CHESTSIGN", "NERVESIGN", "NEG"
        )
        for i in range(comma, at)
    )
