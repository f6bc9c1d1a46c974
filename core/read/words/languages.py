"""Which languages there are, and their tables put together. Rows, no logic beyond choosing."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import Final

from core.read.frames import FrameRow, Frames
from core.read.lexicon import Lexicon, Rows
from core.read.names import Names
from core.read.numerals import Numerals
from core.read.words import en, en_body, en_flow, en_names, en_symptoms


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


@dataclass(frozen=True, slots=True)
class Language:
    """One language, indexed and ready."""

    lexicon: Lexicon
    names: Names
    filler: frozenset[str]
    frames: Frames


_ENGLISH: Final = Tables(
    en.NUMERALS,
    (en.UNITS, en.COUNTS, en.SAMENESS, en.LOADS, en.EFFORTS, en.MODS, en.DAYS, en_flow.MOODS, en_flow.FLOWS,
     en_symptoms.ROWS),
    en_names.CONCEPTS, en_names.EXERCISES, en_names.FAMILIES, en_names.LACKING,
    en_flow.FILLER, en_flow.FILLER | en_symptoms.PLAIN,
    en_body.CONCEPTS, en_body.FRAMES, en_body.SPOKEN, en_body.JOINED,
)  # fmt: skip

TABLES: Final[Mapping[str, Tables]] = {"en": _ENGLISH}


@cache
def language(code: str) -> Language:
    """The language of this code; English for one that is unknown."""
    tables = TABLES.get(code[:2], _ENGLISH)
    frames = Frames(tables.body, tables.frames, tables.spoken, tables.joined)
    lexicon = Lexicon(tables.numerals, tables.rows, tables.concepts, tables.plain | frames.words)
    return Language(lexicon, Names(tables.exercises, tables.families, tables.lacking), tables.filler, frames)
