"""The store's own promises: one holder, private, durable, the same tables by every road."""

import asyncio
import os
import sqlite3
import stat
import subprocess
import sys
from collections.abc import AsyncIterator
from datetime import UTC, date, datetime, timedelta, timezone
from pathlib import Path

import pytest
from alembic.autogenerate import compare_metadata
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection, Dialect, create_engine, insert, text

from bot.ports import StoreBusy, StoreError
from bot.store import migrate
from bot.store.columns import Day, Instant
from bot.store.engine import Store
from bot.store.tables import metadata, setting, stranger
from bot.store.urls import file_of

SCHEMA = "SELECT type, name, tbl_name, sql FROM sqlite_master WHERE tbl_name NOT LIKE 'alembic%' ORDER BY type, name"


@pytest.fixture
async def store(tmp_path: Path) -> AsyncIterator[Store]:
    async with await Store.open(_url(tmp_path)) as opened:
        yield opened


def _url(folder: Path) -> str:
    return f"sqlite+aiosqlite:///{folder / 'gym.db'}"


def _modes(folder: Path) -> dict[str, int]:
    return {path.name: stat.S_IMODE(path.stat().st_mode) for path in folder.iterdir()}


async def test_all_migrations_give_the_tables_of_the_metadata(store: Store, tmp_path: Path) -> None:
    """Two witnesses: the migration tool sees no difference, and SQLite's own text of the schema has the same parts."""

    def differences(conn: Connection) -> list[object]:
        return list(compare_metadata(MigrationContext.configure(conn, opts={"compare_type": True}), metadata))

    def schema(conn: Connection) -> list[tuple[object, ...]]:
        return [(kind, name, table, parts(sql or "")) for kind, name, table, sql in conn.execute(text(SCHEMA))]

    def parts(sql: str) -> list[str]:
        opened, _, rest = " ".join(sql.split()).partition("( ")
        inner, _, closed = rest.rpartition(" )")
        return [opened, closed, *sorted(inner.split(", "))]

    assert await store.read(differences) == []
    fresh = create_engine(f"sqlite:///{tmp_path / 'fresh.db'}")
    with fresh.begin() as conn:
        metadata.create_all(conn)
        wanted = schema(conn)
    fresh.dispose()
    assert len(wanted) > len(metadata.tables)
    assert await store.read(schema) == wanted


def test_file_names_carry_the_numbers_of_their_steps() -> None:
    """The migration tool reads the files themselves; we read their names."""
    config = Config()
    config.set_main_option("script_location", str(Path(migrate.__file__).parent / "migrations"))
    script = ScriptDirectory.from_config(config)
    assert migrate.newest() == script.get_current_head()
    assert migrate.steps() == sorted(step.revision for step in script.walk_revisions())


async def test_every_commit_is_on_the_disk_and_keys_hold(store: Store) -> None:
    def pragmas(conn: Connection) -> dict[str, object]:
        names = ("journal_mode", "synchronous", "foreign_keys", "secure_delete")
        return {name: conn.execute(text(f"PRAGMA {name}")).scalar() for name in names}

    assert await store.read(pragmas) == {
        "journal_mode": "wal",
        "synchronous": 2,  # FULL, in SQLite's own numbering
        "foreign_keys": 1,
        "secure_delete": 1,
    }


async def test_only_the_owner_may_read_it(store: Store, tmp_path: Path) -> None:
    await store.write(lambda conn: conn.execute(insert(setting).values(name="a", value="b")))
    modes = await asyncio.to_thread(_modes, tmp_path)
    assert "gym.db-wal" in modes
    assert set(modes.values()) == {0o600}


async def test_a_second_process_is_refused_with_a_clear_line(store: Store, tmp_path: Path) -> None:
    assert await store.read(migrate.present) is not None
    words = [sys.executable, "-m", "bot", "chat", "--store", _url(tmp_path), "--as", "Ruth"]
    done = await asyncio.to_thread(
        subprocess.run, words, input="hello\n", capture_output=True, text=True, timeout=60, check=False
    )
    assert done.returncode == 1
    assert done.stdout == ""
    assert done.stderr.count("\n") == 1
    assert "another rungbook process" in done.stderr
    assert "stop" in done.stderr


async def test_a_second_holder_in_this_process_is_refused_too(store: Store, tmp_path: Path) -> None:
    with pytest.raises(StoreBusy):
        await Store.open(_url(tmp_path))
    async with await Store.open(_url(tmp_path), hold=False) as beside:
        assert await beside.read(migrate.present) == await store.read(migrate.present)


async def test_the_file_is_free_again_after_closing(tmp_path: Path) -> None:
    for _ in range(2):
        async with await Store.open(_url(tmp_path)):
            pass


@pytest.mark.parametrize(
    ("url", "said"),
    [
        ("nonsense", "not one"),
        ("postgresql+psycopg://somewhere/gym", "a database, not a file"),
        ("sqlite:///gym.db", "not served"),
        ("sqlite+aiosqlite://", "names no file"),
        ("sqlite+aiosqlite:///:memory:", "names no file"),
    ],
)
def test_a_wrong_url_is_named_with_the_right_form(url: str, said: str) -> None:
    with pytest.raises(StoreError, match=said) as refused:
        file_of(url)
    assert "sqlite+aiosqlite:///FILE" in str(refused.value)


async def test_a_file_that_is_no_store_is_refused_in_words(tmp_path: Path) -> None:
    (tmp_path / "gym.db").write_bytes(b"this is a letter to a friend, not a database" * 40)
    with pytest.raises(StoreError, match="cannot be opened"):
        await Store.open(_url(tmp_path))


@pytest.mark.skipif(os.geteuid() == 0, reason="the superuser may write everywhere")
async def test_a_folder_that_takes_no_file_is_named(tmp_path: Path) -> None:
    await asyncio.to_thread(tmp_path.chmod, 0o500)
    with pytest.raises(StoreError, match="cannot be opened"):
        await Store.open(_url(tmp_path))


async def test_instants_and_days_come_back_as_they_went(store: Store) -> None:
    far = datetime(2026, 3, 1, 23, 30, 0, 123456, tzinfo=timezone(timedelta(hours=-5)))
    await store.write(lambda conn: conn.execute(insert(stranger).values(hash="x", until=far)))
    back = await store.read(lambda conn: conn.execute(stranger.select()).one())
    assert back.until == far
    assert back.until.utcoffset() == timedelta(0)
    with pytest.raises(ValueError, match="without a zone"):
        Instant().process_bind_param(datetime(2026, 3, 1), sqlite3_dialect())  # noqa: DTZ001
    assert Day().process_result_value("2026-02-28", sqlite3_dialect()) == date(2026, 2, 28)


def sqlite3_dialect() -> Dialect:
    engine = create_engine("sqlite://")
    engine.dispose()
    return engine.dialect


def test_text_order_of_instants_is_time_order() -> None:
    moments = [datetime(2026, 3, 1, 12, tzinfo=UTC), datetime(2026, 3, 1, 12, 0, 0, 1, tzinfo=UTC)]
    first, second = (Instant().process_bind_param(one, sqlite3_dialect()) for one in moments)
    assert first < second
    conn = sqlite3.connect(":memory:")
    assert conn.execute("SELECT ? < ?", (first, second)).fetchone() == (1,)
    conn.close()
