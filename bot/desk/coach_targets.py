"""Targets under the coach's hand: free, ask first, hold; a target by hand within limits; what goes up and what not."""

from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Any, Final

from pydantic import TypeAdapter

from bot.desk.office import Office
from bot.desk.reviewing import caught_up
from bot.store import coach_clock, coaching, people
from bot.store.coaching import Question
from bot.store.people import Person
from bot.store.shapes import target_of, target_text
from core.adviser import BODY_FIRST, Advisers
from core.decide.kit import hardness, load_at, same, shelf
from core.evidence.body import row_of
from core.evidence.desk import desk_value
from core.evidence.numbers import value
from core.flow.day import aim_of
from core.model.book import Book
from core.model.quantities import Load, to_kg
from core.model.target import Target, TargetSet
from core.order.hand import Rein
from core.order.limits import LIMITS, Bound
from core.order.orders import NextTime, NoHeavier, SetRange, Under, WayOrder
from core.say import desk, figures
from core.say.body import part
from core.say.progress import muscle
from core.say.render import Voice

_PERCENT: Final = 100


def under(office: Office, who: Person, order: Under) -> None:
    """Free, ask first or hold; of one exercise or of all."""
    now = office.case.now
    if order.mode == "free":
        kinds = ("ask", "hold", "no_heavier", "ways", "fixed")
        if order.exercise is None:
            coaching.end_all_reins(office.conn, who.id, now, kinds)
        else:
            coaching.end_reins(office.conn, who.id, now, kinds, order.exercise)
        if order.exercise is None:
            coach_clock.cancel(office.conn, who.id, (coach_clock.PROPOSE, coach_clock.FALLBACK))
    else:
        coaching.end_reins(office.conn, who.id, now, ("ask", "hold"), order.exercise)
        coaching.take_in_hand(office.conn, who.id, Rein(order.mode, order.exercise), office.coach.id, now)
        if order.mode == "ask":
            book = office.book(who)
            coach_clock.set_proposal(office.conn, who.id, book.profile, book.plan, now)
    key = f"desk.under.{order.mode}"
    if order.exercise is None:
        office.reply(office.say(key, name=order.who))
    else:
        office.reply(office.say(f"{key}.one", name=order.who, exercise=office.voice.exercise(order.exercise)))


def no_heavier(office: Office, who: Person, order: NoHeavier) -> None:
    """Nothing heavier, until a day or until said otherwise."""
    rein = Rein("no_heavier", order.exercise, order.part, until=order.until)
    coaching.take_in_hand(office.conn, who.id, rein, office.coach.id, office.case.now)
    until = (
        office.say("desk.until", day=office.voice.date(order.until)) if order.until else office.say("desk.until.open")
    )
    key = "desk.no_heavier." + ("one" if order.exercise else "part" if order.part else "all")
    where = office.voice.exercise(order.exercise) if order.exercise else part(office.voice, order.part or "")
    office.reply(office.say(key, name=order.who, where=where, until=until))


def set_range(office: Office, who: Person, order: SetRange) -> None:
    """How many weekly sets are asked of a muscle, for the client's weeks."""
    usual = (int(desk_value("sets.low")), int(desk_value("sets.high")))
    if order.sets is None and order.muscle is None:
        coaching.end_all_reins(office.conn, who.id, office.case.now, ("sets",))
    elif order.sets is None:
        coaching.end_reins(office.conn, who.id, office.case.now, ("sets",), None, order.muscle)
    else:
        rein = Rein("sets", part=order.muscle, sets=order.sets)
        coaching.take_in_hand(office.conn, who.id, rein, office.coach.id, office.case.now)
    left = coaching.set_ranges(office.conn, (who.id,)).get(who.id, {})
    low, high = order.sets or left.get("", usual)
    key = "desk.sets.usual" if order.sets is None else "desk.sets.one" if order.muscle else "desk.sets.all"
    key = "desk.sets.usual.one" if order.sets is None and order.muscle else key
    named = muscle(office.voice, order.muscle or "")
    office.reply(office.say(key, name=order.who, muscle=named, low=low, high=high))


