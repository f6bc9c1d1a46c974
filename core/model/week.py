"""A client's week and what of it needs the coach, as values: ``review`` states them, ``say`` makes sentences of them."""  # noqa: E501

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Final, Literal

from core.model.acts import Sign
from core.model.lifter import Ache, Lifter
from core.model.plan import Plan
from core.model.quantities import Way
from core.model.target import Session, TargetSet, Verdict


@dataclass(frozen=True, slots=True)
class Standing:
    """What could be lifted once in one exercise: the estimate with its 80 % span, in kg on the load as it is said.

    For the body alone ``in_reps`` is True and all are repetitions. ``before`` is the estimate of ``since``, some weeks
    ago (None: none was noted then).
    """

    exercise: str
    estimate: float
    low: float
    high: float
    in_reps: bool = False
    before: float | None = None
    since: date | None = None


@dataclass(frozen=True, slots=True)
class Proposal:
    """What the service would ask next time in one exercise, and why."""

    exercise: str
    way: Verdict
    first: TargetSet | None
    why: str


@dataclass(frozen=True, slots=True)
class Record:
    """All that a review looks at: what one client was to do and did. ``sessions`` go back some weeks, oldest first.

    ``called_off``: planned days that were moved or called off. ``held`` is why all targets are held: the sign of
    an open alarm, or "screening". ``waiting`` are exercises whose target waits for the coach's word. ``heard`` is the
    last day with any message, ``joined`` the first. ``sets_asked``: the coach's weekly sets by muscle, "" for the rest.
    """

    name: str
    lifter: Lifter
    plan: Plan
    sessions: Mapping[str, tuple[Session, ...]]
    joined: date
    heard: date | None = None
    called_off: tuple[date, ...] = ()
    held: Sign | Literal["screening"] | None = None
    waiting: tuple[str, ...] = ()
    standings: tuple[Standing, ...] = ()
    proposals: tuple[Proposal, ...] = ()
    sets_asked: Mapping[str, tuple[int, int]] = field(default_factory=dict)
    plans: tuple[tuple[date, Plan], ...] = ()
    """Each plan with the first day of its being in force, oldest first; none: ``plan`` always was."""

    def plan_on(self, on: date) -> Plan:
        """The plan that was in force on that day; before the first of them nothing was planned."""
        if not self.plans:
            return self.plan
        return next((plan for since, plan in reversed(self.plans) if since <= on), Plan())


@dataclass(frozen=True, slots=True)
class MuscleLoad:
    """Sets of a week for one muscle, indirect ones half, against the range; ``side`` says where it lies.

    ``own``: the coach asked this range of this very muscle.
    """

    muscle: str
    sets: float
    side: Literal["under", "inside", "over"]
    asked: tuple[float, float] = (0.0, 0.0)
    own: bool = False


@dataclass(frozen=True, slots=True)
class StepSeen:
    """A step made: the exercise, the way that went up, the day."""

    exercise: str
    way: Way
    on: date


@dataclass(frozen=True, slots=True)
class ChangeSeen:
    """A target that asked less, or waited: what it was and the cause found in the record."""

    exercise: str
    way: Verdict
    on: date
    cause: Literal["ache", "layoff", "misses", "form", "other"]
    ache: Ache | None = None


@dataclass(frozen=True, slots=True)
class Honesty:
    """How well words and deeds agree: of ``form_said`` sets with a word on form, ``form_off`` were not clean; of
    ``effort_days`` exercise days where the words on effort can be checked, ``effort_off`` cannot be right."""

    form_said: int = 0
    form_off: int = 0
    effort_days: int = 0
    effort_off: int = 0


@dataclass(frozen=True, slots=True)
class WeekFacts:
    """One client's week, from ``first`` to ``last``. ``easier``: the plan made it an easier one (or the next one)."""

    name: str
    first: date
    last: date
    kept: int
    planned: int
    sets: int
    steps: tuple[StepSeen, ...]
    standings: tuple[Standing, ...]
    muscles: tuple[MuscleLoad, ...]
    honesty: Honesty
    aches: tuple[Ache, ...]
    changes: tuple[ChangeSeen, ...]
    proposals: tuple[Proposal, ...]
    held: Sign | Literal["screening"] | None = None
    has_plan: bool = True
    easier: bool = False
    easier_next: bool = False
    span: tuple[float, float] = (0.0, 0.0)
    heard: date | None = None
    """The last day with any message, where it lies before the week."""


OFFERED: Final = frozenset({"back", "praise"})
"""Rows of attention that need nothing: a word is worth it, and offered."""


@dataclass(frozen=True, slots=True)
class Concern:
    """One line of attention: the row of the table, whose it is, and the facts that its words need.

    ``still``: it was said on an earlier morning and nothing of it has changed. ``other``: an exercise that might come
    in the place of ``exercise``.
    """

    row: str
    name: str
    exercise: str | None = None
    count: int = 0
    on: date | None = None
    ache: Ache | None = None
    sign: Sign | None = None
    way: Way | None = None
    still: bool = False
    other: str | None = None
    more: Mapping[str, str] = field(default_factory=dict)
