"""The coach's door: words and presses become orders, and each order goes to its own part of the desk.

Anything that is no order is left to the others: a coach may train too.
"""

from collections.abc import Callable, Mapping
from typing import Any, Final

from bot.desk import coach_ahead, coach_looks, coach_people, coach_plans, coach_targets, coach_words
from bot.desk.office import Office
from bot.desk.rooms import Case
from bot.store import coach_clock, coaching
from bot.store.coaching import Question
from bot.store.people import Chat, Person
from core.evidence.exercises import EXERCISES
from core.model.outcome import Button
from core.order import orders
from core.order.orders import About, Lacking, NoClient, Simple, Understood, WhichClient
from core.order.read import read_order

ANSWER: Final = "c:"
ORDER: Final = "o:"
"""What the data of a pressed button starts with: the answer to a question, or an order in words."""

_CHOICES: Final = 4


def heard(case: Case, coach: Person, chat: Chat, text: str, press: str | None) -> bool:
    """Work a coach's message. False: it is none of the coach's words."""
    office = Office(case, coach, chat)
    coach_clock.ensure(case.conn, coach.id, case.now)
    if press is not None and press.startswith(ANSWER):
        _pressed(office, press)
        return True
    words = press.removeprefix(ORDER) if press is not None else text
    if press is not None and not press.startswith(ORDER):
        return False
    found = read_order(words, office.around()) if words.strip() else None
    if isinstance(found, Simple) and found.what in ("yes", "no"):
        return _typed_answer(office, found.what)
    if found is None:
        return False
    work(office, found)
    return True


def edited(case: Case, coach: Person, chat: Chat, text: str) -> bool:
    """An order written over. What only asks or shows is worked anew; of all else it is said that it stays as it was."""
    office = Office(case, coach, chat)
    found = read_order(text, office.around()) if text.strip() else None
    if found is None:
        if not coach.lifts:
            office.reply(office.say("desk.edited"))
        return not coach.lifts
    anew = isinstance(found, _ANEW) or (isinstance(found, About) and found.what != "clear")
    if anew:
        work(office, found)
    else:
        office.reply(office.say("desk.edited"))
    return True


def hint(case: Case, coach: Person, chat: Chat) -> None:
    """What can be said, for words that are no order."""
    office = Office(case, coach, chat)
    office.reply(office.say("desk.unknown"))


def work(office: Office, found: Understood) -> None:
    """Carry an order out, or say what it lacks."""
    _WORK[type(found)](office, found)


_ANEW: Final = (
    orders.NewPlan,
    orders.CopyPlan,
    orders.Easier,
    orders.Swap,
    orders.WhatIf,
    WhichClient,
    NoClient,
    Lacking,
)
"""Orders that change nothing before a yes, and those that are no whole order yet."""


# Questions


def _pressed(office: Office, press: str) -> None:
    _, key, letter = [*press.split(":"), "", ""][:3]
    asked = coaching.question_of(office.conn, int(key)) if key.isascii() and key.isdigit() and len(key) < 18 else None
    if asked is None or asked.asks != office.coach.id:
        office.reply(office.say("desk.not_yours"))
        return
    _answered(office, asked, yes=letter == "y")


def _typed_answer(office: Office, word: str) -> bool:
    """A typed yes or no goes to the newest question; without one it is none of the coach's words."""
    open_ = coaching.open_questions(office.conn, office.coach.id)
    if not open_:
        if not office.coach.lifts:
            office.reply(office.say("desk.nothing_open"))
            return True
        return False
    _answered(office, open_[0], yes=word == "yes")
    return True


def _answered(office: Office, asked: Question, *, yes: bool) -> None:
    if not coaching.close(office.conn, asked.id, "yes" if yes else "no"):
        office.reply(office.say("desk.question.gone"))
        return
    act = (_YES if yes else _NO).get(asked.kind)
    if act is None:
        office.reply(office.say("desk.left"))
    else:
        act(office, asked)


