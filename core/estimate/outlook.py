"""What would happen: sets to do in, repetitions expected and the chance of meeting them out. By simulation.

The paths are fixed (offsets and normal points), the same for every target that is compared, so two targets differ only
in what they ask. Behaviour is simulated: a set stops at its top or at the reserve as felt; what is truly left tires the
next set less. Knows nothing of rules.
"""

from dataclasses import dataclass
from math import log
from typing import Final

import numpy as np

from core.estimate.belief import Belief, weights
from core.estimate.normal import LATTICE_POINTS, Floats, lattice, lower_root
from core.estimate.people import People, long_set_loss, people_for, reps_to_failure, rest_loss, usual_rest
from core.estimate.seeing import (
    BIAS,
    DAY,
    EFFORT,
    RUNG,
    STATES,
    STRENGTH,
    exponent,
    felt_bias,
    felt_error,
    long_set,
    tiring,
    truly_left,
)
from core.estimate.sighting import Day, Sighting, as_forecast, effort_sd
from core.evidence.body import seconds_or_metres
from core.evidence.numbers import value
from core.model.acts import SetAct
from core.model.target import Forecast, Outlook, TargetSet
from core.model.working import count_of

PATHS: Final = LATTICE_POINTS
_SETS: Final = 11
_COLUMNS: Final = 1 + STATES + 2 * _SETS
_OFFSETS: Final = (np.arange(PATHS) + 0.5) / PATHS
_NOTHING: Final = Forecast(0.0, 1.0)
_SET_SD: Final = value("set.sd")
_SHARED: Final = value("effort.day_share") ** 0.5
_OWN: Final = (1.0 - value("effort.day_share")) ** 0.5
_HALF: Final = value("effort.half")
_NEAR: Final = value("form.near_reserve")
_RESERVE_HALF: Final = value("rest.reserve_half")
_MOST: Final = value("curve.most")


@dataclass(frozen=True, slots=True)
class FormBelief:
    """Sets seen loose and clean, near failure and away from it, older ones counting less."""

    near_loose: float = 0.0
    near_clean: float = 0.0
    away_loose: float = 0.0
    away_clean: float = 0.0


def form_after(form: FormBelief, seen: tuple[Sighting, ...]) -> FormBelief:
    """The counts after a day's sets; a set without a word counts a little as clean."""
    fade = 0.97 if seen else 1.0
    counts = [fade * form.near_loose, fade * form.near_clean, fade * form.away_loose, fade * form.away_clean]
    for one in seen:
        first = 0 if one.near else 2
        if one.form is None:
            counts[first + 1] += value("form.unsaid_weight")
        else:
            counts[first + (one.form == "clean")] += 1.0
    return FormBelief(*counts)


@dataclass(frozen=True, slots=True, eq=False)
class Paths:
    """The lifter's possible todays, drawn from a belief: who, and their states, one column a path."""

    people: People
    state: Floats
    tired: float
    done: int


def paths_of(belief: Belief, exercise: str, tired: float, done: int) -> Paths:
    """Fixed offsets into the people's weights pick who each path is; fixed normal points, what is true of them."""
    edges = np.cumsum(weights(belief))
    pick = np.searchsorted(edges, _OFFSETS * edges[-1])
    many = np.bincount(np.minimum(pick, len(edges) - 1), minlength=len(edges))
    who = many.nonzero()[0]
    many = many[who]
    everyone = people_for(exercise)
    one = People(*(getattr(everyone, name)[who].repeat(many) for name in People.__slots__))
    root, points = lower_root(belief.cov[:, :, who]), lattice(1 + STATES)
    state = belief.mean[:, who].repeat(many, axis=1)
    for column in range(STATES):
        state[column:] += root[column:, column].repeat(many, axis=1) * points[1 + column]
    return Paths(one, state, tired, done)


@dataclass(slots=True, eq=False)
class _Walk:
    """A run through the sets: what has tired each path, which paths still meet the target, sets near failure."""

    tired: Floats
    met: Floats
    near: Floats
    sets: int = 0


