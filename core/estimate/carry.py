"""What the lifter carries, in a form that only ever rises with a better result: the estimate that targets hang on.

The filter is the better forecaster, but it adapts, so a better day can lower what it expects elsewhere. This one has
fixed gains: a level of ln strength for each position in the session (first set, second set, ...), moved by a share
that depends on how often the position was seen and never on what was seen. Every result enters with a positive sign,
so more repetitions, or more left in reserve, never lower any level. The contract's rule 9 rests on this.
"""

from dataclasses import dataclass
from math import exp, isfinite, log
from typing import Final

from core.estimate.people import middle_k, rest_loss, usual_rest
from core.estimate.sighting import Day, asked_of, rungs_of, slow_of, tires
from core.evidence.body import moved_kg, seconds_or_metres
from core.evidence.numbers import value
from core.model.acts import SetAct
from core.model.lifter import Experience
from core.model.target import Aim, TargetSet
from core.model.working import count_of, working_sets

POSITIONS: Final = 10
_FIRST: Final = (1.0, 0.6, 0.45, 0.38)
"""Shares of the first sessions: a mean at first, then the table's share."""


@dataclass(frozen=True, slots=True)
class Carry:
    """Level (ln kg, as felt) and times seen, for each position in the session."""

    levels: tuple[float, ...] = ()
    seen: tuple[int, ...] = ()


def _keeps(exercise: str, position: int, rest_s: float, rir: float, slow: float) -> float:
    """Share of fresh repetitions left at that position for a middle person, at that tempo."""
    tired = position * rest_loss(exercise, rest_s) * tires(rir)
    return float(exp(-value("tempo.exponent") * slow) / (1.0 + tired))


def _ranged(rungs: float) -> float:
    return value("range.partial_gain") if rungs < 0 else -rungs * value("range.rung_cost")


def _level(act: SetAct, position: int, day: Day) -> tuple[float, bool] | None:
    """One set as a level, and whether it is only a lower bound."""
    asked = asked_of(position, day.exercise, day.aim, day.target)
    mass, count = moved_kg(act.load, day.exercise, day.bodyweight_kg), count_of(act)
    if mass is None or count is None or not isfinite(count):
        return None
    top = value("effort.informative_max")
    short = act.failed or (act.rir is None and count < asked.low)
    rir = 0.0 if short else min(act.rir if act.rir is not None else asked.rir, top)
    bound = (act.rir is None and not short and count >= asked.high) or (act.rir is not None and act.rir > top)
    # Who stops at the top without a word had at least what was asked left, and mostly more.
    rir += value("effort.top_left") if bound and act.rir is None else 0.0
    reps = min(max(count, 0.0) / seconds_or_metres(day.exercise), 60.0)
    slow = slow_of(act.tempo if act.tempo is not None else asked.tempo)
    keeps = _keeps(day.exercise, position, asked.rest_s, asked.rir, slow)
    ratio = max(1.0 + middle_k(day.exercise) * ((reps + rir) / keeps - 1.0), 0.3)
    return log(mass) + log(ratio) - _ranged(rungs_of(act.range)), bound


def carry_after(carry: Carry, sets: tuple[SetAct, ...], day: Day, experience: Experience) -> Carry:
    """The levels after a day's sets."""
    levels, seen = list(carry.levels), list(carry.seen)
    for position, act in enumerate(working_sets(sets)[:POSITIONS]):
        found = _level(act, position, day)
        if found is None:
            continue
        level, bound = found
        while len(levels) <= position:
            levels.append(levels[-1] if levels else level)
            seen.append(0)
        known = levels[position] + value(f"gain.{experience}") * (seen[position] > 0)
        share = max(_FIRST[seen[position]] if seen[position] < len(_FIRST) else 0.0, value("carry.share"))
        levels[position] = known + share * (max(level - known, 0.0) if bound and seen[position] else level - known)
        seen[position] += 1
    return Carry(tuple(levels), tuple(seen))


def carried(carry: Carry, sets: tuple[TargetSet, ...], done: int, day: Day, aim: Aim) -> tuple[float, ...]:
    """Counts carried at the reserve asked, for sets that come after ``done`` others. Nothing seen: 0."""
    scale = seconds_or_metres(day.exercise)
    out = []
    for step, wanted in enumerate(sets):
        mass = moved_kg(wanted.load, day.exercise, day.bodyweight_kg)
        if mass is None or not carry.levels:
            out.append(0.0)
            continue
        position = done + step
        level = carry.levels[min(position, len(carry.levels) - 1)] + _ranged(rungs_of(wanted.range))
        rir = aim.rir if wanted.rir is None else wanted.rir
        rest = wanted.rest_s if wanted.rest_s is not None else aim.rest_s
        slow = slow_of(wanted.tempo if wanted.tempo is not None else aim.tempo)
        keeps = _keeps(day.exercise, position, usual_rest(day.exercise) if rest is None else rest, aim.rir, slow)
        fresh = 1.0 + (exp(min(max(level - log(mass), -5.0), 5.0)) - 1.0) / middle_k(day.exercise)
        out.append((fresh * keeps - rir) * scale)
    return tuple(out)
