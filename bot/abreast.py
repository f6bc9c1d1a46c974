"""Which work may go side by side where several workers share a store, and which must be alone.

What a lifter says in their own chat, or is reminded of, changes only what is theirs and adds to what goes out. All else
(a coach's words, a group's, a door that opens, a challenge) may touch others, and takes its turn alone.
"""

from datetime import datetime

from sqlalchemy import Connection

from bot.desk import route
from bot.desk.rooms import Parts
from bot.ports import Media, Press, Words
from bot.store import agenda, inbox, people, turns
from bot.store.agenda import Due
from bot.store.inbox import Arrived
from bot.store.people import Person


def work(conn: Connection, parts: Parts, arrived: Arrived) -> None:
    """Work an update in its turn, unless another worker has done so (one that was taken for dead may come back)."""
    opened = parts.openers[arrived.raw.channel](arrived.raw)
    door = isinstance(opened, Words) and opened.text.lstrip().lower().startswith("/start")
    if isinstance(opened, Words | Press | Media) and opened.private and not door:
        _take(conn, people.by_user(conn, arrived.raw.channel, opened.user))
    else:
        turns.alone(conn)
    if inbox.is_waiting(conn, arrived.seq):
        route.work(conn, parts, arrived)


def remind(conn: Connection, parts: Parts, due: Due, now: datetime) -> None:
    """Say what is due, in its turn."""
    _take(conn, people.by_id(conn, due.person))
    if agenda.is_waiting(conn, due.id):
        route.remind(conn, parts, due, now)


def _take(conn: Connection, who: Person | None) -> None:
    if who is not None and who.lifts and not who.coaches:
        turns.side_by_side(conn, who.id)
    else:
        turns.alone(conn)
