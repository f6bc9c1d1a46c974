"""The checker itself: answers broken on purpose, one for each promise, must each be caught; sound ones must pass."""

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest

from bot import codec
from core.model.acts import SetAct
from core.model.lifter import Ache, Kit, Lifter
from core.model.quantities import Load, Range
from core.model.target import Advice, Aim, Forecast, Question, Reason, Session, Target, TargetSet, Verdict
from tests.sim.always import breaches
from tests.sim.gyms import makeable
from tests.sim.histories import TWISTS, draw
from tests.sim.monotone import pair_breach, surer_breach
from tests.sim.wire import question_in, question_out

AIM = Aim(3, (8, 12), 2.0, (2.0, 0.0, 1.0, 0.0), 150.0, ("reps", "tempo", "range", "rest", "load"))
ASKED = TargetSet(Load("total", 60.0), (8, 12), 2.0, AIM.tempo, 150.0)
KIT = Kit(20.0, {20.0: 2, 15.0: 2, 10.0: 2, 2.5: 2, 1.25: 2})
DAY = date(2026, 3, 2)


def history(reps: int = 10, rir: float | None = 2.0, **changes: Any) -> Question:
    """A bench press at 60 kg, one session, all sets alike; ``changes`` are of the sets."""
    acts = tuple(
        replace(SetAct("barbell-bench-press", Load("total", 60.0), reps, rir=rir), **changes) for _ in range(3)
    )
    past = (Session(DAY, acts, Target("hold", (ASKED,) * 3)),)
    return Question(Lifter("kg", 80.0, "some", KIT), "barbell-bench-press", AIM, past, DAY + timedelta(days=3))


def answer(way: Verdict, asked: TargetSet = ASKED, sets: int = 3, could: float = 10.0) -> Advice:
    """An answer with every set alike."""
    return Advice(way, (asked,) * sets, (Forecast(could, 1.5),) * sets, 0.7, (Reason("Because.", "R1"),), ())


def heavier(kg: float, low: int = 8) -> TargetSet:
    """The same at another load."""
    return replace(ASKED, load=Load("total", kg), reps=(low, 12))


MORE = replace(ASKED, reps=(9, 12))
SLOW = replace(ASKED, tempo=(3.0, 0.0, 1.0, 0.0))
ACHE = Ache("shoulder", DAY + timedelta(days=3), None, 4.0)


def sore(level: float) -> Question:
    """The same lifter with a shoulder that aches so much today."""
    return replace(history(), lifter=replace(history().lifter, aches=(replace(ACHE, level=level),)))


SOUND = [
    (history(), answer("reps", MORE)),
    (history(), answer("tempo", SLOW)),
    (history(), answer("rest", replace(ASKED, rest_s=120.0))),
    (history(), answer("range", replace(ASKED, range=Range("extra")))),
    (history(), answer("load", heavier(62.5))),
    (history(), answer("load", replace(heavier(62.5, 6), reps=(6, 10)))),
    (history(7), answer("hold")),
    (history(form="loose"), answer("form")),
    (history(7), answer("ease", heavier(55.0), 2)),
]

