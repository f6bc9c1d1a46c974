"""What a break from an exercise asks for: the return table. Rows, and the look-up.

Softer than the loss of strength alone (bosquet-2013, mcmaster-2013), because soreness follows unaccustomed volume
(caterisano-2019, from memory); the factors are a judgement derived from those.
"""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Return:
    """One row: from so many whole weeks off, load and sets as factors, least reserve, added doubt (sd of ln)."""

    weeks: int
    load_factor: float
    set_factor: float
    min_rir: float
    extra_sd: float


RETURNS: Final = (
    Return(0, 1.00, 1.0, 1.0, 0.0),
    Return(2, 0.95, 0.8, 2.0, 0.02),
    Return(3, 0.90, 0.6, 3.0, 0.03),
    Return(5, 0.85, 0.5, 3.0, 0.05),
    Return(9, 0.80, 0.5, 4.0, 0.07),
    Return(13, 0.70, 0.5, 4.0, 0.10),
)

SOURCES_USED: Final = ("bosquet-2013", "mcmaster-2013", "caterisano-2019", "derived")


def after(days: int) -> Return:
    """The row for so many days without the exercise; a negative count is none."""
    weeks = max(0, days) // 7
    return [row for row in RETURNS if row.weeks <= weeks][-1]
