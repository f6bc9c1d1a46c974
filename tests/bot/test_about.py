"""About oneself, through the real pass: whole conversations word for word, what is left after forgetting, exports."""

import csv
import io
import json
import sqlite3
from collections.abc import AsyncIterator
from contextlib import closing
from datetime import date, datetime, timedelta
from pathlib import Path

import pytest
from sqlalchemy import Connection, select

from bot import bootstrap
from bot.channels.page import login
from bot.channels.terminal import Seat, Terminal
from bot.clock import Tick
from bot.intake import Intake
from bot.ports import Later, Parcel
from bot.store import agenda, books, erase, people
from bot.store.tables import agenda as agenda_table
from bot.store.tables import metadata, outbox, person, setting
from core.model.book import Book
from core.model.outcome import AgendaChange
from tests.bot.desk_scripts import played, scripts, spaced
from tests.bot.scripts import parse
from tests.bot.shell import CHANNEL, GROUP, INES, RUTH, TOMAS, Shell, shell, with_people

PNG = b"\x89PNG"


@pytest.fixture
async def room(tmp_path: Path) -> AsyncIterator[Shell]:
    async with shell(tmp_path) as opened:
        desk = bootstrap.parts({CHANNEL: opened.wire.open}, bootstrap.start_line)
        opened.intake = Intake(opened.store, desk, opened.clock, opened.post.wake)
        opened.tick = Tick(opened.store, desk, opened.clock, opened.post.wake)
        yield await with_people(opened)


def bytes_of(room: Shell) -> bytes:
    """All that the store's files hold, as it lies on the disk."""
    file = Path(room.url.split("///")[1])
    return b"".join(path.read_bytes() for path in (file, Path(f"{file}-wal")) if path.exists())


def read(path: Path) -> str:
    return path.read_text(encoding="utf-8")


def names_in(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir())


@pytest.mark.parametrize("path", scripts(), ids=lambda path: path.stem)
async def test_conversation_goes_as_written(path: Path, tmp_path: Path) -> None:
    remarks, entries = parse(read(path))
    assert spaced(remarks, await played(entries, tmp_path)) == spaced(remarks, entries)


# Own data


async def test_the_table_holds_every_set_and_the_other_document_everything(room: Shell) -> None:
    await room.say(RUTH, "goblet squat 16 kg 10 10 9")
    await room.say(RUTH, "make that 8")
    await room.say(RUTH, "moonwalks all the way home, quietly")
    await room.say(RUTH, "export my data")
    files = dict(parcel.attachment for parcel in room.wire.sent if parcel.attachment)
    rows = list(csv.DictReader(io.StringIO(files["rungbook-sets.csv"].decode())))
    assert [(row["exercise"], row["reps"], row["state"]) for row in rows] == [
        ("goblet-squat", "10", "kept"),
        ("goblet-squat", "10", "kept"),
        ("goblet-squat", "9", "amended"),
        ("goblet-squat", "8", "kept"),
    ]
    everything = json.loads(files["rungbook-everything.json"])
    assert everything["person"]["name"] == "Ruth"
    assert {"lifter", "act", "target", "note", "address", "messages", "answers"} <= set(everything)
    assert len(everything["act"]) == len(rows)
    assert "moonwalks" in json.dumps(everything["messages"])


async def test_an_export_holds_nothing_of_others(room: Shell) -> None:
    await room.say(TOMAS, "back squat 100 kg x 5")
    await room.say(INES, "note on Ruth: prefers mornings")
    await room.say(RUTH, "export my data")
    text = next(p.attachment[1] for p in room.wire.sent if p.attachment and p.attachment[0].endswith(".json")).decode()
    assert "Tomas" not in text
    assert "prefers mornings" not in text


async def test_a_document_once_sent_is_not_kept(room: Shell) -> None:
    await room.say(RUTH, "export my data")
    rows = await room.rows(outbox)
    assert [(row.state, row.content) for row in rows if row.file] == [("sent", None)] * 2


async def test_forgetting_leaves_no_byte(room: Shell) -> None:
    """Told to the service, to the coach, in a group and by the coach: gone from the file and from its log."""
    await room.say(RUTH, "goblet squat 16.25 kg x 11, felt like marzipan")
    await room.say(RUTH, "left knee 6/10")
    await room.say(RUTH, "what about the marzipan diet?")
    await room.say(INES, "note on Ruth: marzipan again")
    await room.say(INES, "tell Ruth less marzipan")
    await room.say(INES, "who needs a word")
    await room.say(RUTH, "push-ups 12", chat=GROUP, private=False)
    assert b"Ruth" in bytes_of(room)
    assert b"marzipan" in bytes_of(room)
    await room.say(RUTH, "forget me")
    (said,) = await room.say(RUTH, "yes")
    assert "30 days" in said
    left = bytes_of(room)
    assert [word for word in (b"Ruth", b"marzipan", str(RUTH).encode(), b"16.25") if word in left] == []


