"""Random questions to the core: sensible, broken and absurd ones, by a seed. Knows nothing of the answers."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date, timedelta
from typing import Final, TypeVar

import numpy as np

from core.evidence.exercises import EXERCISES
from core.model.acts import SetAct
from core.model.lifter import Ache, Kit, Lifter
from core.model.quantities import BODY, Form, Load, Range, Tempo, Way
from core.model.target import Aim, Question, Session, Target, TargetSet
from tests.sim.gyms import GYMS, LB

Rng = np.random.Generator
One = TypeVar("One")

IDS: Final = tuple(EXERCISES)
DAY: Final = date(2026, 3, 2)
WHERES: Final = ("shoulder", "knee", "elbow", "lower-back", "wrist", "hip", "neck", "ankle", "groin", "big-toe")
ALL_WAYS: Final[tuple[Way, ...]] = ("reps", "tempo", "range", "rest", "load")
ORDERS: Final[tuple[tuple[Way, ...], ...]] = (
    ALL_WAYS, ("reps", "load"), ("load",), ("load", "reps"), ("tempo",), ("rest",), ("range", "reps"), (),
)  # fmt: skip
TEMPOS: Final[tuple[Tempo | None, ...]] = (
    None, None, (2.0, 0.0, 1.0, 0.0), (3.0, 1.0, 1.0, 0.0), (1.0, 0.0, 0.0, 0.0), (3.0, None, None, None),
    (2.0, 2.0, 2.0, 2.0),
)  # fmt: skip
KITS: Final[tuple[Kit | None, ...]] = (
    *(gym.kit for gym in GYMS),
    Kit(dumbbells_kg=tuple(5 * n * LB for n in range(2, 11)), bands=("light", "heavy")),
    Kit(20.0, {20.0: 2, 10.0: 2, 5.0: 2, 2.5: 2, 1.25: 2}, (5.0, 7.5, 10.0), (16.0, 24.0), 5.0, ("light", "heavy")),
    Kit(bands=("light",)),
    Kit(15.0, {}),
)


def pick(rng: Rng, options: Sequence[One]) -> One:
    """One of them."""
    return options[int(rng.integers(len(options)))]


def some_load(rng: Rng, exercise: str) -> Load:
    """A load of the exercise's own kind."""
    kind = EXERCISES[exercise].load_kind
    if kind == "body":
        return pick(rng, (BODY, BODY, Load("added", 5.0), Load("added", 10.0), Load("assist", 20.0)))
    if kind == "band":
        return Load("band", None, pick(rng, ("light", "heavy")))
    return Load(kind, pick(rng, (20.0, 30.0, 40.0, 60.0, 80.0) if kind == "total" else (5.0, 7.5, 10.0, 16.0, 24.0)))


def any_load(rng: Rng) -> Load | None:
    """A load of any kind at all, right or wrong for the exercise."""
    return pick(rng, (
        None, BODY, Load("total", 60.0), Load("total", 0.0), Load("total", 400.0), Load("per_hand", 12.5),
        Load("added", 15.0), Load("assist", 30.0), Load("assist", None, "green"), Load("band", None, "heavy"),
        Load("band", 12.0, "red"), Load("total", 61.234),
    ))  # fmt: skip


def some_aim(rng: Rng) -> Aim:
    """A prescription as coaches write them, and now and then an odd one."""
    reps = pick(rng, ((8, 12), (5, 8), (3, 5), (6, 10), (12, 20), (5, 5), (1, 1), (20, 30)))
    return Aim(
        int(rng.integers(1, 6)), reps, pick(rng, (0.0, 1.0, 2.0, 2.0, 3.0, 2.5)), pick(rng, TEMPOS),
        pick(rng, (None, 60.0, 90.0, 120.0, 120.0, 180.0, 240.0)), pick(rng, ORDERS),
    )  # fmt: skip


def some_lifter(rng: Rng) -> Lifter:
    """A person; body mass now and then unknown."""
    return Lifter(
        pick(rng, ("kg", "lb")), pick(rng, (None, 50.0, 72.5, 80.0, 110.0)), pick(rng, ("new", "some", "long")),
        pick(rng, KITS), bool(rng.random() < 0.15),
    )  # fmt: skip


def aimed(aim: Aim, load: Load | None, lift: int = 0) -> Target:
    """A target of the aim itself, ``lift`` repetitions up."""
    reps = (min(aim.reps[0] + lift, 30), min(aim.reps[1] + lift, 30))
    return Target("hold", (TargetSet(load, reps, aim.rir, aim.tempo, aim.rest_s),) * aim.sets)


