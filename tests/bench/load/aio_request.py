"""The client library's HTTP layer over aiohttp: one class, for the second echo of the bench."""

from typing import Any

import aiohttp
from telegram.error import NetworkError, TimedOut
from telegram.request import BaseRequest, RequestData


class AioRequest(BaseRequest):
    """Keeps connections open and asks with the library's own arguments."""

    def __init__(self) -> None:
        self._session: aiohttp.ClientSession | None = None

    @property
    def read_timeout(self) -> float | None:
        """Seconds."""
        return 20.0

    async def initialize(self) -> None:
        """Open."""
        if self._session is None:
            self._session = aiohttp.ClientSession()

    async def shutdown(self) -> None:
        """Close."""
        if self._session is not None:
            await self._session.close()

    async def do_request(
        self, url: str, method: str, request_data: RequestData | None = None, *_: Any, **__: Any
    ) -> tuple[int, bytes]:
        """One call."""
        if self._session is None:
            await self.initialize()
        fields = request_data.json_parameters if request_data is not None else None
        try:
            async with self._session.request(method, url, data=fields) as answer:  # type: ignore[union-attr]
                return answer.status, await answer.read()
        except TimeoutError as late:
            raise TimedOut from late
        except aiohttp.ClientError as trouble:
            raise NetworkError(str(trouble)) from trouble
