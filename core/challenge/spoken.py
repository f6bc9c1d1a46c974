"""What is said to the service about a challenge, in plain words: opened, ended, joined, left, paused. Tables of words.

Reads words only; whether the speaker may say it, and what is open, is for others to know.
"""

import re
import unicodedata
from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import Final, Literal

from core.challenge.calendar import DAYS, calendar_day, has_year
from core.evidence.numbers import NUMBERS
from core.model.challenge import Challenge, Counts

Kind = Literal["how", "open", "end", "join", "leave", "pause", "back", "standings"]

_SAID: Final[tuple[tuple[str, Kind], ...]] = (
    (r"challenge\s*(?:help|\?)$|help (?:with|on) (?:the\s+|a\s+)?challenges?$", "how"),
    (r"(?:end|stop|close|cancel)\s+(?:the\s+)?challenge\b", "end"),
    (r"(?:(?:open|start|begin|new)\s+(?:a\s+|the\s+|new\s+)?)?challenge\b", "open"),
    (r"(?:i(?:'m| am)\s+in|count me in|join(?:\s+in)?)\b", "join"),
    (r"(?:leave|i(?:'m| am)\s+out|count me out)$", "leave"),
    (r"pause$", "pause"),
    (r"(?:i(?:'m| am)\s+)?back$", "back"),
    (r"(?:standings?|points|how do we stand\??)$", "standings"),
)
_KINDS: Final = tuple((re.compile(pattern, re.IGNORECASE), kind) for pattern, kind in _SAID)
"""The first that fits the beginning of the words decides; the rest of the words goes with it."""

NAME_LETTERS: Final = 24
"""The longest name that is shown; a line of the standings is to fit a phone. Choice of ours."""

_COUNTS: Final[tuple[tuple[re.Pattern[str], Counts], ...]] = (
    (re.compile(r"\bsteps?\b.*\bsessions?\b|\bsessions?\b.*\bsteps?\b|\bboth\b", re.IGNORECASE), "both"),
    (re.compile(r"\bsteps?\b", re.IGNORECASE), "steps"),
    (re.compile(r"\bsessions?\b", re.IGNORECASE), "sessions"),
)

# fmt: off
_NUMBERS: Final = {
    "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10,
    "eleven": 11, "twelve": 12,
}
# fmt: on