async def test_forgetting_ends_every_login(room: Shell) -> None:
    def let_in(conn: Connection) -> tuple[str, str]:
        words = []
        for name in (RUTH, TOMAS):
            who = people.by_user(conn, CHANNEL, name)
            assert who is not None
            words.append(login.enter(conn, login.make_link(conn, who.id, room.clock()), room.clock()) or "")
            login.make_link(conn, who.id, room.clock())
        return words[0], words[1]

    ruths, toms = await room.store.write(let_in)
    await room.say(RUTH, "forget me")
    await room.say(RUTH, "yes")
    assert await room.store.read(lambda conn: login.whose_session(conn, ruths, room.clock())) is None
    assert await room.store.read(lambda conn: login.whose_session(conn, toms, room.clock())) is not None
    left = [row.name for row in await room.rows(setting) if row.name.startswith("page-")]
    assert len(left) == 2


async def test_forgetting_also_takes_what_is_still_queued(room: Shell) -> None:
    room.wire.script[INES] = [Later(60), Later(60), Later(60)]
    await room.say(RUTH, "left knee 6/10 on goblet squats")
    assert any(row.state == "queued" for row in await room.rows(outbox))
    await room.say(RUTH, "forget me")
    await room.say(RUTH, "yes")
    room.clock.move(minutes=5)
    await room.settle()
    assert [text for text in room.wire.texts(INES) if "Ruth" in text] == []
    assert b"Ruth" not in bytes_of(room)


async def test_what_is_left_is_a_tombstone_and_the_others_are_whole(room: Shell) -> None:
    await room.say(TOMAS, "back squat 100 kg x 5")
    await room.say(RUTH, "goblet squat 16 kg x 10")
    ruth = await room.store.read(lambda conn: people.by_user(conn, CHANNEL, RUTH))
    await room.say(RUTH, "forget me")
    await room.say(RUTH, "yes")
    assert ruth is not None
    left = await room.store.read(lambda conn: conn.execute(select(person).where(person.c.id == ruth.id)).one())
    assert (left.name, left.coach, left.lifts, left.joined) == ("", None, 0, room.clock())
    with closing(sqlite3.connect(room.url.split("///")[1])) as conn:
        for table in metadata.sorted_tables:
            for column in table.columns:
                if any(key.column.table is person for key in column.foreign_keys):
                    count = f'SELECT count(*) FROM "{table.name}" WHERE "{column.name}" = ?'
                    assert conn.execute(count, (ruth.id,)).fetchone() == (0,), (table.name, column.name)
        assert conn.execute("PRAGMA foreign_key_check").fetchall() == []
        assert conn.execute("PRAGMA integrity_check").fetchone() == ("ok",)
    assert (await room.say(INES, "clients"))[0].startswith("Tomas")


async def test_a_new_person_never_takes_the_number_of_one_who_was_forgotten(room: Shell) -> None:
    await room.say(TOMAS, "forget me")
    await room.say(TOMAS, "yes")
    keys = [row.id for row in await room.rows(person)]
    new = await room.store.write(lambda conn: people.add(conn, "Piet", "UTC", room.clock()))
    assert new.id not in keys


async def test_a_coach_with_clients_is_not_forgotten(room: Shell) -> None:
    (said,) = await room.say(INES, "forget me")
    assert "2 clients" in said
    assert await room.store.read(lambda conn: len(people.clients(conn, people.coaches(conn)[0].id))) == 2


async def test_an_old_yes_forgets_nobody(room: Shell) -> None:
    await room.say(RUTH, "forget me")
    room.clock.move(hours=2)
    await room.say(RUTH, "yes")
    assert await room.store.read(lambda conn: people.by_user(conn, CHANNEL, RUTH)) is not None


def test_names_are_found_as_whole_words_also_as_json_writes_them() -> None:
    found = erase._named({"Al", "Zoë"})
    assert found.search("week of Al")
    assert found.search('{"text": "ask Zo\\u00eb"}')
    assert not found.search("Alex lifts all day")


# When to be spoken to


async def book_of(room: Shell, user: int) -> Book:
    who = await room.store.read(lambda conn: people.by_user(conn, CHANNEL, user))
    assert who is not None
    return await room.store.write(lambda conn: books.load(conn, who.id, room.clock(), room.parts.folding))


