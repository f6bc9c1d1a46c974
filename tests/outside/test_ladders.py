"""Ladders of variants against published orders and shares of body mass.

Ebben et al. 2011, J Strength Cond Res 25:2891-2894 (abstract): feet up asks more than all others, hands up and on the
knees less than all others. Mier et al. 2014, Int J Exerc Sci 7:161-168: static share of body mass with the arms
straight and bent, on the toes 0.67 and 0.75 (men), 0.65 and 0.70 (women), on the knees 0.53 and 0.60, 0.52 and 0.57.
"""

from itertools import pairwise

import pytest

from core.evidence.body import traits_of
from core.evidence.exercises import EXERCISES
from core.evidence.ladders import LADDERS, rung_above
from core.evidence.sources import SOURCES

MIER = {"push-up": (0.651, 0.746), "knee-push-up": (0.515, 0.601)}
BAND = 0.05
"""Hands and feet are placed otherwise from study to study: judgement."""


def test_push_ups_stand_in_the_order_of_ebben() -> None:
    """Every other push-up lies between those with hands or knees down low and the one with the feet up."""
    share = {name: traits_of(name).share for name in ("knee-push-up", "hands-elevated-push-up", "push-up")}
    assert traits_of("feet-elevated-push-up").share > max(share.values())
    assert max(share["knee-push-up"], share["hands-elevated-push-up"]) < share["push-up"]


@pytest.mark.parametrize("exercise", MIER)
def test_shares_lie_where_mier_measured(exercise: str) -> None:
    """Between arms straight and arms bent, of men and women, give or take the band."""
    low, high = MIER[exercise]
    assert low - BAND <= traits_of(exercise).share <= high + BAND


@pytest.mark.parametrize("ladder", LADDERS, ids=lambda ladder: ladder.rungs[0])
def test_each_rung_moves_more_of_the_body(ladder: object) -> None:
    """A rung is harder than the one before: a larger share of the body on the same pattern."""
    rungs = ladder.rungs  # type: ignore[attr-defined]
    for lower, upper in pairwise(rungs):
        assert traits_of(upper).share > traits_of(lower).share
        assert EXERCISES[upper].pattern == EXERCISES[lower].pattern
        assert rung_above(lower) == upper
    assert rung_above(rungs[-1]) is None
    assert set(ladder.sources) <= set(SOURCES)  # type: ignore[attr-defined]


def test_no_exercise_stands_on_two_ladders() -> None:
    """So the rung above is one and the same wherever it is asked for."""
    rungs = [one for ladder in LADDERS for one in ladder.rungs]
    assert len(rungs) == len(set(rungs))
