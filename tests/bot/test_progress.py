"""The estimate cache: only finished days, folded once, always equal to what the acts alone give."""

from collections.abc import AsyncIterator
from dataclasses import dataclass, field, replace
from datetime import date, timedelta
from pathlib import Path

import pytest

from bot.folding import FOLDING
from bot.store import people, plans, progress
from bot.store.progress import Folding, Past
from bot.store.tables import progress as progress_table
from bot.store.tables import trained
from core.model.acts import SetAct
from core.model.book import Book, Incoming
from core.model.lifter import Lifter
from core.model.outcome import Given, Outcome, Replace
from core.model.plan import Plan, Planned, TrainingDay
from core.model.target import Aim, Target, TargetSet
from tests.bot.shell import MONDAY, RUTH, Shell, keeping, shell, squat, with_people

TODAY = MONDAY.date()
DAY = timedelta(days=1)


@dataclass
class Counting:
    """Folds as the service does, and remembers which days it was given."""

    folded: list[tuple[str, bool, tuple[date, ...]]] = field(default_factory=list)

    def fold(self, exercise: str, before: str | None, past: tuple[Past, ...]) -> str:
        self.folded.append((exercise, before is not None, tuple(one.session.on for one in past)))
        return FOLDING.fold(exercise, before, past)


@pytest.fixture
async def room(tmp_path: Path) -> AsyncIterator[Shell]:
    async with shell(tmp_path) as opened:
        yield await with_people(opened)


@pytest.fixture
def counting(room: Shell) -> Counting:
    counter = Counting()
    parts = replace(room.parts, folding=Folding(FOLDING.version, FOLDING.aim, counter.fold))
    room.intake._parts = parts
    return counter


async def train(room: Shell, days: int, *sets: SetAct) -> None:
    """The same sets on each of so many days; the clock then stands on the day after."""
    room.core.script["sets"] = keeping(*(sets or (squat(8), squat(7))))
    for _ in range(days):
        await room.say(RUTH, "sets")
        room.clock.move(days=1)


async def the_book(room: Shell) -> Book:
    await room.say(RUTH, "look")
    return room.core.asked[-1][1]


async def check(room: Shell) -> dict[str, str]:
    """The cache, after comparing it with what the acts give."""

    def both(conn: object) -> tuple[dict[str, str], dict[str, str]]:
        (ruth,) = people.by_name(conn, "Ruth")  # type: ignore[arg-type]
        held = progress.cached(conn, ruth.id, FOLDING.version)  # type: ignore[arg-type]
        return held, progress.rebuilt(conn, ruth.id, FOLDING)  # type: ignore[arg-type]

    held, fresh = await room.store.write(both)
    assert held == fresh
    return held


async def test_each_finished_day_is_folded_once_and_today_is_not(room: Shell, counting: Counting) -> None:
    await train(room, 3)
    await train(room, 1, squat(9), SetAct("dip", squat(1).load, reps=6))
    book = await the_book(room)
    on = [TODAY + n * DAY for n in range(4)]
    assert counting.folded == [
        ("back-squat", False, (on[0],)),
        ("back-squat", True, (on[1],)),
        ("back-squat", True, (on[2],)),
        ("back-squat", True, (on[3],)),
        ("dip", False, (on[3],)),
    ]
    assert set(book.progress) == {"back-squat", "dip"}
    assert await check(room) == book.progress


async def test_on_the_first_day_there_is_no_history(room: Shell, counting: Counting) -> None:
    room.core.script["sets"] = keeping(squat(8))
    await room.say(RUTH, "sets")
    book = await the_book(room)
    assert (book.progress, book.usual, counting.folded) == ({}, {}, [])


async def test_the_usual_load_is_that_of_the_last_day_without_its_warm_ups(room: Shell) -> None:
    await train(room, 1, squat(5, 100.0))
    await train(room, 1, squat(5, 20.0, warmup=True), squat(5, 60.0), squat(5, 62.5), squat(5, 90.0))
    assert (await the_book(room)).usual == {"back-squat": 62.5}


async def test_a_late_report_of_an_older_day_builds_that_exercise_again(room: Shell, counting: Counting) -> None:
    await train(room, 2)
    await the_book(room)
    counting.folded.clear()
    room.core.script["late"] = keeping(squat(12), on=TODAY)
    await room.say(RUTH, "late")
    book = await the_book(room)
    assert counting.folded == [("back-squat", False, (TODAY, TODAY + DAY))]
    assert await check(room) == book.progress


def on_the_oldest(act: SetAct | None) -> object:
    def answer(_incoming: Incoming, book: Book, _now: object) -> Outcome:
        return Outcome(replace=(Replace(book.kept[0].id, act),))

    return answer


@pytest.mark.parametrize(
    "instead", [squat(3), None, SetAct("dip", squat(1).load, reps=6)], ids=["amend", "erase", "swap"]
)
async def test_a_change_of_an_older_day_is_in_the_next_estimate(room: Shell, instead: SetAct | None) -> None:
    await train(room, 2)
    before = (await the_book(room)).progress
    room.core.script["change"] = on_the_oldest(instead)
    await room.say(RUTH, "change")
    after = (await the_book(room)).progress
    assert after != before
    assert await check(room) == after