async def prompts_of(room: Shell) -> dict[date, datetime]:
    rows = await room.rows(agenda_table)
    return {row.on: row.due for row in rows if row.kind == "prompt" and row.state == "waiting"}


async def test_a_change_of_zone_moves_the_prompt_and_says_it_once(room: Shell) -> None:
    await room.say(RUTH, "I train wed at 18:30")
    before = await prompts_of(room)
    await room.say(RUTH, "I'm in Lisbon")
    await room.say(RUTH, "I'm in Tokyo")
    after = await prompts_of(room)
    (day,) = before
    assert set(after) == {day}
    assert before[day] - after[day] == timedelta(hours=9)


async def test_a_journey_begins_and_ends_by_itself_also_after_a_day_of_downtime(room: Shell) -> None:
    await room.say(RUTH, "I'm in Lisbon from Wednesday to Friday")
    room.clock.move(days=3)
    await room.tick.once()
    book = await book_of(room, RUTH)
    assert str(book.profile.zone) == "Europe/Lisbon"
    room.clock.move(days=9)
    await room.tick.once()
    book = await book_of(room, RUTH)
    assert str(book.profile.zone) == "UTC"


async def test_away_says_nothing_until_the_day_after(room: Shell) -> None:
    await room.say(RUTH, "I train every day at 18:30")
    await room.say(RUTH, "away until the 12th")
    heard = len(room.wire.texts(RUTH))
    for _ in range(10 * 4):
        room.clock.move(hours=6)
        await room.tick.once()
        await room.settle()
    assert room.clock().date() == date(2026, 3, 12)
    assert room.wire.texts(RUTH)[heard:] == []


async def test_no_reminders_drops_prompts_and_their_questions(room: Shell) -> None:
    await room.say(RUTH, "I train every day at 18:30")
    await room.say(RUTH, "no reminders")
    heard = len(room.wire.texts(RUTH))
    for _ in range(3 * 4):
        room.clock.move(hours=6)
        await room.tick.once()
        await room.settle()
    assert room.wire.texts(RUTH)[heard:] == []


async def test_ones_own_no_heavier_never_loosens_the_coachs(room: Shell) -> None:
    await room.say(INES, "no heavier for Ruth until June")
    await room.say(RUTH, "no heavier until Friday")
    await room.say(RUTH, "heavier is fine")
    assert (await book_of(room, RUTH)).lifter.no_heavier


async def test_a_row_of_a_journey_that_is_gone_does_nothing(room: Shell) -> None:
    who = await room.store.read(lambda conn: people.by_user(conn, CHANNEL, RUTH))
    assert who is not None
    change = AgendaChange("zone", room.clock().date(), room.clock())
    await room.store.write(lambda conn: agenda.change(conn, who.id, change))
    await room.tick.once()
    assert str((await book_of(room, RUTH)).profile.zone) == "UTC"


# Pictures


async def test_the_words_of_a_course_come_before_its_picture_and_hold_up_nothing(room: Shell) -> None:
    for _ in range(3):
        await room.say(RUTH, "bench press 40 kg 10 10 9, 2 left")
        room.clock.move(days=3)
    room.wire.sent.clear()
    await room.say(RUTH, "how am I doing on bench press?")
    words, picture = room.wire.sent
    assert words.attachment is None
    assert "could likely lift" in words.text
    assert picture.attachment is not None
    assert picture.attachment[1].startswith(PNG)


async def test_a_channel_without_pictures_says_the_facts_alone(room: Shell) -> None:
    room.wire.pictures = False  # type: ignore[attr-defined]
    await room.say(RUTH, "bench press 40 kg 10 10 9, 2 left")
    room.wire.sent.clear()
    (said,) = await room.say(RUTH, "my week")
    assert "3 sets" in said
    assert [row.state for row in await room.rows(outbox) if row.file] == ["dead"]


# The terminal


async def test_a_document_in_the_terminal_is_saved_only_when_asked(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "a.csv").write_text("mine")
    shown: list[str] = []

    async def lines() -> AsyncIterator[str]:
        for line in ("save", "hello"):
            yield line

    here = Terminal(Seat(1, 1), lines(), lambda text, _: shown.append(text), 1)
    await here.send(Parcel(1, "All.", attachment=("a.csv", b"x,y")))
    assert names_in(tmp_path) == ["a.csv"]
    heard = [raw async for batch in here.updates() for raw in batch]
    assert [json.loads(raw.body)["text"] for raw in heard] == ["hello"]
    assert (tmp_path / "a.csv").read_text() == "mine"
    assert (tmp_path / "a-1.csv").read_bytes() == b"x,y"
    assert shown[-1] == "Saved a-1.csv."
