"""The facts of each picture as rows of words, the head first. They travel in the picture, for whoever cannot see it.

Knows core's values and no drawing.
"""

import json
from collections.abc import Callable
from typing import Final

from core.model.challenge import Table
from core.model.course import Ahead, Course, Glance, PictureWords, WeekView
from core.model.quantities import from_kg

Rows = tuple[tuple[str, ...], ...]

FACTS: Final = "Facts"
"""The name under which a picture carries its rows, as JSON."""

PNG: Final = b"\x89PNG\r\n\x1a\n"
"""How a picture begins."""
_AROUND: Final = 12
"""Bytes around the data of each part: its size, its kind, its checksum."""


def course_facts(course: Course) -> Rows:
    """Each session: its day, the estimate with its doubt, the way that moved."""
    shown = _shown(course.unit, in_reps=course.in_reps)
    unit = "repetitions" if course.in_reps else course.unit
    rows = ((str(p.on), shown(p.estimate), f"{shown(p.low)} to {shown(p.high)}", p.way or "") for p in course.points)
    return (("day", f"estimate, {unit}", "likely between", "moved up"), *rows)


def week_facts(week: WeekView) -> Rows:
    """Each muscle: its sets, and what was asked."""
    rows = ((one.muscle.replace("-", " "), f"{one.sets:g}", f"{one.low:g} to {one.high:g}") for one in week.muscles)
    return (("muscle", "sets", "asked for"), *rows)


def standings_facts(table: Table) -> Rows:
    """Each place: who, with how many points of a hundred."""
    placed = (one for one in table.standings if one.points is not None)
    rows = ((str(one.place), one.shown, str(one.points), f"{one.kept} of {one.planned}") for one in placed)
    return (("place", "name", "points of 100", "sessions kept"), *rows)


def overview_facts(people: tuple[Glance, ...], words: PictureWords) -> Rows:
    """Each person: sessions kept of those planned, and steps, by week, the newest first."""
    weeks = max((len(one.weeks) for one in people), default=0)
    said = words.facts
    head = (said["name"], *(said[_BACK.get(ago, "weeks")].format(n=ago) for ago in range(weeks)))
    rows = (
        (one.name, *(said["week"].format(kept=k, planned=p, steps=steps) for k, p, steps in reversed(one.weeks)))
        for one in people
    )
    return (head, *rows)


_BACK: Final = {0: "this", 1: "last"}
"""The words for this week and the last; others are counted."""


def ahead_facts(ahead: Ahead) -> Rows:
    """Each day: the middle of each course with its span."""
    shown, said = _shown(ahead.unit, in_reps=ahead.in_reps), ahead.words.facts
    days = (
        (str(on), *(said["span"].format(n=shown(n), low=shown(low), high=shown(high)) for n, low, high in at))
        for on, *at in zip(ahead.days, *(rows for _, rows in ahead.courses), strict=False)
    )
    return ((said["day"], *(name for name, _ in ahead.courses)), *days)


def facts_in(png: bytes) -> Rows:
    """The rows that a picture of ours carries; none when it carries none."""
    key, at = FACTS.encode() + b"\0", len(PNG)
    while at < len(png):
        size = int.from_bytes(png[at : at + 4], "big")
        kind, data = png[at + 4 : at + 8], png[at + 8 : at + 8 + size]
        if kind == b"tEXt" and data.startswith(key):
            return tuple(tuple(str(cell) for cell in row) for row in json.loads(data[len(key) :]))
        at += size + _AROUND
    return ()


def _shown(unit: str, *, in_reps: bool) -> Callable[[float], str]:
    if in_reps:
        return lambda value: f"{value:.1f}"
    return lambda kg: f"{from_kg(kg, 'lb' if unit == 'lb' else 'kg'):.1f}"
