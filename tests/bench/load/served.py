"""The service as ``rungbook serve`` joins it, but for the pace that Telegram asks for. A process of its own.

python -m tests.bench.load.served URL TOKEN STORE
"""

import asyncio
import sys

from bot import log
from bot.bootstrap import parts
from bot.channels.telegram import Telegram
from bot.clock import EVERY_SECONDS, Tick, every, now
from bot.intake import Intake
from bot.outbox import Outbox, Pace
from bot.store.engine import Store
from bot.store.outbox import Reach


async def serve(api: str, token: str, url: str) -> None:
    """Take, work, answer, until stopped."""
    channel = Telegram(token, api)
    async with await Store.open(url) as store:
        await channel.whoami()
        desk = parts({channel.name: channel.open}, channel.link)
        post = Outbox(store, channel, Reach(channel.name), now, Pace())
        intake = Intake(store, desk, now, post.wake)
        tick = Tick(store, desk, now, post.wake)
        with every(EVERY_SECONDS, tick.once):
            async with asyncio.TaskGroup() as loops:
                for loop in (intake.run(), post.run(), intake.listen(channel)):
                    loops.create_task(loop)


def main() -> None:
    """Run until stopped."""
    log.set_up("error")
    asyncio.run(serve(*sys.argv[1:]))


if __name__ == "__main__":
    main()
