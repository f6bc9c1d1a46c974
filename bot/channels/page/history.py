"""A chat as it stands in the store: what came in and what went out, in the order of time. Changes nothing."""

import json
import math
from collections.abc import Callable, Iterable, Mapping
from dataclasses import asdict, dataclass, replace
from datetime import datetime
from typing import Any

from sqlalchemy import Connection, select

from bot.channels.page.seating import Seat
from bot.channels.page.shape import NAME
from bot.picture_facts import PNG, facts_in
from bot.ports import Media, Opened, Press, RawUpdate, Words
from bot.store.tables import chat, inbox, outbox

Openers = Mapping[str, Callable[[RawUpdate], Opened]]


@dataclass(frozen=True, slots=True)
class File:
    """What goes with a message. ``facts``: the rows of a picture's table, the first one its head."""

    number: int
    name: str
    picture: bool
    facts: tuple[tuple[str, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class Entry:
    """One line of the chat."""

    key: str
    own: bool
    kind: str
    who: str
    text: str
    at: datetime
    message: int | None = None
    """The channel's number: of an own text that can be changed here, or of the message that an answer is pressed on."""
    edited: bool = False
    buttons: tuple[tuple[str, str], ...] = ()
    pressed: tuple[str, ...] = ()
    """Data of the answers that were pressed under it."""
    file: File | None = None
    failed: bool = False
    after: int | None = None
    """The number of the message that it is, or answers; of things said at one time the answer stands below."""

    def plain(self) -> dict[str, Any]:
        """For JSON."""
        return {**asdict(self), "at": self.at.isoformat()}

    def place(self) -> tuple[datetime, float, bool]:
        """Where it stands among the others."""
        return self.at, math.inf if self.after is None else self.after, not self.own


@dataclass(frozen=True, slots=True)
class _Came:
    seq: int
    raw: RawUpdate
    at: datetime
    state: str
    opened: Words | Press | Media


def entries(conn: Connection, seat: Seat, openers: Openers, most: int) -> list[Entry]:
    """The last lines of a chat, the oldest of them first."""
    came, went = _came(conn, seat, openers, most), _went(conn, seat, most)
    pressed = [(one.opened.message_id, one.opened.data) for one in came if isinstance(one.opened, Press)]
    labels = {data: label for entry in went for label, data in entry.buttons}
    under = [
        replace(one, pressed=tuple(data for message, data in pressed if message == one.message and one.buttons))
        for one in went
    ]
    merged = [*_own(seat, came, labels), *under]
    merged.sort(key=Entry.place)
    return merged[-most:]


def author(conn: Connection, seat: Seat, message: int) -> int | None:
    """Who wrote a message of this channel, if it is a text that can be changed."""
    query = select(inbox.c.body).where(inbox.c.channel == NAME, inbox.c.chat == seat.chat)
    body = conn.execute(query.where(inbox.c.update_id == message)).scalar()
    row = json.loads(body) if body else {}
    return int(row["user"]) if "text" in row and "media" not in row else None


def file_of(conn: Connection, keys: Iterable[int], number: int) -> tuple[str, bytes, bool] | None:
    """Name, bytes, and whether it is a picture: of a file that went into one of these chats."""
    query = select(outbox.c.file, outbox.c.content).where(outbox.c.seq == number, outbox.c.chat.in_(list(keys)))
    row = conn.execute(query).one_or_none()
    if row is None or row.content is None:
        return None
    return row.file, row.content, row.content.startswith(PNG)


def _came(conn: Connection, seat: Seat, openers: Openers, most: int) -> list[_Came]:
    here = (inbox.c.channel == chat.c.channel) & (inbox.c.chat == chat.c.platform)
    query = select(inbox).join(chat, here).where(chat.c.id.in_(seat.keys))
    found = []
    for row in conn.execute(query.order_by(inbox.c.seq.desc()).limit(most)):
        raw = RawUpdate(row.channel, row.update_id, row.chat, row.body)
        opened = openers[row.channel](raw) if row.channel in openers else None
        if isinstance(opened, Words | Press | Media):
            found.append(_Came(row.seq, raw, row.received, row.state, opened))
    return found[::-1]


def _own(seat: Seat, came: list[_Came], labels: Mapping[str, str]) -> list[Entry]:
    """Own lines; a changed one stands where it first stood and says what it says now."""
    shown: dict[tuple[str, int], Entry] = {}
    names = dict(seat.speakers)
    for one in came:
        said = one.opened
        at = (one.raw.channel, one.raw.update_id if isinstance(said, Press) else said.message_id)
        text = labels.get(said.data, "") if isinstance(said, Press) else _text(said)
        if isinstance(said, Words) and said.edit and at in shown:
            shown[at] = replace(shown[at], text=text, edited=True)
        elif text or isinstance(said, Media):
            kind = {Press: "press", Media: said.kind if isinstance(said, Media) else ""}.get(type(said), "words")
            who = names.get(said.user, "") if one.raw.channel == NAME or not seat.private else seat.name
            message = said.message_id if one.raw.channel == NAME and kind == "words" else None
            entry = Entry(f"i{one.seq}", True, kind, who or seat.name, text, one.at, message)  # noqa: FBT003
            shown[at] = replace(entry, failed=one.state in ("dead", "aside"), after=one.seq)
    return list(shown.values())


def _text(said: Words | Media) -> str:
    return said.text if isinstance(said, Words) else said.caption


def _went(conn: Connection, seat: Seat, most: int) -> list[Entry]:
    """What was said here; what is written over stands where it first stood and says what it says now."""
    query = select(outbox).where(outbox.c.chat.in_(seat.keys), outbox.c.state.in_(("sent", "uncertain")))
    shown: dict[int, Entry] = {}
    for row in reversed(conn.execute(query.order_by(outbox.c.seq.desc()).limit(most)).all()):
        if row.edits in shown:
            shown[row.edits] = replace(shown[row.edits], text=row.text, buttons=_buttons(row), edited=True)
            continue
        entry = Entry(f"o{row.seq}", False, row.kind, "", row.text, row.made, row.message_id)  # noqa: FBT003
        file = None if row.content is None else _file(row)
        shown[row.seq] = replace(entry, buttons=_buttons(row), file=file, after=row.reply_to)
    return list(shown.values())


def _buttons(row: Any) -> tuple[tuple[str, str], ...]:
    return tuple((label, data) for label, data in json.loads(row.buttons))


def _file(row: Any) -> File:
    picture = row.content.startswith(PNG)
    return File(row.seq, row.file, picture, facts_in(row.content) if picture else ())
