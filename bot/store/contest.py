"""What members did, from their acts: a day of facts for each day of the plan, made anew while its week is open.

A day is made once it is over, and again when its acts, targets or plan have changed; from the close of its week on it
stays as it was. Scoring and judging are core's.
"""

import hashlib
import json
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from datetime import date, datetime, timedelta
from typing import Any, Final

from sqlalchemy import Connection, delete, select, update

from bot.store import acts, challenges, coaching, people, plans
from bot.store.challenges import Open
from bot.store.contest_tables import contest_day
from bot.store.history import sessions
from bot.store.progress import Folding, Past
from bot.store.shapes import act_of, noun_of, noun_text, target_of
from bot.store.tables import act, day_plan, hold, lifter, target, trained
from bot.store.upsert import put
from core.challenge.standings import table
from core.contest import Told, day_of, with_words
from core.evidence.numbers import value
from core.model.acts import AcheAct, SetAct
from core.model.book import Kept
from core.model.challenge import DayDone, Record, Table
from core.model.lifter import Ache, Lifter
from core.model.plan import Plan, TrainingDay
from core.model.target import Target

LOOKS_BACK: Final = 12
"""Sessions that the forecast is made from which a report is held against. Choice of ours: enough, and quick."""

_DAY: Final = timedelta(days=1)


@dataclass(frozen=True, slots=True)
class Planned:
    """A day of the plan: what was planned, and whether it was called off."""

    day: TrainingDay
    off: bool = False


def records(conn: Connection, one: Open) -> tuple[Record, ...]:
    """Everyone's record as it is kept, with the coach's words on it."""
    said = challenges.words(conn, one.id)
    kept: dict[int, list[DayDone]] = {}
    query = select(contest_day).where(contest_day.c.challenge == one.id).order_by(contest_day.c.on)
    for row in conn.execute(query):
        kept.setdefault(row.person, []).append(noun_of(DayDone, row.body))
    return tuple(
        Record(
            entrant,
            tuple(
                with_words(day, said.get((entrant.who, day.on), {}), trusted=trusted)
                for day in kept.get(entrant.who, [])
            ),
        )
        for entrant, trusted in challenges.entrants(conn, one.id)
    )


def final(conn: Connection, key: int) -> tuple[Open, Table]:
    """A challenge with its last table, as its members are shown now."""
    found = challenges.get(conn, key)
    return found, table(found.noun, records(conn, found), found.noun.weeks)


def bring_up(conn: Connection, one: Open, folding: Folding, now: datetime) -> list[tuple[int, DayDone]]:
    """Make the days that are over; gives those that are new or have changed, by member."""
    fresh = []
    first = one.noun.starts + timedelta(weeks=one.closed)
    for entrant, _ in challenges.entrants(conn, one.id):
        today = now.astimezone(people.profile(conn, entrant.who).zone).date()
        last = min(one.noun.last, today - _DAY)
        fresh += [(entrant.who, day) for day in _bring_up(conn, one, entrant.who, (first, last), folding)]
    return fresh


def has_day(conn: Connection, key: int, who: int, on: date) -> bool:
    """Whether a member's day is among those that are made."""
    mine = (contest_day.c.challenge == key, contest_day.c.person == who, contest_day.c.on == on)
    return conn.execute(select(contest_day.c.on).where(*mine)).first() is not None


def seal(conn: Connection, one: Open, through: date) -> None:
    """What the members did up to that day stays as it is now."""
    upto = (contest_day.c.challenge == one.id, contest_day.c.on <= through)
    conn.execute(update(contest_day).where(*upto).values(sealed=1))


def rebuilt(conn: Connection, one: Open, who: int, folding: Folding) -> tuple[DayDone, ...]:
    """A member's days made from the acts alone, whatever is kept and sealed."""
    first, last = one.noun.starts, one.noun.last
    days = _planned(conn, who, first, last)
    return tuple(day_of(_told(conn, who, on, planned, folding)) for on, planned in sorted(days.items()))


def _bring_up(conn: Connection, one: Open, who: int, span: tuple[date, date], folding: Folding) -> Iterable[DayDone]:
    mine = (contest_day.c.challenge == one.id, contest_day.c.person == who)
    rows = conn.execute(select(contest_day).where(*mine, contest_day.c.on >= span[0])).all()
    known = {row.on: row for row in rows}
    days = _planned(conn, who, *span)
    for on in set(known) - set(days):
        conn.execute(delete(contest_day).where(*mine, contest_day.c.on == on, contest_day.c.sealed == 0))
    for on, planned in sorted(days.items()):
        old = known.get(on)
        if old is not None and old.sealed:
            continue
        made_of = _digest(conn, who, on, planned)
        if old is not None and old.made_of == made_of:
            continue
        day = day_of(_told(conn, who, on, planned, folding))
        if old is not None:  # held since an alarm then: that it was cleared later makes it no missed session
            day = replace(day, held=day.held or noun_of(DayDone, old.body).held)
        put(conn, contest_day, challenge=one.id, person=who, on=on, body=noun_text(day), made_of=made_of, sealed=0)
        yield day


