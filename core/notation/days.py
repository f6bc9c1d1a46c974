"""Lines that open a day: which weekdays, at what time, under what title, and what else stands in the line."""

import re
from dataclasses import dataclass, replace
from datetime import time
from typing import Final

from rapidfuzz.distance import OSA

from core.notation.hidden import Trouble
from core.notation.words import DAY_NAMES, MONTHS, NUMBER_WORDS, REST_DAY, SHORT_DAYS, WEEKDAYS

DEFAULT_TIME: Final = time(18, 0)
_NOON: Final = 12


@dataclass(frozen=True, slots=True)
class Opened:
    """A day line as read. ``at`` None: no time was written. ``tail`` is what follows days and time.

    ``more``: further days of the same line with times of their own ("Tue 7:30 and Sat 10:00").
    """

    weekdays: tuple[int, ...]
    at: time | None
    tail: str
    remarks: tuple[Trouble, ...] = ()
    more: tuple["Opened", ...] = ()


_WORD: Final = re.compile(r"[A-Za-z]+")
_MARKS: Final = " \t*_#>•-–—:=~"
_NUMBER: Final = re.compile(r"^\d{1,2}\s*[.)]\s*")
_SESSION: Final = re.compile(r"((?:day|session|workout|training)\s*[A-Za-z0-9]{1,2})\b\s*[:\-–—(,]*\s*", re.IGNORECASE)
_JOINS: Final = re.compile(r"^\s*(?:,|/|\+|&|-|–|—|and\b|on\b|to\b|every\b)?\s*", re.IGNORECASE)
_LETTERS: Final = re.compile(r"^M\s*[/,&+-]?\s*W\s*[/,&+-]?\s*F\b")
_LEAD: Final = re.compile(
    r"^(?:(?:ok(?:ay)?|so|right|now|then|and|well|first)[\s,]+)*(?:(?:on|every|each)\s+(?!day))?", re.IGNORECASE
)
_TIME: Final = re.compile(
    r"(?P<at>\bat\s+|@\s*)?\b(?P<h>[01]?\d|2[0-3])(?:(?P<sep>[:.h])(?P<m>[0-5]\d)?)?\s*(?P<half>am|pm|a\.m\.|p\.m\.)?(?=[\s,;:)–-]|\.(?!\d)|$)",
    re.IGNORECASE,
)
_FOUR: Final = re.compile(r"\b(?P<h>[01]\d|2[0-3])(?P<m>[0-5]\d)(?:\s*h(?:rs?)?)?\b(?!\s*tempo)")
_DATE: Final = re.compile(
    rf"\b\d{{1,2}}(?:st|nd|rd|th)?\.?\s+(?:{'|'.join(MONTHS)})\b|\b(?:{'|'.join(MONTHS)})\s+\d{{1,2}}\b", re.IGNORECASE
)
_UNIT_AFTER: Final = re.compile(
    r"\s*(?:(?:mins?|minutes?|secs?|seconds|kgs?|lbs?|reps|sets?)\b|[x×]\s*\d|%)", re.IGNORECASE
)
_SECONDS_AFTER: Final = re.compile(r"\s*(?:mins?|minutes|secs?|seconds)\b", re.IGNORECASE)
"""A number before one of these is no time of day: "1:30 min" is a rest. A title may begin alike ("Second bar day")."""
_ALONE: Final = re.compile(r"\s*(?:[,;:]|$)")
"""After such a mark an hour of the afternoon ("Mon 19, squat 3x8") can be nothing else."""
_SPOKEN: Final = re.compile(
    r"\bat\s+(?P<hour>\d{1,2}|one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve)\b(?![:.h\d])"
    r"(?:\s+in\s+the\s+(?P<part>morning|afternoon|evening))?(?!\s*(?:am|pm|a\.m|p\.m))",
    re.IGNORECASE,
)
_LONE: Final = re.compile(r"\s*(?P<h>\d|1[0-2])\s*[:.]?\s*")
"""An hour with nothing else behind the day ("Sun 10")."""
_LEAST_SLIPPED: Final = 6
_EARLIEST_PLAIN: Final = 5
"""At "at 5" and later the hour stands as written; a smaller one can only be the afternoon's."""


