"""Writes of many callers, some of them at a time in one commit; each of them stands or falls by itself. SQLite only.

The disk's part of a commit costs the same for one message as for sixteen. Nobody is told of a success before the
commit is on the disk. Knows no table.
"""

import asyncio
import sqlite3
from collections import deque
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from functools import partial
from typing import Any, Final, TypeVar

from sqlalchemy import Connection
from sqlalchemy.exc import DBAPIError

from bot.store import scrub
from bot.store.sqlite_line import Line, raw_of

T = TypeVar("T")

TOGETHER: Final = 16
"""Most writes in one commit."""


@dataclass(frozen=True, slots=True)
class _Wanted:
    act: Callable[[Connection], Any]
    told: asyncio.Future[Any]


@dataclass(frozen=True, slots=True)
class _Failed:
    trouble: Exception


class Grouped:
    """The one writer of a file. A write that was asked for is carried through, also when its caller is gone."""

    def __init__(self, line: Line) -> None:
        self._line = line
        self._waiting: deque[_Wanted] = deque()
        self._working: asyncio.Task[None] | None = None
        self._stale = False

    async def write(self, act: Callable[[Connection], T]) -> T:
        """Run ``act`` in a transaction; gives its value once that is committed."""
        told: asyncio.Future[T] = asyncio.get_running_loop().create_future()
        self._waiting.append(_Wanted(act, told))
        if self._working is None:
            self._working = asyncio.create_task(self._work())
        return await asyncio.shield(told)

    async def beside(self, act: Callable[[Connection], T]) -> T:
        """The same: there is one writer at a time."""
        return await self.write(act)

    async def close(self) -> None:
        """Let the last writes end, then let go of the file."""
        if self._working is not None:
            await self._working
        await self._line.close()

    async def _work(self) -> None:
        try:
            while self._waiting:
                some = [self._waiting.popleft() for _ in range(min(TOGETHER, len(self._waiting)))]
                await self._commit(some)
                if self._stale:
                    await self._let_go_of_the_log()
        finally:
            self._working = None

    async def _let_go_of_the_log(self) -> None:
        """Empty SQLite's log, which still holds what was erased; while somebody reads, the next write tries again."""
        with suppress(DBAPIError, sqlite3.Error):
            self._stale = not await self._line.run(_emptied)

    async def _commit(self, some: list[_Wanted]) -> None:
        try:
            outcomes, erased = await self._line.run(partial(_together, acts=[one.act for one in some]))
            self._stale = self._stale or erased
        except Exception as trouble:  # noqa: BLE001  # it is theirs who asked
            outcomes = [_Failed(trouble)] * len(some)
        for one, outcome in zip(some, outcomes, strict=True):
            if isinstance(outcome, _Failed):
                one.told.set_exception(outcome.trouble)
            else:
                one.told.set_result(outcome)


def _together(conn: Connection, acts: list[Callable[[Connection], Any]]) -> tuple[list[Any], bool]:
    """The value of each, or its failure, in one commit, and whether anything was erased. Raises when none stands."""
    with conn.begin():
        outcomes = [acts[0](conn)] if len(acts) == 1 else [_apart(conn, act) for act in acts]
    return outcomes, scrub.taken(conn)


def _apart(conn: Connection, act: Callable[[Connection], Any]) -> Any:
    raw = raw_of(conn)
    raw.execute("SAVEPOINT apart")
    try:
        outcome = act(conn)
    except Exception as trouble:  # it is theirs who asked
        if not raw.in_transaction:
            raise  # SQLite gave the whole transaction up (a full disk), so that nothing of it stands
        raw.execute("ROLLBACK TO apart")
        outcome = _Failed(trouble)
    raw.execute("RELEASE apart")
    return outcome


def _emptied(conn: Connection) -> bool:
    busy, *_ = raw_of(conn).execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
    return not busy
