"""Law: a plan that is written down and read again is the same plan."""

from datetime import time

from hypothesis import given
from hypothesis import strategies as st

from core.evidence.exercises import EXERCISES
from core.model.plan import Plan, Planned, TrainingDay
from core.model.target import Aim
from core.notation.read import read_plan
from core.notation.write import write_plan

IDS = {row.name: row.id for row in EXERCISES.values()}

seconds = st.one_of(st.none(), st.sampled_from([0.0, 0.5, 1.0, 2.0, 3.5]))
tempos = st.one_of(st.none(), st.tuples(seconds, seconds, seconds, seconds).filter(any))
reps = st.tuples(st.integers(1, 30), st.integers(1, 30)).map(lambda pair: (min(pair), max(pair)))
aims = st.builds(
    Aim,
    sets=st.integers(1, 10),
    reps=reps,
    rir=st.sampled_from([0.0, 0.5, 1.0, 2.0, 3.0, 4.0]),
    tempo=tempos,
    rest_s=st.one_of(st.none(), st.sampled_from([45.0, 60.0, 75.0, 90.0, 120.0, 150.0, 200.0, 300.0])),
    ways=st.lists(st.sampled_from(["reps", "tempo", "range", "rest", "load"]), min_size=1, unique=True).map(tuple),
)
notes = st.one_of(st.none(), st.sampled_from(["Elbow past the ribs.", "slow", "left side first, 2 breaths"]))
planned = st.builds(Planned, exercise=st.sampled_from(sorted(EXERCISES)), aim=aims, note=notes)
days = st.builds(
    TrainingDay,
    weekday=st.integers(0, 6),
    at=st.times(min_value=time(5), max_value=time(22, 59)).map(lambda at: at.replace(second=0, microsecond=0)),
    title=st.sampled_from(["", "Legs", "Hinge and press", "Whole body"]),
    exercises=st.lists(planned, min_size=1, max_size=4).map(tuple),
)
plans = st.builds(
    Plan,
    days=st.lists(days, min_size=1, max_size=5, unique_by=lambda day: day.weekday).map(
        lambda rows: tuple(sorted(rows, key=lambda day: (day.weekday, day.at)))
    ),
    starts=st.none(),
    easier_every=st.one_of(st.none(), st.integers(3, 9)),
)


def find(name: str) -> tuple[str, ...]:
    return (IDS[name],) if name in IDS else ()


@given(plans)
def test_written_and_read_again_it_is_the_same_plan(plan: Plan) -> None:
    text = write_plan(plan, lambda exercise: EXERCISES[exercise].name)
    reading = read_plan(text, find)
    assert reading.unread == ()
    assert reading.plan == plan


@given(st.text(max_size=300))
def test_any_text_reads_without_raising(text: str) -> None:
    reading = read_plan(text, find)
    assert all(0 <= row.line <= len(text.splitlines()) for row in reading.unread)
