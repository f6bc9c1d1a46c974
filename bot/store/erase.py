"""Erases a person from every table, and from what others were or will be told. Leaves a tombstone: a number and a day.

Rows that belong to the person go, and all rows that hang on those; the person's own messages lose their text; lines
that name the person go from letters to the coach and to the groups.
"""

import json
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any, Final

from sqlalchemy import Column, Connection, Table, delete, or_, select, union, update

from bot.ports import Media, Opened, Press, RawUpdate, Words
from bot.store import backup, coach_clock, inbox, scrub, settings
from bot.store.contest_tables import challenge, entrant
from bot.store.tables import (
    act,
    address,
    agenda,
    chat,
    crew,
    invite,
    member,
    metadata,
    note,
    outbox,
    pending,
    person,
    question,
    remark,
    word,
)
from bot.store.tables import inbox as came_in

BACKUPS_LAST_DAYS: Final = backup.KEPT_DAYS

_EMPTIED: Final = frozenset({("person", "coach"), ("plan_version", "by"), ("chat", "crew"), ("act", "superseded_by")})
"""Pointers that are emptied; every other row that points to what goes, goes with it."""

Openers = Mapping[str, Callable[[RawUpdate], Opened]]


@dataclass(frozen=True, slots=True)
class _Traces:
    """By what a person can be found: names, user ids by channel, private chats, the coach, chats shared with others."""

    names: "re.Pattern[str]"
    users: tuple[tuple[str, int], ...]
    chats: tuple[tuple[int, str, int], ...]
    others: tuple[int, ...]
    coach: int | None


def forget(conn: Connection, who: int, openers: Openers, now: datetime) -> None:
    """Erase the person. What is left is a number that points to nobody, and when this was done."""
    traces = _traces(conn, who)
    _own_messages(conn, traces, openers)
    _told_to_others(conn, traces)
    _said_by_the_coach(conn, traces)
    for table in metadata.sorted_tables:
        for column in _pointing(table, person):
            if (table.name, column.name) not in _EMPTIED:
                _remove(conn, table, column == who)
            else:
                conn.execute(update(table).where(column == who).values({column.name: None}))
    tombstone = {"name": "", "coaches": 0, "lifts": 0, "coach": None, "zone": "UTC", "language": "en", "joined": now}
    conn.execute(update(person).where(person.c.id == who).values(**tombstone))
    settings.end_logins(conn, who)
    scrub.want(conn)


_TRAINING: Final = (
    "act", "target", "trained", "progress", "mark", "pending", "note", "day_plan", "hold", "plan", "plan_version",
    "rein", "joining", "journey", "lifter",
)  # fmt: skip
"""Tables of what is kept of somebody as a lifter."""


def forget_training(conn: Connection, who: int) -> None:
    """Erase what is kept of a coach as a lifter, with the messages that told it and our answers to them.

    The coach coaches on.
    """
    told = (
        select(one.c.message).where(one.c.person == who, one.c.message.is_not(None)) for one in (act, pending, note)
    )
    for seq in conn.execute(union(*told)).scalars().all():
        inbox.forget(conn, seq)
        for row in conn.execute(select(outbox).where(outbox.c.reply_to == seq)).all():
            _empty(conn, row)
    for name in _TRAINING:
        _remove(conn, metadata.tables[name], metadata.tables[name].c.person == who)
    conn.execute(delete(agenda).where(agenda.c.person == who, agenda.c.kind.not_in(coach_clock.KINDS)))
    conn.execute(update(person).where(person.c.id == who).values(lifts=0, coach=None))
    scrub.want(conn)


def _traces(conn: Connection, who: int) -> _Traces:
    row = conn.execute(select(person).where(person.c.id == who)).one()
    shown = conn.execute(select(entrant.c.shown).where(entrant.c.person == who)).scalars().all()
    users = conn.execute(select(address.c.channel, address.c.user).where(address.c.person == who)).all()
    mine = conn.execute(select(chat.c.id, chat.c.channel, chat.c.platform).where(chat.c.person == who)).all()
    crews = select(member.c.crew).where(member.c.person == who).union(select(crew.c.id).where(crew.c.coach == who))
    contests = select(challenge.c.chat).join(entrant).where(entrant.c.person == who)
    hosts = select(challenge.c.coach).join(entrant).where(entrant.c.person == who)  # they were asked what counts
    coaches = or_(chat.c.person == row.coach, chat.c.person.in_(hosts))
    shared = select(chat.c.id).where(or_(chat.c.crew.in_(crews), chat.c.id.in_(contests), coaches))
    return _Traces(
        _named({row.name, *shown}),
        tuple((one.channel, one.user) for one in users),
        tuple((one.id, one.channel, one.platform) for one in mine),
        tuple(conn.execute(shared).scalars()),
        row.coach,
    )


