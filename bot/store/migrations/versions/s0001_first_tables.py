"""The first tables."""

import sqlalchemy as sa
from alembic import op

from bot.store.columns import Day, Instant, Key, Real

revision = "0001"
down_revision = None
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Forward only: a store is never taken back a step."""
    op.create_table(
        "halt",
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("until", Instant(), nullable=False),
        sa.PrimaryKeyConstraint("channel"),
        sqlite_strict=True,
    )
    op.create_table(
        "inbox",
        sa.Column("seq", Key, nullable=False),
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("update_id", Key, nullable=False),
        sa.Column("chat", Key, nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("received", Instant(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("attempts", Key, nullable=False),
        sa.Column("message_id", Key, nullable=True),
        sa.Column("reader", sa.Text(), nullable=True),
        sa.PrimaryKeyConstraint("seq"),
        sa.UniqueConstraint("channel", "update_id"),
        sqlite_autoincrement=True,
        sqlite_strict=True,
    )
    op.create_index("inbox_by_message", "inbox", ["channel", "chat", "message_id"], unique=False)
    op.create_index("inbox_by_state", "inbox", ["state", "channel", "chat", "seq"], unique=False)
    op.create_table(
        "person",
        sa.Column("id", Key, nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("coaches", Key, nullable=False),
        sa.Column("lifts", Key, nullable=False),
        sa.Column("coach", Key, nullable=True),
        sa.Column("zone", sa.Text(), nullable=False),
        sa.Column("language", sa.Text(), nullable=False),
        sa.Column("prompt_lead_minutes", Key, nullable=False),
        sa.Column("quiet_from", sa.Text(), nullable=False),
        sa.Column("quiet_to", sa.Text(), nullable=False),
        sa.Column("decimal", sa.Text(), nullable=False),
        sa.Column("joined", Instant(), nullable=False),
        sa.ForeignKeyConstraint(
            ["coach"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_index("person_by_coach", "person", ["coach"], unique=False)
    op.create_table(
        "setting",
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("value", sa.Text(), nullable=False),
        sa.PrimaryKeyConstraint("name"),
        sqlite_strict=True,
    )
    op.create_table(
        "stranger",
        sa.Column("hash", sa.Text(), nullable=False),
        sa.Column("until", Instant(), nullable=False),
        sa.PrimaryKeyConstraint("hash"),
        sqlite_strict=True,
    )
    op.create_table(
        "act",
        sa.Column("id", Key, nullable=False),
        sa.Column("person", Key, nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("exercise", sa.Text(), nullable=True),
        sa.Column("on", Day(), nullable=False),
        sa.Column("at", Instant(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("message", Key, nullable=True),
        sa.Column("origin", Key, nullable=True),
        sa.Column("place", Key, nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("superseded_by", Key, nullable=True),
        sa.Column("ended_by", Key, nullable=True),
        sa.ForeignKeyConstraint(
            ["ended_by"],
            ["inbox.seq"],
        ),
        sa.ForeignKeyConstraint(
            ["message"],
            ["inbox.seq"],
        ),
        sa.ForeignKeyConstraint(
            ["origin"],
            ["inbox.seq"],
        ),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.ForeignKeyConstraint(
            ["superseded_by"],
            ["act.id"],
        ),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_index("act_by_day", "act", ["person", "on"], unique=False)
    op.create_index("act_by_end", "act", ["ended_by"], unique=False)
    op.create_index("act_by_exercise", "act", ["person", "exercise", "on"], unique=False)
    op.create_index("act_by_origin", "act", ["origin"], unique=False)
    op.create_table(
        "address",
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("user", Key, nullable=False),
        sa.Column("person", Key, nullable=False),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("channel", "user"),
        sqlite_strict=True,
    )
    op.create_index("address_by_person", "address", ["person"], unique=False)
    op.create_table(
        "agenda",
        sa.Column("id", Key, nullable=False),
        sa.Column("person", Key, nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("on", Day(), nullable=False),
        sa.Column("due", Instant(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("attempts", Key, nullable=False),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("id"),
        sa.UniqueConstraint("person", "kind", "on"),
        sqlite_strict=True,
    )
    op.create_index("agenda_by_due", "agenda", ["state", "due"], unique=False)
    op.create_table(
        "crew",
        sa.Column("id", Key, nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("coach", Key, nullable=False),
        sa.ForeignKeyConstraint(
            ["coach"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_table(
        "day_plan",
        sa.Column("person", Key, nullable=False),
        sa.Column("on", Day(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("person", "on"),
        sqlite_strict=True,
    )
    op.create_table(
        "hold",
        sa.Column("person", Key, nullable=False),
        sa.Column("sign", sa.Text(), nullable=False),
        sa.Column("since", Instant(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("person"),
        sqlite_strict=True,
    )
    op.create_table(
        "invite",
        sa.Column("hash", sa.Text(), nullable=False),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("name", sa.Text(), nullable=False),
        sa.Column("zone", sa.Text(), nullable=False),
        sa.Column("coach", Key, nullable=True),
        sa.Column("expires", Instant(), nullable=False),
        sa.Column("used", Instant(), nullable=True),
        sa.ForeignKeyConstraint(
            ["coach"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("hash"),
        sqlite_strict=True,
    )
    op.create_table(
        "lifter",
        sa.Column("person", Key, nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.Column("folded_through", Day(), nullable=True),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("person"),
        sqlite_strict=True,
    )
    op.create_table(
        "note",
        sa.Column("id", Key, nullable=False),
        sa.Column("person", Key, nullable=False),
        sa.Column("message", Key, nullable=False),
        sa.Column("at", Instant(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["message"],
            ["inbox.seq"],
        ),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_index("note_by_message", "note", ["message"], unique=False)
    op.create_index("note_by_person", "note", ["person"], unique=False)
    op.create_table(
        "pending",
        sa.Column("person", Key, nullable=False),
        sa.Column("message", Key, nullable=False),
        sa.Column("at", Instant(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.Column("said", sa.Text(), nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["message"],
            ["inbox.seq"],
        ),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("person"),
        sqlite_strict=True,
    )
    op.create_table(
        "plan",
        sa.Column("person", Key, nullable=False),
        sa.Column("body", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("person"),
        sqlite_strict=True,
    )
    op.create_table(
        "progress",
        sa.Column("person", Key, nullable=False),
        sa.Column("exercise", sa.Text(), nullable=False),
        sa.Column("body", sa.Text(), nullable=True),
        sa.Column("made_by", sa.Text(), nullable=False),
        sa.Column("usual_kg", Real, nullable=True),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("person", "exercise"),
        sqlite_strict=True,
    )
    op.create_table(
        "target",
        sa.Column("id", Key, nullable=False),
        sa.Column("person", Key, nullable=False),
        sa.Column("exercise", sa.Text(), nullable=False),
        sa.Column("on", Day(), nullable=False),
        sa.Column("body", sa.Text(), nullable=True),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("id"),
        sqlite_strict=True,
    )
    op.create_index("target_by_day", "target", ["person", "on"], unique=False)
    op.create_table(
        "trained",
        sa.Column("person", Key, nullable=False),
        sa.Column("exercise", sa.Text(), nullable=False),
        sa.Column("on", Day(), nullable=False),
        sa.Column("lifter", sa.Text(), nullable=False),
        sa.Column("aim", sa.Text(), nullable=False),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("person", "exercise", "on"),
        sqlite_strict=True,
    )
    op.create_table(
        "chat",
        sa.Column("id", Key, nullable=False),
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("platform", Key, nullable=False),
        sa.Column("person", Key, nullable=True),
        sa.Column("crew", Key, nullable=True),
        sa.Column("active", Key, nullable=False),
        sa.Column("seen", Instant(), nullable=True),
        sa.Column("not_before", Instant(), nullable=True),
        sa.ForeignKeyConstraint(
            ["crew"],
            ["crew.id"],
        ),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("id"),
        sa.UniqueConstraint("channel", "platform"),
        sqlite_strict=True,
    )
    op.create_index("chat_by_person", "chat", ["person"], unique=False)
    op.create_table(
        "member",
        sa.Column("crew", Key, nullable=False),
        sa.Column("person", Key, nullable=False),
        sa.ForeignKeyConstraint(
            ["crew"],
            ["crew.id"],
        ),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.PrimaryKeyConstraint("crew", "person"),
        sqlite_strict=True,
    )
    op.create_table(
        "chat_alias",
        sa.Column("channel", sa.Text(), nullable=False),
        sa.Column("platform", Key, nullable=False),
        sa.Column("chat", Key, nullable=False),
        sa.ForeignKeyConstraint(
            ["chat"],
            ["chat.id"],
        ),
        sa.PrimaryKeyConstraint("channel", "platform"),
        sqlite_strict=True,
    )
    op.create_table(
        "outbox",
        sa.Column("seq", Key, nullable=False),
        sa.Column("chat", Key, nullable=True),
        sa.Column("person", Key, nullable=True),
        sa.Column("channel", sa.Text(), nullable=True),
        sa.Column("platform", Key, nullable=True),
        sa.Column("thread", Key, nullable=True),
        sa.Column("kind", sa.Text(), nullable=False),
        sa.Column("text", sa.Text(), nullable=False),
        sa.Column("buttons", sa.Text(), nullable=False),
        sa.Column("state", sa.Text(), nullable=False),
        sa.Column("attempts", Key, nullable=False),
        sa.Column("made", Instant(), nullable=False),
        sa.Column("not_before", Instant(), nullable=True),
        sa.Column("message_id", Key, nullable=True),
        sa.Column("reply_to", Key, nullable=True),
        sa.ForeignKeyConstraint(
            ["chat"],
            ["chat.id"],
        ),
        sa.ForeignKeyConstraint(
            ["person"],
            ["person.id"],
        ),
        sa.ForeignKeyConstraint(
            ["reply_to"],
            ["inbox.seq"],
        ),
        sa.PrimaryKeyConstraint("seq"),
        sqlite_strict=True,
    )
    op.create_index("outbox_by_reply", "outbox", ["reply_to"], unique=False)
    op.create_index("outbox_by_state", "outbox", ["state", "chat", "seq"], unique=False)
