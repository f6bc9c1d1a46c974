"""What an exception of the client library means for a delivery, as a table. Knows no network, no clock and no token.

The order matters: the library makes BadRequest a kind of NetworkError, and a 400 must not be tried again for ever.
"""

import warnings
from collections.abc import Callable
from datetime import timedelta
from typing import Final

from telegram.error import (
    BadRequest,
    ChatMigrated,
    Conflict,
    EndPointNotFound,
    Forbidden,
    InvalidToken,
    NetworkError,
    RetryAfter,
    TelegramError,
)

from bot.channels import telegram_http
from bot.ports import Delivery, Later, Moved, Refused, Sent, Uncertain

UNREADABLE: Final = (AttributeError, KeyError, RecursionError, TypeError, ValueError)
"""What the client library lets through when an answer is JSON of another shape than the Bot API's."""

FAILURES: Final = (TelegramError, *UNREADABLE)
"""All that a request can raise for what the world does."""

REFUSED_TOKEN: Final = (InvalidToken, EndPointNotFound)
"""401 and 404: a wrong token, or an address that is no Bot API."""

THREAD_GONE: Final = ("message thread not found", "topic_closed", "topic_deleted")
"""The topic cannot be written in; the chat's general one can."""

MESSAGE_GONE: Final = ("message to edit not found", "message can't be edited", "message_id_invalid")
"""The message that was to be written over is not there any more, or too old."""

BAD_REQUESTS: Final[tuple[tuple[str, Delivery], ...]] = (
    ("message is not modified", Sent()),
    ("query is too old", Sent()),
    ("chat not found", Refused("chat not found", chat_gone=True)),
)
"""Texts of a 400, lower case, that are no plain refusal."""

NOT_SENT: Final = telegram_http.NOT_SENT
"""Causes that came before the first byte went out, so that trying again cannot double a message."""

UNREACHABLE_WAIT: Final = 5.0
"""Seconds until the next try when the API could not be reached."""

REFUSED_WAIT: Final = 60.0
"""Seconds until the next try when the API does not know us (the token may be mended meanwhile)."""


def delivery_of(error: Exception, why: str) -> Delivery:
    """What became of a message whose sending raised ``error``. ``why`` is its text without secrets."""
    for kind, read in _TABLE:
        if isinstance(error, kind):
            return read(error, why)
    return Uncertain(why)  # sent, and the answer made no sense


def flood_seconds(error: RetryAfter) -> float:
    """How long a 429 asks us to wait, in seconds. The library gives a number with a warning, or a timedelta."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        wait = error.retry_after
    return wait.total_seconds() if isinstance(wait, timedelta) else float(wait)


def webhook_is_set(error: Exception) -> bool:
    """Whether a poll was refused because updates are brought to a webhook."""
    return isinstance(error, Conflict) and "webhook" in str(error).lower()


def thread_is_gone(error: Exception) -> bool:
    """Whether a message was refused only for the topic that it was meant for."""
    return isinstance(error, BadRequest) and any(text in str(error).lower() for text in THREAD_GONE)


def message_is_gone(error: Exception) -> bool:
    """Whether a message could not be written over, so that it must be sent anew."""
    return isinstance(error, BadRequest) and any(text in str(error).lower() for text in MESSAGE_GONE)


def without_secret(text: str, token: str) -> str:
    """The text with the secret half of the token blotted out, wherever it stands."""
    secret = token.rpartition(":")[2]
    return text.replace(secret, "[token]") if secret else text.replace(token, "[token]")


def _flood(error: Exception, _why: str) -> Delivery:
    assert isinstance(error, RetryAfter)  # noqa: S101 - the table pairs it
    return Later(flood_seconds(error), scope="chat")


def _migrated(error: Exception, _why: str) -> Delivery:
    assert isinstance(error, ChatMigrated)  # noqa: S101 - the table pairs it
    return Moved(error.new_chat_id)


def _closed(_error: Exception, why: str) -> Delivery:
    return Refused(why, chat_gone=True)


def _bad_request(error: Exception, why: str) -> Delivery:
    text = str(error).lower()
    return next((meaning for part, meaning in BAD_REQUESTS if part in text), Refused(why))


def _unknown_here(_error: Exception, _why: str) -> Delivery:
    return Later(REFUSED_WAIT, scope="bot")


def _network(error: Exception, why: str) -> Delivery:
    return Later(UNREACHABLE_WAIT, scope="bot") if isinstance(error.__cause__, NOT_SENT) else Uncertain(why)


_TABLE: Final[
    tuple[tuple[type[Exception] | tuple[type[Exception], ...], Callable[[Exception, str], Delivery]], ...]
] = (
    (RetryAfter, _flood),
    (ChatMigrated, _migrated),
    (Forbidden, _closed),
    (BadRequest, _bad_request),
    ((*REFUSED_TOKEN, Conflict), _unknown_here),
    (NetworkError, _network),
)
