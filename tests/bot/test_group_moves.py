"""What happens to a group and to its people while a challenge is on: nights, absences, moves, erasures, two coaches."""

from dataclasses import replace
from functools import partial
from pathlib import Path
from typing import Any
from zoneinfo import ZoneInfo

from sqlalchemy import Connection

from bot.store import erase, people
from bot.store.contest_tables import challenge, entrant
from bot.store.tables import crew, outbox
from core.model.challenge import Standing, Table
from tests.bot.group_world import FRIDAY, RUTH, TOMAS, World, lines, the, world
from tests.bot.shell import CHANNEL, GROUP, INES, OTHER

VERA, RIVER = 900002, -77
"""Another coach, and her group."""


def _change(conn: Connection, name: str, **what: Any) -> None:
    who = people.by_name(conn, name)[0].id
    people.set_profile(conn, who, replace(people.profile(conn, who), **what))


async def _erased(here: World, name: str) -> None:
    who = await here.room.store.read(lambda conn: people.by_name(conn, name)[0].id)
    openers = {CHANNEL: here.room.wire.open}
    await here.room.store.write(lambda conn: erase.forget(conn, who, openers, FRIDAY))


async def test_opened_at_night_from_the_own_chat_it_is_posted_in_the_morning(tmp_path: Path) -> None:
    async with world(tmp_path) as here:
        await here.in_group(INES, "end challenge")
        before = here.posts()
        here.to(-2, 23, 30)
        said = await here.room.say(INES, 'challenge "Night" from Monday')
        assert said == ["Opened in Harbour Street. It is quiet there now; the opening is posted in the morning."]
        assert await here.look() == []
        assert here.posts() == before
        here.to(-1, 9)
        (opening,) = await here.look()
        assert opening.startswith("Night: 6 weeks, from Monday 2 March")
        assert await here.look() == []
        await here.press(RUTH, "c:join:2", name="R")
        assert here.posts()[-1].startswith("R is in.")


async def test_said_in_the_group_at_night_it_is_answered_there(tmp_path: Path) -> None:
    async with world(tmp_path) as here:
        here.to(-2, 23, 30)
        await here.in_group(INES, "end challenge")
        assert here.posts()[-1] == "Six ends here, on the coach's word."
        assert (await here.in_group(INES, "challenge 2 weeks"))[0].startswith("Challenge: 2 weeks")


