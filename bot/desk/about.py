"""What people say about themselves: answers at joining, changes by a sentence, their own data. Only in private chats.

The door of it: finds the wish in the words or the press, has it done, and asks the next question of a joining.
"""

from dataclasses import replace
from typing import Final

from bot.desk import about_changes, about_data, lifter
from bot.desk.coach_words import ANSWERED_WITHIN
from bot.desk.lifter import Said
from bot.desk.office import Office
from bot.desk.oneself import Oneself
from bot.desk.rooms import Case
from bot.store import about, books, coaching, people
from bot.store.people import Chat, Person
from core.flow.phrases import phrase_of
from core.join.aches import as_report
from core.join.answers import pressed_answer, read_answer
from core.join.questions import OFFERED, SCREENING, Key, Stand
from core.join.sentences import read_sentence
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
from core.model.acts import AcheAct, Alarm
from core.model.outcome import Button
from core.model.reading import Reading, Setting
from core.order.read import read_order
from core.read.reader import read

PRESS: Final = "j:"
"""What the data of a pressed answer at joining starts with."""

_ANSWERS: Final[dict[type, Key]] = {
    Named: "name", Counted: "unit", Zoned: "zone", Trains: "days", KitSaid: "kit", Experienced: "experience",
    NoAches: "aches",
}  # fmt: skip
"""The question that a wish answers, also when it is said without being asked."""


_NO_ANSWERS: Final = frozenset(
    {"hello", "start", "help", "why", "undo", "where", "thanks", "begin", "done", "swap", "well_again"}
)
"""Everyday phrases that are not meant as an answer, whatever is asked."""


def begin(case: Case, who: Person, chat: Chat, lead: str) -> None:
    """The first question, below the words of welcome."""
    me = Oneself(case, people.get(case.conn, who.id), chat)
    stand = Stand()
    about.set_stand(case.conn, who.id, case.now, stand)
    _ask(me, stand, [lead])


def heard(case: Case, who: Person, chat: Chat, said: Said) -> bool:
    """Whether it was about oneself, and was answered."""
    if not case.private or said.changes is not None or said.media is not None:
        return False
    me = Oneself(case, who, chat)
    stand = about.stand(case.conn, who.id) if who.lifts else None
    if about_data.answered(me, said):
        return True
    if said.press is not None:
        return _pressed(me, stand, said.press)
    return _typed(me, stand, said)


def _pressed(me: Oneself, stand: Stand | None, data: str) -> bool:
    if not data.startswith(PRESS):
        return False
    key, _, choice = data.removeprefix(PRESS).partition(":")
    if stand is None or stand.open != key:
        _again(me, stand, me.say("about.press.old"))
        return True
    wish = pressed_answer(stand.open, choice, me.around())
    if wish is None:
        _again(me, stand, me.say("about.press.old"))
    else:
        _done(me, stand, wish)
    return True


def _typed(me: Oneself, stand: Stand | None, said: Said) -> bool:
    wish = read_sentence(said.text, me.today, me.body.unit, me.here)
    if stand is None or stand.open is None:
        return wish is not None and _done(me, stand, wish)
    reading = read(said.text, Setting(unit=me.body.unit, today=me.today, language=me.profile.language))
    if any(isinstance(act, Alarm) for act in reading.acts):
        return False  # nothing outranks an alarm
    wish = wish or _labelled(me, stand.open, said.text)
    if wish is None and books.is_asked(me.conn, me.who.id):
        return False  # a question about sets was put later, and is what people answer first
    if wish is None and phrase_of(said.text, me.profile.language) not in _NO_ANSWERS:
        wish = read_answer(stand.open, said.text, me.around(busy=bool(reading.acts)))
    if wish is not None:
        return _done(me, stand, wish)
    return _other(me, stand, said, reading)


def _labelled(me: Oneself, key: Key, text: str) -> Wish | None:
    """The answer whose words were typed instead of pressed."""
    words = text.strip().casefold()
    choice = next((one for one in OFFERED[key] if _label(me, key, one).casefold() == words), None)
    return pressed_answer(key, choice, me.around()) if choice is not None else None


def _other(me: Oneself, stand: Stand, said: Said, reading: Reading) -> bool:
    """Words that are no answer: an ache where aches are asked for, a greeting, or something to put again."""
    told = _ache_told(me, said, reading) if stand.open == "aches" else None
    if told is not None:
        lifter.answer(me.case, me.who, me.chat, told)
        _goes_on(me, stand.answers("aches"), [])
        return True
    phrase = phrase_of(said.text, me.profile.language)
    if phrase in ("hello", "start"):
        _ask(me, stand, [me.say("about.again", name=me.profile.name)])
        return True
    if me.who.coaches and read_order(said.text, Office(me.case, me.who, me.chat).around()) is not None:
        return False  # a coach goes on coaching in the middle of it
    meant = reading.acts or reading.ask is not None or phrase is not None
    if meant or said.text.casefold().startswith(_OTHERS) or "\n" in said.text or len(said.text) > _LONGEST:
        return False
    if coaching.unanswered(me.conn, me.who.id, me.case.now - ANSWERED_WITHIN) is not None:
        return False  # the coach asked something too, and these words go there
    _ask(me, stand, [me.say("about.not_read")])
    return True


