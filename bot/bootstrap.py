"""The only file that joins concrete parts: core, the store, the channels, the clock. Holds no logic of theirs."""

import asyncio
import signal
import sys
from collections.abc import Awaitable, Callable, Coroutine, Mapping
from contextlib import nullcontext
from dataclasses import dataclass, field
from functools import partial
from typing import TYPE_CHECKING, Any, Final

from bot.channels import terminal
from bot.channels.page import shape
from bot.channels.page.address import PageCall, address, own_origins
from bot.channels.terminal import Seat, Terminal
from bot.clock import EVERY_SECONDS, Tick, every, now
from bot.config import Hook, Settings, SettingsError, hook_of
from bot.desk import seats
from bot.desk.rooms import Parts
from bot.folding import FOLDING
from bot.intake import Intake
from bot.outbox import TELEGRAM_PACE, Outbox, Pace
from bot.page_clock import Ahead
from bot.ports import Channel, Now, Opened, RawUpdate
from bot.store import inbox
from bot.store.engine import Store
from bot.store.outbox import Reach
from core import checkin

if TYPE_CHECKING:
    from bot.channels.telegram import Telegram
    from bot.page_side import PageSide

Openers = Mapping[str, Callable[[RawUpdate], Opened]]
Keep = Callable[[tuple[RawUpdate, ...]], Awaitable[None]]

_HERE: Final[Openers] = {terminal.NAME: terminal.open_update, shape.NAME: shape.open_update}
"""What came in on this machine is read by every service: it may wait in the store since an earlier run."""


def parts(openers: Openers, link: Callable[[str], str]) -> Parts:
    """The desk's parts around the real core."""
    return Parts(checkin.answer, checkin.remind, FOLDING, openers, link, reader=FOLDING.version)


def start_line(code: str) -> str:
    """How a code is handed on where no bot has a name."""
    return f"/start={code}"


async def serve(settings: Settings) -> None:
    """The service against Telegram, until it is told to stop. Raises SettingsError, StoreError, ChannelRefused."""
    from bot.channels.telegram import Telegram  # takes its time, and only this command needs it

    if settings.token is None:
        raise SettingsError("RUNGBOOK_TOKEN is not set: it takes the bot's token, in the environment or in .env")
    hook = hook_of(settings)
    channel = Telegram(settings.token.get_secret_value(), settings.api_url)
    try:
        async with await Store.open(settings.store) as store:
            await channel.whoami()
            openers = {channel.name: channel.open, **_HERE}
            beside = Beside(
                page_beside(settings),
                settings.status_listen,
                {"telegram": channel.is_known},
                None if hook is None else partial(_brought, hook, channel),
            )
            await run(store, channel, parts(openers, channel.link), TELEGRAM_PACE, beside)
    finally:
        await channel.close()


def page_beside(settings: Settings) -> PageCall | None:
    """The page behind its login that the settings ask for beside Telegram. Raises SettingsError."""
    if settings.page_listen is None:
        return None
    from bot import page_call

    asked = page_call.asked_for(settings.page_listen, settings.page_public, login=True, clock=False, show=False)
    if isinstance(asked, str):
        raise SettingsError(f"RUNGBOOK_PAGE_LISTEN: {asked}")
    return asked


@dataclass(frozen=True, slots=True)
class Beside:
    """What else a service does: a page, health and metrics at an address, and how updates come in when not polled."""

    page: PageCall | None = None
    status: str | None = None
    checks: Mapping[str, Callable[[], Awaitable[bool]]] = field(default_factory=dict)
    intake: Callable[[Keep], Coroutine[Any, Any, None]] | None = None


def _brought(hook: Hook, channel: "Telegram", keep: Keep) -> Coroutine[Any, Any, None]:
    """Take the address at which Telegram brings updates; what is given back serves there, and tells Telegram so."""
    from bot import listening
    from bot.channels.telegram_hook import Door, application

    taken = listening.bind(hook.listen, "RUNGBOOK_LISTEN")
    secret = hook.secret.get_secret_value()
    app = application(secret, {"": Door(channel.name, keep, channel.kept)})

    async def serving() -> None:
        async with asyncio.TaskGroup() as tasks:
            tasks.create_task(listening.serve(app, taken))
            await channel.start_hook(hook.public_url, secret)

    return serving()


def _watched(store: Store, beside: Beside) -> list[Coroutine[Any, Any, None]]:
    """Health and metrics at their address, where one is set."""
    if beside.status is None:
        return []
    from bot import listening, status
    from bot.store import watch

    async def look() -> watch.Figures:
        return await store.read(partial(watch.figures, now=now()))

    taken = listening.bind(beside.status, "RUNGBOOK_STATUS_LISTEN")
    return [listening.serve(status.application(look, beside.checks), taken)]


