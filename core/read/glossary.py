"""Another language's phrases put into the words that the reader's own tables know, token by token.

The grammar, the names and the signs are written once, over the reader's own words; a further language is only a table
from its phrases to those. Knows no language and no lift. What is said in the reader's own words is left as it is.
"""

import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from itertools import product
from typing import Final, cast

from core.read.lexicon import GLUED, Lexicon, Meaning, Trie
from core.read.numerals import Numerals, compose
from core.read.slots import Slot, Slots
from core.read.spelling import SHORTEST_MENDED, Speller, respelled
from core.read.tokens import Token, lex

GlossRow = tuple[str, str]
"""Words of the reader, and the phrases that mean them. Nothing on the left: words that say nothing. A phrase may have
words that end in ``*``: in any of the language's endings; alternatives parted by ``|``, an empty one for a word that
may be left out. An alternative of several words has ``_`` between them. ``+`` before one: right behind a number."""

NAMED: Final = "NAME"
"""Kind of a phrase that is part of an exercise's name."""
_ALSO: Final = {"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss", "ø": "o", "æ": "ae", "œ": "oe"}
"""Letters that are typed as two where the keyboard lacks them."""


@dataclass(frozen=True, slots=True)
class Gloss:
    """All that a further language brings.

    ``exercises`` maps an id to its names; ``words`` are rows of everything else, ``names`` those of them that exercise
    names are made of. ``plain`` are everyday words that mean nothing here and are no slips of others. ``behind_name``
    maps a word between a name and a number to what it means there (mancuernas de 22).
    """

    numerals: Numerals
    endings: tuple[str, ...]
    words: tuple[GlossRow, ...]
    names: tuple[GlossRow, ...]
    exercises: Mapping[str, str]
    plain: frozenset[str]
    decimal_comma: bool = True
    behind_name: Mapping[str, str] = field(default_factory=dict)


class Glossary:
    """One further language, indexed over the reader's own."""

    __slots__ = (
        "_first",
        "_gloss",
        "_glued",
        "_known",
        "_named",
        "_ours",
        "_phrases",
        "_slots",
        "_speller",
        "_theirs",
        "own",
    )

    def __init__(self, gloss: Gloss, lexicon: Lexicon, called: Mapping[str, str]) -> None:
        """``lexicon`` holds the reader's own words; ``called`` maps an exercise to a name in them."""
        self._gloss = gloss
        self._phrases = Trie()
        self._slots = Slots()
        named = Trie()
        self.own = {
            meant: phrases.split(",")[0].rstrip("*") for meant, phrases in reversed(gloss.words) if " " not in meant
        }
        exercises = tuple((called[one], phrases) for one, phrases in gloss.exercises.items())
        for rows, tries in ((gloss.words, ()), (gloss.names, (named,)), (exercises, (named,))):
            kind = NAMED if tries else ""
            for meant, phrases in rows:
                said = tuple(token.text for token in lex(meant))
                spelled, slotted = _apart(phrases)
                for one in slotted:
                    self._slots.add(slots_of(one, gloss.endings), (kind, said))
                for phrase in spread(spelled, gloss.endings):
                    for trie in (self._phrases, *tries):
                        trie.add(phrase, (kind, said))
        plain = frozenset(form for word in gloss.plain for form in typed(word))
        counted = gloss.numerals
        words = self._phrases.words() | self._slots.words()
        words |= counted.words | counted.point | counted.joint | counted.half
        self._known = frozenset(words | plain) | lexicon.known | lexicon.plain
        self._ours = frozenset(words | plain) - lexicon.known - lexicon.plain
        self._theirs = (lexicon.known | lexicon.plain) - words - plain - lexicon.names.words()
        self._first = lexicon
        self._named = self._ours & named.words()
        self._glued = frozenset(word for word in words if word.startswith(GLUED))
        short = {word for word in plain if len(word) < SHORTEST_MENDED}
        self._speller = Speller(frozenset(words | short | lexicon.names.words()), named.words())

    def put(self, tokens: list[Token]) -> list[Token] | None:
        """The tokens in the reader's words; None for a message that is written in those already."""
        bare = [_bare(token) for token in tokens]
        if not self._is_ours(bare):
            return None
        bare = self._spelled(bare)
        words = self._keys(bare)
        out: list[Token] = []
        i, named = 0, False
        while i < len(bare):
            behind = self._gloss.behind_name.get(words[i]) if named else None
            if behind is not None and self._is_number(bare, i + 1):
                out.append(bare[i]._replace(text=behind))
                i, named = i + 1, False
                continue
            put, i, named = self._put_at(bare, words, i)
            out.extend(put)
        return out

    def _put_at(self, tokens: list[Token], words: list[str], i: int) -> tuple[list[Token], int, bool]:
        """What the phrase or number at ``i`` means, where it ends, and whether it names an exercise."""
        end, meanings = self._phrases.longest(words, i)
        further, meaning = self._slots.longest(words, i)
        if further > end:
            end, meanings = further, [cast("Meaning", meaning)]
        said = compose(self._gloss.numerals, tokens, i) if words[i] in self._gloss.numerals.starts else None
        if said is not None and said[1] >= end:
            value, last, _ = said
            first = tokens[i]
            number = Token("num", f"{value:g}", value, first.start, tokens[last - 1].end, first.glued)
            return [number], last, False
        if end == i:
            return [tokens[i]], i + 1, False
        kind, meant = meanings[0]
        return _said(meant, tokens[i:end]), end, kind == NAMED

    def _is_number(self, tokens: list[Token], i: int) -> bool:
        if i >= len(tokens):
            return False
        return tokens[i].kind == "num" or tokens[i].text in self._gloss.numerals.starts

    def _is_ours(self, tokens: list[Token]) -> bool:
        """Whether the message speaks this language rather than the reader's own."""
        words = {token.text for token in tokens if token.kind == "word"}
        if words & self._named:
            return True
        ours, theirs = len(words & self._ours), len(words & self._theirs)
        if not ours and not theirs:
            unknown = words - self._known
            ours = sum(self._speller.mends(word) for word in unknown)
            theirs = sum(self._first.speller.mends(word) for word in unknown)
        return ours >= theirs

    def _spelled(self, tokens: list[Token]) -> list[Token]:
        out: list[Token] = []
        for token in tokens:
            if token.kind != "word" or token.text in self._known:
                out.append(token)
                continue
            parts = self._speller.mend(token.text, after_number=bool(out) and token.glued and out[-1].kind == "num")
            out.extend([token] if parts == (token.text,) else respelled(token, parts))
        return out

    def _keys(self, tokens: list[Token]) -> list[str]:
        """What each token is looked up by: a word glued to a number by the row for that, if there is one."""
        out: list[str] = []
        for i, token in enumerate(tokens):
            glued = GLUED + token.text
            behind = token.glued and i > 0 and tokens[i - 1].kind == "num"
            out.append(glued if behind and glued in self._glued else token.text)
        return out


