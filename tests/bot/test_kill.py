"""Killed in the middle of its work again and again, the service loses no set, doubles none, and answers every message.

A real process against the loopback Bot API: SIGKILL at seeded random points, so nothing can be tidied up on the way.
"""

import asyncio
import json
import os
import random
import signal
import sqlite3
import sys
from collections.abc import Callable, Iterator
from contextlib import closing
from dataclasses import dataclass
from pathlib import Path

import pytest

from tests.bot.api_stub import BotApi
from tests.bot.api_updates import TOKEN, text

LIFTERS = 50
EACH = 10
KILLS = 10
FIRST = 1000001
CHATS = range(FIRST, FIRST + LIFTERS)
SECRET = TOKEN.partition(":")[2]
PATIENCE = 150
"""Seconds after which one life of the service counts as stuck."""


@dataclass(frozen=True)
class Report:
    """One message of a lifter: a set that no other message of the chat reports."""

    chat: int
    number: int

    @property
    def kg(self) -> float:
        return 40 + 2.5 * self.number

    @property
    def update(self) -> dict[str, object]:
        return text(self.chat, f"bench {self.kg:g} kg x 8", 1 + self.number)


class Service:
    """``rungbook serve`` as a process of its own. Its output is kept in files."""

    def __init__(self, folder: Path, api: BotApi) -> None:
        self.folder = folder
        self.api = api
        self.store = folder / "gym.db"
        self.env = {name: value for name, value in os.environ.items() if not name.startswith("RUNGBOOK_")}
        self.env |= {"RUNGBOOK_TOKEN": TOKEN, "RUNGBOOK_API_URL": api.base_url, "RUNGBOOK_STORE": self.url}
        self.env |= {"RUNGBOOK_LOG": "debug", "OPENBLAS_NUM_THREADS": "1"}

    @property
    def url(self) -> str:
        return f"sqlite+aiosqlite:///{self.store}"

    async def start(self, *words: str) -> asyncio.subprocess.Process:
        with (self.folder / "out.log").open("ab") as out, (self.folder / "err.log").open("ab") as err:
            return await asyncio.create_subprocess_exec(
                sys.executable, "-m", "bot", *words, cwd=self.folder, env=self.env, stdout=out, stderr=err
            )

    async def run(self, *words: str) -> None:
        process = await self.start(*words)
        assert await process.wait() == 0, self.last_words()

    async def until(self, process: asyncio.subprocess.Process, reached: Callable[[], bool]) -> None:
        """Wait until something holds at the API; fails when the process ends or PATIENCE does before it."""
        tasks = [asyncio.ensure_future(self.api.until(reached)), asyncio.ensure_future(process.wait())]
        done, late = await asyncio.wait(tasks, timeout=PATIENCE, return_when=asyncio.FIRST_COMPLETED)
        for task in late:
            task.cancel()
        if tasks[0] in done:
            return
        if process.returncode is None:
            process.kill()
        pytest.fail(f"stuck with {unanswered(self.store, self.api)} messages unanswered: {self.last_words()}")

    def last_words(self) -> str:
        """The end of what the service wrote."""
        return (self.folder / "err.log").read_text()[-2000:]

    async def export(self, lifter: int) -> list[dict[str, object]]:
        words = ("export", "--store", self.url, "--lifter", str(lifter))
        process = await asyncio.create_subprocess_exec(
            sys.executable, "-m", "bot", *words, cwd=self.folder, env=self.env, stdout=asyncio.subprocess.PIPE
        )
        out, _ = await process.communicate()
        assert process.returncode == 0
        return [json.loads(line) for line in out.splitlines()]


def waves(rng: random.Random) -> Iterator[list[Report]]:
    """All reports in as many waves as the service has lives, the chats mixed, each chat's own in order."""
    reports = []
    for number in range(EACH):
        chats = list(CHATS)
        rng.shuffle(chats)
        reports += [Report(chat, number) for chat in chats]
    cuts = sorted(rng.sample(range(20, len(reports) - 20), KILLS))
    for start, end in zip([0, *cuts], [*cuts, len(reports)], strict=True):
        yield reports[start:end]


