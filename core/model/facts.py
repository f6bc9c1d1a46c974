"""What happened in one pass, as values: the flow of a session states them, ``say`` makes sentences of them.

A fact carries nouns (loads, sets, days), never words. It may not know languages, units of display or lengths.
"""

from dataclasses import dataclass, field
from datetime import date, datetime, time
from typing import Literal

from core.model.acts import AcheAct, SetAct, Sign
from core.model.lifter import Kit
from core.model.reading import Ask
from core.model.target import Reason, Slot, Target, TargetSet, Verdict


@dataclass(frozen=True, slots=True)
class Recorded:
    """Sets of one exercise that were understood and kept. ``ago`` is 0 today, -1 yesterday, ..."""

    exercise: str
    sets: tuple[SetAct, ...]
    on: date
    ago: int = 0
    edited: bool = False
    planned: bool = False
    """Kept from the words "as planned", so the numbers are the target's low ends."""


@dataclass(frozen=True, slots=True)
class Amended:
    """A kept set now reads otherwise. ``number`` is its place in the session's exercise."""

    before: SetAct
    after: SetAct
    number: int


@dataclass(frozen=True, slots=True)
class Erased:
    """These kept sets no longer stand."""

    sets: tuple[SetAct, ...]


@dataclass(frozen=True, slots=True)
class Undone:
    """The last message's doings were taken back: the sets and other records that it kept, and what it had changed.

    ``again``: sets that it had amended or erased, as they stand again. ``before``: what amended ones had become.
    """

    sets: tuple[SetAct, ...]
    others: int
    again: tuple[SetAct, ...] = ()
    before: tuple[SetAct, ...] = ()


@dataclass(frozen=True, slots=True)
class NoSuchSet:
    """A correction that finds no set: there are ``have`` of ``exercise`` (None: no set at all)."""

    exercise: str | None
    have: int


@dataclass(frozen=True, slots=True)
class Upcoming:
    """The next set: ``number`` of ``of``. ``fresh``: the exercise is announced now, its first set is still to come."""

    exercise: str
    step: TargetSet
    number: int
    of: int
    fresh: bool
    named: bool = False
    """Another exercise than the one just worked, so its name is said."""
    plates: tuple[float, ...] | None = None
    """One side of the bar, heaviest first, in the lifter's unit; None where no bar is loaded."""
    note: str | None = None
    """The coach's own cue, shown as it is, with the first set."""


@dataclass(frozen=True, slots=True)
class NextTime:
    """What the next session of this exercise will ask."""

    exercise: str
    way: Verdict
    sets: tuple[TargetSet, ...]


@dataclass(frozen=True, slots=True)
class Because:
    """Why a target moves or is held back."""

    reasons: tuple[Reason, ...]


@dataclass(frozen=True, slots=True)
class Explained:
    """Why a target is so, asked for: the reason and the titles of its sources."""

    reason: Reason
    sources: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Careful:
    """A caution to show, one sentence."""

    text: str
    slots: tuple[tuple[str, Slot], ...] = ()


@dataclass(frozen=True, slots=True)
class Stepped:
    """A target was met and one way went up."""

    exercise: str
    way: Verdict


@dataclass(frozen=True, slots=True)
class PlanDone:
    """Everything planned for today is done, skipped or off."""


@dataclass(frozen=True, slots=True)
class Line:
    """One exercise of a session to come: its target, and how many of its sets are done."""

    exercise: str
    target: Target | None
    sets: int
    reps: tuple[int, int]
    done: int = 0


@dataclass(frozen=True, slots=True)
class Listed:
    """A whole session, as it stands."""

    title: str
    lines: tuple[Line, ...]
    at: time | None = None
    minutes: int | None = None
    started: bool = True
    on: date | None = None
    """The day, where it is not today."""
    waits: tuple[str, ...] = ()
    """What is planned and not to be done now, for want of kit or for an ache."""


@dataclass(frozen=True, slots=True)
class Recapped:
    """A session that is over: sets done by exercise, the steps made, what the next session will ask."""

    done: tuple[tuple[str, tuple[SetAct, ...]], ...]
    steps: tuple[Stepped, ...] = ()
    coming: tuple[NextTime, ...] = ()
    skipped: tuple[str, ...] = ()
    by_silence: bool = False


@dataclass(frozen=True, slots=True)
class Skipped:
    """An exercise is left out today."""

    exercise: str


@dataclass(frozen=True, slots=True)
class Trimmed:
    """Today's session cut to the time that is there: what stays and what goes. ``tight``: even one is too long."""

    minutes: int
    stays: tuple[str, ...]
    gone: tuple[str, ...]
    tight: bool = False


@dataclass(frozen=True, slots=True)
class KitOfDay:
    """Only this is there today (None: a full gym); what cannot be loaded with it, and words not understood.

    ``without``: it was said as what is missing, in these words.
    """

    kit: Kit | None
    beside: tuple[str, ...] = ()
    odd: tuple[str, ...] = ()
    off: tuple[str, ...] = ()
    without: str = ""


