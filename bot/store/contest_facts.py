"""One member's day as it stands in the store: what was planned, told, asked and known. Read only; judging is core's."""

import hashlib
import json
from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Any, Final

from sqlalchemy import Connection, select

from bot.store import acts, coaching, people, plans
from bot.store.contest_tables import verdict
from bot.store.history import sessions
from bot.store.progress import Folding, Past
from bot.store.shapes import act_of, noun_of, noun_text, target_of
from bot.store.tables import act, day_plan, hold, lifter, target, trained
from core.contest import Told
from core.evidence.numbers import value
from core.model.acts import AcheAct, SetAct
from core.model.book import Kept
from core.model.challenge import Word
from core.model.lifter import Ache, Lifter
from core.model.plan import Plan, TrainingDay
from core.model.target import Target

LOOKS_BACK: Final = 12
"""Sessions that the forecast is made from which a report is held against. Choice of ours: enough, and quick."""


@dataclass(frozen=True, slots=True)
class Planned:
    """A day of the plan: what was planned, and whether it was called off."""

    day: TrainingDay
    off: bool = False


def planned(conn: Connection, who: int, first: date, last: date) -> dict[date, Planned]:
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


def told(conn: Connection, who: int, on: date, planned: Planned, folding: Folding) -> Told:
    """The day as it stands, with the estimate from before it."""
    kept = _acts(conn, who, on)
    refused = _ruled(conn, who, on, "no")
    names = {one.act.exercise for one in kept if isinstance(one.act, SetAct) and one.act.exercise is not None}
    return Told(
        on=on,
        planned=planned.day,
        acts=kept,
        targets=_targets(conn, who, on),
        lifter=_aching(conn, who, on),
        before={name: text for name in sorted(names) if (text := _before(conn, who, name, on, folding, refused))},
        believed=_believed(conn, who, on),
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


def _before(
    conn: Connection, who: int, exercise: str, on: date, folding: Folding, refused: frozenset[tuple[str, date]]
) -> str | None:
    """The estimate from the last sessions before that day, without what the coach did not let stand."""
    all_ = sessions(conn, who, None, on, [exercise]).get(exercise, ())
    past = [one for one in all_ if not {(exercise, one.on), ("", one.on)} & refused][-LOOKS_BACK:]
    if not past:
        return None
    weekly = plans.weekly(conn, who)
    days = tuple(Past(each, _lifter(conn, who, each.on), folding.aim(weekly, exercise, each.on)) for each in past)
    return folding.fold(exercise, None, days)


def _ruled(conn: Connection, who: int, on: date, word: Word) -> frozenset[tuple[str, date]]:
    """The reports from before that day on which coaches said so: exercise ("" for the whole session) and day."""
    said = (verdict.c.person == who, verdict.c.word == word, verdict.c.on < on)
    return frozenset((row.exercise, row.on) for row in conn.execute(select(verdict).where(*said)))


def _believed(conn: Connection, who: int, on: date) -> dict[str, tuple[SetAct, ...]]:
    """The sets of reports beyond belief that a coach let count, by exercise."""
    found: dict[str, tuple[SetAct, ...]] = {}
    for exercise, day in sorted(_ruled(conn, who, on, "yes")):
        sets = (
            one.act for one in _acts(conn, who, day) if isinstance(one.act, SetAct) and one.act.exercise == exercise
        )
        found[exercise] = (*found.get(exercise, ()), *sets)
    return found


def _held(conn: Connection, who: int, on: date) -> bool:
    since: Any = conn.execute(select(hold.c.since).where(hold.c.person == who)).scalar()
    return since is not None and since.astimezone(people.profile(conn, who).zone).date() <= on


def digest(conn: Connection, who: int, on: date, planned: Planned) -> str:
    """What a day was made of, in short."""
    parts = [
        [one.id for one in _acts(conn, who, on)],
        sorted((name, noun_text(one)) for name, one in _targets(conn, who, on).items()),
        noun_text(planned.day),
        planned.off,
        _held(conn, who, on),
        [[one.where, one.side, str(one.on), one.level] for one in _aching(conn, who, on).aches if one.on <= on],
        [sorted([exercise, str(day)] for exercise, day in _ruled(conn, who, on, word)) for word in ("yes", "no")],
    ]
    return hashlib.sha256(json.dumps(parts).encode()).hexdigest()
