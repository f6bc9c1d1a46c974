"""A group to test with: the shell, a coach with clients who have plans, sessions told over time, days that pass."""

from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass, replace
from datetime import UTC, datetime, time, timedelta
from pathlib import Path
from typing import Any

from bot.store import challenges, people, plans
from core.model.acts import AcheAct, SetAct
from core.model.book import Book, Incoming
from core.model.lifter import Ache
from core.model.outcome import DayPlan, Given, Keep, Outcome, Reply
from core.model.plan import Plan, Planned, TrainingDay
from core.model.quantities import Load
from core.model.target import Aim, Target, TargetSet
from tests.bot.shell import CHANNEL, GROUP, INES, HandClock, Shell, shell

FRIDAY = datetime(2026, 2, 27, 12, 0, tzinfo=UTC)
"""Before the first Monday."""

MEMBERS = {"Ruth": 1000001, "Tomas": 1000002, "Piet": 1000003, "Mira": 1000004}
RUTH, TOMAS, PIET, MIRA = MEMBERS.values()
SQUAT, ROW = "back-squat", "dumbbell-row"
AIM = Aim(2, (5, 8))
PLAN = Plan(
    tuple(
        TrainingDay(day, time(18, 0), title, (Planned(SQUAT, AIM), Planned(ROW, AIM)))
        for day, title in ((0, "One"), (3, "Two"))
    )
)
ACHES = {"ache": 5.0, "hurts": 7.0, "fine": 0.0}
LOADS = {SQUAT: Load("total", 61.5), ROW: Load("per_hand", 17.5)}


def target(exercise: str) -> Target:
    return Target("reps", (TargetSet(LOADS[exercise], (6, 8), 2.0),) * 2)


def core(incoming: Incoming, book: Book, now: datetime) -> Outcome:
    """Understands "EXERCISE REPS...", the words of ACHES, "moved", "here", "off": keeps sets, gives targets, moves."""
    on = now.date()
    first, *reps = incoming.text.split()
    if first in LOADS:
        acts = tuple(Keep(SetAct(first, LOADS[first], int(one), rir=2.0), on) for one in reps)
        return Outcome(
            replies=(Reply(f"kept {LOADS[first].kg} kg"),), keep=acts, given=(Given(first, on, target(first)),)
        )
    if first in ACHES:
        level = ACHES[first]
        said = (Keep(AcheAct("knee", level=level), on),)
        return Outcome(lifter=replace(book.lifter, aches=(Ache("knee", on, level=level),)), keep=said)
    if first == "moved":
        there = on + timedelta(days=1)
        day = PLAN.days[0]
        moved = Plan((replace(day, weekday=there.weekday()),))
        return Outcome(planned=(DayPlan(on, Plan()), DayPlan(there, moved)))
    if first == "here":
        return Outcome(planned=(DayPlan(on, Plan((replace(PLAN.days[0], weekday=on.weekday()),))),))
    return Outcome(planned=(DayPlan(on, Plan()),)) if first == "off" else Outcome(replies=(Reply("?"),))


class EveryText(dict[str, Any]):
    """Whatever is said, the same core answers."""

    def get(self, key: str, default: Any = None) -> Any:
        return core


@dataclass
class World:
    """The room, and what can be done in it."""

    room: Shell

    async def in_group(self, user: int, text: str, **more: Any) -> list[str]:
        return await self.room.say(user, text, chat=GROUP, private=False, title="Harbour Street", **more)

    async def press(self, user: int, data: str, **more: Any) -> None:
        raw = self.room.raw(kind="press", user=user, chat=more.pop("chat", GROUP), data=data, message_id=1, token="t",
                            private=more.pop("private", False), **more)  # fmt: skip
        await self.room.hear(raw)

    async def look(self) -> list[str]:
        """Time passes for the posts; what the group got."""
        before = len(self.posts())
        await self.room.tick.once()
        await self.room.settle()
        return self.posts()[before:]

    def posts(self) -> list[str]:
        return self.room.wire.texts(GROUP)

    def edits(self) -> list[int | None]:
        return [parcel.edits for parcel in self.room.wire.sent if parcel.chat == GROUP]

    async def train(self, user: int, reps: str = "6 6", minutes: int = 20) -> None:
        """Today's session, told exercise by exercise over some minutes."""
        await self.room.say(user, f"{SQUAT} {reps}")
        self.room.clock.move(minutes=minutes)
        await self.room.say(user, f"{ROW} {reps}")

    async def comes_by_the_door(self, user: int, name: str, plan: str) -> None:
        """Somebody without a coach here presses join, begins by the link and joins with a plan of their own."""
        await self.press(user, "c:join:1")
        door = self.posts()[-1].split("/start=")[1].split(",")[0]
        await self.room.say(user, f"/start {door}", name=name)
        await self.press(user, "c:join:1", name=name)
        await self.room.say(user, f"plan\n{plan}")

    def to(self, day: int, hour: int = 12, minute: int = 0) -> None:
        """Days after the first Monday, at an hour (UTC)."""
        start = datetime(2026, 3, 2, tzinfo=UTC)
        self.room.clock.at = start + timedelta(days=day, hours=hour, minutes=minute)


@asynccontextmanager
async def world(folder: Path, *members: str, counts: str = "") -> AsyncIterator[World]:
    """A coach's group with these clients, a challenge open in it from Monday; they have joined."""
    async with shell(folder, clock=HandClock(FRIDAY)) as room:
        room.core.script = EveryText()
        await room.store.write(_seed)
        here = World(room)
        await here.in_group(INES, f'challenge "Six" for 3 weeks from Monday{counts}')
        for name in members:
            await here.in_group(MEMBERS[name], f"join as {name[0]}-{name[-1]}")
        yield here


def _seed(conn: Any) -> None:
    coach = people.add(conn, "Ines", "UTC", FRIDAY, coaches=True)
    people.reach(conn, coach.id, CHANNEL, INES)
    for name, user in MEMBERS.items():
        one = people.add(conn, name, "UTC", FRIDAY)
        people.make_lifter(conn, one.id, coach.id)
        people.reach(conn, one.id, CHANNEL, user)
        plans.set_weekly(conn, one.id, PLAN)


async def the(here: World) -> challenges.Open:
    return await here.room.store.read(lambda conn: challenges.get(conn, 1))


async def lines(here: World) -> list[str]:
    """The standings as anyone in the group may ask for them."""
    (said,) = await here.in_group(INES, "standings")
    return said.split("\n")[1:]
