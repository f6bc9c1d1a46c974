"""Two measurements of the program without a crowd: its start on a store, and a line typed in the terminal."""

import asyncio
import compileall
import json
import os
import sys
import time
from contextlib import AsyncExitStack
from dataclasses import dataclass, field
from pathlib import Path

from bot.bootstrap import parts, start_line
from bot.channels import terminal
from bot.clock import now
from bot.intake import Intake
from bot.outbox import Outbox, Pace
from bot.ports import Delivery, Parcel, RawUpdate, Sent
from bot.store import inbox
from bot.store.engine import Store
from bot.store.outbox import Reach
from tests.bench.load.stores import FIRST_USER, url_of
from tests.bench.load.talk import gym_of_today, texts, update
from tests.bench.load.world import World, fresh_number
from tests.bot.api_stub import BotApi
from tests.bot.api_updates import TOKEN

TOP = Path(__file__).resolve().parents[3]

LINES = 10
"""Typed in the terminal, as many as a session has sets; the first folds what was never folded and is not counted."""


async def to_first_reply(store: Path) -> tuple[float, float]:
    """Seconds, in all and of a processor, from starting ``rungbook serve`` until a waiting message has its answer.

    The modules are compiled before, as the set-up leaves them (deploy/venv.sh).
    """
    for name in ("bot", "core"):
        compileall.compile_dir(TOP / name, quiet=1)
    async with BotApi(TOKEN, fresh_number()) as api:
        await api.push(update(0, "what's next?", int(now().timestamp())))
        settings = {"RUNGBOOK_TOKEN": TOKEN, "RUNGBOOK_API_URL": api.base_url, "RUNGBOOK_STORE": url_of(store)}
        began = time.perf_counter()
        child = await asyncio.create_subprocess_exec(
            sys.executable, "-m", "bot", "serve", env=os.environ | settings, stderr=asyncio.subprocess.DEVNULL
        )
        try:
            await asyncio.wait_for(api.until(lambda: bool(api.sent)), 60)
            return time.perf_counter() - began, World(api, child.pid).processor_seconds()
        finally:
            child.terminate()
            await child.wait()


class Shown:
    """A terminal that notes nothing but that something was shown."""

    async def send(self, _parcel: Parcel) -> Delivery:
        """Show it."""
        return Sent()


@dataclass
class Terminal:
    """One lifter at a terminal on a store of their own, and what each line took: in all, and of a processor."""

    store: Store
    number: int = 0
    took: list[tuple[float, float]] = field(default_factory=list)

    def __post_init__(self) -> None:
        self._post = Outbox(self.store, Shown(), Reach(terminal.NAME), now, Pace())
        self._intake = Intake(
            self.store, parts({terminal.NAME: terminal.open_update}, start_line), now, self._post.wake
        )

    async def say(self, words: str) -> None:
        """Type a line, wait for the answer."""
        self.number += 1
        body = {"user": FIRST_USER, "private": True, "message": self.number, "text": words}
        raw = RawUpdate(terminal.NAME, self.number, FIRST_USER, json.dumps(body))
        began = time.perf_counter(), time.process_time()
        await self._intake.keep((raw,))
        await self._intake.settle()
        await self._post.drain()
        self.took.append((time.perf_counter() - began[0], time.process_time() - began[1]))


async def in_terminals(urls: list[str]) -> list[list[tuple[float, float]]]:
    """What each line took the first lifter of each store, line by line in turns, through the real pass."""
    async with AsyncExitStack() as stack:
        seats = [Terminal(await stack.enter_async_context(await Store.open(url))) for url in urls]
        for seat in seats:
            seat.number = await seat.store.read(lambda conn: inbox.last_update_id(conn, terminal.NAME))
        for words in texts(gym_of_today(), 0, LINES):
            for seat in seats:
                await seat.say(words)
    return [seat.took[1:] for seat in seats]
