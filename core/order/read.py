"""The door: a coach's text to an order. Patterns first as typed, then with the spelling of their own words mended."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Final, Literal

from core.evidence.aches import known_part
from core.evidence.body import row_of
from core.evidence.desk import desk_value
from core.model.quantities import Way
from core.order import days, orders
from core.order.mending import mended
from core.order.muscles import MOST_SETS, MUSCLES, muscles_in
from core.order.names import Found, find_name, names_at_start
from core.order.orders import About, Lacking, NoClient, Simple, Understood, WhichClient
from core.order.patterns import compiled
from core.order.words import COUNTED, WAYS

FindExercise = Callable[[str], tuple[str, ...]]


@dataclass(frozen=True, slots=True)
class Around:
    """What an order may lean on: the coach's own clients by name, how exercises are found, and the day."""

    roster: tuple[str, ...]
    find: FindExercise
    today: date
    planned: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    """Each client's exercises, so that "Mira's squats" are hers."""
    lifts: bool = True
    """The coach trains too, so that "hold on" or "bench 60x8" may be a lifter's words."""


class _Stop(Exception):
    """Reading one order ends here, with an answer. Never leaves this module."""

    def __init__(self, answer: Understood) -> None:
        super().__init__()
        self.answer = answer


_WEAK: Final = frozenset({"hold", "free", "ask", "next_time", "see", "end", "ways", "no_heavier", "swap"})
"""Rows whose words are everyday ones ("hold on a second"): without a client's name they are no order."""


def read_order(text: str, around: Around) -> Understood | None:
    """What the coach orders. None: these are no words that a coach can say."""
    bare = text.strip().lstrip("/")
    doubt: Understood | None = None
    for words in dict.fromkeys((bare, mended(bare, around.roster))):
        for name, pattern in compiled():
            found = pattern.fullmatch(words)
            if found is None:
                continue
            answer = _made(name, found, around, words)
            if not isinstance(answer, NoClient | Lacking):
                return answer
            if isinstance(answer, NoClient) and not answer.near and name in _WEAK and around.lifts:
                continue
            if doubt is None or isinstance(doubt, NoClient):
                doubt = answer
    return doubt


def _made(name: str, found: "re.Match[str]", around: Around, text: str) -> Understood:
    try:
        return _MAKERS[name](_Part(name, found, around, text))
    except _Stop as stop:
        return stop.answer


@dataclass(frozen=True, slots=True)
class _Part:
    """One match, and the look-ups that its slots need."""

    name: str
    found: "re.Match[str]"
    around: Around
    text: str

    def slot(self, name: str) -> str:
        return (self.found.groupdict().get(name) or "").strip()

    def client(self, slot: str = "who") -> str:
        said = self.slot(slot)
        return self.one(find_name(said, self.around.roster), said)

    def one(self, one: Found, said: str) -> str:
        if one.name:
            return one.name
        if one.several:
            texts = tuple(self.text.replace(said, name, 1) for name in one.several)
            raise _Stop(WhichClient(said, one.several, texts))
        raise _Stop(NoClient(said, one.near))

    def leading(self, slot: str) -> tuple[str, str]:
        """A client's name at the start of the slot, and what follows it."""
        said = self.slot(slot)
        found, typed, rest = names_at_start(said, self.around.roster)
        if not found:
            first = re.split(r"[\s:,]", said)[0][:40]
            raise _Stop(NoClient(first, find_name(first, self.around.roster).near))
        return self.one(found[0], typed[0]), rest

    def exercise(self, who: str, slot: str = "ex") -> str | None:
        return self.exercise_of(who, self.slot(slot)) if self.slot(slot) else None

    def exercise_of(self, who: str, said: str) -> str:
        """The exercise meant: among those of the client's plan first."""
        said = re.sub(r"\b(?:the|his|her|their|my)\b", " ", said).strip()
        ids = self.around.find(said)
        planned = self.around.planned.get(who, ())
        planned = tuple(dict.fromkeys(planned))
        hers = [one for one in ids if one in planned] or [one for one in planned if _shares_word(said, one)]
        if len(hers) == 1:
            return hers[0]
        if len(ids) != 1:
            choices = tuple(hers) or ids
            raise _Stop(Lacking("which_exercise" if choices else "no_exercise", said, choices))
        return ids[0]

    def whose(self) -> tuple[str, str | None]:
        """ "Tomas", "Tomas's squats" or "squats of Tomas": the client and the exercise."""
        said = self.slot("whose")
        turned = re.fullmatch(r"(?P<ex>.+?)\s+(?:of|for)\s+(?P<who>\S+(?:\s+\S+)?)", said, re.IGNORECASE)
        if turned and find_name(turned["who"], self.around.roster).name:
            who = self.one(find_name(turned["who"], self.around.roster), turned["who"])
            return who, self.exercise_of(who, turned["ex"])
        if find_name(said, self.around.roster).name:
            return self.client("whose"), None
        who, rest = self.leading("whose")
        rest = re.sub(r"^(?:on|in|with|for)\s+", "", rest.strip())
        return who, self.exercise_of(who, rest) if rest else None


