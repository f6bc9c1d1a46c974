"""Who needs a word, and in which order: a table of rows, each with its reason for standing where it does.

The rows are asked one after another for each client; the most urgent that applies is that client's line, and what is
merely pleasant is said only of somebody who needs nothing else.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Final

from core.evidence.desk import desk_value
from core.evidence.ladders import rung_above
from core.evidence.numbers import value
from core.model.week import OFFERED, Concern, Record
from core.review import seen


@dataclass(frozen=True, slots=True)
class Row:
    """One kind of concern. ``why_here`` is the reason for its place; ``when`` finds it in a record, or gives None.

    ``fresh``: whether it is worth saying again on this morning; else it is only called to mind.
    """

    id: str
    why_here: str
    when: Callable[[Record, date], Concern | None]
    dawn: Callable[[Record, date], Concern | None] | None = None
    """What stands for ``when`` in the morning word, where yesterday as a whole is told, each day once."""
    lasting: bool = False
    """It stays true for weeks: in the morning word it is said after a session that shows it, not every day."""
    fresh: Callable[[Record, Concern, date], bool] = lambda _record, _found, _today: True


def _alarm(record: Record, _today: date) -> Concern | None:
    held = record.held
    return Concern("alarm", record.name, sign=held) if held is not None and held != "screening" else None


def _ache(record: Record, today: date) -> Concern | None:
    recent = timedelta(days=desk_value("attention.ache_days"))
    latest = {(ache.where, ache.side): ache for ache in record.lifter.aches if ache.on <= today}
    bad = [
        ache
        for ache in latest.values()
        if (ache.level is None or ache.level >= value("ache.ease_level")) and today - ache.on <= recent
    ]
    worst = max(bad, key=lambda ache: (ache.level or 0.0, ache.on), default=None)
    return Concern("ache", record.name, ache=worst, on=worst.on) if worst else None


def _screening(record: Record, _today: date) -> Concern | None:
    return Concern("screening", record.name) if record.held == "screening" else None


def _waiting(record: Record, _today: date) -> Concern | None:
    if not record.waiting:
        return None
    return Concern("waiting", record.name, exercise=record.waiting[0], count=len(record.waiting))


def _missed(record: Record, today: date) -> Concern | None:
    missed = seen.missed_in_a_row(record, today)
    if len(missed) < desk_value("attention.missed"):
        return None
    return Concern("missed", record.name, count=len(missed), on=missed[0])


def _missed_yesterday(record: Record, _found: Concern, today: date) -> bool:
    missed = seen.missed_in_a_row(record, today)
    return bool(missed) and missed[-1] == today - timedelta(days=1)


def _first_this_week(record: Record, _found: Concern, today: date) -> bool:
    """One session since Monday: what lasts is said once a week, after the first that shows it."""
    yesterday = today - timedelta(days=1)
    return len(seen.days_trained(record, yesterday - timedelta(days=yesterday.weekday()), today)) <= 1


def _old_ache(record: Record, today: date) -> Concern | None:
    """An ache that nobody has spoken of for a week, while it still eases what is trained."""
    old = timedelta(days=desk_value("attention.ache_old_days"))
    since = today - timedelta(days=int(desk_value("attention.praise_days")))
    eased = (
        seen.worst_ache(record, exercise, one.on)
        for exercise, some in record.sessions.items()
        for one in some[-1:]
        if one.on >= since and one.target is not None and one.target.way in ("ease", "stop")
    )
    found = [one for one in eased if one is not None and today - one.on >= old]
    worst = max(found, key=lambda ache: ache.level or 0.0, default=None)
    return Concern("old_ache", record.name, ache=worst, on=worst.on) if worst is not None else None


def _stall(record: Record, today: date) -> Concern | None:
    since = today - timedelta(days=28)
    found = [
        (seen.stalled(some), exercise) for exercise, some in record.sessions.items() if some and some[-1].on >= since
    ]
    count, exercise = max(found, default=(0, ""))
    return (
        Concern("stall", record.name, exercise=exercise, count=count)
        if count >= desk_value("attention.stall")
        else None
    )


def _rung(record: Record, today: date) -> Concern | None:
    """A body exercise past the coach's range, met: nothing could be added, and there is a harder variant."""
    if record.lifter.no_heavier:
        return None
    since = today - timedelta(days=28)
    for item in (item for day in record.plan.days for item in day.exercises):
        last = next(reversed(record.sessions.get(item.exercise, ())), None)
        above = rung_above(item.exercise)
        if above is None or last is None or last.on < since or last.target is None or not seen.met(last):
            continue
        bare = all(one.load is not None and one.load.kind == "body" for one in last.target.sets)
        low = min((one.reps[0] for one in last.target.sets), default=0)
        if bare and low > item.aim.reps[1]:
            return Concern("rung", record.name, exercise=item.exercise, count=low, other=above)
    return None


def _window(today: date) -> date:
    return today - timedelta(days=int(desk_value("attention.window_days")))


def _form(record: Record, today: date) -> Concern | None:
    said = seen.honesty(record, _window(today), today)
    if said.form_said < desk_value("attention.form_sets"):
        return None
    share = said.form_off / said.form_said
    if share < desk_value("attention.form_share"):
        return None
    return Concern("form", record.name, count=said.form_off, more={"of": str(said.form_said)})


