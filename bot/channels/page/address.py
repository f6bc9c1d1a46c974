"""Where the page is served and under which names it is reached. Serves nothing."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

PORT: Final = 8137
"""Where the page is served when nobody says otherwise; any free one, when it is taken."""

LOOPBACK: Final = frozenset({"127.0.0.1", "localhost", "::1"})
"""Hosts that only this machine reaches."""


@dataclass(frozen=True, slots=True)
class PageCall:
    """How the page was asked for: the address to serve at, whether by login, whether its clock can be put forward."""

    host: str = "127.0.0.1"
    port: int | None = None
    login: bool = False
    clock: bool = False
    public: str | None = None
    ready: Callable[[str], None] = lambda _: None
    """Told the address once it is there."""


def address(host: str, port: int) -> str:
    """Where a browser on this machine finds it."""
    return f"http://{f'[{host}]' if ':' in host else host}:{port}"


def own_origins(host: str, port: int) -> frozenset[str]:
    """Under which addresses a page served there is reached."""
    return frozenset(address(name, port) for name in (LOOPBACK if host in LOOPBACK else {host}))
