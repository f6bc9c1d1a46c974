"""Time: what is due is said once, in one commit; the scheduler only drives the tick."""

import asyncio
from collections.abc import AsyncIterator
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest

from bot.clock import every
from bot.store.tables import act, agenda
from core.model.acts import Finish
from core.model.book import Book
from core.model.outcome import AgendaChange, Button, Keep, Outcome, Reply
from tests.bot.shell import INES, MONDAY, RUTH, Shell, shell, with_people

TODAY = MONDAY.date()
HOUR = timedelta(hours=1)


@pytest.fixture
async def room(each_store: str, tmp_path: Path) -> AsyncIterator[Shell]:
    async with shell(tmp_path) as opened:
        yield await with_people(opened)


async def plan(room: Shell, *changes: AgendaChange) -> None:
    room.core.script["plan"] = Outcome(agenda=changes)
    await room.say(RUTH, "plan")


async def ring(room: Shell) -> list[str]:
    """One tick; what it made the lifter hear."""
    before = len(room.wire.texts(RUTH))
    await room.tick.once()
    await room.post.drain()
    return room.wire.texts(RUTH)[before:]


async def test_what_is_due_is_said_once_and_not_before(room: Shell) -> None:
    room.core.reminders["prompt"] = Outcome(
        replies=(Reply("Legs at 18:30.", (Button("not today", "d:1:o"),), kind="prompt"),)
    )
    await plan(room, AgendaChange("prompt", TODAY, MONDAY + HOUR))
    assert await ring(room) == []
    room.clock.at += HOUR
    assert await ring(room) == ["Legs at 18:30."]
    assert room.wire.sent[-1].buttons == (("not today", "d:1:o"),)
    assert await ring(room) == []


async def test_a_restart_says_what_became_due_meanwhile_once(tmp_path: Path) -> None:
    async with shell(tmp_path) as before:
        await with_people(before)
        await plan(before, AgendaChange("prompt", TODAY, MONDAY + HOUR))
    before.clock.at += 2 * HOUR
    for heard in (["Legs."], []):
        async with shell(tmp_path, clock=before.clock) as after:
            after.core.reminders["prompt"] = Outcome(replies=(Reply("Legs."),))
            assert await ring(after) == heard


async def test_the_same_kind_and_day_is_one_row(room: Shell) -> None:
    await plan(room, AgendaChange("prompt", TODAY, MONDAY + HOUR))
    await plan(room, AgendaChange("prompt", TODAY, MONDAY + 2 * HOUR), AgendaChange("missed", TODAY, MONDAY + HOUR))
    assert [(row.kind, row.due) for row in await room.rows(agenda)] == [
        ("prompt", MONDAY + 2 * HOUR),
        ("missed", MONDAY + HOUR),
    ]


async def test_a_cancelled_row_is_silent_until_it_is_set_again(room: Shell) -> None:
    room.core.reminders["prompt"] = Outcome(replies=(Reply("Legs."),))
    await plan(room, AgendaChange("prompt", TODAY, MONDAY))
    await plan(room, AgendaChange("prompt", TODAY, None))
    assert await ring(room) == []
    await plan(room, AgendaChange("prompt", TODAY, MONDAY))
    assert await ring(room) == ["Legs."]


async def test_what_was_said_is_not_said_again_for_the_same_day(room: Shell) -> None:
    room.core.reminders["prompt"] = Outcome(replies=(Reply("Legs."),))
    await plan(room, AgendaChange("prompt", TODAY, MONDAY))
    assert await ring(room) == ["Legs."]
    await plan(room, AgendaChange("prompt", TODAY, MONDAY))
    assert await ring(room) == []
    await plan(room, AgendaChange("prompt", TODAY + timedelta(days=1), MONDAY))
    assert await ring(room) == ["Legs."]


async def test_core_may_put_a_row_off_and_drop_one(room: Shell) -> None:
    def remind(_kind: str, on: date, _book: Book, now: datetime) -> Outcome:
        late = AgendaChange("summary", on, MONDAY + 9 * HOUR)
        return Outcome(replies=(Reply("The week."),)) if now >= MONDAY + 9 * HOUR else Outcome(agenda=(late,))

    room.core.reminders["summary"] = remind
    await plan(room, AgendaChange("summary", TODAY, MONDAY), AgendaChange("missed", TODAY, MONDAY))
    assert await ring(room) == []
    assert [(row.kind, row.state) for row in await room.rows(agenda)] == [("summary", "waiting"), ("missed", "done")]
    room.clock.at += 9 * HOUR
    assert await ring(room) == ["The week."]
    assert await ring(room) == []


async def test_a_reminder_may_close_the_session_and_tell_the_coach(room: Shell) -> None:
    room.core.reminders["recap"] = Outcome(
        replies=(Reply("Closed."), Reply("Ruth trained.", to="coach", kind="summary")), keep=(Keep(Finish(), TODAY),)
    )
    await plan(room, AgendaChange("recap", TODAY, MONDAY))
    assert await ring(room) == ["Closed."]
    assert room.wire.texts(INES) == ["Ruth trained."]
    (row,) = await room.rows(act)
    assert (row.kind, row.on, row.message) == ("finish", TODAY, None)
    await room.say(RUTH, "look")
    assert [kept.act for kept in room.core.asked[-1][1].kept] == [Finish()]


async def test_nobody_is_reminded_in_a_closed_chat(room: Shell) -> None:
    room.core.reminders["prompt"] = Outcome(replies=(Reply("Legs."),))
    await plan(room, AgendaChange("prompt", TODAY, MONDAY))
    await room.hear(room.raw(kind="gone", chat=RUTH))
    assert await ring(room) == []
    assert [row.state for row in await room.rows(agenda)] == ["done"]


async def test_one_reminders_bug_silences_no_other_and_is_given_up(room: Shell) -> None:
    room.core.reminders |= {"bad": RuntimeError("oops"), "prompt": Outcome(replies=(Reply("Legs."),))}
    await plan(room, AgendaChange("bad", TODAY, MONDAY), AgendaChange("prompt", TODAY, MONDAY))
    assert await ring(room) == ["Legs."]
    for _ in range(3):
        await room.tick.once()
    assert [(row.kind, row.state, row.attempts) for row in await room.rows(agenda)] == [
        ("bad", "dead", 3),
        ("prompt", "done", 0),
    ]


async def test_the_driver_runs_the_tick_until_its_block_ends() -> None:
    ticked: asyncio.Queue[Any] = asyncio.Queue()

    async def tick() -> None:
        ticked.put_nowait(None)

    async with asyncio.timeout(10):
        with every(1, tick):
            await ticked.get()
