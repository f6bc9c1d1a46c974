"""Anything in any order: sets, corrections, edits, undos, presses, the clock and restarts, against a plain model.

Nothing raises, every message gets its answer, nothing is sent twice, and the sets that stand are the model's.
MACHINE_EXAMPLES in the environment makes more of it than the few seconds that the suite gives it.
"""

import asyncio
import json
import os
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any
from zoneinfo import ZoneInfo

from hypothesis import HealthCheck, settings
from hypothesis import strategies as st
from hypothesis.stateful import RuleBasedStateMachine, initialize, invariant, precondition, rule
from sqlalchemy import select

from bot import bootstrap
from bot.clock import Tick
from bot.intake import Intake
from bot.store import people
from bot.store.tables import act, agenda, inbox, outbox
from core.model.book import Profile
from core.notation.read import read_plan
from tests.bot.shell import CHANNEL, INES, RUTH, FakeWire, HandClock, shell, with_people

ZONE = ZoneInfo("Europe/Berlin")
MANY = int(os.environ.get("MACHINE_EXAMPLES", "12"))
STEPS = 18
UNDO = timedelta(minutes=10)
CORRECTS = timedelta(hours=18)
PLAN = "Monday 18:30 Legs\nback-squat 3x8-12, rest 2 min\nsplit-squat 3x8-12\nstanding-calf-raise 2x12-18"
OTHERS = ("starting", "left knee 2/10", "done for today", "only bodyweight today")
"""Messages that keep something which is no set."""
SILENT = ("why?", "what's next?", "hello", "thanks", "today", "my settings", "how am I doing on back squat?", "???")
"""Messages that keep nothing."""


@dataclass
class SetDone:
    """A set as the model knows it: its message, repetitions, its day and when the message came."""

    message: int
    reps: int
    at: datetime


@dataclass
class Doing:
    """What a message did: kept something, or changed a set from one number to another (None: erased)."""

    message: int
    at: datetime
    one: SetDone | None = None
    before: int | None = None
    after: int | None = None
    changes: bool = False


@dataclass
class Model:
    """The plainest book: sets in the order of their messages, and what was done in the order of doing."""

    sets: list[SetDone] = field(default_factory=list)
    doings: list[Doing] = field(default_factory=list)

    def standing(self) -> list[int]:
        return [one.reps for one in sorted(self.sets, key=lambda one: one.message)]

    def last(self, now: datetime, before: int | None = None) -> SetDone | None:
        known = sorted(self.sets, key=lambda one: one.message)
        known = [one for one in known if before is None or one.message < before]
        today = [one for one in known if one.at.astimezone(ZONE).date() == now.astimezone(ZONE).date()]
        late = [one for one in known if now - one.at <= CORRECTS]
        found = today or late
        return found[-1] if found else None

    def did(self, doing: Doing) -> None:
        self.doings.append(doing)

    def forgets(self, message: int) -> None:
        """An edit: what the message had done is undone, and others' changes of its sets go with them."""
        for doing in [one for one in self.doings if one.message == message]:
            self.takes_back(doing)
        self.doings = [one for one in self.doings if one.one is None or one.one.message != message]

    def takes_back(self, doing: Doing) -> None:
        self.doings.remove(doing)
        one = doing.one
        if one is None:
            return
        later = [d for d in self.doings if d.changes and d.one is one and d.message > doing.message]
        if not doing.changes:
            self.sets = [each for each in self.sets if each is not one]
        elif not later:
            if doing.after is None:
                self.sets.append(one)
            assert doing.before is not None
            one.reps = doing.before