_YES: Final[Mapping[str, Callable[[Office, Question], None]]] = {
    "plan": coach_plans.in_force,
    "tell": coach_words.told,
    "end": coach_people.ended,
    "hand": coach_people.handed,
    "target": coach_targets.target_yes,
    "beyond": coach_targets.beyond_yes,
}
_NO: Final[Mapping[str, Callable[[Office, Question], None]]] = {
    "hand": coach_people.not_handed,
    "target": coach_targets.target_no,
}


# Orders


def _simple(office: Office, order: Simple) -> None:
    _SIMPLE[order.what](office)


def _help(office: Office) -> None:
    office.reply(office.say("desk.help"))


_SIMPLE: Final[Mapping[str, Callable[[Office], None]]] = {
    "clients": coach_people.clients,
    "attention": coach_looks.attention,
    "weeks": coach_looks.weeks,
    "overview": coach_looks.overview,
    "sheet": coach_looks.sheet,
    "help": _help,
}


def _about(office: Office, order: About) -> None:
    if order.what == "sheet":
        coach_looks.sheet(office, order.who)
        return
    _ABOUT[order.what](office, office.clients[order.who], order.who)


_ABOUT: Final[Mapping[str, Callable[[Office, Person, str], None]]] = {
    "plan": coach_plans.show,
    "old_plan": coach_plans.old,
    "week": coach_looks.week,
    "notes": coach_words.notes,
    "clear": coach_people.clear,
    "end": coach_people.end,
}


def _new_plan(office: Office, order: orders.NewPlan) -> None:
    coach_plans.new(office, office.clients[order.who], order.who, order)


def _copy(office: Office, order: orders.CopyPlan) -> None:
    coach_plans.copy(office, office.clients[order.source], office.clients[order.who], order)


def _hand(office: Office, order: orders.Hand) -> None:
    coach_people.hand(office, office.clients[order.who], order.who, order)


def _with_client(act: Callable[[Office, Person, Any], None]) -> Callable[[Office, Any], None]:
    return lambda office, order: act(office, office.clients[order.who], order)


def _which(office: Office, found: WhichClient) -> None:
    pairs = zip(found.names, found.texts, strict=True)
    buttons = [Button(name, f"{ORDER}{text}") for name, text in pairs]
    lines = [office.say("desk.which", said=found.said), *found.names]
    office.reply("\n".join(lines), buttons)


def _no_client(office: Office, found: NoClient) -> None:
    key = "desk.no_client.near" if found.near else "desk.no_client"
    office.reply(office.say(key, said=found.said, near=office.voice.listed(list(found.near))))


def _lacking(office: Office, found: Lacking) -> None:
    names = [office.voice.exercise(one) if one in EXERCISES else one for one in found.choices[:_CHOICES]]
    office.reply(office.say(f"desk.lacking.{found.what}", said=found.said, choices=office.voice.listed(names)))


_WORK: Final[Mapping[type, Callable[[Office, Any], None]]] = {
    Simple: _simple,
    About: _about,
    WhichClient: _which,
    NoClient: _no_client,
    Lacking: _lacking,
    orders.Invite: coach_people.invite,
    orders.NewPlan: _new_plan,
    orders.CopyPlan: _copy,
    orders.Tell: coach_words.tell,
    orders.Note: _with_client(coach_words.note),
    orders.Hand: _hand,
    orders.Under: _with_client(coach_targets.under),
    orders.NextTime: _with_client(coach_targets.next_time),
    orders.NoHeavier: _with_client(coach_targets.no_heavier),
    orders.SetRange: _with_client(coach_targets.set_range),
    orders.Easier: _with_client(coach_plans.easier),
    orders.Swap: _with_client(coach_plans.swap),
    orders.WayOrder: _with_client(coach_targets.ways),
    orders.WhatIf: _with_client(coach_ahead.what_if),
    orders.Hour: coach_people.hour,
}
"""Where each order goes."""
