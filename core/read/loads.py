"""A load as said, on a known exercise, into a load moved. Knows bars, plates, hands and bands; not repetitions."""

from typing import Final

from core.evidence.exercises import EXERCISES, Exercise
from core.evidence.plausible import BOUNDS
from core.model.quantities import BODY, Load, Unit, to_kg
from core.model.reading import Setting
from core.read.atoms import LoadSaid

PLATES_ONLY: Final = frozenset({"leg-press", "hack-squat", "t-bar-row"})
"""Only the plates count (the reading contract)."""
PLATES_UNCLEAR: Final = frozenset({"ez-bar-curl", "landmine-press", "preacher-curl", "lying-triceps-extension"})
"""Plates alone do not say the bar (the reading contract: EZ bar and landmine are asked about)."""
BAND_HELPS: Final = frozenset(
    {
        "pull-up",
        "chin-up",
        "neutral-grip-pull-up",
        "dip",
        "nordic-curl",
        "pistol-squat",
        "bench-dip",
        "handstand-push-up",
    }
)
"""On these a band takes weight off unless it is said to resist (common practice, no source)."""
_BARBELL: Final = frozenset(
    {
        "barbell-bench-press",
        "incline-barbell-bench-press",
        "close-grip-bench-press",
        "barbell-overhead-press",
        "push-press",
        "barbell-row",
        "pendlay-row",
        "shrug-barbell",
        "back-squat",
        "front-squat",
        "box-squat",
        "conventional-deadlift",
        "sumo-deadlift",
        "trap-bar-deadlift",
        "deficit-deadlift",
        "romanian-deadlift",
        "good-morning",
        "barbell-hip-thrust",
        "power-clean",
        "hang-clean",
        "power-snatch",
        "thruster",
    }
)

_ONE_ARM: Final = frozenset({"dumbbell-row", "concentration-curl", "suitcase-carry"})

Known = Load | None


def is_barbell(exercise: str) -> bool:
    """Whether the lift is done with a full-size bar, so that plates and an empty bar have a known weight."""
    return exercise in _BARBELL


def outside(exercise: Exercise) -> bool:
    """Whether the lift is usually done against an outside load that must be known."""
    return exercise.load_kind in ("total", "per_hand", "added", "assist")


def known_load(exercise: str, setting: Setting) -> Known:
    """The load that the setting gives for this exercise: the last set's, else the plan's."""
    last = setting.last
    if last is not None and last.exercise == exercise and last.load is not None:
        return last.load
    return planned_load(exercise, setting)


def planned_load(exercise: str, setting: Setting) -> Known:
    """The plan's load for this exercise."""
    for line in setting.plan:
        if line.exercise == exercise and line.load is not None:
            return line.load
    return None


def usual_kg(exercise: str, setting: Setting) -> float | None:
    """The kilograms that this lifter tends to use, from last set, plan or habit; None when nothing is known."""
    load = known_load(exercise, setting)
    if load is not None and load.kg:
        return load.kg
    return setting.usual.get(exercise)


def unsaid(exercise: str, setting: Setting) -> Known:
    """The load of a set that names none; None when it must be asked."""
    given = known_load(exercise, setting)
    if given is not None:
        return given
    kind = EXERCISES[exercise].load_kind
    if kind == "body":
        return BODY
    return Load("band") if kind == "band" else None


def _bar(unit: Unit) -> float:
    return BOUNDS["bar_kg"].value if unit == "kg" else to_kg(BOUNDS["bar_lb"].value, "lb")


def _plate(unit: Unit) -> float:
    return BOUNDS["plate_kg"].value if unit == "kg" else to_kg(BOUNDS["plate_lb"].value, "lb")