async def test_ended_at_night_from_the_own_chat_the_group_hears_it_in_the_morning(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.to(-2, 23, 30)
        before = here.posts()
        assert await here.room.say(INES, "end challenge") == ["Six ends here, on the coach's word."]
        assert await here.in_group(RUTH, "standings") == ["No challenge is open here."]
        assert await here.look() == []
        here.to(-1, 9)
        assert await here.look() == ["Six ends here, on the coach's word."]
        assert here.posts()[: len(before)] == before
        assert await here.look() == []


async def test_what_is_opened_and_ended_in_one_night_is_never_spoken_of(tmp_path: Path) -> None:
    async with world(tmp_path) as here:
        await here.in_group(INES, "end challenge")
        here.to(-2, 23, 30)
        await here.room.say(INES, "challenge from Monday")
        await here.room.say(INES, "end challenge")
        before = here.posts()
        here.to(-1, 9)
        assert await here.look() == []
        assert here.posts() == before


async def test_the_quiet_hours_are_those_of_the_groups_zone_wherever_the_coach_is(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.to(0, 18)
        await here.train(RUTH)
        await here.room.store.write(partial(_change, name="Ines", zone=ZoneInfo("Asia/Tokyo")))
        here.to(1, 3)  # noon where the coach is now
        assert await here.look() == []
        here.to(1, 15)  # midnight there
        assert len(await here.look()) == 1


async def test_after_an_absence_only_the_newest_close_is_posted(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        for day in (0, 3, 7, 10):
            here.to(day, 18)
            await here.train(RUTH)
            if day == 0:
                await here.room.hear(here.room.raw(kind="gone", chat=GROUP))
        here.to(14, 12)
        assert await here.look() == []
        await here.room.hear(here.room.raw(kind="back", chat=GROUP))
        here.to(14, 13)
        assert [post.split("\n")[:2] for post in await here.look()] == [
            ["Six: week 2 of 3 is closed.", "1. R-h: 100 points, 4 of 4 sessions"]
        ]
        assert (await the(here)).closed == 2


async def test_a_week_in_which_nobody_had_a_chance_passes_in_silence(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        for day in (0, 3):
            here.to(day, 18)
            await here.train(RUTH)
        here.to(4, 11)
        await here.look()
        await here.in_group(RUTH, "pause")
        here.to(7, 11)
        (closed,) = await here.look()
        assert closed.startswith("Six: week 1 of 3 is closed.")
        for day in (8, 11, 14):
            here.to(day, 11)
            assert await here.look() == []
        assert (await the(here)).closed == 2
        await here.in_group(RUTH, "back")
        here.to(17, 18)
        await here.train(RUTH)
        here.to(18, 11)
        (post,) = await here.look()
        assert post.split("\n")[:2] == ["Six, week 3 of 3.", "1. R-h: 100 points, 3 of 3 sessions"]


async def test_a_new_name_of_the_chat_that_wrote_before_it_told_of_its_move(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        new = {"chat": -1009, "private": False, "title": "Harbour Street"}
        await here.room.say(INES, "end challenge", **new)
        await here.room.say(INES, 'challenge "Other" for 2 weeks', **new)
        await here.room.say(TOMAS, "join as T", **new)
        await here.room.hear(here.room.raw(kind="renamed", chat=GROUP, new=-1009))
        assert [row.name for row in await here.room.rows(crew)] == ["Harbour Street"]
        assert {row.chat for row in await here.room.rows(challenge)} == {(await the(here)).chat}
        (said,) = await here.room.say(TOMAS, "standings", **new)
        assert said.startswith("Other, week 1 of 2.")
        here.to(0, 18)
        await here.train(RUTH)
        here.to(1, 11)
        before = len(here.room.wire.texts(-1009))
        await here.look()
        assert any("R-h" in text for text in here.room.wire.texts(-1009)[before:])
        assert len(here.room.wire.texts(GROUP)) == 2  # the opening and a join, from before the move


async def test_a_coach_who_is_erased_takes_the_challenge_along(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.to(0, 18)
        await here.train(RUTH)
        await _erased(here, "Ines")
        assert await here.room.rows(challenge) == []
        assert await here.room.rows(entrant) == []
        here.to(1, 11)
        assert await here.look() == []
        assert await here.in_group(RUTH, "standings") == ["No challenge is open here."]


async def test_who_is_erased_is_in_no_question_to_the_host_either(tmp_path: Path) -> None:
    async with world(tmp_path) as here:
        await here.comes_by_the_door(OTHER, "Wren", "Monday 18:00\nback squat 2x5-8")
        here.to(0, 18)
        await here.room.say(OTHER, "back-squat 6 6")
        here.to(1, 11)
        await here.look()
        assert "a report of Wren waits" in here.room.wire.texts(INES)[-1]
        await _erased(here, "Wren")
        assert not [row.text for row in await here.room.rows(outbox) if "Wren" in row.text]


async def test_one_member_in_the_groups_of_two_coaches(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        await here.room.store.write(_vera)
        river = {"chat": RIVER, "private": False, "title": "River gym"}
        await here.room.say(VERA, 'challenge "River" for 2 weeks from Monday, steps only', **river)
        assert await here.room.say(RUTH, "join as Heron", **river) == [
            "Heron is in. Counting starts on Monday 2 March."
        ]
        assert await here.room.say(VERA, "end challenge", chat=GROUP, private=False) == [
            "Only the coach of this group can open or end a challenge."
        ]
        for day in (0, 3, 7, 10):
            here.to(day, 18)
            await here.train(RUTH, "20 20" if day == 10 else "6 6", minutes=0 if day == 3 else 20)
            here.to(day + 1, 11)
            await here.look()
        asked = here.room.wire.texts(VERA)
        assert (
            asked[0]
            == "River: a report of Heron waits for your word.\nThursday 5 March: not told while it happened\nCount it?"
        )
        assert not any("squat" in text or "R-h" in text for text in asked)
        await here.room.say(VERA, "yes, always for Heron")
        assert (await lines(here))[0] == "1. R-h: 62 points, 3 of 4 sessions, up 12"  # the other coach's word is open
        (said,) = await here.room.say(RUTH, "standings", **river)
        assert said.split("\n")[1].startswith("1. Heron: 75 points, 4 of 4 sessions")
        await _erased(here, "Ruth")
        assert not [row for row in await here.room.rows(outbox) if "Heron" in row.text or "R-h" in row.text]


def _vera(conn: Connection) -> None:
    vera = people.add(conn, "Vera", "UTC", FRIDAY, coaches=True)
    people.reach(conn, vera.id, CHANNEL, VERA)


async def test_steps_only_count_exercises_and_no_sessions(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas", counts=", steps only") as here:
        assert "What counts: the exercises of your own plan done as asked." in here.posts()[0]
        for day in (0, 3):
            here.to(day, 18)
            await here.train(RUTH)
            await here.train(TOMAS, "6")  # a set left out of each
        here.to(4, 11)
        (post,) = await here.look()
        assert post.split("\n")[1:3] == ["1. R-h: 100 points, 2 of 2 sessions", "2. T-s: 0 points, 2 of 2 sessions"]


async def test_a_coach_who_speaks_of_something_else_in_the_group_is_told_what_is_for_it(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        (said,) = await here.in_group(INES, "who needs a word")
        assert said.startswith('Coach: challenge "Autumn"')
        assert await here.room.say(INES, "challenge?") == [said]


def test_the_last_picture_draws_long_titles_and_leaves_out_letters_that_it_has_not() -> None:
    from bot.picture_facts import facts_in
    from bot.pictures import standings_picture

    rows = (("東京", 100, 1), ("Zoë 🦀", 100, 1), ("x" * 24, 0, 3))
    table = Table(3, tuple(Standing(who, name, points, place, 3, 3) for who, (name, points, place) in enumerate(rows)))
    drawn = standings_picture("A title of sixty letters that goes on and on and on: points of a hundred", table)
    assert [row[1] for row in facts_in(drawn)[1:]] == ["東京", "Zoë 🦀", "x" * 24]
