"""What the body says: signs that must stop training, and aches. High recall; denial, other people, jokes and the
long past are told apart. Never diagnoses; knows nothing of sets.
"""

from dataclasses import dataclass
from typing import Final, Literal, NamedTuple, cast

from core.model.acts import AcheAct, Alarm, Sign
from core.read.frames import Frames
from core.read.moods import is_other
from core.read.stream import Stream

WINDOW: Final = 7
"""Lexemes between a part of the body and what it does, at most (chosen on invented messages)."""
FAST_PULSE: Final = 115.0
"""Beats a minute that are fast for someone who rests (common practice, no source; not a diagnosis)."""
_MUSCLES: Final = frozenset({
    "quad", "glute", "hamstring", "calf", "pec", "lat", "bicep", "tricep", "abs", "forearm", "upper-back",
})  # fmt: skip
_MILD: Final = frozenset({
    "sore", "tight", "tightness", "stiff", "stiffness", "off", "tender", "talking", "problem", "issue", "issues", "trouble",
    "sensitive", "burning",
})  # fmt: skip
_VAGUE: Final = frozenset(
    {
        "off",
        "tight",
        "tightness",
        "talking",
        "problem",
        "issue",
        "issues",
        "trouble",
        "pulled",
        "rolled",
        "funny",
        "crunchy",
    }
)
_STRONG_HEART: Final = frozenset({
    "fluttering", "flutter", "flutters", "fluttered", "skipping", "skipped", "skips", "skip", "irregular", "missing beats",
    "missed a beat", "missed beats", "erratic", "flip flop", "flip flopping", "flopping", "doing flips", "double beat",
    "out of rhythm", "stuttering", "flipping", "misfiring", "stumbling", "quivering", "uneven", "jumping", "jumped",
})  # fmt: skip
_WEAK_NERVE: Final = frozenset({
    "weak", "weakness", "gone weak", "went weak", "gave out", "gives out", "giving way", "gave way", "gives way", "went dead",
    "gone dead", "asleep", "fell asleep", "went limp", "limp", "went to sleep", "gone to sleep", "feels dead", "felt dead",
    "shot down", "goes down", "running down", "no power", "lost power", "no strength",
})  # fmt: skip
_LOOSE_INJURY: Final = frozenset(
    {"lump", "bone", "wont bend", "cant close", "locked", "cant grip anything", "cant hold anything"}
)
"""Words of an injury that a swelling or a nerve can tell as well."""
_EFFORTS: Final = frozenset(
    {"after", "from", "set", "during", "after that", "last set", "that last set", "sets", "finisher"}
)
"""Words that tie a fast heart to the work done."""
_SHOOTING: Final = frozenset({
    "lightning", "shooting", "shooting pain", "shooting pains", "electric", "electric shock", "electric shocks", "zap",
    "zaps", "zapping", "zing", "zings", "zinger", "jolt", "jolts", "sparks", "sciatica", "radiating", "radiates",
})  # fmt: skip
"""What runs along a nerve, and is no numbness of the saddle."""
_YIELDS: Final = frozenset({
    "asleep", "fell asleep", "went to sleep", "gone to sleep",
    "gave out", "gives out", "giving way", "gave way", "gives way", "went limp", "shot down", "goes down", "running down",
})  # fmt: skip
"""What a limb does, said behind its name."""
_NOISES: Final = frozenset(
    {
        "popping",
        "crack",
        "cracked",
        "crunch",
        "pop",
        "ping",
        "pinged",
        "snapping",
        "lump",
        "locked",
        "bone",
        "smashed",
        "crushed",
        "ripped",
        "came out",
        "useless",
        "snap",
    }
)


_APOSTROPHES: Final = ("'", "’", "‘")


class Told(NamedTuple):
    """A sign and the lexemes, first and last, that tell it; a ``?`` behind the sign where it may only be an ache.

    ``said`` holds the lexemes of its own words, which do not deny it.
    """

    sign: str
    first: int
    last: int
    said: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Heard:
    """A symptom act and the lexeme where it was said."""

    act: Alarm | AcheAct
    at: int


