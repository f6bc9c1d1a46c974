"""Logging: JSON lines when nobody watches, secrets struck out last of all. No text of a message, no name, is logged.

Bugs are logged by kind and place, without their words: these may quote what someone wrote.
"""

import logging
import re
import sys
from collections.abc import MutableMapping
from typing import Any, Final, TextIO

import structlog
from structlog.typing import Processor

from bot import metrics

_QUIET: Final = (
    "httpx",
    "httpcore",
    "telegram",
    "aiosqlite",
    "sqlalchemy",
    "alembic",
    "apscheduler",
    "asyncio",
    "procrastinate",
    "psycopg",
)
"""Libraries whose chatter can hold addresses with the token in them, or people's words."""

_TOKEN: Final = re.compile(r"\d{3,12}(?::|%3[Aa])[A-Za-z0-9_-]{30,}")
_STRUCK: Final = "[token]"


def struck(text: str) -> str:
    """The text without anything that looks like a bot's token."""
    return _TOKEN.sub(_STRUCK, text)


def set_up(level: str, out: TextIO | None = None) -> None:
    """Everything that is logged, by us or by a library, goes to ``out`` (standard error) through one renderer."""
    stream = out or sys.stderr
    shared: list[Processor] = [
        structlog.contextvars.merge_contextvars,
        structlog.stdlib.add_log_level,
        structlog.processors.TimeStamper(fmt="iso", utc=True),
    ]
    formatter = structlog.stdlib.ProcessorFormatter(
        foreign_pre_chain=shared,
        processors=[
            structlog.stdlib.ProcessorFormatter.remove_processors_meta,
            structlog.processors.format_exc_info,
            structlog.dev.ConsoleRenderer() if stream.isatty() else structlog.processors.JSONRenderer(),
            _strike,
        ],
    )
    handler = logging.StreamHandler(stream)
    handler.setFormatter(formatter)
    top = logging.getLogger()
    top.handlers[:] = [handler]
    top.setLevel(level.upper())
    for name in _QUIET:
        logging.getLogger(name).setLevel(max(logging.WARNING, top.level))
    structlog.configure(
        processors=[
            metrics.count_event,  # before anything is filtered out
            structlog.stdlib.filter_by_level,
            *shared,
            structlog.stdlib.ProcessorFormatter.wrap_for_formatter,
        ],
        logger_factory=structlog.stdlib.LoggerFactory(),
        wrapper_class=structlog.stdlib.BoundLogger,
        cache_logger_on_first_use=False,
    )


def fault(log: Any, event: str, bug: BaseException, **facts: object) -> None:
    """Log a failure: what kind it was and where it arose, never what it says."""
    log.error(event, kind=type(bug).__name__, at=place_of(bug), **facts)


def place_of(bug: BaseException) -> str:
    """The module and line where a failure arose."""
    trace = bug.__traceback__
    while trace is not None and trace.tb_next is not None:
        trace = trace.tb_next
    return f"{trace.tb_frame.f_globals.get('__name__')}:{trace.tb_lineno}" if trace is not None else ""


def _strike(_log: object, _method: str, rendered: MutableMapping[str, Any] | str) -> str:
    """The last processor: whatever was put together before, no token leaves."""
    return struck(str(rendered))
