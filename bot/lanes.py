"""Hands chats with something to work to the workers, through a queue in the database: procrastinate.

A job says "this chat has something waiting", never what: the messages are in the inbox. Jobs of one chat share a lock,
so that one worker has it at a time; a chat whose job waits already needs no second one. What a dead worker held is
given to another. Knows no message.
"""

import asyncio
from collections.abc import Awaitable, Callable, Iterable, Mapping
from typing import Final

import procrastinate
import structlog
from procrastinate.exceptions import AlreadyEnqueued, ConnectorException, UniqueViolation
from procrastinate.job_context import JobContext
from procrastinate.jobs import DeleteJobCondition, Job, Status
from psycopg import Error as DriverError

from bot.log import fault
from bot.store.inbox import Lane
from bot.store.queue_steps import SCHEMA
from bot.store.urls import BOT, parsed

Work = Callable[[Lane], Awaitable[None]]

CHATS_AT_ONCE: Final = 6
"""Chats that one worker works at the same time."""

HEARTBEAT: Final = 2.0
"""Seconds between two signs of life of a worker."""

DEAD_AFTER: Final = 8.0
"""Seconds without a sign of life after which a worker's chats are given to others."""

AGAIN: Final = 2.0
"""Seconds before the database is tried again when it does not answer."""

_TASK: Final = "work"

log = structlog.get_logger(__name__)


class Lanes:
    """The queue of one database. ``works`` says, by a bot's name, how a chat of its is worked."""

    def __init__(self, url: str, works: Mapping[str, Work]) -> None:
        self._works = works
        self._connector = procrastinate.PsycopgConnector(
            conninfo=libpq(url), kwargs={"options": f"-c search_path={SCHEMA}"}, min_size=1, max_size=4
        )
        self._app = procrastinate.App(connector=self._connector)
        self._task = self._app.task(name=_TASK, queue=_TASK, pass_context=True)(self._work)
        self._at_work: set[int | None] = set()
        self._we: set[int | None] = set()
        self._left: set[int | None] = set()

    async def __aenter__(self) -> "Lanes":
        await self._app.open_async()
        return self

    async def __aexit__(self, *_: object) -> None:
        await self._app.close_async()

    async def hand_on(self, bot: str, lanes: Iterable[Lane]) -> None:
        """Ask for these chats of a bot to be worked. What they wait for must be committed."""
        for channel, chat in dict.fromkeys(lanes):
            key = f"{bot}/{channel}/{chat}"
            try:
                asked = self._task.configure(lock=key, queueing_lock=key)
                await asked.defer_async(bot=bot, channel=channel, chat=chat)
            except AlreadyEnqueued:
                continue

    async def run(self) -> None:
        """Work what others hand on, for ever. A database that does not answer is tried again."""
        while True:
            try:
                await self._app.run_worker_async(
                    queues=[_TASK],
                    concurrency=CHATS_AT_ONCE,
                    install_signal_handlers=False,
                    delete_jobs=DeleteJobCondition.ALWAYS,
                    fetch_job_polling_interval=AGAIN,
                    shutdown_graceful_timeout=10.0,
                    update_heartbeat_interval=HEARTBEAT,
                    stalled_worker_timeout=DEAD_AFTER,
                )
            except (ConnectorException, DriverError, ExceptionGroup) as trouble:
                fault(log, "queue_failed", trouble)
            await asyncio.sleep(AGAIN)

    async def take_up(self) -> None:
        """Give to others what dead workers hold, and what we hold by mistake."""
        try:
            stalled = await self._app.job_manager.get_stalled_jobs(seconds_since_heartbeat=DEAD_AFTER)
            for job in [*stalled, *await self._left_by_us()]:
                if await self._given_on(job):
                    log.warning("chat_taken_up")
        except (ConnectorException, DriverError) as trouble:
            fault(log, "queue_failed", trouble)

    async def _left_by_us(self) -> list[Job]:
        """Jobs that are ours in the database and done here: to say so failed, as the database was away just then.

        Seen at two looks in a row, because a job is also so for a moment as it begins and ends.
        """
        held = await self._app.job_manager.list_jobs_async(queue=_TASK, status=Status.DOING.value) if self._we else []
        idle = {job.id: job for job in held if job.worker_id in self._we and job.id not in self._at_work}
        again = [job for key, job in idle.items() if key in self._left]
        self._left = set(idle)
        return again

    async def tell(self, channel: str, word: str) -> None:
        """Say a word to every process that listens on a channel of the database."""
        await self._connector.execute_query_async("SELECT pg_notify(%(channel)s, %(word)s)", channel=channel, word=word)

    async def _given_on(self, job: Job) -> bool:
        """False: another process was quicker."""
        try:
            await self._app.job_manager.retry_job(job)
        except UniqueViolation:  # the chat waits anew already
            if job.id is not None:
                await self._app.job_manager.finish_job_by_id_async(job.id, Status.FAILED, delete_job=True)
        except ConnectorException:
            return False
        return True

    async def _work(self, context: JobContext, bot: str, channel: str, chat: int) -> None:
        work = self._works.get(bot)
        if work is None:
            log.warning("bot_unknown")  # its messages wait in its inbox until a worker knows it
            return
        self._we.add(context.job.worker_id)
        self._at_work.add(context.job.id)
        try:
            await work((channel, chat))
        finally:
            self._at_work.discard(context.job.id)


def libpq(url: str) -> str:
    """A store's URL as the driver itself reads it."""
    found = parsed(url).set(drivername="postgresql").difference_update_query([BOT])
    return found.render_as_string(hide_password=False)
