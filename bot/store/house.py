"""Opens a bot's tables in a PostgreSQL database: makes its schema where there is none, and takes the missing steps.

Several services may open the same at once; they take turns at it.
"""

from collections.abc import Callable
from typing import Final, TypeVar

from sqlalchemy import Connection, text
from sqlalchemy.exc import ArgumentError, DBAPIError, NoSuchModuleError

from bot.ports import StoreError
from bot.store import migrate
from bot.store.postgres import House, Pool, named
from bot.store.urls import BOT, parsed

T = TypeVar("T")

_TURN: Final = 0x72756E67
"""The advisory lock of who brings tables up to date; a number of ours."""


def pool_of(url: str) -> Pool:
    """Connections to a database, opened when they are first wanted. Raises StoreError for a URL that is none."""
    try:
        return Pool(parsed(url).difference_update_query([BOT]))
    except (ArgumentError, NoSuchModuleError, ImportError) as problem:
        raise StoreError(f"the store's URL is not understood ({type(problem).__name__})") from None


def schema_of(url: str) -> str | None:
    """The schema of the bot that a URL names; None: it names none. Raises StoreError for a name that is none."""
    name = parsed(url).query.get(BOT)
    if name is None:
        return None
    try:
        return named(f"bot_{name}")
    except ValueError:
        raise StoreError(f"{BOT}= takes a name of letters, digits and _, as in {BOT}=north") from None


async def enter(pool: Pool, schema: str | None, *, hold: bool, create: bool, own: bool) -> House:
    """One bot's tables, up to date. Raises StoreError for everything that is wrong with them."""
    house = House(pool, schema, own=own)
    try:
        await house.beside(lambda conn: _prepare(conn, schema, hold=hold, create=create))
    except StoreError:
        await house.close()
        raise
    except DBAPIError as problem:
        await house.close()
        raise StoreError(
            f"the store's database cannot be used ({_short(problem)}): is it there and reachable?"
        ) from None
    return house


async def seen(pool: Pool, schema: str | None, look: Callable[[Connection], T]) -> T:
    """What a look at a bot's tables finds, as they are. Raises StoreError."""
    try:
        return await House(pool, schema, own=False).read(look)
    except DBAPIError as problem:
        raise StoreError(f"the store's database cannot be used ({_short(problem)})") from None


async def bring_up(pool: Pool, take_steps: Callable[[Connection], None]) -> None:
    """Bring tables up to date that are no bot's own. Raises StoreError."""
    try:
        await House(pool, None, own=False).beside(take_steps)
    except DBAPIError as problem:
        raise StoreError(f"the store's database cannot be used ({_short(problem)})") from None


def _prepare(conn: Connection, schema: str | None, *, hold: bool, create: bool) -> None:
    conn.execute(text("SELECT pg_advisory_xact_lock(:turn)"), {"turn": _TURN})
    if schema is not None:
        conn.execute(text(f'CREATE SCHEMA IF NOT EXISTS "{named(schema)}"'))
    found = migrate.present(conn)
    if found is None and not create:
        raise StoreError("there is no store in that database: name another, or fill it with `rungbook demo`")
    if hold or found is None:
        migrate.upgrade(conn)
    else:
        migrate.insist(conn)


def _short(problem: DBAPIError) -> str:
    """The first line of the driver's words; it names host and database, and no password."""
    return str(problem.orig).strip().split("\n")[0]
