"""One member's season in the real core and the real scoring: advised, trained, told (truly or not), judged, counted.

Luck hangs on member, day, exercise and set alone, so that a liar and the honest twin have the same.
"""

from collections.abc import Callable
from copy import deepcopy
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from typing import Final

import numpy as np

from core import advising
from core.challenge.judging import Surprise, beyond_belief, considered, result_of, surprise
from core.decide.judge import as_asked
from core.model.acts import SetAct
from core.model.challenge import Attempt, Challenge, DayDone, Entrant, Record, Stay, Word
from core.model.target import Session, Target, TargetSet
from tests.sim.life import FRESH_MIN, rest_minutes, told
from tests.sim.people import Person
from tests.sim.season_people import Member
from tests.sim.season_telling import Done, Pace, is_live, messages
from tests.sim.truth import do_set, gain, new_day

STARTS: Final = date(2026, 3, 2)
CHALLENGE: Final = Challenge("Six weeks", STARTS, 6)
BEFORE_WEEKS: Final = 2
DAYS_OF_WEEK: Final = (0, 3)

ONCE: Final = Pace("once", 1.0)
REAL: Final = Pace("sets", 1.0)

Tell = Callable[[SetAct, int], SetAct]
"""How a set is told in a week of the challenge: as it was, or better."""


@dataclass(frozen=True, slots=True)
class Manner:
    """How a member reports.

    ``invents``: the share of sessions told in one message but not done. ``skips``: the same share not done, not told.
    """

    tell: Tell = lambda act, _week: act
    invents: float = 0.0
    skips: float = 0.0


@dataclass(slots=True)
class Lived:
    """A season: the record as it stands before any word of the coach, and how many reports waited for one."""

    record: Record
    held: int = 0
    results: list[str] = field(default_factory=list)
    sessions: int = 0
    late: int = 0
    """Of the sessions done and told in more than one message, those not taken as told live. The coach says yes."""
    invented: dict[date, tuple[Done, ...]] = field(default_factory=dict)


def season(member: Member, number: int, manner: Manner) -> Lived:
    """Two weeks before the challenge and its six, day by day."""
    people = [deepcopy(person) for person in member.people]
    known = [advising.begin(person.lifter, person.exercise) for person in people]
    days: list[DayDone] = []
    lived = Lived(Record(Entrant(number, f"m{number}", (Stay(STARTS - timedelta(days=1)),)), ()))
    first = STARTS - timedelta(weeks=BEFORE_WEEKS)
    for at in range(7 * (BEFORE_WEEKS + CHALLENGE.weeks)):
        on = first + timedelta(days=at)
        if on.weekday() not in DAYS_OF_WEEK:
            continue
        luck = np.random.default_rng([member.seed, at])
        for person in people:
            gain(person.truth, 3.5, luck)
        honest_before = on < STARTS
        days.append(_day(member, people, known, on, luck, Manner() if honest_before else manner, lived))
    lived.record = replace(lived.record, days=tuple(days))
    return lived


def _day(
    member: Member, people: list[Person], known: list[advising.Progress], on: date, luck: np.random.Generator,
    manner: Manner, lived: Lived,
) -> DayDone:  # fmt: skip
    keeps, lies = luck.random() < member.habits.keeps, luck.random()
    invented = lies < manner.invents
    trains = keeps and not invented and not lies < manner.skips
    attempts = []
    session: list[Done] = []
    week = CHALLENGE.week_of(on) or 0
    for place, person in enumerate(people):
        own = np.random.default_rng([member.seed, on.toordinal(), place])
        advice = advising.advise_from(known[place], person.lifter, person.exercise, person.aim, on)
        target = Target(advice.way, advice.sets)
        sets: tuple[SetAct, ...] = ()
        if invented:
            sets = tuple(_as_planned(person, one) for one in target.sets)
        elif trains:
            sets = tuple(manner.tell(act, week) for act in _sets(member, person, target, own))
        session.append(Done(target, sets))
        attempts.append(_attempt(person, target, sets, known[place], on, lived))
        if sets:
            known[place] = advising.absorb(known[place], person.lifter, person.aim, Session(on, sets, target))
    live = is_live(session, ONCE if invented else member.pace, on)
    if invented:
        lived.invented[on] = tuple(session)
    elif messages(session, member.pace) > 1:
        lived.sessions += 1
        lived.late += not live
    return DayDone(on, tuple(attempts), word="waits" if invented and not live else "unneeded")


