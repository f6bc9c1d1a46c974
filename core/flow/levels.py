"""The answer to "how much of 10?": a level said right behind an ache whose level was not told.

The reader hears the words again with the part before them. Words that are a level then ("its like a 3", "3/10") are the
level; a number alone may as well be the next set's repetitions, so it is asked where it would make a set. Knows no
language, no wording of replies, and diagnoses nothing.
"""

from collections.abc import Callable
from dataclasses import replace
from datetime import timedelta
from typing import Final

from core.flow.scene import Scene
from core.flow.work import work
from core.model.acts import AcheAct, SetAct
from core.model.facts import LevelAsked
from core.model.reading import Reading

WITHIN: Final = timedelta(minutes=10)
"""So long after the ache a number may still answer. Choice of ours."""

_PLAIN: Final = "{part} pain {said}"
_BARE: Final = "{part}: {said}"
"""How the words are heard again, in English, which is always understood: the second makes a level of a lone number."""

Reread = Callable[[str], Reading]


def answered(scene: Scene, text: str, reading: Reading, reread: Reread) -> Scene | None:
    """The scene with the level of the ache just told; None where nothing of the kind was asked or answered."""
    told = _just_told(scene)
    if told is None or any(not isinstance(act, SetAct) for act in reading.acts):
        return None
    plain = _level(told, text, _PLAIN, reread)
    if plain is not None:
        return work(scene, (plain,))
    level = _level(told, text, _BARE, reread) if _counts_alone(reading) else None
    if level is None:
        return None
    sets = tuple(act for act in reading.acts if isinstance(act, SetAct))
    return scene.says(LevelAsked(level, sets)) if sets else work(scene, (level,))


def _level(told: AcheAct, text: str, heard: str, reread: Reread) -> AcheAct | None:
    """That ache with the level that the words are, when they are nothing else."""
    found = reread(heard.format(part=told.where.replace("-", " "), said=text))
    match found.acts:
        case [AcheAct(where=told.where, level=float() | int() as level)] if found.ask is None:
            return replace(told, level=level)
        case _:
            return None


def _counts_alone(reading: Reading) -> bool:
    """Whether the words by themselves are one count at most, with nothing said of how it was."""
    return len(reading.acts) <= 1 and all(isinstance(act, SetAct) and act.rir is None for act in reading.acts)


def _just_told(scene: Scene) -> AcheAct | None:
    """The ache without a level that the last message with a record told of, a moment ago."""
    last = scene.book.kept[-1] if scene.book.kept else None
    if last is None or scene.edited or scene.now - last.at > WITHIN:
        return None
    of_it = (one.act for one in reversed(scene.book.kept) if one.message == last.message)
    return next((act for act in of_it if isinstance(act, AcheAct) and act.level is None), None)
