"""Three plain rules that people use without any model, and the oracle that knows the truth. The measures' two ends.

The rules get the mass really moved, which flatters them: nobody computes it by hand.
"""

from collections.abc import Sequence
from typing import Final

import numpy as np

from core.model.acts import SetAct
from core.model.target import Session, TargetSet
from tests.sim.families import Floats
from tests.sim.life import FRESH_MIN, rest_minutes
from tests.sim.people import Person
from tests.sim.truth import do_set, new_day

EPLEY: Final = 30.0
"""Epley 1985: 1RM = w (1 + reps / 30)."""

RECENT: Final = 3
"""Sessions that count as recent for the best estimate."""


def _reserve(act: SetAct, asked: float) -> float:
    return asked if act.rir is None else act.rir


def _asked(person: Person, session: Session, at: int) -> float:
    if session.target is not None and at < len(session.target.sets):
        return session.target.sets[at].rir or 0.0
    return person.aim.rir


def _epley(person: Person, session: Session, at: int) -> float:
    act = session.sets[at]
    reps = (act.reps or 0) + _reserve(act, _asked(person, session, at))
    return person.truth.system_kg(act.load) * (1.0 + reps / EPLEY)


def _back(person: Person, one_rep: float, asked: TargetSet) -> float:
    return EPLEY * (one_rep / person.truth.system_kg(asked.load) - 1.0) - (asked.rir or 0.0)


def by_last_time(person: Person, past: Sequence[Session], sets: tuple[TargetSet, ...]) -> list[float]:
    """Last time's repetitions of the same set, moved by the reserve."""
    last = past[-1]
    out = []
    for at, asked in enumerate(sets):
        place = min(at, len(last.sets) - 1)
        act = last.sets[place]
        out.append((act.reps or 0) + _reserve(act, _asked(person, last, place)) - (asked.rir or 0.0))
    return [max(each, 0.0) for each in out]


def by_best_estimate(person: Person, past: Sequence[Session], sets: tuple[TargetSet, ...]) -> list[float]:
    """The best recent one-repetition estimate by Epley, turned back at the new load."""
    best = max(_epley(person, session, at) for session in past[-RECENT:] for at in range(len(session.sets)))
    return [max(_back(person, best, asked), 0.0) for asked in sets]


def by_same_set(person: Person, past: Sequence[Session], sets: tuple[TargetSet, ...]) -> list[float]:
    """Last session's same set by Epley at the new load."""
    last = past[-1]
    return [
        max(_back(person, _epley(person, last, min(at, len(last.sets) - 1)), asked), 0.0)
        for at, asked in enumerate(sets)
    ]


RULES: Final = (
    ("last time's reps", by_last_time),
    ("best recent e1RM", by_best_estimate),
    ("same set, new load", by_same_set),
)


def oracle(person: Person, sets: tuple[TargetSet, ...], seed: int, paths: int = 200) -> tuple[list[float], float]:
    """Expected uncapped repetitions of each set, and the chance of all met, by one who knows all but luck and day."""
    rng = np.random.default_rng([seed, 7])
    day = new_day(person.truth, rng, paths)
    rest = FRESH_MIN
    met = np.ones(paths, dtype=bool)
    means: list[float] = []
    for asked in sets:
        done = do_set(person.truth, asked, day, rest, rng)
        means.append(float(done.at_reserve.mean()))
        met &= done.met
        rest = rest_minutes(asked)
    return means, float(met.mean())


def what_happened(person: Person, sets: tuple[TargetSet, ...], rng: np.random.Generator) -> tuple[list[float], bool]:
    """One draw of the same: repetitions at the felt reserve of each set, the sets before it done as targeted."""
    day = new_day(person.truth, rng)
    rest = FRESH_MIN
    met, reps = True, []
    for asked in sets:
        done = do_set(person.truth, asked, day, rest, rng)
        stop: Floats = done.at_reserve
        reps.append(float(stop[0]))
        met = met and bool(done.met[0])
        rest = rest_minutes(asked)
    return reps, met
