"""Muscles in a coach's words, and the weekly sets that a coach asks of them. Tables, and the look-up."""

import re
from typing import Final

from core.evidence.exercises import EXERCISES

MUSCLES: Final = tuple(sorted({muscle for row in EXERCISES.values() for muscle in row.main_muscles}))
"""Every muscle that an exercise trains itself."""

_ALSO: Final = {
    "ham": "hamstrings", "hams": "hamstrings", "quadriceps": "quads", "lat": "lats", "ab": "abs", "stomach": "abs",
    "glute": "glutes", "butt": "glutes", "pecs": "chest", "pec": "chest", "calf": "calves", "bicep": "biceps",
    "tricep": "triceps", "trap": "traps", "forearm": "forearms",
}  # fmt: skip
_SEVERAL: Final = {
    "back": ("lats", "upper-back", "lower-back"), "delts": ("front-delts", "side-delts", "rear-delts"),
    "shoulders": ("front-delts", "side-delts", "rear-delts"), "arms": ("biceps", "triceps"),
    "legs": ("quads", "hamstrings", "glutes"),
}  # fmt: skip
"""Words for several muscles: which of them is meant is asked."""

MOST_SETS: Final = 40
"""Weekly sets for one muscle past this are a slip of the pen."""


def muscles_in(said: str) -> tuple[str, ...]:
    """The muscle that is meant; several to choose from; none when it is no muscle."""
    word = re.sub(r"\s+", "-", said.strip().lower())
    plain = _ALSO.get(word, word)
    if plain in MUSCLES:
        return (plain,)
    if plain in _SEVERAL:
        return _SEVERAL[plain]
    return tuple(one for one in (f"{plain}s", plain.removesuffix("s")) if one in MUSCLES)
