"""Load and repetitions: the core's forecasts beside published charts, formulas and counts."""

from dataclasses import replace

import numpy as np
import pytest
from sklearn.isotonic import IsotonicRegression

from tests.outside.formulas import CHART, CHART_TOLERANCE, FORMULAS, WORKED
from tests.outside.probe import forecast, reps_after_single, steady, to_failure

PLAIN = "barbell-row"
"""A lift without a published curve of its own."""


def share_for(exercise: str, reps: float) -> float:
    """Percent of the heaviest single at which the core expects so many repetitions, by halving."""
    low, high = 0.3, 1.0
    for _ in range(18):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if reps_after_single(exercise, round(middle, 6)) > reps else (low, middle)
    return 50.0 * (low + high)


@pytest.mark.parametrize("reps", sorted(CHART))
@pytest.mark.parametrize("exercise", [PLAIN, "barbell-bench-press"])
def test_the_training_load_chart(exercise: str, reps: int) -> None:
    """NSCA Training Load Chart (confirmed on a mirror): percent of the maximum by repetitions, within 3.5 points."""
    assert share_for(exercise, reps) == pytest.approx(CHART[reps], abs=CHART_TOLERANCE)


@pytest.mark.parametrize("name", sorted(FORMULAS))
def test_worked_examples_of_the_formulas(name: str) -> None:
    """100 kg for 5 and for 10, worked by hand; guards the band below (coefficients from memory)."""
    formula = FORMULAS[name]
    assert (round(formula(100, 5), 2), round(formula(100, 10), 2)) == WORKED[name]


@pytest.mark.parametrize("reps", [3, 5, 8, 10, 12])
def test_one_repetition_maximum_within_the_band_of_the_formulas(reps: int) -> None:
    """Seven classical formulas (from memory) and the NSCA chart (confirmed): the core's maximum lies among them."""
    band = [formula(100.0, reps) for formula in FORMULAS.values()]
    band += [100.0 / (CHART[reps] + off) * 100.0 for off in (-CHART_TOLERANCE, CHART_TOLERANCE)]
    question = steady(PLAIN, 100.0, reps)
    low, high = 100.0, 200.0
    for _ in range(18):
        middle = 0.5 * (low + high)
        expected = forecast(question, (to_failure(middle, PLAIN),))[0].reps
        low, high = (middle, high) if expected > 1.0 else (low, middle)
    assert min(band) * 0.99 <= low <= max(band) * 1.01


@pytest.mark.parametrize(
    ("share", "mean", "sd"),
    [
        pytest.param(0.70, 16.0, 4.0, id="Zourdos et al. 2021, J Strength Cond Res 35(2S):S158, 25 men"),
        pytest.param(0.60, 24.0, 4.0, id="Hatfield et al. 2006, J Strength Cond Res, 24 +- 2, two SD"),
        pytest.param(0.80, 12.0, 4.0, id="Hatfield et al. 2006, 12 +- 1; with Zourdos' spread"),
    ],
)
def test_squat_counts(share: float, mean: float, sd: float) -> None:
    """Repetitions to failure in the squat at a share of the bar's maximum (all confirmed in the abstracts)."""
    assert reps_after_single("back-squat", share, best=140.0) == pytest.approx(mean, abs=sd)


@pytest.mark.parametrize(("share", "mean", "sd"), [(0.60, 14.0, 2.0), (0.80, 6.0, 1.0)])
def test_shoulder_press_counts(share: float, mean: float, sd: float) -> None:
    """Hatfield et al. 2006, J Strength Cond Res (confirmed): 14 +- 2 at 60 %, 6 +- 1 at 80 %; two SD."""
    assert reps_after_single("barbell-overhead-press", share, best=60.0) == pytest.approx(mean, abs=2 * sd)


def test_squat_takes_more_repetitions_than_bench_and_curl() -> None:
    """Shimano et al. 2006, J Strength Cond Res 20(4):819 (direction confirmed): at 60 % squat > bench, curl."""
    squat = reps_after_single("back-squat", 0.6, best=140.0)
    assert squat > reps_after_single("barbell-bench-press", 0.6)
    assert squat > reps_after_single("barbell-curl", 0.6, best=50.0)


@pytest.mark.parametrize("share", [0.9, 0.8, 0.7, 0.6])
def test_leg_press_takes_more_repetitions_than_bench(share: float) -> None:
    """Nuzzo et al. 2024, Sports Med 54:303-321 (confirmed): leg press over bench press across the whole range."""
    assert reps_after_single("leg-press", share, best=200.0) > reps_after_single("barbell-bench-press", share)


def test_people_differ_less_at_heavier_loads() -> None:
    """Nuzzo et al. 2024, Sports Med 54:303-321 (confirmed): spread between people falls as the percent rises."""
    asked = [to_failure(kg, PLAIN) for kg in (60.0, 70.0, 80.0, 90.0)]
    spread = [forecast(steady(PLAIN, 100.0, 1), (each,))[0].sd for each in asked]
    assert spread == sorted(spread, reverse=True)


def test_a_maximum_from_many_repetitions_is_less_sure() -> None:
    """Whisenant et al. 2003, J Strength Cond Res 17(2):221-227 (confirmed): more valid with fewer repetitions."""
    near = forecast(steady(PLAIN, 100.0, 3, sessions=3), (to_failure(100.0, PLAIN),))[0]
    far = forecast(steady(PLAIN, 68.0, 15, sessions=3), (to_failure(100.0, PLAIN),))[0]
    assert far.sd > near.sd


def test_learned_curve_is_monotone() -> None:
    """scikit-learn's IsotonicRegression leaves nothing over: expected repetitions fall with every kilogram."""
    loads = np.arange(50.0, 110.0, 2.5)
    question = steady(PLAIN, 80.0, 8)
    expected = np.array([forecast(question, (to_failure(float(kg), PLAIN),))[0].reps for kg in loads])
    fitted = IsotonicRegression(increasing=False).fit_transform(loads, expected)
    np.testing.assert_allclose(expected, fitted, atol=1e-6)
    assert np.all(np.diff(expected) < 0)


def test_a_clean_single_is_the_maximum() -> None:
    """One repetition is 100 % on the NSCA chart: after singles, the same load is expected about once."""
    assert reps_after_single(PLAIN, 1.0) == pytest.approx(1.0, abs=0.5)


def test_sets_of_light_loads_end() -> None:
    """At 50 % Silva et al. 2014, J Trainology 3:41-46 (confirmed), saw 46 +- 9 in three sets: one set is under 46."""
    assert reps_after_single("barbell-bench-press", 0.5) < 46.0


@pytest.mark.parametrize("sessions", [1, 2, 4])
def test_a_set_to_failure_overrules_what_the_aim_suggests(sessions: int) -> None:
    """NSCA chart (confirmed): one repetition is 100 %, two are 95 %; so after 100 kg x 1 to failure, 95 kg goes 1 to 4.

    The aim of 1 to 30 repetitions says nothing about a lifter who could do one.
    """
    question = steady(PLAIN, 100.0, 1, sessions=sessions)
    question = replace(question, aim=replace(question.aim, reps=(1, 30)))
    assert 1.0 <= forecast(question, (to_failure(95.0, PLAIN),))[0].reps <= 4.0
