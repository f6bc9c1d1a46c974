"""Who waits for whom where several transactions run at once. One after the other unless it is said that they need not.

On SQLite there is one writer anyway, and this does nothing. On PostgreSQL these are advisory locks that the end of the
transaction lets go of. A turn is taken before anything is read that it protects.
"""

from typing import Final
from zlib import crc32

from sqlalchemy import Connection, text

HOUSE: Final = "rungbook_schema"
"""Under this name a connection knows whose tables it is held to."""

_EVERYBODY: Final = 0
_ALONE: Final = text("SELECT pg_advisory_xact_lock(:house, :everybody)")
_SIDE_BY_SIDE: Final = text(
    "SELECT pg_advisory_xact_lock_shared(:house, :everybody), pg_advisory_xact_lock(:house, :who)"
)


def alone(conn: Connection) -> None:
    """From here on nobody else has a turn in this bot's tables."""
    if conn.dialect.name == "postgresql":
        conn.execute(_ALONE, {"house": _house(conn), "everybody": _EVERYBODY})


def side_by_side(conn: Connection, who: int) -> None:
    """From here on nobody else has this person's turn, and nobody is alone."""
    if conn.dialect.name == "postgresql":
        conn.execute(_SIDE_BY_SIDE, {"house": _house(conn), "everybody": _EVERYBODY, "who": _number(who)})


def _house(conn: Connection) -> int:
    return crc32(str(conn.info.get(HOUSE) or "").encode()) - (1 << 31)


def _number(who: int) -> int:
    """Of 31 bits and never everybody's; two people who share one only wait for each other."""
    return 1 + who % ((1 << 31) - 1)
