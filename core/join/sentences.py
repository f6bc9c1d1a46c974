"""The door for later: a sentence that changes something about oneself, or asks for one's own data. A table of words.

A sentence counts only as a whole; anything else is None, and means what it meant.
"""
# ruff: noqa: E501, ISC004 - a row is a pattern, whole

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date, time
from functools import cache
from typing import Final

from core.join.answers import NAME_LETTERS
from core.join.days import WEEKDAYS, clock_in, day_in, names_a_beginning, span_in, week_in
from core.join.kit import kit_in, names_gear
from core.join.text import plain
from core.join.wishes import (
    Away,
    Bare,
    Counted,
    CourseOf,
    DayMoved,
    DayOut,
    Lead,
    Named,
    NoHeavier,
    Nudges,
    Plain,
    Quiet,
    Reminders,
    Speak,
    Trains,
    UnknownPlace,
    WhichDay,
    Wish,
    Zoned,
)
from core.join.zones import Here, zone_in
from core.model.quantities import Unit

Match = re.Match[str]


@dataclass(frozen=True, slots=True)
class Said:
    """A whole message with what its reading leans on."""

    text: str
    words: str
    today: date
    unit: Unit
    here: Here


PLAIN: Final[Mapping[Bare, tuple[str, ...]]] = {
    "export": ("export my data", "export", "/export", "my data", "give me my data", "download my data", "send me my data",
               "export everything", "exporta mis datos", "mis datos", "exportiere meine daten", "meine daten",
               "exportar mis datos", "meine daten exportieren"),
    "forget": ("forget me", "/forget", "delete my data", "erase me", "delete me", "erase my data", "delete everything",
               "delete my account", "erase everything about me", "olvidame", "olvídame", "borra mis datos",
               "vergiss mich", "lösche meine daten", "delete all my data", "forget everything about me"),
    "settings": ("my settings", "settings", "/settings", "what do you know about me", "what do you keep",
                 "what do you keep about me", "ajustes", "einstellungen", "meine einstellungen", "mis ajustes"),
    "week": ("my week", "/week", "week", "show my week", "how is my week", "hows my week", "how was my week",
             "mi semana", "meine woche", "this week"),
    "go_on": ("go on with joining", "continue joining", "set me up", "finish joining", "/join", "go on asking",
              "ask me again", "continue setup", "setup", "/setup", "questions", "ask me the rest", "sigue preguntando",
              "frag weiter"),
    "back": ("im back", "i am back", "back again", "back", "im home again", "end the pause", "pause over", "unpause",
             "he vuelto", "ya estoy aquí", "bin wieder da", "ich bin zurück", "im back early"),
    "cleared": ("my doctor cleared me", "the doctor cleared me", "a doctor cleared me", "doctor cleared me",
                "my doctor says i can train", "i was seen by a doctor", "i have been seen by a doctor",
                "ive been seen by a doctor", "cleared by my doctor", "the doctor says its fine",
                "my doctor says its fine", "physician cleared me", "my physician cleared me"),
    "train_too": ("i train too", "i train here too", "i lift too", "coach me too", "i want to train too"),
}  # fmt: skip
"""Wishes said in these words, whole."""

_BARE: Final = {words: what for what, every in PLAIN.items() for words in every}

_LANGUAGES: Final = {
    "english": "en", "inglés": "en", "ingles": "en", "englisch": "en", "spanish": "es", "español": "es",
    "espanol": "es", "castellano": "es", "spanisch": "es", "german": "de", "deutsch": "de", "alemán": "de",
    "aleman": "de",
}  # fmt: skip
_UNITS: Final = {"pounds": "lb", "lb": "lb", "lbs": "lb", "pound": "lb", "kg": "kg", "kilos": "kg", "kilograms": "kg"}
_DAY: Final = "|".join(sorted((name for name in WEEKDAYS if len(name) > 2), key=len, reverse=True))
_SPAN: Final = r"(?:for|from|until|till|through|starting|as of|next|this|on|tomorrow|today|now)\b.*"


def read_sentence(text: str, today: date, unit: Unit, here: Here) -> Wish | None:
    """The wish that a whole message states."""
    words = plain(text)
    if words in _BARE:
        return Plain(_BARE[words])
    said = Said(text, words, today, unit, here)
    for pattern, make in _compiled():
        found = pattern.fullmatch(words)
        wish = make(said, found) if found else None
        if wish is not None:
            return wish
    return None


