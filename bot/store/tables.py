"""The tables. Rows, no logic. Keys are our own; what a channel calls a person or a chat is an attribute.

Texts named ``body`` hold JSON: acts and targets in the shape of the contracts, the rest in the shape of the nouns.
"""

from sqlalchemy import (
    Column,
    ForeignKey,
    Index,
    LargeBinary,
    PrimaryKeyConstraint,
    Table,
    UniqueConstraint,
)
from sqlalchemy import text as text_

from bot.store.columns import Real
from bot.store.desk_tables import hours, mark, plan_version, question, rein, remark, word
from bot.store.table_parts import day as _day
from bot.store.table_parts import metadata
from bot.store.table_parts import moment as _moment
from bot.store.table_parts import table as _table
from bot.store.table_parts import text as _text
from bot.store.table_parts import whole as _whole

setting = _table("setting", _text("name", primary_key=True), _text("value"))

# People and where they are reached

person = _table(
    "person",
    _whole("id", primary_key=True),
    _text("name"),
    _whole("coaches"),  # 1: a coach
    _whole("lifts"),  # 1: a lifter
    _whole("coach", ForeignKey("person.id"), nullable=True),
    _text("zone"),
    _text("language"),
    _whole("prompt_lead_minutes"),
    _text("quiet_from"),
    _text("quiet_to"),
    _text("decimal"),
    _moment("joined"),
    Index("person_by_coach", "coach"),
)

address = _table(
    "address",
    _text("channel"),
    _whole("user"),
    _whole("person", ForeignKey("person.id")),
    PrimaryKeyConstraint("channel", "user"),
    Index("address_by_person", "person"),
)

crew = _table("crew", _whole("id", primary_key=True), _text("name"), _whole("coach", ForeignKey("person.id")))
"""A group: people who train together."""

member = _table(
    "member",
    _whole("crew", ForeignKey("crew.id")),
    _whole("person", ForeignKey("person.id")),
    PrimaryKeyConstraint("crew", "person"),
)

chat = _table(
    "chat",
    _whole("id", primary_key=True),
    _text("channel"),
    _whole("platform"),  # the channel's own id
    _whole("person", ForeignKey("person.id"), nullable=True),  # whose private chat it is
    _whole("crew", ForeignKey("crew.id"), nullable=True),
    _whole("active"),  # 0: closed to us
    _moment("seen", nullable=True),  # the last message from it
    _moment("not_before", nullable=True),  # the channel asked us to wait until then
    UniqueConstraint("channel", "platform"),
    Index("chat_by_person", "person"),
)

chat_alias = _table(
    "chat_alias",
    _text("channel"),
    _whole("platform"),  # an id that the chat had before
    _whole("chat", ForeignKey("chat.id")),
    PrimaryKeyConstraint("channel", "platform"),
)

invite = _table(
    "invite",
    _text("hash", primary_key=True),
    _text("kind"),  # coach, client
    _text("name"),
    _text("zone"),
    _whole("coach", ForeignKey("person.id"), nullable=True),
    _moment("expires"),
    _moment("used", nullable=True),
)

stranger = _table("stranger", _text("hash", primary_key=True), _moment("until"))
"""Who was answered lately without being known: a keyed hash, so that the answer is given once, for a day."""

# What came in

inbox = Table(
    "inbox",
    metadata,
    _whole("seq", primary_key=True),
    _text("channel"),
    _whole("update_id"),
    _whole("chat"),  # the channel's own id
    _text("body"),
    _moment("received"),
    _text("state"),  # waiting, done, dead, aside
    _whole("attempts"),
    _whole("message_id", nullable=True),  # the channel's own, known once it is worked
    _text("reader", nullable=True),  # the version that read it
    UniqueConstraint("channel", "update_id"),
    Index("inbox_by_state", "state", "channel", "chat", "seq"),
    Index("inbox_by_message", "channel", "chat", "message_id"),
    sqlite_strict=True,
    sqlite_autoincrement=True,
)

# What a lifter did and is to do

lifter = _table(
    "lifter",
    _whole("person", ForeignKey("person.id"), primary_key=True),
    _text("body"),
    _day("folded_through", nullable=True),  # every older act is in progress, unless its row there is empty
)

plan = _table("plan", _whole("person", ForeignKey("person.id"), primary_key=True), _text("body"))

day_plan = _table(
    "day_plan",
    _whole("person", ForeignKey("person.id")),
    _day("on"),
    _text("body"),
    PrimaryKeyConstraint("person", "on"),
)

_ENDED = text_("ended_by IS NOT NULL")

act = _table(
    "act",
    _whole("id", primary_key=True),
    _whole("person", ForeignKey("person.id")),
    _text("kind"),
    _text("exercise", nullable=True),
    _day("on"),
    _moment("at"),
    _text("body"),
    _whole("message", ForeignKey("inbox.seq"), nullable=True),  # the message that it came from; empty: the clock
    _whole("origin", ForeignKey("inbox.seq"), nullable=True),  # the message that first reported what it now says
    _whole("place"),  # order among all acts of the person; a successor takes its forerunner's
    _text("state"),  # kept, amended, erased
    _whole("superseded_by", ForeignKey("act.id"), nullable=True),
    _whole("ended_by", ForeignKey("inbox.seq"), nullable=True),  # the message that amended or erased it
    Index("act_by_day", "person", "on"),
    Index("act_by_exercise", "person", "exercise", "on"),
    Index("act_by_origin", "origin"),
    Index("act_by_end", "ended_by"),
    Index("act_ended", "person", "ended_by", sqlite_where=_ENDED, postgresql_where=_ENDED),
)

