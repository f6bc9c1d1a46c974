"""A fortnight through the terminal, from nothing to nothing, with a clock that jumps: played and written down.

``python -m tests.bot.fortnight`` prints it as it would be right now, ``--write`` writes it to fixtures.
"""

import asyncio
import os
import re
import sys
from collections.abc import AsyncIterator
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from zoneinfo import ZoneInfo

from bot import bootstrap, log
from bot.channels.terminal import NAME, SAVE, Buttons, Seat, Terminal, open_update
from bot.clock import Tick
from bot.intake import Intake
from bot.outbox import Outbox, Pace
from bot.ports import Delivery, Parcel, RawUpdate
from bot.store import agenda, invites, people
from bot.store.engine import Store
from bot.store.invites import Invite
from bot.store.outbox import Reach
from tests.bot.desk_scripts import BETWEEN, STEPS, spaced
from tests.bot.scripts import Entry, parse
from tests.bot.shell import HandClock
from tests.bot.stores import url_in

FILE = Path(__file__).parents[2] / "fixtures" / "conversations" / "fortnight" / "fortnight.script"
ZONE = ZoneInfo("Europe/Berlin")
NELE, INES = Seat(41, 41), Seat(42, 42)


class Keys:
    """What is typed at one terminal, line by line, and what it prints."""

    def __init__(self, seat: Seat, first: int, said: "list[Entry]", head: str) -> None:
        self.typed: asyncio.Queue[str] = asyncio.Queue()
        self.said, self.head = said, head
        self.terminal = Terminal(seat, self._lines(), self._show, first)
        self._updates = self.terminal.updates()
        self._next: asyncio.Future[tuple[RawUpdate, ...]] | None = None
        self._shown = asyncio.Event()

    async def _lines(self) -> AsyncIterator[str]:
        while True:
            yield await self.typed.get()

    async def line(self, text: str) -> tuple[RawUpdate, ...]:
        """Type a line; what comes of it. To save is no message, so nothing does."""
        self._next = self._next or asyncio.ensure_future(anext(self._updates))
        self._shown.clear()
        await self.typed.put(text)
        if text == SAVE:
            await self._shown.wait()
            return ()
        batch, self._next = await self._next, None
        return batch

    def _show(self, text: str, buttons: Buttons) -> None:
        text = re.sub(r"\((\S+), \d+ bytes; .*\)", r"(\1)", text)
        row = " ".join(f"[{label}]" for label, _ in buttons)
        self.said.append(Entry(self.head, "\n".join(filter(None, (*text.split("\n"), row)))))
        self._shown.set()


@dataclass
class Both:
    """The one channel, with two terminals on it."""

    keys: dict[int, Keys]
    name: str = NAME

    async def send(self, parcel: Parcel) -> Delivery:
        return await self.keys[parcel.chat].terminal.send(parcel)


@dataclass
class Fortnight:
    """The service with its store, the clock in hand, and what was said so far."""

    store: Store
    clock: HandClock
    intake: Intake
    post: Outbox
    tick: Tick
    keys: dict[int, Keys]
    out: list[Entry] = field(default_factory=list)

    async def play(self, entry: Entry) -> None:
        """One step."""
        if entry.head == "clock":
            await self._goes_on(entry.text)
            return
        self.clock.at += BETWEEN
        await self._ring()
        self.out.append(entry)
        keys = self.keys[INES.chat if entry.head == "coach says" else NELE.chat]
        await self.intake.keep(await keys.line(entry.text))
        await self.settle()

    async def settle(self) -> None:
        await self.intake.settle()
        await self.post.drain()

    async def _goes_on(self, text: str) -> None:
        self.out.append(Entry("clock", text))
        jump = re.fullmatch(r"\+(\d+)([mhd])", text)
        if jump:
            until = self.clock.at + timedelta(**{STEPS[jump[2]]: int(jump[1])})
        else:
            until = datetime.fromisoformat(text).replace(tzinfo=ZONE).astimezone(UTC)
        while (due := await self.store.read(agenda.next_due)) is not None and due <= until:
            self.clock.at = max(self.clock.at, due)
            await self._ring()
        self.clock.at = until

    async def _ring(self) -> None:
        await self.tick.once()
        await self.settle()


async def played(entries: list[Entry], folder: Path) -> list[Entry]:
    """The fortnight as it is now."""
    first = next(i for i, one in enumerate(entries) if one.head == "clock")
    clock = HandClock(datetime.fromisoformat(entries[first].text).replace(tzinfo=ZONE).astimezone(UTC))
    out: list[Entry] = [*entries[: first + 1]]
    keys = {NELE.chat: Keys(NELE, 1, out, "service"), INES.chat: Keys(INES, 100_000, out, "coach")}
    async with await Store.open(url_in(folder)) as store:
        desk = bootstrap.parts({NAME: open_update}, bootstrap.start_line)
        post = Outbox(store, Both(keys), Reach(NAME), clock, Pace())
        intake = Intake(store, desk, clock, post.wake)
        here = Fortnight(store, clock, intake, post, Tick(store, desk, clock, post.wake), keys, out)
        code = await store.write(lambda conn: _seed(conn, clock()))
        for entry in entries[first + 1 :]:
            if entry.head in ("lifter", "coach says", "clock"):
                await here.play(Entry(entry.head, entry.text.replace("CODE", code)))
    return [Entry(one.head, one.text.replace(code, "CODE")) for one in out]


def _seed(conn: object, now: datetime) -> str:
    """A coach at her own terminal, and a link that she made for somebody new."""
    coach = people.add(conn, "Ines", str(ZONE), now, coaches=True)  # type: ignore[arg-type]
    people.reach(conn, coach.id, NAME, INES.user)  # type: ignore[arg-type]
    return invites.make(conn, Invite("client", "Nele", str(ZONE), coach.id), now)  # type: ignore[arg-type]


def renewed(text: str) -> str:
    """The transcript with its answers as they would be right now."""
    remarks, entries = parse(text)
    before = Path.cwd()
    with TemporaryDirectory() as folder:
        os.chdir(folder)
        try:
            return spaced(remarks, asyncio.run(played(entries, Path(folder))))
        finally:
            os.chdir(before)


if __name__ == "__main__":
    log.set_up("error")
    text = renewed(FILE.read_text(encoding="utf-8"))
    if "--write" in sys.argv[1:]:
        FILE.write_text(text, encoding="utf-8")
    else:
        sys.stdout.write(text)
