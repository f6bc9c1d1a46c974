"""What is done to the service: one function a fault. Each gives back how many answers may have been told twice.

The service has to come through by itself; only a process that ended is started again.
"""

import asyncio
import resource
import sqlite3
from collections.abc import Awaitable, Callable
from contextlib import closing, suppress
from dataclasses import dataclass
from functools import partial
from itertools import pairwise
from typing import Final

import aiohttp

from tests.bot.api_stub import Drop, Garble, Refuse
from tests.bot.api_updates import TOKEN
from tests.faults.gym import FIRST, Gym, Stuck
from tests.faults.ledger import account

IN_FLIGHT: Final = 16
"""Sends under way at most: as many may have arrived unmarked when a process is killed (bot/outbox.py)."""

READ_ONLY_STARTS: Final = 3
"""Starts on a store that may not be written: each has to end by itself."""

AT_START: Final = 0.15
"""Share of the kills that come while the service starts; the others come while it works."""

Trial = Callable[[Gym], Awaitable[int]]


async def finished(gym: Gym) -> bool:
    """Whether nothing is left to do."""
    return (await account(gym)).well


async def kills(gym: Gym) -> int:
    """SIGKILL at random points, again and again: most while it works, some while it starts."""
    reports = gym.reports()
    times = int(gym.more["FAULTS_KILLS"])
    cuts = [round(len(reports) * at / (times + 1)) for at in range(times + 2)]
    for start, end in pairwise(cuts[:-1]):
        await gym.push(reports[start:end])
        before = len(gym.api.calls)
        await gym.open()
        if gym.dice.random() < AT_START:
            await asyncio.sleep(gym.dice.uniform(0.0, 3.0))
        else:
            last_call = before + gym.dice.randint(2, 4 + 3 * (end - start))
            await gym.until(partial(_called_or_finished, gym, last_call))
            await asyncio.sleep(gym.dice.choice([0.0, gym.dice.uniform(0.0, 0.1)]))
        await gym.kill()
    await gym.push(reports[cuts[-2] :])
    await gym.open()
    await gym.until(lambda: finished(gym))
    return times * IN_FLIGHT


async def _called_or_finished(gym: Gym, calls: int) -> bool:
    """Whether the API was called so often, known at that moment; or nothing is left to do: it is killed while idle."""
    with suppress(TimeoutError):
        async with asyncio.timeout(3):
            await gym.api.until(lambda: len(gym.api.calls) >= calls)
            return True
    return await finished(gym)


async def disk_full(gym: Gym) -> int:
    """No room for the store to grow, and then there is."""
    reports = gym.reports()
    await gym.open()
    await gym.push(reports[:10])
    await gym.until(lambda: finished(gym))
    size = max(gym.file.stat().st_size, gym.file.with_name("gym.db-wal").stat().st_size)
    for process in gym.running:
        resource.prlimit(process.pid, resource.RLIMIT_FSIZE, (size, resource.RLIM_INFINITY))
    await gym.push(reports[10:])
    await _until_logged(gym, "store_failed")
    await asyncio.sleep(2)
    for process in gym.running:
        if process.returncode is None:
            resource.prlimit(process.pid, resource.RLIMIT_FSIZE, (resource.RLIM_INFINITY, resource.RLIM_INFINITY))
    await gym.until(lambda: finished(gym))
    return gym.restarts * IN_FLIGHT


async def store_read_only(gym: Gym) -> int:
    """The store's folder and file may only be read: it says so and ends; mended, it goes on."""
    reports = gym.reports()
    await gym.push(reports)
    gym.file.chmod(0o444)
    gym.folder.chmod(0o555)
    for _ in range(READ_ONLY_STARTS):
        await gym.must_fail("serve", bound=True)
    gym.folder.chmod(0o755)
    gym.file.chmod(0o600)
    await gym.open()
    await gym.until(lambda: finished(gym))
    return 0


async def store_locked(gym: Gym) -> int:
    """Another program holds the store's write lock for longer than anybody waits for it."""
    reports = gym.reports()
    await gym.open()
    await gym.push(reports[:10])
    await gym.until(lambda: finished(gym))
    with closing(sqlite3.connect(gym.file, isolation_level=None)) as conn:
        conn.execute("BEGIN IMMEDIATE")
        await gym.push(reports[10:])
        await _until_logged(gym, "store_failed")
        conn.execute("ROLLBACK")
    await gym.until(lambda: finished(gym))
    return gym.restarts * IN_FLIGHT


async def clock_jumps(gym: Gym) -> int:
    """The machine's clock is put forward a day, back two, forward a week, a second at a time in between."""
    reports = gym.reports()
    file = gym.folder / "clock"
    step = len(reports) // 4
    for at, seconds in enumerate((0, 86_400, -172_800, 604_800)):
        file.write_text(str(seconds))
        if not at:
            await gym.open()
        await gym.push(reports[at * step : (at + 1) * step if at < 3 else None])
        await asyncio.sleep(1)
    file.write_text("0")
    await gym.until(lambda: finished(gym))
    return 0


