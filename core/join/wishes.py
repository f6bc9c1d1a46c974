"""What a lifter can wish about themselves: an answer at joining or a sentence later. Values only; nothing is done."""

from dataclasses import dataclass
from datetime import date, time
from typing import Literal

from core.model.lifter import Experience, Kit
from core.model.quantities import Unit

Language = Literal["en", "es", "de"]


@dataclass(frozen=True, slots=True)
class YesNo:
    """A plain yes or no."""

    yes: bool


@dataclass(frozen=True, slots=True)
class Named:
    """What to call the person."""

    name: str


@dataclass(frozen=True, slots=True)
class Counted:
    """The unit to count loads in."""

    unit: Unit


@dataclass(frozen=True, slots=True)
class Zoned:
    """A time zone by its key, from a day through a day (None: from now on, for good).

    ``fixed``: only an offset was said, which follows no clock changes.
    """

    zone: str
    first: date | None = None
    last: date | None = None
    fixed: bool = False


@dataclass(frozen=True, slots=True)
class UnknownPlace:
    """A place was named that is in no table."""

    said: str


@dataclass(frozen=True, slots=True)
class Trains:
    """The days of the week (Monday is 0) to train on, each with its time where one was said."""

    days: tuple[tuple[int, time | None], ...]


@dataclass(frozen=True, slots=True)
class DayOut:
    """A weekday is no training day any more."""

    weekday: int


@dataclass(frozen=True, slots=True)
class DayMoved:
    """A training day moves to another weekday, or only to another time."""

    weekday: int
    to: int
    at: time | None = None


@dataclass(frozen=True, slots=True)
class KitSaid:
    """Equipment in words. ``kit`` None: a full gym. ``beside``: things without a load; ``odd``: not understood."""

    kit: Kit | None
    beside: tuple[str, ...] = ()
    odd: tuple[str, ...] = ()
    adds: bool = False
    """It comes to what is there already."""
    unit: Unit | None = None
    """The unit named for the whole list."""


@dataclass(frozen=True, slots=True)
class Experienced:
    """How long the person has trained."""

    level: Experience


@dataclass(frozen=True, slots=True)
class NoAches:
    """Nothing aches."""


@dataclass(frozen=True, slots=True)
class NoHeavier:
    """No more load, up to that day (None: until said otherwise); ``on`` False: heavier is fine again."""

    on: bool = True
    until: date | None = None


@dataclass(frozen=True, slots=True)
class Lead:
    """Minutes before a session at which to be reminded."""

    minutes: int


@dataclass(frozen=True, slots=True)
class Reminders:
    """Whether to be reminded of sessions at all."""

    on: bool


@dataclass(frozen=True, slots=True)
class Nudges:
    """Whether to be told when the rest between two sets is over."""

    on: bool


@dataclass(frozen=True, slots=True)
class Away:
    """Nothing but alarms through that day."""

    last: date


@dataclass(frozen=True, slots=True)
class WhichDay:
    """A day was meant that cannot be told."""

    said: str


@dataclass(frozen=True, slots=True)
class Quiet:
    """Hours of the day in which nothing is sent unasked; None: that end stays."""

    begins: time | None = None
    ends: time | None = None


@dataclass(frozen=True, slots=True)
class Speak:
    """The language to answer in."""

    language: Language


@dataclass(frozen=True, slots=True)
class CourseOf:
    """How it goes with an exercise, by its name as typed."""

    said: str


Bare = Literal["back", "export", "forget", "settings", "week", "go_on", "cleared", "train_too", "later", "stop"]


@dataclass(frozen=True, slots=True)
class Plain:
    """A wish without any particulars."""

    what: Bare


@dataclass(frozen=True, slots=True)
class ShortOfTime:
    """So many minutes are there for today's session."""

    minutes: int


@dataclass(frozen=True, slots=True)
class OnlyToday:
    """Only this equipment is there today (None: a full gym). ``odd``: what was not understood of it.

    ``without``: said as what is missing, in these words.
    """

    kit: Kit | None
    beside: tuple[str, ...] = ()
    odd: tuple[str, ...] = ()
    without: str = ""


@dataclass(frozen=True, slots=True)
class AllAgain:
    """Today goes as planned after all: what was left out is back, with the usual kit."""


@dataclass(frozen=True, slots=True)
class MoveTo:
    """Today's session moves to another day, or to another time of it (None: its own)."""

    on: date
    at: time | None = None


Today = ShortOfTime | OnlyToday | AllAgain | MoveTo
"""Wishes for today's session alone, which the session answers, not the desk."""

Wish = (
    YesNo
    | Named
    | Counted
    | Zoned
    | UnknownPlace
    | Trains
    | DayOut
    | DayMoved
    | KitSaid
    | Experienced
    | NoAches
    | NoHeavier
    | Lead
    | Reminders
    | Nudges
    | Away
    | WhichDay
    | Quiet
    | Speak
    | CourseOf
    | Plain
)
