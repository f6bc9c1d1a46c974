"""Looks at everything that the service stands on, and says what to mend. Changes nothing but what it can rebuild."""

import base64
import json
import math
import re
import stat
import struct
from dataclasses import dataclass
from datetime import UTC, datetime
from functools import partial
from importlib.metadata import version
from pathlib import Path
from typing import Any, Final
from zoneinfo import ZoneInfo, ZoneInfoNotFoundError

from sqlalchemy import Connection, text

from bot import config, doctor_waiting
from bot.clock import now
from bot.folding import FOLDING
from bot.ports import StoreError
from bot.store import people, progress, watch
from bot.store.engine import Store
from bot.store.urls import file_of, is_served

_BUILT: Final = datetime(2026, 11, 1, tzinfo=UTC)
"""A clock before this version was written is wrong."""

_TOKEN: Final = re.compile(r"\d{3,12}:[A-Za-z0-9_-]{30,}")
SAME: Final = 1e-9
"""Estimates closer than this are the same."""
_OTHERS: Final = stat.S_IRWXG | stat.S_IRWXO


@dataclass(frozen=True, slots=True)
class Finding:
    """What was looked at, whether it is well, and the words for it (the remedy, when it is not)."""

    about: str
    well: bool
    words: str


async def examine(url: str | None, *, rebuild: bool) -> list[Finding]:
    """Look at everything. Raises nothing for what it finds."""
    try:
        settings = config.load()
    except config.SettingsError as wrong:
        return [Finding("settings", False, str(wrong)), _clock(), _zones()]  # noqa: FBT003
    where = url or settings.store
    safe = Finding("secrets", *doctor_waiting.secrets(settings, Path(".env")))
    return [
        _settings(),
        _token(settings),
        safe,
        _hook(settings),
        _clock(),
        _zones(),
        *await _store(where, rebuild=rebuild),
    ]


def _settings() -> Finding:
    unknown = config.unknown_names()
    words = f"unknown: {', '.join(unknown)}; check the spelling" if unknown else "every one is understood"
    return Finding("settings", not unknown, words)


def _token(settings: config.Settings) -> Finding:
    if settings.token is None:
        return Finding("token", well=True, words="none is set; only `rungbook serve` needs one")
    fits = _TOKEN.fullmatch(settings.token.get_secret_value()) is not None
    words = "has the shape of a bot's token" if fits else "RUNGBOOK_TOKEN takes " + config.REMEDIES["token"]
    return Finding("token", fits, words)


def _hook(settings: config.Settings) -> Finding:
    try:
        hook = config.hook_of(settings)
    except config.SettingsError as wrong:
        return Finding("intake", well=False, words=str(wrong))
    words = "updates are polled for" if hook is None else f"updates are brought to {hook.public_url}"
    return Finding("intake", well=True, words=words)


def _clock() -> Finding:
    moment = now()
    well = moment > _BUILT
    words = f"{moment:%Y-%m-%d %H:%M} UTC" + ("" if well else ", which is past: set the machine's clock")
    return Finding("clock", well, words)


def _zones() -> Finding:
    try:
        ZoneInfo("Pacific/Chatham")
    except ZoneInfoNotFoundError:
        return Finding("time zones", well=False, words="no data: install tzdata")
    return Finding("time zones", well=True, words=f"tzdata {version('tzdata')}")


async def _store(url: str, *, rebuild: bool) -> list[Finding]:
    try:
        if is_served(url):
            return await _database(url, rebuild=rebuild)
        file = file_of(url)
        if not file.exists():
            return [Finding("store", well=True, words=f"none yet at {file}; it is made when the service starts")]
        async with await Store.open(url, hold=False, create=False) as store:
            found = [await store.read(_tables), _rights(file), await store.read(_people), *await _waiting(store)]
            return [*found, await _estimates(store)] if rebuild else found
    except StoreError as trouble:
        return [Finding("store", well=False, words=str(trouble))]


