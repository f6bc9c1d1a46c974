"""What is known about a person in words: place, days, kit. Knows nouns and the table of words; knows no wishes."""

from collections.abc import Iterable
from datetime import date, datetime, time
from itertools import pairwise
from typing import Final

from core.model.book import Profile
from core.model.lifter import Kit, Lifter
from core.model.plan import Plan
from core.say.render import Voice

_SPAN_FROM: Final = 4
"""From so many evenly spaced masses on, only the ends are said."""


def place_name(voice: Voice, key: str) -> str:
    """A zone by its place, or by its offset where it has no place."""
    region, _, name = key.partition("/")
    if region == "Etc" and name.startswith("GMT") and len(name) > len("GMT"):
        hours = -int(name.removeprefix("GMT"))
        return voice.say("about.place.offset", offset=f"{hours:+d}")
    return name.rsplit("/", maxsplit=1)[-1].replace("_", " ") or key


def place(voice: Voice, key: str, local: datetime) -> str:
    """A zone with the time that it is there."""
    return voice.say("about.place", place=place_name(voice, key), time=f"{local:%H:%M}")


def day(voice: Voice, on: date) -> str:
    """A day with its weekday."""
    return f"{voice.weekday(on)} {voice.date(on)}"


def days(voice: Voice, some: Iterable[tuple[int, time | None]]) -> str:
    """Weekdays with their times."""
    return voice.listed(
        [" ".join(filter(None, (voice.say(f"weekday.{one}"), f"{at:%H:%M}" if at else ""))) for one, at in some]
    )


def week(voice: Voice, plan: Plan) -> str:
    """The days of a plan."""
    return days(voice, ((one.weekday, one.at) for one in plan.days))


def kit(voice: Voice, one: Kit) -> str:
    """Equipment with its masses, in the voice's unit."""
    parts = []
    if one.bar_kg:
        parts.append(voice.say("about.kit.bar", kg=voice.mass(one.bar_kg)))
    if one.plates_kg:
        rows = [voice.say("about.kit.count", n=count, kg=voice.mass(kg)) for kg, count in sorted(one.plates_kg.items())]
        parts.append(voice.say("about.kit.plates", list=voice.listed(rows)))
    for key, masses in (("dumbbells", one.dumbbells_kg), ("kettlebells", one.kettlebells_kg)):
        if masses:
            parts.append(voice.say(f"about.kit.{key}", list=_masses(voice, masses)))
    if one.stack_step_kg:
        parts.append(voice.say("about.kit.stack", kg=voice.mass(one.stack_step_kg)))
    if one.bands == ("band",):
        parts.append(voice.say("about.kit.bands.plain"))
    elif one.bands:
        parts.append(voice.say("about.kit.bands", list=voice.listed(list(one.bands))))
    return voice.listed(parts) if parts else voice.say("about.kit.none")


def _masses(voice: Voice, masses: tuple[float, ...]) -> str:
    if len(masses) >= _SPAN_FROM and len({round(b - a, 2) for a, b in pairwise(masses)}) == 1:
        return voice.say("about.kit.span", low=voice.mass_figure(masses[0]), high=voice.mass(masses[-1]))
    *first, last = masses
    return voice.listed([*(voice.mass_figure(kg) for kg in first), voice.mass(last)])


def known(voice: Voice, profile: Profile, lifter: Lifter, plan: Plan, now: datetime) -> list[str]:
    """What is known about somebody, a line each."""
    zone = str(getattr(profile.zone, "key", "UTC"))
    lines = [
        voice.say("about.known.name", name=profile.name),
        voice.say("about.known.zone", place=place(voice, zone, now.astimezone(profile.zone))),
        voice.say("about.known.unit", unit=lifter.unit),
    ]
    if plan.days:
        lines.append(voice.say("about.known.days", days=week(voice, plan)))
    has = voice.say("about.known.kit.gym") if lifter.kit is None else kit(voice, lifter.kit)
    lines.append(voice.say("about.known.kit", list=has))
    lines.append(voice.say("about.known.experience", what=voice.say(f"about.choice.{lifter.experience}")))
    times = {"begins": voice.clock(profile.quiet_from), "ends": voice.clock(profile.quiet_to)}
    key = "about.known.times" if profile.reminders else "about.known.times.none"
    lines.append(voice.say(key, n=profile.prompt_lead_minutes, **times))
    if profile.away_through is not None:
        lines.append(voice.say("about.known.away", day=day(voice, profile.away_through)))
    return lines
