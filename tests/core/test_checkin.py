"""The page itself: any message is answered, the same message the same way, and nothing that was said is dropped."""

from datetime import UTC, datetime

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.checkin import answer
from core.flow.talk import words_left
from core.model.acts import SetAct
from core.model.book import Incoming
from core.model.outcome import Outcome
from core.model.plan import Plan
from core.model.reading import Reading
from tests.core.flow_world import MONDAY, World, squat, text


def says(world: World, words: str, *, edit: int | None = None) -> Outcome:
    world.number += edit is None
    incoming = Incoming(edit or world.number, words, edit=edit is not None)
    if edit is not None:
        world.keeper.reopen(edit)
    outcome = answer(incoming, world.book, world.now)
    world.keeper.apply(outcome, incoming, world.now)
    return outcome


def test_a_typed_set_is_kept_and_answered() -> None:
    world = World()
    outcome = says(world, "goblet squat 24 kg x 12, 2 left")
    assert [(one.exercise, one.reps, one.rir) for one in world.sets()] == [("goblet-squat", 12, 2.0)]
    assert text(outcome).startswith("Goblet squat 24 kg: 12 reps, 2 in reserve.\nRest 2 min, then set 2 of 3: ")


@settings(max_examples=150, deadline=None)
@given(st.text(max_size=200))
def test_any_text_is_answered_in_a_readable_way(words: str) -> None:
    outcome = answer(Incoming(1, words), World().book, datetime(2026, 3, 2, 17, 40, tzinfo=UTC))
    assert 0 < len(text(outcome)) < 1200
    assert "{" not in text(outcome) or "{" in words
    assert all(len(button.data.encode()) <= 64 for reply in outcome.replies for button in reply.buttons)


_PIECES = """60x8|goblet|squat|24kg|12|same|left knee 3/10|done|no|yes|the first|skip|what's next?|make that 9|undo
10x10|yesterday|why|,|as planned|swap squats""".replace("\n", "|").split("|")


@settings(max_examples=40, deadline=None)
@given(st.lists(st.lists(st.sampled_from(_PIECES), min_size=1, max_size=4).map(" ".join), min_size=1, max_size=7))
def test_any_conversation_holds_and_goes_the_same_way_twice(messages: list[str]) -> None:
    def held() -> tuple[list[str], list[SetAct]]:
        world = World()
        return [text(says(world, words)) for words in messages], world.sets()

    first = held()
    assert all(first[0])
    assert held() == first


@pytest.mark.parametrize("noise", ["x" * 4096, "1 " * 2048, "💪" * 4096, "\n" * 4096, "жим " * 1024, "a,b;c " * 680])
def test_four_thousand_characters_of_noise_get_one_clear_answer(noise: str) -> None:
    outcome = answer(Incoming(1, noise), World().book, World().now)
    assert 0 < len(text(outcome)) < 400


def test_an_edit_before_any_record_is_read_like_a_message() -> None:
    world = World()
    says(world, "hello there")
    outcome = says(world, "goblet squat 24 kg x 12", edit=1)
    assert [one.reps for one in world.sets()] == [12]
    assert "Goblet squat 24 kg: 12 reps." in text(outcome)


def test_an_edit_that_leaves_nothing_says_what_is_gone() -> None:
    world = World()
    says(world, "goblet squat 24 kg x 12")
    outcome = says(world, "sorry, wrong chat", edit=1)
    assert world.sets() == []
    assert "Taken out: goblet squat 24 kg for 12 reps." in text(outcome)
    assert outcome.notes == ("sorry, wrong chat",)


def test_an_answer_belongs_to_the_message_that_raised_the_question() -> None:
    world = World(plan=Plan())
    says(world, "leg press 3x12")
    outcome = says(world, "100 kg")
    assert {keep.message for keep in outcome.keep} == {1}
    says(world, "leg press 3x10 100kg", edit=1)
    assert [one.reps for one in world.sets()] == [10, 10, 10]


def test_undo_takes_back_an_ache_and_what_it_eased_but_no_alarm() -> None:
    world = World()
    says(world, "goblet squat 24 kg x 12")
    before = dict(world.book.targets)
    says(world, "left knee 5/10")
    assert dict(world.book.targets) != before
    says(world, "undo")
    assert world.book.lifter.aches == ()
    assert dict(world.book.targets) == before
    says(world, "my chest feels tight, strange pressure")
    says(world, "undo")
    assert world.book.hold is not None
    assert len(world.sets()) == 1


def test_a_question_replaced_by_another_is_kept_as_a_note() -> None:
    world = World(plan=Plan())
    says(world, "leg press 3x12")
    outcome = says(world, "80x8")
    assert outcome.pending is not None
    assert outcome.notes == ("leg press 3x12",)
    assert "Kept as a note for Ines" in text(outcome)


def test_a_question_of_yesterday_is_not_answered_by_todays_number() -> None:
    world = World(plan=Plan())
    says(world, "leg press 3x12")
    world.now = datetime(2026, 3, 4, 17, tzinfo=UTC)
    says(world, "100 kg")
    assert world.sets(MONDAY) == []


def test_what_is_not_understood_beside_sets_is_kept_as_said() -> None:
    reading = Reading((squat(12, span=(0, 19)),), leftovers=((22, 26), (50, 55)))
    words = "goblet squat 24kg 12, tell ines the gym smells of paint"
    assert words_left(words, reading) == ("tell ines the gym smells of paint",)
    assert words_left("goblet zorb squat 24kg 12", Reading((squat(12, span=(0, 25)),), leftovers=((7, 11),))) == ()
    assert words_left("22,5 kg x 8; zzz 1.5", Reading((squat(8, span=(0, 11)),), leftovers=((13, 16),))) == ("zzz 1.5",)
    assert words_left("", Reading()) == ()


def test_the_page_is_a_page() -> None:
    from pathlib import Path

    assert len(Path("core/checkin.py").read_text().splitlines()) <= 120
