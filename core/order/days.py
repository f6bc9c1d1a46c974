"""Days and times in a coach's words: "until May", "Friday", "Monday at 8". Reads no clock: the day is handed in."""

import re
from collections.abc import Mapping
from datetime import date, time, timedelta
from typing import Final

_CLOCK: Final = re.compile(r"(?P<h>\d{1,2})(?:[:.h](?P<m>[0-5]\d))?\s*(?P<half>am|pm)?", re.IGNORECASE)
_DAYS: Final = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_MONTHS: Final = (
    "january", "february", "march", "april", "may", "june", "july", "august", "september", "october", "november",
    "december",
)  # fmt: skip
_THREE: Final = 3
"""Letters that are enough to know a weekday or a month by."""


def weekday_in(text: str) -> int | None:
    """The weekday that the words name, Monday 0."""
    return next((n for n, name in enumerate(_DAYS) if re.search(rf"\b{name[:_THREE]}", text.lower())), None)


def time_in(text: str) -> time | None:
    """The time of day that the words name."""
    found = _CLOCK.search(text)
    if found is None:
        return None
    hour = int(found["h"])
    half = (found["half"] or "").lower()
    hour = hour % 12 + (12 if half == "pm" else 0) if half else hour
    return time(hour, int(found["m"] or 0)) if hour < 24 else None


def day_in(text: str, today: date) -> date | None:
    """The day up to which something holds: "May" is the first of May, "Friday" the next one."""
    words = re.findall(r"[a-z]+|\d+", text.lower())
    if iso := re.fullmatch(r"(\d{4})-(\d\d)-(\d\d)", text.strip()):
        return _real(int(iso[1]), int(iso[2]), int(iso[3]))
    month = next((n for n, name in enumerate(_MONTHS, 1) for word in words if _abbreviates(word, name)), None)
    number = next((int(word) for word in words if word.isdigit() and int(word) <= 31), 1)
    if month is not None:
        year = next((int(word) for word in words if word.isdigit() and len(word) == 4), today.year)
        found = _real(year, month, number)
        return found if found is None or found > today else _real(today.year + 1, month, number)
    weekday = next((n for n, name in enumerate(_DAYS) for word in words if _abbreviates(word, name)), None)
    if weekday is not None:
        return today + timedelta(days=(weekday - today.weekday() - 1) % 7 + 1)
    weeks = re.fullmatch(r"(?:in\s+)?(\d{1,2})\s+weeks?", text.strip().lower())
    return today + timedelta(weeks=int(weeks[1])) if weeks else None


def _abbreviates(word: str, name: str) -> bool:
    return len(word) >= _THREE and name.startswith(word)


def _real(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


_IN_WEEKS: Final = re.compile(
    r"(?:for|in|over)\s+(?P<n>\d{1,2}|a|one|two|three|four|six|eight|ten|twelve)\s+weeks?", re.IGNORECASE
)
_WEEKS: Final[Mapping[str, int]] = {
    "a": 1, "one": 1, "two": 2, "three": 3, "four": 4, "six": 6, "eight": 8, "ten": 10, "twelve": 12,
}  # fmt: skip
_USUAL_WEEKS: Final = 6
MOST_WEEKS: Final = 12


def weeks_in(text: str) -> tuple[int, str]:
    """For how many weeks, the usual six when unsaid, and the words without it."""
    found = _IN_WEEKS.search(text)
    if found is None:
        return _USUAL_WEEKS, text
    said = found["n"].lower()
    weeks = int(said) if said.isdigit() else _WEEKS[said]
    return weeks, f"{text[: found.start()]} {text[found.end() :]}"