def _language(_said: Said, found: Match) -> Wish | None:
    language = _LANGUAGES.get(found["tongue"])
    return None if language is None else Speak(language)  # type: ignore[arg-type]


def _called(said: Said, found: Match) -> Wish | None:
    name = found["name"].strip()
    at = said.text.casefold().rfind(name)
    name = said.text[at : at + len(name)] if at >= 0 else name.title()
    return Named(name) if len(name) <= NAME_LETTERS and not any(char.isdigit() for char in name) else None


def _unit(_said: Said, found: Match) -> Wish | None:
    return Counted(_UNITS[found["unit"]])  # type: ignore[arg-type]


def _in_place(said: Said, found: Match) -> Wish | None:
    """ "I'm in Lisbon next week": a place that a table knows; with words of time it need not be known to be answered."""
    zone = zone_in(found["place"], said.here)
    when = (found["span"] or "").strip()
    span = span_in(when, said.today)
    if zone is None:
        return UnknownPlace(found["place"]) if when and span else None
    if span is None:
        return WhichDay(when)
    first, last = span
    return Zoned(zone.key, None if first <= said.today else first, last, zone.fixed)


def _zone(said: Said, found: Match) -> Wish | None:
    zone = zone_in(found["place"], said.here)
    return UnknownPlace(found["place"]) if zone is None else Zoned(zone.key, fixed=zone.fixed)


def _gear(said: Said, found: Match) -> Wish | None:
    kit = kit_in(found["kit"], said.unit, adds=True) if names_gear(found["kit"]) else None
    return None if kit is None or kit.kit is None or (kit.odd and not kit.beside) else kit


def _whole_kit(said: Said, found: Match) -> Wish | None:
    return kit_in(found["kit"], said.unit)


def _out(_said: Said, found: Match) -> Wish | None:
    return DayOut(WEEKDAYS[found["day"]])


def _moves(_said: Said, found: Match) -> Wish | None:
    at = clock_in(found["time"]) if found["time"] else None
    return DayMoved(WEEKDAYS[found["day"]], WEEKDAYS[found["to"]], at)


def _timed(_said: Said, found: Match) -> Wish | None:
    at = clock_in(found["time"])
    day = WEEKDAYS[found["day"]]
    return None if at is None else DayMoved(day, day, at)


def _trains(_said: Said, found: Match) -> Wish | None:
    days = week_in(found["days"])
    return Trains(days) if days else None


def _no_heavier(said: Said, found: Match) -> Wish | None:
    if not found["until"]:
        return NoHeavier()
    until = day_in(found["until"], said.today)
    return WhichDay(found["until"]) if until is None else NoHeavier(until=until)


def _lead(_said: Said, found: Match) -> Wish | None:
    count = {"an": 1.0, "a": 1.0, "half an": 0.5, "one": 1.0, "two": 2.0, "three": 3.0}.get(found["n"])
    number = float(found["n"]) if count is None else count
    minutes = round(number * (60 if found["unit"].startswith("h") else 1))
    return Lead(minutes) if 0 <= minutes <= 24 * 60 else None


def _away(said: Said, found: Match) -> Wish | None:
    when = found["when"].strip()
    span = span_in(when, said.today)
    if span is None or span[1] is None:
        end = day_in(re.sub(r"^(?:back|i will be back|ill be back) (?:on )?", "", when), said.today)
        return WhichDay(when) if end is None else Away(end)
    return Away(span[1])


def _away_until(said: Said, found: Match) -> Wish | None:
    end = day_in(found["day"], said.today)
    if end is None:
        return WhichDay(found["day"])
    return Away(date.fromordinal(end.toordinal() - names_a_beginning(found["day"])))


def _quiet(_said: Said, found: Match) -> Wish | None:
    begins, ends = clock_in(found["a"]), clock_in(found["b"])
    return None if begins is None or ends is None else Quiet(begins, ends)


def _quiet_from(_said: Said, found: Match) -> Wish | None:
    return _half(found, begins=True)


def _quiet_to(_said: Said, found: Match) -> Wish | None:
    return _half(found, begins=False)


