"""What `rungbook doctor` says of messages that wait, are doubtful or were given up, and of secrets. Changes nothing."""

import stat
from datetime import timedelta
from pathlib import Path
from typing import Final

from bot.config import Settings
from bot.store.watch import Figures

WAITS_TOO_LONG: Final = timedelta(minutes=10)
"""A message that came in is worked in moments; one this old says that nobody works. Judgement, no source."""

SHORTEST_SECRET: Final = 24
"""Letters of a hook's secret that cannot be guessed: 144 random bits in this alphabet. Judgement, no source."""

_OTHERS: Final = stat.S_IRWXG | stat.S_IRWXO

Said = tuple[bool, str]
"""Whether it is well, and the words for it."""


def came_in(seen: Figures) -> Said:
    """Messages that are not worked."""
    waiting, dead, aside = (seen.came_in.get(state, 0) for state in ("waiting", "dead", "aside"))
    counts = f"{waiting} wait, {dead} could not be worked, {aside} were in no known shape"
    if seen.oldest_in > WAITS_TOO_LONG.total_seconds():
        return False, f"{counts}; the oldest waits {_span(seen.oldest_in)}: is `rungbook serve` running?"
    if dead:
        return False, f"{counts}: look for message_failed in the log, and report it"
    return True, counts


def goes_out(seen: Figures) -> Said:
    """Letters that are not sent. Those given up are no fault of ours as a rule: the chat is closed."""
    counts = {state: _of(seen, state) for state in ("undrawn", "queued", "uncertain", "dead")}
    words = (
        f"{counts['queued'] + counts['undrawn']} wait, {counts['uncertain']} may or may not have arrived, "
        f"{counts['dead']} were given up{_by_kind(seen)}; {seen.closed_chats} chats are closed to us"
    )
    if seen.halted > 0:
        return True, f"{words}; Telegram told us to wait {_span(seen.halted)} more"
    if seen.oldest_out > WAITS_TOO_LONG.total_seconds():
        return False, f"{words}; the oldest waits {_span(seen.oldest_out)}: is Telegram reachable from here?"
    return True, words


def secrets(settings: Settings, file: Path) -> Said:
    """Whether the secrets are for us alone and long enough. They are not shown."""
    if file.exists() and file.stat().st_mode & _OTHERS:
        return False, f"others may read {file}, which holds secrets: chmod 600 it"
    secret = settings.secret.get_secret_value() if settings.secret is not None else None
    if settings.intake == "webhook" and secret is not None and len(secret) < SHORTEST_SECRET:
        return (
            False,
            f"RUNGBOOK_SECRET is short: take {SHORTEST_SECRET} letters or more, as from `openssl rand -hex 32`",
        )
    return True, "for their owner alone"


def _of(seen: Figures, state: str) -> int:
    return sum(number for (_, each), number in seen.goes_out.items() if each == state)


def _by_kind(seen: Figures) -> str:
    parts = [
        f"{number} {kind}" for (kind, state), number in sorted(seen.goes_out.items()) if state == "dead" and number
    ]
    return f" ({', '.join(parts)})" if parts else ""


def _span(seconds: float) -> str:
    return f"{seconds / 60:.0f} min" if seconds < 2 * 3600 else f"{seconds / 3600:.0f} h"
