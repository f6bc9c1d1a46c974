"""How an invented lifter trains and texts: a made-up strength, the target, and chance from a given seed.

It stands in for a person in the demo and nowhere else; it is no evidence of anything.
"""

from dataclasses import dataclass
from random import Random
from typing import Final

from bot.demo.gym import Invented
from core.evidence.exercises import EXERCISES
from core.model.quantities import BODY, Load, Unit, from_kg
from core.model.target import Aim, TargetSet

_REPS_PER_WHOLE: Final = 30.0
"""Repetitions that a lifter has for each whole of strength over the load; the demo's own round number."""
_FATIGUE: Final = 0.07
_SPREAD_REPS: Final = 0.6
_FIRST_SHARE: Final = 0.65
_FAR_TOO_LIGHT: Final = 10
"""With so many repetitions to spare over what is asked, nobody does the load asked: an own one is taken."""
_EFFORT_SAID: Final = 0.6
_STYLES: Final = (
    "{name} {load} {reps}{effort}",
    "{name} {load}: {reps}{effort}",
    "did {name}, {load} for {reps}{effort}",
)
_BODY_STYLES: Final = ("{name} {reps}{effort}", "{name}: {reps}{effort}", "did {name}, {reps}{effort}")
_HOLD_STYLE: Final = "{name} {reps}"


@dataclass(frozen=True, slots=True)
class Done:
    """One invented set: its load, its count (repetitions, or seconds of a hold), the reserve that was left."""

    load: Load
    count: int
    left: int


def train(who: Invented, exercise: str, steps: tuple[TargetSet, ...], weeks_ago: float, chance: Random) -> list[Done]:
    """The sets that this person does of these targets: up to the top, or until the asked reserve is felt."""
    strength = who.strength[exercise] * (1 - who.gain_per_week * weeks_ago) * chance.gauss(1, 0.015)
    done = []
    for number, step in enumerate(steps):
        by_count = EXERCISES[exercise].load_kind == "body"
        load = step.load if step.load is not None and step.load.kg is not None else _start(exercise, strength)
        if not by_count and _most(load, strength, by_count=False) > step.reps[1] + (step.rir or 0) + _FAR_TOO_LIGHT:
            load = _start(exercise, strength)
        most = _most(load, strength, by_count=by_count)
        able = int(most * (1 - _FATIGUE * number) + chance.gauss(0, _SPREAD_REPS))
        count = max(1, min(step.reps[1], able - int(step.rir or 0)))
        done.append(Done(load, count, max(0, able - count)))
    return done


def opening(aim: Aim, exercise: str) -> tuple[TargetSet, ...]:
    """Steps for a lifter whom nobody advised."""
    load = BODY if EXERCISES[exercise].load_kind == "body" else None
    return (TargetSet(load, aim.reps, aim.rir, aim.tempo, aim.rest_s),) * aim.sets


def text(who: Invented, exercise: str, sets: list[Done], chance: Random) -> str:
    """The sets as this person texts them."""
    name = EXERCISES[exercise].name
    if EXERCISES[exercise].pattern == "hold":
        return _HOLD_STYLE.format(name=name, reps=", ".join(f"{one.count} s" for one in sets))
    effort = f", {sets[-1].left} left" if chance.random() < _EFFORT_SAID and sets[-1].left <= 4 else ""
    reps = ", ".join(str(one.count) for one in sets)
    if sets[0].load.kind == "body":
        return chance.choice(_BODY_STYLES).format(name=name, reps=reps, effort=effort)
    style = chance.choice(_STYLES)
    return style.format(name=name, load=_said(sets[0].load, who.lifter.unit), reps=reps, effort=effort)


def _most(load: Load, strength: float, *, by_count: bool) -> float:
    if by_count:
        return strength if load.kind in {"body", "assist"} else max(1.0, strength - (load.kg or 0))
    return 1 + (strength / (load.kg or strength) - 1) * _REPS_PER_WHOLE


def _start(exercise: str, strength: float) -> Load:
    kind = EXERCISES[exercise].load_kind
    return BODY if kind == "body" else Load(kind, max(1.0, round(strength * _FIRST_SHARE)))


def _said(load: Load, unit: Unit) -> str:
    figure = f"{round(from_kg(load.kg or 0, unit), 1):g} {unit}"
    return f"{figure} each hand" if load.kind == "per_hand" else figure
