"""Members of a simulated group: all strengths, both sexes, body weights, kits, years of training; some exercises.

Built from the simulated lifters of this folder; women's body weights and loads are scaled by a judgement (0.85, 0.72).
"""

from dataclasses import dataclass, replace
from typing import Final

import numpy as np

from core.evidence.exercises import EXERCISES
from tests.sim.families import FAMILIES
from tests.sim.people import (
    STRENGTH_OF,
    Person,
    _draw_aim,
    _draw_truth,
    _fit,
    _served,
    choices,
    draw_person,
)
from tests.sim.season_telling import Pace, own_pace

WEIGHT_OF_WOMEN: Final = 0.85
HELD_BY_WOMEN: Final = 0.72
MOST_EXERCISES: Final = 2


@dataclass(frozen=True, slots=True)
class Habits:
    """How diligent someone is, as probabilities: a planned session is kept, sets are left out, sets end too soon."""

    keeps: float
    leaves_out: float
    slacks: float


EVEN: Final = Habits(0.9, 0.05, 0.05)
"""The same for everyone."""
FULL: Final = Habits(1.0, 0.0, 0.0)
"""Everyone does all that is asked: what is left is the scoring's own doing."""


def habits_of(diligence: float, rng: np.random.Generator) -> Habits:
    """Habits that follow one diligence from 0 to 1, each with some scatter of its own."""

    def near(idle: float, best: float) -> float:
        return float(np.clip(idle + (best - idle) * diligence + rng.normal(0.0, 0.05), 0.0, 1.0))

    return Habits(near(0.45, 1.0), near(0.35, 0.0), near(0.5, 0.0))


@dataclass(slots=True)
class Member:
    """One member: a simulated lifter for each exercise of the plan, habits, and the seed of the luck."""

    seed: int
    people: list[Person]
    woman: bool
    habits: Habits
    diligence: float
    pace: Pace
    """How sessions are told that happened."""

    @property
    def strength(self) -> float:
        """The mean over exercises of ln strength over that of a middling lifter of 75 kg: absolute, by its rank."""
        return float(np.mean([p.truth.ln_strength - _middling(p) for p in self.people]))

    @property
    def bodyweight(self) -> float:
        """Kilograms."""
        return self.people[0].truth.bodyweight_kg

    @property
    def kit(self) -> int:
        """How many different loads the kit makes for the plan's exercises."""
        return sum(len(person.loads) for person in self.people) // len(self.people)

    @property
    def weeks_trained(self) -> float:
        """Years of training, in weeks."""
        return self.people[0].truth.weeks_trained


def _middling(person: Person) -> float:
    per_hand = EXERCISES[person.exercise].load_kind == "per_hand"
    held = STRENGTH_OF[person.exercise] * 75.0 * (person.truth.hands if per_hand else 1)
    return float(np.log(person.truth.moved_share * 75.0 + held))


def draw_member(seed: int, number: int, *, varied: bool) -> Member:
    """A member; the same seed and number give the same one, whatever the habits."""
    rng = np.random.default_rng([seed, 31, number])
    family = FAMILIES[number % len(FAMILIES)]
    woman = bool(rng.random() < 0.5)
    first = draw_person(rng, family)
    others = [name for name in first.gym.exercises if name != first.exercise]
    rng.shuffle(others)
    names = [first.exercise, *others[: int(rng.integers(0, MOST_EXERCISES))]]
    people = [_sexed(replace(first, exercise=name), woman, rng) for name in names]
    own = np.random.default_rng([seed, 32, number])
    diligence = float(own.random())
    habits = habits_of(diligence, own) if varied else EVEN
    pace = own_pace(np.random.default_rng([seed, 33, number]))
    return Member(seed * 1_000_003 + number, people, woman, habits, diligence, pace)


def _sexed(like: Person, woman: bool, rng: np.random.Generator) -> Person:
    """The same person on an exercise of the gym, drawn until a coach would plan it."""
    bodyweight = like.truth.bodyweight_kg
    if woman:
        bodyweight = max(44.0, bodyweight * WEIGHT_OF_WOMEN)
    while True:
        truth = _draw_truth(rng, like.truth.family, like.exercise, like.lifter.experience, bodyweight)
        truth.weeks_trained = like.truth.weeks_trained
        truth.pushes, truth.says_effort = like.truth.pushes, like.truth.says_effort
        if woman:
            body = truth.moved_share * bodyweight
            truth.ln_strength = float(np.log(body + HELD_BY_WOMEN * (np.exp(truth.ln_strength) - body)))
        loads = choices(like.exercise, like.gym)
        start, aim = _fit(rng, truth, _draw_aim(rng, EXERCISES[like.exercise].kind), loads)
        lifter = replace(like.lifter, bodyweight_kg=round(bodyweight, 1))
        person = replace(like, lifter=lifter, truth=truth, loads=loads, start=start, aim=aim)
        if _served(person):
            return person
