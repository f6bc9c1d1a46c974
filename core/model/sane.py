"""What can be true of a set: numbers that cannot be are taken as unsaid. Knows nothing of what is likely.

The reader never makes such numbers; an import, a test or another program may. The bounds are those of the types in the
reading contract, wide enough for any lifter.
"""

from dataclasses import replace
from math import isfinite
from typing import Final

from core.model.acts import SetAct
from core.model.quantities import Load, Tempo
from core.model.target import Session, Target, TargetSet

_MOST_KG: Final = 1500.0
_MOST_COUNT: Final = 10_000
_MOST_SECONDS: Final = 24 * 3600.0


def _number(number: float | None, most: float) -> float | None:
    return number if number is not None and isfinite(number) and 0 <= number <= most else None


def sane_load(load: Load | None) -> Load | None:
    """The load, or None when its mass cannot be; a band or help of unknown pull stays."""
    if load is None or load.kg is None:
        return None if load is not None and load.kind in ("total", "per_hand", "added") else load
    return load if _number(load.kg, _MOST_KG) is not None else None


def _tempo(tempo: Tempo | None) -> Tempo | None:
    if tempo is None:
        return None
    down, bottom, up, top = (_number(part, 60.0) for part in tempo)
    return (down, bottom, up, top)


def sane_act(act: SetAct) -> SetAct:
    """One set with every number that can be."""
    reps = act.reps if act.reps is not None and 0 <= act.reps <= _MOST_COUNT else None
    said = (act.load, act.reps, act.hold_s, act.distance_m, act.rir, act.rest_s, act.tempo)
    kept = (
        sane_load(act.load),
        reps,
        _number(act.hold_s, _MOST_SECONDS),
        _number(act.distance_m, _MOST_COUNT),
        _number(act.rir, 10.0),
        _number(act.rest_s, _MOST_SECONDS),
        _tempo(act.tempo),
    )
    if kept == said:
        return act
    load, reps, hold, distance, rir, rest, tempo = kept
    return replace(act, load=load, reps=reps, hold_s=hold, distance_m=distance, rir=rir, rest_s=rest, tempo=tempo)


def sane_set(one: TargetSet) -> TargetSet:
    """One set of a target with every number that can be, low before high."""
    low, high = sorted(min(max(int(count), 1), _MOST_COUNT) for count in one.reps)
    return replace(
        one,
        load=sane_load(one.load),
        reps=(low, high),
        rir=_number(one.rir, 10.0),
        tempo=_tempo(one.tempo),
        rest_s=_number(one.rest_s, _MOST_SECONDS),
    )


def sane_session(session: Session) -> Session:
    """A session and its target with every number that can be."""
    target = session.target
    return Session(
        session.on,
        tuple(sane_act(act) for act in session.sets),
        None if target is None else Target(target.way, tuple(sane_set(one) for one in target.sets)),
    )
