"""The door for joining: what a text says to the open question. None: it is no answer, and means something else."""
# ruff: noqa: E501 - a row is a list of words

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Final

from core.join.days import week_in
from core.join.kit import kit_in
from core.join.questions import Key
from core.join.text import plain
from core.join.wishes import (
    Counted,
    Experienced,
    KitSaid,
    Named,
    NoAches,
    Plain,
    Trains,
    UnknownPlace,
    Wish,
    YesNo,
    Zoned,
)
from core.join.zones import Here, zone_in
from core.model.lifter import Experience, Kit
from core.model.quantities import Unit

NAME_LETTERS: Final = 40
"""A name longer than this is a sentence. Choice of ours."""


@dataclass(frozen=True, slots=True)
class Around:
    """What reading an answer leans on: the unit, the moment and place, what is called what so far.

    ``busy``: the words report training (the reader found acts), so that only a whole answer counts as one.
    """

    unit: Unit
    here: Here
    name: str
    busy: bool = False


_YES: Final = frozenset({
    "yes", "y", "yep", "yeah", "sure", "ok", "okay", "fine", "agreed", "i agree", "i do", "that is fine", "thats fine",
    "all right", "alright", "go ahead", "correct", "yes please", "of course", "si", "sí", "claro", "vale", "de acuerdo",
    "ja", "klar", "gerne", "einverstanden", "genau", "yes thats fine", "yes thats right", "yes it is", "yes i do",
    "yeah fine", "yes fine", "ok sure", "fine by me", "fine with me", "sounds good", "go for it", "i consent", "do it",
    "yup", "deal", "👍", "sure thing", "ok with me", "yeah ok", "yeah sure", "yes sure", "ok go", "works for me",
})  # fmt: skip
_NO: Final = frozenset({
    "no", "n", "nope", "nah", "no thanks", "no thank you", "i dont", "dont", "rather not", "i dont agree", "never",
    "none", "not really", "no gracias", "nein", "nein danke", "lieber nicht", "nothing", "not that i know", "no never",
    "not at all", "i dont think so", "dont think so", "not that i know of", "no nothing", "nothing like that",
    "no nothing like that", "nein nie", "👎", "no way", "not to my knowledge",
})  # fmt: skip
_LATER: Final = frozenset({
    "later", "skip", "skip it", "next", "not now", "pass", "dont know", "i dont know", "no idea", "unsure", "not sure",
    "luego", "mas tarde", "más tarde", "despues", "después", "saltar", "spater", "später", "nachher", "überspringen",
    "weiter", "weiß nicht", "no se", "no sé", "ask me later", "skip this", "maybe later",
    "whenever", "depends", "it depends", "varies", "it varies", "dont know yet", "i dont know yet", "no plan yet",
    "not decided", "havent decided", "not decided yet", "different every week", "when i can", "whenever i can",
})  # fmt: skip
_STOP: Final = frozenset({
    "stop", "stop asking", "enough", "enough questions", "no more questions", "all later", "skip all", "skip the rest",
    "later all", "the rest later", "basta", "genug", "todo luego", "alles später", "stop it", "leave me alone",
})  # fmt: skip
_KEEP: Final = frozenset({
    "keep", "keep it", "thats right", "that is right", "right", "correct", "stimmt", "correcto", "same", "the same",
    "as it is", "thats me", "yes thats me", "anything", "whatever", "any", "you choose", "dont mind", "i dont mind",
})  # fmt: skip
_POLITE: Final = re.compile(
    r"(?:[ ,]+(?:please|pls|plz|thanks|thx|of course|obviously|mostly|is fine|is ok|is good|works|will do|por favor|bitte|"
    r"i guess|i think|i suppose|though|lol|haha))+$",
    re.IGNORECASE,
)
"""What stands behind an answer and changes nothing of it."""
_UNITS: Final[Mapping[str, Unit]] = {
    "kg": "kg", "kgs": "kg", "kilo": "kg", "kilos": "kg", "kilograms": "kg", "metric": "kg", "kilogramm": "kg",
    "kilogramos": "kg", "lb": "lb", "lbs": "lb", "pounds": "lb", "pound": "lb", "imperial": "lb", "pfund": "lb",
    "libras": "lb",
}  # fmt: skip
_LEVELS: Final[Mapping[Experience, tuple[str, ...]]] = {
    "new": ("new", "beginner", "novice", "never", "none", "just started", "starting", "first time", "weeks", "months",
            "neu", "anfanger", "anfänger", "nuevo", "nueva", "principiante", "a few months", "just starting"),
    "some": ("some", "intermediate", "a while", "a bit", "on and off", "a year", "year and a half",
             "few years", "couple of years", "used to lift", "used to train", "getting back", "half a year", "algo", "etwas", "a little", "a few"),
    "long": ("long", "lots", "a lot", "ages", "advanced", "many years", "for years", "forever", "lang", "lange", "mucho", "experienced",
             "decades", "all my life"),
}  # fmt: skip
_YEARS: Final = re.compile(r"(\d{1,2}) ?(years?|yrs?|años?|jahren?|months?|meses|monaten?)\b")
_SOME_FROM_YEARS: Final = 1
_LONG_FROM_YEARS: Final = 4
"""Years of training behind the three words; the receipt says which was taken. Common practice, no source."""

_CALLED: Final = re.compile(
    r"(?:(?:please )?(?:(?:you can |just )?call me|my name is|name is|its|it is|im|i am|me llamo|soy|ich heiße|ich bin|nenn mich|just) )+"
)


