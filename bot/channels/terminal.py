"""The terminal as a channel: every line is a message of one person, every reply is printed.

Lines travel as JSON like the updates of any other channel. Knows no store and no lifter.
"""

import json
from collections.abc import AsyncIterator, Callable, Mapping
from dataclasses import dataclass, field
from itertools import count
from pathlib import Path
from typing import Final

from bot.ports import Delivery, Malformed, Opened, Parcel, Press, RawUpdate, Sent, Words

NAME: Final = "terminal"

SAVE: Final = "save"
"""Typed after a document came: it goes into the current folder, and nowhere unasked."""

Buttons = tuple[tuple[str, str], ...]
Show = Callable[[str, Buttons], None]
"""Prints one reply with its pressable answers as (label, data)."""


@dataclass(frozen=True, slots=True)
class Seat:
    """Who sits at the terminal: their user and chat, and in a group the members by name (the first one speaks)."""

    chat: int
    user: int
    private: bool = True
    members: Mapping[str, int] = field(default_factory=dict)


def open_update(raw: RawUpdate) -> Opened:
    """Read one line as it was kept. Never raises for what is in it."""
    try:
        row = json.loads(raw.body)
        user, private, message = int(row["user"]), bool(row["private"]), int(row["message"])
        if "press" in row:
            return Press(raw.chat, user, message, str(row["press"]), token="", private=private)
        return Words(raw.chat, user, message, str(row["text"]), private=private)
    except (ValueError, KeyError, TypeError):
        return Malformed("not a line of a terminal")


def _free(path: Path) -> Path:
    """That name, or the next one with a number that is not taken."""
    names = (path.with_stem(f"{path.stem}-{n}") if n else path for n in count())
    return next(name for name in names if not name.exists())


class Terminal:
    """One session at a terminal. ``lines`` are what is typed, ``first`` the number of the first of them."""

    name = NAME
    pictures = False
    """A picture's facts are said in words; documents can be saved."""

    def __init__(self, seat: Seat, lines: AsyncIterator[str], show: Show, first: int, offered: Buttons = ()) -> None:
        self._files: dict[str, bytes] = {}
        self._seat = seat
        self._lines = lines
        self._show = show
        self._number = first
        self._offered = offered

    async def updates(self) -> AsyncIterator[tuple[RawUpdate, ...]]:
        """One update for each line, until the end of input."""
        async for line in self._lines:
            if self._files and line.strip().casefold() == SAVE:
                self._save()
                continue
            user, text = self._speaker(line)
            said = self._pressed(text)
            body = {"user": user, "private": self._seat.private, "message": self._number, **said}
            yield (RawUpdate(NAME, self._number, self._seat.chat, json.dumps(body)),)
            self._number += 1

    def open(self, raw: RawUpdate) -> Opened:
        """Read one line as it was kept."""
        return open_update(raw)

    async def send(self, parcel: Parcel) -> Delivery:
        """Print a reply. Its number or label, typed next, presses that answer."""
        self._offered = parcel.buttons or self._offered
        text = parcel.text
        if parcel.attachment is not None:
            name, content = parcel.attachment
            self._files[name] = content
            text = f"{text}\n({name}, {len(content)} bytes; type {SAVE} to put it into this folder)".lstrip()
        self._show(text, parcel.buttons)
        return Sent()

    def _save(self) -> None:
        """Put what came into the current folder; what is there already is not written over."""
        for name, content in self._files.items():
            try:
                with _free(Path(name)).open("xb") as file:
                    file.write(content)
                self._show(f"Saved {file.name}.", ())
            except OSError as trouble:
                self._show(f"{name} could not be saved ({trouble.strerror}).", ())
        self._files = {}

    def _speaker(self, line: str) -> tuple[int, str]:
        """In a group ``Name: text`` is said by that member."""
        name, colon, text = line.partition(":")
        named = {one.casefold(): user for one, user in self._seat.members.items()}
        user = named.get(name.strip().casefold())
        return (user, text.strip()) if colon and user is not None else (self._seat.user, line)

    def _pressed(self, text: str) -> dict[str, str]:
        """A number or a label under the last reply presses that answer; anything else is text."""
        typed = text.strip().strip("[]").casefold()
        offered, self._offered = self._offered, ()
        for index, (label, data) in enumerate(offered, 1):
            if typed in {str(index), label.casefold()}:
                return {"press": data}
        return {"text": text}
