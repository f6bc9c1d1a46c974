"""A group on Telegram, over the loopback Bot API: what is to us, the post written over, topics, a move, a removal."""

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass, replace
from pathlib import Path
from typing import Any

from bot.channels.telegram import Telegram
from bot.channels.telegram_shape import raw_update
from bot.intake import Intake
from bot.outbox import Outbox, Pace
from bot.store import people, plans
from bot.store.outbox import Reach
from bot.store.tables import inbox
from tests.bot.api_stub import BotApi
from tests.bot.api_updates import TOKEN, USERNAME, Update, chat_of, membership, press, text, us
from tests.bot.api_updates import user as someone
from tests.bot.group_world import FRIDAY, MEMBERS, PLAN, EveryText, World
from tests.bot.shell import INES, HandClock, Shell, shell

GROUP, SUPERGROUP = -55, -1009000001
RUTH = MEMBERS["Ruth"]


@dataclass
class Wired:
    """The shell with Telegram as its channel, against the stub."""

    here: World
    api: BotApi
    telegram: Telegram
    number: int = 0

    async def gets(self, update: Update) -> None:
        self.number += 1
        raw = raw_update({"update_id": self.number, **update}, self.telegram.name)
        await self.here.room.intake.keep((raw,))
        await self.here.room.settle()

    async def says(self, user: int, words: str, **more: Any) -> None:
        await self.gets(text(GROUP, words, self.number + 1, sender=user, **more))

    async def trains(self, user: int) -> None:
        await self.gets(text(user, "back-squat 6 6", self.number + 1))
        self.here.room.clock.move(minutes=20)
        await self.gets(text(user, "dumbbell-row 6 6", self.number + 1))

    async def begins(self, user: int, name: str) -> None:
        """A challenge from Monday, somebody joins by a name, and trains on its first day."""
        await self.says(INES, "/challenge 3 weeks from Monday")
        await self.says(user, f"/join as {name}")
        self.here.to(0, 18)
        await self.trains(user)

    async def looks(self) -> None:
        await self.here.room.tick.once()
        await self.here.room.settle()


def _seed(conn: Any) -> None:
    coach = people.add(conn, "Ines", "UTC", FRIDAY, coaches=True)
    people.reach(conn, coach.id, "telegram", INES)
    for name, user in MEMBERS.items():
        one = people.add(conn, name, "UTC", FRIDAY)
        people.make_lifter(conn, one.id, coach.id)
        people.reach(conn, one.id, "telegram", user)
        plans.set_weekly(conn, one.id, PLAN)


@asynccontextmanager
async def wired(folder: Path) -> AsyncIterator[Wired]:
    async with BotApi(TOKEN) as api, shell(folder, clock=HandClock(FRIDAY)) as room:
        room.core.script = EveryText()
        telegram = Telegram(TOKEN, api.base_url)
        try:
            await telegram.whoami()
            await room.store.write(_seed)
            yield Wired(World(_on(room, telegram)), api, telegram)
        finally:
            await telegram.close()


def _on(room: Shell, telegram: Telegram) -> Shell:
    """The same shell on Telegram."""
    parts = replace(room.parts, openers={telegram.name: telegram.open}, link=telegram.link)
    post = Outbox(room.store, telegram, Reach(telegram.name), room.clock, Pace())
    intake = Intake(room.store, parts, room.clock, post.wake)
    return replace(
        room, parts=parts, post=post, intake=intake, tick=type(room.tick)(room.store, parts, room.clock, post.wake)
    )