def _shares_word(said: str, exercise: str) -> bool:
    """ "Squats" and the goblet squat."""
    words = {word.rstrip("s") for word in re.findall(r"[a-z]+", said.lower())}
    return bool(words) and words <= {word.rstrip("s") for word in re.findall(r"[a-z]+", row_of(exercise).name.lower())}


def _simple(part: _Part) -> Understood:
    return Simple(part.name)  # type: ignore[arg-type]  # the table names only these


def _about(part: _Part) -> Understood:
    if part.name == "old_plan" and "who" not in part.found.re.groupindex:
        return Lacking("old_plan_whose")
    what = {"sheet_of": "sheet", "see": "week"}.get(part.name, part.name)
    return About(what, part.client())  # type: ignore[arg-type]  # the table names only these


def _invite(part: _Part) -> Understood:
    name = " ".join(part.slot("text").split())
    return orders.Invite(name, cancel=part.name == "cancel_invite") if name else Lacking("invite_how")


def _hand(part: _Part) -> Understood:
    who = part.client()
    return orders.Hand(who, part.slot("text")) if part.slot("text") else Lacking("hand_how", who)


def _tell_all(part: _Part) -> Understood:
    return orders.Tell(None, part.slot("text"))


def _tell(part: _Part) -> Understood:
    found, typed, rest = names_at_start(part.slot("names"), part.around.roster)
    if not found:
        said = re.split(r"[,:\s]", part.slot("names"))[0]
        near = find_name(said, part.around.roster).near
        return NoClient(said, near)
    names = tuple(part.one(one, said) for one, said in zip(found, typed, strict=True))
    words = re.sub(r"^(?:that|to say)\s+", "", rest.lstrip(" :,"), flags=re.IGNORECASE)
    return orders.Tell(tuple(dict.fromkeys(names)), words) if words else Lacking("tell_how", names[0])


def _note(part: _Part) -> Understood:
    who, text = part.leading("noted")
    return orders.Note(who, text.lstrip(" :,")) if text.strip(" :,") else Lacking("note_how", who)


def _new_plan(part: _Part) -> Understood:
    who, text = part.leading("noted")
    text = text.lstrip(" :")
    return orders.NewPlan(who, text.strip("\n")) if text.strip() else About("plan", who)


def _copy(part: _Part) -> Understood:
    source, who = part.client(), part.client("other")
    return orders.CopyPlan(source, who) if source != who else Lacking("copy_same", who)


def _client_and_exercise(part: _Part) -> tuple[str, str | None]:
    if part.slot("whose"):
        return part.whose()
    who = part.client()
    return who, part.exercise(who)


def _under(part: _Part) -> Understood:
    who, exercise = _client_and_exercise(part)
    mode: Literal["free", "ask", "hold"] = part.name  # type: ignore[assignment]  # the table names only these
    return orders.Under(who, mode, exercise)


_LOADS: Final = re.compile(
    r"(?:(?P<s1>\d+)\s*x\s*)??(?P<load>\d+(?:[.,]\d+)?)\s*(?P<unit>kg|kgs|kilos?|lbs?|pounds?)?\s*(?:for|x)\s*(?P<low>\d+)(?:\s*(?:-|to)\s*(?P<high>\d+))?(?:\s*x\s*(?P<s2>\d+))?",
    re.IGNORECASE,
)
_MOST_REPS: Final = 30
_MOST_SETS: Final = 10


def _next_time(part: _Part) -> Understood:
    who, exercise = _client_and_exercise(part)
    said = _LOADS.fullmatch(part.slot("loads"))
    if said is None or exercise is None:
        return Lacking("next_how", part.slot("loads"))
    low = int(said["low"])
    high = int(said["high"] or low)
    sets = int(said["s1"] or said["s2"] or 0) or None
    if not 1 <= low <= high <= _MOST_REPS or (sets or 1) > _MOST_SETS:
        return Lacking("next_beyond", part.slot("loads"))
    unit = (said["unit"] or "").lower()
    kind: Literal["kg", "lb"] | None = "lb" if unit.startswith(("lb", "po")) else "kg" if unit else None
    return orders.NextTime(who, exercise, float(said["load"].replace(",", ".")), kind, (low, high), sets)


