"""Laws of a challenge, over made-up records: same facts, same points; and nobody's points hang on another's."""

from dataclasses import replace
from datetime import UTC, date, timedelta
from typing import get_args

from hypothesis import given, settings
from hypothesis import strategies as st

from core.challenge.ledger import chances_of
from core.challenge.standings import points_of, table
from core.model.challenge import (
    Attempt,
    Challenge,
    Counts,
    DayDone,
    Entrant,
    Record,
    Result,
    Stay,
    Word,
)
from core.model.target import Verdict
from core.say.group import final, opening, standings
from core.say.render import Voice

MONDAY = date(2026, 3, 2)
NAMES = ("goblet-squat", "push-up", "dumbbell-row", "back-squat")
VERDICTS: tuple[Verdict, ...] = ("form", "reps", "tempo", "range", "rest", "load", "first", "hold", "ease", "stop")

attempts = st.builds(
    Attempt,
    st.sampled_from(NAMES),
    st.sampled_from(VERDICTS),
    st.sampled_from(get_args(Result)),
    st.booleans(),
    st.sampled_from(get_args(Word)),
)
days = st.builds(
    DayDone,
    st.integers(-5, 50).map(lambda n: MONDAY + timedelta(days=n)),
    st.lists(attempts, min_size=1, max_size=4, unique_by=lambda one: one.exercise).map(tuple),
    st.booleans(),
    st.booleans(),
    st.sampled_from(get_args(Word)),
)
challenges = st.builds(
    Challenge,
    st.just("Six"),
    st.just(MONDAY),
    st.integers(1, 7),
    st.sampled_from(get_args(Counts)),
    st.sampled_from([(), ("Red", "Blue")]),
)


@st.composite
def groups(draw: st.DrawFn) -> list[Record]:
    out = []
    for who in range(draw(st.integers(1, 5))):
        joined = MONDAY + timedelta(days=draw(st.integers(-4, 20)))
        stays = (Stay(joined, joined + timedelta(days=30) if draw(st.integers(0, 4)) == 0 else None),)
        entrant = Entrant(who, f"n{who}", stays, team=draw(st.sampled_from([None, "Red", "Blue"])))
        done = draw(st.lists(days, max_size=14, unique_by=lambda one: one.on))
        out.append(Record(entrant, tuple(done)))
    return out


@settings(max_examples=50, deadline=None)
@given(challenges, groups())
def test_the_order_of_facts_and_members_does_not_matter(challenge: Challenge, group: list[Record]) -> None:
    shuffled = [replace(one, days=tuple(reversed(one.days))) for one in reversed(group)]
    assert table(challenge, group, challenge.weeks) == table(challenge, shuffled, challenge.weeks)


@settings(max_examples=50, deadline=None)
@given(challenges, groups())
def test_day_by_day_comes_to_the_same_as_all_at_once(challenge: Challenge, group: list[Record]) -> None:
    for record in group:
        ordered = sorted(record.days, key=lambda one: one.on)
        grown: tuple[DayDone, ...] = ()
        for day in ordered:
            before = chances_of(challenge, replace(record, days=grown))
            grown = (*grown, day)
            assert chances_of(challenge, replace(record, days=grown))[: len(before)] == before
        assert chances_of(challenge, replace(record, days=grown)) == chances_of(challenge, record)


@settings(max_examples=50, deadline=None)
@given(challenges, groups())
def test_what_is_told_twice_counts_once(challenge: Challenge, group: list[Record]) -> None:
    for record in group:
        assert chances_of(challenge, replace(record, days=record.days * 2)) == chances_of(challenge, record)


@settings(max_examples=50, deadline=None)
@given(challenges, groups())
def test_erasing_a_member_leaves_the_others_points_alone(challenge: Challenge, group: list[Record]) -> None:
    before = {one.who: (one.points, one.kept, one.planned, one.trend) for one in table(challenge, group, 9).standings}
    after = {
        one.who: (one.points, one.kept, one.planned, one.trend) for one in table(challenge, group[1:], 9).standings
    }
    assert after == {who: line for who, line in before.items() if who != group[0].entrant.who}


@settings(max_examples=50, deadline=None)
@given(challenges, groups())
def test_ties_share_their_place_and_better_points_a_better_one(challenge: Challenge, group: list[Record]) -> None:
    lines = table(challenge, group, challenge.weeks).standings
    placed = [one for one in lines if one.place is not None]
    for one in placed:
        for other in placed:
            assert one.points is not None
            assert other.points is not None
            assert (one.place == other.place) == (one.points == other.points)
            if one.points > other.points:
                assert one.place < other.place  # type: ignore[operator]
    assert all(one.place is None for one in lines if one.points is None)
    assert sorted(one.place for one in placed if one.place)[:1] in ([], [1])


@settings(max_examples=50, deadline=None)
@given(challenges, groups())
def test_points_lie_between_nothing_and_all(challenge: Challenge, group: list[Record]) -> None:
    for record in group:
        chances = chances_of(challenge, record)
        assert all(0.0 <= one.earned <= one.worth <= 1.0 for one in chances)
        points = points_of(challenge, chances)
        assert points is None or 0 <= points <= 100


@settings(max_examples=50, deadline=None)
@given(challenges, groups(), st.integers(0, 3), st.integers(0, 13))
def test_doing_better_never_costs_points(challenge: Challenge, group: list[Record], place: int, which: int) -> None:
    record = group[0]
    if not record.days:
        return
    day = record.days[which % len(record.days)]
    at = place % len(day.attempts)
    if day.attempts[at].way == "stop" or any(one.ached for one in day.attempts) or day.off or day.held:
        return  # those are no chances, so that there is nothing to lose
    better = tuple(replace(one, result="met") if n == at else one for n, one in enumerate(day.attempts))
    after = replace(record, days=tuple(replace(one, attempts=better) if one is day else one for one in record.days))
    earned_before, earned_after = (sum(one.earned for one in chances_of(challenge, some)) for some in (record, after))
    if day.word in ("unneeded", "yes") and day.attempts[at].word in ("unneeded", "yes"):
        assert earned_after >= earned_before - 1e-9


@settings(max_examples=50, deadline=None)
@given(challenges, groups())
def test_posts_speak_of_names_points_sessions_and_ways_alone(challenge: Challenge, group: list[Record]) -> None:
    voice = Voice("", UTC)
    found = table(challenge, group, min(2, challenge.weeks))
    for post in (
        opening(voice, challenge),
        standings(voice, challenge, found, closed=False),
        standings(voice, challenge, found, closed=True),
        final(voice, challenge, found),
    ):
        assert "{" not in post
        assert "!" not in post
        assert not any(word in post for word in (*NAMES, "kg", "lb", "goblet", "squat", "knee"))