class Anything(RuleBasedStateMachine):
    """One lifter, one coach, one store."""

    def __init__(self) -> None:
        super().__init__()
        self.loop = asyncio.new_event_loop()
        self.folder = TemporaryDirectory()
        self.wire, self.clock = FakeWire(), HandClock(datetime(2026, 3, 2, 18, 31, tzinfo=ZONE).astimezone(UTC))
        self.model, self.update = Model(), 0
        self.typed: dict[int, tuple[int, str]] = {}
        self.room: Any = None

    def run_(self, work: Any) -> Any:
        return self.loop.run_until_complete(work)

    async def _open(self) -> None:
        self.around = shell(Path(self.folder.name), clock=self.clock)
        room = await self.around.__aenter__()
        room.wire, room.post._sender = self.wire, self.wire
        desk = bootstrap.parts({CHANNEL: self.wire.open}, bootstrap.start_line)
        room.intake = Intake(room.store, desk, self.clock, room.post.wake)
        room.tick = Tick(room.store, desk, self.clock, room.post.wake)
        room.number = self.update
        self.room = room

    @initialize()
    def begins(self) -> None:
        self.run_(self._begins())

    async def _begins(self) -> None:
        await self._open()
        await with_people(self.room)
        plan = read_plan(PLAN, lambda name: (name,)).plan
        await self.room.store.write(lambda conn: _settle(conn, plan, self.clock()))

    def teardown(self) -> None:
        if self.room is not None:
            self.run_(self.around.__aexit__(None, None, None))
        self.loop.close()
        self.folder.cleanup()

    def says(self, text: str, **more: Any) -> int:
        """A message, an edit of one, or a press; its number in the store."""
        before = len(self.wire.texts(RUTH))
        self.clock.move(seconds=20)
        raw = self.room.raw(user=RUTH, text=text, **more) if "kind" not in more else self.room.raw(user=RUTH, **more)
        self.update = self.room.number
        self.run_(self.room.hear(raw))
        assert len(self.wire.texts(RUTH)) > before, f"no answer to {text!r}"
        mine = select(inbox.c.seq).where(inbox.c.update_id == self.update)
        number: int = self.run_(self.room.store.read(lambda conn: conn.execute(mine).scalar_one()))
        return number

    # What the lifter does

    @rule(reps=st.integers(5, 15))
    def a_set(self, reps: int) -> None:
        number = self.says(f"back squat 60 kg x {reps}")
        self.typed[number] = (self.update, "set")
        self._kept(number, reps, self.clock())

    def _kept(self, number: int, reps: int, at: datetime) -> None:
        one = SetDone(number, reps, at)
        self.model.sets.append(one)
        self.model.did(Doing(number, at, one))

    @rule(reps=st.integers(5, 15))
    def make_that(self, reps: int) -> None:
        number = self.says(f"make that {reps}")
        self.typed[number] = (self.update, "change")
        self._changed(number, reps, self.clock())

    def _changed(self, number: int, reps: int | None, at: datetime, before: int | None = None) -> None:
        one = self.model.last(at, before)
        if one is None:
            return
        self.model.did(Doing(number, at, one, one.reps, reps, changes=True))
        if reps is None:
            self.model.sets = [each for each in self.model.sets if each is not one]
        else:
            one.reps = reps

    @rule()
    def scrap_the_last(self) -> None:
        number = self.says("scrap the last")
        self._changed(number, None, self.clock())

    @rule(words=st.sampled_from(OTHERS))
    def something_else(self, words: str) -> None:
        self.model.did(Doing(self.says(words), self.clock()))

    @rule(words=st.sampled_from(SILENT))
    def nothing_kept(self, words: str) -> None:
        self.says(words)

    @rule()
    def undo(self) -> None:
        self.says("undo")
        now, doings = self.clock(), self.model.doings
        near = [one for one in doings if now - one.at <= UNDO]
        if near:
            self.model.takes_back(max(near, key=lambda one: one.message))

    @precondition(lambda self: any(kind == "set" for _, kind in self.typed.values()))
    @rule(data=st.data(), reps=st.integers(5, 15))
    def an_edit_of_a_set(self, data: st.DataObject, reps: int) -> None:
        number = data.draw(st.sampled_from(sorted(key for key, (_, kind) in self.typed.items() if kind == "set")))
        arrived = self.run_(self.room.store.read(lambda conn: conn.execute(
            select(inbox.c.received).where(inbox.c.seq == number)).scalar_one()))  # fmt: skip
        self.says(f"back squat 60 kg x {reps}", message_id=self.typed[number][0], edit=True)
        self.model.forgets(number)
        self._kept(number, reps, arrived)

    @rule(data=st.sampled_from(("a:999999:0", "d:739677:m", "j:unit:kg", "q:1:y", "a:999998:1", "nonsense")))
    def an_old_button(self, data: str) -> None:
        self.says("", kind="press", message_id=1, data=data, token="t")

    # What time does

    @rule(minutes=st.sampled_from((1, 3, 9, 12, 40, 130)))
    def time_passes(self, minutes: int) -> None:
        if (self.clock().astimezone(ZONE) + timedelta(minutes=minutes)).hour < 23:
            self.clock.move(minutes=minutes)
        self.run_(self._ticks())

    @rule(days=st.integers(1, 8))
    def days_pass(self, days: int) -> None:
        evening = datetime.combine(self.clock().astimezone(ZONE).date() + timedelta(days=days), PLANNED, tzinfo=ZONE)
        self.clock.at = evening.astimezone(UTC)
        self.run_(self._ticks())

    @rule()
    def the_clock_is_set_back(self) -> None:
        self.clock.move(seconds=-15)
        self.run_(self._ticks())

    async def _ticks(self) -> None:
        await asyncio.gather(self.room.tick.once(), self.room.tick.once())
        await self.room.settle()

    @rule()
    def a_restart(self) -> None:
        self.run_(self._again())

    async def _again(self) -> None:
        await self.around.__aexit__(None, None, None)
        await self._open()
        await self._ticks()

    # What must hold

    @invariant()
    def the_sets_are_the_models(self) -> None:
        if self.room is None:
            return
        standing = select(act.c.body).where(act.c.kind == "set", act.c.state == "kept").order_by(act.c.place)
        found = self.run_(self.room.store.read(lambda conn: list(conn.execute(standing).scalars())))
        assert [json.loads(body)["reps"] for body in found] == self.model.standing()

    @invariant()
    def nothing_is_dead_and_nothing_went_twice(self) -> None:
        if self.room is None:
            return
        states = self.run_(self.room.store.read(_states))
        assert states["inbox"] == {"done"} or not states["inbox"]
        assert "dead" not in states["agenda"]
        assert states["outbox"] <= {"sent"}
        assert len(self.wire.tried) == len(self.wire.sent) == states["letters"]


