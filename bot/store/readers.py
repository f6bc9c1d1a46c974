"""Looks at a SQLite file beside its writer: each on one consistent view, a few at the same time. Knows no table."""

import asyncio
from collections.abc import Callable
from functools import partial
from pathlib import Path
from typing import Final, TypeVar

from sqlalchemy import Connection

from bot.store.sqlite_line import Line

T = TypeVar("T")

AT_ONCE: Final = 4
"""Most looks at the same time; each takes a connection with a thread."""


class Readers:
    """Connections that only look, opened when they are first wanted."""

    def __init__(self, file: Path) -> None:
        self._file = file
        self._places = asyncio.Semaphore(AT_ONCE)
        self._idle: list[Line] = []
        self._all: list[Line] = []

    async def read(self, look: Callable[[Connection], T]) -> T:
        """Give what ``look`` finds on a view that nobody changes meanwhile."""
        async with self._places:
            line = self._idle.pop() if self._idle else await self._another()
            try:
                return await line.run(partial(_view, look=look))
            finally:
                self._idle.append(line)

    async def close(self) -> None:
        """Let go of the file."""
        for line in self._all:
            await line.close()

    async def _another(self) -> Line:
        line = await Line.open(self._file, "BEGIN")
        self._all.append(line)
        return line


def _view(conn: Connection, look: Callable[[Connection], T]) -> T:
    with conn.begin() as view:
        found = look(conn)
        view.rollback()
    return found
