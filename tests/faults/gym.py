"""A gym under load: its lifters' reports, the service as a process of its own, and the API that it talks to.

A service that ends with a failure is started again, as its supervisor would do it (deploy/rungbook.service).
"""

import asyncio
import ctypes
import os
import random
import signal
import sys
import time
from collections.abc import Awaitable, Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from pathlib import Path

from bot.store import outbox
from bot.store.engine import Store
from tests.bot.api_stub import BotApi
from tests.bot.api_updates import TOKEN, text

TOP = Path(__file__).resolve().parents[2]
FIRST = 1000001
PATIENCE = 300.0
"""Seconds without a sign of progress after which a gym is stuck: that a busy machine is slow is no fault. Five
processes that start at the same time on two cores which many others use were seen to take 110 s."""

ENDS_WITHIN = 120.0
"""Seconds in which a call that must fail has to be over."""

LOOK_EVERY = 0.25
CHANNEL = "telegram"


@dataclass(frozen=True)
class Report:
    """One message of a lifter: a set that no other message of the chat reports."""

    chat: int
    number: int

    @property
    def kg(self) -> float:
        """The load."""
        return 40 + 2.5 * (self.number % 10)

    @property
    def reps(self) -> int:
        """The repetitions."""
        return 6 + self.number // 10

    @property
    def update(self) -> dict[str, object]:
        """As Telegram brings it."""
        return text(self.chat, f"bench {self.kg:g} kg x {self.reps}", 1 + self.number)


class Stuck(Exception):
    """It did not come to an end in time; says how far it came."""


@dataclass
class Gym:
    """One store, one API, one service (of one process or several), and what its lifters report."""

    folder: Path
    url: str
    api: BotApi
    seed: int
    lifters: int = 12
    each: int = 6
    words: Sequence[tuple[str, ...]] = (("serve",),)
    """The calls of the service: one for each of its processes."""
    module: str = "bot"
    more: dict[str, str] = field(default_factory=dict)
    restarts: int = 0
    running: list[asyncio.subprocess.Process] = field(default_factory=list)
    _kept_up: list[asyncio.Task[None]] = field(default_factory=list)

    def __post_init__(self) -> None:
        """Its own dice."""
        self.dice = random.Random(self.seed)
        self.pushed: list[Report] = []

    @property
    def chats(self) -> range:
        """Its lifters' chats."""
        return range(FIRST, FIRST + self.lifters)

    @property
    def file(self) -> Path:
        """The file of an embedded store."""
        return self.folder / "gym.db"

    def reports(self) -> list[Report]:
        """All of them, the chats mixed, each chat's own in order."""
        found = []
        for number in range(self.each):
            chats = list(self.chats)
            self.dice.shuffle(chats)
            found += [Report(chat, number) for chat in chats]
        return found

    async def push(self, reports: Iterable[Report]) -> None:
        """The lifters write."""
        wave = list(reports)
        self.pushed += wave
        await self.api.push(*(report.update for report in wave))

    @property
    def _env(self) -> Mapping[str, str]:
        env = {name: value for name, value in os.environ.items() if not name.startswith("RUNGBOOK_")}
        env |= {"RUNGBOOK_TOKEN": TOKEN, "RUNGBOOK_API_URL": self.api.base_url, "RUNGBOOK_STORE": self.url}
        return (
            env
            | {"RUNGBOOK_LOG": "info", "OPENBLAS_NUM_THREADS": "1", "PYTHONFAULTHANDLER": "1", "PYTHONPATH": str(TOP)}
            | self.more
        )

    async def start_one(self, *words: str, bound: bool = False) -> asyncio.subprocess.Process:
        """One process of the service, its output in files. ``bound``: rights of files count, also for root."""
        with (self.folder / "out.log").open("ab") as out, (self.folder / "err.log").open("ab") as err:
            return await asyncio.create_subprocess_exec(
                sys.executable,
                *("-m", self.module, *words),
                cwd=self.folder,
                env=dict(self._env),
                stdout=out,
                stderr=err,
                preexec_fn=_obey_rights if bound else None,
            )

    async def call(self, *words: str) -> None:
        """A command that must succeed."""
        process = await self.start_one(*words)
        if await process.wait() != 0:
            raise Stuck(f"rungbook {words[0]} failed: {self.last_words()}")

    async def fill(self) -> None:
        """The lifters join."""
        module, self.module = self.module, "bot"
        await self.call("demo", "--store", self.url, "--lifters", str(self.lifters), "--weeks", "0")
        self.module = module

    async def open(self) -> None:
        """Start the service, and keep it up until ``close``."""
        self.running = [await self.start_one(*words) for words in self.words]
        self._kept_up = [asyncio.create_task(self._keep_up(at)) for at in range(len(self.running))]

    async def close(self) -> None:
        """End it as it is ended: SIGTERM, and then it has some time."""
        for task in self._kept_up:
            task.cancel()
        await asyncio.gather(*self._kept_up, return_exceptions=True)
        for process in self.running:
            if process.returncode is None:
                process.terminate()
        async with asyncio.timeout(30):
            for process in self.running:
                await process.wait()

    async def kill(self) -> None:
        """SIGKILL to every process at once; ``open`` starts them again."""
        for task in self._kept_up:
            task.cancel()
        for process in self.running:
            if process.returncode is None:
                process.send_signal(signal.SIGKILL)
        for process in self.running:
            await process.wait()

    async def _keep_up(self, at: int) -> None:
        while True:
            await self.running[at].wait()
            self.restarts += 1
            self.running[at] = await self.start_one(*self.words[at])

    async def until(self, reached: Callable[[], Awaitable[bool]], patience: float = PATIENCE) -> None:
        """Look again and again. Raises Stuck when for so long no chat was sent anything."""
        seen, at = -1, 0.0
        while not await reached():
            if len(self.api.sent) != seen:
                seen, at = len(self.api.sent), time.monotonic()
            if time.monotonic() - at > patience:
                raise Stuck(f"{seen} sent, then nothing: {self.last_words()}")
            await asyncio.sleep(LOOK_EVERY)

    async def must_fail(self, *words: str, bound: bool = False) -> None:
        """A call that has to end by itself, with 1 and without a trace. One that stays says where, and is Stuck."""
        process = await self.start_one(*words, bound=bound)
        try:
            async with asyncio.timeout(ENDS_WITHIN):
                status = await process.wait()
        except TimeoutError:
            process.send_signal(signal.SIGABRT)  # PYTHONFAULTHANDLER makes it write down what each thread does
            await process.wait()
            raise Stuck(f"it did not end: {self.last_words()}") from None
        if status != 1 or "Traceback" in self.last_words():
            raise Stuck(f"it ended with {status}: {self.last_words()}")

    async def settled(self) -> bool:
        """Whether nothing that may have arrived is still to be sent once more."""
        async with await Store.open(self.url, hold=False, create=False) as store:
            return await store.read(lambda conn: outbox.next_time(conn, 2)) is None

    def last_words(self) -> str:
        """The end of what the service wrote."""
        return (self.folder / "err.log").read_text(errors="replace")[-1500:]

    def logged(self, event: str) -> int:
        """How often an event stands in the log."""
        return (self.folder / "err.log").read_text(errors="replace").count(f'"event": "{event}"')


def _obey_rights() -> None:
    """Give up root's power to pass over the rights of files (prctl PR_CAPBSET_DROP, CAP_DAC_OVERRIDE)."""
    if os.geteuid() == 0:
        ctypes.CDLL(None).prctl(24, 1, 0, 0, 0)
