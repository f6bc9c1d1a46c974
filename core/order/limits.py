"""The limits of a target by hand, as a table: which of them a coach may overrule by a yes, and why. No logic."""

from dataclasses import dataclass
from typing import Final, Literal

Bound = Literal["held", "ache", "kit", "no_heavier", "step"]


@dataclass(frozen=True, slots=True)
class Limit:
    """One limit: ``id`` ends the key of its words; ``overruled``: whether the coach's yes is enough; ``why``."""

    id: Bound
    overruled: bool
    why: str


_ROWS: Final = (
    Limit("held", overruled=False, why="After an alarm nothing is asked before licensed care has seen to it."),
    Limit("ache", overruled=False, why="What aches gets no harder; a coach at a distance cannot feel it."),
    Limit("kit", overruled=False, why="A load that cannot be made cannot be lifted; the kit changes by a word."),
    Limit("no_heavier", overruled=False, why="The wish for nothing heavier is taken back by who had it: free NAME."),
    Limit("step", overruled=True, why="How big a step may be is a rule of thumb, and the coach knows the lifter."),
)

LIMITS: Final = {row.id: row for row in _ROWS}
"""Each limit by its id."""