def opened(line: str) -> Opened | Trouble | None:
    """A day line, a heading that lacks its weekday (a trouble), or None: no day line."""
    text = _OFTEN.sub("", _NUMBER.sub("", line.strip(_MARKS)))
    if (who := _WHO_TRAINS.match(text)) and _weekdays(text[who.end() :]) is not None:
        text = text[who.end() :]
    session = _SESSION.match(text)
    label = session.group(1) if session else ""
    rest = text[session.end() :] if session else text
    rest = _LETTERS.sub("mwf", _LEAD.sub("", rest))
    found = _weekdays(rest)
    if found is None and (late := _titled(text)) is not None:
        return late
    if found is None:
        return Trouble("which_weekday", name=label) if label else None
    days, ranged, rest = found
    if ranged:
        return Trouble("day_range", name=text)
    rest = rest.lstrip(") ")
    remarks: tuple[Trouble, ...] = ()
    if dated := _DATE.search(rest):
        remarks = (Trouble("dated_day", name=dated.group()),)
        rest = rest[: dated.start()] + rest[dated.end() :]
    at, rest, plain = _time(rest)
    if plain:
        remarks = (*remarks, Trouble("half_of_day", name=plain, choices=(f"{at:%H:%M}",)))
    tail = _whole(re.sub(r"\(\s*\)", "", rest).strip(' ,:.-–—*_|=~"“”'))
    joined = _AND.sub("", tail, count=1)
    behind = opened(joined) if _weekdays(joined) is not None else None
    more: tuple[Opened, ...] = ()
    if isinstance(behind, Opened) and behind.at is not None:
        more, tail = (replace(behind, more=()), *behind.more), behind.tail
    return Opened(days, at, " ".join(filter(None, (label, tail))) if label else tail, remarks, more)


_AND: Final = re.compile(r"^(?:and|&|\+|/|;|,)\s+", re.IGNORECASE)
_WHO_TRAINS: Final = re.compile(
    r"^[A-Za-z][a-zà-ÿ]*\s+(?:trains?|lifts?|comes?|works?\s+out|goes)(?:\s+[a-z]+){0,2}?\s+on\s+", re.IGNORECASE
)
"""A sentence that names the days: "Ruth trains on Mondays and Fridays at 17:30"."""
_OFTEN: Final = re.compile(
    r"^(?:\d|two|three|four)\s*(?:x|×|times)?\s*(?:per|a|/)?\s*week(?:ly)?\s*[:,–—-]\s*", re.IGNORECASE
)


def _whole(tail: str) -> str:
    """Without a bracket that lacks its other half, or that holds all of it."""
    if tail.startswith("(") and tail.endswith(")") and tail.count("(") == 1:
        tail = tail[1:-1]
    return tail if tail.count("(") == tail.count(")") else tail.strip("() ,:-–—")


_LATE: Final = re.compile(r"\s*(?:\(|[-–—:,|]+\s+)\s*(?=[A-Za-z]{2})")
_LONGEST_TITLE: Final = 60


def _titled(text: str) -> Opened | None:
    """A title with its day behind it: "Lower A (Mon 17h)". Nothing else may stand in the line."""
    for cut in _LATE.finditer(text, 1, _LONGEST_TITLE):
        title, rest = text[: cut.start()], text[cut.end() :].rstrip(")")
        if re.search(r"\d{2}|[()]", title) or _weekdays(rest) is None:
            continue
        behind = opened(rest)
        if isinstance(behind, Opened) and not behind.tail:
            return replace(behind, tail=title.strip())
    return None


def is_rest_day(title: str) -> bool:
    """Nothing is trained."""
    return title.strip(" .()").lower() in REST_DAY


def weekday_named(text: str) -> int | None:
    """The one weekday that a text names, if it names nothing else."""
    found = _weekdays(text.strip(_MARKS + "."))
    if found is None or len(found[0]) != 1 or found[2].strip(" .'s’"):
        return None
    return found[0][0]


def _weekdays(text: str) -> tuple[tuple[int, ...], bool, str] | None:
    """Weekdays at the start, whether two of them are the ends of a spread, and the rest."""
    days: list[int] = []
    words = 0
    dashed = False
    rest = text
    while found := _WORD.match(rest):
        word = _slipped(found.group().lower())
        if word == "every" and rest.lower().startswith("every day"):
            days, rest, words = list(range(7)), rest[len("every day") :], 1
            break
        if word not in WEEKDAYS or (word in SHORT_DAYS and not _short_fits(rest[found.end() :], words)):
            break
        days += WEEKDAYS[word]
        words += 1
        after = rest[found.end() :].lstrip("*_.")
        join = _JOINS.match(after)
        cut = join.end() if join else 0
        follows = _WORD.match(after[cut:])
        if not (follows and follows.group().lower() in WEEKDAYS):
            rest = after
            break
        dashed = dashed or bool(re.match(r"\s*(?:-|–|—|to\b)", after, re.IGNORECASE))
        rest = after[cut:]
    if not days:
        return None
    return tuple(dict.fromkeys(days)), dashed and words == 2, rest


