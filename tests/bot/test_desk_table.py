"""The table of roles by words: every order, typed and pressed, forged and again, by everybody, alone and in a group.

A cell that is not the coach's own changes nothing of the coach's desk or of the client, and shows nothing of them.
"""

from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import Connection, select

from bot.store import coaching, people
from bot.store.shapes import noun_text
from bot.store.tables import metadata
from core.order.patterns import compiled
from tests.bot.office import PLANS, START, USERS, office
from tests.bot.shell import GROUP, Shell
from tests.bot.test_desk_roles import ORDERS, SECRET

ALSO = [
    "swap Mira's squats for split squats",
    "Mira: chest 8 to 14 sets",
    "ask first for Mira",
    "uninvite Ada",
    "hand Mira over",
    "invite",
    "clear",
    "put back the old plan",
    "see Mira",
]
"""Orders beside those of the other file, so that each kind of order stands in the table."""
EVERY = [*ORDERS, *ALSO]
OWN = {
    "Jana": {"invite", "question", "word", "hours"},
    "Mira": {"act", "lifter", "pending", "day_plan", "target", "progress", "silence", "note"},
}
"""What a role may change by these words because it is its own: a coach's own desk, a lifter's own records."""
DESK = ("plan", "plan_version", "rein", "remark", "word", "hold", "invite", "question", "hours")
LEAKS = (SECRET, "row 3x8", "Ada", "chest symptom", "8 of 10")
"""What is known of Mira and of the coach's desk: no cell that is not theirs may show it."""
ALONE = ("Nobody", "Tomas", "Mira", "Lev", "Jana")
TOGETHER = ("Nobody", "Tomas", "Mira", "Lev", "Jana", "Ines")


async def seeded(room: Shell) -> list[str]:
    """A note, an alarm, an ache, an invitation, an open question of each kind; gives the data of their buttons."""
    await room.say(USERS["Mira"], "left knee 8/10")
    await room.say(USERS["Mira"], "my chest feels tight")
    await room.say(USERS["Ines"], "invite Ada")

    def seed(conn: Connection) -> list[int]:
        (ines,), (mira,) = people.by_name(conn, "Ines"), people.by_name(conn, "Mira")
        coaching.add_remark(conn, ines.id, mira.id, START, SECRET)
        plan = {"plan": noun_text(PLANS["Tomas"]), "what": "written"}
        return [
            coaching.ask(conn, ines.id, "tell", {"to": [mira.id], "text": "hello"}, START),
            coaching.ask(conn, ines.id, "end", {}, START, about=mira.id),
            coaching.ask(conn, ines.id, "plan", plan, START, about=mira.id),
            coaching.ask(conn, ines.id, "hand", {"by": ines.id}, START, about=mira.id),
            coaching.ask(
                conn, ines.id, "target", {"exercise": "goblet-squat", "on": "2026-03-09"}, START, about=mira.id
            ),
        ]

    keys = await room.store.write(seed)
    return [f"c:{key}:{letter}" for key in keys for letter in "yn"]


async def things(room: Shell) -> dict[str, list[Any]]:
    """The coach's desk, who coaches whom, and all that is kept about Mira."""

    def look(conn: Connection) -> dict[str, list[Any]]:
        found = {name: [tuple(row) for row in conn.execute(select(metadata.tables[name]))] for name in DESK}
        found["coached"] = [(one.id, one.coach) for one in people.lifters(conn)]
        (mira,) = people.by_name(conn, "Mira")
        for name, table in metadata.tables.items():
            if name not in found and name not in ("chat", "agenda", "outbox", "inbox") and "person" in table.c:
                rows = conn.execute(select(table).where(table.c.person == mira.id))
                found[name] = [tuple(row) for row in rows]
        return found

    return await room.store.read(look)


def pressed(forged: list[str]) -> list[str]:
    """Every button that could be forged: answers to the coach's questions, orders, and those of other desks."""
    odd = [
        "c:999999:y",
        "c:x:y",
        "c:",
        "c",
        "o:",
        "a:1:0",
        "d:1:m",
        "j:goal:1",
        "q:forget:y",
        "q:1:y",
        "",
        "\0",
        "o" * 64,
    ]
    return [*forged, *(f"o:{order}" for order in EVERY), *odd]


async def cell(room: Shell, who: str, what: dict[str, Any], name: str) -> None:
    """One cell of the table, tried twice: nothing is changed that is not theirs, nothing is shown, nobody is told."""
    before, sent = await things(room), len(room.wire.sent)
    room.clock.move(seconds=40)
    await room.hear(room.raw(user=USERS[who], **what), room.raw(user=USERS[who], **what))
    after = await things(room)
    for table in before:
        assert table in OWN.get(who, set()) or after[table] == before[table], (who, name, table)
    for parcel in room.wire.sent[sent:]:
        theirs = parcel.chat == USERS["Ines"] or (who == "Mira" and parcel.chat == USERS["Mira"])
        assert theirs or not any(word in parcel.text for word in LEAKS if word not in name), (who, name, parcel.text)
        assert parcel.chat != USERS["Mira"] or who == "Mira", (who, name, parcel.text)


@pytest.mark.parametrize("who", ALONE)
async def test_alone(who: str, tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        forged = await seeded(room)
        for order in EVERY:
            await cell(room, who, {"text": order}, order)
        for data in pressed(forged):
            await cell(room, who, {"kind": "press", "message_id": 1, "data": data, "token": "t"}, data)


@pytest.mark.parametrize("who", TOGETHER)
async def test_in_a_group(who: str, tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        forged = await seeded(room)
        here: dict[str, Any] = {"chat": GROUP, "private": False}
        for order in EVERY:
            await cell(room, who, {**here, "text": order, "address": True}, order)
        for data in pressed(forged):
            press = {"kind": "press", "message_id": 1, "data": data, "token": "t"}
            await cell(room, who, {**here, **press}, data)


async def test_the_coach_presses_each_once_and_a_replay_changes_nothing(tmp_path: Path) -> None:
    async with office(tmp_path) as room:
        forged = await seeded(room)
        for data in forged:
            press = {"kind": "press", "message_id": 1, "data": data, "token": "t", "user": USERS["Ines"]}
            await room.hear(room.raw(**press))
            before, told = await things(room), len(room.wire.texts(USERS["Mira"]))
            await room.hear(room.raw(**press))
            assert await things(room) == before, data
            assert len(room.wire.texts(USERS["Mira"])) == told, data


def test_every_kind_of_order_stands_in_the_table() -> None:
    missing = {name for name, _ in compiled()}
    for order in EVERY:
        missing -= {name for name, pattern in compiled() if pattern.fullmatch(order)}
    assert missing == set()
