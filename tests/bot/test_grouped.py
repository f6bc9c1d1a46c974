"""Writes that share a commit: each stands or falls by itself, and nobody is told of what is not on the disk."""

import asyncio
from collections.abc import AsyncIterator, Callable
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import Connection, insert, select, text
from sqlalchemy.exc import IntegrityError

from bot.store.engine import Store
from bot.store.grouped import TOGETHER
from bot.store.sqlite_line import raw_of
from bot.store.tables import setting

Act = Callable[[Connection], Any]


@pytest.fixture
async def store(tmp_path: Path) -> AsyncIterator[Store]:
    async with await Store.open(f"sqlite+aiosqlite:///{tmp_path / 'gym.db'}") as opened:
        yield opened


def _put(name: str) -> Act:
    def act(conn: Connection) -> str:
        conn.execute(insert(setting).values(name=name, value="x"))
        if name.startswith("bad"):
            raise ValueError(name)
        return name

    return act


async def _names(store: Store) -> set[str]:
    return set(await store.read(lambda conn: conn.execute(select(setting.c.name)).scalars().all()))


async def test_one_that_fails_takes_nothing_of_the_others_with_it(store: Store) -> None:
    names = [f"{'bad' if number % 5 == 2 else 'good'}-{number}" for number in range(3 * TOGETHER)]
    told = await asyncio.gather(*(store.write(_put(name)) for name in names), return_exceptions=True)
    for name, found in zip(names, told, strict=True):
        assert str(found) == name
        assert isinstance(found, ValueError) == name.startswith("bad")
    assert await _names(store) == {name for name in names if name.startswith("good")}


async def test_a_commit_that_fails_is_a_failure_for_each_of_its_writes(store: Store) -> None:
    def breaks_a_key_unseen(conn: Connection) -> None:
        conn.execute(text("PRAGMA defer_foreign_keys=ON"))
        conn.execute(text("INSERT INTO hold (person, sign, since) VALUES (99, 'faint', '2026-03-01')"))

    first = asyncio.ensure_future(store.write(_put("alone")))
    await asyncio.sleep(0)  # it is taken by itself; what comes now waits for it, and goes together
    acts: list[Act] = [_put("a"), breaks_a_key_unseen, _put("b")]
    told = await asyncio.gather(*(store.write(act) for act in acts), return_exceptions=True)
    assert await first == "alone"
    assert all(isinstance(found, IntegrityError) for found in told)
    assert await _names(store) == {"alone"}
    assert await store.write(_put("after")) == "after"


async def test_what_waits_together_shares_commits(store: Store) -> None:
    seen: list[str] = []
    await store.write(lambda conn: raw_of(conn).set_trace_callback(seen.append))
    await asyncio.gather(*(store.write(_put(str(number))) for number in range(4 * TOGETHER)))
    assert 0 < sum(one == "COMMIT" for one in seen) <= 6
    assert len(await _names(store)) == 4 * TOGETHER