async def run(store: Store, channel: Channel, desk: Parts, pace: Pace, beside: Beside | None = None) -> None:
    """One channel on one store, and what is beside it, until SIGINT or SIGTERM."""
    beside = beside or Beside()
    post = Outbox(store, channel, Reach(channel.name), now, pace)
    side = await _side(store, now) if beside.page is not None else None

    def wake() -> None:
        post.wake()
        if side is not None:
            side.wake()

    intake = Intake(store, desk, now, wake)
    tick = Tick(store, desk, now, wake)

    async def look() -> None:
        await tick.once()
        intake.wake()  # a store that failed a moment ago may be well again
        wake()

    source = intake.listen(channel) if beside.intake is None else beside.intake(intake.keep)
    loops = [*_watched(store, beside), source, intake.run(), post.run()]
    if side is not None and beside.page is not None:
        loops += [side.run(), await _served(side, beside.page, intake, desk.openers, (Ahead(now), look))]
    with every(EVERY_SECONDS, look), every(_HOUR, tick.tidy):
        await _until_told_to_stop(*loops)


_HOUR = 3600


async def chat(url: str, name: str, desk: Parts | None = None) -> None:
    """A terminal session as someone of that name, until the end of input. Raises StoreError."""
    from bot.channels import screen  # what draws a terminal is of no use to a service

    async with await Store.open(url) as store:
        sitting = await store.write(lambda conn: seats.sit_down(conn, terminal.NAME, name))
        if not sitting.known:
            sys.stderr.write(f"Nobody here is called {name}; you chat as a newcomer. A code lets you in: /start CODE\n")
        first = 1 + await store.read(lambda conn: inbox.last_update_id(conn, terminal.NAME))
        watched = screen.is_watched()
        lines = screen.typed_lines(sitting.name) if watched else screen.piped_lines(sys.stdin)
        seat = Seat(sitting.chat, sitting.user, sitting.private, sitting.members)
        here = Terminal(seat, lines, screen.show_rich if watched else screen.show_plain, first)
        await _converse(store, here, Reach(terminal.NAME, frozenset({seat.chat})), desk, watched=watched)


async def _converse(store: Store, here: Terminal, reach: Reach, desk: Parts | None, *, watched: bool) -> None:
    """Line by line: keep, work, answer. A watched session also hears what becomes due meanwhile."""
    desk = desk or parts({terminal.NAME: here.open}, start_line)
    post = Outbox(store, here, reach, now, Pace())
    intake = Intake(store, desk, now, post.wake)
    tick = Tick(store, desk, now, post.wake)

    async def look() -> None:
        await tick.once()
        await post.drain()

    await post.drain()
    with every(EVERY_SECONDS, look) if watched else nullcontext():
        async for batch in here.updates():
            await intake.keep(batch)
            await intake.settle()
            await post.drain()


async def page(url: str, call: PageCall) -> None:
    """The page in the browser on one store, until it is told to stop. Raises StoreError."""
    async with await Store.open(url) as store:
        clock = Ahead(now)
        if call.clock:
            await clock.load(store)
        side = await _side(store, clock)
        desk = parts(_HERE, start_line)
        intake = Intake(store, desk, clock, side.wake)
        tick = Tick(store, desk, clock, side.wake)

        async def look() -> None:
            await tick.once()
            intake.wake()
            await side.deliver()

        serving = await _served(side, call, intake, _HERE, (clock, look))
        with every(EVERY_SECONDS, look), every(_HOUR, tick.tidy):
            await _until_told_to_stop(intake.run(), side.run(), serving)


async def _side(store: Store, clock: Now) -> "PageSide":
    from bot.page_side import PageSide  # a web server is of no use to the other commands

    return await PageSide.open(store, clock)


async def _served(
    side: "PageSide",
    call: PageCall,
    intake: Intake,
    openers: Openers,
    forward: tuple[Ahead, Callable[[], Awaitable[None]]],
) -> Coroutine[Any, Any, None]:
    """Take the address and say where it is; what is given back serves there."""
    from bot.channels.page import server
    from bot.page_side import Wanted

    taken = server.bind(call.host, call.port)
    port: int = taken.getsockname()[1]
    wanted = Wanted(own_origins(call.host, port), call.login, call.clock, call.public)
    app = await side.application(wanted, intake.keep, openers, forward)
    call.ready(call.public or address(call.host, port))
    return server.serve(app, taken)


async def _until_told_to_stop(*loops: object) -> None:
    """Run the loops together; the first failure, or a signal, ends them all."""
    tasks = [asyncio.ensure_future(loop) for loop in loops]  # type: ignore[call-overload]
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
