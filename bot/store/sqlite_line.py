"""One connection to a SQLite file on its driver's thread, to which whole functions are carried over at once.

A hop to the thread costs as much as dozens of small statements, so a transaction makes one, not one a statement. Knows
no table.
"""

import asyncio
import sqlite3
from collections.abc import Callable, Generator
from functools import partial
from pathlib import Path
from typing import Any, Final, Literal, Self, TypeVar

import aiosqlite
from sqlalchemy import Connection, StaticPool, create_engine, event

T = TypeVar("T")

Begins = Literal["BEGIN", "BEGIN IMMEDIATE"]
"""How a transaction on a line begins: a reader's takes its view, a writer's takes the one place to write."""

_PRAGMAS: Final = (
    "PRAGMA busy_timeout=5000",  # first, because the next one may meet a file that is just being opened
    "PRAGMA journal_mode=WAL",
    "PRAGMA synchronous=FULL",  # what was confirmed to a channel must survive a power cut
    "PRAGMA foreign_keys=ON",
    "PRAGMA secure_delete=ON",  # what is purged leaves no copy in freed pages
)
_STATEMENTS_KEPT: Final = 512
"""Statements that stay prepared on a connection; the service has some hundreds."""


class Line(aiosqlite.Connection):
    """A connection and its thread."""

    def __init__(self, file: Path, begins: Begins) -> None:
        super().__init__(partial(self._connected, file, begins), iter_chunk_size=1)
        self._thread.daemon = True  # a process that dies in the middle must not wait for it
        self._rows: Connection | None = None

    def __await__(self) -> Generator[Any, None, Self]:
        yield from super().__await__()
        return self

    @classmethod
    async def open(cls, file: Path, begins: Begins) -> Self:
        """Connect. Raises sqlite3.Error when the file is none of SQLite's or cannot be opened."""
        line = cls(file, begins)
        try:
            return await line
        except BaseException:
            await asyncio.to_thread(line._thread.join)  # its last words come to this loop, which must still be there
            raise

    async def run(self, act: Callable[[Connection], T]) -> T:
        """Call ``act`` on the thread; what it begins it must end."""
        found: T = await self._execute(self._call, act)  # type: ignore[no-untyped-call]
        return found

    async def close(self) -> None:
        """End what runs, then let go of the file."""
        if self._rows is not None:
            await self._execute(self._rows.close)  # type: ignore[no-untyped-call]
            self._rows = None
        await super().close()

    def _call(self, act: Callable[[Connection], T]) -> T:
        if self._rows is None:
            raise ValueError("the line is closed")
        try:
            return act(self._rows)
        except BaseException:
            if self._conn.in_transaction:  # a commit that failed leaves its transaction open
                self._conn.rollback()
            raise

    def _connected(self, file: Path, begins: Begins) -> sqlite3.Connection:
        raw = sqlite3.connect(file, isolation_level=None, cached_statements=_STATEMENTS_KEPT)
        try:
            for pragma in _PRAGMAS:
                raw.execute(pragma)
            self._rows = _rows(raw, begins)
        except BaseException:
            raw.close()
            raise
        return raw


def _rows(raw: sqlite3.Connection, begins: Begins) -> Connection:
    """Statements on the raw connection, which nobody else uses.

    SQLite's driver starts transactions late and deferred by itself; that is taken over (SQLAlchemy's own recipe).
    """
    engine = create_engine("sqlite://", creator=lambda: raw, poolclass=StaticPool)

    @event.listens_for(engine, "begin")
    def _begun(conn: Connection) -> None:
        conn.exec_driver_sql(begins)

    return engine.connect()


def raw_of(conn: Connection) -> Any:
    """The driver's own connection below, for words that are no statements on tables."""
    return conn.connection.dbapi_connection
