"""Undo takes back the whole of the last message: what it kept goes, what it had changed or erased stands as before."""

from datetime import timedelta

import pytest

from core.model.acts import SetAct
from tests.core.flow_world import World, text
from tests.core.test_checkin import says

THREE = ("goblet squat 24 kg x 12", "11", "10")


def begun(*messages: str) -> tuple[World, list[SetAct]]:
    world = World()
    for words in messages or THREE:
        says(world, words)
    return world, world.sets()


@pytest.mark.parametrize("change", ["make that 9", "scrap the last", "scrap set 1", "set 2 was 8", "delete today"])
def test_a_change_is_taken_back_whole(change: str) -> None:
    world, before = begun()
    says(world, change)
    if world.book.pending is not None:
        says(world, "yes")
    assert world.sets() != before
    outcome = says(world, "undo")
    assert world.sets() == before
    assert "as before" in text(outcome).casefold()


def test_undo_after_undo_goes_one_message_further_back_and_never_forward() -> None:
    world, before = begun()
    says(world, "make that 9")
    says(world, "undo")
    says(world, "undo")
    assert world.sets() == before[:2]
    says(world, "undo")
    says(world, "undo")
    assert world.sets() == []
    assert text(says(world, "undo")) == "Nothing from the last ten minutes to take back."


def test_a_change_of_a_change_goes_back_one_step() -> None:
    world, _ = begun()
    says(world, "make that 9")
    says(world, "make that 8")
    says(world, "undo")
    assert [one.reps for one in world.sets()] == [12, 11, 9]


def test_a_change_of_an_old_set_can_be_taken_back_but_not_after_ten_minutes() -> None:
    world, before = begun()
    world.now += timedelta(minutes=30)
    says(world, "make that 9")
    world.now += timedelta(minutes=9)
    says(world, "undo")
    assert world.sets() == before
    says(world, "make that 9")
    changed = world.sets()
    world.now += timedelta(minutes=11)
    says(world, "undo")
    assert world.sets() == changed


def test_an_ache_told_before_stands_again() -> None:
    world, _ = begun("goblet squat 24 kg x 12", "left knee 2/10", "left knee 6/10")
    assert [ache.level for ache in world.book.lifter.aches] == [6]
    says(world, "undo")
    assert [ache.level for ache in world.book.lifter.aches] == [2]


def test_the_same_sent_twice_is_seen_kept_and_taken_out_by_undo() -> None:
    world, _ = begun("goblet squat 24 kg x 12")
    world.now += timedelta(seconds=4)
    assert "sent twice" in text(says(world, "goblet squat 24 kg x 12"))
    says(world, "undo")
    assert [one.reps for one in world.sets()] == [12]
    world.now += timedelta(minutes=2)
    assert "sent twice" not in text(says(world, "goblet squat 24 kg x 12"))
    world.now += timedelta(seconds=4)
    assert "sent twice" not in text(says(world, "goblet squat 24 kg x 11"))
