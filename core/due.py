"""TIME, as a question: what is due, when, and is it still worth saying? Schedules and now in; days and instants out.

Wall time and zone are the truth; instants are made from them each time. It reads no clock and knows no zone names.
"""

from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta, tzinfo
from typing import Final, Literal

from core.model.book import Profile
from core.model.outcome import AgendaChange, DayPlan
from core.model.plan import Plan

MISSED_AT: Final = time(9, 0)
"""A missed session is asked about next morning, not before this local time. Choice of ours."""

SUMMARY_WEEKDAY: Final = 6
SUMMARY_AT: Final = time(18, 0)
"""A week closes on Sunday evening unless the lifter likes another day. Choice of ours."""

SEARCHED: Final = 9
"""Days searched for the next one of a weekly schedule: a week and a day on either side of it."""

LATEST: Final[Mapping[str, timedelta]] = {
    "missed": timedelta(hours=12),
    "recap": timedelta(hours=24),
    "summary": timedelta(hours=24),
}
"""How late each kind is still said. A prompt is said until its session starts, whenever that is."""

HEEDS_QUIET: Final = frozenset({"prompt", "missed", "recap", "summary"})
"""Kinds that wait for the end of quiet hours. Alarms are replies and never wait; word that a rest is over answers a set
of minutes ago, and was asked for."""

Verdict = Literal["say", "wait", "drop"]


@dataclass(frozen=True, slots=True)
class Judgement:
    """What to do with a due row: say it, wait until ``until``, or drop it."""

    verdict: Verdict
    until: datetime | None = None


def instant(on: date, at: time, zone: tzinfo) -> datetime:
    """A local time as UTC. Said twice (autumn): the first. Not on the clock (spring): moved on by the gap."""
    return datetime.combine(on, at, tzinfo=zone).astimezone(UTC)


def next_fire(after: datetime, weekdays: Collection[int], at: time, zone: tzinfo) -> tuple[date, datetime] | None:
    """The next local day of the schedule whose instant is later than ``after`` (UTC), with that instant."""
    first = after.astimezone(zone).date() - timedelta(days=1)
    for ahead in range(SEARCHED + 1):
        on = first + timedelta(days=ahead)
        if on.weekday() in weekdays and (due := instant(on, at, zone)) > after and _happens(on, zone):
            return on, due
    return None


def _happens(on: date, zone: tzinfo) -> bool:
    """Whether that day is on the zone's calendar: a zone that crosses the date line leaves one out."""
    return instant(on, time(12), zone).astimezone(zone).date() == on


def is_quiet(now: datetime, profile: Profile) -> bool:
    """Whether the lifter is to be left alone now."""
    local = now.astimezone(profile.zone).time()
    start, end = profile.quiet_from, profile.quiet_to
    if start <= end:
        return start <= local < end
    return local >= start or local < end


def quiet_end(now: datetime, profile: Profile) -> datetime:
    """When the quiet hours that ``now`` lies in are over."""
    found = next_fire(now, range(7), profile.quiet_to, profile.zone)
    return found[1] if found else now


def prompt_for(profile: Profile, plan: Plan, after: datetime) -> AgendaChange | None:
    """The next pre-session prompt: the lead before the session; if that is in quiet hours, before they begin.

    A session early in the morning is so announced the evening before. Each has its own local day, that of the session.
    """
    first = after.astimezone(profile.zone).date() - timedelta(days=1)
    for ahead in range(SEARCHED + 2):
        on = first + timedelta(days=ahead)
        day = plan.on(on.weekday())
        if day is None:
            continue
        row = prompt_on(profile, on, day.at)
        if row.due is not None and row.due > after:
            return row
    return None


def prompt_on(profile: Profile, on: date, at: time) -> AgendaChange:
    """The prompt of one session."""
    return AgendaChange("prompt", on, _spoken_before(instant(on, at, profile.zone), profile))


