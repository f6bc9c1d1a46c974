"""The service's memory: while lifter after lifter sends, then over half an hour of a steady load.

python -m tests.bench.soak                                            10,000 at once, then 9,000 messages in 30 minutes
python -m tests.bench.soak --store FILE                               on a copy of a store that was made before
python -m tests.bench.soak --at-once 4000 --every 0.3 --weeks 1       10,000 in all, most of them while it is soaked
python -m tests.bench.soak --lifters 500 --at-once 500 --minutes 2    a smaller look

The soak goes on with the lifter after the last, round and round: the worst case for whatever is kept of a lifter.

Prints the process's resident memory at each step, and how much it grew per hour in the second half of the soak.
"""

import argparse
import asyncio
import shutil
import sys
import time
from dataclasses import dataclass
from pathlib import Path
from tempfile import TemporaryDirectory

from bot import log
from tests.bench.load import stores
from tests.bench.load.talk import gym_of_today, texts
from tests.bench.load.world import World, measured

SERVED = "tests.bench.load.served"
AT_ONCE = 100
"""Messages that are pushed together while everyone comes in."""

LOOKS = 10
"""Times that memory is looked at in each part."""


@dataclass(frozen=True)
class Asked:
    """How long, how many, how fast."""

    store: Path | None
    lifters: int
    at_once: int
    weeks: int
    minutes: float
    every: float


def told(words: str) -> None:
    """One line."""
    sys.stdout.write(f"{words}\n")
    sys.stdout.flush()


async def first_ones(world: World, lifters: int) -> None:
    """The first message of the day of so many lifters, as fast as it goes."""
    gym = gym_of_today()
    told(f"{world.megabytes():.0f} MB at the start")
    looks = {round(lifters * at / LOOKS) for at in range(1, LOOKS + 1)}
    for begin in range(0, lifters, AT_ONCE):
        end = min(begin + AT_ONCE, lifters)
        await world.say([(number, texts(gym, number, 1)[0]) for number in range(begin, end)])
        if any(begin < look <= end for look in looks):
            told(f"{world.megabytes():.0f} MB after {end} lifters")


async def steadily(world: World, asked: Asked) -> list[tuple[float, float]]:
    """One message each ``every`` seconds, the lifters in turns; (minute, megabytes) at each look."""
    gym = gym_of_today()
    began, number, seen = time.monotonic(), asked.at_once, [(0.0, world.megabytes())]
    part = max(1, round(asked.minutes * 60 / asked.every / LOOKS))
    for _ in range(LOOKS):
        lines = []
        for _ in range(part):
            turn, who = divmod(number, asked.lifters)
            lines.append((who, texts(gym, who, turn + 1)[-1]))
            number += 1
        took = sorted(await world.say_at(lines, asked.every))
        seen.append(((time.monotonic() - began) / 60, world.megabytes()))
        middle = took[len(took) // 2] * 1000
        told(f"{seen[-1][1]:.0f} MB at minute {seen[-1][0]:.1f}, message {number}, p50 {middle:.0f} ms")
    return seen


def slope(seen: list[tuple[float, float]]) -> float:
    """Megabytes an hour: the straight line of least squares through the looks."""
    middle = [sum(values) / len(seen) for values in zip(*seen, strict=True)]
    spread = sum((minute - middle[0]) ** 2 for minute, _ in seen)
    return float(60 * sum((minute - middle[0]) * (held - middle[1]) for minute, held in seen) / spread)


async def soak(asked: Asked, file: Path) -> None:
    """All of it, on a store that nobody else uses."""
    async with measured(SERVED, stores.url_of(file)) as world:
        await first_ones(world, asked.at_once)
        seen = await steadily(world, asked)
    told(f"grew by {slope(seen):.1f} MB an hour over all looks, {slope(seen[LOOKS // 2 :]):.1f} over the second half")


def main() -> None:
    """Read the options, make or copy the store, look."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--store", type=Path, help="a store made by this or by tests.bench.service --folder")
    options.add_argument("--lifters", type=int, default=10_000)
    options.add_argument("--at-once", type=int, default=10_000, help="lifters who send before the soak")
    options.add_argument("--weeks", type=int, default=7, help="of history in the store that is made")
    options.add_argument("--minutes", type=float, default=30)
    options.add_argument("--every", type=float, default=0.2, help="seconds between two messages")
    asked = Asked(**vars(options.parse_args()))
    log.set_up("error")
    with TemporaryDirectory() as folder:
        file = Path(folder) / "soak.db"
        if asked.store is None:
            asyncio.run(stores.make(file, asked.lifters, asked.weeks))
        else:
            shutil.copyfile(asked.store, file)
        asyncio.run(soak(asked, file))


if __name__ == "__main__":
    main()