def outcome(rng: Rng, exercise: str, asked: TargetSet, mood: float) -> SetAct:
    """A set that came of a target, by mood: 1 is met with ease, -1 is missed."""
    spread = asked.reps[1] - asked.reps[0]
    reps = max(0, round(asked.reps[0] + mood * (1 + spread) + float(rng.normal(0.0, 0.7))))
    rir = pick(rng, (None, asked.rir, 0.0, 1.0, 2.0, 3.0)) if mood < 1 else pick(rng, (None, asked.rir, 3.0, 4.0))
    form: Form | None = pick(rng, (None, None, None, "clean", "clean"))
    return SetAct(exercise, asked.load, reps, rir=rir, form=form, tempo=asked.tempo, range=asked.range)


def sensible(rng: Rng) -> Question:
    """Some sessions of a coach's plan at one load, met or missed as it falls."""
    lifter, aim, exercise = some_lifter(rng), some_aim(rng), pick(rng, IDS)
    load, on = some_load(rng, exercise), DAY
    past: list[Session] = []
    for _ in range(int(rng.integers(1, 7))):
        target = aimed(aim, load, int(rng.integers(0, 3)))
        mood = float(rng.normal(0.4, 0.6))
        past.append(Session(on, tuple(outcome(rng, exercise, each, mood) for each in target.sets), target))
        on += timedelta(days=int(rng.integers(2, 8)))
    return Question(lifter, exercise, aim, tuple(past), on)


def timed(question: Question, rng: Rng) -> Question:
    """Every set as a hold or a distance."""

    def held(act: SetAct) -> SetAct:
        if rng.random() < 0.5:
            return replace(act, reps=None, hold_s=float(rng.integers(5, 90)))
        return replace(act, reps=None, distance_m=float(rng.integers(5, 60)))

    past = tuple(replace(s, sets=tuple(held(act) for act in s.sets)) for s in question.past)
    return replace(question, past=past, exercise=pick(rng, ("plank", "dead-hang", "farmers-carry", "wall-sit")))


def empty(question: Question, rng: Rng) -> Question:
    """Nothing done yet, or sessions without a set."""
    bare = tuple(replace(each, sets=()) for each in question.past)
    return replace(question, past=pick(rng, ((), bare)))


def untargeted(question: Question, rng: Rng) -> Question:
    """No target was ever given."""
    return replace(question, past=tuple(replace(each, target=None) for each in question.past))


def contradictory(question: Question, rng: Rng) -> Question:
    """Results that no one lifter has."""

    def wild(act: SetAct) -> SetAct:
        return replace(act, reps=int(pick(rng, (0, 1, 3, 12, 25, 50, 100))), rir=pick(rng, (None, 0.0, 5.0, 10.0)))

    return replace(question, past=tuple(replace(s, sets=tuple(wild(a) for a in s.sets)) for s in question.past))


def mixed(question: Question, rng: Rng) -> Question:
    """Loads of all kinds and sizes, right or wrong for the exercise."""
    return replace(
        question,
        past=tuple(
            replace(
                s, sets=tuple(replace(act, load=any_load(rng)) for act in s.sets), target=pick(rng, (None, s.target))
            )
            for s in question.past
        ),
    )


def huge(question: Question, rng: Rng) -> Question:
    """Repetitions and loads beyond any lifter."""

    def big(act: SetAct) -> SetAct:
        return replace(act, reps=int(pick(rng, (99, 500, 9999))), load=pick(rng, (act.load, Load("total", 900.0))))

    return replace(question, past=tuple(replace(s, sets=tuple(big(act) for act in s.sets)) for s in question.past))


def aching(question: Question, rng: Rng) -> Question:
    """Complaints of all levels and parts, old and new."""
    aches = tuple(
        Ache(where, question.on - timedelta(days=int(rng.choice([0, 0, 0, 1, 9]))), pick(rng, (None, "left", "both")),
             pick(rng, (None, 0.0, 1.0, 2.0, 3.0, 3.5, 4.0, 5.0, 5.5, 6.0, 8.0, 10.0)))
        for where in rng.choice(WHERES, size=int(rng.integers(1, 4)), replace=False)
    )  # fmt: skip
    return replace(question, lifter=replace(question.lifter, aches=aches))


def no_heavier(question: Question, rng: Rng) -> Question:
    """Nothing heavier, though all went well."""
    past = tuple(
        replace(s, sets=tuple(replace(act, reps=(act.reps or 0) + 5, rir=4.0, form="clean") for act in s.sets))
        for s in question.past
    )
    return replace(question, past=past, lifter=replace(question.lifter, no_heavier=True))