def _effort(record: Record, today: date) -> Concern | None:
    said = seen.honesty(record, _window(today), today)
    if said.effort_off < desk_value("attention.effort_days"):
        return None
    return Concern("effort", record.name, count=said.effort_off)


def _silence(record: Record, today: date) -> Concern | None:
    last = record.heard or record.joined
    days = (today - last).days
    if record.plan.days and not seen.missed_in_a_row(record, today):
        return None  # who trains once a week is silent for a week, and well
    return Concern("silence", record.name, count=days, on=last) if days >= desk_value("attention.silent_days") else None


def _back(record: Record, today: date) -> Concern | None:
    for on in (today, today - timedelta(days=1)):
        if found := _back_on(record, on):
            return found
    return None


def _back_yesterday(record: Record, today: date) -> Concern | None:
    return _back_on(record, today - timedelta(days=1))


def _back_on(record: Record, on: date) -> Concern | None:
    before = seen.back_after(record, on)
    return Concern("back", record.name, count=(on - before).days, on=before) if before is not None else None


def _praise(record: Record, today: date) -> Concern | None:
    return _praise_through(record, today, today)


def _praise_yesterday(record: Record, today: date) -> Concern | None:
    return _praise_through(record, today, today - timedelta(days=1))


def _praise_through(record: Record, today: date, last_day: date) -> Concern | None:
    since = today - timedelta(days=int(desk_value("attention.praise_days")))
    steps = seen.steps(record, since, last_day)
    if not steps:
        return None
    last = steps[-1]
    return Concern("praise", record.name, exercise=last.exercise, way=last.way, count=len(steps), on=last.on)


ROWS: Final = (
    Row("alarm", "A symptom may be an emergency; everything is held until somebody clears it.", _alarm),
    Row(
        "ache",
        "An ache from 4 of 10 changes what may be done at the next session.",
        _ache,
        fresh=lambda _record, found, today: found.on is not None and (today - found.on).days <= 1,
    ),
    Row("screening", "An answer at joining that a physician should see comes before any target.", _screening),
    Row("waiting", "A target that waits falls back by itself thirty minutes before the session.", _waiting),
    Row(
        "missed",
        "Two sessions in a row are the start of a gap; a question now is easier than a return.",
        _missed,
        fresh=_missed_yesterday,
    ),
    Row(
        "old_ache",
        "What an ache eases stays eased until somebody says how it is now.",
        _old_ache,
        fresh=_first_this_week,
    ),
    Row(
        "stall",
        "The same target again and again needs another way, and that is the coach's choice.",
        _stall,
        lasting=True,
        fresh=_first_this_week,
    ),
    Row(
        "rung",
        "Repetitions past the range pay little where a harder variant would go on, and the plan is the coach's.",
        _rung,
        lasting=True,
        fresh=_first_this_week,
    ),
    Row(
        "form",
        "Slipping form undoes what was gained, but the next session already holds the load.",
        _form,
        lasting=True,
        fresh=_first_this_week,
    ),
    Row(
        "effort",
        "Words on effort that cannot be right make every target less sure; it is not urgent.",
        _effort,
        lasting=True,
        fresh=_first_this_week,
    ),
    Row(
        "silence",
        "Somebody who says nothing for a week may have stopped; nothing is lost in a day.",
        _silence,
        fresh=lambda _record, found, _today: found.count % desk_value("attention.silent_days") == 0,
    ),
    Row(
        "back",
        "Who comes back after missed sessions is glad of a word, and nothing has to be done.",
        _back,
        dawn=_back_yesterday,
    ),
    Row("praise", "A step made is worth a word, after all that needs one.", _praise, dawn=_praise_yesterday),
)
"""Most urgent first."""

NEEDS: Final = tuple(row.id for row in ROWS if row.id not in OFFERED)
"""Rows that need a word; the others are offered."""


def concern_of(record: Record, today: date, *, morning: bool = False) -> Concern | None:
    """The most urgent concern about one client, if there is one. ``morning``: lasting ones only when they are fresh."""
    trained = bool(seen.days_trained(record, today - timedelta(days=1), today))
    for row in ROWS:
        when = row.dawn if morning and row.dawn is not None else row.when
        found = when(record, today) if trained or not (morning and row.lasting) else None
        if found is not None:
            before = today - timedelta(days=1)
            known = before > record.joined and row.when(record, before) is not None
            return replace(found, still=morning and known and not row.fresh(record, found, today))
    return None


def concerns(
    records: Iterable[Record], today: Callable[[Record], date], *, morning: bool = False
) -> tuple[Concern, ...]:
    """One line for each client who needs a word, the most urgent first, then by name.

    ``today`` gives the client's own day. ``morning``: for the daily word, where what lasts is not said every day.
    """
    order = {row.id: place for place, row in enumerate(ROWS)}
    found = [one for record in records if (one := concern_of(record, today(record), morning=morning)) is not None]
    return tuple(sorted(found, key=lambda one: (one.still, order[one.row], -one.count, one.name)))
