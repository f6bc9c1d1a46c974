"""What holds on a PostgreSQL database alone: bots kept apart, turns, duties, a queue that forgets nothing, copies."""

import asyncio
import os
from collections.abc import AsyncIterator, Iterator
from pathlib import Path
from typing import Any

import pytest
from procrastinate.exceptions import ConnectorException
from procrastinate.manager import JobManager
from sqlalchemy import Connection, insert, text

from bot import doctor
from bot.duties import Duties
from bot.lanes import Lanes
from bot.ports import StoreError
from bot.store import dumps, house, migrate, queue_steps, turns
from bot.store.engine import Store
from bot.store.inbox import Lane
from bot.store.postgres import Pool
from bot.store.tables import setting
from bot.store.urls import parsed
from tests.bot.postgres import Server

NAME = "gym_of_one"


@pytest.fixture
def url(postgresql: Server) -> Iterator[str]:
    yield postgresql.create(NAME)
    postgresql.drop(NAME)


@pytest.fixture
async def pool(url: str) -> AsyncIterator[Pool]:
    made = house.pool_of(url)
    await house.bring_up(made, queue_steps.upgrade)
    yield made
    await made.close()


def rows(conn: Connection) -> list[str]:
    return [row.name for row in conn.execute(setting.select())]


async def put(store: Store, name: str) -> None:
    await store.write(lambda conn: conn.execute(insert(setting).values(name=name, value="")))


async def test_bots_of_one_pool_never_see_each_other(pool: Pool, url: str) -> None:
    """All on the same few connections, one after the other and at once."""
    stores = [await Store.within(pool, f"{url}?bot={name}") for name in ("north", "south", "west")]
    for each in range(5):
        await asyncio.gather(*(put(store, f"{place}-{each}") for place, store in enumerate(stores)))
    for place, store in enumerate(stores):
        assert await store.read(rows) == [f"{place}-{each}" for each in range(5)]
    usual = await Store.within(pool, url)
    assert await usual.read(rows) == []


async def test_a_bots_name_is_a_plain_word(pool: Pool, url: str) -> None:
    for name in ("North", "a-b", 'x"; DROP TABLE person; --', "a" * 60):
        with pytest.raises(StoreError, match="takes a name"):
            await Store.within(pool, parsed(url).update_query_dict({"bot": name}).render_as_string())


async def test_opening_at_once_makes_the_tables_once(pool: Pool, url: str) -> None:
    stores = await asyncio.gather(*(Store.within(pool, f"{url}?bot=north") for _ in range(4)))
    assert {await store.read(migrate.present) for store in stores} == {migrate.newest()}


async def test_the_queues_tables_are_made_once_and_kept(pool: Pool) -> None:
    await house.bring_up(pool, queue_steps.upgrade)
    steps = await house.seen(
        pool, queue_steps.SCHEMA, lambda conn: conn.execute(text("SELECT * FROM step_taken")).all()
    )
    assert len(steps) > 20
    assert len(set(steps)) == len(steps)


async def test_people_have_turns_side_by_side_and_one_alone_waits_for_all(
    pool: Pool, url: str, postgresql: Server
) -> None:
    """Seen from a connection beside: which turns are free while one is held."""
    store = await Store.within(pool, url)

    def free(conn: Connection) -> list[bool]:
        """Another person's turn, this person's, everybody's."""
        house_of = conn.execute(text("SELECT classid FROM pg_locks WHERE locktype = 'advisory'")).scalars().all()[0]
        with postgresql.connect(NAME) as other:
            tries = [f"SELECT pg_try_advisory_lock({house_of - 2**32}, {who})" for who in (9, 1 + 1, 0)]
            return [bool((other.execute(one).fetchone() or [None])[0]) for one in tries]

    def one_person(conn: Connection) -> list[bool]:
        turns.side_by_side(conn, 1)
        return free(conn)

    assert await store.write_beside(one_person) == [True, False, False]
    assert await store.write(free) == [True, True, False]


async def test_a_duty_is_one_processs_and_goes_to_another_when_that_is_gone(url: str, postgresql: Server) -> None:
    log: asyncio.Queue[str] = asyncio.Queue()

    def process(name: str) -> "asyncio.Task[None]":
        async def duty() -> None:
            await log.put(f"{name} began")
            try:
                await asyncio.Event().wait()
            finally:
                log.put_nowait(f"{name} ended")

        return asyncio.create_task(Duties(url, {"gym/sender": duty}, lambda word: log.put_nowait(word)).run())

    first = process("first")
    assert await log.get() == "first began"
    second = process("second")
    with postgresql.connect(NAME) as conn:
        await asyncio.to_thread(conn.execute, "SELECT pg_notify('rungbook_out', 'north')")
        assert await log.get() == "north"
        await asyncio.to_thread(
            conn.execute,
            "SELECT pg_terminate_backend(pid) FROM pg_locks WHERE locktype = 'advisory' AND granted",
        )
    after = [await log.get() for _ in range(2)]
    assert after[0] == "first ended"
    assert after[1].endswith("began")
    for task in (first, second):
        task.cancel()
    await asyncio.gather(first, second, return_exceptions=True)


