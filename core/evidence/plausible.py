"""What a set can plausibly be: bounds past which the reader asks back instead of recording. Rows, no logic.

Source of every row: common practice of the trade, no source; chosen so that strong lifters' real sets pass unasked.
"""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Bound:
    """One bound: its value, unit, the range in which it could reasonably lie, and why."""

    value: float
    unit: str
    low: float
    high: float
    why: str


BOUNDS: Final = {
    "bar_kg": Bound(20.0, "kg", 15.0, 20.0, "an Olympic bar in a gym that loads in kilograms"),
    "bar_lb": Bound(45.0, "lb", 35.0, 45.0, "an Olympic bar in a gym that loads in pounds"),
    "plate_kg": Bound(20.0, "kg", 20.0, 25.0, "'a plate' where plates are in kilograms"),
    "plate_lb": Bound(45.0, "lb", 45.0, 45.0, "'a plate' where plates are in pounds"),
    "least_barbell_kg": Bound(10.0, "kg", 5.0, 20.0, "lightest load said on a barbell lift"),
    "most_total_kg": Bound(500.0, "kg", 400.0, 600.0, "heaviest compound lift with everything counted"),
    "most_isolation_kg": Bound(250.0, "kg", 150.0, 300.0, "heaviest stack on a single-joint machine"),
    "most_hand_kg": Bound(110.0, "kg", 80.0, 130.0, "heaviest single dumbbell or carry implement"),
    "most_added_kg": Bound(150.0, "kg", 100.0, 200.0, "heaviest load hung on the body"),
    "most_reps_heavy": Bound(50.0, "reps", 30.0, 60.0, "most repetitions of a compound lift under a load"),
    "most_reps_light": Bound(100.0, "reps", 50.0, 120.0, "most repetitions of a single-joint lift under a load"),
    "most_reps_body": Bound(300.0, "reps", 150.0, 500.0, "most repetitions in one set with the body alone"),
    "most_hold_s": Bound(1800.0, "s", 900.0, 3600.0, "longest timed hold"),
    "most_sets": Bound(20.0, "sets", 10.0, 30.0, "most sets told by a count"),
    "most_message_sets": Bound(150.0, "sets", 100.0, 300.0, "most sets told in one message"),
    "likely_sets": Bound(10.0, "sets", 6.0, 12.0, "most sets that 'a x b' is taken to count"),
    "times_known_load": Bound(3.0, "times", 2.5, 4.0, "a load this many times the usual one is asked about"),
    "near_known_load": Bound(0.35, "share", 0.2, 0.5, "how near a number must be to the known load to be one"),
}  # fmt: skip
"""Every bound by its name."""
