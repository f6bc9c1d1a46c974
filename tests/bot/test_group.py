"""A group's challenge through the whole pass: opened, posted through the week, closed, ended with a picture."""

from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

import pytest
from sqlalchemy import Connection

from bot.desk import group_posts
from bot.making import ARTIST
from bot.pictures import standings_picture
from bot.ports import Sent
from bot.store import erase, people
from bot.store.tables import outbox
from tests.bot.group_world import FRIDAY, RUTH, TOMAS, the, world
from tests.bot.shell import CHANNEL, GROUP, INES


async def test_only_the_coach_opens_and_the_opening_says_what_counts(tmp_path: Path) -> None:
    async with world(tmp_path) as here:
        (opening,) = here.posts()
        assert opening.startswith("Six: 3 weeks, from Monday 2 March to 22 March.")
        assert here.room.wire.sent[-1].buttons == (("join", "c:join:1"),)
        assert await here.in_group(RUTH, "challenge 4 weeks") == [
            "Only the coach of this group can open or end a challenge."
        ]
        (again,) = await here.in_group(INES, "challenge")
        assert "Six is still on here, until 22 March" in again


async def test_the_coach_opens_from_the_own_chat_in_the_group_named(tmp_path: Path) -> None:
    async with world(tmp_path) as here:
        await here.in_group(INES, "end challenge")
        assert await here.room.say(INES, 'challenge "Dark" for two weeks, steps only') == ["Opened in Harbour Street."]
        assert here.posts()[-1].startswith("Dark: 2 weeks")
        assert (await here.room.say(INES, "standings"))[0].startswith("Dark, week 1 of 2.")
        assert await here.room.say(INES, "end challenge") == ["Dark ends here, on the coach's word."]
        await here.room.say(INES, "anything", chat=-77, private=False, title="River gym")
        await here.in_group(INES, "standings")
        await here.room.say(INES, "standings", chat=-77, private=False, title="River gym")
        (which,) = await here.room.say(INES, "challenge")
        assert which == 'Which group? Write it with "in": Harbour Street, River gym'
        assert await here.room.say(INES, "challenge 3 weeks in river") == ["Opened in River gym."]


