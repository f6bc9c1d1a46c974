"""What the clock brings: a moved session, a missed one, a week in numbers."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from core.model.facts import DayTaken, Missed, Moved, Weekly
from core.say.render import Voice
from core.say.session import steps


def _moved(voice: Voice, fact: Moved) -> list[str]:
    if fact.to is not None and fact.at is not None:
        return [voice.say("moved", day=voice.weekday(fact.to), time=voice.clock(fact.at))]
    key = "moved.travelling" if fact.travelling else "moved.off"
    if fact.on is not None:
        return [voice.say(f"{key}.day", day=voice.weekday(fact.on))]
    return [voice.say(key)]


def _taken(voice: Voice, fact: DayTaken) -> list[str]:
    return [voice.say("moved.taken", day=voice.weekday(fact.on), title=fact.title or voice.say("list.untitled"))]


def _missed(voice: Voice, fact: Missed) -> list[str]:
    return [voice.say("missed", title=fact.title or voice.say("list.untitled"), day=voice.weekday(fact.on))]


def _weekly(voice: Voice, fact: Weekly) -> list[str]:
    key = "week.head" if fact.planned else "week.head.unplanned"
    key = key if fact.sets else "week.none"
    span = {"first": voice.date(fact.first), "last": voice.date(fact.last)}
    sets = voice.say("count.none", fact.sets, n=fact.sets)
    lines = [voice.say(key, fact.sessions, **span, kept=fact.sessions, planned=fact.planned, sets=sets)]
    if fact.steps:
        lines.append(voice.say("week.steps", len(fact.steps), n=len(fact.steps), list=steps(voice, fact.steps)))
    return lines


SAID: Final[Mapping[type, Callable[[Voice, Any], list[str]]]] = {
    Moved: _moved,
    DayTaken: _taken,
    Missed: _missed,
    Weekly: _weekly,
}
