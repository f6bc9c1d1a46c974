"""Copies of a PostgreSQL store, and the way back: PostgreSQL's own tools do it, found on the machine's path.

One bot's schema is copied alone where the URL names a bot; else the whole database. The password goes to the tools by
the environment, never by their words, which every account of the machine can read.
"""

import asyncio
import os
import shutil
import subprocess
from pathlib import Path
from typing import Final

from sqlalchemy import URL

from bot.ports import StoreError
from bot.store import house, migrate
from bot.store.urls import BOT, parsed

_OWNER_ONLY: Final = 0o077
_LAST_WORDS: Final = 300


def back_up(url: str, to: Path) -> int:
    """Copy the store to the file ``to``, also while services write. Says how many bytes it has now."""
    if to.exists():
        raise StoreError(f"{to} is there already: name a new file, or remove that one")
    schema = house.schema_of(url)
    part = to.with_name(f".{to.name}.{os.getpid()}.part")
    only = [] if schema is None else [f"--schema={schema}"]
    try:
        _run("pg_dump", url, ["--format=custom", "--no-owner", "--no-privileges", f"--file={part}", *only])
        part.replace(to)
    finally:
        part.unlink(missing_ok=True)
    return to.stat().st_size


def restore(source: Path, url: str) -> None:
    """Put a copy in the place of an empty database, or of a bot's schema that is not there. Refuses to lose data."""
    if not source.is_file():
        raise StoreError(f"there is no file {source}: name the copy to put back")
    if asyncio.run(_is_there(url)):
        raise StoreError("that database holds a store: name an empty one (createdb makes it), or drop that one first")
    words = ["--no-owner", "--no-privileges", "--exit-on-error", "--single-transaction", str(source)]
    _run("pg_restore", url, words)


async def _is_there(url: str) -> bool:
    pool = house.pool_of(url)
    try:
        return await house.seen(pool, house.schema_of(url), lambda conn: migrate.present(conn) is not None)
    finally:
        await pool.close()


def _run(tool: str, url: str, words: list[str]) -> None:
    where = parsed(url).difference_update_query([BOT]).set(drivername="postgresql")
    program = shutil.which(tool)
    shown = where.set(password=None).render_as_string()
    if program is None:
        raise StoreError(f"{tool} is not on the path: install PostgreSQL's client programs, or call it where they are")
    done = subprocess.run(  # noqa: S603  # the tool's own path, and words of ours
        [program, "--no-password", f"--dbname={shown}", *words],
        env={**os.environ, **_secret(where)},
        umask=_OWNER_ONLY,
        stdin=subprocess.DEVNULL,
        capture_output=True,
        text=True,
        errors="replace",
        check=False,
    )
    if done.returncode != 0:
        said = " ".join(done.stderr.split())[:_LAST_WORDS]
        raise StoreError(f"{tool} ended with {done.returncode} ({said}): nothing was changed")


def _secret(where: URL) -> dict[str, str]:
    return {} if where.password is None else {"PGPASSWORD": str(where.password)}
