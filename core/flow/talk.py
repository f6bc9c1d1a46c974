"""What is answered when a message reports nothing: everyday words, notes for the coach, what cannot be read."""

import re
from collections.abc import Callable, Mapping
from dataclasses import replace
from typing import Final

from core.evidence.sources import SOURCES
from core.flow import calendar, course, day, mends
from core.flow.phrases import Phrase, is_unlikely, phrase_of, shape_of
from core.flow.records import as_done, load_unknown
from core.flow.scene import Scene
from core.flow.targets import next_time, opened, still_to_do
from core.flow.work import work
from core.model.acts import Begin, Finish, SetAct, Skip, Swap
from core.model.book import Pending
from core.model.facts import Asked, DoneAsked, Erased, Explained, Held, Noted, Told, Where
from core.model.reading import Ask, Reading
from core.model.target import Reason
from core.model.working import working_sets

_PARTS: Final = re.compile(r"(?:[^,.;\n]|[,.](?=\d))+")
"""Parts of a message: what stands between commas, stops and line ends, those inside a number apart."""

_PLAIN: Final[Mapping[Phrase, str]] = {
    "start": "start",
    "help": "help",
    "hello": "hello",
    "thanks": "thanks",
    "fine": "fine",
    "later": "later",
}


_FIRST: Final = frozenset({"undo"})
"""Phrases that mean the last message, not the last set, whatever the reader makes of them."""


def phrase(scene: Scene, text: str, *, heard: bool) -> Scene | None:
    """The answer to an everyday phrase, if the message is one. ``heard``: the reader found acts in it, which count."""
    said = phrase_of(text, scene.book.profile.language)
    if said is None or scene.gone or (heard and said not in _FIRST):
        return None
    if said in _PLAIN:
        return scene.says(Told(_PLAIN[said]))
    if said in calendar.MOVES:
        return calendar.said(scene, calendar.MOVES[said])
    return _ANSWERS[said](scene)


def _undo(scene: Scene) -> Scene:
    undone = mends.undo(scene)
    return undone if undone.out.taken_back is None else course.standing(undone)


def where(scene: Scene) -> Scene:
    """Where things are: what was done today, the session as it stands, what is next."""
    scene = opened(scene)
    sets = day.sets_on(scene.book, scene.on)
    scene = scene.says(Where(len(sets), day.now_on(scene.book, scene.on)))
    if scene.book.hold:
        return scene.says(Held(scene.book.hold.since))
    listed = course.listed(scene)
    return scene.says(listed) if listed else course.standing(scene)


def _why(scene: Scene) -> Scene:
    if scene.book.hold:
        return scene.says(Held(scene.book.hold.since))
    scene = opened(scene)
    exercise = day.now_on(scene.book, scene.on)
    if exercise is None:
        return scene.says(Told("why.none"))
    advice = scene.adviser.today(scene.book, scene.on, exercise, scene.done(exercise))
    if day.is_complete(scene.book, scene.on, exercise):
        advice = next_time(scene, exercise)  # all done today: what is asked for now is the next time
    if not advice.why:
        return scene.says(Told("why.none"))
    return scene.says(*(_explained(scene, reason) for reason in advice.why))


def _explained(scene: Scene, reason: Reason) -> Explained:
    found = (SOURCES[one] for one in scene.adviser.sources(reason.rule) if one in SOURCES)
    return Explained(reason, tuple(source.title for source in found if source.read != "none"))


def _done(scene: Scene) -> Scene:
    """ "Done" closes the session when nothing is left; with sets to go it may be the set, so it is asked."""
    exercise = day.now_on(scene.book, scene.on)
    begun = bool(day.sets_on(scene.book, scene.on))
    if scene.book.hold or exercise is None or not day.places(scene.book, scene.on):
        return work(scene, (Finish(),)) if begun else scene.says(Told("fine"))
    scene = opened(scene, exercise)
    done = scene.done(exercise)
    advice = scene.adviser.today(scene.book, scene.on, exercise, done)
    if not advice.sets or day.is_complete(scene.book, scene.on, exercise):
        return work(scene, (Finish(),))
    left = still_to_do(scene, exercise, advice)
    number = len(working_sets(done)) + 1
    act = None if load_unknown(left[0]) else as_done(exercise, left[0])
    return scene.says(DoneAsked(act, number, number + len(left) - 1))


