"""When things are due: schedules across clock changes in every zone, quiet hours, lateness."""

from datetime import UTC, date, datetime, time, timedelta
from itertools import pairwise
from zoneinfo import ZoneInfo, available_timezones

import pytest

from core import due
from core.model.book import Profile
from core.model.outcome import DayPlan
from core.model.plan import Plan, TrainingDay

YEAR = 2026
TIMES = (time(0, 0), time(2, 30), time(3, 0), time(7, 0), time(23, 59))
BERLIN = ZoneInfo("Europe/Berlin")
MONDAY = date(2026, 3, 2)


def changes_of(zone: ZoneInfo) -> list[datetime]:
    """The days of the year after which the offset from UTC is another one."""
    noons = [datetime(YEAR, 1, 1, 12, tzinfo=UTC) + timedelta(days=n) for n in range(365)]
    return [
        one
        for one, following in pairwise(noons)
        if one.astimezone(zone).utcoffset() != following.astimezone(zone).utcoffset()
    ]


def test_no_day_is_missed_and_none_comes_twice_in_any_zone_at_either_change() -> None:
    checked = 0
    for name in sorted(available_timezones()):
        zone = ZoneInfo(name)
        for change in changes_of(zone):
            for at in TIMES:
                fired = fired_days(change - timedelta(days=3), change + timedelta(days=3), at, zone)
                days = [on for on, _ in fired]
                expected = [days[0] + timedelta(days=n) for n in range(len(days))]
                assert days == expected, (name, at)
                assert all(later > earlier for (_, earlier), (_, later) in pairwise(fired))
                assert len(days) >= 5, (name, at)
                checked += 1
    assert checked > 1000


def fired_days(start: datetime, end: datetime, at: time, zone: ZoneInfo) -> list[tuple[date, datetime]]:
    fired = []
    after = start
    while True:
        found = due.next_fire(after, range(7), at, zone)
        assert found is not None
        if found[1] > end:
            return fired
        fired.append(found)
        after = found[1]


def test_a_time_said_twice_is_its_first_and_a_skipped_one_moves_on_by_the_gap() -> None:
    assert due.instant(date(2026, 10, 25), time(2, 30), BERLIN) == datetime(2026, 10, 25, 0, 30, tzinfo=UTC)
    assert due.instant(date(2026, 3, 29), time(2, 30), BERLIN) == datetime(2026, 3, 29, 1, 30, tzinfo=UTC)


def test_a_zone_that_skips_a_whole_day_goes_on() -> None:
    apia = ZoneInfo("Pacific/Apia")  # 30 December 2011 did not happen there
    fired = fired_days(datetime(2011, 12, 28, tzinfo=UTC), datetime(2012, 1, 3, tzinfo=UTC), time(7), apia)
    instants = [at for _, at in fired]
    assert len(instants) == len(set(instants))
    assert date(2011, 12, 31) in [on for on, _ in fired]


def profile(**changes: object) -> Profile:
    return Profile("Tomas", BERLIN, **changes)  # type: ignore[arg-type]


def plan(at: time, weekday: int = 0) -> Plan:
    return Plan((TrainingDay(weekday, at, "Legs", ()),))


@pytest.mark.parametrize(
    ("at", "expected"),
    [
        (time(18, 30), datetime(2026, 3, 2, 17, 30, tzinfo=BERLIN)),  # the lead
        (time(7, 30), datetime(2026, 3, 2, 7, 0, tzinfo=BERLIN)),  # the lead lies in quiet hours: at their end
        (time(6, 0), datetime(2026, 3, 1, 21, 29, tzinfo=BERLIN)),  # the session itself does: the evening before
        (time(23, 0), datetime(2026, 3, 2, 21, 29, tzinfo=BERLIN)),  # late: before they begin
        (time(8, 0), datetime(2026, 3, 2, 7, 0, tzinfo=BERLIN)),  # just outside: quiet hours end at seven
    ],
)
def test_a_prompt_comes_before_its_session_and_out_of_quiet_hours(at: time, expected: datetime) -> None:
    row = due.prompt_on(profile(), MONDAY, at)
    assert row.on == MONDAY
    assert row.due == expected
    assert row.due is not None
    assert not due.is_quiet(row.due, profile())