def _named(names: set[str]) -> "re.Pattern[str]":
    """Any of the names as a whole word, also as JSON writes it."""
    forms = {form for name in names if name for form in (name, json.dumps(name)[1:-1])}
    words = "|".join(re.escape(form) for form in sorted(forms, key=len, reverse=True)) or r"(?!)"
    return re.compile(rf"(?<!\w)(?:{words})(?!\w)")


def _own_messages(conn: Connection, traces: _Traces, openers: Openers) -> None:
    for _, channel, platform in traces.chats:
        rows = select(came_in.c.seq).where(came_in.c.channel == channel, came_in.c.chat == platform)
        for seq in conn.execute(rows).scalars().all():
            inbox.forget(conn, seq)
    for channel, user in traces.users:
        rows = select(came_in).where(came_in.c.channel == channel, came_in.c.body.contains(str(user)))
        for row in conn.execute(rows).all():
            opened = openers[channel](RawUpdate(channel, row.update_id, row.chat, row.body))
            if isinstance(opened, Words | Press | Media) and opened.user == user:
                inbox.forget(conn, row.seq)


def _told_to_others(conn: Connection, traces: _Traces) -> None:
    """Letters to the coach and to groups, whether queued or sent, without the lines that name the person."""
    to_others = or_(outbox.c.chat.in_(traces.others), outbox.c.person == traces.coach)
    for row in conn.execute(select(outbox).where(to_others)).all():
        whole = f"{row.text}\n{row.buttons}\n{row.recipe or ''}"
        in_file = row.content is not None and traces.names.search(row.content.decode("utf-8", "ignore"))
        if not traces.names.search(whole) and not in_file:
            continue
        text = _without(traces, row.text)
        if not text or in_file or traces.names.search(row.recipe or ""):
            _empty(conn, row)
        else:
            buttons = [one for one in json.loads(row.buttons) if not traces.names.search(" ".join(one))]
            values = {"text": text, "buttons": json.dumps(buttons, ensure_ascii=False)}
            conn.execute(update(outbox).where(outbox.c.seq == row.seq).values(**values))
    for row in conn.execute(select(challenge).where(challenge.c.chat.in_(traces.others))).all():
        if row.said and traces.names.search(row.said):
            said = _without(traces, row.said)
            conn.execute(update(challenge).where(challenge.c.id == row.id).values(said=said))


def _empty(conn: Connection, row: Any) -> None:
    """Keep nothing of a letter but that it was sent, and send it no more."""
    gone = {"text": "", "buttons": "[]", "content": None, "recipe": None}
    state = row.state if row.state == "sent" else "dead"
    conn.execute(update(outbox).where(outbox.c.seq == row.seq).values(state=state, **gone))


def _without(traces: _Traces, text: str) -> str:
    return "\n".join(line for line in text.split("\n") if not traces.names.search(line))


def _said_by_the_coach(conn: Connection, traces: _Traces) -> None:
    """The coach's own words that name the person: orders as they came, questions, notes on others, codes."""
    if traces.coach is None:
        return
    theirs = select(chat.c.channel, chat.c.platform).where(chat.c.person == traces.coach)
    for channel, platform in conn.execute(theirs).all():
        rows = select(came_in.c.seq, came_in.c.body).where(came_in.c.channel == channel, came_in.c.chat == platform)
        for row in conn.execute(rows).all():
            if traces.names.search(row.body):
                conn.execute(update(came_in).where(came_in.c.seq == row.seq).values(body=""))
    for row in conn.execute(select(question).where(question.c.asks == traces.coach)).all():
        if traces.names.search(row.body):
            conn.execute(delete(question).where(question.c.id == row.id))
    for table in (remark, word):
        for row in conn.execute(select(table).where(table.c.by == traces.coach)).all():
            if traces.names.search(row.text):
                text = traces.names.sub("…", row.text)
                conn.execute(update(table).where(table.c.id == row.id).values(text=text))
    for row in conn.execute(select(invite).where(invite.c.coach == traces.coach)).all():
        if traces.names.search(row.name):
            conn.execute(delete(invite).where(invite.c.hash == row.hash))


def _pointing(table: Table, to: Table) -> list[Column[Any]]:
    return [column for column in table.columns for key in column.foreign_keys if key.column.table is to]


def _remove(conn: Connection, table: Table, which: Any) -> None:
    """These rows, after all rows that hang on them."""
    for other in metadata.sorted_tables:
        for column in _pointing(other, table):
            target = next(key.column for key in column.foreign_keys if key.column.table is table)
            hanging = column.in_(select(target).where(which))
            if (other.name, column.name) in _EMPTIED:
                conn.execute(update(other).where(hanging).values({column.name: None}))
            elif other is not table:
                _remove(conn, other, hanging)
    conn.execute(delete(table).where(which))
