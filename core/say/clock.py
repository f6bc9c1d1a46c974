"""What the clock brings: a moved session, a missed one, a week in numbers."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from core.model.facts import Missed, Moved, Weekly
from core.say.render import Voice
from core.say.session import steps


def _moved(voice: Voice, fact: Moved) -> list[str]:
    if fact.to is not None:
        return [voice.say("moved", day=voice.weekday(fact.to))]
    return [voice.say("moved.travelling" if fact.travelling else "moved.off")]


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


SAID: Final[Mapping[type, Callable[[Voice, Any], list[str]]]] = {Moved: _moved, Missed: _missed, Weekly: _weekly}
