"""The door: facts in, one reply out. Chooses what is said and in which order; the words are wording's."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, replace
from itertools import groupby
from typing import Any, Final

from core.model.acts import Erase, Finish, SetAct, Swap
from core.model.facts import (
    Alert,
    AlertAche,
    AlertAlarm,
    Asked,
    DoneAsked,
    Eased,
    EraseAsked,
    Fact,
    LevelAsked,
    Offered,
    Upcoming,
)
from core.model.reading import Ask, Option
from core.say import body, clock, coming, figures, receipts, session, talk, today
from core.say.render import Voice

Question = Asked | Offered | EraseAsked | DoneAsked | LevelAsked
"""The facts that ask something."""

LABEL_FITS: Final = 42
"""Characters that a button shows on a phone; longer answers are numbered in the text."""

_SAID: Final[Mapping[type, Callable[[Voice, Any], list[str]]]] = {
    **receipts.SAID,
    **coming.SAID,
    **session.SAID,
    **body.SAID,
    **talk.SAID,
    **clock.SAID,
    **today.SAID,
}
"""The lines of each kind of fact that asks nothing."""


@dataclass(frozen=True, slots=True)
class Composed:
    """A reply's text, the question in it, and what to press for its answers, in their order."""

    text: str
    ask: Ask | None = None
    question: str = ""
    labels: tuple[str, ...] = ()


def compose(facts: Iterable[Fact], voice: Voice) -> Composed:
    """All facts of a pass as one reply, in the order in which they happened; a question closes it."""
    lines: list[str] = []
    asked: Composed | None = None
    for fact in _without_echo(tuple(facts)):
        if isinstance(fact, Question):
            asked = question(fact, voice)
        else:
            lines += _SAID[type(fact)](voice, fact)
    text = "\n".join(dict.fromkeys(line for line in lines if line))
    if asked is None:
        return Composed(text)
    return Composed("\n".join(filter(None, (text, asked.text))), asked.ask, asked.question, asked.labels)


def _without_echo(facts: tuple[Fact, ...]) -> tuple[Fact, ...]:
    """Without the easing of an exercise whose target is announced right below, with its reason."""
    announced = {fact.exercise for fact in facts if isinstance(fact, Upcoming) and fact.fresh}
    return tuple(fact for fact in facts if not (isinstance(fact, Eased) and fact.exercise in announced))


def question(fact: Question, voice: Voice) -> Composed:
    """A question with its answers; long ones are numbered in the text and pressed by number."""
    words, ask = _QUESTIONS[type(fact)](voice, fact)
    labels = [option.label for option in ask.options]
    if len(labels) == 1 or all(len(label) <= LABEL_FITS for label in labels):
        return Composed(words, ask if ask.options or isinstance(fact, Asked) else None, words, tuple(labels))
    rows = [voice.say("ask.option", n=n, label=label) for n, label in enumerate(labels, start=1)]
    return Composed("\n".join((words, *rows)), ask, words, tuple(str(n) for n in range(1, len(labels) + 1)))


def _asked(voice: Voice, fact: Asked) -> tuple[str, Ask]:
    options = tuple(
        replace(option, label=_named(voice, option) if fact.ask.about == "exercise" else _worded(voice, option))
        for option in fact.ask.options
    )
    words = voice.say("ask.unlikely" if fact.unlikely else _question_key(fact.ask))
    return (voice.say("ask.again", question=words) if fact.again else words), replace(fact.ask, options=options)


def _question_key(ask: Ask) -> str:
    """The words of a question: a single reading is asked to be confirmed."""
    if not ask.options and ask.about == "numbers":
        return "ask.numbers.open"
    if ask.about == "meaning" and any(not option.label for option in ask.options):
        return "ask.doubt"
    if len(ask.options) != 1 or ask.about in ("load", "reps", "exercise"):
        return f"ask.{ask.about}"
    return "ask.confirm"


def _worded(voice: Voice, option: Option) -> str:
    return option.label or _label(voice, option)


def _named(voice: Voice, option: Option) -> str:
    """The exercise that an answer settles, by the name that the person knows it by."""
    named = {act.exercise for act in option.acts if isinstance(act, SetAct) and act.exercise}
    return voice.exercise(named.pop()) if len(named) == 1 else _worded(voice, option)


