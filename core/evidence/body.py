"""What each exercise moves and with what: share of body mass, implement, middle strength, k. Rows, and moved mass.

``share`` is the part of body mass that is lifted beside the load: push-ups ebben-2011 (from memory) and mier-2014,
the others from segment masses (deleva-1996), where a machine or bench carries the body it is 0. ``strength`` is the
middle one-repetition maximum on the moved mass over body mass for "some" experience: a judgement from common
practice, no source, used only until the lifter's own sets are there. ``k`` is the curve of the exercise
(hoeger-1990 and hatfield-2006, see the evidence notes), 0.0333 where nothing is known; it holds for the moved mass.
Squat counts are published at shares of the bar's maximum (0.027 there): with 0.886 of the body moved too, 60, 70 and
80 % of the bar are about 80, 85 and 90 % of what is moved, which makes k 0.0157, 0.0166 and 0.0139, so 0.0155.
``k_confirmed``: its counts were read in the source, so k is not drawn toward the common one.
"""

# ruff: noqa: E501 - one row a line
from dataclasses import dataclass
from functools import cache
from typing import Final, Literal

from core.evidence.exercises import EXERCISES, Exercise
from core.evidence.numbers import value
from core.model.quantities import Load

Implement = Literal["bar", "light_bar", "plates", "dumbbell", "bell", "stack", "body", "band"]


@dataclass(frozen=True, slots=True)
class Traits:
    """One exercise's body and load: see the module's head. ``extra_cm`` is how much further its range can go."""

    implement: Implement
    strength: float
    share: float = 0.0
    k: float = 0.0333
    hands: int = 1
    extra_cm: float = 0.0
    belt: bool = False
    legs: bool = False
    k_confirmed: bool = False
    sources: tuple[str, ...] = ("practice",)


_FREE: Final = Traits("stack", 0.4)

