"""Remembers for a short while who was answered and who tried codes, as keyed hashes that lead back to nobody."""

import hashlib
import hmac
import secrets
from datetime import datetime, timedelta
from typing import Final

from sqlalchemy import Connection, delete, insert, select

from bot.store.tables import setting, stranger

REMEMBERED: Final = timedelta(days=1)
TRIES: Final = 5
"""Codes that do not work, from one user, before none is looked at for a while. Judgement, no source."""

TRIES_LAST: Final = timedelta(hours=1)
"""How long a code that did not work counts."""

_KEY: Final = "stranger-key"


def is_new(conn: Connection, channel: str, user: int, now: datetime) -> bool:
    """Whether this stranger was not answered within the last day; from now on they were."""
    purge(conn, now)
    mark = _mark(conn, f"{channel}:{user}")
    if _is_there(conn, mark):
        return False
    conn.execute(insert(stranger).values(hash=mark, until=now + REMEMBERED))
    return True


def may_try(conn: Connection, channel: str, user: int, now: datetime) -> bool:
    """Whether a code of this user is looked at: not after too many that did not work."""
    purge(conn, now)
    return _free_try(conn, channel, user) is not None


def tried(conn: Connection, channel: str, user: int, now: datetime) -> None:
    """A code of this user did not work."""
    mark = _free_try(conn, channel, user)
    if mark is not None:
        conn.execute(insert(stranger).values(hash=mark, until=now + TRIES_LAST))


def _free_try(conn: Connection, channel: str, user: int) -> str | None:
    marks = (_mark(conn, f"{channel}:{user}:try:{number}") for number in range(TRIES))
    return next((mark for mark in marks if not _is_there(conn, mark)), None)


def _mark(conn: Connection, whose: str) -> str:
    return hmac.new(_key(conn), whose.encode(), hashlib.sha256).hexdigest()


def _is_there(conn: Connection, mark: str) -> bool:
    return conn.execute(select(stranger.c.hash).where(stranger.c.hash == mark)).one_or_none() is not None


def purge(conn: Connection, now: datetime) -> None:
    """Forget whose day is over."""
    conn.execute(delete(stranger).where(stranger.c.until <= now))


def _key(conn: Connection) -> bytes:
    """A random key of this store, made when it is first needed."""
    kept = conn.execute(select(setting.c.value).where(setting.c.name == _KEY)).scalar()
    if kept is None:
        kept = secrets.token_hex(32)
        conn.execute(insert(setting).values(name=_KEY, value=kept))
    return bytes.fromhex(kept)