def symptoms(s: Stream, frames: Frames) -> list[Heard]:
    """Every alarm (each sign once) and ache, in order; their lexemes are marked as used."""
    out: list[Heard] = []
    seen: set[Sign] = set()
    framed = _framed(s, frames)
    for first, last in _sentences(s):
        told = [one for one in framed if first <= one.first < last]
        if not told and not any(s.all[i].has(*_BODY_KINDS) for i in range(first, last)):
            continue
        alarms = _settled([*_signs(s, first, last), *told], s, (first, last), sure=bool(seen))
        for one in alarms:
            sign = cast("Sign", one.sign)
            if sign not in seen:
                seen.add(sign)
                out.append(Heard(Alarm(sign, s.span(one.first, one.last)), one.first))
        if alarms:
            for one in alarms:
                _spend(s, one)
            signs = {one.sign for one in alarms}
            s.use(i for one in told if one.sign.rstrip("?") in signs for i in one.said if not s.all[i].has(*_REPORTING))
            _quieten(s, first, last, min(one.first for one in alarms))
        else:
            out.extend(_aches(s, first, last))
    out.sort(key=lambda heard: heard.at)
    return out


def _framed(s: Stream, frames: Frames) -> list[Told]:
    """What the frames of small words tell, by lexemes instead of words."""
    words: list[str] = []
    stops: list[bool] = []
    places: list[int] = []
    for i, lexeme in enumerate(s.all):
        if lexeme.has("STOP", "NL", "DASH"):
            if stops and "DASH" not in lexeme.k:
                stops[-1] = True
            continue
        text = f"{lexeme.value:.0f}" if lexeme.spelled and lexeme.value >= 100 else lexeme.text
        if text.endswith("s") and s.text[lexeme.end - 2 : lexeme.end - 1] in _APOSTROPHES:
            text = text[:-1]
        for word in text.split(" "):
            words.append(word)
            stops.append(False)
            places.append(i)
    return [
        Told(
            one.sign,
            places[one.first],
            places[one.last],
            frozenset(places[i] for a, b in one.said for i in range(a, b + 1)),
        )
        for one in frames.find(words, stops)
    ]


def _settled(told: list[Told], s: Stream, sentence: tuple[int, int], *, sure: bool) -> list[Told]:
    """The signs that hold, the closest telling of each.

    A doubtful telling (its sign ends with ``?``) counts only alone, so not if the message is ``sure`` of a sign already.
    """
    out: dict[str, Told] = {}
    told = sorted(told, key=lambda one: (one.sign.endswith("?"), one.last - one.first, one.first))
    for one in told:
        doubtful, sign = one.sign.endswith("?"), cast("Sign", one.sign.rstrip("?"))
        if sign in out or (doubtful and (out or sure)):
            continue
        if not _dismissed(s, one, sentence, sign):
            out[sign] = one._replace(sign=sign)
    for sign, explained in _EXPLAINS.items():
        if sign in out:
            for other in explained:
                out.pop(other, None)
    return list(out.values())


def _spend(s: Stream, told: Told) -> None:
    """What tells the sign is spoken for, but for a set reported in its midst."""
    inside = range(told.first, told.last + 1)
    erased = told.first > 0 and s.all[told.first - 1].has("ERASE")
    if not erased and not any(s.all[i].has("X", "LOADQ", "REPQ", "EMPTYBAR") for i in inside):
        s.use(inside)
    else:
        s.use(i for i in (told.said or (told.first, told.last)) if not s.all[i].has(*_REPORTING))


_REPORTING: Final = (
    "X",
    "LOADQ",
    "REPQ",
    "SETQ",
    "ERASE",
    "EX",
    "SETS",
    "REPS",
    "BODY",
    "PERLIMB",
    "EACH",
    "LOADWORD",
    "EMPTYBAR",
)
"""Lexemes of a set, which no sign takes away."""


