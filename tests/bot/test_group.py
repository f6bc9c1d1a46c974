"""A group's challenge through the whole pass: opened, joined, posted, closed, held for the coach, moved and left."""

from dataclasses import replace
from functools import partial
from pathlib import Path
from zoneinfo import ZoneInfo

import pytest
from sqlalchemy import Connection

from bot.desk import group_posts
from bot.ports import Sent
from bot.store import challenges, coaching, contest, erase, people
from bot.store.contest_tables import challenge, contest_day, verdict
from bot.store.tables import inbox, outbox
from core.model.plan import Plan
from tests.bot.group_world import FRIDAY, MEMBERS, ROW, SQUAT, EveryText, World, world
from tests.bot.shell import CHANNEL, GROUP, INES, OTHER, HandClock, shell

RUTH, TOMAS, PIET, MIRA = (MEMBERS[name] for name in ("Ruth", "Tomas", "Piet", "Mira"))


async def the(here: World) -> challenges.Open:
    return await here.room.store.read(lambda conn: challenges.get(conn, 1))


async def lines(here: World) -> list[str]:
    """The standings as anyone in the group may ask for them."""
    (said,) = await here.in_group(INES, "standings")
    return said.split("\n")[1:]


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


async def test_joining_by_press_and_by_words_with_a_name_of_ones_own(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        await here.press(TOMAS, "c:join:1", name="T. from the docks")
        await here.press(PIET, "c:join:1")
        assert here.posts()[-2:] == [
            "T. from the docks is in. Counting starts on Monday 2 March.",
            "Member 3 is in. Counting starts on Monday 2 March.",
        ]
        assert (await here.in_group(MIRA, "join as r-h"))[0].startswith("Somebody here is shown as r-h already")
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
        assert "Wren: no place yet, 1 of 1 sessions" in "\n".join(await lines(here))
        rows = await here.room.rows(inbox)
        assert [row.body for row in rows if row.chat == 0] == [""]


async def test_the_groups_other_talk_is_neither_kept_nor_answered(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        assert await here.in_group(RUTH, "my knee is bad and I weigh 80", address=False) == []
        assert (await here.room.rows(inbox))[-1].body == ""


async def test_a_week_of_posts_one_message_edited_and_a_new_one_at_the_close(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas") as here:
        here.to(0, 18)
        await here.train(RUTH)
        assert await here.look() == []
        here.to(1, 9)
        (first,) = await here.look()
        assert first.split("\n")[:3] == [
            "Six, week 1 of 3.",
            "Nobody has a place yet.",
            "R-h: no place yet, 1 of 1 sessions",
        ]
        assert "Steps this week: R-h (more repetitions)." in first
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


async def test_where_no_pictures_are_shown_the_end_is_told_in_words(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.room.wire.pictures = False  # type: ignore[attr-defined]
        for day in (0, 3, 7, 10):
            here.to(day, 18)
            await here.train(RUTH)
        here.to(21, 11)
        assert (await here.look())[-1].startswith("Six is over.")
        assert here.room.wire.sent[-1].attachment is None


async def test_a_change_after_the_close_does_not_move_that_week(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        for day in (0, 3):
            here.to(day, 18)
            await here.train(RUTH, "6 3")
        here.to(7, 11)
        await here.look()
        before = await lines(here)

        def lose(conn: object) -> None:
            from bot.store.tables import act

            conn.execute(act.update().values(state="erased"))  # type: ignore[attr-defined]

        await here.room.store.write(lose)
        here.to(7, 20)
        assert await lines(here) == before
        found = await the(here)
        rebuilt = await here.room.store.read(lambda conn: contest.rebuilt(conn, found, 2, here.room.parts.folding))
        assert {one.result for day in rebuilt for one in day.attempts} == {"none"}


async def test_a_change_before_the_close_counts_and_acts_alone_give_the_same(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.to(0, 18)
        await here.train(RUTH, "6 3")
        here.to(3, 18)
        await here.train(RUTH)
        here.to(4, 11)
        before = await lines(here)
        await here.room.store.write(lambda conn: conn.execute(challenge.update().values(looked=None)))
        assert await lines(here) == before
        found = await the(here)
        store, folding = here.room.store, here.room.parts.folding
        (record,) = await store.read(lambda conn: contest.records(conn, found))
        rebuilt = await store.read(lambda conn: contest.rebuilt(conn, found, record.entrant.who, folding))
        assert [day for day in rebuilt if day.on <= record.days[-1].on] == list(record.days)


async def test_a_session_told_in_one_go_waits_for_the_coach(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        for day in (0, 3):
            here.to(day, 18)
            await here.train(RUTH, minutes=0)
        here.to(4, 11)
        before = len(here.room.wire.texts(INES))
        await here.look()
        asked = here.room.wire.texts(INES)[before:]
        assert asked == ["Six: R-h's session of Monday 2 March was not told while it happened. Count it?"]
        assert (await lines(here))[0] == "1. R-h: 0 points, 0 of 2 sessions"
        assert await here.room.say(INES, "yes, always for R-h") == ["Counted, and so are R-h's later ones."]
        assert (await lines(here))[0] == "1. R-h: 100 points, 2 of 2 sessions"
        here.to(7, 18)
        await here.train(RUTH, minutes=0)
        here.to(8, 11)
        await here.look()
        assert {row.word for row in await here.room.rows(verdict)} == {"yes"}


async def test_a_report_beyond_belief_waits_for_the_coach(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        for day in (0, 3, 7):
            here.to(day, 18)
            await here.train(RUTH)
        here.to(10, 18)
        await here.train(RUTH, "20 20")
        here.to(11, 11)
        await here.look()
        asked = [text for text in here.room.wire.texts(INES) if "far above the forecast" in text]
        assert len(asked) == 2
        waiting = [row for row in await here.room.rows(verdict) if row.word == "waits"]
        assert {row.exercise for row in waiting} == {SQUAT, ROW}
        points = (await lines(here))[0]
        await here.press(RUTH, f"c:yes:{waiting[0].id}", chat=RUTH, private=True)
        assert (await lines(here))[0] == points  # it is the coach's word, nobody else's
        await here.press(INES, f"c:yes:{waiting[0].id}", chat=INES, private=True)
        await here.press(INES, f"c:no:{waiting[1].id}", chat=INES, private=True)
        assert here.room.wire.texts(INES)[-2:] == ["Counted.", "Not counted."]
        assert (await lines(here))[0] != points
        await here.press(INES, f"c:no:{waiting[0].id}", chat=INES, private=True)
        assert here.room.wire.texts(INES)[-1] == "That was settled already."


async def test_the_coach_takes_a_session_out_that_nobody_asked_about_and_puts_it_back(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        for day in (0, 3):
            here.to(day, 18)
            await here.train(RUTH)
        here.to(3, 20)
        none = "Six: no session of R-h on Thursday 5 March is in yet. A day is in once it is over."
        assert await here.room.say(INES, "don't count R-h on Thursday") == [none]
        here.to(7, 11)
        await here.look()
        assert (await lines(here))[0] == "1. R-h: 100 points, 2 of 2 sessions"
        (out,) = await here.room.say(INES, "don't count R-h's session of Thursday")
        assert out.startswith("Six: R-h's session of Thursday 5 March doesn't count.")
        assert (await lines(here))[0] == "1. R-h: 50 points, 1 of 2 sessions"  # also after its week's close
        assert await here.room.say(INES, "count Ruth on Thursday") == ["Six: R-h's session of Thursday 5 March counts."]
        assert (await lines(here))[0] == "1. R-h: 100 points, 2 of 2 sessions"
        nobody = "Nobody called Gustav is in a challenge of yours."
        assert await here.room.say(INES, "don't count Gustav on Thursday") == [nobody]
        before = await lines(here)
        await here.room.say(RUTH, "don't count R-h on Thursday")
        await here.in_group(RUTH, "don't count R-h on Thursday")
        assert await lines(here) == before  # it is the coach's word, nobody else's


async def test_a_good_part_of_the_time_that_the_sets_take_is_enough(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas") as here:
        here.to(0, 18)
        await here.train(RUTH, minutes=2)  # of the time that four sets take, 0.3 are 94 s
        here.to(3, 18)
        await here.train(TOMAS, minutes=1)
        here.to(4, 11)
        await here.look()
        waiting = [row.word for row in await here.room.rows(verdict)]
        assert waiting == ["waits"]
        assert any("T-s's session of Thursday" in text for text in here.room.wire.texts(INES))


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
        assert await here.room.say(INES, "zählt") == ["Gezählt."]


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


async def test_after_a_restart_the_standings_are_the_same(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas") as here:
        for day in (0, 3, 7):
            here.to(day, 18)
            await here.train(RUTH)
            here.to(day + 1, 11)
            await here.look()
        before = await lines(here)
        at = here.room.clock.at
    async with shell(tmp_path, clock=HandClock(at)) as room:
        room.core.script = EveryText()
        room.number = 1000
        again = World(room)
        assert await lines(again) == before
        assert await again.look() == []  # nothing is posted twice
        again.to(10, 18)
        await again.train(RUTH)
        again.to(11, 11)
        assert (await again.look())[0].split("\n")[1] == "1. R-h: 100 points, 4 of 4 sessions"


async def test_an_edit_before_the_close_counts_and_one_after_it_does_not(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        for day in (0, 3):
            here.to(day, 18)
            await here.room.say(RUTH, f"{SQUAT} 6 6", message_id=100 + day)
            here.room.clock.move(minutes=20)
            await here.room.say(RUTH, f"{ROW} 6 6")
            if day == 0:
                await here.room.say(RUTH, f"{SQUAT} 6", message_id=100, edit=True)
        here.to(7, 11)
        await here.look()
        assert (await lines(here))[0] == "1. R-h: 88 points, 2 of 2 sessions"
        await here.room.say(RUTH, f"{SQUAT} 6", message_id=103, edit=True)
        assert (await lines(here))[0] == "1. R-h: 88 points, 2 of 2 sessions"


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
            "M-a: no place yet, 0 of 1 sessions",
            "P-t: no place yet, 0 of 1 sessions",
            "T-s: no place yet, 1 of 1 sessions",
            "Steps this week: R-h (more repetitions), T-s (more repetitions).",
        ]
        assert await here.in_group(PIET, "back") == ["P-t is back from tomorrow."]


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
            "Nobody has a place yet.",
            "R-h: no place yet, 1 of 1 sessions",
            "T-s: no place yet, 0 of 1 sessions",
            "Steps this week: R-h (more repetitions).",
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


async def test_removed_from_the_group_it_is_silent_and_back_it_goes_on(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.to(0, 18)
        await here.train(RUTH)
        await here.room.hear(here.room.raw(kind="gone", chat=GROUP))
        here.to(1, 11)
        assert await here.look() == []
        await here.room.hear(here.room.raw(kind="back", chat=GROUP))
        here.to(1, 12)
        assert (await here.look())[0].startswith("Six, week 1 of 3.")


async def test_a_supergroup_goes_on_under_its_new_id(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        await here.room.hear(here.room.raw(kind="renamed", chat=GROUP, new=-1009))
        here.to(0, 18)
        await here.train(RUTH)
        here.to(1, 11)
        await here.look()
        assert here.room.wire.sent[-1].chat == -1009
        (said,) = await here.room.say(RUTH, "standings", chat=-1009, private=False)
        assert said.startswith("Six, week 1 of 3.")


async def test_posts_stay_in_the_topic_in_which_it_was_opened(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        await here.in_group(INES, "end challenge")
        await here.in_group(INES, "challenge from Monday", thread=7)
        assert here.room.wire.sent[-1].thread == 7


async def test_a_member_who_blocks_the_service_still_counts(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.to(0, 18)
        await here.train(RUTH)
        await here.room.hear(here.room.raw(kind="gone", chat=RUTH))
        here.to(1, 11)
        assert "R-h: no place yet, 1 of 1 sessions" in (await here.look())[0]


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


async def test_added_to_a_group_it_is_silent_until_it_is_spoken_to(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        await here.room.hear(here.room.raw(kind="back", chat=-88))
        assert here.room.wire.texts(-88) == []
        new = {"chat": -88, "private": False, "title": "Mill"}
        assert await here.room.say(RUTH, "challenge", **new) == [
            "Only the coach of this group can open or end a challenge."
        ]
        (opening,) = await here.room.say(INES, "challenge", **new)
        assert opening.startswith("Challenge: 6 weeks")


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
