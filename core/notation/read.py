"""TEXT -> PLAN. Reads line by line; what is not understood comes back with its line and what would do.

Nothing is guessed: a line that is half understood is left out whole and named.
"""

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, replace
from datetime import time
from typing import Final

from core.model.plan import Plan, Planned, TrainingDay
from core.notation.clauses import Trouble, prescription
from core.notation.words import WEEKDAYS

FindExercise = Callable[[str], tuple[str, ...]]
"""A name as written -> the ids it may mean: one when it is clear, several when it is not, none when unknown."""

_BULLET: Final = re.compile(r"\s*(?:[-*•·]\s+|\d{1,2}[.)]\s+|[a-hA-H]\d?[.)]\s+)?")
_TIME: Final = re.compile(r"\b(?:at\s+)?([01]?\d|2[0-3])(?:[:.h]([0-5]\d))?\s*(am|pm)?(?=\s|,|$)", re.IGNORECASE)
_DAY_WORD: Final = re.compile(r"[A-Za-z]+")
_DAY_JOIN: Final = frozenset({"and", "on", "every"})
_PRESCRIBED: Final = re.compile(r"(?<![\w.])\d+\s*(?:x|×|\*|sets?\b)", re.IGNORECASE)
_NOTE: Final = re.compile(r"\s*(?:\(([^()]*)\)|\"([^\"]*)\"|note:\s*(.*))\s*$", re.IGNORECASE)
_EASIER: Final = re.compile(
    r"(?:every\s+(\d{1,2})(?:th|rd|nd|st)\s+week\s+(?:is\s+)?(?:an?\s+)?easier(?:\s+week)?)\.?$", re.IGNORECASE
)
_BLOCK: Final = re.compile(r"(\d{1,2})\s+weeks?,?\s+then\s+(?:an?|one)\s+easier(?:\s+(?:one|week))?\.?$", re.IGNORECASE)
_NOON: Final = 12
_DEFAULT_TIME: Final = time(18, 0)


@dataclass(frozen=True, slots=True)
class Unread:
    """A line that was left out: its number from 1, its text, what is wrong with it, and what would do."""

    line: int
    text: str
    trouble: Trouble


@dataclass(frozen=True, slots=True)
class PlanReading:
    """The plan as understood, and the lines that were not."""

    plan: Plan
    unread: tuple[Unread, ...] = ()


def read_plan(text: str, find: FindExercise) -> PlanReading:
    """Read a plan as a coach writes it: a line for a day, a line for each exercise under it."""
    days: list[TrainingDay] = []
    unread: list[Unread] = []
    current: tuple[int, ...] = ()
    easier: int | None = None
    for number, line in _lines(text):
        if block := _easier_week(line):
            easier = block
        elif (opened := _day_line(line)) is not None:
            current = tuple(range(len(days), len(days) + len(opened)))
            days.extend(opened)
        elif not current:
            unread.append(Unread(number, line, Trouble("no_day")))
        else:
            done = _exercise_line(line, find) if _PRESCRIBED.search(line) else _loose_line(line, days[current[0]], find)
            if isinstance(done, Trouble):
                unread.append(Unread(number, line, done))
                continue
            for index in current:
                days[index] = _with(days[index], done)
    ordered = tuple(sorted((d for d in days if d.exercises), key=lambda d: (d.weekday, d.at)))
    return PlanReading(Plan(ordered, easier_every=easier), (*unread, *_clashes(ordered)))


def _lines(text: str) -> Iterator[tuple[int, str]]:
    for number, raw in enumerate(text.splitlines(), 1):
        line = raw.strip().rstrip(";")
        if line and not line.startswith("#"):
            yield number, line


def _easier_week(line: str) -> int | None:
    if found := _EASIER.match(line):
        return int(found.group(1))
    if found := _BLOCK.match(line):
        return int(found.group(1)) + 1
    return None


def _day_line(line: str) -> tuple[TrainingDay, ...] | None:
    """ "Mon and Thu 18:30 Legs" -> two days. None: it is no day line."""
    weekdays: list[int] = []
    rest = line
    while found := _DAY_WORD.match(rest):
        word = found.group().lower()
        if word in WEEKDAYS:
            weekdays.append(WEEKDAYS[word])
        elif word not in _DAY_JOIN or (not weekdays and word == "and"):
            break
        rest = rest[found.end() :].lstrip(" ,/+&:-")
    if not weekdays or _PRESCRIBED.search(rest):
        return None
    at, title = _time_of(rest)
    return tuple(TrainingDay(day, at, title, ()) for day in dict.fromkeys(weekdays))


def _time_of(rest: str) -> tuple[time, str]:
    found = _TIME.search(rest)
    if not found or not (found.group(2) or found.group(3) or found.group().lower().startswith("at")):
        return _DEFAULT_TIME, _title(rest)
    hour, minute, half = int(found.group(1)), int(found.group(2) or 0), (found.group(3) or "").lower()
    if half:
        hour = hour % _NOON + (_NOON if half == "pm" else 0)
    return time(hour, minute), _title(rest[: found.start()] + rest[found.end() :])


def _title(text: str) -> str:
    return text.strip(" ,:-–").strip()


def _exercise_line(line: str, find: FindExercise) -> Planned | Trouble:
    body = line[_BULLET.match(line).end() :]  # type: ignore[union-attr]  # the pattern matches the empty text too
    note = None
    if marked := _NOTE.search(body):
        note = next(group for group in marked.groups() if group is not None).strip() or None
        body = body[: marked.start()]
    start = _PRESCRIBED.search(body)
    if start is None:
        return Trouble("no_sets")
    name = body[: start.start()].strip(" ,:-–")
    if not name:
        return Trouble("no_name")
    ids = find(name)
    if len(ids) != 1:
        return Trouble("which_exercise" if ids else "unknown_exercise", name=name, choices=ids)
    aim = prescription(body[start.start() :])
    return aim if isinstance(aim, Trouble) else Planned(ids[0], aim, note)


def _loose_line(line: str, day: TrainingDay, find: FindExercise) -> str | Trouble:
    """A line without sets under an exercise is a note to it, unless it names an exercise: then the sets are missing."""
    if find(line):
        return Trouble("no_sets", name=line)
    return line if day.exercises else Trouble("no_sets", name=line)


def _with(day: TrainingDay, item: Planned | str) -> TrainingDay:
    if isinstance(item, Planned):
        return replace(day, exercises=(*day.exercises, item))
    last = day.exercises[-1]
    note = f"{last.note} {item}" if last.note else item
    return replace(day, exercises=(*day.exercises[:-1], replace(last, note=note)))


def _clashes(days: tuple[TrainingDay, ...]) -> tuple[Unread, ...]:
    seen: set[int] = set()
    doubled = [day for day in days if day.weekday in seen or seen.add(day.weekday)]  # type: ignore[func-returns-value]
    return tuple(Unread(0, day.title, Trouble("day_twice", name=day.title)) for day in doubled)
