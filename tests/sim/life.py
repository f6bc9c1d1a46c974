"""A simulated life: days pass, sessions happen, sets are told as a lifter tells them. Decides nothing the core does."""

from dataclasses import replace
from datetime import date, timedelta
from typing import Final

import numpy as np

from core.model.acts import SetAct
from core.model.quantities import Form, Load
from core.model.target import Session, Target, TargetSet
from tests.sim.people import Person
from tests.sim.truth import Day, Done, do_set, gain, new_day

FIRST_DAY: Final = date(2026, 1, 5)
FRESH_MIN: Final = 10.0
"""Minutes of rest before the first set of a day."""


def rest_minutes(target: TargetSet) -> float:
    """The rest that a target asks for, in minutes; two when unsaid."""
    return 2.0 if target.rest_s is None else target.rest_s / 60.0


def next_day(person: Person, on: date, rng: np.random.Generator) -> date:
    """The next day trained: now and then a session is missed, or weeks are."""
    days = person.days_between + float(rng.integers(-1, 2))
    while rng.random() < person.misses:
        days += person.days_between
    if rng.random() < person.lay_offs:
        days += float(rng.integers(14, 70))
    days = max(1.0, round(days))
    gain(person.truth, days, rng)
    return on + timedelta(days=days)


def told(person: Person, target: TargetSet, done: Done, rng: np.random.Generator) -> SetAct:
    """A set as the lifter tells it: effort often unsaid, whole repetitions in reserve, form mostly when it slipped."""
    truth = person.truth
    reps, left, clean = int(done.reps[0]), float(done.left[0]), bool(done.clean[0])
    missed = left <= 0.0 and reps < target.reps[0]
    rir: float | None = None
    if rng.random() < truth.says_effort:
        rir = 0.0 if left <= 0.0 else float(min(np.floor(done.felt[0] + 0.5), 10.0))
    form: Form | None = None
    if not clean:
        form = "loose" if rng.random() < 0.7 else "fair"
    elif rng.random() < 0.4:
        form = "clean"
    return SetAct(
        person.exercise, target.load, reps, rir=rir, form=form,
        failed=bool(missed and rng.random() < 0.5), side=None, tempo=target.tempo, range=target.range,
    )  # fmt: skip


def do_session(
    person: Person, target: Target, on: date, rng: np.random.Generator, day: Day | None = None
) -> tuple[Session, bool]:
    """All sets of a target, in order; also whether it was met: every low end at the felt reserve, form clean."""
    today = new_day(person.truth, rng) if day is None else day
    acts: list[SetAct] = []
    met = bool(target.sets)
    rest = FRESH_MIN
    for asked in target.sets:
        done = do_set(person.truth, asked, today, rest, rng)
        met = met and bool(done.met[0])
        acts.append(told(person, asked, done, rng))
        rest = rest_minutes(asked)
    return Session(on, tuple(acts), target), met


def plain_target(person: Person, load: Load) -> Target:
    """The aim itself at a load, as a coach would write it."""
    aim = person.aim
    one = TargetSet(load, aim.reps, aim.rir, aim.tempo, aim.rest_s)
    return Target("hold", (one,) * aim.sets)


def drift_load(person: Person, now: Load, last: Session, rng: np.random.Generator) -> Load:
    """A coach of no particular method: up at the top of the range, down when far short, else now and then a try."""
    reps = [act.reps or 0 for act in last.sets]
    place = person.loads.index(now)
    if min(reps) >= person.aim.reps[1]:
        place += 1
    elif min(reps) < person.aim.reps[0] - 2:
        place -= 1
    elif rng.random() < 0.25:
        place += int(rng.choice([-1, 1]))
    return person.loads[int(np.clip(place, 0, len(person.loads) - 1))]


def nearby(person: Person, now: Load, rng: np.random.Generator) -> Load:
    """A load of the kit within about 12 % of the one used now, for a what-if."""
    here = person.truth.system_kg(now)
    near = [load for load in person.loads if abs(person.truth.system_kg(load) / here - 1.0) <= 0.12]
    return near[int(rng.integers(len(near)))] if near else now


def what_if(person: Person, now: Load, low: int, rng: np.random.Generator) -> tuple[TargetSet, ...]:
    """Sets to be forecast: a nearby load, an effort, rest and tempo that the aim or a small change of it gives."""
    aim = person.aim
    rest = (aim.rest_s or 120.0) + float(rng.choice([-30.0, 0.0, 0.0, 60.0]))
    rir = float(rng.choice([aim.rir, aim.rir, 0.0, 1.0, 3.0]))
    tempo = aim.tempo
    if tempo is not None and rng.random() < 0.2:
        tempo = (min((tempo[0] or 1.0) + 1.0, 3.0), *tempo[1:])
    one = TargetSet(now, (low, low + 4), rir, tempo, max(rest, 60.0))
    return tuple(replace(one) for _ in range(aim.sets))
