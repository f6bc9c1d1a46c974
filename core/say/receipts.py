"""What was understood and what was changed, in one line each."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final

from core.model.acts import SetAct
from core.model.facts import Amended, Erased, NoSuchSet, Recorded, Undone, Weighed
from core.say import figures
from core.say.render import Voice

LISTED: Final = 4
"""Sets named one by one when they are taken out; more are only counted."""


def _recorded(voice: Voice, fact: Recorded) -> list[str]:
    line = figures.summary(voice, fact.exercise, fact.sets) + "."
    if fact.edited:
        line = voice.say("kept.edited", line=line)
    if fact.planned:
        line = voice.say("kept.planned", line=line)
    if fact.ago == 0:
        return [line]
    if fact.ago == -1:
        return [voice.say("kept.ago.1", line=line)]
    return [voice.say("kept.ago.n", day=voice.weekday(fact.on), line=line)]


def _amended(voice: Voice, fact: Amended) -> list[str]:
    """The set as it is now, and what of it was otherwise."""
    exercise = fact.after.exercise or ""
    slots = {"exercise": voice.heading(exercise), "n": fact.number, "after": figures.short(voice, fact.after)}
    if fact.before == fact.after:
        return [voice.say("amended.same", **slots)]
    was = figures.differing(voice, fact.before, fact.after)
    return [voice.say("amended", before=voice.listed(was), **slots) if was else voice.say("amended.new", **slots)]


def _taken(voice: Voice, sets: Sequence[SetAct]) -> str:
    return voice.listed([f"{voice.exercise(one.exercise or '')} {figures.short(voice, one)}" for one in sets])


def _erased(voice: Voice, fact: Erased) -> list[str]:
    if len(fact.sets) > LISTED:
        return [voice.say("erased.many", len(fact.sets), n=len(fact.sets))]
    return [voice.say("erased", sets=_taken(voice, fact.sets))]


def _undone(voice: Voice, fact: Undone) -> list[str]:
    lines = [voice.say("undone.again", sets=_taken(voice, fact.again))] if fact.again else []
    if len(fact.again) > LISTED:
        lines = [voice.say("undone.again.many", n=len(fact.again))]
    if len(fact.sets) > LISTED:
        return [voice.say("erased.many", len(fact.sets), n=len(fact.sets)), *lines]
    taken = tuple(one for one in fact.sets if one not in fact.before)
    if taken:
        return [voice.say("undone", sets=_taken(voice, taken)), *lines]
    return lines or [voice.say("undone.others")]


def _no_such(voice: Voice, fact: NoSuchSet) -> list[str]:
    if fact.exercise is None:
        return [voice.say("nosuch.none")]
    return [voice.say("nosuch", fact.have, exercise=voice.exercise(fact.exercise), n=fact.have)]


def _weighed(voice: Voice, fact: Weighed) -> list[str]:
    return [voice.say("weighed", kg=voice.mass(fact.kg))]


SAID: Final[Mapping[type, Callable[[Voice, Any], list[str]]]] = {
    Recorded: _recorded,
    Amended: _amended,
    Erased: _erased,
    Undone: _undone,
    NoSuchSet: _no_such,
    Weighed: _weighed,
}
