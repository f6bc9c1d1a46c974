"""Challenges, and messages that are written over an earlier one or bring a file."""

import sqlalchemy as sa
from alembic import op

from bot.store.columns import Day, Instant, Key

revision = "0002"
down_revision = "0001"
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Forward only: a store is never taken back a step."""
    op.add_column("outbox", sa.Column("edits", Key, nullable=True))
    op.add_column("outbox", sa.Column("file", sa.Text(), nullable=True))
    op.add_column("outbox", sa.Column("content", sa.LargeBinary(), nullable=True))
    op.create_table(
        "challenge",
        sa.Column("id", Key, nullable=False),
        sa.Column("chat", Key, nullable=False),
        sa.Column("coach", Key, nullable=False),
        sa.Column("title", sa.Text(), nullable=False),
        sa.Column("starts", Day(), nullable=False),
        sa.Column("weeks", Key, nullable=False),
        sa.Column("counts", sa.Text(), nullable=False),
        sa.Column("teams", sa.Text(), nullable=False),
        sa.Column("zone", sa.Text(), nullable=False),
        sa.Column("thread", Key, nullable=True),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("closed", Key, nullable=False),
        sa.Column("door", sa.Text(), nullable=True),
        sa.Column("post", Key, nullable=True),
        sa.Column("said", sa.Text(), nullable=True),
        sa.Column("looked", Instant(), nullable=True),
        sa.ForeignKeyConstraint(["chat"], ["chat.id"]),
        sa.ForeignKeyConstraint(["coach"], ["person.id"]),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_index("challenge_by_chat", "challenge", ["chat", "state"], unique=False)
    op.create_table(
        "entrant",
        sa.Column("challenge", Key, nullable=False),
        sa.Column("person", Key, nullable=False),
        sa.Column("shown", sa.Text(), nullable=False),
        sa.Column("team", sa.Text(), nullable=True),
        sa.Column("trusted", Key, nullable=False),
        sa.ForeignKeyConstraint(["challenge"], ["challenge.id"]),
        sa.ForeignKeyConstraint(["person"], ["person.id"]),
        sa.PrimaryKeyConstraint("challenge", "person"),
        sqlite_strict=True,
    )
    op.create_index("entrant_by_person", "entrant", ["person"], unique=False)
    op.create_table(
        "stay",
        sa.Column("id", Key, nullable=False),
        sa.Column("challenge", Key, nullable=False),
        sa.Column("person", Key, nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("since", Day(), nullable=False),
        sa.Column("until", Day(), nullable=True),
        sa.ForeignKeyConstraint(["challenge"], ["challenge.id"]),
        sa.ForeignKeyConstraint(["person"], ["person.id"]),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_index("stay_by_challenge", "stay", ["challenge", "person"], unique=False)
    op.create_table(
        "contest_day",
        sa.Column("challenge", Key, nullable=False),
        sa.Column("person", Key, nullable=False),
        sa.Column("on", Day(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("made_of", sa.Text(), nullable=False),
        sa.Column("sealed", Key, nullable=False),
        sa.ForeignKeyConstraint(["challenge"], ["challenge.id"]),
        sa.ForeignKeyConstraint(["person"], ["person.id"]),
        sa.PrimaryKeyConstraint("challenge", "person", "on"),
        sqlite_strict=True,
    )
    op.create_table(
        "verdict",
        sa.Column("id", Key, nullable=False),
        sa.Column("challenge", Key, nullable=False),
        sa.Column("person", Key, nullable=False),
        sa.Column("on", Day(), nullable=False),
        sa.Column("exercise", sa.Text(), nullable=False),
        sa.Column("word", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(["challenge"], ["challenge.id"]),
        sa.ForeignKeyConstraint(["person"], ["person.id"]),
        sa.PrimaryKeyConstraint("id"),
        sa.UniqueConstraint("challenge", "person", "on", "exercise"),
        sqlite_strict=True,
    )
