"""The catalogue: one row an exercise. Rows, no logic. Ids are part of the contract and never change.

Source: names, patterns and muscles are common practice of the trade, no single source; the classing into compound
and isolation follows ACSM 2009 (multi-joint and single-joint lifts). How the lifts are spelled by people is the
reader's vocabulary, not this table.
"""

from dataclasses import dataclass
from typing import Final, Literal

from core.model.quantities import LoadKind, Side


@dataclass(frozen=True, slots=True)
class Exercise:
    """One exercise: its id and trade name, what kind it is, what it trains, and how its load is usually said."""

    id: str
    name: str
    kind: Literal["compound", "isolation"]
    pattern: str
    main_muscles: tuple[str, ...]
    side_muscles: tuple[str, ...]
    load_kind: LoadKind
    default_side: Side | None = None


# fmt: off
_ROWS: Final = (
    Exercise("barbell-bench-press", "barbell bench press", "compound", "horizontal push", ("chest",), ("front-delts", "triceps",), "total"),  # noqa: E501
    Exercise("incline-barbell-bench-press", "incline barbell bench press", "compound", "horizontal push", ("chest",), ("front-delts", "triceps",), "total"),  # noqa: E501
    Exercise("close-grip-bench-press", "close-grip bench press", "compound", "horizontal push", ("triceps",), ("chest", "front-delts",), "total"),  # noqa: E501
    Exercise("dumbbell-bench-press", "dumbbell bench press", "compound", "horizontal push", ("chest",), ("front-delts", "triceps",), "per_hand"),  # noqa: E501
    Exercise("incline-dumbbell-press", "incline dumbbell press", "compound", "horizontal push", ("chest",), ("front-delts", "triceps",), "per_hand"),  # noqa: E501
    Exercise("dumbbell-floor-press", "dumbbell floor press", "compound", "horizontal push", ("chest",), ("front-delts", "triceps",), "per_hand"),  # noqa: E501
    Exercise("machine-chest-press", "machine chest press", "compound", "horizontal push", ("chest",), ("front-delts", "triceps",), "total"),  # noqa: E501
    Exercise("push-up", "push-up", "compound", "horizontal push", ("chest",), ("front-delts", "triceps",), "body"),
    Exercise("deficit-push-up", "deficit push-up", "compound", "horizontal push", ("chest",), ("front-delts", "triceps",), "body"),  # noqa: E501
    Exercise("feet-elevated-push-up", "feet-elevated push-up", "compound", "horizontal push", ("chest",), ("front-delts", "triceps",), "body"),  # noqa: E501
    Exercise("hands-elevated-push-up", "hands-elevated push-up", "compound", "horizontal push", ("chest",), ("front-delts", "triceps",), "body"),  # noqa: E501
    Exercise("knee-push-up", "knee push-up", "compound", "horizontal push", ("chest",), ("front-delts", "triceps",), "body"),  # noqa: E501
    Exercise("close-grip-push-up", "close-grip push-up", "compound", "horizontal push", ("triceps",), ("chest", "front-delts",), "body"),  # noqa: E501
    Exercise("pike-push-up", "pike push-up", "compound", "vertical push", ("front-delts",), ("triceps", "side-delts",), "body"),  # noqa: E501
    Exercise("dip", "dip", "compound", "vertical push", ("chest",), ("triceps", "front-delts",), "body"),
    Exercise("bench-dip", "bench dip", "compound", "vertical push", ("triceps",), ("chest", "front-delts",), "body"),
    Exercise("barbell-overhead-press", "barbell overhead press", "compound", "vertical push", ("front-delts",), ("side-delts", "triceps",), "total"),  # noqa: E501
    Exercise("seated-dumbbell-shoulder-press", "seated dumbbell shoulder press", "compound", "vertical push", ("front-delts",), ("side-delts", "triceps",), "per_hand"),  # noqa: E501
    Exercise("dumbbell-shoulder-press", "dumbbell shoulder press", "compound", "vertical push", ("front-delts",), ("side-delts", "triceps",), "per_hand"),  # noqa: E501
    Exercise("machine-shoulder-press", "machine shoulder press", "compound", "vertical push", ("front-delts",), ("side-delts", "triceps",), "total"),  # noqa: E501
    Exercise("landmine-press", "landmine press", "compound", "vertical push", ("front-delts",), ("chest", "triceps",), "total"),  # noqa: E501
    Exercise("push-press", "push press", "compound", "vertical push", ("front-delts",), ("triceps", "quads",), "total"),
    Exercise("handstand-push-up", "handstand push-up", "compound", "vertical push", ("front-delts",), ("triceps",), "body"),  # noqa: E501
    Exercise("pull-up", "pull-up", "compound", "vertical pull", ("lats",), ("biceps", "upper-back",), "body"),
    Exercise("chin-up", "chin-up", "compound", "vertical pull", ("lats",), ("biceps", "upper-back",), "body"),
    Exercise("neutral-grip-pull-up", "neutral-grip pull-up", "compound", "vertical pull", ("lats",), ("biceps", "upper-back",), "body"),  # noqa: E501
    Exercise("lat-pulldown", "lat pulldown", "compound", "vertical pull", ("lats",), ("biceps", "upper-back",), "total"),  # noqa: E501
    Exercise("close-grip-pulldown", "close-grip pulldown", "compound", "vertical pull", ("lats",), ("biceps", "upper-back",), "total"),  # noqa: E501
    Exercise("straight-arm-pulldown", "straight-arm pulldown", "isolation", "vertical pull", ("lats",), (), "total"),
    Exercise("barbell-row", "barbell row", "compound", "horizontal pull", ("upper-back",), ("lats", "biceps",), "total"),  # noqa: E501
    Exercise("pendlay-row", "pendlay row", "compound", "horizontal pull", ("upper-back",), ("lats", "biceps",), "total"),  # noqa: E501
    Exercise("t-bar-row", "t-bar row", "compound", "horizontal pull", ("upper-back",), ("lats", "biceps",), "total"),
    Exercise("dumbbell-row", "one-arm dumbbell row", "compound", "horizontal pull", ("lats",), ("upper-back", "biceps",), "per_hand", "each"),  # noqa: E501
    Exercise("chest-supported-row", "chest-supported dumbbell row", "compound", "horizontal pull", ("upper-back",), ("lats", "rear-delts", "biceps",), "per_hand"),  # noqa: E501
    Exercise("seated-cable-row", "seated cable row", "compound", "horizontal pull", ("upper-back",), ("lats", "biceps",), "total"),  # noqa: E501
    Exercise("machine-row", "machine row", "compound", "horizontal pull", ("upper-back",), ("lats", "biceps",), "total"),  # noqa: E501
    Exercise("inverted-row", "inverted row", "compound", "horizontal pull", ("upper-back",), ("lats", "biceps",), "body"),  # noqa: E501
    Exercise("face-pull", "face pull", "isolation", "horizontal pull", ("rear-delts",), ("upper-back",), "total"),
    Exercise("band-pull-apart", "band pull-apart", "isolation", "horizontal pull", ("rear-delts",), ("upper-back",), "band"),  # noqa: E501
    Exercise("shrug-barbell", "barbell shrug", "isolation", "shrug", ("traps",), ("forearms",), "total"),
    Exercise("shrug-dumbbell", "dumbbell shrug", "isolation", "shrug", ("traps",), ("forearms",), "per_hand"),
    Exercise("back-squat", "barbell back squat", "compound", "squat", ("quads",), ("glutes", "adductors",), "total"),
    Exercise("front-squat", "front squat", "compound", "squat", ("quads",), ("glutes", "upper-back",), "total"),
    Exercise("box-squat", "box squat", "compound", "squat", ("quads",), ("glutes", "hamstrings",), "total"),
    Exercise("goblet-squat", "goblet squat", "compound", "squat", ("quads",), ("glutes",), "total"),
    Exercise("bodyweight-squat", "bodyweight squat", "compound", "squat", ("quads",), ("glutes",), "body"),
    Exercise("hack-squat", "machine hack squat", "compound", "squat", ("quads",), ("glutes",), "total"),
    Exercise("leg-press", "leg press", "compound", "squat", ("quads",), ("glutes", "adductors",), "total"),
    Exercise("bulgarian-split-squat", "rear-foot-elevated split squat", "compound", "lunge", ("quads",), ("glutes", "adductors",), "per_hand", "each"),  # noqa: E501
    Exercise("split-squat", "split squat", "compound", "lunge", ("quads",), ("glutes",), "per_hand", "each"),
    Exercise("walking-lunge", "walking lunge", "compound", "lunge", ("quads",), ("glutes", "hamstrings",), "per_hand", "each"),  # noqa: E501
    Exercise("reverse-lunge", "reverse lunge", "compound", "lunge", ("glutes",), ("quads", "hamstrings",), "per_hand", "each"),  # noqa: E501
    Exercise("step-up", "step-up", "compound", "lunge", ("quads",), ("glutes",), "per_hand", "each"),
    Exercise("pistol-squat", "single-leg squat", "compound", "squat", ("quads",), ("glutes",), "body", "each"),
    Exercise("wall-sit", "wall sit", "isolation", "hold", ("quads",), ("glutes",), "body"),
    Exercise("conventional-deadlift", "conventional deadlift", "compound", "hinge", ("glutes",), ("hamstrings", "lower-back", "traps",), "total"),  # noqa: E501
    Exercise("sumo-deadlift", "sumo deadlift", "compound", "hinge", ("glutes",), ("quads", "adductors", "lower-back",), "total"),  # noqa: E501
    Exercise("trap-bar-deadlift", "trap-bar deadlift", "compound", "hinge", ("glutes",), ("quads", "hamstrings", "traps",), "total"),  # noqa: E501
    Exercise("deficit-deadlift", "deficit deadlift", "compound", "hinge", ("glutes",), ("hamstrings", "lower-back", "quads",), "total"),  # noqa: E501
    Exercise("romanian-deadlift", "barbell Romanian deadlift", "compound", "hinge", ("hamstrings",), ("glutes", "lower-back",), "total"),  # noqa: E501
    Exercise("dumbbell-romanian-deadlift", "dumbbell Romanian deadlift", "compound", "hinge", ("hamstrings",), ("glutes", "lower-back",), "per_hand"),  # noqa: E501
    Exercise("single-leg-romanian-deadlift", "single-leg Romanian deadlift", "compound", "hinge", ("hamstrings",), ("glutes",), "per_hand", "each"),  # noqa: E501
    Exercise("good-morning", "good morning", "compound", "hinge", ("hamstrings",), ("glutes", "lower-back",), "total"),
    Exercise("back-extension", "back extension", "isolation", "hinge", ("lower-back",), ("glutes", "hamstrings",), "body"),  # noqa: E501
    Exercise("barbell-hip-thrust", "barbell hip thrust", "compound", "hinge", ("glutes",), ("hamstrings",), "total"),
    Exercise("glute-bridge", "glute bridge", "compound", "hinge", ("glutes",), ("hamstrings",), "body"),
    Exercise("kettlebell-swing", "kettlebell swing", "compound", "hinge", ("glutes",), ("hamstrings", "lower-back",), "total"),  # noqa: E501
    Exercise("cable-pull-through", "cable pull-through", "isolation", "hinge", ("glutes",), ("hamstrings",), "total"),
    Exercise("leg-curl-lying", "lying leg curl", "isolation", "knee flexion", ("hamstrings",), ("calves",), "total"),
    Exercise("leg-curl-seated", "seated leg curl", "isolation", "knee flexion", ("hamstrings",), ("calves",), "total"),
    Exercise("nordic-curl", "Nordic hamstring curl", "isolation", "knee flexion", ("hamstrings",), (), "body"),
    Exercise("leg-extension", "leg extension", "isolation", "knee extension", ("quads",), (), "total"),
    Exercise("hip-abduction-machine", "machine hip abduction", "isolation", "hip abduction", ("abductors",), ("glutes",), "total"),  # noqa: E501
    Exercise("hip-adduction-machine", "machine hip adduction", "isolation", "hip adduction", ("adductors",), (), "total"),  # noqa: E501
    Exercise("cable-kickback", "cable glute kickback", "isolation", "hip extension", ("glutes",), ("hamstrings",), "total", "each"),  # noqa: E501
    Exercise("standing-calf-raise", "standing calf raise", "isolation", "ankle", ("calves",), (), "total"),
    Exercise("seated-calf-raise", "seated calf raise", "isolation", "ankle", ("calves",), (), "total"),
    Exercise("single-leg-calf-raise", "single-leg calf raise", "isolation", "ankle", ("calves",), (), "body", "each"),
    Exercise("barbell-curl", "barbell curl", "isolation", "elbow flexion", ("biceps",), ("forearms",), "total"),
    Exercise("ez-bar-curl", "EZ-bar curl", "isolation", "elbow flexion", ("biceps",), ("forearms",), "total"),
    Exercise("dumbbell-curl", "dumbbell curl", "isolation", "elbow flexion", ("biceps",), ("forearms",), "per_hand"),
    Exercise("incline-dumbbell-curl", "incline dumbbell curl", "isolation", "elbow flexion", ("biceps",), ("forearms",), "per_hand"),  # noqa: E501
    Exercise("hammer-curl", "hammer curl", "isolation", "elbow flexion", ("biceps",), ("forearms",), "per_hand"),
    Exercise("preacher-curl", "preacher curl", "isolation", "elbow flexion", ("biceps",), ("forearms",), "total"),
    Exercise("concentration-curl", "concentration curl", "isolation", "elbow flexion", ("biceps",), (), "per_hand", "each"),  # noqa: E501
    Exercise("cable-curl", "cable curl", "isolation", "elbow flexion", ("biceps",), ("forearms",), "total"),
    Exercise("reverse-curl", "reverse curl", "isolation", "elbow flexion", ("forearms",), ("biceps",), "total"),
    Exercise("triceps-pushdown", "cable triceps pushdown", "isolation", "elbow extension", ("triceps",), (), "total"),
    Exercise("overhead-triceps-extension", "overhead triceps extension", "isolation", "elbow extension", ("triceps",), (), "total"),  # noqa: E501
    Exercise("lying-triceps-extension", "lying triceps extension", "isolation", "elbow extension", ("triceps",), (), "total"),  # noqa: E501
    Exercise("dumbbell-kickback", "dumbbell triceps kickback", "isolation", "elbow extension", ("triceps",), (), "per_hand"),  # noqa: E501
    Exercise("lateral-raise", "dumbbell lateral raise", "isolation", "shoulder abduction", ("side-delts",), (), "per_hand"),  # noqa: E501
    Exercise("cable-lateral-raise", "cable lateral raise", "isolation", "shoulder abduction", ("side-delts",), (), "total", "each"),  # noqa: E501
    Exercise("front-raise", "dumbbell front raise", "isolation", "shoulder flexion", ("front-delts",), (), "per_hand"),
    Exercise("rear-delt-fly", "dumbbell rear-delt fly", "isolation", "horizontal pull", ("rear-delts",), ("upper-back",), "per_hand"),  # noqa: E501
    Exercise("rear-delt-machine", "machine rear-delt fly", "isolation", "horizontal pull", ("rear-delts",), ("upper-back",), "total"),  # noqa: E501
    Exercise("upright-row", "upright row", "compound", "vertical pull", ("side-delts",), ("traps", "biceps",), "total"),
    Exercise("dumbbell-fly", "dumbbell fly", "isolation", "horizontal push", ("chest",), ("front-delts",), "per_hand"),
    Exercise("cable-fly", "cable fly", "isolation", "horizontal push", ("chest",), ("front-delts",), "per_hand"),
    Exercise("machine-fly", "machine fly", "isolation", "horizontal push", ("chest",), ("front-delts",), "total"),
    Exercise("dumbbell-pullover", "dumbbell pullover", "isolation", "vertical pull", ("lats",), ("chest",), "total"),
    Exercise("wrist-curl", "wrist curl", "isolation", "wrist", ("forearms",), (), "total"),
    Exercise("plank", "plank", "isolation", "hold", ("abs",), (), "body"),
    Exercise("side-plank", "side plank", "isolation", "hold", ("abs",), (), "body", "each"),
    Exercise("dead-hang", "dead hang", "isolation", "hold", ("forearms",), ("lats",), "body"),
    Exercise("hollow-hold", "hollow hold", "isolation", "hold", ("abs",), (), "body"),
    Exercise("crunch", "crunch", "isolation", "trunk flexion", ("abs",), (), "body"),
    Exercise("cable-crunch", "cable crunch", "isolation", "trunk flexion", ("abs",), (), "total"),
    Exercise("sit-up", "sit-up", "isolation", "trunk flexion", ("abs",), (), "body"),
    Exercise("hanging-leg-raise", "hanging leg raise", "isolation", "trunk flexion", ("abs",), ("forearms",), "body"),
    Exercise("hanging-knee-raise", "hanging knee raise", "isolation", "trunk flexion", ("abs",), ("forearms",), "body"),
    Exercise("ab-wheel", "ab-wheel rollout", "isolation", "trunk flexion", ("abs",), ("lats",), "body"),
    Exercise("russian-twist", "Russian twist", "isolation", "trunk rotation", ("abs",), (), "total"),
    Exercise("pallof-press", "Pallof press", "isolation", "trunk rotation", ("abs",), (), "total", "each"),
    Exercise("farmers-carry", "farmer's carry", "compound", "carry", ("forearms",), ("traps", "abs",), "per_hand"),
    Exercise("suitcase-carry", "suitcase carry", "compound", "carry", ("abs",), ("forearms",), "per_hand", "each"),
    Exercise("power-clean", "power clean", "compound", "olympic", ("glutes",), ("quads", "traps", "upper-back",), "total"),  # noqa: E501
    Exercise("hang-clean", "hang clean", "compound", "olympic", ("glutes",), ("quads", "traps", "upper-back",), "total"),  # noqa: E501
    Exercise("power-snatch", "power snatch", "compound", "olympic", ("glutes",), ("quads", "traps", "upper-back",), "total"),  # noqa: E501
    Exercise("thruster", "thruster", "compound", "squat", ("quads",), ("front-delts", "glutes",), "total"),
    Exercise("burpee", "burpee", "compound", "conditioning", ("chest",), ("quads",), "body"),
)
# fmt: on

EXERCISES: Final = {row.id: row for row in _ROWS}
"""Every exercise by its id, in the catalogue's order."""
