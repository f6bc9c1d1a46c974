"""The ways up: for each, the largest allowed step from the last target that the lifter carries, or none.

A step moves one thing. Low ends may differ from set to set, because later sets are done tired; they never rise from one
set to the next. Knows no order of ways and no reason against a step: the rules do.
"""

from collections.abc import Callable
from dataclasses import replace
from math import floor
from typing import Final

from core.decide.case import Case, Sets, count_cap, rest_floor, step_share
from core.decide.kit import hardness, heavier, lighter, load_at
from core.evidence.numbers import value
from core.model.quantities import Load, Range, Way
from core.model.target import TargetSet

Step = Callable[[Case], Sets | None]
_TINY: Final = 1e-9


def _lows(case: Case, sets: Sets, high: int) -> list[int]:
    """The highest low ends carried with something to spare, not rising from set to set, none over ``high``."""
    found, limit = [], high
    for have in case.carries(sets):
        limit = min(limit, _lowest_spared(case, min(have, 1e4)))
        found.append(limit)
    return found


def _lowest_spared(case: Case, have: float) -> int:
    """The highest low end that leaves enough of what is carried."""
    low = floor(have - case.spare(max(have, 1.0)) + _TINY)
    while low + 1 + case.spare(low + 1) <= have + _TINY:
        low += 1
    return low


def _raise_lows(case: Case, high: int) -> Sets | None:
    lows = [max(low, one.reps[0]) for low, one in zip(_lows(case, case.base, high), case.base, strict=True)]
    if all(low == one.reps[0] for low, one in zip(lows, case.base, strict=True)):
        return None
    return tuple(replace(one, reps=(low, max(one.reps[1], high))) for low, one in zip(lows, case.base, strict=True))


def reps(case: Case) -> Sets | None:
    """More repetitions, inside the aim's range."""
    return _raise_lows(case, case.aim.reps[1])


def more_reps(case: Case) -> Sets | None:
    """More repetitions, past the aim's range, where the load cannot move: up to what earns the next jump."""
    if load_can_move(case):
        return None
    now = max(one.reps[0] for one in case.base)
    return _raise_lows(case, min(count_cap(case.exercise), max(now, case.aim.reps[1]) + 2))


def tempo(case: Case) -> Sets | None:
    """Slower lowering, by half a second."""
    out = []
    for one in case.base:
        usual = (value("tempo.default_down_s"), 0.0, value("tempo.default_up_s"), 0.0)
        down, bottom, up, top = one.tempo or case.aim.tempo or usual
        slower = (usual[0] if down is None else down) + value("tempo.step_s")
        total = slower + (bottom or 0.0) + (usual[2] if up is None else up) + (top or 0.0)
        if slower > value("tempo.part_max_s") + _TINY or total > value("tempo.rep_max_s") + _TINY:
            return None
        out.append(replace(one, tempo=(slower, bottom, up, top)))
    return _if_carried(case, tuple(out))


def range_(case: Case) -> Sets | None:
    """More range: full from partial, then by rungs where the exercise has more to give."""
    out = []
    for one in case.base:
        further = _further(one.range, case.traits.extra_cm)
        if further is None:
            return None
        out.append(replace(one, range=further))
    return _if_carried(case, tuple(out))


def _further(now: Range | None, most_cm: float) -> Range | None:
    if now is not None and now.grade == "partial":
        return Range("full")
    cm = (now.cm or 0.0) if now is not None and now.grade == "extra" else 0.0
    cm += value("range.rung_cm")
    return Range("extra", cm) if cm <= most_cm + _TINY else None


def rest(case: Case) -> Sets | None:
    """Shorter rest, by a step, not under the floor nor under what cost too much before."""
    out = []
    least = max(rest_floor(case.exercise), case.facts.rest_least or 0.0)
    for one in case.base:
        now = one.rest_s if one.rest_s is not None else case.aim.rest_s
        shorter = (now or 0.0) - value("rest.step_s")
        if shorter < least - _TINY:
            return None
        out.append(replace(one, rest_s=shorter))
    return _if_carried(case, tuple(out))


