"""What a challenge's desk says beside the posts, and the coach's word on reports that wait."""

from datetime import date
from zoneinfo import ZoneInfo

from bot.desk.rooms import Case
from bot.store import challenges, outbox
from bot.store.challenges import Open, Waiting
from bot.store.outbox import Letter
from bot.store.people import Person
from core.challenge.spoken import Opening
from core.evidence.numbers import NUMBERS
from core.model.challenge import Challenge, Word
from core.model.outcome import Button
from core.say.group import counting_from
from core.say.render import Voice

ASKED = ("yes", "always", "no")
"""The coach's answers, in the order of the buttons; "always" is for sessions told in one go alone."""


def voice(zone: str) -> Voice:
    """How a group or its coach is spoken to."""
    return Voice("", ZoneInfo(zone))


def say(key: str, **slots: object) -> str:
    """A sentence that needs no time and no unit."""
    return voice("UTC").say(key, **slots)


def trouble(speaks: Voice, wanted: Opening) -> str:
    """What is wrong with an opening, and what now."""
    row = NUMBERS["challenge.weeks"]
    return speaks.say(f"group.{wanted.trouble}", low=int(row.low), high=int(row.high))


def joined(speaks: Voice, noun: Challenge, shown: str, today: date) -> str:
    """The answer to a join."""
    return counting_from(speaks, noun, shown, noun.starts - today)


def ask(speaks: Voice, found: Open, shown: str, one: Waiting, *, own: bool) -> Letter:
    """The question to the coach about a report that waits. ``own``: a client of theirs, whose exercises they know."""
    kind = "beyond" if one.exercise else "told"
    exercise = speaks.exercise(one.exercise) if own and one.exercise else speaks.say("group.ask.some")
    day = f"{speaks.weekday(one.on)} {speaks.date(one.on)}"
    text = speaks.say(f"group.ask.{kind}", title=found.noun.title, name=shown, exercise=exercise, day=day)
    offered = [word for word in ASKED if word != "always" or not one.exercise]
    buttons = tuple(Button(speaks.say(f"group.ask.{word}", name=shown), f"c:{word}:{one.id}") for word in offered)
    return Letter(text, kind="summary", person=found.coach, buttons=buttons)


def typed(case: Case, coach: Person, text: str) -> bool:
    """The coach types one of the answers: it is for the report asked about longest."""
    said = " ".join(text.split()).casefold()
    for found in challenges.of_coach(case.conn, coach.id):
        for entrant, _ in challenges.entrants(case.conn, found.id):
            for one in challenges.still_waiting(case.conn, found.id, entrant.who):
                for word in ASKED:
                    if said == say(f"group.ask.{word}", name=entrant.shown).casefold():
                        settle(case, coach, one.id, word)
                        return True
    return False


def settle(case: Case, coach: Person, number: int, word: str) -> None:
    """The coach's word on a report; "always" trusts the member with sessions told in one go from now on."""
    one = challenges.waiting(case.conn, number)
    found = challenges.get(case.conn, one.challenge) if one is not None else None
    if one is None or found is None or found.coach != coach.id or one.word != "waits":
        _tell(case, coach, say("group.ask.old"))
        return
    entrant = challenges.entrant_of(case.conn, found.id, one.person)
    given: Word = "no" if word == "no" else "yes"
    challenges.settle(case.conn, number, given)
    if word == "always":
        challenges.trust(case.conn, found.id, one.person)
        for other in challenges.still_waiting(case.conn, found.id, one.person):
            if not other.exercise:
                challenges.settle(case.conn, other.id, "yes")
    challenges.mark(case.conn, found.id, looked=None)
    _tell(case, coach, say(f"group.ask.done.{word}", name=entrant.shown if entrant else ""))
    if word != "always" and not one.exercise:
        rest = [other for other in challenges.still_waiting(case.conn, found.id, one.person) if not other.exercise]
        if rest and entrant is not None:
            outbox.queue(case.conn, ask(voice(found.zone), found, entrant.shown, rest[0], own=True), case.now)


def _tell(case: Case, coach: Person, text: str) -> None:
    outbox.queue(case.conn, Letter(text, person=coach.id, reply_to=case.arrived.seq), case.now)