_HALF_PAST: Final = re.compile(
    rf"\b(?:at\s+)?(?P<part>half|quarter)\s+(?P<side>past|to)\s+(?P<hour>\d{{1,2}}|{'|'.join(NUMBER_WORDS)})\b"
    r"(?P<told>\s+in\s+the\s+(?:morning|afternoon|evening))?",
    re.IGNORECASE,
)
_PARTS_MIN: Final = {("half", "past"): 30, ("quarter", "past"): 15, ("quarter", "to"): -15}
_HALF_OF_DAY: Final = re.compile(
    r"\b(?P<at>\d{1,2}:\d\d)\s+in\s+the\s+(?P<part>morning|afternoon|evening)\b", re.IGNORECASE
)
_OF_DAY: Final = {"morning": "am", "afternoon": "pm", "evening": "pm"}


def _clock(found: "re.Match[str]") -> str:
    """ "Half past six" in figures; where no part of the day is told, a small hour is the afternoon's."""
    minutes = _PARTS_MIN.get((found["part"].lower(), found["side"].lower()))
    if minutes is None:
        return found.group()
    hour, minute = divmod(int(NUMBER_WORDS.get(found["hour"].lower(), found["hour"])) * 60 + minutes, 60)
    told = found["told"] or ""
    hour = hour + _NOON if hour == 0 or (hour < _EARLIEST_PLAIN and not told) else hour
    return f"at {hour}:{minute:02d}{told}"


def _in_figures(found: "re.Match[str]") -> str:
    half = _OF_DAY.get((found["part"] or "").lower(), "")
    return f"at {NUMBER_WORDS.get(found['hour'].lower(), found['hour'])}{half}"


def _slipped(word: str) -> str:
    """A weekday with two letters swapped or one off, as it should be; any other word as it is."""
    if len(word) < _LEAST_SLIPPED or word in WEEKDAYS:
        return word
    near = [name.lower() for name in DAY_NAMES if name[0].lower() == word[0] and OSA.distance(word, name.lower()) <= 1]
    return near[0] if len(near) == 1 else word


def _short_fits(after: str, words: int) -> bool:
    return words > 0 or bool(re.match(r"\s*(?:[,/+&-]\s*[a-z]{2}\b|:|\d{1,2}[:.]\d\d)", after, re.IGNORECASE))


def _time(rest: str) -> tuple[time | None, str, str]:
    """A time of day near the start, the rest, and the words of one that may be morning or evening."""
    rest = _HALF_PAST.sub(_clock, rest)
    rest = _HALF_OF_DAY.sub(lambda found: f"{found['at']} {_OF_DAY[found['part'].lower()]}", rest)
    rest = _SPOKEN.sub(_in_figures, rest)
    if lone := _LONE.fullmatch(rest):
        rest = f"at {lone['h']}"
    for found in (*_TIME.finditer(rest), *_FOUR.finditer(rest)):
        groups = found.groupdict()
        half = (groups.get("half") or "").lower().replace(".", "")
        sure = bool(groups.get("m") or groups.get("sep") == "h" or half)
        sure = sure or (
            int(found.group("h")) > _NOON
            and bool(_ALONE.match(rest, found.end()))
            and not rest[: found.start()].strip(" ,:@-")
        )
        if not sure and not groups.get("at"):
            continue
        if (_SECONDS_AFTER if groups.get("m") else _UNIT_AFTER).match(rest, found.end()):
            continue
        hour, minute = int(found.group("h")), int(groups.get("m") or 0)
        if half and not 1 <= hour <= _NOON:
            continue
        if half:
            hour = hour % _NOON + (_NOON if half == "pm" else 0)
        elif not sure and hour < _EARLIEST_PLAIN:
            hour += _NOON
        plain = found.group().strip() if not sure and hour <= _NOON else ""
        return time(hour, minute), rest[: found.start()] + " " + rest[found.end() :], plain
    return None, rest, ""
