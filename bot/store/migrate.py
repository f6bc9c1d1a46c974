"""Brings the tables of a store up to date. The steps are in migrations/versions, numbered and forward only.

The migration tool takes a third of a second to load, so it is only loaded when there is a step to take: the steps are
known by their file names (s0001_..., s0002_...), each of which carries the number of its step.
"""

import re
from pathlib import Path
from typing import Final

from sqlalchemy import Connection, inspect, text

from bot.ports import StoreError

_HERE: Final = Path(__file__).parent / "migrations"
_STEP: Final = re.compile(r"s(\d{4})_\w+\.py")
_KEPT_IN: Final = "alembic_version"


def steps() -> list[str]:
    """The numbers of all steps, oldest first."""
    names = (_STEP.fullmatch(path.name) for path in (_HERE / "versions").iterdir())
    return sorted(name.group(1) for name in names if name)


def newest() -> str:
    """The number of the last step."""
    return steps()[-1]


def is_known(step: str) -> bool:
    """Whether a step is one of ours."""
    return step in steps()


def present(conn: Connection) -> str | None:
    """The last step that this store has taken; None for an empty one."""
    if not inspect(conn).has_table(_KEPT_IN):
        return None
    number: str | None = conn.execute(text(f"SELECT version_num FROM {_KEPT_IN}")).scalar()  # noqa: S608  # our own name
    return number


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
    _take_steps(conn)


def _take_steps(conn: Connection) -> None:
    from alembic import command
    from alembic.config import Config

    config = Config()
    config.set_main_option("script_location", str(_HERE))
    config.attributes["connection"] = conn
    command.upgrade(config, "head")
