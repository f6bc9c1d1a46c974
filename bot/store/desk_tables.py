"""The tables of the coach's desk. Rows, no logic; the others are in ``tables``, which hands these on."""

from sqlalchemy import Column, ForeignKey, Index, PrimaryKeyConstraint

from bot.store.columns import Real
from bot.store.table_parts import day, moment, table, text, whole

plan_version = table(
    "plan_version",
    whole("id", primary_key=True),
    whole("person", ForeignKey("person.id")),
    whole("by", ForeignKey("person.id"), nullable=True),  # who put it in force
    moment("at"),
    text("what"),  # written, copied, put back, by hand
    text("body"),
    Index("plan_version_by_person", "person", "id"),
)
"""Every plan that was ever in force, so that each change has its who and when and can be taken back."""

question = table(
    "question",
    whole("id", primary_key=True),
    whole("asks", ForeignKey("person.id")),  # who may answer
    whole("about", ForeignKey("person.id"), nullable=True),
    text("kind"),
    text("body"),
    moment("at"),
    moment("until", nullable=True),
    text("state"),  # open, yes, no, passed
    Index("question_by_asks", "asks", "state"),
    Index("question_by_about", "about", "kind", "state"),
)
"""What waits for a yes: plans, words to many, hand-overs, targets of clients whose coach is asked first."""

rein = table(
    "rein",
    whole("id", primary_key=True),
    whole("person", ForeignKey("person.id")),
    text("kind"),  # ask, hold, no_heavier, ways, fixed
    text("exercise", nullable=True),
    text("part", nullable=True),
    text("body", nullable=True),
    day("until", nullable=True),
    whole("by", ForeignKey("person.id")),
    moment("at"),
    moment("ended", nullable=True),
    Index("rein_by_person", "person", "ended"),
)
"""Targets under the coach's hand."""

remark = table(
    "remark",
    whole("id", primary_key=True),
    whole("by", ForeignKey("person.id")),
    whole("about", ForeignKey("person.id")),
    moment("at"),
    text("text"),
    Index("remark_by_about", "about"),
)
"""A coach's private notes; their client never sees them."""

word = table(
    "word",
    whole("id", primary_key=True),
    whole("by", ForeignKey("person.id")),
    whole("to", ForeignKey("person.id")),
    moment("at"),
    text("text"),
    whole("answered"),  # 1: the next words of the one told were passed on as an answer
    Index("word_by_to", "to", "id"),
)
"""Words between people."""

hours = table(
    "hours",
    whole("person", ForeignKey("person.id"), primary_key=True),
    text("digest_at"),
    whole("week_day"),
    text("week_at"),
)
"""When a coach wants the morning word and the weeks."""

mark = table(
    "mark",
    whole("person", ForeignKey("person.id")),
    text("exercise"),
    day("on"),
    Column("estimate", Real, nullable=False),
    PrimaryKeyConstraint("person", "exercise", "on"),
)
"""What the estimate was at the end of a week, to compare later ones with."""
