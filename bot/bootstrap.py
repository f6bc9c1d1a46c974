"""The only file that joins concrete parts: core, the store, the channels, the clock. Holds no logic of theirs."""

import sys
from collections.abc import Awaitable, Callable, Coroutine, Mapping
from contextlib import nullcontext
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Final

from bot.channels import terminal
from bot.channels.page import shape
from bot.channels.page.address import PageCall, address, own_origins
from bot.channels.terminal import Seat, Terminal
from bot.clock import EVERY_SECONDS, Tick, every, now
from bot.desk import seats
from bot.desk.rooms import Parts
from bot.folding import FOLDING
from bot.intake import Intake
from bot.outbox import Outbox, Pace
from bot.page_clock import Ahead
from bot.ports import Now, Opened, RawUpdate
from bot.running import HOUR, until_told_to_stop
from bot.store import inbox
from bot.store.engine import Store
from bot.store.outbox import Reach
from core import checkin

if TYPE_CHECKING:
    from bot.page_side import PageSide

Openers = Mapping[str, Callable[[RawUpdate], Opened]]
Look = Callable[[], Awaitable[None]]

HERE: Final[Openers] = {terminal.NAME: terminal.open_update, shape.NAME: shape.open_update}
"""What came in on this machine is read by every service: it may wait in the store since an earlier run."""


@dataclass(frozen=True, slots=True)
class Beside:
    """What runs beside a channel."""

    loops: tuple[Coroutine[Any, Any, object], ...]
    wake: Callable[[], None]


def parts(openers: Openers, link: Callable[[str], str]) -> Parts:
    """The desk's parts around the real core."""
    return Parts(checkin.answer, checkin.remind, FOLDING, openers, link, reader=FOLDING.version)


def start_line(code: str) -> str:
    """How a code is handed on where no bot has a name."""
    return f"/start={code}"


async def page_beside(store: Store, intake: Intake, openers: Openers, look: Look, call: PageCall) -> Beside:
    """The page beside another channel: what it does, and how it is woken when something is queued."""
    side = await _side(store, now)
    return Beside((side.run(), await _served(side, call, intake, openers, (Ahead(now), look))), side.wake)


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
        desk = parts(HERE, start_line)
        intake = Intake(store, desk, clock, side.wake)
        tick = Tick(store, desk, clock, side.wake)

        async def look() -> None:
            await tick.once()
            intake.wake()
            await side.deliver()

        serving = await _served(side, call, intake, HERE, (clock, look))
        with every(EVERY_SECONDS, look), every(HOUR, tick.tidy):
            await until_told_to_stop(intake.run(), side.run(), serving)


async def _side(store: Store, clock: Now) -> "PageSide":
    from bot.page_side import PageSide  # a web server is of no use to the other commands

    return await PageSide.open(store, clock)


async def _served(
    side: "PageSide",
    call: PageCall,
    intake: Intake,
    openers: Openers,
    forward: tuple[Ahead, Look],
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
