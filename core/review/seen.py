"""What can be read off a record: sessions kept, steps, changes, form and effort. Each a small question with one answer."""  # noqa: E501

from collections.abc import Iterator
from datetime import date, timedelta
from typing import Final, Literal, get_args

from core.evidence.aches import loads_part
from core.evidence.body import row_of
from core.evidence.desk import desk_value
from core.evidence.layoff import after
from core.evidence.numbers import value
from core.model.acts import SetAct
from core.model.lifter import Ache
from core.model.quantities import Load, Way
from core.model.target import Session, Target
from core.model.week import ChangeSeen, Honesty, MuscleLoad, Record, StepSeen
from core.model.working import count_of, working_sets

_WAYS: Final = frozenset(get_args(Way))
_SLACK_KG: Final = 0.05
"""The contract's tolerance for equal loads."""


def days_trained(record: Record, first: date, last: date) -> tuple[date, ...]:
    """Days with a set, in order."""
    return tuple(sorted({one.on for one in _sessions(record) if first <= one.on <= last and one.sets}))


def days_planned(record: Record, first: date, last: date) -> tuple[date, ...]:
    """Days on which the plan has a session: not before the plan starts or the client joined."""
    start = max(first, record.joined, record.plan.starts or first)
    span = (start + timedelta(days=n) for n in range((last - start).days + 1))
    return tuple(day for day in span if record.plan_on(day).on(day.weekday()) is not None)


def missed_in_a_row(record: Record, today: date) -> tuple[date, ...]:
    """Planned days before today without a set since the last day trained, called-off ones apart."""
    trained = days_trained(record, date.min, today)
    since = trained[-1] + timedelta(days=1) if trained else record.joined
    planned = days_planned(record, max(since, today - timedelta(days=28)), today - timedelta(days=1))
    return tuple(day for day in planned if day not in record.called_off)


def back_after(record: Record, on: date) -> date | None:
    """The last day trained before planned days were missed, where that day is the first one trained again."""
    before = days_trained(record, date.min, on - timedelta(days=1))
    if not before or on not in days_trained(record, on, on):
        return None
    planned = days_planned(record, before[-1] + timedelta(days=1), on - timedelta(days=1))
    missed = [day for day in planned if day not in record.called_off]
    return before[-1] if len(missed) >= desk_value("attention.missed") else None


def met(session: Session) -> bool:
    """The day's target was met: every set at its low end with the reserve asked, the load asked, form clean or unsaid."""  # noqa: E501
    target, work = session.target, working_sets(session.sets)
    if target is None or not target.sets or len(work) < len(target.sets):
        return False
    for asked, done in zip(target.sets, work, strict=False):
        count = count_of(done)
        if count is None or count < asked.reps[0] or done.form in ("fair", "loose"):
            return False
        rir = 0.0 if done.failed else done.rir
        if rir is not None and asked.rir is not None and rir < asked.rir - value("effort.half"):
            return False
        if _lighter(done.load, asked.load):
            return False
    return True


def _lighter(done: Load | None, asked: Load | None) -> bool:
    if done is None or asked is None or done.kg is None or asked.kg is None or done.kind != asked.kind:
        return False
    gap = asked.kg - done.kg
    return (-gap if asked.kind == "assist" else gap) > _SLACK_KG


def steps(record: Record, first: date, last: date) -> tuple[StepSeen, ...]:
    """Met targets in which one way went up."""
    found = [
        StepSeen(exercise, one.target.way, one.on)  # type: ignore[arg-type]  # the ways are the steps' own
        for exercise, some in record.sessions.items()
        for one in some
        if first <= one.on <= last and one.target is not None and one.target.way in _WAYS and met(one)
    ]
    return tuple(sorted(found, key=lambda one: (one.on, one.exercise)))


def changes(record: Record, first: date, last: date) -> tuple[ChangeSeen, ...]:
    """Targets that asked less, with the cause that the record shows."""
    found: list[ChangeSeen] = []
    for exercise, some in record.sessions.items():
        for before, one in zip((None, *some), some, strict=False):
            if first <= one.on <= last and one.target is not None and one.target.way in ("ease", "stop", "form"):
                cause, ache = _cause(record, exercise, one, before)
                if cause in ("misses", "other") and one.target.way == "ease" and record.plan.is_easier(one.on):
                    continue  # the week itself is the cause, and is told once
                cause = "form" if one.target.way == "form" else cause
                found.append(ChangeSeen(exercise, one.target.way, one.on, cause, ache if cause == "ache" else None))
    return tuple(sorted(found, key=lambda one: (one.on, one.exercise)))


