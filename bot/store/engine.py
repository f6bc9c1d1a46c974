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
from sqlalchemy import URL, Connection, make_url
from sqlalchemy.exc import ArgumentError, DBAPIError

from bot.ports import StoreBusy, StoreError
from bot.store import migrate
from bot.store.grouped import Grouped
from bot.store.readers import Readers
from bot.store.sqlite_line import Line

if TYPE_CHECKING:
    from bot.store.postgres import Pool

T = TypeVar("T")

DRIVER: Final = "sqlite+aiosqlite"
SERVER: Final = "postgresql+psycopg"
_OWNER_ONLY: Final = 0o600


class Writer(Protocol):
    """Runs what may write."""

    async def write(self, act: Callable[[Connection], T]) -> T:
        """Run it in a transaction; gives its value once that is committed."""
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


def parsed(url: str) -> URL:
    """A store's URL, of one of the two kinds. Raises StoreError with the remedy for any other."""
    try:
        found = make_url(url)
    except ArgumentError:
        raise StoreError(f"the store's URL is not one: write {DRIVER}:///FILE") from None
    if found.drivername not in {DRIVER, SERVER}:
        raise StoreError(
            f"a store of kind {found.drivername!r} is not served: write {DRIVER}:///FILE "
            f"or {SERVER}://USER:PASSWORD@HOST/DATABASE"
        )
    return found


def is_served(url: str) -> bool:
    """Whether the store is a database that several services share, not a file of one."""
    return parsed(url).drivername == SERVER


def file_of(url: str) -> Path:
    """The file behind a store's URL. Raises StoreError with the remedy when the URL is of another kind."""
    found = parsed(url)
    if found.drivername != DRIVER:
        raise StoreError(f"that store is a database, not a file: this command needs {DRIVER}:///FILE")
    if not found.database or found.database == ":memory:":
        raise StoreError(f"the store's URL names no file: write {DRIVER}:///FILE")
    return Path(found.database)


class Store:
    """A store that is open. ``write`` and ``read`` run one function in one transaction and give back its value."""

    def __init__(self, writer: Writer, reader: Reader, lock: FileLock | None = None) -> None:
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

            return await cls.of_house(house.pool_of(url), None, hold=hold, create=create, own=True)
        file = file_of(url)
        if not create and not file.exists():
            raise StoreError(f"there is no store at {file}: name an existing one, or fill one with `rungbook demo`")
        return await cls._of_file(file, hold=hold)

    @classmethod
    async def of_house(cls, pool: "Pool", schema: str | None, *, hold: bool, create: bool, own: bool) -> Self:
        """Open one bot's tables in a database; ``own``: the connections are this store's alone."""
        from bot.store import house

        rooms = await house.enter(pool, schema, hold=hold, create=create, own=own)
        return cls(rooms, rooms)

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
        lock.acquire(timeout=0)
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
