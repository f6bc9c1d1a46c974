"""A challenge's posts in their time: opening, standings through the week, each week's close, the end. Silent otherwise.

One look at one challenge is one transaction. What is posted is core's; when, is decided by rows of the challenge.
"""

import json
from datetime import datetime, time, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from sqlalchemy import Connection

from bot.desk import group_words
from bot.desk.rooms import Parts
from bot.store import challenges, contest, outbox, people
from bot.store.challenges import Open
from bot.store.outbox import Letter, Recipe
from core import due
from core.challenge.standings import table
from core.model.challenge import DayDone, Table
from core.model.outcome import Button
from core.say import group as says

LOOK_EVERY: Final = timedelta(minutes=15)
"""How often a challenge is looked at; the week's standings change once a day and member at most."""

CLOSE_AT: Final = time(10, 0)
"""A week closes on the morning after, and not before its last day is over for every member. Choice of ours."""


def announce(conn: Connection, parts: Parts, found: Open, now: datetime) -> None:
    """The opening, with what to press."""
    voice, noun = group_words.voice(found), found.noun
    link = parts.link(found.door) if found.door else None
    if noun.teams:
        joins = [
            Button(voice.say("group.button.join.team", team=one), f"c:join:{found.id}:{at}")
            for at, one in enumerate(noun.teams)
        ]
    else:
        joins = [Button(voice.say("group.button.join"), f"c:join:{found.id}")]
    _post(conn, found, says.opening(voice, noun, link), now, tuple(joins))


def end(conn: Connection, found: Open, now: datetime) -> None:
    """It ends before its time, on the coach's word."""
    challenges.mark(conn, found.id, state="ended", door=None)
    _post(conn, found, group_words.voice(found).say("group.cancelled", title=found.noun.title), now)


def now_standing(conn: Connection, parts: Parts, found: Open, now: datetime) -> str:
    """The standings as they are now, for who asks."""
    _bring_up(conn, parts, found, now)
    week = min(found.closed + 1, found.noun.weeks)
    made = table(found.noun, contest.records(conn, found), week)
    return says.standings(group_words.voice(found), found.noun, made, closed=False)


def look(conn: Connection, parts: Parts, key: int, now: datetime) -> None:
    """Do what is due in one challenge: ask the coach, close weeks, keep the standings' post up to date."""
    found = challenges.get(conn, key)
    challenges.mark(conn, key, looked=now)
    if found.state != "on" or not challenges.is_active(conn, found.chat):
        return
    coach = people.profile(conn, found.coach)
    if due.is_quiet(now, coach):
        return
    while found.closed < found.noun.weeks and _close_of(conn, found) <= now:
        _bring_up(conn, parts, found, now)
        made = table(found.noun, contest.records(conn, found), found.closed + 1)
        if made.week == found.noun.weeks:
            _finish(conn, found, made, now)
            return
        _close(conn, found, made, now)
        found = challenges.get(conn, key)
    _bring_up(conn, parts, found, now)
    _keep_posted(conn, found, now)


def _finish(conn: Connection, found: Open, made: Table, now: datetime) -> None:
    """The last post. Its picture is drawn later, elsewhere, from the table as it is then: a recipe holds no name."""
    contest.seal(conn, found, found.noun.last)
    challenges.mark(conn, found.id, state="over", closed=found.noun.weeks, post=None, said=None, door=None)
    if not made.standings:
        return
    text = says.final(group_words.voice(found), found.noun, made)
    recipe = Recipe("standings.png", "standings", json.dumps({"challenge": found.id}))
    outbox.queue(conn, Letter(text, kind="post", chat=found.chat, thread=found.thread, recipe=recipe), now)


def _bring_up(conn: Connection, parts: Parts, found: Open, now: datetime) -> None:
    """Make the days that are over, and ask the coach about what waits."""
    shown = {one.who: (one.shown, trusted) for one, trusted in challenges.entrants(conn, found.id)}
    for who, day in contest.bring_up(conn, found, parts.folding, now):
        name, trusted = shown[who]
        for exercise in _waits(day, trusted=trusted):
            open_ = [one for one in challenges.still_waiting(conn, found.id, who) if not one.exercise]
            number = challenges.ask(conn, found.id, who, day.on, exercise)
            asked = challenges.waiting(conn, number) if number is not None else None
            if asked is not None and (exercise or not open_):  # of sessions told in one go, one question at a time
                own = people.get(conn, who).coach == found.coach
                letter = group_words.ask(group_words.voice(found), found, name, asked, own=own)
                outbox.queue(conn, letter, now)


def _waits(day: DayDone, *, trusted: bool) -> list[str]:
    whole = [""] if day.word == "waits" and not trusted else []
    return whole + [one.exercise for one in day.attempts if one.word == "waits"]


def _close_of(conn: Connection, found: Open) -> datetime:
    """When the next week closes."""
    after = found.noun.starts + timedelta(weeks=found.closed + 1)
    zones = {people.profile(conn, one.who).zone for one, _ in challenges.entrants(conn, found.id) if one.is_in(after)}
    over = [due.instant(after, time(0), zone) for zone in zones]
    return max([due.instant(after, CLOSE_AT, ZoneInfo(found.zone)), *over])


def _close(conn: Connection, found: Open, made: Table, now: datetime) -> None:
    contest.seal(conn, found, found.noun.starts + timedelta(weeks=made.week) - timedelta(days=1))
    challenges.mark(conn, found.id, closed=made.week, post=None, said=None)
    if made.standings:
        _post(conn, found, says.standings(group_words.voice(found), found.noun, made, closed=True), now)


def _keep_posted(conn: Connection, found: Open, now: datetime) -> None:
    """The week's standings in one message: sent when there is something to say, written over when it changes."""
    records = contest.records(conn, found)
    week = found.closed + 1
    if not any(found.noun.week_of(day.on) == week for record in records for day in record.days):
        return
    text = says.standings(group_words.voice(found), found.noun, table(found.noun, records, week), closed=False)
    if text == found.said:
        return
    letter = Letter(text, kind="post", chat=found.chat, thread=found.thread)
    post = outbox.queue(conn, letter, now) if found.post is None else outbox.rewrite(conn, found.post, letter, now)
    challenges.mark(conn, found.id, post=post, said=text)


def _post(conn: Connection, found: Open, text: str, now: datetime, buttons: tuple[Button, ...] = ()) -> None:
    outbox.queue(conn, Letter(text, kind="post", buttons=buttons, chat=found.chat, thread=found.thread), now)
