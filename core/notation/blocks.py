"""Lines about the whole plan: from when, how many weeks, which week is easier. Knows no exercise."""

import re
from datetime import date, timedelta
from typing import Final

from core.evidence.desk import desk_value
from core.notation.amounts import in_figures
from core.notation.hidden import Trouble
from core.notation.words import MONTHS, ORDINALS, WEEKDAYS

_EASY: Final = r"(?:an?\s+)?(?:easier|easy|lighter|light|deload|down|recovery|back[\s-]?off)(?:\s+(?:one|week))?"
_FORMS: Final = (
    (re.compile(rf"(?:(?:every|each|the)\s+)?(\d{{1,2}})(?:th|rd|nd|st)\s+week\s*(?:is|:|=|-)?\s*{_EASY}\.?$", re.IGNORECASE), 0),  # noqa: E501
    (re.compile(rf"(?:every|each)\s+(\d{{1,2}})\s+weeks?\s*,?\s*(?:is|:|=|-)?\s*{_EASY}\.?$", re.IGNORECASE), 0),
    (re.compile(rf"(\d{{1,2}})\s+weeks?(?:\s+(?:on|hard|normal|of\s+work|building|up))?\s*,?\s*(?:and\s+)?(?:then|\+|followed\s+by|and|/)\s*(?:1|one)?\s*{_EASY}\.?$", re.IGNORECASE), 1),  # noqa: E501
    (re.compile(r"(\d{1,2})\s+weeks?\s+(?:on|up|hard)\s*,?\s*(?:1|one)\s+(?:week\s+)?(?:off|down|easier|easy|light)\.?$", re.IGNORECASE), 1),  # noqa: E501
    (re.compile(rf"{_EASY}\s+(?:every|each)\s+(\d{{1,2}})(?:th|rd|nd|st)?\s*weeks?\.?$", re.IGNORECASE), 0),
    (re.compile(rf"(?:{_EASY}\s*(?:in|is|:|=|on)?\s*)week\s*(\d{{1,2}})\.?$", re.IGNORECASE), 0),
    (re.compile(rf"{_EASY}\s*:?\s*week\s*(\d{{1,2}})\.?$", re.IGNORECASE), 0),
    (re.compile(rf"weeks?\s*(\d{{1,2}})(?:\s*(?:,|and|&|\+)\s*\d{{1,2}})+\s*(?:is|are|:|=|-|–)?\s*{_EASY}\.?$", re.IGNORECASE), 0),  # noqa: E501
    (re.compile(rf"week\s*(\d{{1,2}})\s*(?:is|:|=|-|–)?\s*{_EASY}\.?$", re.IGNORECASE), 0),
    (re.compile(rf"(?:blocks?\s+of\s+)?(\d{{1,2}})[\s-]*weeks?(?:\s+blocks?)?\s*,?\s*(?:the\s+)?last\s+(?:week\s+|one\s+)?(?:is\s+)?{_EASY}\.?$", re.IGNORECASE), 0),  # noqa: E501
)  # fmt: skip
_ORDINAL: Final = re.compile(rf"\b(?:{'|'.join(ORDINALS)})\b(?=\s+weeks?\b)", re.IGNORECASE)
_WEEKS: Final = re.compile(
    r"(?:[^\d]{2,40}?[-–—:,]\s*|\d{1,2}\s*weeks?\b[^\d]{0,40}?[-–—:,]\s*)?(?:(?:block|phase|cycle)\s*[A-D\d]\s*[,:–—-]\s*)?(?:(?:w(?:ee)?ks?)\s*(?P<from>\d{1,2})\s*(?:-|–|to)\s*\d{1,2}|(?:block|phase|cycle)\s*(?P<block>\d{1,2}|[A-Da-d])(?:\s*\(?\s*\d{1,2}\s*weeks?\s*\)?)?"
    r"|(?:for\s+)?\d{1,2}\s*weeks?|w(?:ee)?k\s*(?P<week>\d{1,2}))\s*[:.]?$",
    re.IGNORECASE,
)
_FROM: Final = re.compile(
    r"(?:from|start(?:s|ing)?|begin(?:s|ning)?)\s*(?:on|from|:)?\s*(?P<when>.+?)\.?$", re.IGNORECASE
)
_ISO: Final = re.compile(r"(\d{4})-(\d{1,2})-(\d{1,2})")
_MONTH: Final = "|".join(sorted(MONTHS, key=len, reverse=True))
_DAY_MONTH: Final = re.compile(
    rf"(?:(?P<w>[A-Za-z]+)\s*,?\s+)?(?:the\s+)?(?:(?P<d>\d{{1,2}})(?:st|nd|rd|th)?\.?\s+(?:of\s+)?(?P<m>{_MONTH})|(?P<m2>{_MONTH})\s+(?P<d2>\d{{1,2}})(?:st|nd|rd|th)?)(?:\s*,?\s*(?P<y>\d{{4}}))?",
    re.IGNORECASE,
)
_PAST_DAYS: Final = 60
"""A day and month without a year this far back or nearer is meant as past; farther back it is next year's."""


