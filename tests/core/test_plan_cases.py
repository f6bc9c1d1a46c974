"""Plans as coaches write them: read as labelled, or asked about by line. Never otherwise."""

import pytest

from core.notation.read import read_plan
from core.read.finding import find, nearest
from tests.core.plan_cases import TODAY, Case, CaseError, cases, differences, parse

CASES = list(cases())
READ_SHARE = 0.95
"""The goal for lines that a person would understand."""


def test_the_corpus_is_there() -> None:
    assert len(CASES) >= 50
    assert len({case.text for case in CASES}) == len(CASES)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.id)
def test_read_as_labelled(case: Case) -> None:
    assert differences(case, read_plan(case.text, find, TODAY)) == []


def test_enough_of_what_a_person_understands_is_read() -> None:
    read = sum(len(day.exercises) for case in CASES for day in case.plan.days)
    missed = sum(len(case.misses) for case in CASES)
    assert read / (read + missed) >= READ_SHARE


@pytest.mark.parametrize("body", ["no divider", "Mon squat\n---\nbanana", "Mon\n---\n  squat 3x5"])
def test_a_file_off_the_format_is_refused(body: str) -> None:
    with pytest.raises(CaseError):
        parse("x", body)


def test_a_start_without_a_year_needs_today() -> None:
    reading = read_plan("from 2 March\nMon 18:00\nsquat 3x5", find)
    assert [row.trouble.kind for row in reading.unread] == ["which_date"]


def test_an_unknown_name_has_near_ones() -> None:
    assert find("xylophone press") == ()
    assert "barbell-bench-press" in nearest("barbel benhc press")
    assert nearest("xylophone") == ()


@pytest.mark.parametrize(
    ("said", "at"),
    [
        ("half past three", "15:30"),
        ("quarter to one", "12:45"),
        ("half past four in the morning", "04:30"),
        ("quarter past seven in the evening", "19:15"),
        ("half past 17", "17:30"),
    ],
)
def test_an_hour_as_it_is_spoken_is_no_hour_of_the_night(said: str, at: str) -> None:
    (day,) = read_plan(f"Mon {said}\nsquat 3x5", find).plan.days
    assert f"{day.at:%H:%M}" == at
