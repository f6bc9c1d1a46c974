"""Plans at the desk: shown, read back from plain text, put in force on a yes, copied, put back."""

from dataclasses import replace
from datetime import date, time, timedelta
from typing import Any

from bot.desk.office import Office
from bot.store import agenda, coach_clock, coaching, people, plans
from bot.store.coaching import Question
from bot.store.people import Person
from bot.store.shapes import noun_of, noun_text
from core import due
from core.model.outcome import AgendaChange
from core.model.plan import Plan, Planned
from core.notation.page import PlanReading, Remark, Unread
from core.notation.read import read_plan
from core.notation.write import write_plan
from core.order.fit import fitted
from core.order.orders import CopyPlan, Easier, NewPlan, Swap
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
    lines = [head, "", written(office, plan)]
    waiting = coaching.put_off_plan(office.conn, who.id)
    if waiting is not None:
        later = noun_of(Plan, waiting.body["plan"])
        first = office.voice.date(later.starts or office.today)
        lines += ["", office.say("plan.waiting", day=first, days=say_plans.days(office.voice, later))]
    office.reply("\n".join(lines))


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
    plan = _counted(reading.plan, plans.weekly(office.conn, who.id), office.today)
    lines = [office.say("plan.read", name=name), "", written(office, plan)]
    asks = _asks(office, reading)
    if asks:
        lines += ["", office.say("plan.read.asks"), *asks]
    tells = [say_plans.told(office.voice, _odd(one)) for one in reading.remarks] + _easier(office, plan)
    lines += ["", *tells] if tells else []
    last = office.say("plan.read.force", len(asks), n=len(asks)) if asks else office.say("plan.read.whole")
    _propose(office, who, plan, "written", [*lines, "", last])


def easier(office: Office, who: Person, order: Easier) -> None:
    """The present plan with easier weeks, or without, in force on a yes."""
    now = plans.weekly(office.conn, who.id)
    if not now.days:
        office.reply(office.say("plan.none", name=order.who))
        return
    begun = now.starts is not None and now.starts <= office.today
    starts = None if order.every is None and begun else now.starts
    plan = _counted(replace(now, easier_every=order.every, starts=starts), now, office.today)
    told = ["", *_easier(office, plan)] if order.every else []
    lines = [office.say("plan.read", name=order.who), "", written(office, plan), *told]
    _propose(office, who, plan, "easier weeks", [*lines, "", office.say("plan.read.whole")])


def swap(office: Office, who: Person, order: Swap) -> None:
    """The present plan with one exercise in the place of another, what is aimed at kept, in force on a yes."""
    now = plans.weekly(office.conn, who.id)
    old, new = office.voice.exercise(order.old), office.voice.exercise(order.new)
    if all(item.exercise != order.old for day in now.days for item in day.exercises):
        office.reply(office.say("plan.swap.none", name=order.who, exercise=old))
        return
    if any(item.exercise == order.new for day in now.days for item in day.exercises):
        office.reply(office.say("plan.swap.there", name=order.who, exercise=new))
        return
    plan = replace(now, days=tuple(replace(day, exercises=_swapped(day.exercises, order)) for day in now.days))
    lines = [office.say("plan.read", name=order.who), "", written(office, plan)]
    _propose(office, who, plan, "an exercise swapped", [*lines, "", office.say("plan.read.whole")])


def _swapped(items: tuple[Planned, ...], order: Swap) -> tuple[Planned, ...]:
    return tuple(replace(item, exercise=order.new) if item.exercise == order.old else item for item in items)


def _counted(plan: Plan, now: Plan, today: date) -> Plan:
    """With the day from which its weeks are counted: the one written, the present plan's, or this week's Monday."""
    if plan.easier_every is None or plan.starts is not None:
        return plan
    goes_on = now.easier_every == plan.easier_every and now.starts is not None
    return replace(plan, starts=now.starts if goes_on else today - timedelta(days=today.weekday()))


def _easier(office: Office, plan: Plan) -> list[str]:
    monday = plan.next_easier(office.today)
    if monday is None or plan.easier_every is None:
        return []
    return [office.say("plan.easier", n=plan.easier_every, day=office.voice.date(monday))]


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
    days = say_plans.days(office.voice, plan)
    zone = people.profile(office.conn, who.id).zone
    if plan.starts is not None and plan.starts > office.case.now.astimezone(zone).date():
        coaching.put_off(office.conn, question.id, who.id)
        at = due.instant(plan.starts, time(0), zone)
        agenda.change(office.conn, who.id, AgendaChange(coach_clock.PLAN_BEGINS, plan.starts, at))
        first = office.voice.date(plan.starts)
        office.reply(office.say("plan.waits", name=who.name, day=first, days=days))
        office.tell(who.id, office.say("plan.waits.told", coach=office.coach.name, day=first, days=days))
        return
    put(office, who, plan, question.body["what"])
    office.reply(office.say("plan.in_force", name=who.name, days=days))
    office.tell(who.id, office.say("plan.told", coach=office.coach.name, days=days))


def begin(office: Office, who: Person, question: Question) -> None:
    """The first day of a plan that waited for it."""
    put(office, who, noun_of(Plan, question.body["plan"]), question.body["what"])


def put(office: Office, who: Person, plan: Plan, what: str) -> None:
    """Put a plan in force, with the agenda that follows from it; one that waited for its day no longer does."""
    coaching.drop_put_off(office.conn, who.id)
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
    if plan.starts is not None and plan.starts <= office.today:
        plan = _counted(replace(plan, starts=None), plans.weekly(office.conn, who.id), office.today)
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
