"""``python -m tests.sim.month FOLDER``: a month of the demo gym through the real pass, as its coach sees it.

Twelve invented lifters text their sessions with slips of the thumb, aches, gaps and lies; the coach writes a little.
Thirty morning words and four weeks of summaries are written to the folder to be read whole, beside what really
happened. What a summary counts is compared with that.
"""

import asyncio
import re
import sys
from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass, field, replace
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Any, Final
from zoneinfo import ZoneInfo

import structlog

from bot.bootstrap import parts
from bot.clock import Tick
from bot.demo import life
from bot.demo.gym import Invented, load_gym
from bot.folding import FOLDING
from bot.intake import Intake
from bot.outbox import Outbox, Pace
from bot.ports import Parcel
from bot.store import agenda, books, coach_clock, people
from bot.store.outbox import Reach
from core.evidence.exercises import EXERCISES
from core.model.book import Book
from core.model.plan import TrainingDay
from core.model.target import TargetSet
from core.notation.write import write_plan
from tests.bot.shell import CHANNEL, INES, HandClock, Shell, shell
from tests.sim.group_season import cast

MONDAY: Final = date(2026, 3, 2)
DAYS: Final = 30
FIRST_USER: Final = 1_000_001
_BETWEEN: Final = timedelta(minutes=9)
_AFTERWARDS: Final = timedelta(minutes=50)


@dataclass(frozen=True, slots=True)
class Manner:
    """How somebody trains and texts. Days are counted from the first Monday.

    ``gone``: days without a word; ``says``: what is texted at noon of a day, training or not; ``slips``: how often a
    word is mistyped; ``misses``: how often a session is; ``whole``: all in one message afterwards; ``ugly``: how often
    form is said to go; ``lies``: repetitions in reserve are overstated by so many; ``short``: repetitions fewer than
    could be done; ``moves``: a session is put off by a day with the button.
    """

    gone: tuple[range, ...] = ()
    says: dict[int, str] = field(default_factory=dict)
    slips: float = 0.15
    misses: float = 0.0
    whole: bool = False
    ugly: float = 0.0
    lies: int = 0
    short: int = 0
    moves: frozenset[int] = frozenset()


MANNERS: Final = {
    "Mira": Manner(says={9: "left knee hurts, 5/10 on the stairs", 14: "knee is a 2 now"}, slips=0.3),
    "Tomas": Manner(misses=0.05),
    "Ruth": Manner(gone=(range(8, 20),)),
    "Piet": Manner(says={15: "right elbow a bit sore, 3 of 10"}),
    "Odile": Manner(ugly=0.7),
    "Sunil": Manner(short=4, slips=0.25),
    "Nuno": Manner(moves=frozenset({2, 9, 16})),
    "Gerda": Manner(says={10: "had chest pain and felt dizzy on the stairs today"}),
    "Abel": Manner(whole=True),
    "Wies": Manner(gone=(range(14, 60),)),
    "Carla": Manner(lies=2, slips=0.2),
    "Finn": Manner(misses=0.3, whole=True),
}
"""By the names of the cast."""

COACH: Final = {
    (0, 12): ["Odile ask first", "carla: every 2nd week easier", "yes", "4 to 10 sets for Tomas"],
    (3, 12): ["note on Sunil: sleeps badly since the new job"],
    (8, 9): ["tell everyone: gym is closed on Friday afternoon", "yes"],
    (11, 9): ["tell Gerda please see your doctor before you train again"],
    (14, 9): ["clear Gerda"],
    (15, 8): ["tell Ruth hope you are well, no rush"],
    (22, 9): ["notes on sunil", "week of wies"],
}
"""What the coach writes, by day and hour (UTC)."""