# fmt: off
TRAITS: Final[dict[str, Traits]] = {
    "barbell-bench-press": Traits("bar", 0.90, k=0.032),
    "incline-barbell-bench-press": Traits("bar", 0.75, k=0.032),
    "close-grip-bench-press": Traits("bar", 0.80, k=0.032),
    "dumbbell-bench-press": Traits("dumbbell", 0.72, hands=2, k=0.032),
    "incline-dumbbell-press": Traits("dumbbell", 0.62, hands=2, k=0.032),
    "dumbbell-floor-press": Traits("dumbbell", 0.70, hands=2, k=0.032),
    "machine-chest-press": Traits("stack", 0.85, k=0.032),
    "push-up": Traits("body", 1.00, share=0.64, extra_cm=10, belt=True, sources=("ebben-2011", "mier-2014")),
    "deficit-push-up": Traits("body", 0.95, share=0.64, extra_cm=15, belt=True, sources=("ebben-2011",)),
    "feet-elevated-push-up": Traits("body", 1.00, share=0.70, extra_cm=10, belt=True, sources=("ebben-2011",)),
    "hands-elevated-push-up": Traits("body", 1.00, share=0.55, belt=True, sources=("ebben-2011",)),
    "knee-push-up": Traits("body", 0.85, share=0.49, extra_cm=10, belt=True, sources=("ebben-2011", "mier-2014")),
    "close-grip-push-up": Traits("body", 0.92, share=0.64, extra_cm=10, belt=True, sources=("ebben-2011",)),
    "pike-push-up": Traits("body", 0.90, share=0.70, extra_cm=10, belt=True),
    "dip": Traits("body", 1.25, share=0.955, belt=True, sources=("deleva-1996",)),
    "bench-dip": Traits("body", 1.05, share=0.60, belt=True),
    "barbell-overhead-press": Traits("bar", 0.58, k=0.050, k_confirmed=True, sources=("hatfield-2006",)),
    "seated-dumbbell-shoulder-press": Traits("dumbbell", 0.48, hands=2, k=0.050, k_confirmed=True, sources=("hatfield-2006",)),
    "dumbbell-shoulder-press": Traits("dumbbell", 0.46, hands=2, k=0.050, k_confirmed=True, sources=("hatfield-2006",)),
    "machine-shoulder-press": Traits("stack", 0.60, k=0.042),
    "landmine-press": Traits("bar", 0.55, k=0.038),
    "push-press": Traits("bar", 0.75, k=0.038),
    "handstand-push-up": Traits("body", 1.10, share=0.955, extra_cm=10, belt=True, sources=("deleva-1996",)),
    "pull-up": Traits("body", 1.20, share=0.955, belt=True, sources=("deleva-1996",)),
    "chin-up": Traits("body", 1.22, share=0.955, belt=True, sources=("deleva-1996",)),
    "neutral-grip-pull-up": Traits("body", 1.22, share=0.955, belt=True, sources=("deleva-1996",)),
    "lat-pulldown": Traits("stack", 0.90, k=0.032, sources=("hoeger-1990",)),
    "close-grip-pulldown": Traits("stack", 0.92, k=0.032, sources=("hoeger-1990",)),
    "straight-arm-pulldown": Traits("stack", 0.42),
    "barbell-row": Traits("bar", 0.85),
    "pendlay-row": Traits("bar", 0.85),
    "t-bar-row": Traits("plates", 0.85),
    "dumbbell-row": Traits("dumbbell", 0.48),
    "chest-supported-row": Traits("dumbbell", 0.65, hands=2),
    "seated-cable-row": Traits("stack", 0.90),
    "machine-row": Traits("stack", 0.90),
    "inverted-row": Traits("body", 0.95, share=0.60, belt=True),
    "face-pull": Traits("stack", 0.40),
    "band-pull-apart": Traits("band", 0.20),
    "shrug-barbell": Traits("bar", 1.40),
    "shrug-dumbbell": Traits("dumbbell", 1.10, hands=2),
    "back-squat": Traits("bar", 2.05, share=0.886, k=0.0155, k_confirmed=True, legs=True, sources=("deleva-1996", "zourdos-2021")),
    "front-squat": Traits("bar", 1.85, share=0.886, k=0.0155, k_confirmed=True, legs=True, sources=("deleva-1996", "zourdos-2021")),
    "box-squat": Traits("bar", 2.00, share=0.886, k=0.0155, k_confirmed=True, legs=True, sources=("deleva-1996", "zourdos-2021")),
    "goblet-squat": Traits("bell", 1.40, share=0.886, k=0.0155, k_confirmed=True, extra_cm=5, legs=True, sources=("deleva-1996",)),
    "bodyweight-squat": Traits("body", 1.75, share=0.886, k=0.0155, k_confirmed=True, extra_cm=5, belt=True, legs=True, sources=("deleva-1996",)),
    "hack-squat": Traits("plates", 1.60, k=0.024, legs=True),
    "leg-press": Traits("plates", 2.60, k=0.019, legs=True, sources=("hoeger-1990",)),
    "bulgarian-split-squat": Traits("dumbbell", 1.60, share=0.80, k=0.0167, hands=2, extra_cm=10, legs=True, sources=("deleva-1996",)),
    "split-squat": Traits("dumbbell", 1.65, share=0.80, k=0.0167, hands=2, extra_cm=10, legs=True, sources=("deleva-1996",)),
    "walking-lunge": Traits("dumbbell", 1.65, share=0.886, k=0.0167, hands=2, legs=True, sources=("deleva-1996",)),
    "reverse-lunge": Traits("dumbbell", 1.65, share=0.886, k=0.0167, hands=2, extra_cm=10, legs=True, sources=("deleva-1996",)),
    "step-up": Traits("dumbbell", 1.65, share=0.943, k=0.0167, hands=2, extra_cm=10, legs=True, sources=("deleva-1996",)),
    "pistol-squat": Traits("body", 1.20, share=0.943, k=0.0167, belt=True, legs=True, sources=("deleva-1996",)),
    "wall-sit": Traits("body", 1.20, share=0.60, legs=True),
    "conventional-deadlift": Traits("bar", 1.55, extra_cm=10, legs=True),
    "sumo-deadlift": Traits("bar", 1.55, extra_cm=10, legs=True),
    "trap-bar-deadlift": Traits("bar", 1.65, extra_cm=10, legs=True),
    "deficit-deadlift": Traits("bar", 1.40, extra_cm=10, legs=True),
    "romanian-deadlift": Traits("bar", 1.25, extra_cm=10, legs=True),
    "dumbbell-romanian-deadlift": Traits("dumbbell", 1.00, hands=2, extra_cm=10, legs=True),
    "single-leg-romanian-deadlift": Traits("dumbbell", 0.60, hands=2, extra_cm=10, legs=True),
    "good-morning": Traits("bar", 0.80, legs=True),
    "back-extension": Traits("body", 0.85, share=0.50, belt=True, legs=True),
    "barbell-hip-thrust": Traits("bar", 1.70, legs=True),
    "glute-bridge": Traits("body", 1.20, share=0.50, belt=True, extra_cm=10, legs=True),
    "kettlebell-swing": Traits("bell", 0.60, legs=True),
    "cable-pull-through": Traits("stack", 0.70, legs=True),
    "leg-curl-lying": Traits("stack", 0.50, k=0.055, legs=True, sources=("hoeger-1990",)),
    "leg-curl-seated": Traits("stack", 0.60, k=0.055, legs=True, sources=("hoeger-1990",)),
    "nordic-curl": Traits("body", 0.80, share=0.60, k=0.055, belt=True, legs=True),
    "leg-extension": Traits("stack", 0.70, k=0.036, legs=True, sources=("hoeger-1990",)),
    "hip-abduction-machine": Traits("stack", 0.70, legs=True),
    "hip-adduction-machine": Traits("stack", 0.70, legs=True),
    "cable-kickback": Traits("stack", 0.22, legs=True),
    "standing-calf-raise": Traits("stack", 2.30, share=0.973, extra_cm=5, legs=True, sources=("deleva-1996",)),
    "seated-calf-raise": Traits("plates", 0.90, extra_cm=5, legs=True),
    "single-leg-calf-raise": Traits("body", 1.60, share=0.973, extra_cm=5, belt=True, legs=True, sources=("deleva-1996",)),
    "barbell-curl": Traits("light_bar", 0.42, k=0.034, sources=("hoeger-1990",)),
    "ez-bar-curl": Traits("light_bar", 0.42, k=0.034, sources=("hoeger-1990",)),
    "dumbbell-curl": Traits("dumbbell", 0.38, hands=2, k=0.034, sources=("hoeger-1990",)),
    "incline-dumbbell-curl": Traits("dumbbell", 0.33, hands=2, k=0.034, sources=("hoeger-1990",)),
    "hammer-curl": Traits("dumbbell", 0.40, hands=2, k=0.034, sources=("hoeger-1990",)),
    "preacher-curl": Traits("light_bar", 0.36, k=0.034, sources=("hoeger-1990",)),
    "concentration-curl": Traits("dumbbell", 0.17, k=0.034, sources=("hoeger-1990",)),
    "cable-curl": Traits("stack", 0.40, k=0.034, sources=("hoeger-1990",)),
    "reverse-curl": Traits("light_bar", 0.32, k=0.034),
    "triceps-pushdown": Traits("stack", 0.45),
    "overhead-triceps-extension": Traits("bell", 0.32),
    "lying-triceps-extension": Traits("light_bar", 0.38),
    "dumbbell-kickback": Traits("dumbbell", 0.20, hands=2),
    "lateral-raise": Traits("dumbbell", 0.22, hands=2, k=0.038),
    "cable-lateral-raise": Traits("stack", 0.11, k=0.038),
    "front-raise": Traits("dumbbell", 0.22, hands=2, k=0.038),
    "rear-delt-fly": Traits("dumbbell", 0.22, hands=2, k=0.038),
    "rear-delt-machine": Traits("stack", 0.45, k=0.036),
    "upright-row": Traits("light_bar", 0.45),
    "dumbbell-fly": Traits("dumbbell", 0.40, hands=2),
    "cable-fly": Traits("stack", 0.40, hands=2),
    "machine-fly": Traits("stack", 0.55),
    "dumbbell-pullover": Traits("bell", 0.40),
    "wrist-curl": Traits("light_bar", 0.35),
    "plank": Traits("body", 0.85, share=0.60),
    "side-plank": Traits("body", 0.85, share=0.60),
    "dead-hang": Traits("body", 1.30, share=0.955, belt=True, sources=("deleva-1996",)),
    "hollow-hold": Traits("body", 0.60, share=0.45),
    "crunch": Traits("body", 0.55, share=0.35, belt=True),
    "cable-crunch": Traits("stack", 0.60),
    "sit-up": Traits("body", 0.85, share=0.603, k=0.039, belt=True, sources=("deleva-1996", "hoeger-1990")),
    "hanging-leg-raise": Traits("body", 0.55, share=0.397, belt=True, sources=("deleva-1996",)),
    "hanging-knee-raise": Traits("body", 0.50, share=0.35, belt=True, sources=("deleva-1996",)),
    "ab-wheel": Traits("body", 0.70, share=0.50),
    "russian-twist": Traits("bell", 0.25),
    "pallof-press": Traits("stack", 0.25),
    "farmers-carry": Traits("dumbbell", 1.20, hands=2),
    "suitcase-carry": Traits("dumbbell", 0.60),
    "power-clean": Traits("bar", 0.95, k=0.040),
    "hang-clean": Traits("bar", 0.90, k=0.040),
    "power-snatch": Traits("bar", 0.70, k=0.040),
    "thruster": Traits("bar", 0.70, k=0.036),
    "burpee": Traits("body", 1.00, share=0.64),
}
# fmt: on

