"""What a picture of progress shows, as values: the same facts are said in words beside it."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date

from core.model.quantities import Unit, Way


@dataclass(frozen=True, slots=True)
class PictureWords:
    """The words in a picture, in the language of whoever looks: its head, its axis, its days, names of ways.

    ``foot`` says how to read it; ``facts`` are the words of its facts as rows, with slots.
    """

    head: str = ""
    axis: str = ""
    day: str = "%-d %b"
    decimal: str = "."
    ways: Mapping[str, str] = field(default_factory=dict)
    foot: str = ""
    facts: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class CoursePoint:
    """One session of an exercise.

    ``estimate`` is what could be lifted once, with ``low`` and ``high`` about 80 % apart around it, in kg on the
    load as it is said; for the body alone all three are repetitions. ``way`` is what moved up in a met target.
    """

    on: date
    estimate: float
    low: float
    high: float
    way: Way | None = None


@dataclass(frozen=True, slots=True)
class Course:
    """The sessions of one exercise, oldest first."""

    title: str
    unit: Unit
    in_reps: bool
    points: tuple[CoursePoint, ...]
    words: PictureWords = field(default_factory=PictureWords)


@dataclass(frozen=True, slots=True)
class MuscleSets:
    """Sets of a week for one muscle (indirect ones count half), against the coach's range."""

    muscle: str
    sets: float
    low: float
    high: float


@dataclass(frozen=True, slots=True)
class WeekView:
    """A week at a glance."""

    title: str
    kept: int
    planned: int
    muscles: tuple[MuscleSets, ...]
    words: PictureWords = field(default_factory=PictureWords)


@dataclass(frozen=True, slots=True)
class Glance:
    """One person among many: kept, planned and steps of each of the last weeks, oldest first; ``word``: needs one."""

    name: str
    weeks: tuple[tuple[int, int, int], ...]
    word: bool = False


@dataclass(frozen=True, slots=True)
class Ahead:
    """Courses that may be, one an order of ways: middle, low and high of what is asked on each day."""

    title: str
    unit: Unit
    in_reps: bool
    days: tuple[date, ...]
    courses: tuple[tuple[str, tuple[tuple[float, float, float], ...]], ...]
    words: PictureWords = field(default_factory=PictureWords)
