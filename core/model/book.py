"""The book: all that the service knows about one lifter when a message comes in, and the message itself."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date, datetime, time, tzinfo
from typing import Literal

from core.model.acts import Act, Sign
from core.model.lifter import Lifter
from core.model.plan import Plan
from core.model.reading import Ask
from core.model.target import Target


@dataclass(frozen=True, slots=True)
class Incoming:
    """One message of a lifter.

    ``number`` is its place in the order of arrival, unique in the store; an edit carries the number of the message
    that it changes. ``press`` holds the data of a pressed button, then ``text`` is empty. ``media`` names what came
    in place of text (photo, voice, ...).
    """

    number: int
    text: str
    edit: bool = False
    press: str | None = None
    media: str | None = None
    first_came: datetime | None = None
    """When the message came that an edit changes, UTC; nothing of it may stand any more."""


@dataclass(frozen=True, slots=True)
class Kept:
    """An act as it stands in the store: neither superseded nor erased."""

    id: int
    act: Act
    on: date
    """The lifter's local day that it counts for (the act's own ``day`` is already applied)."""
    at: datetime
    """When its message arrived, UTC."""
    message: int
    """``Incoming.number`` of the message that it came from."""


@dataclass(frozen=True, slots=True)
class Ended:
    """An act that another message amended or erased a moment ago: as it stood, and what stands in its place now."""

    kept: Kept
    by: int
    """``Incoming.number`` of the message that ended it."""
    at: datetime
    """When that message arrived, UTC."""
    heir: int | None = None
    """The id of the act that took its place; None: it was erased."""


@dataclass(frozen=True, slots=True)
class Pending:
    """A question that was asked and not yet answered, with the message that raised it."""

    ask: Ask
    message: int
    at: datetime
    text: str
    """The question as it was put, so that it can be put again."""
    said: str = ""
    """The lifter's words that raised it, so that a typed answer can complete them."""


@dataclass(frozen=True, slots=True)
class Hold:
    """All targets are held since an alarm, or a yes in the screening at joining, until the coach clears it."""

    sign: Sign | Literal["screening"]
    since: datetime


@dataclass(frozen=True, slots=True)
class Profile:
    """The person: what to call them, how to speak to them, when to leave them alone."""

    name: str
    zone: tzinfo
    language: str = "en"
    coach: str | None = None
    """The coach's name, or None when the lifter trains alone."""
    prompt_lead_minutes: int = 60
    quiet_from: time = time(21, 30)
    quiet_to: time = time(7, 0)
    decimal: Literal[".", ","] = "."
    reminders: bool = True
    """False: not reminded of sessions, and not asked about missed ones."""
    away_through: date | None = None
    """Nothing but alarms through that day."""
    nudges: bool = False
    """Told when the rest between two sets is over."""
    coach_language: str | None = None
    """The language of the coach, to whom word of an ache or an alarm goes; None: the person's own."""
    coach_decimal: Literal[".", ","] | None = None


@dataclass(frozen=True, slots=True)
class Book:
    """Everything that an answer may depend on. ``progress`` maps an exercise to its folded history before today.

    ``kept`` holds today's acts and those of the last days, oldest first, so that a late report or a correction finds
    its set. ``targets`` are those already given for today, by exercise. ``progress`` values are the text made by
    ``core.advising.dump``; an exercise without history is absent. ``usual`` maps an exercise to its usual load in kg.
    """

    profile: Profile
    lifter: Lifter
    plan: Plan = field(default_factory=Plan)
    kept: tuple[Kept, ...] = ()
    targets: Mapping[str, Target] = field(default_factory=dict)
    progress: Mapping[str, str] = field(default_factory=dict)
    usual: Mapping[str, float] = field(default_factory=dict)
    pending: Pending | None = None
    hold: Hold | None = None
    planned_for_today: Plan | None = None
    """A one-off change of today (moved session, trimmed plan); None: the weekly plan stands."""
    changed_days: Mapping[date, Plan] = field(default_factory=dict)
    """One-off changes of days to come, as ``planned_for_today`` is one of today."""
    ended: tuple[Ended, ...] = ()
    """What the messages of the last minutes amended or erased, oldest first, so that it can be taken back."""
    fixed: Mapping[str, Target] = field(default_factory=dict)
    """Targets set by hand for this day's session, by exercise. The rule of an ache still outranks them."""