target = _table(
    "target",
    _whole("id", primary_key=True),
    _whole("person", ForeignKey("person.id")),
    _text("exercise"),
    _day("on"),
    _text("body", nullable=True),  # empty: taken back
    Index("target_by_day", "person", "on"),
)

progress = _table(
    "progress",
    _whole("person", ForeignKey("person.id")),
    _text("exercise"),
    _text("body", nullable=True),  # empty: to be built again from the acts
    _text("made_by"),  # the version that folded it; by another it is built again
    Column("usual_kg", Real, nullable=True),
    PrimaryKeyConstraint("person", "exercise"),
)
"""A cache: each exercise's sessions before ``lifter.folded_through``, folded. Can be rebuilt from acts at any time."""

trained = _table(
    "trained",
    _whole("person", ForeignKey("person.id")),
    _text("exercise"),
    _day("on"),
    _text("lifter"),
    _text("aim"),
    PrimaryKeyConstraint("person", "exercise", "on"),
)
"""What was so on a day that is folded: the body and the coach's aim. Written once, so that rebuilding is exact."""

pending = _table(
    "pending",
    _whole("person", ForeignKey("person.id"), primary_key=True),
    _whole("message", ForeignKey("inbox.seq")),
    _moment("at"),
    _text("text"),
    _text("said"),
    _text("body"),
)

hold = _table("hold", _whole("person", ForeignKey("person.id"), primary_key=True), _text("sign"), _moment("since"))

note = _table(
    "note",
    _whole("id", primary_key=True),
    _whole("person", ForeignKey("person.id")),
    _whole("message", ForeignKey("inbox.seq")),
    _moment("at"),
    _text("text"),
    Index("note_by_person", "person"),
    Index("note_by_message", "message"),
)

# What is to come, and what goes out

agenda = _table(
    "agenda",
    _whole("id", primary_key=True),
    _whole("person", ForeignKey("person.id")),
    _text("kind"),
    _day("on"),
    _moment("due"),
    _text("state"),  # waiting, done, cancelled, dead
    _whole("attempts"),
    UniqueConstraint("person", "kind", "on"),
    Index("agenda_by_due", "state", "due"),
)

outbox = _table(
    "outbox",
    _whole("seq", primary_key=True),
    _whole("chat", ForeignKey("chat.id"), nullable=True),
    _whole("person", ForeignKey("person.id"), nullable=True),  # without chat: wherever they are reached
    _text("channel", nullable=True),  # with platform: someone we do not know; the row goes once it is sent
    _whole("platform", nullable=True),
    _whole("thread", nullable=True),
    _text("kind"),  # reply, alert, prompt, summary, post
    _text("text"),
    _text("buttons"),
    _text("state"),  # undrawn, queued, sent, uncertain, dead
    _whole("attempts"),
    _moment("made"),
    _moment("not_before", nullable=True),
    _whole("message_id", nullable=True),
    _whole("reply_to", ForeignKey("inbox.seq"), nullable=True),
    _whole("edits", nullable=True),  # an earlier message of ours that this one is written over
    _text("file", nullable=True),  # the name of what goes with it
    Column("content", LargeBinary, nullable=True),
    _text("recipe", nullable=True),  # what the content is made of, outside of any transaction; until then: undrawn
    Index("outbox_by_state", "state", "chat", "seq"),
    Index("outbox_by_reply", "reply_to"),
)

halt = _table("halt", _text("channel", primary_key=True), _moment("until"))
"""A whole channel must wait until then; kept, so that a restart does not go on with the storm."""

# What a person said about themselves

joining = _table(
    "joining",
    _whole("person", ForeignKey("person.id"), primary_key=True),
    _text("body"),  # what is answered, what was put off, the question that is open
    _moment("at"),
)
"""Who has not answered all questions at joining. What was answered is where it belongs; the row goes at the end."""

silence = _table(
    "silence",
    _whole("person", ForeignKey("person.id"), primary_key=True),
    _whole("reminders"),  # 0: none
    _day("away_through", nullable=True),
    _whole("nudges", server_default="0"),  # 1: told when a rest is over
)
"""What somebody does not want to hear, and what they do."""

journey = _table(
    "journey",
    _whole("person", ForeignKey("person.id"), primary_key=True),
    _text("zone"),
    _text("home"),
    _day("first"),
    _day("last", nullable=True),
    _text("state"),  # ahead, there
)
"""Another zone for some days; the agenda has a row for the change and one for the way back."""

__all__ = [
    "act",
    "address",
    "agenda",
    "chat",
    "chat_alias",
    "crew",
    "day_plan",
    "halt",
    "hold",
    "hours",
    "inbox",
    "invite",
    "joining",
    "journey",
    "lifter",
    "mark",
    "member",
    "metadata",
    "note",
    "outbox",
    "pending",
    "person",
    "plan",
    "plan_version",
    "progress",
    "question",
    "rein",
    "remark",
    "setting",
    "silence",
    "stranger",
    "target",
    "trained",
    "word",
]
