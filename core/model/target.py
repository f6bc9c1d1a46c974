"""What the coach prescribes (aim), what to do next (target), and what is expected of it."""

from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date
from typing import Literal

from core.model.acts import SetAct
from core.model.lifter import Lifter
from core.model.quantities import Load, Range, Tempo, Way

Verdict = Way | Literal["first", "hold", "ease", "stop"]
"""What moves up this time, or why nothing does."""


@dataclass(frozen=True, slots=True)
class Aim:
    """The coach's prescription for one exercise. ``ways`` in the order preferred; form always comes first, unlisted.

    ``easier``: so it is in an easier week of the plan.
    """

    sets: int
    reps: tuple[int, int]
    rir: float = 2.0
    tempo: Tempo | None = None
    rest_s: float | None = None
    ways: tuple[Way, ...] = ("reps", "load")
    easier: bool = False


@dataclass(frozen=True, slots=True)
class TargetSet:
    """One set to do: load, repetitions from low to high, reserve asked, tempo, rest before the next set, range."""

    load: Load | None
    reps: tuple[int, int]
    rir: float | None = None
    tempo: Tempo | None = None
    rest_s: float | None = None
    range: Range | None = None


@dataclass(frozen=True, slots=True)
class Target:
    """What the service says to do: the verdict and the sets still to do."""

    way: Verdict
    sets: tuple[TargetSet, ...]


@dataclass(frozen=True, slots=True)
class Session:
    """One day's sets of one exercise, in order, and the target that was in force (None: no advice was given)."""

    on: date
    sets: tuple[SetAct, ...]
    target: Target | None = None


@dataclass(frozen=True, slots=True)
class Forecast:
    """Repetitions expected of a set taken to its reserve as this lifter feels it."""

    reps: float
    sd: float


@dataclass(frozen=True, slots=True)
class Outlook:
    """Forecasts of sets done in order, and the probability that all are met (low end, asked reserve, clean form).

    ``reached``: the same without form, for what form has no say in (how heavy a start may be).
    """

    forecast: tuple[Forecast, ...]
    chance: float
    reached: float = 1.0


Forecaster = Callable[[tuple[TargetSet, ...]], Outlook]
"""How ``decide`` asks ``estimate`` what would happen, without importing it."""


Slot = Load | Range | float | int | str | None


@dataclass(frozen=True, slots=True)
class Reason:
    """A plain sentence for a lifter, and the id of the rule that fired.

    ``slots``: what its words were filled with, as values, so that it can be said in another language.
    """

    text: str
    rule: str
    slots: tuple[tuple[str, Slot], ...] = field(default=(), compare=False, repr=False)


@dataclass(frozen=True, slots=True)
class Question:
    """Everything that advice for one exercise on one day depends on. ``consider``: only forecast these sets."""

    lifter: Lifter
    exercise: str
    aim: Aim
    past: tuple[Session, ...]
    on: date
    today: tuple[SetAct, ...] = ()
    consider: tuple[TargetSet, ...] | None = None


@dataclass(frozen=True, slots=True)
class Advice:
    """The answer: a target with its forecast, its chance of being met, why, and cautions to show with it."""

    way: Verdict
    sets: tuple[TargetSet, ...]
    forecast: tuple[Forecast, ...]
    chance: float
    why: tuple[Reason, ...]
    cautions: tuple[str, ...]
