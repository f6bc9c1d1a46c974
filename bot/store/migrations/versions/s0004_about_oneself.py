"""Joining, silence, journeys, and letters whose picture or document is made later."""

import sqlalchemy as sa
from alembic import op

from bot.store.columns import Day, Instant, Key

revision = "0004"
down_revision = "0003"


def upgrade() -> None:
    """Take the step."""
    op.add_column("outbox", sa.Column("recipe", sa.Text(), nullable=True))
    op.create_table(
        "joining", _person(), sa.Column("body", sa.Text(), nullable=False), _at(), _key(), sqlite_strict=True
    )
    op.create_table(
        "silence",
        _person(),
        sa.Column("reminders", Key, nullable=False),
        sa.Column("away_through", Day(), nullable=True),
        _key(),
        sqlite_strict=True,
    )
    op.create_table(
        "journey",
        _person(),
        sa.Column("zone", sa.Text(), nullable=False),
        sa.Column("home", sa.Text(), nullable=False),
        sa.Column("first", Day(), nullable=False),
        sa.Column("last", Day(), nullable=True),
        sa.Column("state", sa.Text(), nullable=False),
        _key(),
        sqlite_strict=True,
    )


def _person() -> "sa.Column[int]":
    return sa.Column("person", Key, sa.ForeignKey("person.id"), nullable=False)


def _at() -> "sa.Column[object]":
    return sa.Column("at", Instant(), nullable=False)


def _key() -> sa.PrimaryKeyConstraint:
    return sa.PrimaryKeyConstraint("person")
