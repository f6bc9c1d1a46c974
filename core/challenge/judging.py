"""What became of a target, and could the report be believed? The comparing of sets with targets is handed in.

Knows no points. A report is held against the forecast that was made before it.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace

from core.evidence.numbers import value
from core.model.acts import SetAct
from core.model.challenge import Result
from core.model.quantities import Load
from core.model.target import Forecast, Target, TargetSet
from core.model.working import count_of, working_sets

AsAsked = Callable[[SetAct, TargetSet, float], bool]
"""Whether a set is what was asked: at least so many repetitions, the reserve, the load, the tempo, the range, clean."""


@dataclass(frozen=True, slots=True)
class Surprise:
    """How far a session's report lies off its forecast, in sd.

    ``above``: of the set furthest above, among those that are above by repetitions enough to matter; 0 if there is
    none. ``below``: how far all sets lie below on average; 0 or less when they don't.
    """

    above: float = 0.0
    below: float = 0.0


def considered(target: Target, sets: tuple[SetAct, ...]) -> tuple[TargetSet, ...]:
    """The sets to be forecast: those that were asked, as they were done (load, reserve said, repetitions)."""
    pairs = zip(working_sets(sets), target.sets, strict=False)
    return tuple(_as_done(act, wanted) for act, wanted in pairs)


def _as_done(act: SetAct, wanted: TargetSet) -> TargetSet:
    count = int(count_of(act) or 0)
    rir = 0.0 if act.failed else act.rir
    return replace(
        wanted,
        load=act.load if act.load is not None else wanted.load,
        reps=(count, count),
        rir=wanted.rir if rir is None else rir,
        tempo=act.tempo or wanted.tempo,
        range=act.range or wanted.range,
    )


def surprise(sets: tuple[SetAct, ...], forecast: tuple[Forecast, ...]) -> Surprise:
    """How far the sets lie off a forecast of ``considered`` sets."""
    off = [
        (count_of(act) or 0.0, seen.reps, max(seen.sd, 1e-6))
        for act, seen in zip(working_sets(sets), forecast, strict=False)
    ]
    if not off:
        return Surprise()
    above = [(count - reps) / sd for count, reps, sd in off if count - reps >= value("challenge.beyond_reps")]
    below = sum((reps - count) / sd for count, reps, sd in off) / len(off)
    return Surprise(max(above, default=0.0), below)


def beyond_belief(seen: Surprise) -> bool:
    """Whether the forecast finds it beyond belief, so that it waits for the coach's word."""
    return seen.above > value("challenge.beyond_z")


def no_more_than(sets: tuple[SetAct, ...], believed: tuple[SetAct, ...]) -> bool:
    """Whether every set is matched by one that was believed: at least as heavy, for at least as many."""
    return all(any(_matches(known, act) for known in working_sets(believed)) for act in working_sets(sets))


def _matches(known: SetAct, act: SetAct) -> bool:
    if (count_of(known) or 0.0) < (count_of(act) or 0.0):
        return False
    if known.load is None or act.load is None:
        return known.load == act.load
    return known.load.kind == act.load.kind and (known.load.kg or 0.0) >= (act.load.kg or 0.0)


def result_of(target: Target, sets: tuple[SetAct, ...], as_asked: AsAsked, seen: Surprise) -> Result:
    """What became of the target."""
    work = working_sets(sets)
    if not work:
        return "none"
    pairs = list(zip(work, target.sets, strict=False))
    if len(work) < len(target.sets) or not pairs:
        return "part"
    if all(as_asked(act, wanted, wanted.reps[0]) for act, wanted in pairs):
        return "met"
    bare = [(replace(act, rir=None, failed=False), wanted) for act, wanted in pairs]
    slack = any(_slack(act, wanted, seen) for act, wanted in pairs)
    if slack or not all(as_asked(act, wanted, 0.0) for act, wanted in bare):
        return "otherwise" if _is_done(pairs, slack=slack) else "part"
    return "stopped" if all(as_asked(act, wanted, 0.0) for act, wanted in pairs) else "pushed"


def _is_done(pairs: list[tuple[SetAct, TargetSet]], *, slack: bool) -> bool:
    """Whether a good part of what was asked was done: of the load, and where more was left, of the repetitions."""
    least = value("challenge.least_share")
    lows, counts = (
        sum(one) for one in zip(*((wanted.reps[0], count_of(act) or 0.0) for act, wanted in pairs), strict=True)
    )
    return not (slack and counts < least * lows) and all(_heavy(act.load, wanted.load, least) for act, wanted in pairs)


def _heavy(done: Load | None, wanted: Load | None, share: float) -> bool:
    if done is None or wanted is None or done.kind != wanted.kind or done.kind not in ("total", "per_hand"):
        return True
    return (done.kg or 0.0) >= share * (wanted.kg or 0.0)


def _slack(act: SetAct, wanted: TargetSet, seen: Surprise) -> bool:
    """Short of the low end with more left than asked: as said, or so short that no forecast has it ended there.

    A forecast that is merely disappointed accuses nobody: it is disappointed in the weak more often.
    """
    if (count_of(act) or 0.0) >= wanted.reps[0]:
        return False
    rir = 0.0 if act.failed else act.rir
    asked = wanted.rir if wanted.rir is not None else 0.0
    said = rir is not None and rir > asked + value("effort.half")
    return said or seen.below > value("challenge.short_z")
