"""Facts of the trade, each marked 'common practice, no source' or with the study that stands behind it."""

from dataclasses import replace
from datetime import timedelta

import pytest

from core.advising import advise
from core.evidence.exercises import EXERCISES
from core.evidence.numbers import NUMBERS, value
from core.evidence.sources import SOURCES
from core.model.acts import SetAct
from core.model.lifter import Kit, Lifter
from core.model.quantities import Load, Tempo, Way
from core.model.target import Advice, Aim, Question, Session, Target, TargetSet
from tests.outside.probe import FIRST


def climbed(
    exercise: str, ways: tuple[Way, ...], tempo: Tempo | None, rest_s: float, sessions: int = 25
) -> list[Advice]:
    """Advice after advice for a lifter with one dumbbell pair who always does all that is asked, and easily."""
    kit = Kit(dumbbells_kg=(10.0,))
    aim = Aim(2, (8, 12), 2.0, tempo, rest_s, ways)
    question = Question(Lifter("kg", 80.0, "some", kit), exercise, aim, (), FIRST)
    answers = []
    for number in range(sessions):
        advice = advise(question)
        answers.append(advice)
        acts = tuple(
            SetAct(
                exercise,
                Load("per_hand", 10.0),
                each.reps[1],
                rir=4.0,
                form="clean",
                tempo=each.tempo,
                range=each.range,
            )
            for each in advice.sets
        )
        kept = Session(question.on, acts, Target(advice.way, advice.sets))
        question = replace(question, past=(*question.past, kept), on=FIRST + timedelta(days=3 * (number + 1)))
    return answers


def test_repetitions_end_at_thirty() -> None:
    """Common practice, no source for the number; Schoenfeld et al. 2017, J Strength Cond Res 31(12):3508 (confirmed)
    finds light loads to failure as good for size, and reviews put the end near 30 repetitions."""
    answers = climbed("dumbbell-curl", ("reps",), None, 90.0, 40)
    highest = max(each.reps[1] for advice in answers for each in advice.sets)
    assert 20 <= highest <= 30
    assert value("reps.cap") == 30


def test_tempo_stays_between_half_a_second_and_three() -> None:
    """Common practice, no source, for 0.5 to 3 s a phase; Schoenfeld et al. 2015, Sports Med 45:577-585 (confirmed):
    0.5 to 8 s a repetition alike, over 10 s worse."""
    answers = climbed("dumbbell-curl", ("tempo", "reps"), (2.0, 0.0, 1.0, 0.0), 90.0)
    tempos = {each.tempo for advice in answers for each in advice.sets if each.tempo is not None}
    assert len(tempos) > 1
    for down, bottom, up, top in tempos:
        assert down is not None
        assert up is not None
        assert 0.5 <= down <= 3.0
        assert 0.5 <= up <= 3.0
        assert down + up + (bottom or 0.0) + (top or 0.0) < 10.0


@pytest.mark.parametrize(
    ("exercise", "floor"), [("dumbbell-bench-press", 120.0), ("dumbbell-row", 120.0), ("lateral-raise", 60.0)]
)
def test_rest_ends_at_its_floor(exercise: str, floor: float) -> None:
    """Common practice, no source: two minutes for compound lifts, 60 to 90 s for the others; Grgic et al. 2018, Sports
    Med 48:137-151 (confirmed): over 2 min best for the trained, 60 to 120 s enough for the untrained."""
    answers = climbed(exercise, ("rest", "reps"), None, floor + 45.0)
    rests = [each.rest_s for advice in answers for each in advice.sets if each.rest_s is not None]
    assert min(rests) < floor + 45.0
    assert min(rests) >= floor


def test_every_number_has_a_source_that_exists_and_lies_in_its_range() -> None:
    """House rule: no domain number without a source, or the plain words that there is none."""
    for row in NUMBERS.values():
        assert row.low <= row.value <= row.high, row.key
        assert row.sources
        assert all(source in SOURCES for source in row.sources), row.key


def test_nothing_called_strong_rests_on_memory_alone() -> None:
    """House rule: a value from memory may not be the only support of a promise."""
    weak = [
        row.key
        for row in NUMBERS.values()
        if row.grade == "strong" and all(SOURCES[source].read in ("memory", "none") for source in row.sources)
    ]
    assert weak == []


@pytest.mark.parametrize("exercise", sorted(EXERCISES))
def test_every_exercise_has_a_start(exercise: str) -> None:
    """Common practice, no source: whoever asks for the first time gets something to begin with."""
    aim = Aim(3, (8, 12), 2.0, None, 150.0, ("reps", "load"))
    advice = advise(Question(Lifter("kg", 75.0, "new"), exercise, aim, (), FIRST))
    assert advice.way == "first"
    assert len(advice.sets) == 3


def test_a_reset_target_is_met_more_surely_than_a_hard_one() -> None:
    """Common practice, no source: fewer repetitions at the same load are surer."""
    base = Question(
        Lifter("kg", 80.0, "some"), "barbell-row", Aim(3, (8, 12), 2.0, None, 150.0, ("reps",)),
        (Session(FIRST, (SetAct("barbell-row", Load("total", 60.0), 10, rir=2.0),) * 3),), FIRST + timedelta(days=3),
    )  # fmt: skip
    chances = [
        advise(replace(base, consider=(TargetSet(Load("total", 60.0), (low, 15), 2.0, None, 150.0),) * 3)).chance
        for low in (6, 8, 10, 12)
    ]
    assert chances == sorted(chances, reverse=True)
    assert chances[0] > chances[-1] + 0.3
