"""INSERT that may meet a row already there: the one place where engines differ in their words."""

from collections.abc import Callable
from typing import Any, Final

from sqlalchemy import Connection, Table
from sqlalchemy.dialects import postgresql, sqlite

_INSERT: Final[dict[str, Callable[[Table], Any]]] = {"sqlite": sqlite.insert, "postgresql": postgresql.insert}


def put(conn: Connection, table: Table, **values: object) -> None:
    """Insert the row, or give the one with the same key these values."""
    statement = _INSERT[conn.dialect.name](table).values(**values)
    keys = [column.name for column in table.primary_key]
    fresh = {name: value for name, value in values.items() if name not in keys}
    conn.execute(statement.on_conflict_do_update(index_elements=keys, set_=fresh))


def put_new(conn: Connection, table: Table, rows: list[dict[str, object]]) -> int:
    """Insert those rows that are not there yet; says how many were new."""
    if not rows:
        return 0
    statement = _INSERT[conn.dialect.name](table).values(rows).on_conflict_do_nothing()
    new: int = conn.execute(statement.execution_options(preserve_rowcount=True)).rowcount
    return new
