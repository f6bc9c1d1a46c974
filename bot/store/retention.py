"""Forgets what is no longer needed, a bounded piece at a time. What lifters reported is kept until they erase it.

Each span is a choice of ours: long enough to look into a trouble, no longer. No source.
"""

from collections.abc import Mapping
from datetime import datetime, timedelta
from typing import Final

from sqlalchemy import ColumnElement, Connection, Table, delete, select, update

from bot.store import scrub, strangers
from bot.store.tables import agenda, inbox, invite, outbox

UNSENT_KEPT: Final = timedelta(days=30)
"""Letters that never arrived, or of which we don't know: for who looks into why."""

SENT_KEPT: Final = timedelta(days=400)
"""Letters that arrived: a year and a month, so that an export shows the last year's answers."""

SPENT_KEPT: Final = timedelta(days=30)
"""Codes that are used or past their time, so that their bearer is told which of the two it is."""

SAID_KEPT: Final = timedelta(days=90)
"""Rows of the agenda that are dealt with: past any day on which the same thing could be said again."""

ODD_KEPT: Final = timedelta(days=30)
"""Updates in no known shape: their content. That they were here stays, so that they are not taken twice."""

AT_ONCE: Final = 500
"""Rows of a table in one transaction: a purge must hold nobody up."""


def purge(conn: Connection, now: datetime) -> Mapping[str, int]:
    """Forget a piece of each kind; says how many rows of each table went. Call again while anything does."""
    strangers.purge(conn, now)
    unsent = outbox.c.state.in_(("dead", "uncertain")) & (outbox.c.made < now - UNSENT_KEPT)
    sent = (outbox.c.state == "sent") & (outbox.c.made < now - SENT_KEPT)
    spent = invite.c.expires < now - SPENT_KEPT
    said = agenda.c.state.in_(("done", "cancelled", "dead")) & (agenda.c.due < now - SAID_KEPT)
    odd = (inbox.c.state == "aside") & (inbox.c.received < now - ODD_KEPT) & (inbox.c.body != "")
    gone = {
        "outbox": _remove(conn, outbox, unsent) + _remove(conn, outbox, sent),
        "invite": _remove(conn, invite, spent),
        "agenda": _remove(conn, agenda, said),
    }
    few = select(inbox.c.seq).where(odd).limit(AT_ONCE)
    gone["inbox"] = conn.execute(update(inbox).where(inbox.c.seq.in_(few)).values(body="")).rowcount
    if any(gone.values()):
        scrub.want(conn)
    return gone


def _remove(conn: Connection, table: Table, old: ColumnElement[bool]) -> int:
    key = next(iter(table.primary_key))
    few = select(key).where(old).limit(AT_ONCE)
    return conn.execute(delete(table).where(key.in_(few))).rowcount