def _one_set(paths: Paths, wanted: TargetSet, seen: Sighting, day: Day, walk: _Walk) -> Floats:
    """Repetitions at the felt reserve on each path; moves the walk past the set."""
    people, state, scale = paths.people, paths.state, seconds_or_metres(day.exercise)
    place = 1 + STATES + 2 * ((paths.done + walk.sets) % _SETS)
    z, own = lattice(_COLUMNS)[place : place + 2]
    strength = state[STRENGTH] + state[DAY] - log(seen.mass)
    if seen.rungs:
        strength = strength + (value("range.partial_gain") if seen.rungs < 0 else -seen.rungs * state[RUNG])
    if seen.rungs < 0:
        strength = strength + value("range.partial_sd") * own
    fresh = reps_to_failure(people, np.minimum(np.maximum(strength, -5.0), 5.0))
    keeps = 1.0 / (1.0 + tiring(state) * walk.tired * long_set_loss(fresh))
    if seen.slow:
        keeps = keeps * np.exp(-exponent(state) * seen.slow)
    failure = np.minimum(np.maximum(fresh * keeps, 0.0), _MOST)
    felt = failure + _SET_SD * own
    if seen.rir > 0:
        long = long_set(failure)
        error = felt_error(long, seen.sd * people.effort)
        felt = felt - truly_left(felt_bias(state[BIAS], long), seen.rir)
        # The error grows with what is left, so who feels too fresh stops later than who feels too tired stops early.
        slant = _SHARED * state[EFFORT] + _OWN * z
        growth = effort_sd(seen.rir + 0.5) - effort_sd(seen.rir - 0.5)
        felt = felt - error * slant / np.maximum(1.0 - growth * people.effort * slant, 0.4)
    low, high = wanted.reps[0] / scale, wanted.reps[1] / scale
    walk.met = walk.met * (felt >= low - _HALF)
    done = np.minimum(np.maximum(np.minimum(felt, high), np.minimum(low, failure)), failure)
    left = np.maximum(failure - done, 0.0)
    walk.near = walk.near + (left <= _NEAR)
    rest = wanted.rest_s if wanted.rest_s is not None else day.aim.rest_s
    loss = rest_loss(day.exercise, usual_rest(day.exercise) if rest is None else rest)
    walk.tired = walk.tired + loss / (1.0 + left / _RESERVE_HALF)
    walk.sets += 1
    return np.asarray(np.maximum(felt, 0.0) * scale)


def _clean(form: FormBelief, near: Floats, sets: int) -> Floats:
    """Chance that all sets are clean, on each path: two rates, each with its own doubt (a beta, integrated)."""

    def table(loose: float, clean: float, rate: float, weight: float) -> Floats:
        bad, good = loose + rate * weight, clean + (1.0 - rate) * weight
        steps = np.arange(sets)
        return np.concatenate(([1.0], np.cumprod((good + steps) / (bad + good + steps))))

    close = table(form.near_loose, form.near_clean, value("form.near_loose"), value("form.near_weight"))
    far = table(form.away_loose, form.away_clean, value("form.away_loose"), value("form.away_weight"))
    count = near.astype(np.int64)
    return close[count] * far[sets - count]


def outlook(paths: Paths, form: FormBelief, sets: tuple[TargetSet, ...], day: Day) -> Outlook:
    """Repetitions expected of each set done in order, and the chance that all are met."""
    walk = _Walk(np.full(PATHS, paths.tired), np.ones(PATHS), np.zeros(PATHS))
    forecasts = []
    for wanted in sets:
        seen = as_forecast(wanted, day, day.aim)
        if seen is None:
            forecasts.append(_NOTHING)
            walk.met = walk.met * 0.5
            continue
        felt = _one_set(paths, wanted, seen, day, walk)
        middle = float(felt.sum()) / PATHS
        off = felt - middle
        forecasts.append(Forecast(round(middle, 6), round(max((float(off @ off) / PATHS) ** 0.5, 0.05), 6)))
    chance = float((walk.met * _clean(form, walk.near, walk.sets)).mean())
    return Outlook(tuple(forecasts), round(min(max(chance, 0.0), 1.0), 6), round(float(walk.met.mean()), 6))


def believable(paths: Paths, done: tuple[SetAct, ...], day: Day) -> bool:
    """Whether repetitions done can be believed clean: none far above what was expected when taken to failure."""
    counts = [count_of(act) or 0.0 for act in done]
    asked = tuple(
        TargetSet(act.load, (1, max(1, int(count))), 0.0, act.tempo, act.rest_s, act.range)
        for act, count in zip(done, counts, strict=True)
    )
    scale = seconds_or_metres(day.exercise)
    for count, seen, one in zip(counts, outlook(paths, FormBelief(), asked, day).forecast, asked, strict=True):
        known = as_forecast(one, day, day.aim) is not None
        room = max(value("form.doubt_z") * seen.sd, value("form.doubt_reps") * scale)
        if known and count > seen.reps + room:
            return False
    return True
