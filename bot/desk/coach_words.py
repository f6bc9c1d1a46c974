"""Words between people: to one, to many after a yes, notes that nobody else sees, answers passed on."""

from datetime import timedelta
from typing import Final

from bot.desk.office import Office
from bot.desk.rooms import Case
from bot.store import coaching, people
from bot.store.coaching import Question
from bot.store.people import Person
from core.model.outcome import Outcome
from core.order.orders import Note, Tell
from core.say.reply import voice_of

ANSWERED_WITHIN: Final = timedelta(hours=48)
"""Words of a client so long after the coach's are taken for the answer."""
_NAMED: Final = 6


def tell(office: Office, order: Tell) -> None:
    """Pass words on: at once to one, after a yes to several."""
    if order.names is not None and len(order.names) == 1:
        who = office.clients[order.names[0]]
        _pass_on(office, [who], order.text)
        return
    some = list(office.clients.values()) if order.names is None else [office.clients[name] for name in order.names]
    if not some:
        office.reply(office.say("desk.tell.nobody"))
        return
    body = {"to": [one.id for one in some], "text": order.text}
    key = coaching.ask(office.conn, office.coach.id, "tell", body, office.case.now)
    text = office.say("desk.tell.ask", len(some), n=len(some), names=_names(office, some), text=order.text)
    office.reply(text, office.yes_no(key))


def told(office: Office, question: Question) -> None:
    """A yes: to those of them who are still this coach's clients."""
    mine = {one.id: one for one in office.clients.values()}
    _pass_on(office, [mine[key] for key in question.body["to"] if key in mine], question.body["text"])


def _pass_on(office: Office, some: list[Person], text: str) -> None:
    for one in some:
        coaching.add_word(office.conn, office.coach.id, one.id, office.case.now, text)
        office.tell(one.id, office.say("desk.tell.said", coach=office.coach.name, text=text), kind="reply")
    office.reply(office.say("desk.tell.done", len(some), n=len(some), names=_names(office, some)))


def _names(office: Office, some: list[Person]) -> str:
    names = [one.name for one in some[:_NAMED]]
    more = len(some) - len(names)
    return office.voice.listed([*names, *([office.say("review.more", n=more)] if more else [])])


def note(office: Office, who: Person, order: Note) -> None:
    """Keep a private note."""
    coaching.add_remark(office.conn, office.coach.id, who.id, office.case.now, order.text)
    office.reply(office.say("desk.note.kept"))


def notes(office: Office, who: Person, name: str) -> None:
    """The coach's own notes."""
    found = coaching.remarks(office.conn, office.coach.id, who.id)
    if not found:
        office.reply(office.say("desk.notes.none", name=name))
        return
    lines = [
        office.say("desk.notes.line", day=office.voice.date(at.astimezone(office.profile.zone).date()), text=text)
        for at, text in found
    ]
    office.reply("\n".join([office.say("desk.notes.head", name=name), *lines]))


def answered(case: Case, who: Person, text: str, outcome: Outcome) -> bool:
    """A client's words that report nothing, after the coach's words to them: passed on as an answer."""
    if outcome.keep or outcome.replace or outcome.planned or not text.strip():
        return False
    found = coaching.unanswered(case.conn, who.id, case.now - ANSWERED_WITHIN)
    if found is None or found[1] != who.coach:
        return False
    key, coach = found
    coaching.answered(case.conn, key)
    voice = voice_of(people.profile(case.conn, coach), "kg")
    case.tell(coach, voice.say("desk.tell.answer", name=who.name, text=text.strip()))
    return True
