"""What must be asked, and sets as settled: the two answers that settling can give."""

from collections.abc import Sequence
from dataclasses import dataclass, field

from core.model.acts import Act, SetAct
from core.model.reading import About


@dataclass(slots=True)
class Doubt:
    """What must be asked, with the readings that can answer it."""

    about: About
    readings: list[tuple[str, Sequence[Act]]] = field(default_factory=list)


@dataclass(slots=True)
class Settled:
    """Bare sets of each group, in order, or the first doubt."""

    sets: list[list[SetAct]]
    doubt: Doubt | None = None