@dataclass(frozen=True, slots=True)
class Swapped:
    """From now on ``to`` stands in the place of ``from_``."""

    from_: str
    to: str


@dataclass(frozen=True, slots=True)
class Offered:
    """Replacements for an exercise, each with its first set (None: no load known). Empty: there is none to offer."""

    from_: str
    picks: tuple[tuple[str, TargetSet | None], ...]


@dataclass(frozen=True, slots=True)
class EraseAsked:
    """All of today is to be erased: ask for a yes first."""

    sets: int


@dataclass(frozen=True, slots=True)
class Asked:
    """A question of the reader's. ``again``: it was open already and is put once more.

    ``unlikely``: a number in the words is past what anyone lifts.
    """

    ask: Ask
    again: bool = False
    unlikely: bool = False


@dataclass(frozen=True, slots=True)
class DoneAsked:
    """ "Done" was said with sets still to go: this set as asked, or the whole session?"""

    done: SetAct | None
    number: int
    of: int


@dataclass(frozen=True, slots=True)
class LevelAsked:
    """A number behind an ache without a level: is it this level, or were these sets done?"""

    ache: AcheAct
    sets: tuple[SetAct, ...]


@dataclass(frozen=True, slots=True)
class Weighed:
    """A body mass was kept."""

    kg: float


@dataclass(frozen=True, slots=True)
class Ached:
    """An ache was kept; ``told`` says whether the coach hears of it now."""

    ache: AcheAct
    told: bool


@dataclass(frozen=True, slots=True)
class Eased:
    """An exercise of today asks less since the ache, or no more than it did."""

    exercise: str
    way: Verdict
    sets: tuple[TargetSet, ...]


@dataclass(frozen=True, slots=True)
class OffToday:
    """These exercises are not to be done today."""

    exercises: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Alarmed:
    """A symptom of the alarm list. ``told``: there is a coach, who hears of it at once."""

    sign: Sign
    told: bool


@dataclass(frozen=True, slots=True)
class Held:
    """All targets are held since ``since``; sets are still kept."""

    since: datetime
    lifted_wish: bool = False
    """The lifter says that it is fine now: kindly, no."""


@dataclass(frozen=True, slots=True)
class Noted:
    """Words that were not understood. ``beside``: something else in the message was."""

    words: tuple[str, ...]
    beside: bool


@dataclass(frozen=True, slots=True)
class Where:
    """Where things are: sets kept today, and the exercise that is on."""

    sets: int
    exercise: str | None


@dataclass(frozen=True, slots=True)
class Moved:
    """A session moved to another day and time, or off (``to`` None). ``on``: the day it was on, if not today."""

    to: date | None
    travelling: bool = False
    at: time | None = None
    on: date | None = None


@dataclass(frozen=True, slots=True)
class DayTaken:
    """A session can't move to a day that has one."""

    on: date
    title: str


@dataclass(frozen=True, slots=True)
class Missed:
    """A planned session of ``on`` has no sets: one kind question."""

    on: date
    title: str


@dataclass(frozen=True, slots=True)
class Weekly:
    """A week in numbers, from ``first`` to ``last``."""

    first: date
    last: date
    sessions: int
    planned: int
    sets: int
    steps: tuple[Stepped, ...] = ()


@dataclass(frozen=True, slots=True)
class Told:
    """A plain sentence by its key in the wording table, with the name slots it needs."""

    key: str
    slots: tuple[tuple[str, str], ...] = field(default_factory=tuple)


@dataclass(frozen=True, slots=True)
class AlertAlarm:
    """For the coach: a client reports a symptom; ``words`` is the message, ``also`` its further symptoms."""

    who: str
    sign: Sign
    words: str
    also: tuple[Sign, ...] = ()


@dataclass(frozen=True, slots=True)
class AlertAche:
    """For the coach: a client's ache, and what was changed because of it; ``words`` is the message."""

    who: str
    ache: AcheAct
    eased: tuple[Eased, ...]
    off: tuple[str, ...] = ()
    words: str = ""


Alert = AlertAlarm | AlertAche

Fact = (
    Recorded
    | Amended
    | Erased
    | Undone
    | NoSuchSet
    | Upcoming
    | NextTime
    | Because
    | Explained
    | Careful
    | Stepped
    | PlanDone
    | Listed
    | Recapped
    | Skipped
    | Swapped
    | Trimmed
    | KitOfDay
    | Offered
    | EraseAsked
    | Asked
    | DoneAsked
    | LevelAsked
    | Weighed
    | Ached
    | Eased
    | OffToday
    | Alarmed
    | Held
    | Noted
    | Where
    | Moved
    | DayTaken
    | Missed
    | Weekly
    | Told
)

Kind = Literal["prompt", "missed", "summary", "recap"]
"""What the clock comes back for."""
