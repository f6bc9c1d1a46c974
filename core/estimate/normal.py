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
    points: Floats = np.array(flat).reshape(count, dimensions)
    points = (points - points.mean(axis=0)) / points.std(axis=0)
    points.setflags(write=False)
    return points


_LATTICE: Final = 267
"""A generator of the lattice of ``LATTICE_POINTS`` points whose rows are nearly uncorrelated up to 32 of them."""
LATTICE_POINTS: Final = 509


@cache
def lattice(dimensions: int) -> Floats:
    """``LATTICE_POINTS`` fixed points, a row a dimension (32 at most), each a whole normal distribution. Read only."""
    inverse = NormalDist().inv_cdf
    normal = np.array([inverse((step + 0.5) / LATTICE_POINTS) for step in range(LATTICE_POINTS)])
    multipliers = np.array([pow(_LATTICE, axis, LATTICE_POINTS) for axis in range(dimensions)])
    points: Floats = normal[np.outer(multipliers, np.arange(LATTICE_POINTS)) % LATTICE_POINTS]
    points.setflags(write=False)
    return points


def lower_root(cov: Floats) -> Floats:
    """The lower triangular root of each covariance (states, states, many); a pivot below zero by rounding is none."""
    root = np.zeros_like(cov)
    for column in range(len(cov)):
        left = cov[column:, column]
        if column:
            left = left - (root[column:, :column] * root[column, :column]).sum(axis=1)
        pivot = np.sqrt(np.maximum(left[0], 1e-18))
        root[column:, column] = left / pivot
        root[column, column] = pivot
    return root
