"""Targets under the coach's hand: what was ordered, laid over a plan and a lifter. Decides no target itself."""

from collections.abc import Iterable
from dataclasses import dataclass, replace
from datetime import date
from typing import Literal

from core.evidence.aches import loads_part
from core.evidence.body import row_of
from core.model.book import Book
from core.model.plan import Plan, Planned
from core.model.quantities import Way
from core.model.target import Target

Kind = Literal["ask", "hold", "no_heavier", "ways", "fixed", "sets"]


@dataclass(frozen=True, slots=True)
class Rein:
    """One order in force, of one exercise, of all that load a body part, or of all.

    ``ways`` are those that go first (kind ways); ``target`` is the one set by hand (kind fixed); ``sets`` are asked in
    a week of the muscle in ``part``, or of each (kind sets); ``until`` is the day from which it no longer holds.
    """

    kind: Kind
    exercise: str | None = None
    part: str | None = None
    ways: tuple[Way, ...] = ()
    target: Target | None = None
    until: date | None = None
    sets: tuple[int, int] | None = None

    def concerns(self, exercise: str) -> bool:
        """Whether it is about that exercise."""
        if self.exercise is not None:
            return self.exercise == exercise
        return self.part is None or loads_part(row_of(exercise), self.part)


def laid_over(book: Book, reins: Iterable[Rein], on: date) -> Book:
    """The book as the coach's hand lets it stand on that day."""
    live = [one for one in reins if one.until is None or on < one.until]
    if not live:
        return book
    everything = any(one.kind == "no_heavier" and one.exercise is None and one.part is None for one in live)
    fixed = {one.exercise: one.target for one in live if one.kind == "fixed" and one.exercise and one.target}
    lifter = replace(book.lifter, no_heavier=True) if everything else book.lifter
    once = book.planned_for_today
    return replace(
        book,
        lifter=lifter,
        plan=ruled(book.plan, live),
        planned_for_today=ruled(once, live) if once else once,
        fixed=fixed,
    )


def ruled(plan: Plan, reins: Iterable[Rein]) -> Plan:
    """The plan with the ways that the orders leave."""
    some = tuple(reins)
    days = (replace(day, exercises=tuple(_ruled(item, some) for item in day.exercises)) for day in plan.days)
    return replace(plan, days=tuple(days))


def _ruled(item: Planned, reins: tuple[Rein, ...]) -> Planned:
    ways = item.aim.ways
    for one in reins:
        if one.concerns(item.exercise):
            ways = _left(one, ways)
    return item if ways == item.aim.ways else replace(item, aim=replace(item.aim, ways=ways))


def _left(rein: Rein, ways: tuple[Way, ...]) -> tuple[Way, ...]:
    if rein.kind in ("ask", "hold"):
        return ()
    if rein.kind == "no_heavier":
        return tuple(way for way in ways if way != "load")
    if rein.kind == "ways":
        return ordered(ways, rein.ways)
    return ways


def ordered(ways: tuple[Way, ...], first: tuple[Way, ...]) -> tuple[Way, ...]:
    """The ways with those first, in that order; a way named first is allowed from then on."""
    return (*first, *(way for way in ways if way not in first))
