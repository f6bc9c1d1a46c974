"""A store is moved between a file and a database, in both directions, with every row of it."""

import asyncio
import shutil
from collections.abc import Iterator
from pathlib import Path

import psycopg
import pytest
from sqlalchemy import Connection, select

from bot import clock, doctor
from bot.demo import fill
from bot.lanes import libpq
from bot.ports import StoreBusy, StoreError
from bot.store import migrate, moving, people
from bot.store.engine import Store
from bot.store.tables import act, inbox, metadata, person
from bot.store.urls import SERVES
from tests.bot.postgres import Server
from tests.bot.test_older_store import OLDER, put_down

Rows = dict[str, list[tuple[object, ...]]]


def url(file: Path) -> str:
    return f"sqlite+aiosqlite:///{file}"


def everything(conn: Connection) -> Rows:
    return {
        table.name: [tuple(row) for row in conn.execute(select(table).order_by(*table.primary_key))]
        for table in metadata.sorted_tables
    }


async def rows_of(where: str) -> Rows:
    async with await Store.open(where, create=False) as store:
        return await store.read(everything)


@pytest.fixture
def database(postgresql: Server) -> Iterator[str]:
    """An empty database."""
    yield postgresql.create("moved")
    postgresql.drop("moved")


@pytest.fixture(scope="module")
def made(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The demo gym in a file, one act of it written over by a later one."""
    file = tmp_path_factory.mktemp("made") / "gym.db"

    async def make() -> None:
        await fill.fill(url(file), fill.Wanted(2, 2, 1), clock.now)
        async with await Store.open(url(file)) as store:
            first, last = await store.read(lambda conn: (_some(conn, last=False), _some(conn, last=True)))
            over = act.update().where(act.c.id == first).values(superseded_by=last)
            await store.write(lambda conn: conn.execute(over))

    asyncio.run(make())
    return file


@pytest.fixture
def gym(made: Path, tmp_path: Path) -> str:
    """A copy of it."""
    shutil.copyfile(made, tmp_path / "gym.db")
    return url(tmp_path / "gym.db")


def _some(conn: Connection, *, last: bool) -> int:
    return int(conn.execute(select(act.c.id).order_by(act.c.id.desc() if last else act.c.id).limit(1)).scalar_one())


async def test_there_and_back_again_nothing_has_changed(gym: str, database: str, tmp_path: Path) -> None:
    before = await rows_of(gym)
    moved = await moving.move(gym, database)
    assert moved == {name: len(rows) for name, rows in before.items()}
    assert moved[act.name] > moving.AT_ONCE / 50
    assert await rows_of(database) == before
    await moving.move(database, url(tmp_path / "again.db"))
    assert await rows_of(url(tmp_path / "again.db")) == before


async def test_more_rows_than_are_carried_at_once(gym: str, database: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(moving, "AT_ONCE", 7)
    before = await rows_of(gym)
    await moving.move(gym, database)
    assert await rows_of(database) == before


async def test_what_comes_next_takes_the_next_number(gym: str, database: str) -> None:
    await moving.move(gym, database)

    def more(conn: Connection) -> tuple[int, int]:
        last = max(conn.execute(select(person.c.id)).scalars())
        return last, people.add(conn, "Vera", "UTC", clock.now(), coaches=True).id

    async with await Store.open(database) as store:
        last, new = await store.write(more)
    assert new == last + 1


@pytest.mark.parametrize("script", OLDER, ids=lambda path: path.stem)
async def test_an_older_store_moves_too(script: Path, database: str, tmp_path: Path) -> None:
    put_down(tmp_path / "gym.db", script)
    moved = await moving.move(url(tmp_path / "gym.db"), database)
    assert moved[act.name] > 0
    assert moved[inbox.name] > 0
    async with await Store.open(database) as store:
        assert await store.read(migrate.present) == migrate.newest()
    said = {one.about: one for one in await doctor.examine(database, rebuild=True)}
    assert said["estimates"].well


async def test_a_store_that_is_not_empty_is_left_alone(gym: str, database: str, tmp_path: Path) -> None:
    async with await Store.open(database) as store:
        await store.write(lambda conn: people.add(conn, "Vera", "UTC", clock.now(), coaches=True))
    before = await rows_of(database)
    with pytest.raises(StoreError, match="not empty"):
        await moving.move(gym, database)
    assert await rows_of(database) == before
    with pytest.raises(StoreError, match="same store"):
        await moving.move(gym, gym)


async def test_a_store_in_use_is_not_moved(gym: str, database: str, tmp_path: Path) -> None:
    async with await Store.open(gym):
        with pytest.raises(StoreBusy):
            await moving.move(gym, database)
    await moving.move(gym, database)
    service = await psycopg.AsyncConnection.connect(libpq(database), application_name=SERVES)
    try:
        with pytest.raises(StoreError, match="stop it first"):
            await moving.move(database, url(tmp_path / "again.db"))
    finally:
        await service.close()


async def test_doctor_on_an_empty_database_says_how_its_tables_come(database: str) -> None:
    said = {one.about: one for one in await doctor.examine(database, rebuild=False)}
    assert "the first `rungbook serve` makes them" in said["store"].words
    assert said["store"].words.startswith("PostgreSQL")
    assert "queue" not in said
