"""Kits of the simulated lifters, and every load a kit can make, by brute force. Written from the contract alone."""

from dataclasses import dataclass
from itertools import product
from typing import Final, Literal

from core.evidence.exercises import EXERCISES
from core.model.lifter import Kit
from core.model.quantities import POUND_KG, Load, LoadKind, Unit

Tool = Literal["bar", "ez", "plates", "dumbbells", "dumbbell", "kettlebell", "stack", "body", "band"]

LB: Final = POUND_KG

TOOLS: Final[dict[str, tuple[Tool, ...]]] = {
    "ez-bar-curl": ("ez", "bar"),
    "preacher-curl": ("ez", "bar", "dumbbell", "stack"),
    "lying-triceps-extension": ("ez", "bar", "dumbbell"),
    "goblet-squat": ("dumbbell", "kettlebell"),
    "kettlebell-swing": ("kettlebell", "dumbbell"),
    "dumbbell-pullover": ("dumbbell", "kettlebell"),
    "overhead-triceps-extension": ("stack", "dumbbell", "kettlebell", "ez", "bar"),
    "wrist-curl": ("bar", "ez", "dumbbell"),
    "russian-twist": ("plates", "dumbbell", "kettlebell"),
    "landmine-press": ("bar", "plates"),
    "t-bar-row": ("plates", "bar"),
    "leg-press": ("plates", "stack"),
    "hack-squat": ("plates", "stack"),
    "upright-row": ("bar", "ez", "stack", "dumbbell"),
    "reverse-curl": ("bar", "ez"),
    "standing-calf-raise": ("stack", "plates", "bar", "dumbbell"),
    "seated-calf-raise": ("plates", "stack", "dumbbell"),
    "cable-fly": ("stack",),
}
"""Tools that an exercise can be loaded with, where its name and load kind do not settle it. Common practice."""

STACK_WORDS: Final = ("machine", "cable", "pulldown", "pushdown", "face-pull", "leg-curl", "leg-extension", "pallof")


def tools_for(exercise: str, kind: LoadKind) -> tuple[Tool, ...]:
    """What can load the exercise. Generous: a load that any of them makes counts as makeable."""
    if exercise in TOOLS:
        return TOOLS[exercise]
    if any(word in exercise for word in STACK_WORDS):
        return ("stack",)
    by_hand = exercise in EXERCISES and EXERCISES[exercise].load_kind == "per_hand"
    table: dict[LoadKind, tuple[Tool, ...]] = {
        "total": ("dumbbell", "kettlebell", "bar", "stack") if by_hand else ("bar",),
        "per_hand": ("dumbbells", "kettlebell"),
        "body": ("body",),
        "added": ("plates", "dumbbell", "kettlebell"),
        "assist": ("stack", "band"),
        "band": ("band",),
    }
    return table[kind]


