"""The way out: order, pace, and every kind of ending; the clock is moved by hand and nothing sleeps."""

import asyncio
from collections.abc import AsyncIterator
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from bot.outbox import PROMPT_LASTS, REMEMBERED, RESEND_AFTER, TELEGRAM_PACE, Allowance, Buckets, Outbox, Pace
from bot.ports import Delivery, Later, Moved, Parcel, Refused, Sent, Uncertain
from bot.store import outbox, people
from bot.store.outbox import Kind, Letter, Queued, Reach
from bot.store.tables import chat, halt
from bot.store.tables import outbox as outbox_table
from tests.bot.shell import CHANNEL, GROUP, INES, MONDAY, RUTH, TOMAS, Shell, shell, with_people


@pytest.fixture
async def room(each_store: str, tmp_path: Path) -> AsyncIterator[Shell]:
    async with shell(tmp_path) as opened:
        await with_people(opened)
        await opened.store.write(lambda conn: people.add_chat(conn, CHANNEL, GROUP, group=None))
        yield opened


async def queue(room: Shell, user: int, *texts: str, kind: Kind = "reply") -> None:
    def put(conn: object) -> None:
        for text in texts:
            to = people.chat_of(conn, CHANNEL, user)  # type: ignore[arg-type]
            assert to is not None
            outbox.queue(conn, Letter(text, kind=kind, chat=to.id), room.clock())  # type: ignore[arg-type]

    await room.store.write(put)


async def states(room: Shell) -> list[str]:
    return [row.state for row in await room.rows(outbox_table)]


async def test_a_chat_gets_its_messages_in_order(room: Shell) -> None:
    await queue(room, RUTH, "1", "2", "3")
    assert await room.post.drain() is None
    assert room.wire.texts(RUTH) == ["1", "2", "3"]
    assert [(row.state, row.message_id) for row in await room.rows(outbox_table)] == [
        ("sent", 1),
        ("sent", 2),
        ("sent", 3),
    ]


async def test_the_more_urgent_kind_goes_first_across_chats(tmp_path: Path) -> None:
    one_by_one = Pace(overall=Allowance(timedelta(seconds=1), 1))
    async with shell(tmp_path, pace=one_by_one) as room:
        await with_people(room)
        for user, kind in ((INES, "summary"), (RUTH, "prompt"), (TOMAS, "reply")):
            await queue(room, user, kind, kind=kind)  # type: ignore[arg-type]
        while (until := await room.post.drain()) is not None:
            assert until == room.clock() + timedelta(seconds=1)
            room.clock.at = until
    assert [parcel.text for parcel in room.wire.sent] == ["reply", "prompt", "summary"]


@pytest.mark.parametrize(
    ("pace", "user", "at_once", "then_every"),
    [
        (Pace(person=Allowance(timedelta(seconds=1), 3)), RUTH, 3, timedelta(seconds=1)),
        (Pace(overall=Allowance(timedelta(seconds=1), 2)), RUTH, 2, timedelta(seconds=1)),
        (
            Pace(group=Allowance(timedelta(seconds=3), 1), person=Allowance(timedelta(hours=1), 1)),
            GROUP,
            1,
            timedelta(seconds=3),
        ),
    ],
)
async def test_the_pace_is_kept(tmp_path: Path, pace: Pace, user: int, at_once: int, then_every: timedelta) -> None:
    async with shell(tmp_path, pace=pace) as room:
        await with_people(room)
        await room.store.write(lambda conn: people.add_chat(conn, CHANNEL, GROUP))
        await queue(room, user, *"abcde")
        went = []
        until = await room.post.drain()
        while until is not None:
            went.append(len(room.wire.sent))
            assert until == room.clock() + then_every
            room.clock.at = until
            until = await room.post.drain()
    assert went == list(range(at_once, 5))


async def times_of(room: Shell) -> list[datetime]:
    """Send all that waits, moving the clock as told; when each message went."""
    times: list[datetime] = []
    until: datetime | None = room.clock()
    while until is not None:
        room.clock.at = until
        until = await room.post.drain()
        times += [room.clock()] * (len(room.wire.sent) - len(times))
    return times


async def test_telegrams_limit_for_a_group_is_kept_over_any_minute(tmp_path: Path) -> None:
    """20 a minute, as the Bot API's FAQ has it."""
    async with shell(tmp_path, pace=TELEGRAM_PACE) as room:
        await room.store.write(lambda conn: people.add_chat(conn, CHANNEL, GROUP))
        await queue(room, GROUP, *(str(n) for n in range(45)))
        times = await times_of(room)
    assert len(times) == 45
    assert all(later - sooner >= timedelta(minutes=1) for sooner, later in zip(times, times[20:], strict=False))


async def test_telegrams_limit_for_a_bot_is_kept_over_any_second(tmp_path: Path) -> None:
    """30 a second, as the Bot API's FAQ has it."""
    async with shell(tmp_path, pace=TELEGRAM_PACE) as room:
        for n in range(50):
            await room.store.write(lambda conn, n=n: people.add_chat(conn, CHANNEL, n + 1))  # type: ignore[misc]
            await queue(room, n + 1, "hello")
        times = await times_of(room)
    assert len(times) == 50
    assert all(later - sooner >= timedelta(seconds=1) for sooner, later in zip(times, times[30:], strict=False))


