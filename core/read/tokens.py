"""Text into tokens with spans. Folds letter case, digits, dashes and multiplication signs; knows no words."""

import re
import unicodedata
from typing import Final, NamedTuple

_DASHES: Final = "‐‑‒–—―−﹣－ー"
_TIMES: Final = "×✕✖⨯⨉*∗"
_TICKS: Final = "✓✔✅☑√"
_CROSSES: Final = "✗✘❌☐⬜❎◻"
_QUOTES: Final = {
    "’": "'",
    "‘": "'",
    "`": "'",
    "´": "'",
    "“": '"',
    "”": '"',
    "„": '"',
    "«": '"',
    "»": '"',
    "¿": " ",
    "¡": " ",
}
_ARROWS: Final = {"→": ">", "➡": ">", "➔": ">", "⇒": ">", "›": ">"}
_FRACTIONS: Final = {"½": ".5", "¼": ".25", "¾": ".75"}
_LAUGHTER: Final = "😂🤣😹😆"
_FOLD: Final = (
    dict.fromkeys(_DASHES, "-")
    | dict.fromkeys(_TIMES, "x")
    | dict.fromkeys(_TICKS, "✓")
    | dict.fromkeys(_CROSSES, "✗")
    | _QUOTES
    | _ARROWS
)
_DROPPED: Final = frozenset({"So", "Sk", "Cf", "Mn", "Me", "Cs", "Co", "Cn"})
"""Unicode categories that say nothing here: emoji, joiners, marks."""

_CUT: Final = re.compile(
    r"[^\S\r\n\x0b\x0c\x85\u2028\u2029]*+(?:(?P<time>\d{1,2}:[0-5]\d(?![\d/]))|(?P<num>\d+(?:[.,]\d+)*)|(?P<word>[^\W\d_]+(?:'[^\W\d_]+)*)"
    r"|(?P<line>[\r\n\x0b\x0c\x85\u2028\u2029]+)|(?P<mark>\S))?"
)
"""One token with the blanks before it; at the end of a message blanks or nothing alone. Nothing here is tried twice."""


class Token(NamedTuple):
    """One token. ``kind`` is num, time, word, line or mark; ``glued`` means nothing stood between it and the last one.

    ``value`` is a number, or seconds for a time. ``pair`` holds both sides of one comma between digits, which may be
    a decimal comma or part a list. ``upper`` tells that the first letter was typed as a capital.
    """

    kind: str
    text: str
    value: float
    start: int
    end: int
    glued: bool
    pair: tuple[str, str] | None = None
    upper: bool = False


def _fold(text: str) -> tuple[str, list[int]]:
    out: list[str] = []
    at: list[int] = []
    for index, char in enumerate(text):
        if char < "\x80":
            piece = char.lower() if char not in "*`" else _FOLD[char]
        else:
            piece = _fold_rare(char, bool(out) and out[-1].isdigit())
        for one in piece:
            out.append(one)
            at.append(index)
    return "".join(out), at


def _fold_rare(char: str, after_digit: bool) -> str:
    known = _FOLD.get(char)
    if known is not None:
        return known
    if char in _LAUGHTER:
        return " haha "
    if char in _FRACTIONS:
        return _FRACTIONS[char] if after_digit else " half "
    category = unicodedata.category(char)
    if category in _DROPPED:
        return ""
    if category == "Nd":
        return str(unicodedata.digit(char))
    if category == "Pd":
        return "-"
    return unicodedata.normalize("NFKC", char).lower()


def lex(text: str) -> list[Token]:
    """Cut a message into tokens; spans are offsets in ``text`` as typed."""
    if text.isascii() and "*" not in text and "`" not in text:
        folded, at = text.lower(), None
    else:
        folded, at = _fold(text)
    tokens: list[Token] = []
    for match in _CUT.finditer(folded):
        kind = match.lastgroup
        if kind is None:  # blanks at the end
            continue
        start, end = match.span(kind)
        glued = start == match.start() and start > 0
        first, last = (start, end) if at is None else (at[start], at[end - 1] + 1)
        word = folded[start:end]
        if kind == "num":
            tokens.extend(_numbers(word, first, last, glued))
        elif kind == "time":
            minutes, seconds = word.split(":")
            tokens.append(Token(kind, word, float(int(minutes) * 60 + int(seconds)), first, last, glued))
        elif kind == "word":
            upper = text[first].isupper()
            tokens.append(Token(kind, word.replace("'", ""), 0.0, first, last, glued, None, upper))
        else:
            tokens.append(Token(kind, "\n" if kind == "line" else word, 0.0, first, last, glued))
    return tokens


def _value(digits: str) -> float:
    """A run of digits as a number; longer than any quantity of a lift, it is only 'too large'."""
    return float(digits) if len(digits) <= 12 else 1e12


def _numbers(run: str, start: int, end: int, glued: bool) -> list[Token]:
    commas, dots = run.count(","), run.count(".")
    if not commas and dots <= 1:
        return [Token("num", run, _value(run), start, end, glued)]
    if commas == 1 and not dots:
        whole, part = run.split(",")
        return [Token("num", run, _value(f"{whole}.{part}"), start, end, glued, (whole, part))]
    mark = "," if commas else "."
    return split_list(run, mark, start, glued, end)


def split_list(run: str, mark: str, start: int, glued: bool, end: int) -> list[Token]:
    """A run such as ``8,8,7`` as its numbers and marks."""
    out: list[Token] = []
    at = start

    def cut(kind: str, text: str, value: float, *, after: bool) -> None:
        # one sign as typed can be several figures (½): a piece may lie further than the run goes, but none is empty
        first = min(at, end - 1)
        out.append(Token(kind, text, value, first, min(max(at + len(text), first + 1), end), after))

    for part in run.split(mark):
        if out:
            cut("mark", mark, 0.0, after=True)
            at += 1
        for piece in part.split("."):
            if piece and part.count(".") > 1:
                cut("num", piece, _value(piece), after=bool(out) or glued)
        if part.count(".") <= 1:
            cut("num", part, _value(part), after=bool(out) or glued)
        at += len(part)
    return out