@dataclass
class Month:
    """The room, its people, and what happened there."""

    room: Shell
    lifters: list[Invented]
    chance: Random
    done: dict[str, dict[date, int]] = field(default_factory=lambda: defaultdict(lambda: defaultdict(int)))
    """Sets texted, by name and local day."""
    talks: dict[str, list[str]] = field(default_factory=lambda: defaultdict(list))
    heard: int = 0
    coach: list[tuple[datetime, Parcel]] = field(default_factory=list)
    late: list[tuple[datetime, int, TrainingDay]] = field(default_factory=list)
    """Sessions put off to another day."""

    def listen(self) -> list[Parcel]:
        """What was sent since the last time, noted where it belongs."""
        fresh = self.room.wire.sent[self.heard :]
        self.heard = len(self.room.wire.sent)
        for one in fresh:
            if one.chat == INES:
                self.coach.append((self.room.clock.at, one))
            else:
                name = self.lifters[one.chat - FIRST_USER].profile.name
                self.talks[name].append(f"{self.room.clock.at:%a %d %H:%M} < {one.text}")
        return fresh

    async def say(self, number: int, text: str) -> list[Parcel]:
        self.talks[self.lifters[number].profile.name].append(f"{self.room.clock.at:%a %d %H:%M} > {text}")
        await self.room.hear(self.room.raw(user=FIRST_USER + number, text=text))
        return self.listen()

    async def press(self, user: int, data: str) -> None:
        await self.room.hear(self.room.raw(kind="press", user=user, message_id=1, data=data, token="t"))
        self.listen()

    async def order(self, text: str) -> None:
        self.coach.append((self.room.clock.at, Parcel(INES, f"(the coach writes) {text}")))
        await self.room.hear(self.room.raw(user=INES, text=text))
        self.listen()


async def month(room: Shell, days: int = DAYS, seed: int = 1) -> Month:
    """Live through it."""
    gym = load_gym(MONDAY)
    now = Month(room, cast(gym), Random(seed))
    await room.store.write(lambda conn: _seed(conn, gym.coach.name, gym.coach.zone, now))
    room.clock.at = datetime.combine(MONDAY - timedelta(days=1), time(20), tzinfo=UTC)
    for one in now.lifters:
        await now.order(f"plan for {one.profile.name}:\n{write_plan(one.plan, lambda id_: EXERCISES[id_].name)}")
        await now.order("yes")
    await room.store.write(lambda conn: coach_clock.ensure(conn, people.by_name(conn, "Ines")[0].id, room.clock.at))
    for at, act in sorted(_events(now, days), key=lambda one: (one[0], repr(one[1]))):
        await _until(now, at)
        await act(now) if callable(act) else None
    await _until(now, datetime.combine(MONDAY + timedelta(days=days), time(8), tzinfo=UTC))
    return now


def _seed(conn: Any, name: str, zone: Any, now: Month) -> None:
    began = datetime.combine(MONDAY - timedelta(days=1), time(19), tzinfo=UTC)
    coach = people.add(conn, name, str(zone), began, coaches=True)
    people.reach(conn, coach.id, CHANNEL, INES)
    for number, one in enumerate(now.lifters):
        person = people.add(conn, one.profile.name, str(one.profile.zone), began)
        people.make_lifter(conn, person.id, coach.id, one.lifter)
        people.set_profile(conn, person.id, one.profile)
        people.reach(conn, person.id, CHANNEL, FIRST_USER + number)


def _events(now: Month, days: int) -> Iterator[tuple[datetime, Any]]:
    for day in range(days):
        on = MONDAY + timedelta(days=day)
        for (when, hour), texts in COACH.items():
            if when == day:
                for n, text in enumerate(texts):
                    yield datetime.combine(on, time(hour, n), tzinfo=UTC), _Order(text)
        for number, one in enumerate(now.lifters):
            manner = MANNERS[one.profile.name]
            if any(day in gone for gone in manner.gone):
                continue
            if day in manner.says:
                yield _instant(on, time(12, 30), one), _Says(number, manner.says[day])
            planned = one.plan.on(on.weekday())
            if planned is not None and now.chance.random() >= manner.misses:
                moved = day in manner.moves
                if moved:
                    yield _instant(on, planned.at, one) - timedelta(minutes=20), _PutsOff(number)
                yield _instant(on + timedelta(days=moved), planned.at, one), _Trains(number, planned)


