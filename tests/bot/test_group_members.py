"""Members of a challenge through the whole pass: coming in, late by a door, in teams, pausing, leaving, erased."""

from pathlib import Path

from bot.store import challenges, coaching, contest, people
from bot.store.contest_tables import contest_day
from bot.store.tables import inbox
from core.model.plan import Plan
from tests.bot.group_world import MEMBERS, MIRA, PIET, RUTH, TOMAS, lines, the, world
from tests.bot.shell import INES, OTHER


async def test_joining_by_press_and_by_words_with_a_name_of_ones_own(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        await here.press(TOMAS, "c:join:1", name="T. from the docks")
        await here.press(PIET, "c:join:1")
        assert here.posts()[-2:] == [
            "T. from the docks is in. Counting starts on Monday 2 March.",
            "Member 3 is in. Counting starts on Monday 2 March.",
        ]
        assert (await here.in_group(MIRA, "join as r-h"))[0].startswith("Somebody here is shown as r-h already")
        assert (await here.in_group(MIRA, "join as R\u200b-h"))[0].startswith("Somebody here is shown as R-h already")
        assert await here.in_group(PIET, "join as The Bell") == ["Shown as The Bell from now on."]
        assert await here.in_group(MIRA, "join as " + "x" * 40) == [
            "That name is too long to show. Up to 24 characters, please."
        ]
        assert not any(name in post for post in here.posts() for name in MEMBERS)


async def test_a_stranger_joins_by_a_short_joining_of_their_own(tmp_path: Path) -> None:
    async with world(tmp_path) as here:
        await here.press(OTHER, "c:join:1")
        answer = here.posts()[-1]
        assert answer.startswith("To take part, begin at /start=")
        door = answer.split("/start=")[1].split(",")[0]
        (welcome,) = await here.room.say(OTHER, f"/start {door}", name="Wren")
        assert "on your own" in welcome
        assert "no medical advice" in welcome
        await here.press(OTHER, "c:join:1", name="Wren")
        assert here.posts()[-1].startswith("Wren is in.")
        assert "Monday 18:30" in (await here.room.say(OTHER, "plan"))[0]
        assert "can't read this yet" in (await here.room.say(OTHER, "plan\nMonday 18:00\nmoonwalk 3x40"))[0]
        (kept,) = await here.room.say(OTHER, "plan\nMonday 18:00\nback squat 2x5-8\nThursday 18:00\ndumbbell row 2x5-8")
        assert kept.startswith("Your plan from now on:")
        here.to(0, 18)
        await here.train(OTHER)
        here.to(1, 11)
        assert "No place yet (it takes 2 planned sessions): Wren 1 of 1" in "\n".join(await lines(here))
        rows = await here.room.rows(inbox)
        assert [row.body for row in rows if row.chat == 0] == [""]


async def test_teams_by_press_and_by_words(tmp_path: Path) -> None:
    async with world(tmp_path) as here:
        await here.in_group(INES, "end challenge")
        (opening,) = await here.in_group(INES, 'challenge "Two" for 2 weeks from Monday, teams Red and Blue')
        assert "Teams: Red, Blue" in opening
        assert here.room.wire.sent[-1].buttons == (("join Red", "c:join:2:0"), ("join Blue", "c:join:2:1"))
        assert await here.in_group(RUTH, "join") == ["Which team? Red, Blue"]
        await here.press(RUTH, "c:join:2:1", name="R")
        await here.in_group(TOMAS, "join Red as T")
        await here.in_group(PIET, "join as P in team Blue")
        for day in (0, 3):
            here.to(day, 18)
            await here.train(RUTH)
            if day == 0:
                await here.train(TOMAS)
                await here.train(PIET)
        here.to(4, 11)
        assert "Teams: Blue 75 points, Red 50 points." in (await here.look())[0].split("\n")


async def test_who_comes_late_has_chances_from_the_next_day_on(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.to(0, 18)
        await here.train(RUTH)
        await here.train(TOMAS)
        here.to(0, 21)
        assert await here.in_group(TOMAS, "join as Late") == ["Late is in. Counting starts tomorrow."]
        for day in (3, 7, 10):
            here.to(day, 18)
            await here.train(TOMAS)
        here.to(11, 11)
        await here.look()
        assert next(line for line in await lines(here) if "Late" in line) == "1. Late: 100 points, 3 of 3 sessions"


async def test_moved_off_aching_and_pausing(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas", "Piet", "Mira") as here:
        here.to(0, 8)
        await here.room.say(RUTH, "moved")
        await here.room.say(TOMAS, "off")
        here.to(1, 18)
        await here.train(RUTH)
        await here.in_group(PIET, "pause")
        here.to(3, 8)
        await here.room.say(MIRA, "ache")
        here.to(3, 18)
        for user in (RUTH, TOMAS):
            await here.train(user)
        here.to(7, 11)
        await here.look()
        closed = here.posts()[-1].split("\n")[1:]
        assert closed == [
            "1. R-h: 100 points, 2 of 2 sessions",
            "No place yet (it takes 2 planned sessions): M-a 0 of 1, P-t 0 of 1, T-s 1 of 1",
            "Steps this week: more repetitions (R-h, T-s).",
        ]
        assert await here.in_group(PIET, "back") == ["P-t is back from tomorrow."]


async def test_who_is_hurt_loses_nothing_until_it_is_better_and_the_acts_say_the_same_later(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.to(0, 18)
        await here.train(RUTH)
        here.to(3, 8)
        await here.room.say(RUTH, "hurts")
        here.to(14, 8)
        await here.room.say(RUTH, "fine")
        for day in (14, 17):
            here.to(day, 18)
            await here.train(RUTH)
        here.to(18, 11)
        await here.look()
        assert (await lines(here))[0] == "1. R-h: 100 points, 3 of 3 sessions"
        found = await the(here)
        store, folding = here.room.store, here.room.parts.folding
        (record,) = await store.read(lambda conn: contest.records(conn, found))
        rebuilt = await store.read(lambda conn: contest.rebuilt(conn, found, record.entrant.who, folding))
        assert list(rebuilt[: len(record.days)]) == list(record.days)


async def test_a_missed_session_made_up_for_and_a_plan_changed_afterwards(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas") as here:
        here.to(1, 8)
        await here.room.say(RUTH, "here")
        here.to(1, 18)
        await here.train(RUTH)
        here.to(2, 8)
        found = await here.room.store.read(
            lambda conn: [people.by_name(conn, name)[0].id for name in ("Ruth", "Tomas")]
        )
        for who in found:
            await here.room.store.write(
                lambda conn, who=who: coaching.put_in_force(conn, who, Plan(), who, here.room.clock(), "written")  # type: ignore[misc]
            )
        here.to(3, 11)
        assert await lines(here) == [
            "No place yet (it takes 2 planned sessions): R-h 1 of 1, T-s 0 of 1",
            "Steps this week: more repetitions (R-h).",
        ]


async def test_leaving_coming_back_and_being_erased(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas", "Piet") as here:
        for day in (0, 3):
            here.to(day, 18)
            for user in (RUTH, TOMAS, PIET):
                await here.train(user)
        here.to(4, 11)
        assert [line.split(":")[0] for line in (await lines(here))[:3]] == ["1. P-t", "1. R-h", "1. T-s"]
        assert await here.in_group(TOMAS, "leave") == ["T-s is out. Coming back keeps what was."]
        assert "T-s" not in "".join(await lines(here))
        assert (await here.in_group(TOMAS, "join"))[0].startswith("T-s is in.")
        assert (await lines(here))[2].startswith("1. T-s: 100 points, 2 of 2 sessions")
        others = [line for line in await lines(here) if "P-t" not in line and "Steps" not in line]
        who = await here.room.store.read(lambda conn: people.by_name(conn, "Piet")[0].id)
        await here.room.store.write(lambda conn: challenges.forget(conn, who))
        assert [line for line in await lines(here) if "Steps" not in line] == others
        assert who not in {row.person for row in await here.room.rows(contest_day)}


async def test_a_member_who_blocks_the_service_still_counts(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.to(0, 18)
        await here.train(RUTH)
        await here.room.hear(here.room.raw(kind="gone", chat=RUTH))
        here.to(1, 11)
        assert "No place yet (it takes 2 planned sessions): R-h 1 of 1" in (await here.look())[0]


async def test_one_member_in_two_groups_of_one_coach(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        other = {"chat": -77, "private": False, "title": "River gym"}
        await here.room.say(INES, 'challenge "River" for 2 weeks from Monday, sessions only', **other)
        await here.room.say(RUTH, "join as Heron", **other)
        for day in (0, 3):
            here.to(day, 18)
            await here.train(RUTH, "6 3")
        here.to(4, 11)
        await here.look()
        assert here.posts()[-1].split("\n")[1] == "1. R-h: 100 points, 2 of 2 sessions"
        river = here.room.wire.texts(-77)[-1].split("\n")
        assert river[:2] == ["River, week 1 of 2.", "1. Heron: 100 points, 2 of 2 sessions"]
        several = "You take part in more than one: Six, River. Say it in the group that you mean."
        assert await here.room.say(RUTH, "leave") == [several]
        await here.room.say(RUTH, "leave", **other)
        assert (await lines(here))[0] == "1. R-h: 100 points, 2 of 2 sessions"
        (which,) = await here.room.say(INES, "end challenge")
        assert which == "Which one? Write it with its name, as in end challenge NAME: Six, River"
        assert await here.room.say(INES, "end challenge in river") == ["River ends here, on the coach's word."]
        assert await here.room.say(INES, "end challenge") == ["Six ends here, on the coach's word."]