async def test_commands_mentions_and_replies_are_to_us_and_all_else_is_forgotten(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.says(INES, "/challenge 3 weeks from Monday")
        assert it.api.texts(GROUP)[0].startswith("Challenge: 3 weeks, from Monday 2 March")
        assert f"https://t.me/{USERNAME}?start=" in it.api.texts(GROUP)[0]
        mention = [{"type": "mention", "offset": 0, "length": len(USERNAME) + 1}]
        await it.says(RUTH, f"@{USERNAME} join as Heron", entities=mention)
        assert it.api.texts(GROUP)[-1] == "Heron is in. Counting starts on Monday 2 March."
        await it.gets(membership(GROUP, "member", "administrator"))
        before = len(it.api.sent)
        await it.says(RUTH, "my knee hurts and I weigh 80, challenge me, join us")
        assert len(it.api.sent) == before
        kept = await it.here.room.rows(inbox)
        assert [row.body for row in kept if "knee" in row.body] == []


async def test_a_press_joins_by_the_name_the_group_sees_anyway(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.says(INES, "/challenge 3 weeks from Monday")
        await it.gets(press(GROUP, "c:join:1", sender=RUTH))
        assert it.api.texts(GROUP)[-1] == f"P{RUTH} is in. Counting starts on Monday 2 March."
        await it.gets(press(GROUP, "c:join:1", sender=4242))
        assert it.api.texts(GROUP)[-1].startswith(f"To take part, begin at https://t.me/{USERNAME}?start=")


async def test_the_weeks_post_is_written_over_and_sent_anew_when_somebody_deleted_it(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.begins(RUTH, "Heron")
        it.here.to(1, 11)
        await it.looks()
        count = len(it.api.texts(GROUP))
        it.here.to(3, 18)
        await it.trains(RUTH)
        it.here.to(4, 11)
        await it.looks()
        assert len(it.api.texts(GROUP)) == count
        assert "1. Heron: 100 points, 2 of 2 sessions" in it.api.texts(GROUP)[-1]
        it.api.sent = [one for one in it.api.sent if "Heron: 100" not in one.text]
        await it.says(RUTH, "/join as Grey Heron")
        it.here.to(4, 12)
        await it.looks()
        assert "1. Grey Heron: 100 points" in it.api.texts(GROUP)[-1]
        await it.says(RUTH, "/join as Heron")
        it.here.to(4, 13)
        await it.looks()
        assert sum("1. Heron: 100 points" in one for one in it.api.texts(GROUP)) == 1
        assert not any("Grey Heron: 100" in one for one in it.api.texts(GROUP))


async def test_a_group_that_becomes_a_supergroup_goes_on(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.begins(RUTH, "Heron")
        it.here.to(1, 11)
        await it.looks()
        it.api.moved[GROUP] = SUPERGROUP
        it.api.sent = [one for one in it.api.sent if one.chat != GROUP]
        moved = {"message": {"message_id": 900, "date": 0, "chat": chat_of(GROUP), "migrate_to_chat_id": SUPERGROUP}}
        await it.gets(moved)
        it.here.to(3, 18)
        await it.trains(RUTH)
        it.here.to(4, 11)
        await it.looks()
        assert "1. Heron: 100 points" in it.api.texts(SUPERGROUP)[-1]
        assert it.api.texts(GROUP) == []


async def test_a_topic_that_is_closed_does_not_silence_the_posts(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        it.api.topics.add(7)
        await it.says(INES, "/challenge 3 weeks from Monday", message_thread_id=7, is_topic_message=True)
        assert it.api.sent[-1].arguments["message_thread_id"] == "7"
        await it.says(RUTH, "/join as Heron")
        it.api.topics.clear()
        it.here.to(0, 18)
        await it.trains(RUTH)
        it.here.to(1, 11)
        await it.looks()
        assert it.api.texts(GROUP)[-1].startswith("Challenge, week 1 of 3.")


async def test_removed_and_added_again(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.says(INES, "/challenge 3 weeks from Monday")
        await it.says(RUTH, "/join as Heron")
        await it.gets(membership(GROUP, "member", "kicked"))
        it.here.to(0, 18)
        await it.trains(RUTH)
        it.here.to(1, 11)
        before = len(it.api.texts(GROUP))
        await it.looks()
        assert len(it.api.texts(GROUP)) == before
        await it.gets(membership(GROUP, "kicked", "member"))
        it.here.to(1, 12)
        await it.looks()
        assert it.api.texts(GROUP)[-1].startswith("Challenge, week 1 of 3.")


async def test_an_answer_to_a_post_of_ours_is_to_us_and_an_answer_to_a_member_is_not(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.says(INES, "/challenge 3 weeks from Monday")
        ours = {"message_id": 1, "date": 0, "chat": chat_of(GROUP), "from": us(), "text": "the opening"}
        await it.says(RUTH, "join as Heron", reply_to_message=ours)
        assert it.api.texts(GROUP)[-1] == "Heron is in. Counting starts on Monday 2 March."
        before = len(it.api.sent)
        theirs = {**ours, "from": someone(INES)}
        await it.says(RUTH, "leave", reply_to_message=theirs)
        assert len(it.api.sent) == before
