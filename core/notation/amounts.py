"""Sets and repetitions, however they are put: 3x8, 3 sets of 8 to 12, 8-12 x 3. Knows no other clause."""

import re
from dataclasses import dataclass
from typing import Final

from core.notation.hidden import Trouble
from core.notation.words import IN_FIGURES, NUMBER_WORDS

MAX_SETS: Final = 10
MAX_REPS: Final = 30
"""A set past about 30 repetitions stops paying (schoenfeld-2017); a plan that asks for more is asked about."""
MAX_HOLD_S: Final = 300
"""A hold is counted in seconds where a lift is counted in repetitions; five minutes is past any use we know."""
_FEWEST_TURNED: Final = 5
"""In "8-12 x 3" a count from here on is one of repetitions; below it "3-4 x 8" is a spread of sets."""


@dataclass(frozen=True, slots=True)
class Amount:
    """What it says. ``unit``: "" (a bare count), "reps", "s" or "m" (metres)."""

    sets: int
    low: int
    high: int
    unit: str


_N: Final = r"\d{1,3}"
_UNIT: Final = (
    r"(?:\s*(?P<reps>reps?|repetitions?)\b|\s*(?P<sec>s|secs?|seconds?)\b|(?P<sec2>''|\"|”)(?![A-Za-z])"
    r"|\s*(?P<min>mins?|minutes?)\b|(?P<metre>\s*(?:m|metres?|meters?))\b)?"
)
_REPS: Final = rf"\(?\s*(?P<lo>{_N})(?:\s*(?:-|–|to|\.\.)\s*(?P<hi>{_N}))?{_UNIT}\s*\)?"
_TIMES: Final = r"(?:x|×|\*|by|times)"
_SETS: Final = r"(?:sets?|rounds?|working\s+sets?)"
_FORMS: Final = (
    re.compile(
        rf"(?<![\w.,/-])(?:sets?\s*:?\s*)?(?P<s>{_N})\s*(?:{_TIMES}|{_SETS}\s*(?:of|with|at|{_TIMES}|,|:|-|–|@)?)\s*(?:reps?\s*:?\s*)?{_REPS}",
        re.IGNORECASE,
    ),
    re.compile(
        rf"(?<![\w.,/-])(?P<lo>{_N})(?:\s*(?:-|–|to)\s*(?P<hi>{_N}))?{_UNIT}\s*(?:,|for|{_TIMES})\s*(?P<s>{_N})\s*{_SETS}\b",
        re.IGNORECASE,
    ),
    re.compile(rf"(?<![\w.,/-])(?P<lo>{_N})\s*(?:-|–|to)\s*(?P<hi>{_N}){_UNIT}\s*{_TIMES}\s*(?P<s>{_N})(?!\s*(?:-|–|to)\s*\d)", re.IGNORECASE),  # noqa: E501
)  # fmt: skip
_OPEN: Final = re.compile(
    rf"(?<![\w.,/-])(?P<s>{_N}(?:\s*(?:-|–|to)\s*{_N})?)\s*(?:{_TIMES}|{_SETS}\s*(?:,|of|to|{_TIMES})?)\s*(?:to\s+)?(?:amrap|max(?:imum)?\b|as\s+many|failure|aap\b|\?)",
    re.IGNORECASE,
)
_SET_SPREAD: Final = re.compile(
    rf"(?<![\w.,/-])(?P<a>{_N})\s*(?:-|–|to)\s*(?P<b>{_N})\s*(?:{_TIMES}|{_SETS})\s*(?:of|{_TIMES})?\s*{_N}",
    re.IGNORECASE,
)
_CHANGING: Final = re.compile(rf"\s*(?:[-/,]\s*{_N}(?![\d:.]))+\s*(?=$|[;(]|,\s*[A-Za-z]|reps?\b)", re.IGNORECASE)
_PLUS: Final = re.compile(r"\s*\+(?=\s*(?:$|[,;(]))")
_WORDS: Final = re.compile(
    rf"\b({'|'.join(sorted(NUMBER_WORDS, key=len, reverse=True))})\b(?=\s*(?:{_SETS}|reps?|repetitions?|x|by|times|to|left|in|seconds?|secs?|min(?:ute)?s?|(?:easy\s+|easier\s+|light\s+)?weeks?)\b)"  # noqa: E501
    rf"|(?<=\bof\s)({'|'.join(NUMBER_WORDS)})\b|(?<=\bby\s)({'|'.join(NUMBER_WORDS)})\b|(?<=\bto\s)({'|'.join(NUMBER_WORDS)})\b",
    re.IGNORECASE,
)


