"""Fills an empty store with the invented gym: the named lifters live their weeks through the real pass.

Their messages are kept, read, answered and advised as anybody's, on a clock of its own that runs through the past.
The crowd beyond the named ones is written down directly (see crowd), since thousands are wanted for measuring.
"""

import json
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from random import Random
from typing import Final

from sqlalchemy import Connection

from bot.bootstrap import parts, start_line
from bot.channels import terminal
from bot.clock import Tick
from bot.demo import crowd, life
from bot.demo.gym import Gym, Invented, load_gym
from bot.folding import FOLDING
from bot.intake import Intake
from bot.outbox import Outbox, Pace
from bot.ports import Delivery, Parcel, RawUpdate, Sent, StoreError
from bot.store import agenda, books, coach_clock, people, plans
from bot.store.engine import Store
from bot.store.outbox import Reach
from core import due
from core.model.book import Book
from core.model.plan import TrainingDay

FIRST_USER: Final = 1_000_001
CHANNELS: Final = ("telegram", terminal.NAME)
"""Where the invented people are reached, under the same number: on a test's Telegram and in the terminal."""

_MISSED_SHARE: Final = 0.06
_BETWEEN_EXERCISES: Final = timedelta(minutes=11)


@dataclass(frozen=True, slots=True)
class Wanted:
    """How big the gym is to be, and the seed of its chance."""

    lifters: int
    weeks: int
    seed: int


@dataclass(slots=True)
class HandClock:
    """A clock that stands where it is put."""

    at: datetime

    def now(self) -> datetime:
        """Where it stands."""
        return self.at


class Silent:
    """A way out that delivers nowhere: what was said in an invented past has been read."""

    async def send(self, _parcel: Parcel) -> Delivery:
        """Take the message as read."""
        return Sent()


@dataclass(slots=True)
class _Past:
    """The service run through the past: one message after the other, each on its own time."""

    store: Store
    clock: HandClock
    number: int = 0
    intake: Intake = field(init=False)
    tick: Tick = field(init=False)
    post: Outbox = field(init=False)

    def __post_init__(self) -> None:
        desk = parts({terminal.NAME: terminal.open_update}, start_line)
        self.post = Outbox(self.store, Silent(), Reach(terminal.NAME), self.clock.now, Pace())
        self.intake = Intake(self.store, desk, self.clock.now, lambda: None)
        self.tick = Tick(self.store, desk, self.clock.now, lambda: None)

    async def until(self, at: datetime) -> None:
        """Time goes on to ``at``; what comes due on the way is said when it is due."""
        while (next_due := await self.store.read(agenda.next_due)) is not None and next_due <= at:
            self.clock.at = max(self.clock.at, next_due)
            await self.tick.once()
        self.clock.at = at

    async def say(self, user: int, at: datetime, text: str) -> None:
        self.clock.at = at
        self.number += 1
        body = {"user": user, "private": True, "message": self.number, "text": text}
        await self.intake.keep((RawUpdate(terminal.NAME, self.number, user, json.dumps(body)),))
        await self.intake.settle()


@dataclass(frozen=True, slots=True)
class _Visit:
    """One training day of one lifter, at its moment."""

    at: datetime
    user: int
    who: Invented
    day: TrainingDay


async def fill(url: str, wanted: Wanted, now: Callable[[], datetime]) -> str:
    """Fill the store; says what is in it. Raises StoreError when it is not empty."""
    moment = now()
    async with await Store.open(url) as store:
        if not await store.read(people.is_empty):
            raise StoreError(
                "this store is not empty: the demo gym goes into a new one, so name a file that is not there"
            )
        gym = load_gym(moment.date())
        named = gym.lifters[: wanted.lifters]
        made = await store.write(lambda conn: _people(conn, gym, named, moment))
        await _live(store, named, wanted, moment, made.coach)
        rest = crowd.Crowd(made.coach, made.group, len(named), wanted.lifters, wanted.weeks, wanted.seed)
        await crowd.write_down(store, gym, rest, moment)
    names = ", ".join([*(one.profile.name for one in named), *(["..."] if wanted.lifters > len(named) else [])])
    return f"{wanted.lifters} lifters ({names}) and their coach {gym.coach.name}"


