"""Kilograms and pounds, beside pint and exact decimals."""

from dataclasses import replace
from decimal import Decimal

import pint
import pytest

from core.advising import advise
from core.model.lifter import Kit
from core.model.quantities import POUND_KG, from_kg, to_kg
from tests.outside.probe import steady


@pytest.mark.parametrize("pounds", [1.0, 2.5, 45.0, 135.0, 225.0, 502.5])
def test_pounds_by_pint(pounds: float) -> None:
    """pint's registry: pounds to kilograms and back to nine decimals."""
    quantity = pint.UnitRegistry().Quantity(pounds, "pound")
    assert to_kg(pounds, "lb") == pytest.approx(quantity.to("kilogram").magnitude, rel=1e-12)
    assert from_kg(to_kg(pounds, "lb"), "lb") == pytest.approx(pounds, abs=1e-9)
    assert to_kg(pounds, "kg") == pounds


def test_the_pound_is_exact() -> None:
    """International pound, 1959: exactly 0.45359237 kg; so a 45 lb bar is 20.41165665 kg."""
    assert Decimal(str(POUND_KG)) == Decimal("0.45359237")
    assert Decimal(str(round(to_kg(45.0, "lb"), 8))) == Decimal("20.41165665")


@pytest.mark.parametrize("reps", [6, 9, 12, 15])
def test_the_unit_alone_changes_no_decision(reps: int) -> None:
    """A kit is masses: what its owner calls them changes nothing of the target (International pound, 1959)."""
    kit = Kit(20.0, {20.0: 2, 10.0: 2, 5.0: 2, 2.5: 2, 1.25: 2})
    question = steady("barbell-bench-press", 60.0, reps, rir=2.0)
    answers = [advise(replace(question, lifter=replace(question.lifter, unit=unit, kit=kit))) for unit in ("kg", "lb")]
    assert answers[0].sets == answers[1].sets
    assert (answers[0].way, answers[0].forecast, answers[0].chance) == (
        answers[1].way, answers[1].forecast, answers[1].chance,
    )  # fmt: skip
