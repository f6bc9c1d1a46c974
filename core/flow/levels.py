"""The answer to "how much of 10?": a number said right behind an ache whose level was not told.

A number with words that only a level has ("it's like a 3", "3/10") is the level. A number alone may as well be the
next set's repetitions: where it would make a set, it is asked. Knows no wording of replies and diagnoses nothing.
"""

import re
from dataclasses import dataclass, replace
from datetime import timedelta
from typing import Final

from core.flow.phrases import plain
from core.flow.scene import Scene
from core.flow.work import work
from core.model.acts import AcheAct, SetAct
from core.model.facts import LevelAsked
from core.model.reading import Reading

WITHIN: Final = timedelta(minutes=10)
"""So long after the ache a number may still answer. Choice of ours."""

_WORDS: Final = (
    ("zero", "cero", "null"), ("one", "uno", "eins"), ("two", "dos", "zwei"), ("three", "tres", "drei"),
    ("four", "cuatro", "vier"), ("five", "cinco", "fünf", "fuenf"), ("six", "seis", "sechs"),
    ("seven", "siete", "sieben"), ("eight", "ocho", "acht"), ("nine", "nueve", "neun"), ("ten", "diez", "zehn"),
)  # fmt: skip
_NUMBERS: Final = {word: float(number) for number, words in enumerate(_WORDS) for word in words}
"""Number words of the languages that are spoken, zero to ten."""

_BEFORE: Final = (
    "its|it is|it|is|id say|i would say|id call it|call it|say|like|maybe|prob|probably|about|around|roughly|bout|a|an"
    "|only|just|more like|now|atm|pain|level|at|was|somewhere|well|um|erm|ok|yeah|hmm|oh"
    "|es|está en|como|un|unos|diría|quizá|quizás|más o menos|sobre|de|nivel|dolor"
    "|ist|so|ne|eine|ein|etwa|ungefähr|circa|vielleicht|würde sagen|sagen wir|bei|stufe|schmerz"
)
_BEHIND: Final = (
    "ish|or so|maybe|i guess|i think|i reckon|tops|max|at most|at worst|now|atm|right now|pain|lol"
    "|más o menos|creo|diría|como mucho|ahora|ungefähr|etwa|würde ich sagen|denke ich|höchstens|gerade|jetzt"
)
_OF_TEN: Final = r"(?:/|out of|of|de|sobre|von) ?(?:10|ten|diez|zehn)"
_NUMBER: Final = rf"(?:\d{{1,2}}(?:[.,]5)?|{'|'.join(_NUMBERS)})"
_LEVEL: Final = re.compile(
    rf"(?P<before>(?:(?:{_BEFORE})[ ,]+)*)(?P<low>{_NUMBER})(?: ?(?:-|–|to|or|bis|oder|a|o) ?(?P<high>{_NUMBER}))?"
    rf" ?(?P<ten>{_OF_TEN})?(?P<behind>(?:[ ,]*(?:{_BEHIND}))*)"
)
_MOST: Final = 10.0


@dataclass(frozen=True, slots=True)
class Level:
    """A level of an ache, 0 to 10; ``plainly`` when it can be nothing else."""

    value: float
    plainly: bool


def level_in(text: str) -> Level | None:
    """The level that a text is, all of it; of a span the higher end."""
    found = _LEVEL.fullmatch(plain(text).replace(",", ", ").replace("  ", " ")) or _LEVEL.fullmatch(plain(text))
    if found is None:
        return None
    ends = [_number(one) for one in (found["low"], found["high"]) if one]
    if max(ends) > _MOST:
        return None
    return Level(max(ends), bool(found["before"].strip() or found["ten"]))


def _number(word: str) -> float:
    return _NUMBERS[word] if word in _NUMBERS else float(word.replace(",", "."))


def answered(scene: Scene, said: tuple[str, ...], reading: Reading) -> Scene | None:
    """The scene with the level of the ache just told; None where nothing of the kind was asked or answered.

    ``said``: the text as typed and, where it differs, put plainly.
    """
    ache = _just_told(scene)
    level = next(filter(None, map(level_in, said)), None) if ache is not None else None
    if ache is None or level is None or any(not isinstance(act, SetAct) for act in reading.acts):
        return None
    known = replace(ache, level=level.value)
    if reading.acts and not level.plainly:
        return scene.says(LevelAsked(known, tuple(act for act in reading.acts if isinstance(act, SetAct))))
    return work(scene, (known,))


def _just_told(scene: Scene) -> AcheAct | None:
    """The ache without a level that the last message with a record told of, a moment ago."""
    last = scene.book.kept[-1] if scene.book.kept else None
    if last is None or scene.edited or scene.now - last.at > WITHIN:
        return None
    of_it = (one.act for one in reversed(scene.book.kept) if one.message == last.message)
    return next((act for act in of_it if isinstance(act, AcheAct) and act.level is None), None)
