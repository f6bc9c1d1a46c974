"""Was it a step? A met target in which one way went up. It may not know how a target is judged met."""

from collections.abc import Callable
from typing import Final, get_args

from core.model.acts import SetAct
from core.model.facts import Stepped
from core.model.quantities import Way
from core.model.target import Target

_WAYS: Final = frozenset(get_args(Way))

Met = Callable[[tuple[SetAct, ...], Target], bool]
"""How a flow asks whether sets met a target."""


def step_of(exercise: str, target: Target | None, sets: tuple[SetAct, ...], met: Met) -> Stepped | None:
    """The step made, if it is one."""
    if target is None or target.way not in _WAYS or not met(sets, target):
        return None
    return Stepped(exercise, target.way)
