"""Opens a store, by its URL: a SQLite file of one service, or a PostgreSQL database of several. Knows no table.

Data access is written once as plain functions of a connection; ``Store`` runs them, each in one transaction, every
commit on the disk before it counts.
"""

import os
import sqlite3
from collections.abc import Callable
from contextlib import nullcontext
from pathlib import Path
from typing import TYPE_CHECKING, Final, Protocol, Self, TypeVar

from filelock import FileLock, Timeout
from sqlalchemy import Connection
from sqlalchemy.exc import DBAPIError

from bot.ports import StoreBusy, StoreError
from bot.store import migrate
from bot.store.grouped import Grouped
from bot.store.readers import Readers
from bot.store.sqlite_line import Line
from bot.store.urls import file_of, is_served

if TYPE_CHECKING:
    from bot.store.postgres import Pool

T = TypeVar("T")

_OWNER_ONLY: Final = 0o600

MOMENT: Final = 2.0
"""Seconds that a service waits for its store: a command that only looks holds it while it opens it."""


class Writer(Protocol):
    """Runs what may write."""

    async def write(self, act: Callable[[Connection], T]) -> T:
        """Run it in a transaction, as if nobody else wrote; gives its value once that is committed."""
        ...

    async def beside(self, act: Callable[[Connection], T]) -> T:
        """The same, but others may write at the same time."""
        ...

    async def close(self) -> None:
        """Let the last ones end."""
        ...


class Reader(Protocol):
    """Runs what only looks."""

    async def read(self, look: Callable[[Connection], T]) -> T:
        """Run it on one consistent view."""
        ...

    async def close(self) -> None:
        """Let the last ones end."""
        ...


class Store:
    """A store that is open. ``write`` and ``read`` run one function in one transaction and give back its value."""

    shared: bool
    """Others may write in it at the same time."""

    def __init__(self, writer: Writer, reader: Reader, lock: FileLock | None = None, *, shared: bool = False) -> None:
        self.shared = shared
        self._writer = writer
        self._reader = reader
        self._lock = lock

    @classmethod
    async def open(cls, url: str, *, hold: bool = True, create: bool = True) -> Self:
        """Open the store and bring its tables up to date.

        ``hold`` takes a file for this process alone; without it nothing is migrated while another process holds it. A
        database is shared: there ``hold`` only says that its tables may be brought up to date. Raises StoreBusy when
        held by another, StoreError for everything else that is wrong with it.
        """
        if is_served(url):
            from bot.store import house  # the driver takes its time, and is of no use to a file

            return await cls.within(house.pool_of(url), url, hold=hold, create=create, own=True)
        file = file_of(url)
        if not create and not file.exists():
            raise StoreError(f"there is no store at {file}: name an existing one, or fill one with `rungbook demo`")
        return await cls._of_file(file, hold=hold)

    @classmethod
    async def within(cls, pool: "Pool", url: str, *, hold: bool = True, create: bool = True, own: bool = False) -> Self:
        """Open the tables that a database's URL means, on its connections; ``own``: they are this store's alone."""
        from bot.store import house

        rooms = await house.enter(pool, house.schema_of(url), hold=hold, create=create, own=own)
        return cls(rooms, rooms, shared=True)

    @classmethod
    async def _of_file(cls, file: Path, *, hold: bool) -> Self:
        lock = _take(file, must=hold)
        try:
            _make_private(file)
            store = cls(Grouped(await Line.open(file, "BEGIN IMMEDIATE")), Readers(file), lock)
            await store._prepare(migrating=lock is not None)
        except StoreError:
            _release(lock)
            raise
        except (OSError, DBAPIError, sqlite3.Error) as problem:
            _release(lock)
            raise StoreError(f"the store at {file} cannot be opened ({_short(problem)}): check its folder") from None
        if not hold:
            _release(lock)
        return store

    async def _prepare(self, *, migrating: bool) -> None:
        try:
            await (self.write(migrate.upgrade) if migrating else self.read(migrate.insist))
        except BaseException:
            await self._let_go()
            raise

    async def write(self, act: Callable[[Connection], T]) -> T:
        """Run ``act`` in one transaction that may write: all of it is committed, or nothing of it.

        A transaction once asked for is carried through, also when its caller is told to stop.
        """
        return await self._writer.write(act)

    async def write_beside(self, act: Callable[[Connection], T]) -> T:
        """The same for what may go on beside other writers, or takes its turn itself (see ``turns``)."""
        return await self._writer.beside(act)

    async def read(self, look: Callable[[Connection], T]) -> T:
        """Run ``look`` on one consistent view; it never waits for a writer."""
        return await self._reader.read(look)

    async def close(self) -> None:
        """Let the last transactions end, then let go of the file."""
        await self._let_go()
        _release(self._lock)

    async def _let_go(self) -> None:
        await self._reader.close()
        await self._writer.close()

    async def __aenter__(self) -> Self:
        return self

    async def __aexit__(self, *_: object) -> None:
        await self.close()


def _take(file: Path, *, must: bool) -> FileLock | None:
    file.parent.mkdir(parents=True, exist_ok=True)
    lock = FileLock(f"{file}.lock", mode=_OWNER_ONLY)
    try:
        lock.acquire(timeout=MOMENT if must else 0, poll_interval=0.05)
    except Timeout:
        if must:
            raise StoreBusy(f"the store at {file} is held by another rungbook process: stop that one first") from None
        return None
    return lock


def _release(lock: FileLock | None) -> None:
    if lock is not None:
        lock.release()


def _make_private(file: Path) -> None:
    """Only the owner may read it; the side files that SQLite makes take the rights of the main one."""
    with nullcontext() if file.exists() else os.fdopen(os.open(file, os.O_CREAT | os.O_WRONLY, _OWNER_ONLY), "wb"):
        file.chmod(_OWNER_ONLY)


def _short(problem: OSError | DBAPIError | sqlite3.Error) -> str:
    if isinstance(problem, OSError):
        return str(problem.strerror)
    return str(problem.orig if isinstance(problem, DBAPIError) else problem)
