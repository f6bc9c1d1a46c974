"""How the page's commands are called: an address read, a link made, a browser opened. Serves nothing itself."""

import os
import sys
import webbrowser
from collections.abc import Mapping

from sqlalchemy import Connection

from bot.admin import find_lifter
from bot.channels.page import login
from bot.channels.page.address import LOOPBACK, PageCall
from bot.clock import now
from bot.store import people
from bot.store.engine import Store


def asked_for(listen: str, public: str | None, *, login: bool, clock: bool, show: bool) -> PageCall | str:
    """The call, or what is off about it."""
    host, port = _host_and_port(listen)
    if port is not None and not 0 < port < 1 << 16:
        return f"{listen!r} is no address: write HOST or HOST:PORT"
    if host not in LOOPBACK and not (public or "").startswith("https://"):
        return "beyond this machine the page is reached by https: name its address with --public https://..."
    if not login and (host not in LOOPBACK or public):
        return "without --login the page shows everyone's chat, so it is only served on this machine (127.0.0.1)"
    if login and clock:
        return "a clock that can be put forward is for trying out alone: leave out --clock or --login"
    if public is not None and not public.startswith(("https://", "http://")):
        return f"{public!r} is no address: write one like https://gym.example"

    def ready(address: str) -> None:
        sys.stderr.write(f"The page is at {address}  (Ctrl-C ends it)\n")
        if show and has_screen(os.environ, sys.platform):
            webbrowser.open(address)

    return PageCall(host, port, login, clock, public, ready)


def has_screen(environment: Mapping[str, str], platform: str) -> bool:
    """Whether there is a desktop on which a browser can open."""
    return platform in ("darwin", "win32") or any(environment.get(name) for name in ("DISPLAY", "WAYLAND_DISPLAY"))


async def link(url: str, name: str, public: str) -> str:
    """A link that lets that person in. Works beside a running service. Raises StoreError."""
    async with await Store.open(url, hold=False, create=False) as store:
        word = await store.write(lambda conn: login.make_link(conn, _who(conn, name), now()))
    return f"{public.rstrip('/')}/enter?link={word}"


def _who(conn: Connection, name: str) -> int:
    coach = next((one for one in people.by_name(conn, name) if one.coaches), None)
    return coach.id if coach is not None else find_lifter(conn, name).id


def _host_and_port(listen: str) -> tuple[str, int | None]:
    host, colon, port = listen.rpartition(":")
    if not colon or listen.endswith("]") or (":" in host and not host.startswith("[")):
        return listen.strip("[]"), None
    return host.strip("[]"), int(port) if port.isdecimal() else 0
