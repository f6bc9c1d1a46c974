"""One bot as a business of its own, and the parts that work for it. Joins them; says nothing of who runs them where."""

from collections.abc import Callable
from dataclasses import dataclass

from bot.clock import Tick, now
from bot.desk.rooms import Parts
from bot.intake import HandOn, Intake
from bot.outbox import Outbox, Pace
from bot.ports import Channel
from bot.store.engine import Store
from bot.store.outbox import Reach


@dataclass(frozen=True, slots=True)
class Business:
    """One bot with its own store and its own way to Telegram."""

    name: str
    store: Store
    channel: Channel
    desk: Parts
    pace: Pace


@dataclass(frozen=True, slots=True)
class Staff:
    """The parts that work for one business."""

    of: Business
    intake: Intake
    post: Outbox
    tick: Tick

    async def look(self) -> None:
        """Say what is due, and try again what a store that failed a moment ago left waiting."""
        await self.tick.once()
        self.intake.wake()
        self.post.wake()

    def duty(self, what: str) -> str:
        """The name of a duty for this business."""
        return f"{self.of.name}/{what}"


def staff_for(one: Business, answered: Callable[[], None], hand_on: HandOn | None = None) -> Staff:
    """Parts for a business; ``answered`` is called when something of it may be sent."""
    post = Outbox(one.store, one.channel, Reach(one.channel.name), now, one.pace)
    tick = Tick(one.store, one.desk, now, answered)
    return Staff(one, Intake(one.store, one.desk, now, answered, hand_on), post, tick)
