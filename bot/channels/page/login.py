"""Links that let one person in once, and the sessions that follow. Of both the store keeps hashes, with their end.

Knows no web: it takes and gives words.
"""

import hashlib
import hmac
import json
import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final

from sqlalchemy import Connection

from bot.store import settings

LINK_LASTS: Final = timedelta(days=1)
"""Long enough to be handed on by a person."""
SESSION_LASTS: Final = timedelta(days=30)

_LINK: Final = settings.LINK
_SESSION: Final = settings.SESSION
_KEY: Final = "page-key"
_BYTES: Final = 24


@dataclass(frozen=True, slots=True)
class _Ticket:
    person: int
    until: datetime


def make_link(conn: Connection, who: int, now: datetime) -> str:
    """A word that lets that person in once, within a day; it is not kept and cannot be shown again."""
    return _issue(conn, _LINK, _Ticket(who, now + LINK_LASTS), now)


def whose_link(conn: Connection, word: str, now: datetime) -> int | None:
    """Whom it would let in, without using it."""
    return _look(conn, _LINK, word, now)


def enter(conn: Connection, word: str, now: datetime) -> str | None:
    """Use a link; gives the word of a new session. None: it is unknown, used or past its day."""
    who = _look(conn, _LINK, word, now)
    if who is None or not settings.drop(conn, _LINK + _hash(word)):
        return None
    return _issue(conn, _SESSION, _Ticket(who, now + SESSION_LASTS), now)


def whose_session(conn: Connection, word: str, now: datetime) -> int | None:
    """Whose session it is."""
    return _look(conn, _SESSION, word, now)


def leave(conn: Connection, word: str) -> None:
    """The session is over."""
    settings.drop(conn, _SESSION + _hash(word))


def key(conn: Connection) -> bytes:
    """The random key of this store's page, made when it is first needed."""
    kept = settings.get(conn, _KEY)
    if kept is None:
        kept = secrets.token_hex(32)
        settings.keep(conn, _KEY, kept)
    return bytes.fromhex(kept)


def token(secret: bytes, session: str) -> str:
    """What the page of a session must send along with everything that changes something."""
    return hmac.new(secret, session.encode(), hashlib.sha256).hexdigest()


def _issue(conn: Connection, prefix: str, ticket: _Ticket, now: datetime) -> str:
    for name, value in settings.under(conn, prefix).items():
        if _read(value).until <= now:
            settings.drop(conn, name)
    word = secrets.token_urlsafe(_BYTES)
    settings.keep(conn, prefix + _hash(word), json.dumps([ticket.person, ticket.until.isoformat()]))
    return word


def _look(conn: Connection, prefix: str, word: str, now: datetime) -> int | None:
    kept = settings.get(conn, prefix + _hash(word))
    ticket = _read(kept) if kept is not None else None
    return ticket.person if ticket is not None and now < ticket.until else None


def _read(value: str) -> _Ticket:
    person, until = json.loads(value)
    return _Ticket(person, datetime.fromisoformat(until))


def _hash(word: str) -> str:
    return hashlib.sha256(word.encode()).hexdigest()
