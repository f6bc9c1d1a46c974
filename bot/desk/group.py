"""A group's challenge in words and presses: opened, joined, left, paused, asked about, and the coach's word on reports.

Hears only what is said to the service. Reads with core.challenge.spoken, says with core.say.group; scores nothing.
"""

from typing import Final

from bot.desk import group_posts, group_words
from bot.desk.group_member import Member
from bot.desk.rooms import Case
from bot.ports import Press, Words
from bot.store import challenges, inbox, people
from bot.store.challenges import Open
from bot.store.people import Chat, Person
from core.challenge.spoken import Joining, Opening, Spoken, opening_of, spoken

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


# Words


def _said(case: Case, opened: Words, who: Person | None) -> bool:
    if opened.edit:
        return False
    if who is not None and case.private and who.coaches and group_words.typed(case, who, opened.text):
        return True
    said = spoken(opened.text)
    if said is None:
        return False
    if said.kind in ("open", "end"):
        return _of_coach(case, opened, who, said)
    return _of_member(case, opened, who, said)


def _of_coach(case: Case, opened: Words, who: Person | None, said: Spoken) -> bool:
    here = None if case.private else _group_chat(case, opened, who)
    if who is None or not who.coaches or (here is not None and challenges.coach_of(case.conn, here.id) != who.id):
        if case.private:
            return False
        _answer(case, group_words.say("group.coach_only"), here)
        return True
    if said.kind == "open":
        _open(case, who, said.rest, here)
    else:
        _end(case, who, here)
    return True


def _open(case: Case, coach: Person, rest: str, here: Chat | None) -> None:
    voice = group_words.voice(coach.zone)
    today = case.now.astimezone(voice.zone).date()
    wanted = opening_of(rest, today)
    where = here.id if here is not None else _where(case, coach, wanted)
    if where is None:
        return
    going = challenges.in_chat(case.conn, where)
    if going is not None:
        last = voice.date(going.noun.last)
        _answer(case, voice.say("group.already", title=going.noun.title, last=last), here)
    elif wanted.trouble is not None:
        _answer(case, group_words.trouble(voice, wanted), here)
    else:
        key = challenges.add(case.conn, where, coach.id, wanted.challenge, coach.zone, case.thread)
        group_posts.announce(case.conn, case.parts, challenges.get(case.conn, key), case.now)
        if here is None:
            name = dict(challenges.groups_of(case.conn, coach.id, case.channel))[where]
            _answer(case, voice.say("group.opened", group=name), None)


def _where(case: Case, coach: Person, wanted: Opening) -> int | None:
    """The chat of the coach's group that is meant; None: it was asked for."""
    groups = challenges.groups_of(case.conn, coach.id, case.channel)
    named = [key for key, name in groups if wanted.group and wanted.group.casefold() in name.casefold()]
    if len(named) == 1 or len(groups) == 1:
        return named[0] if len(named) == 1 else groups[0][0]
    names = group_words.voice(coach.zone).listed([name for _, name in groups])
    key = "group.which_group" if groups else "group.no_group"
    _answer(case, group_words.say(key, list=names), None)
    return None


def _end(case: Case, coach: Person, here: Chat | None) -> None:
    going = challenges.in_chat(case.conn, here.id) if here is not None else None
    mine = challenges.of_coach(case.conn, coach.id) if here is None else []
    found = going or (mine[0] if len(mine) == 1 else None)
    if found is None:
        _answer(case, group_words.say("group.none.open"), here)
        return
    group_posts.end(case.conn, found, case.now)
    if here is None:
        _answer(case, group_words.say("group.cancelled", title=found.noun.title), None)


def _of_member(case: Case, opened: Words, who: Person | None, said: Spoken) -> bool:
    here = None if case.private else _group_chat(case, opened, who)
    found = _meant(case, who, said, here)
    if found is None:
        if here is not None:
            _answer(case, group_words.say("group.none.open"), here)
        return here is not None
    if who is None or not who.lifts:
        if said.kind == "standings":
            _standings(case, found, here)
        else:
            _stranger(case, found, here)
        return True
    _answer(case, Member(case, found, who, opened.name).does(said), here)
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
    _answer(case, group_posts.now_standing(case.conn, case.parts, found, case.now), here)


# Presses


def _pressed(case: Case, press: Press, who: Person | None) -> bool:
    match press.data.split(":"):
        case [head, "join", key, *team] if head == PRESSED and key.isdecimal():
            _join_pressed(case, press, who, (int(key), team[0] if team else ""))
        case [head, "yes" | "always" | "no" as word, number] if head == PRESSED and number.isdecimal():
            if who is None:
                return False
            group_words.settle(case, who, int(number), word)
        case _:
            return False
    return True


def _join_pressed(case: Case, press: Press, who: Person | None, which: tuple[int, str]) -> None:
    here = people.chat_of(case.conn, case.channel, case.arrived.raw.chat)
    found = challenges.in_chat(case.conn, here.id) if here is not None else None
    if found is None or found.id != which[0]:
        _answer(case, group_words.say("group.none.open"), here)
    elif who is None or not who.lifts:
        _stranger(case, found, here)
    else:
        teams = found.noun.teams
        team = teams[int(which[1])] if which[1].isdecimal() and int(which[1]) < len(teams) else None
        text = Member(case, found, who, press.name).join(Joining(None, team))
        _answer(case, text, here)


def _stranger(case: Case, found: Open, here: Chat | None) -> None:
    """Someone without a place of their own here: the way in."""
    link = case.parts.link(found.door) if found.door else None
    text = group_words.say("group.stranger", link=link) if link else group_words.say("group.stranger.plain")
    _answer(case, text, here)


def _answer(case: Case, text: str, here: Chat | None) -> None:
    """Answer where it was said; in a chat that is none of ours yet, without keeping anything."""
    chat = here or people.chat_of(case.conn, case.channel, case.arrived.raw.chat)
    if chat is None:
        case.reply_unknown(text)
    else:
        case.reply(text, chat)


def _group_chat(case: Case, opened: Words, who: Person | None) -> Chat | None:
    """The group that it was said in. A coach's first word makes a chat their group."""
    chat = people.chat_of(case.conn, case.channel, case.arrived.raw.chat)
    if who is None:
        return chat
    if chat is None:
        chat = people.add_chat(case.conn, case.channel, case.arrived.raw.chat)
    if who.coaches and challenges.coach_of(case.conn, chat.id) is None:
        challenges.found_group(case.conn, chat.id, opened.title or group_words.say("group.unnamed"), who.id)
    people.chat_seen(case.conn, chat.id, case.now)
    return chat
