"""Exercise names: words in any order to one exercise, to several that share the name, or to one that is lacking.

Knows the language's name tables and the catalogue's ids; nothing of sets.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations
from typing import Final

MOST_REMEMBERED: Final = 2048
LONGEST_NAME: Final = 6
"""Words in the longest name that is looked for."""


@dataclass(frozen=True, slots=True)
class Mention:
    """What a name can be: one id, several, or none of the catalogue's (heard, but lacking)."""

    ids: tuple[str, ...]
    generic: bool = False
    words: frozenset[str] = frozenset()

    @property
    def lacking(self) -> bool:
        """True for a name that people use for something the catalogue lacks."""
        return not self.ids


class Names:
    """All names of one language, by the set of their words."""

    __slots__ = ("_remembered", "by_words")

    def __init__(self, exercises: Mapping[str, str], families: tuple[tuple[str, str], ...], lacking: str) -> None:
        self._remembered = lru_cache(maxsize=MOST_REMEMBERED)(self._find)
        self.by_words: dict[frozenset[str], Mention] = {}
        for words in _expanded(lacking):
            self.by_words[words] = Mention((), words=words)
        for names, members in families:
            for words in _expanded(names):
                self.by_words[words] = Mention(tuple(members.split()), generic=len(members.split()) > 1, words=words)
        for exercise, names in exercises.items():
            for words in _expanded(names):
                self.by_words[words] = Mention((exercise,), words=words)

    def find(self, concepts: tuple[str, ...]) -> tuple[int, Mention] | None:
        """The longest name made of the first few of these words: how many it takes, and what it is. Remembered: people
        name the same few exercises."""
        return self._remembered(concepts)

    def _find(self, concepts: tuple[str, ...]) -> tuple[int, Mention] | None:
        for length in range(min(len(concepts), LONGEST_NAME), 0, -1):
            mention = self.by_words.get(frozenset(concepts[:length]))
            if mention is not None:
                return length, mention
        return None


def _expanded(names: str) -> list[frozenset[str]]:
    out: list[frozenset[str]] = []
    for name in names.split(","):
        words = name.split()
        must = [word for word in words if not word.startswith("[")]
        may = [word.strip("[]") for word in words if word.startswith("[")]
        for count in range(len(may) + 1):
            out.extend(frozenset((*must, *chosen)) for chosen in combinations(may, count))
    return out
