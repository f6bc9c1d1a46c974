"""What goes out: queued in the commit that caused it, taken in order, marked with what became of it."""

import json
from collections.abc import Collection
from dataclasses import dataclass, replace
from datetime import datetime
from functools import lru_cache
from typing import Any, Final, Literal

from sqlalchemy import Connection, and_, bindparam, case, delete, func, insert, or_, select, update

from bot.store import scrub
from bot.store.tables import chat, halt, outbox
from bot.store.upsert import put
from core.model.outcome import Button, Reply

Kind = Literal["reply", "alert", "prompt", "summary", "post"]
"""What kind of message; in this order when several chats wait."""

RANK: Final[dict[str, int]] = {"reply": 0, "alert": 1, "prompt": 2, "summary": 3, "post": 4}


@dataclass(frozen=True, slots=True)
class Recipe:
    """What a letter's picture or document is made of, outside of any transaction: a kind of thing, and its values."""

    file: str
    kind: str
    body: str


@dataclass(frozen=True, slots=True)
class Undrawn:
    """A letter that waits for its picture or document."""

    seq: int
    person: int | None
    text: str
    recipe: Recipe
    attempts: int


@dataclass(frozen=True, slots=True)
class Letter:
    """A message to queue: into one chat, or to a person wherever they are reached, or to an address not known to us."""

    text: str
    kind: Kind = "reply"
    buttons: tuple[Button, ...] = ()
    chat: int | None = None
    person: int | None = None
    address: tuple[str, int] | None = None
    thread: int | None = None
    reply_to: int | None = None
    edits: int | None = None
    """The number of an earlier message of ours that is written over."""
    attachment: tuple[str, bytes] | None = None
    recipe: Recipe | None = None
    """How the attachment (or the text) is made later; the letter waits for it and holds nothing up."""


@dataclass(frozen=True, slots=True)
class Queued:
    """A queued message with where it goes now. ``chat`` None: to an address not known to us."""

    seq: int
    chat: int | None
    channel: str
    platform: int
    thread: int | None
    kind: Kind
    text: str
    buttons: tuple[Button, ...]
    attempts: int
    private: bool
    not_before: datetime | None
    edits: int | None = None
    """The channel's own number of the message that is written over; None: it is a new one."""
    attachment: tuple[str, bytes] | None = None


@dataclass(frozen=True, slots=True)
class Reach:
    """What a sender can reach: all chats of its channel, or only some."""

    channel: str
    platforms: frozenset[int] | None = None


def queue(conn: Connection, letter: Letter, now: datetime) -> int:
    """Queue one message; gives its number in the outbox."""
    channel, platform = letter.address or (None, None)
    name, content = letter.attachment or (None, None)
    recipe = letter.recipe
    values = {
        "chat": letter.chat,
        "person": letter.person,
        "channel": channel,
        "platform": platform,
        "thread": letter.thread,
        "kind": letter.kind,
        "text": letter.text,
        "buttons": json.dumps([[one.label, one.data] for one in letter.buttons], ensure_ascii=False),
        "state": "queued" if recipe is None else "undrawn",
        "attempts": 0,
        "made": now,
        "reply_to": letter.reply_to,
        "edits": letter.edits,
        "file": name if recipe is None else recipe.file,
        "content": content,
        "recipe": None if recipe is None else json.dumps([recipe.kind, recipe.body], ensure_ascii=False),
    }
    number: int = conn.execute(_QUEUE, values).scalar_one()
    return number


_QUEUE: Final = insert(outbox).returning(outbox.c.seq)


def rewrite(conn: Connection, seq: int, letter: Letter, now: datetime) -> int:
    """Say it in the place of the earlier message ``seq``; gives the number to write over the next time.

    While one of the two still waits to be sent, its words are changed and nothing is added.
    """
    open_ = select(func.max(outbox.c.seq)).where(or_(outbox.c.seq == seq, outbox.c.edits == seq))
    waiting = conn.execute(open_.where(outbox.c.state == "queued")).scalar()
    if waiting is not None:
        conn.execute(update(outbox).where(outbox.c.seq == waiting).values(text=letter.text))
        return seq
    gone = conn.execute(select(outbox.c.message_id).where(outbox.c.seq == seq)).scalar() is None
    number = queue(conn, letter if gone else replace(letter, edits=seq), now)
    return number if gone else seq


def as_reply(letter: Letter, reply: Reply) -> Letter:
    """The letter with what core says of the reply: its kind and its pressable answers."""
    return replace(letter, kind=reply.kind, buttons=reply.buttons)


def is_untidy(conn: Connection, reach: Reach, before: datetime) -> bool:
    """Whether ``assign`` or ``drop_stale`` would change anything."""
    return bool(conn.execute(_untidy(reach), {"before": before}).scalar_one())