async def test_a_clock_that_is_put_back_silences_nobody(tmp_path: Path) -> None:
    async with shell(tmp_path, pace=TELEGRAM_PACE) as room:
        await with_people(room)
        room.clock.move(days=7)
        await queue(room, RUTH, "ahead of its time")
        await room.post.drain()
        room.clock.move(days=-7)
        await queue(room, RUTH, "1", "2")
        while (until := await room.post.drain()) is not None:
            assert until - room.clock() <= timedelta(seconds=3)
            room.clock.at = until
    assert room.wire.texts(RUTH) == ["ahead of its time", "1", "2"]


async def test_told_to_wait_a_chat_waits_and_the_others_go_on(room: Shell) -> None:
    room.wire.script[RUTH] = [Later(7)]
    await queue(room, RUTH, "1", "2")
    await queue(room, TOMAS, "hello")
    assert await room.post.drain() == MONDAY + timedelta(seconds=7)
    assert (room.wire.texts(RUTH), room.wire.texts(TOMAS)) == ([], ["hello"])
    room.clock.move(seconds=6)
    await room.post.drain()
    assert room.wire.texts(RUTH) == []
    room.clock.move(seconds=1)
    assert await room.post.drain() is None
    assert room.wire.texts(RUTH) == ["1", "2"]
    assert [row.attempts for row in await room.rows(outbox_table)] == [0, 0, 0]


async def test_told_that_the_whole_bot_must_wait_it_waits_also_after_a_restart(tmp_path: Path) -> None:
    async with shell(tmp_path) as before:
        await with_people(before)
        before.wire.script[RUTH] = [Later(30, scope="bot")]
        await queue(before, RUTH, "1")
        assert await before.post.drain() == MONDAY + timedelta(seconds=30)
        assert [row.until for row in await before.rows(halt)] == [MONDAY + timedelta(seconds=30)]
    async with shell(tmp_path, clock=before.clock) as after:
        await queue(after, TOMAS, "2")
        after.clock.move(seconds=29)
        assert await after.post.drain() == MONDAY + timedelta(seconds=30)
        assert after.wire.tried == []
        after.clock.move(seconds=1)
        assert await after.post.drain() is None
        assert sorted(parcel.text for parcel in after.wire.sent) == ["1", "2"]


async def test_what_may_have_arrived_comes_once_more_and_holds_nothing_back(room: Shell) -> None:
    room.wire.script[RUTH] = [Uncertain("time-out"), Sent(), Uncertain("time-out")]
    await queue(room, RUTH, "1", "2")
    assert await room.post.drain() == MONDAY + RESEND_AFTER
    assert room.wire.texts(RUTH) == ["2"]
    room.clock.move(seconds=RESEND_AFTER.total_seconds())
    assert await room.post.drain() is None
    assert [parcel.text for parcel in room.wire.tried] == ["1", "2", "1"]
    room.clock.move(days=1)
    await room.post.drain()
    assert len(room.wire.tried) == 3
    assert await states(room) == ["uncertain", "sent"]


async def test_a_second_try_that_arrives_ends_it(room: Shell) -> None:
    room.wire.script[RUTH] = [Uncertain("time-out")]
    await queue(room, RUTH, "1")
    room.clock.at = await room.post.drain() or room.clock.at
    assert await room.post.drain() is None
    assert await states(room) == ["sent"]


@pytest.mark.parametrize("kind", ["reply", "alert", "prompt", "summary"])
async def test_what_someone_waits_for_is_said_once_more_wherever_it_is(room: Shell, kind: Kind) -> None:
    for chat_of in (RUTH, GROUP):
        room.wire.script[chat_of] = [Uncertain("time-out")]
        await queue(room, chat_of, "kept", kind=kind)
    await room.post.drain()
    room.clock.move(seconds=RESEND_AFTER.total_seconds())
    await room.post.drain()
    assert sorted(parcel.chat for parcel in room.wire.sent) == [GROUP, RUTH]


async def test_a_post_in_a_group_is_not_said_twice(room: Shell) -> None:
    room.wire.script[GROUP] = [Uncertain("time-out")]
    await queue(room, GROUP, "standings", kind="post")
    assert await room.post.drain() is None
    room.clock.move(days=1)
    await room.post.drain()
    assert len(room.wire.tried) == 1


async def test_refused_for_good_it_is_dead_and_the_next_one_goes(room: Shell) -> None:
    room.wire.script[RUTH] = [Refused("bad text")]
    await queue(room, RUTH, "1", "2")
    await room.post.drain()
    assert await states(room) == ["dead", "sent"]


async def test_a_closed_chat_gets_nothing_more_until_it_writes_again(room: Shell) -> None:
    room.wire.script[RUTH] = [Refused("blocked", chat_gone=True)]
    await queue(room, RUTH, "1", "2")
    await room.post.drain()
    await queue(room, RUTH, "3")
    assert await room.post.drain() is None
    assert await states(room) == ["dead", "dead", "queued"]
    assert await room.say(RUTH, "back again") == ["3", "heard back again"]


