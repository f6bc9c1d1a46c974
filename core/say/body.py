"""Aches, alarms and holds in calm words. Never a diagnosis."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from core.model.acts import AcheAct
from core.model.facts import Ached, Alarmed, Eased, Held, OffToday
from core.say import figures
from core.say.render import Voice, capital
from core.say.wording import has


def part(voice: Voice, name: str) -> str:
    """The name of a body part inside a sentence."""
    key = f"part.{name}"
    return voice.say(key) if has(voice.language, key) else name.replace("-", " ")


def place(voice: Voice, ache: AcheAct) -> str:
    """A body part with its side, in words."""
    named = part(voice, ache.where)
    return voice.say(f"side.{ache.side}", part=named) if ache.side else named


def _ached(voice: Voice, fact: Ached) -> list[str]:
    where = capital(place(voice, fact.ache))
    if fact.ache.level is None:
        line = voice.say("ached.unsaid", where=where)
    else:
        line = voice.say("ached", where=where, level=voice.number(fact.ache.level))
    return [f"{line} {voice.say('ached.told', coach=voice.coach)}" if fact.told else line]


def _eased(voice: Voice, fact: Eased) -> list[str]:
    name = voice.heading(fact.exercise)
    if fact.way == "hold" or not fact.sets:
        return [voice.say("eased.hold", exercise=name)]
    first = fact.sets[0]
    heavy = figures.load(voice, fact.exercise, first.load)
    what = f"{len(fact.sets)} x {figures.asked(voice, fact.exercise, first, loaded=False)}"
    return [voice.say("eased.ease", exercise=name, what=voice.listed([part for part in (heavy, what) if part]))]


def _off_today(voice: Voice, fact: OffToday) -> list[str]:
    return [voice.say("off", list=voice.listed([voice.exercise(one) for one in fact.exercises]))]


def _alarmed(voice: Voice, fact: Alarmed) -> list[str]:
    closing = f"{voice.say('alarm.cannot')} {voice.by_coach('alarm.coach') if fact.told else voice.say('alarm.alone')}"
    return [voice.say(f"alarm.{fact.sign}"), closing]


def _held(voice: Voice, fact: Held) -> list[str]:
    return [voice.by_coach("held.wish" if fact.lifted_wish else "held")]


SAID: Final[Mapping[type, Callable[[Voice, Any], list[str]]]] = {
    Ached: _ached,
    Eased: _eased,
    OffToday: _off_today,
    Alarmed: _alarmed,
    Held: _held,
}
