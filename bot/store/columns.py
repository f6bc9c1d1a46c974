"""Column types that mean the same on every engine: instants in UTC and local days. Rows without logic otherwise."""

from datetime import UTC, date, datetime
from typing import Any

from sqlalchemy import REAL, BigInteger, Date, DateTime, Dialect, Double, Integer, Text
from sqlalchemy.types import TypeDecorator, TypeEngine

Key = BigInteger().with_variant(Integer(), "sqlite")
"""Whole numbers of 64 bits; SQLite's INTEGER holds them and makes row ids of them."""


Real: TypeEngine[float] = REAL().with_variant(Double(), "postgresql")
"""Numbers of double precision, which other engines call otherwise."""


class Instant(TypeDecorator[datetime]):
    """A moment, aware and in UTC. Text that sorts by time on SQLite, a time stamp with zone elsewhere."""

    impl = Text
    cache_ok = True

    def load_dialect_impl(self, dialect: Dialect) -> TypeEngine[Any]:
        """Text on SQLite (strict tables know no time type)."""
        return dialect.type_descriptor(Text() if dialect.name == "sqlite" else DateTime(timezone=True))

    def process_bind_param(self, value: datetime | None, dialect: Dialect) -> Any:
        """Out: always UTC with microseconds, so that text order is time order."""
        if value is None:
            return None
        if value.tzinfo is None:
            raise ValueError("an instant without a zone")
        utc = value.astimezone(UTC)
        return utc.isoformat(timespec="microseconds") if dialect.name == "sqlite" else utc

    def process_result_value(self, value: Any, dialect: Dialect) -> datetime | None:
        """In: aware."""
        if value is None:
            return None
        return datetime.fromisoformat(value) if dialect.name == "sqlite" else value.astimezone(UTC)


class Day(TypeDecorator[date]):
    """A local calendar day. ISO text on SQLite, a date elsewhere."""

    impl = Text
    cache_ok = True

    def load_dialect_impl(self, dialect: Dialect) -> TypeEngine[Any]:
        """Text on SQLite (strict tables know no date type)."""
        return dialect.type_descriptor(Text() if dialect.name == "sqlite" else Date())

    def process_bind_param(self, value: date | None, dialect: Dialect) -> Any:
        """Out."""
        return value.isoformat() if value is not None and dialect.name == "sqlite" else value

    def process_result_value(self, value: Any, dialect: Dialect) -> date | None:
        """In."""
        return date.fromisoformat(value) if value is not None and dialect.name == "sqlite" else value
