"""Takes an address of this machine and serves one HTTP application there until told to stop. Knows no application."""

import asyncio
import socket
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final

import uvicorn
from starlette.types import ASGIApp

from bot.addresses import host_and_port
from bot.ports import StoreError

_LAST_ANSWERS: Final = 5
"""Seconds that answers under way may take when we stop."""


class AddressTaken(StoreError):
    """The address cannot be served on; the message says what to do."""


def bind(address: str, setting: str) -> socket.socket:
    """Take the address that a setting names; port 0 takes a free one. Raises AddressTaken naming the setting."""
    where = host_and_port(address)
    if where is None:
        raise AddressTaken(f"{setting} takes HOST:PORT")
    try:
        return socket.create_server(where, family=socket.AF_INET6 if ":" in where[0] else socket.AF_INET)
    except OSError as problem:
        raise AddressTaken(f"{address} cannot be served ({problem.strerror}): give {setting} another") from None


class _Server(uvicorn.Server):
    """Signals are heard elsewhere."""

    @contextmanager
    def capture_signals(self) -> Iterator[None]:
        """Leave them alone."""
        yield


async def serve(app: ASGIApp, taken: socket.socket) -> None:
    """Serve until cancelled; answers under way are finished first."""
    config = uvicorn.Config(app, lifespan="off", log_config=None, access_log=False, server_header=False)
    config.timeout_graceful_shutdown = _LAST_ANSWERS
    server = _Server(config)
    try:
        await server.serve(sockets=[taken])
    except asyncio.CancelledError:
        if server.started:
            await server.shutdown(sockets=[taken])
        raise
    finally:
        taken.close()
