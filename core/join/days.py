"""Days and times in a lifter's words: weekdays, clock times, "until the 12th", "next week". Reads no clock."""

import re
from collections.abc import Iterator, Mapping
from datetime import date, time, timedelta
from typing import Final

WEEKDAYS: Final[Mapping[str, int]] = {
    name: day
    for day, names in enumerate((
        "monday mondays mon lunes lun montag montags mo",
        "tuesday tuesdays tue tues martes mar dienstag dienstags di",
        "wednesday wednesdays wed weds miercoles miércoles mie mittwoch mittwochs mi",
        "thursday thursdays thu thur thurs jueves jue donnerstag donnerstags do",
        "friday fridays fri viernes vie freitag freitags fr",
        "saturday saturdays sat sabado sábado sab samstag samstags sa",
        "sunday sundays sun domingo dom sonntag sonntags so",
    ))
    for name in names.split()
}  # fmt: skip
"""Names of the weekdays, Monday 0."""

SEVERAL: Final[Mapping[str, tuple[int, ...]]] = {
    "every day": tuple(range(7)),
    "daily": tuple(range(7)),
    "weekdays": tuple(range(5)),
    "weekend": (5, 6),
    "weekends": (5, 6),
    "cada dia": tuple(range(7)),
    "jeden tag": tuple(range(7)),
}

MONTHS: Final[Mapping[str, int]] = {
    name: month
    for month, names in enumerate((
        "january jan enero januar", "february feb febrero februar", "march mar marzo märz", "april apr abril",
        "may mayo mai", "june jun junio juni", "july jul julio juli", "august aug agosto",
        "september sep sept septiembre", "october oct octubre oktober", "november nov noviembre",
        "december dec diciembre dezember",
    ), start=1)
    for name in names.split()
}  # fmt: skip

PARTS: Final[Mapping[str, time]] = {
    "morning": time(8),
    "mornings": time(8),
    "noon": time(12),
    "lunch": time(12),
    "afternoon": time(16),
    "evening": time(18),
    "evenings": time(18),
    "night": time(20),
}
"""What a part of the day is taken for; the receipt says so. Choice of ours."""

CLOCK: Final = re.compile(r"(?:(?:at|um|a las) )?(?<![\d.,:])(\d{1,2})(?:[:.h](\d\d))?(?:\s?(am|pm|uhr|h|o'?clock))?\b")

DAYS_OF_WEEK: Final = 7
_COUNTS: Final = {"a": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "eight": 8}


def clock_in(text: str, *, bare: bool = True) -> time | None:
    """The first time of day in the words. ``bare``: a plain number of hours counts too."""
    for found in CLOCK.finditer(text):
        hour, minute, half = int(found[1]), int(found[2] or 0), found[3] or ""
        if not (bare or found[2] or half):
            continue
        if half in ("am", "pm"):
            hour = hour % 12 + (12 if half == "pm" else 0)
        if hour < 24 and minute < 60:
            return time(hour, minute)
    return next((PARTS[word] for word in re.findall(r"[a-z]+", text) if word in PARTS), None)


def week_in(text: str) -> tuple[tuple[int, time | None], ...] | None:
    """Weekdays with their times: "mon wed fri 18:30", "Tuesdays at 7, Saturday 10". None: other words are there."""
    rest = re.sub(r"[,;/&+]|\b(and|y|und|on|at|um|a las|o'?clock|uhr|each|always)\b", " ", text)
    for words, days in SEVERAL.items():
        rest = re.sub(
            rf"\b{words}\b", " ".join(("mon", "tue", "wed", "thu", "fri", "sat", "sun")[d] for d in days), rest
        )
    found: list[tuple[int, time | None]] = []
    waiting: list[int] = []
    for word in _joined(rest.split()):
        if (span := _span(word)) is not None:
            waiting += span
        elif (at := clock_in(word)) is not None and waiting:
            found += [(day, at) for day in waiting]
            waiting = []
        else:
            return None
    found += [(day, None) for day in waiting]
    return tuple(sorted(dict(found).items())) or None


def _joined(words: list[str]) -> Iterator[str]:
    """Words, with "6 pm" and "mon to fri" as one."""
    at = 0
    while at < len(words):
        if at + 1 < len(words) and words[at + 1] in ("am", "pm"):
            yield f"{words[at]}{words[at + 1]}"
            at += 2
        elif at + 2 < len(words) and words[at + 1] in ("to", "-", "bis", "a") and words[at] in WEEKDAYS:
            yield f"{words[at]}-{words[at + 2]}"
            at += 3
        else:
            yield words[at]
            at += 1


