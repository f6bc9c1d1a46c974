"""Reads one raw Telegram update: JSON text in, a value of bot/ports.py out.

Slim shapes of our own hold only what the service needs, at an eighth of the cost of the library's full objects (16
against 131 microseconds, measured). What does not fit is a value too (Malformed), so that one bad update never stops
the rest. Knows no network.
"""

import hashlib
import json
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Annotated, Any, Final

from pydantic import BaseModel, ConfigDict, Field, ValidationError
from pydantic_core import from_json

from bot.ports import Back, Gone, Malformed, Media, Nothing, Opened, Press, RawUpdate, Renamed, Words

ALLOWED_UPDATES: Final = ("message", "edited_message", "callback_query", "my_chat_member")
"""What we ask for. Always sent: left out, Telegram keeps whatever was asked before."""

MEDIA: Final = (
    "photo",
    "voice",
    "video",
    "video_note",
    "animation",  # carries a "document" as well, so it comes first
    "document",
    "audio",
    "sticker",
    "location",
    "venue",
    "contact",
    "poll",
    "dice",
    "story",
    "game",
    "paid_media",
    "checklist",
)
"""What a message can hold in place of text, in the Bot API's own words."""

AWAY: Final = frozenset({"left", "kicked"})
"""Membership in which a chat is closed to us (in a private chat, ``kicked`` means blocked)."""

# fmt: off
OURS: Final = frozenset((
    "begin", "next", "today", "why", "undo", "done", "help", "start",
    "challenge", "join", "leave", "pause", "back", "standings", "points", "open", "new", "end", "stop", "cancel",
))
# fmt: on
"""Commands that are to us in a group without our name: the menu's and a challenge's. Others may be another bot's."""

_INT64: Final = 2**63
_COMMAND: Final = re.compile(r"/(\w+)(?:@(\w+))?(?=\s|$)")

Id = Annotated[int, Field(ge=-_INT64, lt=_INT64)]


@dataclass(frozen=True, slots=True)
class Me:
    """Who we are in Telegram. ``username`` is None until the API has told it."""

    id: int
    username: str | None = None


class _Slim(BaseModel):
    model_config = ConfigDict(strict=True, frozen=True, extra="ignore", hide_input_in_errors=True)


class _User(_Slim):
    id: Id
    is_bot: bool = False
    first_name: str = ""
    last_name: str | None = None
    language_code: str | None = None

    @property
    def name(self) -> str:
        return " ".join(part for part in (self.first_name, self.last_name) if part)


class _Chat(_Slim):
    id: Id
    type: str
    title: str = ""

    @property
    def private(self) -> bool:
        return self.type == "private"


class _Entity(_Slim):
    type: str
    user: _User | None = None


class _Replied(_Slim):
    sender: _User | None = Field(None, alias="from")
    forum_topic_created: Any = None


class _Message(_Slim):
    message_id: Id
    chat: _Chat
    sender: _User | None = Field(None, alias="from")
    text: str | None = None
    caption: str | None = None
    entities: list[_Entity] = []
    caption_entities: list[_Entity] = []
    reply_to_message: _Replied | None = None
    message_thread_id: Id | None = None
    is_topic_message: bool = False
    migrate_to_chat_id: Id | None = None
    migrate_from_chat_id: Id | None = None


class _Pressed(_Slim):
    message_id: Id
    chat: _Chat


class _Callback(_Slim):
    id: str
    sender: _User = Field(alias="from")
    message: _Pressed | None = None
    data: str | None = None


class _Member(_Slim):
    status: str
    is_member: bool = True

    @property
    def away(self) -> bool:
        return self.status in AWAY or (self.status == "restricted" and not self.is_member)


class _Membership(_Slim):
    chat: _Chat
    old_chat_member: _Member
    new_chat_member: _Member


def raw_update(item: object, channel: str) -> RawUpdate:
    """One element of an answer to getUpdates, as it is kept. Any JSON value is taken.

    A chat that cannot be found is 0. An update without a usable id gets a negative one made from its content, the same
    at each redelivery. The body is ASCII (other characters are escaped), so any store can hold it.
    """
    body = json.dumps(item)
    update_id = _number(item.get("update_id")) if isinstance(item, dict) else None
    if update_id is None:
        update_id = -int.from_bytes(hashlib.blake2b(body.encode("ascii"), digest_size=7).digest()) - 1
    return RawUpdate(channel=channel, update_id=update_id, chat=_chat_of(item), body=body)


def next_offset(batch: tuple[RawUpdate, ...]) -> int | None:
    """The offset that confirms this batch; None when no update in it has an id of its own."""
    ids = [raw.update_id for raw in batch if raw.update_id >= 0]
    return max(ids) + 1 if ids else None


def open_update(body: str, me: Me) -> Opened:
    """Read one raw update. Never raises for what is in it; the reason in Malformed holds no words of a person."""
    try:
        update = from_json(body)
    except ValueError:
        return Malformed("not JSON")
    if not isinstance(update, dict):
        return Malformed("not an object")
    for kind, read in _READERS.items():
        if update.get(kind) is not None:
            try:
                return read(update[kind], me)
            except ValidationError as error:
                return Malformed(_reason(kind, error))
    return Nothing()


