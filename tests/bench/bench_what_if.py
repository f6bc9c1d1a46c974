"""How long a coach waits for "what if". Run as a module: python -m tests.bench.bench_what_if

The question comes in by the real pass and its words and picture go out; the first has to start the workers.
"""

import asyncio
import sys
import time as clock
from datetime import timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

import structlog

from bot.making import ARTIST
from tests.bot.office import START, USERS, office, until

ASKED = "what if Tomas did tempo before load on squat for 6 weeks"
TIMES = 5


async def measure() -> list[float]:
    """Seconds from the question to the picture, each time."""
    took = []
    with TemporaryDirectory() as folder:
        async with office(Path(folder)) as room:
            for week in range(3):
                await until(room, START + timedelta(days=1 + 7 * week, hours=-2))
                await room.say(USERS["Tomas"], "squat 100 x 9, 9, 8 2 left")
            for _ in range(TIMES):
                room.clock.move(minutes=1)
                start = clock.perf_counter()
                await room.hear(room.raw(user=USERS["Ines"], text=ASKED))
                took.append(clock.perf_counter() - start)
                assert room.wire.sent[-1].attachment is not None, room.wire.sent[-1].text
    return took


def main() -> None:
    """Print what it took."""
    structlog.configure(wrapper_class=structlog.make_filtering_bound_logger(50))
    first, *later = asyncio.run(measure())
    ARTIST.close()
    then = ", ".join(f"{one:.2f}" for one in later)
    sys.stdout.write(f"the first, with the start of the workers: {first:.2f} s; then {then} s\n")


if __name__ == "__main__":
    main()
