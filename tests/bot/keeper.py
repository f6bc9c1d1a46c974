"""A book kept in memory: applies outcomes as a store would, so that core alone can hold a conversation."""

from dataclasses import replace
from datetime import datetime

from core.model.acts import Act
from core.model.book import Book, Incoming, Kept
from core.model.outcome import Keep, Outcome

FIRST_ID = 1


def kept_after(book: Book, incoming: Incoming, outcome: Outcome, now: datetime) -> Book:
    """The book once the outcome of this message is carried out."""
    if incoming.edit:
        book = _superseded(book, incoming.number)
    for one in outcome.replace:
        book = replace(book, kept=_replaced(book.kept, one.id, one.act))
    for keep in outcome.keep:
        book = replace(book, kept=_with(book.kept, keep, incoming.number, now))
    targets = dict(book.targets)
    for given in outcome.given:
        targets.pop(given.exercise, None)
        if given.target is not None:
            targets[given.exercise] = given.target
    today = now.astimezone(book.profile.zone).date()
    once = next((one.plan for one in outcome.planned if one.on == today), book.planned_for_today)
    return replace(
        book,
        targets=targets,
        pending=outcome.pending or (None if outcome.answered else book.pending),
        lifter=outcome.lifter or book.lifter,
        hold=outcome.hold or book.hold,
        planned_for_today=once,
    )


def _superseded(book: Book, message: int) -> Book:
    kept = tuple(one for one in book.kept if one.message != message)
    pending = book.pending if book.pending is None or book.pending.message != message else None
    return replace(book, kept=kept, pending=pending)


def _replaced(kept: tuple[Kept, ...], key: int, act: Act | None) -> tuple[Kept, ...]:
    assert any(one.id == key for one in kept), f"no such act: {key}"
    changed = (replace(one, act=act) if one.id == key and act is not None else one for one in kept)
    return tuple(one for one in changed if one.id != key or act is not None)


def _with(kept: tuple[Kept, ...], keep: Keep, number: int, now: datetime) -> tuple[Kept, ...]:
    message = number if keep.message is None else keep.message
    key = max((one.id for one in kept), default=FIRST_ID - 1) + 1
    new = Kept(key, keep.act, keep.on, now, message)
    before = tuple(one for one in kept if one.message <= message)
    return (*before, new, *(one for one in kept if one.message > message))
