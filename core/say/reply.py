"""An outcome completed with what is said: the reply, its buttons, the open question, word to the coach."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from datetime import date, datetime
from typing import Final

from core.model.book import Pending, Profile
from core.model.facts import Alert, AlertAlarm, Fact
from core.model.outcome import Button, Outcome, Reply
from core.model.quantities import Unit
from core.say.compose import Composed, alert, compose
from core.say.render import Voice

KINDS: Final[Mapping[str, str]] = {
    "prompt": "prompt",
    "missed": "prompt",
    "recap": "summary",
    "summary": "summary",
    "rest": "prompt",
}
"""How urgent each thing of the clock is to send."""

PRESSED_FOR: Final[Mapping[str, tuple[tuple[str, str], ...]]] = {
    "prompt": (("prompt.buttons.moved", "m"), ("prompt.buttons.off", "o"), ("prompt.buttons.travelling", "t")),
    "missed": (("missed.buttons.did", "d"), ("missed.buttons.today", "y"), ("missed.buttons.off", "l")),
}
"""The answers under a thing of the clock: their words, and the letter that comes back."""


DAYS_NAMED: Final = frozenset({"prompt.buttons.off"})
"""Answers that name the day where a session of tomorrow is announced."""


@dataclass(frozen=True, slots=True)
class Moment:
    """To whom it is said, and to which message."""

    profile: Profile
    unit: Unit
    message: int
    now: datetime
    said: str = ""


def voice_of(profile: Profile, unit: Unit) -> Voice:
    """How to speak to this person."""
    return Voice(profile.name, profile.zone, unit, profile.language, profile.decimal, profile.coach)


def replied(out: Outcome, facts: tuple[Fact, ...], alerts: tuple[Alert, ...], moment: Moment) -> Outcome:
    """The outcome of a message with its reply, the question that it leaves open, and word to the coach."""
    voice = voice_of(moment.profile, moment.unit)
    made = compose(facts, voice)
    buttons = tuple(Button(label, f"a:{moment.message}:{n}") for n, label in enumerate(made.labels))
    pending = Pending(made.ask, moment.message, moment.now, made.question, moment.said) if made.ask else None
    replies = (Reply(made.text, buttons),) if made.text else ()
    return replace(out, replies=(*replies, *_alerts(alerts, moment)), pending=pending)


def reminded(out: Outcome, facts: tuple[Fact, ...], moment: Moment, kind: str, days: tuple[date, date]) -> Outcome:
    """The outcome of a thing of the clock. ``days``: the one that it is about, and the one to move a session to."""
    voice = voice_of(moment.profile, moment.unit)
    made: Composed = compose(facts, voice)
    if not made.text:
        return out
    on, free = days
    here = moment.now.astimezone(voice.zone).date()
    to = voice.say("day.tomorrow") if (free - here).days == 1 else voice.weekday(free)
    ahead = kind == "prompt" and on > here
    keys = [(f"{key}.day" if ahead and key in DAYS_NAMED else key, letter) for key, letter in PRESSED_FOR.get(kind, ())]
    buttons = tuple(
        Button(voice.say(key, day=voice.weekday(on) if key.endswith(".day") else to), f"d:{on.toordinal()}:{letter}")
        for key, letter in keys
    )
    return replace(out, replies=(Reply(made.text, buttons, kind=KINDS[kind]),))  # type: ignore[arg-type]


def _alerts(alerts: tuple[Alert, ...], moment: Moment) -> tuple[Reply, ...]:
    """One message to the coach, in the coach's language, whatever a text told of; its words are quoted once."""
    if not alerts:
        return ()
    profile = moment.profile
    language, decimal = profile.coach_language or profile.language, profile.coach_decimal or profile.decimal
    voice = voice_of(replace(profile, language=language, decimal=decimal), moment.unit)
    in_order = sorted(alerts, key=lambda one: not isinstance(one, AlertAlarm))
    quoted = (one if n == 0 else replace(one, words="") for n, one in enumerate(in_order))
    text = "\n".join(dict.fromkeys(line for one in quoted for line in alert(one, voice).split("\n")))
    return (Reply(text, to="coach", kind="alert"),)
