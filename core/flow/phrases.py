"""Everyday words to the service itself, and what kind of text a message is. Tables; knows no acts and no answers."""

import re
import unicodedata
from collections.abc import Mapping
from functools import cache
from types import ModuleType
from typing import Final, Literal, cast

from core.evidence.plausible import BOUNDS
from core.flow import phrases_de, phrases_en, phrases_es
from core.model.quantities import Unit, from_kg

Phrase = Literal[
    "start",
    "help",
    "why",
    "undo",
    "where",
    "hello",
    "thanks",
    "fine",
    "later",
    "well_again",
    "begin",
    "skip",
    "swap",
    "done",
    "finish",
    "moved",
    "off",
    "off_tomorrow",
    "travelling",
    "did",
    "today",
    "let_go",
]
FIRST: Final = "en"
"""The language that is understood beside every other."""
Shape = Literal["empty", "emoji", "marks", "script", "noise", "words"]

SPOKEN: Final[Mapping[str, ModuleType]] = {"en": phrases_en, "es": phrases_es, "de": phrases_de}
"""Where each language's phrases are. Said whole; case, accents, apostrophes and marks at the end don't count."""

PHRASES: Final = phrases_en.PHRASES
"""The first language's, which every lifter may use."""

COMMANDS: Final[Mapping[str, tuple[str, str]]] = {
    "/begin": ("starting now", "starting now"),
    "/next": ("what's next?", "what's next?"),
    "/done": ("that's me done", "that's me done"),
    "/skip": ("skip", "skipping {rest} today"),
    "/swap": ("swap", "what can I do instead of {rest}?"),
    "swap": ("swap", "what can I do instead of {rest}?"),
}
"""What people look for in a menu, as the plain sentence that it stands for: alone, and with words behind it."""

_SWAP_FOR: Final = frozenset({"for", "with", "to", "and", "by"})
"""With one of these in it, a swap names both exercises and is a sentence already."""

NOISE_FROM: Final = 400
"""Characters from which a text without a single set is called noise rather than answered as talk. Choice of ours."""


def plain(text: str) -> str:
    """Lower case, no apostrophes, no marks at the end, single spaces."""
    folded = unicodedata.normalize("NFKC", text).casefold().replace("’", "").replace("'", "")
    folded = " ".join(folded.split())
    return folded.rstrip("!.?… ") or folded


@cache
def _by_words(code: str) -> Mapping[str, Phrase]:
    """Each phrase by what is said for it, in one language, as it is typed with umlauts or without."""
    said = [(words, phrase) for phrase, all_words in _tongue(code).PHRASES.items() for words in all_words]
    typed = [(words.translate(_UMLAUTS), phrase) for words, phrase in said]
    return {_bare(words): cast("Phrase", phrase) for words, phrase in (*typed, *said)}


_UMLAUTS: Final = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue"})


def phrase_of(text: str, code: str = FIRST) -> Phrase | None:
    """The everyday phrase that a whole message is, if it is one; ``code``: the lifter's language, beside English."""
    for tongue in dict.fromkeys((code[:2].casefold(), FIRST)):
        words = _bare(plain(text))
        head, _, rest = words.partition(" ")
        opened = rest if head.rstrip(",") in _tongue(tongue).OPENERS else ""
        found = _by_words(tongue).get(words) or _by_words(tongue).get(opened)
        if found is not None:
            return found
    return None


def is_courtesy(text: str, code: str = FIRST) -> bool:
    """Words beside a wish that ask for no answer and are no news to a coach."""
    courteous = _tongue(code).COURTESY | _tongue(FIRST).COURTESY
    parts = [plain(part) for part in text.split(",")]
    return all(words in courteous or phrase_of(words, code) is not None for words in parts)


def _tongue(code: str) -> ModuleType:
    return SPOKEN.get(code[:2].casefold(), SPOKEN[FIRST])


def _bare(words: str) -> str:
    """Without accents and umlauts, which keyboards of tired people lack."""
    folded = unicodedata.normalize("NFKD", words.replace("ß", "ss").lstrip("¿¡ "))
    return "".join(char for char in folded if not unicodedata.combining(char))


def command_as_sentence(text: str) -> str:
    """A menu's word as the sentence that it stands for, with what follows it; any other text as it is."""
    head, _, rest = text.strip().partition(" ")
    alone_and_more = COMMANDS.get(head.split("@")[0].casefold())
    if alone_and_more is None or _SWAP_FOR & set(rest.casefold().split()):
        return text
    alone, more = alone_and_more
    return more.replace("{rest}", rest.strip().rstrip("?!. ")) if rest.strip() else alone


def is_unlikely(text: str, unit: Unit) -> bool:
    """A number in the text is past what anyone lifts, whatever it counts."""
    most = from_kg(BOUNDS["most_total_kg"].value, unit)
    return any(float(figure) > most for figure in re.findall(r"\d+", text))


def shape_of(text: str) -> Shape:
    """What kind of text it is when nothing was found in it."""
    letters = [char for char in text if char.isalpha()]
    if not text.strip():
        return "empty"
    if not letters:
        if any(char.isdigit() for char in text):
            return "noise"
        return "emoji" if any(unicodedata.category(char) == "So" for char in text) else "marks"
    latin = sum("LATIN" in unicodedata.name(char, "") for char in letters[:NOISE_FROM])
    if latin * 2 < len(letters[:NOISE_FROM]):
        return "script"
    return "noise" if len(text) > NOISE_FROM else "words"
