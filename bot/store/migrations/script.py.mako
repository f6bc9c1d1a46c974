"""${message}"""

import sqlalchemy as sa
from alembic import op

from bot.store.columns import Day, Instant, Key

revision = ${repr(up_revision)}
down_revision = ${repr(down_revision)}
branch_labels = None
depends_on = None


def upgrade() -> None:
    """Forward only: a store is never taken back a step."""
    ${upgrades if upgrades else "pass"}
