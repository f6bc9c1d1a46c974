"""A closed loop with the core: its own targets come back met, missed, loose or wild, and every answer is checked."""

from collections.abc import Callable, Iterator
from dataclasses import replace
from datetime import timedelta
from typing import Final

import numpy as np

from core.model.lifter import Ache
from core.model.target import Advice, Question, Session, Target
from tests.sim.always import Breach, breaches
from tests.sim.histories import DAY as START
from tests.sim.histories import IDS, WHERES, Rng, outcome, pick, some_aim, some_lifter, some_load
from tests.sim.monotone import improved, pair_breach
from tests.sim.standing import fits_aim, last_target

Advise = Callable[[Question], Advice]

GAPS: Final = (2, 2, 3, 3, 4, 7, 7, 7, 14, 30)


def rounds(seed: int, advise: Advise, length: int) -> Iterator[tuple[Question, Advice]]:
    """A lifter's sessions, each a question and its advice; what is done follows the advice, well or badly."""
    rng = np.random.default_rng([77, seed])
    lifter, exercise, aim = some_lifter(rng), pick(rng, IDS), some_aim(rng)
    begin = some_load(rng, exercise)
    question = Question(lifter, exercise, aim, (), START)
    for _ in range(length):
        question = replace(question, lifter=replace(lifter, aches=_aches(question, rng)))
        advice = advise(question)
        yield question, advice
        on = question.on + timedelta(days=int(pick(rng, GAPS)))
        if not advice.sets:
            question = replace(question, on=on)
            continue
        sets = tuple(each if each.load is not None else replace(each, load=begin) for each in advice.sets)
        mood = float(rng.normal(0.6, 0.7))
        acts = tuple(outcome(rng, exercise, each, mood) for each in sets)
        if rng.random() < 0.08:
            acts = (*acts[:-1], replace(acts[-1], form=pick(rng, ("loose", "fair"))))
        kept = Session(question.on, acts, Target(advice.way, advice.sets))
        question = replace(question, past=(*question.past, kept), on=on)


def _aches(question: Question, rng: Rng) -> tuple[Ache, ...]:
    if rng.random() > 0.1:
        return ()
    return (Ache(pick(rng, WHERES), question.on, None, float(rng.integers(0, 9))),)


def pairs(question: Question, advice: Advice, advise: Advise, seed: int) -> Iterator[tuple[Question, Breach]]:
    """Rule 9 around one question: what is said to a slightly better result must not be easier."""
    rng = np.random.default_rng([78, seed])
    better = improved(question, rng)
    last = last_target(question)
    if better is None or last is None or not fits_aim(last[1], question):
        return
    breach = pair_breach(advice, advise(better))
    if breach is not None:
        yield better, breach


def all_breaches(seed: int, advise: Advise, length: int, every: int = 1) -> Iterator[tuple[Question, Breach]]:
    """Everything broken in one closed loop; the pairs of rule 9 at every so many sessions."""
    for number, (question, advice) in enumerate(rounds(seed, advise, length)):
        for breach in breaches(question, advice):
            yield question, breach
        if number % every == 0:
            yield from pairs(question, advice, advise, seed * 1000 + number)
