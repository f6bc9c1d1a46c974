"""What can be loaded: every load that a kit can make for an exercise, the next one up or down, and the plates for it.

Loads are put on one line of hardness in kg: outside load, 0 for the body alone, less than 0 for help. Masses are
counted in whole grams, so that sums are exact. Knows nothing of strength. The increments of a full gym are common
practice, no source.
"""

from bisect import bisect_right
from functools import lru_cache
from typing import Final

from core.evidence.body import Implement, traits_of
from core.model.lifter import Kit
from core.model.quantities import BODY, POUND_KG, Load, LoadKind, Unit

_MOST_KG: Final = 500.0
_MOST_PAIRS: Final = 12
_EXACT: Final = 0.02
"""Two loads closer than this (kg) are one load; pounds are stored as rounded kilograms."""

Shelf = tuple[float, ...]
_KitKey = tuple[float | None, tuple[tuple[float, int], ...], Shelf, Shelf, float | None, bool]


def hardness(load: Load) -> float | None:
    """Where a load stands on the line of hardness, or None when its mass is not known."""
    if load.kind == "body":
        return 0.0
    if load.kg is None or not abs(load.kg) < 2000:
        return None
    return -load.kg if load.kind == "assist" else load.kg


def load_at(hard: float, like: Load) -> Load:
    """The load at that hardness, of the same family as ``like``."""
    if like.kind in ("total", "per_hand", "band"):
        return Load(like.kind, hard, like.label)
    if abs(hard) < _EXACT:
        return BODY
    return Load("added", hard) if hard > 0 else Load("assist", -hard, like.label if like.kind == "assist" else None)


def same(first: float, second: float) -> bool:
    """Whether two loads are one, as far as a scale can tell."""
    return abs(first - second) < _EXACT


def shelf(kit: Kit | None, exercise: str, like: Load, unit: Unit) -> Shelf:
    """All loads that can be made, as hardness in rising order. In a full gym the load in use is always there."""
    if kit is None:
        loads = _gym(_implements(exercise, like.kind)[0], like.kind, unit, traits_of(exercise).belt)
        now = hardness(like)
        return tuple(sorted({*loads, now})) if now is not None and not any(same(now, one) for one in loads) else loads
    plates = tuple(sorted((kg, min(n, 99)) for kg, n in kit.plates_kg.items() if _usable(kg) and n > 0))
    dumbbells = tuple(sorted({kg for kg in kit.dumbbells_kg if _usable(kg)}))
    bells = tuple(sorted({kg for kg in kit.kettlebells_kg if _usable(kg)}))
    bar = kit.bar_kg if kit.bar_kg is not None and 0 <= kit.bar_kg < _MOST_KG else None
    step = kit.stack_step_kg if kit.stack_step_kg is not None and _usable(kit.stack_step_kg) else None
    key = (bar, plates, dumbbells, bells, step, bool(kit.bands))
    belt, now = traits_of(exercise).belt, hardness(like)
    shelves = [_made(key, implement, like.kind, belt) for implement in _implements(exercise, like.kind)]
    holds_now = [one for one in shelves if now is not None and any(same(now, load) for load in one)]
    return next(iter([*holds_now, *(one for one in shelves if one)]), ())


def _usable(kg: float) -> bool:
    return 0 < kg < _MOST_KG


_INSTEAD: Final[dict[Implement, tuple[Implement, ...]]] = {
    "light_bar": ("bell", "stack"),
    "plates": ("stack",),
    "bell": ("stack",),
    "dumbbell": ("bell",),
    "body": ("bell",),
    "band": ("stack",),
}
"""What else holds a load when the usual implement is not there. Common practice, no source."""


def _implements(exercise: str, kind: LoadKind) -> tuple[Implement, ...]:
    """What holds a load of that kind, the usual one first: an unusual kind for the exercise brings its own."""
    usual = traits_of(exercise).implement
    if kind in ("body", "added", "assist"):
        return ("body",)
    if kind == "band":
        return ("band",)
    if kind == "per_hand":
        return ("stack",) if usual == "stack" else ("dumbbell",)
    instead = _INSTEAD.get(usual, ())
    return instead if usual in ("dumbbell", "body", "band") else (usual, *instead)


def _steps(first: float, step: float, last: float) -> list[float]:
    return [first + step * i for i in range(int((last - first) / step + 1e-9) + 1)]


