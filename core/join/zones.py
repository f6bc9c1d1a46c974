"""A place, an offset or a local time -> the key of a time zone. Which keys exist is handed in; it reads no clock."""

import re
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import datetime, timedelta, tzinfo
from typing import Final

from core.join.days import clock_in

Known = Mapping[str, str]
"""Every place that is a zone's own name, in lower case with spaces, to its key."""

CITIES: Final[Mapping[str, str]] = {
    name: zone
    for zone, names in {
        "Europe/Berlin": "germany deutschland munich münchen hamburg cologne köln frankfurt stuttgart leipzig dresden "
        "hannover nuremberg nürnberg düsseldorf bremen essen dortmund",
        "Europe/Madrid": "spain españa barcelona valencia seville sevilla bilbao malaga málaga zaragoza",
        "Atlantic/Canary": "tenerife gran_canaria las_palmas canaries",
        "Europe/Lisbon": "portugal porto lisboa braga faro",
        "Europe/London": "uk england scotland wales britain manchester birmingham leeds glasgow edinburgh bristol "
        "liverpool cardiff",
        "Europe/Dublin": "ireland cork galway",
        "Europe/Paris": "france lyon marseille toulouse nice bordeaux lille nantes strasbourg",
        "Europe/Rome": "italy roma milan milano naples turin florence bologna",
        "Europe/Vienna": "austria wien österreich graz linz salzburg innsbruck",
        "Europe/Zurich": "switzerland schweiz zürich geneva basel bern lausanne",
        "Europe/Amsterdam": "netherlands holland rotterdam utrecht eindhoven the_hague",
        "Europe/Brussels": "belgium antwerp ghent",
        "Europe/Copenhagen": "denmark aarhus",
        "Europe/Stockholm": "sweden gothenburg malmö",
        "Europe/Oslo": "norway bergen trondheim",
        "Europe/Helsinki": "finland tampere",
        "Europe/Warsaw": "poland krakow kraków gdansk wroclaw",
        "Europe/Prague": "czechia brno",
        "Europe/Athens": "greece thessaloniki crete",
        "Europe/Istanbul": "turkey ankara izmir",
        "Europe/Kyiv": "ukraine kiev lviv",
        "America/New_York": "nyc boston philadelphia washington miami atlanta new_york_city brooklyn orlando",
        "America/Chicago": "houston dallas austin minneapolis nashville new_orleans san_antonio",
        "America/Denver": "salt_lake_city albuquerque",
        "America/Phoenix": "arizona tucson",
        "America/Los_Angeles": "san_francisco la seattle san_diego portland las_vegas california sf oakland",
        "America/Toronto": "ottawa montreal quebec",
        "America/Mexico_City": "guadalajara puebla",
        "America/Sao_Paulo": "rio rio_de_janeiro são_paulo brasilia",
        "America/Argentina/Buenos_Aires": "argentina",
        "America/Bogota": "colombia medellin medellín bogotá",
        "America/Lima": "peru",
        "America/Santiago": "chile",
        "Asia/Kolkata": "india mumbai delhi bangalore chennai hyderabad pune",
        "Asia/Tokyo": "japan osaka kyoto",
        "Asia/Seoul": "korea south_korea busan",
        "Asia/Shanghai": "china beijing shenzhen guangzhou",
        "Asia/Jakarta": "java",
        "Asia/Makassar": "bali",
        "Asia/Ho_Chi_Minh": "vietnam hanoi saigon",
        "Asia/Bangkok": "thailand phuket chiang_mai",
        "Asia/Dubai": "abu_dhabi uae",
        "Asia/Jerusalem": "israel tel_aviv",
        "Australia/Sydney": "canberra",
        "Pacific/Auckland": "new_zealand wellington",
        "Africa/Johannesburg": "south_africa cape_town durban",
        "Africa/Cairo": "egypt",
        "Africa/Nairobi": "kenya",
        "Africa/Lagos": "nigeria",
        "Africa/Casablanca": "morocco marrakesh marrakech",
        "UTC": "utc gmt",
    }.items()
    for name in (one.replace("_", " ") for one in names.split())
}
"""Places that are no zone's own name. A country is here only where most of it keeps one time."""

