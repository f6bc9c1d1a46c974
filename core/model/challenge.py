"""A group's contest, counted in steps and kept sessions: who takes part, what they did, how they stand.

Nothing here carries a load, a body weight, an ache or a target: what is not here cannot be posted.
"""

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from core.model.quantities import Way
from core.model.target import Verdict

Counts = Literal["steps", "sessions", "both"]
"""What earns points: exercises done as asked, sessions kept, or both."""

Result = Literal["met", "stopped", "pushed", "otherwise", "part", "none"]
"""What became of one exercise's target.

``met``: as asked. ``stopped``: every set, ended at the reserve asked, short of a low end. ``pushed``: every set, with
less in reserve than asked. ``otherwise``: every set, but loose, lighter, or short with more left than asked. ``part``:
not every set, or hardly any of what was asked. ``none``: not one.
"""

Word = Literal["unneeded", "waits", "yes", "no"]
"""The coach's word on a report: not needed, still to come, or given."""


@dataclass(frozen=True, slots=True)
class Challenge:
    """What the coach opened. ``starts`` is a local day of the group's zone; weeks are counted from it."""

    title: str
    starts: date
    weeks: int
    counts: Counts = "both"
    teams: tuple[str, ...] = ()

    @property
    def last(self) -> date:
        """The last day that counts."""
        return self.starts + timedelta(weeks=self.weeks) - timedelta(days=1)

    def week_of(self, on: date) -> int | None:
        """The number of the week (1 is the first) that a day lies in; None outside the challenge."""
        week = (on - self.starts).days // 7 + 1
        return week if 1 <= week <= self.weeks else None


@dataclass(frozen=True, slots=True)
class Stay:
    """A time of taking part or of a pause: from a day on, through ``until`` (None: open)."""

    since: date
    until: date | None = None

    def holds(self, on: date) -> bool:
        """Whether the day lies in it."""
        return self.since <= on and (self.until is None or on <= self.until)


@dataclass(frozen=True, slots=True)
class Entrant:
    """Someone who takes part, by a number of the caller's and a name of the entrant's own choice."""

    who: int
    shown: str
    stays: tuple[Stay, ...]
    pauses: tuple[Stay, ...] = ()
    team: str | None = None

    def is_in(self, on: date) -> bool:
        """Whether the entrant took part on that day."""
        return any(stay.holds(on) for stay in self.stays)


@dataclass(frozen=True, slots=True)
class Attempt:
    """One planned exercise of a day. ``ached``: a part that it loads was said to ache."""

    exercise: str
    way: Verdict
    result: Result
    ached: bool = False
    word: Word = "unneeded"


@dataclass(frozen=True, slots=True)
class DayDone:
    """One training day of one entrant: a day of the plan, or one that a session was moved to.

    ``off``: called off before it began. ``held``: all targets were held since an alarm. ``word``: on the session as it
    was told, as a whole.
    """

    on: date
    attempts: tuple[Attempt, ...]
    off: bool = False
    held: bool = False
    word: Word = "unneeded"


@dataclass(frozen=True, slots=True)
class Record:
    """All that one entrant did, oldest day first."""

    entrant: Entrant
    days: tuple[DayDone, ...]


@dataclass(frozen=True, slots=True)
class Chance:
    """One thing that could be earned: a session (``exercise`` None) or an exercise of it.

    ``worth`` is what it could bring and ``earned`` what it brought, in sessions; ``rule`` is the row that decided.
    ``way`` is what went up, when it was a step.
    """

    who: int
    on: date
    week: int
    exercise: str | None
    worth: float
    earned: float
    rule: str
    way: Way | None = None


@dataclass(frozen=True, slots=True)
class Standing:
    """One line of the standings. ``points`` are earned of every hundred that could be; None: too few chances yet.

    ``place`` is shared by equal points; ``trend`` is points now less points at the last close.
    """

    who: int
    shown: str
    points: int | None
    place: int | None
    kept: int
    planned: int
    trend: int | None = None
    team: str | None = None


@dataclass(frozen=True, slots=True)
class TeamStanding:
    """One team: the mean of its members' points."""

    team: str
    points: int
    place: int


@dataclass(frozen=True, slots=True)
class Table:
    """The standings after a week, or in the course of it."""

    week: int
    standings: tuple[Standing, ...]
    teams: tuple[TeamStanding, ...] = ()
    steps: tuple[tuple[str, tuple[Way, ...]], ...] = ()
    """For a word of praise: who made steps in that week, and the ways of them."""
