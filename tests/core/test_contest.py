"""A member's day made ready for scoring: what counts as told live, swaps, aches, reports held against the forecast."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta, timezone

import pytest

from core.advising import absorb, begin, dump
from core.contest import Told, day_of, tellings, with_words
from core.model.acts import Act, Begin, Next, SetAct, Swap
from core.model.book import Kept
from core.model.lifter import Ache, Lifter
from core.model.plan import Planned, TrainingDay
from core.model.quantities import Load
from core.model.target import Aim, Session, Target, TargetSet

ON = date(2026, 3, 2)
AT = datetime(2026, 3, 2, 18, tzinfo=UTC)
SQUAT, ROW = "back-squat", "dumbbell-row"
AIM = Aim(2, (5, 8))
SIXTY = Load("total", 60.0)
TARGET = Target("reps", (TargetSet(SIXTY, (6, 8), 2.0),) * 2)
DAY = TrainingDay(0, time(18), "One", (Planned(SQUAT, AIM),))


def kept(*acts: Act, every: float = 6.0) -> tuple[Kept, ...]:
    """Acts told so many minutes apart."""
    return tuple(Kept(n, act, ON, AT + timedelta(minutes=every * n), n) for n, act in enumerate(acts))


def done(*reps: int, exercise: str = SQUAT, **more: object) -> tuple[SetAct, ...]:
    return tuple(replace(SetAct(exercise, SIXTY, one, rir=2.0), **more) for one in reps)  # type: ignore[arg-type]


def told(*acts: Act, every: float = 6.0, **more: object) -> Told:
    whole = Told(ON, DAY, kept(Begin(), *acts, every=every), {SQUAT: TARGET}, Lifter())
    return replace(whole, **more)  # type: ignore[arg-type]


def test_messages_of_a_day_and_the_time_that_their_sets_take() -> None:
    hold = SetAct("plank", None, hold_s=40.0)
    slow = done(5, tempo=(3.0, 1.0, 1.0, 0.0))[0]
    day = told(*done(6, 6), slow, hold, Next(), targets={SQUAT: rested(TARGET, 150.0)})
    day = replace(
        day, zone=timezone(timedelta(hours=1)), acts=(*day.acts[:2], replace(day.acts[2], message=1), *day.acts[3:])
    )
    assert [(one.at.hour, one.at.minute, one.takes_s) for one in tellings(day)] == [
        (19, 0, 0.0),
        (19, 6, 2 * (6 * 3.0 + 150.0)),
        (19, 18, 5 * 5.0 + 150.0),
        (19, 24, 40.0 + 60.0),  # nothing asked: the shortest usual rest
    ]


def rested(target: Target, rest_s: float) -> Target:
    return replace(target, sets=tuple(replace(one, rest_s=rest_s) for one in target.sets))


@pytest.mark.parametrize(("every", "later", "word"), [(6.0, 0, "unneeded"), (0.0, 0, "waits"), (6.0, 1, "waits")])
def test_what_was_not_told_while_it_happened_waits(every: float, later: int, word: str) -> None:
    day = told(*done(6, 6), every=every)
    moved = tuple(replace(one, at=one.at + timedelta(days=later)) for one in day.acts)
    assert day_of(replace(day, acts=moved)).word == word


def test_what_became_of_the_days_exercises() -> None:
    assert [one.result for one in day_of(told(*done(7, 6))).attempts] == ["met"]
    assert [one.result for one in day_of(told(*done(7, 5))).attempts] == ["stopped"]
    assert [one.result for one in day_of(told()).attempts] == ["none"]
    without = day_of(told(*done(7, 6), targets={}))
    assert [(one.way, one.result) for one in without.attempts] == [("first", "met")]


def test_a_swap_puts_the_other_exercise_in_its_place() -> None:
    swapped = day_of(told(Swap(SQUAT, "goblet-squat"), *done(6, 6, exercise="goblet-squat"), targets={}))
    assert [(one.exercise, one.result) for one in swapped.attempts] == [("goblet-squat", "met")]


@pytest.mark.parametrize(
    ("where", "ago", "level", "ached"),
    [
        ("knee", 0, 4.0, True),
        ("knee", 7, None, True),
        ("knee", 8, 4.0, False),
        ("knee", 8, 6.0, True),  # it keeps the exercise off, until a better word or 28 days
        ("knee", 28, 6.0, True),
        ("knee", 29, 6.0, False),
        ("wrist", 0, 8.0, False),
        ("knee", 0, 0.0, False),
        ("knee", -1, 5.0, False),
    ],
)
def test_an_ache_of_late_of_a_part_that_is_loaded(where: str, ago: int, level: float | None, ached: bool) -> None:
    lifter = Lifter(aches=(Ache(where, ON - timedelta(days=ago), level=level),))
    assert [one.ached for one in day_of(told(lifter=lifter)).attempts] == [ached]


def test_the_newest_word_on_an_ache_stands_and_a_later_one_takes_nothing_back() -> None:
    hurt, better = Ache("knee", ON - timedelta(days=9), "left", 6.0), Ache("knee", ON - timedelta(days=2), level=0.0)
    later = Ache("knee", ON + timedelta(days=1), "left", 0.0)
    for aches, ached in (((hurt,), True), ((hurt, better), False), ((later, hurt), True)):
        assert [one.ached for one in day_of(told(lifter=Lifter(aches=aches))).attempts] == [ached]


def test_a_report_is_held_against_the_forecast_made_before_it() -> None:
    known = begin(Lifter(), SQUAT)
    for week in range(4):
        past = Session(ON - timedelta(days=28 - 7 * week), done(7, 6), TARGET)
        known = absorb(known, Lifter(), AIM, past)
    before = {SQUAT: dump(known)}
    assert [one.word for one in day_of(told(*done(7, 7), before=before)).attempts] == ["unneeded"]
    assert [one.word for one in day_of(told(*done(25, 25), before=before)).attempts] == ["waits"]
    assert [one.word for one in day_of(told(*done(25, 25))).attempts] == ["unneeded"]  # nothing is known yet
    for reps, word in ((25, "unneeded"), (24, "waits")):
        again = told(*done(25, 25), before=before, believed={SQUAT: done(reps)})
        assert [one.word for one in day_of(again).attempts] == [word]


def test_the_coachs_words_go_to_what_waits_and_to_nothing_else() -> None:
    at_once = day_of(told(*done(7, 6), every=0.0))
    assert at_once.word == "waits"
    assert with_words(at_once, {"": "yes"}, trusted=False).word == "yes"
    assert with_words(at_once, {}, trusted=True).word == "unneeded"
    live = day_of(told(*done(7, 6)))
    assert with_words(live, {"": "yes", SQUAT: "no"}, trusted=False) == live
    struck = with_words(live, {"": "no"}, trusted=True)  # unasked, and of one whose word is taken
    assert (struck.word, struck.attempts) == ("no", live.attempts)


def test_a_day_called_off_on_which_there_was_training_was_not_off() -> None:
    assert day_of(told(off=True)).off
    assert not day_of(told(*done(7, 6), off=True)).off
