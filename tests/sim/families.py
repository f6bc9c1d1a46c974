"""Families of truth: shapes of the repetitions-to-load curve and forms of fatigue. Knows nothing of ``core``.

Several families exist so that a core cannot be tuned to one of them. All curves are pinned to the same repetitions
at 80 % of the one-repetition maximum and differ elsewhere, as the published formulas do.
"""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Final

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

MOST_REPS: Final = 60.0
"""Nobody here does more; keeps curves with an asymptote finite."""

PIN: Final = 0.8
"""Share of the maximum at which all shapes agree."""


def shifted_line(share: Floats, k: float) -> Floats:
    """Reps to failure when 1/share is a line in the repetitions (the family of Epley 1985, moved to 1 rep = 100 %)."""
    return np.clip(1.0 + (1.0 / share - 1.0) / k, 0.0, MOST_REPS)


def straight(share: Floats, k: float) -> Floats:
    """Reps to failure when the share itself falls in a line (the family of Brzycki 1993 and Lander 1985)."""
    at_pin = (1.0 / PIN - 1.0) / k
    return np.clip(1.0 + at_pin * (1.0 - share) / (1.0 - PIN), 0.0, MOST_REPS)


FLOOR_SHARE: Final = 0.42
"""Below this share the bent curve has no end (Wathan 1994: 0.488, Mayhew 1992: 0.522, from memory; taken lower)."""


def bent(share: Floats, k: float) -> Floats:
    """Reps to failure when the share falls exponentially to a floor (the family of Mayhew 1992 and Wathan 1994)."""
    at_pin = (1.0 / PIN - 1.0) / k
    rate = -float(np.log((PIN - FLOOR_SHARE) / (1.0 - FLOOR_SHARE))) / at_pin
    above = np.maximum(share - FLOOR_SHARE, 1e-4) / (1.0 - FLOOR_SHARE)
    return np.clip(1.0 - np.log(above) / rate, 0.0, MOST_REPS)


def sagging(share: Floats, k: float) -> Floats:
    """Reps to failure a third by a power of the share (Lombardi 1989, held at 75 %), else straight."""
    at_three_quarters = 1.0 + (1.0 / 0.75 - 1.0) / k
    exponent = float(np.log(at_three_quarters) / -np.log(0.75))
    return np.clip(0.35 * share**-exponent + 0.65 * straight(share, k), 0.0, MOST_REPS)


@dataclass(slots=True)
class Tiredness:
    """What the sets before have left behind, one entry a simulated path."""

    spent: Floats
    quick: Floats
    slow: Floats

    @classmethod
    def none(cls, paths: int) -> "Tiredness":
        """Fresh."""
        return cls(np.zeros(paths), np.zeros(paths), np.zeros(paths))

    def copy(self) -> "Tiredness":
        """The same, free to change."""
        return Tiredness(self.spent.copy(), self.quick.copy(), self.slow.copy())


@dataclass(frozen=True, slots=True)
class Fatigue:
    """How one lifter tires: ``c0`` and ``p`` as fitted to Willardson & Burkett 2005 (evidence.md 5)."""

    c0: float
    p: float


LONG_SET: Final = 15.0
"""Above this many repetitions rest helps less than the fit says (Silva et al. 2014: 46 at 50 %, the fit gives 64)."""


def share_lost(tired: Tiredness, rest_min: float, fresh: Floats, how: Fatigue) -> tuple[Floats, Floats]:
    """Fatigue as a share of the repetitions: the factor on repetitions, and no loss of strength."""
    long_set = np.sqrt(np.maximum(fresh, LONG_SET) / LONG_SET)
    loss = how.c0 * long_set * max(rest_min, 0.25) ** -how.p * tired.spent
    return 1.0 / (1.0 + loss), np.zeros_like(fresh)


QUICK_TAU_MIN: Final = 1.0
SLOW_TAU_MIN: Final = 20.0


