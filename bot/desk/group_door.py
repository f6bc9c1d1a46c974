"""The way into a group's challenge for someone without a coach here: a short joining of their own."""

from bot.desk import about, group_words
from bot.desk.joining import code_in
from bot.desk.rooms import Case
from bot.store import challenges, inbox, people
from bot.store.people import Person


def enter(case: Case, text: str, name: str, known: Person | None) -> bool:
    """Let the bearer of an open challenge's code in, to train on their own. False: it is no such code."""
    code = code_in(text)
    found = challenges.by_door(case.conn, code) if code is not None and case.private else None
    if found is None:
        return False
    who = known or people.add(case.conn, " ".join(name.split()) or "friend", found.zone, case.now)
    people.reach(case.conn, who.id, case.channel, case.user)
    trained = who.lifts
    if not trained:
        people.make_lifter(case.conn, who.id, who.coach)
    chat = people.chat_of(case.conn, case.channel, case.arrived.raw.chat)
    if chat is not None:
        people.chat_seen(case.conn, chat.id, case.now)
        lead = group_words.voice(found).say("group.door.in", name=who.name, title=found.noun.title)
        if trained:
            case.reply(lead, chat)
        else:
            about.begin(case, who, chat, lead)
    inbox.mark(case.conn, case.arrived.seq, "done")
    return True
