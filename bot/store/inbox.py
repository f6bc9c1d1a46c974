"""What came in, as it came: kept first, worked later, each update once."""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final, Literal

from sqlalchemy import Connection, bindparam, func, insert, select, update

from bot.ports import RawUpdate
from bot.store.tables import inbox
from bot.store.upsert import put_new

State = Literal["waiting", "done", "dead", "aside"]
"""``dead``: working it failed for good. ``aside``: it was not in its channel's shape."""

NO_CHAT: Final = 0

Lane = tuple[str, int]
"""A channel and its chat: what comes from one lane is worked in order."""


@dataclass(frozen=True, slots=True)
class Arrived:
    """One update in its place in the order of arrival."""

    seq: int
    raw: RawUpdate
    received: datetime
    attempts: int


def keep(conn: Connection, batch: Sequence[RawUpdate], now: datetime) -> int:
    """Persist a batch as it came; what is there already is left as it is. Says how many were new."""
    rows: list[dict[str, object]] = [
        {
            "channel": raw.channel,
            "update_id": raw.update_id,
            "chat": raw.chat,
            "body": raw.body,
            "received": now,
            "state": "waiting",
            "attempts": 0,
        }
        for raw in batch
    ]
    return put_new(conn, inbox, rows)


def keep_worked(conn: Connection, raw: RawUpdate, received_at: datetime, message_id: int, reader: str) -> int:
    """Put a message into the past, as one that came in and was worked then. Gives back its number."""
    values = {
        "channel": raw.channel,
        "update_id": raw.update_id,
        "chat": raw.chat,
        "body": raw.body,
        "received": received_at,
        "state": "done",
        "attempts": 0,
        "message_id": message_id,
        "reader": reader,
    }
    number: int = conn.execute(insert(inbox).values(**values).returning(inbox.c.seq)).scalar_one()
    return number


def waiting_lanes(conn: Connection, before: datetime | None = None) -> list[Lane]:
    """Lanes with something to work, the longest waiting first; ``before``: only with what came in by then."""
    first = func.min(inbox.c.seq)
    query = select(inbox.c.channel, inbox.c.chat).where(inbox.c.state == "waiting")
    if before is not None:
        query = query.where(inbox.c.received <= before)
    rows = conn.execute(query.group_by(inbox.c.channel, inbox.c.chat).order_by(first))
    return [(row.channel, row.chat) for row in rows]


_NEXT: Final = (
    select(inbox)
    .where(inbox.c.state == "waiting", inbox.c.channel == bindparam("of"), inbox.c.chat == bindparam("where"))
    .order_by(inbox.c.seq)
    .limit(1)
)


def next_waiting(conn: Connection, lane: Lane) -> Arrived | None:
    """The oldest unfinished update of a lane."""
    row = conn.execute(_NEXT, {"of": lane[0], "where": lane[1]}).one_or_none()
    if row is None:
        return None
    return Arrived(row.seq, RawUpdate(row.channel, row.update_id, row.chat, row.body), row.received, row.attempts)


_THIS: Final = update(inbox).where(inbox.c.seq == bindparam("this"))


def is_waiting(conn: Connection, seq: int) -> bool:
    """Whether it is still to be worked; nobody else works it until this transaction ends."""
    query = select(inbox.c.state).where(inbox.c.seq == seq).with_for_update()
    return conn.execute(query).scalar() == "waiting"


def note_message(conn: Connection, seq: int, message_id: int, reader: str) -> None:
    """Remember which message of the channel an update is, and what read it."""
    conn.execute(_THIS, {"this": seq, "message_id": message_id, "reader": reader})


def number_of(conn: Connection, lane: Lane, message_id: int, before: int) -> int | None:
    """The number of a channel's message as it first came in, before the update ``before``."""
    query = select(func.min(inbox.c.seq)).where(
        inbox.c.channel == lane[0], inbox.c.chat == lane[1], inbox.c.message_id == message_id, inbox.c.seq < before
    )
    number: int | None = conn.execute(query).scalar_one()
    return number


def mark(conn: Connection, seq: int, state: State) -> None:
    """It is worked, or set aside."""
    conn.execute(_THIS, {"this": seq, "state": state})


def forget(conn: Connection, seq: int) -> None:
    """Mark it worked and keep nothing of it but that this update was here."""
    values = {"state": "done", "body": "", "chat": NO_CHAT, "message_id": None}
    conn.execute(update(inbox).where(inbox.c.seq == seq).values(**values))


def failed(conn: Connection, seq: int) -> int:
    """Working it failed once more; says how often by now."""
    query = update(inbox).where(inbox.c.seq == seq).values(attempts=inbox.c.attempts + 1).returning(inbox.c.attempts)
    attempts: int = conn.execute(query).scalar_one()
    return attempts


def last_update_id(conn: Connection, channel: str) -> int:
    """The highest update id of a channel that counts its own; 0 when there is none."""
    query = select(func.coalesce(func.max(inbox.c.update_id), 0)).where(inbox.c.channel == channel)
    found: int = conn.execute(query).scalar_one()
    return found


def received(conn: Connection, seq: int) -> datetime:
    """When a message came in."""
    moment: datetime = conn.execute(select(inbox.c.received).where(inbox.c.seq == seq)).scalar_one()
    return moment
