"""Who may say what: strangers, codes, coaches, groups."""

import re
from collections.abc import AsyncIterator
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import Connection

from bot.desk import words
from bot.store import invites, outcomes, people
from bot.store.acts import Cause
from bot.store.invites import LIFETIME, Invite
from bot.store.strangers import REMEMBERED
from bot.store.tables import address, agenda, chat, hold, inbox, invite, metadata, outbox, person, rein, stranger
from core.model.acts import AcheAct
from core.model.book import Hold
from core.model.outcome import Keep, Outcome, Reply
from core.say.english_desk import ENGLISH_DESK
from tests.bot.shell import CHANNEL, GROUP, INES, MONDAY, OTHER, RUTH, TOMAS, Shell, keeping, shell, squat, with_people


@pytest.fixture
async def room(each_store: str, tmp_path: Path) -> AsyncIterator[Shell]:
    async with shell(tmp_path) as opened:
        yield await with_people(opened)


async def coach_code(room: Shell, name: str = "Olga", zone: str = "Europe/Rome") -> str:
    return await room.store.write(lambda conn: invites.make(conn, Invite("coach", name, zone, None), room.clock()))


async def client_code(room: Shell, name: str = "Piet") -> str:
    (said,) = await room.say(INES, f"invite {name}")
    found = re.search(r"start=(\S+)$", said)
    assert found is not None, said
    return found.group(1)


# Strangers


async def test_a_stranger_gets_one_polite_answer_a_day(room: Shell) -> None:
    (said,) = await room.say(OTHER, "hello, I am Zebulon")
    assert "coach" in said
    assert await room.say(OTHER, "anyone?") == []
    room.clock.at += REMEMBERED
    assert await room.say(OTHER, "still there?") == [said]


async def test_nothing_of_a_stranger_is_kept(room: Shell, tmp_path: Path) -> None:
    """Looked for in every table, and where the store is a file in its bytes once it is closed."""
    await room.say(OTHER, "hello, I am Zebulon", name="Quillfeather")
    for table in metadata.sorted_tables:
        for row in await room.rows(table):
            assert "Zebulon" not in str(row)
            assert str(OTHER) not in [str(value) for value in row]
    (row,) = await room.rows(inbox)
    assert (row.body, row.chat, row.state) == ("", 0, "done")
    assert len(await room.rows(stranger)) == 1
    assert await room.rows(outbox) == []
    assert room.core.asked == []
    await room.store.close()
    file = tmp_path / "gym.db"
    if not file.exists():
        return
    held = file.read_bytes()
    assert b"Ruth" in held
    assert b"Zebulon" not in held
    assert b"Quillfeather" not in held


async def test_a_strangers_mark_is_gone_after_its_day(room: Shell) -> None:
    await room.say(OTHER, "hello")
    await room.tick.tidy()
    assert len(await room.rows(stranger)) == 1
    room.clock.at += REMEMBERED
    await room.tick.tidy()
    assert await room.rows(stranger) == []


async def test_a_strangers_redelivered_update_is_not_answered_again(room: Shell) -> None:
    raw = room.raw(user=OTHER, text="hello")
    await room.hear(raw)
    room.clock.at += REMEMBERED
    await room.hear(raw)
    assert len(room.wire.texts(OTHER)) == 1


@pytest.mark.parametrize(
    "kind", [{"kind": "press", "data": "a:1:0", "token": "t", "message_id": 3}, {"text": "\ud83d"}]
)
async def test_a_stranger_may_send_anything(room: Shell, kind: dict[str, Any]) -> None:
    raw = room.raw(user=OTHER, **kind)
    await room.hear(raw)
    assert len(room.wire.texts(OTHER)) == 1


async def test_talk_between_others_leaves_no_trace(room: Shell) -> None:
    await room.say(RUTH, "secret plans", chat=GROUP, private=False, address=False)
    (row,) = await room.rows(inbox)
    assert (row.body, row.chat) == ("", 0)
    assert room.wire.sent == []


# Codes


async def test_a_coach_joins_by_a_code_and_can_invite(room: Shell) -> None:
    code = await coach_code(room)
    (said,) = await room.say(OTHER, f"/start {code}")
    assert "Olga" in said
    (invitation,) = await room.say(OTHER, "invite Piet")
    assert re.search(r"start=[A-Za-z0-9_-]{16,64}$", invitation)
    (row,) = [row for row in await room.rows(person) if row.name == "Olga"]
    assert (row.coaches, row.lifts, row.zone) == (1, 0, "Europe/Rome")


