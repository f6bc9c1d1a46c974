"""The chat world of the bench: a loopback API in this process, the one measured in another, and what it takes."""

import asyncio
import os
import sys
import time
from collections import Counter
from collections.abc import AsyncIterator, Iterable
from contextlib import asynccontextmanager
from pathlib import Path

from bot.clock import now
from tests.bench.load.stores import FIRST_USER
from tests.bench.load.talk import update
from tests.bot.api_stub import BotApi
from tests.bot.api_updates import TOKEN

PATIENCE = 170.0
"""Seconds after which something hangs."""


def fresh_number() -> int:
    """A number for a first update that no store has met before."""
    return int(now().timestamp()) * 100_000


class World:
    """Lifters who send, and what came back to them."""

    def __init__(self, api: BotApi, pid: int) -> None:
        self._api = api
        self._pid = pid
        self._sent: Counter[int] = Counter()
        self._number = 0
        self._seen = 0
        self._counted: Counter[int] = Counter()
        self._lacking: set[int] = set()

    async def say(self, lines: Iterable[tuple[int, str]]) -> float:
        """Send (lifter, words), all at once; the seconds until each has its answer."""
        whole = []
        for number, words in lines:
            self._number += 1
            self._sent[number] += 1
            self._lacking.add(number)
            whole.append(update(number, words, self._number))
        start = time.perf_counter()
        await self._api.push(*whole)
        await asyncio.wait_for(self._api.until(self._all_answered), PATIENCE)
        return time.perf_counter() - start

    async def say_at(self, lines: list[tuple[int, str]], every: float) -> list[float]:
        """Send one each ``every`` seconds, each lifter's next only after the last was answered; the seconds of each."""
        async with asyncio.TaskGroup() as tasks:
            began = asyncio.get_running_loop().time()
            asked = []
            for place, (number, words) in enumerate(lines):
                await asyncio.sleep(max(0.0, began + place * every - asyncio.get_running_loop().time()))
                asked.append(tasks.create_task(self._ask(number, words)))
        return [one.result() for one in asked]

    async def _ask(self, number: int, words: str) -> float:
        self._number += 1
        self._sent[number] += 1
        wanted = self._sent[number]
        start = time.perf_counter()
        await self._api.push(update(number, words, self._number))
        await asyncio.wait_for(self._api.until(lambda: self._came(number) >= wanted), PATIENCE)
        return time.perf_counter() - start

    def _came(self, number: int) -> int:
        return self._answers()[FIRST_USER + number]

    def _all_answered(self) -> bool:
        """Looks only at those who still lacked an answer, so that many lifters cost no more than few."""
        came = self._answers()
        self._lacking = {number for number in self._lacking if came[FIRST_USER + number] < self._sent[number]}
        return not self._lacking

    def _answers(self) -> Counter[int]:
        """Counts what came since the last look, so that a look costs the same however much came."""
        for one in self._api.sent[self._seen :]:
            self._counted[one.chat] += 1
        self._seen = len(self._api.sent)
        return self._counted

    def processor_seconds(self) -> float:
        """What the measured process used of a processor so far."""
        fields = Path(f"/proc/{self._pid}/stat").read_text().rpartition(") ")[2].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

    def megabytes(self) -> float:
        """What the measured process holds in memory now."""
        pages = int(Path(f"/proc/{self._pid}/statm").read_text().split()[1])
        return pages * os.sysconf("SC_PAGE_SIZE") / 2**20


@asynccontextmanager
async def measured(*module: str) -> AsyncIterator[World]:
    """Run a module of ours as the bot: its arguments are the API's URL, the token and those given."""
    name, *more = module
    async with BotApi(TOKEN, fresh_number()) as api:
        words = [sys.executable, "-m", name, api.base_url, TOKEN, *more]
        child = await asyncio.create_subprocess_exec(*words, stderr=None)
        try:
            await asyncio.wait_for(api.until(lambda: bool(api.called("getupdates"))), PATIENCE)
            yield World(api, child.pid)
        finally:
            child.terminate()
            await child.wait()
