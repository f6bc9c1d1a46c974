"""Another kit for a day: only what is named is there, or all but what is named. A kind named without its masses is
there as it is at home, in a gym as a gym has it. Knows no exercise."""

from dataclasses import replace
from typing import Final

from core.evidence.equipment import GYM
from core.join.kit import Noun, kit_in, names_gear, nouns_in
from core.join.wishes import OnlyToday
from core.model.lifter import Kit
from core.model.quantities import Unit, to_kg

_BODY: Final = frozenset({"bodyweight", "body weight", "body-weight", "my body", "my bodyweight", "myself", "me",
                          "the floor", "floor", "my own weight"})  # fmt: skip
_PARTS: Final[dict[Noun, tuple[str, ...]]] = {
    "bar": ("bar_kg", "plates_kg"),
    "plate": ("plates_kg",),
    "dumbbell": ("dumbbells_kg",),
    "kettlebell": ("kettlebells_kg",),
    "stack": ("stack_step_kg",),
    "band": ("bands",),
}
"""What of a kit a kind of equipment is."""


def kit_of_today(words: str, unit: Unit, home: Kit | None) -> OnlyToday | None:
    """Only what the words name. None: they name no equipment."""
    if words in _BODY:
        return OnlyToday(Kit())
    found = kit_in(words, unit)
    if found is not None and found.kit is None:
        return OnlyToday(None)
    if not names_gear(words):
        return None
    kit = (found.kit if found else None) or Kit()
    for noun in nouns_in(words):
        if noun != "beside" and not any(getattr(kit, part) for part in _PARTS[noun]):
            kit = replace(kit, **_parts_of(noun, unit, home))  # type: ignore[arg-type]
    odd = tuple(one for one in (found.odd if found else ()) if not names_gear(one))
    return OnlyToday(kit, found.beside if found else (), odd)


def kit_without(words: str, unit: Unit, home: Kit | None) -> OnlyToday | None:
    """All but what the words name. None: they name no equipment that carries load."""
    gone = [noun for noun in nouns_in(words) if noun != "beside"]
    if not gone or len(words.split()) > len(gone) + 2:
        return None
    kit = home or gym(unit)
    empty = Kit()
    for noun in gone:
        kit = replace(kit, **{part: getattr(empty, part) for part in _PARTS[noun]})
    return OnlyToday(kit, without=words)


def _parts_of(noun: Noun, unit: Unit, home: Kit | None) -> dict[str, object]:
    """That kind as it is at home; where home has none of it, as a gym has it."""
    full = gym(unit)
    own = home or full
    return {part: getattr(own, part) or getattr(full, part) for part in _PARTS[noun]}


def gym(unit: Unit) -> Kit:
    """What a gym has, as a list."""
    row = GYM[unit]

    def kg(mass: float) -> float:
        return round(to_kg(mass, unit), 4)

    first, last, step = row.dumbbells
    rack = [first + n * step for n in range(int((last - first) / step) + 1)]
    return Kit(
        bar_kg=kg(row.bar),
        plates_kg={kg(mass): row.plates_alike for mass in row.plates},
        dumbbells_kg=tuple(kg(mass) for mass in rack),
        kettlebells_kg=tuple(kg(mass) for mass in row.kettlebells),
        stack_step_kg=kg(row.stack_step),
        bands=row.bands,
    )
