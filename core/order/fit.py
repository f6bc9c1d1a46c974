"""One client's plan fitted to another's kit: what cannot be done there gives way to the likest that can."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from typing import Final

from core.evidence.body import row_of, traits_of
from core.evidence.exercises import EXERCISES, Exercise
from core.model.lifter import Kit
from core.model.plan import Plan, Planned, TrainingDay

_NEEDS: Final[Mapping[str, Callable[[Kit], bool]]] = {
    "bar": lambda kit: kit.bar_kg is not None,
    "light_bar": lambda kit: kit.bar_kg is not None,
    "landmine": lambda kit: kit.bar_kg is not None,
    "plates": lambda kit: bool(kit.plates_kg),
    "dumbbell": lambda kit: bool(kit.dumbbells_kg),
    "bell": lambda kit: bool(kit.kettlebells_kg or kit.dumbbells_kg),
    "stack": lambda kit: kit.stack_step_kg is not None,
    "band": lambda kit: bool(kit.bands),
    "body": lambda kit: True,  # noqa: ARG005 - each row is asked of a kit
}
"""What must be there, by the implement of an exercise."""


@dataclass(frozen=True, slots=True)
class Fitted:
    """The plan as it can be done, and what gave way: from which exercise to which (None: nothing like it)."""

    plan: Plan
    swaps: tuple[tuple[str, str | None], ...] = ()


def fitted(plan: Plan, kit: Kit | None) -> Fitted:
    """The plan for somebody with that kit; no kit named is a full gym."""
    swaps: dict[str, str | None] = {}
    days = tuple(_day(day, kit, swaps) for day in plan.days)
    kept = tuple(day for day in days if day.exercises)
    return Fitted(replace(plan, days=kept), tuple(swaps.items()))


def _day(day: TrainingDay, kit: Kit | None, swaps: dict[str, str | None]) -> TrainingDay:
    done: list[Planned] = []
    for item in day.exercises:
        if _can(kit, item.exercise):
            done.append(item)
            continue
        taken = {one.exercise for one in day.exercises} | {one.exercise for one in done}
        to = _likest(row_of(item.exercise), kit, taken)
        swaps[item.exercise] = to
        if to is not None:
            done.append(replace(item, exercise=to))
    return replace(day, exercises=tuple(done))


def _can(kit: Kit | None, exercise: str) -> bool:
    return kit is None or _NEEDS[traits_of(exercise).implement](kit)


def _likest(gone: Exercise, kit: Kit | None, taken: Iterable[str]) -> str | None:
    held = gone.pattern in ("hold", "carry")
    options = [
        row
        for row in EXERCISES.values()
        if row.id not in set(taken) and _can(kit, row.id) and (row.pattern in ("hold", "carry")) == held
    ]
    best = max(options, key=lambda row: _likeness(gone, row), default=None)
    return best.id if best is not None and _likeness(gone, best) > 0 else None


def _likeness(gone: Exercise, row: Exercise) -> int:
    """Points: the main muscle must be shared; pattern counts most, then kind and further muscles."""
    if not set(gone.main_muscles) & set(row.main_muscles):
        return 0
    return (
        4
        + 4 * (gone.pattern == row.pattern)
        + 2 * (gone.kind == row.kind)
        + len(set(gone.side_muscles) & set(row.side_muscles))
    )
