"""Loads and the two units. Internally everything is kilograms; the lifter's unit is for reading and saying."""

from dataclasses import dataclass
from typing import Final, Literal

Unit = Literal["kg", "lb"]
LoadKind = Literal["total", "per_hand", "added", "assist", "body", "band"]
Side = Literal["left", "right", "each"]
Form = Literal["clean", "fair", "loose"]
Way = Literal["form", "reps", "tempo", "range", "rest", "load"]

POUND_KG: Final = 0.45359237
"""Kilograms in one pound, exactly (international pound, 1959)."""

Tempo = tuple[float | None, float | None, float | None, float | None]
"""Seconds of lowering, pause at the bottom, lifting, pause at the top; None where unsaid, 0 for an explosive X."""


@dataclass(frozen=True, slots=True)
class Load:
    """What was lifted. ``kg`` is None for a band or a helping band of unknown pull; ``label`` is a band's own name."""

    kind: LoadKind
    kg: float | None = None
    label: str | None = None


BODY: Final = Load("body", 0.0)


@dataclass(frozen=True, slots=True)
class Range:
    """Range of motion said with a set: its grade, and a length in centimetres where one was said."""

    grade: Literal["partial", "full", "extra"] | None = None
    cm: float | None = None


def to_kg(value: float, unit: Unit) -> float:
    """A number in the lifter's unit as kilograms."""
    return value * POUND_KG if unit == "lb" else value


def from_kg(kg: float, unit: Unit) -> float:
    """Kilograms as a number in the lifter's unit."""
    return kg / POUND_KG if unit == "lb" else kg
