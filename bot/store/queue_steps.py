"""The queue's own tables, in a schema of theirs: made whole where there are none, else the library's missing steps.

The library names its steps by version; which of them a database has is kept beside them.
"""

from pathlib import Path
from typing import Any, Final

from procrastinate.schema import SchemaManager
from sqlalchemy import Connection, text

from bot.store.postgres import named

SCHEMA: Final = "rungbook_queue"

_TURN: Final = 0x71756575
"""The advisory lock of who takes steps; a number of ours."""


def upgrade(conn: Connection) -> None:
    """Bring the queue's tables up to date; one service at a time."""
    conn.execute(text("SELECT pg_advisory_xact_lock(:turn)"), {"turn": _TURN})
    conn.execute(text(f"CREATE SCHEMA IF NOT EXISTS {named(SCHEMA)}"))
    conn.execute(text(f"SET LOCAL search_path = {named(SCHEMA)}"))
    conn.execute(text("CREATE TABLE IF NOT EXISTS step_taken (step text PRIMARY KEY)"))
    taken = set(conn.execute(text("SELECT step FROM step_taken")).scalars())
    known = {path.name: path for path in sorted(Path(SchemaManager.get_migrations_path()).glob("*.sql"))}
    missing = [name for name in known if name not in taken]
    scripts = [known[name].read_text(encoding="utf-8") for name in missing] if taken else [SchemaManager.get_schema()]
    raw: Any = conn.connection.dbapi_connection
    for script in scripts if missing else []:
        raw.execute(script)  # several statements at once: only the driver's own way takes them
    for name in missing:
        conn.execute(text("INSERT INTO step_taken VALUES (:step)"), {"step": name})
