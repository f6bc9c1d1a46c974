"""What messages ended lately is found without looking at everything that a lifter ever did."""

import sqlalchemy as sa
from alembic import op

revision = "0006"
down_revision = "0005"

_ENDED = sa.text("ended_by IS NOT NULL")


def upgrade() -> None:
    """Take the step."""
    columns = ["person", "ended_by"]
    op.create_index("act_ended", "act", columns, sqlite_where=_ENDED, postgresql_where=_ENDED)