def _instant(on: date, at: time, who: Invented) -> datetime:
    return datetime.combine(on, at, tzinfo=who.profile.zone).astimezone(UTC)


async def _until(now: Month, at: datetime) -> None:
    room = now.room
    while (due := await room.store.read(agenda.next_due)) is not None and due <= at:
        room.clock.at = max(room.clock.at, due)
        await room.tick.once()
        await room.post.drain()
        now.listen()
    room.clock.at = max(at, room.clock.at)


@dataclass(frozen=True, slots=True)
class _Order:
    text: str

    async def __call__(self, now: Month) -> None:
        await now.order(self.text)


@dataclass(frozen=True, slots=True)
class _Says:
    number: int
    text: str

    async def __call__(self, now: Month) -> None:
        await now.say(self.number, self.text)


@dataclass(frozen=True, slots=True)
class _PutsOff:
    number: int

    async def __call__(self, now: Month) -> None:
        user = FIRST_USER + self.number
        offered = [
            data
            for one in now.room.wire.sent
            if one.chat == user
            for label, data in one.buttons
            if label.startswith("moved")
        ]
        if offered:
            now.talks[now.lifters[self.number].profile.name].append(f"{now.room.clock.at:%a %d %H:%M} > [moved]")
            await now.press(user, offered[-1])


@dataclass(frozen=True, slots=True)
class _Trains:
    number: int
    day: TrainingDay

    async def __call__(self, now: Month) -> None:
        who = now.lifters[self.number]
        manner = MANNERS[who.profile.name]
        texts: list[str] = []
        for item in self.day.exercises:
            target = await _asked(now, FIRST_USER + self.number, item.exercise)
            if target == ():
                continue
            sets = life.train(
                who, item.exercise, target or life.opening(item.aim, item.exercise), _ago(now), now.chance
            )
            sets = [replace(one, count=max(1, one.count - manner.short), left=one.left + manner.lies) for one in sets]
            text = life.text(who, item.exercise, sets, now.chance)
            if now.chance.random() < manner.ugly:
                text += now.chance.choice((", last one ugly", ", form went on the last", " sloppy"))
            texts.append(text)
            on = now.room.clock.at.astimezone(who.profile.zone).date()
            now.done[who.profile.name][on] += len(sets)
            if not manner.whole:
                await self._tells(now, text, manner)
                await _until(now, now.room.clock.at + _BETWEEN)
        if manner.whole and texts:
            await _until(now, now.room.clock.at + _AFTERWARDS)
            await self._tells(now, "\n".join(texts), manner)
        if now.chance.random() < 0.6:
            await now.say(self.number, "done")

    async def _tells(self, now: Month, text: str, manner: Manner) -> None:
        slipped = _slip(text, now.chance) if now.chance.random() < manner.slips else text
        answers = await now.say(self.number, slipped)
        asked = any(data.startswith("a:") for one in answers for _, data in one.buttons)
        if asked and slipped != text:  # the line that was not understood, put right
            lines = zip(text.split("\n"), slipped.split("\n"), strict=True)
            await now.say(self.number, "\n".join(right for right, wrong in lines if right != wrong))


def _ago(now: Month) -> float:
    return (MONDAY + timedelta(days=DAYS) - now.room.clock.at.date()) / timedelta(weeks=1)


async def _asked(now: Month, user: int, exercise: str) -> tuple[TargetSet, ...] | None:
    """The sets asked today; none: it is stopped or held; None: nobody advised."""
    book = await now.room.store.read(lambda conn: _book(conn, user, now.room.clock.at))
    target = book.targets.get(exercise)
    if book.hold is not None or (target is not None and target.way == "stop"):
        return ()
    return target.sets if target is not None else None


