"""The normal distribution, and fixed spread-out points of it: mathematics only, no number of the trade.

Points come from the additive recurrence on the generalised golden ratio, so they are the same on every machine and
in every run. Nothing here is random.
"""

from functools import cache
from statistics import NormalDist
from typing import Final

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

_LOG_SQRT_2PI: Final = 0.9189385332046727
# Chebyshev fit of erfc, relative error below 1.2e-7 everywhere (a standard one of numerical analysis).
_ERFC: Final = (
    -1.26551223, 1.00002368, 0.37409196, 0.09678418, -0.18628806, 0.27886807, -1.13520398, 1.48851587, -0.82215223,
    0.17087277,
)  # fmt: skip


def log_cdf(z: Floats) -> Floats:
    """ln of the chance of a standard normal below ``z``; exact far into the tail."""
    x = np.abs(z) * np.sqrt(0.5)
    t = 1.0 / (1.0 + 0.5 * x)
    poly = np.zeros_like(x)
    for coefficient in reversed(_ERFC):
        poly = poly * t + coefficient
    log_tail = np.log(0.5 * t) - x * x + poly
    return np.asarray(np.where(z < 0, log_tail, np.log1p(-np.exp(np.minimum(log_tail, -0.6)))))


def hazard(z: Floats) -> Floats:
    """Density over distribution at ``z``: how far a lower bound pulls."""
    return np.asarray(np.exp(-0.5 * z * z - _LOG_SQRT_2PI - log_cdf(z)))


@cache
def spread(count: int, dimensions: int) -> Floats:
    """``count`` fixed standard normal points in so many dimensions, spread evenly. Read only."""
    root = 2.0
    for _ in range(60):
        root = (1.0 + root) ** (1.0 / (dimensions + 1))
    steps = np.array([(1.0 / root) ** (axis + 1) for axis in range(dimensions)])
    uniform = (0.5 + np.outer(np.arange(1, count + 1), steps)) % 1.0
    inverse = NormalDist().inv_cdf
    flat = [inverse(min(max(float(u), 1e-9), 1 - 1e-9)) for u in uniform.ravel()]
    points = np.array(flat).reshape(count, dimensions)
    points.setflags(write=False)
    return points
