"""``python -m tests.sim.group_season [PICTURE.png]``: the demo group's season through the real pass, as members see it.

Twelve members in four zones, two weeks before and six of challenge; one comes late, one leaves, one aches, one boasts.
"""

import asyncio
import logging
import sys
from collections.abc import AsyncIterator
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, time, timedelta
from io import BytesIO
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Any, Final

import structlog
from PIL import Image

from bot.bootstrap import parts
from bot.demo import life
from bot.demo.gym import Gym, Invented, load_gym
from bot.folding import FOLDING
from bot.store import books, challenges, contest, people, plans
from core.challenge.standings import table
from core.contest import with_words
from core.model.book import Book
from core.model.challenge import Record, Table
from tests.bot.shell import CHANNEL, GROUP, INES, HandClock, Shell, shell

MONDAY: Final = date(2026, 3, 2)
WEEKS_BEFORE: Final = 2
WEEKS: Final = 6
FIRST_USER: Final = 1_000_001
OTHERS: Final = ("Nuno", "Gerda", "Abel", "Wies", "Carla", "Finn")
SHOWN: Final = ("Mi", "Big T", "R.", "Kettle", "Odd", "Sun", "Quay", "Gull", "Able", "Tide", "Crab", "Fin")
LATE, LEAVES, HURT, BOASTS = 4, 6, 8, 10
"""Which of them comes late, leaves, is hurt, boasts: by their place among the members."""
ACHES: Final = ("left knee", "lower back", "right shoulder")
ASKS: Final = "for your word"
"""Part of every question to the coach about what waits."""
HURTS, HEALED = 14, 28
LOOKS: Final = (8, 10, 11, 16)
OVER: Final[tuple[datetime, ...]] = ()
"""When what is over at once goes on."""
"""Days after the first Monday."""


@dataclass(frozen=True, slots=True)
class Post:
    """What the group saw, at a time of its zone; ``over``: written over an earlier post."""

    text: str
    at: datetime
    over: bool


@dataclass
class Season:
    """The room, its people, and all that was said."""

    room: Shell
    gym: Gym
    lifters: list[Invented]
    answered: int = 0
    """How many of the coach's questions were answered."""
    trained: dict[int, set[date]] = field(default_factory=dict)
    """The days on which each member really trained, by their place: the season's own diary."""
    times: list[datetime] = field(default_factory=list)
    """When each message was sent."""
    tables: tuple[Table, ...] = ()
    """The last standings: as they were kept, and made once more from the acts alone."""

    def user(self, number: int) -> int:
        return FIRST_USER + number

    async def in_group(self, user: int, text: str) -> None:
        await self.room.say(user, text, chat=GROUP, private=False, title=self.gym.group)
        self.note()

    def note(self) -> None:
        """What was sent since the last time was sent now."""
        self.times += [self.room.clock.at] * (len(self.room.wire.sent) - len(self.times))

    def posts(self) -> list[Post]:
        """What the group saw, in order."""
        zone = self.gym.coach.zone
        timed = zip(self.room.wire.sent, self.times, strict=True)
        return [
            Post(one.text, at.astimezone(zone), over=one.edits is not None) for one, at in timed if one.chat == GROUP
        ]

    def asked(self) -> list[str]:
        """What the coach was asked."""
        return [one.text for one in self.room.wire.sent if one.chat == INES and ASKS in one.text]

    def pictures(self) -> list[bytes]:
        """The pictures that the group got."""
        return [one.attachment[1] for one in self.room.wire.sent if one.chat == GROUP and one.attachment is not None]

    def pictured(self) -> list[str]:
        """What the pictures say: the facts that go with them."""
        return [str(Image.open(BytesIO(content)).info) for content in self.pictures()]


