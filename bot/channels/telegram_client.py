"""Calls the Bot API through the client library, with the token kept in here.

No error, log line or trace made here holds the token. Knows no update and no parcel.
"""

import logging
import warnings
from typing import Any, Final
from urllib.parse import urlsplit

from telegram import Bot
from telegram.error import TelegramError
from telegram.warnings import PTBUserWarning

from bot.channels.telegram_errors import without_secret
from bot.channels.telegram_http import Http
from bot.ports import ChannelRefused

TELEGRAM_URL: Final = "https://api.telegram.org/bot"
"""Telegram's own Bot API."""

CONNECTIONS: Final = 16
"""Most sends in flight."""

QUIETED: Final = ("Please use 'Bot", ".*`retry_after` will be of type")
"""Warnings of the library: that it has methods of its own (the raw form is the point here), and of a coming type."""

HUSHED: Final[dict[str, int]] = {
    "httpx": logging.WARNING,
    "httpcore": logging.WARNING,
    "aiohttp": logging.WARNING,
    "telegram": logging.WARNING,
    "telegram.request.BaseRequest": logging.CRITICAL,  # logs an answer that it cannot read, whole, as an error
}
"""Logs of the libraries that hold the token (in addresses) or people's words; all they know comes as exceptions."""


class Client:
    """One bot at one Bot API. ``poll_seconds`` is how long getUpdates may wait for news."""

    def __init__(self, token: str, base_url: str | None, poll_seconds: int) -> None:
        """Raises ChannelRefused when the token cannot be one."""
        if not token or not token.isprintable() or any(letter.isspace() for letter in token):
            raise ChannelRefused("RUNGBOOK_TOKEN is no bot token; copy it anew from the account that made the bot.")
        for name, level in HUSHED.items():
            logging.getLogger(name).setLevel(level)
        self._token = token
        self._quiet: list[object] = []
        proxied = not _is_loopback(base_url)
        # Each time-out that comes too early turns a delivered message into a doubtful one, so reading may take long.
        polls = Http(1, poll_seconds + 10, proxied=proxied)
        sends = Http(CONNECTIONS, 20, proxied=proxied)
        self._requests = (polls, sends)
        self._bot = Bot(token, base_url=base_url or TELEGRAM_URL, request=sends, get_updates_request=polls)

    @property
    def bot_id(self) -> int:
        """The bot's user id, which its token begins with; 0 when it does not."""
        head = self._token.partition(":")[0]
        return int(head) if head.isdecimal() else 0

    async def call(self, method: str, **arguments: Any) -> Any:
        """One call; its result as plain JSON values. Raises FAILURES of telegram_errors."""
        if warnings.filters[: len(QUIETED)] != self._quiet:  # whoever collects warnings may have set them back
            for message in QUIETED:
                warnings.filterwarnings("ignore", message=message, category=PTBUserWarning)
            self._quiet = list(warnings.filters[: len(QUIETED)])
        return await self._bot.do_api_request(method, api_kwargs=arguments)

    def words_of(self, error: Exception) -> str:
        """What an error says, without the token; only its kind when it is not the library's (it may quote anything)."""
        said = str(error) if isinstance(error, TelegramError) else ""
        return without_secret(f"{type(error).__name__}: {said}".rstrip(": "), self._token)

    async def close(self) -> None:
        """Close the connections. Nothing can be called afterwards."""
        for request in self._requests:
            await request.shutdown()


def _is_loopback(base_url: str | None) -> bool:
    """An API on this machine is reached directly, whatever proxy the environment names."""
    return base_url is not None and urlsplit(base_url).hostname in {"127.0.0.1", "::1", "localhost"}
