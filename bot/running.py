"""Runs loops together until one fails or a signal says stop, and a loop again when the store was away for a while."""

import asyncio
import signal
from collections.abc import Awaitable, Callable, Coroutine
from typing import Any, Final, NoReturn

import structlog
from sqlalchemy.exc import OperationalError

from bot.clock import EVERY_SECONDS, every
from bot.log import fault

AGAIN: Final = 2.0
"""Seconds before a loop is begun again after the store was away."""

HOUR: Final = 3600

log = structlog.get_logger(__name__)


async def until_told_to_stop(*loops: Coroutine[Any, Any, object]) -> None:
    """Run the loops together; the first failure, or SIGINT or SIGTERM, ends them all."""
    tasks = [asyncio.ensure_future(loop) for loop in loops]
    told = asyncio.Event()
    loop = asyncio.get_running_loop()
    for one in (signal.SIGINT, signal.SIGTERM):
        loop.add_signal_handler(one, told.set)
    waiter = asyncio.ensure_future(told.wait())
    try:
        done, _ = await asyncio.wait({waiter, *tasks}, return_when=asyncio.FIRST_COMPLETED)
        for task in done - {waiter}:
            task.result()
    finally:
        for task in (waiter, *tasks):
            task.cancel()
        await asyncio.gather(waiter, *tasks, return_exceptions=True)


async def patiently(begin: Callable[[], Coroutine[Any, Any, None]]) -> None:
    """Run a loop, and again when it failed because the store was away. Raises whatever else it raises."""
    while True:
        try:
            await begin()
        except OperationalError as trouble:
            fault(log, "store_failed", trouble)
        await asyncio.sleep(AGAIN)


async def keep_time(look: Callable[[], Awaitable[None]], tidy: Callable[[], Awaitable[None]]) -> NoReturn:
    """Look at the agenda every few seconds, and tidy up every hour, for ever."""
    with every(EVERY_SECONDS, look), every(HOUR, tidy):
        await asyncio.Event().wait()
    raise AssertionError("nobody sets that event")