def _book(conn: Any, user: int, at: datetime) -> Book:
    person = people.by_user(conn, CHANNEL, user)
    assert person is not None
    return books.load(conn, person.id, at, FOLDING)


def _slip(text: str, chance: Random) -> str:
    """Two letters of one word in the wrong order, or one left out."""
    words = list(re.finditer(r"[a-z]{4,}", text))
    if not words:
        return text
    word = chance.choice(words)
    at = chance.randrange(word.start() + 1, word.end() - 1)
    swapped = text[:at] + text[at + 1] + text[at] + text[at + 2 :]
    return swapped if chance.random() < 0.6 else text[:at] + text[at + 1 :]


# What is written


_HEAD: Final = re.compile(
    r"(\w+), (\d+ \w+) to (\d+ \w+): (?:(\d+) of (\d+)|(\d+)) sessions?(?: and (\d+) more)?, (\d+) sets"
)


def wrong(now: Month) -> list[str]:
    """Where a summary counts other sets than were texted."""
    found = []
    for at, one in now.coach:
        head = _HEAD.match(one.text)
        if head is None:
            continue
        name, last = head[1], at.astimezone(ZoneInfo("Europe/Lisbon")).date()
        who = next(one for one in now.lifters if one.profile.name == name)
        last = at.astimezone(who.profile.zone).date()
        days = {on: n for on, n in now.done[name].items() if last - timedelta(days=6) <= on <= last}
        kept = int(head[4] or head[6]) + int(head[7] or 0)
        if (kept, int(head[8])) != (len(days), sum(days.values())):
            found.append(f"{one.text.splitlines()[0]}  but {len(days)} sessions, {sum(days.values())} sets were texted")
    return found


def write_down(now: Month, folder: Path) -> None:
    """Everything that the coach saw, and each lifter's own talk."""
    by_day: dict[str, list[str]] = defaultdict(list)
    for at, one in now.coach:
        local = at.astimezone(ZoneInfo("Europe/Lisbon"))
        row = " ".join(f"[{label}]" for label, _ in one.buttons)
        file = f"({one.attachment[0]})" if one.attachment else ""
        by_day[f"{local:%m-%d %a}"].append("\n".join([f"--- {local:%H:%M}", *filter(None, (one.text, row, file))]))
        if one.attachment:
            (folder / f"{local:%m-%d}-{one.attachment[0]}").write_bytes(one.attachment[1])
    text = "\n\n".join(f"===== {day}\n" + "\n".join(lines) for day, lines in by_day.items())
    (folder / "coach.txt").write_text(text + "\n", encoding="utf-8")
    for name, lines in now.talks.items():
        (folder / f"talk-{name}.txt").write_text("\n".join(lines) + "\n", encoding="utf-8")


async def run(folder: Path, days: int = DAYS) -> Month:
    """A month in a store of its own."""
    with TemporaryDirectory() as place:
        async with shell(Path(place), clock=HandClock(datetime.combine(MONDAY, time(0), tzinfo=UTC))) as room:
            desk = parts({CHANNEL: room.wire.open}, str)
            room.parts = desk
            room.intake = Intake(room.store, desk, room.clock, lambda: None)
            room.tick = Tick(room.store, desk, room.clock, lambda: None)
            room.post = Outbox(room.store, room.wire, Reach(CHANNEL), room.clock, Pace())
            now = await month(room, days)
    write_down(now, folder)
    return now


def main() -> None:
    """Write it all to the folder and say what does not agree."""
    structlog.configure(wrapper_class=structlog.make_filtering_bound_logger(50))
    folder = Path(sys.argv[1])
    folder.mkdir(parents=True, exist_ok=True)
    now = asyncio.run(run(folder, int(sys.argv[2]) if len(sys.argv) > 2 else DAYS))
    sys.stdout.write("\n".join(wrong(now)) + f"\n{len(now.coach)} messages to or from the coach\n")


if __name__ == "__main__":
    main()
