"""The desk's door: one update, one transaction. Finds out who speaks and hands over to the room that is theirs."""

from datetime import datetime

from sqlalchemy import Connection

from bot.desk import about, about_changes, coach, group, group_door, joining, lifter, own_plan, reviewing
from bot.desk import coach_clock as coachs_clock
from bot.desk.lifter import Said
from bot.desk.rooms import Case, Parts
from bot.desk.words import say
from bot.ports import Back, Gone, Malformed, Media, Nothing, Opened, Press, Renamed, Words
from bot.store import agenda, books, coach_clock, inbox, outbox, outcomes, people
from bot.store.acts import Cause
from bot.store.inbox import Arrived
from bot.store.outbox import Letter
from bot.store.people import Chat, Person

Spoken = Words | Press | Media


def work(conn: Connection, parts: Parts, arrived: Arrived) -> None:
    """Work one update and mark it worked. Raises only for our own bugs and a store that fails."""
    opened = parts.openers[arrived.raw.channel](arrived.raw)
    if isinstance(opened, Malformed):
        inbox.mark(conn, arrived.seq, "aside")
    elif isinstance(opened, Nothing) or (isinstance(opened, Words) and not opened.address):
        inbox.forget(conn, arrived.seq)  # a talk between others is none of ours
    elif isinstance(opened, Words | Press | Media):
        _spoken(_case(conn, parts, arrived, opened), opened)
    else:
        _moved(conn, arrived, opened)


def give_up(conn: Connection, parts: Parts, arrived: Arrived) -> None:
    """Set a message aside that cannot be worked, and tell its sender so, in the chat that it came from."""
    inbox.mark(conn, arrived.seq, "dead")
    opened = parts.openers[arrived.raw.channel](arrived.raw)
    chat = people.chat_of(conn, arrived.raw.channel, arrived.raw.chat)
    if isinstance(opened, Words | Press | Media) and chat is not None and chat.active:
        _case(conn, parts, arrived, opened).reply(say("sorry"), chat)


def remind(conn: Connection, parts: Parts, due: agenda.Due, now: datetime) -> None:
    """Say what is due, in the same commit that marks it said. Core's rule drops what comes too late."""
    if not agenda.is_waiting(conn, due.id):
        return
    if due.kind == "zone":
        about_changes.arrived(conn, due.person, due.on, now)
        agenda.done(conn, due.id, now)
        return
    if due.kind in coach_clock.KINDS:
        coachs_clock.work(conn, parts, due, now)
        return
    if people.is_reached(conn, due.person):
        book = books.load(conn, due.person, now, parts.folding)
        if due.kind == "prompt":
            book = reviewing.for_day(conn, due.person, book, due.on, now)
        outcome = parts.remind(due.kind, due.on, book, now)
        outcomes.carry_out(conn, Cause(due.person, None, now), outcome)
        who = people.get(conn, due.person)
        for reply in outcome.replies:
            to = who.id if reply.to == "sender" else who.coach
            if to is not None:
                outbox.queue(conn, outbox.as_reply(Letter(reply.text, person=to), reply), now)
    agenda.done(conn, due.id, now)


def _case(conn: Connection, parts: Parts, arrived: Arrived, opened: Spoken) -> Case:
    thread = opened.thread if isinstance(opened, Words) else None
    return Case(conn, parts, arrived, opened.user, opened.private, thread)


def _spoken(case: Case, opened: Spoken) -> None:
    who = people.by_user(case.conn, case.channel, case.user)
    text = opened.text if isinstance(opened, Words) else ""
    name = opened.name if isinstance(opened, Words) else ""
    if group_door.enter(case, text, name, who):
        return
    if joining.enter(case, text, who, opened.language if isinstance(opened, Words) else None):
        inbox.mark(case.conn, case.arrived.seq, "done")
    elif isinstance(opened, Words | Press) and group.heard(case, opened, who):
        return
    elif who is None:
        joining.turn_away(case, text)
    else:
        _known(case, who, lifter.known_chat(case, who), opened)
        inbox.mark(case.conn, case.arrived.seq, "done")


def _known(case: Case, who: Person, chat: Chat, opened: Spoken) -> None:
    said = _said(case, opened)
    if not isinstance(opened, Press):
        inbox.note_message(case.conn, case.arrived.seq, opened.message_id, case.parts.reader)
    if joining.code_in(said.text) is not None:
        case.reply(say("code_private"), chat)
        return
    if about.heard(case, who, chat, said):
        return
    orders = who.coaches and case.private and said.media is None
    if orders and said.changes is not None and coach.edited(case, who, chat, said.text):
        return
    if orders and said.changes is None and coach.heard(case, who, chat, said.text, said.press):
        return
    if not who.lifts:
        coach.hint(case, who, chat)
    elif not (isinstance(opened, Words) and own_plan.heard(case, who, chat, said.text)):
        lifter.answer(case, who, chat, said)


def _said(case: Case, opened: Spoken) -> Said:
    match opened:
        case Press():
            return Said("", press=opened.data)
        case Media():
            return Said(_whole(opened.caption), media=opened.kind)
        case Words(edit=True):
            lane = (case.channel, case.arrived.raw.chat)
            first = inbox.number_of(case.conn, lane, opened.message_id, case.arrived.seq)
            return Said(_whole(opened.text), changes=first)
    return Said(_whole(opened.text))


def _whole(text: str) -> str:
    """The text without half characters (lone surrogates), which JSON can carry and no store can keep."""
    return text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "replace")


def _moved(conn: Connection, arrived: Arrived, opened: Opened) -> None:
    # A group tells of its move in both places: the message may come from the new chat, the value names the old one.
    told = opened.chat if isinstance(opened, Gone | Back | Renamed) else arrived.raw.chat
    chat = people.chat_of(conn, arrived.raw.channel, told)
    if chat is not None:
        match opened:
            case Gone():
                people.set_active(conn, chat.id, active=False)
            case Back():
                people.set_active(conn, chat.id, active=True)
            case Renamed():
                people.move_chat(conn, chat.id, opened.new)
    inbox.forget(conn, arrived.seq)
