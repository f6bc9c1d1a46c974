"""Brings the tables of a store up to date. The steps are in migrations/versions, numbered and forward only."""

from pathlib import Path
from typing import Final

from alembic import command
from alembic.config import Config
from alembic.runtime.migration import MigrationContext
from alembic.script import ScriptDirectory
from sqlalchemy import Connection

from bot.ports import StoreError

_HERE: Final = Path(__file__).parent / "migrations"


def _config(conn: Connection | None = None) -> Config:
    config = Config()
    config.set_main_option("script_location", str(_HERE))
    config.attributes["connection"] = conn
    return config


def newest() -> str | None:
    """The name of the last step."""
    return ScriptDirectory.from_config(_config()).get_current_head()


def present(conn: Connection) -> str | None:
    """The last step that this store has taken; None for an empty one."""
    return MigrationContext.configure(conn).get_current_revision()


def is_known(step: str) -> bool:
    """Whether a step is one of ours."""
    return step in {one.revision for one in ScriptDirectory.from_config(_config()).walk_revisions()}


def insist(conn: Connection) -> None:
    """Raise StoreError unless the store has taken every step that we know."""
    if present(conn) != newest():
        raise StoreError("the store is held by a service of another version: stop it, or use its version")


def upgrade(conn: Connection) -> None:
    """Take the missing steps, all in one transaction. Raises StoreError for a store from a later version."""
    found = present(conn)
    if found == newest():
        return
    if found is not None and not is_known(found):
        raise StoreError(f"the store was written by a later version (step {found}): use that version of rungbook")
    command.upgrade(_config(conn), "head")