def plate_sums(plates: dict[float, int] | None, apart: int) -> set[float]:
    """Every sum of the plates; ``apart`` 2 uses them in pairs, one each side."""
    if not plates:
        return {0.0}
    counts = [range(int(count) // apart + 1) for count in plates.values()]
    return {round(sum(apart * n * kg for n, kg in zip(pick, plates, strict=True)), 6) for pick in product(*counts)}


def makeable(exercise: str, kind: LoadKind, kit: Kit, usual: bool = False) -> set[float]:
    """Every load (kg, in the terms of ``kind``) that the kit can make for the exercise; brute force.

    ``usual``: only with the tool that comes first to mind. Where no tool of the exercise is there, a stand-in counts.
    """
    plates = dict(kit.plates_kg)
    made: set[float] = {0.0} if kind in ("body", "band") else set()
    tools = set(tools_for(exercise, kind))
    if kind in ("added", "assist"):
        tools = set(tools_for("", kind))
    if usual:
        tools = set(tools_for("" if kind in ("added", "assist") else exercise, kind)[:1])
    if tools & {"bar", "ez"} and kit.bar_kg is not None:
        made |= {round(kit.bar_kg + each, 6) for each in plate_sums(plates, 2)}
    if "plates" in tools:
        made |= plate_sums(plates, 2 if usual else 1) - {0.0}
    if "dumbbells" in tools or "dumbbell" in tools:
        made |= set(kit.dumbbells_kg)
    if "kettlebell" in tools:
        made |= set(kit.kettlebells_kg)
    stand_in = not made and not usual and kind in ("total", "per_hand")
    if ("stack" in tools or stand_in) and kit.stack_step_kg:
        made |= {round(kit.stack_step_kg * n, 6) for n in range(1, 121)}
    if stand_in and not made:
        made |= {*kit.dumbbells_kg, *kit.kettlebells_kg}
    return made


GRAIN: Final[dict[Unit, float]] = {"kg": 0.5, "lb": LB}
"""The finest grain of a full gym: pairs of quarter-kilogram plates, whole pounds. Common practice, no source."""


def can_make(exercise: str, load: Load, kit: Kit | None, unit: Unit) -> bool:
    """True if the kit (None: a full gym) makes the load, within 10 g (tolerance of IPF plates)."""
    if load.kg is None or load.kind in ("body", "band"):
        return True
    if kit is None:
        steps = load.kg / GRAIN[unit]
        return load.kg > 0 and abs(steps - round(steps)) * GRAIN[unit] < 0.01
    return any(abs(load.kg - made) < 0.01 for made in makeable(exercise, load.kind, kit))


@dataclass(frozen=True, slots=True)
class Gym:
    """A place to train: unit, kit, the exercises it allows, and the step that its owner thinks in."""

    name: str
    unit: Unit
    kit: Kit | None
    exercises: tuple[str, ...]


_BAR_LIFTS: Final = ("barbell-bench-press", "back-squat", "barbell-overhead-press", "romanian-deadlift", "barbell-row",
                     "conventional-deadlift", "barbell-curl")  # fmt: skip
_HAND_LIFTS: Final = ("dumbbell-bench-press", "dumbbell-shoulder-press", "dumbbell-row", "dumbbell-curl",
                      "lateral-raise", "reverse-lunge", "dumbbell-romanian-deadlift")  # fmt: skip
_STACK_LIFTS: Final = ("lat-pulldown", "leg-extension", "leg-curl-seated", "machine-chest-press", "triceps-pushdown",
                       "seated-cable-row")  # fmt: skip
_BODY_LIFTS: Final = ("push-up", "pull-up", "dip", "bodyweight-squat", "inverted-row", "feet-elevated-push-up")

GYMS: Final = (
    Gym("full gym, kg", "kg", None, (*_BAR_LIFTS, *_HAND_LIFTS, *_STACK_LIFTS, "leg-press", "pull-up", "dip")),
    Gym("full gym, lb", "lb", None, (*_BAR_LIFTS, *_HAND_LIFTS, *_STACK_LIFTS, "leg-press", "dip")),
    Gym("rack, kg", "kg", Kit(20.0, {20.0: 4, 15.0: 2, 10.0: 2, 5.0: 2, 2.5: 2, 1.25: 2}), _BAR_LIFTS),
    Gym("rack, few plates", "kg", Kit(20.0, {20.0: 2, 10.0: 4, 5.0: 2}), _BAR_LIFTS),
    Gym("rack, lb", "lb", Kit(45 * LB, {45 * LB: 4, 25 * LB: 2, 10 * LB: 4, 5 * LB: 2, 2.5 * LB: 2}), _BAR_LIFTS),
    Gym("dumbbells, kg", "kg", Kit(dumbbells_kg=(2.0, 4.0, 6.0, 8.0, 10.0, 12.5, 15.0, 17.5, 20.0, 25.0, 30.0)),
        _HAND_LIFTS),
    Gym("three pairs", "kg", Kit(dumbbells_kg=(5.0, 7.5, 10.0)), ("lateral-raise", "dumbbell-curl", "dumbbell-row")),
    Gym("dumbbells, lb", "lb", Kit(dumbbells_kg=tuple(5 * n * LB for n in range(1, 16))), _HAND_LIFTS),
    Gym("kettlebells", "kg", Kit(kettlebells_kg=(8.0, 12.0, 16.0, 24.0)), ("goblet-squat", "kettlebell-swing")),
    Gym("stack, kg", "kg", Kit(stack_step_kg=5.0), _STACK_LIFTS),
    Gym("stack, lb", "lb", Kit(stack_step_kg=10 * LB), _STACK_LIFTS),
    Gym("body alone", "kg", Kit(), _BODY_LIFTS),
    Gym("body and a belt", "kg", Kit(plates_kg={10.0: 1, 5.0: 2, 2.5: 2, 1.25: 2}), ("pull-up", "dip", "push-up")),
)  # fmt: skip


def ladder(exercise: str, kind: LoadKind, gym: Gym) -> list[float]:
    """Loads to choose from, light to heavy: what the kit makes, or the usual steps of a full gym (common practice)."""
    if gym.kit is not None:
        return sorted(makeable(exercise, kind, gym.kit))
    tools = tools_for(exercise, kind)
    step = {"kg": 2.5, "lb": 5 * LB}[gym.unit]
    lowest = {"kg": 20.0, "lb": 45 * LB}[gym.unit] if "bar" in tools else step
    if kind == "body":
        return [0.0]
    return [round(lowest + step * n, 6) for n in range(150)]