def _quieten(s: Stream, first: int, last: int, at: int) -> None:
    """The sentence of an alarm counts nothing, but for its clauses that report a set."""
    start = first
    for i in range(first, last + 1):
        if i < last and not s.all[i].has("COMMA", "BUT", "THEN", "OPEN"):
            continue
        inside = range(start, i)
        cause = next((j for j in inside if s.all[j].text.startswith(("since", "after"))), i)
        reports = any(s.is_(j, "X", "ERASE", "FINISH", "REPQ", "SETQ", "INSTEAD", "SAMELOAD") for j in inside) or (
            any(s.is_(j, "EX") and j < cause for j in inside)
            and any(
                s.is_(j, "NUM", "DUR", "SKIP") and not (j + 1 < i and s.all[j + 1].has("PART", "LIMB")) for j in inside
            )
        )
        if not reports and not (
            i <= at
            and any(s.is_(j, "NUM") for j in inside)
            and not any(s.all[j].has("WONTSETTLE", "DUR") for j in inside)
        ):
            s.use(j for j in inside if not s.all[j].has("FINISH", "EX"))
            s.use(j for j in inside if s.all[j].has("DAY") or (s.all[j].has("EX") and s.all[j].has("PART", "EMPTYBAR")))
        else:
            s.use(j for j in inside if s.all[j].has("LEFT", "RIGHT", "BOTH"))
        start = i + 1


_EXPLAINS: Final[dict[Sign, tuple[Sign, ...]]] = {
    "bladder": ("nerve",), "head": ("injury", "swelling"), "dark-urine": ("bladder",),
}  # fmt: skip
"""What a sign accounts for, so that it is not told twice."""

_BODY_KINDS: Final = (
    "ALARM", "SADDLE", "SOMETHING", "FACE", "PART", "LIMB", "CHESTPART", "HEARTPART", "BREATHPART", "URINE", "HEADACHE", "HEADPART", "CRUSHER",
)  # fmt: skip


def _sentences(s: Stream) -> list[tuple[int, int]]:
    out: list[tuple[int, int]] = []
    first = 0
    for i in range(len(s) + 1):
        if i == len(s) or s.all[i].has("NL", "STOP"):
            if i > first:
                out.append((first, i))
            first = i + 1
    return out


_PAIRS: Final[tuple[tuple[Sign, tuple[str, ...], str], ...]] = (
    ("chest", ("CHESTPART",), "CHESTSIGN"),
    ("heart", ("HEARTPART",), "HEARTSIGN"),
    ("breath", ("BREATHPART",), "WONTSETTLE"),
    ("head", ("HEADACHE",), "SUDDEN"),
    ("nerve", ("LIMB", "PART", "FACE"), "NERVESIGN"),
    ("injury", ("LIMB", "PART"), "INJURYSIGN"),
    ("swelling", ("LIMB", "PART"), "SWELL"),
    ("head", ("HEADPART",), "HIT"),
    ("head", ("FACE",), "DROOP"),
    ("injury", ("CRUSHER",), "PART"),
    ("head", ("CRUSHER",), "HEADPART"),
)
"""A part and a sign near each other, and the alarm that they make."""


