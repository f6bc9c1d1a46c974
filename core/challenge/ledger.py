"""What each entrant could earn and did: records in, chances out, by the rows of the scoring.

Knows no places and no names. Nothing is kept here: the ledger is made anew from the facts when asked for.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import replace

from core.challenge.scoring import EXERCISE, SESSION, WAYS, row_for
from core.evidence.numbers import value
from core.model.challenge import Attempt, Challenge, Chance, DayDone, Record
from core.model.quantities import Way


def ledger(challenge: Challenge, records: Iterable[Record]) -> tuple[Chance, ...]:
    """Every chance of every entrant, by entrant and day."""
    return tuple(chance for record in records for chance in chances_of(challenge, record))


def chances_of(challenge: Challenge, record: Record) -> tuple[Chance, ...]:
    """One entrant's chances, oldest first; of two facts about the same day the later one stands."""
    found: list[Chance] = []
    seen: Counter[tuple[int, str]] = Counter()
    offs: Counter[int] = Counter()
    for day in sorted({one.on: one for one in record.days}.values(), key=lambda one: one.on):
        week = challenge.week_of(day.on)
        if week is None or not takes_part(record, day):
            continue
        offs[week] += day.off
        free = day.off and offs[week] <= value("challenge.off_week")
        found += _of_day(challenge, record.entrant.who, week, replace(day, off=free), seen)
    return tuple(found)


def session_worth(challenge: Challenge) -> float:
    """What a session and its exercises are worth together."""
    return 2.0 if challenge.counts == "both" else 1.0


def takes_part(record: Record, day: DayDone) -> bool:
    """Whether the entrant had joined before that day, had not left, and was on no pause."""
    entrant = record.entrant
    joined = any(stay.holds(day.on) and stay.since < day.on for stay in entrant.stays)
    return joined and not any(pause.holds(day.on) for pause in entrant.pauses)


def _of_day(challenge: Challenge, who: int, week: int, day: DayDone, seen: Counter[tuple[int, str]]) -> list[Chance]:
    row = row_for(SESSION, day)
    found: list[Chance] = []
    if row.share is not None:
        worth = 0.0 if challenge.counts == "steps" else 1.0
        found.append(Chance(who, day.on, week, None, worth, worth * row.share(), row.id))
    if challenge.counts != "sessions":
        found += _of_exercises(who, week, day, row.id, seen)
    return found


def _of_exercises(who: int, week: int, day: DayDone, session: str, seen: Counter[tuple[int, str]]) -> list[Chance]:
    attempts = tuple({one.exercise: one for one in day.attempts}.values())
    found = []
    for one in attempts:
        seen[week, one.exercise] += 1
        row = row_for(EXERCISE, _under(one, session))
        none = row.share is None or (session in NO_CHANCE and one.result == "none")
        if none or row.share is None or seen[week, one.exercise] > value("challenge.exercise_week"):
            continue
        worth = 1.0 / len(attempts)
        way: Way | None = one.way if row.id == "exercise.step" and one.way in WAYS else None  # type: ignore[assignment]
        found.append(Chance(who, day.on, week, one.exercise, worth, worth * row.share(), row.id, way))
    return found


NO_CHANCE = frozenset(row.id for row in SESSION if row.share is None)
"""Rows by which a whole session is no chance: then neither is an exercise of it that was not done."""

_WORD_OF_SESSION = {"session.waits": "waits", "session.refused": "no"}


def _under(one: Attempt, session: str) -> Attempt:
    """An exercise under its session: one that waits for the coach's word takes its exercises with it."""
    word = _WORD_OF_SESSION.get(session)
    return replace(one, word=word) if word is not None else one  # type: ignore[arg-type]
