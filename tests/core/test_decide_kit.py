"""What a kit can load: checked by hand and by brute force over the plates."""

from itertools import pairwise, product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.decide.kit import at_most, heavier, lighter, load_at, plates_a_side, shelf
from core.model.lifter import Kit
from core.model.quantities import BODY, POUND_KG, Load, LoadKind, Unit

BARBELL = Load("total", None)


def test_bar_and_pairs_by_hand() -> None:
    """A 20 kg bar, one pair of 10s and one of 1.25s; three single plates make one pair."""
    kit = Kit(bar_kg=20.0, plates_kg={10.0: 2, 1.25: 3})
    assert shelf(kit, "barbell-bench-press", BARBELL, "kg") == (20.0, 22.5, 40.0, 42.5)


@given(st.dictionaries(st.sampled_from([25.0, 20.0, 10.0, 5.0, 2.5, 1.25, 0.5]), st.integers(0, 6), max_size=5))
def test_bar_and_pairs_by_brute_force(plates: dict[float, int]) -> None:
    """Every pick of pairs, and nothing else."""
    counts = [range(count // 2 + 1) for count in plates.values()]
    sums = {round(20.0 + sum(2 * n * kg for n, kg in zip(pick, plates, strict=True)), 6) for pick in product(*counts)}
    assert set(shelf(Kit(bar_kg=20.0, plates_kg=plates), "back-squat", BARBELL, "kg")) == sums


@pytest.mark.parametrize(
    ("exercise", "kind", "kit", "loads"),
    [
        ("dumbbell-curl", "per_hand", Kit(dumbbells_kg=(10.0, 5.0)), (5.0, 10.0)),
        ("goblet-squat", "total", Kit(dumbbells_kg=(5.0,), kettlebells_kg=(16.0,)), (5.0, 16.0)),
        ("pull-up", "body", Kit(plates_kg={10.0: 1, 2.5: 1}), (0.0, 2.5, 10.0, 12.5)),
        ("crunch", "body", Kit(), (0.0,)),
        ("lat-pulldown", "total", Kit(stack_step_kg=50.0), tuple(50.0 * n for n in range(1, 61))),
        ("barbell-bench-press", "total", Kit(dumbbells_kg=(10.0,)), ()),
        ("dumbbell-curl", "per_hand", Kit(bar_kg=20.0), ()),
    ],
)
def test_each_tool(exercise: str, kind: LoadKind, kit: Kit, loads: tuple[float, ...]) -> None:
    """What is absent is not there."""
    assert shelf(kit, exercise, Load(kind, None), "kg") == loads


def test_full_gym_keeps_the_load_in_use() -> None:
    """A load that was lifted is there, though the usual steps pass it by."""
    assert 61.0 in shelf(None, "barbell-bench-press", Load("total", 61.0), "kg")
    assert 61.0 not in shelf(None, "barbell-bench-press", BARBELL, "kg")


@pytest.mark.parametrize("unit", ["kg", "lb"])
def test_full_gym_steps_are_round_in_the_lifters_unit(unit: Unit) -> None:
    """Five pounds or two and a half kilograms on the bar."""
    scale = POUND_KG if unit == "lb" else 1.0
    loads = shelf(None, "back-squat", BARBELL, unit)
    steps = {round((b - a) / scale, 3) for a, b in pairwise(loads)}
    assert steps == ({5.0} if unit == "lb" else {2.5})


def test_next_up_down_and_at_most() -> None:
    """The nearest either way, and none past the ends."""
    loads = (5.0, 7.5, 10.0)
    assert heavier(loads, 7.5) == (10.0,)
    assert lighter(loads, 7.5) == (5.0,)
    assert at_most(loads, 9.9) == 7.5
    assert at_most(loads, 4.0) is None
    assert heavier(loads, 10.0) == ()


def test_help_body_and_belt_are_one_line() -> None:
    """Less help is harder than more; the body alone lies between help and belt."""
    assert load_at(-10.0, Load("assist", 20.0)) == Load("assist", 10.0)
    assert load_at(0.0, Load("added", 5.0)) == BODY
    assert load_at(2.5, BODY) == Load("added", 2.5)


def test_plates_a_side() -> None:
    """65 kg is a 20 and a 2.5 a side; what the plates cannot make is None; pounds are said in pounds."""
    assert plates_a_side(None, "kg", 65.0) == (20.0, 2.5)
    assert plates_a_side(None, "lb", 225 * POUND_KG) == (45.0, 45.0)
    assert plates_a_side(Kit(bar_kg=20.0, plates_kg={20.0: 2}), "kg", 65.0) is None
    assert plates_a_side(Kit(bar_kg=20.0, plates_kg={15.0: 2, 10.0: 4}), "kg", 60.0) == (10.0, 10.0)