async def test_a_client_joins_by_the_coachs_link_and_can_train_at_once(room: Shell) -> None:
    code = await client_code(room)
    (said,) = await room.say(OTHER, f"/start {code}")
    assert "Piet" in said
    assert "Ines" in said
    room.core.script["60x8"] = keeping(squat(8))
    assert await room.say(OTHER, "60x8") == ["kept"]
    _, book = room.core.asked[-1]
    assert (book.profile.name, book.profile.coach, book.lifter.unit) == ("Piet", "Ines", "kg")
    assert "Piet" in room.wire.texts(INES)[-1]
    assert [row.kind for row in await room.rows(agenda)] == ["digest", "weeks", "summary"]


@pytest.mark.parametrize("text", ["/start {}", "/start={}", "/start@some_bot {}", "/START {}", "  /start   {}  "])
async def test_a_code_may_be_sent_in_any_of_its_forms(room: Shell, text: str) -> None:
    code = await client_code(room)
    (said,) = await room.say(OTHER, text.format(code))
    assert "Piet" in said


async def test_a_code_works_once(room: Shell) -> None:
    code = await client_code(room)
    await room.say(OTHER, f"/start {code}")
    (said,) = await room.say(OTHER + 1, f"/start {code}")
    assert said == words.say("code_used")
    assert len(await room.rows(address)) == 4


async def test_a_code_expires(room: Shell) -> None:
    on_time, late = await client_code(room), await client_code(room)
    room.clock.at += LIFETIME - timedelta(seconds=1)
    (said,) = await room.say(OTHER, f"/start {on_time}")
    assert "Piet" in said
    room.clock.move(seconds=1)
    assert await room.say(OTHER + 1, f"/start {late}") == [words.say("code_expired")]


async def test_an_unknown_code_is_answered_with_what_to_do_and_leaves_nothing(room: Shell) -> None:
    assert await room.say(OTHER, "/start nonsense-code-Zebulon") == [words.say("code_unknown")]
    assert [row.body for row in await room.rows(inbox)] == [""]
    assert await room.say(RUTH, "/start nonsense") == [words.say("code_unknown")]


async def test_only_hashes_of_codes_are_kept(room: Shell) -> None:
    code = await client_code(room)
    assert code not in str(await room.rows(invite))


async def test_a_coach_does_not_spend_an_own_invitation(room: Shell) -> None:
    code = await client_code(room)
    assert await room.say(INES, f"/start {code}") == [words.say("code_own")]
    (said,) = await room.say(OTHER, f"/start {code}")
    assert "Piet" in said


async def test_a_code_is_not_taken_in_a_group(room: Shell) -> None:
    code = await client_code(room)
    said = await room.say(OTHER, f"/start {code}", chat=GROUP, private=False)
    said += await room.say(RUTH, f"/start {code}", chat=GROUP, private=False)
    assert said == [words.say("code_private")] * 2
    (joined,) = await room.say(OTHER, f"/start {code}")
    assert "Piet" in joined


async def test_a_lifter_who_opens_another_coachs_link_changes_coach_and_keeps_the_history(room: Shell) -> None:
    room.core.script["60x8"] = keeping(squat(8))
    await room.say(RUTH, "60x8")
    await room.say(OTHER, f"/start {await coach_code(room)}")
    (said,) = await room.say(OTHER, "invite Ruthie")
    await room.say(RUTH, said.splitlines()[-1])
    await room.say(RUTH, "look")
    _, book = room.core.asked[-1]
    assert (book.profile.name, book.profile.coach, len(book.kept)) == ("Ruth", "Olga", 1)


# Coaches


async def test_a_coach_sees_the_clients_and_when_they_last_trained(room: Shell) -> None:
    room.core.script["60x8"] = keeping(squat(8))
    await room.say(RUTH, "60x8")
    assert await room.say(INES, "clients") == ["Ruth: last session 2 March 2026\nTomas: no session yet"]


async def test_another_coachs_clients_are_not_shown(room: Shell) -> None:
    await room.say(OTHER, f"/start {await coach_code(room)}")
    assert await room.say(OTHER, "clients") == ["No clients yet. Write: invite NAME"]
    assert await room.say(OTHER, "clear Ruth") == ["You have no client called Ruth. Write: clients"]


