"""Single values that a store keeps under a name. Knows no meaning of any."""

from sqlalchemy import Connection, delete, select

from bot.store.tables import setting
from bot.store.upsert import put


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
