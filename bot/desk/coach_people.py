"""A coach's people: invitations, the list, hand-overs, the end of work, alarms cleared, hours."""

from datetime import time, timedelta
from typing import Final

from bot.desk.office import Office
from bot.store import coach_clock, coaching, invites, outcomes, people, reports
from bot.store.coaching import Hours, Question
from bot.store.invites import Invite
from bot.store.people import Person
from core.order.hand import Rein
from core.order.orders import Hand, Hour
from core.order.orders import Invite as InviteOrder

MOST_NAME = 60
GENTLE: Final = timedelta(days=7)
"""So long after an alarm was cleared nothing goes up by itself. Common practice, no source."""


def invite(office: Office, order: InviteOrder) -> None:
    """Invite somebody, or take an invitation back."""
    if order.cancel:
        gone = coaching.withdraw(office.conn, office.coach.id, order.name, office.case.now)
        key = "desk.invite.gone" if gone else "desk.invite.none"
        office.reply(office.say(key, gone, name=order.name, n=gone))
        return
    if len(order.name) > MOST_NAME:
        office.reply(office.say("desk.invite.long", most=MOST_NAME))
        return
    wanted = Invite("client", order.name, office.coach.zone, office.coach.id)
    code = invites.make(office.conn, wanted, office.case.now)
    office.reply(office.say("desk.invite.link", name=order.name, link=office.case.parts.link(code)))


def clients(office: Office) -> None:
    """Who they are and when they last trained."""
    if not office.clients:
        office.reply(office.say("desk.clients.none"))
        return
    days = reports.last_days(office.conn, [one.id for one in office.clients.values()])
    lines = [
        office.say("desk.clients.line", name=name, day=f"{office.voice.date(days[one.id])} {days[one.id].year}")
        if one.id in days
        else office.say("desk.clients.line.none", name=name)
        for name, one in office.clients.items()
    ]
    office.reply("\n".join(lines))


def clear(office: Office, who: Person, name: str) -> None:
    """The coach has spoken with the client, who has been seen: targets again."""
    cleared = outcomes.clear_hold(office.conn, who.id)
    if not cleared:
        office.reply(office.say("desk.clear.none", name=name))
    else:
        until = office.today + GENTLE
        if not any(one.kind == "hold" and one.exercise is None for one in coaching.reins(office.conn, who.id, until)):
            rein = Rein("hold", until=until)
            coaching.take_in_hand(office.conn, who.id, rein, office.coach.id, office.case.now)
        office.reply(office.say("desk.cleared.gently", name=name, day=office.voice.date(until)))
        office.tell(who.id, office.say("desk.clear.told", coach=office.coach.name), kind="alert")


def end(office: Office, who: Person, name: str) -> None:
    """Ask before the work with a client ends."""
    key = coaching.ask(office.conn, office.coach.id, "end", {}, office.case.now, about=who.id)
    office.reply(office.say("desk.end.ask", name=name), office.yes_no(key))


def ended(office: Office, question: Question) -> None:
    """The work has ended: the data stays the client's."""
    who = _own(office, question)
    if who is None:
        return
    coaching.end_all_reins(office.conn, who.id, office.case.now, ("ask", "hold", "no_heavier", "ways", "fixed", "sets"))
    people.make_lifter(office.conn, who.id, None)
    office.reply(office.say("desk.end.done", name=who.name))
    office.tell(who.id, office.say("desk.end.told", coach=office.coach.name))


def hand(office: Office, who: Person, name: str, order: Hand) -> None:
    """Ask the other coach to take a client on."""
    wanted = order.coach.casefold()
    if wanted in (office.coach.name.casefold(), "me", "myself"):
        office.reply(office.say("desk.hand.self", name=name))
        return
    found = [one for one in people.coaches(office.conn) if one.name.casefold() == wanted and one.id != office.coach.id]
    if len(found) != 1:
        office.reply(office.say("desk.hand.twice" if found else "desk.hand.none", coach=order.coach))
        return
    key = coaching.ask(office.conn, found[0].id, "hand", {"by": office.coach.id}, office.case.now, about=who.id)
    office.reply(office.say("desk.hand.asked", name=name, coach=found[0].name))
    office.tell(found[0].id, office.say("desk.hand.ask", coach=office.coach.name, name=who.name), office.yes_no(key))


def handed(office: Office, question: Question) -> None:
    """The other coach takes the client on."""
    if question.about is None:
        return
    who = people.get(office.conn, question.about)
    if who.coach != question.body["by"]:
        office.reply(office.say("desk.question.gone"))
        return
    people.make_lifter(office.conn, who.id, office.coach.id)
    office.reply(office.say("desk.hand.taken", name=who.name))
    office.tell(question.body["by"], office.say("desk.hand.done", name=who.name, coach=office.coach.name))
    office.tell(who.id, office.say("desk.hand.told", coach=office.coach.name))


def not_handed(office: Office, question: Question) -> None:
    """The other coach did not."""
    if question.about is not None:
        who = people.get(office.conn, question.about)
        office.reply(office.say("desk.left"))
        office.tell(question.body["by"], office.say("desk.hand.refused", coach=office.coach.name, name=who.name))


def hour(office: Office, order: Hour) -> None:
    """When the morning word or the weeks come."""
    now = coaching.hours_of(office.conn, office.coach.id)
    at = time(order.hour, order.minute)
    if order.what == "digest":
        wanted = Hours(at, now.week_day, now.week_at)
        text = office.say("desk.hour.digest", at=f"{at:%H:%M}")
    else:
        day = order.weekday if order.weekday is not None else now.week_day
        wanted = Hours(now.digest_at, day, at)
        text = office.say("desk.hour.weeks", day=office.say(f"weekday.{day}"), at=f"{at:%H:%M}")
    coaching.set_hours(office.conn, office.coach.id, wanted)
    coach_clock.set_rows(office.conn, office.coach.id, office.case.now)
    office.reply(text)


def _own(office: Office, question: Question) -> Person | None:
    """The client whom a question is about, while they are still this coach's."""
    who = people.get(office.conn, question.about) if question.about is not None else None
    if who is None or who.coach != office.coach.id:
        office.reply(office.say("desk.question.gone"))
        return None
    return who
