"""Reads the demo gym's file into core's nouns. Knows the file's shape; fills nothing and decides nothing."""

import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, time, timedelta
from pathlib import Path
from typing import Any, Final
from zoneinfo import ZoneInfo

from bot import codec
from core.model.book import Profile
from core.model.lifter import Ache, Kit, Lifter
from core.model.plan import Plan, Planned, TrainingDay

_NEAR: Final = Path(__file__).parent
_PLACES: Final = (_NEAR / "gym.toml", _NEAR.parent.parent / "fixtures" / "demo" / "gym.toml")
"""Beside this file when installed from a wheel, in fixtures when run from the tree."""


@dataclass(frozen=True, slots=True)
class Invented:
    """One invented lifter, and what steers the made-up history: strength by exercise and gain per week."""

    profile: Profile
    lifter: Lifter
    plan: Plan
    strength: Mapping[str, float]
    gain_per_week: float


@dataclass(frozen=True, slots=True)
class Gym:
    """The coach, the group and the named lifters."""

    coach: Profile
    coach_user: int
    group: str
    group_chat: int
    lifters: tuple[Invented, ...]


def load_gym(today: date) -> Gym:
    """The gym as it stands on a day; the file counts training days and aches from it."""
    path = next(place for place in _PLACES if place.exists())
    data = tomllib.loads(path.read_text(encoding="utf-8"))
    coach = data["coach"]
    return Gym(
        Profile(coach["name"], ZoneInfo(coach["zone"])),
        coach["user"],
        data["group"]["title"],
        data["group"]["chat"],
        tuple(_invented(row, coach["name"], today) for row in data["lifter"]),
    )


def _invented(row: Mapping[str, Any], coach: str, today: date) -> Invented:
    profile = Profile(row["name"], ZoneInfo(row["zone"]), coach=coach, decimal=row.get("decimal", "."))
    days = sorted((_day(day, today) for day in row["day"]), key=lambda day: (day.weekday, day.at))
    return Invented(profile, _lifter(row, today), Plan(tuple(days)), row["strength"], row["gain_per_week"])


def _lifter(row: Mapping[str, Any], today: date) -> Lifter:
    return Lifter(
        unit=row["unit"],
        bodyweight_kg=row["bodyweight_kg"],
        experience=row["experience"],
        kit=_kit(row["kit"]) if "kit" in row else None,
        no_heavier=row.get("no_heavier", False),
        aches=tuple(
            Ache(ache["where"], today - timedelta(days=ache["days_ago"]), ache.get("side"), ache.get("level"))
            for ache in row.get("aches", ())
        ),
    )


def _kit(row: Mapping[str, Any]) -> Kit:
    plates = {float(kg): count for kg, count in row.get("plates_kg", {}).items()}
    lists = {name: tuple(row.get(name, ())) for name in ("dumbbells_kg", "kettlebells_kg", "bands")}
    return Kit(row.get("bar_kg"), plates, stack_step_kg=row.get("stack_step_kg"), **lists)


def _day(row: Mapping[str, Any], today: date) -> TrainingDay:
    weekday = (today + timedelta(days=row["from_today"])).weekday()
    exercises = tuple(_planned(item) for item in row["exercises"])
    return TrainingDay(weekday, time.fromisoformat(row["at"]), row["title"], exercises)


def _planned(row: Mapping[str, Any]) -> Planned:
    names = [name for name in row if name not in {"exercise", "note"}]
    return Planned(row["exercise"], codec.aim_in({name: row[name] for name in names}), row.get("note"))
