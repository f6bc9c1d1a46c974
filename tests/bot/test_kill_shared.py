"""Killed again and again, a service of five processes on PostgreSQL loses no set, doubles none, and keeps every order.

Real processes against the loopback Bot API and a real PostgreSQL: an intake, a sender, a clock and two workers. SIGKILL
meets each of them at seeded random points while messages come in; a new one takes its place.
"""

import asyncio
import json
import os
import random
import signal
import sys
from asyncio.subprocess import Process
from collections import Counter
from collections.abc import AsyncIterator, Callable
from contextlib import asynccontextmanager
from itertools import cycle
from pathlib import Path

import pytest

from bot.lanes import DEAD_AFTER
from bot.outbox import MOST_AT_ONCE
from tests.bot.api_stub import BotApi
from tests.bot.api_updates import TOKEN, text
from tests.bot.postgres import Server

LIFTERS = 10
EACH = 6
ROLES = ("intake", "sender", "clock", "worker", "worker")
KILLS = int(os.environ.get("RUNGBOOK_TEST_KILLS", "4"))
"""A dead worker's chats wait for DEAD_AFTER seconds, so that each kill takes its time."""
VICTIMS = [
    role for role, _ in zip(cycle(("worker", "sender", "worker", "intake", "clock")), range(KILLS), strict=False)
]
CHATS = range(1000001, 1000001 + LIFTERS)
DATABASE = "gym_of_kills"
PATIENCE = 120
"""Seconds without a message after which the service counts as stuck."""


class Service:
    """The processes of a service, by role."""

    def __init__(self, folder: Path, api: BotApi, url: str) -> None:
        self.folder = folder
        self.api = api
        self.running: list[tuple[str, Process]] = []
        self.env = {name: value for name, value in os.environ.items() if not name.startswith("RUNGBOOK_")}
        self.env |= {"RUNGBOOK_TOKEN": TOKEN, "RUNGBOOK_API_URL": api.base_url, "RUNGBOOK_STORE": url}
        self.env |= {"OPENBLAS_NUM_THREADS": "1"}

    async def call(self, *words: str) -> Process:
        with (self.folder / "err.log").open("ab") as err:
            return await asyncio.create_subprocess_exec(
                sys.executable, "-m", "bot", *words, cwd=self.folder, env=self.env, stderr=err
            )

    async def start(self, role: str) -> None:
        self.running.append((role, await self.call("serve", "--role", role)))

    async def kill_one(self, role: str, rng: random.Random) -> None:
        """SIGKILL for one process of that role; another takes its place."""
        one = rng.choice([entry for entry in self.running if entry[0] == role])
        one[1].kill()
        assert await one[1].wait() == -signal.SIGKILL
        self.running.remove(one)
        await self.start(role)

    async def until(self, reached: Callable[[], bool]) -> None:
        try:
            async with asyncio.timeout(PATIENCE):
                await self.api.until(reached)
        except TimeoutError:
            pytest.fail(f"stuck after {len(self.api.sent)} answers: {(self.folder / 'err.log').read_text()[-2000:]}")

    async def stop(self) -> None:
        """Ask all to stop; each says that all is well, or was begun so lately that nobody heard."""
        for _, process in self.running:
            process.terminate()
        assert {await process.wait() for _, process in self.running} <= {0, -signal.SIGTERM}


@asynccontextmanager
async def serving(folder: Path, server: Server) -> AsyncIterator[Service]:
    url = server.create(DATABASE)
    async with BotApi(TOKEN) as api:
        service = Service(folder, api, url)
        try:
            assert await (await service.call("demo", "--lifters", str(LIFTERS), "--weeks", "0")).wait() == 0
            for role in ROLES:
                await service.start(role)
            yield service
        finally:
            for _, process in service.running:
                if process.returncode is None:
                    process.kill()
                    await process.wait()
            server.drop(DATABASE)


@pytest.mark.slow
async def test_kills_of_every_part_lose_nothing_and_double_nothing(postgresql: Server, tmp_path: Path) -> None:
    rng = random.Random(8)
    async with serving(tmp_path, postgresql) as service:
        api = service.api
        messages = [(chat, number) for number in range(EACH) for chat in rng.sample(list(CHATS), LIFTERS)]
        await api.push(*(text(chat, f"bench {40 + 2.5 * number:g} kg x 8", 1 + number) for chat, number in messages))
        for role in VICTIMS:
            goal = len(shown(api)) + rng.randint(2, 9)
            await service.until(lambda goal=goal: len(shown(api)) >= goal)  # type: ignore[misc]
            await service.kill_one(role, rng)
        await service.until(lambda: len(shown(api)) >= len(messages) and not unanswered(postgresql, api))
        await service.stop()
        assert_every_set_once_in_order(postgresql)
        assert_repeats_are_few(postgresql, api)
        assert_queue_is_empty(postgresql)
    assert TOKEN.partition(":")[2].encode() not in (tmp_path / "err.log").read_bytes()


def shown(api: BotApi) -> set[tuple[int, int]]:
    return {(message.chat, message.message_id) for message in api.sent}


def answers(server: Server) -> list[tuple[int, int, str, str]]:
    """Per answer: the message it answers, its chat, its words, its state."""
    query = "SELECT inbox.seq, inbox.chat, outbox.text, outbox.state FROM outbox JOIN inbox ON inbox.seq = reply_to"
    with server.connect(DATABASE) as conn:
        return [tuple(row) for row in conn.execute(query)]


def unanswered(server: Server, api: BotApi) -> int:
    """Messages that have no answer, or one that is not sent yet."""
    sent = {seq for seq, _, _, state in answers(server) if state == "sent"}
    waiting = {seq for seq, _, _, state in answers(server) if state != "sent"}
    return LIFTERS * EACH - len(sent - waiting)


def assert_every_set_once_in_order(server: Server) -> None:
    expected = [(40 + 2.5 * number, 8) for number in range(EACH)]
    query = (
        "SELECT act.body FROM act JOIN address USING (person) WHERE address.channel = 'telegram' "
        "AND address.\"user\" = %s AND act.kind = 'set' AND act.state = 'kept' ORDER BY act.place"
    )
    with server.connect(DATABASE) as conn:
        for chat in CHATS:
            acts = [json.loads(body) for (body,) in conn.execute(query, (chat,))]
            assert [(act["load"]["kg"], act["reps"]) for act in acts] == expected, chat
        states = conn.execute("SELECT state, count(*) FROM inbox WHERE channel = 'telegram' GROUP BY state").fetchall()
        assert states == [("done", LIFTERS * EACH)]


def assert_repeats_are_few(server: Server, api: BotApi) -> None:
    """Every answer is shown; one that was on its way when the sender was killed may be shown twice, no other."""
    wanted = Counter((chat, words) for _, chat, words, _ in answers(server))
    seen = Counter((message.chat, message.text) for message in api.sent if message.chat in CHATS)
    assert not wanted - seen
    assert (seen - wanted).total() <= MOST_AT_ONCE * VICTIMS.count("sender")


def assert_queue_is_empty(server: Server) -> None:
    """What the dead left lying was taken up: at most a second call for a chat that is done is left, and soon gone."""
    with server.connect(DATABASE) as conn:
        (held,) = conn.execute(
            "SELECT count(*) FROM rungbook_queue.procrastinate_jobs job JOIN inbox ON inbox.state = 'waiting' "
            "WHERE job.status = 'doing'"
        ).fetchone() or (None,)
    assert held == 0
    assert DEAD_AFTER < PATIENCE