@lru_cache(64)
def _untidy(reach: Reach) -> Any:
    queued = outbox.c.state == "queued"
    homeless = select(outbox.c.seq).join(chat, chat.c.person == outbox.c.person)
    homeless = homeless.where(queued, outbox.c.chat.is_(None), chat.c.active == 1, *_within(reach))
    stale = select(outbox.c.seq).where(queued, outbox.c.kind == "prompt", outbox.c.made < bindparam("before"))
    return select(or_(homeless.exists(), stale.exists()))


def assign(conn: Connection, reach: Reach) -> None:
    """Give what waits for a person the chat of this channel in which they were last seen, if they have one."""
    waiting = and_(outbox.c.state.in_(("queued", "undrawn")), outbox.c.chat.is_(None), outbox.c.person.is_not(None))
    people = conn.execute(select(outbox.c.person).where(waiting).distinct()).scalars().all()
    for who in people:
        query = select(chat.c.id).where(chat.c.person == who, chat.c.active == 1, *_within(reach))
        found = conn.execute(query.order_by(chat.c.seen.desc().nulls_last(), chat.c.id).limit(1)).scalar()
        if found is not None:
            conn.execute(update(outbox).where(waiting, outbox.c.person == who).values(chat=found))


def drop_stale(conn: Connection, before: datetime) -> None:
    """A prompt made before that moment announces what is over: it is not sent any more."""
    stale = (outbox.c.state == "queued", outbox.c.kind == "prompt", outbox.c.made < before)
    conn.execute(update(outbox).where(*stale).values(state="dead"))


def heads(conn: Connection, reach: Reach, now: datetime, resend_below: int) -> list[Queued]:
    """The next message of each chat that waits, most urgent kind first, then oldest; a later one waits its turn.

    A message that may have been delivered comes again once its time has come, while it was tried fewer than
    ``resend_below`` times; it holds nothing back.
    """
    return [_queued(row) for row in conn.execute(_heads(reach), {"now": now, "below": resend_below})]


@lru_cache(64)
def _heads(reach: Reach) -> Any:
    first = select(func.min(outbox.c.seq)).where(outbox.c.state == "queued")
    first = first.group_by(outbox.c.chat, outbox.c.channel, outbox.c.platform)
    due = (outbox.c.attempts < bindparam("below"), outbox.c.not_before <= bindparam("now"))
    again = and_(outbox.c.state == "uncertain", *due)
    earlier = outbox.alias()
    return (
        select(
            outbox,
            func.coalesce(chat.c.channel, outbox.c.channel).label("to_channel"),
            func.coalesce(chat.c.platform, outbox.c.platform).label("to_platform"),
            chat.c.person.label("owner"),
            chat.c.not_before.label("chat_not_before"),
            earlier.c.message_id.label("edits_message"),
        )
        .join(chat, chat.c.id == outbox.c.chat, isouter=True)
        .join(earlier, earlier.c.seq == outbox.c.edits, isouter=True)
        .where(or_(outbox.c.seq.in_(first), again))
        .where(or_(and_(outbox.c.chat.is_not(None), chat.c.active == 1, *_within(reach)), _foreign(reach)))
        .order_by(case(RANK, value=outbox.c.kind), outbox.c.seq)
    )


def sent(conn: Connection, seq: int, message_id: int | None, *, kept_elsewhere: bool = True) -> None:
    """It was delivered. Of a message to someone we do not know nothing is kept.

    What was attached is dropped where the channel keeps it, and stays where it does not.
    """
    now = {"this": seq, "state": "sent", "message_id": message_id}
    row = conn.execute(_SENT, now | ({"content": None} if kept_elsewhere else {})).one_or_none()
    if row is None:
        return  # it was erased meanwhile
    if row.chat is None:
        conn.execute(delete(outbox).where(outbox.c.seq == seq))
        scrub.want(conn)
    elif row.edits is not None and message_id is not None:  # where the earlier one was gone it has a new number now
        conn.execute(update(outbox).where(outbox.c.seq == row.edits).values(message_id=message_id))


_SENT: Final = update(outbox).where(outbox.c.seq == bindparam("this")).returning(outbox.c.chat, outbox.c.edits)


def later(conn: Connection, one: Queued, until: datetime, *, whole_channel: bool) -> None:
    """It was not sent: the chat, or the whole channel, waits until then. The attempt does not count."""
    if whole_channel:
        put(conn, halt, channel=one.channel, until=until)
    elif one.chat is not None:
        conn.execute(update(chat).where(chat.c.id == one.chat).values(not_before=until))
    else:
        conn.execute(update(outbox).where(outbox.c.seq == one.seq).values(not_before=until))


def uncertain(conn: Connection, one: Queued, again_at: datetime | None) -> None:
    """It may have been delivered; ``again_at`` None: and it is left at that."""
    conn.execute(delete(outbox).where(outbox.c.seq == one.seq, outbox.c.chat.is_(None)))
    values = {"state": "uncertain", "not_before": again_at, "attempts": outbox.c.attempts + 1}
    conn.execute(update(outbox).where(outbox.c.seq == one.seq).values(**values))


