"""A stretch of the message and all that it can mean."""

from collections.abc import KeysView
from dataclasses import dataclass, field
from typing import Final

from core.read.names import Mention

UNMARKED: Final[frozenset[str]] = frozenset()


@dataclass(slots=True)
class Lexeme:
    """A stretch of the message and all that it can mean.

    ``k`` maps each kind to its value. ``value`` is the number of a NUM. ``glued`` as in Token. ``index`` is its place
    in the message's list.
    """

    k: dict[str, object]
    start: int
    end: int
    text: str
    value: float = 0.0
    glued: bool = False
    plural: bool = False
    mention: Mention | None = None
    pair: tuple[str, str] | None = None
    spelled: bool = False
    index: int = field(default=-1, compare=False)
    marks: frozenset[str] = field(default=UNMARKED, repr=False, compare=False)
    kinds: KeysView[str] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        self.kinds = self.k.keys()

    def has(self, *kinds: str) -> bool:
        """Whether any of these kinds is among its meanings."""
        return not self.kinds.isdisjoint(kinds)

    def is_word(self, *marks: str) -> bool:
        """Whether it is one of the words that a pattern tells apart; the table of the language says which they are."""
        return not self.marks.isdisjoint(marks)

    def grow(self, other: "Lexeme") -> None:
        """Take in the lexeme that follows: its text, and the end of its stretch. No single word any more."""
        self.end = other.end
        self.text += " " + other.text
        self.marks = UNMARKED

    def num(self, kind: str) -> float:
        """The value of a kind, as a number."""
        value = self.k[kind]
        return float(value) if isinstance(value, int | float) else 0.0