def _planned(conn: Connection, who: int, first: date, last: date) -> dict[date, Planned]:
    """The days of the plan in a span, with its one-off changes: a session moved is planned where it was moved to."""
    plan_on = _plans(conn, who)
    once = _once(conn, who, first, last)
    days: dict[date, Planned] = {}
    moved: list[date] = []
    for ahead in range((last - first).days + 1):
        on = first + timedelta(days=ahead)
        usual = plan_on(on).on(on.weekday())
        changed = once[on].on(on.weekday()) if on in once else usual
        if changed is not None and changed.exercises:
            days[on] = Planned(changed)
            moved += [on] if usual is None else []
        elif usual is not None and usual.exercises:
            days[on] = Planned(usual, off=True)
    for to in moved:
        here = [on for on, planned in days.items() if _gave_way(conn, who, on, to, planned)]
        if here:
            del days[min(here, key=lambda on: (not days[on].off, abs((on - to).days)))]
    return days


def _gave_way(conn: Connection, who: int, on: date, to: date, planned: Planned) -> bool:
    """Whether a session may be the one that was moved to another day: called off near it, or left undone before it."""
    if abs((on - to).days) > _NEAR or on == to:
        return False
    return planned.off or (on < to and not any(isinstance(one.act, SetAct) for one in _acts(conn, who, on)))


_NEAR: Final = 7
"""Days within which a session counts as moved. Choice of ours."""


def _plans(conn: Connection, who: int) -> Callable[[date], Plan]:
    """The plan that was in force on a day: what is changed during a day counts from the next one on."""
    zone = people.profile(conn, who).zone
    versions = coaching.versions(conn, who)
    now = plans.weekly(conn, who)

    def on_day(on: date) -> Plan:
        then = (one.plan for one in versions if one.by is None or one.at.astimezone(zone).date() < on)
        return next(then, versions[-1].plan if versions else now)

    return on_day


def _once(conn: Connection, who: int, first: date, last: date) -> dict[date, Plan]:
    mine = (day_plan.c.person == who, day_plan.c.on >= first, day_plan.c.on <= last)
    return {row.on: noun_of(Plan, row.body) for row in conn.execute(select(day_plan).where(*mine))}


def _told(conn: Connection, who: int, on: date, planned: Planned, folding: Folding) -> Told:
    kept = _acts(conn, who, on)
    names = {one.act.exercise for one in kept if isinstance(one.act, SetAct) and one.act.exercise is not None}
    return Told(
        on=on,
        planned=planned.day,
        acts=kept,
        targets=_targets(conn, who, on),
        lifter=_aching(conn, who, on),
        before={name: text for name in sorted(names) if (text := _before(conn, who, name, on, folding))},
        off=planned.off,
        held=_held(conn, who, on),
        zone=people.profile(conn, who).zone,
    )


def _acts(conn: Connection, who: int, on: date) -> tuple[Kept, ...]:
    return tuple(one for one in acts.kept_since(conn, who, on, None) if one.on == on)


def _targets(conn: Connection, who: int, on: date) -> dict[str, Target]:
    """The last target in force for each exercise that day."""
    query = select(target.c.exercise, target.c.body).where(target.c.person == who, target.c.on == on)
    found = {row.exercise: row.body for row in conn.execute(query.order_by(target.c.id)) if row.body}
    return {exercise: target_of(body) for exercise, body in found.items()}


def _lifter(conn: Connection, who: int, on: date) -> Lifter:
    """The body as it was that day, as far as it is kept, else as it is now."""
    then = select(trained.c.lifter).where(trained.c.person == who, trained.c.on == on).limit(1)
    body = conn.execute(then).scalar() or conn.execute(select(lifter.c.body).where(lifter.c.person == who)).scalar_one()
    return noun_of(Lifter, body)


def _aching(conn: Connection, who: int, on: date) -> Lifter:
    """The body as it was that day, with all that was said of aches by then: a later word takes none of it back."""
    body = _lifter(conn, who, on)
    said = (act.c.person == who, act.c.kind == "ache", act.c.state == "kept", act.c.on <= on)
    query = select(act.c.on, act.c.body).where(*said, act.c.on >= on - timedelta(days=value("ache.stale_days")))
    told = [(row.on, act_of(row.body)) for row in conn.execute(query.order_by(act.c.on, act.c.place, act.c.id))]
    aches = (Ache(one.where, day, one.side, one.level) for day, one in told if isinstance(one, AcheAct))
    return replace(body, aches=(*body.aches, *aches))


def _before(conn: Connection, who: int, exercise: str, on: date, folding: Folding) -> str | None:
    """The estimate from the last sessions before that day; the same whenever it is asked for."""
    past = sessions(conn, who, None, on, [exercise]).get(exercise, ())[-LOOKS_BACK:]
    if not past:
        return None
    weekly = plans.weekly(conn, who)
    days = tuple(Past(each, _lifter(conn, who, each.on), folding.aim(weekly, exercise, each.on)) for each in past)
    return folding.fold(exercise, None, days)


def _held(conn: Connection, who: int, on: date) -> bool:
    since: Any = conn.execute(select(hold.c.since).where(hold.c.person == who)).scalar()
    return since is not None and since.astimezone(people.profile(conn, who).zone).date() <= on


def _digest(conn: Connection, who: int, on: date, planned: Planned) -> str:
    """What a day was made of, in short."""
    parts = [
        [one.id for one in _acts(conn, who, on)],
        sorted((name, noun_text(one)) for name, one in _targets(conn, who, on).items()),
        noun_text(planned.day),
        planned.off,
        _held(conn, who, on),
        [[one.where, one.side, str(one.on), one.level] for one in _aching(conn, who, on).aches if one.on <= on],
    ]
    return hashlib.sha256(json.dumps(parts).encode()).hexdigest()
