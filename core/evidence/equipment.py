"""What equipment weighs where nobody said it. Rows, no logic. Common practice, no source."""

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