@pytest.mark.parametrize(
    ("said", "key"),
    [
        ("invite", "desk.lacking.invite_how"),
        ("clear", "desk.lacking.clear_how"),
        ("good morning", "desk.unknown"),
        ("help", "desk.help"),
    ],
)
async def test_a_coach_is_told_what_can_be_said(room: Shell, said: str, key: str) -> None:
    assert await room.say(INES, said) == [ENGLISH_DESK[key]]


async def test_a_name_that_is_too_long_is_refused(room: Shell) -> None:
    (said,) = await room.say(INES, "invite " + "x" * 61)
    assert "60" in said
    assert await room.rows(invite) == []


async def test_a_hold_is_cleared_by_the_coach_of_that_lifter(room: Shell) -> None:
    def held(conn: Connection) -> None:
        (ruth,) = people.by_name(conn, "Ruth")
        outcomes.carry_out(conn, Cause(ruth.id, None, MONDAY), Outcome(hold=Hold("chest", MONDAY)))

    await room.store.write(held)
    await room.say(RUTH, "look")
    assert room.core.asked[-1][1].hold == Hold("chest", MONDAY)
    (cleared,) = await room.say(INES, "clear ruth")
    assert cleared.startswith("Cleared: Ruth gets targets again. Nothing goes up until 9 March")
    assert [(one.kind, one.until.isoformat()) for one in await room.rows(rein)] == [("hold", "2026-03-09")]
    assert await room.rows(hold) == []
    assert await room.say(INES, "clear ruth") == ["Nothing is held for Ruth."]


async def test_a_coach_who_trains_is_heard_as_both(room: Shell) -> None:
    await room.store.write(lambda conn: people.make_lifter(conn, people.by_name(conn, "Ines")[0].id, None))
    room.core.script["60x8"] = keeping(squat(8))
    assert await room.say(INES, "60x8") == ["kept"]
    assert await room.say(INES, "clients") == ["Ruth: no session yet\nTomas: no session yet"]


# Groups


async def test_a_set_in_a_group_is_kept_and_the_answer_goes_to_the_lifter_alone(room: Shell) -> None:
    room.core.script["60x8"] = keeping(squat(8), text="Squat 60 kg: 8. Next 62.5 kg, and mind that knee.")
    (in_group,) = await room.say(RUTH, "60x8", chat=GROUP, private=False)
    assert in_group == words.say("group_kept", name="Ruth", count=1)
    assert "1 set." in in_group
    assert room.wire.texts(RUTH) == ["Squat 60 kg: 8. Next 62.5 kg, and mind that knee."]


async def test_an_ache_never_reaches_a_group(room: Shell) -> None:
    room.core.script["knee 4/10"] = Outcome(
        keep=(Keep(AcheAct("knee", None, 4.0), MONDAY.date()),), replies=(Reply("Left knee, 4 of 10."),)
    )
    assert await room.say(RUTH, "knee 4/10", chat=GROUP, private=False) == [words.say("group_answered", name="Ruth")]


async def test_coach_words_in_a_group_do_nothing_there(room: Shell) -> None:
    said = await room.say(INES, "clients", chat=GROUP, private=False)
    assert not any("last session" in text or "no session" in text for text in said)


async def test_a_group_that_moved_is_the_same_chat(room: Shell) -> None:
    room.core.script["60x8"] = keeping(squat(8))
    await room.say(RUTH, "60x8", chat=GROUP, private=False)
    await room.hear(room.raw(kind="renamed", chat=GROUP, new=-1001))
    await room.say(TOMAS, "60x8", chat=-1001, private=False)
    groups = [row for row in await room.rows(chat) if row.person is None]
    assert [(row.channel, row.platform) for row in groups] == [(CHANNEL, -1001)]


async def test_a_group_that_wrote_under_its_new_id_first_is_joined(room: Shell) -> None:
    room.core.script["60x8"] = keeping(squat(8))
    await room.say(RUTH, "60x8", chat=GROUP, private=False)
    await room.say(TOMAS, "60x8", chat=-1001, private=False)
    await room.hear(room.raw(kind="renamed", chat=GROUP, new=-1001))
    groups = [row for row in await room.rows(chat) if row.person is None]
    assert [row.platform for row in groups] == [-1001]
    assert await room.say(TOMAS, "60x8", chat=-1001, private=False) != []


def test_every_text_fills_with_the_slots_that_it_names() -> None:
    slots = {"name": "Ruth", "coach": "Ines", "link": "x", "most": "60", "day": "Mon", "text": "hm"}
    for key in words.known():
        said = words.say(key, count=2, **slots)
        assert said
        assert "{" not in said
        assert "!" not in said