def _span(word: str) -> list[int] | None:
    if word in WEEKDAYS:
        return [WEEKDAYS[word]]
    first, dash, last = word.partition("-")
    if not dash or first not in WEEKDAYS or last not in WEEKDAYS:
        return None
    low, high = WEEKDAYS[first], WEEKDAYS[last]
    return [day % DAYS_OF_WEEK for day in range(low, (high if high >= low else high + DAYS_OF_WEEK) + 1)]


def day_in(text: str, today: date) -> date | None:
    """The day named, from today on: "the 12th", "12 May", "May" (its first), "Friday", "tomorrow", "in two weeks"."""
    words = text.strip()
    near = {"today": 0, "tonight": 0, "tomorrow": 1, "the day after tomorrow": 2, "mañana": 1, "morgen": 1}
    if words in near:
        return today + timedelta(days=near[words])
    if words == "next week":
        return today + timedelta(days=DAYS_OF_WEEK - today.weekday())
    if iso := re.fullmatch(r"(\d{4})-(\d\d)-(\d\d)", words):
        return _real(int(iso[1]), int(iso[2]), int(iso[3]))
    if after := re.fullmatch(r"(?:in |another |for )?(\d{1,2}|[a-z]+) (day|week|month)s?", words):
        return _later(today, after[1], after[2])
    words = re.sub(r"^(?:the |next |this |on |end of )+", "", words)
    named = words in WEEKDAYS and len(words) > 2
    if named:
        return today + timedelta(days=(WEEKDAYS[words] - today.weekday() - 1) % DAYS_OF_WEEK + 1)
    return _dated(words, today)


def _later(today: date, count: str, span: str) -> date | None:
    number = int(count) if count.isdigit() else _COUNTS.get(count)
    days = {"day": 1, "week": DAYS_OF_WEEK, "month": 30}
    return None if number is None else today + timedelta(days=number * days[span])


_DATE: Final = re.compile(
    r"(?:(?P<month>[a-zä]+)\b ?)?(?:the )?(?:(?P<day>\d{1,2})(?:st|nd|rd|th|\.)?)?"
    r"(?: (?:of )?(?P<after>[a-zä]+))?(?: (?P<year>\d{4}))?"
)


def _dated(words: str, today: date) -> date | None:
    found = _DATE.fullmatch(words)
    if found is None or not (found["day"] or found["month"] or found["after"]):
        return None
    said = found["after"] or found["month"]
    if said is not None and said not in MONTHS:
        return None
    day = int(found["day"] or 1)
    if said is None:
        return _next_with(day, today)
    year = int(found["year"] or today.year)
    then = _real(year, MONTHS[said], day)
    return then if found["year"] or then is None or then > today else _real(year + 1, MONTHS[said], day)


def _next_with(day: int, today: date) -> date | None:
    """The next day of that number: in this month or in one of the next two."""
    for ahead in range(3):
        month = today.month - 1 + ahead
        then = _real(today.year + month // 12, month % 12 + 1, day)
        if then is not None and then > today:
            return then
    return None


def names_a_beginning(text: str) -> bool:
    """The words are a month or a week, so that "until" then leaves out the first day of it."""
    return text.strip() == "next week" or re.sub(r"^(?:next |this )+", "", text.strip()) in MONTHS


def span_in(text: str, today: date) -> tuple[date, date | None] | None:
    """From a day through a day: "next week", "until Friday", "from Monday to the 20th", "for two weeks"."""
    words = text.strip()
    monday = today - timedelta(days=today.weekday())
    week = {"this week": monday, "next week": monday + timedelta(weeks=1)}
    if words in week:
        return max(today, week[words]), week[words] + timedelta(days=6)
    if words in ("", "now", "today", "for good", "from now on"):
        return today, today if words == "today" else None
    if lasting := re.fullmatch(r"for (?:the next )?(.+)", words):
        end = day_in(lasting[1], today)
        return None if end is None else (today, end - timedelta(days=1))
    if open_ := re.fullmatch(r"(?:from|starting|as of|since) (.+?)(?: (?:to|until|till|through) (.+))?", words):
        first = day_in(open_[1], today)
        last = day_in(open_[2], first or today) if open_[2] else None
        return None if first is None or (open_[2] and last is None) else (first, last)
    if until := re.fullmatch(r"(?:until|till|through|to) (.+)", words):
        last = day_in(until[1], today)
        return None if last is None else (today, last - timedelta(days=names_a_beginning(until[1])))
    day = day_in(words.removeprefix("on "), today)
    return None if day is None else (day, day)


def _real(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None
