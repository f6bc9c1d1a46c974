"""One's own data: given away on a word, erased on a word and a yes; and the word that a doctor cleared somebody."""

import json
from datetime import timedelta
from typing import Final

from bot.desk.lifter import Said
from bot.desk.oneself import Oneself
from bot.store import about, coaching, erase, outcomes, people
from bot.store.coaching import Question
from bot.store.outbox import Recipe
from core.join.text import plain
from core.model.outcome import Button

PRESS: Final = "q:"
"""What the data of an answer to one of these questions starts with."""

ASKED_FOR: Final = timedelta(hours=1)
"""How long such a question stays open."""

_KINDS: Final = frozenset({"forget", "cleared"})
_YES: Final = frozenset({"yes", "y", "yes please", "sure", "sí", "si", "ja", "do it", "yes forget me", "forget me"})
_NO: Final = frozenset({"no", "n", "nope", "no thanks", "cancel", "nein", "dont", "not yet", "keep it"})


def export(me: Oneself) -> list[str]:
    """Two documents, made after this answer: every set as CSV, everything as JSON."""
    me.reply(me.say("about.export"))
    body = json.dumps({"who": me.who.id})
    if me.who.lifts:
        me.make(me.say("about.export.sets"), Recipe("rungbook-sets.csv", "sets", body))
    me.make(me.say("about.export.all"), Recipe("rungbook-everything.json", "everything", body))
    return []


def ask_to_forget(me: Oneself) -> list[str]:
    """Ask once."""
    clients = people.clients(me.conn, me.who.id) if me.who.coaches else []
    if clients:
        return [me.say("about.forget.clients", len(clients), n=len(clients))]
    _ask(me, "forget", me.say("about.forget.ask"))
    return []


def cleared(me: Oneself) -> list[str]:
    """Somebody was seen by a doctor: the coach clears, or without one the lifter after one question."""
    if about.held(me.conn, me.who.id) is None:
        return [me.say("about.cleared.none")]
    if me.who.coach is not None:
        me.tell_coach("about.coach.cleared", kind="alert")
        return [me.say("about.cleared.coach", coach=me.profile.coach)]
    _ask(me, "cleared", me.say("about.cleared.ask"))
    return []


def _ask(me: Oneself, kind: str, text: str) -> None:
    key = coaching.ask(me.conn, me.who.id, kind, {}, me.case.now, about=me.who.id)
    me.reply(text, (Button(me.say("yes"), f"{PRESS}{key}:y"), Button(me.say("no"), f"{PRESS}{key}:n")))


def answered(me: Oneself, said: Said) -> bool:
    """Whether it was the answer to one of these questions."""
    if said.press is not None:
        return said.press.startswith(PRESS) and _pressed(me, said.press)
    found = _open(me)
    words = plain(said.text)
    if found is None or words not in _YES | _NO:
        return False
    return _settled(me, found, yes=words in _YES)


def _open(me: Oneself) -> Question | None:
    found = coaching.open_questions(me.conn, me.who.id)
    if not found or found[0].kind not in _KINDS or me.case.now - found[0].at > ASKED_FOR:
        return None
    return found[0]


def _pressed(me: Oneself, data: str) -> bool:
    found = _open(me)
    if found is None or data.split(":")[1] != str(found.id):
        me.reply(me.say("about.press.old"))
        return True
    return _settled(me, found, yes=data.endswith(":y"))


def _settled(me: Oneself, found: Question, *, yes: bool) -> bool:
    coaching.close(me.conn, found.id, "yes" if yes else "no")
    if not yes:
        me.reply(me.say(f"about.{found.kind}.no"))
    elif found.kind == "forget":
        _forget(me, "about.forget.done")
    else:
        outcomes.clear_hold(me.conn, me.who.id)
        me.reply(me.say("about.cleared.done"))
    return True


def no_consent(me: Oneself) -> None:
    """Nothing is kept, and it is said kindly. A coach who does not train after all coaches on."""
    if me.who.coaches:
        erase.forget_training(me.conn, me.who.id)
        me.reply(me.say("about.consent.no.coach"))
        return
    me.tell_coach("about.coach.refused")
    _forget(me, "about.consent.no")


def _forget(me: Oneself, key: str) -> None:
    """Erase the person; the last word goes to an address that is not kept."""
    text = me.voice.by_coach(key) if key == "about.consent.no" else me.say(key, days=erase.BACKUPS_LAST_DAYS)
    opened = me.case.parts.openers
    erase.forget(me.conn, me.who.id, opened, me.case.now)
    me.case.reply_unknown(text)
