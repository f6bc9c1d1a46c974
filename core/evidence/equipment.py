"""What equipment weighs where nobody said it. Rows, no logic. Common practice, no source."""

from dataclasses import dataclass
from typing import Final

from core.model.quantities import Unit

BAR: Final[dict[Unit, float]] = {"kg": 20.0, "lb": 45.0}
"""A barbell, in the unit itself."""

STACK_STEP: Final[dict[Unit, float]] = {"kg": 5.0, "lb": 10.0}
"""A machine's step."""

RACK_STEP: Final[dict[Unit, float]] = {"kg": 2.5, "lb": 5.0}
"""The step of a rack of dumbbells said as a span ("5 to 30")."""

RACK_FROM: Final[dict[Unit, float]] = {"kg": 5.0, "lb": 10.0}
"""Where a rack begins that was said as "up to 30"."""

HEAVIEST: Final[dict[Unit, float]] = {"kg": 150.0, "lb": 330.0}
"""A piece heavier than this was a slip of the pen."""

HEAVIEST_PLATE: Final[dict[Unit, float]] = {"kg": 50.0, "lb": 100.0}
"""A single plate; more is the sum of several."""

MOST_ALIKE: Final = 20
"""Pieces of one mass; more was a slip of the pen."""


@dataclass(frozen=True, slots=True)
class GymRow:
    """What a gym has, in the unit itself: dumbbells from, to and step; every plate so many times."""

    bar: float
    plates: tuple[float, ...]
    plates_alike: int
    dumbbells: tuple[float, float, float]
    kettlebells: tuple[float, ...]
    stack_step: float
    bands: tuple[str, ...] = ("light", "medium", "heavy")


GYM: Final[dict[Unit, GymRow]] = {
    "kg": GymRow(20.0, (1.25, 2.5, 5.0, 10.0, 15.0, 20.0, 25.0), 4, (2.5, 50.0, 2.5), (8, 12, 16, 20, 24, 28, 32), 5.0),
    "lb": GymRow(45.0, (2.5, 5.0, 10.0, 25.0, 35.0, 45.0), 6, (5.0, 100.0, 5.0), (18, 26, 35, 44, 53, 62, 70), 10.0),
}
"""For a gym without one kind of equipment, or with one kind only."""
