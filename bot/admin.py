"""What the person who runs the service asks of a store: a coach's code, a lifter's sets."""

from zoneinfo import ZoneInfo, available_timezones

from sqlalchemy import Connection

from bot.clock import now
from bot.ports import StoreError
from bot.store import invites, people, reports
from bot.store.engine import Store
from bot.store.invites import Invite
from bot.store.people import Person
from bot.store.reports import SetRow


def is_zone(name: str) -> bool:
    """Whether the time zone data knows a zone of that name."""
    return name in available_timezones() and bool(ZoneInfo(name))


async def coach_code(url: str, name: str, zone: str) -> str:
    """A code that makes a coach of its bearer. Works beside a running service."""
    async with await Store.open(url, hold=False) as store:
        return await store.write(lambda conn: invites.make(conn, Invite("coach", name, zone, None), now()))


async def sets_of(url: str, name_or_id: str) -> list[SetRow]:
    """Every set of the lifter of that name or number. Raises StoreError when nobody or several are meant."""
    async with await Store.open(url, hold=False, create=False) as store:
        return await store.read(lambda conn: list(reports.sets_of(conn, find_lifter(conn, name_or_id).id)))


def find_lifter(conn: Connection, name_or_id: str) -> Person:
    """The one lifter who is meant."""
    found = [one for one in people.by_name(conn, name_or_id) if one.lifts]
    if not found and name_or_id.lstrip("-").isdecimal():
        one = people.by_id(conn, int(name_or_id))
        found = [one] if one is not None and one.lifts else []
    if len(found) > 1:
        numbers = ", ".join(str(one.id) for one in found)
        raise StoreError(f"several lifters are called {name_or_id}: give one of their numbers ({numbers})")
    if not found:
        known = ", ".join(one.name for one in people.lifters(conn)[:12]) or "nobody yet"
        raise StoreError(f"no lifter is called {name_or_id} here (there are: {known})")
    return found[0]
