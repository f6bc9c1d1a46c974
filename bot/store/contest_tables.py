"""The tables of challenges. Rows, no logic; the same metadata and manners as the other tables."""

from sqlalchemy import ForeignKey, Index, PrimaryKeyConstraint, UniqueConstraint

from bot.store.table_parts import day as _day
from bot.store.table_parts import moment as _moment
from bot.store.table_parts import table as _table
from bot.store.table_parts import text as _text
from bot.store.table_parts import whole as _whole

challenge = _table(
    "challenge",
    _whole("id", primary_key=True),
    _whole("chat", ForeignKey("chat.id")),  # the group's
    _whole("coach", ForeignKey("person.id")),
    _text("title"),
    _day("starts"),
    _whole("weeks"),
    _text("counts"),  # steps, sessions, both
    _text("teams"),
    _text("zone"),
    _whole("thread", nullable=True),
    _text("state"),  # new (not posted yet), on, over, ending (not said yet), ended
    _whole("closed"),  # weeks that are closed
    _text("door", nullable=True),  # the code by which people without a coach come in
    _whole("post", nullable=True),  # this week's standings, in the outbox
    _text("said", nullable=True),  # what that post says
    _moment("looked", nullable=True),
    Index("challenge_by_chat", "chat", "state"),
)

entrant = _table(
    "entrant",
    _whole("challenge", ForeignKey("challenge.id")),
    _whole("person", ForeignKey("person.id")),
    _text("shown"),
    _text("team", nullable=True),
    _whole("trusted"),  # 1: the coach lets sessions count that are told in one go
    PrimaryKeyConstraint("challenge", "person"),
    Index("entrant_by_person", "person"),
)

stay = _table(
    "stay",
    _whole("id", primary_key=True),
    _whole("challenge", ForeignKey("challenge.id")),
    _whole("person", ForeignKey("person.id")),
    _text("kind"),  # in, pause
    _day("since"),
    _day("until", nullable=True),
    Index("stay_by_challenge", "challenge", "person"),
)

contest_day = _table(
    "contest_day",
    _whole("challenge", ForeignKey("challenge.id")),
    _whole("person", ForeignKey("person.id")),
    _day("on"),
    _text("body"),
    _text("made_of"),  # a digest of the acts, targets and plan that it was made of
    _whole("sealed"),  # 1: its week is closed
    PrimaryKeyConstraint("challenge", "person", "on"),
)
"""What a member did on a day, as facts. Made anew from acts while its week is open; as it was from the close on."""

verdict = _table(
    "verdict",
    _whole("id", primary_key=True),
    _whole("challenge", ForeignKey("challenge.id")),
    _whole("person", ForeignKey("person.id")),
    _day("on"),
    _text("exercise"),  # empty: the whole session
    _text("word"),  # waits, yes, no
    UniqueConstraint("challenge", "person", "on", "exercise"),
)
"""The coach's word on what was told."""
