"""What someone might try: codes guessed, floods, SQL, formulas, markup and log lines in words, secrets in errors."""

import csv
import io
import json
import logging
from collections.abc import AsyncIterator
from contextlib import suppress
from datetime import UTC, date, datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
import structlog
from sqlalchemy import insert, select

from bot import exporting, log
from bot.channels.telegram import Telegram
from bot.channels.telegram_parcel import requests_of
from bot.flood import BURST, EVERY, Flood
from bot.intake import Intake
from bot.ports import Parcel, RawUpdate, Sent
from bot.store import invites, outbox, people, retention, strangers
from bot.store.engine import Store
from bot.store.invites import Invite
from bot.store.outbox import Letter
from bot.store.reports import SetRow
from bot.store.strangers import TRIES, TRIES_LAST
from bot.store.tables import agenda, inbox, invite, metadata, person, stranger
from bot.store.tables import outbox as outbox_table
from tests.bot.api_stub import BotApi
from tests.bot.api_updates import TOKEN
from tests.bot.shell import CHANNEL, GROUP, MONDAY, OTHER, RUTH, TOMAS, Shell, keeping, shell, squat, with_people

SQL = "'; DROP TABLE person; --"
HOSTILE = (
    SQL,
    '" OR "1"="1',
    "%s %(name)s ${jndi:x} {0} {name.__class__}",
    "<script>alert(1)</script><b>&amp;",
    "*bold* _under_ [link](tg://user?id=1) `code`",
    '\n{"event": "forged", "level": "error"}\r\n',
    "\x1b[31mred\x07\x00",
    '=HYPERLINK("http://x")',
    "\u202etxet\u2066",
    "\ud800 half",
)


@pytest.fixture
async def room(tmp_path: Path) -> AsyncIterator[Shell]:
    async with shell(tmp_path) as opened:
        yield await with_people(opened)


async def code_of(room: Shell, name: str = "Olga") -> str:
    return await room.store.write(lambda conn: invites.make(conn, Invite("coach", name, "UTC", None), room.clock()))


# Codes


async def test_a_code_is_kept_as_its_hash_alone_and_works_once(room: Shell, tmp_path: Path) -> None:
    code = await code_of(room)
    assert len(code) == 24  # 18 random bytes
    await room.say(OTHER, f"/start {code}")
    (again,) = await room.say(OTHER + 1, f"/start {code}")
    assert "used already" in again
    for table in metadata.sorted_tables:
        if table is not inbox:  # what its own bearer wrote is theirs to erase
            assert all(code not in str(row) for row in await room.rows(table))


async def test_who_guesses_codes_is_soon_not_heard_and_nobody_else_is_held_up(room: Shell) -> None:
    code = await code_of(room)
    for number in range(TRIES):
        (said,) = await room.say(OTHER, f"/start guess{number}")
        assert "don't know that code" in said
    for guess in ("one-more", code):
        (said,) = await room.say(OTHER, f"/start {guess}")
        assert "Wait an hour" in said
    (fresh,) = await room.say(OTHER + 1, f"/start {code}")
    assert "You are in" in fresh
    assert str(OTHER) not in str(await room.rows(stranger))


async def test_after_an_hour_a_good_code_works_again(room: Shell) -> None:
    code = await code_of(room)
    for number in range(TRIES):
        await room.say(OTHER, f"/start guess{number}")
    room.clock.at += TRIES_LAST
    assert "You are in" in (await room.say(OTHER, f"/start {code}"))[0]


async def test_someone_known_is_not_heard_for_longer_either(room: Shell) -> None:
    code = await code_of(room)
    for number in range(TRIES):
        await room.say(RUTH, f"/start guess{number}")
    assert "Wait an hour" in (await room.say(RUTH, f"/start {code}"))[0]
    (ruth,) = [row for row in await room.rows(person) if row.name == "Ruth"]
    assert ruth.coaches == 0


# Floods


