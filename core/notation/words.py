"""The words of a written plan, as tables. No logic."""

from typing import Final

from core.model.quantities import Way

WEEKDAYS: Final[dict[str, int]] = {
    **dict.fromkeys(("mon", "monday", "mondays"), 0),
    **dict.fromkeys(("tue", "tues", "tuesday", "tuesdays"), 1),
    **dict.fromkeys(("wed", "weds", "wednesday", "wednesdays"), 2),
    **dict.fromkeys(("thu", "thur", "thurs", "thursday", "thursdays"), 3),
    **dict.fromkeys(("fri", "friday", "fridays"), 4),
    **dict.fromkeys(("sat", "saturday", "saturdays"), 5),
    **dict.fromkeys(("sun", "sunday", "sundays"), 6),
}
DAY_NAMES: Final = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")

WAYS: Final[dict[str, Way]] = {
    **dict.fromkeys(("reps", "rep", "repetitions"), "reps"),
    **dict.fromkeys(("tempo", "slower"), "tempo"),
    **dict.fromkeys(("range", "rom", "depth", "deeper"), "range"),
    **dict.fromkeys(("rest", "density"), "rest"),
    **dict.fromkeys(("load", "weight", "heavier", "kilos", "pounds"), "load"),
}
WAY_FILLERS: Final = frozenset({"then", "before", "first", "and", "or", "only", "by", ",", ">"})
"""Words between two ways; the order in which the ways stand is the order that counts."""

PHASES: Final[dict[str, int]] = {
    **dict.fromkeys(("lower", "down", "lowering", "negatives", "eccentric"), 0),
    **dict.fromkeys(("pause", "hold", "bottom"), 1),
    **dict.fromkeys(("lift", "up", "lifting", "raise", "concentric"), 2),
    **dict.fromkeys(("top", "squeeze", "lockout"), 3),
}
"""Word of a phase -> its place in a tempo."""
