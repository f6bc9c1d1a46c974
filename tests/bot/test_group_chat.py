"""The group as a chat: added, removed, renamed to a supergroup, topics, and its other talk."""

from pathlib import Path

from bot.store.tables import inbox
from tests.bot.group_world import RUTH, world
from tests.bot.shell import GROUP, INES


async def test_the_groups_other_talk_is_neither_kept_nor_answered(tmp_path: Path) -> None:
    async with world(tmp_path, "Ruth") as here:
        assert await here.in_group(RUTH, "my knee is bad and I weigh 80", address=False) == []
        assert (await here.room.rows(inbox))[-1].body == ""


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