async def test_what_is_handed_on_is_worked_in_its_chats_order_and_never_twice_at_once(pool: Pool, url: str) -> None:
    worked: list[Lane] = []
    at_work: set[Lane] = set()
    done = asyncio.Event()

    async def work(lane: Lane) -> None:
        assert lane not in at_work
        at_work.add(lane)
        await asyncio.sleep(0)
        at_work.remove(lane)
        worked.append(lane)
        if {chat for _, chat in worked} == set(range(8)):
            done.set()

    async with Lanes(url, {"": work}) as one, Lanes(url, {"": work}) as two:
        await one.hand_on("", [("wire", chat) for chat in range(8)])
        await one.hand_on("", [("wire", chat) for chat in range(8)])  # each waits already: no second call
        workers = [asyncio.create_task(lanes.run()) for lanes in (one, two)]
        async with asyncio.timeout(60):
            await done.wait()
        for worker in workers:
            worker.cancel()
        await asyncio.gather(*workers, return_exceptions=True)
    assert sorted(worked) == [("wire", chat) for chat in range(8)]


async def test_a_chat_whose_end_could_not_be_told_is_not_held_for_ever(
    pool: Pool, url: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The database is away at the moment in which a job is over; the worker itself lives on."""
    calls: asyncio.Queue[Lane] = asyncio.Queue()

    async def work(lane: Lane) -> None:
        calls.put_nowait(lane)

    finish, failed = JobManager.finish_job, asyncio.Event()

    async def away(self: JobManager, *args: Any, **named: Any) -> None:
        if failed.is_set():
            await finish(self, *args, **named)
            return
        failed.set()
        raise ConnectorException

    monkeypatch.setattr(JobManager, "finish_job", away)
    async with Lanes(url, {"": work}) as lanes:
        worker = asyncio.create_task(lanes.run())
        await lanes.hand_on("", [("wire", 1)])
        async with asyncio.timeout(60):
            assert await calls.get() == ("wire", 1)
            await failed.wait()
            await lanes.hand_on("", [("wire", 1)])
            await lanes.take_up()
            assert calls.empty()  # one look could meet a job that is just ending
            await lanes.take_up()
            assert await calls.get() == ("wire", 1)
        worker.cancel()
        await asyncio.gather(worker, return_exceptions=True)


def test_a_copy_by_the_databases_own_tools_and_back(
    url: str, postgresql: Server, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PATH", f"{postgresql.programs}{os.pathsep}{os.environ['PATH']}")

    async def fill() -> None:
        async with await Store.open(f"{url}?bot=north") as north, await Store.open(f"{url}?bot=south") as south:
            await put(north, "mine")
            await put(south, "theirs")

    async def names(where: str) -> list[str]:
        async with await Store.open(where, hold=False, create=False) as store:
            return await store.read(rows)

    asyncio.run(fill())
    copy = tmp_path / "copy.dump"
    assert dumps.back_up(f"{url}?bot=north", copy) == copy.stat().st_size
    assert copy.stat().st_mode & 0o077 == 0
    with pytest.raises(StoreError, match="is there already"):
        dumps.back_up(url, copy)
    with pytest.raises(StoreError, match="holds a store"):
        dumps.restore(copy, f"{url}?bot=north")
    with postgresql.connect(NAME) as conn:
        conn.execute("DROP SCHEMA bot_north CASCADE")
    dumps.restore(copy, f"{url}?bot=north")
    assert asyncio.run(names(f"{url}?bot=north")) == ["mine"]
    assert asyncio.run(names(f"{url}?bot=south")) == ["theirs"]


def test_without_the_tools_a_copy_is_refused_with_the_remedy(
    url: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("PATH", str(tmp_path))
    with pytest.raises(StoreError, match="pg_dump is not on the path: install"):
        dumps.back_up(url, tmp_path / "copy.dump")


async def test_doctor_looks_at_server_queue_and_copies(pool: Pool, url: str, monkeypatch: pytest.MonkeyPatch) -> None:
    await Store.within(pool, url)
    monkeypatch.setenv("RUNGBOOK_STORE", url)
    found = {finding.about: finding for finding in await doctor.examine(None, rebuild=False)}
    assert not found["store"].well  # the tests' server does without the disk
    assert "fsync" in found["store"].words
    assert (found["queue"].well, found["queue"].words) == (True, "0 chats wait, 0 workers are at work")
    assert "pg_dump" in found["copies"].words
