"""Wishes for today alone: "only 20 minutes", "only dumbbells up to 20 today", "the whole session after all".

They count as a whole message, or as a part of it between marks; the rest of the words is given back. Knows no session.
"""
# ruff: noqa: E501 - a row is a pattern, whole

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache
from typing import Final

from core.join.days import clock_in, day_in
from core.join.kit_today import kit_of_today, kit_without
from core.join.text import plain
from core.join.wishes import AllAgain, MoveTo, ShortOfTime, Today
from core.model.lifter import Kit
from core.model.quantities import Unit

Match = re.Match[str]


@dataclass(frozen=True, slots=True)
class Found:
    """A wish for today, and the words of the message beside it."""

    wish: Today
    rest: str = ""


@dataclass(frozen=True, slots=True)
class Usual:
    """What the words lean on: the unit, the kit that is there on other days, and the day."""

    unit: Unit
    kit: Kit | None
    today: date


LEAST, MOST = 5, 180
"""Minutes; what is outside was a slip of the pen, or is no session. Choice of ours."""

_TIMES: Final[Mapping[str, int]] = {
    "an hour": 60, "one hour": 60, "1 hour": 60, "1h": 60, "1 h": 60, "half an hour": 30, "half hour": 30,
    "half an hr": 30, "three quarters of an hour": 45, "a quarter of an hour": 15, "quarter of an hour": 15,
    "an hour and a half": 90, "una hora": 60, "media hora": 30, "eine stunde": 60, "eine halbe stunde": 30,
    "ne halbe stunde": 30, "halbe stunde": 30, "eine viertelstunde": 15, "un cuarto de hora": 15,
}  # fmt: skip
_COUNTS: Final[Mapping[str, int]] = {
    "five": 5, "ten": 10, "fifteen": 15, "twenty": 20, "twenty five": 25, "twenty-five": 25, "thirty": 30, "forty": 40,
    "forty five": 45, "forty-five": 45, "fifty": 50, "sixty": 60, "zehn": 10, "zwanzig": 20, "dreißig": 30, "diez": 10,
    "veinte": 20, "treinta": 30,
}  # fmt: skip


def _either(words: Mapping[str, int]) -> str:
    return "|".join(sorted(words, key=len, reverse=True))


_MIN: Final = r"(?:minutes?|mins?|minuten|minutos)"
_FOR: Final = rf"(?P<n>(?:\d{{1,3}}|{_either(_COUNTS)})(?:[ -]?{_MIN})|{_either(_TIMES)})"
_OPEN: Final = (
    r"(?:(?:ok|okay|hi|hey|hello|sorry|so|well|but|and|today|tonight|heute|hoy|btw|damn|look|then|coach)[ ,]+)*"
)
_WHO: Final = r"(?:(?:ive|ive got|i have|i got|i can|i|we have|weve got|got|have|had|there is|there are|theres|its|it is|with|ich habe|ich hab|habe|hab|tengo|hay|here) )*"
_JUST: Final = (
    r"(?:really |literally )?(?:only|just|no more than|at most|max|maximum|maybe|like|about|nur|solo|sólo|solamente)"
)
_END: Final = r"(?: (?:today|tonight|this time|this evening|this morning|now|right now|only|please|here|left|max|at most|to train|for training|to spare|for it|for this|for today|for the session|then|im afraid|heute|hoy|zeit|at the hotel|in the hotel|available|sorry|or so|thats it|thats all|de tiempo|para entrenar))*"
_DAY: Final = r"(?: (?:today|tonight|this time|here|available|to work with|at the hotel|in the hotel|at hand|there|heute|hoy|hier|aquí|for today|in this gym|in here|at this gym|im hotel|en el hotel|this week at the hotel))"
_GEAR: Final = r"(?:dumb-?bells?|db'?s?|kettle-?bells?|bands?|mancuernas?|kurzhanteln?|bänder|bandas?|body-?weight|body weight|floor)"


A_WEEK: Final = timedelta(days=7)
"""A session moves no further than this; then its next turn comes anyway."""

_SESSION: Final = r"(?: (?:it|this|that|today|the session|my session|todays session|training|todays training|the training|the workout|my workout|this one|todays|todays one))?"
_ASK: Final = r"(?:(?:please|can we|can i|could we|could i|ill|i will|lets|id rather|i want to|i need to|have to|i have to|want to|need to|better) )*"
_CLOCK: Final = r"\d{1,2}(?:[:.h]\d\d(?: ?(?:am|pm))?| ?(?:am|pm|uhr))"


def today_in(text: str, usual: Usual) -> Found | None:
    """The wish for today that the message states, if it does."""
    whole = _wish(plain(text), usual)
    if whole is not None:
        return Found(whole)
    parts = [one.strip() for one in _PARTS.split(text) if one.strip()]
    for at, part in enumerate(parts if len(parts) > 1 else ()):
        wish = _wish(plain(part), usual)
        if wish is not None:
            return Found(wish, ", ".join((*parts[:at], *parts[at + 1 :])))
    return None


_PARTS: Final = re.compile(
    r"[.;!]+\s+|\n+|,\s+|\s+[-–]\s+|\s+(?:and|but|so)\s+(?=i\b|ive\b|i've\b|only\b|just\b|there)", re.IGNORECASE
)


