"""Seven classical formulas for the one-repetition maximum, written out independently of the core.

Coefficients: Epley 1985, Brzycki 1993, Lombardi 1989, Mayhew et al. 1992, O'Conner et al. 1989, Wathan 1994, Lander
1985; all from memory, so no check rests on them alone: the NSCA training load chart stands beside them.
"""

from collections.abc import Callable
from math import exp
from typing import Final

Formula = Callable[[float, float], float]

FORMULAS: Final[dict[str, Formula]] = {
    "epley": lambda kg, reps: kg * (1.0 + reps / 30.0),
    "brzycki": lambda kg, reps: kg * 36.0 / (37.0 - reps),
    "lombardi": lambda kg, reps: kg * reps**0.10,
    "mayhew": lambda kg, reps: 100.0 * kg / (52.2 + 41.9 * exp(-0.055 * reps)),
    "oconner": lambda kg, reps: kg * (1.0 + 0.025 * reps),
    "wathan": lambda kg, reps: 100.0 * kg / (48.8 + 53.8 * exp(-0.075 * reps)),
    "lander": lambda kg, reps: 100.0 * kg / (101.3 - 2.67123 * reps),
}

WORKED: Final[dict[str, tuple[float, float]]] = {
    "epley": (116.67, 133.33),
    "brzycki": (112.50, 133.33),
    "lombardi": (117.46, 125.89),
    "mayhew": (119.01, 130.93),
    "oconner": (112.50, 125.00),
    "wathan": (116.58, 134.75),
    "lander": (113.71, 134.07),
}
"""Worked by hand: 100 kg for 5 and for 10 repetitions."""

CHART: Final = {2: 95.0, 3: 93.0, 4: 90.0, 5: 87.0, 6: 85.0, 7: 83.0, 8: 80.0, 9: 77.0, 10: 75.0, 12: 70.0}
"""NSCA Training Load Chart: repetitions to percent of the one-repetition maximum (a mirror of the chart was read)."""

CHART_TOLERANCE: Final = 3.5
"""Points of percent: the chart is not smooth, its steps are 5, 2, 3, 3, 2, 2, 3, 3, 2."""
