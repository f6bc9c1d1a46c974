"""Aches as they are told when asked for: "left knee sometimes, 2". Made into a sentence that reports one. Knows no part
of the body: what it makes is read like any other message."""
# ruff: noqa: E501 - a pattern is a list of words

import re
from typing import Final

from core.join.text import plain

_BESIDE: Final = re.compile(
    r"\b(?:sometimes|now and then|now and again|from time to time|at times|occasionally|once in a while|a bit|a little|"
    r"slightly|somewhat|kind of|sort of|maybe|about|around|just|only|mostly|usually|always|often|my|the|an?|old|i have|"
    r"ive got|got|since .*|for .*|from .*|when .*|after .*|going .*|if .*|some|mild|slight|nothing serious|but|and then|"
    r"injury|issue|issues|problem|problems|trouble|pain|pains|ache|aches|aching|hurts?|hurting|sore|soreness|clicks?|"
    r"clicking|acts up|acting up|grumbles?|grumbling|niggles?|niggling|bothers me|is|are|out of 10|of 10)\b|/ ?10\b|[^\w\s-]"
)
_LEVEL: Final = re.compile(r"\b(10|\d)(?: ?/ ?10| of 10| out of 10)?\b")
_WORDS: Final = 4
"""A place has no more words than these: "inside of left elbow"."""


def as_report(text: str) -> str | None:
    """The same said as a report of one ache; None: more than a place and a level is told, or less."""
    words = plain(text)
    level = _LEVEL.search(words)
    rest = words if level is None else f"{words[: level.start()]} {words[level.end() :]}"
    place = " ".join(_BESIDE.sub(" ", rest).split())
    if not place or len(place.split()) > _WORDS or any(char.isdigit() for char in place):
        return None
    return f"{place} hurts, {level[1]}/10" if level is not None else f"{place} hurts"
