"""INSERT that may meet a row already there: the one place where engines differ in their words.

The statements are made once and kept: making one costs more than running it.
"""

from collections.abc import Callable
from functools import cache
from typing import Any, Final

from sqlalchemy import Connection, Table
from sqlalchemy.dialects import postgresql, sqlite

_INSERT: Final[dict[str, Callable[[Table], Any]]] = {"sqlite": sqlite.insert, "postgresql": postgresql.insert}


def put(conn: Connection, table: Table, **values: object) -> None:
    """Insert the row, or give the one with the same key these values."""
    conn.execute(_put(conn.dialect.name, table, frozenset(values)), values)


def put_new(conn: Connection, table: Table, rows: list[dict[str, object]]) -> int:
    """Insert those rows that are not there yet; says how many were new."""
    if not rows:
        return 0
    if len(rows) == 1:
        found = conn.execute(_put_new(conn.dialect.name, table), rows[0])
    else:
        statement = _INSERT[conn.dialect.name](table).values(rows).on_conflict_do_nothing()
        found = conn.execute(statement.execution_options(preserve_rowcount=True))
    new: int = found.rowcount
    return new


@cache
def _put(dialect: str, table: Table, names: frozenset[str]) -> Any:
    statement = _INSERT[dialect](table)
    keys = [column.name for column in table.primary_key]
    fresh = {name: statement.excluded[name] for name in sorted(names) if name not in keys}
    return statement.on_conflict_do_update(index_elements=keys, set_=fresh)


@cache
def _put_new(dialect: str, table: Table) -> Any:
    return _INSERT[dialect](table).on_conflict_do_nothing().execution_options(preserve_rowcount=True)
