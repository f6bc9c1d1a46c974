"""The people one lifter might be, for one exercise: fixed points over the shape of the curve and what goes with it.

Each point is one way a person can be made: endurance (k), shape of the curve, how fatigue bites, error of effort. What
can be told in a straight line from strength (tiring, honesty of effort, cost of slowness) is a state of the filter.
Knows nothing of any session; the filter weighs the points by what was seen.
"""

from dataclasses import dataclass
from functools import cache, lru_cache
from math import log
from typing import Final

import numpy as np

from core.estimate.normal import Floats, spread
from core.evidence.body import row_of, traits_of
from core.evidence.numbers import value

POINTS: Final = 128
"""How many people are weighed; twice as many close 0.603 of the gap of forecasts of which these close 0.600."""
_END: Final = 0.15
"""Some shapes end at a finite number of repetitions; this close to it they say nothing."""
_LONG_SET: Final = value("rest.long_set")


@dataclass(frozen=True, slots=True, eq=False)
class People:
    """One column a person: k of the curve and its shape (with its slope), scale of effort's error."""

    k: Floats
    effort: Floats
    shape: Floats
    steep: Floats


@cache
def middle_k(exercise: str) -> float:
    """k of the middle person: the exercise's own, drawn toward the common one as far as it is not confirmed."""
    common, traits = value("curve.k"), traits_of(exercise)
    trust = 1.0 if traits.k_confirmed else value("curve.k_shrink")
    return float(common * (traits.k / common) ** trust)


@cache
def people_for(exercise: str) -> People:
    """The fixed people for that exercise."""
    z = spread(POINTS, 3)
    k = middle_k(exercise) * np.exp(value("curve.k_log_sd") * z[:, 0])
    shape = value("curve.shape") + value("curve.shape_sd") * z[:, 1]
    shape = np.where(np.abs(shape) < 0.05, 0.05, shape)
    pin = 1.0 / value("curve.pin")
    return People(
        k=k,
        effort=np.exp(log(value("effort.scale")) + value("effort.scale_log_sd") * z[:, 2]),
        shape=shape,
        steep=k * (pin**shape - 1.0) / (shape * (pin - 1.0)),
    )


def strength_over_load(people: People, reps: Floats) -> tuple[Floats, Floats]:
    """ln of maximum over load for so many repetitions to failure, and its slope."""
    base = 1.0 + people.shape * people.steep * (reps - 1.0)
    inside = np.maximum(base, _END)
    slope = np.where(base > _END, people.steep / inside, people.steep * 1e-3)
    return np.log(inside) / people.shape, slope


def reps_to_failure(people: People, over: Floats) -> Floats:
    """Repetitions to failure for ln of maximum over load: the other way round."""
    grown = np.expm1(np.minimum(np.maximum(people.shape * over, -20.0), 5.0))
    return np.asarray(1.0 + grown / (people.shape * people.steep))


@lru_cache(maxsize=4096)
def rest_loss(exercise: str, rest_s: float) -> float:
    """How much one set to failure takes from the next after so much rest: 0.25 means repetitions over 1.25."""
    part = "squat" if traits_of(exercise).legs else "bench"
    minutes = max(rest_s, 20.0) / 60.0
    return float(value(f"rest.{part}_c0") * minutes ** -value(f"rest.{part}_p"))


def long_set_loss(reps: Floats) -> Floats:
    """How much more the sets before take from a long set: rest helps it less than the fit says."""
    return np.asarray(np.sqrt(np.maximum(reps, _LONG_SET) / _LONG_SET))


def usual_rest(exercise: str) -> float:
    """Rest in seconds when nobody said it."""
    return value(f"rest.default_{row_of(exercise).kind}_s")
