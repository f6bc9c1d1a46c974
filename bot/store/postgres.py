"""Runs transactions on PostgreSQL: each carried over whole to a thread with a connection of its own. Knows no table.

A transaction that may write is alone in its bot's tables, as on SQLite, unless it was asked for beside others and takes
its turn itself (see ``turns``). One that PostgreSQL ends because of others is run again.
"""

import asyncio
import re
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from typing import Any, Final, TypeVar

from psycopg.abc import Buffer
from psycopg.types.string import StrDumper
from sqlalchemy import URL, Connection, Engine, create_engine, event
from sqlalchemy.exc import DBAPIError, OperationalError

from bot.store import scrub, turns

T = TypeVar("T")

AT_ONCE: Final = 6
"""Most transactions of one process at the same time; each takes a connection."""

TRIES: Final = 5
"""Times that a transaction is run when others get in its way, before that is a failure."""

_RUN_AGAIN: Final = frozenset({"40001", "40P01"})
"""PostgreSQL's codes for: others got in the way (serialization failure), each waits for the other (deadlock)."""

_SETTINGS: Final = "-c lock_timeout=30s -c idle_in_transaction_session_timeout=60s"

_KEEPALIVE: Final = {"keepalives_idle": 10, "keepalives_interval": 5, "keepalives_count": 3, "connect_timeout": 10}


class Text(StrDumper):
    """Texts on their way out: the one character that PostgreSQL cannot keep becomes the mark for such."""

    def dump(self, obj: str) -> Buffer | None:
        """The text as bytes."""
        return super().dump(obj.replace("\x00", "\ufffd"))


class Pool:
    """Connections and threads of one process; every store of the process that lives in this database shares them."""

    def __init__(self, url: URL, at_once: int = AT_ONCE) -> None:
        asked = {"options": _SETTINGS, "application_name": "rungbook", **_KEEPALIVE}
        self._engine = create_engine(url, pool_size=at_once, max_overflow=0, pool_timeout=60, connect_args=asked)
        event.listen(self._engine, "connect", _connected)
        self.writing = self._engine.execution_options(isolation_level="READ COMMITTED")
        self.looking = self._engine.execution_options(isolation_level="REPEATABLE READ", postgresql_readonly=True)
        self._threads = ThreadPoolExecutor(at_once, thread_name_prefix="store")
        self._running: set[asyncio.Future[Any]] = set()

    async def run(self, act: Callable[[], T]) -> T:
        """Call ``act`` on a thread; once begun it is carried through, also when its caller is told to stop."""
        running = asyncio.get_running_loop().run_in_executor(self._threads, act)
        self._running.add(running)
        running.add_done_callback(self._running.discard)
        return await asyncio.shield(running)

    async def close(self) -> None:
        """Let the last transactions end, then let go of the connections."""
        await asyncio.gather(*self._running, return_exceptions=True)
        self._threads.shutdown()  # they have nothing left to do, so this waits for no transaction
        self._engine.dispose()


def _connected(dbapi: Any, _record: object) -> None:
    dbapi.adapters.register_dumper(str, Text)


class House:
    """One bot's tables in a database: a schema that every statement is held to. ``None``: the database's usual one."""

    def __init__(self, pool: Pool, schema: str | None, *, own: bool) -> None:
        self._pool = pool
        self._own = own
        self._schema = schema

    async def write(self, act: Callable[[Connection], T]) -> T:
        """Run ``act`` in a transaction, alone; gives its value once that is committed."""
        return await self._pool.run(lambda: self._written(_alone(act)))

    async def beside(self, act: Callable[[Connection], T]) -> T:
        """The same beside others: ``act`` takes its turn itself, where it needs one."""
        return await self._pool.run(lambda: self._written(act))

    async def read(self, look: Callable[[Connection], T]) -> T:
        """Give what ``look`` finds on a view that nobody changes meanwhile."""
        return await self._pool.run(lambda: self._seen(look))

    async def close(self) -> None:
        """Let go of what is this store's alone."""
        if self._own:
            await self._pool.close()

    def _written(self, act: Callable[[Connection], T]) -> T:
        for _ in range(TRIES - 1):
            try:
                return self._once(act)
            except OperationalError as trouble:
                if not _may_run_again(trouble):
                    raise
        return self._once(act)

    def _once(self, act: Callable[[Connection], T]) -> T:
        with _told_alike(), self._connected(self._pool.writing) as conn, conn.begin():
            found = act(conn)
            scrub.taken(conn)
            return found

    def _seen(self, look: Callable[[Connection], T]) -> T:
        with _told_alike(), self._connected(self._pool.looking) as conn, conn.begin() as view:
            found = look(conn)
            view.rollback()
            return found

    @contextmanager
    def _connected(self, engine: Engine) -> Iterator[Connection]:
        with engine.connect() as conn:
            self._enter(conn)
            yield conn

    def _enter(self, conn: Connection) -> None:
        """Hold the connection to this bot's schema, before any transaction begins on it."""
        if conn.info.get(turns.HOUSE) == self._schema:
            return
        raw: Any = conn.connection.dbapi_connection
        path = "" if self._schema is None else f'"{named(self._schema)}"'
        raw.autocommit = True
        raw.execute(f"SET search_path = {path}" if path else "RESET search_path")
        raw.autocommit = False
        conn.info[turns.HOUSE] = self._schema


def _alone(act: Callable[[Connection], T]) -> Callable[[Connection], T]:
    def in_turn(conn: Connection) -> T:
        turns.alone(conn)
        return act(conn)

    return in_turn


def _may_run_again(trouble: OperationalError) -> bool:
    """Others got in its way. A connection that was lost is no such case: what it did may be committed."""
    return getattr(trouble.orig, "sqlstate", None) in _RUN_AGAIN


@contextmanager
def _told_alike() -> Iterator[None]:
    """A database that is away is told as on every engine, whichever way the driver notices it."""
    try:
        yield
    except OperationalError:
        raise
    except DBAPIError as trouble:
        if trouble.connection_invalidated and trouble.orig is not None:
            raise OperationalError(trouble.statement, None, trouble.orig, connection_invalidated=True) from None
        raise


_NAME: Final = re.compile(r"[a-z][a-z0-9_]{0,47}")


def named(schema: str) -> str:
    """A schema's name, which is ours and plain. Raises ValueError for any other."""
    if _NAME.fullmatch(schema) is None:
        raise ValueError(f"no name for a schema: {schema!r}")
    return schema
