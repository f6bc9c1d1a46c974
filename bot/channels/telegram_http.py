"""The client library's way over the wire, on aiohttp: a send takes a quarter of what the library's own way takes.

Measured with 16 sends in flight; the library's own gets slower with each more. Knows no method and keeps no token.
"""

from typing import Any, Final

import aiohttp
from telegram.error import NetworkError, TimedOut
from telegram.request import BaseRequest, RequestData

NOT_SENT: Final = (aiohttp.ClientConnectorError, aiohttp.ConnectionTimeoutError)
"""Causes that came before the first byte went out (no connection, or none free in time)."""

_CONNECT_S: Final = 10.0
_FREE_S: Final = 20.0
"""Seconds to wait for one of the connections to be free, and to connect."""


class Http(BaseRequest):
    """Some connections that are kept open. ``proxied``: through the proxy that the environment names."""

    def __init__(self, connections: int, read_s: float, *, proxied: bool) -> None:
        """``read_s``: seconds without a word from the other side after which an answer is given up."""
        self._connections = connections
        self._proxied = proxied
        self._read_s = read_s
        self._session: aiohttp.ClientSession | None = None
        self._closed = False

    @property
    def read_timeout(self) -> float | None:
        """Seconds."""
        return self._read_s

    async def initialize(self) -> None:
        """Get ready; the first call does it too."""
        self._opened()

    async def shutdown(self) -> None:
        """Close the connections. Nothing can be called afterwards."""
        self._closed = True
        if self._session is not None:
            await self._session.close()

    async def do_request(
        self, url: str, method: str, request_data: RequestData | None = None, *_: Any, **__: Any
    ) -> tuple[int, bytes]:
        """One call: the status and the body. Raises TimedOut and NetworkError, whose cause says how far it came."""
        try:
            async with self._opened().request(method, url, data=_body(request_data)) as answer:
                return answer.status, await answer.read()
        except TimeoutError as late:
            raise TimedOut from late
        except aiohttp.ClientError as trouble:
            raise NetworkError(type(trouble).__name__) from trouble

    def _opened(self) -> aiohttp.ClientSession:
        if self._closed:
            raise RuntimeError("the connections are closed")
        if self._session is None:
            self._session = aiohttp.ClientSession(
                connector=aiohttp.TCPConnector(limit=self._connections),
                timeout=aiohttp.ClientTimeout(
                    total=None, connect=_FREE_S, sock_connect=_CONNECT_S, sock_read=self._read_s
                ),
                headers={"User-Agent": self.USER_AGENT},
                cookie_jar=aiohttp.DummyCookieJar(),
                trust_env=self._proxied,
            )
        return self._session


def _body(asked: RequestData | None) -> aiohttp.FormData | dict[str, str] | None:
    if asked is None or not asked.contains_files:
        return asked.json_parameters if asked is not None else None
    form = aiohttp.FormData()
    for name, value in asked.json_parameters.items():
        form.add_field(name, value)
    for name, (called, content, kind) in asked.multipart_data.items():
        form.add_field(name, content, filename=called, content_type=kind)
    return form
