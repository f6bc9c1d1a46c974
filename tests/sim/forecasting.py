"""Measures (a) and (b): forecasts of fixed sets against three plain rules and the oracle, and what ``chance`` is worth.

The sets asked about depend on the history alone, never on the truth; else no honest chance could be calibrated.
"""

from collections import defaultdict
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Final

import numpy as np

from core.model.quantities import Load
from tests.sim.asking import Asker
from tests.sim.life import FIRST_DAY, do_session, drift_load, nearby, next_day, plain_target, what_if
from tests.sim.people import Person
from tests.sim.yardsticks import RULES, by_same_set, oracle, what_happened

LOW_SHIFTS: Final = (-4, -3, -2, -1, 0, 1, 2)
EARLY: Final = 3
"""Sessions seen up to which a lifter counts as hardly known."""


@dataclass(slots=True)
class Scores:
    """Errors by forecaster in repetitions, what was done, and chances with what came of them; all by group."""

    error: dict[str, dict[str, float]] = field(default_factory=lambda: defaultdict(lambda: defaultdict(float)))
    done: dict[str, float] = field(default_factory=lambda: defaultdict(float))
    inside: dict[str, list[bool]] = field(default_factory=lambda: defaultdict(list))
    chance: dict[str, list[tuple[float, bool, float]]] = field(default_factory=lambda: defaultdict(list))

    def add(self, groups: tuple[str, ...], who: str, guess: list[float], real: list[float]) -> None:
        """One forecaster's sets."""
        for group in groups:
            self.error[group][who] += sum(abs(g - r) for g, r in zip(guess, real, strict=True))

    def per_ten(self, group: str) -> dict[str, float]:
        """Mean absolute error per ten repetitions done, by forecaster."""
        return {who: 10.0 * total / max(self.done[group], 1.0) for who, total in self.error[group].items()}

    def gap_closed(self, group: str) -> float:
        """How much of the way from the best plain rule to the oracle the core goes; 1 is all of it."""
        errors = self.per_ten(group)
        best = min(errors[name] for name, _ in RULES)
        return (best - errors["core"]) / (best - errors["oracle"])


def score_person(person: Person, seed: int, sessions: int, scores: Scores, with_core: bool = True) -> None:
    """One lifter's life under a coach of no particular method; before each session the same what-if for everyone."""
    rng = np.random.default_rng([seed, 1])
    asker, on, load = Asker(person), FIRST_DAY, person.start
    for number in range(sessions):
        if asker.past:
            _one_question(asker, on, load, np.random.default_rng([seed, 2, number]), scores, with_core)
        session, _ = do_session(person, plain_target(person, load), on, rng)
        asker.keep(session)
        load = drift_load(person, load, session, rng)
        on = next_day(person, on, rng)


def _one_question(asker: Asker, on: date, load: Load, rng: np.random.Generator, scores: Scores, core: bool) -> None:
    person, number = asker.person, len(asker.past)
    asked = what_if(person, nearby(person, load, rng), 1, rng)
    plain = by_same_set(person, asker.past, asked)
    low = int(max(1, round(float(np.mean(plain))) + int(rng.choice(LOW_SHIFTS))))
    sets = tuple(replace(each, reps=(low, low + 4)) for each in asked)
    real, met = what_happened(person, sets, rng)
    groups = ("all", person.truth.family.name, "early" if number <= EARLY else "later")
    for group in groups:
        scores.done[group] += sum(real)
    for name, rule in RULES:
        scores.add(groups, name, rule(person, asker.past, sets), real)
    means, truth_chance = oracle(person, sets, number)
    scores.add(groups, "oracle", means, real)
    if not core:
        return
    advice = asker.advise(on, sets)
    scores.add(groups, "core", [each.reps for each in advice.forecast], real)
    for group in groups:
        scores.inside[group] += [
            abs(each.reps - r) <= 1.2816 * each.sd + 0.5 for each, r in zip(advice.forecast, real, strict=True)
        ]
        scores.chance[group].append((advice.chance, met, truth_chance))


def calibration(answers: list[tuple[float, bool, float]]) -> tuple[list[tuple[float, float, int]], float, float]:
    """Ten bins (mean said, share met, number), the weighted mean gap between them, and Brier skill over base rate."""
    said = np.array([each[0] for each in answers])
    came = np.array([float(each[1]) for each in answers])
    place = np.clip((said * 10).astype(int), 0, 9)
    bins = [(float(said[place == n].mean()), float(came[place == n].mean()), int((place == n).sum()))
            for n in range(10) if (place == n).any()]  # fmt: skip
    gap = sum(abs(s - c) * n for s, c, n in bins) / len(said)
    brier = float(((said - came) ** 2).mean())
    base = float(came.mean() * (1.0 - came.mean()))
    return bins, gap, 1.0 - brier / base if base > 0 else 0.0
