"""A name that stands alone -> the exercises it may mean. For plans and orders, where a name is all there is.

Spelling is not mended here: a plan is prescribed, so what is not a known name is asked about; ``nearest`` says what
it may have been meant to be.
"""

import re
from functools import cache
from typing import Final

from rapidfuzz import fuzz, process

from core.evidence.exercises import EXERCISES
from core.read.tokens import lex
from core.read.words.languages import language

_NEAR: Final = 82.0
"""Likeness from which a name is offered for another (0 to 100, rapidfuzz's ratio of sorted words). Choice of ours."""
_OFFERED: Final = 3


@cache
def _catalogue() -> dict[str, tuple[str, ...]]:
    names: dict[str, tuple[str, ...]] = {}
    for row in EXERCISES.values():
        names[_plain(row.name)] = (row.id,)
        names[_plain(row.id)] = (row.id,)
    return names


def _plain(text: str) -> str:
    return re.sub(r"[\s'’-]+", " ", text.casefold()).strip()


@cache
def find(name: str, code: str = "en") -> tuple[str, ...]:
    """The ids that a name as written may mean: one when clear, several when not, none when unknown."""
    known = _catalogue().get(_plain(name))
    if known is not None:
        return known
    tongue = language(code)
    words = [token.text for token in lex(name) if token.kind in ("word", "num")]
    concepts: list[str] = []
    at = 0
    while at < len(words):
        end, meanings = tongue.lexicon.names.longest(words, at)
        if end == at:
            return ()
        concepts.append(str(meanings[0][1]))
        at = end
    found = tongue.names.find(tuple(concepts))
    return found[1].ids if found is not None and found[0] == len(concepts) else ()


def nearest(name: str) -> tuple[str, ...]:
    """Exercises that an unknown name may have been meant to be, the likest first."""
    scored = process.extract(_plain(name), list(_catalogue()), scorer=fuzz.token_sort_ratio, score_cutoff=_NEAR)
    ids = dict.fromkeys(_catalogue()[text][0] for text, _, _ in scored)
    return tuple(ids)[:_OFFERED]
