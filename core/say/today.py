"""What is said of a day that goes otherwise: cut to the time there is, another kit."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from core.model.facts import KitOfDay, Trimmed
from core.say.about import kit as kit_words
from core.say.render import Voice, capital


def _names(voice: Voice, exercises: tuple[str, ...]) -> str:
    return voice.listed([voice.exercise(one) for one in exercises])


def _trimmed(voice: Voice, fact: Trimmed) -> list[str]:
    if not fact.gone and not fact.tight:
        return [voice.say("trim.fits", n=fact.minutes)]
    lines = [voice.say("trim.stays", n=fact.minutes, list=_names(voice, fact.stays))]
    if fact.gone:
        lines.append(voice.say("trim.gone", list=capital(_names(voice, fact.gone))))
    if fact.tight:
        lines.append(voice.say("trim.tight"))
    return lines


def _kit(voice: Voice, fact: KitOfDay) -> list[str]:
    if fact.without:
        lines = [voice.say("kit.today.without", what=fact.without)]
    elif fact.kit is None:
        lines = [voice.say("kit.today.gym")]
    else:
        lines = [voice.say("kit.today", list=voice.listed([kit_words(voice, fact.kit), *fact.beside]))]
    if fact.odd:
        lines.append(voice.say("kit.today.odd", list=voice.listed([voice.say("quote", text=one) for one in fact.odd])))
    if fact.off:
        lines.append(voice.say("kit.today.off", list=_names(voice, fact.off), one=voice.exercise(fact.off[0])))
    return lines


SAID: Final[Mapping[type, Callable[[Voice, Any], list[str]]]] = {Trimmed: _trimmed, KitOfDay: _kit}
