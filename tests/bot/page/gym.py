"""A small demo gym for the page's tests, made once, and the page served on it in this process or by the command."""

import asyncio
import os
import shutil
import signal
import socket
import subprocess
import sys
import time
from collections.abc import Iterator
from concurrent.futures import ThreadPoolExecutor
from contextlib import contextmanager
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from tempfile import mkdtemp
from urllib.error import HTTPError, URLError
from urllib.request import urlopen

from bot.demo.fill import Wanted, fill

WEDNESDAY = datetime(2026, 3, 4, 15, 0, tzinfo=UTC)
"""Mira has a session at 18:30 of the day on which the gym is made."""


@cache
def _made(now: datetime) -> Path:
    folder = Path(mkdtemp(prefix="rungbook-page-"))
    filling = fill(f"sqlite+aiosqlite:///{folder / 'gym.db'}", Wanted(3, 1, 1), lambda: now)
    with ThreadPoolExecutor(1) as aside:  # a test's own loop may be running here
        aside.submit(asyncio.run, filling).result()
    return folder / "gym.db"


def gym(folder: Path, now: datetime) -> str:
    """The URL of a fresh copy of it."""
    shutil.copy(_made(now), folder / "page.db")
    return f"sqlite+aiosqlite:///{folder / 'page.db'}"


def free_port() -> int:
    """A port that nobody holds."""
    with socket.socket() as one:
        one.bind(("127.0.0.1", 0))
        port: int = one.getsockname()[1]
        return port


@contextmanager
def served(url: str, port: int, *more: str) -> Iterator[str]:
    """The page as the command serves it, until the block ends."""
    words = [sys.executable, "-m", "bot", "page", "--store", url, "--listen", f"127.0.0.1:{port}", *more]
    environment = {name: value for name, value in os.environ.items() if not name.startswith("RUNGBOOK_")}
    with subprocess.Popen(words, env=environment, stderr=subprocess.PIPE, text=True) as running:
        try:
            yield _answering(running, f"http://127.0.0.1:{port}")
        finally:
            running.send_signal(signal.SIGTERM)
            running.wait(30)


def _answering(running: "subprocess.Popen[str]", address: str) -> str:
    """Wait until it says where it is; then it is served."""
    deadline = time.monotonic() + 60
    assert running.stderr is not None
    said = running.stderr.readline()
    assert address in said, said
    while time.monotonic() < deadline:
        try:
            with urlopen(address, timeout=5):
                return address
        except HTTPError:  # it answers, if only to say that a login is wanted
            return address
        except URLError:
            os.sched_yield()
    raise AssertionError(f"nothing answers at {address}")
