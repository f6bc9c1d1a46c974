"""Drawing simulated lifters: body, training age, exercise, kit, aim. Spreads name a source or are a judgement."""

from dataclasses import dataclass
from typing import Final

import numpy as np

from core.evidence.exercises import EXERCISES
from core.model.lifter import Experience, Lifter
from core.model.quantities import BODY, Load, LoadKind, Tempo, Way
from core.model.target import Aim
from tests.sim.families import FAMILIES, Family, Fatigue
from tests.sim.gyms import GYMS, Gym, ladder
from tests.sim.truth import Truth

# [1.4] k by exercise: Zourdos 2021 and Hatfield 2006 (squat, overhead press), the others from memory. Squats are on the
# mass really moved: 16 repetitions at 70 % of the bar are at 80 % of bar and body, so k is 0.0155 there, not 0.027.
K_OF: Final = {
    "leg-press": 0.019, "back-squat": 0.0155, "bodyweight-squat": 0.0155, "goblet-squat": 0.0155,
    "reverse-lunge": 0.018,
    "barbell-bench-press": 0.032, "dumbbell-bench-press": 0.032, "machine-chest-press": 0.032, "push-up": 0.032,
    "lat-pulldown": 0.032, "barbell-curl": 0.035, "dumbbell-curl": 0.035, "leg-extension": 0.038,
    "barbell-overhead-press": 0.050, "dumbbell-shoulder-press": 0.050, "leg-curl-seated": 0.055,
}  # fmt: skip
K_OTHER: Final = 0.0333
K_SPREAD: Final = 0.27  # Zourdos 2021: SD 4 on a mean of 16

# [8] share of body mass moved: de Leva 1996 segments; push-up floor 0.64 +- 0.05 (Mier 2014, Gouvali 2005).
SHARE_OF: Final = {
    "back-squat": 0.88, "bodyweight-squat": 0.88, "goblet-squat": 0.88, "reverse-lunge": 0.94, "pull-up": 0.957,
    "dip": 0.957, "push-up": 0.66, "feet-elevated-push-up": 0.70, "inverted-row": 0.55,
}  # fmt: skip

# Strength for one repetition as a multiple of body mass, external load (judgement: an adult of middling training).
STRENGTH_OF: Final = {
    "barbell-bench-press": 0.95, "back-squat": 1.25, "barbell-overhead-press": 0.6, "romanian-deadlift": 1.2,
    "barbell-row": 0.85, "conventional-deadlift": 1.5, "barbell-curl": 0.42, "dumbbell-bench-press": 0.38,
    "dumbbell-shoulder-press": 0.26, "dumbbell-row": 0.42, "dumbbell-curl": 0.2, "lateral-raise": 0.14,
    "reverse-lunge": 0.35, "dumbbell-romanian-deadlift": 0.45, "lat-pulldown": 0.9, "leg-extension": 0.8,
    "leg-curl-seated": 0.65, "machine-chest-press": 0.95, "triceps-pushdown": 0.45, "seated-cable-row": 0.9,
    "leg-press": 2.2, "pull-up": 0.28, "dip": 0.4, "push-up": 0.4, "bodyweight-squat": 0.5, "inverted-row": 0.3,
    "feet-elevated-push-up": 0.35, "goblet-squat": 0.45, "kettlebell-swing": 0.5,
}  # fmt: skip

LOWER: Final = ("squat", "lunge", "hinge", "knee flexion", "knee extension", "ankle")

WEEKS_OF: Final[dict[Experience, tuple[float, float]]] = {"new": (2.0, 45.0), "some": (52.0, 190.0),
                                                          "long": (210.0, 600.0)}  # fmt: skip
LEVEL_OF: Final[dict[Experience, float]] = {"new": 0.75, "some": 1.0, "long": 1.2}