def read_answer(key: Key, text: str, around: Around) -> Wish | None:
    """The wish that a text states as the answer to that question."""
    text = _POLITE.sub("", text.strip(" .!"))
    words = plain(text)
    if not words:
        return None
    if words in _LATER:
        return Plain("later")
    if words in _STOP:
        return Plain("stop")
    return _READ[key.split(".")[0]](words, text, around)


def pressed_answer(key: Key, choice: str, around: Around) -> Wish | None:
    """The wish of a pressed answer."""
    if choice == "later":
        return Plain("later")
    if key in ("name", "zone"):
        return Named(around.name) if key == "name" else _same_zone(around)
    fixed: Mapping[tuple[str, str], Wish] = {
        ("unit", "kg"): Counted("kg"),
        ("unit", "lb"): Counted("lb"),
        ("kit", "gym"): KitSaid(None),
        ("kit", "nothing"): KitSaid(Kit()),
        ("experience", "new"): Experienced("new"),
        ("experience", "some"): Experienced("some"),
        ("experience", "long"): Experienced("long"),
        ("aches", "none"): NoAches(),
    }
    found = fixed.get((key, choice))
    return YesNo(choice == "yes") if found is None and choice in ("yes", "no") else found


def _same_zone(around: Around) -> Wish:
    return Zoned(str(getattr(around.here.zone, "key", "UTC")))


def _yes_no(words: str, _text: str, around: Around) -> Wish | None:
    if words in _YES:
        return YesNo(yes=True)
    if words in _NO:
        return YesNo(yes=False)
    first = re.split(r"[ ,.]", words)[0]
    if around.busy or first not in ("yes", "no", "si", "sí", "ja", "nein"):
        return None
    return YesNo(first in ("yes", "si", "sí", "ja"))


def _name(words: str, text: str, around: Around) -> Wish | None:
    if words in _YES | _KEEP:
        return Named(around.name)
    said = " ".join(text.split()).strip(" .!,\"'")
    called = _CALLED.match(plain(said))
    if called is not None:
        said = (
            said[-(len(plain(said)) - called.end()) :].strip()
            if len(plain(said)) == len(said)
            else plain(said)[called.end() :].title()
        )
    if around.busy or not 0 < len(said) <= NAME_LETTERS or any(char.isdigit() for char in said) or "?" in text:
        return None
    letters = sum(char.isalpha() for char in said)
    if not letters or len(said.split()) > 3 or said.startswith("/"):
        return None
    return Named(said)


def _unit(words: str, _text: str, _around: Around) -> Wish | None:
    said = re.sub(r"^(?:(?:i use|use|in|i count in|please|only|just|i lift in|always) )+", "", words)
    return Counted(_UNITS[said]) if said in _UNITS else None


def _zone(words: str, _text: str, around: Around) -> Wish | None:
    if words in _YES | _KEEP:
        return _same_zone(around)
    found = zone_in(words, around.here)
    if found is not None:
        return Zoned(found.key, fixed=found.fixed)
    is_place = not around.busy and len(words.split()) <= 3 and not any(char.isdigit() for char in words)
    return UnknownPlace(words) if is_place and words not in _NO else None


def _days(words: str, _text: str, _around: Around) -> Wish | None:
    said = re.sub(r"^(?:i (?:can )?train|training|on|usually|mostly|always|probably|most likely) (?:on )?", "", words)
    said = re.sub(r"\b(?:around|about|like|ish|say)\b|\.(?!\d)", " ", said)
    said = re.sub(r"\b(?:after|straight after) work\b", "evening", said)
    found = week_in(said)
    return Trains(found) if found else None


def _kit(words: str, text: str, around: Around) -> Wish | None:
    found = kit_in(text, around.unit)
    if found is None or (around.busy and found.odd):
        return None
    del words
    return found


def _experience(words: str, _text: str, around: Around) -> Wish | None:
    if years := _YEARS.search(words):
        count = int(years[1]) if years[2][0] in "yaj" else int(years[1]) / 12
        return Experienced("long" if count >= _LONG_FROM_YEARS else "some" if count >= _SOME_FROM_YEARS else "new")
    if since := re.search(r"\b(?:since|seit|desde) (19\d\d|20\d\d)\b", words):
        count = around.here.now.year - int(since[1])
        return Experienced("long" if count >= _LONG_FROM_YEARS else "some" if count >= _SOME_FROM_YEARS else "new")
    for level, names in _LEVELS.items():
        if words in names:
            return Experienced(level)
    if around.busy:
        return None
    return next(
        (Experienced(level) for level, names in _LEVELS.items() if any(f" {name} " in f" {words} " for name in names)),
        None,
    )


_FINE: Final = frozenset({
    "im fine", "all good", "nichts", "nada", "all fine", "no aches", "fine", "feeling good", "im good", "good",
    "feeling fine", "nothing serious", "nothing right now", "not right now", "nothing at the moment", "none right now",
    "not at the moment", "no pain", "no pains", "pain free", "all well", "healthy", "im healthy", "nothing hurts",
    "nothing aches", "nothing really", "nope all good", "no all good", "todo bien", "alles gut",
})  # fmt: skip


def _aches(words: str, _text: str, _around: Around) -> Wish | None:
    return NoAches() if words in _NO | _FINE else None


_READ: Final[Mapping[str, Callable[[str, str, Around], Wish | None]]] = {
    "consent": _yes_no,
    "name": _name,
    "unit": _unit,
    "zone": _zone,
    "days": _days,
    "kit": _kit,
    "experience": _experience,
    "aches": _aches,
    "screen": _yes_no,
}
