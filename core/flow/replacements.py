"""What can stand in for an exercise today: by pattern, muscles and kit. It may not know how loads are made."""

from collections.abc import Callable, Mapping
from typing import Final

from core.evidence.body import row_of, traits_of
from core.evidence.exercises import EXERCISES, Exercise
from core.flow import day
from core.flow.scene import Scene
from core.model.acts import Swap
from core.model.lifter import Kit
from core.model.target import TargetSet

OFFERED: Final = 3
"""At most this many, to be read between sets."""

LOOKED_AT: Final = 12
"""So many of the likest are asked for advice, so that an answer stays quick."""


_NEEDS: Final[Mapping[str, Callable[[Kit], bool]]] = {
    "bar": lambda kit: kit.bar_kg is not None,
    "light_bar": lambda kit: kit.bar_kg is not None,
    "landmine": lambda kit: kit.bar_kg is not None,
    "plates": lambda kit: bool(kit.plates_kg) or kit.stack_step_kg is not None,
    "dumbbell": lambda kit: bool(kit.dumbbells_kg),
    "bell": lambda kit: bool(kit.kettlebells_kg or kit.dumbbells_kg),
    "stack": lambda kit: kit.stack_step_kg is not None,
    "band": lambda kit: bool(kit.bands),
    "body": lambda kit: True,  # noqa: ARG005
}
"""What must be there, by the implement of an exercise."""


def can_be_done(kit: Kit | None, exercise: str) -> bool:
    """The kit has the implement of this exercise. No kit named is a full gym."""
    return kit is None or _NEEDS[traits_of(exercise).implement](kit)


def replacements(scene: Scene, exercise: str) -> tuple[tuple[str, TargetSet | None], ...]:
    """Up to three exercises in the place of one, the likest first, each with its first set."""
    taken = {place.exercise for place in day.places(scene.book, scene.on)} | {exercise}
    here = row_of(exercise)
    likest = sorted(
        (row for row in EXERCISES.values() if row.id not in taken and _alike(here, row) > 0),
        key=lambda row: -_alike(here, row),
    )
    kit = day.lifter_on(scene.book, scene.on).kit
    found: list[tuple[str, TargetSet | None]] = []
    for row in likest[:LOOKED_AT]:
        if not can_be_done(kit, row.id):
            continue
        if scene.book.hold:
            found.append((row.id, None))
        else:
            swapped = scene.keeps(Swap(exercise, row.id)).book
            advice = scene.adviser.today(swapped, scene.on, row.id, ())
            found += [(row.id, advice.sets[0])] if advice.sets and advice.way != "stop" else []
        if len(found) == OFFERED:
            break
    return tuple(found)


def _alike(a: Exercise, b: Exercise) -> int:
    """Likeness in points: the main muscle must be shared; pattern, further muscles and kind add to it."""
    shared = set(a.main_muscles) & set(b.main_muscles)
    if not shared:
        return 0
    sides = set(a.side_muscles) & set(b.side_muscles)
    return 4 * len(shared) + 4 * (a.pattern == b.pattern) + len(sides) + 2 * (a.kind == b.kind)