def moved(said: LoadSaid, exercise: str, setting: Setting, before: Known) -> Known:
    """The load meant by ``said``. ``before`` is the load of the set it refers to. None when it must be asked."""
    row = EXERCISES[exercise]
    kg = None if said.number is None else (said.number if said.in_kg else to_kg(said.number, setting.unit))
    way = said.way
    if way == "same":
        return before if before is not None else unsaid(exercise, setting)
    if way == "plan":
        return planned_load(exercise, setting) or before
    if way == "pin":
        return None
    if way == "delta":
        return _changed(said, kg or 0.0, row, before)
    if way == "body":
        return BODY
    if way == "bar":
        return Load("total", _bar(setting.unit)) if row.load_kind != "body" else BODY
    if way in ("band", "band_help"):
        return _band(said, kg, row)
    if way == "plates":
        return _plates(said, row, setting)
    if way == "per_side":
        return _per_side(kg or 0.0, row, setting)
    return _plain(said, kg or 0.0, row)


def _plain(said: LoadSaid, kg: float, row: Exercise) -> Load:
    way = said.way
    if way in ("added", "assist"):
        hung = row.load_kind == "body" or way == "assist"
        return Load("assist" if way == "assist" else "added", kg) if hung else Load(row.load_kind, kg)
    if way == "per_hand":
        return Load("per_hand", kg)
    if way in ("total", "one"):
        return Load("per_hand" if way == "one" and row.id in _ONE_ARM else "total", kg)
    if row.load_kind == "body":
        return Load("added", kg) if kg else BODY
    if row.load_kind == "band":
        return Load("band", kg)
    return Load(row.load_kind, kg)


def _changed(said: LoadSaid, kg: float, row: Exercise, before: Known) -> Known:
    if row.load_kind == "body" and said.signed and (before is None or before.kind in ("body", "assist")):
        return Load("added", kg) if kg >= 0 else Load("assist", -kg)
    if before is None or before.kg is None:
        return None
    if before.kind == "body":
        return Load("added", kg) if kg >= 0 else Load("assist", -kg)
    total = before.kg + kg
    return Load(before.kind, total, before.label) if total > 0 else None


def _band(said: LoadSaid, kg: float | None, row: Exercise) -> Load:
    helps = said.way == "band_help" or row.id in BAND_HELPS
    return Load("assist" if helps else "band", kg, said.label)


def _plates(said: LoadSaid, row: Exercise, setting: Setting) -> Known:
    count = said.number or 0.0
    extra = to_kg(float(said.label), setting.unit) if said.label else 0.0
    a_side = count * _plate(setting.unit) + extra
    if row.load_kind == "body":
        return Load("added", a_side)
    if row.id in PLATES_UNCLEAR:
        return None
    if row.id in PLATES_ONLY:
        return Load("total", 2 * a_side)
    if not is_barbell(row.id):
        return Load(row.load_kind, a_side) if row.load_kind == "total" and not said.per_side else None
    return Load("total", _bar(setting.unit) + 2 * a_side)


def _per_side(kg: float, row: Exercise, setting: Setting) -> Known:
    if row.load_kind == "body":
        return Load("added", kg)
    if row.load_kind == "per_hand":
        return Load("per_hand", kg)
    if row.id in PLATES_UNCLEAR:
        return None
    if row.id in PLATES_ONLY or not is_barbell(row.id):
        return Load("total", 2 * kg)
    return Load("total", _bar(setting.unit) + 2 * kg)


def plausible(load: Known, exercise: str, setting: Setting) -> bool:
    """Whether a load can be meant: within what people lift, and not several times what this lifter uses."""
    if load is None or load.kg is None:
        return True
    row = EXERCISES[exercise]
    if load.kind in ("added", "assist"):
        most = BOUNDS["most_added_kg"].value
    elif load.kind == "per_hand":
        most = BOUNDS["most_hand_kg"].value
    else:
        most = BOUNDS["most_total_kg" if row.kind == "compound" else "most_isolation_kg"].value
    if exercise in ("leg-press", "hack-squat"):
        most *= 2
    if load.kg > most:
        return False
    given = known_load(exercise, setting)
    usual = given.kg if given is not None and given.kind == load.kind else setting.usual.get(exercise)
    return not usual or load.kg < BOUNDS["times_known_load"].value * usual
