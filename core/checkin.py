"""The whole product on one page: a message or a clock's call comes in with the book, an outcome goes out.

Read (core.read), let the acts move the session (core.flow), with advice for what comes next (core.advising), and say
it (core.say). Pure: the same message, book and instant give the same outcome.
"""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date, datetime
from typing import Final

from core import due, otherwise
from core.adviser import Advisers
from core.flow import answers, calendar, course, levels, nudges, offers, opening, phrases, talk
from core.flow.scene import Scene
from core.flow.setting import setting_of
from core.flow.work import work
from core.model.acts import Act, Alarm
from core.model.book import Book, Incoming
from core.model.outcome import AgendaChange, Outcome
from core.model.reading import Reading
from core.read.reader import plainly, read
from core.say.reply import Moment, reminded, replied


def answer(incoming: Incoming, book: Book, now: datetime) -> Outcome:
    """What one message changes and what is said to it. ``now`` is UTC. Never raises for anything a person can send."""
    scene = opening.of_message(incoming, book, now, Advisers())
    if incoming.press is not None:
        return _said(_pressed(scene, incoming.press))
    if not incoming.text.strip():
        return _said(talk.unreadable(scene, incoming.media))
    text = phrases.command_as_sentence(incoming.text)
    return _said(otherwise.heard(scene, text) or _heard(scene, text))


def remind(kind: str, on: date, book: Book, now: datetime) -> Outcome:
    """What a row of the agenda that has come due says, and the rows that follow it. Nothing said: it was dropped."""
    kind, _, about = kind.partition(":")
    scene = opening.of_clock(on if kind == "prompt" else None, book, now, Advisers())
    judged = due.judge(kind, on, now, book.profile, scene.book.planned_for_today or book.plan)
    if judged.verdict == "wait":
        return Outcome(agenda=(AgendaChange(kind, on, judged.until),))
    if judged.verdict == "say" and kind in _REMINDERS:
        scene = _REMINDERS[kind](scene, on, about)
    scene = scene.plans(*due.following(kind, book.profile, book.plan, now))
    days, moment = (on, calendar.free_day_after(book, on)), Moment(book.profile, book.lifter.unit, 0, now)
    return reminded(scene.outcome(), scene.facts, moment, kind, days)


_REMINDERS: Final[Mapping[str, Callable[[Scene, date, str], Scene]]] = {
    "prompt": lambda scene, *_: calendar.announced(scene),
    "missed": lambda scene, on, _: calendar.asked_about(scene, on),
    "recap": lambda scene, on, _: calendar.closed_by_silence(scene, on),
    "summary": lambda scene, on, _: calendar.week(scene, on),
    "rest": lambda scene, on, about: nudges.said(scene, on, int(about), course.standing(scene)),
}


def _heard(scene: Scene, text: str) -> Scene:
    """A text: the answer to the open question, an everyday phrase, or something to be read."""
    reading = offers.offered(scene, _read(scene, text), lambda setting: read(text, setting))
    said = tuple(dict.fromkeys((text, plainly(text, scene.book.profile.language))))
    if (chosen := _answer_of(scene, said, reading)) is not None:
        return _answered(scene, chosen)
    if talk.open_question(scene) is not None and any(map(answers.is_place, said)):
        return talk.asks_again(scene)
    level = levels.answered(scene, text, reading, lambda words: _read(scene, words))
    spoken = (talk.phrase(scene, words, heard=bool(reading.acts)) for words in said)
    return level or next(filter(None, spoken), None) or _worked(scene, reading, text)


def _read(scene: Scene, text: str) -> Reading:
    return read(text, setting_of(scene))


def _worked(scene: Scene, reading: Reading, text: str) -> Scene:
    """The acts beyond doubt, the question about the others, and the words that stay."""
    if not reading.acts and reading.ask is None:
        return talk.noted(scene, text, scene.gone)
    scene = talk.beside(work(scene, reading.acts, asks=reading.ask is not None), talk.words_left(text, reading))
    return talk.asks(scene, reading.ask) if reading.ask else scene


def _answer_of(scene: Scene, said: tuple[str, ...], reading: Reading) -> tuple[Act, ...] | None:
    """The acts that the open question is answered with, if the text, as typed or put plainly, is an answer to it."""
    pending = talk.open_question(scene)
    if pending is None or any(isinstance(act, Alarm) for act in reading.acts):
        return None
    question = answers.Question(pending, scene.book.lifter.unit, lambda words: _read(scene, words))
    chosen = next((acts for acts in (answers.typed(question, words) for words in said) if acts is not None), None)
    return reading.acts if chosen is None and answers.restated(pending, reading) else chosen


def _answered(scene: Scene, acts: tuple[Act, ...]) -> Scene:
    """The acts of an answer, kept with the message that raised the question."""
    pending = scene.book.pending
    scene = replace(scene, sure=True, message=pending.message if pending else scene.message)
    return talk.closes(work(scene, acts) if acts else talk.nothing_chosen(scene))


def _pressed(scene: Scene, data: str) -> Scene:
    """A button: an answer to the open question or to the clock, or one of another time."""
    match data.split(":"):
        case ["a", number, index] if number.isdecimal() and index.isdecimal():
            acts = answers.pressed(talk.open_question(scene), int(number), int(index))
            return _answered(scene, acts) if acts is not None else talk.old_button(scene)
        case ["d", on, letter] if on.isdecimal() and 0 < int(on) <= date.max.toordinal():
            return calendar.pressed(scene, date.fromordinal(int(on)), letter) or talk.old_button(scene)
        case _:
            return talk.old_button(scene)


def _said(scene: Scene) -> Outcome:
    """The changes with the words for them; an edit of the message that raised the open question closes that one."""
    book, out = scene.book, scene.outcome()
    closed = out.answered or (scene.edited and book.pending is not None and book.pending.message == scene.came)
    out = replace(out, answered=closed, agenda=(*out.agenda, *due.replanned(book.profile, out.planned, scene.now)))
    moment = Moment(book.profile, book.lifter.unit, scene.came, scene.now, scene.words)
    return replied(out, scene.facts, scene.alerts, moment)
