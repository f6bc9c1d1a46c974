"""A lifter's message: load the book, ask core, carry out the answer, queue what is said. Decides nothing."""

from dataclasses import dataclass, replace

from bot.desk import coach_words
from bot.desk.rooms import Case
from bot.desk.words import say
from bot.store import books, inbox, outbox, outcomes, people
from bot.store.acts import Cause
from bot.store.books import Edited
from bot.store.outbox import Letter
from bot.store.people import Chat, Person
from core.model.acts import SetAct
from core.model.book import Incoming
from core.model.outcome import Outcome, Reply
from core.say.render import Voice
from core.say.reply import voice_of


@dataclass(frozen=True, slots=True)
class Said:
    """What a lifter sent, whatever its form. ``changes`` is the number of the message that it edits."""

    text: str
    changes: int | None = None
    press: str | None = None
    media: str | None = None


def answer(case: Case, who: Person, chat: Chat, said: Said) -> None:
    """The whole pass of one message, in the transaction of the case."""
    edit = said.changes is not None
    number = case.arrived.seq if said.changes is None else said.changes
    cause = Cause(who.id, number, inbox.received(case.conn, number) if edit else case.now)
    if edit:
        outcomes.reopen(case.conn, cause)
    edited = Edited(number, cause.at) if edit else None
    book = books.load(case.conn, who.id, case.now, case.parts.folding, edited)
    incoming = Incoming(number, said.text, edit=edit, press=said.press, media=said.media, first_came=cause.at)
    outcome = case.parts.answer(incoming, book, case.now)
    outcomes.carry_out(case.conn, cause, outcome, edit=edit)
    passed_on = case.private and not edit and coach_words.answered(case, who, said.text, outcome)
    _speak(case, who, chat, replace(outcome, notes=()) if passed_on else outcome)


def _speak(case: Case, who: Person, chat: Chat, outcome: Outcome) -> None:
    for reply in outcome.replies:
        if reply.to == "sender" and case.private:
            _queue(case, reply, Letter(reply.text, chat=chat.id, thread=case.thread, reply_to=case.arrived.seq))
        elif reply.to == "sender":
            # Nothing about a body reaches a group: the answer goes to the lifter alone.
            _queue(case, reply, Letter(reply.text, person=who.id, reply_to=case.arrived.seq))
        elif who.coach is not None:
            _queue(case, reply, Letter(reply.text, person=who.coach))
    for text in outcome.notes:
        if who.coach is not None:
            case.tell(who.coach, _coachs_voice(case, who.coach).say("desk.note.from", name=who.name, text=text))
    if not case.private and outcome.replies:
        case.reply(_for_the_group(who, outcome), chat)


def _coachs_voice(case: Case, coach: int) -> Voice:
    return voice_of(people.profile(case.conn, coach), "kg")


def _queue(case: Case, reply: Reply, letter: Letter) -> None:
    outbox.queue(case.conn, outbox.as_reply(letter, reply), case.now)


def _for_the_group(who: Person, outcome: Outcome) -> str:
    sets = sum(isinstance(one.act, SetAct) for one in outcome.keep)
    if sets:
        return say("group_kept", name=who.name, count=sets)
    return say("group_answered", name=who.name)


def known_chat(case: Case, who: Person) -> Chat:
    """The chat that the message came from; a group in which someone known writes is a chat of ours from then on."""
    chat = people.chat_of(case.conn, case.channel, case.arrived.raw.chat)
    if chat is None:
        owner = who.id if case.private else None
        chat = people.add_chat(case.conn, case.channel, case.arrived.raw.chat, who=owner)
    people.chat_seen(case.conn, chat.id, case.now)
    return chat
