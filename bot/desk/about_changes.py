"""Changes that a person makes about themselves, carried out: each gives the lines that say what was understood."""

from collections.abc import Callable, Mapping
from dataclasses import replace
from datetime import date, datetime, timedelta, tzinfo
from typing import Any, Final

from sqlalchemy import Connection

from bot.desk import about_data, about_progress, zones
from bot.desk.oneself import Oneself
from bot.store import about, agenda, coaching, people, plans, renewal
from core import due
from core.join import week
from core.join.kit import together
from core.join.wishes import (
    Away,
    Counted,
    CourseOf,
    DayMoved,
    DayOut,
    Experienced,
    KitSaid,
    Lead,
    Named,
    NoAches,
    NoHeavier,
    Nudges,
    Plain,
    Quiet,
    Reminders,
    Speak,
    Trains,
    UnknownPlace,
    WhichDay,
    Wish,
    Zoned,
)
from core.model.lifter import Kit
from core.model.outcome import AgendaChange
from core.model.plan import Plan
from core.say import about as say_about
from core.say.render import Voice
from core.say.reply import voice_of

LONGEST_PAUSE: Final = timedelta(days=366)
"""A pause longer than a year was a slip of the pen."""

Lines = list[str] | None


def done(me: Oneself, wish: Wish, *, first: bool = False) -> Lines:
    """The wish carried out. None: it is nothing for this person. ``first``: it answers the open question."""
    if isinstance(wish, KitSaid) and first:
        wish = replace(wish, adds=False)
    if not me.who.lifts and type(wish) not in _FOR_ALL:
        return None
    return _WORK[type(wish)](me, wish)


def place_of(voice: Voice, zone: tzinfo, now: datetime) -> str:
    """A zone as it is said, with the time that it is there."""
    return say_about.place(voice, str(getattr(zone, "key", "UTC")), now.astimezone(zone))


def _summary(me: Oneself, voice: Voice) -> str:
    """What is known about somebody, in a line each."""
    plan = plans.weekly(me.conn, me.who.id) if me.who.lifts else Plan()
    return "\n".join(say_about.known(voice, me.profile, me.body, plan, me.case.now))


def tell_facts(me: Oneself) -> None:
    """What came of joining, for the coach."""
    if me.who.coach is not None:
        voice = voice_of(people.profile(me.conn, me.who.coach), me.body.unit)
        me.tell_coach("about.coach.joined", facts=_summary(me, voice))


def _named(me: Oneself, wish: Named) -> Lines:
    if wish.name != me.profile.name:
        me.tell_coach("about.coach.named", new=wish.name)
    me = me.with_profile(name=wish.name)
    return [me.say("about.named", name=wish.name)]


def _counted(me: Oneself, wish: Counted) -> Lines:
    return [me.with_body(replace(me.body, unit=wish.unit)).say(f"about.unit.{wish.unit}")]


def _zoned(me: Oneself, wish: Zoned) -> Lines:
    zone = zones.zone_named(wish.zone)
    place = place_of(me.voice, zone, me.case.now)
    home = getattr(me.profile.zone, "key", "UTC")
    on_way = about.journey_of(me.conn, me.who.id)
    if on_way is not None and on_way.there:
        home = on_way.home
    if wish.first is None and wish.last is None:
        about.end_journey(me.conn, me.who.id)
        me.with_profile(zone=zone).renewed()
        return [me.say("about.zone.fixed" if wish.fixed else "about.zone", place=place)]
    first = wish.first or me.today
    about.set_journey(me.conn, me.who.id, about.Journey(wish.zone, home, first, wish.last, wish.first is None))
    if wish.first is None:
        me = me.with_profile(zone=zone).renewed()
    else:
        _change_at(me, first)
    if wish.last is not None:
        _change_at(me, wish.last + timedelta(days=1))
    named = say_about.place_name(me.voice, wish.zone)
    span = {"first": say_about.day(me.voice, first), "place": named}
    if wish.last is None:
        return [me.say("about.zone.from", **span)]
    return [me.say("about.zone.span", last=say_about.day(me.voice, wish.last), **span)]


def _change_at(me: Oneself, on: date) -> None:
    agenda.change(me.conn, me.who.id, AgendaChange("zone", on, due.instant(on, _MIDNIGHT, me.profile.zone)))


_MIDNIGHT: Final = datetime.min.time()