def laid_off(question: Question, rng: Rng) -> Question:
    """Weeks, months or years away."""
    return replace(question, on=question.past[-1].on + timedelta(days=int(rng.choice([15, 21, 30, 60, 120, 800]))))


def stuck(question: Question, rng: Rng) -> Question:
    """The same target missed three times."""
    target = aimed(question.aim, some_load(rng, question.exercise))
    low = question.aim.reps[0]
    acts = tuple(
        SetAct(question.exercise, each.load, max(low - 1 - n, 0), rir=0.0) for n, each in enumerate(target.sets)
    )
    days = (DAY + timedelta(days=3 * n) for n in range(3))
    past = tuple(Session(day, acts, target) for day in days)
    return replace(question, past=past, on=DAY + timedelta(days=9))


def loose(question: Question, rng: Rng) -> Question:
    """Form slips, most of all in the newest session."""
    last = question.past[-1]
    sets = tuple(replace(act, reps=(act.reps or 0) + 3, form=pick(rng, ("loose", "fair", None))) for act in last.sets)
    return replace(question, past=(*question.past[:-1], replace(last, sets=sets)))


def hurried(question: Question, rng: Rng) -> Question:
    """A shorter rest, and repetitions lost by it."""
    load, exercise = some_load(rng, question.exercise), question.exercise
    aim = replace(question.aim, rest_s=180.0, ways=ALL_WAYS)
    before, low = aimed(aim, load), aim.reps[0]
    after = Target("rest", tuple(replace(each, rest_s=150.0) for each in before.sets))
    lost = float(rng.choice([0.95, 0.85, 0.7]))
    good = tuple(SetAct(exercise, load, low + 3, rir=aim.rir) for _ in before.sets)
    bad = tuple(SetAct(exercise, load, int((low + 3) * lost), rir=aim.rir) for _ in before.sets)
    past = (Session(DAY, good, before), Session(DAY + timedelta(days=3), bad, after))
    return replace(question, aim=aim, past=past, on=DAY + timedelta(days=6))


def under_way(question: Question, rng: Rng) -> Question:
    """Some of today's sets are done."""
    target = aimed(question.aim, some_load(rng, question.exercise))
    done = target.sets[: int(rng.integers(0, question.aim.sets + 2))]
    return replace(question, today=tuple(outcome(rng, question.exercise, each, float(rng.normal())) for each in done))


def cluttered(question: Question, rng: Rng) -> Question:
    """Warm-ups, drop sets, one side at a time, misses, partial ranges, two sessions on a day."""

    def odd(act: SetAct) -> SetAct:
        return pick(rng, (
            replace(act, warmup=True), replace(act, drop=True), replace(act, side="left"), replace(act, side="right"),
            replace(act, failed=True, rir=0.0), replace(act, range=Range("partial")),
            replace(act, range=Range("extra", 5.0)),
            replace(act, partials=3), replace(act, tempo=(4.0, 1.0, 1.0, 0.0)), act, act, act,
        ))  # fmt: skip

    past = tuple(replace(s, sets=tuple(odd(act) for act in s.sets)) for s in question.past)
    return replace(question, past=(*past, past[-1]))


def changed(question: Question, rng: Rng) -> Question:
    """The coach writes another aim after all this."""
    return replace(question, aim=some_aim(rng))


def deeper(question: Question, rng: Rng) -> Question:
    """More range, slower and with less rest: the ways at their ends."""
    aim = Aim(3, (28, 30), 0.0, (3.0, 2.0, 3.0, 1.5), 60.0, ALL_WAYS)
    target = Target(
        "range", (TargetSet(some_load(rng, question.exercise), (28, 30), 0.0, aim.tempo, 120.0, Range("extra")),) * 3
    )
    acts = tuple(
        SetAct(question.exercise, each.load, 30, rir=3.0, form="clean", range=each.range) for each in target.sets
    )
    return replace(question, aim=aim, past=(Session(DAY, acts, target),), on=DAY + timedelta(days=3))


Twist = Callable[[Question, Rng], Question]

TWISTS: Final[dict[str, Twist]] = {
    "sensible": lambda question, rng: question, "timed": timed, "empty": empty, "untargeted": untargeted,
    "contradictory": contradictory, "mixed": mixed, "huge": huge, "aching": aching, "no_heavier": no_heavier,
    "laid_off": laid_off, "stuck": stuck, "loose": loose, "hurried": hurried, "under_way": under_way,
    "cluttered": cluttered, "changed": changed, "deeper": deeper,
}  # fmt: skip


def draw(twist: str, seed: int) -> Question:
    """A question of one sort; the same seed gives the same question."""
    rng = np.random.default_rng([sorted(TWISTS).index(twist), seed])
    return TWISTS[twist](sensible(rng), rng)