def _ache_told(me: Oneself, said: Said, reading: Reading) -> Said | None:
    """The message that reports the ache asked for: the words as they are, else as a report of a place."""
    if any(isinstance(act, AcheAct) for act in reading.acts):
        return said
    report = as_report(said.text)
    again = read(report, Setting(unit=me.body.unit, today=me.today, language=me.profile.language)) if report else None
    found = again is not None and again.ask is None and all(isinstance(act, AcheAct) for act in again.acts)
    return replace(said, text=report) if report and again and again.acts and found else None


_OTHERS: Final = ("/", "plan", "my plan")
"""How words begin that are for another part of the desk."""

_LONGEST: Final = 120
"""Letters; a longer text is no answer that missed, but something of its own."""


def _done(me: Oneself, stand: Stand | None, wish: Wish) -> bool:
    """Have it done; False: it is nothing for this person."""
    if isinstance(wish, Plain) and wish.what in ("later", "stop", "go_on"):
        return _course(me, stand, wish.what)
    if isinstance(wish, Plain) and wish.what == "train_too":
        return _train_too(me)
    if isinstance(wish, YesNo):
        return stand is not None and stand.open is not None and _yes_no(me, stand, stand.open, yes=wish.yes)
    if isinstance(wish, UnknownPlace) and stand is not None and stand.open == "zone":
        _ask(me, stand, [me.say("about.zone.unknown", place=wish.said)])
        return True
    lines = about_changes.done(me, wish, first=stand is not None and stand.open == _ANSWERS.get(type(wish)))
    if lines is None:
        return False
    key = _ANSWERS.get(type(wish))
    after = Oneself(me.case, people.get(me.conn, me.who.id), me.chat)
    if stand is not None and key is not None and stand.open == key:
        _goes_on(after, stand.answers(key), lines)
        return True
    if stand is not None and key is not None:
        about.set_stand(me.conn, me.who.id, me.case.now, stand.answers(key))
    if lines:
        after.reply("\n".join(lines))
    return True


def _train_too(me: Oneself) -> bool:
    """A coach is asked like everybody else, and is an own coach from then on."""
    if me.who.lifts:
        return False
    people.make_lifter(me.conn, me.who.id, None)
    begin(me.case, me.who, me.chat, me.say("about.train_too"))
    return True


def _course(me: Oneself, stand: Stand | None, what: str) -> bool:
    """The joining itself: a question put off, all of them, or taken up again."""
    if stand is None:
        if what == "go_on":
            me.reply(me.say("about.nothing_open"))
        return what == "go_on"
    if what == "go_on":
        _goes_on(me, stand.takes_up(), [])
    elif stand.open == "consent":
        _ask(me, stand, [me.say("about.consent.needed")])
    else:
        _goes_on(me, stand.puts_off() if what == "later" else stand.stops(), [me.say("about.later")])
    return True


def _yes_no(me: Oneself, stand: Stand, key: Key, *, yes: bool) -> bool:
    if key == "consent":
        if not yes:
            about_data.no_consent(me)
            return True
        _goes_on(me, stand.answers(key), [me.say("about.consent.yes")])
        return True
    if key in SCREENING:
        lines = _screened(me, key) if yes else []
        _goes_on(me, stand.answers(key), lines)
        return True
    return False


def _screened(me: Oneself, key: Key) -> list[str]:
    """A yes: see a physician first; all targets are held until the coach clears it."""
    about.hold_back(me.conn, me.who.id, "screening", me.case.now)
    me.tell_coach("about.coach.screened", kind="alert", question=lambda voice: voice.say(f"about.ask.{key}"))
    return [me.voice.by_coach("about.screened")]


def _goes_on(me: Oneself, stand: Stand, lines: list[str]) -> None:
    """Keep where it stands, and say what was done with the next question below it."""
    if stand.open is None and not stand.told and _TELLING & {*stand.answered}:
        about_changes.tell_facts(me)
        stand = stand.is_told()
    about.set_stand(me.conn, me.who.id, me.case.now, stand)
    if stand.open is not None:
        _ask(me, stand, lines)
    else:
        me.reply("\n".join([*lines, _closing(me, stand)]))


_TELLING: Final = frozenset({"days", "kit", "experience"})
"""Answers of which at least one is there before the coach is told of them."""


def _closing(me: Oneself, stand: Stand) -> str:
    if stand.put_off:
        return me.say("about.over.open", len(stand.put_off), n=len(stand.put_off))
    return me.voice.by_coach("about.over")


def _ask(me: Oneself, stand: Stand, lines: list[str]) -> None:
    if stand.open is None:
        me.reply("\n".join(lines))
        return
    place = about_changes.place_of(me.voice, me.profile.zone, me.case.now)
    slots = {"name": me.profile.name, "place": place, "coach": me.profile.coach or ""}
    key = "about.ask.consent.alone" if stand.open == "consent" and not me.profile.coach else f"about.ask.{stand.open}"
    buttons = tuple(Button(_label(me, stand.open, one), f"{PRESS}{stand.open}:{one}") for one in OFFERED[stand.open])
    me.reply("\n".join([*lines, me.say(key, **slots)]), buttons)


def _again(me: Oneself, stand: Stand | None, lead: str) -> None:
    if stand is None:
        me.reply(lead)
    else:
        _ask(me, stand, [lead])


def _label(me: Oneself, key: Key, choice: str) -> str:
    if choice == "keep":
        return me.profile.name if key == "name" else me.say("about.choice.keep")
    return me.say(f"about.choice.{choice}")
