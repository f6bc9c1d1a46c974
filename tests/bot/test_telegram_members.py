"""Members of a group on Telegram, over the loopback Bot API: each way in and out as a phone does it, start to end."""

from pathlib import Path
from typing import Any

from bot.store.tables import inbox
from tests.bot.api_updates import USERNAME, edit, membership, press, text
from tests.bot.group_world import MEMBERS
from tests.bot.shell import INES, OTHER
from tests.bot.test_telegram_group import GROUP, RUTH, Wired, wired

TOMAS, PIET = MEMBERS["Tomas"], MEMBERS["Piet"]
PLAN = "plan\nMonday 18:00\nback squat 2x5-8\ndumbbell row 2x5-8\nThursday 18:00\nback squat 2x5-8\ndumbbell row 2x5-8"


async def alone(it: Wired, user: int, words: str) -> str:
    """Said to the service alone; what it answers there."""
    await it.gets(text(user, words, it.number + 1))
    return it.api.texts(user)[-1]


async def pressed(it: Wired, user: int, data: str) -> str:
    """A button under a message in the group; what the group gets."""
    await it.gets(press(GROUP, data, sender=user))
    return it.api.texts(GROUP)[-1]


async def test_opened_from_the_coachs_own_chat(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        assert (await alone(it, INES, "challenge 3 weeks")).startswith("I am in no group of yours yet.")
        await it.gets(membership(GROUP, "left", "member"))
        await it.says(
            INES,
            f"@{USERNAME} hello",
        )
        assert (
            await alone(it, INES, 'challenge "Spring" for 3 weeks from Monday, sessions only') == "Opened in the group."
        )
        opening = it.api.texts(GROUP)[-1]
        assert opening.startswith("Spring: 3 weeks")
        assert "the trend. Nothing else." in opening
        assert (await pressed(it, RUTH, "c:join:1")).startswith(f"P{RUTH} is in.")


async def test_who_has_no_coach_comes_in_by_the_link_and_is_counted_like_all(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.says(INES, '/challenge "Spring" 3 weeks from Monday, teams Red and Blue')
        answer = await pressed(it, OTHER, "c:join:1:1")
        code = answer.split("?start=")[1].split(",")[0]
        welcome = await alone(it, OTHER, f"/start {code}")
        assert "on your own" in welcome
        assert (await alone(it, OTHER, PLAN)).startswith("Your plan from now on:")
        assert (await pressed(it, OTHER, "c:join:1:1")).startswith(f"P{OTHER} is in.")
        for day in (0, 3):
            it.here.to(day, 18)
            await it.trains(OTHER)
        it.here.to(4, 11)
        await it.looks()
        assert it.api.texts(GROUP)[-1].split("\n")[1:3] == [
            f"1. P{OTHER}: 100 points, 2 of 2 sessions",
            "Teams: Blue 100 points.",
        ]
        it.here.to(22, 11)
        await it.looks()
        assert (await alone(it, RUTH, f"/start {code}")) != welcome  # the door is shut once it is over


async def test_the_door_opens_nothing_but_the_challenge(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.says(INES, "/challenge 3 weeks from Monday")
        code = (await pressed(it, OTHER, "c:join:1")).split("?start=")[1].split(",")[0]
        await it.says(OTHER, f"/start {code}")  # in the group it lets nobody in
        assert "on your own" not in it.api.texts(GROUP)[-1]
        await alone(it, RUTH, f"/start {code}")  # a client stays a client of their coach
        asked = await alone(it, INES, "who needs a word")
        assert "Ruth" in asked or "Everyone" in asked or "All" in asked or "course" in asked


async def test_a_name_mistyped_is_put_right_by_an_edit_and_a_leave_is_not_undone_by_one(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.says(INES, "/challenge 3 weeks from Monday")
        await it.says(RUTH, "/join as Heronn")
        await it.gets(edit(GROUP, "/join as Heron", it.number, sender=RUTH))
        assert it.api.texts(GROUP)[-1] == "Shown as Heron from now on."
        before = len(it.api.sent)
        await it.gets(edit(GROUP, "a word to the others", it.number, sender=RUTH))
        assert len(it.api.sent) == before


async def test_another_bots_commands_are_not_ours_whatever_we_see_as_an_admin(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.says(INES, "/challenge 3 weeks from Monday")
        await it.gets(membership(GROUP, "member", "administrator"))
        before = len(it.api.sent)
        for who in (RUTH, INES, OTHER):
            for words in (
                "/roll 20",
                "/join@another_bot as Me",
                "join as Me",
                "how do we stand?",
                "/poll lunch, 6 reps",
            ):
                await it.says(who, words)
        assert len(it.api.sent) == before
        assert {row.body for row in await it.here.room.rows(inbox) if row.seq > 2} == {""}


async def test_a_member_who_blocks_the_service_counts_and_comes_back(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.begins(RUTH, "Heron")
        it.api.blocked.add(RUTH)
        await it.gets(membership(RUTH, "member", "kicked"))
        it.here.to(1, 11)
        await it.looks()
        assert "Heron 1 of 1" in it.api.texts(GROUP)[-1]
        await it.says(RUTH, f"@{USERNAME} back-squat 6 6")  # trains by words in the group; the answer cannot be sent
        assert it.api.texts(GROUP)[-1] == "Kept: 2 sets. The rest is in your own chat."
        it.api.blocked.clear()
        await it.gets(membership(RUTH, "kicked", "member"))
        it.here.to(3, 18)
        await it.trains(RUTH)
        it.here.to(4, 11)
        await it.looks()
        assert any("1. Heron: 100 points, 2 of 2 sessions" in one for one in it.api.texts(GROUP))


async def test_removed_from_the_group_without_being_told_and_added_again(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.begins(RUTH, "Heron")
        it.api.blocked.add(GROUP)  # the update that tells of it was lost: the refusal tells
        it.here.to(1, 11)
        await it.looks()
        it.here.to(1, 12)
        await it.looks()
        it.api.blocked.clear()
        await it.gets(membership(GROUP, "left", "member"))
        it.here.to(3, 18)
        await it.trains(RUTH)
        it.here.to(4, 11)
        await it.looks()
        assert it.api.texts(GROUP)[-1].split("\n")[:2] == [
            "Challenge, week 1 of 3.",
            "1. Heron: 100 points, 2 of 2 sessions",
        ]


async def test_teams_names_and_going_and_coming(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.says(INES, '/challenge "Two" for 2 weeks from Monday, steps only, teams Red and Blue')
        assert await pressed(it, RUTH, "c:join:1:0") == f"P{RUTH} is in. Counting starts on Monday 2 March."
        await it.says(TOMAS, "/join Blue as Crane")
        await it.says(PIET, "/join as Crane in team Red")
        assert it.api.texts(GROUP)[-1].startswith("Somebody here is shown as Crane already.")
        await it.says(PIET, "/join")
        assert it.api.texts(GROUP)[-1] == "Which team? Red, Blue"
        assert await pressed(it, PIET, "c:join:1:1") == f"P{PIET} is in. Counting starts on Monday 2 March."
        for day in (0, 3):
            it.here.to(day, 18)
            for user in (RUTH, TOMAS):
                await it.trains(user)
        it.here.to(4, 11)
        await it.says(RUTH, "/leave")
        await it.looks()
        said = it.api.texts(GROUP)[-1].split("\n")
        assert said[1] == "1. Crane: 100 points, 2 of 2 sessions"
        assert said[-2] == "Teams: Blue 50 points."
        await it.says(RUTH, "/join Blue")
        it.here.to(4, 12)
        await it.looks()
        assert any("Teams: Blue 67 points." in one for one in it.api.texts(GROUP))


async def test_two_groups_of_one_coach_at_once(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        river: Any = -77
        await it.says(INES, '/challenge "Harbour" 3 weeks from Monday')
        await it.gets(text(river, '/challenge "River" 3 weeks from Monday', it.number + 1, sender=INES))
        await it.says(RUTH, "/join as Heron")
        await it.gets(text(river, "/join as Crane", it.number + 1, sender=TOMAS))
        for day in (0, 3):
            it.here.to(day, 18)
            await it.trains(RUTH)
            await it.trains(TOMAS)
        it.here.to(4, 11)
        await it.looks()
        assert "Heron" in it.api.texts(GROUP)[-1]
        assert "Crane" not in it.api.texts(GROUP)[-1]
        assert "Crane" in it.api.texts(river)[-1]
        assert "Heron" not in it.api.texts(river)[-1]
        assert (await alone(it, INES, "end challenge river")).startswith("River ends here")
        assert it.api.texts(river)[-1] == "River ends here, on the coach's word."
        assert "Heron" in it.api.texts(GROUP)[-1]


async def test_the_end_is_shown_with_its_picture(tmp_path: Path) -> None:
    async with wired(tmp_path) as it:
        await it.says(INES, '/challenge "Short" for 1 week from Monday')
        await it.says(RUTH, "/join as Heron")
        for day in (0, 3):
            it.here.to(day, 18)
            await it.trains(RUTH)
        it.here.to(7, 11)
        await it.looks()
        (call,) = it.api.called("sendPhoto")
        assert call.arguments["caption"].startswith("Short is over.\nFirst, with 100 points: Heron.")
        assert call.files["photo"][0] == "standings.png"
