"""What a coach can order, as values. ``who`` is always one of the names that were handed in."""

from dataclasses import dataclass
from datetime import date
from typing import Literal

from core.model.quantities import Way


@dataclass(frozen=True, slots=True)
class Simple:
    """A word that needs nothing else: clients, attention, weeks, overview, sheet, help, yes, no."""

    what: Literal["clients", "attention", "weeks", "overview", "sheet", "help", "yes", "no"]


@dataclass(frozen=True, slots=True)
class About:
    """A word about one client: plan, week, notes, clear, end, old_plan, sheet."""

    what: Literal["plan", "week", "notes", "clear", "end", "old_plan", "hand", "sheet"]
    who: str


@dataclass(frozen=True, slots=True)
class Invite:
    """Invite somebody new (``cancel``: take the invitation back). The name is as typed."""

    name: str
    cancel: bool = False


@dataclass(frozen=True, slots=True)
class NewPlan:
    """A plan in plain text for one client."""

    who: str
    text: str


@dataclass(frozen=True, slots=True)
class CopyPlan:
    """One client's plan for another."""

    source: str
    who: str


@dataclass(frozen=True, slots=True)
class Tell:
    """Words to clients; ``names`` None: to all."""

    names: tuple[str, ...] | None
    text: str


@dataclass(frozen=True, slots=True)
class Note:
    """A private note on a client."""

    who: str
    text: str


@dataclass(frozen=True, slots=True)
class Hand:
    """Hand a client to another coach, whose name is as typed."""

    who: str
    coach: str


@dataclass(frozen=True, slots=True)
class Under:
    """How a client's targets are decided, of all exercises or one: free, ask first, or held as they are."""

    who: str
    mode: Literal["free", "ask", "hold"]
    exercise: str | None = None


@dataclass(frozen=True, slots=True)
class NextTime:
    """A target by hand for the next session: a load as typed, a count, maybe sets."""

    who: str
    exercise: str
    load: float
    unit: Literal["kg", "lb"] | None
    reps: tuple[int, int]
    sets: int | None = None


@dataclass(frozen=True, slots=True)
class NoHeavier:
    """Nothing heavier: in one exercise, in all that load a body part, or at all; until a day, or until said otherwise."""  # noqa: E501

    who: str
    exercise: str | None = None
    part: str | None = None
    until: date | None = None


@dataclass(frozen=True, slots=True)
class WayOrder:
    """Which ways go first, in one exercise or in all."""

    who: str
    ways: tuple[Way, ...]
    exercise: str | None = None


@dataclass(frozen=True, slots=True)
class SetRange:
    """How many weekly sets are asked of one muscle, or of each (``muscle`` None); ``sets`` None: the usual ones."""

    who: str
    muscle: str | None = None
    sets: tuple[int, int] | None = None


@dataclass(frozen=True, slots=True)
class Easier:
    """One week in so many is easier; None: none is."""

    who: str
    every: int | None


@dataclass(frozen=True, slots=True)
class Swap:
    """One exercise of a client's plan in the place of another, wherever that stands in it."""

    who: str
    old: str
    new: str


@dataclass(frozen=True, slots=True)
class WhatIf:
    """How it would likely go in so many weeks with that order of ways, in one exercise or the main ones."""

    who: str
    ways: tuple[Way, ...]
    weeks: int
    exercise: str | None = None


@dataclass(frozen=True, slots=True)
class Hour:
    """When the morning word or the weeks come: a time, and for the weeks a weekday."""

    what: Literal["digest", "weeks"]
    hour: int
    minute: int
    weekday: int | None = None


Order = (
    Simple
    | About
    | Invite
    | NewPlan
    | CopyPlan
    | Tell
    | Note
    | Hand
    | Under
    | NextTime
    | NoHeavier
    | WayOrder
    | SetRange
    | Easier
    | Swap
    | WhatIf
    | Hour
)


@dataclass(frozen=True, slots=True)
class WhichClient:
    """A name fits several clients: the same words with each of them, to choose from."""

    said: str
    names: tuple[str, ...]
    texts: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class NoClient:
    """No client of that name; ``near`` are likely ones, if any."""

    said: str
    near: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Lacking:
    """The order is clear, but something is missing or cannot be: ``what`` is a key of the wording table."""

    what: str
    said: str = ""
    choices: tuple[str, ...] = ()


Understood = Order | WhichClient | NoClient | Lacking