@lru_cache(maxsize=64)
def _gym(implement: Implement, kind: LoadKind, unit: Unit, belt: bool) -> Shelf:
    """A full gym's loads, in kg."""
    pounds = unit == "lb"
    dumbbells = [*_steps(1, 1, 10), *_steps(12, 2, 60)] if not pounds else _steps(5, 5, 150)
    lines: dict[Implement, list[float]] = {
        "bar": _steps(45, 5, 1000) if pounds else _steps(20, 2.5, 450),
        "light_bar": _steps(15, 5, 1000) if pounds else _steps(7.5, 2.5, 450),
        "plates": _steps(10, 10, 1500) if pounds else _steps(5, 5, 700),
        "dumbbell": dumbbells,
        "bell": dumbbells,
        "stack": _steps(5, 5, 600) if pounds else _steps(2.5, 2.5, 300),
        "body": [0.0, *(_steps(5, 5, 250) if pounds else _steps(2.5, 2.5, 120))] if belt else [0.0],
        "band": [0.0],
    }
    loads = lines[implement]
    if implement == "body" and kind == "assist":
        loads = [-x for x in (_steps(5, 5, 250) if pounds else _steps(2.5, 2.5, 120))] + loads
    scale = POUND_KG if pounds else 1.0
    return tuple(sorted(round(x * scale, 6) for x in loads))


def _sums(plates: tuple[tuple[float, int], ...], pairs: bool) -> set[int]:
    """All sums of plates in grams: of one side when plates go on in pairs."""
    sums = {0}
    for kg, count in plates:
        gram, most = round(kg * 1000), min(count // 2 if pairs else count, _MOST_PAIRS)
        sums = {s + i * gram for s in sums for i in range(most + 1) if s + i * gram <= _MOST_KG * 1000}
        if len(sums) > 4000:
            break
    return sums


@lru_cache(maxsize=512)
def _made(key: _KitKey, implement: Implement, kind: LoadKind, belt: bool) -> Shelf:
    bar, plates, dumbbells, bells, step, bands = key
    stack = [step * i for i in range(1, 61)] if step else []
    on_bar = [] if bar is None else [bar + 2 * s / 1000 for s in _sums(plates, pairs=True)]
    lines: dict[Implement, list[float]] = {
        "bar": on_bar,
        "light_bar": on_bar,
        "plates": stack or [2 * s / 1000 for s in _sums(plates, pairs=True) if s],
        "dumbbell": list(dumbbells),
        "bell": [*dumbbells, *bells],
        "stack": stack,
        "body": [0.0, *((s / 1000 for s in _sums(plates, pairs=False) if s) if belt else ())],
        "band": [0.0],
    }
    loads = lines[implement]
    if kind == "assist" and (step or bands):
        loads = [-x for x in stack] + loads
    return tuple(sorted({round(x, 6) for x in loads}))


def at_most(loads: Shelf, hard: float) -> float | None:
    """The heaviest load not above that hardness."""
    index = bisect_right(loads, hard + _EXACT)
    return loads[index - 1] if index else None


def heavier(loads: Shelf, hard: float) -> Shelf:
    """All loads above that hardness, the next one first."""
    return loads[bisect_right(loads, hard + _EXACT) :]


def lighter(loads: Shelf, hard: float) -> Shelf:
    """All loads under that hardness, the nearest first."""
    index = bisect_right(loads, hard - _EXACT)
    return tuple(reversed(loads[:index]))


def plates_a_side(kit: Kit | None, unit: Unit, total_kg: float) -> tuple[float, ...] | None:
    """Plates a side of the bar for that total, the heaviest first, in the lifter's unit; None if it cannot be made."""
    scale = POUND_KG if unit == "lb" else 1.0
    if kit is None:
        sizes = (45, 35, 25, 10, 5, 2.5) if unit == "lb" else (25, 20, 15, 10, 5, 2.5, 1.25)
        bar, stock = (45 if unit == "lb" else 20) * scale, [(size * scale, 10) for size in sizes]
    elif kit.bar_kg is None:
        return None
    else:
        bar = kit.bar_kg
        stock = [(kg, min(n // 2, _MOST_PAIRS)) for kg, n in sorted(kit.plates_kg.items(), reverse=True) if kg > 0]
    found = _fill(round((total_kg - bar) * 500), [(round(kg * 1000), n) for kg, n in stock])
    return None if found is None else tuple(round(gram / 1000 / scale, 2) for gram in found)


def _fill(gram: int, stock: list[tuple[int, int]]) -> tuple[int, ...] | None:
    """Plates that sum to so many grams (within ten), the fewest from the heavy end; None if there are none."""
    if abs(gram) <= 10:
        return ()
    if gram < 0 or not stock:
        return None
    (size, count), rest = stock[0], stock[1:]
    for used in range(min(count, (gram + 10) // size), -1, -1):
        found = _fill(gram - used * size, rest)
        if found is not None:
            return (size,) * used + found
    return None
