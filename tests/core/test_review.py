"""A client's week and who needs a word: each row of the table just inside and just outside its limit."""

from dataclasses import replace
from datetime import date, time, timedelta
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.evidence.desk import DESK, desk_value
from core.evidence.exercises import EXERCISES
from core.evidence.sources import SOURCES
from core.model.acts import SetAct
from core.model.lifter import Ache, Lifter
from core.model.plan import Plan, Planned, TrainingDay
from core.model.quantities import Load
from core.model.target import Aim, Session, Target, TargetSet
from core.model.week import Concern, Proposal, Record, Standing
from core.review.attention import ROWS, concern_of, concerns
from core.review.week import week_of
from core.say import desk
from core.say.render import Voice

TODAY = date(2026, 3, 9)  # a Monday
AIM = Aim(3, (8, 12))
PLAN = Plan((TrainingDay(0, time(18), "Legs", (Planned("back-squat", AIM),)), TrainingDay(3, time(18), "", ())))
VOICE = Voice("Ines", ZoneInfo("Europe/Berlin"))


def ago(days: int) -> date:
    return TODAY - timedelta(days=days)


def session(on: date, *reps: int, asked: int = 8, way: str = "hold", **more: object) -> Session:
    sets = tuple(SetAct("back-squat", Load("total", 60.0), count, **more) for count in reps)  # type: ignore[arg-type]
    target = Target(way, (TargetSet(Load("total", 60.0), (asked, 12), 2.0),) * 3)  # type: ignore[arg-type]
    return Session(on, sets, target)


def record(*sessions: Session, **more: object) -> Record:
    base = Record("Mira", Lifter(), PLAN, {"back-squat": sessions} if sessions else {}, joined=ago(60), heard=TODAY)
    return replace(base, **more)  # type: ignore[arg-type]


GOOD = session(ago(4), 8, 8, 8)
"""Done last Thursday, as asked: nothing to say."""


def row_of(found: Concern | None) -> str | None:
    return found.row if found else None


def test_nothing_is_said_of_who_is_on_course() -> None:
    assert concern_of(record(session(ago(7), 8, 8, 8), GOOD), TODAY) is None


def aching(level: float | None, days: int) -> Record:
    return record(GOOD, lifter=Lifter(aches=(Ache("knee", ago(days), "left", level),)))


def stall(times: int) -> Record:
    days = [ago(4 + 7 * back) for back in reversed(range(times))]
    return record(*(session(on, 7, 7, 6) for on in days))


def forms(loose: int, clean: int) -> Record:
    said = [session(ago(4 - n), 8, form="loose") for n in range(loose)]
    said += [session(ago(4 - n), 8, form="clean") for n in range(clean)]
    return record(*said, session(ago(1), 8, 8, 8))


def efforts(days: int, jump: int) -> Record:
    sets = (
        SetAct("back-squat", Load("total", 60.0), 8, rir=0.0),
        SetAct("back-squat", Load("total", 60.0), 8 + jump, rir=0.0),
    )
    return record(*(Session(ago(4 + n), sets) for n in reversed(range(days))))


def forms_of(*days: int) -> list[Session]:
    return [session(ago(day), 8, 8, form="loose") for day in days]


def loose_three() -> list[Session]:
    return [session(ago(4 + 7 * back), 7, 7, 6, form="loose") for back in (2, 1, 0)]


def eased_by(days: int, way: str) -> Record:
    ache = Ache("knee", ago(days), "left", 4.0)
    return record(GOOD, session(ago(1), 8, 8, 8, way=way), lifter=Lifter(aches=(ache,)))


def one_missed(heard: int) -> Record:
    return record(session(ago(8), 8, 8, 8), heard=ago(heard), called_off=(ago(4),))


