"""Which time zones there are, as core asks for them: places in plain words. Reads the time zone data once."""

from datetime import datetime, tzinfo
from functools import cache
from typing import Final
from zoneinfo import ZoneInfo, available_timezones

from core.join.zones import Here

_REGIONS: Final = frozenset(
    {"Africa", "America", "Antarctica", "Arctic", "Asia", "Atlantic", "Australia", "Europe", "Indian", "Pacific"}
)


@cache
def known() -> dict[str, str]:
    """Every place that names a zone, in lower case with spaces, to the zone's key."""
    places: dict[str, str] = {}
    for key in sorted(available_timezones()):
        region, _, place = key.partition("/")
        if place and region in _REGIONS:
            places.setdefault(place.rsplit("/", maxsplit=1)[-1].replace("_", " ").casefold(), key)
    return places


def here(now: datetime, zone: tzinfo) -> Here:
    """The moment and the place, with all that can be named."""
    return Here(now, zone, known())


def zone_named(key: str) -> ZoneInfo:
    """The zone of that key."""
    return ZoneInfo(key)