PLANNED = datetime(2026, 1, 1, 18, 35).time()  # noqa: DTZ001 - a time of day


def _settle(conn: Any, plan: Any, now: datetime) -> None:
    who = people.by_user(conn, CHANNEL, RUTH)
    assert who is not None
    people.set_profile(conn, who.id, Profile("Ruth", ZONE, nudges=True))
    bootstrap_plan(conn, who.id, plan, now)
    assert people.by_user(conn, CHANNEL, INES) is not None


def bootstrap_plan(conn: Any, who: int, plan: Any, now: datetime) -> None:
    """In force as if the coach had sent it."""
    from bot.store import coaching, renewal

    coaching.put_in_force(conn, who, plan, who, now, "written")
    renewal.renew(conn, who, now)


def _states(conn: Any) -> dict[str, Any]:
    letters = conn.execute(select(outbox.c.state)).scalars().all()
    return {
        "inbox": set(conn.execute(select(inbox.c.state)).scalars()),
        "agenda": set(conn.execute(select(agenda.c.state)).scalars()),
        "outbox": set(letters),
        "letters": len(letters),
    }


TestAnything = Anything.TestCase
TestAnything.settings = settings(
    max_examples=MANY, stateful_step_count=STEPS, deadline=None, suppress_health_check=list(HealthCheck)
)
