"""A language's tables made ready for reading: phrases into a trie of words, spelling mended by nearness.

Knows no exercise and no grammar; those ask it what words can mean.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from functools import lru_cache
from typing import Final

from rapidfuzz.distance import OSA

from core.read.numerals import Numerals
from core.read.tokens import Token, lex

Rows = tuple[tuple[str, object, str], ...]
Meaning = tuple[str, object]

LONG_WORD: Final = 7
"""Letters from which two slips are forgiven instead of one (common practice of spelling correction, no source)."""
SHORTEST_PART: Final = 2
"""Letters of the shortest word that a name written without spaces is cut into (abwheel)."""
SHORTEST_MENDED: Final = 4
"""Words shorter than this are taken as typed: too many other words lie one slip away."""


@dataclass(slots=True)
class Node:
    """One step of the phrase trie: what ends here, and what can follow."""

    meanings: list[Meaning] = field(default_factory=list)
    after: dict[str, "Node"] = field(default_factory=dict)


class Trie:
    """Phrases to meanings; the longest phrase wins. Hyphens inside a phrase are passed over."""

    __slots__ = ("root",)

    def __init__(self) -> None:
        self.root = Node()

    def add(self, phrase: str, meaning: Meaning) -> None:
        """Enter one phrase."""
        node = self.root
        for word in _words(phrase):
            node = node.after.setdefault(word, Node())
        node.meanings.append(meaning)

    def longest(self, words: list[str], i: int) -> tuple[int, list[Meaning]]:
        """The end of the longest phrase that starts at ``i``, and what it means; ``i`` itself when there is none."""
        node = self.root
        end, found = i, _NOTHING
        j, last = i, len(words)
        while j < last:
            step = node.after.get(words[j])
            if step is None:
                if words[j] == "-" and j > i:
                    j += 1
                    continue
                break
            node = step
            j += 1
            if node.meanings:
                end, found = j, node.meanings
        return end, found


_NOTHING: Final[list[Meaning]] = []


def _words(phrase: str) -> list[str]:
    if phrase.isalpha():
        return [phrase]
    return [token.text for token in lex(phrase)]


class Lexicon:
    """All tables of one language, indexed. Built once per language."""

    __slots__ = ("_by_start", "_mend", "_name_words", "concepts", "known", "names", "numerals", "phrases", "plain")

    def __init__(
        self, numerals: Numerals, rows: Iterable[Rows], concepts: Mapping[str, str], plain: frozenset[str]
    ) -> None:
        self.numerals = numerals
        self.phrases = Trie()
        self.names = Trie()
        for table in rows:
            for kind, value, phrases in table:
                for phrase in phrases.split(","):
                    self.phrases.add(phrase.strip(), (kind, value))
        self.concepts: dict[str, str] = {}
        for concept, phrases in concepts.items():
            for phrase in phrases.split(","):
                self.concepts[phrase.strip()] = concept
                self.names.add(phrase.strip(), ("NAME", concept))
        number_words = {*numerals.ones, *numerals.tens, *numerals.plurals, *numerals.whole, *numerals.hundred}
        self._name_words = frozenset(word for word in _all_words(self.names) if len(word) >= SHORTEST_PART)
        self.known = frozenset(_all_words(self.phrases) | _all_words(self.names) | number_words)
        self.plain = plain
        by_start: dict[tuple[int, str], list[str]] = {}
        for word in sorted(self.known):
            if len(word) >= SHORTEST_MENDED and word.isalpha():
                by_start.setdefault((len(word), word[0]), []).append(word)
        self._by_start = by_start
        self._mend = lru_cache(maxsize=4096)(self._mend_word)

    def spell(self, tokens: list[Token]) -> list[Token]:
        """The tokens with words mended: runs glued together cut, slips of the finger put right."""
        out: list[Token] = []
        for token in tokens:
            owner = token.kind == "word" and token.text.endswith("s") and token.end - token.start > len(token.text)
            starts = token.text in self.phrases.root.after or token.text in self.names.root.after
            if owner and not starts and (token.text[:-1] in self.known or token.text[:-1] in self.plain):
                out.append(token._replace(text=token.text[:-1]))
                continue
            if token.kind != "word" or token.text in self.known or token.text in self.plain:
                out.append(token)
                continue
            parts = self._mend(token.text, bool(out) and token.glued and out[-1].kind == "num")
            if parts == (token.text,):
                out.append(token)
            else:
                out.extend(_respelled(token, parts))
        return out

    def _mend_word(self, word: str, after_number: bool) -> tuple[str, ...]:
        if len(word) > 24:
            return (word,)
        cut = self._cut(word, after_number)
        if cut is not None:
            return cut
        nearest = self._nearest(word)
        return (word,) if nearest is None else (nearest,)

    def _cut(self, word: str, after_number: bool) -> tuple[str, ...] | None:
        """A run of known words without spaces; behind a number short ones count too (kgx, minrest)."""
        known, least = (self.known, 1) if after_number else (self._name_words, SHORTEST_PART)
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
        names = self._name_words
        best: dict[int, list[str]] = {}
        swapped = word[1::-1]
        for length in range(len(word) - most, len(word) + most + 1):
            near = self._by_start.get((length, word[0]), _NO_WORDS)
            turned = self._by_start.get((length, word[1]), _NO_WORDS) if word[1] != word[0] else _NO_WORDS
            for other in (*near, *(one for one in turned if one[:2] == swapped)):
                slips = OSA.distance(word, other, score_cutoff=most)
                if slips <= most and _forgiven(word, other, slips, names):
                    best.setdefault(slips, []).append(other)
        if not best:
            return None
        nearest = sorted(best[min(best)], key=lambda one: (-len(one), one not in self._name_words))
        stems = {one.rstrip("s") for one in nearest}
        return nearest[0] if len(stems) == 1 or len(word) > SHORTEST_MENDED else None


_NO_WORDS: Final[list[str]] = []


def _forgiven(word: str, other: str, slips: int, names: frozenset[str]) -> bool:
    """Whether so many slips are forgiven between these words: two only in a name, and not two wrong letters."""
    if slips > 1 and (other not in names or (len(other) == len(word) and sorted(other) != sorted(word))):
        return False
    return len(word) > SHORTEST_MENDED or len(other) > len(word) or sorted(word) == sorted(other)


def _respelled(token: Token, parts: tuple[str, ...]) -> list[Token]:
    if len(parts) == 1:
        return [token._replace(text=parts[0])]
    out: list[Token] = []
    at = token.start
    for n, part in enumerate(parts):
        end = token.end if n == len(parts) - 1 else min(at + len(part), token.end)
        out.append(Token("word", part, 0.0, at, end, token.glued or n > 0))
        at = end
    return out


def _all_words(trie: Trie) -> set[str]:
    words: set[str] = set()
    stack = [trie.root]
    while stack:
        node = stack.pop()
        words.update(node.after)
        stack.extend(node.after.values())
    return words
