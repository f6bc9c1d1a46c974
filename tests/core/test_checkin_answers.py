"""Typed and pressed answers to an open question: chosen by label, by place, or completed by a number or a name."""

from datetime import UTC, datetime

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.flow.answers import Question, pressed, restated, typed
from core.flow.phrases import command_as_sentence, phrase_of, shape_of
from core.model.acts import Act, SetAct, Skip, Swap
from core.model.book import Pending
from core.model.quantities import BODY, Load
from core.model.reading import Ask, Option, Reading

NOW = datetime(2026, 3, 2, 18, tzinfo=UTC)
BENCH = "barbell-bench-press"


def bench(kg: float | None, reps: int | None) -> SetAct:
    return SetAct(BENCH, None if kg is None else Load("total", kg), reps)


def never(text: str) -> Reading:
    raise AssertionError(f"the reader was asked about {text!r}")


ONE_OR_TEN = Ask(
    "numbers",
    (
        Option("one set, 10 kg for 10", (bench(10.0, 10),)),
        Option("ten sets of 10", (bench(60.0, 10),) * 10),
    ),
)
LOAD = Ask("load", (Option("60 kg", (bench(60.0, 8),)), Option("80 kg", (bench(80.0, 8),))))
REPS = Ask("reps", (Option("8 reps", (bench(60.0, 8),)), Option("10 reps", (bench(60.0, 10),))))
ROW = Ask(
    "exercise",
    (
        Option("barbell row", (SetAct("barbell-row", Load("total", 50.0), 10),)),
        Option("seated cable row", (SetAct("seated-cable-row", Load("total", 50.0), 10),)),
    ),
)
YES_NO = Ask("meaning", (Option("yes", (bench(1.0, 1),)), Option("no", ())))


def answer(ask: Ask, text: str, unit: str = "kg", said: str = "") -> tuple[Act, ...] | None:
    pending = Pending(ask, 3, NOW, "?", said)
    return typed(Question(pending, unit, never if not said else reader), text)  # type: ignore[arg-type]


def reader(text: str) -> Reading:
    """Stands in for the reader: knows three texts."""
    known = {
        "leg press 3x12 80 kg": Reading((SetAct("leg-press", Load("total", 80.0), 12),) * 3),
        "bench 60 x 8": Reading((bench(60.0, 8),)),
        "skip front squat": Reading((Skip("front-squat"),)),
    }
    return known.get(text, Reading(leftovers=((0, len(text)),)))


@pytest.mark.parametrize(
    ("ask", "text", "index"),
    [
        (ONE_OR_TEN, "one set, 10 kg for 10", 0),
        (ONE_OR_TEN, "Ten sets of 10!", 1),
        (ONE_OR_TEN, "ten set of 10", 1),
        (ONE_OR_TEN, "1", 0),
        (ONE_OR_TEN, "2.", 1),
        (ONE_OR_TEN, "the first", 0),
        (ONE_OR_TEN, "second one", 1),
        (ONE_OR_TEN, "option 2", 1),
        (ONE_OR_TEN, "the latter", 1),
        (ROW, "Seated cable row", 1),
        (ROW, "seated cable rwo", 1),
        (ROW, "cable", 1),
        (LOAD, "80 kg", 1),
        (LOAD, "the second", 1),
        (YES_NO, "yep", 0),
        (YES_NO, "No.", 1),
        (YES_NO, "better not", 1),
    ],
)
def test_an_answer_is_chosen_by_its_words_or_its_place(ask: Ask, text: str, index: int) -> None:
    assert answer(ask, text) == ask.options[index].acts


@pytest.mark.parametrize(
    ("text", "load"),
    [
        ("70", Load("total", 70.0)),
        ("70 kilos", Load("total", 70.0)),
        ("62,5kg", Load("total", 62.5)),
        ("it was 62.5", Load("total", 62.5)),
        ("135 lbs", Load("total", 135 * 0.45359237)),
        ("30 each", Load("per_hand", 30.0)),
        ("bodyweight", BODY),
    ],
)
def test_a_load_completes_the_sets(text: str, load: Load) -> None:
    acts = answer(LOAD, text)
    assert acts is not None
    (act,) = acts
    assert isinstance(act, SetAct)
    assert act.reps == 8
    assert act.load is not None
    assert act.load.kind == load.kind
    assert act.load.kg == pytest.approx(load.kg)


def test_a_bare_load_is_in_the_lifters_unit() -> None:
    (act,) = answer(LOAD, "135", unit="lb") or ()
    assert isinstance(act, SetAct)
    assert act.load == Load("total", 135 * 0.45359237)


