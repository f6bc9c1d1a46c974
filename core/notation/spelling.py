"""Exercise names with a slip of the thumb: the words that are no words of any name are put right, and found again.

The plan is read back before it is in force, so a slip put right is seen; a word that may be two words stays as it is.
"""

import re
from collections.abc import Callable
from functools import cache
from typing import Final

from rapidfuzz import process
from rapidfuzz.distance import OSA

from core.evidence.exercises import EXERCISES

FindExercise = Callable[[str], tuple[str, ...]]

_LEAST: Final = 4
"""Shorter words are too near to one another."""
_SHORTEST: Final = 3
"""So many letters of a word that only one word of a name begins with stand for it ("gob squat")."""
_SURE: Final = 0.75
"""Likeness (0 to 1, by slips) from which a word is taken for a word of a name. Choice of ours."""
_NO_SLIPS: Final = frozenset({"plan", "plans", "dear", "march", "best", "hold", "then", "with"})
"""Words of a note between people that are near to words of names, and are no slips of them."""
_APART: Final = 0.1


@cache
def _words() -> tuple[str, ...]:
    names = (word for row in EXERCISES.values() for word in re.findall(r"[a-z]+", row.name.lower()))
    return tuple(sorted({word for word in names if len(word) >= _LEAST}))


def mended(find: FindExercise) -> FindExercise:
    """The same way to find an exercise, that gets over slips."""

    def found(name: str) -> tuple[str, ...]:
        return find(name) or find(re.sub(r"[A-Za-z]+", lambda word: _mend(word.group()), name))

    return found


def _mend(word: str) -> str:
    low = word.lower()
    if len(low) >= _SHORTEST and (whole := [one for one in _words() if one.startswith(low)]) and low not in _NO_SLIPS:
        return whole[0] if len(whole) == 1 else word
    if len(low) < _LEAST or low in _NO_SLIPS or low in _words() or low.removesuffix("s") in _words():
        return word
    some = [one for one in _words() if one[0] == low[0]]
    near = process.extract(low, some, scorer=OSA.normalized_similarity, score_cutoff=_SURE, limit=2)
    if not near or (len(near) > 1 and near[0][1] - near[1][1] < _APART):
        return word
    return near[0][0]