_IN_FIGURES: Final = tuple((re.compile(spoken, re.IGNORECASE), figures) for spoken, figures in IN_FIGURES)


_DASHED: Final = re.compile(
    r"(?<![\d.:])(?P<before>\d{1,3})\s+[-–—]\s+(?=(?P<after>\d{1,3})(?:[.,]\d)?\s*(?:(?P<kept>left|rir|r\.i\.r|reps?\s+left|in\s+(?:reserve|the\s+tank))"
    r"|s\b|secs?\b|seconds?\b|mins?\b|minutes?\b|['’′\"”]))",
    re.IGNORECASE,
)
_WIDEST: Final = 3
"""No spread of a hold goes to three times its low end: "3 x 12 - 60 s" is twelve, and a rest."""


def _apart(found: "re.Match[str]") -> str:
    """A dash between an amount and the next clause is no spread."""
    apart = (
        found["kept"]
        or int(found["after"]) >= _WIDEST * int(found["before"])
        or int(found["after"]) < int(found["before"])
    )
    return f"{found['before']}, " if apart else found.group()


def in_figures(text: str) -> str:
    """Counts written out ("three sets of eight") as figures; other words stay ("one arm row")."""
    for spoken, figures in _IN_FIGURES:
        text = spoken.sub(figures, text)
    text = _DASHED.sub(_apart, text)
    once = _WORDS.sub(lambda found: NUMBER_WORDS[found.group().lower()], text)
    return _WORDS.sub(lambda found: NUMBER_WORDS[found.group().lower()], once)


Place = tuple[int, int, Amount | Trouble]
"""Start, end, and what stands there."""


def amounts(text: str) -> list[Place]:
    """Every amount in the line, in order; what looks like one and cannot be taken is a trouble."""
    found: list[Place] = []
    for form in _FORMS:
        for part in form.finditer(text):
            if not _is_tempo(part, bool(found)):
                _add(found, part, _amount(part, text))
    for part in _SET_SPREAD.finditer(text):
        if int(part.group("a")) < _FEWEST_TURNED:
            _put_first(found, part, Trouble("set_range", name=part.group().strip()))
    for part in _OPEN.finditer(text):
        _put_first(found, part, Trouble("open_reps", name=part.group().strip()))
    return sorted(found, key=lambda row: row[0])


def _add(found: list[Place], part: "re.Match[str]", one: Amount | Trouble) -> None:
    if all(part.end() <= start or part.start() >= end for start, end, _ in found):
        found.append((part.start(), part.end(), one))


def _is_tempo(part: "re.Match[str]", amount_before: bool) -> bool:
    """ "31X0" is a tempo, not 31 sets; a zero is never an amount."""
    sets, low = int(part.group("s")), int(part.group("lo"))
    glued = re.match(r"\d\d([xX])\d(?!\d)", part.group())
    return 0 in (sets, low) or (glued is not None and (amount_before or (glued.group(1) == "X" and sets > MAX_SETS)))


def _put_first(found: list[Place], part: "re.Match[str]", one: Trouble) -> None:
    found[:] = [row for row in found if part.end() <= row[0] or part.start() >= row[1]]
    found.append((part.start(), part.end(), one))


def _amount(part: "re.Match[str]", text: str) -> Amount | Trouble:
    words = part.group().strip(" ,")
    sets, low, high = int(part.group("s")), int(part.group("lo")), int(part.group("hi") or part.group("lo"))
    unit, scale = _unit(part)
    after = text[part.end() :]
    if low > high or _CHANGING.match(after):
        return Trouble("changing_reps", name=words)
    if _PLUS.match(after):
        return Trouble("open_reps", name=words + "+")
    most = MAX_REPS if unit == "reps" else MAX_HOLD_S
    if not (1 <= sets <= MAX_SETS and low >= 1 and high * scale <= most):
        return Trouble("beyond_limits", name=words)
    return Amount(sets, low * scale, high * scale, unit)


def _unit(part: "re.Match[str]") -> tuple[str, int]:
    if part.group("metre"):
        return "m", 1
    if part.group("min"):
        return "s", 60
    if part.group("sec") or part.group("sec2"):
        return "s", 1
    return ("reps" if part.group("reps") else ""), 1
