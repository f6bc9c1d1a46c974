"""What follows the name: sets, repetitions, reserve, tempo, rest, ways. All of it must be understood."""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

from core.model.quantities import Tempo, Way
from core.model.target import Aim
from core.notation.words import PHASES, WAY_FILLERS, WAYS

_MAX_SETS: Final = 10
MAX_REPS: Final = 30
"""A set past about 30 repetitions stops paying (common practice, no source); a plan that asks for more is queried."""
_MAX_HOLD_S: Final = 300
"""A hold is counted in seconds where a lift is counted in repetitions; five minutes is past any use we know."""


@dataclass(frozen=True, slots=True)
class Trouble:
    """Why a line was left out. ``kind`` is a key of the wording table; the rest fills its gaps."""

    kind: str
    name: str = ""
    choices: tuple[str, ...] = ()


_N: Final = r"(\d{1,3})"
_NUM: Final = r"(\d{1,3}(?:[.,]\d)?)"
_LENGTH: Final = (
    r"(?:(?P<min>\d):(?P<sec>[0-5]\d)|(?P<n>\d{1,3}(?:[.,]\d)?)\s*(?P<u>s|secs?|seconds?|m|mins?|minutes?)\b)"
)
_SETS: Final = re.compile(
    rf"{_N}\s*(?:x|×|\*|sets?\s*(?:of|x|×)?)\s*{_N}(?:\s*(?:-|–|to)\s*{_N})?\s*(?:reps?|repetitions?|(?P<held>s|secs?|seconds?)\b)?(?:\s*(?:each|per)(?:\s+(?:side|leg|arm))?)?\b",
    re.IGNORECASE,
)


def prescription(text: str) -> Aim | Trouble:
    """An aim from what follows the exercise's name, or what is wrong with it."""
    found = _SETS.match(text)
    if found is None:
        return Trouble("no_sets")
    sets, low, high = int(found.group(1)), int(found.group(2)), int(found.group(3) or found.group(2))
    most = _MAX_HOLD_S if found.group("held") else MAX_REPS
    if not (1 <= sets <= _MAX_SETS and 1 <= low <= high <= most):
        return Trouble("beyond_limits", name=found.group().strip())
    aim = Aim(sets, (low, high))
    rest = text[found.end() :]
    while rest := rest.lstrip(" \t,;."):
        for pattern, fill in _CLAUSES:
            if part := pattern.match(rest):
                aim = fill(aim, part)
                rest = rest[part.end() :]
                break
        else:
            return Trouble("words_left", name=rest.strip())
    return aim


def _seconds(number: str, unit: str | None) -> float:
    value = float(number.replace(",", "."))
    return value * 60 if (unit or "s").lower().startswith("m") else value


def _reserve(aim: Aim, part: re.Match[str]) -> Aim:
    return replace(aim, rir=float(part.group(1).replace(",", ".")))


def _rpe(aim: Aim, part: re.Match[str]) -> Aim:
    return replace(aim, rir=10 - float(part.group(1).replace(",", ".")))


def _failure(aim: Aim, _part: re.Match[str]) -> Aim:
    return replace(aim, rir=0.0)


def _rest(aim: Aim, part: re.Match[str]) -> Aim:
    if part.group("min") is not None:
        return replace(aim, rest_s=float(int(part.group("min")) * 60 + int(part.group("sec"))))
    return replace(aim, rest_s=_seconds(part.group("n"), part.group("u")))


def _tempo(aim: Aim, part: re.Match[str]) -> Aim:
    marks = re.findall(r"\d(?:[.,]\d)?|[xX]", part.group(1))
    phases = [0.0 if mark in "xX" else float(mark.replace(",", ".")) for mark in marks]
    padded: list[float | None] = [*phases, *([None] * (4 - len(phases)))]
    return replace(aim, tempo=(padded[0], padded[1], padded[2], padded[3]))


def _phase(aim: Aim, part: re.Match[str]) -> Aim:
    now = list(aim.tempo or (None, None, None, None))
    now[PHASES[part.group(1).lower()]] = _seconds(part.group(2), None)
    tempo: Tempo = (now[0], now[1], now[2], now[3])
    return replace(aim, tempo=tempo)


def _ways(aim: Aim, part: re.Match[str]) -> Aim:
    words = re.findall(r"[a-z]+|[,>]", part.group().lower())
    ways: list[Way] = list(dict.fromkeys(WAYS[word] for word in words if word in WAYS))
    return replace(aim, ways=tuple(ways))


def _no_way(aim: Aim, part: re.Match[str]) -> Aim:
    return replace(aim, ways=tuple(way for way in aim.ways if way != WAYS[part.group(1).lower()]))


_MARK: Final = r"(?:\d(?:[.,]\d)?|x)"
_LEAD: Final = r"(?:ways?\s*:?\s*|by\s+|progress\s+(?:by\s+)?)?"
_WAY: Final = "|".join(sorted(WAYS, key=len, reverse=True))
_FILLER: Final = "|".join(sorted((re.escape(f) for f in WAY_FILLERS), key=len, reverse=True))
_PHASE: Final = "|".join(sorted(PHASES, key=len, reverse=True))

_CLAUSES: Final[tuple[tuple[re.Pattern[str], Callable[[Aim, re.Match[str]], Aim]], ...]] = tuple(
    (re.compile(pattern, re.IGNORECASE), fill)
    for pattern, fill in (
        (rf"{_NUM}\s*(?:reps?\s+)?(?:left|in\s+(?:reserve|the\s+tank)|rir)\b", _reserve),
        (rf"(?:rir|reserve|leave)\s*:?\s*{_NUM}(?![\d-])", _reserve),
        (r"(?:@|rpe)\s*:?\s*(10|[5-9](?:[.,]5)?)(?![\d.])", _rpe),
        (r"(?:to\s+)?failure\b", _failure),
        (rf"(?:rest|break)s?\s*:?\s*{_LENGTH}", _rest),
        (rf"{_LENGTH}\s*(?:rest|break)s?\b", _rest),
        (rf"tempo\s*:?\s*({_MARK}(?:\s*[-/]?\s*{_MARK}){{2,3}})(?!\d)", _tempo),
        (rf"({_PHASE})\s*(?:in|for|over)?\s*{_NUM}\s*(?:s|secs?|seconds?)\b", _phase),
        (rf"no\s+(?:more\s+)?({_WAY})\b", _no_way),
        (rf"{_LEAD}(?:{_WAY})\b(?:(?:\s*(?:{_FILLER}))*\s*\b(?:{_WAY})\b)*(?:\s+only)?", _ways),
    )
)
"""Each clause that may follow the sets, and what it sets in the aim; tried in this order."""