def _signs(s: Stream, first: int, last: int) -> list[Told]:
    out: list[Told] = []
    spots: dict[str, list[int]] = {}
    for i in range(first, last):
        for kind in s.all[i].k:
            spots.setdefault(kind, []).append(i)
        if "ALARM" in s.all[i].k:
            out.append(Told(cast("Sign", s.all[i].k["ALARM"]), i, i))
    for sign, parts, mark in _PAIRS:
        marks = spots.get(mark, [])
        if sign == "chest":
            marks = sorted({*marks, *(i for i in spots.get("PAIN", []) if s.all[i].text not in _MILD)})
        if not marks:
            continue
        for part in parts:
            found = _near(s, sign, spots.get(part, []), marks)
            if found is not None:
                loose = sign == "injury" and any(s.all[i].text in _LOOSE_INJURY for i in found)
                out.append(Told(f"{sign}?" if loose else sign, *found))
    out.extend(_joined_pains(s, spots))
    numb = [
        *(i for i in spots.get("NERVESIGN", []) if s.all[i].text not in _SHOOTING),
        *(i for i in spots.get("ALARM", []) if s.all[i].k["ALARM"] == "nerve"),
    ]
    saddle = _near(s, "bladder", spots.get("SADDLE", []), numb)
    if saddle is not None:
        out.append(Told("bladder", *saddle))
    if any(one.sign == "bladder" for one in out):
        out = [one for one in out if one[0] != "nerve"]
    if any(one.sign == "head" for one in out):
        out = [one for one in out if one[0] != "faint" or s.all[one[1]].text not in _STARS]
        out = [one for one in out if one[0] not in ("injury", "swelling")]
    bpm = _fast_pulse(s, spots)
    if bpm is not None:
        out.append(Told("heart", bpm, bpm))
    return out


def _joined_pains(s: Stream, spots: dict[str, list[int]]) -> list[Told]:
    """Signs told by more than two words: an arm with the jaw; not being able to pass water."""
    out: list[Told] = []
    jaws = [i for i in spots.get("PART", []) if s.all[i].k["PART"] == "jaw"]
    arms = [i for i in spots.get("LIMB", []) if "arm" in s.all[i].text]
    if jaws and arms and (spots.get("PAIN") or spots.get("CHESTSIGN") or spots.get("NERVESIGN")):
        out.append(Told("chest", min(jaws[0], arms[0]), max(jaws[0], arms[0])))
    unable = [i for i in spots.get("NEG", []) if s.all[i].text in _UNABLE] + spots.get("UNABLE", [])
    found = _near(
        s, "bladder", unable, [i for i in spots.get("URINE", []) if s.all[i].text not in ("bowl", "toilet bowl")]
    )
    if found is not None and not spots.get("DARK"):
        out.append(Told("bladder", *found))
    breath = _near(
        s, "injury", unable, [i for i in spots.get("BREATHPART", []) if s.all[i].text not in ("lungs", "air")]
    )
    if breath is not None:
        out.append(Told("breath", *breath))
    some = [
        i for i in spots.get("SOMETHING", []) if any("INJURYSIGN" in s.all[k].k for k in range(i, min(i + 9, len(s))))
    ]
    if (some and spots.get("PART", []) + spots.get("LIMB", []) + [i for i in spots.get("SETS", [])]) or (
        some and _body_hint(s, some[0])
    ):
        sign = next(k for k in range(some[0], min(some[0] + 9, len(s))) if "INJURYSIGN" in s.all[k].k)
        out.append(Told("injury", some[0], sign))
    return out


def _body_hint(s: Stream, i: int) -> bool:
    """Whether a something that ripped is in the body: a muscle, the armpit, inside."""
    return any(
        s.all[k].text in ("muscle", "armpit", "inside", "joint", "tendon", "arm") for k in range(i, min(i + 10, len(s)))
    )


_LOOSE_QUOTES: Final = frozenset(
    {"heard", "ever", "usually", "normally", "all time", "apparently", "a guy", "covered", "letter"}
)
_STARS: Final = frozenset({"saw stars", "seeing stars", "saw spots", "seeing spots"})
"""After a blow these belong to it."""
_UNABLE: Final = frozenset({"cant", "couldnt", "havent", "hasnt"})


def _fast_pulse(s: Stream, spots: dict[str, list[int]]) -> int | None:
    """A pulse in figures that is fast, while resting."""
    if "WONTSETTLE" not in spots or "HEARTPART" not in spots:
        return None
    return next((i for i in spots.get("NUM", []) if FAST_PULSE <= s.all[i].value <= 250), None)


def _near(s: Stream, sign: Sign, parts: list[int], marks: list[int]) -> tuple[int, int] | None:
    for p in parts[:40]:
        for m in marks[:40]:
            if (
                m != p
                and abs(m - p) <= (WINDOW + 5 if sign in ("breath", "head", "dark-urine") else WINDOW)
                and _fits(s, sign, p, m)
            ):
                return min(p, m), max(p, m)
    return None


