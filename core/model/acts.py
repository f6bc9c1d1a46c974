"""What one message reports. Field names and defaults are those of the reading contract (see DEVELOPERS.md)."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from core.model.lifter import Kit
from core.model.quantities import Form, Load, Range, Side, Tempo

Span = tuple[int, int]
"""Start and end offsets in the message as typed, in code points."""

Which = int | Literal["last", "today"]
Sign = Literal["chest", "breath", "faint", "heart", "nerve", "bladder", "dark-urine", "head", "injury", "swelling"]


@dataclass(frozen=True, slots=True)
class SetAct:
    """One set done. ``reps`` is None for holds and distances; ``rir`` is repetitions in reserve, halves allowed."""

    exercise: str | None
    load: Load | None = None
    reps: int | None = None
    hold_s: float | None = None
    distance_m: float | None = None
    rir: float | None = None
    tempo: Tempo | None = None
    rest_s: float | None = None
    form: Form | None = None
    range: Range | None = None
    side: Side | None = None
    warmup: bool = False
    drop: bool = False
    failed: bool = False
    partials: int = 0
    day: int = 0
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class AsPlanned:
    """The plan was done as written; ``exercise`` None means all of today."""

    exercise: str | None = None
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Amend:
    """A correction of a set already kept: field names of SetAct to new values, None clears one."""

    which: Which
    change: Mapping[str, object]
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Erase:
    """A set (by number in this session's exercise), the last one, or all of today did not happen."""

    which: Which
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class AcheAct:
    """A joint or body part complains; ``level`` 0 to 10 or None when unsaid."""

    where: str
    side: Literal["left", "right", "both"] | None = None
    level: float | None = None
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Alarm:
    """A symptom that must stop training."""

    sign: Sign
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Begin:
    """The session starts."""

    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Finish:
    """The session is over."""

    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Next:
    """The lifter asks what to do next."""

    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Skip:
    """An exercise is left out today; ``for_time``: because the time is short, so that it can come back."""

    exercise: str | None = None
    span: Span | None = None
    for_time: bool = False


@dataclass(frozen=True, slots=True)
class Swap:
    """One exercise in the place of another; ``to`` None means that the lifter asks for one."""

    from_: str | None = None
    to: str | None = None
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class Bodyweight:
    """The lifter's body mass in kilograms."""

    kg: float
    span: Span | None = None


@dataclass(frozen=True, slots=True)
class OnlyKit:
    """Only this equipment is there today; ``kit`` None: a full gym. Never read from a text by the reader alone."""

    kit: Kit | None = None
    span: Span | None = None


Act = SetAct | AsPlanned | Amend | Erase | AcheAct | Alarm | Begin | Finish | Next | Skip | Swap | Bodyweight | OnlyKit
