"""What counts, through the whole pass: what waits for the coach, the coach's word, edits, closed weeks, a restart."""

from collections.abc import Mapping
from datetime import date
from functools import partial
from pathlib import Path

from sqlalchemy import Connection

from bot.store import contest, contest_facts, people
from bot.store.contest_tables import challenge, verdict
from tests.bot.group_world import ROW, RUTH, SQUAT, TOMAS, EveryText, World, lines, the, world
from tests.bot.shell import INES, HandClock, shell


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
            here.to(day + 1, 11)
            await here.look()
        asked = [text for text in here.room.wire.texts(INES) if "waits for your word" in text]
        first = "Six: a report of R-h waits for your word.\nMonday 2 March: not told while it happened\nCount it?"
        assert asked == [first]
        assert (await lines(here))[0] == "1. R-h: 0 points, 0 of 2 sessions"
        trusted = "R-h: counted, and so is what is told in one go from now on."
        assert await here.room.say(INES, "yes, always for R-h") == [trusted]
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
        (asked,) = [one for one in here.room.wire.sent if "far above the forecast" in one.text]
        assert asked.text.split("\n") == [
            "Six: 2 reports of R-h wait for your word.",
            "Thursday 12 March, barbell back squat: far above the forecast",
            "Thursday 12 March, one-arm dumbbell row: far above the forecast",
            "Count them?",
        ]
        assert [label for label, _ in asked.buttons] == ["count them", "don't count them"]
        yes = asked.buttons[0][1]
        waiting = [row for row in await here.room.rows(verdict) if row.word == "waits"]
        assert {row.exercise for row in waiting} == {SQUAT, ROW}
        points = (await lines(here))[0]
        await here.press(RUTH, yes, chat=RUTH, private=True)
        assert (await lines(here))[0] == points  # it is the coach's word, nobody else's
        await here.press(INES, yes, chat=INES, private=True)
        assert here.room.wire.texts(INES)[-1] == "R-h: counted."
        assert {row.word for row in await here.room.rows(verdict)} == {"yes"}
        assert (await lines(here))[0] != points
        await here.press(INES, asked.buttons[1][1], chat=INES, private=True)
        assert here.room.wire.texts(INES)[-1] == "That was settled already."


async def test_what_the_coach_refused_is_no_part_of_the_forecast_for_later_reports(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        for day in (0, 3, 7):
            here.to(day, 18)
            await here.train(RUTH)
        here.to(10, 18)
        await here.train(RUTH, "20 20")
        here.to(11, 11)
        await here.look()
        (first, second) = await here.room.rows(verdict)
        await here.press(INES, f"c:no:{first.id}", chat=INES, private=True)  # the older of the two alone
        await here.press(INES, f"c:yes:{second.id}", chat=INES, private=True)
        here.to(14, 11)
        await here.look()
        here.to(14, 18)
        await here.train(RUTH, "20 20")
        here.to(15, 11)
        await here.look()
        assert len(await here.room.rows(verdict)) == 2  # asked about with the week's others, at its close
        here.to(21, 11)
        await here.look()
        assert [row.exercise for row in await here.room.rows(verdict)] == [
            first.exercise,
            second.exercise,
            first.exercise,
        ]
        then, later = [
            await here.room.store.read(partial(_known_before, here, on)) for on in (first.on, date(2026, 3, 16))
        ]
        assert later[first.exercise] == then[first.exercise]
        assert later[second.exercise] != then[second.exercise]


def _known_before(here: World, on: date, conn: Connection) -> Mapping[str, str]:
    """The estimates that reports of that day are held against."""
    who = people.by_name(conn, "Ruth")[0].id
    planned = contest_facts.planned(conn, who, on, on)[on]
    return contest_facts.told(conn, who, on, planned, here.room.parts.folding).before


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
        assert any("T-s" in text and "Thursday 5 March: not told" in text for text in here.room.wire.texts(INES))


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
