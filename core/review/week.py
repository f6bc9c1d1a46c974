"""The door for a week: one client's record in, the facts of seven days out."""

from datetime import date, timedelta

from core.evidence.desk import desk_value
from core.model.week import Record, WeekFacts
from core.review import seen


def week_of(
    record: Record, last: date, span: tuple[float, float] | None = None, *, still_to_come: bool = False
) -> WeekFacts:
    """The seven days that end on ``last``. ``span``: the coach's range of weekly sets for a muscle.

    ``still_to_come``: the session of the last day may yet be done, so that without a set it is not counted as planned.
    """
    first, middle = last - timedelta(days=6), last - timedelta(days=3)
    planned = seen.days_planned(record, first, last)
    trained = seen.days_trained(record, first, last)
    if still_to_come and last not in trained:
        planned = tuple(day for day in planned if day != last)
    if span is None:
        span = record.sets_asked.get("") or (desk_value("sets.low"), desk_value("sets.high"))
    return WeekFacts(
        name=record.name,
        first=first,
        last=last,
        kept=len(trained),
        planned=len(planned),
        sets=seen.sets_done(record, first, last),
        steps=seen.steps(record, first, last),
        standings=record.standings,
        muscles=seen.muscle_sets(record, first, last, span),
        span=span,
        honesty=seen.honesty(record, first, last),
        aches=tuple(ache for ache in record.lifter.aches if first <= ache.on <= last),
        changes=seen.changes(record, first, last),
        proposals=record.proposals,
        held=record.held,
        has_plan=bool(record.plan.days),
        heard=_silent_since(record, first, last),
        easier=record.plan.is_easier(middle),
        easier_next=record.plan.is_easier(middle + timedelta(weeks=1)),
    )


def _silent_since(record: Record, first: date, last: date) -> date | None:
    """The last day with a word, where none fell into the week; an ache is a word as well."""
    told = [ache.on for ache in record.lifter.aches if ache.on <= last]
    heard = max([*told, *([record.heard] if record.heard is not None else [])], default=None)
    return heard if heard is not None and heard < first else None
