"""Updates as Telegram makes them, for tests: plain objects, without ``update_id`` (the server numbers them)."""

from typing import Any

BOT_ID = 123456789
USERNAME = "rungbook_test_bot"
TOKEN = f"{BOT_ID}:AAtest-token-for-the-loopback_only00000"

Update = dict[str, Any]


def user(number: int, **more: object) -> dict[str, Any]:
    """A person."""
    return {"id": number, "is_bot": False, "first_name": f"P{number}", "language_code": "en", **more}


def us() -> dict[str, Any]:
    """The bot itself, as the author of a message."""
    return {"id": BOT_ID, "is_bot": True, "first_name": "Test", "username": USERNAME}


def chat_of(number: int) -> dict[str, Any]:
    """A chat: private with a positive id, else a supergroup, as in the Bot API."""
    return {"id": number, "type": "private" if number > 0 else "supergroup"}


def message(chat: int, message_id: int = 1, *, sender: int | None = None, **more: object) -> Update:
    """A message with whatever it holds."""
    author = user(sender if sender is not None else chat)
    return {"message": {"message_id": message_id, "date": 0, "chat": chat_of(chat), "from": author, **more}}


def text(chat: int, words: str, message_id: int = 1, **more: Any) -> Update:
    """A typed message."""
    return message(chat, message_id, text=words, **more)


def edit(chat: int, words: str, message_id: int = 1, **more: Any) -> Update:
    """The same message, changed afterwards."""
    return {"edited_message": {**text(chat, words, message_id, **more)["message"], "edit_date": 1}}


def press(chat: int, data: str, message_id: int = 1, *, sender: int | None = None, token: str = "q1") -> Update:
    """A pressed button under a message of ours."""
    shown = {"message_id": message_id, "date": 0, "chat": chat_of(chat), "from": us()}
    author = user(sender if sender is not None else chat)
    return {"callback_query": {"id": token, "from": author, "message": shown, "chat_instance": "1", "data": data}}


def membership(chat: int, old: str, new: str, **more: object) -> Update:
    """Our own standing in a chat changed."""
    return {
        "my_chat_member": {
            "chat": chat_of(chat),
            "from": user(abs(chat)),
            "date": 0,
            "old_chat_member": {"user": us(), "status": old},
            "new_chat_member": {"user": us(), "status": new, **more},
        }
    }
