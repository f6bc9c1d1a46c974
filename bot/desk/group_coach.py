"""The coach's words about challenges: open one, end one, how it is said. In the group, or from the coach's own chat."""

from bot.desk import group_posts, group_words
from bot.desk.group_room import answer, group_chat, none_open
from bot.desk.rooms import Case
from bot.ports import Words
from bot.store import challenges
from bot.store.challenges import Open
from bot.store.people import Chat, Person
from core.challenge.spoken import Opening, Spoken, opening_of


def how(case: Case, opened: Words, who: Person | None) -> bool:
    """What can be said about challenges: to the one who asks, where they ask it."""
    if case.private and (who is None or not who.coaches):
        return False
    here = None if case.private else group_chat(case, opened, who)
    answer(case, group_words.own_voice(case.conn, who).say("group.how"), here)
    return True


def heard(case: Case, opened: Words, who: Person | None, said: Spoken) -> bool:
    """Open or end, if the coach says it. False: said to us alone by somebody else, who means something else."""
    here = None if case.private else group_chat(case, opened, who)
    if who is None or not who.coaches or (here is not None and challenges.coach_of(case.conn, here.id) != who.id):
        if case.private:
            return False
        answer(case, group_words.own_voice(case.conn, who).say("group.coach_only"), here)
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
        answer(case, voice.say("group.already", title=going.noun.title, last=last), here)
    elif wanted.trouble is not None:
        answer(case, group_words.trouble(voice, wanted), here)
    else:
        key = challenges.add(case.conn, where, coach.id, wanted.challenge, coach.zone, case.thread)
        found = challenges.get(case.conn, key)
        later = here is None and group_posts.is_quiet(case.conn, found, case.now)
        if not later:
            group_posts.announce(case.conn, case.parts, found, case.now)
        if here is None:
            name = dict(challenges.groups_of(case.conn, coach.id, case.channel))[where]
            answer(case, voice.say("group.opened.later" if later else "group.opened", group=name), None)


def _where(case: Case, coach: Person, wanted: Opening) -> int | None:
    """The chat of the coach's group that is meant; None: it was asked for."""
    groups = challenges.groups_of(case.conn, coach.id, case.channel)
    named = [key for key, name in groups if wanted.group and wanted.group.casefold() in name.casefold()]
    if len(named) == 1 or len(groups) == 1:
        return named[0] if len(named) == 1 else groups[0][0]
    voice = group_words.own_voice(case.conn, coach)
    key = "group.which_group" if groups else "group.no_group"
    answer(case, voice.say(key, list=voice.listed([name for _, name in groups])), None)
    return None


def _end(case: Case, coach: Person, rest: str, here: Chat | None) -> None:
    found = challenges.in_chat(case.conn, here.id) if here is not None else _one_of(case, coach, rest)
    if found is None:
        if here is not None:
            none_open(case, coach, here)
        return
    group_posts.end(case.conn, found, case.now, at_once=here is not None)
    if here is None:
        answer(case, group_words.voice(found).say("group.cancelled", title=found.noun.title), None)


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
        answer(case, voice.say("group.which_end", list=voice.listed([one.noun.title for one in mine])), None)
    else:
        none_open(case, coach, None)
    return None