def _said(words: object, source: list[Token]) -> list[Token]:
    """The reader's words in place of the source's, each with a share of its text."""
    meant = words if isinstance(words, tuple) else ()
    out: list[Token] = []
    for n, word in enumerate(meant):
        at = source[min(n, len(source) - 1)]
        end = source[-1].end if n == len(meant) - 1 else at.end
        kind = "num" if word.isdigit() else "word" if word.isalpha() else "mark"
        out.append(Token(kind, word, float(word) if kind == "num" else 0.0, at.start, end, n == 0 and at.glued))
    return out


def _bare(token: Token) -> Token:
    if token.kind != "word" or token.text.isascii():
        return token
    return token._replace(text=_stripped(token.text))


def _stripped(word: str) -> str:
    """The word without accents: most keyboards of tired people lack them."""
    folded = word.replace("ß", "ss")
    return "".join(one for one in unicodedata.normalize("NFKD", folded) if not unicodedata.combining(one))


def typed(phrase: str) -> set[str]:
    """A phrase as it may be typed: without accents, or with two letters for one."""
    doubled = "".join(_ALSO.get(one, one) for one in phrase)
    return {_stripped(phrase), _stripped(doubled)}


def _ended(word: str, endings: Iterable[str]) -> list[str]:
    return [word[:-1] + ending for ending in endings] if word.endswith("*") else [word]


MOST_SPELLED: Final = 12
"""A phrase of more forms than this is matched slot by slot; fewer are spelled out."""


def _apart(phrases: str) -> tuple[str, list[str]]:
    """Phrases parted by commas: those to be spelled out, and those of too many alternatives for that."""
    few: list[str] = []
    many: list[str] = []
    for phrase in phrases.split(","):
        forms = 1
        for word in phrase.split():
            forms *= word.count("|") + 1
        (many if forms > MOST_SPELLED else few).append(phrase)
    return ",".join(few), many


def slots_of(phrase: str, endings: Iterable[str]) -> list[Slot]:
    """The phrase as slots, each word in every form that may be typed."""
    out: list[Slot] = []
    for word in phrase.split():
        choices = word.split("|")
        forms = {form for one in choices if one for form in spread(one.replace("_", " "), endings)}
        runs = frozenset(tuple(form.split()) for form in forms if " " in form)
        out.append((frozenset(form for form in forms if " " not in form), runs, "" in choices))
    return out


def spread(phrases: str, endings: Iterable[str]) -> set[str]:
    """Every form of phrases parted by commas."""
    out: set[str] = set()
    for phrase in phrases.split(","):
        forms = [[form for one in word.split("|") for form in _ended(one, endings)] for word in phrase.split()]
        for words in product(*forms):
            out |= typed(" ".join(filter(None, words)).replace("_", " "))
    return out
