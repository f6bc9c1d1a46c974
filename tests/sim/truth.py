"""One simulated lifter on one exercise: what is true of the body, and how a set goes. Knows nothing of ``core``.

Every spread is drawn from a published figure (evidence.md, section in brackets) or marked as a judgement.
"""

from dataclasses import dataclass, field
from typing import Final

import numpy as np

from core.model.quantities import Load
from core.model.target import TargetSet
from tests.sim.families import Family, Fatigue, Floats, Tiredness, leave_behind

FELT_AT: Final = np.array([0.0, 1.0, 2.0, 3.0, 4.0, 5.0, 7.0])
FELT_SD: Final = np.array([0.5, 1.0, 1.4, 1.9, 2.3, 2.9, 3.2])
"""Error of felt reserve by true reserve [2]: Refalo 2023 near failure, Zourdos 2021 far; 0.5 at 0 is a judgement."""

CLOSE: Final = 0.5
"""A reserve within half a repetition of the one asked is the one asked (advising contract)."""

EFFORT_LEFT: Final = np.array([0.0, 2.0, 4.0, 8.0])
EFFORT_WORTH: Final = np.array([1.0, 0.5, 0.35, 0.2])
"""How much a set tires by what was left: half at two in reserve [5, judgement, no source]."""


@dataclass(slots=True)
class Truth:
    """What nobody sees. ``ln_strength`` is the log of the heaviest system load (kg) for one repetition, fresh."""

    family: Family
    ln_strength: float
    k: float
    fatigue: Fatigue
    tempo_b: float
    own_rep_s: float
    bias: float
    felt_scale: float
    day_sd: float
    set_sd: float
    says_effort: float
    pushes: bool
    slip_near: float
    slip_far: float
    moved_share: float
    hands: int
    bodyweight_kg: float
    gain_factor: float
    weeks_trained: float
    extra_range_cost: float = 0.12

    def system_kg(self, load: Load | None) -> float:
        """The mass really moved: share of body mass [8] and what is held, both hands."""
        held = 0.0 if load is None or load.kg is None else load.kg
        sign = -1.0 if load is not None and load.kind == "assist" else 1.0
        hands = self.hands if load is not None and load.kind == "per_hand" else 1
        return max(self.moved_share * self.bodyweight_kg + sign * hands * held, 1.0)


@dataclass(slots=True)
class Day:
    """What a day brings, one entry a path: its effect on strength and on the feel of effort."""

    effect: Floats
    feel: Floats
    tired: Tiredness = field(init=False)

    def __post_init__(self) -> None:
        self.tired = Tiredness.none(len(self.effect))


def draw_normal(rng: np.random.Generator, paths: int, heavy: bool) -> Floats:
    """Standard noise; with heavy tails a Student t of 4 degrees, scaled to unit spread."""
    if heavy:
        return np.asarray(rng.standard_t(4, paths) / np.sqrt(2.0), dtype=np.float64)
    return rng.standard_normal(paths)


def new_day(truth: Truth, rng: np.random.Generator, paths: int = 1) -> Day:
    """A day drawn for each path."""
    heavy = truth.family.heavy_tails
    return Day(truth.day_sd * draw_normal(rng, paths, heavy), rng.standard_normal(paths))


@dataclass(frozen=True, slots=True)
class Done:
    """How a set went, one entry a path: repetitions, reserve as felt and true, form, and the uncapped stop."""

    reps: Floats
    felt: Floats
    left: Floats
    clean: np.ndarray
    at_reserve: Floats
    met: np.ndarray


def to_failure(truth: Truth, target: TargetSet, day: Day, rest_min: float) -> Floats:
    """Repetitions to failure before the noise of the set."""
    kg = truth.system_kg(target.load)
    if target.range is not None and target.range.grade in ("extra", "partial"):
        kg *= 1.0 + truth.extra_range_cost * (1.0 if target.range.grade == "extra" else -1.0)
    share = kg / np.exp(truth.ln_strength + day.effect)
    fresh = truth.family.curve(share, truth.k)
    factor, loss = truth.family.tiring(day.tired, rest_min, fresh, truth.fatigue)
    tired = truth.family.curve(share * np.exp(loss), truth.k)
    slower: float = (rep_seconds(truth, target) / truth.own_rep_s) ** -truth.tempo_b
    return np.multiply(tired * factor, slower)


