"""What is believed of one lifter in one exercise, and how a set changes it: a Kalman filter at each fixed person.

State at each person: strength (ln kg on the moved mass), gain a session, cost of one rung of range, today's effect,
today's shared error of effort. Observed in ln strength; the noise in repetitions is carried over by the curve's slope,
and that change of variable belongs in the weight, or k would be biased. A lower bound moves the state only as far as it
must (a truncated normal by its moments). Knows nothing of targets.
"""

from dataclasses import dataclass
from math import log
from typing import Final

import numpy as np

from core.estimate.normal import Floats, hazard, log_cdf
from core.estimate.people import POINTS, People, long_set_loss, people_for, strength_over_load
from core.estimate.sighting import Sighting
from core.evidence.body import body_mass, traits_of
from core.evidence.layoff import after
from core.evidence.numbers import value
from core.model.lifter import Lifter

STRENGTH, GAIN, RUNG, DAY, EFFORT = range(5)
KEPT: Final = 3
"""The first states outlive the day."""


@dataclass(frozen=True, slots=True, eq=False)
class Belief:
    """Weights (ln) of the people, and mean (points, 5) and covariance (points, 5, 5) of the state at each."""

    log_weight: Floats
    mean: Floats
    cov: Floats


def prior(lifter: Lifter, exercise: str, log_strength: tuple[float, float] | None = None) -> Belief:
    """What is believed before the first set. ``log_strength``: mean and sd from a related lift, if there is one."""
    bodyweight = usable_bodyweight(lifter)
    factor = {"new": value("prior.new"), "some": 1.0, "long": value("prior.long")}[lifter.experience]
    centre, sd = log(traits_of(exercise).strength * bodyweight * factor), value("prior.log_sd")
    if log_strength is not None:
        precision = sd**-2 + log_strength[1] ** -2
        centre = (centre * sd**-2 + log_strength[0] * log_strength[1] ** -2) / precision
        sd = precision**-0.5
    gain = value(f"gain.{lifter.experience}")
    mean = np.zeros((POINTS, 5))
    mean[:, STRENGTH] = centre
    mean[:, GAIN] = gain
    mean[:, RUNG] = value("range.rung_cost")
    cov = np.zeros((POINTS, 5, 5))
    cov[:, STRENGTH, STRENGTH] = sd**2
    cov[:, GAIN, GAIN] = (gain * value("gain.log_sd")) ** 2
    cov[:, RUNG, RUNG] = value("range.rung_cost_sd") ** 2
    return open_day(Belief(np.zeros(POINTS), mean, cov))


def usable_bodyweight(lifter: Lifter) -> float:
    """Body mass in kg, the usual one when it is unsaid or cannot be."""
    return body_mass(lifter.bodyweight_kg)


def open_day(belief: Belief) -> Belief:
    """Forget yesterday's effects and open today's, as wide as the tables say."""
    # Rounding leaves the two halves of a covariance a hair apart; a kept belief must come back exactly.
    mean, cov = belief.mean.copy(), 0.5 * (belief.cov + belief.cov.transpose(0, 2, 1))
    mean[:, KEPT:] = 0.0
    cov[:, KEPT:, :] = 0.0
    cov[:, :, KEPT:] = 0.0
    cov[:, DAY, DAY] = value("day.sd") ** 2
    cov[:, EFFORT, EFFORT] = 1.0
    return Belief(belief.log_weight, mean, cov)


def next_session(belief: Belief, days: int) -> Belief:
    """The belief at the start of a session so many days after the last one: a gain, some wander, wider after a gap."""
    mean, cov = belief.mean.copy(), belief.cov.copy()
    weeks = max(days, 0) / 7.0
    lost = min(max(weeks - value("detrain.free_weeks"), 0.0) * value("detrain.per_week"), value("detrain.max"))
    gained = 1.0 if lost == 0.0 else 0.0
    mean[:, STRENGTH] += gained * mean[:, GAIN] - lost
    cov[:, STRENGTH, :] += gained * cov[:, GAIN, :]
    cov[:, :, STRENGTH] += gained * cov[:, :, GAIN]
    cov[:, STRENGTH, STRENGTH] += value("day.process_sd") ** 2 + after(days).extra_sd ** 2
    return open_day(Belief(belief.log_weight, mean, cov))