def unanswered(store: Path, api: BotApi) -> int:
    """How many messages are not yet kept, or have an answer that their chat does not show."""
    shown = {(message.chat, message.text) for message in api.sent}
    with closing(sqlite3.connect(store)) as conn:
        rows = conn.execute(
            "SELECT inbox.seq, inbox.chat, outbox.text FROM inbox JOIN outbox ON outbox.reply_to = inbox.seq"
        ).fetchall()
    answered = {seq for seq, _, _ in rows} - {seq for seq, chat, told in rows if (chat, told) not in shown}
    return LIFTERS * EACH - len(answered)


async def live(service: Service, api: BotApi, wave: list[Report], rng: random.Random) -> None:
    """One life of the service, ended at some call that must come, or a moment after it."""
    await api.push(*(report.update for report in wave))
    last_call = len(api.calls) + rng.randint(1, max(2, len(wave)))
    process = await service.start("serve")
    await service.until(process, lambda: len(api.calls) >= last_call)
    asyncio.get_running_loop().call_later(rng.choice([0.0, rng.uniform(0.0, 0.1)]), process.kill)
    assert await process.wait() == -signal.SIGKILL


async def finish(service: Service, api: BotApi, wave: list[Report]) -> None:
    """The last life: it works off everything that is left, and ends when it is asked to."""
    await api.push(*(report.update for report in wave))
    process = await service.start("serve")
    await service.until(process, lambda: len(api.sent) >= LIFTERS * EACH and not unanswered(service.store, api))
    process.terminate()
    assert await process.wait() == 0


@pytest.mark.slow
async def test_ten_kills_lose_nothing(tmp_path: Path) -> None:
    rng = random.Random(20)
    async with BotApi(TOKEN) as api:
        service = Service(tmp_path, api)
        await service.run("demo", "--store", service.url, "--lifters", str(LIFTERS), "--weeks", "0")
        *lives, rest = waves(rng)
        for wave in lives:
            await live(service, api, wave, rng)
        await finish(service, api, rest)
        assert_every_set_once_in_order(service.store)
        assert_every_message_answered(service.store, api)
        await assert_export_agrees(service)
    assert_no_token_anywhere(tmp_path)


def assert_every_set_once_in_order(store: Path) -> None:
    """Each lifter's standing sets are those of their messages: all of them, once, in the order sent."""
    expected = [(40 + 2.5 * number, 8) for number in range(EACH)]
    with closing(sqlite3.connect(store)) as conn:
        for chat in CHATS:
            rows = conn.execute(
                "SELECT act.body FROM act JOIN address USING (person) "
                "WHERE address.channel = 'telegram' AND address.user = ? AND act.kind = 'set' AND act.state = 'kept' "
                "ORDER BY act.message, act.place",
                (chat,),
            )
            acts = [json.loads(body) for (body,) in rows]
            assert [(act["load"]["kg"], act["reps"]) for act in acts] == expected, chat
        states = conn.execute("SELECT state, count(*) FROM inbox WHERE channel = 'telegram' GROUP BY state").fetchall()
        assert states == [("done", LIFTERS * EACH)]


def assert_every_message_answered(store: Path, api: BotApi) -> None:
    """Each answer in the store is marked as the very message that its chat shows, and every message has one."""
    shown = {(message.chat, message.message_id, message.text) for message in api.sent}
    with closing(sqlite3.connect(store)) as conn:
        rows = conn.execute(
            "SELECT inbox.chat, outbox.message_id, outbox.text, inbox.seq FROM outbox "
            "JOIN inbox ON inbox.seq = outbox.reply_to"
        ).fetchall()
        assert {row[:3] for row in rows} <= shown
        assert len({row[3] for row in rows}) == LIFTERS * EACH


async def assert_export_agrees(service: Service) -> None:
    """The command says the same as the tables; asked for one lifter, because each call is a process of its own."""
    sets = await service.export(CHATS[-1])
    assert [one["load"] for one in sets] == [{"kind": "total", "kg": 40 + 2.5 * number} for number in range(EACH)]
    assert [one["state"] for one in sets] == ["kept"] * EACH
    assert len({one["message"] for one in sets}) == EACH


def assert_no_token_anywhere(folder: Path) -> None:
    """Neither the output nor any file of the store holds the token."""
    files = [path for path in folder.rglob("*") if path.is_file()]
    assert {"out.log", "err.log", "gym.db"} <= {path.name for path in files}
    assert [path.name for path in files if SECRET.encode() in path.read_bytes()] == []
