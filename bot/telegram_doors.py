"""Where a service is reached from outside: the address to which Telegram brings updates, and that of its metrics.

Both serve all bots of the process; neither is there unless its setting is.
"""

import asyncio
from collections.abc import Coroutine, Sequence
from functools import partial
from typing import Any

from bot import listening
from bot.channels.telegram import Telegram
from bot.clock import now
from bot.config import Settings, hook_of
from bot.staff import Staff


def watched(
    settings: Settings, staffs: Sequence[Staff], channels: Sequence[Telegram]
) -> list[Coroutine[Any, Any, None]]:
    """Health and metrics at their address, where one is set. Raises StoreError when it is taken."""
    if settings.status_listen is None:
        return []
    from bot import status
    from bot.store import watch

    async def look() -> watch.Figures:
        return watch.together([await one.of.store.read(partial(watch.figures, now=now())) for one in staffs])

    names = [f"telegram {one.of.name}".strip() for one in staffs]
    checks = {name: channel.is_known for name, channel in zip(names, channels, strict=True)}
    taken = listening.bind(settings.status_listen, "RUNGBOOK_STATUS_LISTEN")
    return [listening.serve(status.application(look, checks), taken)]


def hooked(
    settings: Settings, staffs: Sequence[Staff], channels: Sequence[Telegram]
) -> Coroutine[Any, Any, None] | None:
    """Take the address at which Telegram brings updates; what is given back serves there, and tells Telegram so.

    None: updates are polled for. Raises SettingsError and StoreError.
    """
    hook = hook_of(settings)
    if hook is None:
        return None
    from bot.channels.telegram_hook import Door, application

    pairs = list(zip(staffs, channels, strict=True))
    doors = {staff.of.name: Door(channel.name, staff.intake.keep, channel.kept) for staff, channel in pairs}
    secret = hook.secret.get_secret_value()
    app = application(secret, doors)
    taken = listening.bind(hook.listen, "RUNGBOOK_LISTEN")

    async def serving() -> None:
        async with asyncio.TaskGroup() as tasks:
            tasks.create_task(listening.serve(app, taken))
            for staff, channel in pairs:
                name = staff.of.name
                own = f"{hook.public_url.rstrip('/')}/{name}" if name else hook.public_url
                tasks.create_task(channel.start_hook(own, secret))

    return serving()
