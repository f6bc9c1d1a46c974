"""What an answer changes: a value that the shell carries out in one commit and sends afterwards."""

from dataclasses import dataclass
from datetime import date, datetime
from typing import Literal

from core.model.acts import Act
from core.model.book import Hold, Pending
from core.model.lifter import Lifter
from core.model.plan import Plan
from core.model.target import Target


@dataclass(frozen=True, slots=True)
class Button:
    """A pressable answer. ``data`` comes back as ``Incoming.press`` (at most 64 bytes); typing the label works too."""

    label: str
    data: str


@dataclass(frozen=True, slots=True)
class Reply:
    """Something to send. Replies go before prompts, prompts before summaries."""

    text: str
    buttons: tuple[Button, ...] = ()
    to: Literal["sender", "coach"] = "sender"
    kind: Literal["reply", "prompt", "summary", "alert"] = "reply"


@dataclass(frozen=True, slots=True)
class Keep:
    """An act to keep for a local day.

    ``message`` is the message that it belongs to when that is not the one being worked: the answer to a question
    completes the message that raised it, so an edit of that message supersedes it.
    """

    act: Act
    on: date
    message: int | None = None


@dataclass(frozen=True, slots=True)
class Replace:
    """The kept act ``id`` no longer stands; ``act`` takes its place, or nothing does (None: erased).

    Its place is the whole of it: the same local day, arrival, message and position among the kept acts, so that "set 2"
    stays set 2, and an edit of the message that it first came from supersedes it too.
    """

    id: int
    act: Act | None


@dataclass(frozen=True, slots=True)
class Given:
    """The target now in force for an exercise on a day; None takes it back."""

    exercise: str
    on: date
    target: Target | None


@dataclass(frozen=True, slots=True)
class DayPlan:
    """One day trains by ``plan`` instead of the weekly plan (no days in it: nothing is planned for that day)."""

    on: date
    plan: Plan


@dataclass(frozen=True, slots=True)
class AgendaChange:
    """Something to come back to: unique per person, ``kind`` and local ``on``; ``due`` None cancels it."""

    kind: str
    on: date
    due: datetime | None


@dataclass(frozen=True, slots=True)
class Outcome:
    """The whole answer. What is None or empty does not change anything.

    An edit re-reads its message: the shell first supersedes all acts of that message, then keeps these.
    ``pending`` replaces the open question; ``answered`` True closes it.
    """

    replies: tuple[Reply, ...] = ()
    keep: tuple[Keep, ...] = ()
    replace: tuple[Replace, ...] = ()
    notes: tuple[str, ...] = ()
    """Words that were not understood, kept for the coach."""
    given: tuple[Given, ...] = ()
    pending: Pending | None = None
    answered: bool = False
    lifter: Lifter | None = None
    hold: Hold | None = None
    agenda: tuple[AgendaChange, ...] = ()
    planned: tuple[DayPlan, ...] = ()
    taken_back: int | None = None
    """A message whose records are taken back, alarms excepted; what it had amended or erased stands as before."""
