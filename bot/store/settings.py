"""Single values that a store keeps under a name. Of what they mean it knows only which let somebody in."""

import json
from typing import Final

from sqlalchemy import Connection, delete, select

from bot.store.tables import setting
from bot.store.upsert import put

LINK: Final = "page-link:"
SESSION: Final = "page-session:"
"""How the names of values begin that let a person in: JSON, the person first."""


def get(conn: Connection, name: str) -> str | None:
    """The value of that name."""
    found: str | None = conn.execute(select(setting.c.value).where(setting.c.name == name)).scalar()
    return found


def keep(conn: Connection, name: str, value: str) -> None:
    """Give the name this value."""
    put(conn, setting, name=name, value=value)


def drop(conn: Connection, name: str) -> bool:
    """Forget it. False: there was none."""
    return conn.execute(delete(setting).where(setting.c.name == name)).rowcount > 0


def under(conn: Connection, prefix: str) -> dict[str, str]:
    """Every value whose name begins so."""
    rows = conn.execute(select(setting).where(setting.c.name.startswith(prefix, autoescape=True)))
    return {row.name: row.value for row in rows}


def end_logins(conn: Connection, who: int) -> None:
    """Nothing lets that person in any more."""
    for prefix in (LINK, SESSION):
        for name, value in under(conn, prefix).items():
            if json.loads(value)[0] == who:
                drop(conn, name)
