"""Roles by words: every order and every press, tried by everybody. Nobody reads or changes what is not theirs."""

from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import Connection, MetaData, Table, select

from bot.store import coaching, people
from bot.store.tables import metadata
from tests.bot.office import START, USERS, office
from tests.bot.shell import GROUP, Shell

SECRET = "kept between us"
ORDERS = [
    "invite Zoe",
    "cancel the invitation of Ada",
    "clients",
    "plan of Mira",
    "plan for Mira: Mon 18:00 squat 3x5",
    "copy Tomas's plan to Mira",
    "put back the old plan of Mira",
    "week of Mira",
    "weeks",
    "who needs a word",
    "overview",
    "spreadsheet",
    "spreadsheet of Mira",
    "tell Mira hello",
    "tell everyone: hello",
    "note on Mira: something",
    "notes on Mira",
    "Mira ask first",
    "hold Mira's squats",
    "free Mira",
    "24 for 10 next time on goblet squat for Mira",
    "no heavier for Mira",
    "tempo before load for Mira",
    "clear Mira",
    "end work with Mira",
    "hand Mira to Jana",
    "what if Mira did tempo before load for 6 weeks",
    "8 to 14 sets of chest for Mira",
    "usual sets for Mira",
    "every 4th week easier for Mira",
    "no easier weeks for Mira",
    "swap goblet squats for hip thrusts for Mira",
    "ask first on goblet squat for Mira",
    "old plan of Mira",
    "how is Mira",
    "help",
    "digest at 6:30",
    "weeks on monday at 8",
    "yes",
    "no",
]
OUTSIDERS = ["Nobody", "Tomas", "Lev", "Jana"]
"""A stranger, a lifter of the same coach, another coach's client, another coach."""
LEAK = ("Mira", "goblet", SECRET, "Ada", "Tomas", "Ruth")
"""Words that no outsider may ever be answered with, unless they said them."""
COACH_TABLES = {"plan", "plan_version", "rein", "remark", "word", "hold", "invite", "question"}


async def seeded(room: Shell) -> dict[str, int]:
    """A note, an open question of Ines, an alarm; gives the questions' keys."""

    def seed(conn: Connection) -> dict[str, int]:
        (ines,), (mira,) = people.by_name(conn, "Ines"), people.by_name(conn, "Mira")
        coaching.add_remark(conn, ines.id, mira.id, START, SECRET)
        body = {"to": [mira.id], "text": "hello"}
        return {
            "tell": coaching.ask(conn, ines.id, "tell", body, START),
            "end": coaching.ask(conn, ines.id, "end", {}, START, about=mira.id),
        }

    await room.say(USERS["Ines"], "invite Ada")
    return await room.store.write(seed)


async def things(room: Shell) -> dict[str, list[Any]]:
    """Everything of the coach's desk at rest, and who coaches whom."""

    def look(conn: Connection) -> dict[str, list[Any]]:
        known: MetaData = metadata
        found = {
            name: [tuple(row) for row in conn.execute(select(known.tables[name]))] for name in sorted(COACH_TABLES)
        }
        found["coached"] = [(one.id, one.coach) for one in people.lifters(conn)]
        return found

    return await room.store.read(look)


def heard(room: Shell, who: str, since: int) -> str:
    chats = {USERS[who]} if who in USERS else {GROUP}
    return "\n".join(parcel.text for parcel in room.wire.sent[since:] if parcel.chat in chats)


