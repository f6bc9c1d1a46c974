"""What members did, from their acts: a day of facts for each day of the plan, made anew while its week is open.

A day is made once it is over, and again when its acts, targets or plan have changed; from the close of its week on it
stays as it was. Scoring and judging are core's.
"""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Final

from sqlalchemy import Connection, delete, select, update

from bot.store import challenges, contest_facts, people
from bot.store.challenges import Open
from bot.store.contest_tables import contest_day
from bot.store.progress import Folding
from bot.store.shapes import noun_of, noun_text
from bot.store.upsert import put
from core.challenge.standings import table
from core.contest import day_of, with_words
from core.model.challenge import DayDone, Record, Table

_DAY: Final = timedelta(days=1)


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
    days = contest_facts.planned(conn, who, first, last)
    return tuple(day_of(contest_facts.told(conn, who, on, planned, folding)) for on, planned in sorted(days.items()))


def _bring_up(conn: Connection, one: Open, who: int, span: tuple[date, date], folding: Folding) -> Iterable[DayDone]:
    mine = (contest_day.c.challenge == one.id, contest_day.c.person == who)
    rows = conn.execute(select(contest_day).where(*mine, contest_day.c.on >= span[0])).all()
    known = {row.on: row for row in rows}
    days = contest_facts.planned(conn, who, *span)
    for on in set(known) - set(days):
        conn.execute(delete(contest_day).where(*mine, contest_day.c.on == on, contest_day.c.sealed == 0))
    for on, planned in sorted(days.items()):
        old = known.get(on)
        if old is not None and old.sealed:
            continue
        made_of = contest_facts.digest(conn, who, on, planned)
        if old is not None and old.made_of == made_of:
            continue
        day = day_of(contest_facts.told(conn, who, on, planned, folding))
        if old is not None:  # held since an alarm then: that it was cleared later makes it no missed session
            day = replace(day, held=day.held or noun_of(DayDone, old.body).held)
        put(conn, contest_day, challenge=one.id, person=who, on=on, body=noun_text(day), made_of=made_of, sealed=0)
        yield day
