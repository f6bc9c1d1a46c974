"""The only reading of the wall clock, and the tick that looks at the agenda. What is said then, core decides."""

from collections.abc import Awaitable, Callable, Iterator
from contextlib import contextmanager
from datetime import UTC, datetime
from functools import partial
from typing import Final

import structlog
from apscheduler.schedulers.asyncio import AsyncIOScheduler
from sqlalchemy.exc import OperationalError

from bot import abreast
from bot.desk import group_posts
from bot.desk.rooms import Parts
from bot.log import fault
from bot.ports import Now
from bot.store import agenda, challenges, retention
from bot.store.engine import Store

EVERY_SECONDS: Final = 5
"""How often the agenda is looked at; a prompt an hour ahead does not mind."""

_AT_ONCE: Final = 100
_TRIES: Final = 3

log = structlog.get_logger(__name__)


def now() -> datetime:
    """The wall clock, UTC and aware."""
    return datetime.now(UTC)


class Tick:
    """One look at the agenda: what is due is said, each in a commit of its own. ``said`` is called afterwards."""

    def __init__(self, store: Store, parts: Parts, now: Now, said: Callable[[], None]) -> None:
        self._store = store
        self._parts = parts
        self._now = now
        self._said = said

    async def once(self) -> None:
        """Say what is due now."""
        moment = self._now()
        for due in await self._store.read(partial(agenda.due, now=moment, limit=_AT_ONCE)):
            try:
                await self._store.write_beside(partial(abreast.remind, parts=self._parts, due=due, now=moment))
            except OperationalError as trouble:
                fault(log, "store_failed", trouble)
                return
            except Exception as bug:  # noqa: BLE001  # one reminder's bug must not silence the others
                fault(log, "reminder_failed", bug, id=due.id, what=due.kind)
                await self._store.write(partial(agenda.failed, key=due.id, most=_TRIES))
            self._said()
        await self._challenges(moment)

    async def _challenges(self, moment: datetime) -> None:
        """Look at each challenge whose turn it is."""
        for key in await self._store.read(partial(challenges.to_look_at, before=moment - group_posts.LOOK_EVERY)):
            try:
                look = partial(group_posts.look, parts=self._parts, key=key, now=moment)
                await self._store.write(look)
            except OperationalError as trouble:
                fault(log, "store_failed", trouble)
                return
            except Exception as bug:  # noqa: BLE001  # one challenge's bug must not silence the others
                fault(log, "challenge_failed", bug, id=key)
                await self._store.write(partial(challenges.mark, key=key, looked=moment))
            self._said()

    async def tidy(self) -> None:
        """Forget what is no longer needed, piece by piece, so that nobody waits for it."""
        moment = self._now()
        while any((await self._store.write(partial(retention.purge, now=moment))).values()):
            pass


@contextmanager
def every(seconds: int, job: Callable[[], Awaitable[None]]) -> Iterator[None]:
    """Run ``job`` again and again while the block lasts; a run that takes long is not overtaken by the next."""
    # Local times are in the agenda's rows; the scheduler only counts seconds, so its own zone does not matter.
    scheduler = AsyncIOScheduler(timezone=UTC)
    scheduler.add_job(job, "interval", seconds=seconds, max_instances=1, coalesce=True, misfire_grace_time=None)
    scheduler.start()
    try:
        yield
    finally:
        scheduler.shutdown(wait=False)
