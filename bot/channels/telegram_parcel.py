"""Turns a parcel into the requests that deliver it: texts in bounds, buttons, a document. Pure; sends nothing.

Texts go out without entities or markup, so nothing that a person wrote can break them.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, Final

from telegram import InputFile

from bot.ports import Parcel

TEXT_UNITS: Final = 4096
"""Longest text of a message, in UTF-16 units (Bot API, sendMessage: 4096 characters)."""

CAPTION_UNITS: Final = 1024
"""Longest caption of a picture or a document, in UTF-16 units (Bot API: 1024 characters)."""

PHOTO_BYTES: Final = 10_000_000
PHOTO_PIXELS: Final = 10_000
PHOTO_RATIO: Final = 20
"""What is shown as a picture (Bot API, sendPhoto): up to 10 MB, width and height together, the one by the other."""
_PNG: Final = b"\x89PNG\r\n\x1a\n"
_SIZE_AT: Final = (16, 20)
"""Where a PNG tells its width and its height."""

DATA_BYTES: Final = 64
"""Longest data of a button, in bytes of UTF-8 (Bot API, InlineKeyboardButton: 1-64 bytes)."""

ROW_LETTERS: Final = 28
"""About the width of a phone: labels share a row up to this many letters. Judgement, no source."""

ROW_BUTTONS: Final = 4
"""Most buttons in a row. Judgement, no source."""


@dataclass(frozen=True, slots=True)
class Request:
    """One call of the Bot API."""

    method: str
    arguments: Mapping[str, Any]


def requests_of(parcel: Parcel) -> tuple[Request, ...]:
    """The calls that deliver a parcel, in order; none when it holds nothing. The buttons hang on the last one."""
    texts = split(clean(parcel.text), TEXT_UNITS)
    caption = ""
    if parcel.attachment is not None and texts and units(texts[-1]) <= CAPTION_UNITS:
        caption, texts = texts[-1], texts[:-1]
    calls = [Request("sendMessage", _text(parcel, text)) for text in texts]
    if parcel.attachment is not None:
        calls.append(_file(parcel, parcel.attachment, caption))
    if parcel.edits is not None and len(calls) == 1 and calls[0].method == "sendMessage":
        calls = [Request("editMessageText", {**_over(calls[0].arguments), "message_id": parcel.edits})]
    markup = _markup(parcel.buttons)
    if calls and markup is not None:
        calls[-1] = Request(calls[-1].method, {**calls[-1].arguments, "reply_markup": markup})
    return tuple(calls)


def without_thread(request: Request) -> Request:
    """The same call for the chat's general topic."""
    kept = {key: value for key, value in request.arguments.items() if key != "message_thread_id"}
    return Request(request.method, kept)


def anew(request: Request) -> Request:
    """The same words as a new message, where the one to be written over is gone."""
    return Request("sendMessage", {key: value for key, value in request.arguments.items() if key != "message_id"})


def unpressable(parcel: Parcel) -> tuple[str, ...]:
    """Labels of the buttons that Telegram would refuse, with the whole message. They are left out: typing works too."""
    return tuple(label for label, data in parcel.buttons if not _pressable(label, data))


def units(text: str) -> int:
    """Length in UTF-16 units, as Telegram counts."""
    return len(text.encode("utf-16-le")) // 2


def clean(text: str) -> str:
    """The text with halves of characters (lone surrogates), which cannot be sent, replaced."""
    return text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "replace")


def split(text: str, limit: int) -> tuple[str, ...]:
    """The text in pieces of at most ``limit`` UTF-16 units: cut at line ends, else at spaces, else anywhere.

    Pieces of nothing but white space are left out; Telegram refuses them.
    """
    pieces = []
    rest = text
    while units(rest) > limit:
        most = len(rest.encode("utf-16-le")[: 2 * limit].decode("utf-16-le", "ignore"))
        cut = next((at for mark in "\n " if (at := rest.rfind(mark, 0, most + 1)) > 0), most)
        pieces.append(rest[:cut])
        rest = rest[cut:].removeprefix("\n")
    pieces.append(rest)
    return tuple(piece for piece in pieces if piece.strip())


def _text(parcel: Parcel, text: str) -> dict[str, Any]:
    return {**_address(parcel), "text": text, "link_preview_options": {"is_disabled": True}}


def _over(arguments: Mapping[str, Any]) -> dict[str, Any]:
    """What may be said when writing over: the message stays in its topic."""
    return {key: value for key, value in arguments.items() if key != "message_thread_id"}


def _file(parcel: Parcel, attachment: tuple[str, bytes], caption: str) -> Request:
    """A picture to be seen in the chat, where it is one that Telegram shows; all else as a document."""
    name, content = attachment
    method, field = ("sendPhoto", "photo") if _is_shown(content) else ("sendDocument", "document")
    arguments = {**_address(parcel), field: InputFile(content, filename=name)}
    return Request(method, {**arguments, "caption": caption} if caption else arguments)


def _is_shown(content: bytes) -> bool:
    if not content.startswith(_PNG) or len(content) > PHOTO_BYTES:
        return False
    wide, high = (int.from_bytes(content[at : at + 4], "big") for at in _SIZE_AT)
    return wide + high <= PHOTO_PIXELS and max(wide, high) <= PHOTO_RATIO * min(wide, high)


def _address(parcel: Parcel) -> dict[str, Any]:
    address: dict[str, Any] = {"chat_id": parcel.chat}
    if parcel.thread is not None:
        address["message_thread_id"] = parcel.thread
    return address


def _markup(buttons: tuple[tuple[str, str], ...]) -> dict[str, Any] | None:
    rows: list[list[dict[str, str]]] = []
    width = 0
    for label, data in buttons:
        if not _pressable(label, data):
            continue
        width += len(label)
        if not rows or width > ROW_LETTERS or len(rows[-1]) == ROW_BUTTONS:
            rows.append([])
            width = len(label)
        rows[-1].append({"text": clean(label), "callback_data": data})
    return {"inline_keyboard": rows} if rows else None


def _pressable(label: str, data: str) -> bool:
    return bool(label.strip()) and 1 <= len(data.encode("utf-8", "surrogatepass")) <= DATA_BYTES
