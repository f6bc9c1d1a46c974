"""Remembers for a day that someone unknown was answered, as a keyed hash that leads back to nobody."""

import hashlib
import hmac
import secrets
from datetime import datetime, timedelta
from typing import Final

from sqlalchemy import Connection, delete, insert, select

from bot.store.tables import setting, stranger

REMEMBERED: Final = timedelta(days=1)
_KEY: Final = "stranger-key"


def is_new(conn: Connection, channel: str, user: int, now: datetime) -> bool:
    """Whether this stranger was not answered within the last day; from now on they were."""
    conn.execute(delete(stranger).where(stranger.c.until <= now))
    mark = hmac.new(_key(conn), f"{channel}:{user}".encode(), hashlib.sha256).hexdigest()
    if conn.execute(select(stranger.c.hash).where(stranger.c.hash == mark)).one_or_none() is not None:
        return False
    conn.execute(insert(stranger).values(hash=mark, until=now + REMEMBERED))
    return True


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