async def network_cut(gym: Gym) -> int:
    """The API is gone for some seconds, three times."""
    reports = gym.reports()
    port = gym.api.port
    await gym.open()
    for at in range(3):
        await gym.push(reports[at * len(reports) // 3 : (at + 1) * len(reports) // 3])
        await gym.api.until(lambda at=at: len(gym.api.sent) > 5 * at)  # type: ignore[misc]
        await gym.api.stop()
        await asyncio.sleep(2)
        await gym.api.start(port)
    await gym.until(lambda: finished(gym))
    return 3 * IN_FLIGHT


async def reply_lost(gym: Gym) -> int:
    """Every third send arrives, and the API's answer to it is lost."""
    reports = gym.reports()
    gym.api.fail("sendMessage", *([None, None, Drop(accepted=True)] * 8))
    await gym.open()
    await gym.push(reports)
    await gym.until(lambda: _quiet(gym))
    return 8


async def flood_of_429(gym: Gym) -> int:
    """The API says again and again that it is asked too often: of one chat, and of many at a time."""
    reports = gym.reports()
    told = Refuse(429, "Too Many Requests: retry after 1", {"retry_after": 1})
    gym.api.fail("sendMessage", *([told] * 12), *([None, told] * 12))
    await gym.open()
    await gym.push(reports)
    await gym.until(lambda: finished(gym))
    return 0


async def pages_of_502(gym: Gym) -> int:
    """A proxy answers in the API's place: pages of HTML, on the way in and on the way out."""
    reports = gym.reports()
    page = Garble(b"<html><body><h1>502 Bad Gateway</h1></body></html>", 502)
    gym.api.fail("getUpdates", page, page)
    # No more than are used up before the first of them is tried once more: a letter is sent twice at most.
    gym.api.fail("sendMessage", *([page] * 5))
    await gym.open()
    await gym.push(reports)
    await gym.until(lambda: _quiet(gym))
    return 0


async def hostile_updates(gym: Gym) -> int:
    """Malformed, deep, huge and hostile updates among the good ones."""
    reports = gym.reports()
    odd: list[object] = [None, [], "x", 7, {"message": 5}, {"message": {"chat": {"id": FIRST}}}, {"message": {}}]
    odd += [{"update_id": "7"}, {"update_id": -1}, {"message": {"chat": {"id": 2**70}, "text": "squat 60x8"}}]
    odd += [{"message": {"message_id": 1, "date": 0, "chat": {"id": FIRST, "type": "private"}, "text": "x" * 100_000}}]
    deep: object = 1
    for _ in range(400):
        deep = [deep]
    odd += [{"callback_query": deep}, {"edited_message": {"text": "\ud800"}}, {"my_chat_member": {"chat": None}}]
    await gym.open()
    for at, report in enumerate(reports):
        await gym.api.push(odd[at % len(odd)])
        await gym.push([report])
    await gym.until(lambda: finished(gym))
    return 0


async def two_pollers(gym: Gym) -> int:
    """Somebody else asks for the updates of the same bot; and a second service wants the same store."""
    reports = gym.reports()
    await gym.open()
    ask = f"http://127.0.0.1:{gym.api.port}/bot{TOKEN}/getUpdates"
    async with aiohttp.ClientSession() as session:
        for at in range(4):
            await gym.push(reports[at * len(reports) // 4 : (at + 1) * len(reports) // 4])
            async with session.post(ask, data={"timeout": 0}) as answer:
                await answer.read()
            await asyncio.sleep(1)
    if gym.url.startswith("sqlite"):
        await gym.must_fail("serve")
    await gym.until(lambda: finished(gym))
    return 0


async def slow_api(gym: Gym) -> int:
    """Every send takes two seconds."""
    gym.api.delay = 2.0
    await gym.open()
    await gym.push(gym.reports())
    await gym.until(lambda: finished(gym))
    return 0


async def brought_while_locked(gym: Gym) -> int:
    """Updates are brought to the webhook, each twice, while the store is locked: told to come later, they do."""
    reports = gym.reports()
    await gym.open()
    await gym.api.until(lambda: gym.api.hook is not None)
    gym.pushed += reports
    waiting = [{"update_id": 1 + at, **report.update} for at, report in enumerate(reports) for _ in range(2)]
    later = 0
    headers = {"X-Telegram-Bot-Api-Secret-Token": gym.more["RUNGBOOK_SECRET"]}
    where = f"http://{gym.more['RUNGBOOK_LISTEN']}/hook"
    async with aiohttp.ClientSession(headers=headers) as session:
        with closing(sqlite3.connect(gym.file, isolation_level=None)) as conn:
            conn.execute("BEGIN IMMEDIATE")
            async with session.post(where, json=waiting[0]) as answer:
                later += answer.status == 503 and "Retry-After" in answer.headers
            conn.execute("ROLLBACK")
        for update in waiting:
            async with session.post(where, json=update) as answer:
                if answer.status != 200:
                    raise Stuck(f"an update was answered with {answer.status}")
    if not later:
        raise Stuck("a locked store was not told as 503")
    await gym.until(lambda: finished(gym))
    return 0


async def _quiet(gym: Gym) -> bool:
    """Whether all is done, and nothing doubtful is still to be sent once more."""
    return await finished(gym) and await gym.settled()


async def _until_logged(gym: Gym, event: str) -> None:
    async def reached() -> bool:
        return gym.logged(event) > 0 or gym.restarts > 0

    await gym.until(reached)


@dataclass(frozen=True)
class Row:
    """One line of the table."""

    name: str
    trial: Trial
    stores: tuple[str, ...] = ("sqlite", "postgres")


ONLY_FILE: Final = ("sqlite",)

ROWS: Final = (
    Row("SIGKILL at random points", kills),
    Row("disk full", disk_full, ONLY_FILE),
    Row("store read-only", store_read_only, ONLY_FILE),
    Row("store locked by another", store_locked, ONLY_FILE),
    Row("clock jumps", clock_jumps),
    Row("network cut", network_cut),
    Row("reply lost after delivery", reply_lost),
    Row("429 storm", flood_of_429),
    Row("502 pages", pages_of_502),
    Row("malformed and hostile updates", hostile_updates),
    Row("two pollers", two_pollers),
    Row("slow API", slow_api),
    Row("webhook, store locked", brought_while_locked, ONLY_FILE),
)
