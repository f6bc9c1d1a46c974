"""Slips in the words of an order put right: only its own words, never a name nor what is to be passed on."""

from collections.abc import Sequence
from typing import Final

from rapidfuzz import process
from rapidfuzz.distance import OSA

from core.order.names import find_name
from core.order.words import FREE_AFTER, KEYWORDS

_SURE: Final = 0.75
"""Likeness (0 to 1, by slips) from which a word is taken for a word of orders. Choice of ours."""

_LEAST_MENDED: Final = 3

_OWN_WORDS: Final = 2
"""Of an order with words to be passed on only so many are its own; the others stay as they were typed."""


def mended(text: str, roster: Sequence[str]) -> str:
    """The order's own words with slips put right, in the first line only; names stay as typed."""
    first, line, rest = text.partition("\n")
    head, colon, tail = first.partition(":")
    if colon and not line and find_name(head, roster).name:
        return head + colon + mended(tail, roster)
    words = head.split(" ")
    most = _OWN_WORDS if _mend(words[0]).lower() in FREE_AFTER else len(words)
    words = [word if at >= most or find_name(word, roster).name else _mend(word) for at, word in enumerate(words)]
    return " ".join(words) + colon + tail + line + rest


def _mend(word: str) -> str:
    if len(word) < _LEAST_MENDED or not word.isalpha() or word.lower() in KEYWORDS:
        return word
    alike = [one for one in KEYWORDS if one[0] == word[0].lower()]
    best = process.extractOne(word.lower(), alike, scorer=OSA.normalized_similarity, score_cutoff=_SURE)
    return best[0] if best else word
