"""What is counted while the service runs, in the shape that Prometheus reads. No person, chat, text, name or token.

Every label is one of a few fixed words: nothing that came in becomes a label. What waits is not counted here but asked
of the store when somebody looks (bot/status.py), so that it is true after a restart and with many processes.
"""

import re
from collections.abc import MutableMapping
from typing import Any, Final

from prometheus_client import CollectorRegistry, Counter, Histogram

REGISTRY: Final = CollectorRegistry()
"""Ours alone: the library's own would add the machine's paths."""

_SECONDS: Final = (0.005, 0.01, 0.025, 0.05, 0.1, 0.15, 0.25, 0.5, 1.0, 2.5, 10.0, 60.0)

UPDATES: Final = Counter("rungbook_updates", "Updates that came in.", ("seen",), registry=REGISTRY)
"""``seen``: new, or again (brought twice, kept once)."""

WORKED: Final = Counter("rungbook_worked", "Messages worked.", ("result",), registry=REGISTRY)
"""``result``: done, failed (tried again), dead (given up)."""

ANSWER: Final = Histogram(
    "rungbook_answer_seconds", "From kept to worked and committed.", buckets=_SECONDS, registry=REGISTRY
)

SLOWED: Final = Counter("rungbook_slowed", "Waits of a chat from which too much came.", registry=REGISTRY)

SENDS: Final = Counter("rungbook_sends", "Sends, by what became of them.", ("kind", "result"), registry=REGISTRY)
"""``kind``: of bot.store.outbox.Kind; ``result``: sent, later, uncertain, refused, moved."""

EVENTS: Final = Counter("rungbook_events", "Lines of the log, by event.", ("event", "level"), registry=REGISTRY)

_EVENT: Final = re.compile(r"[a-z][a-z_]{0,40}")


def count_event(_log: object, level: str, line: MutableMapping[str, Any]) -> MutableMapping[str, Any]:
    """Count a line of the log by its event, which is a fixed word; anything else counts as ``other``."""
    event = line.get("event")
    known = isinstance(event, str) and _EVENT.fullmatch(event) is not None
    EVENTS.labels(event if known else "other", level).inc()
    return line
