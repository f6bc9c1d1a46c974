"""Opens a store: one file, one service, every commit on the disk before it counts. Knows no table.

Data access is written once as plain functions of a connection; ``Store`` runs them, each in one transaction.
"""

import asyncio
import os
from collections.abc import Callable
from contextlib import nullcontext
from pathlib import Path
from typing import Any, Final, Self, TypeVar

from filelock import FileLock, Timeout
from sqlalchemy import URL, Connection, Engine, event, make_url
from sqlalchemy.exc import ArgumentError, DBAPIError
from sqlalchemy.ext.asyncio import AsyncEngine, create_async_engine

from bot.ports import StoreBusy, StoreError
from bot.store import migrate, scrub

T = TypeVar("T")

DRIVER: Final = "sqlite+aiosqlite"
_PRAGMAS: Final = (
    "PRAGMA journal_mode=WAL",
    "PRAGMA synchronous=FULL",  # what was confirmed to a channel must survive a power cut
    "PRAGMA busy_timeout=5000",
    "PRAGMA foreign_keys=ON",
    "PRAGMA secure_delete=ON",  # what is purged leaves no copy in freed pages
)
_OWNER_ONLY: Final = 0o600


def file_of(url: str) -> Path:
    """The file behind a store's URL. Raises StoreError with the remedy when the URL is of another kind."""
    try:
        parsed = make_url(url)
    except ArgumentError:
        raise StoreError(f"the store's URL is not one: write {DRIVER}:///FILE") from None
    if parsed.drivername != DRIVER:
        raise StoreError(f"a store of kind {parsed.drivername!r} is not served: write {DRIVER}:///FILE")
    if not parsed.database or parsed.database == ":memory:":
        raise StoreError(f"the store's URL names no file: write {DRIVER}:///FILE")
    return Path(parsed.database)


class Store:
    """A store that is open. ``write`` and ``read`` run one function in one transaction and give back its value."""

    def __init__(self, engine: AsyncEngine, lock: FileLock | None) -> None:
        self._engine = engine
        self._lock = lock
        # SQLite has one writer at a time: waiting here is fair and free, waiting in the database is neither.
        self._gate = asyncio.Lock()
        self._running: set[asyncio.Task[Any]] = set()
        self._stale = False

    @classmethod
    async def open(cls, url: str, *, hold: bool = True, create: bool = True) -> Self:
        """Open the store and bring its tables up to date.

        ``hold`` takes the file for this process alone; without it nothing is migrated while another process holds
        the file. Raises StoreBusy when held by another, StoreError for everything else that is wrong with it.
        """
        file = file_of(url)
        if not create and not file.exists():
            raise StoreError(f"there is no store at {file}: name an existing one, or fill one with `rungbook demo`")
        lock = _take(file, must=hold)
        try:
            _make_private(file)
            store = cls(_engine(make_url(url)), lock)
            await store._prepare(migrating=lock is not None)
        except StoreError:
            _release(lock)
            raise
        except (OSError, DBAPIError) as problem:
            _release(lock)
            raise StoreError(f"the store at {file} cannot be opened ({_short(problem)}): check its folder") from None
        if not hold:
            _release(lock)
        return store

    async def _prepare(self, *, migrating: bool) -> None:
        try:
            await (self.write(migrate.upgrade) if migrating else self.read(migrate.insist))
        except BaseException:
            await self._engine.dispose()
            raise

    async def write(self, act: Callable[[Connection], T]) -> T:
        """Run ``act`` in one transaction that may write: all of it is committed, or nothing of it.

        A transaction once begun is carried through, also when its caller is told to stop.
        """
        task = asyncio.ensure_future(self._write(act))
        self._running.add(task)
        task.add_done_callback(self._running.discard)
        return await asyncio.shield(task)

    async def _write(self, act: Callable[[Connection], T]) -> T:
        async with self._gate:
            async with self._engine.begin() as conn:
                found = await conn.run_sync(act)
                self._stale = await conn.run_sync(scrub.taken) or self._stale
            if self._stale:
                self._stale = not await self._let_go_of_the_log()
            return found

    async def _let_go_of_the_log(self) -> bool:
        """Empty SQLite's log, which still holds what was erased. False: somebody reads; the next write tries again."""
        async with self._engine.connect() as conn:
            await conn.execution_options(rungbook_bare=True)
            answer = await conn.exec_driver_sql("PRAGMA wal_checkpoint(TRUNCATE)")
            busy = answer.scalar_one()
        return not busy

    async def read(self, look: Callable[[Connection], T]) -> T:
        """Run ``look`` on one consistent view; it never waits for a writer."""
        async with self._engine.connect() as conn:
            await conn.execution_options(rungbook_reading=True)
            return await conn.run_sync(look)

    async def close(self) -> None:
        """Let the last transactions end, then let go of the file."""
        await asyncio.gather(*self._running, return_exceptions=True)
        await self._engine.dispose()
        _release(self._lock)

    async def __aenter__(self) -> Self:
        return self

    async def __aexit__(self, *_: object) -> None:
        await self.close()


def _engine(url: URL) -> AsyncEngine:
    engine = create_async_engine(url)
    _tune(engine.sync_engine)
    return engine


def _tune(engine: Engine) -> None:
    """SQLite's driver starts transactions late and deferred by itself; take that over (SQLAlchemy's own recipe)."""

    @event.listens_for(engine, "connect")
    def _connected(dbapi: Any, _record: object) -> None:
        dbapi.isolation_level = None
        cursor = dbapi.cursor()
        for pragma in _PRAGMAS:
            cursor.execute(pragma)
        cursor.close()

    @event.listens_for(engine, "begin")
    def _begun(conn: Connection) -> None:
        wanted = conn.get_execution_options()
        if not wanted.get("rungbook_bare", False):  # the log can only be emptied outside of a transaction
            conn.exec_driver_sql("BEGIN" if wanted.get("rungbook_reading", False) else "BEGIN IMMEDIATE")


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


def _short(problem: OSError | DBAPIError) -> str:
    return str(problem.orig if isinstance(problem, DBAPIError) else problem.strerror)
