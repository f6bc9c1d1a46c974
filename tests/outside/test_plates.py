"""What can be loaded, beside brute force over every handful of plates."""

from itertools import product

import numpy as np
import pytest

from core.decide.kit import at_most, heavier, lighter, plates_a_side, shelf
from core.model.lifter import Kit
from core.model.quantities import Load

SIZES = (25.0, 20.0, 15.0, 10.0, 5.0, 2.5, 1.25, 0.5)
"""Discs of the IWF and IPF rules (confirmed): a draw of them makes each kit."""


def some_kit(seed: int) -> Kit:
    """A bar and a few plates, odd counts too."""
    rng = np.random.default_rng(seed)
    picked = rng.choice(SIZES, size=int(rng.integers(1, 6)), replace=False)
    bar = float(rng.choice([10.0, 15.0, 20.0]))
    return Kit(bar, {float(kg): int(rng.integers(1, 6)) for kg in picked})


def every_load(kit: Kit) -> set[float]:
    """Bar and the same plates on both sides, every way there is."""
    assert kit.bar_kg is not None
    sides = product(*(range(count // 2 + 1) for count in kit.plates_kg.values()))
    return {round(kit.bar_kg + 2 * sum(n * kg for n, kg in zip(side, kit.plates_kg, strict=True)), 4) for side in sides}


@pytest.mark.parametrize("seed", range(40))
def test_every_load_of_a_bar_and_no_other(seed: int) -> None:
    """Brute force: the shelf is exactly what can be made."""
    kit = some_kit(seed)
    made = shelf(kit, "barbell-bench-press", Load("total", kit.bar_kg), "kg")
    assert {round(kg, 4) for kg in made} == every_load(kit)


@pytest.mark.parametrize("seed", range(40))
def test_plates_a_side_make_the_load_from_what_is_there(seed: int) -> None:
    """Brute force: the plates named sum to the load, and none is used that is not there."""
    kit = some_kit(seed)
    assert kit.bar_kg is not None
    for kg in sorted(every_load(kit)):
        side = plates_a_side(kit, "kg", kg)
        assert side is not None
        assert kit.bar_kg + 2 * sum(side) == pytest.approx(kg, abs=1e-6)
        assert all(2 * side.count(size) <= kit.plates_kg[size] for size in side)
    assert plates_a_side(kit, "kg", kit.bar_kg + 0.3) is None


@pytest.mark.parametrize("seed", range(20))
def test_next_load_up_and_down(seed: int) -> None:
    """Brute force: the neighbours of a load are the nearest of all that can be made."""
    kit = some_kit(seed)
    loads = every_load(kit)
    made = shelf(kit, "back-squat", Load("total", kit.bar_kg), "kg")
    for kg in sorted(loads)[:8]:
        assert [round(x, 4) for x in heavier(made, kg)] == sorted(x for x in loads if x > kg)
        assert [round(x, 4) for x in lighter(made, kg)] == sorted((x for x in loads if x < kg), reverse=True)
        found = at_most(made, kg + 0.1)
        assert found is not None
        assert round(found, 4) == max(x for x in loads if x <= kg + 0.1)