def _no_heavier(part: _Part) -> Understood:
    exercise = part_of_body = None
    if part.slot("whose"):
        who, exercise = part.whose()
    else:
        who = part.client()
        said = part.slot("ex")
        part_of_body = known_part(said) if said and not part.around.find(said) else None
        exercise = part.exercise(who) if said and part_of_body is None else None
    until = days.day_in(part.slot("until"), part.around.today) if part.slot("until") else None
    if part.slot("until") and until is None:
        return Lacking("which_day", part.slot("until"))
    return orders.NoHeavier(who, exercise, part_of_body, until)


def ways_in(text: str) -> tuple[Way, ...]:
    """The ways that a text names, in its order."""
    words = re.findall(r"[a-z]+", text.lower())
    return tuple(dict.fromkeys(WAYS[word] for word in words if word in WAYS))


def _way_order(part: _Part) -> Understood:
    who, exercise = _client_and_exercise(part)
    return orders.WayOrder(who, ways_in(part.slot("ways")), exercise)


def _what_if(part: _Part) -> Understood:
    who, rest = part.client(), part.slot("rest")
    weeks, rest = days.weeks_in(rest)
    on = re.search(
        r"\b(?:on|in|with)\s+(?:the\s+|her\s+|his\s+|their\s+)?(?P<ex>[^\d,:]+?)\s*$", rest.strip(), re.IGNORECASE
    )
    exercise = part.exercise_of(who, on["ex"]) if on else None
    ways = ways_in(rest[: on.start()] if on else rest)
    if not ways or not 1 <= weeks <= days.MOST_WEEKS:
        return Lacking("what_if_how", who)
    return orders.WhatIf(who, ways, weeks, exercise)


def _hour(part: _Part) -> Understood:
    what: Literal["digest", "weeks"] = "digest" if part.name == "hour" else "weeks"
    weekday, at = days.weekday_in(part.slot("rest")), days.time_in(part.slot("rest"))
    if at is None or (what == "weeks" and weekday is None):
        return Lacking(f"{what}_hour_how")
    return orders.Hour(what, at.hour, at.minute, weekday)


def _muscle(part: _Part) -> str | None:
    said = part.slot("muscle")
    if not said:
        return None
    found = muscles_in(said)
    if len(found) != 1:
        raise _Stop(Lacking("which_muscle" if found else "no_muscle", said, found or MUSCLES))
    return found[0]


def _swap(part: _Part) -> Understood:
    who, old = _client_and_exercise(part)
    if old is None:
        return Lacking("swap_how", who)
    said = re.sub(r"\b(?:the|his|her|their|my)\b", " ", part.slot("new")).strip()
    found = part.around.find(said)
    if len(found) != 1:
        return Lacking("which_exercise" if found else "no_exercise", said, found)
    return orders.Swap(who, old, found[0]) if found[0] != old else Lacking("swap_same", who)


def _set_range(part: _Part) -> Understood:
    who, muscle = part.client(), _muscle(part)
    low, high = int(part.slot("low")), int(part.slot("high") or part.slot("low"))
    if not 1 <= low <= high <= MOST_SETS:
        return Lacking("set_range_how", who)
    return orders.SetRange(who, muscle, (low, high))


def _usual_sets(part: _Part) -> Understood:
    return orders.SetRange(part.client(), _muscle(part))


def _easier(part: _Part) -> Understood:
    who = part.client()
    said = re.search(rf"\d{{1,2}}|\b(?:{'|'.join(COUNTED)})\b", part.slot("block"), re.IGNORECASE)
    every = int(COUNTED.get(said.group().lower(), said.group())) if said else 0
    fits = desk_value("easier.shortest") <= every <= desk_value("easier.longest")
    return orders.Easier(who, every) if fits else Lacking("easier_how", who)


def _no_easier(part: _Part) -> Understood:
    return orders.Easier(part.client(), None)


_MAKERS: Final[Mapping[str, Callable[[_Part], Understood]]] = {
    **dict.fromkeys(("clients", "attention", "weeks", "overview", "sheet", "help", "yes", "no"), _simple),
    **dict.fromkeys(("plan", "week", "notes", "clear", "end", "old_plan", "sheet_of", "see"), _about),
    **dict.fromkeys(("invite", "cancel_invite"), _invite),
    **dict.fromkeys(("free", "ask", "hold"), _under),
    **dict.fromkeys(("hour", "week_hour"), _hour),
    "clear_how": lambda _: Lacking("clear_how"),
    "hand": _hand,
    "tell_all": _tell_all,
    "tell": _tell,
    "note": _note,
    "new_plan": _new_plan,
    "copy": _copy,
    "swap": _swap,
    "next_time": _next_time,
    "no_heavier": _no_heavier,
    "ways": _way_order,
    "what_if": _what_if,
    "set_range": _set_range,
    "usual_sets": _usual_sets,
    "easier": _easier,
    "no_easier": _no_easier,
}
"""How each row of the table becomes an order."""
