"""The filter of strength, beside statsmodels and filterpy on the same numbers."""

import warnings
from typing import Any, Final

import numpy as np
import pytest
from statsmodels.tsa.statespace.kalman_filter import KalmanFilter as StatsmodelsFilter

from core.estimate.belief import absorb_set, next_session, prior
from core.estimate.people import POINTS, people_for, strength_over_load
from core.estimate.seeing import GAIN, STRENGTH
from core.estimate.sighting import Day, sightings
from core.evidence.numbers import value
from core.model.acts import SetAct
from core.model.lifter import Lifter
from core.model.quantities import Load
from core.model.target import Aim

SERIES: Final = (100.0, 102.0, 99.0, 104.0, 105.0, 103.0, 107.0)
LEVELS: Final = (100.0000, 101.0095, 100.2369, 101.4645, 102.5344, 102.6713, 103.9020)
"""Local level: m0 = ln 100, P0 = 0.10^2, Q = 0.01^2, R = 0.03^2, a step of Q before the first; derived by hand."""

Matrix = np.ndarray


def by_statsmodels(series: Matrix, matrices: dict[str, Any]) -> Matrix:
    """Filtered states, one column a step."""
    states = len(matrices["mean"])
    model = StatsmodelsFilter(k_endog=1, k_states=states, k_posdef=states)
    model.bind(np.asarray(series, dtype=np.float64)[:, None])
    model["design"], model["transition"] = matrices["design"], matrices["transition"]
    model["selection"], model["state_cov"] = np.eye(states), matrices["state_cov"]
    model["obs_cov"] = np.array([[matrices["noise"]]])
    model.initialize_known(matrices["mean"], matrices["cov"])
    return np.asarray(model.filter().filtered_state)


def by_filterpy(series: Matrix, matrices: dict[str, Any]) -> Matrix:
    """The same by another library, which warns of its own age when imported."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        from filterpy.kalman import KalmanFilter
    states = len(matrices["mean"])
    model = KalmanFilter(dim_x=states, dim_z=1)
    model.x, model.P = matrices["mean"][:, None].copy(), matrices["cov"].copy()
    model.F, model.H = matrices["transition"], matrices["design"]
    model.Q, model.R = matrices["state_cov"], np.array([[matrices["noise"]]])
    out = []
    for number, seen in enumerate(series):
        if number:
            model.predict()
        model.update(np.array([[seen]]))
        out.append(model.x[:, 0].copy())
    return np.array(out).T


LIBRARIES: Final = (by_statsmodels, by_filterpy)


@pytest.mark.parametrize("library", LIBRARIES)
def test_reference_series(library: Any) -> None:
    """statsmodels and filterpy both give the local level that the notes give: the yardstick is straight."""
    matrices = {
        "mean": np.array([np.log(100.0)]), "cov": np.array([[0.01 + 1e-4]]), "design": np.array([[1.0]]),
        "transition": np.array([[1.0]]), "state_cov": np.array([[1e-4]]), "noise": 9e-4,
    }  # fmt: skip
    np.testing.assert_allclose(np.exp(library(np.log(SERIES), matrices)[0]), LEVELS, atol=6e-5)


def slope_at_a_single(exercise: str, point: int) -> float:
    """Change of ln strength with one repetition at a single, by a small difference on the core's own curve."""
    step, people = 1e-4, people_for(exercise)
    above, below = (strength_over_load(people, np.full(POINTS, 1.0 + off))[0][point] for off in (step, -step))
    return float(above - below) / (2.0 * step)


def core_strengths(point: int) -> tuple[Matrix, dict[str, Any]]:
    """The core's strength and gain after each single of the series at one of its people, and the same as matrices.

    A single to failure is 100 % by definition, so the curve drops out and what is left is a linear filter.
    """
    exercise, lifter, aim = "barbell-bench-press", Lifter("kg", 100.0, "some"), Aim(1, (1, 1), 0.0, None, 180.0)
    day = Day(exercise, 100.0, aim)
    belief = prior(lifter, exercise)
    matrices: dict[str, Any] = {
        "mean": belief.mean[:2, point].copy(), "cov": belief.cov[:2, :2, point].copy(),
        "design": np.array([[1.0, 0.0]]), "transition": np.array([[1.0, 1.0], [0.0, 1.0]]),
        "state_cov": np.diag([value("day.process_sd") ** 2, 0.0]),
        "noise": slope_at_a_single(exercise, point) ** 2 * (value("effort.failure_sd") ** 2 + value("set.sd") ** 2)
        + value("day.sd") ** 2,
    }  # fmt: skip
    out = []
    for number, kg in enumerate(SERIES):
        if number:
            belief = next_session(belief, 4)
        seen, _, _ = sightings((SetAct(exercise, Load("total", kg), 1, rir=0.0, failed=True),), day)
        belief, _ = absorb_set(belief, exercise, seen[0])
        out.append(belief.mean[[STRENGTH, GAIN], point].copy())
    return np.array(out).T, matrices


@pytest.mark.parametrize("library", LIBRARIES)
@pytest.mark.parametrize("point", [0, 17, 64, 127])
def test_core_filter_on_the_reference_series(library: Any, point: int) -> None:
    """The same singles through statsmodels and filterpy: strength and gain agree at every step."""
    found, matrices = core_strengths(point)
    np.testing.assert_allclose(found, library(np.log(SERIES), matrices), atol=1e-7)