def _fits(s: Stream, sign: Sign, p: int, m: int) -> bool:
    """Whether this part with this mark is a sign and not effort, a pump, or a figure of speech."""
    word, part = s.all[m].text, s.all[p].text
    between = range(min(p, m) + 1, max(p, m))
    if any(s.all[i].has("EX") and not s.all[i].has("PART") for i in between) and sign != "breath":
        return False
    sentence = _around(s, p)
    if sign == "breath" and part.startswith("puff"):
        limb = any(s.all[i].has("PART", "LIMB") for i in range(max(0, p - 4), p))
        return not limb or not any(
            s.all[i].text.split(" ")[-1] in ("up", "out") for i in range(p + 1, min(p + 3, len(s)))
        )
    if sign == "heart":
        settles = any(s.all[i].has("WONTSETTLE") for i in sentence)
        effort = any(s.all[i].has("EX", "CARDIO") or s.all[i].text in _EFFORTS for i in sentence)
        return word in _STRONG_HEART or settles or not effort
    if sign == "nerve" and word in ("cant feel my", "cant feel"):
        return not any(s.all[i].text in ("haha", "lol", "leg", "leg day", "jelly") for i in sentence)
    if sign == "nerve":
        single = not part.endswith("s") or part in ("pins",)
        return (word not in _WEAK_NERVE or single) and (word not in _YIELDS or p < m)
    if sign == "injury" and s.all[p].has("CRUSHER"):
        return True
    if sign == "injury":
        if word.startswith("cant") and (
            any(s.all[i].has("SORENESS") for i in sentence) or part in ("toe", "toes", "foot", "feet")
        ):
            return False
        if part.endswith("s") and word in _NOISES and part not in ("biceps", "triceps"):
            return False
        if word in _NOISES and any(
            s.all[i].text in ("always", "usual", "as usual", "normal", "never hurts") for i in sentence
        ):
            return False
        return not (word in ("cracked", "crack") and s.all[p].k.get("PART") in ("back", "neck"))
    if sign == "chest" and m < p and word in ("squeezing", "squeezed", "crushing", "crushed", "squeeze"):
        return False
    if sign == "chest":
        return not any(s.all[i].text in ("pump", "pumped", "doms", "day", "to") for i in sentence) and not (
            any(s.all[i].has("RANGE", "BOTTOM", "TOP") for i in between)
        )
    if sign == "swelling":
        caused = (m < p or part.endswith("s")) and word in ("blew up", "blown up", "swells", "swelled")
        return not caused and not any(s.all[i].text in ("pump", "pumped") for i in sentence)
    if sign == "head" and s.all[p].has("HEADPART") and s.all[m].has("HIT"):
        return m < p
    return True


def _around(s: Stream, i: int) -> range:
    first, last = i, i
    while first > 0 and not s.all[first - 1].has("STOP", "NL"):
        first -= 1
    while last + 1 < len(s) and not s.all[last + 1].has("STOP", "NL"):
        last += 1
    return range(max(first, i - 30), min(last, i + 30) + 1)