def arrived(conn: Connection, who: int, on: date, now: datetime) -> None:
    """The clock's row of a journey: the zone changes there, or back. Says nothing."""
    one = about.journey_of(conn, who)
    if one is None:
        return
    if not one.there and one.first <= on and (one.last is None or on <= one.last):
        about.set_journey(conn, who, replace(one, there=True))
        zone = one.zone
    elif one.last is not None and on > one.last:
        about.end_journey(conn, who)
        zone = one.home
    else:
        return
    people.set_profile(conn, who, replace(people.profile(conn, who), zone=zones.zone_named(zone)))
    renewal.renew(conn, who, now)


def _unknown_place(me: Oneself, wish: UnknownPlace) -> Lines:
    return [me.say("about.zone.unknown", place=wish.said)]


def _which_day(me: Oneself, wish: WhichDay) -> Lines:
    return [me.say("about.which_day", said=wish.said)]


# The week


def _trains(me: Oneself, wish: Trains) -> Lines:
    plan = plans.weekly(me.conn, me.who.id)
    wanted = week.training_on(plan, wish.days, me.say("about.training"))
    me.tell_coach("about.coach.days", days=lambda voice: say_about.days(voice, wish.days))
    if wanted is None:
        return [me.voice.by_coach("about.days.plan", days=say_about.week(me.voice, plan))]
    _plan(me, wanted)
    return [me.say("about.days", days=say_about.week(me.voice, wanted))]


def _plan(me: Oneself, wanted: Plan) -> None:
    """In force as the lifter's own change; what was before is kept, and the coach can put it back."""
    coaching.put_in_force(me.conn, me.who.id, wanted, me.who.id, me.case.now, "by the lifter")
    me.renewed()


def _named_day(weekday: int) -> Callable[[Voice], str]:
    return lambda voice: voice.say(f"weekday.{weekday}")


def _out(me: Oneself, wish: DayOut) -> Lines:
    plan = plans.weekly(me.conn, me.who.id)
    day = plan.on(wish.weekday)
    name = me.say(f"weekday.{wish.weekday}")
    if day is None:
        return [me.say("about.day.none", day=name)]
    _plan(me, week.without(plan, wish.weekday))
    me.tell_coach("about.coach.out", day=_named_day(wish.weekday), title=day.title)
    return [me.voice.by_coach("about.day.out", day=name, title=day.title)]


def _day_moved(me: Oneself, wish: DayMoved) -> Lines:
    plan = plans.weekly(me.conn, me.who.id)
    name, to = me.say(f"weekday.{wish.weekday}"), me.say(f"weekday.{wish.to}")
    day = plan.on(wish.weekday)
    if day is None:
        return [me.say("about.day.none", day=name)]
    wanted = week.moved(plan, wish.weekday, wish.to, wish.at)
    if wanted is None:
        return [me.say("about.day.taken", day=to)]
    _plan(me, wanted)
    at = me.voice.clock(wish.at or day.at)
    key = "about.coach.moved" if day.weekday != wish.to else "about.coach.timed"
    me.tell_coach(key, day=_named_day(wish.weekday), to=_named_day(wish.to), at=at)
    return [me.say("about.day.moved", title=day.title, to=to, at=at)]


# Kit, experience, load


def _kit(me: Oneself, wish: KitSaid) -> Lines:
    kit: Kit | None = wish.kit
    if wish.adds and kit is not None:
        if me.body.kit is None:
            return [me.say("about.kit.full_already")]
        kit = together(me.body.kit, kit)
    voice = replace(me.voice, unit=me.body.unit if wish.adds else wish.unit or me.body.unit)
    me = me.with_body(replace(me.body, kit=kit))
    lines = [me.say("about.kit.gym") if kit is None else me.say("about.kit", list=say_about.kit(voice, kit))]
    if wish.beside:
        lines.append(me.say("about.kit.beside", list=me.voice.listed(list(wish.beside))))
    if wish.odd:
        lines.append(me.say("about.kit.odd", list=me.voice.listed(list(wish.odd))))
    return lines


def _experienced(me: Oneself, wish: Experienced) -> Lines:
    return [me.with_body(replace(me.body, experience=wish.level)).say(f"about.experience.{wish.level}")]


def _no_aches(me: Oneself, _wish: NoAches) -> Lines:
    return [me.say("about.aches.none")]


def _no_heavier(me: Oneself, wish: NoHeavier) -> Lines:
    if wish.on:
        about.no_heavier(me.conn, me.who.id, wish.until, me.case.now)
        until = say_about.day(me.voice, wish.until) if wish.until else None
        return [me.say("about.no_heavier.until", day=until) if until else me.say("about.no_heavier")]
    if not about.end_no_heavier(me.conn, me.who.id, me.case.now):
        return [me.voice.by_coach("about.heavier.not")]
    return [me.say("about.heavier")]