def _sets(member: Member, person: Person, target: Target, luck: np.random.Generator) -> tuple[SetAct, ...]:
    """The sets of a target as this member does them: some left out, some ended too soon, else as they go."""
    today, telling = new_day(person.truth, luck), np.random.default_rng(int(luck.integers(2**31)))
    leaves_out, slacks = luck.random() < member.habits.leaves_out, luck.random() < member.habits.slacks
    count = len(target.sets) - 1 if leaves_out else len(target.sets)
    acts, rest = [], FRESH_MIN
    for asked in target.sets[:count]:
        easy = replace(asked, rir=(asked.rir or 0.0) + 3.0, reps=(1, asked.reps[1])) if slacks else asked
        pushed = person.truth.pushes
        person.truth.pushes = pushed and not slacks
        done = do_set(person.truth, easy, today, rest, luck)
        person.truth.pushes = pushed
        acts.append(told(person, asked, done, telling))
        rest = rest_minutes(asked)
    return tuple(acts)


def _attempt(
    person: Person, target: Target, sets: tuple[SetAct, ...], known: advising.Progress, on: date, lived: Lived
) -> Attempt:
    if not sets:
        lived.results.append("none")
        return Attempt(person.exercise, target.way, "none")
    asked = considered(target, sets)
    seen = advising.advise_from(known, person.lifter, person.exercise, person.aim, on, (), asked)
    off = surprise(sets, seen.forecast) if known.seen is not None else Surprise()
    word: Word = "waits" if beyond_belief(off) else "unneeded"
    result = result_of(target, sets, as_asked, off)
    lived.held += word == "waits" and on >= STARTS
    lived.results.append(result if word == "unneeded" else "held")
    return Attempt(person.exercise, target.way, result, word=word)


def _as_planned(person: Person, asked: TargetSet) -> SetAct:
    """A set made up: just what was asked."""
    return SetAct(person.exercise, asked.load, asked.reps[0], rir=asked.rir, tempo=asked.tempo, range=asked.range)


def said_yes(lived: Lived) -> Lived:
    """The record once the coach has said yes to all that waited, as to one who tells the truth."""
    days = tuple(
        replace(day, word="unneeded", attempts=tuple(replace(one, word="unneeded") for one in day.attempts))
        for day in lived.record.days
    )
    return replace(lived, record=replace(lived.record, days=days))


def told_twice(lived: Lived) -> Lived:
    """The same season, every session told once more."""
    return replace(lived, record=replace(lived.record, days=lived.record.days * 2))


def paced(lived: Lived) -> Lived:
    """The same season, invented sessions told set by set as if they happened."""
    days = tuple(
        replace(day, word="unneeded")
        if day.on in lived.invented and is_live(lived.invented[day.on], REAL, day.on)
        else day
        for day in lived.record.days
    )
    return replace(lived, record=replace(lived.record, days=days))


def inflated(act: SetAct, _week: int) -> SetAct:
    """A fifth more repetitions than were done."""
    return replace(act, reps=round(1.2 * (act.reps or 0)), failed=False)


def patient(act: SetAct, week: int) -> SetAct:
    """A little more than was done, and more each week: 4 of a hundred in the first, 24 in the sixth."""
    return replace(act, reps=int((1.0 + 0.04 * week) * (act.reps or 0) + 0.5), failed=False)
