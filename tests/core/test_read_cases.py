"""Every hand-labelled message of fixtures/readings is read as its label says.

The labels come from the reading contract, not from the reader. Known failures are strict: once fixed, unlist them.
"""

import pytest

from bot.codec import act_in, act_out, reading_out, setting_in
from core.model.acts import Amend, SetAct
from core.model.quantities import Load, Range
from core.read.reader import read
from tests.core.read_cases import Case, all_cases, known_failures, lean, same

KNOWN = known_failures()
CASES = all_cases()


def _parameter(case: Case) -> object:
    marks = [pytest.mark.xfail(reason=KNOWN[case.id], strict=True)] if case.id in KNOWN else []
    return pytest.param(case, id=case.id, marks=marks)


@pytest.mark.parametrize("case", [_parameter(case) for case in CASES])
def test_case(case: Case) -> None:
    reading = reading_out(read(case.text, setting_in(case.setting)))
    want, got = [lean(act) for act in case.acts], reading["acts"]
    about = reading["ask"]["about"] if reading["ask"] else None
    assert about == case.ask, f"{case.text!r}\nwant ask {case.ask}\ngot  ask {about}, {got}"
    assert same(want, got), f"{case.text!r}\nwant {want}\ngot  {got}"


def test_labels_are_acts_of_the_contract() -> None:
    odd = [case.id for case in CASES for act in case.acts if not same(lean(act), act_out(act_in(act)))]
    assert CASES
    assert odd == []
    abouts = {case.ask for case in CASES}
    assert abouts <= {None, "exercise", "load", "reps", "numbers", "meaning"}


def test_known_failures_are_cases() -> None:
    assert set(KNOWN) <= {case.id for case in CASES}


def test_comparison_sees_each_difference() -> None:
    got = [act_out(SetAct("dip", Load("added", 10.0), 8, tempo=(3, None, None, None), range=Range("full")))]
    want = {
        "act": "set",
        "exercise": "dip",
        "load": {"kind": "added", "kg": 10.04},
        "reps": 8,
        "tempo": [3, None, None, None],
        "range": {"grade": "full"},
    }
    assert same([want], got)
    others: list[dict[str, object]] = [
        {"reps": 9},
        {"load": {"kind": "added", "kg": 10.2}},
        {"load": {"kind": "assist", "kg": 10}},
        {"tempo": [3, 0, None, None]},
        {"range": {"grade": "full", "cm": 5}},
        {"failed": True},
    ]
    assert not any(same([want | other], got) for other in others)
    assert not same([want, want], got)


def test_comparison_keeps_a_cleared_field() -> None:
    assert not same(
        lean({"act": "amend", "which": "last", "change": {}}),
        act_out(Amend("last", {"rir": None})),
    )
