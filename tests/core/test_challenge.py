"""The challenge's scoring: each row by an example of its own, the bounds, the page, the standings."""

from dataclasses import replace
from datetime import date, timedelta
from pathlib import Path
from typing import get_args

import pytest

from core.challenge.bounds import BOUNDS, UNSEEN
from core.challenge.ledger import chances_of
from core.challenge.page import scoring_page
from core.challenge.scoring import EXERCISE, SESSION
from core.challenge.standings import points_of, table
from core.evidence.numbers import NUMBERS
from core.model.challenge import Attempt, Challenge, Counts, DayDone, Entrant, Record, Result, Stay, Word
from core.model.target import Verdict

MONDAY = date(2026, 3, 2)


SIX = Challenge("Six", MONDAY, 6)


BEFORE = MONDAY - timedelta(days=3)


def entrant(who: int = 1, shown: str = "Mo", **more: object) -> Entrant:
    return replace(Entrant(who, shown, (Stay(BEFORE),)), **more)  # type: ignore[arg-type]


def attempt(result: Result = "met", way: Verdict = "reps", exercise: str = "goblet-squat", **more: object) -> Attempt:
    return replace(Attempt(exercise, way, result), **more)  # type: ignore[arg-type]


def day(after: int = 0, *attempts: Attempt, **more: object) -> DayDone:
    return replace(DayDone(MONDAY + timedelta(days=after), attempts or (attempt(),)), **more)  # type: ignore[arg-type]


def earned(*days: DayDone, who: Entrant | None = None, challenge: Challenge = SIX) -> dict[str, tuple[float, float]]:
    """By rule: what could be earned and what was."""
    out: dict[str, tuple[float, float]] = {}
    for one in chances_of(challenge, Record(who or entrant(), days)):
        worth, got = out.get(one.rule, (0.0, 0.0))
        out[one.rule] = (worth + one.worth, got + one.earned)
    return out


EXERCISE_ROWS: list[tuple[str, Attempt, float | None]] = [
    ("exercise.stop", attempt("none", "stop"), None),
    ("exercise.ache", attempt("part", ached=True), None),
    ("exercise.waits", attempt(word="waits"), 0.0),
    ("exercise.refused", attempt(word="no"), 0.0),
    ("exercise.step", attempt("met", "tempo"), 1.0),
    ("exercise.kept", attempt("met", "ease"), 1.0),
    ("exercise.stopped", attempt("stopped"), 1.0),
    ("exercise.pushed", attempt("pushed"), 1.0),
    ("exercise.otherwise", attempt("otherwise"), 0.9),
    ("exercise.part", attempt("part"), 0.0),
    ("exercise.none", attempt("none"), 0.0),
]


@pytest.mark.parametrize(("rule", "one", "share"), EXERCISE_ROWS)
def test_each_row_for_exercises(rule: str, one: Attempt, share: float | None) -> None:
    found = chances_of(SIX, Record(entrant(), (day(0, one, attempt("met", "hold", "push-up")),)))
    mine = [(chance.rule, chance.worth, chance.earned) for chance in found if chance.exercise == "goblet-squat"]
    assert mine == ([] if share is None else [(rule, 0.5, 0.5 * share)])


SESSION_ROWS: list[tuple[str, DayDone, float | None]] = [
    ("session.held", day(held=True), None),
    ("session.stop", day(0, attempt("none", "stop"), attempt("part", "stop", "push-up")), None),
    ("session.waits", day(word="waits"), 0.0),
    ("session.refused", day(word="no"), 0.0),
    ("session.kept", day(), 1.0),
    ("session.ache", day(0, attempt("none", ached=True)), None),
    ("session.off", day(0, attempt("none"), off=True), None),
    ("session.missed", day(0, attempt("none")), 0.0),
]


@pytest.mark.parametrize(("rule", "one", "share"), SESSION_ROWS)
def test_each_row_for_sessions(rule: str, one: DayDone, share: float | None) -> None:
    sessions = [chance for chance in chances_of(SIX, Record(entrant(), (one,))) if chance.exercise is None]
    if share is None:
        assert sessions == []
    else:
        assert [(chance.rule, chance.worth, chance.earned) for chance in sessions] == [(rule, 1.0, share)]


def test_every_row_has_an_example_a_sentence_and_a_reason() -> None:
    assert [row.id for row in EXERCISE] == [rule for rule, _, _ in EXERCISE_ROWS]
    assert [row.id for row in SESSION] == [rule for rule, _, _ in SESSION_ROWS]
    told = [(row.sentence, row.reason) for rows in (EXERCISE, SESSION, BOUNDS, UNSEEN) for row in rows]
    assert all(said.endswith(".") and why.endswith(".") for said, why in told)
    assert len({said for said, _ in told}) == len(told)


def test_the_page_of_the_scoring_is_current_and_names_every_number_it_uses() -> None:
    """core/challenge/scoring.md is what the rows say."""
    page = (Path(__file__).parents[2] / "core/challenge/scoring.md").read_text()
    assert page == scoring_page()
    mine = {key for key in NUMBERS if key.startswith("challenge.")}
    named = {key for rows in (EXERCISE, SESSION, BOUNDS, UNSEEN) for row in rows for key in row.numbers}
    assert mine - named == {"challenge.weeks"}  # how long one lasts is no matter of points