BROKEN = [
    ("1", history(form="loose"), answer("reps", MORE)),
    ("1", history(form="fair"), answer("form", MORE)),
    ("2", history(), answer("reps", replace(MORE, tempo=SLOW.tempo))),
    ("2", history(), answer("reps", replace(MORE, load=Load("total", 62.5)))),
    ("2", history(), answer("tempo", replace(SLOW, reps=(6, 10)))),
    ("2", history(), answer("hold", MORE)),
    ("2", history(), answer("reps", ASKED)),
    ("2", history(), answer("hold", sets=2)),
    ("2", history(), answer("hold", replace(ASKED, rir=3.0))),
    ("3", history(7), answer("reps", MORE)),
    ("3", history(10, 1.0), answer("load", heavier(62.5))),
    ("3", history(10, form="fair"), answer("load", heavier(62.5))),
    ("3", history(10, 2.0, load=Load("total", 50.0)), answer("load", heavier(62.5))),
    ("4", history(), answer("rest", replace(ASKED, rest_s=90.0))),
    ("4", history(), answer("tempo", replace(ASKED, tempo=(4.0, 0.0, 1.0, 0.0)))),
    ("4", history(), answer("tempo", replace(ASKED, tempo=(3.0, 4.0, 3.0, 0.0)))),
    ("4", history(), answer("reps", replace(ASKED, reps=(9, 31)))),
    ("4", history(), answer("load", heavier(72.5))),
    ("6", replace(history(), lifter=replace(history().lifter, no_heavier=True)), answer("load", heavier(62.5))),
    ("6", sore(4.0), answer("hold")),
    ("6", sore(7.0), answer("ease", sets=2)),
    ("6", sore(2.0), answer("load", heavier(62.5))),
    ("7", replace(history(), on=DAY + timedelta(days=40)), answer("hold")),
    ("7", history(7), answer("ease")),
    ("7", history(7), answer("ease", replace(ASKED, load=Load("total", 55.0), reps=(10, 12)), 2)),
    ("kit", history(), answer("load", heavier(63.0))),
    ("out", history(), replace(answer("hold"), chance=1.2)),
    ("out", history(), replace(answer("hold"), why=())),
    ("out", history(), answer("first")),
    ("out", replace(history(), aim=replace(AIM, ways=("load",))), answer("reps", MORE)),
]  # fmt: skip


@pytest.mark.parametrize(("question", "advice"), SOUND)
def test_sound_answers_pass(question: Question, advice: Advice) -> None:
    assert breaches(question, advice) == []


@pytest.mark.parametrize(("rule", "question", "advice"), BROKEN)
def test_a_broken_promise_is_caught(rule: str, question: Question, advice: Advice) -> None:
    assert rule in {each.rule for each in breaches(question, advice)}


def test_three_misses_must_ease() -> None:
    once = history(6).past[0]
    past = tuple(replace(once, on=DAY + timedelta(days=3 * n)) for n in range(3))
    question = replace(history(6), past=past, on=DAY + timedelta(days=9))
    assert {each.rule for each in breaches(question, answer("hold"))} == {"7"}
    assert breaches(replace(question, past=past[1:]), answer("hold")) == []


def test_a_rest_that_cost_repetitions_must_be_taken_back() -> None:
    short = replace(ASKED, rest_s=120.0)
    first, question = history(12).past[0], history(12)
    acts = tuple(replace(act, reps=10) for act in first.sets)
    past = (first, Session(DAY + timedelta(days=3), acts, Target("rest", (short,) * 3)))
    question = replace(question, past=past, on=DAY + timedelta(days=6))
    assert {each.rule for each in breaches(question, answer("hold", short))} == {"5"}
    assert breaches(question, answer("hold")) == []


def test_an_easier_target_for_a_better_result_is_caught() -> None:
    assert pair_breach(worse=answer("reps", MORE), better=answer("hold")) is not None
    assert pair_breach(worse=answer("hold"), better=answer("load", heavier(62.5, 6))) is None
    assert pair_breach(worse=answer("hold"), better=answer("ease", sets=2)) is not None


def test_a_less_sure_forecast_after_one_more_set_is_caught() -> None:
    sure, unsure = answer("hold"), replace(answer("hold"), forecast=(Forecast(9.0, 1.6),) * 3)
    assert surer_breach(sure, unsure) is not None
    assert surer_breach(unsure, sure) is None


def test_plates_by_brute_force_on_a_kit_done_by_hand() -> None:
    """20 kg bar, two 10s and two 2.5s: nothing, 2.5s, 10s or both, one of each a side."""
    assert makeable("back-squat", "total", Kit(20.0, {10.0: 2, 2.5: 2})) == {20.0, 25.0, 40.0, 45.0}
    assert makeable("back-squat", "total", Kit(20.0, {10.0: 3, 2.5: 1})) == {20.0, 40.0}


@pytest.mark.parametrize("twist", sorted(TWISTS))
def test_questions_survive_the_wire(twist: str) -> None:
    """Our own JSON and the service's codec read the same question out of the same line."""
    for seed in range(5):
        question = draw(twist, seed)
        data = question_out(question)
        assert question_in(data) == question
        assert codec.question_in(data) == question