REPS: Final = ((3, 5), (5, 8), (6, 10), (8, 12), (10, 15), (12, 20))
TEMPOS: Final[tuple[Tempo | None, ...]] = (None, None, (2.0, 0.0, 1.0, 0.0), (1.0, 0.0, 1.0, 0.0), (2.0, 1.0, 1.0, 0.0))
WAYS: Final[tuple[tuple[Way, ...], ...]] = (
    ("reps", "load"),
    ("load", "reps"),
    ("reps", "tempo", "range", "rest", "load"),
    ("tempo", "reps", "load"),
    ("rest", "reps"),
)


@dataclass(slots=True)
class Person:
    """A simulated lifter in a gym, with the coach's aim for one exercise and the truth nobody sees."""

    lifter: Lifter
    gym: Gym
    exercise: str
    aim: Aim
    truth: Truth
    loads: list[Load]
    start: Load
    days_between: float
    misses: float
    lay_offs: float


def load_of(kind: LoadKind, kg: float) -> Load:
    """A load of the exercise's own kind; on the body, a positive number is added."""
    if kind == "body":
        return BODY if kg == 0.0 else Load("added", kg)
    return Load(kind, kg)


def choices(exercise: str, gym: Gym) -> list[Load]:
    """Every load to choose from in this gym, light to heavy."""
    kind = EXERCISES[exercise].load_kind
    if kind != "body":
        return [load_of(kind, kg) for kg in ladder(exercise, kind, gym)]
    added = [kg for kg in ladder(exercise, "added", gym) if kg > 0] if exercise in ("pull-up", "dip", "push-up") else []
    return [BODY, *(load_of(kind, kg) for kg in added)]


def draw_person(rng: np.random.Generator, family: Family) -> Person:
    """A lifter drawn at random whom the gym can serve; the same generator state gives the same lifter."""
    while True:
        person = _draw_anyone(rng, family)
        if _served(person):
            return person


def _served(person: Person) -> bool:
    """A coach would write this: the start load allows about the aim's repetitions, and no set runs past thirty."""
    fresh = fresh_reps(person.truth, person.start)
    low, high = person.aim.reps
    return low - 1.0 <= fresh - person.aim.rir - 1.0 <= high + 4.0 and fresh <= 30.0


def fresh_reps(truth: Truth, load: Load) -> float:
    """Repetitions to failure of a first set on a middling day."""
    return float(truth.family.curve(np.array([truth.system_kg(load) / np.exp(truth.ln_strength)]), truth.k)[0])


def _draw_anyone(rng: np.random.Generator, family: Family) -> Person:
    gym = GYMS[int(rng.integers(len(GYMS)))]
    exercise = gym.exercises[int(rng.integers(len(gym.exercises)))]
    row = EXERCISES[exercise]
    experience: Experience = ("new", "some", "long")[int(rng.integers(3))]
    bodyweight = float(np.clip(rng.normal(76.0, 13.0), 48.0, 125.0))
    truth = _draw_truth(rng, family, exercise, experience, bodyweight)
    aim = _draw_aim(rng, row.kind)
    loads = choices(exercise, gym)
    start, aim = _fit(rng, truth, aim, loads)
    lifter = Lifter(gym.unit, round(bodyweight, 1), experience, gym.kit)
    return Person(
        lifter, gym, exercise, aim, truth, loads, start,
        days_between=float(rng.choice([2.5, 3.5, 7.0])), misses=0.08, lay_offs=float(rng.choice([0.0, 0.02, 0.04])),
    )  # fmt: skip


