"""What the page sends in, as JSON like the updates of any other channel. Knows no store and no lifter.

A message's number is made from a word that the page chose at random, so that one sent again after a lost connection
is the same update and changes nothing.
"""

import hashlib
import json
from dataclasses import dataclass
from typing import Any, Final

from bot.ports import Malformed, Media, Opened, Press, RawUpdate, Words

NAME: Final = "page"

_NUMBER_BITS: Final = 52
"""Numbers up to here are exact in a browser."""


@dataclass(frozen=True, slots=True)
class From:
    """Who sends it, and into which chat."""

    chat: int
    user: int
    private: bool


def number_of(nonce: str) -> int:
    """The number of what was sent with that word."""
    return int.from_bytes(hashlib.sha256(nonce.encode()).digest()[:8], "big") >> (64 - _NUMBER_BITS)


def words(sender: From, nonce: str, text: str, changes: int | None = None) -> RawUpdate:
    """Text, perhaps in the place of an earlier message."""
    number = number_of(nonce)
    body = {"text": text, "message": number if changes is None else changes, "edit": changes is not None}
    return _raw(sender, number, body)


def press(sender: From, nonce: str, data: str, message: int) -> RawUpdate:
    """An answer pressed under a message of ours."""
    return _raw(sender, number_of(nonce), {"press": data, "message": message})


def media(sender: From, nonce: str, kind: str, caption: str) -> RawUpdate:
    """Something that is not text. Only its kind comes in: what it shows is none of the service's."""
    number = number_of(nonce)
    return _raw(sender, number, {"media": kind, "text": caption, "message": number})


def open_update(raw: RawUpdate) -> Opened:
    """Read one update as it was kept. Never raises for what is in it."""
    try:
        row = json.loads(raw.body)
        user, private, message = int(row["user"]), bool(row["private"]), int(row["message"])
        if "press" in row:
            return Press(raw.chat, user, message, str(row["press"]), token="", private=private)
        if "media" in row:
            return Media(raw.chat, user, message, str(row["media"]), str(row["text"]), private=private)
        return Words(raw.chat, user, message, str(row["text"]), private=private, edit=bool(row["edit"]))
    except (ValueError, KeyError, TypeError):
        return Malformed("not from the page")


def _raw(sender: From, number: int, said: dict[str, Any]) -> RawUpdate:
    body = {"user": sender.user, "private": sender.private, **said}
    return RawUpdate(NAME, number, sender.chat, json.dumps(body))