def _message(part: object, me: Me, *, edit: bool = False) -> Opened:
    message = _Message.model_validate(part)
    chat = message.chat
    if message.migrate_to_chat_id is not None:
        return Renamed(chat=chat.id, new=message.migrate_to_chat_id)
    if message.migrate_from_chat_id is not None:
        return Renamed(chat=message.migrate_from_chat_id, new=chat.id)
    sender = message.sender
    if sender is None or sender.is_bot:
        return Nothing()
    if message.text is None:
        return _media(message, part, sender, me, edit=edit)
    said, ours = _to_us(message.text, message.entities, me)
    return Words(
        chat=chat.id,
        user=sender.id,
        message_id=message.message_id,
        text=said,
        name=sender.name,
        private=chat.private,
        edit=edit,
        address=chat.private or ours or _replies_to(message, me),
        thread=message.message_thread_id if message.is_topic_message else None,
        language=sender.language_code,
        title=chat.title,
    )


def _media(message: _Message, part: object, sender: _User, me: Me, *, edit: bool) -> Opened:
    kind = next((kind for kind in MEDIA if isinstance(part, Mapping) and part.get(kind) is not None), None)
    if kind is None:
        return Nothing()
    caption, ours = _to_us(message.caption or "", message.caption_entities, me)
    if edit and not caption:
        return Nothing()  # a shared live location is edited every few seconds
    if not (message.chat.private or ours or _replies_to(message, me)):
        return Nothing()
    return Media(
        chat=message.chat.id,
        user=sender.id,
        message_id=message.message_id,
        kind=kind,
        caption=caption,
        private=message.chat.private,
    )


def _edited(part: object, me: Me) -> Opened:
    return _message(part, me, edit=True)


def _press(part: object, _me: Me) -> Opened:
    press = _Callback.model_validate(part)
    if press.message is None or press.data is None:
        return Nothing()
    chat = press.message.chat
    return Press(
        chat=chat.id,
        user=press.sender.id,
        message_id=press.message.message_id,
        data=press.data,
        token=press.id,
        private=chat.private,
        name=press.sender.name,
    )


def _membership(part: object, _me: Me) -> Opened:
    change = _Membership.model_validate(part)
    if change.new_chat_member.away:
        return Gone(chat=change.chat.id)
    return Back(chat=change.chat.id) if change.old_chat_member.away else Nothing()


_READERS: Final[Mapping[str, Callable[[object, Me], Opened]]] = {
    "message": _message,
    "edited_message": _edited,
    "callback_query": _press,
    "my_chat_member": _membership,
}


def _to_us(text: str, entities: list[_Entity], me: Me) -> tuple[str, bool]:
    """The words without our name in them, and whether they name us: a command of ours, or a mention."""
    command = _COMMAND.match(text)
    if command:
        word, whose = command.groups()
        if whose is None:
            return text, word.casefold() in OURS
        ours = me.username is None or whose.casefold() == me.username.casefold()
        return (f"/{word}{text[command.end() :]}" if ours else text), ours
    if any(entity.user is not None and entity.user.id == me.id for entity in entities):
        return text, True
    if me.username is None:  # not told yet: rather answer a mention of another than drop one of us
        return text, any(entity.type == "mention" for entity in entities)
    mention = re.compile(rf"[ \t]*(?<![\w@])@{re.escape(me.username)}\b[,:]?[ \t]*", re.IGNORECASE)
    said, times = mention.subn(" ", text)
    return (said.strip(), True) if times else (text, False)


def _replies_to(message: _Message, me: Me) -> bool:
    """Whether it answers one of our messages. The root of a topic is no such message: all its posts point to it."""
    root = message.reply_to_message
    return root is not None and root.forum_topic_created is None and root.sender is not None and root.sender.id == me.id


def _chat_of(item: object) -> int:
    """The chat that an update belongs to, found without trusting its shape."""
    for path in _CHAT_PATHS:
        found: object = item
        for step in path:
            found = found.get(step) if isinstance(found, dict) else None
        number = _number(found)
        if number is not None:
            return number
    return 0


_CHAT_PATHS: Final = (
    ("message", "chat", "id"),
    ("edited_message", "chat", "id"),
    ("callback_query", "message", "chat", "id"),
    ("callback_query", "from", "id"),
    ("my_chat_member", "chat", "id"),
)


def _number(value: object) -> int | None:
    """A whole number that a store's 64-bit column can hold, else None. JSON's true is not 1."""
    if isinstance(value, int) and not isinstance(value, bool) and -_INT64 <= value < _INT64:
        return value
    return None


def _reason(kind: str, error: ValidationError) -> str:
    first = error.errors(include_url=False, include_context=False, include_input=False)[0]
    return f"{'.'.join([kind, *(str(step) for step in first['loc'])])}: {first['type']}"
