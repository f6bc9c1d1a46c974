"""The service's speed, latency, memory and start, side by side with the barest echo bot. Prints one table.

python -m tests.bench.service                      all of it, on stores of 1,000 and 100,000 sets
python -m tests.bench.service --lifters 10000      the large store holds 1,000,000 sets
python -m tests.bench.service --only rate,latency  some of it

Nothing is compared with a number of another day: each ratio is of two things measured in the same run.
"""

import argparse
import asyncio
import shutil
import sys
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import asynccontextmanager
from dataclasses import dataclass
from pathlib import Path
from statistics import median
from tempfile import TemporaryDirectory

from bot import log
from tests.bench.load import alone, stores
from tests.bench.load.talk import gym_of_today, texts
from tests.bench.load.world import World, measured

FEW = 10
"""Lifters of the small store, and those who send when the two stores are compared."""

WEEKS = 7
"""Of history: 100 sets a lifter."""

ECHO = "tests.bench.load.echo"
SERVED = "tests.bench.load.served"


@dataclass(frozen=True)
class Asked:
    """How big the bench is to be."""

    folder: Path
    lifters: int
    chats: int
    each: int
    rounds: int
    seconds: int
    active: int
    only: frozenset[str]

    @property
    def small(self) -> Path:
        """A store of few lifters."""
        return self.folder / "small.db"

    @property
    def large(self) -> Path:
        """A store of many."""
        return self.folder / "large.db"


def row(what: str, value: str, goal: str = "") -> None:
    """One line of the table."""
    sys.stdout.write(f"| {what} | {value} | {goal} |\n")
    sys.stdout.flush()


def session(chats: int, each: int, skip: int = 0) -> list[tuple[int, str]]:
    """What that many lifters send, in turns: the first of each, then the second of each."""
    gym = gym_of_today()
    said = {number: texts(gym, number, skip + each)[skip:] for number in range(chats)}
    return [(number, said[number][turn]) for turn in range(each) for number in range(chats)]


@asynccontextmanager
async def fresh(file: Path) -> AsyncIterator[Path]:
    """A copy of a store, on which nobody trained today."""
    with TemporaryDirectory() as folder:
        copy = Path(folder) / file.name
        await asyncio.to_thread(shutil.copyfile, file, copy)
        yield copy


async def rates(asked: Asked) -> None:
    """Messages a second: the two echoes and the service, in turns, the best of each."""
    lines = session(asked.chats, asked.each, skip=1)
    best: dict[str, float] = {}
    cost: dict[str, float] = {}

    async def measure(name: str, world: World) -> None:
        before = world.processor_seconds()
        best[name] = max(best.get(name, 0.0), len(lines) / await world.say(lines))
        spent = (world.processor_seconds() - before) / len(lines) * 1000
        cost[name] = min(cost.get(name, spent), spent)

    for _ in range(asked.rounds):
        for name in ("httpx", "aiohttp"):
            async with measured(ECHO, name) as world:
                await world.say(lines[:50])
                await measure(name, world)
        with TemporaryDirectory() as folder:
            file = Path(folder) / "gym.db"
            await stores.make(file, asked.chats, WEEKS)
            async with measured(SERVED, stores.url_of(file)) as world:
                first = await world.say(session(asked.chats, 1))
                await measure("ours", world)
    for name, called in _CALLED.items():
        row(called, f"{best[name]:.0f} messages/s, {cost[name]:.1f} ms of a processor each")
    row("service against the echo as it comes", f"{best['ours'] / best['httpx']:.2f}", "1.0")
    row("service against the echo over aiohttp", f"{best['ours'] / best['aiohttp']:.2f}", "0.5")
    row("first message after 7 weeks never folded", f"{first / asked.chats * 1000:.0f} ms each")


_CALLED = {
    "httpx": "echo, client library as it comes",
    "aiohttp": "echo, client library over aiohttp",
    "ours": "service, kept with FULL sync",
}