def test_quiet_hours_hold_at_their_edges() -> None:
    def local(hour: int, minute: int) -> datetime:
        return datetime(2026, 3, 2, hour, minute, tzinfo=BERLIN).astimezone(UTC)

    assert not due.is_quiet(local(21, 29), profile())
    assert due.is_quiet(local(21, 30), profile())
    assert due.is_quiet(local(6, 59), profile())
    assert not due.is_quiet(local(7, 0), profile())
    by_day = profile(quiet_from=time(13), quiet_to=time(15))
    assert due.is_quiet(local(14, 0), by_day)
    assert not due.is_quiet(local(15, 0), by_day)
    assert due.quiet_end(local(23, 0), profile()) == datetime(2026, 3, 3, 7, 0, tzinfo=BERLIN)


def test_a_prompt_is_useless_once_its_session_has_begun() -> None:
    week = plan(time(18, 30))
    before = datetime(2026, 3, 2, 18, 29, tzinfo=BERLIN)
    assert due.judge("prompt", MONDAY, before, profile(), week).verdict == "say"
    assert due.judge("prompt", MONDAY, before + timedelta(minutes=1), profile(), week).verdict == "drop"
    assert due.judge("prompt", MONDAY, before, profile(), Plan()).verdict == "drop"


@pytest.mark.parametrize("kind", ["missed", "summary", "recap"])
def test_late_things_wait_out_quiet_hours_and_are_dropped_when_stale(kind: str) -> None:
    on = date(2026, 3, 1)
    at_night = datetime(2026, 3, 1, 23, 0, tzinfo=BERLIN)
    judged = due.judge(kind, on, at_night, profile(), plan(time(18)))
    assert judged == due.Judgement("wait", datetime(2026, 3, 2, 7, 0, tzinfo=BERLIN).astimezone(UTC))
    next_day = datetime(2026, 3, 2, 12, 0, tzinfo=BERLIN)
    assert due.judge(kind, on, next_day, profile(), plan(time(18))).verdict == "say"
    stale = datetime(2026, 3, 4, 12, 0, tzinfo=BERLIN)
    assert due.judge(kind, on, stale, profile(), plan(time(18))).verdict == "drop"


def test_the_agenda_goes_on_by_itself() -> None:
    now = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)
    rows = {row.kind: row for row in due.ahead(profile(), plan(time(18, 30)), now)}
    assert set(rows) == {"prompt", "missed", "summary"}
    assert rows["prompt"].on == rows["missed"].on == MONDAY
    assert rows["missed"].due == datetime(2026, 3, 3, 9, 0, tzinfo=BERLIN)
    assert rows["summary"].on.weekday() == due.SUMMARY_WEEKDAY
    worked = rows["prompt"].due
    assert worked is not None
    following = due.following("prompt", profile(), plan(time(18, 30)), worked)
    assert [(row.kind, row.on) for row in following] == [
        ("prompt", MONDAY + timedelta(days=7)),
        ("missed", MONDAY + timedelta(days=7)),
    ]
    assert due.following("recap", profile(), plan(time(18, 30)), worked) == ()


def test_nothing_planned_prompts_nothing() -> None:
    now = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)
    assert [row.kind for row in due.ahead(profile(), Plan(), now)] == ["summary"]


def test_a_session_moved_to_another_day_is_prompted_there_and_not_here() -> None:
    now = datetime(2026, 3, 2, 16, 30, tzinfo=UTC)
    tuesday = MONDAY + timedelta(days=1)
    days = (DayPlan(MONDAY, Plan()), DayPlan(tuesday, plan(time(18, 30), weekday=1)))
    rows = {(row.kind, row.on): row.due for row in due.replanned(profile(), days, now)}
    assert rows["prompt", MONDAY] is None
    assert rows["prompt", tuesday] == datetime(2026, 3, 3, 17, 30, tzinfo=BERLIN)
    assert set(rows) == {("prompt", MONDAY), ("prompt", tuesday)}


def test_a_change_of_zone_moves_the_instant_and_keeps_the_day() -> None:
    now = datetime(2026, 3, 1, 12, 0, tzinfo=UTC)
    here = due.prompt_for(profile(), plan(time(18, 30)), now)
    there = due.prompt_for(Profile("Tomas", ZoneInfo("America/New_York")), plan(time(18, 30)), now)
    assert here is not None
    assert there is not None
    assert here.on == there.on
    assert here.due is not None
    assert there.due == here.due + timedelta(hours=6)
