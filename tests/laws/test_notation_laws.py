"""Law: a plan that is written down and read again is the same plan."""

from datetime import UTC, date, time

from hypothesis import given, settings
from hypothesis import strategies as st

from core.evidence.exercises import EXERCISES
from core.model.plan import Plan, Planned, TrainingDay
from core.model.target import Aim
from core.notation.read import PlanReading, read_plan
from core.notation.write import write_plan
from core.read.finding import find
from core.say.render import Voice

HELD = sorted(row.id for row in EXERCISES.values() if row.pattern in ("hold", "carry"))
LIFTED = sorted(set(EXERCISES) - set(HELD))
VOICE = Voice("", UTC)

seconds = st.one_of(st.none(), st.sampled_from([0.0, 0.5, 1.0, 2.0, 3.5]))
tempos = st.one_of(st.none(), st.tuples(seconds, seconds, seconds, seconds).filter(any))
reps = st.tuples(st.integers(1, 30), st.integers(1, 30)).map(lambda pair: (min(pair), max(pair)))
seconds_held = st.tuples(st.integers(1, 300), st.integers(1, 300)).map(lambda pair: (min(pair), max(pair)))
aim_parts: dict[str, st.SearchStrategy[object]] = dict(  # noqa: C408 - reads like the call it fills
    sets=st.integers(1, 10),
    rir=st.sampled_from([0.0, 0.5, 1.0, 2.0, 3.0, 4.0]),
    tempo=tempos,
    rest_s=st.one_of(st.none(), st.sampled_from([45.0, 60.0, 75.0, 90.0, 120.0, 150.0, 200.0, 300.0])),
    ways=st.lists(st.sampled_from(["reps", "tempo", "range", "rest", "load"]), unique=True).map(tuple),
)
notes = st.one_of(
    st.none(),
    st.sampled_from(
        ["Elbow past the ribs.", "slow", "left side first, 2 breaths", 'keep (tight) "elbows"; 3x8 is plenty']
    ),
    st.text("abc 123,.;()x-'", min_size=1, max_size=30)
    .map(str.strip)
    .filter(lambda text: text.strip(" .-(),") and text[-1] != ";"),
)
planned = st.one_of(
    st.builds(Planned, st.sampled_from(LIFTED), st.builds(Aim, reps=reps, **aim_parts), notes),
    st.builds(Planned, st.sampled_from(HELD), st.builds(Aim, reps=seconds_held, **aim_parts), notes),
)
days = st.builds(
    TrainingDay,
    weekday=st.integers(0, 6),
    at=st.times(min_value=time(5), max_value=time(22, 59)).map(lambda at: at.replace(second=0, microsecond=0)),
    title=st.sampled_from(
        [
            "",
            "Legs",
            "Hinge and press",
            "Whole body",
            "5x5 day",
            "Legs: heavy",
            "Day 1",
            "rest",
            "Second bar day",
            "Set up and pull",
            "Minimal",
            "Reps day",
        ]
    ),
    exercises=st.lists(planned, min_size=1, max_size=4, unique_by=lambda one: one.exercise).map(tuple),
)
plans = st.builds(
    Plan,
    days=st.lists(days, min_size=1, max_size=5, unique_by=lambda day: day.weekday).map(
        lambda rows: tuple(sorted(rows, key=lambda day: (day.weekday, day.at)))
    ),
    starts=st.one_of(st.none(), st.dates(date(2026, 1, 1), date(2035, 12, 31))),
    easier_every=st.one_of(st.none(), st.integers(2, 16)),
)


@settings(deadline=None)  # a slow machine is no failure of the law
@given(plans)
def test_written_and_read_again_it_is_the_same_plan(plan: Plan) -> None:
    text = write_plan(plan, VOICE.exercise)
    assert read_plan(text, find) == PlanReading(plan)


@settings(deadline=None)
@given(st.text(max_size=300))
def test_any_text_reads_without_raising(text: str) -> None:
    reading = read_plan(text, find)
    assert all(0 <= row.line <= len(text.splitlines()) for row in reading.unread)
