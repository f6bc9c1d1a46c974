"""The challenge's scoring: each row by an example of its own, the bounds, the standings, and what is understood."""

from dataclasses import replace
from datetime import date, datetime, timedelta
from pathlib import Path
from typing import get_args

import pytest

from core.challenge.judging import Surprise, beyond_belief, considered, result_of, surprise
from core.challenge.ledger import chances_of
from core.challenge.page import scoring_page
from core.challenge.scoring import BOUNDS, EXERCISE, SESSION, UNSEEN
from core.challenge.spoken import joining_of, opening_of, spoken
from core.challenge.standings import points_of, table
from core.challenge.striking import Struck, struck
from core.challenge.telling import Telling, told_live
from core.decide.judge import as_asked
from core.evidence.numbers import NUMBERS
from core.model.acts import SetAct
from core.model.challenge import Attempt, Challenge, Counts, DayDone, Entrant, Record, Result, Stay, Word
from core.model.quantities import Load
from core.model.target import Forecast, Target, TargetSet, Verdict

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
    ("exercise.otherwise", attempt("otherwise"), 0.75),
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
        (did((9, 8)), "part"),
        (did((12,), warmup=True), "none"),
        ((), "none"),
    ],
)
def test_what_became_of_a_target(sets: tuple[SetAct, ...], result: Result) -> None:
    assert result_of(ASKED, sets, as_asked, Surprise()) == result


def test_short_sets_without_a_word_on_reserve_are_held_against_the_forecast() -> None:
    sets = did((5, 5, 5))
    expected = tuple(Forecast(9.0, 1.5) for _ in sets)
    seen = surprise(sets, expected)
    assert seen.below == pytest.approx(4 / 1.5)
    assert result_of(ASKED, sets, as_asked, seen) == "otherwise"
    assert result_of(ASKED, did((8, 8, 7)), as_asked, surprise(did((8, 8, 7)), expected)) == "stopped"


def test_beyond_belief_needs_both_the_spread_and_the_repetitions() -> None:
    expected = tuple(Forecast(9.0, 0.5) for _ in range(3))
    assert not beyond_belief(surprise(did((11, 11, 11)), expected))
    assert beyond_belief(surprise(did((12, 9, 9)), expected))
    assert not beyond_belief(surprise(did((14, 14, 14)), tuple(Forecast(9.0, 2.0) for _ in range(3))))


def test_what_is_forecast_is_what_was_done() -> None:
    first = considered(ASKED, did((9, 8, 8), load=Load("per_hand", 12.5), rir=1.0))[0]
    assert (first.load, first.reps, first.rir, first.tempo) == (
        Load("per_hand", 12.5),
        (9, 9),
        1.0,
        (2.0, 0.0, 1.0, 0.0),
    )


TODAY = date(2026, 11, 25)  # a Wednesday


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("challenge", Challenge("Challenge", date(2026, 11, 30), 6)),
        (
            'challenge "Autumn" for 6 weeks from Monday, steps and sessions, teams Red and Blue',
            Challenge("Autumn", date(2026, 11, 30), 6, "both", ("Red", "Blue")),
        ),
        (
            "open a challenge called Long Dark, four weeks from 7 December, steps only",
            Challenge("Long Dark", date(2026, 12, 7), 4, "steps"),
        ),
        (
            "/challenge 8 weeks starting tomorrow, kept sessions only",
            Challenge("Challenge", date(2026, 11, 26), 8, "sessions"),
        ),
        (
            "Challenge: teams A, B and C from next Monday for 3 weeks",
            Challenge("Challenge", date(2026, 11, 30), 3, "both", ("A", "B", "C")),
        ),
        ("start a challenge from today", Challenge("Challenge", TODAY, 6)),
        ("new challenge from 3 January for two weeks", Challenge("Challenge", date(2027, 1, 3), 2)),
    ],
)  # fmt: skip
def test_opening_in_plain_words(text: str, expected: Challenge) -> None:
    said = spoken(text)
    assert said is not None
    assert said.kind == "open"
    opening = opening_of(said.rest, TODAY)
    assert (opening.challenge, opening.trouble) == (expected, None)


def test_opening_trouble_and_group() -> None:
    assert opening_of("from 2026-01-01", TODAY).trouble == "past"
    assert opening_of("for 40 weeks", TODAY).trouble == "weeks"
    assert opening_of("in Harbour Street, 4 weeks", TODAY).group == "Harbour Street"
    assert NUMBERS["challenge.weeks"].low <= opening_of("", TODAY).challenge.weeks <= NUMBERS["challenge.weeks"].high


@pytest.mark.parametrize(
    ("text", "kind"),
    [("challenge?", "how"), ("challenge help", "how"),
     ("end challenge", "end"), ("join as Mo", "join"), ("count me in", "join"), ("leave", "leave"), ("pause", "pause"),
     ("I'm back", "back"), ("standings", "standings"), ("back squat 100 x 5", None), ("pause 2 s at the bottom", None),
     ("points of contact", None), ("goblet squat 24 x 10", None)],
)  # fmt: skip
def test_words_about_a_challenge_and_words_that_are_not(text: str, kind: str | None) -> None:
    said = spoken(text)
    assert (said.kind if said else None) == kind


def test_joining_names_and_teams() -> None:
    teams = ("Red", "Blue")
    assert [joining_of(rest, teams).shown for rest in ("", "as Mo", "Blue as Mo B", "as Mo in team Red")] == [
        None,
        "Mo",
        "Mo B",
        "Mo",
    ]
    assert [joining_of(rest, teams).team for rest in ("", "as Mo", "Blue as Mo B", "as Mo in team Red")] == [
        None,
        None,
        "Blue",
        "Red",
    ]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("don't count Mo on Tuesday", Struck("Mo", date(2026, 11, 24), counts=False)),
        ("Don’t count Mo B's session of last Monday.", Struck("Mo B", date(2026, 11, 23), counts=False)),
        ("do not count Mo on Thursday", Struck("Mo", date(2026, 11, 19), counts=False)),
        ("count Mo on Wednesday", Struck("Mo", TODAY, counts=True)),
        ("count Mo of yesterday", Struck("Mo", date(2026, 11, 24), counts=True)),
        ("don't count Jonas on 3 November", Struck("Jonas", date(2026, 11, 3), counts=False)),
        ("don't count Mo on 3 December", Struck("Mo", date(2025, 12, 3), counts=False)),
        ("don't count Mo on 2026-11-20", Struck("Mo", date(2026, 11, 20), counts=False)),
        ("don't count it", None),
        ("count me in", None),
        ("count Mo on the machine", None),
    ],
)
def test_the_coach_takes_a_session_out_or_puts_it_back(text: str, expected: Struck | None) -> None:
    assert struck(text, TODAY) == expected


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


def test_the_coachs_word_settles_what_waits() -> None:
    words: tuple[Word, ...] = ("waits", "no", "yes", "unneeded")
    got = [
        sum(one.earned for one in chances_of(SIX, Record(entrant(), (day(0, attempt(word=word)),)))) for word in words
    ]
    assert got == [1.0, 1.0, 2.0, 2.0]
