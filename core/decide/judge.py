"""Was a target met, and if not, is it the same target as before? Compares what was done with what was asked.

Knows no rule and no strength. A better result (more repetitions, more in reserve) never turns met into missed.
"""

from collections import Counter
from dataclasses import replace

from core.decide.kit import hardness
from core.evidence.body import seconds_or_metres
from core.evidence.numbers import value
from core.model.acts import SetAct
from core.model.quantities import BODY, Load, Tempo
from core.model.target import Aim, Target, TargetSet
from core.model.working import count_of, working_sets

_LIGHTER = 0.01
"""A load up to this share under the one asked is the one asked: scales and rounding differ."""


def as_asked(act: SetAct, wanted: TargetSet, low: float) -> bool:
    """One set reached its low end with the reserve, load, tempo and range asked, its form clean or unsaid."""
    count = count_of(act)
    if count is None or count < low or act.form in ("fair", "loose"):
        return False
    rir = 0.0 if act.failed else act.rir
    if rir is not None and wanted.rir is not None and rir < wanted.rir - value("effort.half"):
        return False
    return _heavy_enough(act.load, wanted.load) and _slow_enough(act.tempo, wanted.tempo) and _far_enough(act, wanted)


def _heavy_enough(done: Load | None, wanted: Load | None) -> bool:
    if done is None or wanted is None:
        return True
    have, need = hardness(done), hardness(wanted)
    if have is None or need is None:
        return True
    return have >= need - max(abs(need) * _LIGHTER, 0.05)


def _slow_enough(done: Tempo | None, wanted: Tempo | None) -> bool:
    if done is None or wanted is None or done[0] is None or wanted[0] is None:
        return True
    return done[0] >= wanted[0] - 0.01


def _far_enough(act: SetAct, wanted: TargetSet) -> bool:
    if act.range is None or act.range.grade != "partial":
        return True
    return wanted.range is not None and wanted.range.grade == "partial"


def met(sets: tuple[SetAct, ...], target: Target) -> bool:
    """Every set of the target was done as asked."""
    work = working_sets(sets)
    if not target.sets or len(work) < len(target.sets):
        return False
    return all(as_asked(act, wanted, wanted.reps[0]) for act, wanted in zip(work, target.sets, strict=False))


def over(sets: tuple[SetAct, ...], target: Target, reps: float) -> bool:
    """Every set of a met target went so many over its top, more left in reserve than asked counted in."""
    pairs = zip(working_sets(sets), target.sets, strict=False)
    return all(_beyond(act, wanted) >= reps * seconds_or_metres(act.exercise) for act, wanted in pairs)


def _beyond(act: SetAct, wanted: TargetSet) -> float:
    spared = 0.0 if act.rir is None or wanted.rir is None else act.rir - wanted.rir
    return (count_of(act) or 0.0) + spared * seconds_or_metres(act.exercise) - wanted.reps[1]


def same_target(first: Target, second: Target) -> bool:
    """The same thing asked again: load, low ends, tempo, rest and range."""
    return len(first.sets) == len(second.sets) and all(
        _key(a) == _key(b) for a, b in zip(first.sets, second.sets, strict=True)
    )


def _key(one: TargetSet) -> tuple[object, ...]:
    return one.load, one.reps[0], one.tempo, one.rest_s, one.range


def implied(sets: tuple[SetAct, ...], aim: Aim) -> Target | None:
    """What a session without advice amounts to as a target: the load most sets were done with, at the aim's low end."""
    work = working_sets(sets)
    if not work:
        return None
    loads = Counter(act.load for act in work)
    most = max(loads.values())
    usual = [load for load, times in loads.items() if times == most]
    load = min(usual, key=lambda one: hardness(one) or 0.0 if one is not None else 0.0)
    like = next(act for act in work if act.load == load)
    one = TargetSet(load, aim.reps, aim.rir, aim.tempo, aim.rest_s, like.range)
    if like.range is not None and like.range.grade in (None, "full"):
        one = replace(one, range=None)
    return Target("hold", (one,) * aim.sets)


def lifted_well(act: SetAct, low: float) -> bool:
    """A working set that says the load is in hand: enough repetitions, not failed, form not doubted."""
    count = count_of(act)
    return count is not None and count >= low and not act.failed and act.form in (None, "clean")


def usual_load(kind: str) -> Load:
    """An empty load of a kind, to ask the kit with."""
    return BODY if kind == "body" else Load(kind, None)  # type: ignore[arg-type]
