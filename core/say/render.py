"""Slots to text: figures in the lifter's unit and decimal mark, plurals, times, days. Knows no facts and no acts."""

from dataclasses import dataclass
from datetime import date, datetime, time, tzinfo
from typing import Final, Literal

from core.evidence.exercises import EXERCISES
from core.model.quantities import Unit, from_kg
from core.say.wording import has, template

DECIMALS: Final[dict[Unit, int]] = {"kg": 2, "lb": 1}
"""Places shown; a pound came back from kilograms as typed to a tenth, a plate of 1.25 kg needs two."""

MINUTES_FROM: Final = 120
"""From this many seconds on a duration is said in minutes."""


@dataclass(frozen=True, slots=True)
class Voice:
    """How to speak to one person: language, unit, decimal mark, zone, and the names to use."""

    name: str
    zone: tzinfo
    unit: Unit = "kg"
    language: str = "en"
    decimal: Literal[".", ","] = "."
    coach: str | None = None

    def say(self, key: str, count: float | None = None, /, **slots: object) -> str:
        """The words of a key with its slots filled; ``count`` picks the plural form."""
        return template(self.language, key, count).format(**slots)

    def by_coach(self, key: str, **slots: object) -> str:
        """The words of a key, or of its form for a lifter without a coach."""
        if self.coach is None:
            return self.say(f"{key}.alone", **slots)
        return self.say(key, coach=self.coach, **slots)

    def number(self, value: float, places: int = 2) -> str:
        """A figure without needless zeros, with the lifter's decimal mark."""
        text = f"{value:.{places}f}"
        text = text.rstrip("0").rstrip(".") if "." in text else text
        return ("0" if text == "-0" else text).replace(".", self.decimal)

    def mass_figure(self, kg: float) -> str:
        """A mass as a figure in the lifter's unit."""
        return self.number(from_kg(kg, self.unit), DECIMALS[self.unit])

    def mass(self, kg: float) -> str:
        """A mass with its unit."""
        return self.say(f"unit.{self.unit}", n=self.mass_figure(kg))

    def duration(self, seconds: float) -> str:
        """A duration as it is said: 90 s, 2 min, 2 min 30 s."""
        if seconds < MINUTES_FROM:
            return self.say("duration.s", n=self.number(seconds))
        minutes, rest = divmod(round(seconds), 60)
        if rest:
            return self.say("duration.min_s", m=minutes, s=rest)
        return self.say("duration.min", n=minutes)

    def exercise(self, id_: str) -> str:
        """The name of an exercise inside a sentence."""
        key = f"name.{id_}"
        if has(self.language, key):
            return self.say(key)
        return EXERCISES[id_].name if id_ in EXERCISES else id_.replace("-", " ")

    def heading(self, id_: str) -> str:
        """The name of an exercise at the start of a line."""
        return capital(self.exercise(id_))

    def clock(self, at: time | datetime) -> str:
        """A time of day; a datetime is turned to the lifter's zone first."""
        local = at.astimezone(self.zone).time() if isinstance(at, datetime) else at
        return f"{local:%H:%M}"

    def weekday(self, on: date) -> str:
        """The name of a day of the week."""
        return self.say(f"weekday.{on.weekday()}")

    def date(self, on: date) -> str:
        """A day of the year."""
        return self.say("date", day=on.day, month=self.say(f"month.{on.month}"))

    def listed(self, items: list[str]) -> str:
        """Things in a row."""
        return self.say("join.list").join(items)


def capital(text: str) -> str:
    """With a capital first letter."""
    return text[:1].upper() + text[1:]
