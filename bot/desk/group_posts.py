"""A challenge's posts in their time: opening, standings through the week, each week's close, the end. Silent otherwise.

One look at one challenge is one transaction. What is posted is core's; when, is decided by rows of the challenge.
"""

import json
from collections.abc import Sequence
from dataclasses import replace
from datetime import datetime, time, timedelta
from typing import Final
from zoneinfo import ZoneInfo

from sqlalchemy import Connection

from bot.desk import group_asking, group_words
from bot.desk.rooms import Parts
from bot.store import challenges, contest, outbox, people
from bot.store.challenges import Open
from bot.store.outbox import Letter, Recipe
from core import due
from core.challenge.standings import table
from core.model.challenge import Record
from core.model.outcome import Button
from core.say import group as says

LOOK_EVERY: Final = timedelta(minutes=15)
"""How often a challenge is looked at; the week's standings change once a day and member at most."""

ANSWER_IN: Final = timedelta(days=1)
"""The end waits so long for the coach's word on what is not settled. Choice of ours."""

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
    challenges.mark(conn, found.id, state="on")
    _post(conn, found, says.opening(voice, noun, link), now, tuple(joins))


def end(conn: Connection, found: Open, now: datetime, *, at_once: bool) -> None:
    """It ends before its time, on the coach's word; said when the group is awake, unless ``at_once``."""
    if found.state != "new" and not at_once and is_quiet(conn, found, now):
        challenges.mark(conn, found.id, state="ending", door=None, looked=None)
        return
    challenges.mark(conn, found.id, state="ended", door=None)
    if found.state != "new":  # what nobody was told of ends without a word
        _post(conn, found, group_words.voice(found).say("group.cancelled", title=found.noun.title), now)


def is_quiet(conn: Connection, found: Open, now: datetime) -> bool:
    """Whether the group is to be left alone: the coach's quiet hours, in the group's zone."""
    return due.is_quiet(now, replace(people.profile(conn, found.coach), zone=ZoneInfo(found.zone)))


def now_standing(conn: Connection, parts: Parts, found: Open, now: datetime) -> str:
    """The standings as they are now, for who asks."""
    contest.bring_up(conn, found, parts.folding, now)
    week = min(found.closed + 1, found.noun.weeks)
    made = table(found.noun, contest.records(conn, found), week)
    return says.standings(group_words.voice(found), found.noun, made, closed=False)


def look(conn: Connection, parts: Parts, key: int, now: datetime) -> None:
    """Do what is due in one challenge: open or end it, ask the coach, close weeks, keep the standings up to date."""
    found = challenges.get(conn, key)
    challenges.mark(conn, key, looked=now)
    if not challenges.is_active(conn, found.chat) or is_quiet(conn, found, now):
        return
    if found.state == "ending":
        end(conn, found, now, at_once=True)
        return
    if found.state == "new":
        announce(conn, parts, found, now)
    contest.bring_up(conn, found, parts.folding, now)
    over = _weeks_over(conn, found, now)
    waits = group_asking.ask(conn, found, now, closing=over > found.closed)
    if over == found.noun.weeks and not (waits and now < _close_of(conn, found, over) + ANSWER_IN):
        _finish(conn, found, now)
        return
    over = min(over, found.noun.weeks - 1)
    if over > found.closed:
        _close(conn, found, over, now)
        found = challenges.get(conn, key)
    _keep_posted(conn, found, now)


def _finish(conn: Connection, found: Open, now: datetime) -> None:
    """The last post. Its picture is drawn later, elsewhere, from the table as it is then: a recipe holds no name."""
    made = table(found.noun, contest.records(conn, found), found.noun.weeks)
    contest.seal(conn, found, found.noun.last)
    challenges.mark(conn, found.id, state="over", closed=found.noun.weeks, post=None, said=None, door=None)
    if not made.standings:
        return
    text = says.final(group_words.voice(found), found.noun, made)
    recipe = Recipe("standings.png", "standings", json.dumps({"challenge": found.id}))
    outbox.queue(conn, Letter(text, kind="post", chat=found.chat, thread=found.thread, recipe=recipe), now)


def _weeks_over(conn: Connection, found: Open, now: datetime) -> int:
    """How many weeks are to be closed by now, those that are closed already among them."""
    weeks = range(found.closed + 1, found.noun.weeks + 1)
    return max((week for week in weeks if _close_of(conn, found, week) <= now), default=found.closed)


def _close_of(conn: Connection, found: Open, week: int) -> datetime:
    """When a week closes."""
    after = found.noun.starts + timedelta(weeks=week)
    zones = {people.profile(conn, one.who).zone for one, _ in challenges.entrants(conn, found.id) if one.is_in(after)}
    over = [due.instant(after, time(0), zone) for zone in zones]
    return max([due.instant(after, CLOSE_AT, ZoneInfo(found.zone)), *over])


def _close(conn: Connection, found: Open, week: int, now: datetime) -> None:
    """Close the weeks up to that one; of several (the service was away) only the newest is posted."""
    records = contest.records(conn, found)
    contest.seal(conn, found, found.noun.starts + timedelta(weeks=week) - timedelta(days=1))
    challenges.mark(conn, found.id, closed=week, post=None, said=None)
    if found.post is not None or _tells_more(found, records, week):
        made = table(found.noun, records, week)
        _post(conn, found, says.standings(group_words.voice(found), found.noun, made, closed=True), now)


def _keep_posted(conn: Connection, found: Open, now: datetime) -> None:
    """The week's standings in one message: sent when there is something to say, written over when it changes."""
    records = contest.records(conn, found)
    week = found.closed + 1
    if found.post is None and not _tells_more(found, records, week):
        return
    text = says.standings(group_words.voice(found), found.noun, table(found.noun, records, week), closed=False)
    if text == found.said:
        return
    letter = Letter(text, kind="post", chat=found.chat, thread=found.thread)
    post = outbox.queue(conn, letter, now) if found.post is None else outbox.rewrite(conn, found.post, letter, now)
    challenges.mark(conn, found.id, post=post, said=text)


def _tells_more(found: Open, records: Sequence[Record], week: int) -> bool:
    """Whether there was any chance since the last close: else there is nothing to say."""
    before, now = (
        [(one.who, one.points, one.kept, one.planned) for one in sorted(table_.standings, key=lambda one: one.who)]
        for table_ in (table(found.noun, records, found.closed), table(found.noun, records, week))
    )
    return before != now


def _post(conn: Connection, found: Open, text: str, now: datetime, buttons: tuple[Button, ...] = ()) -> None:
    outbox.queue(conn, Letter(text, kind="post", buttons=buttons, chat=found.chat, thread=found.thread), now)
