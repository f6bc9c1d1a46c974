"""All that is kept about one person, as plain values: what an export holds. Changes nothing.

A coach's private notes about a client are the coach's and not in it; neither is what others said of the person.
"""

import json
from collections.abc import Iterator
from datetime import date, datetime
from typing import Any, Final

from sqlalchemy import Connection, Table, or_, select

from bot.store.tables import chat, inbox, metadata, outbox, person

Json = dict[str, Any]

_OWN: Final = frozenset({"person", "to"})
"""Names of columns by which a row is the person's own."""
_SAID: Final = frozenset(
    {("remark", "by"), ("word", "by"), ("question", "asks"), ("crew", "coach"), ("challenge", "coach")}
)
"""Rows that the person made."""
_NOT_OWN: Final = frozenset({"outbox", "chat_alias"})
_IN_JSON: Final = frozenset({"body", "buttons", "teams"})


def everything(conn: Connection, who: int, now: datetime) -> Json:
    """Every row about the person by table, the messages that came from their chats, and what was sent there."""
    found: Json = {
        "exported": _plain("", now),
        "person": _row(conn.execute(select(person).where(person.c.id == who)).one()),
    }
    for table in metadata.sorted_tables:
        rows = list(_rows_of(conn, table, who))
        if rows:
            found[table.name] = rows
    found["messages"] = list(_messages(conn, who))
    found["answers"] = list(_answers(conn, who))
    return found


def _rows_of(conn: Connection, table: Table, who: int) -> Iterator[Json]:
    columns = [
        column
        for column in table.columns
        for key in column.foreign_keys
        if key.column.table is person and (column.name in _OWN or (table.name, column.name) in _SAID)
    ]
    if columns and table.name not in _NOT_OWN:
        for row in conn.execute(select(table).where(or_(*(column == who for column in columns)))):
            yield _row(row)


def _messages(conn: Connection, who: int) -> Iterator[Json]:
    mine = select(inbox.c.seq, inbox.c.received, inbox.c.body, inbox.c.state)
    mine = mine.join(chat, (chat.c.channel == inbox.c.channel) & (chat.c.platform == inbox.c.chat))
    for row in conn.execute(mine.where(chat.c.person == who).order_by(inbox.c.seq)):
        yield _row(row)


def _answers(conn: Connection, who: int) -> Iterator[Json]:
    sent = select(outbox.c.seq, outbox.c.made, outbox.c.kind, outbox.c.text, outbox.c.buttons, outbox.c.state)
    sent = sent.join(chat, chat.c.id == outbox.c.chat, isouter=True)
    for row in conn.execute(sent.where(or_(chat.c.person == who, outbox.c.person == who)).order_by(outbox.c.seq)):
        yield _row(row)


def _row(row: Any) -> Json:
    return {name: _plain(name, value) for name, value in row._mapping.items() if not isinstance(value, bytes)}  # noqa: SLF001


def _plain(name: str, value: Any) -> Any:
    if isinstance(value, datetime):
        return value.isoformat(timespec="seconds").replace("+00:00", "Z")
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, str) and name in _IN_JSON and value[:1] in ("{", "["):
        try:
            return json.loads(value)
        except ValueError:
            return value
    return value
