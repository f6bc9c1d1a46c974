"""Days as they are said: names of weekdays, and a day of the calendar with or without its year. Words to dates."""

import re
from datetime import date
from typing import Final

# fmt: off
DAYS: Final = {"mon": 0, "tue": 1, "wed": 2, "thu": 3, "fri": 4, "sat": 5, "sun": 6}
_MONTHS: Final = {
    "jan": 1, "feb": 2, "mar": 3, "apr": 4, "may": 5, "jun": 6, "jul": 7, "aug": 8, "sep": 9, "oct": 10, "nov": 11,
    "dec": 12,
}
# fmt: on
_ISO: Final = re.compile(r"(\d{4})-(\d{2})-(\d{2})")
_DAY_MONTH: Final = re.compile(r"(\d{1,2})(?:st|nd|rd|th)?\s+([a-z]{3})[a-z]*(?:\s+(\d{4}))?", re.IGNORECASE)


def has_year(said: str) -> bool:
    """Whether a day of the calendar is said with its year."""
    spelt = _DAY_MONTH.match(said)
    return _ISO.match(said) is not None or (spelt is not None and spelt[3] is not None)


def calendar_day(said: str, year: int) -> date | None:
    """The day at the beginning of the words ("7 December", "2026-12-07"), of that year if none is said."""
    iso, spelt = _ISO.match(said), _DAY_MONTH.match(said)
    try:
        if iso:
            return date(int(iso[1]), int(iso[2]), int(iso[3]))
        if spelt and spelt[2].casefold() in _MONTHS:
            return date(int(spelt[3] or year), _MONTHS[spelt[2].casefold()], int(spelt[1]))
    except ValueError:
        return None
    return None
