"""The group that something was said in, and the answer there. Keeps no word of it."""

from bot.desk import group_words
from bot.desk.rooms import Case
from bot.ports import Words
from bot.store import challenges, people
from bot.store.people import Chat, Person


def none_open(case: Case, who: Person | None, here: Chat | None) -> None:
    """No challenge is on where it was said."""
    answer(case, group_words.own_voice(case.conn, who).say("group.none.open"), here)


def answer(case: Case, text: str, here: Chat | None) -> None:
    """Answer where it was said; in a chat that is none of ours yet, without keeping anything."""
    chat = here or people.chat_of(case.conn, case.channel, case.arrived.raw.chat)
    if chat is None:
        case.reply_unknown(text)
    else:
        case.reply(text, chat)


def group_chat(case: Case, opened: Words, who: Person | None) -> Chat | None:
    """The group that it was said in. A coach's first word makes a chat their group."""
    chat = people.chat_of(case.conn, case.channel, case.arrived.raw.chat)
    if who is None:
        return chat
    if chat is None:
        chat = people.add_chat(case.conn, case.channel, case.arrived.raw.chat)
    if who.coaches and challenges.coach_of(case.conn, chat.id) is None:
        challenges.found_group(case.conn, chat.id, opened.title or _unnamed(case, who), who.id)
    people.chat_seen(case.conn, chat.id, case.now)
    return chat


def _unnamed(case: Case, coach: Person) -> str:
    return group_words.own_voice(case.conn, coach).say("group.unnamed")