def _label(voice: Voice, option: Option) -> str:
    """What an answer would record, where the reader gave it no words."""
    if not option.acts:
        return voice.say("no")
    if len(option.acts) == 1 and isinstance(option.acts[0], SetAct):
        return figures.short(voice, option.acts[0])
    sets = [act for act in option.acts if isinstance(act, SetAct)]
    rows = [tuple(some) for _, some in groupby(sets, key=lambda act: act.exercise)]
    return voice.listed([figures.brief(voice, row[0].exercise or "", row) for row in rows])


def _done_asked(voice: Voice, fact: DoneAsked) -> tuple[str, Ask]:
    whole = Option(voice.say("ask.done.session"), (Finish(),))
    if fact.done is None:
        return voice.say("ask.done.whole"), Ask("meaning", (whole, Option(voice.say("no"), ())))
    one = Option(
        voice.say("ask.done.set", what=figures.short(voice, replace(fact.done, rest_s=None, tempo=None, range=None))),
        (fact.done,),
    )
    return voice.say("ask.done", n=fact.number, of=fact.of), Ask("meaning", (one, whole))


def _offered(voice: Voice, fact: Offered) -> tuple[str, Ask]:
    options = []
    for to, step in fact.picks:
        heavy = figures.load(voice, to, step.load) if step else ""
        key = "offer.option" if heavy else "offer.option.plain"
        label = voice.say(key, exercise=voice.exercise(to), load=heavy)
        options.append(Option(label, (Swap(fact.from_, to),)))
    key = "offer" if options else "offer.none"
    return voice.say(key, exercise=voice.exercise(fact.from_)), Ask("exercise", tuple(options))


def _level_asked(voice: Voice, fact: LevelAsked) -> tuple[str, Ask]:
    where = body.part(voice, fact.ache.where)
    level = Option(voice.say("ask.level.ache", where=where, level=voice.number(fact.ache.level or 0)), (fact.ache,))
    done = Option("", fact.sets)
    return voice.say("ask.meaning"), Ask("meaning", (level, replace(done, label=_label(voice, done))))


def _erase_asked(voice: Voice, fact: EraseAsked) -> tuple[str, Ask]:
    options = (Option(voice.say("yes"), (Erase("today"),)), Option(voice.say("no"), ()))
    return voice.say("ask.erase", n=fact.sets), Ask("meaning", options)


_QUESTIONS: Final[Mapping[type, Callable[[Voice, Any], tuple[str, Ask]]]] = {
    Asked: _asked,
    Offered: _offered,
    EraseAsked: _erase_asked,
    DoneAsked: _done_asked,
    LevelAsked: _level_asked,
}


def alert(fact: Alert, voice: Voice) -> str:
    """Word to the coach."""
    return _ALERTS[type(fact)](voice, fact)


def _alert_alarm(voice: Voice, fact: AlertAlarm) -> str:
    words = voice.say("quote", text=fact.words)
    signs = voice.listed([voice.say(f"sign.{one}") for one in (fact.sign, *fact.also)])
    return voice.say("alert.alarm", name=fact.who, sign=signs, words=words)


def _alert_ache(voice: Voice, fact: AlertAche) -> str:
    level = fact.ache.level
    said = voice.say("alert.ache.unsaid") if level is None else voice.say("alert.ache.level", n=voice.number(level))
    lines = [voice.say("alert.ache", name=fact.who, where=body.place(voice, fact.ache), level=said)]
    if any(char.isalpha() for char in fact.words):
        lines[0] = f"{lines[0]} {voice.say('quote', text=fact.words)}"
    eased = [voice.say(f"alert.eased.{one.way}", exercise=voice.exercise(one.exercise)) for one in fact.eased]
    lines += [voice.say("alert.eased", list=voice.listed(eased))] if eased else []
    off = [voice.exercise(one) for one in fact.off]
    lines += [voice.say("alert.off", list=voice.listed(off))] if off else []
    return "\n".join(lines)


_ALERTS: Final[Mapping[type, Callable[[Voice, Any], str]]] = {AlertAlarm: _alert_alarm, AlertAche: _alert_ache}