def load(case: Case) -> Sets | None:
    """More load: the largest step of the table's size that carries the aim's low end, else the next the kit has."""
    if not _may_be_heavier(case) or any(one.reps[0] < case.aim.reps[0] for one in case.base):
        return None
    steps = _load_steps(case)
    for sets in reversed([loaded for share, loaded in steps if share <= value("load.step_max") + _TINY]):
        found = _loaded(case, sets)
        if found is not None:
            return found
    beyond = [loaded for share, loaded in steps if share > value("load.step_max") + _TINY]
    if len(beyond) < len(steps) or not beyond:
        return None
    found = _loaded(case, beyond[0])
    if found is None:
        return None
    seen = case.forecast(found).forecast
    return found if all(f.reps >= one.reps[0] for f, one in zip(seen, found, strict=True)) else None


def _may_be_heavier(case: Case) -> bool:
    return not case.lifter.no_heavier and case.ache is None


def load_can_move(case: Case) -> bool:
    """Whether the coach, the lifter and the kit allow a step in load of the table's size."""
    if "load" not in case.aim.ways or not _may_be_heavier(case):
        return False
    return any(share <= value("load.step_max") + _TINY for share, _ in _load_steps(case))


def _load_steps(case: Case) -> list[tuple[float, Sets]]:
    """The base at each heavier load, with the step's share, lightest first; none smaller than the table's least."""
    first = case.base[0].load
    if first is None or any(one.load != first for one in case.base):
        return []
    hard = hardness(first)
    if hard is None or first.kind == "band":
        return []
    found = []
    for candidate in heavier(case.loads, hard):
        new = load_at(candidate, first)
        share = step_share(case, first, new)
        if share < value("load.step_min") - _TINY:
            continue
        found.append((share, tuple(replace(one, load=new) for one in case.base)))
        if share > value("load.step_max") + _TINY:
            break
    return found


def _loaded(case: Case, sets: Sets) -> Sets | None:
    """The sets at a heavier load with the low ends that it leaves, or None if it leaves less than the aim's."""
    low, high = case.aim.reps
    lows = [min(have, one.reps[0]) for have, one in zip(_lows(case, sets, 10**6), case.base, strict=True)]
    if min(lows) < low:
        return None
    return tuple(replace(one, reps=(have, max(high, have))) for have, one in zip(lows, sets, strict=True))


def _if_carried(case: Case, sets: Sets) -> Sets | None:
    return sets if case.fits(sets) else None


WAYS: Final[dict[Way, Step]] = {"reps": reps, "tempo": tempo, "range": range_, "rest": rest, "load": load}
"""Each way with its step; ``form`` has none, it is a rule."""


def eased(case: Case, base: Sets, load_factor: float, set_factor: float, min_rir: float) -> Sets:
    """Less on purpose: a lighter load if the kit has one, else fewer repetitions; fewer sets; more in reserve."""
    count = max(1, floor(case.aim.sets * set_factor + 0.5 - _TINY)) if set_factor < 1 else case.aim.sets
    rir = max(case.aim.rir, min_rir)
    kept = [replace(one, rir=rir) for one in base[:count]]
    less = [_less(case, one, load_factor) for one in kept]
    if less != kept or count < len(base):
        return tuple(less)
    if len(less) > 1:
        return tuple(less[:-1])
    rested = (kept[0].rest_s or rest_floor(case.exercise)) + 4 * value("rest.step_s")
    return (replace(kept[0], rest_s=rested),)


def _less(case: Case, one: TargetSet, factor: float) -> TargetSet:
    less = _lighter_load(case, one, factor)
    if less is not None:
        low = min(one.reps[0], case.aim.reps[0])
        return replace(one, load=less, reps=(low, max(low, case.aim.reps[1])))
    low = max(1, min(one.reps[0] - 1, floor(one.reps[0] * factor)))
    return replace(one, reps=(low, max(low, min(one.reps[1], case.aim.reps[1]))))


def _lighter_load(case: Case, one: TargetSet, factor: float) -> Load | None:
    """The heaviest load under the factor, of the mass moved where the body is the load; None if the kit has none."""
    if one.load is None:
        return None
    hard = hardness(one.load)
    if hard is None:
        return None
    for candidate in lighter(case.loads, hard):
        new = load_at(candidate, one.load)
        share = step_share(case, one.load, new)
        if share <= factor - 1.0 + _TINY:
            return new if share >= factor - 1.0 - value("ease.coarse") else None
    return None
