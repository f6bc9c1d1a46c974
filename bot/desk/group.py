"""A group's challenge in words and presses: opened, joined, left, paused, asked about, and the coach's word on reports.

Hears only what is said to the service. Reads with core.challenge.spoken, says with core.say.group; scores nothing.
"""

from typing import Final

from bot.desk import group_judge, group_posts, group_words
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
    if who is not None and case.private and who.coaches and group_judge.heard(case, who, opened.text):
        return True
    said = spoken(opened.text)
    if said is None:
        return False
    if said.kind == "how":
        return _how(case, opened, who)
    if said.kind in ("open", "end"):
        return _of_coach(case, opened, who, said)
    return _of_member(case, opened, who, said)


def _how(case: Case, opened: Words, who: Person | None) -> bool:
    """What can be said about challenges: to the one who asks, where they ask it."""
    if case.private and (who is None or not who.coaches):
        return False
    here = None if case.private else _group_chat(case, opened, who)
    _answer(case, group_words.own_voice(case.conn, who).say("group.how"), here)
    return True


def _of_coach(case: Case, opened: Words, who: Person | None, said: Spoken) -> bool:
    here = None if case.private else _group_chat(case, opened, who)
    if who is None or not who.coaches or (here is not None and challenges.coach_of(case.conn, here.id) != who.id):
        if case.private:
            return False
        _answer(case, group_words.own_voice(case.conn, who).say("group.coach_only"), here)
        return True
    if said.kind == "open":
        _open(case, who, said.rest, here)
    else:
        _end(case, who, said.rest, here)
    return True


def _open(case: Case, coach: Person, rest: str, here: Chat | None) -> None:
    voice = group_words.own_voice(case.conn, coach)
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
    voice = group_words.own_voice(case.conn, coach)
    key = "group.which_group" if groups else "group.no_group"
    _answer(case, voice.say(key, list=voice.listed([name for _, name in groups])), None)
    return None


def _end(case: Case, coach: Person, rest: str, here: Chat | None) -> None:
    found = challenges.in_chat(case.conn, here.id) if here is not None else _one_of(case, coach, rest)
    if found is None:
        if here is not None:
            _none_open(case, coach, here)
        return
    group_posts.end(case.conn, found, case.now)
    if here is None:
        _answer(case, group_words.voice(found).say("group.cancelled", title=found.noun.title), None)


def _one_of(case: Case, coach: Person, rest: str) -> Open | None:
    """The one of the coach's challenges that the words mean, by its title or its group; None: it was asked for."""
    names = dict(challenges.groups_of(case.conn, coach.id, case.channel))
    mine = challenges.of_coach(case.conn, coach.id)
    said = rest.casefold().removeprefix("in ").strip()
    meant = [one for one in mine if said and said in f"{one.noun.title}\n{names.get(one.chat, '')}".casefold()]
    if len(meant) == 1 or len(mine) == 1:
        return (meant or mine)[0]
    if mine:
        voice = group_words.own_voice(case.conn, coach)
        _answer(case, voice.say("group.which_end", list=voice.listed([one.noun.title for one in mine])), None)
    else:
        _none_open(case, coach, None)
    return None


def _of_member(case: Case, opened: Words, who: Person | None, said: Spoken) -> bool:
    here = None if case.private else _group_chat(case, opened, who)
    several = challenges.of_person(case.conn, who.id) if who is not None and here is None else []
    if who is not None and len(several) > 1:
        voice = group_words.own_voice(case.conn, who)
        _answer(case, voice.say("group.which_of", list=voice.listed([one.noun.title for one in several])), None)
        return True
    found = _meant(case, who, said, here)
    if found is None:
        if here is not None:
            _none_open(case, who, here)
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
            group_judge.settle(case, who, int(number), word)
        case _:
            return False
    return True


def _join_pressed(case: Case, press: Press, who: Person | None, which: tuple[int, str]) -> None:
    here = people.chat_of(case.conn, case.channel, case.arrived.raw.chat)
    found = challenges.in_chat(case.conn, here.id) if here is not None else None
    if found is None or found.id != which[0]:
        _none_open(case, who, here)
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
    voice = group_words.voice(found)
    _answer(case, voice.say("group.stranger", link=link) if link else voice.say("group.stranger.plain"), here)


def _none_open(case: Case, who: Person | None, here: Chat | None) -> None:
    _answer(case, group_words.own_voice(case.conn, who).say("group.none.open"), here)


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
        challenges.found_group(case.conn, chat.id, opened.title or _unnamed(case, who), who.id)
    people.chat_seen(case.conn, chat.id, case.now)
    return chat


def _unnamed(case: Case, coach: Person) -> str:
    return group_words.own_voice(case.conn, coach).say("group.unnamed")