@pytest.mark.parametrize("way", ["form", "reps", "tempo", "range", "rest", "load"])
def test_a_step_is_worth_the_same_whichever_way_it_was(way: Verdict) -> None:
    assert earned(day(0, attempt("met", way)))["exercise.step"] == (1.0, 1.0)


def test_exercises_share_one_session_evenly() -> None:
    few = chances_of(SIX, Record(entrant(), (day(),)))
    many = chances_of(SIX, Record(entrant(), (day(0, *(attempt(exercise=f"e{n}") for n in range(8))),)))
    assert sum(one.worth for one in few) == pytest.approx(sum(one.worth for one in many)) == pytest.approx(2.0)


def test_an_exercise_is_a_chance_three_times_a_week() -> None:
    daily = Record(entrant(), tuple(day(n) for n in range(14)))
    exercises = [one for one in chances_of(SIX, daily) if one.exercise is not None]
    assert [one.on.weekday() for one in exercises] == [0, 1, 2, 0, 1, 2]


def test_the_same_day_told_twice_counts_once() -> None:
    assert chances_of(SIX, Record(entrant(), (day(), day()))) == chances_of(SIX, Record(entrant(), (day(),)))


def test_an_ache_costs_nothing_but_what_was_done_counts() -> None:
    assert "exercise.step" in earned(day(0, attempt("met", ached=True)))
    assert earned(day(0, attempt("none", ached=True))) == {}


def test_calling_off_is_free_once_a_week() -> None:
    found = chances_of(SIX, Record(entrant(), tuple(day(n, attempt("none"), off=True) for n in (0, 2, 7))))
    assert [(one.on.day, one.rule) for one in found if one.exercise is None] == [(4, "session.missed")]


def test_a_session_that_waits_takes_its_exercises_with_it() -> None:
    assert earned(day(word="waits")) == {"session.waits": (1.0, 0.0), "exercise.waits": (1.0, 0.0)}


def test_late_joining_pauses_and_leaving() -> None:
    days = tuple(day(7 * week) for week in range(6))
    late = entrant(stays=(Stay(MONDAY + timedelta(days=14)),))
    assert len(chances_of(SIX, Record(late, days))) == 2 * 3  # the day of joining is not counted
    paused = entrant(pauses=(Stay(MONDAY + timedelta(days=1), MONDAY + timedelta(days=20)),))
    assert len(chances_of(SIX, Record(paused, days))) == 2 * 4
    gone = entrant(stays=(Stay(BEFORE, MONDAY + timedelta(days=8)),))
    assert len(chances_of(SIX, Record(gone, days))) == 2 * 2
    assert table(SIX, [Record(gone, days)], 6).standings == ()
    back = entrant(stays=(Stay(BEFORE, MONDAY + timedelta(days=8)), Stay(MONDAY + timedelta(days=30))))
    assert len(chances_of(SIX, Record(back, days))) == 2 * 3
    assert [one.points for one in table(SIX, [Record(back, days)], 6).standings] == [100]


def test_what_counts_is_the_coachs_choice() -> None:
    days = (day(0, attempt("none"), attempt("met", exercise="push-up")), day(2, attempt("none")))
    steps, sessions, both = (chances_of(replace(SIX, counts=c), Record(entrant(), days)) for c in get_args(Counts))
    assert [round(sum(one.earned for one in some), 2) for some in (both, steps, sessions)] == [1.5, 0.5, 1.0]
    assert [round(sum(one.worth for one in some), 2) for some in (both, steps, sessions)] == [4.0, 2.0, 2.0]
    assert all(any(one.exercise is None for one in some) for some in (both, steps, sessions))


def test_places_ties_trends_and_teams() -> None:
    def record(who: int, shown: str, missed: set[int], team: str | None = None) -> Record:
        days = tuple(day(7 * n, attempt("none" if n in missed else "met")) for n in range(4))
        return Record(entrant(who, shown, team=team), days)

    found = table(SIX, [record(1, "Bo", {1}, "Red"), record(2, "Al", {1}, "Blue"), record(3, "Cy", set(), "Red")], 4)
    assert [(one.shown, one.place, one.points) for one in found.standings] == [
        ("Cy", 1, 100),
        ("Al", 2, 75),
        ("Bo", 2, 75),
    ]
    assert [one.trend for one in found.standings] == [0, 8, 8]
    assert [(one.team, one.place, one.points) for one in found.teams] == [("Red", 1, 88), ("Blue", 2, 75)]
    first = table(SIX, [record(1, "Bo", set())], 1)
    assert [(one.place, one.points, one.kept, one.planned) for one in first.standings] == [(None, None, 1, 1)]


def test_points_do_not_count_how_often_someone_trains() -> None:
    two = chances_of(
        SIX, Record(entrant(), tuple(day(n, attempt("met" if n % 14 else "none")) for n in range(0, 42, 7)))
    )
    four = chances_of(
        SIX,
        Record(
            entrant(),
            tuple(day(n + m, attempt("met" if n % 14 else "none")) for n in range(0, 42, 7) for m in (0, 1, 2)),
        ),
    )
    assert points_of(SIX, two) == points_of(SIX, four) == 50


def test_the_coachs_word_settles_what_waits() -> None:
    words: tuple[Word, ...] = ("waits", "no", "yes", "unneeded")
    got = [
        sum(one.earned for one in chances_of(SIX, Record(entrant(), (day(0, attempt(word=word)),)))) for word in words
    ]
    assert got == [1.0, 1.0, 2.0, 2.0]