_WEEKS: Final = re.compile(r"\b(\d{1,3}|" + "|".join(_NUMBERS) + r")[\s-]*weeks?\b", re.IGNORECASE)
_FROM: Final = re.compile(r"\b(?:from|starting|starts?|beginning)\s+(?:on\s+|next\s+|this\s+)?", re.IGNORECASE)
_TITLE: Final = re.compile(r"[\"“«„']([^\"”»“']{1,60})[\"”»“']|\b(?:called|named)\s+([^,.;]{1,60})", re.IGNORECASE)
_TEAMS: Final = re.compile(r"\bteams?\s*:?\s+(?!of\b)([^.;]+)", re.IGNORECASE)
_IN: Final = re.compile(r"\bin\s+([^,.;]+)", re.IGNORECASE)
_AS: Final = re.compile(r"\bas\s+(.+)$", re.IGNORECASE)
_UNSEEN: Final = ("Cc", "Cf", "Cn", "Co", "Cs")
"""Kinds of characters that nobody sees, or that turn the writing round: two names would look alike."""
_AND: Final = re.compile(r"\s*,\s*(?:and\s+)?|\s+and\s+|\s*&\s*", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Spoken:
    """What is wanted, and the words that go with it."""

    kind: Kind
    rest: str


@dataclass(frozen=True, slots=True)
class Opening:
    """A challenge as it was said. ``group``: the words after "in", if any; ``trouble``: what is wrong with it."""

    challenge: Challenge
    group: str | None = None
    trouble: Literal["past", "weeks"] | None = None


@dataclass(frozen=True, slots=True)
class Joining:
    """How someone wants to take part."""

    shown: str | None = None
    team: str | None = None
    words: str = field(default="")


def shown_name(said: str) -> str:
    """A name as it can be shown, without what nobody sees; empty when nothing is left."""
    return " ".join("".join(one for one in said if unicodedata.category(one) not in _UNSEEN).split())


def same_name(one: str, other: str) -> bool:
    """Whether two names look the same to who reads them."""
    first, second = (unicodedata.normalize("NFKC", shown_name(name)).casefold() for name in (one, other))
    return first == second


def spoken(text: str) -> Spoken | None:
    """What is wanted, or None when the words are not about a challenge."""
    said = " ".join(text.split()).lstrip("/").rstrip(".")
    for pattern, kind in _KINDS:
        found = pattern.match(said)
        if found:
            return Spoken(kind, said[found.end() :].strip(" :,"))
    return None


def opening_of(rest: str, today: date) -> Opening:
    """The challenge that the coach's words open; what is unsaid is six weeks from next Monday, steps and sessions."""
    title, rest = _title(rest)
    teams, rest = _teams(rest)
    starts, rest = _start(rest, today)
    weeks = _weeks(rest)
    group = _IN.search(rest)
    counts: Counts = next((kind for pattern, kind in _COUNTS if pattern.search(rest)), "both")
    row = NUMBERS["challenge.weeks"]
    trouble: Literal["past", "weeks"] | None = None
    if starts < today:
        trouble = "past"
    elif not row.low <= weeks <= row.high:
        trouble = "weeks"
    challenge = Challenge(title or "Challenge", starts, weeks, counts, teams)
    return Opening(challenge, group.group(1).strip() if group else None, trouble)


def _title(rest: str) -> tuple[str | None, str]:
    found = _TITLE.search(rest)
    if not found:
        return None, rest
    return (found.group(1) or found.group(2)).strip(), rest[: found.start()] + rest[found.end() :]


def _teams(rest: str) -> tuple[tuple[str, ...], str]:
    found = _TEAMS.search(rest)
    if not found:
        return (), rest
    cut = re.split(r"\b(?:from|starting|for \d|in\b)", found.group(1), maxsplit=1, flags=re.IGNORECASE)[0]
    names = tuple(dict.fromkeys(name.strip() for name in _AND.split(cut) if name.strip()))
    return names if len(names) > 1 else (), rest[: found.start()] + rest[found.start() + len("teams ") + len(cut) :]


def _weeks(rest: str) -> int:
    found = _WEEKS.search(rest)
    if not found:
        return int(NUMBERS["challenge.weeks"].value)
    said = found.group(1).casefold()
    return _NUMBERS[said] if said in _NUMBERS else int(said)


def _start(rest: str, today: date) -> tuple[date, str]:
    """The first day that counts: the one said, else next Monday."""
    found = _FROM.search(rest)
    if not found:
        return _next(today + timedelta(days=1), 0), rest
    on = _date(rest[found.end() :], today)
    return (on or _next(today + timedelta(days=1), 0)), rest


def _date(said: str, today: date) -> date | None:
    word = said.casefold().split(",")[0].strip()
    near = {"today": today, "tomorrow": today + timedelta(days=1)}
    first = word.split()[0] if word.split() else ""
    if first in near:
        return near[first]
    if first[:3] in DAYS and first.isalpha():
        return _next(today, DAYS[first[:3]])
    return _calendar(word, today)


def _calendar(word: str, today: date) -> date | None:
    on = calendar_day(word, today.year)
    if on is None or on >= today or has_year(word):
        return on
    return calendar_day(word, today.year + 1)


def _next(after: date, weekday: int) -> date:
    """The next day of that weekday, ``after`` itself included."""
    return after + timedelta(days=(weekday - after.weekday()) % 7)


def joining_of(rest: str, teams: tuple[str, ...]) -> Joining:
    """The name to be shown and the team, as far as they are said."""
    named = _AS.search(rest)
    words = rest[: named.start()] if named else rest
    shown = (shown_name(named.group(1)) or None) if named else None
    lowered = words.casefold()
    team = next((one for one in teams if re.search(rf"\b{re.escape(one.casefold())}\b", lowered)), None)
    if team is None and shown is not None:
        for one in teams:
            tail = re.search(rf"\s+(?:in|for|with)\s+(?:team\s+)?{re.escape(one)}$", shown, re.IGNORECASE)
            if tail:
                return Joining(shown[: tail.start()], one, words.strip())
    return Joining(shown, team, words.strip())