def strength_lost(tired: Tiredness, rest_min: float, fresh: Floats, how: Fatigue) -> tuple[Floats, Floats]:
    """Fatigue as strength lost, back in two phases; sized to the same totals over four sets as Willardson & Burkett."""
    scale = how.c0 / 0.61
    quick = tired.quick * np.exp(-rest_min / QUICK_TAU_MIN)
    slow = tired.slow * np.exp(-rest_min / SLOW_TAU_MIN)
    return np.ones_like(fresh), scale * (0.20 * quick + 0.02 * slow)


def reps_lost(tired: Tiredness, rest_min: float, fresh: Floats, how: Fatigue) -> tuple[Floats, Floats]:
    """Fatigue as so many repetitions, whatever the load; sized to the same totals as Willardson & Burkett."""
    lost = 2.7 * how.c0 / 0.61 * max(rest_min, 0.25) ** -1.05 * tired.spent**0.5
    return np.clip(
        1.0 - lost * np.sqrt(np.maximum(fresh, 1.0) / 8.0) / np.maximum(fresh, 1.0), 0.1, 1.0
    ), np.zeros_like(fresh)


def leave_behind(tired: Tiredness, rest_min: float, effort: Floats) -> Tiredness:
    """What is left after a set of this effort (1 = to failure) that began after so much rest."""
    return Tiredness(
        tired.spent + effort,
        tired.quick * np.exp(-rest_min / QUICK_TAU_MIN) + effort,
        tired.slow * np.exp(-rest_min / SLOW_TAU_MIN) + effort,
    )


def felt_less(left: Floats, whole: Floats, bias: Floats | float) -> Floats:
    """Reserve as felt, on the mean: short by the bias, none at failure, twice in sets over twelve (Halperin 2022)."""
    length = np.where(whole > 12.0, 2.0, 1.0)
    return np.asarray(left - bias * np.clip(left / 2.0, 0.0, 1.0) * length, dtype=np.float64)


def felt_in_part(left: Floats, whole: Floats, bias: Floats | float) -> Floats:
    """Another reading of Halperin 2022: a share is not felt, and 0.06 or 0.47 more for each repetition of length."""
    long = 0.06 * (np.minimum(whole, 12.0) - 10.0) + 0.47 * np.maximum(whole - 12.0, 0.0) * 0.5
    return np.asarray(left * (1.0 - 0.25 * bias) - long * (1.0 - np.exp(-left)), dtype=np.float64)


Felt = Callable[[Floats, Floats, float], Floats]
Curve = Callable[[Floats, float], Floats]
Tiring = Callable[[Tiredness, float, Floats, Fatigue], tuple[Floats, Floats]]


@dataclass(frozen=True, slots=True)
class Family:
    """One form that the truth may take."""

    name: str
    curve: Curve
    tiring: Tiring
    noise: float = 1.0
    heavy_tails: bool = False
    says: tuple[float, ...] = field(default=(0.95, 0.95, 0.6, 0.2))
    felt: Felt = felt_less
    start_error: float = 0.06


FAMILIES: Final = (
    Family("line", shifted_line, share_lost),
    Family("straight", straight, strength_lost),
    Family("bent", bent, share_lost),
    Family("drain", shifted_line, strength_lost, noise=0.8),
    Family("rough", bent, strength_lost, noise=1.5, heavy_tails=True, says=(0.9, 0.6, 0.3, 0.0)),
)
"""Curve shape x form of fatigue x noise; ``says`` are the probabilities, one drawn a lifter, that effort is said."""

HELD_OUT: Final = (
    Family("sagging*", sagging, reps_lost, felt=felt_in_part, start_error=0.15),
    Family("mixed*", straight, reps_lost, noise=1.2, felt=felt_in_part, start_error=0.15, says=(0.9, 0.5, 0.2)),
)
"""Never to be tuned on: other forms again, to see whether what was learned on the others carries over."""
