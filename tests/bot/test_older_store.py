"""A store that an earlier version left is brought up to date as it is, with all that was in it."""

import json
import sqlite3
from contextlib import closing
from pathlib import Path

import pytest
from sqlalchemy import create_engine, inspect, select

from bot import doctor
from bot.ports import StoreError
from bot.store import backup, migrate, people, reports
from bot.store.engine import Store
from bot.store.tables import act, inbox, metadata, outbox

OLDER = sorted((Path(__file__).parents[2] / "fixtures" / "stores").glob("s*.sql"))


def put_down(file: Path, script: Path) -> None:
    with closing(sqlite3.connect(file)) as conn:
        conn.executescript(script.read_text(encoding="utf-8"))


def rows_of(file: Path, table: str, columns: str = "*") -> list[tuple[object, ...]]:
    with closing(sqlite3.connect(file)) as conn:
        return conn.execute(f"SELECT {columns} FROM {table} ORDER BY 1").fetchall()


def names_of(file: Path, table: str) -> str:
    with closing(sqlite3.connect(file)) as conn:
        return ", ".join(f'"{row[1]}"' for row in conn.execute(f"PRAGMA table_info({table})"))


def test_there_is_an_older_store_to_try() -> None:
    assert [path.stem for path in OLDER][:1] == ["s0001"]


@pytest.mark.parametrize("script", OLDER, ids=lambda path: path.stem)
async def test_every_step_forward_keeps_what_was_there(script: Path, tmp_path: Path) -> None:
    file, copy = tmp_path / "gym.db", tmp_path / "before.db"
    put_down(file, script)
    put_down(copy, script)
    url = f"sqlite+aiosqlite:///{file}"
    async with await Store.open(url) as store:
        assert await store.read(migrate.present) == migrate.newest()
        lifters = await store.read(people.lifters)
        sets = [await store.read(lambda conn, who=one.id: list(reports.sets_of(conn, who))) for one in lifters]  # type: ignore[misc]
        counted = await store.read(lambda conn: len(conn.execute(select(act.c.id).where(act.c.kind == "set")).all()))
        assert sum(map(len, sets)) == counted > 0
        assert all(json.loads(row.body)["exercise"] for each in sets for row in each)
    for table in (act.name, inbox.name, outbox.name, "person", "target"):
        columns = names_of(copy, table)
        assert rows_of(file, table, columns) == rows_of(copy, table, columns) != []
    said = {one.about: one for one in await doctor.examine(url, rebuild=True)}
    assert said["store"].well
    assert said["estimates"].well


@pytest.mark.parametrize("script", OLDER, ids=lambda path: path.stem)
async def test_afterwards_its_tables_are_ours(script: Path, tmp_path: Path) -> None:
    file = tmp_path / "gym.db"
    put_down(file, script)
    async with await Store.open(f"sqlite+aiosqlite:///{file}"):
        pass
    engine = create_engine(f"sqlite:///{file}")
    seen = inspect(engine)
    there = {name: {one["name"] for one in seen.get_columns(name)} for name in seen.get_table_names()}
    engine.dispose()
    for table in metadata.sorted_tables:
        assert there[table.name] == {column.name for column in table.columns}


@pytest.mark.parametrize("script", OLDER, ids=lambda path: path.stem)
async def test_a_copy_of_an_older_store_is_put_back_and_brought_up_to_date(script: Path, tmp_path: Path) -> None:
    put_down(tmp_path / "gym.db", script)
    backup.back_up(f"sqlite+aiosqlite:///{tmp_path / 'gym.db'}", tmp_path / "copy.db")
    again = f"sqlite+aiosqlite:///{tmp_path / 'again.db'}"
    backup.restore(tmp_path / "copy.db", again)
    async with await Store.open(again) as store:
        assert await store.read(migrate.present) == migrate.newest()


async def test_a_later_versions_store_is_left_alone(tmp_path: Path) -> None:
    """The way back over a version is the copy that was made before: an older program refuses a newer store."""
    file = tmp_path / "gym.db"
    put_down(file, OLDER[0])
    with closing(sqlite3.connect(file)) as conn:
        conn.execute("UPDATE alembic_version SET version_num = '9999'")
        conn.commit()
    with pytest.raises(StoreError, match="later version"):
        await Store.open(f"sqlite+aiosqlite:///{file}")
    assert rows_of(file, "alembic_version") == [("9999",)]
