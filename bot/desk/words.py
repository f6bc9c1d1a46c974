"""What the desk says, by key. A table: no conditions in it. Slots are filled by ``say``."""

from typing import Final

_TEXTS: Final = {
    "stranger": (
        "This is the check-in of a strength coach, and I don't know you yet, so I keep nothing of what you wrote. "
        "A coach's invitation lets you in: open its link, or send /start and the code."
    ),
    "code_unknown": "I don't know that code. Check that it is all there, or ask your coach for a new one.",
    "code_used": "That code was used already. Ask your coach for a new one.",
    "code_expired": "That code is past its week. Ask your coach for a new one.",
    "code_wait": "Too many codes that don't work. Wait an hour, then send yours once more.",
    "code_own": "That code is for your client. Send it to them; it waits until they use it.",
    "code_private": "Please send the code to me alone, not in a group.",
    "joined_coach": (
        "You are in, {name}. Write: invite NAME, and pass the link on. Alerts and notes from your clients come here."
    ),
    "group_kept_one": "Kept: {count} set. The rest is in your own chat.",
    "group_kept": "Kept: {count} sets. The rest is in your own chat.",
    "group_answered": "The answer is in your own chat.",
    "sorry": "I stumbled over that message. It is kept as you wrote it, but not counted; please say it another way.",
}


def say(key: str, *, count: int | None = None, **slots: str) -> str:
    """The text of that key, its slots filled; for a ``count`` of one its ``_one`` form, where there is one."""
    one = f"{key}_one" if count == 1 else key
    return _TEXTS.get(one, _TEXTS[key]).format(count=count, **slots)


def known() -> tuple[str, ...]:
    """Every key of the table."""
    return tuple(_TEXTS)
