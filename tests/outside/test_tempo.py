"""Slower repetitions: fewer of them, beside published counts."""

import pytest

from core.model.quantities import Tempo
from tests.outside.probe import forecast, steady, to_failure


def ratio(exercise: str, kg: float, known: int, slow: Tempo, quick: Tempo | None) -> float:
    """Repetitions at the slow tempo over those at the quick one."""
    question = steady(exercise, kg, known)
    counts = [forecast(question, (to_failure(kg, exercise, tempo=each),))[0].reps for each in (slow, quick)]
    return counts[0] / counts[1]


@pytest.mark.parametrize(
    ("exercise", "kg", "known", "published"),
    [("back-squat", 84.0, 24, 0.21), ("barbell-overhead-press", 36.0, 14, 0.29)],
)
def test_ten_seconds_each_way(exercise: str, kg: float, known: int, published: float) -> None:
    """Hatfield et al. 2006, J Strength Cond Res (confirmed): 10 s + 10 s at 60 %: 5 of 24 squats, 4 of 14 presses."""
    assert ratio(exercise, kg, known, (10.0, 0.0, 10.0, 0.0), None) == pytest.approx(published, abs=0.12)


@pytest.mark.parametrize(
    ("exercise", "known", "quick", "published"),
    [("push-up", 30, (0.6, 0.0, 0.6, 0.0), 0.41), ("pull-up", 12, (1.3, 0.0, 1.3, 0.0), 0.51)],
)
def test_four_seconds_down_two_up(exercise: str, known: int, quick: Tempo, published: float) -> None:
    """LaChance & Hortobagyi 1994, J Strength Cond Res (confirmed): self-paced 145 % more push-ups, 96 % more pull-ups.

    Self-paced repetitions took 1.2 and 2.6 s (derived from the times given).
    """
    assert ratio(exercise, 0.0, known, (4.0, 0.0, 2.0, 0.0), quick) == pytest.approx(published, abs=0.12)


@pytest.mark.parametrize(("each_way", "published"), [(1.5, 18.9 / 22.75), (2.0, 17.2 / 22.75)])
def test_push_up_cadence(each_way: float, published: float) -> None:
    """Keefer et al. 2021, conference abstract (confirmed): 22.75 at 1/1 s, 18.9 at 1.5/1.5, 17.2 at 2/2 (n=20)."""
    slow: Tempo = (each_way, 0.0, each_way, 0.0)
    assert ratio("push-up", 0.0, 23, slow, (1.0, 0.0, 1.0, 0.0)) == pytest.approx(published, abs=0.12)


def test_fewer_repetitions_but_more_time_under_tension() -> None:
    """Wilk et al. 2018, J Hum Kinet (confirmed): 2/0/2/0 gives more repetitions than 5/0/3/0 and 6/0/4/0, less time."""
    counts, times = [], []
    for down, up in ((2.0, 2.0), (5.0, 3.0), (6.0, 4.0)):
        asked = to_failure(70.0, "barbell-bench-press", tempo=(down, 0.0, up, 0.0))
        reps = forecast(steady("barbell-bench-press", 70.0, 13), (asked,))[0].reps
        counts.append(reps)
        times.append(reps * (down + up))
    assert counts == sorted(counts, reverse=True)
    assert times[0] < times[1]
    assert times[0] < times[2]