def cast(gym: Gym) -> list[Invented]:
    """The demo gym's people, and as many again with other names and other strength on the same plans."""
    more = [
        replace(
            one,
            profile=replace(one.profile, name=name),
            strength={key: kg * factor for key, kg in one.strength.items()},
        )
        for one, name, factor in zip(gym.lifters, OTHERS, (0.8, 0.7, 1.2, 0.9, 1.3, 1.1), strict=True)
    ]
    return [*gym.lifters, *more]


def _seed(conn: Any, season: Season) -> None:
    began = datetime.combine(MONDAY - timedelta(weeks=WEEKS_BEFORE), time(0), tzinfo=UTC)
    coach = people.add(conn, season.gym.coach.name, str(season.gym.coach.zone), began, coaches=True)
    people.set_profile(conn, coach.id, season.gym.coach)
    people.reach(conn, coach.id, CHANNEL, INES)
    for number, one in enumerate(season.lifters):
        person = people.add(conn, one.profile.name, str(one.profile.zone), began)
        people.make_lifter(conn, person.id, coach.id, one.lifter)
        people.set_profile(conn, person.id, one.profile)
        plans.set_weekly(conn, person.id, one.plan)
        people.reach(conn, person.id, CHANNEL, season.user(number))


async def play(room: Shell) -> Season:
    """The whole season."""
    gym = load_gym(MONDAY)
    season = Season(room, gym, cast(gym))
    await room.store.write(lambda conn: _seed(conn, season))
    first = MONDAY - timedelta(weeks=WEEKS_BEFORE)
    for day in range(7 * (WEEKS_BEFORE + WEEKS) + 2):
        await _day(season, first + timedelta(days=day))
    return season


async def _day(season: Season, on: date) -> None:
    """What happens on a day, in its order: words in the group, sessions beside each other, looks of the clock."""
    since = (on - MONDAY).days
    happens: list[tuple[datetime, AsyncIterator[datetime]]] = []
    for text, user, when in _said_in_group(season):
        if when == since:
            happens.append((datetime.combine(on, time(10, 20), tzinfo=UTC), _word(season, user, text)))
    for number, who in enumerate(season.lifters):
        planned = who.plan.on(on.weekday())
        if planned is not None:
            at = datetime.combine(on, planned.at, tzinfo=who.profile.zone).astimezone(UTC)
            happens.append((at, _visit(season, number, at, since)))
    happens += [(datetime.combine(on, time(hour), tzinfo=UTC), _look(season)) for hour in LOOKS]
    while happens:
        at, one = happens.pop(min(range(len(happens)), key=lambda place: happens[place][0]))
        season.room.clock.at = at
        goes_on = await anext(one, None)
        season.note()
        if goes_on is not None:
            happens.append((goes_on, one))


async def _word(season: Season, user: int, text: str) -> AsyncIterator[datetime]:
    await season.in_group(user, text)
    for later in OVER:
        yield later


async def _look(season: Season) -> AsyncIterator[datetime]:
    """What the clock does: posts, and questions, which the coach answers."""
    await season.room.tick.once()
    await season.room.settle()
    await _coach_answers(season)
    for later in OVER:
        yield later


def _said_in_group(season: Season) -> list[tuple[str, int, int]]:
    """What is said in the group: words, by whom, days after the first Monday."""
    said = [('challenge "Harbour spring" for 6 weeks from Monday, steps and sessions', INES, -3)]
    joins = [(f"join as {name}", season.user(at), 15 if at == LATE else -2) for at, name in enumerate(SHOWN)]
    return [*said, *joins, ("leave", season.user(LEAVES), 24), ("standings", season.user(0), 10)]


