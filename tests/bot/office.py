"""A gym with its real core around a wire that remembers: two coaches, their clients, a group, a newcomer.

It plays talk scripts of the coach's desk and prints them as they would be now.
"""

import asyncio
import re
import sys
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from datetime import UTC, datetime, time, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from typing import Any

from bot.bootstrap import parts as real_parts
from bot.clock import Tick
from bot.intake import Intake
from bot.outbox import Outbox, Pace
from bot.ports import Parcel
from bot.store import agenda, coaching, people
from bot.store.outbox import Reach
from core import due
from core.model.lifter import Kit, Lifter
from core.model.plan import Plan, Planned, TrainingDay
from core.model.target import Aim
from tests.bot.shell import CHANNEL, GROUP, HandClock, Shell, shell

FOLDER = Path(__file__).parents[2] / "fixtures" / "desk"
START = datetime(2026, 3, 2, 9, 0, tzinfo=UTC)
"""A Monday morning."""
USERS = {
    "Ines": 900001,
    "Jana": 900002,
    "Mira": 1000001,
    "Tomas": 1000002,
    "Ruth": 1000003,
    "Lev": 1000004,
    "Nobody": 777,
}
LIFT = Aim(3, (8, 12), rest_s=120.0, ways=("reps", "tempo", "load"))
PLANS = {
    "Mira": Plan((TrainingDay(0, time(18), "Legs", (Planned("goblet-squat", LIFT), Planned("dumbbell-row", LIFT))),)),
    "Tomas": Plan(
        (TrainingDay(1, time(7), "Bar", (Planned("back-squat", LIFT), Planned("barbell-bench-press", LIFT))),)
    ),
}
LIFTERS = {
    "Mira": Lifter(
        bodyweight_kg=64, experience="new", kit=Kit(dumbbells_kg=(6, 8, 10, 12), kettlebells_kg=(12, 16, 20))
    ),
    "Tomas": Lifter(bodyweight_kg=88, experience="long"),
    "Ruth": Lifter(unit="lb", bodyweight_kg=71),
    "Lev": Lifter(bodyweight_kg=80),
}


def _seed(conn: Any) -> None:
    ines = people.add(conn, "Ines", "Europe/Lisbon", START, coaches=True)
    jana = people.add(conn, "Jana", "Europe/Lisbon", START, coaches=True)
    for one in (ines, jana):
        people.reach(conn, one.id, CHANNEL, USERS[one.name])
    members = []
    for name, lifter in LIFTERS.items():
        one = people.add(conn, name, "Europe/Lisbon", START)
        people.make_lifter(conn, one.id, jana.id if name == "Lev" else ines.id, lifter)
        people.reach(conn, one.id, CHANNEL, USERS[name])
        plan = PLANS.get(name, Plan())
        if plan.days:
            coaching.put_in_force(conn, one.id, plan, ines.id, START, "written")
            for row in due.ahead(people.profile(conn, one.id), plan, START):
                agenda.change(conn, one.id, row)
        members.append(one.id)
    group = people.add_group(conn, "Evening", ines.id, members[:3])
    people.add_chat(conn, CHANNEL, GROUP, group=group)


@asynccontextmanager
async def office(folder: Path) -> AsyncIterator[Shell]:
    """The gym, on a Monday morning."""
    async with shell(folder, clock=HandClock(START)) as room:
        desk = real_parts({CHANNEL: room.wire.open}, lambda code: f"https://t.example/gym?start={'C' * len(code)}")
        room.parts = desk
        room.intake = Intake(room.store, desk, room.clock, lambda: None)
        room.tick = Tick(room.store, desk, room.clock, lambda: None)
        room.post = Outbox(room.store, room.wire, Reach(CHANNEL), room.clock, Pace())
        await room.store.write(_seed)
        yield room


