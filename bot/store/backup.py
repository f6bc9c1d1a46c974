"""A consistent copy of a store while it is in use, and the way back. Whole files only; knows only the version table.

Plain functions on files: this is the one place where SQLite is spoken to directly, because a copy is made outside of
any transaction.
"""

import os
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Final

from filelock import FileLock, Timeout

from bot.ports import StoreBusy, StoreError
from bot.store import migrate
from bot.store.urls import file_of

_OWNER_ONLY: Final = 0o600

KEPT_DAYS: Final = 30
"""How long a copy is to be kept at most: it still holds who asked to be forgotten after it was made."""


def back_up(url: str, to: Path) -> int:
    """Copy the store to the file ``to``, also while the service writes. Says how many bytes it has now."""
    source = file_of(url)
    if not source.exists():
        raise StoreError(f"there is no store at {source}: name an existing one")
    if to.exists():
        raise StoreError(f"{to} is there already: name a new file, or remove that one")
    part = _beside(to)
    try:
        with closing(sqlite3.connect(f"{source.absolute().as_uri()}?mode=ro", uri=True, timeout=30)) as conn:
            conn.execute("VACUUM INTO ?", (str(part),))
        _settle(part, to)
    except (sqlite3.Error, OSError) as problem:
        part.unlink(missing_ok=True)
        raise StoreError(f"the copy could not be made ({problem}): check the store and the folder of {to}") from None
    return to.stat().st_size


def restore(source: Path, url: str) -> None:
    """Put a copy in the place of an empty or absent store. Refuses anything that would lose data."""
    target = file_of(url)
    _check(source)
    target.parent.mkdir(parents=True, exist_ok=True)
    lock = FileLock(f"{target}.lock", mode=_OWNER_ONLY)
    try:
        lock.acquire(timeout=0)
    except Timeout:
        raise StoreBusy(f"the store at {target} is held by another rungbook process: stop that one first") from None
    part = _beside(target)
    try:
        if target.exists() and not _is_empty(target):
            raise StoreError(f"the store at {target} holds data: name another, or move that file away first")
        with closing(sqlite3.connect(f"{source.absolute().as_uri()}?mode=ro", uri=True)) as conn:
            conn.execute("VACUUM INTO ?", (str(part),))
        for side in ("-wal", "-shm"):
            Path(f"{target}{side}").unlink(missing_ok=True)
        _settle(part, target)
    except (sqlite3.Error, OSError) as problem:
        part.unlink(missing_ok=True)
        raise StoreError(f"the copy could not be put back ({problem}): check the folder of {target}") from None
    finally:
        lock.release()


def _check(source: Path) -> None:
    """Raise StoreError unless the file is a whole store of a version that we know."""
    if not source.is_file():
        raise StoreError(f"there is no file {source}: name the copy to put back")
    try:
        with closing(sqlite3.connect(f"{source.absolute().as_uri()}?mode=ro", uri=True)) as conn:
            whole = conn.execute("PRAGMA quick_check").fetchone() == ("ok",)
            version = conn.execute("SELECT version_num FROM alembic_version").fetchone()
    except sqlite3.Error:
        whole, version = False, None
    if not whole or version is None:
        raise StoreError(f"{source} is no whole copy of a store: name another")
    if not migrate.is_known(version[0]):
        raise StoreError(f"{source} was written by a later version (step {version[0]}): use that version of rungbook")


def _is_empty(file: Path) -> bool:
    with closing(sqlite3.connect(file, timeout=5)) as conn:
        tables = {row[0] for row in conn.execute("SELECT name FROM sqlite_master WHERE type = 'table'")}
        counted = [conn.execute(f"SELECT count(*) FROM {name}").fetchone()[0] for name in _HOLDING & tables]  # noqa: S608  # our own names
        return not any(counted) and (not tables or "alembic_version" in tables)


_HOLDING: Final = frozenset({"person", "inbox", "invite"})


def _beside(file: Path) -> Path:
    return file.with_name(f".{file.name}.{os.getpid()}.part")


def _settle(part: Path, to: Path) -> None:
    """The copy is on the disk, whole, before it gets its name."""
    part.chmod(_OWNER_ONLY)
    for path, flags in ((part, os.O_RDONLY), (to.parent, os.O_RDONLY | os.O_DIRECTORY)):
        handle = os.open(path, flags)
        os.fsync(handle)
        os.close(handle)
        if path is part:
            part.replace(to)
