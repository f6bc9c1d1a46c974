"""Health, readiness and metrics over HTTP, for whoever runs the service. Says numbers and fixed words, nobody's data.

``/healthz``: the process answers. ``/readyz``: it can take messages (503 names what is not well). ``/metrics``: what
Prometheus reads. Meant for the machine's own network; it changes nothing and needs no secret.
"""

import asyncio
from collections.abc import Awaitable, Callable, Iterable, Mapping
from typing import Final

from prometheus_client import CONTENT_TYPE_LATEST, CollectorRegistry, generate_latest
from prometheus_client.core import GaugeMetricFamily, Metric
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Route

from bot import metrics
from bot.store.outbox import RANK
from bot.store.watch import UNFINISHED_IN, UNFINISHED_OUT, Figures

PATIENCE: Final = 3.0
"""Seconds after which a part that does not answer counts as not well."""

Look = Callable[[], Awaitable[Figures]]
Check = Callable[[], Awaitable[bool]]


def application(look: Look, checks: Mapping[str, Check]) -> Starlette:
    """``look`` asks the store what waits; ``checks`` say by name whether a part is well. Both may raise: not well."""

    async def health(_request: Request) -> Response:
        return PlainTextResponse("ok\n")

    async def ready(_request: Request) -> Response:
        well = {"store": await _answers(look), **{name: await _is_well(check) for name, check in checks.items()}}
        lines = "".join(f"{name}: {'ok' if fine else 'not ready'}\n" for name, fine in well.items())
        return PlainTextResponse(lines, 200 if all(well.values()) else 503)

    async def numbers(_request: Request) -> Response:
        found = await _figures(look)
        seen = CollectorRegistry()
        seen.register(_Seen(found))  # the library's own way to add numbers at reading
        body = generate_latest(metrics.REGISTRY) + generate_latest(seen)
        return Response(body, headers={"Content-Type": CONTENT_TYPE_LATEST})

    return Starlette(routes=[Route("/healthz", health), Route("/readyz", ready), Route("/metrics", numbers)])


async def _figures(look: Look) -> Figures | None:
    """What waits; None: the store does not answer."""
    try:
        async with asyncio.timeout(PATIENCE):
            return await look()
    except Exception:  # noqa: BLE001  # whatever it is, the store is down; the intake logs the reason
        return None


async def _answers(look: Look) -> bool:
    return await _figures(look) is not None


async def _is_well(check: Check) -> bool:
    try:
        async with asyncio.timeout(PATIENCE):
            return await check()
    except Exception:  # noqa: BLE001  # see above
        return False


class _Seen:
    """The store's numbers at this moment."""

    def __init__(self, found: Figures | None) -> None:
        self._found = found

    def collect(self) -> Iterable[Metric]:
        """Once for each reading."""
        found = self._found
        yield _one("rungbook_store_up", "Whether the store answers.", float(found is not None))
        if found is None:
            return
        came = GaugeMetricFamily("rungbook_inbox", "Messages not done, by state.", labels=["state"])
        for state in UNFINISHED_IN:
            came.add_metric([state], found.came_in.get(state, 0))
        yield came
        goes = GaugeMetricFamily("rungbook_outbox", "Messages not sent, by kind and state.", labels=["kind", "state"])
        for kind in RANK:
            for state in UNFINISHED_OUT:
                goes.add_metric([kind, state], found.goes_out.get((kind, state), 0))
        yield goes
        yield _one("rungbook_inbox_oldest_seconds", "Age of the oldest message that waits.", found.oldest_in)
        yield _one("rungbook_outbox_oldest_seconds", "Age of the oldest that waits to be sent.", found.oldest_out)
        yield _one("rungbook_halted_seconds", "How long the API told a whole bot to wait, from now.", found.halted)
        yield _one("rungbook_chats_closed", "Chats that are closed to us.", found.closed_chats)
        yield _one("rungbook_agenda_overdue", "Reminders that are due and not said.", found.overdue)


def _one(name: str, says: str, value: float) -> Metric:
    return GaugeMetricFamily(name, says, value=value)
