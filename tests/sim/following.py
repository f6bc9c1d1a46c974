"""Measure (c): lifters of all kits, units and experience do what is advised for 24 sessions; what comes of it."""

from collections import Counter
from dataclasses import dataclass, field
from typing import Final

import numpy as np

from core.model.target import Advice, Session, Target, TargetSet
from tests.sim.always import Breach, breaches
from tests.sim.asking import Asker
from tests.sim.coaches import Coach, harder
from tests.sim.life import FIRST_DAY, do_session, next_day, rest_minutes
from tests.sim.people import Person, fresh_reps
from tests.sim.yardsticks import oracle

STEPS: Final = ("form", "reps", "tempo", "range", "rest", "load")


@dataclass(slots=True)
class Following:
    """What came of following: targets met, how far the low ends reach, steps, ways, limits broken."""

    asked: int = 0
    met: int = 0
    asked_of: Counter[str] = field(default_factory=Counter)
    met_of: Counter[str] = field(default_factory=Counter)
    reach: list[tuple[float, float]] = field(default_factory=list)
    steps: int = 0
    lifters: int = 0
    strength_gained: list[float] = field(default_factory=list)
    work_gained: list[float] = field(default_factory=list)
    broken: list[tuple[Breach, str]] = field(default_factory=list)
    chance: list[tuple[float, bool, float]] = field(default_factory=list)
    first_met: list[bool] = field(default_factory=list)

    def share_met(self) -> float:
        """Targets met of those set, the finding of a start apart."""
        return self.met / max(self.asked, 1)

    def how_far(self) -> float:
        """Low ends asked over what the lifters could do at those sets and that reserve (ease apart)."""
        return sum(low for low, _ in self.reach) / max(sum(could for _, could in self.reach), 1.0)


def follow(person: Person, seed: int, sessions: int, tally: Following) -> None:
    """One lifter follows the advice; each answer is also put to the outside checker."""
    rng = np.random.default_rng([seed, 3])
    asker, on = Asker(person), FIRST_DAY
    strength, first_worth = person.truth.ln_strength, None
    worth = 0.0
    tally.lifters += 1
    for _ in range(sessions):
        advice = asker.advise(on)
        tally.broken += [(breach, person.exercise) for breach in breaches(asker.question(on), advice)]
        target = _as_done(person, advice, bool(asker.past))
        if not target.sets:
            tally.asked_of[advice.way] += 1
            on = next_day(person, on, rng)
            continue
        session, met = do_session(person, target, on, rng)
        _count(person, advice, target, session, met, tally)
        worth = worth_of(person, target)
        first_worth = worth if first_worth is None else first_worth
        asker.keep(session)
        on = next_day(person, on, rng)
    tally.strength_gained.append(person.truth.ln_strength - strength)
    tally.work_gained.append(worth - (first_worth or worth))


def follow_coach(person: Person, seed: int, sessions: int, tally: Following, coach: Coach) -> None:
    """The same lifter under another coach; a step is a met target that was more than the last one asked."""
    rng = np.random.default_rng([seed, 3])
    past: list[Session] = []
    on, strength, best, first_worth = FIRST_DAY, person.truth.ln_strength, 0.0, None
    tally.lifters += 1
    for number in range(sessions):
        target = coach(person, past, number)
        session, met = do_session(person, target, on, rng)
        best = worth_of(person, target)
        first_worth = best if first_worth is None else first_worth
        if past:
            tally.asked += 1
            tally.met += met
            tally.steps += met and harder(target, past[-1])
            able, _ = oracle(person, target.sets, number, 60)
            tally.reach += [(s.reps[0], could) for s, could in zip(target.sets, able, strict=True)]
        past.append(session)
        on = next_day(person, on, rng)
    tally.strength_gained.append(person.truth.ln_strength - strength)
    tally.work_gained.append(best - (first_worth or best))


def _as_done(person: Person, advice: Advice, known: bool) -> Target:
    """The target as a lifter takes it: a start is done as advised, unless warming up shows that it is far off."""
    sets = tuple(_own(person, each, advice.way == "first" and not known) for each in advice.sets)
    return Target(advice.way, sets)


def _own(person: Person, asked: TargetSet, first: bool) -> TargetSet:
    if asked.load is not None and not first:
        return asked
    rir = asked.rir or 0.0
    if asked.load is not None:
        fresh = fresh_reps(person.truth, asked.load)
        if asked.reps[0] + rir - 3.0 <= fresh <= asked.reps[1] + rir + 10.0:
            return asked
    return TargetSet(person.start, asked.reps, asked.rir, asked.tempo, asked.rest_s, asked.range)


def _count(person: Person, advice: Advice, target: Target, session: Session, met: bool, tally: Following) -> None:
    tally.asked_of[advice.way] += 1
    tally.met_of[advice.way] += met
    if advice.way == "first":
        tally.first_met.append(met)
        return
    tally.asked += 1
    tally.met += met
    able, truth_chance = oracle(person, target.sets, tally.asked, 60)
    tally.chance.append((advice.chance, met, truth_chance))
    if advice.way in STEPS:
        tally.steps += met
    if advice.way != "ease":
        tally.reach += [(s.reps[0], could) for s, could in zip(target.sets, able, strict=True)]


def worth_of(person: Person, target: Target) -> float:
    """How hard a target is, in the log of the strength it takes of this lifter: all ways in one currency."""
    total = 0.0
    for at, asked in enumerate(target.sets):
        reps = asked.reps[0] + (asked.rir or 0.0)
        reps *= (sum(part or 0.0 for part in asked.tempo or (3.0,)) / 3.0) ** person.truth.tempo_b
        reps *= 1.0 + 0.15 * at / max(rest_minutes(asked), 0.5)
        total += float(np.log(person.truth.system_kg(asked.load) * (1.0 + person.truth.k * (reps - 1.0))))
    return total / len(target.sets)
