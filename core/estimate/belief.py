"""What is believed of one lifter in one exercise, and how a set changes it: a Kalman filter at each fixed person.

State at each person: strength (ln kg on the moved mass), gain a session, cost of one rung of range, tiring (ln of the
factor), honesty of effort (repetitions), cost of slowness (exponent), today's effect, today's shared error of effort.
Observed in ln strength, in a straight line about what is believed; the noise in repetitions is carried over by the
curve's slope, and that change of variable belongs in the weight, or k would be biased. A lower bound moves the state
only as far as it must (a truncated normal by its moments). Knows nothing of targets.
"""

from dataclasses import dataclass
from math import log
from typing import Final

import numpy as np

from core.estimate.normal import Floats, hazard, log_cdf
from core.estimate.people import POINTS, people_for
from core.estimate.seeing import (
    BIAS,
    DAY,
    EFFORT,
    GAIN,
    RUNG,
    SLOWNESS,
    STATES,
    STRENGTH,
    TIRING,
    Seen,
    near_believed,
    near_said,
)
from core.estimate.sighting import Sighting
from core.evidence.body import body_mass, traits_of
from core.evidence.layoff import after
from core.evidence.numbers import value
from core.model.lifter import Lifter

KEPT: Final = 6
"""The first states outlive the day."""
FURTHEST: Final = 8.0
"""Further off than so many sd nothing pulls harder: past that a straight line means nothing."""
_TRUST: Final = value("people.trust")


@dataclass(frozen=True, slots=True, eq=False)
class Belief:
    """Weights (ln) of the people, and mean (states, points) and covariance (states, states, points) at each.

    People last: long rows of the same entry are what the machine adds up fastest.
    """

    log_weight: Floats
    mean: Floats
    cov: Floats


def prior(lifter: Lifter, exercise: str, log_strength: tuple[float, float] | None = None) -> Belief:
    """What is believed before the first set. ``log_strength``: mean and sd from a related lift, if there is one."""
    traits = traits_of(exercise)
    factor = {"new": value("prior.new"), "some": 1.0, "long": value("prior.long")}[lifter.experience]
    # People differ in what they lift beside the body; the body's own share is the same for all of one mass.
    apart = max(1.0 - traits.share / traits.strength, value("prior.apart_min")) ** 0.5
    centre = log(traits.strength * usable_bodyweight(lifter)) + apart * log(factor)
    sd = value("prior.log_sd") * apart
    if log_strength is not None:
        precision = sd**-2 + log_strength[1] ** -2
        centre = (centre * sd**-2 + log_strength[0] * log_strength[1] ** -2) / precision
        sd = precision**-0.5
    gain = value(f"gain.{lifter.experience}")
    known = {
        STRENGTH: (centre, sd),
        GAIN: (gain, gain * value("gain.log_sd")),
        RUNG: (value("range.rung_cost"), value("range.rung_cost_sd")),
        TIRING: (0.0, value("rest.log_sd")),
        BIAS: (value("effort.bias"), value("effort.bias_sd")),
        SLOWNESS: (value("tempo.exponent"), value("tempo.exponent_sd")),
    }
    mean, cov = np.zeros((STATES, POINTS)), np.zeros((STATES, STATES, POINTS))
    for state, (middle, doubt) in known.items():
        mean[state] = middle
        cov[state, state] = doubt**2
    return open_day(Belief(np.zeros(POINTS), mean, cov))


def usable_bodyweight(lifter: Lifter) -> float:
    """Body mass in kg, the usual one when it is unsaid or cannot be."""
    return body_mass(lifter.bodyweight_kg)


def open_day(belief: Belief) -> Belief:
    """Forget yesterday's effects and open today's, as wide as the tables say."""
    # Rounding leaves the two halves of a covariance a hair apart; a kept belief must come back exactly.
    mean, cov = belief.mean.copy(), 0.5 * (belief.cov + belief.cov.transpose(1, 0, 2))
    mean[KEPT:] = 0.0
    cov[KEPT:] = 0.0
    cov[:, KEPT:] = 0.0
    cov[DAY, DAY] = value("day.sd") ** 2
    cov[EFFORT, EFFORT] = 1.0
    return Belief(belief.log_weight, mean, cov)


def next_session(belief: Belief, days: int) -> Belief:
    """The belief at the start of a session so many days after the last one: a gain, some wander, wider after a gap."""
    mean, cov = belief.mean.copy(), belief.cov.copy()
    weeks = max(days, 0) / 7.0
    lost = min(max(weeks - value("detrain.free_weeks"), 0.0) * value("detrain.per_week"), value("detrain.max"))
    gained = 1.0 if lost == 0.0 else 0.0
    mean[STRENGTH] += gained * mean[GAIN] - lost
    cov[STRENGTH] += gained * cov[GAIN]
    cov[:, STRENGTH] += gained * cov[:, GAIN]
    cov[STRENGTH, STRENGTH] += value("day.process_sd") ** 2 + after(days).extra_sd ** 2
    return open_day(Belief(belief.log_weight, mean, cov))


def weights(belief: Belief) -> Floats:
    """The people's weights, summing to one."""
    raw = np.exp(belief.log_weight - belief.log_weight.max())
    return np.asarray(raw / raw.sum())


def absorb_set(belief: Belief, exercise: str, seen: Sighting, furthest: float = FURTHEST) -> tuple[Belief, float]:
    """The belief after that set, and how many sd the set lay above what was expected.

    A set more than ``furthest`` sd off pulls no harder than one just so far off.
    """
    people = people_for(exercise)
    what = near_said(people, belief.mean, seen)
    crossed, variance = _doubt(belief, what)
    if seen.rir > 0 and not seen.bound:
        gain = _within(what.missed, furthest, variance) / variance
        what = near_believed(people, belief.mean, belief.mean + crossed * gain, seen)
        crossed, variance = _doubt(belief, what)
    surprise = float((weights(belief) * what.missed / np.sqrt(variance)).sum())
    if seen.bound:
        return _bounded(belief, crossed, variance, what.missed), surprise
    missed = _within(what.missed, furthest, variance)
    gain = crossed / variance
    likely = what.log_slope - 0.5 * (missed**2 / variance + np.log(variance))
    return (
        Belief(
            belief.log_weight + _TRUST * likely,
            belief.mean + gain * missed,
            belief.cov - gain[:, None] * crossed,
        ),
        surprise,
    )


def _within(missed: Floats, furthest: float, variance: Floats) -> Floats:
    """What was missed, but no more of it than so many sd."""
    most = furthest * np.sqrt(variance)
    return np.minimum(np.maximum(missed, -most), most)


def _doubt(belief: Belief, what: Seen) -> tuple[Floats, Floats]:
    """How each state goes with the sighting, and the variance of what is expected of it."""
    crossed = np.einsum("ijp,jp->ip", belief.cov, what.row)
    return crossed, (what.row * crossed).sum(axis=0) + what.variance


def _bounded(belief: Belief, crossed: Floats, variance: Floats, missed: Floats) -> Belief:
    """The belief after "at least so much": moments of the truncated normal."""
    root = np.sqrt(variance)
    z = np.clip(-missed / root, -8.0, 8.0)
    pull = hazard(z)
    shrink = np.clip(pull * (pull + z), 0.0, 1.0) / variance
    return Belief(
        belief.log_weight + _TRUST * log_cdf(z),
        belief.mean + crossed * (pull / root),
        belief.cov - (shrink * crossed)[:, None] * crossed,
    )