async def latency(asked: Asked) -> None:
    """How long an answer takes at 20 messages a second."""
    with TemporaryDirectory() as folder:
        file = Path(folder) / "gym.db"
        await stores.make(file, asked.chats, WEEKS)
        async with measured(SERVED, stores.url_of(file)) as world:
            await world.say(session(asked.chats, 1))
            lines = session(asked.chats, asked.each, skip=1)[: 20 * asked.seconds]
            took = sorted(await world.say_at(lines, 1 / 20))
    middle, late = took[len(took) // 2] * 1000, took[len(took) * 99 // 100] * 1000
    row(f"latency at 20 messages/s ({len(took)} messages)", f"p50 {middle:.0f} ms, p99 {late:.0f} ms", "p99 < 150 ms")


async def sizes(asked: Asked) -> None:
    """What a message costs on the small and on the large store, in turns, the least of each."""
    least: dict[str, tuple[float, float]] = {}
    lines = session(FEW, asked.each, skip=1)
    for _ in range(asked.rounds):
        for name, file in (("small", asked.small), ("large", asked.large)):
            async with fresh(file) as copy, measured(SERVED, stores.url_of(copy)) as world:
                await world.say(session(FEW, 1))
                before = world.processor_seconds()
                wall = await world.say(lines) / len(lines) * 1000
                spent = (world.processor_seconds() - before) / len(lines) * 1000
                known = least.get(name, (wall, spent))
                least[name] = (min(known[0], wall), min(known[1], spent))
    (small_wall, small), (large_wall, large) = least["small"], least["large"]
    row("a message on the small store", f"{small:.1f} ms of a processor, {small_wall:.1f} ms in all")
    row("a message on the large store", f"{large:.1f} ms of a processor, {large_wall:.1f} ms in all")
    row("large against small", f"{large / small:.2f} (processor), {large_wall / small_wall:.2f} (in all)", "1.2")


async def memory(asked: Asked) -> None:
    """The process's memory while more and more lifters send, then under a steady load."""
    async with fresh(asked.large) as copy, measured(SERVED, stores.url_of(copy)) as world:
        held = [f"{world.megabytes():.0f} at the start"]
        part = max(1, asked.active // 4)
        everyone = session(asked.active, 1)
        for begin in range(0, asked.active, part):
            await world.say(everyone[begin : begin + part])
            held.append(f"{world.megabytes():.0f} after {min(begin + part, asked.active)} lifters")
        row("memory, MB", ", ".join(held), "< 250 after 10,000 lifters")
        steady = session(asked.active, 1 + 20 * asked.seconds // asked.active, skip=1)[: 20 * asked.seconds]
        before = world.megabytes()
        await world.say_at(steady[: len(steady) // 2], 1 / 20)
        half = world.megabytes()
        await world.say_at(steady[len(steady) // 2 :], 1 / 20)
        after = world.megabytes()
    row(f"memory over a soak of {asked.seconds} s at 20/s, MB", f"{before:.0f}, {half:.0f}, {after:.0f}", "flat")


async def start(asked: Asked) -> None:
    """From starting the program itself to the first answer, on the large store."""
    took = []
    for _ in range(asked.rounds):
        async with fresh(asked.large) as copy:
            took.append(await alone.to_first_reply(copy))
    wall, spent = (min(values) for values in zip(*took, strict=True))
    row("rungbook serve started, to the first reply", f"{wall:.2f} s ({spent:.2f} s of a processor)", "< 2 s")


async def in_terminal(_asked: Asked) -> None:
    """From a line typed to the answer shown, for a lifter of a week and one of three years."""
    with TemporaryDirectory() as folder:
        files = [Path(folder) / f"weeks-{weeks}.db" for weeks in (1, 156)]
        for file, weeks in zip(files, (1, 156), strict=True):
            await stores.make(file, 1, weeks)
        taken = await alone.in_terminals([stores.url_of(file) for file in files])
    week, years = [[median(values) * 1000 for values in zip(*took, strict=True)] for took in taken]
    row(
        "line to reply in the terminal, a week of history",
        f"{week[0]:.1f} ms ({week[1]:.1f} of a processor)",
        "< 50 ms",
    )
    row("line to reply in the terminal, three years", f"{years[0]:.1f} ms ({years[1]:.1f} of a processor)", "< 50 ms")
    row("three years against a week", f"{years[0] / week[0]:.2f} ({years[1] / week[1]:.2f} of a processor)", "1.2")


PARTS: dict[str, Callable[[Asked], Awaitable[None]]] = {
    "rate": rates,
    "latency": latency,
    "size": sizes,
    "memory": memory,
    "start": start,
    "terminal": in_terminal,
}
_ON_LARGE = {"size", "memory", "start"}


async def bench(asked: Asked) -> None:
    """Make what is missing, then measure."""
    if asked.only & _ON_LARGE:
        for file, lifters in ((asked.small, FEW), (asked.large, asked.lifters)):
            if not file.exists():
                sets = await stores.make(file, lifters, WEEKS)
                row(f"made: {file.stem} store", f"{lifters} lifters, {sets} sets, {file.stat().st_size / 2**20:.0f} MB")
    for name, measure in PARTS.items():
        if name in asked.only:
            await measure(asked)


def main() -> None:
    """Read the options, print the table."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--folder", type=Path, help="keep the stores there, so that the next run finds them made")
    options.add_argument("--lifters", type=int, default=1000, help="of the large store, 100 sets each")
    options.add_argument("--chats", type=int, default=100, help="lifters who send for rate and latency")
    options.add_argument("--each", type=int, default=8, help="messages of each of them")
    options.add_argument("--rounds", type=int, default=2)
    options.add_argument("--seconds", type=int, default=20, help="of latency and soak")
    options.add_argument("--active", type=int, default=100, help="lifters who send while memory is watched")
    options.add_argument("--only", default=",".join(PARTS))
    given = options.parse_args()
    log.set_up("error")
    row("what", "measured", "goal")
    row("---", "---", "---")
    with TemporaryDirectory() as folder:
        numbers = (given.lifters, given.chats, given.each, given.rounds, given.seconds, given.active)
        asyncio.run(bench(Asked(given.folder or Path(folder), *numbers, frozenset(given.only.split(",")))))


if __name__ == "__main__":
    main()