def _draw_truth(
    rng: np.random.Generator, family: Family, exercise: str, experience: Experience, bodyweight: float
) -> Truth:
    lower = EXERCISES[exercise].pattern in LOWER
    share = SHARE_OF.get(exercise, 0.0)
    share = share * float(np.exp(0.05 * rng.standard_normal())) if share < 0.8 else share
    hands = 1 if EXERCISES[exercise].default_side == "each" and share == 0.0 else 2
    per_hand = EXERCISES[exercise].load_kind == "per_hand"
    level = LEVEL_OF[experience] * float(np.exp(rng.normal(0.0, 0.2)))
    held = STRENGTH_OF[exercise] * bodyweight * level * (hands if per_hand else 1)
    # [5] upper body c0 0.61, p 1.4; lower 0.30, p 1.0 (Willardson & Burkett 2005); spread is a judgement.
    fatigue = Fatigue((0.30 if lower else 0.61) * float(np.exp(0.35 * rng.standard_normal())), 1.0 if lower else 1.4)
    low, high = WEEKS_OF[experience]
    return Truth(
        family=family,
        ln_strength=float(np.log(share * bodyweight + held)),
        k=float(K_OF.get(exercise, K_OTHER) * np.exp(K_SPREAD * rng.standard_normal())),
        fatigue=fatigue,
        tempo_b=float(np.clip(rng.normal(0.6, 0.12), 0.4, 0.9)),  # [4]
        own_rep_s=float(np.clip(rng.normal(3.0, 0.4), 2.0, 4.5)),  # [4] 3 s assumed for normal repetitions
        bias=float(rng.normal(0.95, 0.8)),  # [2] Halperin 2022: 0.95, heterogeneous
        felt_scale=family.noise * float(np.exp(0.25 * rng.standard_normal())) * 0.8,
        day_sd=family.noise * 0.022,  # [11] Mitter 2022: SEM 0.7-1.1 repetitions between days
        set_sd=family.noise,
        says_effort=float(rng.choice(family.says)),
        pushes=bool(rng.random() < 0.6),
        slip_near=float(rng.beta(2.0, 10.0)),
        slip_far=float(rng.beta(1.0, 60.0)),
        moved_share=share,
        hands=hands,
        bodyweight_kg=bodyweight,
        gain_factor=float(np.exp(rng.normal(-0.1, 0.5))),  # [11] Latella 2020: SD larger than the mean
        weeks_trained=float(rng.uniform(low, high)),
    )


def _draw_aim(rng: np.random.Generator, kind: str) -> Aim:
    reps = REPS[int(rng.integers(len(REPS)))]
    rest = rng.choice([120.0, 150.0, 180.0] if kind == "compound" else [60.0, 90.0, 120.0])
    return Aim(
        sets=int(rng.integers(2, 5)), reps=reps, rir=float(rng.choice([1.0, 2.0, 2.0, 3.0])),
        tempo=TEMPOS[int(rng.integers(len(TEMPOS)))], rest_s=float(rest), ways=WAYS[int(rng.integers(len(WAYS)))],
    )  # fmt: skip


def _fit(rng: np.random.Generator, truth: Truth, aim: Aim, loads: list[Load]) -> tuple[Load, Aim]:
    """A load near what suits the aim, judged with an error; if the kit has none, the aim bends to the kit."""
    wanted = 0.5 * (aim.reps[0] + aim.reps[1]) + aim.rir + 1.5
    guess = truth.ln_strength + truth.family.start_error * float(rng.standard_normal())

    def reps_at(load: Load) -> float:
        return float(truth.family.curve(np.array([truth.system_kg(load) / np.exp(guess)]), truth.k)[0])

    start = min(loads, key=lambda load: abs(reps_at(load) - wanted))
    fresh = reps_at(start)
    if abs(fresh - wanted) <= 4.0:
        return start, aim
    low = int(np.clip(round(fresh - aim.rir - 4.0), 3, 20))
    return start, Aim(aim.sets, (low, low + 4), aim.rir, aim.tempo, aim.rest_s, aim.ways)


def draw_people(seed: int, count: int, families: tuple[Family, ...] = FAMILIES) -> list[tuple[Person, int]]:
    """So many lifters, families in turn, each with a seed of its own: one lifter more does not change the others."""
    return [
        (draw_person(np.random.default_rng([seed, n]), families[n % len(families)]), seed * 100_003 + n)
        for n in range(count)
    ]
