"""What to do next, why, and what to watch."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from core.model.facts import Because, Careful, Explained, NextTime, PlanDone, Stepped, Upcoming
from core.model.target import TargetSet, Verdict
from core.say import figures
from core.say.reasons import caution, reason
from core.say.render import Voice, capital


def _upcoming(voice: Voice, fact: Upcoming) -> list[str]:
    lines = [_fresh(voice, fact) if fact.fresh else _following(voice, fact)]
    if fact.fresh:
        lines += _plates(voice, fact.plates) + _note(voice, fact.note)
    return lines


def _following(voice: Voice, fact: Upcoming) -> str:
    what = figures.asked(voice, fact.exercise, fact.step)
    key = f"next.set{'.named' if fact.named else ''}{'' if fact.step.rest_s else '.norest'}"
    rest = voice.duration(fact.step.rest_s or 0)
    return voice.say(key, rest=rest, exercise=voice.exercise(fact.exercise), n=fact.number, of=fact.of, what=what)


def _fresh(voice: Voice, fact: Upcoming) -> str:
    what = _sets_of(voice, fact.exercise, fact.step)
    heavy = figures.load(voice, fact.exercise, fact.step.load)
    sets = fact.of - fact.number + 1
    name = voice.exercise(fact.exercise)
    if heavy:
        return voice.say("next.fresh.load", exercise=name, load=heavy, sets=sets, what=what)
    return voice.say("next.fresh", exercise=name, sets=sets, what=what)


def _sets_of(voice: Voice, exercise: str, step: TargetSet, way: Verdict | None = None) -> str:
    """A target set without its load, with its rest: "8 to 10, 2 in reserve, rest 2 min"."""
    open_load = step.load is None
    words = [figures.asked(voice, exercise, step, loaded=open_load, way=way)]
    if step.rest_s:
        words.append(voice.say("target.rest", time=voice.duration(step.rest_s)))
    return voice.listed(words)


def _plates(voice: Voice, plates: tuple[float, ...] | None) -> list[str]:
    if plates is None:
        return []
    if not plates:
        return [voice.say("next.plates.none")]
    return [voice.say("next.plates", list=" + ".join(voice.number(one) for one in plates))]


def _note(voice: Voice, note: str | None) -> list[str]:
    if not note:
        return []
    if voice.coach is None:
        return [voice.say("note", note=note)]
    return [voice.say("note.of", coach=voice.coach, note=note)]


def next_time(voice: Voice, fact: NextTime) -> str:
    """What the next session of an exercise asks, as part of a line; empty when it is not to be done."""
    if not fact.sets:
        return ""
    first = fact.sets[0]
    heavy = figures.load(voice, fact.exercise, first.load)
    what = f"{len(fact.sets)} x {_sets_of(voice, fact.exercise, first, fact.way)}"
    return voice.listed([part for part in (heavy, what) if part])


def _next_time(voice: Voice, fact: NextTime) -> list[str]:
    what, name = next_time(voice, fact), voice.heading(fact.exercise)
    return [voice.say("time.again", exercise=name, what=what) if what else voice.say("time.stop", exercise=name)]


def _because(voice: Voice, fact: Because) -> list[str]:
    return [voice.say("why", text=capital(reason(voice, one))) for one in fact.reasons[:1]]


def _explained(voice: Voice, fact: Explained) -> list[str]:
    text = capital(reason(voice, fact.reason))
    if not fact.sources:
        return [voice.say("why.line", text=text)]
    return [voice.say("why.source", text=text, source="; ".join(fact.sources))]


def _careful(voice: Voice, fact: Careful) -> list[str]:
    return [voice.say("careful", text=caution(voice, fact.text, fact.slots))]


def _stepped(voice: Voice, fact: Stepped) -> list[str]:
    return [voice.say(f"step.{fact.way}")]


def _plan_done(voice: Voice, fact: PlanDone) -> list[str]:
    del fact
    return [voice.say("next.plan_done")]


SAID: Final[Mapping[type, Callable[[Voice, Any], list[str]]]] = {
    Upcoming: _upcoming,
    NextTime: _next_time,
    Because: _because,
    Explained: _explained,
    Careful: _careful,
    Stepped: _stepped,
    PlanDone: _plan_done,
}
