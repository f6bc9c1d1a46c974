"""What the measures should reach. Set before the core was measured, not published."""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Goal:
    """One line of the table: its name, the goal, what would be better still, and whether more or less is better."""

    name: str
    goal: float
    stretch: float
    more: bool = True
    upper: float | None = None

    def verdict(self, value: float) -> str:
        """One word on a value."""
        if self.upper is not None and value > self.upper:
            return "over"
        better = (value >= self.stretch) if self.more else (value <= self.stretch)
        good = (value >= self.goal) if self.more else (value <= self.goal)
        return "stretch" if better else "goal" if good else "short"


GOALS: Final = (
    Goal("gap closed, all", 0.62, 0.70),
    Goal("gap closed, worst family", 0.35, 0.50),
    Goal("gap closed, held-out families", 0.50, 0.62),
    Goal("chance: mean gap of the bins", 0.05, 0.03, more=False),
    Goal("chance: Brier skill over base rate", 0.42, 0.48),
    Goal("inside the 80 % band (+- half a rep)", 0.75, 0.80, upper=0.92),
    Goal("targets met", 0.65, 0.72, upper=0.85),
    Goal("reach", 0.65, 0.75, upper=1.05),
    Goal("steps a lifter (24 sessions)", 4.0, 5.0),
    Goal("limits broken", 0.0, 0.0, more=False),
)
