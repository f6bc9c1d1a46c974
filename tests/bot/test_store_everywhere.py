"""What a store promises on every engine: all or nothing, in turns, the same tables by every road, no later version."""

import asyncio
from collections.abc import AsyncIterator
from contextlib import suppress
from datetime import UTC, date, datetime, timedelta, timezone
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.runtime.migration import MigrationContext
from sqlalchemy import Connection, insert, text, update
from sqlalchemy.exc import DBAPIError, IntegrityError

from bot.ports import StoreError
from bot.store import contest_tables, migrate
from bot.store.engine import Store
from bot.store.tables import agenda, metadata, note, person, progress, setting
from tests.bot.stores import url_in

assert contest_tables  # read, so that its tables are known


@pytest.fixture
def url(each_store: str, tmp_path: Path) -> str:
    return url_in(tmp_path)


@pytest.fixture
async def store(url: str) -> AsyncIterator[Store]:
    async with await Store.open(url) as opened:
        yield opened


async def test_all_migrations_give_the_tables_of_the_metadata(store: Store) -> None:
    def differences(conn: Connection) -> list[object]:
        return list(compare_metadata(MigrationContext.configure(conn, opts={"compare_type": True}), metadata))

    assert await store.read(differences) == []


async def test_a_failed_write_leaves_nothing(store: Store) -> None:
    def half(conn: Connection) -> None:
        conn.execute(insert(setting).values(name="a", value="b"))
        raise ValueError("in the middle")

    with pytest.raises(ValueError, match="middle"):
        await store.write(half)
    assert await store.read(lambda conn: conn.execute(setting.select()).all()) == []


async def test_writers_at_once_take_turns(store: Store) -> None:
    """Reads its number and writes it one higher: a lost turn would lose a count."""

    def more(conn: Connection) -> None:
        now = int(conn.execute(text("SELECT value FROM setting")).scalar_one())
        conn.execute(text("UPDATE setting SET value = :value"), {"value": str(now + 1)})

    await store.write(lambda conn: conn.execute(insert(setting).values(name="n", value="0")))
    await asyncio.gather(*(store.write(more) for _ in range(40)))
    assert await store.read(lambda conn: conn.execute(text("SELECT value FROM setting")).scalar_one()) == "40"


async def test_opening_again_changes_nothing_and_keeps_what_is_there(url: str) -> None:
    async with await Store.open(url) as store:
        await store.write(lambda conn: conn.execute(insert(setting).values(name="a", value="b")))
    async with await Store.open(url) as store:
        assert await store.read(lambda conn: conn.execute(setting.select()).all()) == [("a", "b")]
        assert await store.read(migrate.present) == migrate.newest()


async def test_a_store_of_a_later_version_is_refused_with_the_remedy(url: str) -> None:
    async with await Store.open(url) as store:
        await store.write(lambda conn: conn.execute(text("UPDATE alembic_version SET version_num = '9999'")))
    with pytest.raises(StoreError, match="later version"):
        await Store.open(url)


async def test_a_cancelled_caller_does_not_break_a_transaction(store: Store, url: str) -> None:
    task = asyncio.ensure_future(store.write(lambda conn: conn.execute(insert(setting).values(name="a", value="b"))))
    await asyncio.sleep(0)
    task.cancel()
    with pytest.raises(asyncio.CancelledError):
        await task
    await store.close()
    async with await Store.open(url) as again:
        assert await again.read(lambda conn: conn.execute(setting.select()).all()) == [("a", "b")]


async def test_reading_changes_nothing(store: Store) -> None:
    async def put() -> None:
        await store.read(lambda conn: conn.execute(insert(setting).values(name="a", value="b")))

    with suppress(DBAPIError):  # one engine refuses it, the other takes it back
        await put()
    assert await store.read(lambda conn: conn.execute(setting.select()).all()) == []


async def test_values_come_back_as_they_went(store: Store) -> None:
    far = datetime(2026, 3, 1, 23, 30, 0, 123456, tzinfo=timezone(timedelta(hours=-5)))
    row = {"id": 2**40, "name": "Zoë 🏋", "coaches": 0, "lifts": 1, "zone": "UTC", "language": "en", "joined": far}
    row |= {"prompt_lead_minutes": 60, "quiet_from": "22:00", "quiet_to": "07:00", "decimal": "."}
    due = {"person": 2**40, "kind": "prompt", "on": date(2026, 2, 28), "due": far, "state": "waiting", "attempts": 0}
    usual = {"person": 2**40, "exercise": "bench", "made_by": "1", "usual_kg": 102.123456789}

    def write(conn: Connection) -> None:
        conn.execute(insert(person).values(**row))
        conn.execute(insert(agenda).values(**due))
        conn.execute(insert(progress).values(**usual))

    await store.write(write)
    who = await store.read(lambda conn: conn.execute(person.select()).one())
    back = await store.read(lambda conn: conn.execute(agenda.select()).one())
    assert (who.id, who.name, who.joined, who.joined.utcoffset()) == (2**40, "Zoë 🏋", far, timedelta(0))
    assert (back.on, back.due) == (date(2026, 2, 28), far)
    assert await store.read(lambda conn: conn.execute(progress.select()).one().usual_kg) == 102.123456789


async def test_a_text_may_hold_anything_that_a_chat_can_send(store: Store) -> None:
    """A zero is a character that one engine cannot keep; it must not cost the message."""
    await store.write(lambda conn: conn.execute(insert(setting).values(name="a", value="be\x00nch 5x5")))
    await store.write(lambda conn: conn.execute(update(setting).values(value=setting.c.value + " \x00")))
    kept = await store.read(lambda conn: conn.execute(setting.select()).one().value)
    assert kept.startswith("be")
    assert "nch 5x5" in kept


async def test_a_key_that_is_not_there_is_refused(store: Store) -> None:
    orphan = insert(note).values(person=5, message=6, at=datetime(2026, 3, 1, tzinfo=UTC), text="x")
    with pytest.raises(IntegrityError):
        await store.write(lambda conn: conn.execute(orphan))
