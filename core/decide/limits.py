"""The last word: hard limits that no rule can override, applied to every choice before it leaves the stage.

A choice that breaks a limit is mended toward less, or becomes the same again. Knows no rule.
"""

from dataclasses import dataclass, replace
from typing import Final

from core.decide.case import Case, Sets, bounded, cap_of, settled
from core.decide.kit import hardness
from core.decide.ways import WAYS
from core.model.quantities import Range
from core.model.target import TargetSet, Verdict

_RANGES: Final = {"partial": -1.0, "full": 0.0, None: 0.0}
_TINY: Final = 1e-6


@dataclass(frozen=True, slots=True)
class Choice:
    """What a rule says: the verdict and all sets of the session."""

    way: Verdict
    sets: Sets


def harder(one: TargetSet, base: TargetSet) -> set[str]:
    """In what one set asks more than another."""
    found = set()
    if one.load is not None and base.load is not None:
        first, second = hardness(one.load), hardness(base.load)
        if first is not None and second is not None and first > second + 0.001:
            found.add("load")
    if one.reps[0] > base.reps[0]:
        found.add("reps")
    if _seconds(one) > _seconds(base) + _TINY:
        found.add("tempo")
    if one.rest_s is not None and base.rest_s is not None and one.rest_s < base.rest_s - _TINY:
        found.add("rest")
    if _reach(one.range) > _reach(base.range) + _TINY:
        found.add("range")
    return found


def _seconds(one: TargetSet) -> float:
    return sum(part or 0.0 for part in one.tempo) if one.tempo is not None else 0.0


def _reach(span: Range | None) -> float:
    if span is None or span.grade in _RANGES:
        return _RANGES[None if span is None else span.grade]
    return span.cm if span.cm is not None else 1.0


def guarded(case: Case, choice: Choice) -> Choice:
    """The choice with every limit kept."""
    if choice.way == "stop" or not choice.sets:
        return Choice(choice.way, ())
    sets = tuple(kept for one in choice.sets if (kept := _kept(case, one)) is not None)
    if len(sets) < len(choice.sets):
        return Choice("stop", ())
    if choice.way == "first" or not case.base:
        return Choice(choice.way, sets)
    if _too_much(case, choice.way, sets):
        less = case.base[: len(sets)] if choice.way == "ease" else case.base
        return Choice(choice.way if choice.way in ("ease", "form") else "hold", less)
    return Choice(choice.way, sets)


def _kept(case: Case, one: TargetSet) -> TargetSet | None:
    """One set inside the limits, its load one that the kit makes and that is allowed; None if there is no such load."""
    inside = bounded(one, case.aim, case.exercise)
    if inside.load is None:
        return inside
    load = settled(inside.load, case.loads, case.lifter, case.facts)
    return None if load is None else replace(inside, load=load)


def _too_much(case: Case, way: Verdict, sets: Sets) -> bool:
    """Whether anything but the named way asks more than the last target, or a spared lifter is asked for more."""
    allowed = {way} if way in WAYS and case.facts.met else set()
    found = {what for one, base in zip(sets, case.base, strict=False) for what in harder(one, base)}
    if found - allowed or (way in WAYS and way not in found):
        return True
    spared = case.ache is not None or cap_of(case.lifter, case.facts) is not None
    return spared and bool(found & {"load", "range"})
