"""Conversations through the whole desk: the same scripts as those of core alone, with a real store and people in it.

For what the desk does beside core: joining, changes about oneself, own data, journeys. Run as a module it prints
scripts as they would be right now; ``--write`` writes them.
"""

import asyncio
import re
import sys
from dataclasses import dataclass, field
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory
from zoneinfo import ZoneInfo

from bot import bootstrap, log
from bot.clock import Tick
from bot.intake import Intake
from bot.ports import Parcel
from bot.store import agenda, invites, people
from bot.store.invites import Invite
from tests.bot.scripts import Entry, parse, printed
from tests.bot.shell import CHANNEL, INES, RUTH, HandClock, Shell, shell

FOLDER = Path(__file__).parents[2] / "fixtures" / "conversations" / "desk"
BETWEEN = timedelta(minutes=1)
SAYS = ("lifter", "press", "coach says", "press coach")
STEPS = {"m": "minutes", "h": "hours", "d": "days"}
ALONE = 5_000_001


@dataclass
class Talk:
    """A conversation under way: one lifter, who may have a coach."""

    room: Shell
    zone: ZoneInfo
    user: int = RUTH
    heard: int = 0
    buttons: dict[int, tuple[tuple[str, str], ...]] = field(default_factory=dict)
    out: list[Entry] = field(default_factory=list)

    async def play(self, entry: Entry) -> None:
        """One step of the script."""
        if entry.head == "clock":
            await self._clock(entry.text)
            return
        self.room.clock.at += BETWEEN
        await self._ring()
        self.out.append(entry)
        speaker = INES if "coach" in entry.head else self.user
        if entry.head.startswith("press"):
            data = dict(self.buttons[speaker])[entry.text]
            await self.room.hear(self.room.raw(kind="press", user=speaker, message_id=1, data=data, token="t"))
        else:
            await self.room.hear(self.room.raw(user=speaker, text=entry.text))
        self._listen()

    def _listen(self) -> None:
        for parcel in self.room.wire.sent[self.heard :]:
            self.out.append(Entry("service" if parcel.chat == self.user else "coach", _shown(parcel)))
            if parcel.buttons:
                self.buttons[parcel.chat] = parcel.buttons
        self.heard = len(self.room.wire.sent)

    async def _clock(self, text: str) -> None:
        self.out.append(Entry("clock", text))
        jump = re.fullmatch(r"\+(\d+)([mhd])", text)
        if jump:
            until = self.room.clock.at + timedelta(**{STEPS[jump[2]]: int(jump[1])})
        else:
            until = datetime.fromisoformat(text).replace(tzinfo=self.zone).astimezone(UTC)
        while (due := await self.room.store.read(agenda.next_due)) is not None and due <= until:
            self.room.clock.at = max(self.room.clock.at, due)
            await self._ring()
        self.room.clock.at = until

    async def _ring(self) -> None:
        await self.room.tick.once()
        await self.room.settle()
        self._listen()


def _shown(parcel: Parcel) -> str:
    file = f"({parcel.attachment[0]})" if parcel.attachment else ""
    row = " ".join(f"[{label}]" for label, _ in parcel.buttons)
    return "\n".join(filter(None, (*parcel.text.split("\n"), file, row)))


async def played(entries: list[Entry], folder: Path) -> list[Entry]:
    """The script as it is now."""
    told = dict(re.findall(r"(\w+)=(\S+)", next(one.text for one in entries if one.head == "person")))
    zone = ZoneInfo(told.get("zone", "Europe/Berlin"))
    first = next(i for i, one in enumerate(entries) if one.head == "clock")
    now = datetime.fromisoformat(entries[first].text).replace(tzinfo=zone).astimezone(UTC)
    async with shell(folder, clock=HandClock(now)) as room:
        desk = bootstrap.parts({CHANNEL: room.wire.open}, bootstrap.start_line)
        room.intake = Intake(room.store, desk, room.clock, room.post.wake)
        room.tick = Tick(room.store, desk, room.clock, room.post.wake)
        talk = Talk(room, zone)
        await _begun(talk, told)
        talk.out = [*entries[: first + 1]]
        talk._listen()
        for entry in entries[first + 1 :]:
            if entry.head in (*SAYS, "clock"):
                await talk.play(entry)
        return talk.out


async def _begun(talk: Talk, told: dict[str, str]) -> None:
    """A coach, and somebody who opens the coach's link in the language of their chat."""
    room = talk.room

    def seed(conn: object) -> str:
        coach = people.add(conn, "Ines", str(talk.zone), room.clock(), coaches=True)  # type: ignore[arg-type]
        people.reach(conn, coach.id, CHANNEL, INES)  # type: ignore[arg-type]
        wanted = Invite("client", told["name"], str(talk.zone), coach.id)
        return invites.make(conn, wanted, room.clock())  # type: ignore[arg-type]

    code = await room.store.write(seed)
    await room.hear(room.raw(user=talk.user, text=f"/start {code}", language=told.get("language")))


def scripts() -> list[Path]:
    """All of them."""
    return sorted(FOLDER.glob("*.script"))


def renewed(text: str) -> str:
    """A script with its answers as they would be right now."""
    remarks, entries = parse(text)
    with TemporaryDirectory() as folder:
        return spaced(remarks, asyncio.run(played(entries, Path(folder))))


def spaced(remarks: list[str], entries: list[Entry]) -> str:
    """A script as text, with a line free before each thing said."""
    return re.sub(r"\n(coach says|press coach):", r"\n\n\1:", printed(remarks, entries))


def main(names: list[str]) -> None:
    """Print scripts as they would be right now."""
    for name in (one for one in names if one != "--write"):
        text = renewed(Path(name).read_text(encoding="utf-8"))
        if "--write" in names:
            Path(name).write_text(text, encoding="utf-8")
        else:
            sys.stdout.write(text)


if __name__ == "__main__":
    log.set_up("error")
    main(sys.argv[1:])
