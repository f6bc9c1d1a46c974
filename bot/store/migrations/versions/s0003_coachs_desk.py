"""The coach's desk: plan versions, what waits for a yes, targets under the coach's hand, notes, words, hours, marks."""

import sqlalchemy as sa
from alembic import op

from bot.store.columns import Day, Instant, Key, Real

revision = "0003"
down_revision = "0002"
branch_labels = None
depends_on = None


def _person(name: str, *, nullable: bool = False) -> tuple[sa.Column[int], sa.ForeignKeyConstraint]:
    return sa.Column(name, Key, nullable=nullable), sa.ForeignKeyConstraint([name], ["person.id"])


def upgrade() -> None:
    """Forward only: a store is never taken back a step."""
    _plans_and_questions()
    _reins()
    _words()
    _rest()


def _plans_and_questions() -> None:
    op.create_table(
        "plan_version",
        sa.Column("id", Key, nullable=False),
        *_person("person"),
        *_person("by", nullable=True),
        sa.Column("at", Instant(), nullable=False),
        sa.Column("what", sa.Text(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_index("plan_version_by_person", "plan_version", ["person", "id"], unique=False)
    op.create_table(
        "question",
        sa.Column("id", Key, nullable=False),
        *_person("asks"),
        *_person("about", nullable=True),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("at", Instant(), nullable=False),
        sa.Column("until", Instant(), nullable=True),
        sa.Column("state", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_index("question_by_asks", "question", ["asks", "state"], unique=False)
    op.create_index("question_by_about", "question", ["about", "kind", "state"], unique=False)


def _reins() -> None:
    op.create_table(
        "rein",
        sa.Column("id", Key, nullable=False),
        *_person("person"),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("exercise", sa.Text(), nullable=True),
        sa.Column("part", sa.Text(), nullable=True),
        sa.Column("body", sa.Text(), nullable=True),
        sa.Column("until", Day(), nullable=True),
        *_person("by"),
        sa.Column("at", Instant(), nullable=False),
        sa.Column("ended", Instant(), nullable=True),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_index("rein_by_person", "rein", ["person", "ended"], unique=False)


def _words() -> None:
    op.create_table(
        "remark",
        sa.Column("id", Key, nullable=False),
        *_person("by"),
        *_person("about"),
        sa.Column("at", Instant(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_index("remark_by_about", "remark", ["about"], unique=False)
    op.create_table(
        "word",
        sa.Column("id", Key, nullable=False),
        *_person("by"),
        *_person("to"),
        sa.Column("at", Instant(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.Column("answered", Key, nullable=False),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_index("word_by_to", "word", ["to", "id"], unique=False)


def _rest() -> None:
    op.create_table(
        "hours",
        *_person("person"),
        sa.Column("digest_at", sa.Text(), nullable=False),
        sa.Column("week_day", Key, nullable=False),
        sa.Column("week_at", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("person"),
        sqlite_strict=True,
    )
    op.create_table(
        "mark",
        *_person("person"),
        sa.Column("exercise", sa.Text(), nullable=False),
        sa.Column("on", Day(), nullable=False),
        sa.Column("estimate", Real, nullable=False),
        sa.PrimaryKeyConstraint("person", "exercise", "on"),
        sqlite_strict=True,
    )