def rep_seconds(truth: Truth, target: TargetSet) -> float:
    """Seconds a repetition takes: the tempo asked, an unsaid part as the lifter does it, an explosive lift in 0.5 s."""
    if target.tempo is None:
        return truth.own_rep_s
    own = (0.45 * truth.own_rep_s, 0.0, 0.45 * truth.own_rep_s, 0.1 * truth.own_rep_s)
    parts = [mine if asked is None else asked for mine, asked in zip(own, target.tempo, strict=True)]
    parts[2] = max(parts[2], 0.5)
    return float(sum(parts))


def felt_reserve(truth: Truth, left: Floats, reps: Floats, slant: Floats) -> Floats:
    """Reserve as felt: by the family's form, with an error that grows with what is left [2]; failure is known."""
    spread = np.interp(left, FELT_AT, FELT_SD) * np.where(left > 0.0, 1.0, 0.0)
    felt: Floats = truth.family.felt(left, reps + left, truth.bias) + truth.felt_scale * spread * slant
    return felt


def do_set(truth: Truth, target: TargetSet, day: Day, rest_min: float, rng: np.random.Generator) -> Done:
    """One set on every path: stop at the top of the range or at the felt reserve, whole repetitions; ``day`` tires."""
    paths = len(day.effect)
    heavy = truth.family.heavy_tails
    capacity = to_failure(truth, target, day, rest_min)
    capacity = capacity + truth.set_sd * (0.4 + 0.02 * capacity) * draw_normal(rng, paths, heavy)
    capacity = np.floor(np.maximum(capacity, 0.0))
    slant = np.sqrt(0.5) * (day.feel + draw_normal(rng, paths, heavy))
    asked = 0.0 if target.rir is None else target.rir
    at_reserve = _stop(truth, capacity, asked, slant)
    low, high = target.reps
    reps = np.minimum(at_reserve, high)
    if truth.pushes:
        reps = np.where(at_reserve < low, np.minimum(low, capacity), reps)
    left = capacity - reps
    felt = np.maximum(felt_reserve(truth, left, reps, slant), 0.0)
    slip = truth.slip_far + (truth.slip_near - truth.slip_far) * np.exp(-left)
    clean = rng.random(paths) >= slip
    met = (at_reserve >= low) & clean
    effort = np.interp(left, EFFORT_LEFT, EFFORT_WORTH)
    day.tired = leave_behind(day.tired, rest_min, effort)
    return Done(reps, felt, left, clean, at_reserve, met)


def _stop(truth: Truth, capacity: Floats, asked: float, slant: Floats) -> Floats:
    """The last repetition whose felt reserve is still the one asked, within half; failure when none is asked."""
    if asked <= 0.0:
        return capacity.copy()
    counts = np.arange(0.0, float(capacity.max(initial=0.0)) + 1.0)[:, None]
    left = np.maximum(capacity[None, :] - counts, 0.0)
    felt = felt_reserve(truth, left, np.broadcast_to(counts, left.shape), slant[None, :])
    enough = (felt >= asked - CLOSE) & (counts <= capacity[None, :])
    unbroken = np.cumprod(enough, axis=0)
    stops: Floats = np.maximum(unbroken.sum(axis=0) - 1.0, 0.0)
    return stops


def gain(truth: Truth, days: float, rng: np.random.Generator) -> None:
    """Time passes: strength by training age [11, Steele 2022: s0*(1+0.10*ln(1+weeks))], lost after three weeks off."""
    weeks = days / 7.0
    if days <= 21.0:
        before, after = (1.0 + 0.10 * np.log(1.0 + truth.weeks_trained + each) for each in (0.0, weeks))
        truth.ln_strength += truth.gain_factor * float(np.log(after / before))
        truth.weeks_trained += weeks
    else:
        truth.ln_strength -= 0.004 * (weeks - 3.0)  # strength 3-6 % in 10 weeks (Halonen 2024, secondary)
        truth.ln_strength += 0.015 * float(rng.standard_normal())
    truth.ln_strength += 0.005 * float(rng.standard_normal())
