"""Slips of the finger put right by nearness to words that are known, and runs of words cut apart.

Knows no language: the words come from a language's tables.
"""

from collections.abc import Callable, Iterable
from functools import cache, lru_cache
from typing import Final

from core.read.tokens import Token

LONG_WORD: Final = 7
"""Letters from which two slips are forgiven instead of one (common practice of spelling correction, no source)."""
SHORTEST_PART: Final = 2
"""Letters of the shortest word that a name written without spaces is cut into (abwheel)."""
SHORTEST_MENDED: Final = 4
"""Words shorter than this are taken as typed: too many other words lie one slip away."""
LONGEST_CUT: Final = 40
"""Letters of the longest run that is cut into words; no name is longer."""
LONGEST_MENDED: Final = 24
"""Letters of the longest word whose spelling is mended."""
MOST_REMEMBERED: Final = 4096


class Speller:
    """Mends single words. ``names`` are the words of exercise names, where more is forgiven."""

    __slots__ = ("_by_start", "_names", "known", "mend")

    def __init__(self, known: frozenset[str], names: Iterable[str]) -> None:
        self.known = known
        self._names = frozenset(word for word in names if len(word) >= SHORTEST_PART)
        by_start: dict[tuple[int, str], list[str]] = {}
        for word in sorted(known):
            if len(word) >= SHORTEST_MENDED and word.isalpha():
                by_start.setdefault((len(word), word[0]), []).append(word)
        self._by_start = by_start
        self.mend = lru_cache(maxsize=MOST_REMEMBERED)(self._mend)

    def mends(self, word: str) -> bool:
        """Whether the word is a slip of one that is known."""
        return self.mend(word, after_number=False) != (word,)

    def _mend(self, word: str, after_number: bool) -> tuple[str, ...]:
        """The word or words that were meant; the word itself where none is near enough."""
        if len(word) > LONGEST_CUT:
            return (word,)
        cut = self._cut(word, after_number)
        if cut is not None:
            return cut
        nearest = self._nearest(word) if len(word) <= LONGEST_MENDED else None
        return (word,) if nearest is None else (nearest,)

    def _cut(self, word: str, after_number: bool) -> tuple[str, ...] | None:
        """A run of known words without spaces; behind a number short ones count too (kgx, minrest)."""
        known, least = (self.known, 1) if after_number else (self._names, SHORTEST_PART)
        for i in range(len(word) - least, least - 1, -1):
            left, right = word[:i], word[i:]
            if left not in known:
                continue
            if right in known:
                return left, right
            for j in range(1, len(right)) if after_number else ():
                if right[:j] in known and right[j:] in known:
                    return left, right[:j], right[j:]
        return None

    def _nearest(self, word: str) -> str | None:
        if len(word) < SHORTEST_MENDED:
            return None
        most = 2 if len(word) >= LONG_WORD else 1
        best: dict[int, list[str]] = {}
        swapped = word[1::-1]
        for length in range(len(word) - most, len(word) + most + 1):
            near = self._by_start.get((length, word[0]), _NO_WORDS)
            turned = self._by_start.get((length, word[1]), _NO_WORDS) if word[1] != word[0] else _NO_WORDS
            for other in (*near, *(one for one in turned if one[:2] == swapped)):
                slips = _distance()(word, other, score_cutoff=most)
                if slips <= most and _forgiven(word, other, slips, self._names):
                    best.setdefault(slips, []).append(other)
        if not best:
            return None
        nearest = sorted(best[min(best)], key=lambda one: (-len(one), one not in self._names))
        stems = {one.rstrip("s") for one in nearest}
        return nearest[0] if len(stems) == 1 or len(word) > SHORTEST_MENDED else None


@cache
def _distance() -> Callable[..., int]:
    """How many letters apart two words are, two swapped counting as one; loaded at the first slip: it takes a while."""
    from rapidfuzz.distance import OSA

    distance: Callable[..., int] = OSA.distance
    return distance


_NO_WORDS: Final[list[str]] = []


def _forgiven(word: str, other: str, slips: int, names: frozenset[str]) -> bool:
    """Whether so many slips are forgiven between these words: two only in a name, and not two wrong letters."""
    if slips > 1 and (other not in names or (len(other) == len(word) and sorted(other) != sorted(word))):
        return False
    return len(word) > SHORTEST_MENDED or len(other) > len(word) or sorted(word) == sorted(other)


def respelled(token: Token, parts: tuple[str, ...]) -> list[Token]:
    """The token as the words that were meant, each with its share of the text."""
    if len(parts) == 1:
        return [token._replace(text=parts[0])]
    out: list[Token] = []
    at = token.start
    for n, part in enumerate(parts):
        end = token.end if n == len(parts) - 1 else min(at + len(part), token.end)
        out.append(Token("word", part, 0.0, at, end, token.glued or n > 0))
        at = end
    return out
