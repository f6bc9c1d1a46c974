"""What has been read of a plan so far: days being read, what holds for all of them, what is to be asked and told.

Values; it reads no text.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date

from core.model.plan import Plan
from core.notation import days
from core.notation.clauses import NO_WORDS, Said
from core.notation.hidden import Trouble
from core.notation.lifts import Lift


@dataclass(frozen=True, slots=True)
class Unread:
    """What was left out: the line's number from 1, its text, what is wrong; ``below``: lines left out with it."""

    line: int
    text: str
    trouble: Trouble
    below: int = 0


@dataclass(frozen=True, slots=True)
class Remark:
    """What was taken, but perhaps not as meant, or set aside (a load, a heading)."""

    line: int
    text: str
    trouble: Trouble


@dataclass(frozen=True, slots=True)
class PlanReading:
    """The plan as understood, the lines that were not, and what the writer should know."""

    plan: Plan
    unread: tuple[Unread, ...] = ()
    remarks: tuple[Remark, ...] = ()


@dataclass(frozen=True, slots=True)
class Draft:
    """A day being read."""

    weekday: int
    opened: days.Opened
    line: int
    lifts: tuple[Lift, ...] = ()
    common: Said = NO_WORDS
    before: tuple[str, ...] = ()
    """Words that stood before the first exercise."""


@dataclass(frozen=True, slots=True)
class Page:
    """What has been read so far. ``open_`` are the places of the days that lines belong to now; None: no day yet;
    ``lost``: they belong to a heading that was not understood; ``closed``: so does all that follows."""

    today: date | None
    drafts: tuple[Draft, ...] = ()
    open_: tuple[int, ...] | None = None
    lost: bool = False
    closed: bool = False
    common: Said = NO_WORDS
    group: tuple[str, Said] | None = None
    """The superset that was headed last, and what holds for all of it."""
    starts: date | None = None
    easier: int | None = None
    unread: tuple[Unread, ...] = ()
    remarks: tuple[Remark, ...] = ()

    def asks(self, line: int, text: str, trouble: Trouble) -> "Page":
        return replace(self, unread=(*self.unread, Unread(line, text, trouble)))

    def tells(self, line: int, text: str, *troubles: Trouble) -> "Page":
        return replace(self, remarks=(*self.remarks, *(Remark(line, text, one) for one in troubles)))

    def onto(self, change: Callable[[Draft], Draft]) -> "Page":
        """With every open day changed."""
        drafts = list(self.drafts)
        for place in self.open_ or ():
            drafts[place] = change(drafts[place])
        return replace(self, drafts=tuple(drafts))

    def day(self) -> Draft | None:
        return self.drafts[self.open_[0]] if self.open_ else None