def _dismissed(s: Stream, told: Told, sentence: tuple[int, int], sign: Sign) -> bool:
    a, b, said = told.first, told.last, told.said
    first, last = sentence[0], max(sentence[1], b + 1)
    if _denied(s, a, first) or (b != a and _denied(s, b, max(first, a + 1), said)):
        return True
    near = range(max(first, a - 30), min(last, b + 30))
    if any(s.all[i].has("LONGAGO") or _year(s, i) for i in near):
        return True
    if any(s.all[i].has("JOKE") for i in near):
        return True
    if any(s.all[i].has("FICTION") for i in near) and not any(s.all[i].text in _SELF for i in range(first, last)):
        return True
    if (
        sign == "head"
        and any(s.all[i].has("DRUNK") for i in near)
        and not any(s.all[i].has("HIT") for i in range(a, b + 1))
    ):
        return True
    if any(s.all[i].has(*_OFF.get(sign, ())) for i in near):
        return True
    if sign == "injury" and not said and _of_a_thing(s, first, last):
        return True
    if _of_others_in_general(s, first, last):
        return True
    if sign in ("heart", "breath") and any(s.all[i].has("SETTLED") and not _negated(s, i, first) for i in near):
        return True
    if sign == "chest" and any(s.all[i].has("CUDDLE") for i in range(max(first, a - 4), a)):
        return True
    if any(
        s.all[i].has("QUOTED")
        and s.all[i].text not in _LOOSE_QUOTES
        and not any(s.all[k].text in _SELF for k in range(i, a))
        for i in range(max(first, a - 8), a)
    ):
        return True
    if any(s.all[i].has("WORRY") and s.all[i].k["WORRY"] == "before" for i in range(max(first, a - 6), a)):
        return True
    if s.all[a].text in ("cant feel my", "couldnt feel my") and a == b:
        follow = s.all[a + 1].text if a + 1 < last else ""
        if follow.endswith("s") and any(s.all[i].text in ("haha", "lol", "leg", "jelly") for i in near):
            return True
    if sign == "faint" and a and (s.all[a - 1].has("URINE") or s.all[a - 1].text in ("water", "toilet water")):
        return True
    if sign == "faint" and any(s.all[i].text in ("bed", "couch", "sofa", "netflix") for i in near):
        return True
    if any(k > 0 and s.all[k - 1].text in ("my", "me") for k in (a, b)):
        return False
    return _theirs(s, a) or any(
        s.all[i].has("OTHER") and s.all[i].text in ("his", "her", "their") for i in range(a, b + 1)
    )


_OFF: Final[dict[Sign, tuple[str, ...]]] = {
    "injury": ("SKIN",), "bladder": ("LONGSIT",), "nerve": ("FROZEN",), "heart": ("EXCITED",),
}  # fmt: skip
"""What else in the sentence accounts for a sign."""


def _of_a_thing(s: Stream, first: int, last: int) -> bool:
    """Whether the sentence breaks a door or a strap, and names no part of the body."""
    sentence = s.all[first:last]
    return any(one.has("THING") for one in sentence) and not any(one.has("PART", "LIMB", "CRUSHER") for one in sentence)


_GENERAL: Final = frozenset(
    {"you", "your", "people", "anyone", "someone", "lifters", "deadlifts", "creatine", "squats"}
)


def _of_others_in_general(s: Stream, first: int, last: int) -> bool:
    """can squats make you faint? Asked of anyone, not of the lifter."""
    if last >= len(s) or s.all[last].text != "?":
        return False
    words = {s.all[i].text for i in range(first, last)}
    return s.all[first].has("ASKWORD") and bool(words & _GENERAL) and not words & _SELF


def _year(s: Stream, i: int) -> bool:
    """in 2015, from 2011: a year, so long past."""
    lexeme = s.all[i]
    return (
        "NUM" in lexeme.k
        and len(lexeme.text) == 4
        and 1950 <= lexeme.value <= 2050
        and i > 0
        and (s.all[i - 1].has("IN", "ABOUT", "AT") or s.all[i - 1].text in _BEFORE_YEAR)
    )


_SELF: Final = frozenset({"i", "im", "ive", "my", "me", "id", "ill", "mine"})


_BEFORE_YEAR: Final = frozenset({
    "from", "since", "back", "back in", "january", "february", "march", "april", "may", "june", "july", "august",
    "september", "october", "november", "december", "summer", "winter", "spring", "autumn", "early", "late", "of",
})  # fmt: skip


def _theirs(s: Stream, at: int) -> bool:
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
        if i < at and lexeme.text in _SELF and not (lexeme.text == "mine" and s.all[i - 1].has("OF")):
            owner = i + 1 <= at and any(s.all[k].has("OTHER") for k in range(i + 1, min(i + 3, at + 1)))
            if not owner:
                return False
        i -= 1
    return False


