"""How many messages workers on PostgreSQL work in a second. Run as a module; prints one line a number of workers.

python -m tests.bench.bench_workers --lifters 60 --each 10 --workers 1 2

A real PostgreSQL with every commit on the disk, real worker processes, and lifters of the demo gym who each report
their sets. Everything waits in the queue before the first worker starts; the clock runs from one tenth to the end, so
that starting up is not counted. What is sent is not counted either: the pace that Telegram allows is far slower. Beside
the rate stands what a message costs in processor time, which a busy machine changes less.
"""

import argparse
import asyncio
import json
import os
import sys
import time
from asyncio.subprocess import Process
from functools import partial
from pathlib import Path
from tempfile import TemporaryDirectory

from sqlalchemy import Connection, func, select

from bot import clock
from bot.demo import fill
from bot.lanes import Lanes
from bot.ports import RawUpdate
from bot.store import house, inbox, queue_steps, tables
from bot.store.engine import Store
from tests.bot import postgres
from tests.bot.api_stub import BotApi
from tests.bot.api_updates import TOKEN, text

FIRST = 1000001
LOOK_EVERY = 0.2


def updates(lifters: int, each: int) -> list[RawUpdate]:
    """Every lifter reports their sets in turn."""
    made: list[RawUpdate] = []
    for number in range(each):
        for chat in range(FIRST, FIRST + lifters):
            body = text(chat, f"bench {40 + 2.5 * number:g} kg x 8", 1 + number)
            body["update_id"] = 1 + len(made)
            made.append(RawUpdate("telegram", len(made) + 1, chat, json.dumps(body)))
    return made


def done(conn: Connection) -> int:
    """Messages that are worked."""
    query = select(func.count()).select_from(tables.inbox)
    return int(
        conn.execute(query.where(tables.inbox.c.channel == "telegram", tables.inbox.c.state == "done")).scalar_one()
    )


def processor_seconds(processes: list[Process], server: postgres.Server) -> tuple[float, float]:
    """What the workers and the database have used so far, by the kernel's own count."""
    head = int((server.data / "postmaster.pid").read_text().split()[0])
    stats = [file.read_text().rpartition(")")[2].split() for file in Path("/proc").glob("[0-9]*/stat") if file.exists()]
    children = [stat for stat in stats if int(stat[1]) == head]
    own = Path(f"/proc/{head}/stat").read_text().rpartition(")")[2].split()
    ticks = os.sysconf("SC_CLK_TCK")
    workers = [Path(f"/proc/{one.pid}/stat").read_text().rpartition(")")[2].split() for one in processes]
    theirs = sum(map(int, own[11:15])) + sum(int(tick) for stat in children for tick in stat[11:13])
    return sum(int(tick) for stat in workers for tick in stat[11:13]) / ticks, theirs / ticks


async def measure(server: postgres.Server, workers: int, lifters: int, each: int) -> str:
    """One run on a database of its own."""
    name = f"bench_{workers}"
    url = server.create(name)
    await fill.fill(url, fill.Wanted(lifters, 0, 1), clock.now)
    batch = updates(lifters, each)
    pool = house.pool_of(url)
    await house.bring_up(pool, queue_steps.upgrade)
    async with await Store.within(pool, url, own=True) as store, BotApi(TOKEN) as api, Lanes(url, {}) as lanes:
        now = clock.now()
        for start in range(0, len(batch), 100):
            part = tuple(batch[start : start + 100])
            await store.write_beside(partial(inbox.keep, batch=part, now=now))
        await lanes.hand_on("", [(one.channel, one.chat) for one in batch])
        with TemporaryDirectory() as folder:
            processes = [await worker(url, api, Path(folder)) for _ in range(workers)]
            try:
                return await follow(store, server, processes, len(batch))
            finally:
                for one in processes:
                    one.terminate()
                    await one.wait()


async def worker(url: str, api: BotApi, folder: Path) -> Process:
    """``rungbook serve --role worker`` as a process."""
    env = {key: value for key, value in os.environ.items() if not key.startswith("RUNGBOOK_")}
    env |= {"RUNGBOOK_TOKEN": TOKEN, "RUNGBOOK_API_URL": api.base_url, "RUNGBOOK_STORE": url, "RUNGBOOK_LOG": "error"}
    env |= {"OPENBLAS_NUM_THREADS": "1"}
    words = ("-m", "bot", "serve", "--role", "worker")
    return await asyncio.create_subprocess_exec(sys.executable, *words, cwd=folder, env=env)


async def follow(store: Store, server: postgres.Server, processes: list[Process], whole: int) -> str:
    """Watch from one tenth to the end."""
    began: tuple[float, int, tuple[float, float]] | None = None
    while (count := await store.read(done)) < whole:
        if began is None and count >= whole // 10:
            began = time.monotonic(), count, processor_seconds(processes, server)
        await asyncio.sleep(LOOK_EVERY)
    assert began is not None
    took, number = time.monotonic() - began[0], whole - began[1]
    ours, theirs = processor_seconds(processes, server)
    cost = [1000 * (after - before) / number for after, before in zip((ours, theirs), began[2], strict=True)]
    rate = f"{number / took:.0f} messages a second"
    return (
        f"{len(processes)} workers: {rate}; a message costs {cost[0]:.1f} ms in workers, {cost[1]:.1f} ms in PostgreSQL"
    )


def main() -> None:
    """The command."""
    words = argparse.ArgumentParser(description="throughput of workers on PostgreSQL")
    words.add_argument("--lifters", type=int, default=60)
    words.add_argument("--each", type=int, default=10)
    words.add_argument("--workers", type=int, nargs="+", default=[1, 2])
    asked = words.parse_args()
    with postgres.serving(durable=True) as server:
        for workers in asked.workers:
            print(asyncio.run(measure(server, workers, asked.lifters, asked.each)), flush=True)


if __name__ == "__main__":
    main()
