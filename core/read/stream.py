"""The message as a stream of lexemes that readers of one thing each can walk, test and mark as used."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Final

from core.model.acts import Span
from core.read.lexeme import Lexeme

MOST_SKIPPED: Final = 40
"""Small words between a word and what it is about, at most: keeps the cost of rows of them linear."""


@dataclass(slots=True)
class Clause:
    """Lexemes ``first`` up to but without ``last``; whether a line or sentence starts with it, and how that ends."""

    first: int
    last: int
    opens: bool
    opens_line: bool
    blank_before: bool
    asked: bool = False


@dataclass(slots=True)
class Stream:
    """All lexemes of a message, which of them are spoken for, and the text as typed.

    ``own`` gives the lifter's own word for a word of the reader, where a word is kept as such. ``spots`` tells of each
    kind where it stands, so that a reader of one kind looks at no other lexeme.
    """

    text: str
    all: list[Lexeme]
    used: set[int] = field(default_factory=set)
    sided: bool = False
    barred: bool = False
    parts: list[Clause] = field(default_factory=list)
    own: Mapping[str, str] = field(default_factory=dict)
    spots: dict[str, list[int]] = field(init=False)

    def __post_init__(self) -> None:
        spots: dict[str, list[int]] = {}
        for i, lexeme in enumerate(self.all):
            for kind in lexeme.k:
                if kind in spots:
                    spots[kind].append(i)
                else:
                    spots[kind] = [i]
        self.spots = spots

    def says(self, kinds: frozenset[str]) -> bool:
        """Whether any lexeme of the message can be one of these kinds: most messages lack most of them."""
        return not self.spots.keys().isdisjoint(kinds)

    def places(self, *kinds: str) -> list[int]:
        """Where lexemes that can be one of these kinds stand, in order."""
        found = [self.spots[kind] for kind in kinds if kind in self.spots]
        if len(found) > 1:
            return sorted(set().union(*found))
        return found[0] if found else []

    def __len__(self) -> int:
        return len(self.all)

    def is_(self, i: int, *kinds: str) -> bool:
        """Whether the lexeme at ``i`` exists, is free and can be one of these kinds."""
        if i < 0 or i in self.used:
            return False
        try:
            return not self.all[i].kinds.isdisjoint(kinds)
        except IndexError:  # behind the last lexeme; asked far more often inside, where a try costs nothing
            return False

    def skip(self, i: int, *kinds: str) -> int:
        """The first index from ``i`` on that is none of these kinds; of a long row of such words only the first few are
        passed, for nothing that belongs together stands so far apart."""
        end = i + MOST_SKIPPED
        while i < end and self.is_(i, *kinds):
            i += 1
        return i

    def num(self, i: int) -> float | None:
        """The bare number at ``i``; None where there is none or it carries a unit."""
        if self.is_(i, "NUM"):
            return self.all[i].value
        return None

    def dur(self, i: int, *, bare: bool = False) -> float | None:
        """Seconds at ``i``: a duration, ``30s``, a clock-like 1:30, or any bare number if ``bare``."""
        if not self.is_(i, "DUR", "NUM"):
            return None
        lexeme = self.all[i]
        if "DUR" in lexeme.k:
            return lexeme.num("DUR")
        if lexeme.has("REPQ", "SETQ", "TIMESQ"):
            return None
        if lexeme.plural and not lexeme.spelled:
            return lexeme.value
        return lexeme.value if bare else None

    def use(self, indices: Iterable[int]) -> None:
        """Mark lexemes as spoken for."""
        self.used.update(indices)

    def word(self, i: int) -> str:
        """The word at ``i`` as the lifter would write it by itself."""
        lexeme = self.all[i]
        typed = self.text[lexeme.start : lexeme.end].casefold()
        return lexeme.text if typed == lexeme.text else self.own.get(lexeme.text, lexeme.text)

    def span(self, first: int, last: int) -> Span:
        """From the start of one lexeme to the end of another, in the text as typed."""
        return self.all[first].start, self.all[max(first, last)].end