def dead(conn: Connection, seq: int) -> None:
    """It will never be delivered."""
    conn.execute(delete(outbox).where(outbox.c.seq == seq, outbox.c.chat.is_(None)))
    conn.execute(update(outbox).where(outbox.c.seq == seq).values(state="dead"))


def halted_until(conn: Connection, channel: str) -> datetime | None:
    """Until when a whole channel must wait."""
    until: datetime | None = conn.execute(_HALTED, {"of": channel}).scalar()
    return until


_HALTED: Final = select(halt.c.until).where(halt.c.channel == bindparam("of"))


def next_time(conn: Connection, resend_below: int) -> datetime | None:
    """The next moment at which a message that may have been delivered is to be sent again."""
    moment: datetime | None = conn.execute(_NEXT_TIME, {"below": resend_below}).scalar()
    return moment


_NEXT_TIME: Final = select(func.min(outbox.c.not_before)).where(
    outbox.c.state == "uncertain", outbox.c.attempts < bindparam("below")
)


def last_message(conn: Connection, channel: str) -> int:
    """The highest number of a message sent in a channel that counts its own; 0 when there is none."""
    query = select(func.coalesce(func.max(outbox.c.message_id), 0)).join(chat, chat.c.id == outbox.c.chat)
    found: int = conn.execute(query.where(chat.c.channel == channel)).scalar_one()
    return found


def undrawn(conn: Connection, reach: Reach) -> list[Undrawn]:
    """Letters of open chats that wait for what is to be made of their recipe, the oldest first."""
    return [
        Undrawn(row.seq, row.owner, row.text, Recipe(row.file, *json.loads(row.recipe)), row.attempts)
        for row in conn.execute(_undrawn(reach))
    ]


@lru_cache(64)
def _undrawn(reach: Reach) -> Any:
    query = select(outbox, chat.c.person.label("owner")).join(chat, chat.c.id == outbox.c.chat)
    return query.where(outbox.c.state == "undrawn", chat.c.active == 1, *_within(reach)).order_by(outbox.c.seq)


def drawn(conn: Connection, seq: int, text: str, content: bytes | None) -> None:
    """It is made, and may go. Without content the text stands alone; without either there is nothing to send."""
    values = {"text": text, "content": content, "recipe": None, "attempts": 0}
    state = "queued" if text or content else "dead"
    conn.execute(update(outbox).where(outbox.c.seq == seq, outbox.c.state == "undrawn").values(state=state, **values))


def beside(conn: Connection, seq: int, letter: Letter, now: datetime) -> None:
    """One more letter, into the chat of an earlier one."""
    row = conn.execute(select(outbox.c.chat, outbox.c.thread, outbox.c.reply_to).where(outbox.c.seq == seq)).one()
    queue(conn, replace(letter, chat=row.chat, thread=row.thread, reply_to=row.reply_to), now)


def not_drawn(conn: Connection, seq: int, most: int) -> None:
    """Making it failed; after ``most`` times its words go alone."""
    tried = update(outbox).where(outbox.c.seq == seq).values(attempts=outbox.c.attempts + 1)
    row = conn.execute(tried.returning(outbox.c.attempts, outbox.c.text)).one_or_none()
    if row is not None and row.attempts >= most:
        drawn(conn, seq, row.text, None)


def last_buttons(conn: Connection, key: int) -> tuple[Button, ...]:
    """The pressable answers under the last message that was sent to a chat."""
    query = select(outbox.c.buttons).where(outbox.c.chat == key, outbox.c.state == "sent")
    return _buttons(conn.execute(query.order_by(outbox.c.seq.desc()).limit(1)).scalar() or "[]")


def _within(reach: Reach) -> list[Any]:
    mine = [chat.c.channel == reach.channel]
    return mine if reach.platforms is None else [*mine, chat.c.platform.in_(_ids(reach.platforms))]


def _foreign(reach: Reach) -> Any:
    mine = and_(outbox.c.chat.is_(None), outbox.c.channel == reach.channel)
    return mine if reach.platforms is None else and_(mine, outbox.c.platform.in_(_ids(reach.platforms)))


def _ids(platforms: Collection[int]) -> list[int]:
    return sorted(platforms)


def _buttons(text: str) -> tuple[Button, ...]:
    return tuple(Button(label, data) for label, data in json.loads(text))


def _queued(row: Any) -> Queued:
    return Queued(
        seq=row.seq,
        chat=row.chat,
        channel=row.to_channel,
        platform=row.to_platform,
        thread=row.thread,
        kind=row.kind,
        text=row.text,
        buttons=_buttons(row.buttons),
        attempts=row.attempts,
        private=row.chat is None or row.owner is not None,
        not_before=max((at for at in (row.not_before, row.chat_not_before) if at is not None), default=None),
        edits=row.edits_message,
        attachment=(row.file, row.content) if row.content is not None else None,
    )
