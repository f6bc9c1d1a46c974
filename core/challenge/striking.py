"""The coach's word on a session that nobody asked about: taken out of the count, or put back. Words in, a value out.

Reads words only; whose name it is, and whether that session is there, is for others to know.
"""

import re
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Final

from core.challenge.calendar import DAYS, calendar_day, has_year

_SAID: Final = re.compile(
    r"(?P<no>(?:do not|don['’]?t|dont)\s+)?count\s+(?P<name>.+?)(?:['’]s?)?(?:\s+session)?"
    r"\s+(?:on|of|from)\s+(?:last\s+)?(?P<day>[\w\s-]+)$",
    re.IGNORECASE,
)


@dataclass(frozen=True, slots=True)
class Struck:
    """Whether a member's session of a day is to count. ``name`` is as the coach wrote it."""

    name: str
    on: date
    counts: bool


def struck(text: str, today: date) -> Struck | None:
    """What is to count or not, or None when the words say nothing of it. A weekday is the last one there was."""
    found = _SAID.match(" ".join(text.split()).rstrip("."))
    if found is None:
        return None
    on = _past(found["day"].casefold().strip(), today)
    return Struck(found["name"].strip(), on, found["no"] is None) if on is not None else None


def _past(said: str, today: date) -> date | None:
    near = {"today": today, "yesterday": today - timedelta(days=1)}
    if said in near:
        return near[said]
    if said.isalpha() and said[:3] in DAYS:
        return today - timedelta(days=(today.weekday() - DAYS[said[:3]]) % 7)
    on = calendar_day(said, today.year)
    return on if on is None or on <= today or has_year(said) else calendar_day(said, today.year - 1)