def push_ups(low: int, *, kg: float | None = None, days: int = 4, done: int = 30, **lifter: object) -> Record:
    """Push-ups of 8 to 12 planned, so many asked at least and done, with something added or not."""
    load = Load("body", 0.0) if kg is None else Load("added", kg)
    plan = Plan((TrainingDay(0, time(18), "Push", (Planned("push-up", AIM),)),))
    target = Target("reps", (TargetSet(load, (low, low + 1), 2.0),) * 3)
    one = Session(ago(days), (SetAct("push-up", load, done),) * 3, target)
    return record(plan=plan, sessions={"push-up": (one,)}, lifter=Lifter(**lifter), joined=ago(6))  # type: ignore[arg-type]


CASES: list[tuple[str, Record, str | None]] = [
    ("an alarm outranks all", replace(aching(6, 0), held="chest", waiting=("back-squat",)), "alarm"),
    ("ache 4", aching(4, 1), "ache"),
    ("ache 3", aching(3, 1), None),
    ("ache unsaid", aching(None, 1), "ache"),
    ("ache 5, three days ago", aching(5, 3), "ache"),
    ("ache 5, four days ago", aching(5, 4), None),
    ("screening", record(GOOD, held="screening"), "screening"),
    ("a target waits", record(GOOD, waiting=("back-squat",)), "waiting"),
    ("one session missed", record(session(ago(7), 8, 8, 8)), None),
    ("two sessions missed", record(session(ago(11), 8, 8, 8)), "missed"),
    ("two missed, one called off", record(session(ago(11), 8, 8, 8), called_off=(ago(4),)), None),
    ("the same target twice", stall(2), None),
    ("push-ups past the range", push_ups(13), "rung"),
    ("push-ups at its top", push_ups(12), None),
    ("push-ups past it, not met", push_ups(13, done=12), None),
    ("push-ups with a plate", push_ups(13, kg=5.0), None),
    ("push-ups of one who is spared", push_ups(13, no_heavier=True), None),
    ("the same target three times", stall(3), "stall"),
    ("a third of the forms loose", forms(2, 3), "form"),
    ("fewer than a third", forms(1, 3), None),
    ("too few words on form", forms(1, 1), None),
    ("effort off on two days", efforts(2, 3), "effort"),
    ("effort off on one day", efforts(1, 3), None),
    ("effort a little off", efforts(2, 2), None),
    ("what waits for form is no stall", record(*loose_three()), "form"),
    ("an ache of a week ago that eases", eased_by(7, "ease"), "old_ache"),
    ("an ache of six days ago that eases", eased_by(6, "ease"), None),
    ("an ache of a week ago that eases nothing", eased_by(7, "hold"), None),
    ("seven days of silence, a session missed", one_missed(7), "silence"),
    ("six days of silence", one_missed(6), None),
    ("silent for a week, and nothing was due", record(session(ago(4), 8, 8, 8), heard=ago(9)), None),
    ("a step yesterday", record(GOOD, session(ago(1), 9, 9, 9, asked=9, way="reps")), "praise"),
    ("a step three days ago", record(GOOD, session(ago(3), 9, 9, 9, asked=9, way="reps")), None),
    ("back after two missed", record(session(ago(12), 8, 8, 8), session(ago(1), 8, 8, 8)), "back"),
    ("back after one missed", record(session(ago(6), 8, 8, 8), session(ago(1), 8, 8, 8)), None),
    ("not met, no step", record(GOOD, session(ago(1), 9, 9, 8, asked=9, way="reps")), None),
]


@pytest.mark.parametrize(("record_", "wanted"), [case[1:] for case in CASES], ids=[case[0] for case in CASES])
def test_each_row_at_its_limit(record_: Record, wanted: str | None) -> None:
    assert row_of(concern_of(record_, TODAY)) == wanted


STILL: list[tuple[str, Record, int, bool]] = [
    ("missed yesterday", record(session(ago(11), 8, 8, 8)), 3, False),
    ("missed the day before", record(session(ago(11), 8, 8, 8)), 2, True),
    ("an ache of yesterday", aching(5, 5), 4, False),
    ("an ache of two days ago", aching(5, 5), 3, True),
    ("silent for seven days", one_missed(7), 0, False),
    ("form slips, the first session of the week", record(*forms_of(12, 9, 1)), 0, False),
    ("form slips, the second of the week", record(*forms_of(12, 4, 1)), 0, True),
    ("silent for eight days", one_missed(8), 0, True),
]


