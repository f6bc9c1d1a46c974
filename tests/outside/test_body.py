"""How much of the body an exercise moves, beside force plates and segment masses."""

from typing import Final

import numpy as np
import pytest
from sklearn.datasets import load_linnerud

from core.evidence.body import moved_kg
from core.model.quantities import BODY
from tests.outside.probe import forecast, steady, to_failure

SEGMENTS: Final = {
    "head": (0.0668, 0.0694), "trunk": (0.4257, 0.4346), "upper_arm": (0.0255, 0.0271), "forearm": (0.0138, 0.0162),
    "hand": (0.0056, 0.0061), "thigh": (0.1478, 0.1416), "shank": (0.0481, 0.0433), "foot": (0.0129, 0.0137),
}  # fmt: skip
"""de Leva 1996, J Biomech (confirmed in a secondary page): shares of body mass, female and male, limbs per side."""

PAIRED: Final = ("upper_arm", "forearm", "hand", "thigh", "shank", "foot")


def share(exercise: str) -> float:
    """The share of body mass that the core moves with the body alone."""
    moved = moved_kg(BODY, exercise, 100.0)
    assert moved is not None
    return moved / 100.0


def left_over(sex: int, *without: str) -> float:
    """All of the body but these segments; a name said twice takes both sides."""
    return 1.0 - sum(SEGMENTS[name][sex] for name in without)


@pytest.mark.parametrize(("sex", "total"), [(0, 0.9999), (1, 1.0000)])
def test_segments_sum_to_the_body(sex: int, total: float) -> None:
    """de Leva 1996: the checksum of the table that the next checks rest on."""
    found = sum(values[sex] * (2 if name in PAIRED else 1) for name, values in SEGMENTS.items())
    assert found == pytest.approx(total, abs=5e-5)


FEET: Final = ("foot", "foot")
ARMS: Final = ("forearm", "forearm", "hand", "hand")


@pytest.mark.parametrize(
    ("exercise", "still"),
    [
        ("pull-up", ARMS),
        ("chin-up", ARMS),
        ("dip", ARMS),
        ("handstand-push-up", ARMS),
        ("bodyweight-squat", ("shank", "shank", *FEET)),
        ("pistol-squat", ("shank", "foot")),
        ("single-leg-calf-raise", FEET),
    ],
)
def test_shares_from_segments(exercise: str, still: tuple[str, ...]) -> None:
    """de Leva 1996 (secondary): what lies beyond the joint that stays still is not lifted; +- 0.01."""
    both = [left_over(sex, *still) for sex in (0, 1)]
    assert min(both) - 0.01 <= share(exercise) <= max(both) + 0.01


@pytest.mark.parametrize(
    ("exercise", "measured"),
    [
        pytest.param("push-up", 0.664, id="Gouvali & Boudolos 2005, J Strength Cond Res 19:146-151"),
        pytest.param("push-up", 0.670, id="Mier et al. 2014, Int J Exerc Sci 7:161-168, men, up"),
        pytest.param("push-up", 0.651, id="Mier et al. 2014, women, up"),
        pytest.param("knee-push-up", 0.529, id="Gouvali & Boudolos 2005, on knees"),
        pytest.param("knee-push-up", 0.525, id="Mier et al. 2014, men, knees, up"),
        pytest.param("knee-push-up", 0.515, id="Mier et al. 2014, women, knees, up"),
    ],
)
def test_push_up_shares(exercise: str, measured: float) -> None:
    """Initial or static load over body mass (all confirmed in the abstracts), within 0.05, as sources differ."""
    assert share(exercise) == pytest.approx(measured, abs=0.05)


def test_push_up_variants_in_order() -> None:
    """Ebben et al. 2011, J Strength Cond Res 25:2891-2894 (order confirmed): feet up > floor > hands up, knees."""
    assert share("feet-elevated-push-up") > share("push-up")
    assert share("push-up") > max(share("hands-elevated-push-up"), share("knee-push-up"))


def test_heavier_men_do_fewer_chins() -> None:
    """scikit-learn's linnerud data (20 men of a fitness club, Tenenhaus 1998): chins fall with weight, r = -0.39.

    At equal strength the core gives the same sign: each man's extra mass over the lightest, worn as a belt.
    """
    data = load_linnerud()
    weight = data.target[:, data.target_names.index("Weight")] * 0.45359237
    chins = data.data[:, data.feature_names.index("Chins")]
    seen = float(np.corrcoef(weight, chins)[0, 1])
    assert seen == pytest.approx(-0.3897, abs=5e-4)
    lightest = float(weight.min())
    question = steady("chin-up", 0.0, 12, bodyweight=lightest)
    belts = [round(float(each - lightest) * share("chin-up"), 3) for each in weight]
    could = [forecast(question, (to_failure(belt, "chin-up"),))[0].reps for belt in belts]
    assert float(np.corrcoef(weight, could)[0, 1]) < seen


def test_a_belt_is_read_on_the_moved_mass() -> None:
    """Segment masses again: 80 kg man, 86.4 kg moved x 5 is a maximum near 97.9 kg moved, so about +21.5 kg once.

    Worked by hand with Epley's line (1985, from memory) on de Leva's share; a repetition either way.
    """
    question = steady("pull-up", 10.0, 5)
    assert forecast(question, (to_failure(21.5, "pull-up"),))[0].reps == pytest.approx(1.0, abs=1.0)