def ways(office: Office, who: Person, order: WayOrder) -> None:
    """Which ways go first from now on."""
    rein = Rein("ways", order.exercise, ways=order.ways)
    coaching.take_in_hand(office.conn, who.id, rein, office.coach.id, office.case.now)
    some = order.ways
    first = office.say(f"picture.way.{some[0]}")
    said = ways_said(office.voice, some) if len(some) > 1 else office.say("desk.way.first", first=first)
    if order.exercise is None:
        office.reply(office.say("desk.ways", name=order.who, ways=said))
    else:
        name = office.voice.exercise(order.exercise)
        office.reply(office.say("desk.ways.one", name=order.who, ways=said, exercise=name))


def ways_said(voice: Voice, some: tuple[str, ...]) -> str:
    """An order of ways in words."""
    words = [voice.say(f"picture.way.{way}") for way in some]
    said = words[0]
    for word in words[1:]:
        said = voice.say("what_if.order", first=said, then=word)
    return said if len(words) > 1 else voice.say("what_if.only", first=said)


# A target by hand


def next_time(office: Office, who: Person, order: NextTime) -> None:
    """A target for the next session, inside the limits; past one it is said which and why."""
    book = caught_up(office.book(who), office.case.now)
    target = _target(office, book, order)
    odd = _limit(office, book, order, target)
    if odd is None:
        _fix(office, who, book, order, target)
    elif _may_overrule(odd):
        body = {"order": _ORDER.dump_python(order, mode="json")}
        key = coaching.ask(office.conn, office.coach.id, "beyond", body, office.case.now, about=who.id)
        office.reply(f"{odd.text} {office.say('desk.next.overrule')}", office.yes_no(key))
    else:
        office.reply(f"{odd.text} {office.say('desk.next.unchanged')}" if LIMITS[odd.bound].overruled else odd.text)


def beyond_yes(office: Office, question: Question) -> None:
    """The coach overrules a limit that the table leaves to them; any other that came up meanwhile still holds."""
    who = people.get(office.conn, question.about) if question.about is not None else None
    if who is None or who.coach != office.coach.id:
        office.reply(office.say("desk.question.gone"))
        return
    order = _ORDER.validate_python(question.body["order"])
    book = caught_up(office.book(who), office.case.now)
    target = _target(office, book, order)
    odd = _limit(office, book, order, target)
    if odd is None or _may_overrule(odd):
        _fix(office, who, book, order, target)
    else:
        office.reply(odd.text)


def _fix(office: Office, who: Person, book: Book, order: NextTime, target: Target) -> None:
    rein = Rein("fixed", order.exercise, target=target)
    coaching.take_in_hand(office.conn, who.id, rein, office.coach.id, office.case.now)
    for one in coaching.questions_about(office.conn, (who.id,), "target"):
        if one.body["exercise"] == order.exercise:
            coaching.close(office.conn, one.id, "no")
    office.reply("\n".join(_kept(office, book, order, target)))


_ORDER: Final = TypeAdapter(NextTime)


@dataclass(frozen=True, slots=True)
class Odd:
    """The limit that a target by hand is past, its words, and by what share the load is over the last one."""

    bound: Bound
    text: str
    over: float = 0.0


def _may_overrule(odd: Odd) -> bool:
    """The table leaves it to the coach, and the load is no slip of the thumb."""
    return LIMITS[odd.bound].overruled and odd.over <= desk_value("overrule.step")


def _kept(office: Office, book: Book, order: NextTime, target: Target) -> list[str]:
    voice = office.voice_in(book.lifter.unit)
    what = f"{len(target.sets)} x {figures.asked(voice, order.exercise, target.sets[0])}"
    name = office.voice.exercise(order.exercise)
    seen = Advisers().today(replace(book, fixed={order.exercise: target}), _day(office, book), order.exercise, ())
    chance = f"{seen.chance * _PERCENT:.0f}"
    return [
        office.say("desk.next.kept", name=order.who, exercise=name, what=what),
        office.say("desk.next.chance", chance=chance),
    ]


def _day(office: Office, book: Book) -> date:
    return office.case.now.astimezone(book.profile.zone).date() + timedelta(days=1)


def _target(office: Office, book: Book, order: NextTime) -> Target:
    aim = aim_of(book, _day(office, book), order.exercise)
    kg = to_kg(order.load, order.unit or book.lifter.unit)
    kind = row_of(order.exercise).load_kind
    load = Load("added" if kind in ("body", "band") else kind, kg)
    one = TargetSet(load, order.reps, aim.rir, aim.tempo, aim.rest_s, None)
    return Target("hold", (one,) * (order.sets or aim.sets))


