"""This process's share of a service that several processes make up: through the queue, by duties, with words between.

What came in is handed on through the queue; what one process at a time may do for a bot is a duty; that something is to
be sent is told to whoever has that duty. Opens nothing and reads no settings.
"""

import asyncio
from collections.abc import Callable, Coroutine, Iterable
from datetime import timedelta
from functools import partial
from typing import Any, Final

import structlog

from bot.clock import now
from bot.duties import CHANNEL, LOOK_EVERY, Duties, Duty
from bot.lanes import Lanes, Work
from bot.log import fault
from bot.roles import Does
from bot.running import keep_time, patiently
from bot.staff import Business, Staff, staff_for
from bot.store import inbox

Loop = Coroutine[Any, Any, object]

FORGOTTEN: Final = timedelta(seconds=10)
"""A chat that waits this long may have been handed to nobody (the process died in between): it is handed on again."""

TOLD_TOGETHER: Final = 0.02
"""Seconds within which words to other processes are gathered into one."""

log = structlog.get_logger(__name__)


class Shared:
    """The parts of this process where others have parts too: the queue, the duties, and words between processes."""

    def __init__(self, url: str, does: Does, businesses: Iterable[Business]) -> None:
        self._does = does
        works: dict[str, Work] = {}
        self.lanes = Lanes(url, works)
        self.staffs = [self._staff(one) for one in businesses]
        self._by_name = {staff.of.name: staff for staff in self.staffs}
        works.update({name: staff.intake.work_lane for name, staff in self._by_name.items()})
        self._beside: list[Callable[[], None]] = []
        self._duties: dict[str, Duty] = {}
        self._mine = Duties(url, self._duties, self._heard)
        self._to_tell: set[str] = set()
        self._told = asyncio.Event()

    def loops(self, *, polls: bool) -> list[Loop]:
        """What this process does, beside being brought updates."""
        for staff in self.staffs:
            if self._does.intake and polls:
                listen = partial(staff.intake.listen, staff.of.channel)
                self._duties[staff.duty("poller")] = partial(patiently, listen)
            if self._does.sends:
                self._duties[staff.duty("sender")] = partial(patiently, staff.post.run)
            if self._does.clock:
                look = partial(self._look, staff)
                self._duties[staff.duty("clock")] = partial(keep_time, look, staff.tick.tidy)
        running: list[Loop] = [self._mine.run(), self._tell(), self._pulse()]
        return [*running, self.lanes.run()] if self._does.works else running

    def also_wake(self, wake: Callable[[], None]) -> None:
        """Something else of this process sends too."""
        self._beside.append(wake)

    def _staff(self, one: Business) -> Staff:
        return staff_for(one, partial(self._answered, one.name), partial(self.lanes.hand_on, one.name))

    def _answered(self, name: str) -> None:
        """Something may be sent: by us, or by whoever has that duty."""
        self._wake_beside()
        if self._mine.has(self._by_name[name].duty("sender")):
            self._by_name[name].post.wake()
        else:
            self._to_tell.add(name)
            self._told.set()

    def _heard(self, name: str) -> None:
        staff = self._by_name.get(name)
        if staff is not None:
            staff.post.wake()
            self._wake_beside()

    def _wake_beside(self) -> None:
        for wake in self._beside:
            wake()

    async def _tell(self) -> None:
        while True:
            await self._told.wait()
            self._told.clear()
            names, self._to_tell = self._to_tell, set()
            try:
                for name in names:
                    await self.lanes.tell(CHANNEL, name)
            except Exception as trouble:  # noqa: BLE001  # a word that is lost costs a moment: see _pulse
                fault(log, "not_told", trouble)
            await asyncio.sleep(TOLD_TOGETHER)

    async def _pulse(self) -> None:
        """What a lost word, or a dead process, left lying is seen all the same."""
        while True:
            for staff in self.staffs:
                staff.post.wake()
            self._wake_beside()
            if self._does.works or self._does.clock:
                await self.lanes.take_up()
            await asyncio.sleep(LOOK_EVERY)

    async def _look(self, staff: Staff) -> None:
        await staff.tick.once()
        try:
            before = now() - FORGOTTEN
            forgotten = await staff.of.store.read(partial(inbox.waiting_lanes, before=before))
            await self.lanes.hand_on(staff.of.name, forgotten)
        except Exception as trouble:  # noqa: BLE001  # whatever it is, the next look tries again
            fault(log, "not_handed_on", trouble)