async def test_a_change_of_today_builds_nothing_again(room: Shell, counting: Counting) -> None:
    await train(room, 2)
    room.core.script["sets"] = keeping(squat(8))
    await room.say(RUTH, "sets")
    counting.folded.clear()
    room.core.script["change"] = lambda _i, book, _n: Outcome(replace=(Replace(book.kept[-1].id, squat(3)),))
    await room.say(RUTH, "change")
    await the_book(room)
    assert counting.folded == []


async def test_an_exercise_that_no_longer_has_a_day_has_no_estimate(room: Shell) -> None:
    await train(room, 1, squat(8))
    assert set((await the_book(room)).progress) == {"back-squat"}
    room.core.script["change"] = on_the_oldest(None)
    await room.say(RUTH, "change")
    assert (await the_book(room)).progress == {}
    assert await room.rows(progress_table) == []


async def test_an_edit_of_yesterday_sees_yesterday_as_its_day(room: Shell) -> None:
    """Yesterday's sets must not be both history and today's."""
    room.core.script |= {"sets": keeping(squat(8)), "sets!": keeping(squat(9), on=TODAY + DAY)}
    await train(room, 1)
    await room.say(RUTH, "sets", message_id=41)
    room.clock.move(days=1)
    full = (await the_book(room)).progress["back-squat"]
    await room.say(RUTH, "sets!", message_id=41, edit=True)
    edited = room.core.asked[-1][1]
    assert edited.progress["back-squat"] != full
    after = (await the_book(room)).progress
    assert after["back-squat"] not in (full, edited.progress["back-squat"])
    assert await check(room) == after


async def test_a_day_that_goes_back_takes_todays_sets_out_of_the_past(room: Shell) -> None:
    """A journey west across the date line makes today yesterday again."""
    await train(room, 2)
    assert len((await the_book(room)).kept) == 4
    room.clock.move(days=-1)
    book = await the_book(room)
    through = [kept.on for kept in book.kept]
    assert max(through) == room.clock().date()
    assert await check(room) == book.progress
    room.clock.move(days=1)
    book = await the_book(room)
    assert max(kept.on for kept in book.kept) == TODAY + DAY
    assert await check(room) == book.progress


async def test_rebuilding_uses_the_body_and_the_aim_of_the_day(room: Shell) -> None:
    """A lifter who has grown heavier, under a new plan, was not heavier then."""
    await train(room, 1, SetAct("pull-up", squat(1).load, reps=8))
    room.core.script["82 kg"] = Outcome(lifter=Lifter(bodyweight_kg=82.0))
    await room.say(RUTH, "82 kg")
    aim = Aim(5, (3, 5), rir=1.0)
    week = Plan((TrainingDay(0, MONDAY.time(), "Pull", (Planned("pull-up", aim),)),))
    await room.store.write(lambda conn: plans.set_weekly(conn, people.by_name(conn, "Ruth")[0].id, week))
    await train(room, 1, SetAct("pull-up", squat(1).load, reps=9))
    await the_book(room)
    assert set(await check(room)) == {"pull-up"}
    first, second = await room.rows(trained)
    assert ("82" in first.lifter, "82" in second.lifter) == (False, True)
    assert ('"sets":5' in first.aim, '"sets":5' in second.aim) == (False, True)


@pytest.mark.parametrize("taken_back", [False, True])
async def test_the_target_in_force_was_the_last_of_the_day(room: Shell, counting: Counting, taken_back: bool) -> None:
    """A first load is settled by the first set, and an ache renews what is asked; what was taken back asks nothing."""
    seen: list[Past] = []

    def fold(exercise: str, before: str | None, past: tuple[Past, ...]) -> str:
        seen.extend(past)
        return FOLDING.fold(exercise, before, past)

    room.intake._parts = replace(room.parts, folding=Folding(FOLDING.version, FOLDING.aim, fold))
    first, second = (Target("reps", (TargetSet(squat(1).load, (reps, reps)),)) for reps in (8, 9))
    for number, target in enumerate((first, second, None) if taken_back else (first, second)):
        room.core.script[str(number)] = Outcome(given=(Given("back-squat", TODAY, target),))
        await room.say(RUTH, str(number))
    await train(room, 1)
    await the_book(room)
    assert [past.session.target for past in seen] == [None if taken_back else second]


async def test_estimates_of_another_version_are_built_again(room: Shell, counting: Counting) -> None:
    await train(room, 2)
    await the_book(room)
    counting.folded.clear()
    newer = Folding("another", FOLDING.aim, counting.fold)
    room.intake._parts = replace(room.parts, folding=newer)
    await the_book(room)
    assert counting.folded == [("back-squat", False, (TODAY, TODAY + DAY))]
    assert {row.made_by for row in await room.rows(progress_table)} == {"another"}
