"""How it goes: the course of one exercise, and one's own week, in words and as a picture."""

import json
from datetime import datetime, timedelta
from typing import Final

from bot.desk import reviewing
from bot.desk.oneself import Oneself
from bot.recipes import WEEK
from bot.store.outbox import Recipe
from core.evidence.exercises import EXERCISES
from core.join.wishes import CourseOf
from core.model.course import MuscleSets, WeekView
from core.model.week import WeekFacts
from core.read.finding import find, nearest
from core.review.week import week_of
from core.say import progress as say_progress

_CHOICES: Final = 4
_DONE_BY: Final = timedelta(hours=3)
"""A session this long past its time is over. Choice of ours."""


def course(me: Oneself, wish: CourseOf) -> list[str] | None:
    """Asked about one exercise: the answer is made after this transaction, because it looks at every session."""
    known = _exercises(me, wish.said)
    if not known:
        near = [me.voice.exercise(one) for one in nearest(wish.said)]
        return [me.say("about.course.near", list=me.voice.listed(near))] if near else None
    if len(known) > 1:
        names = me.voice.listed([me.voice.exercise(one) for one in known[:_CHOICES]])
        return [me.say("about.course.which", list=names)]
    body = {"who": me.who.id, "exercise": known[0], "today": (me.today + timedelta(days=1)).isoformat()}
    me.make("", Recipe("course.txt", "course", json.dumps(body)))
    return []


def _exercises(me: Oneself, said: str) -> tuple[str, ...]:
    """What the words may mean: of several, the ones with a history or a place in the plan."""
    found = find(said) or (find(said.removesuffix("s")) if said.endswith("s") else ())
    found = found or tuple(one for one in EXERCISES if me.voice.exercise(one).casefold() == said)
    if len(found) < 2:
        return found
    record = reviewing.record_of(me.conn, me.who.id, me.case.now, me.case.parts.folding)
    mine = [one for one in found if record is not None and one in record.sessions]
    return tuple(mine) or found


def week(me: Oneself) -> list[str]:
    """The last seven days, today among them."""
    record = reviewing.record_of(me.conn, me.who.id, me.case.now, me.case.parts.folding)
    if record is None:
        return [me.say("week.none", first=me.voice.date(me.today), last=me.voice.date(me.today))]
    local = me.case.now.astimezone(me.profile.zone)
    day = record.plan.on(me.today.weekday())
    to_come = day is not None and local.replace(tzinfo=None) < datetime.combine(me.today, day.at) + _DONE_BY
    facts = week_of(record, me.today, still_to_come=to_come)
    me.reply(say_progress.week(me.voice, facts))
    if facts.sets:
        view = _view(me, facts)
        me.make(
            say_progress.week_caption(me.voice, facts),
            Recipe("week.png", "week_picture", WEEK.dump_json(view).decode()),
        )
    return []


def _view(me: Oneself, facts: WeekFacts) -> WeekView:
    rows = tuple(MuscleSets(say_progress.muscle(me.voice, one.muscle), one.sets, *one.asked) for one in facts.muscles)
    title = me.say("about.week.title", first=me.voice.date(facts.first), last=me.voice.date(facts.last))
    return WeekView(
        title, facts.kept, facts.planned, rows, say_progress.week_words(me.voice, title, facts.kept, facts.planned)
    )
