"""Where the tests' stores are: a SQLite file in a folder, or for a while a database on a real PostgreSQL.

A test of both asks for the fixture ``each_store`` of tests/bot/conftest.py; it says nothing else about engines.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from functools import cache
from hashlib import sha256
from pathlib import Path
from tempfile import TemporaryDirectory

from sqlalchemy import create_engine
from sqlalchemy.pool import NullPool

from bot.store import migrate
from tests.bot.postgres import Server

_FRESH = "fresh"


@cache
def _fresh_file() -> bytes:
    """An empty store, made once: the steps themselves are tested elsewhere."""
    with TemporaryDirectory() as folder:
        _migrate(f"sqlite:///{folder}/gym.db")
        return (Path(folder) / "gym.db").read_bytes()


def _migrate(url: str) -> None:
    engine = create_engine(url, poolclass=NullPool)
    with engine.begin() as conn:
        migrate.upgrade(conn)
    engine.dispose()


def _file(folder: Path) -> str:
    if not (folder / "gym.db").exists():
        (folder / "gym.db").write_bytes(_fresh_file())
    return f"sqlite+aiosqlite:///{folder / 'gym.db'}"


_in: list[Callable[[Path], str]] = [_file]


def url_in(folder: Path) -> str:
    """The URL of the folder's own store, up to date; empty the first time."""
    return _in[-1](folder)


def prepare(server: Server) -> None:
    """Make the database that the others are copied from."""
    _migrate(server.create(_FRESH))


@contextmanager
def on(server: Server) -> Iterator[None]:
    """Until the block ends, a folder's store is a database of its own."""
    made: dict[Path, str] = {}

    def database(folder: Path) -> str:
        if folder not in made:
            made[folder] = "gym_" + sha256(str(folder).encode()).hexdigest()[:16]
            server.create(made[folder], like=_FRESH)
        return server.url(made[folder])

    _in.append(database)
    try:
        yield
    finally:
        _in.remove(database)
        for name in made.values():
            server.drop(name)
