"""Serves the page over HTTP on one address until it is told to stop. Knows no chat."""

import asyncio
import socket
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Final

import uvicorn
from starlette.types import ASGIApp

from bot.ports import StoreError

PORT: Final = 8137
"""Where the page is served when nobody says otherwise; any free one, when it is taken."""
LOOPBACK: Final = frozenset({"127.0.0.1", "localhost", "::1"})


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


def own_origins(host: str, taken: socket.socket) -> frozenset[str]:
    """Under which addresses a page served there is reached."""
    port = taken.getsockname()[1]
    names = {"127.0.0.1", "localhost", "[::1]"} if host in LOOPBACK else {f"[{host}]" if ":" in host else host}
    return frozenset(f"http://{name}:{port}" for name in names)


def address(host: str, taken: socket.socket) -> str:
    """Where a browser on this machine finds it."""
    name = f"[{host}]" if ":" in host else host
    return f"http://{name}:{taken.getsockname()[1]}"


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
