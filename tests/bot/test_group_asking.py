"""What waits for the coach's word, through the whole pass: asked seldom, by day, and settled for what is listed."""

from pathlib import Path

from bot.store.contest_tables import verdict
from tests.bot.group_world import PIET, RUTH, SQUAT, TOMAS, World, lines, the, world
from tests.bot.shell import INES, OTHER


def questions(here: World) -> list[str]:
    """What the coach was asked."""
    return [text for text in here.room.wire.texts(INES) if "for your word" in text]


async def _days(here: World, days: tuple[int, ...], user: int = RUTH) -> None:
    """Sessions told in one go, each looked at the morning after."""
    for day in days:
        here.to(day, 18)
        await here.train(user, minutes=0)
        here.to(day + 1, 11)
        await here.look()


async def test_the_first_is_asked_at_once_and_the_rest_of_a_week_at_its_close(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        await _days(here, (0, 3))
        assert len(questions(here)) == 1
        assert await here.room.say(INES, "count it") == ["R-h: counted."]
        here.to(7, 11)
        await here.look()
        assert questions(here)[1:] == [
            "Six: a report of R-h waits for your word.\nThursday 5 March: not told while it happened\nCount it?"
        ]
        await _days(here, (7, 10))
        assert len(questions(here)) == 2
        here.to(14, 11)
        await here.look()
        assert questions(here)[2].split("\n") == [
            "Six: 3 reports of R-h wait for your word.",
            "Thursday 5 March: not told while it happened",
            "Monday 9 March: not told while it happened",
            "Thursday 12 March: not told while it happened",
            "Count them?",
        ]
        assert await here.room.say(INES, "count them") == ["R-h: counted."]
        assert (await lines(here))[0] == "1. R-h: 100 points, 4 of 4 sessions"


async def test_the_member_hears_once_and_alone_why_it_waits(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        await _days(here, (0, 3, 7))
        here.to(14, 11)
        await here.look()
        told = [
            one for one in here.room.wire.sent if "told in one go, so it counts once the coach says yes" in one.text
        ]
        assert [one.chat for one in told] == [RUTH]
        assert told[0].text.startswith("Six: your session of Monday 2 March was told in one go")


async def test_an_answer_is_for_what_was_listed_when_it_was_asked(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        await _days(here, (0, 3))
        (asked,) = [one for one in here.room.wire.sent if "for your word" in one.text]
        here.to(7, 11)
        await here.look()
        await here.press(INES, asked.buttons[-1][1], chat=INES, private=True)
        assert [(row.on.day, row.word) for row in await here.room.rows(verdict)] == [(2, "no"), (5, "waits")]
        assert await here.room.say(INES, "count Ruth on 5 March") == ["Six: R-h's session of Thursday 5 March counts."]
        assert (await lines(here))[0] == "1. R-h: 50 points, 1 of 2 sessions"


async def test_the_coachs_word_on_a_session_settles_its_exercises_too(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        for day in (0, 3, 7, 10):
            here.to(day, 18)
            await here.train(RUTH, "20 20" if day == 10 else "6 6")
        here.to(11, 11)
        await here.look()
        assert [row.word for row in await here.room.rows(verdict)] == ["waits", "waits"]
        await here.room.say(INES, "count R-h on 12 March")
        assert {row.word for row in await here.room.rows(verdict)} == {"yes"}
        assert (await lines(here))[0] == "1. R-h: 100 points, 4 of 4 sessions"


async def test_asking_for_the_standings_at_night_wakes_no_coach(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        here.to(0, 18)
        await here.train(RUTH, minutes=0)
        here.to(1, 3)
        await lines(here)
        await here.look()
        assert questions(here) == []
        here.to(1, 9)
        await here.look()
        assert len(questions(here)) == 1


async def test_what_cannot_count_is_not_asked_about(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", counts=", sessions only") as here:
        for day in (0, 3, 7):
            here.to(day, 18)
            await here.train(RUTH)
            await here.train(TOMAS, minutes=0)
        here.to(10, 18)
        await here.train(RUTH, "20 20")  # beyond belief, where exercises bring no points
        here.to(10, 20)
        await here.in_group(TOMAS, "join as Late")  # what came before is no chance
        await here.in_group(RUTH, "pause")
        here.to(14, 18)
        await here.train(RUTH, minutes=0)
        here.to(15, 11)
        await here.look()
        assert questions(here) == []


async def test_two_members_answers_do_not_mix(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas", "Piet") as here:
        here.to(0, 18)
        await here.train(PIET, minutes=0)
        here.to(1, 11)
        await here.look()
        here.to(3, 18)
        await here.train(RUTH, minutes=0)
        here.to(4, 11)
        await here.look()
        assert await here.room.say(INES, "yes, always for R-h") == [
            "R-h: counted, and so is what is told in one go from now on."
        ]
        assert await here.room.say(INES, "don't count it") == ["P-t: not counted."]
        said = await lines(here)
        assert "1. R-h: 50 points, 1 of 2 sessions" in said
        assert "2. P-t: 0 points, 0 of 2 sessions" in said


async def test_the_end_waits_a_day_for_the_coachs_word_and_then_stands(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth", "Tomas") as here:
        for user, minutes in ((RUTH, 0), (TOMAS, 20)):
            for day in (14, 17):
                here.to(day, 18)
                await here.train(user, minutes=minutes)
        here.to(21, 10, 30)
        assert not any("is over" in post for post in await here.look())
        (asked,) = [one for one in here.room.wire.sent if "for your word" in one.text]
        here.to(22, 9)
        assert not any("is over" in post for post in await here.look())
        here.to(22, 10, 30)
        (final,) = await here.look()
        assert final.split("\n")[1] == "First, with 33 points: T-s."
        await here.press(INES, asked.buttons[0][1], chat=INES, private=True)
        assert here.room.wire.texts(INES)[-1] == "Six is over; its result stands."
        assert len(questions(here)) == 1


async def test_the_end_comes_at_once_when_the_word_is_given(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        for day in (0, 3, 7, 10, 14):
            here.to(day, 18)
            await here.train(RUTH)
        here.to(17, 18)
        await here.train(RUTH, minutes=0)
        here.to(21, 10, 30)
        await here.look()
        assert (await the(here)).state == "on"
        await here.room.say(INES, "count it")
        (final,) = await here.look()
        assert "First, with 100 points: R-h." in final


async def test_a_report_of_another_coachs_client_is_asked_about_without_its_exercise(tmp_path: Path) -> None:
    async with world(tmp_path) as here:
        await here.comes_by_the_door(OTHER, "Wren", "Monday 18:00\nback squat 2x5-8\nThursday 18:00\nback squat 2x5-8")
        for day in (0, 3, 7, 10):
            here.to(day, 18)
            await here.room.say(OTHER, f"{SQUAT} {20 if day == 10 else 6}")
            here.room.clock.move(minutes=20)
            await here.room.say(OTHER, f"{SQUAT} {20 if day == 10 else 6}")
        here.to(11, 11)
        await here.look()
        (asked,) = questions(here)
        assert asked.split("\n")[1] == "Thursday 12 March, exercise: far above the forecast"
