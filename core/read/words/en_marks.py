"""English, single words (or what stands for one) that a pattern tells apart beyond their kinds.

Most marks are a word by itself and are named after it; another language gives its own word for each. Source: common
English; no single source.
"""

from collections.abc import Mapping
from typing import Final

_THEMSELVES: Final = (
    "a, about to, again, an, another, another one, any, arms, back, back in, bar, barbell, before, between, break, "
    "dbs, different, done, doon, down, dumbbells, dumbells, extra, find me, from, give me, going to, gonna, got, "
    "gotta, half, half a, have to, heavier, i need, ill, in, instead, it is, its, l, left, legs, lighter, lower, m, "
    "min, minute, my, need, no, now, off, one, one more, pause, paused, pauses, plus, quarter, r, reps, rest, right, "
    "round, set, sets, since, something else, suggest, the, the bar, up, upper back, ups, want, will, x"
)

MARKS: Final[Mapping[str, str]] = {word: word for word in _THEMSELVES.split(", ")}
"""Each mark with its words."""
