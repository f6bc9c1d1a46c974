"""Lengths of time as a plan writes them: 90 s, 2', 1:30, 2-3 min. Knows nothing of what they are lengths of."""

import re
from typing import Final

_SECONDS_FROM: Final = 11
"""A bare rest of so much or more is seconds, below it minutes: nobody rests 10 s or 11 minutes between sets."""

_UNIT_S: Final = r"s|secs?|seconds?|''|\"|”|″"
_UNIT_M: Final = r"m|mins?|minutes?|'|’|′"
ONE_LENGTH: Final = (
    rf"(?:\d{{1,2}}:[0-5]\d|\d{{1,2}}\s*(?:{_UNIT_M})\s*[0-5]?\d\s*(?:{_UNIT_S})?(?![\d:])"
    rf"|\d{{1,3}}(?:[.,]\d{{1,2}})?\s*-?(?:{_UNIT_S}|{_UNIT_M})(?![A-Za-z'])|\d{{1,3}}(?:[.,]\d)?(?![\d.,:]*\d))"
)
LENGTH: Final = rf"(?P<a>{ONE_LENGTH})(?:\s*(?:-|–|to)\s*(?P<b>{ONE_LENGTH}))?"


def seconds(text: str, like: str = "") -> float:
    """A length as written, in seconds. ``like`` lends its unit where the text has none."""
    text = text.strip().lower()
    if ":" in text:
        minutes, _, rest = text.partition(":")
        return int(minutes) * 60 + int(rest)
    figures = re.findall(r"\d+(?:[.,]\d+)?", text)
    value = float(figures[0].replace(",", "."))
    if len(figures) > 1:
        return value * 60 + float(figures[1])
    unit = re.sub(r"[\d.,\s-]", "", text) or re.sub(r"[\d.,:\s-]", "", like.strip().lower())
    if unit:
        return value * 60 if re.fullmatch(_UNIT_M, unit) else value
    return value if value >= _SECONDS_FROM else value * 60


def span(part: "re.Match[str]") -> tuple[float, float]:
    """Both ends of a matched LENGTH, in seconds."""
    a, b = part.group("a"), part.group("b")
    return (seconds(a, b or ""), seconds(b, a)) if b else (seconds(a), seconds(a))
