"""Codes that let someone in, each once. Only their hashes are kept."""

import hashlib
import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Final, Literal

from sqlalchemy import Connection, insert, select, update

from bot.store.tables import invite

LIFETIME: Final = timedelta(days=7)
_CODE_BYTES: Final = 18
"""144 random bits, 24 characters: more than can be guessed, and within a deep link's 64."""

Kind = Literal["coach", "client"]


@dataclass(frozen=True, slots=True)
class Invite:
    """What a code lets its bearer become. ``coach`` is the person who invites a client."""

    kind: Kind
    name: str
    zone: str
    coach: int | None


Trouble = Literal["unknown", "used", "expired"]
"""Why a code does not work."""


def make(conn: Connection, wanted: Invite, now: datetime) -> str:
    """A new code; it is not kept and cannot be shown again."""
    code = secrets.token_urlsafe(_CODE_BYTES)
    values = {
        "hash": _hash(code),
        "kind": wanted.kind,
        "name": wanted.name,
        "zone": wanted.zone,
        "coach": wanted.coach,
        "expires": now + LIFETIME,
    }
    conn.execute(insert(invite).values(**values))
    return code


def look(conn: Connection, code: str, now: datetime) -> Invite | Trouble:
    """What a code is good for, without using it."""
    row = conn.execute(select(invite).where(invite.c.hash == _hash(code))).one_or_none()
    if row is None:
        return "unknown"
    if row.used is not None:
        return "used"
    if row.expires <= now:
        return "expired"
    return Invite(row.kind, row.name, row.zone, row.coach)


def use(conn: Connection, code: str, now: datetime) -> None:
    """The code is spent; nobody needs the name in it any more."""
    conn.execute(update(invite).where(invite.c.hash == _hash(code)).values(used=now, name=""))


def _hash(code: str) -> str:
    return hashlib.sha256(code.encode()).hexdigest()