async def until(room: Shell, at: datetime) -> None:
    """Time goes on; what comes due on the way is said when it is due."""
    while (next_due := await room.store.read(agenda.next_due)) is not None and next_due <= at:
        room.clock.at = max(room.clock.at, next_due)
        await room.tick.once()
        await room.post.drain()
    room.clock.at = at


# Scripts


_LINE = re.compile(r"(?P<who>[A-Z][a-z]+)(?P<press> presses)?: (?P<text>.*)")
_STEPS = {"m": "minutes", "h": "hours", "d": "days"}


def scripts() -> list[Path]:
    """Every talk script."""
    return sorted(FOLDER.glob("*.talk"))


def steps_of(text: str) -> tuple[list[str], list[str]]:
    """A script's remarks, and its own steps: what people say and press, and time going on; more lines are indented."""
    remarks, steps = [], []
    mine = False
    for line in text.splitlines():
        if line.startswith("#"):
            remarks.append(line)
        elif _LINE.fullmatch(line) or line.startswith("clock: "):
            steps.append(line)
            mine = True
        elif line.startswith("  ") and mine:
            steps[-1] += "\n" + line[2:]
        else:
            mine = False
    return remarks, steps


async def played(folder: Path, steps: list[str]) -> list[str]:
    """The steps with what is said to them, by whom it is heard."""
    names = {user: name for name, user in USERS.items()} | {GROUP: "the group"}
    out: list[str] = []
    async with office(folder) as room:
        heard = 0
        for step in steps:
            out += ["", *_indented(step)]
            if step.startswith("clock: "):
                jump = re.fullmatch(r"clock: \+(\d+)([mhd])", step)
                assert jump, step
                await until(room, room.clock.at + timedelta(**{_STEPS[jump[2]]: int(jump[1])}))
                await room.post.drain()
            else:
                await _said(room, step)
            for parcel in room.wire.sent[heard:]:
                out += _heard(names[parcel.chat], parcel)
            heard = len(room.wire.sent)
    return out


async def _said(room: Shell, step: str) -> None:
    found = re.fullmatch(_LINE.pattern, step, re.DOTALL)
    assert found, step
    user = USERS[found["who"]]
    room.clock.move(minutes=1)
    if not found["press"]:
        await room.hear(room.raw(user=user, text=found["text"]))
        return
    offered = {label: data for parcel in room.wire.sent if parcel.chat == user for label, data in parcel.buttons}
    data = offered.get(found["text"], found["text"])
    await room.hear(room.raw(kind="press", user=user, message_id=1, data=data, token="t"))


def _indented(step: str) -> list[str]:
    first, *rest = step.split("\n")
    return [first, *(f"  {line}" for line in rest)]


def _heard(name: str, parcel: Parcel) -> list[str]:
    row = " ".join(f"[{label}]" for label, _ in parcel.buttons)
    file = f"({parcel.attachment[0]})" if parcel.attachment else ""
    lines = [line for line in (*parcel.text.split("\n"), row, file) if line or line == ""]
    body = [_steady(line) for line in "\n".join(lines).strip("\n").split("\n")]
    return [f"> {name}: {body[0]}", *(f">   {line}".rstrip() for line in body[1:])]


_ESTIMATED = ("At best now, likely", "likely at the end", "of 100 that")


def _steady(line: str) -> str:
    """The line with the figures of an estimate left open: they are held elsewhere, and may get better."""
    return re.sub(r"\d+(?:\.\d+)?", "#", line) if any(words in line for words in _ESTIMATED) else line


def printed(remarks: list[str], lines: list[str]) -> str:
    """A script as text."""
    return "\n".join([*remarks, *lines]) + "\n"


def main(names: list[str]) -> None:
    """Write scripts as they are now."""
    for name in names:
        path = Path(name)
        remarks, steps = steps_of(path.read_text(encoding="utf-8"))
        with TemporaryDirectory() as folder:
            path.write_text(printed(remarks, asyncio.run(played(Path(folder), steps))), encoding="utf-8")


if __name__ == "__main__":
    main(sys.argv[1:])
