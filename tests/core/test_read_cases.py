"""Every hand-labelled message of fixtures/readings is read as its label says.

The labels come from the reading contract, not from the reader. Known failures are strict: once fixed, unlist them.
"""

import pytest

from core.model.acts import AcheAct, Amend, SetAct
from core.model.quantities import Load, Range
from core.model.reading import Reading
from tests.core.read_cases import Case, acts_of, all_cases, known_failures, lean, same, setting_of

KNOWN = known_failures()
CASES = all_cases()


def _parameter(case: Case) -> object:
    marks = [pytest.mark.xfail(reason=KNOWN[case.id], strict=True)] if case.id in KNOWN else []
    return pytest.param(case, id=case.id, marks=marks)


@pytest.mark.parametrize("case", [_parameter(case) for case in CASES])
def test_case(case: Case) -> None:
    from core.read.reader import read

    reading = read(case.text, setting_of(case.setting))
    got = acts_of(reading)
    want = [lean(act) for act in case.acts]
    assert (reading.ask.about if reading.ask else None) == case.ask, f"{case.text!r} gave {got}"
    assert same(want, got), f"{case.text!r}\nwant {want}\ngot  {got}"


def test_known_failures_are_cases() -> None:
    assert set(KNOWN) <= {case.id for case in CASES}


def test_comparison_sees_each_difference() -> None:
    got = acts_of(Reading((SetAct("dip", Load("added", 10.0), 8, tempo=(3, None, None, None), range=Range("full")),)))
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
    reading = Reading((Amend("last", {"rir": None}), AcheAct("knee")))
    assert acts_of(reading) == [
        {"act": "amend", "which": "last", "change": {"rir": None}},
        {"act": "ache", "where": "knee"},
    ]
