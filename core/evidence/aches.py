"""Which exercises load which body part: by pattern and by muscle. Rows, and the look-up.

Source: joint actions of the movement patterns, common practice, no single source. A part that the table does not
know counts as loaded by everything, because it is safer to ask less.
"""

from typing import Final

from core.evidence.exercises import Exercise

_PRESS: Final = frozenset({"horizontal push", "vertical push"})
_PULL: Final = frozenset({"horizontal pull", "vertical pull"})
_ARM: Final = frozenset({"elbow flexion", "elbow extension"})
_RAISE: Final = frozenset({"shoulder abduction", "shoulder flexion"})
_LEG: Final = frozenset({"squat", "lunge"})
_WHOLE: Final = frozenset({"olympic", "carry", "conditioning"})
_UPPER: Final = _PRESS | _PULL | _ARM | _RAISE | _WHOLE | {"shrug"}
_LOWER: Final = _LEG | _WHOLE | {
    "hinge", "knee flexion", "knee extension", "hip abduction", "hip adduction", "hip extension", "ankle",
}  # fmt: skip

_PATTERNS: Final[dict[str, frozenset[str]]] = {
    "shoulder": _UPPER | {"squat", "hold"},
    "collarbone": _UPPER,
    "elbow": _PRESS | _PULL | _ARM | _WHOLE | {"wrist"},
    "wrist": _PRESS | _PULL | _ARM | _WHOLE | {"wrist", "shrug", "hold"},
    "hand": _PRESS | _PULL | _ARM | _WHOLE | {"wrist", "shrug"},
    "finger": _PULL | _ARM | _WHOLE | {"wrist", "shrug"},
    "thumb": _PULL | _ARM | _WHOLE | {"wrist", "shrug"},
    "forearm": _PULL | _ARM | _WHOLE | {"wrist", "shrug"},
    "arm": _UPPER,
    "neck": frozenset({"vertical push", "vertical pull", "shrug", "trunk flexion", "squat"}) | _WHOLE,
    "upper-back": _PULL | _WHOLE | {"shrug", "hinge", "squat"},
    "mid-back": _PULL | _WHOLE | {"shrug", "hinge", "squat"},
    "lower-back": _LEG
    | _WHOLE
    | {"hinge", "trunk flexion", "trunk rotation", "horizontal pull", "hold", "vertical push"},
    "back": _LEG | _WHOLE | _PULL | {"hinge", "trunk flexion", "trunk rotation", "hold", "vertical push", "shrug"},
    "spine": _LEG | _WHOLE | _PULL | {"hinge", "trunk flexion", "trunk rotation", "hold", "vertical push", "shrug"},
    "rib": _UPPER | {"trunk flexion", "trunk rotation", "hold"},
    "chest": _PRESS | _WHOLE,
    "abs": frozenset({"trunk flexion", "trunk rotation", "hold"}) | _WHOLE,
    "stomach": frozenset({"trunk flexion", "trunk rotation", "hold"}) | _WHOLE,
    "groin": _LEG | _WHOLE | {"hip adduction", "hip abduction", "hinge"},
    "hip": _LOWER - {"knee extension", "ankle"} | {"trunk flexion"},
    "pelvis": _LOWER | {"trunk flexion"},
    "glute": _LOWER - {"knee extension", "ankle"},
    "thigh": _LOWER - {"ankle"},
    "quad": _LEG | _WHOLE | {"knee extension", "hold"},
    "hamstring": _LEG | _WHOLE | {"hinge", "knee flexion", "hip extension"},
    "knee": _LEG | _WHOLE | {"knee flexion", "knee extension", "hinge", "hold"},
    "leg": _LOWER,
    "shin": _LEG | _WHOLE | {"ankle"},
    "calf": _LEG | _WHOLE | {"ankle", "knee flexion"},
    "achilles": _LEG | _WHOLE | {"ankle"},
    "ankle": _LEG | _WHOLE | {"ankle", "hinge"},
    "foot": _LEG | _WHOLE | {"ankle", "hinge"},
    "toe": _LEG | _WHOLE | {"ankle"},
    "heel": _LEG | _WHOLE | {"ankle", "hinge"},
}

_MUSCLES: Final[dict[str, frozenset[str]]] = {
    "shoulder": frozenset({"front-delts", "side-delts", "rear-delts", "lats", "chest"}),
    "elbow": frozenset({"triceps", "biceps", "forearms"}),
    "wrist": frozenset({"forearms"}),
    "lower-back": frozenset({"lower-back"}),
    "back": frozenset({"lower-back", "upper-back", "lats"}),
    "upper-back": frozenset({"upper-back", "traps"}),
    "neck": frozenset({"traps"}),
    "hip": frozenset({"glutes", "adductors", "abductors"}),
    "groin": frozenset({"adductors"}),
    "knee": frozenset({"quads", "hamstrings"}),
    "quad": frozenset({"quads"}),
    "hamstring": frozenset({"hamstrings"}),
    "glute": frozenset({"glutes"}),
    "ankle": frozenset({"calves"}),
    "calf": frozenset({"calves"}),
    "chest": frozenset({"chest"}),
    "abs": frozenset({"abs"}),
    "forearm": frozenset({"forearms"}),
}

_OTHER_NAMES: Final = {
    "low-back": "lower-back",
    "lumbar": "lower-back",
    "upper-arm": "arm",
    "bicep": "elbow",
    "biceps": "elbow",
    "tricep": "elbow",
    "triceps": "elbow",
    "rotator-cuff": "shoulder",
    "shoulder-blade": "upper-back",
    "trap": "neck",
    "lat": "upper-back",
    "pec": "chest",
    "oblique": "abs",
    "core": "abs",
    "hip-flexor": "hip",
    "buttock": "glute",
    "butt": "glute",
    "adductor": "groin",
    "it-band": "knee",
    "kneecap": "knee",
    "patella": "knee",
    "arch": "foot",
}


def known_part(where: str) -> str | None:
    """The table's own word for a body part ("wrists" is "wrist"), or None when the table does not know it."""
    word = where.strip().lower().replace(" ", "-").replace("_", "-")
    for form in (
        word,
        word.removesuffix("s"),
        _OTHER_NAMES.get(word, ""),
        _OTHER_NAMES.get(word.removesuffix("s"), ""),
    ):
        if form in _PATTERNS:
            return form
    return None


def loads_part(exercise: Exercise, where: str) -> bool:
    """Whether the exercise loads that body part; True for a part that the table does not know."""
    part = known_part(where)
    if part is None:
        return True
    muscles = frozenset(exercise.main_muscles) | frozenset(exercise.side_muscles)
    return exercise.pattern in _PATTERNS[part] or bool(muscles & _MUSCLES.get(part, frozenset()))
