"""Rest between sets: totals over several sets beside published ones."""

import pytest

from core.evidence.exercises import EXERCISES
from tests.outside.probe import total

POINTS = 9.0
"""Tolerance in percent points: the published gains have one figure each and no spread that was read."""


@pytest.mark.parametrize(("rest_s", "more"), [(120.0, 26.0), (300.0, 50.0)])
def test_bench_totals(rest_s: float, more: float) -> None:
    """Willardson & Burkett 2005, J Strength Cond Res 19:23-26 (secondary): 4 sets at 8RM, bench, against 1 min."""
    base = sum(total("barbell-bench-press", 80.0, 8, 4, 60.0))
    gained = sum(total("barbell-bench-press", 80.0, 8, 4, rest_s)) / base
    assert 100.0 * (gained - 1.0) == pytest.approx(more, abs=POINTS)


@pytest.mark.parametrize(("rest_s", "more"), [(120.0, 14.0), (300.0, 28.0)])
def test_squat_totals(rest_s: float, more: float) -> None:
    """Willardson & Burkett 2005, J Strength Cond Res 19:23-26 (secondary): 4 sets at 8RM, squat, against 1 min."""
    base = sum(total("back-squat", 120.0, 8, 4, 60.0))
    gained = sum(total("back-squat", 120.0, 8, 4, rest_s)) / base
    assert 100.0 * (gained - 1.0) == pytest.approx(more, abs=POINTS)


@pytest.mark.parametrize(("rest_s", "ratio"), [(60.0, 0.81), (180.0, 0.87)])
def test_second_set_of_bench(rest_s: float, ratio: float) -> None:
    """Richmond & Godard 2004, J Strength Cond Res 18:846-849 (confirmed): 75 %, both sets' work against 5 min rest.

    1389 and 1495 of 1711; spreads of 450 and more on a mean of 1500, so 0.15 either way.
    """
    short, long = (total("barbell-bench-press", 75.0, 10, 2, rest)[1] for rest in (rest_s, 300.0))
    assert short / long == pytest.approx(ratio, abs=0.15)


def test_one_minute_costs_fifteen_to_fifty_five_percent() -> None:
    """Ratamess et al. 2007, Eur J Appl Physiol 100:1-17 (confirmed): 75 % x 10, 1 min: down 15 to 55 % from set 2."""
    first, *later = total("barbell-bench-press", 75.0, 10, 5, 60.0)
    assert first * 0.85 >= later[0]
    assert all(each >= first * 0.2 for each in later)
    assert 0.45 <= later[0] / first <= 0.85


def test_bench_total_at_seventy_percent() -> None:
    """Silva et al. 2014, J Trainology 3:41-46 (confirmed): 3 sets, 1 min, 70 %: 26.62 +- 8.19 repetitions in all."""
    assert sum(total("barbell-bench-press", 70.0, 13, 3, 60.0)) == pytest.approx(26.62, abs=8.19)


@pytest.mark.parametrize("exercise", ["barbell-bench-press", "leg-press", "machine-fly", "leg-extension"])
def test_longer_rest_gives_more_everywhere(exercise: str) -> None:
    """Senna et al. 2011, J Strength Cond Res 25(11):3157-3162 (confirmed): 1 < 3 <= 5 min, multi- and single-joint."""
    one, three, five = (sum(total(exercise, 60.0, 10, 5, rest)) for rest in (60.0, 180.0, 300.0))
    assert one < three <= five


@pytest.mark.parametrize("exercise", ["lat-pulldown", "seated-cable-row", "machine-row"])
def test_pulling_lifts_too(exercise: str) -> None:
    """Miranda et al. 2007, J Strength Cond Res 21:1032-1036 (confirmed): 8RM, 3 sets, 1 min gives fewer than 3."""
    assert sum(total(exercise, 60.0, 8, 3, 60.0)) < sum(total(exercise, 60.0, 8, 3, 180.0))


@pytest.mark.parametrize("exercise", ["barbell-bench-press", "back-squat", "barbell-curl", "pull-up"])
def test_no_set_gains_from_the_one_before(exercise: str) -> None:
    """Ratamess 2007 and Senna 2011 (confirmed): repetitions fall from set to set, all to failure."""
    reps = total(exercise, 0.0 if EXERCISES[exercise].load_kind == "body" else 60.0, 9, 4, 120.0)
    assert reps == sorted(reps, reverse=True)
