"""How much waits, is stuck or was given up, as numbers alone. Reads through indexes; knows nobody."""

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import Final

from sqlalchemy import Connection, func, select

from bot.store.tables import agenda, chat, halt, inbox, outbox

UNFINISHED_IN: Final = ("waiting", "dead", "aside")
UNFINISHED_OUT: Final = ("undrawn", "queued", "uncertain", "dead")


@dataclass(frozen=True, slots=True)
class Figures:
    """What waits. Ages are seconds; 0 where nothing waits."""

    came_in: dict[str, int]
    """By state: waiting, dead (working it failed for good), aside (in no known shape)."""
    goes_out: dict[tuple[str, str], int]
    """By kind and state: undrawn, queued, uncertain (may have arrived), dead (never will)."""
    oldest_in: float
    oldest_out: float
    halted: float
    """Seconds for which the channel that waits longest was told to wait."""
    closed_chats: int
    overdue: int
    """Rows of the agenda that are due."""


def figures(conn: Connection, now: datetime) -> Figures:
    """Count everything."""
    waits = select(func.min(inbox.c.received)).where(inbox.c.state == "waiting")
    queued = select(func.min(outbox.c.made)).join(chat, chat.c.id == outbox.c.chat)
    queued = queued.where(outbox.c.state == "queued", chat.c.active == 1)
    due = select(func.count()).select_from(agenda).where(agenda.c.state == "waiting", agenda.c.due <= now)
    closed = select(func.count()).select_from(chat).where(chat.c.active == 0)
    return Figures(
        came_in=dict.fromkeys(UNFINISHED_IN, 0) | _by_state(conn),
        goes_out=_by_kind(conn),
        oldest_in=_age(conn.execute(waits).scalar(), now),
        oldest_out=_age(conn.execute(queued).scalar(), now),
        halted=max(0.0, -_age(conn.execute(select(func.max(halt.c.until))).scalar(), now)),
        closed_chats=conn.execute(closed).scalar_one(),
        overdue=conn.execute(due).scalar_one(),
    )


def together(each: Sequence[Figures]) -> Figures:
    """The figures of several stores as one: counts added up, of ages the greatest."""
    came, goes = Counter[str](), Counter[tuple[str, str]]()
    for one in each:
        came.update(one.came_in)
        goes.update(one.goes_out)
    return Figures(
        came_in=dict(came),
        goes_out=dict(goes),
        oldest_in=max(one.oldest_in for one in each),
        oldest_out=max(one.oldest_out for one in each),
        halted=max(one.halted for one in each),
        closed_chats=sum(one.closed_chats for one in each),
        overdue=sum(one.overdue for one in each),
    )


def _by_state(conn: Connection) -> dict[str, int]:
    query = select(inbox.c.state, func.count()).where(inbox.c.state.in_(UNFINISHED_IN)).group_by(inbox.c.state)
    return {row[0]: row[1] for row in conn.execute(query)}


def _by_kind(conn: Connection) -> dict[tuple[str, str], int]:
    query = select(outbox.c.kind, outbox.c.state, func.count()).where(outbox.c.state.in_(UNFINISHED_OUT))
    return {
        (kind, state): number for kind, state, number in conn.execute(query.group_by(outbox.c.kind, outbox.c.state))
    }


def _age(moment: datetime | None, now: datetime) -> float:
    return 0.0 if moment is None else (now - moment).total_seconds()
