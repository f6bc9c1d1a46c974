"""Ladders of variants: exercises of one pattern in the order of the share of body mass that each moves. Rows, no logic.

Where the body is the load and nothing can be added, the next variant is the next load. The shares stand in
``core.evidence.body``; a ladder says only which exercises are rungs of one another. A rung may be wide: whether it is
carried is for the estimate to say.
"""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Ladder:
    """Exercise ids from the lightest to the heaviest variant, and where the order comes from."""

    rungs: tuple[str, ...]
    sources: tuple[str, ...]


LADDERS: Final = (
    Ladder(
        ("knee-push-up", "hands-elevated-push-up", "push-up", "feet-elevated-push-up"),
        ("ebben-2011", "mier-2014"),
    ),
    Ladder(("pike-push-up", "handstand-push-up"), ("practice",)),
    Ladder(("bench-dip", "dip"), ("deleva-1996", "practice")),
    Ladder(("bodyweight-squat", "pistol-squat"), ("deleva-1996", "practice")),
    Ladder(("hanging-knee-raise", "hanging-leg-raise"), ("deleva-1996", "practice")),
)
"""No exercise stands on two ladders."""


def rung_above(exercise: str) -> str | None:
    """The next heavier variant, or None at the top and where there is no ladder."""
    for ladder in LADDERS:
        if exercise in ladder.rungs[:-1]:
            return ladder.rungs[ladder.rungs.index(exercise) + 1]
    return None
