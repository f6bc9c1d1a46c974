"""The clock that can be put forward: where it stops on the way, that it never goes back, and that it is kept."""

from collections.abc import AsyncIterator
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

import pytest

from bot.page_clock import Ahead, Jumps
from bot.store import agenda, people
from core.model.outcome import AgendaChange
from tests.bot.shell import MONDAY, Shell, shell, with_people

RUTH = "Ruth"


@pytest.fixture
async def room(tmp_path: Path) -> AsyncIterator[Shell]:
    async with shell(tmp_path) as opened:
        yield await with_people(opened)


async def due(room: Shell, *moments: datetime, kind: str = "prompt") -> int:
    who = (await room.store.read(lambda conn: people.by_name(conn, RUTH)))[0].id
    for moment in moments:
        change = AgendaChange(kind, moment.date(), moment)
        await room.store.write(lambda conn, change=change: agenda.change(conn, who, change))  # type: ignore[misc]
    return who


async def jump(room: Shell, where: str, zone: str = "UTC", who: int | None = None) -> tuple[list[datetime], Ahead]:
    """Where it stops on the way there."""
    clock, seen = Ahead(room.clock), list[datetime]()
    await clock.load(room.store)

    async def look() -> None:
        seen.append(clock())

    await Jumps(room.store, clock, look).to(where, zone, who)
    return seen, clock


@pytest.mark.parametrize(
    ("where", "zone", "there"),
    [
        ("hour", "UTC", MONDAY + timedelta(hours=1)),
        ("tomorrow", "Europe/Lisbon", datetime(2026, 3, 3, 8, 0, tzinfo=UTC)),
        ("tomorrow", "Asia/Tokyo", datetime(2026, 3, 3, 23, 0, tzinfo=UTC)),
        ("sunday", "Europe/Lisbon", datetime(2026, 3, 8, 20, 0, tzinfo=UTC)),
        ("sunday", "America/Halifax", datetime(2026, 3, 8, 23, 0, tzinfo=UTC)),
    ],
)
async def test_it_goes_where_it_is_sent_in_that_zone(room: Shell, where: str, zone: str, there: datetime) -> None:
    seen, clock = await jump(room, where, zone)
    assert seen[-1] == clock() == there


async def test_a_sunday_evening_that_is_over_is_followed_by_the_next(room: Shell) -> None:
    await jump(room, "sunday")
    seen, _ = await jump(room, "sunday")
    assert seen[-1] == datetime(2026, 3, 15, 20, 0, tzinfo=UTC)


async def test_it_stops_at_all_that_is_due_on_the_way(room: Shell) -> None:
    stops = [MONDAY + timedelta(days=n, minutes=7) for n in (1, 2, 3)]
    await due(room, *stops, MONDAY + timedelta(days=30))
    seen, _ = await jump(room, "sunday")
    assert seen == [*stops, datetime(2026, 3, 8, 20, 0, tzinfo=UTC)]


async def test_the_next_prompt_is_that_lifters(room: Shell) -> None:
    who = await due(room, MONDAY + timedelta(hours=3))
    assert (await jump(room, "prompt", who=who + 1))[0] == []
    seen, _ = await jump(room, "prompt", who=who)
    assert seen == [MONDAY + timedelta(hours=3)]
    assert (await jump(room, "prompt", who=who))[0] == []


async def test_it_is_kept_and_runs_on_with_the_wall_clock(room: Shell) -> None:
    await jump(room, "tomorrow")
    again = Ahead(room.clock)
    await again.load(room.store)
    before = again()
    assert before.date() == date(2026, 3, 3)
    room.clock.move(minutes=5)
    assert again() - before == timedelta(minutes=5)
    await again.put(room.store, MONDAY)
    assert again() - before == timedelta(minutes=5)