async def test_a_week_of_posts_one_message_edited_and_a_new_one_at_the_close(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas") as here:
        here.to(0, 18)
        await here.train(RUTH)
        assert await here.look() == []
        here.to(1, 9)
        (first,) = await here.look()
        assert first.split("\n")[:2] == [
            "Six, week 1 of 3.",
            "No place yet (it takes 2 planned sessions): R-h 1 of 1, T-s 0 of 1",
        ]
        assert "Steps this week: more repetitions (R-h)." in first
        here.to(1, 9, 20)
        assert await here.look() == []
        here.to(3, 18)
        await here.train(RUTH)
        await here.train(TOMAS)
        here.to(4, 3)
        assert await here.look() == []  # quiet hours
        here.to(4, 9)
        (edited,) = await here.look()
        assert edited.split("\n")[1] == "1. R-h: 100 points, 2 of 2 sessions"
        assert here.edits()[-2:] == [None, here.room.wire.sent.index(here.room.wire.sent[-2]) + 1] or here.edits()[-1]
        here.to(7, 9)
        assert await here.look() == []
        here.to(7, 10, 30)
        (closed,) = await here.look()
        assert closed.split("\n")[:3] == [
            "Six: week 1 of 3 is closed.",
            "1. R-h: 100 points, 2 of 2 sessions",
            "2. T-s: 50 points, 1 of 2 sessions",
        ]
        assert here.edits()[-1] is None


async def test_a_week_closes_when_its_last_day_is_over_for_everyone(tmp_path: Path) -> None:
    async with world(tmp_path) as here:
        await here.in_group(INES, "end challenge")
        for name, zone in (("Ines", "Asia/Tokyo"), ("Ruth", "Pacific/Honolulu")):
            await here.room.store.write(partial(_live_in, name=name, zone=zone))
        await here.in_group(INES, "challenge 2 weeks from Monday")
        await here.in_group(RUTH, "join as Shore")
        here.to(6, 22)  # Sunday noon there, Monday morning where the group is
        await here.room.say(RUTH, "here")
        await here.train(RUTH)
        here.to(7, 2)
        assert not any("closed" in post for post in await here.look())
        here.to(7, 10, 30)
        (closed,) = await here.look()
        assert closed.split("\n")[0] == "Challenge: week 1 of 2 is closed."
        assert "1. Shore: 50 points, 1 of 2 sessions" in closed  # Thursday's, moved


def _live_in(conn: Connection, name: str, zone: str) -> None:
    who = people.by_name(conn, name)[0].id
    people.set_profile(conn, who, replace(people.profile(conn, who), zone=ZoneInfo(zone)))


async def test_a_challenge_that_nobody_joined_ends_without_a_word(tmp_path: Path) -> None:
    async with world(tmp_path) as here:
        for day in (1, 8, 22):
            here.to(day, 11)
            assert await here.look() == []
        assert (await the(here)).state == "over"


async def test_the_end_comes_with_a_picture_and_then_silence(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas") as here:
        for day in (0, 3, 7, 10, 14, 17):
            here.to(day, 18)
            await here.train(RUTH)
            if day != 7:
                await here.train(TOMAS)
            here.to(day + 1, 11)
            await here.look()
        here.to(21, 11)
        posts = await here.look()
        assert posts[-1].split("\n")[:3] == [
            "Six is over.",
            "First, with 100 points: R-h.",
            "All together: 11 of 12 sessions kept.",
        ]
        picture = here.room.wire.sent[-1].attachment
        assert picture is not None
        assert picture[1].startswith(b"\x89PNG")
        assert b"R-h" in picture[1]  # its facts go with it
        here.to(30, 11)
        assert await here.look() == []
        assert (await here.room.rows(outbox))[-1].content is None


async def test_the_last_picture_is_drawn_elsewhere_and_of_those_who_are_there_then(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas") as here:
        for day in (0, 3, 7, 10, 14, 17):
            here.to(day, 18)
            await here.train(RUTH)
            await here.train(TOMAS)
        here.to(21, 11)
        await here.room.tick.once()
        last = (await here.room.rows(outbox))[-1]
        assert (last.state, last.content, last.recipe) == ("undrawn", None, '["standings", "{\\"challenge\\": 1}"]')
        who = await here.room.store.read(lambda conn: people.by_name(conn, "Tomas")[0].id)
        await here.room.store.write(lambda conn: erase.forget(conn, who, {CHANNEL: here.room.wire.open}, FRIDAY))
        await here.room.settle()
        end = here.room.wire.sent[-1]
        assert "T-s" not in end.text
        assert end.text.startswith("Six is over.")
        assert end.attachment is not None
        assert b"R-h" in end.attachment[1]
        assert b"T-s" not in end.attachment[1]


async def test_the_last_picture_speaks_the_groups_language(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[Any] = []

    async def draw(work: Any, *made: Any) -> bytes:
        asked.append(work)
        return standings_picture("x", *made)

    monkeypatch.setattr(ARTIST, "draw", draw)
    async with world(tmp_path, "Ruth") as here:
        await here.room.store.write(partial(_speaks, name="Ines", language="de"))
        for day in (14, 17):
            here.to(day, 18)
            await here.train(RUTH)
        here.to(21, 11)
        assert (await here.look())[-1].startswith("Six ist vorbei.")
        assert [work.args for work in asked] == [("Six: Punkte von hundert",)]


def _speaks(conn: Connection, name: str, language: str) -> None:
    who = people.by_name(conn, name)[0].id
    people.set_profile(conn, who, replace(people.profile(conn, who), language=language))


async def test_where_no_pictures_are_shown_the_end_is_told_in_words(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.room.wire.pictures = False  # type: ignore[attr-defined]
        for day in (0, 3, 7, 10):
            here.to(day, 18)
            await here.train(RUTH)
        here.to(21, 11)
        assert (await here.look())[-1].startswith("Six is over.")
        assert here.room.wire.sent[-1].attachment is None


async def test_how_to_say_it_and_the_coachs_language(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        assert (await here.room.say(INES, "challenge?"))[0].startswith('Coach: challenge "Autumn" for 6 weeks')
        assert "Members: join, join as NAME" in (await here.in_group(RUTH, "challenge help"))[0]
        coach = await here.room.store.read(lambda conn: people.by_name(conn, "Ines")[0].id)
        profile = replace(await here.room.store.read(lambda conn: people.profile(conn, coach)), language="de")
        await here.room.store.write(lambda conn: people.set_profile(conn, coach, profile))
        assert (await here.in_group(TOMAS, "join as Kran"))[0].startswith("Kran ist dabei.")
        here.to(0, 18)
        await here.train(RUTH, minutes=0)
        here.to(1, 11)
        assert "Woche 1 von 3" in (await here.look())[0]
        assert await here.room.say(INES, "zählt") == ["R-h: gezählt."]


async def test_what_is_looked_at_twice_at_once_is_posted_once(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.to(0, 18)
        await here.train(RUTH)
        here.to(1, 11)
        for _ in range(2):
            await here.room.store.write(lambda conn: group_posts.look(conn, here.room.parts, 1, here.room.clock()))
        await here.room.settle()
        assert sum(post.startswith("Six, week 1") for post in here.posts()) == 1


@pytest.mark.parametrize("answer", [None, Sent(999)])
async def test_an_edit_whose_message_is_gone_is_sent_anew_and_remembered(tmp_path: Path, answer: Sent | None) -> None:
    async with world(tmp_path, "Ruth", "Tomas") as here:
        here.to(0, 18)
        await here.train(RUTH)
        here.to(1, 11)
        await here.look()
        first = next(row for row in await here.room.rows(outbox) if row.text.startswith("Six, week 1"))
        here.room.wire.script[GROUP] = [answer] if answer is not None else []
        here.to(3, 18)
        await here.train(TOMAS)
        here.to(4, 11)
        await here.look()
        again = next(row for row in await here.room.rows(outbox) if row.seq == first.seq)
        assert here.edits()[-1] == first.message_id
        assert again.message_id == (999 if answer else len(here.room.wire.tried))
