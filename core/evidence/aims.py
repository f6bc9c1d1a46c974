"""What is aimed at where no coach has said anything: one row a kind of exercise. Rows, and the look-up.

Repetitions: ACSM 2009 (position stand, progression models), 8 to 12 for people who are not specialists. Rest as in
numbers.py. Three sets, two in reserve, the seconds of holds and the metres of carries: common practice, no source.
"""

from collections.abc import Mapping
from typing import Final

from core.evidence.body import row_of
from core.evidence.numbers import value
from core.model.target import Aim

_HOLD: Final = Aim(sets=3, reps=(20, 45), rir=2.0, rest_s=value("rest.default_isolation_s"), ways=("reps", "load"))
_CARRY: Final = Aim(sets=3, reps=(20, 40), rir=2.0, rest_s=value("rest.default_compound_s"), ways=("reps", "load"))

DEFAULT_AIMS: Final[Mapping[str, Aim]] = {
    "hold": _HOLD,
    "carry": _CARRY,
    "compound": Aim(sets=3, reps=(8, 12), rir=2.0, rest_s=value("rest.default_compound_s"), ways=("reps", "load")),
    "isolation": Aim(sets=3, reps=(8, 12), rir=2.0, rest_s=value("rest.default_isolation_s"), ways=("reps", "load")),
}
"""By the pattern of the exercise, else by its kind. A hold counts seconds, a carry metres."""


def default_aim(exercise: str) -> Aim:
    """The aim for an exercise that no plan holds."""
    row = row_of(exercise)
    return DEFAULT_AIMS.get(row.pattern) or DEFAULT_AIMS[row.kind]
