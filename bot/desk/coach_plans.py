"""Plans at the desk: shown, read back from plain text, put in force on a yes, copied, put back."""

from datetime import date
from typing import Any

from bot.desk.office import Office
from bot.store import agenda, coach_clock, coaching, people, plans
from bot.store.coaching import Question
from bot.store.people import Person
from bot.store.shapes import noun_of, noun_text
from core import due
from core.model.plan import Plan
from core.notation.page import PlanReading, Remark, Unread
from core.notation.read import read_plan
from core.notation.write import write_plan
from core.order.fit import fitted
from core.order.orders import CopyPlan, NewPlan
from core.read.finding import find, nearest
from core.say import plans as say_plans
from core.say.plans import Odd


def show(office: Office, who: Person, name: str) -> None:
    """The plan in force."""
    plan = plans.weekly(office.conn, who.id)
    if not plan.days:
        office.reply(office.say("plan.none", name=name))
        return
    found = coaching.versions(office.conn, who.id)
    if found and found[0].by is not None:
        day = office.voice.date(found[0].at.astimezone(office.profile.zone).date())
        head = office.say("plan.head", name=name, day=day, by=people.get(office.conn, found[0].by).name)
    else:
        head = office.say("plan.head.unknown", name=name)
    office.reply(f"{head}\n\n{written(office, plan)}")


def written(office: Office, plan: Plan) -> str:
    """A plan in the notation."""
    return write_plan(plan, office.voice.exercise)


def new(office: Office, who: Person, name: str, order: NewPlan) -> None:
    """Read a plan back, name what is open, and ask for a yes."""
    reading = read_plan(order.text, find, office.today)
    if not reading.plan.days:
        lines = [office.say("plan.read.nothing", name=name), *_asks(office, reading)]
        office.reply("\n".join(lines))
        return
    lines = [office.say("plan.read", name=name), "", written(office, reading.plan)]
    asks = _asks(office, reading)
    if asks:
        lines += ["", office.say("plan.read.asks"), *asks]
    tells = [say_plans.told(office.voice, _odd(one)) for one in reading.remarks]
    lines += ["", *tells] if tells else []
    last = office.say("plan.read.force", len(asks), n=len(asks)) if asks else office.say("plan.read.whole")
    _propose(office, who, reading.plan, "written", [*lines, "", last])


def _asks(office: Office, reading: PlanReading) -> list[str]:
    return [say_plans.asked(office.voice, _odd(one)) for one in reading.unread]


def _odd(one: Unread | Remark) -> Odd:
    trouble = one.trouble
    choices = trouble.choices
    if trouble.kind == "unknown_exercise":
        choices = nearest(trouble.name)
    below = one.below if isinstance(one, Unread) else 0
    return Odd(one.line, one.text, trouble.kind, trouble.name, choices, below)


def _propose(office: Office, who: Person, plan: Plan, what: str, lines: list[str]) -> None:
    if plan == plans.weekly(office.conn, who.id):
        office.reply(office.say("plan.same", name=who.name))
        return
    body = {"plan": noun_text(plan), "what": what}
    key = coaching.ask(office.conn, office.coach.id, "plan", body, office.case.now, about=who.id)
    office.reply("\n".join(lines), office.yes_no(key))


def in_force(office: Office, question: Question) -> None:
    """A yes: the plan is in force, the old one is kept, the client hears of it."""
    who = people.get(office.conn, question.about) if question.about is not None else None
    if who is None or who.coach != office.coach.id:
        office.reply(office.say("desk.question.gone"))
        return
    plan = noun_of(Plan, question.body["plan"])
    put(office, who, plan, question.body["what"])
    days = say_plans.days(office.voice, plan)
    office.reply(office.say("plan.in_force", name=who.name, days=days))
    office.tell(who.id, office.say("plan.told", coach=office.coach.name, days=days))


def put(office: Office, who: Person, plan: Plan, what: str) -> None:
    """Put a plan in force, with the agenda that follows from it."""
    coaching.put_in_force(office.conn, who.id, plan, office.coach.id, office.case.now, what)
    profile = people.profile(office.conn, who.id)
    for row in due.ahead(profile, plan, office.case.now):
        agenda.change(office.conn, who.id, row)
    coach_clock.cancel(office.conn, who.id, (coach_clock.PROPOSE, coach_clock.FALLBACK))
    if any(one.kind == "ask" for one in coaching.reins(office.conn, who.id, office.today)):
        coach_clock.set_proposal(office.conn, who.id, profile, plan, office.case.now)


def copy(office: Office, source: Person, who: Person, order: CopyPlan) -> None:
    """Another client's plan, fitted to this one's kit."""
    plan = plans.weekly(office.conn, source.id)
    if not plan.days:
        office.reply(office.say("plan.copied.none", source=order.source))
        return
    fit = fitted(plan, office.book(who).lifter.kit)
    lines = [office.say("plan.copied", source=order.source, name=order.who), "", written(office, fit.plan), ""]
    for from_, to in fit.swaps:
        slots: dict[str, Any] = {"from_": office.voice.heading(from_), "name": order.who}
        if to is None:
            lines.append(office.say("plan.copied.gone", **slots))
        else:
            lines.append(office.say("plan.copied.swap", to=office.voice.exercise(to), **slots))
    if not fit.plan.days:
        office.reply("\n".join(lines))
        return
    _propose(office, who, fit.plan, "copied", [*lines, office.say("plan.read.whole")])


def old(office: Office, who: Person, name: str) -> None:
    """The plan before the present one, to be put back on a yes."""
    now = plans.weekly(office.conn, who.id)
    before = next((one for one in coaching.versions(office.conn, who.id) if one.plan != now), None)
    if before is None:
        office.reply(office.say("plan.old.none", name=name))
        return
    day: date = before.at.astimezone(office.profile.zone).date()
    head = office.say("plan.old", name=name, day=office.voice.date(day))
    lines = [head, "", written(office, before.plan), "", office.say("plan.read.whole")]
    _propose(office, who, before.plan, "put back", lines)
