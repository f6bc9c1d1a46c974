"""Number words into numbers: tens with ones, hundreds, halves, and the short way of saying loads (one thirty five).

Works from a language's table of number words; knows nothing of lifts.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from core.read.tokens import Token


@dataclass(frozen=True, slots=True)
class Numerals:
    """A language's number words. ``ones`` holds 0 to 19, ``tens`` 20 to 90, ``whole`` any word that stands alone.

    ``short_hundreds``: a digit before a two-figure number counts hundreds. ``plurals`` are words for a pair of
    implements of that load. ``stems``: where numbers are written as one word, ones before tens (einundzwanzig), the
    ones as such a word has them.
    """

    ones: Mapping[str, int]
    tens: Mapping[str, int]
    hundred: frozenset[str]
    point: frozenset[str]
    joint: frozenset[str]
    half: frozenset[str]
    zero_between: frozenset[str]
    article: frozenset[str]
    plurals: Mapping[str, int]
    whole: Mapping[str, float]
    short_hundreds: bool = False
    stems: Mapping[str, int] = field(default_factory=dict)
    compounds: Mapping[str, float] = field(init=False)
    words: frozenset[str] = field(init=False)
    starts: frozenset[str] = field(init=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "compounds", _in_one_word(self))
        words = frozenset({*self.ones, *self.tens, *self.plurals, *self.whole, *self.hundred, *self.compounds})
        object.__setattr__(self, "words", words)
        object.__setattr__(self, "starts", words | self.article)


def _in_one_word(table: Numerals) -> dict[str, float]:
    """Numbers of several parts that are written without a space, hundreds included."""
    if not table.stems:
        return {}
    pairs = {
        f"{stem}{joint}{ten}": one + table.tens[ten]
        for stem, one in table.stems.items()
        for joint in table.joint
        for ten in table.tens
    }
    below = {**table.ones, **table.tens, **pairs}
    hundreds = {
        f"{stem}{hundred}{rest}": 100 * count + below.get(rest, 0)
        for stem, count in {"": 1, **table.stems}.items()
        for hundred in table.hundred
        for rest in ("", *below)
    }
    return {word: float(value) for word, value in {**pairs, **hundreds}.items()}


def compose(table: Numerals, tokens: list[Token], i: int) -> tuple[float, int, bool] | None:
    """The number said from token ``i`` on: its value, the index after it, and whether it is a plural."""
    word = tokens[i].text
    if word in table.plurals:
        return float(table.plurals[word]), i + 1, True
    if word in table.whole:
        return table.whole[word], i + 1, False
    if word in table.compounds:
        return *_fraction(table, tokens, table.compounds[word], i + 1), False
    start = _below_hundred(table, tokens, i)
    if start is None:
        return _leading_hundred(table, tokens, i)
    value, j, plural = start
    if plural:
        return value, j, True
    value, j, plural = _hundreds(table, tokens, value, j)
    if not plural:
        value, j = _fraction(table, tokens, value, j)
    return value, j, plural


def _word(tokens: list[Token], i: int) -> str:
    if i < len(tokens) and tokens[i].kind == "word":
        return tokens[i].text
    return ""


def _step(tokens: list[Token], i: int) -> int:
    """Past a hyphen inside a number word (twenty-five)."""
    return i + 1 if i < len(tokens) and tokens[i].text == "-" and tokens[i].glued else i


def _below_hundred(table: Numerals, tokens: list[Token], i: int) -> tuple[float, int, bool] | None:
    word = _word(tokens, i)
    if word in table.ones:
        return float(table.ones[word]), i + 1, False
    if word in table.plurals:
        return float(table.plurals[word]), i + 1, True
    if word not in table.tens:
        return None
    ten = float(table.tens[word])
    j = _step(tokens, i + 1)
    follow = _word(tokens, j)
    if follow in table.joint and 0 < table.ones.get(_word(tokens, j + 1), 0) < 10:
        return ten + table.ones[_word(tokens, j + 1)], j + 2, False
    if 0 < table.ones.get(follow, 0) < 10:
        return ten + table.ones[follow], j + 1, False
    if 0 < table.plurals.get(follow, 0) < 10:
        return ten + table.plurals[follow], j + 1, True
    return ten, i + 1, False


def _leading_hundred(table: Numerals, tokens: list[Token], i: int) -> tuple[float, int, bool] | None:
    word = _word(tokens, i)
    if word in table.article and _word(tokens, i + 1) in table.hundred:
        return _tail(table, tokens, 100.0, i + 2)
    if word in table.hundred:
        return _tail(table, tokens, 100.0, i + 1)
    return None


def _hundreds(table: Numerals, tokens: list[Token], value: float, j: int) -> tuple[float, int, bool]:
    follow = _word(tokens, j)
    if value < 20 and follow in table.hundred:
        return _tail(table, tokens, value * 100, j + 1)
    if not table.short_hundreds or not 1 <= value <= 9:
        return value, j, False
    if follow in table.zero_between and 0 < table.ones.get(_word(tokens, j + 1), 0) < 10:
        return value * 100 + table.ones[_word(tokens, j + 1)], j + 2, False
    rest = _below_hundred(table, tokens, j)
    if rest is not None and rest[0] >= 10:
        return value * 100 + rest[0], rest[1], rest[2]
    return value, j, False


def _tail(table: Numerals, tokens: list[Token], value: float, j: int) -> tuple[float, int, bool]:
    k = j + 1 if _word(tokens, j) in table.joint else j
    rest = _below_hundred(table, tokens, k)
    if rest is None or rest[0] == 0:
        return value, j, False
    return value + rest[0], rest[1], rest[2]


def _fraction(table: Numerals, tokens: list[Token], value: float, j: int) -> tuple[float, int]:
    if _word(tokens, j) in table.point and 0 <= table.ones.get(_word(tokens, j + 1), -1) < 10:
        return value + table.ones[_word(tokens, j + 1)] / 10, j + 2
    if _word(tokens, j) in table.joint:
        k = j + 2 if _word(tokens, j + 1) in table.article else j + 1
        if _word(tokens, k) in table.half:
            return value + 0.5, k + 1
    return value, j
