"""One thing said beside sets, and how a number or a spread of numbers is read for it."""

from dataclasses import dataclass
from typing import Final

from core.read.stream import Stream

TOP_EFFORT: Final = 10.0
"""The top of the RPE scale (the reading contract)."""
LEAST_FELT: Final = 5.0
"""Efforts below this are not told by a bare number (common practice, no source)."""
MOST_RESERVE: Final = TOP_EFFORT
"""Reserve runs from 0 to as much as the scale of effort (the reading contract)."""

MOST_LAST: Final = 5.0
"""'The last 3 were ugly': so many last repetitions are spoken of at most (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Remark:
    """One thing said beside sets. ``first`` and ``last`` are lexeme indices. ``wide``: meant for all the sets;
    ``nths``: for these alone, counted from one, or from -1 at the end."""

    what: str
    value: object
    first: int
    last: int
    wide: bool = False
    last_only: bool = False
    each: tuple[float, ...] = ()
    nths: tuple[int, ...] = ()


Found = Remark | None


def range_middle(s: Stream, i: int) -> tuple[float, int] | None:
    """A number or a spread (8-9, 1 to 2, one or two): its middle and the last index."""
    first = s.num(i)
    if first is None or s.all[i].has("SETQ", "LOADQ") or s.all[i].plural:
        return None
    j = i + 1
    if s.is_(j, "DASH", "TO", "OR", "SLASH") and (second := s.num(j + 1)) is not None:
        apart = second - first
        listed = s.is_(j, "SLASH") and s.is_(j + 2, "SLASH", "COMMA") and s.is_(j + 3, "NUM")
        if 0 < apart <= 2 and not listed and not (s.is_(j, "SLASH") and second == MOST_RESERVE):
            return (first + second) / 2, j + 1
    return first, i
