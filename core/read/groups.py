"""What grammar makes of a stretch: groups of sets said together, and the remarks with their places.

What stays open here (a lead number that is a load or a count of sets, a number behind an at-sign that is a load or
an effort) is decided in settle.py with the setting.
"""

from dataclasses import dataclass, field, replace

from core.read.atoms import LoadSaid
from core.read.remark import Remark


@dataclass(slots=True)
class Rep:
    """One count: repetitions (R), seconds held (H) or metres (D); its side if said; parts after a breath."""

    n: float
    kind: str = "R"
    side: str | None = None
    parts: list[float] = field(default_factory=list)
    plural: bool = False
    explicit: bool = False


@dataclass(slots=True)
class Group:
    """Sets said together. ``lead`` is a number before the reps that is a load or a count of sets. ``behind`` is a
    bare number after an at-sign. ``tail`` is the count of the last of several like sets. ``gaps`` are the
    separators in a bare list. ``like``: as the last set; ``planned``: as the plan has it, all its sets where none are
    counted."""

    first: int
    last: int
    load: LoadSaid | None = None
    lead: float | None = None
    lead_plural: bool = False
    reps: list[Rep] = field(default_factory=list)
    sets: float | None = None
    behind: float | None = None
    bare: bool = False
    gaps: list[str] = field(default_factory=list)
    like: bool = False
    load_change: LoadSaid | None = None
    reps_change: float = 0.0
    drop: bool = False
    warmup: bool = False
    chained: bool = False
    inherits: bool = True
    working: bool = False
    parted: bool = False
    open_after: bool = False
    explicit: bool = False
    arrow: bool = False
    headed: bool = False
    kinds: set[str] = field(default_factory=set)
    most: float = 0.0
    most_later: float = 0.0
    remarks: list[Remark] = field(default_factory=list)
    tail: float | None = None
    planned: bool = False

    @property
    def empty(self) -> bool:
        """Whether it says no count at all."""
        return not self.reps and not self.like


def leads_with_load(group: Group) -> bool:
    """Whether the first number of a bare list stands out as its load: a plural, or twice what follows and more."""
    if not group.reps:
        return False
    first, *rest = group.reps
    if first.plural and rest and not rest[-1].plural:
        return True
    return group.bare and bool(rest) and first.n >= LEAST_LEAD and first.n >= 2 * max(rep.n for rep in rest)


LEAST_LEAD = 20.0
"""A number below this does not stand out as the load of a list (common practice, no source)."""


@dataclass(slots=True)
class Placed:
    """A remark with where it stood: after which group (-1 before all), and whether something parted it from that."""

    remark: Remark
    after: int
    apart: bool
    line: bool = False
    near_last: bool = False
    near_all: bool = False
    heads: bool = False
    then: bool = False


@dataclass(slots=True)
class Parsed:
    """A stretch read: its groups, the remarks with their places, and flags said once for all.
    ``drops_from``: the first group that is dropped to."""

    groups: list[Group]
    placed: list[Placed]
    weighted: bool = False
    assisted: bool = False
    sides: list[tuple[str, int]] = field(default_factory=list)
    strangers: list[int] = field(default_factory=list)
    rounds: float | None = None
    dropset: bool = False
    drops_from: int = 99
    unknown_name: bool = False
    unilateral: bool = False

    def copy(self) -> "Parsed":
        """A copy whose groups can be settled without touching these."""
        groups = [
            replace(group, reps=[replace(rep) for rep in group.reps], gaps=list(group.gaps)) for group in self.groups
        ]
        return replace(self, groups=groups)
