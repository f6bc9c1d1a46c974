"""Answers for a question that came without any: what the words say alone, and what they say with the load last told."""

from collections.abc import Callable
from dataclasses import replace

from core.flow.scene import Scene
from core.flow.setting import bare, setting_of
from core.model.reading import Ask, Option, Reading, Setting


def offered(scene: Scene, reading: Reading, reread: Callable[[Setting], Reading]) -> Reading:
    """The reading, its question with answers to press where some can be found. ``reread`` reads the same words.

    Words that are plain by themselves were doubted because of what is known: then they are asked about as they stand.
    """
    if reading.ask is None or reading.ask.options or reading.acts:
        return reading
    told = setting_of(scene, told=True)
    plain, with_told = reread(bare(told)), reread(told)
    if plain.ask is None and plain.acts:
        return replace(reading, ask=Ask("meaning", (Option("", plain.acts), Option("", ()))))
    found = (Option("", with_told.acts),) if with_told.ask is None and with_told.acts else ()
    return replace(reading, ask=replace(reading.ask, options=found))
