"""An easier week of the plan: which weeks those are, what is asked in them, and that nothing is lost by them."""

from dataclasses import replace
from datetime import date, time, timedelta
from zoneinfo import ZoneInfo

import pytest

from core.adviser import Advisers
from core.advising import absorb, advise, advise_from, begin, dump
from core.evidence.numbers import value
from core.flow.day import aim_of
from core.model.book import Book, Profile
from core.model.lifter import Ache
from core.model.plan import Plan, Planned, TrainingDay
from core.model.target import Session, Target
from tests.core.advising_cases import AIM, BENCH, LIFTER, ON, ask, did

EASIER = replace(AIM, easier=True)
WEDNESDAY = date(2026, 3, 4)
PLAN = Plan((), WEDNESDAY, 3)


@pytest.mark.parametrize(
    ("on", "week", "easier"),
    [
        (date(2026, 3, 1), None, False),
        (date(2026, 3, 2), 1, False),
        (date(2026, 3, 8), 1, False),
        (date(2026, 3, 9), 2, False),
        (date(2026, 3, 15), 2, False),
        (date(2026, 3, 16), 3, True),
        (date(2026, 3, 22), 3, True),
        (date(2026, 3, 23), 4, False),
        (date(2026, 4, 6), 6, True),
    ],
)
def test_weeks_are_counted_from_the_monday_of_the_first(on: date, week: int | None, easier: bool) -> None:
    assert PLAN.week_number(on) == week
    assert PLAN.is_easier(on) is easier
    assert not replace(PLAN, easier_every=None).is_easier(on)
    assert not replace(PLAN, starts=None).is_easier(on)


@pytest.mark.parametrize(
    ("on", "monday"),
    [
        (date(2026, 1, 1), date(2026, 3, 16)),
        (date(2026, 3, 16), date(2026, 3, 16)),
        (date(2026, 3, 17), date(2026, 4, 6)),
    ],
)
def test_the_next_easier_week(on: date, monday: date) -> None:
    assert PLAN.next_easier(on) == monday
    assert replace(PLAN, starts=None).next_easier(on) is None


def test_an_easier_week_asks_less_load_fewer_sets_and_more_left() -> None:
    usual = advise(ask(did(10, 10, 10)))
    advice = advise(ask(did(10, 10, 10), aim=EASIER))
    assert (advice.way, advice.why[0].rule) == ("ease", "easier-week")
    assert usual.why[0].rule != "easier-week"
    assert len(advice.sets) == 2
    for one in advice.sets:
        assert one.load is not None
        assert one.load.kg is not None
        assert one.load.kg <= 60.0 * value("easier.load_factor")
        assert one.rir == AIM.rir + value("easier.reserve")


def test_without_a_history_a_first_load_is_looked_for_all_the_same() -> None:
    assert advise(ask(aim=EASIER)).way == "first"


def test_an_ache_outranks_an_easier_week() -> None:
    lifter = replace(LIFTER, aches=(Ache("shoulder", ON, None, 7.0),))
    assert advise(ask(did(10, 10, 10), aim=EASIER, lifter=lifter)).way == "stop"


def test_after_the_easier_week_it_goes_on_from_before() -> None:
    """What was asked before stands; less done because less was asked is no miss, and no lay-off begins."""
    before = absorb(begin(LIFTER, BENCH), LIFTER, AIM, replace(did(10, 9, 8), on=ON - timedelta(days=14)))
    easy = advise_from(before, LIFTER, BENCH, EASIER, ON - timedelta(days=7))
    done = replace(did(10, 10, rir=5.0, kg=52.5, asked=Target(easy.way, easy.sets)), on=ON - timedelta(days=7))
    after = absorb(before, LIFTER, EASIER, done)
    assert replace(after.facts, on=None, form=None) == replace(before.facts, on=None, form=None)
    assert after.facts.on == ON - timedelta(days=7)
    advice = advise_from(after, LIFTER, BENCH, AIM, ON)
    assert advice.way not in ("ease", "stop")
    assert advice.sets[0].load is not None
    assert advice.sets[0].load.kg == 60.0
    assert dump(after) != dump(before)


def test_form_said_in_an_easier_week_counts() -> None:
    before = absorb(begin(LIFTER, BENCH), LIFTER, AIM, did(12, 12, 12, days=7))
    loose = absorb(before, LIFTER, EASIER, replace(did(8, 8, kg=52.5, form="loose"), on=ON))
    assert advise_from(loose, LIFTER, BENCH, AIM, ON + timedelta(days=3)).why[0].rule == "form-first"


def test_what_is_told_of_the_next_session_is_that_weeks() -> None:
    """On the last day of a usual week the next target is already the easier week's, and the other way round."""
    day = TrainingDay(ON.weekday(), time(18), "", (Planned(BENCH, AIM),))
    book = Book(Profile("Tomas", ZoneInfo("UTC")), LIFTER, Plan((day,), ON - timedelta(weeks=1), 3))
    session = Session(ON, did(10, 10, 10).sets, did(10, 10, 10).target)
    easier = ON + timedelta(weeks=1)
    assert not aim_of(book, ON, BENCH).easier
    assert aim_of(book, easier, BENCH).easier
    assert Advisers().after(book, session, BENCH, easier).why[0].rule == "easier-week"
    assert Advisers().after(book, session, BENCH, easier + timedelta(weeks=1)).why[0].rule != "easier-week"