async def _database(url: str, *, rebuild: bool) -> list[Finding]:
    from bot import doctor_database as looks

    unmade = await looks.unmade(url)
    if unmade is not None:
        return [Finding("store", *unmade), Finding("copies", *looks.copies())]
    async with await Store.open(url, hold=False, create=False) as store:
        seen = {"store": await store.read(looks.server), "queue": await store.read(looks.queue)}
        seen["copies"] = looks.copies()
        found = [*(Finding(about, *said) for about, said in seen.items()), await store.read(_people)]
        found += await _waiting(store)
        return [*found, await _estimates(store)] if rebuild else found


async def _waiting(store: Store) -> list[Finding]:
    seen = await store.read(partial(watch.figures, now=now()))
    said = {"messages": doctor_waiting.came_in(seen), "letters": doctor_waiting.goes_out(seen)}
    return [Finding(about, *words) for about, words in said.items()]


def _tables(conn: Connection) -> Finding:
    said = conn.execute(text("PRAGMA quick_check")).scalar()
    broken = conn.execute(text("PRAGMA foreign_key_check")).all()
    well = said == "ok" and not broken
    return Finding("store", well, "whole" if well else "damaged: put the last backup back with `rungbook restore`")


def _rights(file: Path) -> Finding:
    others = [name for name in (file, *file.parent.glob(f"{file.name}-*")) if name.stat().st_mode & _OTHERS]
    words = f"others may read {others[0]}: chmod 600 it" if others else "only its owner may read it"
    return Finding("rights", not others, words)


def _people(conn: Connection) -> Finding:
    bad = sorted({one.zone for one in people.lifters(conn) if not _is_zone(one.zone)})
    words = (
        f"unknown time zones: {', '.join(bad)}; install a newer tzdata"
        if bad
        else f"{len(people.lifters(conn))} lifters"
    )
    return Finding("people", not bad, words)


def _is_zone(name: str) -> bool:
    try:
        return bool(ZoneInfo(name))
    except (ZoneInfoNotFoundError, ValueError):
        return False


async def _estimates(store: Store) -> Finding:
    """Build every estimate again from the acts and compare; what differs is dropped, to be built again when needed."""
    gaps = [await store.write(partial(_gaps, who=one.id)) for one in await store.read(people.lifters)]
    every = [gap for lifter in gaps for gap in lifter]
    compared = f"{len(every)} estimates of {len(gaps)} lifters built again from the acts"
    different = [gap for gap in every if gap > SAME]
    if different:
        words = f"{compared}: {len(different)} differ; they are built again at the lifter's next message"
        return Finding("estimates", well=False, words=words)
    return Finding("estimates", well=True, words=f"{compared}, largest difference {max(every, default=0.0):g}")


def _gaps(conn: Connection, who: int) -> list[float]:
    """How far each estimate of a lifter is from the one that the acts give."""
    held = progress.cached(conn, who, FOLDING.version)
    fresh = progress.rebuilt(conn, who, FOLDING)
    gaps = {
        name: distance(json.loads(body), json.loads(fresh[name])) if name in fresh else math.inf
        for name, body in held.items()
    }
    progress.empty(conn, who, [name for name, gap in gaps.items() if gap > SAME])
    return list(gaps.values())


def distance(one: Any, other: Any) -> float:
    """The largest difference between the numbers of two JSON values; infinite where anything else differs."""
    if isinstance(one, bool) or isinstance(other, bool) or one is None or other is None:
        return 0.0 if one is other else math.inf
    if isinstance(one, int | float) and isinstance(other, int | float):
        return abs(one - other)
    if isinstance(one, dict) and isinstance(other, dict) and one.keys() == other.keys():
        return max((distance(one[key], other[key]) for key in one), default=0.0)
    if isinstance(one, list) and isinstance(other, list) and len(one) == len(other):
        return max((distance(*pair) for pair in zip(one, other, strict=True)), default=0.0)
    if isinstance(one, str) and isinstance(other, str) and one != other:
        packed = _doubles(one), _doubles(other)
        return distance(*packed) if None not in packed else math.inf
    return 0.0 if one == other else math.inf


def _doubles(packed: str) -> list[float] | None:
    """The numbers of a text that is base64 of doubles; None: it is no such text."""
    try:
        raw = base64.b64decode(packed, validate=True)
        return [number for (number,) in struct.iter_unpack("<d", raw)]
    except (ValueError, struct.error):
        return None
