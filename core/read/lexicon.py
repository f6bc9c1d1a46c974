"""A language's tables made ready for reading: phrases into a trie of words, spelling mended by nearness.

Knows no exercise and no grammar; those ask it what words can mean.
"""

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Final

from core.read.numerals import Numerals
from core.read.spelling import Speller, respelled
from core.read.tokens import Token, lex

Rows = tuple[tuple[str, object, str], ...]
Meaning = tuple[str, object]
GLUED: Final = "+"
"""Before a word that is meant only where it is written right behind a number."""


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
                if words[j] == "-" and j > i and words[j - 1] != "-":
                    j += 1
                    continue
                break
            node = step
            j += 1
            if node.meanings:
                end, found = j, node.meanings
        return end, found

    def words(self) -> set[str]:
        """Every word of every phrase."""
        words: set[str] = set()
        stack = [self.root]
        while stack:
            node = stack.pop()
            words.update(node.after)
            stack.extend(node.after.values())
        return words


_NOTHING: Final[list[Meaning]] = []
_PLAIN: Final = re.compile("[a-z ]+")


def _shortened(token: Token) -> bool:
    """Whether an apostrophe was dropped from the word: the bench's, I OHP'd."""
    return token.kind == "word" and token.end - token.start > len(token.text)


def _words(phrase: str) -> list[str]:
    if GLUED in phrase or _PLAIN.fullmatch(phrase):  # nine in ten: a lexer would cut them no differently
        return phrase.split()
    return [token.text for token in lex(phrase)]


FIGURE: Final = "IDIOM"
"""Kind of a figure of speech: its words are none that the reader goes by elsewhere."""


class Lexicon:
    """All tables of one language, indexed. Built once per language."""

    __slots__ = ("concepts", "known", "names", "numerals", "phrases", "plain", "settled", "speller")

    def __init__(
        self, numerals: Numerals, rows: Iterable[Rows], concepts: Mapping[str, str], plain: frozenset[str]
    ) -> None:
        self.numerals = numerals
        self.phrases = Trie()
        self.names = Trie()
        figures: list[str] = []
        for table in rows:
            for kind, value, phrases in table:
                if kind == FIGURE:
                    figures += phrases.split(",")
                    continue
                for phrase in phrases.split(","):
                    self.phrases.add(phrase.strip(), (kind, value))
        self.concepts: dict[str, str] = {}
        for concept, phrases in concepts.items():
            for phrase in phrases.split(","):
                self.concepts[phrase.strip()] = concept
                self.names.add(phrase.strip(), ("NAME", concept))
        named, phrased = self.names.words(), self.phrases.words()
        self.known = frozenset(phrased | named | numerals.words)
        for figure in figures:
            self.phrases.add(figure.strip(), (FIGURE, 0))
        self.plain = plain | self.phrases.words()
        self.settled = self.known | self.plain
        self.speller = Speller(self.known, named)

    def spell(self, tokens: list[Token]) -> list[Token]:
        """The tokens with words mended: runs glued together cut, slips of the finger put right."""
        settled = self.settled
        for one in tokens:
            if one.kind == "word" and (one.text not in settled or _shortened(one)):
                break
        else:  # most messages: no slip and no apostrophe
            return tokens
        out: list[Token] = []
        for token in tokens:
            owner = token.text.endswith("s") and _shortened(token)
            starts = token.text in self.phrases.root.after or token.text in self.names.root.after
            did = token.text.endswith("d") and _shortened(token)
            if did and not starts and token.text[:-1] in self.names.root.after:
                out.append(token._replace(text=token.text[:-1]))
                continue
            if owner and not starts and (token.text[:-1] in self.known or token.text[:-1] in self.plain):
                out.append(token._replace(text=token.text[:-1]))
                continue
            if token.kind != "word" or token.text in settled:
                out.append(token)
                continue
            parts = self.speller.mend(token.text, after_number=bool(out) and token.glued and out[-1].kind == "num")
            if parts == (token.text,):
                out.append(token)
            else:
                out.extend(respelled(token, parts))
        return out
