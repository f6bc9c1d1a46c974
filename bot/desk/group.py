"""A group's challenge in words and presses: who speaks to it about what, and the members' part of it.

Hears only what is said to the service. Reads with core.challenge.spoken, says with core.say.group; scores nothing.
"""

from typing import Final

from bot.desk import group_coach, group_judge, group_posts, group_words
from bot.desk.group_member import Member
from bot.desk.group_room import answer, group_chat, none_open
from bot.desk.rooms import Case
from bot.ports import Press, Words
from bot.store import challenges, inbox, people
from bot.store.challenges import Open
from bot.store.people import Chat, Person
from core.challenge.spoken import Joining, Spoken, spoken

PRESSED: Final = "c"
"""The beginning of the data of this desk's buttons."""


def heard(case: Case, opened: Words | Press, who: Person | None) -> bool:
    """Whether it was about a challenge, and was answered. Of someone unknown nothing is kept."""
    done = _pressed(case, opened, who) if isinstance(opened, Press) else _said(case, opened, who)
    if done and who is None:
        inbox.forget(case.conn, case.arrived.seq)
    elif done:
        inbox.mark(case.conn, case.arrived.seq, "done")
    return done


def _said(case: Case, opened: Words, who: Person | None) -> bool:
    said = spoken(opened.text)
    if opened.edit and (said is None or (case.private and said.kind != "join")):
        return False
    if who is not None and case.private and who.coaches and group_judge.heard(case, who, opened.text):
        return True
    if said is None:
        return _of_nothing_here(case, opened, who)
    if said.kind == "how":
        return group_coach.how(case, opened, who)
    if said.kind in ("open", "end"):
        return group_coach.heard(case, opened, who, said)
    return _of_member(case, opened, who, said)


def _of_nothing_here(case: Case, opened: Words, who: Person | None) -> bool:
    """A coach says something else in a group: what is for their own chat is not talked about there."""
    if case.private or who is None or not who.coaches or who.lifts:
        return False
    return group_coach.how(case, opened, who)


def _of_member(case: Case, opened: Words, who: Person | None, said: Spoken) -> bool:
    here = None if case.private else group_chat(case, opened, who)
    several = challenges.of_person(case.conn, who.id) if who is not None and here is None else []
    if who is not None and len(several) > 1:
        voice = group_words.own_voice(case.conn, who)
        answer(case, voice.say("group.which_of", list=voice.listed([one.noun.title for one in several])), None)
        return True
    found = _meant(case, who, said, here)
    if found is None:
        if here is not None:
            none_open(case, who, here)
        return here is not None
    if who is None or not who.lifts:
        if said.kind == "standings":
            _standings(case, found, here)
        else:
            _stranger(case, found, here)
        return True
    answer(case, Member(case, found, who, opened.name).does(said), here)
    return True


def _meant(case: Case, who: Person | None, said: Spoken, here: Chat | None) -> Open | None:
    """The challenge that is meant: the one in this group, else the speaker's own, else one that they may join."""
    if here is not None:
        return challenges.in_chat(case.conn, here.id)
    if who is None:
        return None
    mine = challenges.of_person(case.conn, who.id)
    if not mine and who.coaches and said.kind == "standings":
        mine = challenges.of_coach(case.conn, who.id)
    if mine or said.kind != "join":
        return mine[-1] if mine else None
    near = challenges.of_coach(case.conn, who.coach) if who.coach is not None else []
    return near[-1] if near else None


def _standings(case: Case, found: Open, here: Chat | None) -> None:
    answer(case, group_posts.now_standing(case.conn, case.parts, found, case.now), here)


def _pressed(case: Case, press: Press, who: Person | None) -> bool:
    match press.data.split(":"):
        case [head, "join", key, *team] if head == PRESSED and key.isdecimal():
            _join_pressed(case, press, who, (int(key), team[0] if team else ""))
        case [head, "yes" | "always" | "no" as word, number] if head == PRESSED and number.isdecimal():
            if who is None:
                return False
            group_judge.settle(case, who, int(number), word)
        case _:
            return False
    return True


def _join_pressed(case: Case, press: Press, who: Person | None, which: tuple[int, str]) -> None:
    here = people.chat_of(case.conn, case.channel, case.arrived.raw.chat)
    found = challenges.in_chat(case.conn, here.id) if here is not None else None
    if found is None or found.id != which[0]:
        none_open(case, who, here)
    elif who is None or not who.lifts:
        _stranger(case, found, here)
    else:
        teams = found.noun.teams
        team = teams[int(which[1])] if which[1].isdecimal() and int(which[1]) < len(teams) else None
        text = Member(case, found, who, press.name).join(Joining(None, team))
        answer(case, text, here)


def _stranger(case: Case, found: Open, here: Chat | None) -> None:
    """Someone without a place of their own here: the way in."""
    link = case.parts.link(found.door) if found.door else None
    voice = group_words.voice(found)
    answer(case, voice.say("group.stranger", link=link) if link else voice.say("group.stranger.plain"), here)
