"""Whether counts in a stretch report sets at all, or are chat with numbers in it.

Weighs how plainly the grammar says a set against words around it that are none of the trade's.
"""

from bisect import bisect_right
from collections.abc import Callable
from typing import Final

from core.evidence.exercises import EXERCISES
from core.read.groups import Group, Parsed
from core.read.stream import Stream
from core.read.stretches import Stretch

NEARBY = 4
"""Lexemes on either side of a group in which strange words count against it."""


STRANGE: Final = (
    "WORD",
    "OTHER",
    "CUDDLE",
    "CHAT",
    "CARDIO",
    "FARQ",
    "CLOCKTIME",
    "WEEKDAY",
    "LONG",
    "PCT",
    "LEN",
    "JOKE",
)
"""Kinds of words and quantities that are none of a set's."""


_FOREIGN: Final = frozenset({"KNOWN", *STRANGE})


def chatters(s: Stream, first: int, last: int, parse: Callable[[int, int], Parsed]) -> bool:
    """Whether a sentence beside a report, weighed as if it stood alone, is chat with numbers in it.

    ``parse`` gives what grammar makes of it; most sentences have none of the words for which it is asked.
    """
    if all(i in s.used or s.all[i].kinds.isdisjoint(_FOREIGN) for i in range(first, last)):
        return False
    parsed = parse(first, last)
    if parsed.rounds:
        return False
    alone = Stretch(None, first, [(first, last)])
    return not any(map(_strong, parsed.groups)) or not believable(s, alone, parsed, known=True)


def reports(s: Stream, first: int, last: int, parse: Callable[[int, int], Parsed]) -> bool:
    """Whether a sentence says hardly anything but a set, and no word that is none of the trade's."""
    foreign = any(not s.all[i].kinds.isdisjoint(_FOREIGN) for i in range(first, last))
    return not foreign and any(_strong(one) or _in_hand(one) for one in parse(first, last).groups)


def _in_hand(group: Group) -> bool:
    """'26s 10': implements by their weight, and a count."""
    loaded = group.load is not None and group.load.plural
    return bool(group.reps) and (loaded or (len(group.reps) > 1 and group.reps[0].plural))


def believable(s: Stream, stretch: Stretch, parsed: Parsed, *, known: bool) -> bool:
    """Whether the stretch is a report of sets. May note that an unknown name stands where an exercise would."""
    groups = parsed.groups
    strong = any(_strong(group) or _held(group, stretch) for group in groups) or _misses(parsed)
    strange = _strange(s, stretch, groups)
    chat = _chat(s, stretch)
    if _cardio(s, stretch):
        return False
    if not any(group.reps or group.like for group in groups) and (
        not (known or stretch.mention)
        or (stretch.mention is not None and stretch.mention.lacking)
        or (_any_strange(s, stretch) and (chat or not _right_behind(s, stretch)) and not _misses(parsed))
    ):
        return False
    if stretch.mention is None and not known and all(group.like or _loads_only(group) for group in groups):
        return False
    if stretch.mention is None:
        name = strong and not chat and _unknown_name(s, groups[0])
        parsed.unknown_name = name
        if not strong:
            told = (
                known
                and not chat
                and (not strange or (strange == 1 and _got(s, groups)) or _sentence_of_its_own(s, groups))
            )
            return told or _only_counts(s)
        if known and not name:
            return chat + strange <= 1 or (chat == 0 and strange <= 2)
        return chat == 0 and strange - name <= 0
    if strong or (not chat and _right_behind(s, stretch)):
        return True
    if any(len(group.reps) > 1 for group in groups):
        return strange <= 2
    return strange == 0 and not chat


def _sentence_of_its_own(s: Stream, groups: list[Group]) -> bool:
    """'last rep was a fight. 5': counts and nothing else from one stop to the next."""
    first, last = groups[0].first, groups[-1].last
    before = first == 0 or s.is_(first - 1, "STOP", "NL")
    after = last + 1 >= len(s) or s.is_(last + 1, "STOP", "NL")
    return before and after and all(s.is_(i, "NUM", "COMMA", "SLASH", "AND") for i in range(first, last + 1))


def _got(s: Stream, groups: list[Group]) -> bool:
    """'no spotter so stopped at 6': the first count stands behind a word of what was done."""
    before = groups[0].first - 1
    return s.is_(before, "DONE") or (s.is_(before, "FILLER", "ABOUT") and s.is_(before - 1, "DONE"))


