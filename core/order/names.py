"""Which client is meant: whole names, first names, slips of the pen. Never guesses between two that fit alike."""

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from rapidfuzz import fuzz
from rapidfuzz.distance import OSA

_SURE: Final = 80.0
"""Likeness (0 to 100, rapidfuzz's ratio) from which a name with a slip is taken. Choice of ours."""
_NEAR: Final = 60.0
_APART: Final = 6.0
"""Two names closer in likeness than this are asked about."""
_OFFERED: Final = 5
_LEAST_SLIPPED: Final = 4
"""In a name of so many letters two swapped ones are got over."""


@dataclass(frozen=True, slots=True)
class Found:
    """One name, or those it may be."""

    name: str | None
    several: tuple[str, ...] = ()
    near: tuple[str, ...] = ()


def plain(text: str) -> str:
    """A name as it is compared: small, without the possessive and marks at its edges."""
    text = text.casefold().strip(" .,:;!?\"'’")
    return re.sub(r"['’]s?$", "", text).strip()


def find_name(said: str, roster: Sequence[str]) -> Found:
    """The client whom these words name."""
    word = plain(said)
    if not word:
        return Found(None)
    for fits in (_whole, _first, _start):
        exact = [name for name in roster if fits(word, plain(name))]
        if exact:
            return Found(exact[0]) if len(exact) == 1 else Found(None, several=tuple(exact[:_OFFERED]))
    scored = sorted(((_likeness(word, plain(name)), name) for name in roster), key=lambda pair: (-pair[0], pair[1]))
    if not scored or scored[0][0] < _SURE:
        return Found(None, near=tuple(name for score, name in scored[:3] if score >= _NEAR))
    best = [name for score, name in scored if score >= _SURE and scored[0][0] - score < _APART]
    return Found(best[0]) if len(best) == 1 else Found(None, several=tuple(best[:_OFFERED]))


def _whole(word: str, name: str) -> bool:
    return word == name


def _first(word: str, name: str) -> bool:
    return word == name.partition(" ")[0]


def _start(word: str, name: str) -> bool:
    return len(word) >= 3 and name.startswith(word)


def _likeness(word: str, name: str) -> float:
    first = name.partition(" ")[0]
    slip = len(word) >= _LEAST_SLIPPED and sorted(word) == sorted(first) and OSA.distance(word, first) <= 1
    return max(fuzz.ratio(word, name), fuzz.ratio(word, first), _SURE if slip else 0.0)


def names_at_start(text: str, roster: Sequence[str]) -> tuple[list[Found], list[str], str]:
    """The names that a text opens with ("Mira, Tomas and Piet: bring water"), as found and as typed, and what follows."""  # noqa: E501
    found: list[Found] = []
    typed: list[str] = []
    rest = text.lstrip()
    while rest:
        words = re.findall(r"[^\s,:;]+", rest)[:3]
        for count in range(len(words), 0, -1):
            pattern = r"\s+".join(re.escape(word) for word in words[:count])
            at = re.match(pattern + r"\s*[,:;]?", rest)
            one = find_name(" ".join(words[:count]), roster) if at else Found(None)
            if at and (one.name or one.several):
                found.append(one)
                typed.append(" ".join(words[:count]))
                closed = at.group().rstrip().endswith(":")
                rest = rest[at.end() :].lstrip()
                break
        else:
            return found, typed, rest
        more = re.match(r"(?:,\s*)?(?:and|&|\+)\s+", rest, re.IGNORECASE)
        if closed or not (more or at.group().rstrip().endswith(",")):
            return found, typed, rest
        after = rest[more.end() :] if more else rest
        ahead = re.findall(r"[^\s,:;]+", after)[:1]
        one = find_name(ahead[0], roster) if ahead else Found(None)
        if not (one.name or one.several):
            return found, typed, rest
        rest = after
    return found, typed, rest
