"""What an estimate comes to in plain figures, and how it would likely go from here: the second page that joins
estimate and decide.

``standing`` says what could be lifted once. ``run_forward`` draws lifters from the present estimate, lets each train by
the rules for some weeks, and says where the targets end. The draws are fixed: the same question gets the same answer.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from math import floor
from typing import Final

import numpy as np

from core.advising import Progress, absorb, advise_from
from core.estimate.belief import KEPT, Belief, next_session, usable_bodyweight
from core.estimate.normal import Floats, spread
from core.estimate.outlook import PATHS, FormBelief, Paths, outlook, paths_of
from core.estimate.people import People, reps_to_failure
from core.estimate.seeing import GAIN, STRENGTH
from core.estimate.sighting import Day
from core.evidence.body import moved_kg, row_of, seconds_or_metres, traits_of
from core.model.acts import SetAct
from core.model.lifter import Lifter
from core.model.quantities import BODY, Way
from core.model.target import Advice, Aim, Session, Target, TargetSet
from core.model.week import Standing

_TENTH: Final = (10.0, 90.0)
"""Ends of the span that is told, in percent: 80 of 100 lie between."""
_BODY_KINDS: Final = frozenset({"body", "band"})
_STEPS: Final = frozenset({"reps", "tempo", "range", "rest", "load"})
_SAID_MOST: Final = 5.0
"""More than five in reserve is said as five."""


@dataclass(frozen=True, slots=True)
class Course:
    """One order of ways, run forward: the load (or repetitions) asked after each session, one row a draw."""

    ways: tuple[Way, ...]
    days: tuple[date, ...]
    asked: tuple[tuple[float, ...], ...]
    steps: tuple[int, ...]
    last: tuple[TargetSet, ...]
    """The first set asked at the end, one a draw."""
    in_reps: bool


def standing(progress: Progress, lifter: Lifter, before: tuple[float, date] | None = None) -> Standing | None:
    """What could be lifted once, with its 80 % span; None before the first session. ``before``: an older estimate."""
    if progress.seen is None:
        return None
    exercise = progress.exercise
    paths = paths_of(progress.belief, exercise, 0.0, 0)
    strength = paths.state[STRENGTH]
    in_reps = row_of(exercise).load_kind in _BODY_KINDS
    figures = _reps(paths, strength, lifter, exercise) if in_reps else _said_load(strength, lifter, exercise)
    low, middle, high = (float(end) for end in np.percentile(figures, (_TENTH[0], 50.0, _TENTH[1])))
    since = before[1] if before else None
    return Standing(exercise, middle, low, high, in_reps, before[0] if before else None, since)


def _reps(paths: Paths, strength: Floats, lifter: Lifter, exercise: str) -> Floats:
    mass = moved_kg(BODY, exercise, usable_bodyweight(lifter)) or 1.0
    over = np.clip(strength - np.log(mass), -5.0, 5.0)
    return np.asarray(np.maximum(reps_to_failure(paths.people, over), 0.0) * seconds_or_metres(exercise))


def _said_load(strength: Floats, lifter: Lifter, exercise: str) -> Floats:
    traits, row = traits_of(exercise), row_of(exercise)
    hands = traits.hands if row.load_kind == "per_hand" else 1
    return np.asarray(np.maximum((np.exp(strength) - traits.share * usable_bodyweight(lifter)) / hands, 0.0))


@dataclass(frozen=True, slots=True, eq=False)
class _Truth:
    """One drawn lifter, as they would really be: who, and the state that does not change from day to day."""

    people: People
    state: Floats


def _drawn(belief: Belief, exercise: str, draws: int) -> list[_Truth]:
    paths = paths_of(belief, exercise, 0.0, 0)
    picks = ((np.arange(draws) + 0.5) / draws * PATHS).astype(int)
    order = np.argsort(paths.state[STRENGTH])
    truths = []
    for at in (order[pick] for pick in picks):
        one = People(*(getattr(paths.people, name)[at : at + 1] for name in People.__slots__))
        state = paths.state[:, at : at + 1].copy()
        state[KEPT:] = 0.0
        truths.append(_Truth(one, state))
    return truths


def run_forward(
    progress: Progress, lifter: Lifter, aim: Aim, ways: Sequence[Way], days: Sequence[date], draws: int
) -> Course:
    """Where the targets end when the coach allows these ways in this order, for that many drawn lifters."""
    aim = replace(aim, ways=tuple(ways))
    truths = _drawn(next_session(progress.belief, 0), progress.exercise, draws)
    rows, counts, ends = [], [], []
    in_reps = row_of(progress.exercise).load_kind in _BODY_KINDS
    for number, truth in enumerate(truths):
        asked, steps, last = _one_life(progress, lifter, aim, days, truth, number)
        rows.append(tuple(_figure(one, in_reps=in_reps) for one in asked))
        counts.append(steps)
        ends.append(last)
    return Course(tuple(ways), tuple(days), tuple(rows), tuple(counts), tuple(ends), in_reps)


def _figure(one: TargetSet, *, in_reps: bool) -> float:
    if in_reps or one.load is None or one.load.kg is None:
        return float(one.reps[0])
    return one.load.kg


def _one_life(
    progress: Progress, lifter: Lifter, aim: Aim, days: Sequence[date], truth: _Truth, number: int
) -> tuple[list[TargetSet], int, TargetSet]:
    chance = np.roll(spread(PATHS, 6), 37 * number + 11, axis=0)
    asked: list[TargetSet] = []
    steps = 0
    last = TargetSet(None, aim.reps, aim.rir)
    for place, on in enumerate(days):
        advice = advise_from(progress, lifter, progress.exercise, aim, on)
        last = advice.sets[0] if advice.sets else last
        asked.append(last)
        truth.state[STRENGTH] += truth.state[GAIN]
        done = _trained(progress, lifter, aim, advice, truth, chance[place])
        steps += advice.way in _STEPS
        if done:
            progress = absorb(progress, lifter, aim, Session(on, done, Target(advice.way, advice.sets)))
    return asked, steps, last


def _trained(
    progress: Progress, lifter: Lifter, aim: Aim, advice: Advice, truth: _Truth, z: Floats
) -> tuple[SetAct, ...]:
    """The sets as this lifter would do them: to the top of the range or to the reserve as felt, and said so."""
    if not advice.sets:
        return ()
    exercise = progress.exercise
    paths = Paths(truth.people, truth.state, 0.0, 0)
    seen = outlook(paths, FormBelief(), advice.sets, Day(exercise, usable_bodyweight(lifter), aim))
    held = seconds_or_metres(exercise) != 1.0
    acts = []
    for place, (wanted, found) in enumerate(zip(advice.sets, seen.forecast, strict=True)):
        reserve = wanted.rir if wanted.rir is not None else aim.rir
        felt = found.reps + found.sd * float(z[place % len(z)])
        count = max(0, min(floor(felt), wanted.reps[1]))
        left = min(max(reserve + round(2 * max(felt - wanted.reps[1], 0.0)) / 2, 0.0), _SAID_MOST)
        acts.append(
            SetAct(
                exercise,
                wanted.load,
                reps=None if held else count,
                hold_s=float(count) if held else None,
                rir=left,
                tempo=wanted.tempo,
                rest_s=wanted.rest_s,
                form="clean",
                range=wanted.range,
            )
        )
    return tuple(acts)


def span_of(values: Sequence[float]) -> tuple[float, float, float]:
    """Middle and the ends between which 80 of 100 lie."""
    low, middle, high = (float(np.percentile(values, end, method="nearest")) for end in (_TENTH[0], 50.0, _TENTH[1]))
    return middle, low, high