@pytest.mark.parametrize(("record_", "days", "still"), [one[1:] for one in STILL], ids=[one[0] for one in STILL])
def test_a_morning_calls_to_mind_what_has_not_changed(record_: Record, days: int, still: bool) -> None:
    found = concern_of(record_, ago(days), morning=True)
    assert found is not None
    assert found.still is still
    asked = concern_of(record_, ago(days))
    assert asked is not None
    assert not asked.still


def test_a_step_is_told_on_one_morning_only() -> None:
    step = record(GOOD, session(ago(0), 9, 9, 9, asked=9, way="reps"))
    assert row_of(concern_of(step, TODAY)) == "praise"
    told = [row_of(concern_of(step, TODAY + timedelta(days=n), morning=True)) for n in range(3)]
    assert told == [None, "praise", None]


def test_what_was_true_for_the_first_time_today_is_no_old_news() -> None:
    mondays = Plan((PLAN.days[0],))
    weekly = record(session(ago(7), 8, 8, 8), heard=ago(7), plan=mondays)
    days = [concern_of(weekly, TODAY + timedelta(days=n), morning=True) for n in range(3)]
    first = next(one for one in days if one is not None)
    assert (first.row, first.count, first.still) == ("silence", 8, False)
    assert days[2] is not None
    assert days[2].still


def test_a_plan_counts_from_the_day_on_which_it_came() -> None:
    """A plan written in the middle of a week asks for nothing of the days before it; the one before it does."""
    late = replace(record(), plans=((ago(1), record().plan),))
    assert [week_of(one, TODAY).planned for one in (record(), late)] == [2, 1]
    daily = Plan(tuple(TrainingDay(day, time(18), "", ()) for day in range(7)))
    changed = replace(record(), plans=((date.min, daily), (ago(1), record().plan)), joined=ago(30))
    assert week_of(changed, TODAY).planned == 6


def test_a_week_without_a_word_says_since_when() -> None:
    quiet = record(session(ago(20), 8, 8, 8), heard=ago(9))
    assert "Nothing heard since" in desk.week(VOICE, week_of(quiet, TODAY))
    assert "Nothing heard" not in desk.week(VOICE, week_of(replace(quiet, heard=ago(2)), TODAY))


def test_what_has_not_changed_is_one_line_after_what_is_new() -> None:
    old = replace(record(session(ago(20), 8, 8, 8)), name="Ruth")
    found = concerns([old, aching(5, 1)], lambda _: ago(0) + timedelta(days=2), morning=True)
    text = desk.attention(VOICE, found, 5, TODAY + timedelta(days=2))
    assert text.splitlines()[-2].startswith("Still: ")
    assert "Ruth" in text.splitlines()[-2]


def test_every_row_is_tried_and_says_why_it_stands_where_it_does() -> None:
    assert {row.id for row in ROWS} == {wanted for _, _, wanted in CASES if wanted}
    assert all(len(row.why_here) > 20 for row in ROWS)


def test_the_most_urgent_comes_first() -> None:
    some = [record_ for _, record_, wanted in CASES if wanted]
    rows = [one.row for one in concerns(some, lambda _: TODAY)]
    order = [row.id for row in ROWS]
    assert rows == sorted(rows, key=order.index)


def test_what_lasts_is_not_said_every_morning() -> None:
    assert row_of(concern_of(stall(3), TODAY, morning=True)) is None
    assert row_of(concern_of(stall(3), ago(3), morning=True)) == "stall"


# A week


def test_indirect_sets_count_half() -> None:
    """Baz-Valle 2022 and Pelland 2024 by way of the table: four bench and three triceps sets make triceps 5."""
    sets = tuple(SetAct("barbell-bench-press", Load("total", 60.0), 8) for _ in range(4))
    more = tuple(SetAct("triceps-pushdown", Load("total", 20.0), 12) for _ in range(3))
    done = {"barbell-bench-press": (Session(ago(1), sets),), "triceps-pushdown": (Session(ago(1), more),)}
    facts = week_of(replace(record(), sessions=done, plan=Plan()), TODAY)
    counted = {one.muscle: one.sets for one in facts.muscles}
    assert counted["chest"] == 4.0
    assert counted["triceps"] == 5.0


