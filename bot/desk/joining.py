"""The door: a code makes a coach or a client of whoever sends it, once. Everyone else stays a stranger."""

import re
from dataclasses import replace
from typing import Final

from bot.desk import about
from bot.desk.rooms import Case
from bot.desk.words import say
from bot.store import agenda, coach_clock, inbox, invites, people, strangers
from bot.store.invites import Invite
from bot.store.people import Person
from core import due
from core.model.plan import Plan
from core.say.reply import voice_of
from core.say.wording import FALLBACK, LANGUAGES

_START: Final = re.compile(r"/start(?:@\w+)?(?:\s+|=)(\S+)\s*", re.IGNORECASE)
_REFUSED: Final = {"unknown": "code_unknown", "used": "code_used", "expired": "code_expired"}


def code_in(text: str) -> str | None:
    """The code of a ``/start CODE``, if the text is one."""
    found = _START.fullmatch(text.strip())
    return found.group(1) if found else None


def turn_away(case: Case, text: str) -> None:
    """A stranger: one polite answer a day, and nothing is kept. A code that fails gets its reason instead."""
    code = code_in(text)
    if code is not None:
        case.reply_unknown(say(_of_no_use(case, code) or "code_private"))
    elif strangers.is_new(case.conn, case.channel, case.user, case.now):
        case.reply_unknown(say("stranger"))
    inbox.forget(case.conn, case.arrived.seq)


def enter(case: Case, text: str, known: Person | None, language: str | None = None) -> bool:
    """Let the bearer of a good code in, in the channel's language where we speak it. False: no code that works here."""
    code = code_in(text)
    if code is None or not case.private:
        return False
    found = invites.look(case.conn, code, case.now)
    if isinstance(found, str) or not strangers.may_try(case.conn, case.channel, case.user, case.now):
        trouble = _of_no_use(case, code) if known is not None else None
        if trouble is not None:
            _answer(case, say(trouble))
        return known is not None
    if known is not None and found.coach == known.id:
        _answer(case, say("code_own"))
        return True
    invites.use(case.conn, code, case.now)
    newcomer = known or people.add(case.conn, found.name, found.zone, case.now)
    people.reach(case.conn, newcomer.id, case.channel, case.user)
    if known is None:
        _speak(case, newcomer, language)
    _welcome(case, newcomer, found)
    return True


def _of_no_use(case: Case, code: str) -> str | None:
    """Why a code lets its bearer in nowhere, counted against guessing; None: it is good."""
    if not strangers.may_try(case.conn, case.channel, case.user, case.now):
        return "code_wait"
    trouble = invites.look(case.conn, code, case.now)
    if not isinstance(trouble, str):
        return None
    strangers.tried(case.conn, case.channel, case.user, case.now)
    return _REFUSED[trouble]


def _welcome(case: Case, newcomer: Person, invite: Invite) -> None:
    if invite.kind == "coach":
        people.make_coach(case.conn, newcomer.id)
        coach_clock.ensure(case.conn, newcomer.id, case.now)
        _answer(case, say("joined_coach", name=newcomer.name))
        return
    trained = newcomer.lifts
    people.make_lifter(case.conn, newcomer.id, invite.coach)
    for row in due.ahead(people.profile(case.conn, newcomer.id), Plan(), case.now):
        agenda.change(case.conn, newcomer.id, row)
    chat = people.chat_of(case.conn, case.channel, case.arrived.raw.chat)
    if invite.coach is not None and chat is not None:
        coach = people.get(case.conn, invite.coach)
        people.chat_seen(case.conn, chat.id, case.now)
        voice = voice_of(people.profile(case.conn, newcomer.id), "kg")
        lead = voice.say("about.joined", name=newcomer.name, coach=coach.name)
        if trained:
            case.reply(lead, chat)
        else:
            about.begin(case, newcomer, chat, lead)
        case.tell(coach.id, voice_of(people.profile(case.conn, coach.id), "kg").say("desk.hears", name=newcomer.name))


def _speak(case: Case, newcomer: Person, language: str | None) -> None:
    """In the language that the chat world says is theirs, where it is one of ours."""
    spoken = (language or "").split("-")[0].casefold()
    if spoken in LANGUAGES and spoken != FALLBACK:
        profile = replace(people.profile(case.conn, newcomer.id), language=spoken, decimal=",")
        people.set_profile(case.conn, newcomer.id, profile)


def _answer(case: Case, text: str) -> None:
    chat = people.chat_of(case.conn, case.channel, case.arrived.raw.chat)
    if chat is not None:
        people.chat_seen(case.conn, chat.id, case.now)
        case.reply(text, chat)
