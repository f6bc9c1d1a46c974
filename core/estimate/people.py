"""The people one lifter might be, for one exercise: fixed points over what does not change from day to day.

Each point is one way a person can be made: endurance (k), tiring, honesty of effort, its error, cost of slowness.
Knows nothing of any session; the filter weighs the points by what was seen.
"""

from dataclasses import dataclass
from functools import cache
from math import log
from typing import Final

import numpy as np

from core.estimate.normal import Floats, spread
from core.evidence.body import row_of, traits_of
from core.evidence.numbers import value

POINTS: Final = 384
"""How many people are weighed; more changed nothing when tried."""
_END: Final = 0.15
"""Some shapes end at a finite number of repetitions; this close to it they say nothing."""


@dataclass(frozen=True, slots=True, eq=False)
class People:
    """One column a person: k of the curve, tiring (factor), bias and scale of effort, exponent of tempo."""

    k: Floats
    tiring: Floats
    bias: Floats
    effort: Floats
    slowness: Floats
    shape: Floats
    steep: Floats


@cache
def people_for(exercise: str) -> People:
    """The fixed people for that exercise."""
    z = spread(POINTS, 6)
    common = value("curve.k")
    own = traits_of(exercise).k
    centre = log(common) + value("curve.k_shrink") * log(own / common)
    k = np.exp(centre + value("curve.k_log_sd") * z[:, 0])
    shape = value("curve.shape") + value("curve.shape_sd") * z[:, 5]
    shape = np.where(np.abs(shape) < 0.05, 0.05, shape)
    pin = 1.0 / value("curve.pin")
    return People(
        k=k,
        tiring=np.exp(value("rest.log_sd") * z[:, 1]),
        bias=value("effort.bias") + value("effort.bias_sd") * z[:, 2],
        effort=np.exp(log(value("effort.scale")) + value("effort.scale_log_sd") * z[:, 3]),
        slowness=np.clip(value("tempo.exponent") + value("tempo.exponent_sd") * z[:, 4], 0.2, 1.0),
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
    grown = np.expm1(np.clip(people.shape * over, -20.0, 5.0))
    return np.asarray(1.0 + grown / (people.shape * people.steep))


def rest_loss(exercise: str, rest_s: float) -> float:
    """How much one set to failure takes from the next after so much rest: 0.25 means repetitions over 1.25."""
    part = "squat" if traits_of(exercise).legs else "bench"
    minutes = max(rest_s, 20.0) / 60.0
    return float(value(f"rest.{part}_c0") * minutes ** -value(f"rest.{part}_p"))


def long_set_loss(reps: Floats) -> Floats:
    """How much more the sets before take from a long set: rest helps it less than the fit says."""
    longest = value("rest.long_set")
    return np.asarray(np.sqrt(np.maximum(reps, longest) / longest))


def usual_rest(exercise: str) -> float:
    """Rest in seconds when nobody said it."""
    return value(f"rest.default_{row_of(exercise).kind}_s")
