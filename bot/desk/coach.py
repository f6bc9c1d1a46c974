"""What a coach can say: invite, clients, clear. A table of words; anything else is answered with what can be said."""

from collections.abc import Callable
from typing import Final

from bot.desk.rooms import Case
from bot.desk.words import say
from bot.store import invites, outcomes, people, reports
from bot.store.invites import Invite
from bot.store.people import Person

MOST_NAME: Final = 60


def reply(case: Case, coach: Person, text: str) -> str | None:
    """The answer to a coach's words; None: they are not words of a coach."""
    word, _, rest = text.strip().partition(" ")
    act = _WORDS.get(word.casefold().lstrip("/"))
    return act(case, coach, " ".join(rest.split())) if act else None


def hint(_case: Case, _coach: Person, _name: str) -> str:
    """What a coach can say."""
    return say("coach_help")


def _invite(case: Case, coach: Person, name: str) -> str:
    if not name:
        return say("invite_how")
    if len(name) > MOST_NAME:
        return say("invite_long", most=str(MOST_NAME))
    code = invites.make(case.conn, Invite("client", name, coach.zone, coach.id), case.now)
    return say("invite_link", name=name, link=case.parts.link(code))


def _clients(case: Case, coach: Person, _name: str) -> str:
    clients = people.clients(case.conn, coach.id)
    if not clients:
        return say("clients_none")
    days = reports.last_days(case.conn, [client.id for client in clients])
    return "\n".join(
        say("clients_line", name=client.name, day=f"{days[client.id]:%a %-d %b %Y}")
        if client.id in days
        else say("clients_line_none", name=client.name)
        for client in clients
    )


def _clear(case: Case, coach: Person, name: str) -> str:
    if not name:
        return say("clear_how")
    found = people.by_name(case.conn, name, coach=coach.id)
    if not found:
        return say("client_unknown", name=name)
    if len(found) > 1:
        return say("client_twice", name=name, count=len(found))
    cleared = outcomes.clear_hold(case.conn, found[0].id)
    return say("cleared" if cleared else "clear_none", name=found[0].name)


_WORDS: Final[dict[str, Callable[[Case, Person, str], str]]] = {
    "invite": _invite,
    "clients": _clients,
    "clear": _clear,
    "help": hint,
}
