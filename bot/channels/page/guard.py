"""Stands before every request: only this host, nothing from another site, and a strict policy on whatever goes out."""

from collections.abc import Mapping
from typing import Final

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

HEADERS: Final[Mapping[str, str]] = {
    "Content-Security-Policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self'; connect-src 'self'; "
        "base-uri 'none'; form-action 'self'; frame-ancestors 'none'"
    ),
    "X-Content-Type-Options": "nosniff",
    "X-Frame-Options": "DENY",
    "Referrer-Policy": "same-origin",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
    "Permissions-Policy": "camera=(), geolocation=(), microphone=()",
    "Cache-Control": "no-store",
}
"""On every answer."""

LARGEST: Final = 64 * 1024
"""Bytes of a request; a message is far shorter."""

_SAFE: Final = frozenset({"GET", "HEAD"})
_OPEN_PAGES: Final = frozenset({"/", "/enter"})
"""What a link on another site may open, as a page of its own."""

Refusal = tuple[int, str]


class Guard:
    """Wraps an application. ``origins``: under which addresses the page is served, as in http://127.0.0.1:8137."""

    def __init__(self, app: ASGIApp, origins: frozenset[str]) -> None:
        """Nothing passes but to these."""
        self._app = app
        self._origins = origins

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """One request."""
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return

        async def shielded(message: Message) -> None:
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                for name, value in HEADERS.items():
                    headers.setdefault(name, value)
            await send(message)

        refused = refusal(scope["method"], scope["path"], Headers(scope=scope), self._origins)
        if refused is not None:
            await PlainTextResponse(refused[1], refused[0])(scope, receive, shielded)
            return
        await self._app(scope, receive, shielded)


def refusal(method: str, path: str, headers: Headers, origins: frozenset[str]) -> Refusal | None:
    """Why a request is not let in; None: it is."""
    hosts = {origin.partition("://")[2] for origin in origins}
    site = headers.get("sec-fetch-site", "none")
    opened = headers.get("sec-fetch-mode") == "navigate" and path in _OPEN_PAGES and method in _SAFE
    length = headers.get("content-length", "0")
    checks: tuple[tuple[bool, Refusal], ...] = (
        (headers.get("host", "") not in hosts, (421, "This page is not served under that name.")),
        (site not in ("none", "same-origin") and not opened, (403, "Another site asked for this.")),
        (method not in _SAFE and headers.get("origin") not in origins, (403, "Another site asked for this.")),
        (method not in _SAFE and "transfer-encoding" in headers, (411, "The length is missing.")),
        (not length.isdecimal() or int(length) > LARGEST, (413, "That is too long.")),
    )
    return next((refused for fails, refused in checks if fails), None)
