"""Something was erased in a transaction, so that no copy of it may stay behind. A mark on the connection; no logic."""

from typing import Final

from sqlalchemy import Connection

_MARK: Final = "rungbook_scrub"


def want(conn: Connection) -> None:
    """What this transaction erased must leave the engine's own files too."""
    conn.info[_MARK] = True


def taken(conn: Connection) -> bool:
    """Whether that was wanted; asked once, as the transaction ends."""
    return bool(conn.info.pop(_MARK, False))
