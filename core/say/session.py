"""A session as a list, its changes, and its recap."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from core.model.facts import Line, Listed, Recapped, Skipped, Stepped, Swapped
from core.model.target import TargetSet
from core.say import figures
from core.say.coming import next_time
from core.say.render import Voice, capital

LINES: Final = 5
"""A session is listed in five lines, its head among them. Design (the clock)."""

RECAP_CHARS: Final = 900
"""A recap is shorter than this. Design (the session)."""


def _listed(voice: Voice, fact: Listed) -> list[str]:
    title = fact.title or voice.say("list.untitled")
    if fact.started or fact.at is None:
        head = voice.say("list.started", title=title, n=fact.minutes)
    else:
        day = {} if fact.on is None else {"day": voice.weekday(fact.on)}
        key = "list.head.day" if day else "list.head"
        head = voice.say(key, title=title, time=voice.clock(fact.at), n=fact.minutes, **day)
    room = LINES - 1 - bool(fact.waits)
    shown = fact.lines if len(fact.lines) <= room else fact.lines[: room - 1]
    lines = [_line(voice, one) for one in shown]
    left = [voice.exercise(one.exercise) for one in fact.lines[len(shown) :]]
    waits = [_waits(voice, fact.waits)] if fact.waits else []
    return [head, *lines, *([_more(voice, left)] if left else []), *waits]


def _waits(voice: Voice, names: tuple[str, ...]) -> str:
    named = [voice.exercise(one) for one in names]
    return voice.say("list.waits", list=capital(voice.listed(named)), one=named[0])


def _more(voice: Voice, names: list[str]) -> str:
    return voice.say("list.more", list=voice.listed(names))


def _line(voice: Voice, one: Line) -> str:
    if one.target is None or not one.target.sets:
        count = figures.span(voice, one.exercise, one.reps)
        return voice.say(
            "list.line", exercise=voice.heading(one.exercise), load="", sets=one.sets, count=count, extras=""
        )
    step = one.target.sets[0]
    heavy = figures.load(voice, one.exercise, step.load)
    extras = figures.extras(voice, one.exercise, _listed_only(step), one.target.way)
    line = voice.say(
        "list.line",
        exercise=voice.heading(one.exercise),
        load=f" {heavy}" if heavy else "",
        sets=len(one.target.sets),
        count=figures.span(voice, one.exercise, step.reps),
        extras="".join(f", {word}" for word in extras),
    )
    if one.done >= len(one.target.sets):
        return voice.say("list.done", line=line)
    return voice.say("list.part", line=line, n=one.done) if one.done else line


def _listed_only(step: TargetSet) -> TargetSet:
    """What a list says of a set: not its reserve, which the set's own line says."""
    return TargetSet(step.load, step.reps, None, step.tempo, step.rest_s, step.range)


def _recapped(voice: Voice, fact: Recapped) -> list[str]:
    total = sum(len(sets) for _, sets in fact.done)
    if not total:
        return [voice.say("recap.nothing")]
    lines = [voice.say("recap.silence" if fact.by_silence else "recap.head", total, n=total)]
    lines += [figures.brief(voice, exercise, sets) + "." for exercise, sets in fact.done]
    if fact.steps:
        lines.append(voice.say("recap.steps", len(fact.steps), n=len(fact.steps), list=steps(voice, fact.steps)))
    if fact.skipped:
        lines.append(voice.say("recap.skipped", list=voice.listed([voice.exercise(one) for one in fact.skipped])))
    return _within(lines, _coming(voice, fact))


def _within(lines: list[str], coming: list[str]) -> list[str]:
    """As much of what is coming as fits behind what was done."""
    kept = list(lines)
    for line in coming:
        if len("\n".join((*kept, line))) >= RECAP_CHARS:
            break
        kept.append(line)
    return kept


def steps(voice: Voice, made: tuple[Stepped, ...]) -> str:
    """Steps in a row, each with what went up."""
    return voice.listed(
        [
            voice.say("recap.step", exercise=voice.exercise(one.exercise), what=voice.say(f"step.short.{one.way}"))
            for one in made
        ]
    )


def _coming(voice: Voice, fact: Recapped) -> list[str]:
    rows = [(voice.heading(one.exercise), next_time(voice, one)) for one in fact.coming]
    lines = [voice.say("recap.next.line", exercise=name, what=what) for name, what in rows if what]
    return [voice.say("recap.next"), *lines] if lines else []


def _skipped(voice: Voice, fact: Skipped) -> list[str]:
    return [voice.say("skipped", exercise=voice.heading(fact.exercise))]


def _swapped(voice: Voice, fact: Swapped) -> list[str]:
    return [voice.say("swapped", to=voice.heading(fact.to), from_=voice.exercise(fact.from_))]


SAID: Final[Mapping[type, Callable[[Voice, Any], list[str]]]] = {
    Listed: _listed,
    Recapped: _recapped,
    Skipped: _skipped,
    Swapped: _swapped,
}