def _well_again(scene: Scene) -> Scene:
    if scene.book.hold is None:
        return scene.says(Told("fine"))
    return scene.says(Held(scene.book.hold.since, lifted_wish=True))


_ANSWERS: Final[Mapping[Phrase, Callable[[Scene], Scene]]] = {
    "undo": _undo,
    "begin": lambda scene: work(scene, (Begin(),)),
    "skip": lambda scene: work(scene, (Skip(),)),
    "swap": lambda scene: work(scene, (Swap(),)),
    "done": _done,
    "finish": lambda scene: work(scene, (Finish(),)),
    "where": where,
    "why": _why,
    "well_again": _well_again,
}


def unreadable(scene: Scene, media: str | None) -> Scene:
    """Something that is no text, or an empty one."""
    return scene.says(Told("empty" if media is None else "media"))


def noted(scene: Scene, text: str, gone: tuple[SetAct, ...]) -> Scene:
    """Nothing was found in the words: they are kept for the coach. ``gone``: what an edit took out."""
    if gone:
        return with_note(scene.says(Told("edit.nothing"), Erased(gone)), text)
    shape = shape_of(text)
    if shape in ("empty", "emoji", "marks"):
        return scene.says(Told("noise" if shape == "marks" else shape))
    if shape in ("script", "noise"):
        return with_note(scene.says(Told(shape)), text)
    if scene.book.hold is not None and _says_well(scene, text):
        scene = scene.says(Held(scene.book.hold.since, lifted_wish=True))
    return with_note(scene.says(Noted((text,), beside=False)), text)


def _says_well(scene: Scene, text: str) -> bool:
    """Whether a part of the message says that it is over: "false alarm, was just a stitch"."""
    parts = (found.group().strip() for found in _PARTS.finditer(text))
    return any(phrase_of(part, scene.book.profile.language) == "well_again" for part in parts)


def words_left(text: str, reading: Reading) -> tuple[str, ...]:
    """The parts of a message in which something was not understood, and nothing else was.

    One stray word inside a part that was understood says nothing; the message itself is kept whole anyway.
    """
    understood = [act.span for act in reading.acts if act.span is not None]
    parts = [(found.start(), found.end()) for found in _PARTS.finditer(text)]
    left = [
        text[start:end].strip()
        for start, end in parts
        if any(start <= odd < end for odd, _ in reading.leftovers)
        and not any(first < end and start < last for first, last in understood)
    ]
    return tuple(left)


def open_question(scene: Scene) -> Pending | None:
    """The question still open; one of an earlier day is not."""
    pending = scene.book.pending
    if pending is None or scene.edited:
        return None
    return pending if day.local(pending.at, scene.book).date() >= scene.on else None


def nothing_chosen(scene: Scene) -> Scene:
    """The answer was no."""
    return scene.says(Told("answer.none"))


def closes(scene: Scene) -> Scene:
    """With the open question answered."""
    return replace(scene, out=replace(scene.out, answered=True))


def asks(scene: Scene, ask: Ask) -> Scene:
    """With a question put. What an older one was about is kept for the coach."""
    old = open_question(scene)
    if old and old.said and old.message != scene.came:
        scene = beside(scene, (old.said,))
    return scene.says(Asked(ask, unlikely=not ask.options and is_unlikely(scene.words, scene.book.lifter.unit)))


def asks_again(scene: Scene) -> Scene:
    """The open question put once more, because the answer was none of those offered."""
    pending = open_question(scene)
    return scene.says(Asked(pending.ask, again=True)) if pending else scene


def old_button(scene: Scene) -> Scene:
    """A button of another time: it says so, and where things are."""
    return where(scene.says(Told("press.old")))


def beside(scene: Scene, words: tuple[str, ...]) -> Scene:
    """Words beside what was understood: kept for the coach, and given back so that nothing is dropped unseen."""
    if not words:
        return scene
    for text in words:
        scene = with_note(scene, text)
    return scene.says(Noted(words, beside=True))


def with_note(scene: Scene, text: str) -> Scene:
    """With words kept for the coach."""
    return replace(scene, out=replace(scene.out, notes=(*scene.out.notes, text)))