@dataclass(frozen=True, slots=True)
class _Made:
    coach: int
    group: int


def _people(conn: Connection, gym: Gym, named: tuple[Invented, ...], joined: datetime) -> _Made:
    coach = people.add(conn, gym.coach.name, str(gym.coach.zone), joined, coaches=True)
    people.set_profile(conn, coach.id, gym.coach)
    for channel in CHANNELS:
        people.reach(conn, coach.id, channel, gym.coach_user)
    members = []
    for user, one in enumerate(named, FIRST_USER):
        person = people.add(conn, one.profile.name, str(one.profile.zone), joined)
        people.make_lifter(conn, person.id, coach.id, one.lifter)
        people.set_profile(conn, person.id, one.profile)
        plans.set_weekly(conn, person.id, one.plan)
        for channel in CHANNELS:
            people.reach(conn, person.id, channel, user)
        members.append(person.id)
    group = people.add_group(conn, gym.group, coach.id, members)
    for channel in CHANNELS:
        people.add_chat(conn, channel, gym.group_chat, group=group)
    return _Made(coach.id, group)


async def _live(store: Store, named: tuple[Invented, ...], wanted: Wanted, now: datetime, coach: int) -> None:
    chance = Random(wanted.seed)  # noqa: S311  # an invented history, nothing secret
    past = _Past(store, HandClock(now))
    visits = _visits(named, wanted.weeks, now)
    if visits:
        past.clock.at = visits[0].at
        await store.write(lambda conn: coach_clock.ensure(conn, coach, visits[0].at))
    for visit in visits:
        await past.until(visit.at)
        if chance.random() >= _MISSED_SHARE:
            await _train(past, visit, (now - visit.at) / timedelta(weeks=1), chance)
        await past.post.drain()
    await past.until(now)
    await past.post.drain()
    await store.write(lambda conn: _look_ahead(conn, named, now))


def _look_ahead(conn: Connection, named: tuple[Invented, ...], now: datetime) -> None:
    """From now on the named ones are reminded, as whoever joins is."""
    for user, who in enumerate(named, FIRST_USER):
        if (person := people.by_user(conn, terminal.NAME, user)) is not None:
            for row in due.ahead(who.profile, who.plan, now):
                agenda.change(conn, person.id, row)


async def _train(past: _Past, visit: _Visit, weeks_ago: float, chance: Random) -> None:
    await past.say(visit.user, visit.at, "starting")
    for turn, item in enumerate(visit.day.exercises, 1):
        at = visit.at + turn * _BETWEEN_EXERCISES
        book = await past.store.read(lambda conn, at=at: _book(conn, visit.user, at))  # type: ignore[misc]
        target = book.targets.get(item.exercise)
        steps = target.sets if target is not None and target.sets else life.opening(item.aim, item.exercise)
        done = life.train(visit.who, item.exercise, steps, weeks_ago, chance)
        await past.say(visit.user, at, life.text(visit.who, item.exercise, done, chance))
    await past.say(visit.user, visit.at + (len(visit.day.exercises) + 1) * _BETWEEN_EXERCISES, "done for today")


def _book(conn: Connection, user: int, at: datetime) -> Book:
    person = people.by_user(conn, terminal.NAME, user)
    if person is None:
        raise StoreError(f"the demo lifter {user} is gone")
    return books.load(conn, person.id, at, FOLDING)


def _visits(named: tuple[Invented, ...], weeks: int, now: datetime) -> list[_Visit]:
    """Every training day of the past weeks, the last of them yesterday, in the order of time."""
    visits = []
    for user, who in enumerate(named, FIRST_USER):
        today = now.astimezone(who.profile.zone).date()
        for back in range(1, weeks * 7 + 1):
            on = today - timedelta(days=back)
            if (day := who.plan.on(on.weekday())) is not None:
                visits.append(_Visit(_moment(on, day.at, who), user, who, day))
    return sorted(visits, key=lambda visit: (visit.at, visit.user))


def _moment(on: date, at: time, who: Invented) -> datetime:
    return datetime.combine(on, at, tzinfo=who.profile.zone).astimezone(UTC)