def _half(found: Match, *, begins: bool) -> Wish | None:
    at: time | None = clock_in(found["a"])
    if at is None:
        return None
    if begins and at.hour < 12 and "am" not in found["a"] and ":" not in found["a"] and at.hour:
        at = time(at.hour + 12, at.minute)  # "not after 9" is the evening
    return Quiet(begins=at) if begins else Quiet(ends=at)


def _course(_said: Said, found: Match) -> Wish | None:
    return CourseOf(found["what"].strip())


_T: Final = r"\d{1,2}(?:[:.h]\d\d)?(?: ?(?:am|pm|uhr|h))?"
_TABLE: Final[tuple[tuple[str, Callable[[Said, Match], Wish | None]], ...]] = (
    (r"(?:please )?(?:speak |talk |answer |write |reply |habla |responde |antworte |schreib |sprich )?(?:to me )?"
     r"(?:in |en |auf |bitte auf )?(?P<tongue>english|inglés|ingles|englisch|spanish|español|espanol|castellano|"
     r"spanisch|german|deutsch|alemán|aleman)(?: please| por favor| bitte)?", _language),
    (r"(?:please )?(?:call me|my name is now|my name is|me llamo|llámame|nenn mich|ich heiße) (?P<name>[^\d]{1,60}?)"
     r"(?: from now on| please| now)?", _called),
    (r"(?:please )?(?:use|switch to|change to|count in|i use|in|show) (?P<unit>pounds|pound|lbs|lb|kg|kilos|kilograms)"
     r"(?: please| from now on| now)?", _unit),
    (r"(?:my )?(?:time ?)?zone(?: is| now)?:? (?P<place>.+)", _zone),
    (rf"(?:im|i am|ill be|i will be|im going to be|estoy|estaré|ich bin) (?:in|at|en) (?P<place>[^\d]+?)(?: (?P<span>{_SPAN}))?",
     _in_place),
    (rf"(?:im )?(?:travelling|traveling|flying|going|moving|moved|i moved|off) to (?P<place>[^\d]+?)(?: (?P<span>{_SPAN}))?",
     _in_place),
    (r"(?:i )?(?:ive |have )?(?:just )?(?:got|bought|have|now have|own)(?: a new| new| also| now)? (?P<kit>.+?)(?: now| too)?",
     _gear),
    (r"(?:my kit(?: is| now)?|kit|my equipment(?: is)?|equipment):? (?P<kit>.+)", _whole_kit),
    (rf"(?:no |not on |no training on |i cant do |i cant train on |cant do )(?P<day>{_DAY})s?(?: any ?more| from now on)?",
     _out),
    (rf"(?P<day>{_DAY})s? (?:are|is) (?:out|off|gone|no good)(?: from now on| for good| now)?", _out),
    (rf"(?:(?:please|can you|can we|could you|could we|can i) )*(?:move |change |switch |shift )?(?P<day>{_DAY})s?"
     rf"(?: moves?| go| becomes?)? to (?P<to>{_DAY})s?(?: (?:at )?(?P<time>{_T}))?(?: please)?",
     _moves),
    (rf"(?:move |change |set )?(?P<day>{_DAY})s? (?:at|to|from now on at|is at|are at|now at) (?P<time>{_T})", _timed),
    (r"(?:i (?:can )?train|i now train|training days(?: are)?|my (?:training )?days are)(?: on)?:? (?P<days>.+)", _trains),
    (r"(?:nothing|no|not) heavier(?: please| for now)?(?:,? (?:until|till|before) (?P<until>.+))?", _no_heavier),
    (r"(?:no|dont) (?:add|more) (?:load|weight)(?: for now)?(?:,? (?:until|till|before) (?P<until>.+))?", _no_heavier),
    (r"(?:heavier|more (?:load|weight)) is (?:fine|ok|okay|allowed)(?: again| now)?", lambda _s, _f: NoHeavier(on=False)),
    (r"(?:please )?remind me (?P<n>\d+(?:\.5)?|half an|an|a|one|two|three) (?P<unit>minutes?|mins?|min|hours?|h)"
     r"(?: before| ahead| earlier)?(?: (?:the session|training|a session|each session|my sessions?))?", _lead),
    (r"(?:please )?(?:no|stop|stop the|turn off|switch off|dont send|without) (?:more )?reminders?(?: please| any ?more)?",
     lambda _s, _f: Reminders(on=False)),
    (r"(?:dont|do not) remind me(?: any ?more)?", lambda _s, _f: Reminders(on=False)),
    (r"(?:please )?(?:reminders? (?:on|again|please)|remind me(?: again| please)?|turn on reminders|send reminders)",
     lambda _s, _f: Reminders(on=True)),
    (r"(?:please )?(?:no|stop|stop the|turn off|switch off|dont send|without|end) (?:more |the |rest )*(?:nudges?|nudging(?: me)?|rest timers?)"
     r"(?: me| please| any ?more| after rests?)*|(?:dont|do not) nudge me(?: .*)?|nudges? off", lambda _s, _f: Nudges(on=False)),
    (r"(?:please )?(?:can you )?(?:nudge|ping|poke|tell|remind|warn|buzz|alert) me (?:(?:after|when|once|as soon as) (?:each |every |my |the |a )?rests?"
     r"(?: (?:is|are|periods? (?:is|are)|time is) (?:over|up|done))?|when (?:its|it is) time for (?:the|my) next set|between sets)(?: please)?",
     lambda _s, _f: Nudges(on=True)),
    (r"(?:please )?(?:nudges? (?:on|please|again|after rests?)|nudge me(?: please| again)?|turn on (?:the )?nudges|rest timer(?: on| please)?|time my rests?|avísame al acabar la pausa|sag bescheid,? wenn die pause um ist)",
     lambda _s, _f: Nudges(on=True)),
    (r"(?:im |i am |ill be )?(?:away|gone|off|on holiday|on vacation|holiday|vacation|pause|paused|silent|quiet|out)"
     r"(?: for now)?,? (?:until|till|through) (?P<day>.+)", _away_until),
    (r"(?:im |i am |ill be )?(?:away|gone|on holiday|on vacation|holiday|vacation|pause|paused),? "
     r"(?P<when>(?:for|this week|next week|from|back|until|today|tomorrow).*)", _away),
    (rf"quiet(?: hours)?(?: are| from| between|:)* ?(?P<a>{_T}) ?(?:to|until|and|-|–) ?(?P<b>{_T})", _quiet),
    (rf"(?:dont|do not) (?:write|text|message|disturb)(?: me)? (?:between|from) (?P<a>{_T}) (?:to|and|until) (?P<b>{_T})",
     _quiet),
    (rf"(?:(?:dont|do not) (?:write|text|message)(?: me)?|nothing|not|quiet) (?:after|from) (?P<a>{_T})", _quiet_from),
    (rf"(?:(?:dont|do not) (?:write|text|message)(?: me)?|nothing|not|quiet) (?:before|until) (?P<a>{_T})", _quiet_to),
    (r"how (?:am i|do i|is it|are things|is my progress|have i been|am i doing|are we) ?(?:doing|going|getting on|coming on)?"
     r" (?:on|in|with|at) (?:the |my )?(?P<what>.+)", _course),
    (r"how(?:s| is| are) my (?P<what>.+?)(?: doing| going| coming on| coming along)?", _course),
    (r"(?:show (?:me )?)?(?:my )?(?:progress|course|trend|chart|picture) (?:on|in|of|for|with) (?:the |my )?(?P<what>.+)", _course),
    (r"/progress (?P<what>.+)", _course),
    (r"(?:whats|what is|what was|what did|what have|how much did) i? ?(?:do|done|get|got|lift|lifted|hit|managed?|use|used)?(?: last (?:time|week|session))?"
     r" (?:on|for|in|with|at) (?:the |my )?(?P<what>.+?)(?: last (?:time|week|session|month))?", _course),
    (r"(?:cómo|como) voy (?:en|con) (?:el |la )?(?P<what>.+)", _course),
    (r"wie läuft(?:s| es)? (?:beim|bei der|mit dem|mit der|im|bei) (?P<what>.+)", _course),
)  # fmt: skip
"""Sentences, the first that fits whole: what it looks like, and what it comes to."""


@cache
def _compiled() -> tuple[tuple["re.Pattern[str]", Callable[[Said, Match], Wish | None]], ...]:
    return tuple((re.compile(words), make) for words, make in _TABLE)
