"""What holds of the reader for every message, whatever it says."""

from dataclasses import replace
from datetime import date

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.evidence.exercises import EXERCISES
from core.model.acts import Act, SetAct
from core.model.quantities import POUND_KG, Load
from core.model.reading import PlanLine, Reading, Setting
from core.read.loads import is_barbell
from core.read.reader import explain, read

SETTINGS = st.sampled_from(
    (
        Setting(),
        Setting(unit="lb", now_on="barbell-bench-press"),
        Setting(now_on="plank", last=SetAct("plank", Load("body", 0.0), hold_s=40)),
        Setting(
            last=SetAct("pull-up", Load("added", 10.0), 7), plan=(PlanLine("pull-up", 3, (5, 8), Load("added", 10.0)),)
        ),
        Setting(now_on="goblet-squat", today=date(2026, 3, 4), plan=(PlanLine("goblet-squat", 3, (8, 12)),)),
    )
)
WORDS = st.sampled_from(
    (
        "bench",
        "squat",
        "60x8",
        "8,8,7",
        "60kg",
        "rpe",
        "8",
        "@",
        "3x8",
        "rest",
        "2 min",
        "tempo",
        "3-1-1-0",
        "left",
        "each",
        "leg",
        "same",
        "again",
        "+2.5",
        "no",
        "pain",
        "chest",
        "knee",
        "3/10",
        "tomorrow",
        "did",
        "not",
        "?",
        ",",
        "\n",
        ".",
        "then",
        "drop",
        "to",
        "warm up",
        "failed",
        "a plate a side",
        "bw",
        "green band",
        "skip",
        "instead of",
        "done",
        "set 2",
        "was",
        "make that",
        "yesterday",
        "in the tank",
        "2",
        "1:10",
        "40s",
        "each side",
        "✓",
        "[x]",
        "sorry",
        "numb",
        "heart",
        "racing",
        "what's next",
    )
)
MESSAGES = st.one_of(
    st.text(max_size=200),
    st.lists(WORDS, max_size=25).map(" ".join),
    st.text(alphabet="0123456789x,./-+@: \nkgsl", max_size=120),
)
BARBELL = st.sampled_from(sorted(one for one in EXERCISES if is_barbell(one)))
NAMED = st.sampled_from(sorted(EXERCISES))
LOADS = st.integers(min_value=8, max_value=80).map(lambda steps: steps * 2.5)
COUNTS = st.integers(min_value=1, max_value=15)


def bare(reading: Reading) -> tuple[tuple[Act, ...], str | None]:
    """A reading without its places in the text."""
    return tuple(replace(act, span=None) for act in reading.acts), reading.ask.about if reading.ask else None


@settings(deadline=None, max_examples=300)
@given(MESSAGES, SETTINGS)
def test_any_text_reads_and_every_act_says_where_it_stood(text: str, setting: Setting) -> None:
    reading = read(text, setting)
    for act in reading.acts:
        assert act.span is not None
        assert 0 <= act.span[0] < act.span[1] <= len(text)
    assert all(0 <= first < last <= len(text) for first, last in reading.leftovers)
    assert read(text, setting) == reading


@settings(deadline=None, max_examples=150)
@given(st.lists(WORDS, max_size=12).map(" ".join), SETTINGS)
def test_sets_are_of_known_exercises_with_a_count_and_a_load(text: str, setting: Setting) -> None:
    for act in read(text, setting).acts:
        if isinstance(act, SetAct):
            assert act.exercise in EXERCISES
            assert act.load is not None
            assert (act.reps is not None) + (act.hold_s is not None) + (act.distance_m is not None) == 1
            assert act.rir is None or 0 <= act.rir <= 10
            assert not (act.drop and act.rest_s is not None)


def plainly(exercise: str, load: float, reps: int, sets: int) -> list[str]:
    """Several ways to say the same sets."""
    name = EXERCISES[exercise].name
    return [
        f"{name} {load:g}x{reps}" + (f"x{sets}" if sets > 1 else ""),
        f"{name} {load:g}kg " + " ".join([str(reps)] * sets),
        f"{name}: {sets} sets of {reps} at {load:g} kg",
        f"{sets}x{reps} {name} with {load:g}kg",
        f"{name} {load:g} kg for {reps}" + (f", {sets} sets" if sets > 1 else ""),
        "\n".join([f"{name}", *[f"{load:g}x{reps}"] * sets]),
    ]


