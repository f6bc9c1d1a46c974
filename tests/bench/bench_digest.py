"""How long the morning word and the weeks of many clients take. Run as a module; prints one line a measure.

python -m tests.bench.bench_digest --clients 1000 --coaches 33

Where a machine is shared, in slices: ``--store FILE --fold 150`` again and again until nothing is left to fold, then
``--store FILE``.
"""

import argparse
import asyncio
import sys
import time as clock
from datetime import UTC, date, datetime, time, timedelta
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory
from typing import Any

from sqlalchemy import Connection, insert, select

from bot.bootstrap import parts
from bot.desk import coach_clock as desk_clock
from bot.desk.coach_looks import glances
from bot.desk.office import Office, at_desk
from bot.folding import FOLDING
from bot.pictures import overview_picture
from bot.store import agenda, books, coach_clock, people, plans
from bot.store.engine import Store
from bot.store.shapes import act_text, target_text
from bot.store.tables import act, lifter, target
from core.model.acts import SetAct
from core.model.lifter import Lifter
from core.model.outcome import AgendaChange
from core.model.plan import Plan, Planned, TrainingDay
from core.model.quantities import Load
from core.model.target import Aim, Target, TargetSet
from core.say.desk import overview_words
from core.say.render import Voice

NOW = datetime(2026, 3, 8, 19, 0, tzinfo=UTC)
WEEKS = 5
LIFTS = ("back-squat", "barbell-bench-press", "barbell-row", "romanian-deadlift", "lat-pulldown", "dumbbell-curl")
AIM = Aim(3, (8, 12), rest_s=150.0)
PLAN = Plan(
    tuple(
        TrainingDay(weekday, time(18), "", tuple(Planned(name, AIM) for name in LIFTS[n : n + 4]))
        for n, weekday in enumerate((0, 2, 4))
    )
)


def seed(conn: Connection, clients: int, coaches: int) -> list[int]:
    """Coaches with clients who trained three times a week for five weeks; gives the coaches' keys."""
    chance = Random(1)
    keys = [people.add(conn, f"Coach {n}", "UTC", NOW, coaches=True).id for n in range(coaches)]
    for number in range(clients):
        one = people.add(conn, f"Client {number}", "UTC", NOW - timedelta(weeks=WEEKS))
        people.make_lifter(conn, one.id, keys[number % coaches], Lifter(bodyweight_kg=75))
        plans.set_weekly(conn, one.id, PLAN)
        _history(conn, one.id, chance)
    return keys


def _history(conn: Connection, who: int, chance: Random) -> None:
    sets: list[dict[str, Any]] = []
    given: list[dict[str, Any]] = []
    place = 0
    for back in range(7 * WEEKS, 0, -1):
        on: date = (NOW - timedelta(days=back)).date()
        day = PLAN.on(on.weekday())
        for item in day.exercises if day else ():
            wanted = Target("reps", (TargetSet(Load("total", 60.0), (8, 12), 2.0, None, 150.0),) * 3)
            given.append({"person": who, "exercise": item.exercise, "on": on, "body": target_text(wanted)})
            for _ in range(3):
                place += 1
                done = SetAct(
                    item.exercise, Load("total", 60.0), chance.randint(7, 12), rir=float(chance.randint(0, 3))
                )
                sets.append(_row(who, done, on, place))
    conn.execute(insert(act), sets)
    conn.execute(insert(target), given)


def _row(who: int, done: SetAct, on: date, place: int) -> dict[str, Any]:
    at = datetime.combine(on, time(18), UTC)
    return {"person": who, "kind": "set", "exercise": done.exercise, "on": on, "at": at, "body": act_text(done),
            "place": place, "state": "kept"}  # fmt: skip


async def measure(clients: int, coaches: int, store: str = "", fold: int = 0) -> dict[str, float]:
    """Seconds of one processor for all digests and for all weeks; ``fold``: only fold so many clients more."""
    with TemporaryDirectory() as folder:
        async with await Store.open(f"sqlite+aiosqlite:///{store or Path(folder) / 'gym.db'}") as gym:
            if not await gym.read(people.coaches):
                await gym.write(lambda conn: seed(conn, clients, coaches))
            start = clock.process_time()
            folded = await gym.write(lambda conn: _fold(conn, fold))
            took = {f"folding {folded} histories that nobody asked for yet": clock.process_time() - start}
            return took if fold else took | await _due_to_coaches(gym)


async def _due_to_coaches(store: Store) -> dict[str, float]:
    keys = [one.id for one in await store.read(people.coaches)]
    desk = parts({}, str)
    took: dict[str, float] = {}
    for kind in (coach_clock.DIGEST, coach_clock.WEEKS):
        start, longest = clock.process_time(), 0.0
        for coach in keys:
            await store.write(lambda conn, coach=coach, kind=kind: _due(conn, desk, coach, kind))  # type: ignore[misc]
        while (one := await store.write(lambda conn: _next(conn, desk))) is not None:
            longest = max(longest, one)
        took[kind] = clock.process_time() - start
        took[f"{kind}, the longest transaction"] = longest
    took["pictures of everyone, in the workers beside it"] = await _pictures(store, keys)
    return took


async def _pictures(store: Store, keys: list[int]) -> float:
    """Seconds that drawing takes, each coach's picture alone."""
    start = clock.process_time()
    for coach in keys:
        found = await store.read(lambda conn, coach=coach: glances(_desk(conn, coach)))  # type: ignore[misc]
        overview_picture(found, overview_words(Voice("", UTC)))
    return clock.process_time() - start


def _desk(conn: Connection, coach: int) -> Office:
    return at_desk(conn, parts({}, str), people.get(conn, coach), NOW)


def _fold(conn: Connection, most: int) -> int:
    """Fold histories, so many at most (0: all); gives how many were."""
    waiting = conn.execute(select(lifter.c.person).where(lifter.c.folded_through.is_(None))).scalars().all()
    for who in waiting[: most or None]:
        books.load(conn, who, NOW, FOLDING)
    return len(waiting[: most or None])


def _next(conn: Connection, desk: Any) -> float | None:
    """Work one of the rows that those of the coaches brought: its seconds of a processor; None: there is none left."""
    row = next((one for one in agenda.due(conn, NOW, 100) if one.kind in coach_clock.KINDS), None)
    if row is None:
        return None
    start = clock.thread_time()
    desk_clock.work(conn, desk, row, NOW)
    return clock.thread_time() - start


def _due(conn: Connection, desk: Any, coach: int, kind: str) -> None:
    agenda.change(conn, coach, AgendaChange(kind, NOW.date(), NOW))
    (row,) = [one for one in agenda.due(conn, NOW, 5_000) if one.person == coach and one.kind == kind]
    desk_clock.work(conn, desk, row, NOW)


def main() -> None:
    """Print what it took."""
    asked = argparse.ArgumentParser()
    asked.add_argument("--clients", type=int, default=1000)
    asked.add_argument("--coaches", type=int, default=33)
    asked.add_argument("--store", default="")
    asked.add_argument("--fold", type=int, default=0)
    wanted = asked.parse_args()
    size = f"of one processor for {wanted.clients} clients of {wanted.coaches} coaches"
    for name, seconds in asyncio.run(measure(wanted.clients, wanted.coaches, wanted.store, wanted.fold)).items():
        sys.stdout.write(f"{name}: {seconds:.2f} s {size}\n")


if __name__ == "__main__":
    main()