def _cause(
    record: Record, exercise: str, one: Session, before: Session | None
) -> tuple[Literal["ache", "layoff", "misses", "form", "other"], Ache | None]:
    ache = worst_ache(record, exercise, one.on)
    if ache is not None:
        return "ache", ache
    if before is not None and after((one.on - before.on).days).load_factor < 1.0:
        return "layoff", None
    return ("misses" if before is not None and not met(before) else "other"), None


def worst_ache(record: Record, exercise: str, on: date) -> Ache | None:
    """The ache from the easing level on that eased this exercise on that day, the newest word on each part."""
    stale = timedelta(days=value("ache.stale_days"))
    newest = {(ache.where, ache.side): ache for ache in record.lifter.aches if timedelta(0) <= on - ache.on <= stale}
    row = row_of(exercise)
    bad = (
        one for one in newest.values() if (one.level or 0.0) >= value("ache.ease_level") and loads_part(row, one.where)
    )
    return max(bad, key=lambda one: (one.level or 0.0, one.on), default=None)


def stalled(some: tuple[Session, ...]) -> int:
    """How many sessions in a row, up to the last, had the same target; 0 when the last one was met and moves on.

    What waits for form is no stall.
    """
    if not some or some[-1].target is None or met(some[-1]) or some[-1].target.way == "form":
        return 0
    if any(act.form in ("fair", "loose") for act in some[-1].sets):
        return 0
    asked = _asked(some[-1].target)
    count = 0
    for one in reversed(some):
        if one.target is None or _asked(one.target) != asked:
            break
        count += 1
    return count


def _asked(target: Target) -> tuple[object, ...]:
    return tuple((one.load, one.reps, one.tempo, one.range, one.rest_s) for one in target.sets)


def honesty(record: Record, first: date, last: date) -> Honesty:
    """Words on form, and words on effort that cannot be right."""
    form_said = form_off = 0
    fits: dict[date, bool] = {}
    for one in _sessions(record):
        if not first <= one.on <= last:
            continue
        work = working_sets(one.sets)
        said = [act.form for act in work if act.form is not None]
        form_said += len(said)
        form_off += sum(form != "clean" for form in said)
        checked = _effort_fits(work)
        if checked is not None:
            fits[one.on] = fits.get(one.on, True) and checked
    return Honesty(form_said, form_off, len(fits), sum(not fit for fit in fits.values()))


def _effort_fits(work: tuple[SetAct, ...]) -> bool | None:
    """Within a day a set cannot show many more in hand than one before it at the same load; None: nothing to compare."""  # noqa: E501
    seen: dict[Load | None, float] = {}
    fits: bool | None = None
    for act in work:
        count = count_of(act)
        if act.rir is None or count is None or act.tempo is not None:
            continue
        whole = count + act.rir
        if act.load in seen:
            fits = fits is not False and whole - seen[act.load] < desk_value("attention.effort_reps")
        seen[act.load] = min(whole, seen.get(act.load, whole))
    return fits


def muscle_sets(record: Record, first: date, last: date, span: tuple[float, float]) -> tuple[MuscleLoad, ...]:
    """Working sets for each muscle that the plan or the week trains itself; a set where it only helps counts half."""
    counted: dict[str, float] = {}
    meant = [item.exercise for day in record.plan.days for item in day.exercises]
    for exercise, some in record.sessions.items():
        done = sum(len(working_sets(one.sets)) for one in some if first <= one.on <= last)
        _count(counted, exercise, float(done))
        meant += [exercise] if done else []
    for exercise in meant:
        _count(counted, exercise, 0.0)
    direct = {muscle for exercise in meant for muscle in row_of(exercise).main_muscles}
    order = sorted(direct, key=lambda muscle: (-counted[muscle], muscle))
    return tuple(_load(record, muscle, counted[muscle], span) for muscle in order)


def _load(record: Record, muscle: str, sets: float, span: tuple[float, float]) -> MuscleLoad:
    asked = record.sets_asked.get(muscle, span)
    return MuscleLoad(muscle, sets, _side(sets, asked), asked, own=muscle in record.sets_asked)


def _count(counted: dict[str, float], exercise: str, sets: float) -> None:
    row = row_of(exercise)
    for muscle in row.main_muscles:
        counted[muscle] = counted.get(muscle, 0.0) + sets
    for muscle in row.side_muscles if sets else ():
        counted[muscle] = counted.get(muscle, 0.0) + desk_value("sets.indirect") * sets


def _side(sets: float, span: tuple[float, float]) -> Literal["under", "inside", "over"]:
    if sets < span[0]:
        return "under"
    return "over" if sets > span[1] else "inside"


def sets_done(record: Record, first: date, last: date) -> int:
    """Working sets."""
    return sum(len(working_sets(one.sets)) for one in _sessions(record) if first <= one.on <= last)


def _sessions(record: Record) -> Iterator[Session]:
    for some in record.sessions.values():
        yield from some
