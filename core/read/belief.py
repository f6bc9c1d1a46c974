"""Whether counts in a stretch report sets at all, or are chat with numbers in it.

Weighs how plainly the grammar says a set against words around it that are none of the trade's.
"""

from core.read.groups import Group, Parsed
from core.read.stream import Stream
from core.read.stretches import Stretch

NEARBY = 4
"""Lexemes on either side of a group in which strange words count against it."""


def believable(s: Stream, stretch: Stretch, parsed: Parsed, *, known: bool) -> bool:
    """Whether the stretch is a report of sets. May note that an unknown name stands where an exercise would."""
    groups = parsed.groups
    strong = any(_strong(group) for group in groups)
    strange = _strange(s, stretch, groups)
    chat = sum(s.all[i].has("CHAT") for first, last in stretch.ranges for i in range(first, last))
    if _cardio(s, stretch):
        return False
    if stretch.mention is None:
        name = _unknown_name(s, groups[0]) if strong and not chat else False
        parsed.unknown_name = name
        if strong:
            return not chat or any(_very_strong(group) for group in groups)
        if not known:
            return False
        return not strange and not chat
    if strong:
        return True
    if any(len(group.reps) > 1 for group in groups):
        return strange <= 2
    return strange == 0 and not chat


def _strong(group: Group) -> bool:
    """Said in a way that is hardly anything but a set."""
    if group.like:
        return True
    if not group.reps:
        return False
    counted = any(rep.kind == "R" for rep in group.reps)
    return (group.chained and (group.load is not None or group.lead is not None or group.sets is not None)) or (
        counted and (group.explicit or (group.load is not None and not group.bare) or group.behind is not None)
    )


def _very_strong(group: Group) -> bool:
    return group.chained and bool(group.reps) and (group.load is not None or group.lead is not None)


def _strange(s: Stream, stretch: Stretch, groups: list[Group]) -> int:
    near: set[int] = set()
    for group in groups:
        near.update(range(group.first - NEARBY, group.last + NEARBY + 1))
    inside = {i for first, last in stretch.ranges for i in range(first, last)}
    return sum(
        1
        for i in near & inside
        if s.all[i].has("WORD", "OTHER", "CLOCKTIME", "WEEKDAY", "LONG", "PCT") and i not in s.used
    )


def _cardio(s: Stream, stretch: Stretch) -> bool:
    """Walks, runs and rides are chat."""
    words = [s.all[i] for first, last in stretch.ranges for i in range(first, last)]
    return (
        any(word.has("CARDIO") for word in words) and stretch.mention is None or any(word.has("FARQ") for word in words)
    )


def _unknown_name(s: Stream, group: Group) -> bool:
    """A word that is none of the language's, right before the first count of a line: a name the catalogue lacks."""
    i = group.first - 1
    while i >= 0 and s.all[i].has("COLON", "DASH", "WITH", "AT", "ARTICLE"):
        i -= 1
    named = i >= 0 and "WORD" in s.all[i].k and len(s.all[i].k) == 1 and i not in s.used and len(s.all[i].text) > 3
    starts = i <= 0 or s.all[i - 1].has("NL", "STOP", "COMMA", "WORD", "DONE", "THEN", "AND", "FILLER", "BULLET")
    return named and starts