def _misses(parsed: Parsed) -> bool:
    """'missed the third on 100': the repetition missed is named, which is only told of a set."""
    return any(placed.remark.what == "failed" and placed.remark.value is not None for placed in parsed.placed)


def _chat(s: Stream, stretch: Stretch) -> int:
    """How many words of plain chat are in the stretch."""
    if "CHAT" not in s.spots:
        return 0
    return sum("CHAT" in s.all[i].k for first, last in stretch.ranges for i in range(first, last))


def _only_counts(s: Stream) -> bool:
    """'8 8 8' and nothing else: a list of counts, even where nothing says of what."""
    numbers = sum(lexeme.has("NUM") for lexeme in s.all)
    return numbers >= LEAST_LIST and all(
        lexeme.has("NUM", "COMMA", "SLASH", "AND", "NL", "STOP", "FILLER") for lexeme in s.all
    )


LEAST_LIST: Final = 3
"""So many numbers alone are a list of repetitions (common practice, no source)."""


def _right_behind(s: Stream, stretch: Stretch) -> bool:
    """A whole number right behind a name: dips 9, benched 225."""
    after = stretch.at + 1
    while s.is_(after, "COLON", "DASH"):
        after += 1
    if not s.is_(after, "NUM"):
        after = stretch.at - 1
    plain = stretch.mention is not None and s.is_(stretch.at, "EX") and s.is_(after, "NUM")
    return (
        plain
        and s.all[after].value == int(s.all[after].value)
        and not s.all[after].has("CLOCKTIME", "LONG", "PCT", "FARQ")
    )


def prune(s: Stream, stretch: Stretch, parsed: Parsed, *, held: bool) -> None:
    """Drop lone numbers that strange words surround, and spans of time that no hold is held for."""
    kept = [n for n in range(len(parsed.groups)) if not _stray(s, stretch, parsed, n, held=held)]
    if len(kept) == len(parsed.groups):
        return
    for placed in parsed.placed:
        placed.after = bisect_right(kept, placed.after) - 1
    parsed.sides = [(word, bisect_right(kept, after) - 1) for word, after in parsed.sides]
    parsed.groups = [parsed.groups[n] for n in kept]


def _stray(s: Stream, stretch: Stretch, parsed: Parsed, n: int, *, held: bool) -> bool:
    group = parsed.groups[n]
    if not group.like and not group.reps and group.load is not None and group.load.number is None:
        return len(parsed.groups) > 1 or stretch.mention is None
    if len(parsed.groups) > 1 and not group.like and not group.chained and _judged(s, group):
        return True
    if group.like or not group.reps or group.chained or group.load is not None:
        return False
    timed = all(rep.kind == "H" for rep in group.reps)
    if timed and not held:
        return len(parsed.groups) > 1 or len(group.reps) == 1
    if group.sets is not None:
        return False
    lone = len(group.reps) == 1 and not group.explicit and group.behind is None and len(parsed.groups) > 1
    if not lone or group.reps[0].kind != "R":
        return False
    return _strange(s, stretch, [group]) > 0 or not _joined(s, parsed, n)


_JOINING: Final[frozenset[str]] = frozenset().union(
    ("COMMA", "THEN", "AND", "NL", "DASH", "SLASH", "STOP", "ARROW", "COLON", "OPEN", "CLOSE", "BULLET", "PLUS"),
    (
        "FILLER",
        "NOISE",
        "DONE",
        "BUT",
        "ARTICLE",
        "ABOUT",
        "OF",
        "AT",
        "WITH",
        "ON",
        "FOR",
        "BE",
        "ALL",
        "SELF",
        "FEEL",
    ),
    ("LEFT", "RIGHT", "PERLIMB", "PERSIDE", "EACH", "IMPL", "LAST", "SAME", "ORD", "REPS", "SETS", "X", "TICK"),
    ("WORKING", "DROP", "ATTEMPT", "DAY", "FINISH"),
)
"""What may stand between counts of one exercise and behind a lone one; any other word makes it another thing's."""