@settings(deadline=None, max_examples=100)
@given(BARBELL, LOADS, COUNTS, st.integers(min_value=1, max_value=5), st.integers(min_value=0, max_value=5))
def test_every_way_of_saying_sets_reads_the_same(exercise: str, load: float, reps: int, sets: int, way: int) -> None:
    text = plainly(exercise, load, reps, sets)[way]
    acts, about = bare(read(text, Setting()))
    assert about is None, text
    assert acts == (SetAct(exercise, Load("total", load), reps),) * sets, text


@pytest.mark.parametrize("beside", [" please", " 💪", ".", "\n", " 🙏🏽", "  "])
@settings(deadline=None, max_examples=40)
@given(BARBELL, LOADS, COUNTS, st.integers(min_value=0, max_value=4))
def test_politeness_and_pictures_change_nothing(beside: str, exercise: str, load: float, reps: int, way: int) -> None:
    text = plainly(exercise, load, reps, 1)[way]
    assert bare(read(text + beside, Setting())) == bare(read(text, Setting())), text


@settings(deadline=None, max_examples=60)
@given(BARBELL, st.integers(min_value=9, max_value=90).map(lambda steps: steps * 5), COUNTS)
def test_pounds_said_and_pounds_meant_agree(exercise: str, pounds: int, reps: int) -> None:
    name = EXERCISES[exercise].name
    said = bare(read(f"{name} {pounds}lb x {reps}", Setting(unit="kg")))
    meant = bare(read(f"{name} {pounds} x {reps}", Setting(unit="lb")))
    assert said == meant
    [act] = said[0]
    assert isinstance(act, SetAct)
    assert act.load is not None
    assert act.load.kg == pytest.approx(pounds * POUND_KG)


@given(NAMED)
@settings(deadline=None, max_examples=130)
def test_the_catalogues_own_names_are_read(exercise: str) -> None:
    row = EXERCISES[exercise]
    count = "30 sec" if row.pattern in ("hold", "carry") else "8"
    load = " 20kg x" if row.load_kind in ("total", "per_hand") else ""
    reading = read(f"{row.name}{load} {count}", Setting())
    assert [act.exercise for act in reading.acts if isinstance(act, SetAct)] == [exercise]


@settings(deadline=None, max_examples=60)
@given(BARBELL, LOADS, COUNTS, st.sampled_from((6, 7, 7.5, 8, 8.5, 9, 10)), st.sampled_from((30, 60, 90, 120, 180)))
def test_what_is_said_beside_a_set_is_kept_with_it(
    exercise: str, load: float, reps: int, effort: float, rest: int
) -> None:
    text = f"{EXERCISES[exercise].name} {load:g}x{reps} rpe {effort:g} rest {rest}s tempo 3-1-1-0"
    [act] = bare(read(text, Setting()))[0]
    assert act == SetAct(exercise, Load("total", load), reps, rir=10 - effort, rest_s=rest, tempo=(3, 1, 1, 0))


@settings(deadline=None, max_examples=60)
@given(
    st.sampled_from(("chest pain", "felt faint", "my left hand went numb", "my pee is brown")), BARBELL, LOADS, COUNTS
)
def test_a_symptom_is_never_lost_beside_sets(symptom: str, exercise: str, load: float, reps: int) -> None:
    alone = bare(read(symptom, Setting()))[0]
    assert alone
    both = bare(read(f"{EXERCISES[exercise].name} {load:g}x{reps}. {symptom}", Setting()))[0]
    assert set(alone) <= set(both)
    assert SetAct(exercise, Load("total", load), reps) in both


def test_a_reading_can_be_explained() -> None:
    told = explain("bench 60x8 rpe 8", Setting())
    assert told.reading == read("bench 60x8 rpe 8", Setting())
    assert [text for text, _ in told.lexemes][:2] == ["bench", "60"]
    assert told.stretches[0][1] == "barbell-bench-press"
