"""What a person says about themselves at rest: where joining stands, body and kit, pauses, journeys."""

import json
from dataclasses import asdict, dataclass
from datetime import date, datetime
from typing import Final

from sqlalchemy import Connection, bindparam, delete, insert, select, update

from bot.store.shapes import noun_of, noun_text
from bot.store.tables import day_plan, hold, joining, journey, lifter, rein
from bot.store.upsert import put, put_new
from core.join.questions import Stand
from core.model.lifter import Lifter
from core.model.plan import Plan

_STAND: Final = select(joining.c.body).where(joining.c.person == bindparam("who"))
_BODY: Final = select(lifter.c.body).where(lifter.c.person == bindparam("who"))


def stand(conn: Connection, who: int) -> Stand | None:
    """Where a joining stands; None: there is none, or it is over."""
    body = conn.execute(_STAND, {"who": who}).scalar()
    if body is None:
        return None
    row = json.loads(body)
    return Stand(tuple(row["answered"]), tuple(row["put_off"]), row["open"], row.get("told", False))


def set_stand(conn: Connection, who: int, now: datetime, wanted: Stand) -> None:
    """It stands there now; of one that is over nothing is kept."""
    if wanted.is_over:
        conn.execute(delete(joining).where(joining.c.person == who))
        return
    body = json.dumps(asdict(wanted))
    put(conn, joining, person=who, body=body, at=now)


def body_of(conn: Connection, who: int) -> Lifter:
    """Body, kit, experience, aches."""
    return noun_of(Lifter, conn.execute(_BODY, {"who": who}).scalar_one())


def set_body(conn: Connection, who: int, wanted: Lifter) -> None:
    """These from now on."""
    conn.execute(update(lifter).where(lifter.c.person == who).values(body=noun_text(wanted)))


def hold_back(conn: Connection, who: int, sign: str, now: datetime) -> None:
    """Hold all targets; what is held already stays held as it was."""
    put_new(conn, hold, [{"person": who, "sign": sign, "since": now}])


def held(conn: Connection, who: int) -> str | None:
    """What targets are held for."""
    sign: str | None = conn.execute(select(hold.c.sign).where(hold.c.person == who)).scalar()
    return sign


def no_heavier(conn: Connection, who: int, until: date | None, now: datetime) -> None:
    """The lifter's own wish for no more load; it stands beside the coach's, and loosens nothing."""
    end_no_heavier(conn, who, now)
    conn.execute(insert(rein).values(person=who, kind="no_heavier", until=until, by=who, at=now))


def end_no_heavier(conn: Connection, who: int, now: datetime) -> bool:
    """The lifter's own wish ends. False: there was none."""
    mine = (rein.c.person == who, rein.c.by == who, rein.c.kind == "no_heavier", rein.c.ended.is_(None))
    return conn.execute(update(rein).where(*mine).values(ended=now)).rowcount > 0


# Days that are off, and changed


def call_off(conn: Connection, who: int, days: list[date]) -> None:
    """Nothing is planned for these days."""
    for on in days:
        put(conn, day_plan, person=who, on=on, body=noun_text(Plan()))


def call_back(conn: Connection, who: int, first: date, last: date) -> None:
    """Days called off in that span are as the week plans them again."""
    span = (day_plan.c.person == who, day_plan.c.on >= first, day_plan.c.on <= last)
    conn.execute(delete(day_plan).where(*span, day_plan.c.body == noun_text(Plan())))


def changed_days(conn: Connection, who: int, since: date) -> list[tuple[date, Plan]]:
    """Days with a plan of their own, from that day on."""
    rows = conn.execute(_CHANGED, {"who": who, "since": since})
    return [(row.on, noun_of(Plan, row.body)) for row in rows]


_CHANGED: Final = select(day_plan).where(day_plan.c.person == bindparam("who"), day_plan.c.on >= bindparam("since"))


# Journeys


@dataclass(frozen=True, slots=True)
class Journey:
    """Another zone for some days. ``last`` None: until said otherwise. ``there``: it has begun."""

    zone: str
    home: str
    first: date
    last: date | None
    there: bool = False


def set_journey(conn: Connection, who: int, one: Journey) -> None:
    """This journey; it takes the place of one before it."""
    state = "there" if one.there else "ahead"
    put(conn, journey, person=who, zone=one.zone, home=one.home, first=one.first, last=one.last, state=state)


def journey_of(conn: Connection, who: int) -> Journey | None:
    """The journey that is on or ahead."""
    row = conn.execute(select(journey).where(journey.c.person == who)).one_or_none()
    return Journey(row.zone, row.home, row.first, row.last, row.state == "there") if row else None


def end_journey(conn: Connection, who: int) -> None:
    """It is over."""
    conn.execute(delete(journey).where(journey.c.person == who))
