"""What `rungbook doctor` looks at where the store is a PostgreSQL database. Changes nothing."""

import shutil
from typing import Final

from sqlalchemy import Connection, text

from bot.store import house, migrate
from bot.store.queue_steps import SCHEMA

TOOLS: Final = ("pg_dump", "pg_restore")

_OLDEST: Final = 140000
"""PostgreSQL 14, in its own numbering: the oldest that its makers still mend (November 2026)."""


async def unmade(url: str) -> tuple[bool, str] | None:
    """The words for a database that holds no tables of ours so far; None: it holds some. Raises StoreError."""
    pool = house.pool_of(url)
    try:
        return await house.seen(pool, house.schema_of(url), _unmade)
    finally:
        await pool.close()


def _unmade(conn: Connection) -> tuple[bool, str] | None:
    if migrate.present(conn) is not None:
        return None
    well, words = server(conn)
    return well, (
        f"{words.partition(', step')[0]}; it holds no tables of ours yet: the first `rungbook serve` makes them, or "
        "`rungbook move --to` this URL brings a file's"
    )


def server(conn: Connection) -> tuple[bool, str]:
    """Whether the server will do, and the words for it."""
    number = int(conn.execute(text("SHOW server_version_num")).scalar_one())
    version = conn.execute(text("SHOW server_version")).scalar_one()
    if number < _OLDEST:
        return False, f"PostgreSQL {version} is not mended any more by its makers: move to a newer one"
    durable = conn.execute(text("SHOW fsync")).scalar_one() == "on"
    if not durable:
        return False, f"PostgreSQL {version} runs with fsync off: a power cut would lose what was confirmed; set it on"
    return True, f"PostgreSQL {version}, step {migrate.present(conn)}"


def queue(conn: Connection) -> tuple[bool, str]:
    """How the queue stands: what waits, and whether anybody works."""
    known = conn.execute(text("SELECT to_regclass(:name)"), {"name": f"{SCHEMA}.procrastinate_jobs"}).scalar()
    if known is None:
        return True, "none yet; `rungbook serve` makes it"
    waiting = conn.execute(text(f"SELECT count(*) FROM {SCHEMA}.procrastinate_jobs WHERE status = 'todo'")).scalar_one()  # noqa: S608  # our own names
    alive = "last_heartbeat > now() - interval '30 seconds'"
    workers = conn.execute(text(f"SELECT count(*) FROM {SCHEMA}.procrastinate_workers WHERE {alive}")).scalar_one()  # noqa: S608  # our own names
    well = workers > 0 or waiting == 0
    mend = "" if well else ": start one with `rungbook serve`"
    return well, f"{waiting} chats wait, {workers} workers are at work{mend}"


def copies() -> tuple[bool, str]:
    """Whether `rungbook backup` can make copies here."""
    missing = [tool for tool in TOOLS if shutil.which(tool) is None]
    if not missing:
        return True, "`rungbook backup` and `rungbook restore` call pg_dump and pg_restore"
    return True, (
        f"{missing[0]} is not on this machine's path; where it is, copies are made with "
        "`pg_dump --format=custom --no-owner --file=FILE DATABASE` and put back with "
        "`pg_restore --no-owner --exit-on-error --single-transaction --dbname=EMPTY FILE`"
    )
