"""What the reader is given beside the text, and what it gives back."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Literal

from core.model.acts import Act, SetAct, Span
from core.model.quantities import Load, Tempo, Unit

About = Literal["exercise", "load", "reps", "numbers", "meaning"]


@dataclass(frozen=True, slots=True)
class PlanLine:
    """One exercise of today's plan, as the reader needs it."""

    exercise: str
    sets: int | None = None
    reps: tuple[int, int] | None = None
    load: Load | None = None
    rest_s: float | None = None
    tempo: Tempo | None = None


@dataclass(frozen=True, slots=True)
class Setting:
    """What is known when the message arrives. ``usual`` maps an exercise to the loads (kg) this lifter tends to use."""

    unit: Unit = "kg"
    now_on: str | None = None
    plan: tuple[PlanLine, ...] = ()
    last: SetAct | None = None
    bodyweight_kg: float | None = None
    today: date | None = None
    language: str = "en"
    usual: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Option:
    """One answer to a question: its words, and the acts that are kept if it is chosen."""

    label: str
    acts: tuple[Act, ...]


@dataclass(frozen=True, slots=True)
class Ask:
    """A question back. ``options`` may be empty when only free words can answer it."""

    about: About
    options: tuple[Option, ...] = ()


@dataclass(frozen=True, slots=True)
class Reading:
    """The acts beyond doubt in the order stated, a question if any, and the spans of words not understood."""

    acts: tuple[Act, ...] = ()
    ask: Ask | None = None
    leftovers: tuple[Span, ...] = ()