def _limit(office: Office, book: Book, order: NextTime, target: Target) -> Odd | None:
    """Why a target by hand cannot be: the hold, an ache, the kit, the wish for no more, the size of the step."""
    voice = office.voice_in(book.lifter.unit)
    slots: dict[str, Any] = {"name": order.who, "exercise": voice.exercise(order.exercise)}
    if book.hold is not None:
        return Odd("held", office.say("desk.next.limit.held", **slots))
    usual = Advisers().today(replace(book, fixed={}), _day(office, book), order.exercise, ())
    wanted = target.sets[0].load
    hard = hardness(wanted) if wanted is not None else None
    last = usual.sets[0].load if usual.sets else None
    if usual.why[0].rule in BODY_FIRST and (not usual.sets or _harder(hard, last)):
        ache = max(book.lifter.aches, key=lambda one: (one.on, one.level or 0.0))
        least = voice.number(value("ache.hold_level"))
        place = desk.place(voice, ache)
        level = voice.number(ache.level or 0.0)
        return Odd("ache", office.say("desk.next.limit.ache", where=place, level=level, least=least, **slots))
    if wanted is None or hard is None:
        return None
    loads = shelf(book.lifter.kit, order.exercise, wanted, book.lifter.unit)
    said = figures.load(voice, order.exercise, wanted)
    if loads and not any(same(one, hard) for one in loads):
        near = sorted(loads, key=lambda one: abs(one - hard))[:2]
        names = voice.listed([figures.load(voice, order.exercise, load_at(one, wanted)) for one in sorted(near)])
        return Odd("kit", office.say("desk.next.limit.kit", load=said, near=names, **slots))
    return _too_far(office, book, order, (wanted, last, hard))


def _harder(hard: float | None, last: Load | None) -> bool:
    level = hardness(last) if last is not None else None
    return hard is not None and (level is None or hard > level)


def _too_far(office: Office, book: Book, order: NextTime, loads: tuple[Load, Load | None, float]) -> Odd | None:
    wanted, last, hard = loads
    voice = office.voice_in(book.lifter.unit)
    level = hardness(last) if last is not None else None
    if last is None or level is None or level <= 0 or hard <= level:
        return None
    names = {"last": figures.load(voice, order.exercise, last), "load": figures.load(voice, order.exercise, wanted)}
    if book.lifter.no_heavier:
        return Odd("no_heavier", office.say("desk.next.limit.no_heavier", name=order.who, last=names["last"]))
    most = value("load.step_max")
    one_step = min(
        (one for one in shelf(book.lifter.kit, order.exercise, wanted, book.lifter.unit) if one > level), default=hard
    )
    if hard <= level * (1 + most) + 1e-6 or same(hard, one_step):
        return None
    over = hard / level - 1
    slots = {"share": f"{over * _PERCENT:.0f}", "most": f"{most * _PERCENT:.0f}", **names}
    return Odd("step", office.say("desk.next.limit.step", **slots), over)


# Asked first


def target_yes(office: Office, question: Question) -> None:
    """The coach agrees: that target for that session."""
    who = people.get(office.conn, question.about) if question.about is not None else None
    if who is None or who.coach != office.coach.id:
        office.reply(office.say("desk.question.gone"))
        return
    target, exercise = target_of(question.body["target"]), str(question.body["exercise"])
    until = date.fromisoformat(question.body["on"]) + timedelta(days=1)
    rein = Rein("fixed", exercise, target=target, until=until)
    coaching.take_in_hand(office.conn, who.id, rein, office.coach.id, office.case.now)
    what = said_target(office, office.book(who), exercise, target)
    office.reply(office.say("desk.target.yes", name=who.name, exercise=office.voice.exercise(exercise), what=what))


def target_no(office: Office, question: Question) -> None:
    """The coach does not: the same as last time."""
    if question.about is None:
        return
    who, exercise = people.get(office.conn, question.about), str(question.body["exercise"])
    office.reply(office.say("desk.target.no", name=who.name, exercise=office.voice.exercise(exercise)))


def said_target(office: Office, book: Book, exercise: str, target: Target) -> str:
    """A target in a few words, in the client's unit."""
    voice = office.voice_in(book.lifter.unit)
    return f"{len(target.sets)} x {figures.asked(voice, exercise, target.sets[0])}" if target.sets else ""


def as_question(exercise: str, on: date, target: Target) -> dict[str, Any]:
    """What a question about a target holds."""
    return {"exercise": exercise, "on": on.isoformat(), "target": target_text(target)}
