"""A store's URL: which of the two kinds it is, and what it names. Opens nothing."""

from pathlib import Path
from typing import Final

from sqlalchemy import URL, make_url
from sqlalchemy.exc import ArgumentError

from bot.ports import StoreError

DRIVER: Final = "sqlite+aiosqlite"
SERVER: Final = "postgresql+psycopg"
BOT: Final = "bot"
"""In a database's URL, as in ``…/gym?bot=north``: the bot whose tables are meant."""

SERVES: Final = "rungbook duties"
"""As the database knows the connection that every running service keeps for its duties."""


def parsed(url: str) -> URL:
    """A store's URL, of one of the two kinds. Raises StoreError with the remedy for any other."""
    try:
        found = make_url(url)
    except ArgumentError:
        raise StoreError(f"the store's URL is not one: write {DRIVER}:///FILE") from None
    if found.drivername not in {DRIVER, SERVER}:
        raise StoreError(
            f"a store of kind {found.drivername!r} is not served: write {DRIVER}:///FILE "
            f"or {SERVER}://USER:PASSWORD@HOST/DATABASE"
        )
    return found


def is_served(url: str) -> bool:
    """Whether the store is a database that several services share, not a file of one."""
    return parsed(url).drivername == SERVER


def file_of(url: str) -> Path:
    """The file behind a store's URL. Raises StoreError with the remedy when the URL is of another kind."""
    found = parsed(url)
    if found.drivername != DRIVER:
        raise StoreError(f"that store is a database, not a file: this command needs {DRIVER}:///FILE")
    if not found.database or found.database == ":memory:":
        raise StoreError(f"the store's URL names no file: write {DRIVER}:///FILE")
    return Path(found.database)
