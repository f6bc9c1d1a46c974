"""Which languages there are, and their tables put together. Rows, no logic beyond choosing."""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cache
from importlib import import_module
from typing import Final

from core.read.frames import FrameRow, Frames
from core.read.glossary import Gloss, Glossary
from core.read.lexicon import Lexicon, Rows
from core.read.names import Names
from core.read.numerals import Numerals
from core.read.tokens import Token, lex
from core.read.words import en, en_body, en_everyday, en_flow, en_marks, en_names, en_symptoms, en_talk


@dataclass(frozen=True, slots=True)
class Tables:
    """All that one language brings."""

    numerals: Numerals
    rows: tuple[Rows, ...]
    concepts: Mapping[str, str]
    exercises: Mapping[str, str]
    families: tuple[tuple[str, str], ...]
    lacking: str
    filler: frozenset[str]
    plain: frozenset[str]
    body: Mapping[str, str]
    frames: tuple[FrameRow, ...]
    spoken: Mapping[str, str]
    joined: Mapping[str, str]
    marks: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Language:
    """One language, indexed and ready. ``glossary`` puts its phrases into the first language's words."""

    lexicon: Lexicon
    names: Names
    filler: frozenset[str]
    frames: Frames
    marks: Mapping[str, frozenset[str]]
    glossary: Glossary | None = None
    decimal_comma: bool = False
    own: Mapping[str, str] = field(default_factory=dict)

    def tokens(self, text: str) -> list[Token]:
        """The message as tokens of words that the tables know, as far as they can be known."""
        tokens = lex(text)
        put = self.glossary.put(tokens) if self.glossary is not None else None
        return self.lexicon.spell(tokens) if put is None else put


_ENGLISH: Final = Tables(
    en.NUMERALS,
    (en.UNITS, en.COUNTS, en.SAMENESS, en.LOADS, en.EFFORTS, en.MODS, en.DAYS, en_flow.MOODS, en_flow.FLOWS,
     en_symptoms.ROWS, en_talk.ROWS),
    en_names.CONCEPTS, en_names.EXERCISES, en_names.FAMILIES, en_names.LACKING,
    en_flow.FILLER, en_flow.FILLER | en_everyday.PLAIN,
    en_body.CONCEPTS, en_body.FRAMES, en_body.SPOKEN, en_body.JOINED, en_marks.MARKS,
)  # fmt: skip

TABLES: Final[Mapping[str, Tables]] = {"en": _ENGLISH}
GLOSSED: Final[Mapping[str, str]] = {"es": "core.read.words.es", "de": "core.read.words.de"}
"""Where each further language's tables are; they are loaded when somebody speaks it."""


@cache
def gloss(code: str) -> Gloss:
    """The tables of a further language. Raises KeyError for one that there is not."""
    found: Gloss = import_module(GLOSSED[code]).GLOSS
    return found


@cache
def language(code: str) -> Language:
    """The language of this code; English, which is understood beside every other, for one that is unknown."""
    code = code[:2].casefold()
    if code in GLOSSED:
        first = language("en")
        spoken = gloss(code)
        glossary = Glossary(spoken, first.lexicon, _called(_ENGLISH))
        return replace(first, glossary=glossary, decimal_comma=spoken.decimal_comma, own=glossary.own)
    if code not in TABLES:
        return language("en")
    tables = TABLES[code]
    frames = Frames(tables.body, tables.frames, tables.spoken, tables.joined)
    lexicon = Lexicon(tables.numerals, tables.rows, tables.concepts, tables.plain | frames.words)
    names = Names(tables.exercises, tables.families, tables.lacking)
    return Language(lexicon, names, tables.filler, frames, _marked(tables.marks))


def _marked(marks: Mapping[str, str]) -> dict[str, frozenset[str]]:
    """Each word with its marks."""
    out: dict[str, frozenset[str]] = {}
    for mark, words in marks.items():
        for word in words.split(", "):
            out[word] = out.get(word, frozenset()) | {mark}
    return out


def _called(tables: Tables) -> dict[str, str]:
    """Each exercise by its first name, in the words that people use for it."""
    return {
        exercise: " ".join(
            tables.concepts[word].split(",")[0] for word in names.split(",")[0].split() if not word.startswith("[")
        )
        for exercise, names in tables.exercises.items()
    }