def test_a_session_of_today_is_not_missed_before_it_is_over() -> None:
    assert week_of(record(GOOD), TODAY).planned == 2
    assert week_of(record(GOOD), TODAY, still_to_come=True).planned == 1


def test_warm_ups_are_no_sets() -> None:
    warm = SetAct("back-squat", Load("total", 40.0), 8, warmup=True)
    done = Session(ago(1), (warm, *GOOD.sets))
    assert week_of(record(done), TODAY).sets == 3


def test_a_change_has_its_cause() -> None:
    eased = session(ago(1), 8, 8, way="ease")
    assert week_of(record(session(ago(25), 8, 8, 8), eased), TODAY).changes[0].cause == "layoff"
    assert week_of(record(session(ago(4), 8, 7, 6), eased), TODAY).changes[0].cause == "misses"
    sore = Lifter(aches=(Ache("knee", ago(2), "left", 5.0),))
    assert week_of(record(GOOD, eased, lifter=sore), TODAY).changes[0].cause == "ache"


names = st.sampled_from(sorted(EXERCISES))
standings = st.builds(
    Standing,
    names,
    st.floats(1, 400),
    st.floats(1, 200),
    st.floats(200, 500),
    st.booleans(),
    st.one_of(st.none(), st.floats(1, 400)),
    st.just(ago(28)),
)
first_sets = st.just(TargetSet(Load("total", 60.0), (8, 12), 2.0))
verdicts = st.sampled_from(["reps", "load", "hold", "stop"])
proposals = st.builds(Proposal, names, verdicts, first_sets, st.text(max_size=80))


@settings(deadline=None, max_examples=60)
@given(st.lists(names, max_size=30, unique=True), st.lists(standings, max_size=12), st.lists(proposals, max_size=12))
def test_a_week_is_never_longer_than_its_law(some: list[str], was: list[Standing], next_: list[Proposal]) -> None:
    done = {
        name: (Session(ago(1), (SetAct(name, Load("total", 60.0), 8, rir=1.0, form="loose"),) * 4, GOOD.target),)
        for name in some
    }
    aches = tuple(Ache("lower-back", ago(n), "left", 4.0) for n in range(6))
    base = record(lifter=Lifter(aches=aches), held="chest", standings=tuple(was), proposals=tuple(next_))
    text = desk.week(VOICE, week_of(replace(base, sessions=done), TODAY))
    assert 0 < len(text) < desk.MOST
    assert text.startswith("Mira, 3 March to 9 March: ")


def test_a_morning_word_fits_a_message_with_a_hundred_clients() -> None:
    some = [replace(stall(3), name=f"Client number {n}") for n in range(100)]
    text = desk.attention(VOICE, concerns(some, lambda _: TODAY), 120, TODAY)
    assert len(text) < 4096
    assert text.startswith("100 need a word.")
    assert text.endswith("The other 20 are on course.")


def test_an_empty_morning_says_so_in_one_line() -> None:
    assert desk.attention(VOICE, (), 6, TODAY) == "Nobody needs a word today. All 6 are on course."
    assert "\n" not in desk.attention(VOICE, (), 1, TODAY)


@pytest.mark.parametrize("case", CASES, ids=[case[0] for case in CASES])
def test_every_concern_has_its_line(case: tuple[str, Record, str | None]) -> None:
    found = concern_of(case[1], TODAY)
    if found is not None:
        line = desk.concern(VOICE, found, TODAY)
        assert line.startswith("Mira: ")
        assert "{" not in line
        assert "\n" not in line


def test_the_numbers_of_the_desk_lie_in_their_range_and_name_their_sources() -> None:
    for row in DESK.values():
        assert row.low <= row.value <= row.high, row.key
        assert row.sources
        assert set(row.sources) <= set(SOURCES), row.key
    assert desk_value("sets.low") < desk_value("sets.high")
