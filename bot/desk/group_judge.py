"""The coach's word on what a member told: on reports that wait for it, and on a session that nobody asked about."""

from collections import Counter

from bot.desk import group_words
from bot.desk.rooms import Case
from bot.store import challenges, contest, outbox, people
from bot.store.challenges import Open
from bot.store.outbox import Letter
from bot.store.people import Person
from core.challenge.striking import Struck, struck
from core.model.challenge import Entrant, Word


def heard(case: Case, coach: Person, text: str) -> bool:
    """Whether the coach's words, said to us alone, were about what counts, and were answered."""
    return _typed(case, coach, text) or _ruled(case, coach, text)


def _typed(case: Case, coach: Person, text: str) -> bool:
    """The coach types one of the answers: it is for the member whose question has waited longest."""
    said = " ".join(text.split()).casefold()
    for found in challenges.of_coach(case.conn, coach.id):
        shown = {one.who: one.shown for one, _ in challenges.entrants(case.conn, found.id)}
        open_ = challenges.still_waiting(case.conn, found.id)
        counted = Counter(one.person for one in open_)
        newest = {one.person: one.id for one in open_}
        for who, count in counted.items():  # in the order of their questions
            for word in group_words.ASKED:
                answers = {group_words.answer(group_words.voice(found), word, shown[who], n) for n in (1, count)}
                if said in {one.casefold() for one in answers}:
                    settle(case, coach, newest[who], word)
                    return True
    return False


def settle(case: Case, coach: Person, number: int, word: str) -> None:
    """The coach's word on a member's reports, up to the newest that was asked about when it was said.

    "always" trusts the member with sessions told in one go from now on.
    """
    one = challenges.waiting(case.conn, number)
    found = challenges.get(case.conn, one.challenge) if one is not None else None
    if one is None or found is None or found.coach != coach.id or one.word != "waits":
        _tell(case, coach, group_words.own_voice(case.conn, coach).say("group.ask.old"))
        return
    voice = group_words.voice(found)
    if found.state not in ("new", "on"):
        _tell(case, coach, voice.say("group.ask.late", title=found.noun.title))
        return
    given: Word = "no" if word == "no" else "yes"
    for other in challenges.still_waiting(case.conn, found.id, one.person):
        if other.id <= number:
            challenges.settle(case.conn, other.id, given)
    if word == "always":
        challenges.trust(case.conn, found.id, one.person)
    challenges.mark(case.conn, found.id, looked=None)
    entrant = challenges.entrant_of(case.conn, found.id, one.person)
    _tell(case, coach, voice.say(f"group.ask.done.{word}", name=entrant.shown if entrant else ""))


def _ruled(case: Case, coach: Person, text: str) -> bool:
    """The coach says of a session, unasked, that it is to count or not. False: the words are about something else."""
    voice = group_words.own_voice(case.conn, coach)
    said = struck(text, case.now.astimezone(voice.zone).date())
    mine = challenges.of_coach(case.conn, coach.id) if said is not None else []
    if said is None or not mine:
        return False
    meant = [(found, one) for found in mine for one, _ in challenges.entrants(case.conn, found.id)
             if said.name.casefold() in _called(case, one)]  # fmt: skip
    if not meant:
        _tell(case, coach, voice.say("group.rule.nobody", name=said.name))
    for found, one in meant:
        _tell(case, coach, _rule(case, found, one, said))
    return True


def _called(case: Case, one: Entrant) -> set[str]:
    """A member's names: the one that is shown, and the coach's own for them."""
    return {one.shown.casefold(), people.get(case.conn, one.who).name.casefold()}


def _rule(case: Case, found: Open, one: Entrant, said: Struck) -> str:
    voice = group_words.voice(found)
    slots = {"title": found.noun.title, "name": one.shown, "day": f"{voice.weekday(said.on)} {voice.date(said.on)}"}
    if not contest.has_day(case.conn, found.id, one.who, said.on):
        return voice.say("group.rule.no_day", **slots)
    challenges.rule(case.conn, found.id, one.who, said.on, "yes" if said.counts else "no")
    challenges.mark(case.conn, found.id, looked=None)
    return voice.say("group.rule.counts" if said.counts else "group.rule.not", **slots)


def _tell(case: Case, coach: Person, text: str) -> None:
    outbox.queue(case.conn, Letter(text, person=coach.id, reply_to=case.arrived.seq), case.now)