async def test_a_flood_is_worked_whole_and_slowly_while_others_go_on(room: Shell) -> None:
    naps: list[float] = []

    async def nap(seconds: float) -> None:
        naps.append(seconds)
        room.clock.move(seconds=seconds)

    intake = Intake(room.store, room.parts, room.clock, room.post.wake, pause=nap)
    await intake.keep(tuple(room.raw(user=RUTH, text=f"m{n}") for n in range(BURST + 40)))
    await intake.keep((room.raw(user=TOMAS, text="squat 60x8"),))
    begun = room.clock.at
    for lane in ((CHANNEL, RUTH), (CHANNEL, TOMAS)):
        await intake.work_lane(lane)
    assert {row.state for row in await room.rows(inbox)} == {"done"}
    heard = [asked.text for asked, _ in room.core.asked if asked.text.startswith("m")]
    assert heard == [f"m{n}" for n in range(BURST + 40)]
    assert len(naps) == 41
    assert timedelta(seconds=19) < room.clock.at - begun < timedelta(seconds=22)


def test_a_flood_is_forgotten_once_it_is_over() -> None:
    flood, now = Flood(), MONDAY
    for _ in range(BURST):
        assert flood.wait("a", now) == 0
        flood.took("a", now)
    assert flood.wait("a", now) == pytest.approx(EVERY.total_seconds())
    assert flood.wait("b", now) == 0
    assert flood.wait("a", now + EVERY * BURST) == 0
    flood.took("c", now + timedelta(days=7))
    assert flood.wait("c", now) <= EVERY.total_seconds()
    assert flood.wait("c", now + EVERY) == 0
    for lane in range(20_000):
        flood.took(lane, now + timedelta(seconds=lane))
    assert len(flood._full_at) <= 10_000


# Words


@pytest.mark.parametrize("words", HOSTILE)
async def test_words_stay_words_in_every_table_and_in_every_room(room: Shell, words: str) -> None:
    before = {table.name: len(await room.rows(table)) for table in (person,)}
    for user, name in ((RUTH, words), (OTHER, words), (900001, words)):
        for text in (words, f"invite {words}", f"/start {words}", f"note {words}"):
            await room.say(user, text, name=name)
    await room.say(RUTH, words, chat=GROUP, private=False, title=words)
    assert {row.state for row in await room.rows(inbox)} <= {"done", "aside"}
    assert len(await room.rows(person)) == before["person"]
    texts = [parcel.text for parcel in room.wire.sent if parcel.chat == RUTH]
    assert all("__class__" not in text or "{name.__class__}" in text for text in texts)


@pytest.mark.parametrize("words", HOSTILE)
def test_nothing_goes_out_as_markup(words: str) -> None:
    (request,) = requests_of(Parcel(RUTH, f"a {words}", buttons=((f"b {words}", "x"),)))
    assert {"parse_mode", "entities", "caption_entities"} & set(request.arguments) == set()
    assert request.arguments["text"].startswith("a ")


async def test_hostile_words_arrive_as_they_were_written() -> None:
    async with BotApi(TOKEN) as api:
        telegram = Telegram(TOKEN, api.base_url)
        sendable = [words for words in HOSTILE if words.isprintable()]
        for words in sendable:
            assert isinstance(await telegram.send(Parcel(RUTH, words)), Sent)
        assert api.texts(RUTH) == sendable
        await telegram.close()


@pytest.mark.parametrize("start", ["=", "+", "-", "@", "\t", "\r", "\n"])
def test_no_cell_of_an_export_is_a_formula(start: str) -> None:
    label = f"{start}cmd|' /C calc'!A0"
    body = json.dumps(
        {"act": "set", "exercise": label, "load": {"kind": "band", "kg": None, "label": label}, "reps": 8}
    )
    out = io.StringIO()
    exporting.as_csv([SetRow(body, date(2026, 3, 2), MONDAY, 7, "kept")], out)
    (row,) = csv.DictReader(io.StringIO(out.getvalue(), newline=""))
    shown = "'" + label.replace("\r", " ")
    assert (row["exercise"], row["load_label"]) == (shown, shown)
    assert (row["reps"], row["on"]) == ("8", "2026-03-02")


def test_a_number_below_nothing_stays_a_number() -> None:
    body = json.dumps({"act": "set", "exercise": "pull-up", "load": {"kind": "assist", "kg": -20.0}, "reps": 8})
    out = io.StringIO()
    exporting.as_csv([SetRow(body, date(2026, 3, 2), MONDAY, 7, "kept")], out)
    (row,) = csv.DictReader(io.StringIO(out.getvalue()))
    assert row["load_kg"] == "-20.0"