def easier_every(line: str) -> int | Trouble | None:
    """Every how many weeks one is easier; a trouble when the number cannot be; None: the line says no such thing."""
    plain = _ORDINAL.sub(lambda word: ORDINALS[word.group().lower()], in_figures(line.strip()))
    for form, more in _FORMS:
        if found := form.match(plain):
            weeks = int(found.group(1)) + more
            fits = all(int(other) % weeks == 0 for other in re.findall(r"\d+", plain[found.end(1) :]) if not more)
            fits = fits and desk_value("easier.shortest") <= weeks <= desk_value("easier.longest")
            return weeks if fits else Trouble("beyond_limits", name=line.strip())
    return None


def weeks_and_easier(line: str) -> tuple[str, int | Trouble | None]:
    """A heading for weeks without what it says in brackets of the easier one: "Weeks 1-4 (week 4 light)"."""
    head, mark, inner = line.strip().partition("(")
    easier = easier_every(inner.rstrip(" ):")) if mark else None
    return (head, easier) if easier is not None and is_weeks(head) is not None else (line, None)


def is_weeks(line: str) -> bool | None:
    """A heading for weeks: True for the first block, False for a later one, None for no such heading."""
    found = _WEEKS.match(line.strip(" *_#"))
    if found is None:
        return None
    first = found.group("from") or found.group("week") or (found.group("block") or "").lower()
    return first in ("", "1", "a")


def starts(line: str, today: date | None) -> date | Trouble | None:
    """The day from which the plan counts; None: the line says no such thing."""
    found = _FROM.match(line.strip(" *_#"))
    if found is None:
        return None
    when = found.group("when").strip()
    try:
        day = _date(when, today) or _dated_head(when, today)
    except ValueError:
        return Trouble("which_date", name=when)
    if day is None:
        return Trouble("which_date", name=when) if re.search(r"\d|\bweek\b", when) else None
    return day


def _dated_head(when: str, today: date | None) -> date | None:
    """The day before a comma or a dash, where words without figures follow: "Monday 16 March, while you travel"."""
    for cut in re.finditer(r"\s*[,(–—]\s*|\s+-\s+", when):
        if not re.search(r"\d", when[cut.end() :]) and (day := _date(when[: cut.start()], today)) is not None:
            return day
    return None


_WITHIN: Final = re.compile(
    r"\b(?:from|start(?:s|ing)?|begin(?:s|ning)?)\s+(?:on\s+)?(?P<when>[^.,;:]+?)(?:\s+on(?:wards?)?)?\s*[.:]?$",
    re.IGNORECASE,
)


def starts_within(line: str, today: date | None) -> date | None:
    """The day with which a sentence ends ("here is your plan from 9 March on"); None where it is no such sentence."""
    found = _WITHIN.search(line)
    try:
        return _date(found.group("when").strip(), today) if found else None
    except ValueError:
        return None


def _date(when: str, today: date | None) -> date | None:
    if iso := _ISO.fullmatch(when):
        return date(int(iso.group(1)), int(iso.group(2)), int(iso.group(3)))
    if written := _DAY_MONTH.fullmatch(when):
        month = MONTHS[(written.group("m") or written.group("m2")).lower()]
        return _of_year(written, month, int(written.group("d") or written.group("d2")), today)
    return _near(when.lower(), today) if today is not None else None


def _of_year(written: "re.Match[str]", month: int, day: int, today: date | None) -> date:
    if written.group("y"):
        found = date(int(written.group("y")), month, day)
    elif today is None:
        raise ValueError("no year and no today")
    else:
        found = date(today.year, month, day)
        if (today - found).days > _PAST_DAYS:
            found = date(today.year + 1, month, day)
    named = (written.group("w") or "").lower()
    if named and WEEKDAYS.get(named) != (found.weekday(),):
        raise ValueError("another weekday")
    return found


def _near(when: str, today: date) -> date | None:
    plain = {"today": 0, "now": 0, "tomorrow": 1}
    if when in plain:
        return today + timedelta(days=plain[when])
    if when == "next week":
        return today + timedelta(days=7 - today.weekday())
    word = when.removeprefix("next ").removeprefix("this ")
    days = WEEKDAYS.get(word)
    if days is None or len(days) != 1:
        return None
    return today + timedelta(days=(days[0] - today.weekday() - 1) % 7 + 1)
