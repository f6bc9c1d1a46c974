"""One set in a straight line: what it says of each state, at each person, in ln strength. Moves no belief.

A set is read twice: first about what was said (where to begin when little is known), then about what that makes
likely. Read about its own count alone, a lucky set would look steeper than it is, and its luck would be learned as
honesty or as tiring.
"""

from dataclasses import dataclass
from math import log
from typing import Final

import numpy as np

from core.estimate.normal import Floats
from core.estimate.people import POINTS, People, long_set_loss, reps_to_failure, strength_over_load
from core.estimate.sighting import Sighting, effort_sd
from core.evidence.numbers import value

STRENGTH, GAIN, RUNG, TIRING, BIAS, SLOWNESS, DAY, EFFORT = range(8)
STATES: Final = 8
_LONG: Final = value("curve.long_set") - value("effort.long_width") / 2.0
_WIDTH: Final = value("effort.long_width")
_LONG_BIAS: Final = value("effort.long_bias") - 1.0
_LONG_SD: Final = value("effort.long_sd") - 1.0
_FADE: Final = value("effort.fade")
_SET_VARIANCE: Final = value("set.sd") ** 2
_SHARE: Final = value("effort.day_share")
_TABLE_AT: Final = np.arange(6.0)
_TABLE_SD: Final = np.array([effort_sd(rir) for rir in range(6)])
_EVERYONE: Final = np.ones(POINTS)


def long_set(reps: Floats) -> Floats:
    """0 for a set of up to about twelve repetitions to failure, 1 for a longer one, a slope between."""
    return np.asarray(np.minimum(np.maximum((reps - _LONG) / _WIDTH, 0.0), 1.0))


def felt_bias(bias: Floats, long: Floats) -> Floats:
    """What is left beyond what is felt, in a set of that length."""
    return bias * (1.0 + _LONG_BIAS * long)


def felt_error(long: Floats, error: Floats) -> Floats:
    """The error of a reserve in a set of that length."""
    return error * (1.0 + _LONG_SD * long)


def truly_left(bias: Floats, rir: float) -> Floats:
    """Repetitions really left when so many are felt: the bias comes in over the last two, none of it at failure."""
    near = rir / np.maximum(1.0 - bias / _FADE, 0.25)
    return np.asarray(np.where(rir + bias >= _FADE, rir + bias, near))


@dataclass(frozen=True, slots=True, eq=False)
class Seen:
    """A sighting in ln strength at each person: value less what was expected, variance, row, ln of the slope."""

    missed: Floats
    variance: Floats
    row: Floats
    log_slope: Floats


def exponent(state: Floats) -> Floats:
    """The exponent of slowness, inside what was ever published."""
    return np.asarray(np.minimum(np.maximum(state[SLOWNESS], 0.2), 1.0))


def tiring(state: Floats) -> Floats:
    """How much a set takes from the next, against a middle person."""
    return np.asarray(np.exp(np.minimum(np.maximum(state[TIRING], -2.5), 2.5)))


def _over(state: Floats, seen: Sighting) -> Floats:
    """ln of strength on the day over the mass, at that range."""
    over = state[STRENGTH] + state[DAY] - log(seen.mass)
    if seen.rungs == 0.0:
        return np.asarray(over)
    return np.asarray(over + (value("range.partial_gain") if seen.rungs < 0 else -seen.rungs * state[RUNG]))


def _row(seen: Sighting) -> Floats:
    row = np.zeros((STATES, POINTS))
    row[STRENGTH] = row[DAY] = 1.0
    row[RUNG] = -max(seen.rungs, 0.0)
    return row


def near_said(people: People, mean: Floats, seen: Sighting) -> Seen:
    """The sighting in a straight line about what was said: where to begin when little is known."""
    row, left, error, bent = _row(seen), _EVERYONE * 0.0, _EVERYONE * seen.sd, _EVERYONE * 0.0
    if seen.rir > 0:
        long = long_set(_EVERYONE * (seen.reps + seen.rir))
        bias = felt_bias(mean[BIAS], long)
        left = truly_left(bias, seen.rir)
        bent = np.where(seen.rir + bias < _FADE, left / np.maximum(_FADE - bias, 0.25 * _FADE), 1.0)
        bent = bent * felt_bias(_EVERYONE, long)
        error = felt_error(long, seen.sd * people.effort)
    whole = np.maximum(seen.reps + left, 0.05)
    usual = whole * np.exp(exponent(mean) * seen.slow) if seen.slow else whole
    loss = tiring(mean) * seen.tired * long_set_loss(usual)
    fresh = usual * (1.0 + loss)
    over, slope = strength_over_load(people, fresh)
    moved = slope * fresh / whole
    row[TIRING] = -slope * usual * loss
    row[BIAS] = -moved * bent
    row[SLOWNESS] = -slope * fresh * seen.slow
    return _with_noise(over - _over(mean, seen), moved, row, (error, mean), seen)


def near_believed(people: People, mean: Floats, at: Floats, seen: Sighting) -> Seen:
    """The sighting in a straight line about the states ``at``, so that its own error moves no slope."""
    row = _row(seen)
    fresh = np.maximum(reps_to_failure(people, np.minimum(np.maximum(_over(at, seen), -1.0), 3.0)), 0.3)
    _, slope = strength_over_load(people, fresh)
    loss = tiring(at) * seen.tired * long_set_loss(fresh)
    usual = fresh / (1.0 + loss)
    whole = usual * np.exp(-exponent(at) * seen.slow) if seen.slow else usual
    moved, error, told = slope * fresh / whole, _EVERYONE * seen.sd, whole
    if seen.rir > 0:
        long, left = long_set(whole), np.maximum(whole - seen.reps, 0.0)
        bias = felt_bias(at[BIAS], long)
        fades = np.minimum(left / _FADE, 1.0)
        felt = left - bias * fades
        told = whole - bias * fades
        moved = moved / np.where(left < _FADE, np.maximum(1.0 - bias / _FADE, 0.25), 1.0)
        row[BIAS] = -moved * fades * felt_bias(_EVERYONE, long)
        extra = max(seen.sd**2 - effort_sd(seen.rir) ** 2, 0.0)
        error = felt_error(long, np.sqrt(np.interp(felt, _TABLE_AT, _TABLE_SD) ** 2 + extra) * people.effort)
    row[TIRING] = -slope * usual * loss
    row[SLOWNESS] = -slope * fresh * seen.slow
    missed = moved * (seen.reps + seen.rir - told) + (row[:EFFORT] * (at - mean)[:EFFORT]).sum(axis=0)
    return _with_noise(missed, moved, row, (error, mean), seen)


def _with_noise(missed: Floats, moved: Floats, row: Floats, error: tuple[Floats, Floats], seen: Sighting) -> Seen:
    """The noise in repetitions carried over to ln strength by the slope; a part of effort's is shared by the day."""
    share = _SHARE if seen.rir > 0 else 0.0
    row[EFFORT] = -moved * error[0] * share**0.5
    variance = moved**2 * (error[0] ** 2 * (1.0 - share) + _SET_VARIANCE) + seen.extra_sd**2
    return Seen(missed - row[EFFORT] * error[1][EFFORT], variance, row, np.log(moved))