CLOCKS: Final[Mapping[str, str]] = {
    name: key
    for key, names in {
        "Europe/Berlin": "cet cest",
        "Europe/London": "bst uk",
        "Europe/Helsinki": "eet eest",
        "America/New_York": "est edt et eastern",
        "America/Chicago": "cst cdt ct central",
        "America/Denver": "mst mdt mt mountain",
        "America/Los_Angeles": "pst pdt pt pacific",
        "Australia/Sydney": "aest aedt",
    }.items()
    for name in names.split()
}
"""Names of clocks, each with the zone of most who say so; the receipt names the place, so that another can be said."""

PARTLY: Final[Mapping[int, str]] = {
    -570: "Pacific/Marquesas", -210: "America/St_Johns", 210: "Asia/Tehran", 270: "Asia/Kabul", 330: "Asia/Kolkata",
    345: "Asia/Kathmandu", 390: "Asia/Yangon", 525: "Australia/Eucla", 570: "Australia/Darwin",
    630: "Australia/Lord_Howe", 765: "Pacific/Chatham",
}  # fmt: skip
"""Offsets in minutes that are no whole hours, with a zone that keeps them (at least for a part of the year)."""

_OFFSET: Final = re.compile(r"(?:utc|gmt)? ?([+-]) ?(\d{1,2})(?::?(\d\d))?(?: ?h(?:ours)?)?")
_TIME: Final = re.compile(
    r"(?:(?:it ?i?s|its|now|here|my time|local time|the time is|son las|es ist|it ?i?s now)[ ,:]*)*"
    r"(\d{1,2}[:.h]\d\d ?(?:am|pm)?|\d{1,2} ?(?:am|pm))(?:[ ,]*(?:here|now|uhr|local|local time|right now|my time))*"
)
_MOST: Final = timedelta(hours=14)
_QUARTER: Final = 15
_HOUR: Final = 60
_DAY: Final = 24 * _HOUR


@dataclass(frozen=True, slots=True)
class Here:
    """The moment at which a place is named: the instant, the zone so far, and which zones there are."""

    now: datetime
    zone: tzinfo
    known: Known


@dataclass(frozen=True, slots=True)
class ZoneFound:
    """A zone's key; ``fixed``: an offset that follows no clock changes."""

    key: str
    fixed: bool = False


def zone_in(text: str, here: Here) -> ZoneFound | None:
    """The zone that the words name."""
    words = re.sub(r"^(?:i ?a?m (?:now )?(?:in|at)|in|from|near|i live in|my (?:time ?)?zone is) ", "", text.strip())
    words = re.sub(r"(?<=\w) time$", "", words)
    named = place(words, here.known) or place(words.split(",")[0].strip(), here.known)
    if named is not None:
        return ZoneFound(named)
    if offset := _OFFSET.fullmatch(words):
        sign = 1 if offset[1] == "+" else -1
        return _by_offset(sign * (int(offset[2]) * _HOUR + int(offset[3] or 0)), here)
    if said := _TIME.fullmatch(words):
        at = clock_in(said[1].replace(" ", ""))
        return None if at is None else _by_offset(_difference(at.hour * _HOUR + at.minute, here.now), here)
    return None


def place(words: str, known: Known) -> str | None:
    """The zone of a place by name."""
    return CITIES.get(words) or CLOCKS.get(words) or known.get(words) or known.get(words.replace("-", " "))


def _difference(local: int, now: datetime) -> int:
    """How many minutes a wall clock is ahead of UTC, to the quarter of an hour that zones keep."""
    ahead = local - (now.hour * _HOUR + now.minute)
    ahead = _QUARTER * round(ahead / _QUARTER)
    return (ahead + _DAY // 2) % _DAY - _DAY // 2


def _by_offset(minutes: int, here: Here) -> ZoneFound | None:
    """The zone so far where it keeps that offset now; else a fixed one."""
    if here.now.astimezone(here.zone).utcoffset() == timedelta(minutes=minutes):
        key = getattr(here.zone, "key", None)
        if key:
            return ZoneFound(str(key), fixed=str(key).startswith("Etc/"))
    if minutes % _HOUR:
        return ZoneFound(PARTLY[minutes]) if minutes in PARTLY else None
    if abs(timedelta(minutes=minutes)) > _MOST or minutes < -12 * _HOUR:
        return None
    hours = minutes // _HOUR
    # The Etc names count the other way round: Etc/GMT-2 is two hours ahead of UTC.
    return ZoneFound(f"Etc/GMT{-hours:+d}" if hours else "Etc/UTC", fixed=True)
