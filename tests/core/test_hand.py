"""Targets under the coach's hand, and one client's plan fitted to another's kit."""

from datetime import UTC, date, time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.adviser import Advisers
from core.evidence.body import traits_of
from core.evidence.exercises import EXERCISES
from core.model.acts import SetAct
from core.model.book import Book, Profile
from core.model.lifter import Ache, Kit, Lifter
from core.model.plan import Plan, Planned, TrainingDay
from core.model.quantities import Load
from core.model.target import Aim, Target, TargetSet
from core.order.fit import fitted
from core.order.hand import Rein, laid_over, ordered

ON = date(2026, 3, 2)
AIM = Aim(3, (8, 12), ways=("reps", "tempo", "load"))
BENCH, SQUAT, CURL = "barbell-bench-press", "back-squat", "dumbbell-curl"
PLAN = Plan((TrainingDay(0, time(18), "", tuple(Planned(name, AIM) for name in (BENCH, SQUAT, CURL))),))
BOOK = Book(Profile("Mira", UTC, coach="Ines"), Lifter(bodyweight_kg=70), PLAN)


def ways(book: Book) -> dict[str, tuple[str, ...]]:
    return {item.exercise: item.aim.ways for day in book.plan.days for item in day.exercises}


ALL = ("reps", "tempo", "load")
CASES = [
    (Rein("hold", BENCH), {BENCH: (), SQUAT: ALL, CURL: ALL}),
    (Rein("ask"), {BENCH: (), SQUAT: (), CURL: ()}),
    (Rein("no_heavier", SQUAT), {BENCH: ALL, SQUAT: ("reps", "tempo"), CURL: ALL}),
    (Rein("no_heavier", part="knee"), {BENCH: ALL, SQUAT: ("reps", "tempo"), CURL: ALL}),
    (Rein("ways", BENCH, ways=("tempo", "load")), {BENCH: ("tempo", "load", "reps"), SQUAT: ALL, CURL: ALL}),
    (Rein("hold", BENCH, until=ON), {BENCH: ALL, SQUAT: ALL, CURL: ALL}),
]


@pytest.mark.parametrize(("rein", "wanted"), CASES)
def test_an_order_leaves_the_ways_that_it_allows(rein: Rein, wanted: dict[str, tuple[str, ...]]) -> None:
    assert ways(laid_over(BOOK, [rein], ON)) == wanted


def test_no_heavier_at_all_is_the_lifters_own_flag() -> None:
    assert laid_over(BOOK, [Rein("no_heavier")], ON).lifter.no_heavier


def test_a_way_named_first_is_allowed_and_none_is_lost() -> None:
    assert ordered(("reps", "load"), ("tempo", "load")) == ("tempo", "load", "reps")


def test_a_target_by_hand_is_given_and_what_is_done_of_it_is_not_asked_again() -> None:
    target = Target("hold", (TargetSet(Load("total", 62.5), (8, 8), 2.0, None, 150.0),) * 3)
    book = laid_over(BOOK, [Rein("fixed", BENCH, target=target)], ON)
    advice = Advisers().today(book, ON, BENCH, ())
    assert advice.sets == target.sets
    assert advice.why[0].rule == "by-hand"
    done = (SetAct(BENCH, Load("total", 62.5), 8, rir=2.0),)
    assert Advisers().today(book, ON, BENCH, done).sets == target.sets[1:]


def test_an_ache_outranks_a_target_by_hand() -> None:
    target = Target("load", (TargetSet(Load("total", 100.0), (8, 8), 2.0),) * 3)
    sore = Book(BOOK.profile, Lifter(bodyweight_kg=70, aches=(Ache("shoulder", ON, "right", 7.0),)), PLAN)
    advice = Advisers().today(laid_over(sore, [Rein("fixed", BENCH, target=target)], ON), ON, BENCH, ())
    assert advice.way == "stop"
    assert advice.sets == ()


kits = st.builds(
    Kit,
    bar_kg=st.one_of(st.none(), st.just(20.0)),
    plates_kg=st.sampled_from([{}, {5.0: 4, 2.5: 2}]),
    dumbbells_kg=st.sampled_from([(), (5.0, 10.0)]),
    kettlebells_kg=st.sampled_from([(), (16.0,)]),
    stack_step_kg=st.one_of(st.none(), st.just(5.0)),
    bands=st.sampled_from([(), ("red",)]),
)
plans = st.lists(st.sampled_from(sorted(EXERCISES)), min_size=1, max_size=8, unique=True).map(
    lambda names: Plan((TrainingDay(0, time(18), "", tuple(Planned(name, AIM) for name in names)),))
)
NEEDED = {"bar": "bar_kg", "dumbbell": "dumbbells_kg", "stack": "stack_step_kg", "band": "bands"}


@given(plans, kits)
def test_a_fitted_plan_can_be_done_and_nothing_is_lost_in_silence(plan: Plan, kit: Kit) -> None:
    fit = fitted(plan, kit)
    kept = [item.exercise for day in fit.plan.days for item in day.exercises]
    for name in kept:
        need = NEEDED.get(traits_of(name).implement)
        assert need is None or getattr(kit, need)
    assert len(set(kept)) == len(kept)
    gone = dict(fit.swaps)
    for item in plan.days[0].exercises:
        assert item.exercise in kept or item.exercise in gone
    for from_, to in gone.items():
        if to is not None:
            assert set(EXERCISES[from_].main_muscles) & set(EXERCISES[to].main_muscles)


def test_a_full_gym_changes_nothing() -> None:
    assert fitted(PLAN, None).plan == PLAN
