"""Carries a whole store into an empty one of either kind: every table, in the order in which tables need each other.

All of it is there afterwards, or nothing. The store that it comes from is brought up to date, and otherwise left alone.
Knows tables as such, and none by its name.
"""

import asyncio
from collections.abc import Callable, Iterator, Mapping
from functools import partial
from typing import Any, Final, Protocol, TypeVar

from sqlalchemy import Column, Connection, Table, bindparam, func, insert, select, text, tuple_, update

from bot.ports import StoreError
from bot.store import contest_tables  # noqa: F401 - its tables are known once it is read
from bot.store.engine import Store
from bot.store.tables import metadata
from bot.store.urls import SERVES, parsed

T = TypeVar("T")

AT_ONCE: Final = 2000
"""Rows that are carried together."""

TABLES: Final = tuple(metadata.sorted_tables)


class Ask(Protocol):
    """Looks into the old store, from the thread of the new one."""

    def __call__(self, look: Callable[[Connection], T], /) -> T:
        """What ``look`` finds there."""
        ...


async def move(source: str, target: str) -> dict[str, int]:
    """Copy everything; the number of rows by table. Raises StoreError: one is in use, the target is not empty."""
    if parsed(source) == parsed(target):
        raise StoreError("both URLs name the same store: name an empty one after --to")
    async with await Store.open(source, create=False) as old:
        if old.shared and await old.read(_is_served_now):
            raise StoreError("a service is running on that store: stop it first, or what comes in meanwhile is lost")
        async with await Store.open(target) as new:
            loop = asyncio.get_running_loop()

            def ask(look: Callable[[Connection], T]) -> T:
                return asyncio.run_coroutine_threadsafe(old.read(look), loop).result()

            return await new.write(partial(_fill, ask=ask))


def _fill(conn: Connection, ask: Ask) -> dict[str, int]:
    full = [name for name, number in _counts(conn).items() if number]
    if full:
        raise StoreError(f"the store to move to is not empty (it has rows in {full[0]}): name an empty one")
    for table in TABLES:
        own = _to_itself(table)
        later: list[dict[str, Any]] = []
        for rows in _pages(table, ask):
            conn.execute(insert(table), [{**row, **dict.fromkeys(own)} for row in rows])
            later += [_link(table, own, row) for row in rows if any(row[name] is not None for name in own)]
        if later:
            conn.execute(_linking(table, own), later)
        _go_on_counting(conn, table)
    moved = _counts(conn)
    if moved != ask(_counts):
        raise StoreError("the store was written to while it was moved, so nothing was: stop what uses it, then repeat")
    return moved


def _pages(table: Table, ask: Ask) -> Iterator[list[Mapping[str, Any]]]:
    after: tuple[Any, ...] | None = None
    while rows := ask(partial(_page, table=table, after=after)):
        yield rows
        after = tuple(rows[-1][column.name] for column in table.primary_key)


def _page(conn: Connection, table: Table, after: tuple[Any, ...] | None) -> list[Mapping[str, Any]]:
    keys = list(table.primary_key)
    query = select(table).order_by(*keys).limit(AT_ONCE)
    if after is not None:
        query = query.where(tuple_(*keys) > tuple_(*after, types=[key.type for key in keys]))
    return [dict(row) for row in conn.execute(query).mappings()]


def _counts(conn: Connection) -> dict[str, int]:
    return {table.name: conn.execute(select(func.count()).select_from(table)).scalar_one() for table in TABLES}


def _to_itself(table: Table) -> list[str]:
    """Columns that name other rows of the same table: these may come later, so they are filled in at the end."""
    return [column.name for column in table.columns if any(key.column.table is table for key in column.foreign_keys)]


def _link(table: Table, own: list[str], row: Mapping[str, Any]) -> dict[str, Any]:
    return {f"key_{column.name}": row[column.name] for column in table.primary_key} | {
        f"to_{name}": row[name] for name in own
    }


def _linking(table: Table, own: list[str]) -> Any:
    query = update(table).values({name: bindparam(f"to_{name}") for name in own})
    return query.where(*(column == bindparam(f"key_{column.name}") for column in table.primary_key))


def _go_on_counting(conn: Connection, table: Table) -> None:
    """The next row takes a number behind the last one's. SQLite sees to it by itself."""
    number: Column[Any] | None = table.autoincrement_column
    if conn.dialect.name != "postgresql" or number is None:
        return
    last = conn.execute(select(func.max(number))).scalar()
    if last is not None:
        named = {"table": table.name, "column": number.name, "last": last}
        conn.execute(text("SELECT setval(pg_get_serial_sequence(:table, :column), :last)"), named)


def _is_served_now(conn: Connection) -> bool:
    query = "SELECT count(*) FROM pg_stat_activity WHERE application_name = :duties AND datname = current_database()"
    return bool(conn.execute(text(query), {"duties": SERVES}).scalar_one())