def test_no_line_of_the_log_can_be_forged() -> None:
    top = logging.getLogger()
    before, level = top.handlers[:], top.level
    out = io.StringIO()
    try:
        log.set_up("debug", out)
        for words in HOSTILE[:-1]:
            structlog.get_logger("bot").warning("careful", value=words)
            logging.getLogger("some.library").warning("careful %s", words)
    finally:
        top.handlers[:], top.level = before, level
        structlog.reset_defaults()
    lines = out.getvalue().split("\n")
    assert len(lines) == 2 * len(HOSTILE[:-1]) + 1
    assert all(json.loads(line)["event"].startswith("careful") for line in lines if line)
    assert "\x1b" not in out.getvalue()


# Rights and what is forgotten


async def test_only_its_owner_reads_a_store_and_all_beside_it(tmp_path: Path) -> None:
    async with await Store.open(f"sqlite+aiosqlite:///{tmp_path / 'gym.db'}") as store:
        await store.write(lambda conn: strangers.is_new(conn, CHANNEL, OTHER, MONDAY))
        modes = {path.name: path.stat().st_mode & 0o777 for path in tmp_path.iterdir()}  # noqa: ASYNC240
    assert {"gym.db", "gym.db-wal", "gym.db.lock"} <= set(modes)
    assert set(modes.values()) == {0o600}


async def test_what_is_no_longer_needed_goes_and_what_was_reported_stays(room: Shell) -> None:
    old, now = MONDAY, MONDAY + timedelta(days=401)
    room.core.script["60x8"] = keeping(squat(8))
    await room.say(RUTH, "60x8")
    await code_of(room)
    await room.hear(RawUpdate(CHANNEL, 999, RUTH, "no JSON: private words"))

    def seed(conn: Any) -> None:
        to = people.chat_of(conn, CHANNEL, RUTH)
        assert to is not None
        for state, made in (("dead", old), ("uncertain", old), ("queued", old), ("dead", now), ("sent", now)):
            seq = outbox.queue(conn, Letter(f"{state} {made:%j}", chat=to.id), made)
            conn.execute(outbox_table.update().where(outbox_table.c.seq == seq).values(state=state))
        for state, due in (("done", old), ("waiting", old), ("done", now)):
            row = {"person": 2, "kind": f"{state}{due:%j}", "on": due.date(), "due": due, "state": state, "attempts": 0}
            conn.execute(insert(agenda).values(**row))

    await room.store.write(seed)
    acts = await room.rows(metadata.tables["act"])
    room.clock.at = now
    await room.tick.tidy()
    assert [row.text.split()[0] for row in await room.rows(outbox_table)] == ["queued", "dead", "sent"]
    states = await room.store.read(
        lambda conn: conn.execute(select(agenda.c.kind).order_by(agenda.c.id)).scalars().all()
    )
    assert [kind[:4] for kind in states] == ["wait", "done"]
    assert await room.rows(invite) == []
    assert "private words" not in str(await room.rows(inbox))
    assert await room.rows(metadata.tables["act"]) == acts
    assert "60x8" in str(await room.rows(inbox))


async def test_a_purge_goes_in_pieces(room: Shell, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(retention, "AT_ONCE", 3)

    def seed(conn: Any) -> None:
        for _ in range(10):
            invites.make(conn, Invite("coach", "Olga", "UTC", None), datetime(2020, 1, 1, tzinfo=UTC))

    await room.store.write(seed)
    first = await room.store.write(lambda conn: retention.purge(conn, MONDAY))
    assert first["invite"] == 3
    await room.tick.tidy()
    assert await room.rows(invite) == []


async def test_a_stranger_is_forgotten_with_their_tries(room: Shell) -> None:
    await room.say(OTHER, "hello")
    await room.say(OTHER, "/start guess")
    assert len(await room.rows(stranger)) == 2
    room.clock.at += timedelta(days=1)
    with suppress(ValueError):
        await room.tick.tidy()
    assert await room.rows(stranger) == []