def _wish(words: str, usual: Usual) -> Today | None:
    for pattern, make in _compiled():
        found = pattern.fullmatch(words)
        wish = make(usual, found) if found else None
        if wish is not None:
            return wish
    return None


def _short(_usual: Usual, found: Match) -> Today | None:
    said = found["n"]
    number = re.sub(rf"[ -]?{_MIN}$", "", said)
    minutes = _TIMES.get(said) or _COUNTS.get(number) or (int(number) if number.isdigit() else 0)
    return ShortOfTime(minutes) if LEAST <= minutes <= MOST else None


def _only(usual: Usual, found: Match) -> Today | None:
    return kit_of_today(found["kit"], usual.unit, usual.kit)


def _without(usual: Usual, found: Match) -> Today | None:
    return kit_without(found["kit"], usual.unit, usual.kit)


def _moves(usual: Usual, found: Match) -> Today | None:
    at = clock_in(found["at"]) if found["at"] else None
    on = day_in(found["day"], usual.today)
    return MoveTo(on, at) if on is not None and usual.today < on <= usual.today + A_WEEK else None


def _later(usual: Usual, found: Match) -> Today | None:
    at = clock_in(found["at"])
    return None if at is None else MoveTo(usual.today, at)


def _all(_usual: Usual, _found: Match) -> Today:
    return AllAgain()


_TABLE: Final[tuple[tuple[str, Callable[[Usual, Match], Today | None]], ...]] = (
    (rf"{_OPEN}{_WHO}{_JUST} (?:(?:about|got|have|for|do|tengo|habe|noch) )*{_FOR}{_END}", _short),
    (rf"{_OPEN}{_WHO}{_FOR}(?: only| max| at most| today| tonight| left| to train| for training| for it| for today| thats it| thats all| tops| de tiempo| zeit)+", _short),
    (rf"{_OPEN}(?:i )?(?:have to|need to|must|gotta|got to) (?:go|leave|be out|be gone|be done|stop|finish|run)(?: again)? in {_FOR}", _short),
    (rf"{_OPEN}(?:can you )?(?:make it|keep it to|cut it to|cut it down to|trim it to|trim to|shorten it to|cut to|im short on time|short on time|short of time|im in a hurry|in a hurry|a quick one|quick one|quick session|time for)[,:]? ?(?:only |just )?{_FOR}{_END}", _short),
    (rf"{_OPEN}(?:a |the )?{_FOR} (?:session|version|workout|training)(?: please| today)*", _short),
    (rf"{_OPEN}{_WHO}{_JUST} (?:the |my |a |an |use |got |have |with )*(?P<kit>.+?){_DAY}+", _only),
    (rf"(?:(?:today|tonight|heute|hoy)[,:]? )+{_WHO}{_JUST} (?:have |got |has |tengo |the |a )*(?P<kit>.+)", _only),
    (rf"(?:today )?(?:im )?(?:(?:at|in|im) )?(?:the |a )?hotel(?: gym)?[,:]? {_WHO}(?:{_JUST} )?(?:have |got |has |the |a )*(?P<kit>.+)", _only),
    (rf"{_OPEN}(?P<kit>{_GEAR}) {_JUST}{_DAY}+", _only),
    (rf"{_OPEN}{_WHO}{_JUST} (?:the |my |a |an |use |got |have )*(?P<kit>(?:up to \d+ ?(?:kg|lbs?)? ?)?{_GEAR}\b.*)", _only),
    (rf"{_OPEN}{_WHO}(?:no|kein|keine|keinen|sin|not a|without a?) (?P<kit>[\w -]+?){_DAY}+", _without),
    (rf"{_OPEN}{_ASK}(?:move|moved|moving|shift|shifting|push|pushing|postpone|reschedule|do|train)(?:d)?{_SESSION}(?: to| until| on| till| for)? (?P<day>tomorrow|the day after tomorrow|(?:next |this )?[a-zäöüé]+day|the \d{{1,2}}(?:st|nd|rd|th))(?: instead| please)*(?: at (?P<at>{_CLOCK}))?(?: instead| please)*", _moves),
    (rf"{_OPEN}{_ASK}(?:move|moved|shift|push|do|start|train)(?:d)?{_SESSION}(?: today)?(?: to| at| until)? (?P<at>{_CLOCK})(?: today| tonight| instead| please)*", _later),
    (rf"{_OPEN}(?:im )?(?:running late|later today|later tonight|a bit later|later),? (?:at |about |around )?(?P<at>{_CLOCK})", _later),
    (r"(?:ok )?(?:lets do |do |i can do )?(?:the |all of the )?(?:whole|full|entire|complete) (?:session|plan|thing|workout|lot)(?: after all| again| please| today)*", _all),
    (r"(?:i have |ive got |i do have |got )?(?:more time|time|all the time|enough time|my usual kit|my own kit|my kit)(?: after all| again| back)(?: today)?", _all),
    (r"(?:all of it|everything|as planned|as usual|usual kit|all my kit|back to the plan|back to normal)(?: after all| again)(?: today)?", _all),
)  # fmt: skip
"""Sentences, the first that fits whole: what it looks like, and what it comes to."""


@cache
def _compiled() -> tuple[tuple["re.Pattern[str]", Callable[[Usual, Match], Today | None]], ...]:
    return tuple((re.compile(words), make) for words, make in _TABLE)
