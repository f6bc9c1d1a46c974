"""Whether somebody is told when the rest between two sets is over."""

import sqlalchemy as sa
from alembic import op

from bot.store.columns import Key

revision = "0005"
down_revision = "0004"


def upgrade() -> None:
    """Take the step."""
    op.add_column("silence", sa.Column("nudges", Key, nullable=False, server_default="0"))
