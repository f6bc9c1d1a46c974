"""Asks the coach about what waits for their word, and seldom: one question a member, and what comes later at the close.

The first report of a member that waits is asked about at once, so that who tells sessions in one go is soon settled for
good; the later ones of a week are gathered into one question at its close. Judges nothing.
"""

from collections.abc import Iterable
from datetime import date, datetime

from sqlalchemy import Connection

from bot.desk import group_words
from bot.store import challenges, contest, outbox, people
from bot.store.challenges import Open
from bot.store.outbox import Letter
from core import due
from core.challenge.ledger import takes_part
from core.model.challenge import Challenge, DayDone, Record


def ask(conn: Connection, found: Open, now: datetime, *, closing: bool) -> bool:
    """Ask what is to be asked now; gives whether anything waits for the coach's word. ``closing``: a week is over."""
    words = challenges.words(conn, found.id)
    waits = False
    for record in contest.records(conn, found):
        who = record.entrant.who
        open_ = list(waiting_in(found.noun, record))
        waits = waits or bool(open_)
        fresh = [(on, exercise) for on, exercise in open_ if exercise not in words.get((who, on), {})]
        first = not any(person == who for person, _ in words)
        if fresh and (closing or first):
            for on, exercise in fresh:
                challenges.ask(conn, found.id, who, on, exercise)
            put(conn, found, who, now)
            whole = [on for on, exercise in fresh if not exercise]
            if first and whole:
                _tell(conn, found, who, whole[0], now)
    return waits


def _tell(conn: Connection, found: Open, who: int, on: date, now: datetime) -> None:
    """Tell a member, once and alone, why a session is not in the count yet, and how the next ones are at once."""
    if due.is_quiet(now, people.profile(conn, who)):
        return
    voice = group_words.own_voice(conn, people.get(conn, who))
    text = voice.say("group.told", title=found.noun.title, day=f"{voice.weekday(on)} {voice.date(on)}")
    outbox.queue(conn, Letter(text, kind="summary", person=who), now)


def put(conn: Connection, found: Open, who: int, now: datetime) -> None:
    """One question about all of a member's reports that were asked about and wait."""
    entrant = challenges.entrant_of(conn, found.id, who)
    reports = challenges.still_waiting(conn, found.id, who)
    if entrant is not None and reports:
        own = people.get(conn, who).coach == found.coach
        letter = group_words.ask(group_words.voice(found), found, entrant.shown, reports, own=own)
        outbox.queue(conn, letter, now)


def waiting_in(challenge: Challenge, record: Record) -> Iterable[tuple[date, str]]:
    """What of a member waits and would count: day and exercise, "" for a session as a whole."""
    for day in record.days:
        if challenge.week_of(day.on) is not None and takes_part(record, day):
            yield from ((day.on, exercise) for exercise in _waiting_on(challenge, day))


def _waiting_on(challenge: Challenge, day: DayDone) -> list[str]:
    if day.held or day.word == "no":
        return []
    whole = [""] if day.word == "waits" else []
    exercises = () if challenge.counts == "sessions" else day.attempts
    return whole + [one.exercise for one in exercises if one.word == "waits"]