def replanned(profile: Profile, days: Iterable[DayPlan], after: datetime) -> tuple[AgendaChange, ...]:
    """Prompts that follow one-off changes of days: set where there is a session now, cancelled where there is none.

    A moved session that is missed too is not asked about: one kind question, never two.
    """
    rows = []
    for one in days:
        day = one.plan.on(one.on.weekday())
        row = prompt_on(profile, one.on, day.at) if day else AgendaChange("prompt", one.on, None)
        rows.append(row if row.due is None or row.due > after else AgendaChange("prompt", one.on, None))
    return tuple(rows)


def _spoken_before(start: datetime, profile: Profile) -> datetime:
    due = start - timedelta(minutes=profile.prompt_lead_minutes)
    if not is_quiet(due, profile):
        return due
    if not is_quiet(start, profile) and (end := quiet_end(due, profile)) < start:
        return end
    local = due.astimezone(profile.zone)
    began = local.date() if local.time() >= profile.quiet_from else local.date() - timedelta(days=1)
    return instant(began, profile.quiet_from, profile.zone) - timedelta(minutes=1)


def missed_for(profile: Profile, on: date) -> AgendaChange:
    """The question about a session of ``on``: the next morning, after quiet hours."""
    due = instant(on + timedelta(days=1), max(MISSED_AT, profile.quiet_to), profile.zone)
    return AgendaChange("missed", on, due)


def summary_for(profile: Profile, after: datetime) -> AgendaChange | None:
    """The next weekly summary."""
    found = next_fire(after, (SUMMARY_WEEKDAY,), SUMMARY_AT, profile.zone)
    return AgendaChange("summary", *found) if found else None


def ahead(profile: Profile, plan: Plan, after: datetime) -> tuple[AgendaChange, ...]:
    """The rows that keep the agenda going: the next prompt with its morning-after question, and the next summary.

    To be asked for after joining, a new plan, a new zone, and each time one of them was worked.
    """
    prompt = prompt_for(profile, plan, after)
    rows = (prompt, missed_for(profile, prompt.on) if prompt else None, summary_for(profile, after))
    return tuple(row for row in rows if row is not None)


def judge(kind: str, on: date, now: datetime, profile: Profile, plan: Plan) -> Judgement:
    """Is a row that has come due still worth saying now? ``plan`` is the one in force on that day."""
    if _unwanted(kind, on, now, profile):
        return Judgement("drop")
    if kind == "prompt":
        day = plan.on(on.weekday())
        if day is None or now >= instant(on, day.at, profile.zone):
            return Judgement("drop")
        return Judgement("say")
    due = _due(kind, on, profile)
    if due is not None and now - due > LATEST.get(kind, timedelta.max):
        return Judgement("drop")
    if kind in HEEDS_QUIET and is_quiet(now, profile):
        return Judgement("wait", quiet_end(now, profile))
    return Judgement("say")


def _unwanted(kind: str, on: date, now: datetime, profile: Profile) -> bool:
    """In a pause nothing is said, nor asked afterwards about its days; without reminders no session is spoken of."""
    away = profile.away_through
    if away is not None and (now.astimezone(profile.zone).date() <= away or (kind == "missed" and on <= away)):
        return True
    return not profile.reminders and kind in ("prompt", "missed")


def _due(kind: str, on: date, profile: Profile) -> datetime | None:
    if kind == "missed":
        return missed_for(profile, on).due
    if kind == "summary":
        return instant(on, SUMMARY_AT, profile.zone)
    return instant(on + timedelta(days=1), time(0), profile.zone) if kind == "recap" else None


def following(kind: str, profile: Profile, plan: Plan, now: datetime) -> tuple[AgendaChange, ...]:
    """The rows that follow one that was worked: after a prompt the next prompt, after a summary the next summary."""
    rows = ahead(profile, plan, now)
    wanted = {"prompt": ("prompt", "missed"), "summary": ("summary",)}.get(kind, ())
    return tuple(row for row in rows if row.kind in wanted)