UNKNOWN: Final = Exercise("", "exercise", "compound", "", (), (), "total")
"""Stands in for an exercise that the catalogue lacks, so that nothing asked for can fail."""


def traits_of(exercise: str) -> Traits:
    """The row of an exercise, or a plain machine for one that the table lacks."""
    return TRAITS.get(exercise, _FREE)


def row_of(exercise: str) -> Exercise:
    """The catalogue's row, or a stand-in for an id that it lacks."""
    return EXERCISES.get(exercise, UNKNOWN)


@cache
def seconds_or_metres(exercise: str) -> float:
    """How many seconds (holds) or metres (carries) count as one repetition; 1 where repetitions are counted."""
    pattern = row_of(exercise).pattern
    if pattern == "hold":
        return value("hold.seconds_per_rep")
    return value("carry.metres_per_rep") if pattern == "carry" else 1.0


def body_mass(kg: float | None) -> float:
    """Body mass in kg, the usual one when it is unsaid or cannot be a lifter's."""
    return kg if kg is not None and 25.0 <= kg <= 350.0 else value("prior.bodyweight_kg")


def moved_kg(load: Load | None, exercise: str, bodyweight_kg: float) -> float | None:
    """The mass really moved in kg, or None when the load is not known. A band of unknown pull counts a nominal one."""
    traits = traits_of(exercise)
    body = traits.share * bodyweight_kg
    if load is None:
        return None if row_of(exercise).load_kind not in ("body", "band") else max(body, 1.0)
    if load.kind == "body":
        return max(body, 1.0)
    if load.kind == "band":
        return max(body + (load.kg if load.kg is not None else 0.1 * bodyweight_kg), 1.0)
    if load.kind == "assist":
        return max(body - (load.kg if load.kg is not None else 0.25 * body), 1.0)
    if load.kg is None or not 0 <= load.kg < 2000:
        return None
    hands = traits.hands if load.kind == "per_hand" else 1
    return max(body + hands * load.kg, 0.5)
