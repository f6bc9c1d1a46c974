"""Which body parts an exercise surely loads. Anatomy of the trade, common practice, no source; only plain cases."""

from typing import Final

from core.evidence.exercises import EXERCISES

PARTS: Final[dict[str, tuple[str, ...]]] = {
    "horizontal push": ("shoulder", "elbow", "wrist"),
    "vertical push": ("shoulder", "elbow", "wrist"),
    "vertical pull": ("shoulder", "elbow"),
    "horizontal pull": ("shoulder", "elbow"),
    "squat": ("knee", "hip"),
    "lunge": ("knee", "hip"),
    "hinge": ("lower-back", "hip"),
    "knee flexion": ("knee",),
    "knee extension": ("knee",),
    "elbow flexion": ("elbow",),
    "elbow extension": ("elbow",),
    "shoulder abduction": ("shoulder",),
    "shoulder flexion": ("shoulder",),
    "ankle": ("ankle",),
    "wrist": ("wrist",),
}

UNSURE: Final = (
    "straight-arm-pulldown", "dumbbell-fly", "cable-fly", "machine-fly", "dumbbell-pullover", "face-pull",
    "band-pull-apart", "rear-delt-fly", "rear-delt-machine", "upright-row", "glute-bridge", "back-extension",
    "barbell-hip-thrust", "cable-pull-through", "nordic-curl", "leg-press", "hack-squat",
)  # fmt: skip
"""Rows whose pattern says more than the joint does: only the part in ``SURE`` is held against the core."""

SURE: Final[dict[str, tuple[str, ...]]] = {
    "dumbbell-fly": ("shoulder",), "cable-fly": ("shoulder",), "machine-fly": ("shoulder",),
    "upright-row": ("shoulder",), "rear-delt-fly": ("shoulder",), "back-extension": ("lower-back",),
    "leg-press": ("knee",), "hack-squat": ("knee",), "nordic-curl": ("knee",),
}  # fmt: skip


def loads(exercise: str, where: str) -> bool:
    """True where the exercise surely loads the body part."""
    if exercise in UNSURE:
        return where in SURE.get(exercise, ())
    return where in PARTS.get(EXERCISES[exercise].pattern, ())