async def test_a_chat_that_moved_goes_on_under_its_new_id(room: Shell) -> None:
    room.wire.script[GROUP] = [Moved(-1001)]
    await queue(room, GROUP, "1", "2")
    await room.post.drain()
    assert [(parcel.chat, parcel.text) for parcel in room.wire.sent] == [(-1001, "1"), (-1001, "2")]
    known = await room.store.read(
        lambda conn: (people.chat_of(conn, CHANNEL, GROUP), people.chat_of(conn, CHANNEL, -1001))
    )
    assert known[0] == known[1] is not None


async def test_a_chat_that_moves_nowhere_is_given_up(room: Shell) -> None:
    room.wire.script[GROUP] = [Moved(GROUP)]
    await queue(room, GROUP, "1")
    assert await room.post.drain() is None
    assert await states(room) == ["dead"]


async def test_a_bug_of_the_sender_stops_no_other_chat(room: Shell) -> None:
    class Buggy:
        async def send(self, parcel: Parcel) -> Delivery:
            if parcel.chat == RUTH:
                raise RuntimeError(parcel.text)
            return Sent()

    await queue(room, RUTH, "1")
    await queue(room, TOMAS, "2")
    await Outbox(room.store, Buggy(), Reach(CHANNEL), room.clock, Pace()).drain()
    assert await states(room) == ["uncertain", "sent"]


async def test_a_slow_chat_keeps_nobody_waiting(room: Shell) -> None:
    gate = asyncio.Event()
    told = asyncio.Event()

    class Slow:
        async def send(self, parcel: Parcel) -> Delivery:
            if parcel.chat == RUTH:
                await gate.wait()
            if parcel.text == "last":
                told.set()
            return Sent()

    post = Outbox(room.store, Slow(), Reach(CHANNEL), room.clock, Pace())
    await queue(room, RUTH, "slow")
    await queue(room, TOMAS, "quick")
    running = asyncio.ensure_future(post.run())
    async with asyncio.timeout(10):
        await queue(room, TOMAS, "last")
        post.wake()
        await told.wait()
    gate.set()
    running.cancel()
    with pytest.raises(asyncio.CancelledError):
        await running
    assert await states(room) == ["sent", "sent", "sent"]  # what was in flight when we stopped is marked as well


async def test_a_message_for_a_person_goes_where_they_were_last_seen(room: Shell) -> None:
    def elsewhere(conn: object) -> int:
        (ruth,) = people.by_name(conn, "Ruth")  # type: ignore[arg-type]
        people.reach(conn, ruth.id, "elsewhere", 5)  # type: ignore[arg-type]
        outbox.queue(conn, Letter("hello", person=ruth.id), MONDAY)  # type: ignore[arg-type]
        return ruth.id

    await room.store.write(elsewhere)
    other = Outbox(room.store, room.wire, Reach("third"), room.clock, Pace())
    await other.drain()
    assert room.wire.sent == []  # nobody is reached on that channel: it waits
    await room.post.drain()
    assert room.wire.texts(RUTH) == ["hello"]


async def test_a_sender_that_reaches_some_chats_leaves_the_others_alone(room: Shell) -> None:
    await queue(room, RUTH, "1")
    await queue(room, TOMAS, "2")
    await Outbox(room.store, room.wire, Reach(CHANNEL, frozenset({TOMAS})), room.clock, Pace()).drain()
    assert [parcel.text for parcel in room.wire.sent] == ["2"]


async def test_a_prompt_that_is_past_its_time_is_not_sent_and_a_reply_is(room: Shell) -> None:
    await queue(room, RUTH, "session at six", kind="prompt")
    await queue(room, TOMAS, "answer")
    room.clock.at += PROMPT_LASTS + timedelta(seconds=1)
    await room.post.drain()
    assert await states(room) == ["dead", "sent"]


async def test_a_closed_chat_is_no_longer_a_place_to_reach_someone(room: Shell) -> None:
    await room.hear(room.raw(kind="gone", chat=RUTH))
    rows = {row.platform: row.active for row in await room.rows(chat)}
    assert (rows[RUTH], rows[TOMAS]) == (0, 1)


def test_the_paces_memory_does_not_grow_with_the_chats_that_ever_were() -> None:
    buckets = Buckets(Pace(person=TELEGRAM_PACE.person))
    now = MONDAY
    chats = [
        Queued(seq, seq, CHANNEL, seq, None, "reply", "", (), 0, private=True, not_before=None)
        for seq in range(2 * REMEMBERED)
    ]
    for one in chats:
        buckets.take(one, now)
        now += timedelta(seconds=1)
    assert len(buckets._full_at) <= REMEMBERED + 1
    for _ in range(5):
        buckets.take(chats[-1], now)
    assert buckets.opens(chats[-1], now) > now  # who was just sent to is still known
    assert buckets.opens(chats[0], now) == now