@pytest.mark.parametrize("text", ["9", "9 reps", "did 9", "x9"])
def test_a_count_completes_the_sets(text: str) -> None:
    assert answer(REPS, text) == (bench(60.0, 9),)


def test_one_and_two_are_counts_where_repetitions_are_asked() -> None:
    assert answer(REPS, "2") == (bench(60.0, 2),)
    assert answer(LOAD, "2") == (bench(2.0, 8),)


def test_an_exercise_that_was_not_offered_can_be_named() -> None:
    acts = answer(ROW, "front squat", said="row 50x10")
    assert acts == (SetAct("front-squat", Load("total", 50.0), 10),)


def test_a_replacement_that_was_not_offered_can_be_named() -> None:
    offered = Ask("exercise", (Option("leg press 80 kg", (Swap("goblet-squat", "leg-press"),)),))
    assert answer(offered, "front squat", said="swap squats") == (Swap("goblet-squat", "front-squat"),)
    assert answer(offered, "leg press") == (Swap("goblet-squat", "leg-press"),)


def test_without_offers_the_answer_completes_the_words_that_raised_the_question() -> None:
    assert answer(Ask("load"), "80 kg", said="leg press 3x12") == (SetAct("leg-press", Load("total", 80.0), 12),) * 3
    assert answer(Ask("reps"), "8", said="bench 60") == (bench(60.0, 8),)


@pytest.mark.parametrize("ask", [ONE_OR_TEN, LOAD, REPS, YES_NO, Ask("load"), Ask("reps")])
@pytest.mark.parametrize("text", ["goblet 24 x 12", "what's next?", "left knee 3/10", "💪", "", "60x8 65x6"])
def test_what_is_no_answer_is_left_alone(ask: Ask, text: str) -> None:
    assert answer(ask, text) is None


@given(st.text(max_size=40))
def test_any_text_is_an_answer_or_none(text: str) -> None:
    for ask in (ONE_OR_TEN, LOAD, REPS, ROW, Ask("load")):
        acts = typed(Question(Pending(ask, 3, NOW, "?", "bench"), "kg", reader), text)
        assert acts is None or isinstance(acts, tuple)


def test_a_button_works_while_its_question_is_open() -> None:
    pending = Pending(ONE_OR_TEN, 3, NOW, "?")
    assert pressed(pending, 3, 1) == ONE_OR_TEN.options[1].acts
    assert pressed(pending, 2, 1) is None
    assert pressed(pending, 3, 2) is None
    assert pressed(None, 3, 0) is None


def test_the_same_in_other_words_is_the_answer() -> None:
    pending = Pending(ONE_OR_TEN, 3, NOW, "?")
    assert restated(pending, Reading((SetAct(BENCH, Load("total", 10.0), 10, rir=2.0),)))
    assert not restated(pending, Reading((bench(12.0, 10),)))
    assert not restated(pending, Reading())


# Everyday words


@pytest.mark.parametrize(
    ("text", "phrase"),
    [
        ("/start", "start"),
        ("Help!", "help"),
        ("?", "help"),
        ("why?", "why"),
        ("But why?", "why"),
        ("UNDO", "undo"),
        ("where am I?", "where"),
        ("thanks!", "thanks"),
        ("it's fine now", "well_again"),
        ("I’m fine now.", "well_again"),
        ("help me lift 60x8", None),
        ("why 60?", None),
        ("", None),
    ],
)
def test_everyday_phrases_are_whole_messages(text: str, phrase: str | None) -> None:
    assert phrase_of(text) == phrase


@pytest.mark.parametrize(
    ("text", "shape"),
    [
        ("  \n", "empty"),
        ("💪🔥", "emoji"),
        ("...", "marks"),
        ("жим 60", "script"),
        ("深蹲", "script"),
        ("a" * 500, "noise"),
        ("12 34 56", "noise"),
        ("moonwalks", "words"),
    ],
)
def test_what_cannot_be_read_has_a_shape(text: str, shape: str) -> None:
    assert shape_of(text) == shape


def test_menu_words_are_sentences() -> None:
    assert command_as_sentence("/next") == "what's next?"
    assert command_as_sentence("/next@rung_bot") == "what's next?"
    assert command_as_sentence("/skip curls") == "skipping curls today"
    assert command_as_sentence("swap squats") == "what can I do instead of squats?"
    assert command_as_sentence("swap squats for leg press") == "swap squats for leg press"
    assert command_as_sentence("60x8") == "60x8"