_DENYING: Final = frozenset({"cant", "couldnt", "wont", "nothing", "gone", "doesnt", "free", "skip", "never"})


def _negated(s: Stream, at: int, first: int) -> bool:
    """Whether a denial stands right before: hasnt come back to normal."""
    return any(s.all[i].has("NEG") for i in range(max(first, at - 4), at))


def _denied(s: Stream, at: int, first: int, said: frozenset[int] = frozenset()) -> bool:
    """'no', 'not', 'without' before the sign, with only a list or fillers between."""
    for i in range(at - 1, max(first, at - 14) - 1, -1):
        lexeme = s.all[i]
        unable = lexeme.text == "not" and i > first and s.all[i - 1].text in ("can", "could", "will", "would")
        if i in said or unable or (lexeme.text == "without" and _negated(s, i, first)):
            continue
        if "NUM" in lexeme.k and lexeme.value == 0 and at - i <= 2:
            return True
        if lexeme.text == "nothing" and at - i <= 2:
            return True
        if lexeme.has("NEG") and (lexeme.text not in _DENYING or (lexeme.text in ("never", "doesnt") and at - i <= 3)):
            return not _goes_on(s, i, at)
        if lexeme.has("BUT", "THEN", "DONE", "STOP", "NL") or lexeme.text in ("i", "my", "im"):
            if (
                lexeme.text in ("i", "my", "im")
                and i > first
                and s.all[i - 1].has("IN", "ON", "NEG", "OF", "TO", "FROM", "PAIN", "CHESTSIGN")
            ):
                continue
            return False
    return False


def _goes_on(s: Stream, neg: int, at: int) -> bool:
    """Whether something new is said between the denial and the sign: a comma with a verb, a number."""
    return any(s.all[i].has("COMMA") and not _listed(s, i, at) for i in range(neg + 1, at))


def _listed(s: Stream, comma: int, at: int) -> bool:
    return all(
        s.all[i].has(
            "COMMA", "OR", "AND", "ARTICLE", "FILLER", "IN", *_BODY_KINDS, "PAIN", "CHESTSIGN", "NERVESIGN", "NEG"
        )
        for i in range(comma, at)
    )


# aches


def _aches(s: Stream, first: int, last: int) -> list[Heard]:
    out: list[Heard] = []
    pains = [i for i in range(first, last) if s.all[i].has("PAIN") and not _denied(s, i, first)]
    parts = [i for i in range(first, last) if s.all[i].has("PART", "LIMB", "HEADACHE") and i not in s.used]
    if not parts or any(s.all[i].has("LONGAGO", "JOKE") or _year(s, i) for i in range(first, last)):
        return out
    claimed: set[str] = set()
    for n, p in enumerate(parts[:20]):
        where = _where(s, p)
        if where in claimed or _theirs(s, p) or _denied(s, p, first) or (n and _where(s, parts[n - 1]) == where):
            continue
        floor = parts[n - 1] + 1 if n else first
        following = next((q for q in parts[n + 1 :] if _where(s, q) != where), None)
        level, spent = _level(s, p, floor, following if following is not None else last, first)
        pain = next((m for m in pains if m != p and abs(m - p) <= WINDOW + 1), p if s.all[p].has("HEADACHE") else None)
        if pain is None and (level is None or "PART" not in s.all[p].k or spent[0] >= last):
            continue
        if pain is not None and not _is_ache(s, p, pain, first, last, level):
            continue
        claimed.add(where)
        a, b = (p, p) if pain is None else (min(p, pain), max(p, pain))
        side, at = _ache_side(s, p, first, last)
        out.append(Heard(AcheAct(where, side, level, s.span(a, b)), a))
        s.use(i for i in range(a, b + 1) if not s.all[i].has("EX", "NUM", "X") or s.all[i].has("PART"))
        s.use([*spent, *at])
    if out:
        _hush(s, first, last)
    return out