# When to be spoken to


def _lead(me: Oneself, wish: Lead) -> Lines:
    me.with_profile(prompt_lead_minutes=wish.minutes, reminders=True).renewed()
    return [me.say("about.lead", wish.minutes, n=wish.minutes)]


def _reminders(me: Oneself, wish: Reminders) -> Lines:
    me = me.with_profile(reminders=wish.on).renewed()
    return [me.say("about.reminders.on" if wish.on else "about.reminders.off", n=me.profile.prompt_lead_minutes)]


def _nudges(me: Oneself, wish: Nudges) -> Lines:
    return [me.with_profile(nudges=wish.on).say("about.nudges.on" if wish.on else "about.nudges.off")]


def _away(me: Oneself, wish: Away) -> Lines:
    if not me.today <= wish.last <= me.today + LONGEST_PAUSE:
        return [me.say("about.which_day", said=me.voice.date(wish.last))]
    plan = plans.weekly(me.conn, me.who.id)
    span = [me.today + timedelta(days=n) for n in range((wish.last - me.today).days + 1)]
    about.call_off(me.conn, me.who.id, [on for on in span if plan.on(on.weekday())])
    me = me.with_profile(away_through=wish.last).renewed()
    me.tell_coach("about.coach.away", day=lambda voice: voice.date(wish.last))
    return [me.say("about.away", day=say_about.day(me.voice, wish.last))]


def back(me: Oneself) -> Lines:
    """A pause or a journey is over before its end."""
    lines: list[str] = []
    journey = about.journey_of(me.conn, me.who.id)
    if journey is not None and journey.there:
        about.end_journey(me.conn, me.who.id)
        me = me.with_profile(zone=zones.zone_named(journey.home)).renewed()
        lines.append(me.say("about.zone", place=place_of(me.voice, me.profile.zone, me.case.now)))
    last = me.profile.away_through
    if last is not None and last >= me.today:
        about.call_back(me.conn, me.who.id, me.today, last)
        me = me.with_profile(away_through=None).renewed()
        lines.append(me.say("about.back"))
    return lines or None


def _quiet(me: Oneself, wish: Quiet) -> Lines:
    begins, ends = wish.begins or me.profile.quiet_from, wish.ends or me.profile.quiet_to
    me = me.with_profile(quiet_from=begins, quiet_to=ends).renewed()
    return [me.say("about.quiet", begins=me.voice.clock(begins), ends=me.voice.clock(ends))]


def _speak(me: Oneself, wish: Speak) -> Lines:
    decimal = "." if wish.language == "en" else ","
    return [me.with_profile(language=wish.language, decimal=decimal).say("about.language")]


# What has no particulars


def _settings(me: Oneself) -> Lines:
    return [me.say("about.settings"), _summary(me, me.voice), me.say("about.settings.how")]


_PLAIN: Final[Mapping[str, Callable[[Oneself], Lines]]] = {
    "back": back,
    "settings": _settings,
    "export": about_data.export,
    "forget": about_data.ask_to_forget,
    "cleared": about_data.cleared,
    "week": about_progress.week,
}
_FOR_COACHES: Final = frozenset({"export", "forget", "settings"})


def _plain(me: Oneself, wish: Plain) -> Lines:
    return _PLAIN[wish.what](me) if me.who.lifts or wish.what in _FOR_COACHES else None


_FOR_ALL: Final = frozenset({Named, Zoned, Speak, Quiet, UnknownPlace, Plain})
"""Wishes that a coach has too who does not train here."""

_WORK: Final[Mapping[type, Callable[[Oneself, Any], Lines]]] = {
    Named: _named,
    Counted: _counted,
    Zoned: _zoned,
    UnknownPlace: _unknown_place,
    WhichDay: _which_day,
    Trains: _trains,
    DayOut: _out,
    DayMoved: _day_moved,
    KitSaid: _kit,
    Experienced: _experienced,
    NoAches: _no_aches,
    NoHeavier: _no_heavier,
    Lead: _lead,
    Reminders: _reminders,
    Nudges: _nudges,
    Away: _away,
    Quiet: _quiet,
    Speak: _speak,
    CourseOf: about_progress.course,
    Plain: _plain,
}
"""How each wish is carried out."""
