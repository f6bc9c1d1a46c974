"""Serves the page over HTTP on one address until it is told to stop. Knows no chat."""

import asyncio
import socket
from collections.abc import Iterator
from contextlib import contextmanager

import uvicorn
from starlette.types import ASGIApp

from bot.channels.page.address import PORT
from bot.ports import StoreError


class PageError(StoreError):
    """The address cannot be served on; the message says what to do."""


def bind(host: str, port: int | None) -> socket.socket:
    """Take the address. Without a port the usual one, else any that is free. Raises PageError."""
    wanted = (PORT, 0) if port is None else (port,)
    for one in wanted:
        try:
            family = socket.AF_INET6 if ":" in host else socket.AF_INET
            return socket.create_server((host, one), family=family)
        except OSError as problem:
            trouble = problem.strerror
    raise PageError(f"the page cannot be served at {host}:{wanted[-1]} ({trouble}): give another with --listen")


class _Server(uvicorn.Server):
    """Signals are heard elsewhere."""

    @contextmanager
    def capture_signals(self) -> Iterator[None]:
        """Leave them alone."""
        yield


async def serve(app: ASGIApp, taken: socket.socket) -> None:
    """Serve until cancelled."""
    config = uvicorn.Config(app, lifespan="off", log_config=None, access_log=False, server_header=False)
    config.timeout_graceful_shutdown = 1
    server = _Server(config)
    try:
        await server.serve(sockets=[taken])
    except asyncio.CancelledError:
        if server.started:
            server.force_exit = True
            await server.shutdown(sockets=[taken])
        raise
    finally:
        taken.close()
