"""What became of a target, whether it can be believed, and whether it was told while it happened."""

from dataclasses import replace
from datetime import datetime, timedelta

import pytest

from core.challenge.judging import Surprise, beyond_belief, considered, no_more_than, result_of, surprise
from core.challenge.telling import Telling, told_live
from core.decide.judge import as_asked
from core.model.acts import SetAct
from core.model.challenge import Result
from core.model.quantities import Load
from core.model.target import Forecast, Target, TargetSet

ASKED = Target("reps", (TargetSet(Load("per_hand", 10.0), (8, 12), 2.0, (2.0, 0.0, 1.0, 0.0)),) * 3)


def did(reps: tuple[int, ...], **more: object) -> tuple[SetAct, ...]:
    acts = (SetAct("dumbbell-row", Load("per_hand", 10.0), one) for one in reps)
    return tuple(replace(act, **more) for act in acts)  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("sets", "result"),
    [
        (did((9, 8, 8)), "met"),
        (did((9, 8, 8), rir=2.0), "met"),
        (did((9, 8, 7), rir=2.0), "stopped"),
        (did((9, 8, 7)), "stopped"),
        (did((9, 8, 8), rir=0.0), "pushed"),
        (did((9, 8, 6), failed=True), "pushed"),
        (did((9, 8, 5), rir=4.0), "otherwise"),
        (did((9, 8, 8), form="loose"), "otherwise"),
        (did((9, 8, 8), load=Load("per_hand", 7.5)), "otherwise"),
        (did((3, 3, 2), rir=6.0), "otherwise"),
        (did((3, 2, 2), rir=6.0), "part"),
        (did((3, 2, 2), rir=2.0), "stopped"),
        (did((9, 8, 8), load=Load("per_hand", 4.0)), "otherwise"),
        (did((9, 8, 8), load=Load("per_hand", 2.5)), "part"),
        (did((9, 8)), "part"),
        (did((12,), warmup=True), "none"),
        ((), "none"),
    ],
)
def test_what_became_of_a_target(sets: tuple[SetAct, ...], result: Result) -> None:
    assert result_of(ASKED, sets, as_asked, Surprise()) == result


@pytest.mark.parametrize(
    ("reps", "rir", "result"),
    [
        ((8, 8, 7), None, "stopped"),
        ((5, 5, 5), None, "stopped"),  # 2.7 sd below: a forecast that is disappointed accuses nobody
        ((4, 4, 4), None, "otherwise"),  # 3.3 sd
        ((4, 4, 4), 2.0, "otherwise"),
        ((3, 2, 2), None, "part"),
        ((1, 1, 1), None, "part"),
        ((1, 1, 1), 2.0, "part"),
    ],
)
def test_short_sets_are_held_against_the_forecast_where_it_cannot_be(
    reps: tuple[int, ...], rir: float | None, result: Result
) -> None:
    sets = did(reps, rir=rir)
    seen = surprise(sets, tuple(Forecast(9.0, 1.5) for _ in sets))
    assert result_of(ASKED, sets, as_asked, seen) == result


def test_beyond_belief_needs_both_the_spread_and_the_repetitions() -> None:
    expected = tuple(Forecast(9.0, 0.5) for _ in range(3))
    assert not beyond_belief(surprise(did((11, 11, 11)), expected))
    assert beyond_belief(surprise(did((12, 9, 9)), expected))
    assert not beyond_belief(surprise(did((14, 14, 14)), tuple(Forecast(9.0, 2.0) for _ in range(3))))


@pytest.mark.parametrize(
    ("sets", "enough"),
    [
        (did((12, 9)), True),
        (did((12, 12, 12)), True),
        (did((13, 9)), False),
        (did((9,), load=Load("per_hand", 12.5)), False),
        (did((9,), load=Load("total", 10.0)), False),
        (did((9,), load=None), False),
        ((), True),
    ],
)
def test_what_was_believed_once_is_not_asked_about_again(sets: tuple[SetAct, ...], enough: bool) -> None:
    assert no_more_than(sets, did((12, 9))) is enough
    assert no_more_than(sets, ()) is (sets == ())


def test_what_is_forecast_is_what_was_done() -> None:
    first = considered(ASKED, did((9, 8, 8), load=Load("per_hand", 12.5), rir=1.0))[0]
    assert (first.load, first.reps, first.rir, first.tempo) == (
        Load("per_hand", 12.5),
        (9, 9),
        1.0,
        (2.0, 0.0, 1.0, 0.0),
    )


STARTED = datetime(2026, 3, 2, 18, 0)  # noqa: DTZ001  # a wall clock time in the lifter's zone


def telling(*told: tuple[float, float], starts: datetime = STARTED) -> list[Telling]:
    """Messages by minutes after the start, and how many seconds what they tell takes as asked."""
    return [Telling(starts + timedelta(minutes=after), takes) for after, takes in told]


@pytest.mark.parametrize(
    ("told", "live"),
    [
        (telling((0, 540), (5.5, 540)), True),  # two exercises of nine minutes: 0.3 of 18 minutes are 5.4
        (telling((0, 540), (5.3, 540)), False),
        (telling((0, 0), (30, 1080)), True),  # "starting", and all of it at the end
        (telling((0, 1080), (30, 0)), False),  # all of it at once, and a word later
        (telling((0, 1080)), False),
        (telling((0, 0), (30, 0)), False),  # no set at all
        (telling((0, 90), (2, 90), (4, 90)), True),  # a short session needs no longer than it is
        (telling((0, 540), (30, 540), starts=STARTED + timedelta(hours=9)), True),  # begun at three in the night
        (telling((0, 540), (30, 540), starts=STARTED + timedelta(hours=15)), False),  # told the morning after
    ],
)
def test_told_live_is_told_over_a_good_part_of_the_time_it_takes(told: list[Telling], live: bool) -> None:
    assert told_live(told, STARTED.date()) is live
    assert told_live(reversed(told), STARTED.date()) is live
