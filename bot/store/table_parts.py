"""What tables are made of: one set of them, and columns that mean the same on every engine. Knows no table."""

from typing import Any, Final

from sqlalchemy import Column, MetaData, Table, Text

from bot.store.columns import Day, Instant, Key

metadata: Final = MetaData()


def table(name: str, *parts: Any) -> Table:
    """A strict table of ours."""
    return Table(name, metadata, *parts, sqlite_strict=True)


def text(name: str, **more: Any) -> Column[Any]:
    """A text column, not empty unless said otherwise."""
    return Column(name, Text, **{"nullable": False, **more})


def whole(name: str, *links: Any, **more: Any) -> Column[Any]:
    """A whole-number column."""
    return Column(name, Key, *links, **{"nullable": False, **more})


def moment(name: str, **more: Any) -> Column[Any]:
    """A column of instants."""
    return Column(name, Instant, **{"nullable": False, **more})


def day(name: str, **more: Any) -> Column[Any]:
    """A column of local days."""
    return Column(name, Day, **{"nullable": False, **more})
