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


@dataclass(frozen=True, slots=True, eq=False)
class People:
    """One column a person: k of the curve, tiring (factor), bias and scale of effort, exponent of tempo."""

    k: Floats
    tiring: Floats
    bias: Floats
    effort: Floats
    slowness: Floats


@cache
def people_for(exercise: str) -> People:
    """The fixed people for that exercise."""
    z = spread(POINTS, 5)
    common = value("curve.k")
    own = traits_of(exercise).k
    centre = log(common) + value("curve.k_shrink") * log(own / common)
    return People(
        k=np.exp(centre + value("curve.k_log_sd") * z[:, 0]),
        tiring=np.exp(value("rest.log_sd") * z[:, 1]),
        bias=value("effort.bias") + value("effort.bias_sd") * z[:, 2],
        effort=np.exp(log(value("effort.scale")) + value("effort.scale_log_sd") * z[:, 3]),
        slowness=np.clip(value("tempo.exponent") + value("tempo.exponent_sd") * z[:, 4], 0.2, 1.0),
    )


def rest_loss(exercise: str, rest_s: float) -> float:
    """How much one set to failure takes from the next after so much rest: 0.25 means repetitions over 1.25."""
    part = "squat" if traits_of(exercise).legs else "bench"
    minutes = max(rest_s, 20.0) / 60.0
    return float(value(f"rest.{part}_c0") * minutes ** -value(f"rest.{part}_p"))


def usual_rest(exercise: str) -> float:
    """Rest in seconds when nobody said it."""
    return value(f"rest.default_{row_of(exercise).kind}_s")