@pytest.mark.parametrize("who", OUTSIDERS)
async def test_no_outsider_reads_or_changes_by_words(who: str, tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        await seeded(room)
        for order in ORDERS:
            before, sent = await things(room), len(room.wire.sent)
            room.clock.move(minutes=1)
            await room.hear(room.raw(user=USERS[who], text=order))
            after = await things(room)
            own = {"invite", "question", "word"} if who == "Jana" else set()  # her own invitations, and words to Lev
            for name in before:
                if name not in own:
                    assert after[name] == before[name], (who, order, name)
            told = heard(room, who, sent)
            for word in LEAK:
                allowed = word.lower() in order.lower() or word == who or (word == "Ruth" and "invite Ruth" in told)
                assert allowed or word not in told, (who, order, told)
            others = [parcel.text for parcel in room.wire.sent[sent:] if parcel.chat == USERS["Mira"]]
            assert others == [], (who, order)


@pytest.mark.parametrize("who", [*OUTSIDERS, "Mira"])
async def test_no_outsider_presses_what_was_asked_of_the_coach(who: str, tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        keys = await seeded(room)
        before = await things(room)
        forged = [f"c:{key}:{letter}" for key in keys.values() for letter in "yn"]
        forged += [
            "o:clear Mira",
            "o:free Mira",
            "o:end work with Mira",
            "o:8 to 14 sets of chest for Mira",
            "o:plan for Mira: Mon 18:00 squat 3x5",
            "o:what if Mira did tempo before load for 6 weeks",
            "o:weeks",
            "o:overview",
            "o:spreadsheet of Mira",
            "o:yes",
            "o:week of Mira",
            "o:tell Mira boo",
            "c:999:y",
            "c:x:y",
            "c:",
            "o:",
            "c:1",
            "d:1:m",
            "a:1:0",
        ]
        for data in forged:
            sent = len(room.wire.sent)
            await room.hear(room.raw(kind="press", user=USERS[who], message_id=1, data=data, token="t"))
            told = heard(room, who, sent)
            assert SECRET not in told
            assert "Told" not in told, (who, data)
        assert await things(room) == before


async def test_a_press_of_the_coach_counts_once_and_a_replay_changes_nothing(tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        keys = await seeded(room)
        press = room.raw(kind="press", user=USERS["Ines"], message_id=1, data=f"c:{keys['tell']}:y", token="t")
        await room.hear(press)
        assert room.wire.texts(USERS["Mira"]) == ["Ines says: hello"]
        await room.hear(press)  # the channel brings it again
        again = room.raw(kind="press", user=USERS["Ines"], message_id=1, data=f"c:{keys['tell']}:y", token="t")
        await room.hear(again)  # pressed again
        turned = room.raw(kind="press", user=USERS["Ines"], message_id=1, data=f"c:{keys['tell']}:n", token="t")
        await room.hear(turned)
        assert room.wire.texts(USERS["Mira"]) == ["Ines says: hello"]
        assert room.wire.texts(USERS["Ines"])[-2:] == ["That question is closed."] * 2


@pytest.mark.parametrize("order", ORDERS)
async def test_the_coach_is_answered_in_private_and_never_by_order_in_a_group(order: str, tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        await seeded(room)
        before = await things(room)
        await room.hear(room.raw(user=USERS["Ines"], chat=GROUP, private=False, text=order, address=True))
        assert await things(room) == before
        assert SECRET not in heard(room, "group", 0)
        room.clock.move(minutes=1)
        sent = len(room.wire.sent)
        await room.hear(room.raw(user=USERS["Ines"], text=order))
        assert heard(room, "Ines", sent), order


async def test_a_coachs_own_data_holds_the_notes_and_a_clients_does_not(tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        await seeded(room)
        for who, holds in (("Ines", True), ("Mira", False), ("Jana", False)):
            await room.say(USERS[who], "export")
            files = [one.attachment for one in room.wire.sent if one.chat == USERS[who] and one.attachment]
            assert files, who
            assert any(SECRET.encode() in content for _, content in files) is holds, who


async def test_an_order_written_over_is_not_worked_twice(tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        await room.say(USERS["Ines"], "tell Mira hello", message_id=50)
        (said,) = await room.say(USERS["Ines"], "tell Mira goodbye", message_id=50, edit=True)
        assert "edit changes nothing" in said
        assert room.wire.texts(USERS["Mira"]) == ["Ines says: hello"]
        (said,) = await room.say(USERS["Ines"], "good morning to all", message_id=50, edit=True)
        assert "edit changes nothing" in said


async def test_a_plan_written_over_is_read_anew(tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        await room.say(USERS["Ines"], "plan for Tomas: Mon 18:00 sqat 3x5", message_id=50)
        (said,) = await room.say(USERS["Ines"], "plan for Tomas: Mon 18:30 squat 3x5", message_id=50, edit=True)
        assert "Monday 18:30" in said
        await room.say(USERS["Ines"], "yes")
        (said,) = await room.say(USERS["Ines"], "plan of Tomas")
        assert "Monday 18:30" in said
        assert await room.say(USERS["Ines"], "yes") == ["There is no question open."]


async def test_a_question_about_a_client_who_left_is_void(tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        await room.say(USERS["Ines"], "plan for Tomas: Mon 18:00 squat 3x5")
        await room.say(USERS["Ines"], "hand Tomas to Jana")
        await room.say(USERS["Jana"], "yes")
        before = await things(room)
        (said,) = await room.say(USERS["Ines"], "yes")
        assert said == "That question is closed."
        after = await things(room)
        assert after["plan"] == before["plan"]


async def test_a_coach_who_trains_is_both_and_no_mix_up(tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        await room.store.write(lambda conn: people.make_lifter(conn, people.by_name(conn, "Jana")[0].id, None))
        (said,) = await room.say(USERS["Jana"], "squat 60 kg 8")
        assert said.startswith("Barbell back squat 60 kg: 8 reps.")
        assert await room.say(USERS["Jana"], "clients") == ["Lev: no session yet"]
        assert "squat" not in (await room.say(USERS["Jana"], "week of Lev"))[0]


async def test_texts_of_orders_are_not_in_the_buttons_beyond_what_a_channel_takes(tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        await room.store.write(_long_names)
        await room.say(USERS["Ines"], "week of Wilhelmina")
        for parcel in room.wire.sent:
            assert all(len(data.encode()) <= 64 for _, data in parcel.buttons)


def _long_names(conn: Connection) -> None:
    (ines,) = people.by_name(conn, "Ines")
    for last in ("Schwarzenbacher-Hohenstein of the Upper Valley", "Schwarzenbacher-Hohenstein of the Lower Valley"):
        one = people.add(conn, f"Wilhelmina {last}", "UTC", START)
        people.make_lifter(conn, one.id, ines.id)


async def _has(room: Shell, table: Table) -> bool:
    (ines,) = [row.id for row in await room.rows(metadata.tables["person"]) if row.name == "Ines"]
    return any(row.person == ines for row in await room.rows(table))


async def test_a_coach_who_does_not_train_after_all_coaches_on(tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        await room.say(USERS["Ines"], "I train too")
        await room.say(USERS["Ines"], "squat 60 kg 8 8 8")
        await room.say(USERS["Ines"], "bench 60 kg 10x10")
        assert await room.say(USERS["Ines"], "week of Ruth") != []
        (said,) = await room.say(USERS["Ines"], "clear Ruth")
        assert said == "Nothing is held for Ruth."
        (said,) = await room.say(USERS["Ines"], "no")
        assert said == "That's fine. No training of yours is kept, and you coach as before."
        assert len((await room.say(USERS["Ines"], "clients"))[0].splitlines()) == 3
        assert await room.rows(metadata.tables["act"]) == []
        kept = [str(row) for name in ("inbox", "outbox") for row in await room.rows(metadata.tables[name])]
        assert not any("60 kg" in row for row in kept)
        of_ines = [one.name for one in metadata.sorted_tables if "person" in one.c and await _has(room, one)]
        assert set(of_ines) <= {"address", "agenda", "chat"}  # how she is reached, and her morning word and weeks
