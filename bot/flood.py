"""Slows down a chat from which more comes than a person can mean. Everything is worked, only later. Knows no store."""

from collections.abc import Hashable
from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Final

BURST: Final = 60
"""Messages of one chat that are worked as they come: a whole session sent late in one go. Judgement, no source."""

EVERY: Final = timedelta(seconds=0.5)
"""From then on one message in this time; the answers may leave no faster anyway. Judgement, no source."""

_REMEMBERED: Final = 10_000
"""Chats in memory before those that are quiet again are dropped."""


@dataclass(slots=True)
class Flood:
    """How much each lane has used, as the time at which its allowance is whole again (a leaky bucket)."""

    _full_at: dict[Hashable, datetime] = field(default_factory=dict)

    def wait(self, lane: Hashable, now: datetime) -> float:
        """Seconds until the lane's next message may be worked; 0: it may now."""
        opens = self._used(lane, now) - EVERY * (BURST - 1)
        return max(0.0, (opens - now).total_seconds())

    def took(self, lane: Hashable, now: datetime) -> None:
        """One of its messages is worked."""
        if len(self._full_at) >= _REMEMBERED:
            self._full_at = {one: at for one, at in self._full_at.items() if at > now}
        self._full_at[lane] = max(self._used(lane, now), now) + EVERY

    def _used(self, lane: Hashable, now: datetime) -> datetime:
        """Never further ahead than a whole burst: a clock that was put back must not silence anyone."""
        at = self._full_at.get(lane)
        if at is None:
            return now
        used = self._full_at[lane] = min(at, now + EVERY * BURST)
        return used
