"""What a challenge's desk says beside the posts, and in which language. Scores nothing and changes nothing."""

from collections.abc import Sequence
from datetime import UTC, date
from zoneinfo import ZoneInfo

from sqlalchemy import Connection

from bot.store import people
from bot.store.challenges import Open, Waiting
from bot.store.outbox import Letter
from bot.store.people import Person
from core.challenge.spoken import Opening
from core.evidence.numbers import NUMBERS
from core.model.challenge import Challenge
from core.model.outcome import Button
from core.say.group import counting_from
from core.say.render import Voice

ASKED = ("yes", "always", "no")
"""The coach's answers, in the order of the buttons; "always" is for sessions told in one go alone."""


def voice(found: Open) -> Voice:
    """How a group is spoken to, and its coach about it: in the coach's language and zone."""
    return Voice("", ZoneInfo(found.zone), language=found.language)


def own_voice(conn: Connection, who: Person | None) -> Voice:
    """How someone is spoken to who is in no challenge yet; one unknown to us in the first language."""
    if who is None:
        return Voice("", UTC)
    profile = people.profile(conn, who.id)
    return Voice("", profile.zone, language=profile.language)


def trouble(speaks: Voice, wanted: Opening) -> str:
    """What is wrong with an opening, and what now."""
    row = NUMBERS["challenge.weeks"]
    return speaks.say(f"group.{wanted.trouble}", low=int(row.low), high=int(row.high))


def joined(speaks: Voice, noun: Challenge, shown: str, today: date) -> str:
    """The answer to a join."""
    return counting_from(speaks, noun, shown, noun.starts - today)


def ask(speaks: Voice, found: Open, shown: str, reports: Sequence[Waiting], *, own: bool) -> Letter:
    """The question to the coach about a member's reports that wait, the newest last.

    ``own``: a client of theirs, whose exercises they know. An answer is for what is listed: it names the newest of it.
    """
    lines = [_line(speaks, one, own=own) for one in reports]
    count = len(reports)
    text = speaks.say("group.ask", count, title=found.noun.title, name=shown, n=count, list="\n".join(lines))
    offered = [word for word in ASKED if word != "always" or not all(one.exercise for one in reports)]
    buttons = tuple(
        Button(answer(speaks, word, shown, count), f"c:{word}:{max(one.id for one in reports)}") for word in offered
    )
    return Letter(text, kind="summary", person=found.coach, buttons=buttons)


def answer(speaks: Voice, word: str, shown: str, count: int) -> str:
    """What the coach presses or types in answer to a question about so many reports."""
    return speaks.say(f"group.ask.{word}", count, name=shown)


def _line(speaks: Voice, one: Waiting, *, own: bool) -> str:
    kind = "beyond" if one.exercise else "told"
    exercise = speaks.exercise(one.exercise) if own and one.exercise else speaks.say("group.ask.some")
    return speaks.say(f"group.ask.{kind}", exercise=exercise, day=f"{speaks.weekday(one.on)} {speaks.date(one.on)}")