def _judged(s: Stream, group: Group) -> bool:
    """'60 was easy so i went up': a lone quantity that is only judged."""
    told = group.load is not None or group.behind is not None or group.lead is not None
    if len(group.reps) > 1 or (group.reps and told) or not s.is_(group.last + 1, "BE", "FEEL"):
        return False
    return s.is_(s.skip(group.last + 2, "FILLER", "ARTICLE"), "NEARLIMIT")


def _joined(s: Stream, parsed: Parsed, n: int) -> bool:
    """Whether a lone number stands among the counts: only small words and remarks between it and the set before."""
    group = parsed.groups[n]
    first = parsed.groups[n - 1].last + 1 if n else group.first
    between = range(first, group.first)
    behind = range(group.last + 1, min(group.last + 2, len(s)))
    return all(i in s.used or not s.all[i].kinds.isdisjoint(_JOINING) for i in (*between, *behind))


def _held(group: Group, stretch: Stretch) -> bool:
    """A time on an exercise that is held or carried."""
    ids = stretch.mention.ids if stretch.mention is not None else ()
    return any(rep.kind in ("H", "D") for rep in group.reps) and any(
        EXERCISES[one].pattern in ("hold", "carry") for one in ids
    )


def _loads_only(group: Group) -> bool:
    """Plurals alone (25s and 15s) are implements, not counts."""
    return not group.chained and all(rep.plural for rep in group.reps)


def _strong(group: Group) -> bool:
    """Said in a way that is hardly anything but a set."""
    if group.like:
        told = group.reps or group.load or group.load_change or group.reps_change or group.sets
        return bool(told) or group.planned
    if not group.reps:
        return False
    if group.chained and (group.load is not None or group.lead is not None or group.sets is not None):
        return True
    if group.sets is not None:
        return True
    return group.explicit or (group.load is not None and not group.bare) or group.behind is not None


def _strange(s: Stream, stretch: Stretch, groups: list[Group]) -> int:
    if not s.says(_STRANGERS):
        return 0
    near: set[int] = set()
    for group in groups:
        near.update(range(group.first - NEARBY, group.last + NEARBY + 1))
    inside = (i for i in near if i not in s.used and any(first <= i < last for first, last in stretch.ranges))
    return sum(not s.all[i].kinds.isdisjoint(_STRANGERS) for i in inside)


_STRANGERS: Final = frozenset({"WORD", "OTHER", "CHAT", "CLOCKTIME", "WEEKDAY", "LONG", "PCT"})
"""Words and quantities that count against a group beside them."""


def _any_strange(s: Stream, stretch: Stretch) -> bool:
    """Whether any word of the stretch is none of the trade's."""
    return any(
        s.all[i].has("WORD", "CHAT", "INJURYSIGN", "OTHER") and i not in s.used
        for first, last in stretch.ranges
        for i in range(first, last)
    )


def _cardio(s: Stream, stretch: Stretch) -> bool:
    """Walks, runs and rides are chat."""
    if not s.says(_MOVING):
        return False
    words = [s.all[i] for first, last in stretch.ranges for i in range(first, last) if i not in s.used]
    far = any(word.has("DIST") and word.num("DIST") >= LEAST_RUN_M for word in words)
    return (any(word.has("CARDIO") for word in words) and (stretch.mention is None or far)) or any(
        word.has("FARQ") or (word.has("DIST") and word.num("DIST") >= LEAST_RUN_M and _rowed(stretch)) for word in words
    )


_MOVING: Final = frozenset({"CARDIO", "FARQ", "DIST"})
LEAST_RUN_M: Final = 250.0
"""Metres from which a distance is run, rowed or ridden and not carried (common practice, no source)."""


def _rowed(stretch: Stretch) -> bool:
    return stretch.mention is not None and "row" in stretch.mention.words


def _unknown_name(s: Stream, group: Group) -> bool:
    """A word that is none of the language's, right before the first count of a line: a name the catalogue lacks."""
    i = group.first - 1
    while i >= 0 and s.all[i].has("COLON", "DASH", "WITH", "AT", "ARTICLE"):
        i -= 1
    named = i >= 0 and "WORD" in s.all[i].k and len(s.all[i].k) == 1 and i not in s.used and len(s.all[i].text) > 3
    starts = i <= 0 or s.all[i - 1].has("NL", "STOP", "COMMA", "WORD", "DONE", "THEN", "AND", "FILLER", "BULLET")
    return named and starts