def _hush(s: Stream, first: int, last: int) -> None:
    """The clauses that tell of an ache report no set, unless they count something."""
    start = first
    for i in range(first, last + 1):
        if i < last and not s.all[i].has("COMMA", "BUT", "THEN", "OPEN"):
            continue
        inside = range(start, i)
        counts = any(
            s.is_(j, "X", "LOADQ", "REPQ", "SETQ", "DUR") or (s.is_(j, "NUM") and s.all[j].text != "one")
            for j in inside
        )
        if not counts:
            s.use(
                j
                for j in inside
                if s.all[j].has("SAME", "LAST", "LEFT", "RIGHT", "BOTH", "ALL") or s.all[j].text == "one"
            )
        start = i + 1


def _where(s: Stream, p: int) -> str:
    part = s.all[p].k.get("PART")
    if isinstance(part, str):
        return part
    if s.all[p].has("HEADACHE"):
        return "head"
    return s.all[p].text.split(" ")[-1].rstrip("s")


def _is_ache(s: Stream, p: int, pain: int, first: int, last: int, level: float | None) -> bool:
    word = s.all[pain].text
    where = _where(s, p)
    sore = any(s.all[i].has("SORENESS") and i != pain for i in range(first, last))
    if any(s.all[i].has("EX") and not s.all[i].has("PART") for i in range(min(p, pain) + 1, max(p, pain))) and pain < p:
        return False
    if level is not None:
        return True
    if word in _VAGUE:
        return word in ("off", "talking", "funny", "pulled", "rolled") and where not in _MUSCLES and abs(p - pain) <= 3
    if word in _MILD:
        muscle = where in _MUSCLES and s.all[p].text != "upper back"
        return not muscle and not sore and s.all[p].text not in ("arms", "legs")
    return not (sore and word in ("aching", "ache", "aches", "achy", "hurts", "hurt", "hurting"))


def _ache_side(s: Stream, p: int, first: int, last: int) -> tuple[Literal["left", "right", "both"] | None, list[int]]:
    for i in sorted(range(max(first, p - 8), min(last, p + 12)), key=lambda i: abs(i - p)):
        lexeme = s.all[i]
        if lexeme.has("BOTH"):
            return "both", [i]
        short = lexeme.text in ("r", "l") and i + 1 != p
        if lexeme.has("LEFT", "RIGHT") and not short and not s.is_(i - 1, "NUM"):
            return ("left" if lexeme.has("LEFT") else "right"), [i]
    return None, []


def _level(s: Stream, p: int, floor: int, end: int, first: int) -> tuple[float | None, list[int]]:
    """A number out of ten near the part: 3/10, 3 out of 10, maybe a 2, like 3."""
    del first
    stop = end
    if end < len(s) and s.all[end].has("STOP", "NL"):
        stop = min(len(s), end + 6)
    for i in [*range(p + 1, stop), *range(floor, p)]:
        number = s.num(i)
        if number is None or number > 10 or s.all[i].has("REPQ", "SETQ", "TIMESQ") or s.all[i].plural:
            continue
        if s.is_(i - 1, "X"):
            continue
        if (
            s.num(i + 2) == 10
            and s.is_(i + 1, "SLASH", "LEVELWORD")
            and not s.is_(i + 3, "SLASH")
            and not s.is_(i - 1, "SLASH")
        ):
            return number, [i, i + 1, i + 2]
    for i in range(p + 1, end):
        number = s.num(i)
        if number is None or number > 10 or s.all[i].has("REPQ", "SETQ", "TIMESQ") or s.all[i].plural:
            continue
        told = (
            s.is_(i - 1, "ABOUT", "LEVELWORD")
            or (s.is_(i - 1, "COLON") and i - 2 == p)
            or (s.is_(i - 1, "ARTICLE") and s.is_(i - 2, "ABOUT", "FILLER", "LEVELWORD", "PAIN", "COMMA", "AT"))
        )
        if told and not s.is_(i + 1, "X", "KG", "LB") and i - p <= 12 and s.num(i + 1) is None:
            return number, [i]
    return None, []
