"""Questions of every kind for the advising laws: plausible lives, and what no life holds. Strategies only."""

from dataclasses import replace
from datetime import date, timedelta

from hypothesis import strategies as st

from core.evidence.exercises import EXERCISES
from core.model.acts import SetAct
from core.model.lifter import Ache, Kit, Lifter
from core.model.quantities import BODY, Load, Range
from core.model.target import Aim, Question, Session, Target, TargetSet

DAY = date(2026, 3, 2)
LIFTS = (
    *("barbell-bench-press", "back-squat", "dumbbell-row", "lateral-raise", "lat-pulldown", "pull-up", "push-up"),
    *("goblet-squat", "split-squat", "plank", "farmers-carry", "band-pull-apart", "ez-bar-curl", "leg-press"),
)

kits = st.one_of(
    st.none(),
    st.builds(
        Kit,
        bar_kg=st.sampled_from([None, 20.0, 15.0, 45 * 0.45359237]),
        plates_kg=st.dictionaries(st.sampled_from([20.0, 10.0, 5.0, 2.5, 1.25]), st.integers(0, 6), max_size=5),
        dumbbells_kg=st.lists(st.sampled_from([5.0, 7.5, 10.0, 12.5, 20.0, 30.0]), max_size=6).map(tuple),
        kettlebells_kg=st.lists(st.sampled_from([8.0, 16.0, 24.0]), max_size=3).map(tuple),
        stack_step_kg=st.sampled_from([None, 5.0, 10 * 0.45359237]),
        bands=st.sampled_from([(), ("light",), ("light", "heavy")]),
    ),
)
aches = st.builds(
    Ache,
    where=st.sampled_from(["shoulder", "knee", "lower-back", "wrist", "eyebrow"]),
    on=st.integers(0, 40).map(lambda days: DAY - timedelta(days=days)),
    side=st.sampled_from([None, "left", "right"]),
    level=st.sampled_from([None, 0.0, 2.0, 3.0, 3.5, 4.0, 5.0, 6.0, 9.0]),
)
lifters = st.builds(
    Lifter,
    unit=st.sampled_from(["kg", "lb"]),
    bodyweight_kg=st.sampled_from([None, 50.0, 80.0, 120.0]),
    experience=st.sampled_from(["new", "some", "long"]),
    kit=kits,
    no_heavier=st.booleans(),
    aches=st.lists(aches, max_size=2).map(tuple),
)
ways = st.permutations(["reps", "tempo", "range", "rest", "load"]).flatmap(
    lambda order: st.integers(1, 5).map(lambda count: tuple(order[:count]))
)
aims = st.builds(
    Aim,
    sets=st.integers(1, 5),
    reps=st.sampled_from([(3, 5), (5, 8), (8, 12), (12, 20), (6, 6), (25, 40)]),
    rir=st.sampled_from([0.0, 1.0, 2.0, 3.0]),
    tempo=st.sampled_from(
        [None, (2.0, 0.0, 1.0, 0.0), (2.5, 1.0, 0.0, 1.0), (3.0, 3.0, 3.0, 3.0), (4.0, None, 1.0, 0.0)]
    ),
    rest_s=st.sampled_from([None, 30.0, 90.0, 120.0, 180.0]),
    ways=ways,
)


def usual_load(exercise: str, kg: float) -> Load:
    """A load of the exercise's own kind."""
    kind = EXERCISES[exercise].load_kind
    if kind == "body":
        return BODY if kg < 15 else Load("added", kg - 15)
    return Load("band", None, "light") if kind == "band" else Load(kind, kg)


@st.composite
def acts(draw: st.DrawFn, exercise: str, load: Load) -> SetAct:
    """One set as told."""
    act = SetAct(
        exercise,
        load if draw(st.integers(0, 9)) else draw(st.sampled_from([None, Load("assist", None, "green"), BODY])),
        reps=draw(st.integers(0, 25)),
        rir=draw(st.sampled_from([None, None, 0.0, 1.0, 1.5, 2.0, 3.0, 5.0, 10.0])),
        form=draw(st.sampled_from([None, None, None, "clean", "clean", "fair", "loose"])),
        failed=draw(st.integers(0, 12)) == 0,
        warmup=draw(st.integers(0, 12)) == 0,
        drop=draw(st.integers(0, 12)) == 0,
        rest_s=draw(st.sampled_from([None, None, 0.0, 60.0, 150.0])),
        range=draw(st.sampled_from([None, None, None, Range("partial"), Range("full"), Range("extra", 5.0)])),
    )
    if EXERCISES[exercise].pattern in ("hold", "carry"):
        return replace(act, reps=None, hold_s=float(draw(st.integers(0, 90))))
    return act


@st.composite
def questions(draw: st.DrawFn, own_targets: bool = False) -> Question:
    """A whole question. ``own_targets``: every earlier session says what was advised."""
    exercise = draw(st.sampled_from(LIFTS))
    aim, lifter = draw(aims), draw(lifters)
    kg = draw(st.sampled_from([5.0, 10.0, 20.0, 40.0, 60.0, 62.5, 100.0]))
    on, past = DAY - timedelta(days=150), []
    for _ in range(draw(st.integers(0, 6))):
        on += timedelta(days=draw(st.sampled_from([0, 2, 3, 4, 7, 15, 25])))
        load = usual_load(exercise, kg)
        low = draw(st.integers(max(1, aim.reps[0] - 2), aim.reps[1]))
        one = TargetSet(load, (low, max(low, aim.reps[1])), aim.rir, aim.tempo, aim.rest_s)
        target = Target("hold", (one,) * aim.sets) if own_targets or draw(st.booleans()) else None
        sets = tuple(draw(st.lists(acts(exercise, load), min_size=0, max_size=aim.sets + 1)))
        past.append(Session(on, sets, target))
    today = tuple(draw(st.lists(acts(exercise, usual_load(exercise, kg)), max_size=2))) if draw(st.booleans()) else ()
    return Question(lifter, exercise, aim, tuple(past), DAY, today)
