"""Where the terminal channel reads and prints: plain lines through a pipe, a prompt with colours for a person."""

import asyncio
import sys
from collections.abc import AsyncIterator
from typing import TextIO

from prompt_toolkit import PromptSession
from prompt_toolkit.patch_stdout import patch_stdout
from rich.console import Console
from rich.padding import Padding
from rich.text import Text

from bot.channels.terminal import Buttons


def is_watched() -> bool:
    """Whether a person sits at both ends."""
    return sys.stdin.isatty() and sys.stdout.isatty()


async def piped_lines(source: TextIO) -> AsyncIterator[str]:
    """Lines until the end of input; reading waits in a thread, so that nothing else does."""
    while line := await asyncio.to_thread(source.readline):
        yield line.rstrip("\r\n")


async def typed_lines(name: str) -> AsyncIterator[str]:
    """Lines as a person types them, until the end of input (Ctrl-D) or Ctrl-C."""
    session: PromptSession[str] = PromptSession(f"{name}> ")
    while True:
        try:
            with patch_stdout(raw=True):
                line = await session.prompt_async()
        except (EOFError, KeyboardInterrupt):
            return
        yield line


def show_plain(text: str, buttons: Buttons) -> None:
    """A reply as plain lines, its answers numbered."""
    sys.stdout.write("\n".join([text, *(f"[{n}] {label}" for n, (label, _) in enumerate(buttons, 1))]) + "\n")
    sys.stdout.flush()


def show_rich(text: str, buttons: Buttons) -> None:
    """A reply set apart from what was typed."""
    body = Text(text)
    for number, (label, _) in enumerate(buttons, 1):
        body.append(f"\n[{number}] ", style="bold cyan").append(label)
    Console(highlight=False).print(Padding(body, (0, 0, 1, 2)))
