"""Talk that records nothing: greetings, help, notes, questions that find no answer, where things are."""

from collections.abc import Callable, Mapping
from typing import Any, Final

from core.model.facts import Noted, Told, Where
from core.say.render import Voice

QUOTED: Final = 120
"""Characters of the lifter's words that are given back; the note itself is kept whole."""

QUOTES: Final = 2
"""Pieces of a message that are given back; with two of them a reply still fits between two sets."""


_ASKING: Final = frozenset(
    ("should", "shall", "can", "could", "do", "does", "is", "are", "am", "what", "whats", "how", "hows", "when", "why",
     "where", "wheres", "which", "who", "would", "any", "qué", "cómo", "cuándo", "cuánto", "puedo", "debo", "debería",
     "was", "wie", "wann", "warum", "wieso", "soll", "sollte", "kann", "darf", "welche", "welcher", "welches")
)  # fmt: skip
"""First words of a question, where its mark was left out."""


def _asks(words: str) -> bool:
    """Whether it is a question, with its mark or without."""
    first = words.lstrip("¿ ").casefold().replace("'", "").replace("’", "").split(" ", 1)[0]
    return words.rstrip().endswith("?") or first in _ASKING


def _noted(voice: Voice, fact: Noted) -> list[str]:
    if not fact.beside:
        return [voice.by_coach("noted.question" if _asks(fact.words[0]) else "noted.whole")]
    shown = [voice.say("quote", text=_cut(text)) for text in fact.words[:QUOTES]]
    words = voice.listed(shown) + (" …" if len(fact.words) > QUOTES else "")
    return [voice.by_coach("noted", words=words)]


def _cut(text: str) -> str:
    return text if len(text) <= QUOTED else text[: QUOTED - 1] + "…"


def _where(voice: Voice, fact: Where) -> list[str]:
    return [voice.say("where", fact.sets, n=fact.sets) if fact.sets else voice.say("where.none")]


def _told(voice: Voice, fact: Told) -> list[str]:
    slots = {name: (voice.heading(text) if name == "exercise" else text) for name, text in fact.slots}
    return [voice.say(fact.key, name=voice.name, **slots)]


SAID: Final[Mapping[type, Callable[[Voice, Any], list[str]]]] = {Noted: _noted, Where: _where, Told: _told}
