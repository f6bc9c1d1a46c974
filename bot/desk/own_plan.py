"""The plan of someone who trains without a coach: written by themselves, read back, and in force from the next day.

A plan is read with core.notation; what is not understood is asked about and nothing is changed.
"""

import re
from dataclasses import replace
from typing import Final

from bot.desk import group_words
from bot.desk.rooms import Case
from bot.store import agenda, coaching, people, plans
from bot.store.people import Chat, Person
from core import due
from core.notation.read import read_plan
from core.notation.write import write_plan
from core.read.finding import find

_SAID: Final = re.compile(r"/?(?:my\s+)?plan\b\s*:?\s*", re.IGNORECASE)


def heard(case: Case, who: Person, chat: Chat, text: str) -> bool:
    """Whether it was a plan of one's own, or a wish to see it, and was answered."""
    said = _SAID.match(text)
    if said is None or who.coach is not None or not who.lifts or not case.private:
        return False
    profile = people.profile(case.conn, who.id)
    voice = group_words.own_voice(case.conn, who)
    lines = text[said.end() :].strip()
    if not lines:
        plan = plans.weekly(case.conn, who.id)
        case.reply(write_plan(plan, voice.exercise) if plan.days else voice.say("own.plan.how"), chat)
        return True
    reading = read_plan(lines, find, case.now.astimezone(profile.zone).date())
    if reading.unread or not reading.plan.days:
        unread = "\n".join(one.text for one in reading.unread) or lines.split("\n")[0]
        case.reply(voice.say("own.plan.unread", lines=unread), chat)
        return True
    named = (replace(day, title=day.title or voice.say(f"weekday.{day.weekday}")) for day in reading.plan.days)
    plan = replace(reading.plan, days=tuple(named))
    coaching.put_in_force(case.conn, who.id, plan, who.id, case.now, "written")
    for change in due.ahead(profile, plan, case.now):
        agenda.change(case.conn, who.id, change)
    case.reply(voice.say("own.plan.kept", plan=write_plan(plan, voice.exercise)), chat)
    return True