def long_set(reps: Floats) -> Floats:
    """0 for a set of up to about twelve repetitions to failure, 1 for a longer one, a slope between."""
    width = value("effort.long_width")
    return np.asarray(np.clip((reps - value("curve.long_set") + width / 2.0) / width, 0.0, 1.0))


def stretched(long: Floats, most: float) -> Floats:
    """A factor that is 1 for a short set and ``most`` for a long one."""
    return 1.0 + (most - 1.0) * long


def truly_left(bias: Floats, rir: float) -> Floats:
    """Repetitions really left when so many are felt: the bias comes in over the last two, none of it at failure."""
    over = value("effort.fade")
    near = rir / np.maximum(1.0 - bias / over, 0.25)
    return np.asarray(np.where(rir + bias >= over, rir + bias, near))


@dataclass(frozen=True, slots=True, eq=False)
class _Seen:
    """A sighting in ln strength at each person: value, variance, row of the state, ln of the slope."""

    value: Floats
    variance: Floats
    row: Floats
    log_slope: Floats


def _seen(people: People, seen: Sighting) -> _Seen:
    long = long_set(np.full(POINTS, seen.reps + seen.rir))
    left = truly_left(people.bias * stretched(long, value("effort.long_bias")), seen.rir)
    slowed = np.exp(-people.slowness * seen.slow)
    whole = np.maximum(seen.reps + left, 0.05) / slowed
    keeps = slowed / (1.0 + people.tiring * seen.tired * long_set_loss(whole))
    over, slope = strength_over_load(people, np.maximum((seen.reps + left) / keeps, 0.05))
    slope = slope / keeps
    share = value("effort.day_share") if seen.rir > 0 else 0.0
    error = (
        seen.sd * people.effort * stretched(long, value("effort.long_sd")) if seen.rir > 0 else np.full(POINTS, seen.sd)
    )
    row = np.zeros((POINTS, 5))
    row[:, STRENGTH] = 1.0
    row[:, DAY] = 1.0
    row[:, RUNG] = -max(seen.rungs, 0.0)
    row[:, EFFORT] = slope * error * share**0.5
    variance = slope**2 * (error**2 * (1.0 - share) + value("set.sd") ** 2) + seen.extra_sd**2
    partial = value("range.partial_gain") if seen.rungs < 0 else 0.0
    return _Seen(log(seen.mass) + over - partial, variance, row, np.log(slope))


def weights(belief: Belief) -> Floats:
    """The people's weights, summing to one."""
    raw = np.exp(belief.log_weight - belief.log_weight.max())
    return np.asarray(raw / raw.sum())


def absorb_set(belief: Belief, exercise: str, seen: Sighting) -> tuple[Belief, float]:
    """The belief after that set, and how many sd the set lay above what was expected."""
    what = _seen(people_for(exercise), seen)
    crossed = np.einsum("pij,pj->pi", belief.cov, what.row)
    variance = (what.row * crossed).sum(axis=1) + what.variance
    missed = what.value - (what.row * belief.mean).sum(axis=1)
    surprise = float((weights(belief) * missed / np.sqrt(variance)).sum())
    if not seen.bound:
        # A slip of the thumb or another lift by the same name: heard, but no louder than the furthest fair result.
        most = value("effort.slip_z") * np.sqrt(variance)
        missed = np.clip(missed, -most, most)
    if seen.bound:
        return _bounded(belief, crossed, variance, missed), surprise
    gain = crossed / variance[:, None]
    likely = what.log_slope - 0.5 * (missed**2 / variance + np.log(variance))
    return (
        Belief(
            belief.log_weight + value("people.trust") * likely,
            belief.mean + gain * missed[:, None],
            belief.cov - gain[:, :, None] * crossed[:, None, :],
        ),
        surprise,
    )


def _bounded(belief: Belief, crossed: Floats, variance: Floats, missed: Floats) -> Belief:
    """The belief after "at least so much": moments of the truncated normal."""
    root = np.sqrt(variance)
    z = np.clip(-missed / root, -8.0, 8.0)
    pull = hazard(z)
    shrink = np.clip(pull * (pull + z), 0.0, 1.0) / variance
    return Belief(
        belief.log_weight + value("people.trust") * log_cdf(z),
        belief.mean + crossed * (pull / root)[:, None],
        belief.cov - shrink[:, None, None] * crossed[:, :, None] * crossed[:, None, :],
    )