async def _visit(season: Season, number: int, at: datetime, since: int) -> AsyncIterator[datetime]:
    """One session of one member, as they are; gives the time at which it goes on."""
    who, user = season.lifters[number], season.user(number)
    chance = Random(f"7 {number} {since}")  # invented people; each has luck of their own
    boasts = number == BOASTS and since >= 7
    if number == HURT and HURTS <= since < HEALED:
        if since < HURTS + 4:
            for where in ACHES:
                await season.room.say(user, f"{where} hurts, 6/10")
        return
    if number == HURT and HEALED <= since < HEALED + 4:
        for where in ACHES:
            await season.room.say(user, f"{where} 0/10")
    missed = chance.random() < (0.4 if boasts else 0.1)
    if missed and not boasts:
        return
    if boasts and missed:
        await season.room.say(user, "as planned")
        return
    await season.room.say(user, "starting")
    local = at.astimezone(who.profile.zone)
    season.trained.setdefault(number, set()).add(local.date())
    planned = who.plan.on(local.weekday())
    assert planned is not None
    for turn, item in enumerate(planned.exercises, 1):
        yield at + timedelta(minutes=11 * turn)
        book = await season.room.store.read(lambda conn: _book(conn, user, season.room.clock.at))
        target = book.targets.get(item.exercise)
        steps = target.sets if target is not None and target.sets else life.opening(item.aim, item.exercise)
        done = life.train(who, item.exercise, steps, (WEEKS * 7 - since) / 7, chance)
        if boasts:
            done = [replace(one, count=round(one.count * 1.5) + 2) for one in done]
        await season.room.say(user, life.text(who, item.exercise, done, chance))
    await season.room.say(user, "done for today")


def _book(conn: Any, user: int, at: datetime) -> Book:
    person = people.by_user(conn, CHANNEL, user)
    assert person is not None
    return books.load(conn, person.id, at, FOLDING)


async def _coach_answers(season: Season) -> None:
    """The coach lets count what honest members told, and not what the boaster did."""
    asked = [one for one in season.room.wire.sent if one.chat == INES and one.buttons and ASKS in one.text]
    for one in asked[season.answered :]:
        season.answered += 1
        boast = SHOWN[BOASTS] in one.text
        data = one.buttons[-1][1] if boast else one.buttons[-2][1]
        raw = season.room.raw(kind="press", user=INES, chat=INES, data=data, message_id=1, token="t")
        await season.room.hear(raw)


async def season_in(folder: Path) -> Season:
    """A season on a store in the folder, with the real core."""
    async with shell(folder, clock=HandClock()) as room:
        real = parts({CHANNEL: room.wire.open}, lambda code: f"/start={code}")
        object.__setattr__(room.parts, "answer", real.answer)
        object.__setattr__(room.parts, "remind", real.remind)
        season = await play(room)
        season.tables = await room.store.read(_recomputed)
        return season


def _recomputed(conn: Any) -> tuple[Table, ...]:
    """The standings from the days that are kept, and from days made anew from the acts."""
    found = challenges.get(conn, 1)
    words = challenges.words(conn, found.id)
    anew = []
    for entrant, trusted in challenges.entrants(conn, found.id):
        said = {on: word for (who, on), word in words.items() if who == entrant.who}
        days = contest.rebuilt(conn, found, entrant.who, FOLDING)
        anew.append(Record(entrant, tuple(with_words(day, said.get(day.on, {}), trusted=trusted) for day in days)))
    return tuple(table(found.noun, records, WEEKS) for records in (contest.records(conn, found), anew))


def transcript(season: Season) -> str:
    """The season as the group saw it, then what the coach was asked."""
    posts = [
        f"--- {one.at:%a %d %b, %H:%M}{', written over' if one.over else ''}\n{one.text}\n" for one in season.posts()
    ]
    return "\n".join([*posts, "The coach was asked:", *season.asked()]) + "\n"


async def _main() -> Season:
    structlog.configure(wrapper_class=structlog.make_filtering_bound_logger(logging.ERROR))
    with TemporaryDirectory() as folder:
        return await season_in(Path(folder))


if __name__ == "__main__":
    lived = asyncio.run(_main())
    sys.stdout.write(transcript(lived))
    for file, content in zip(sys.argv[1:], lived.pictures(), strict=False):
        Path(file).write_bytes(content)
