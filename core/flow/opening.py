"""How a pass begins: the scene for a message or for the clock. It may not know what will be done in it."""

from dataclasses import replace
from datetime import date, datetime

from core.flow import day
from core.flow.body import without_effects
from core.flow.scene import Adviser, Scene
from core.model.acts import SetAct
from core.model.book import Book, Incoming, Kept


def of_message(incoming: Incoming, book: Book, now: datetime, adviser: Adviser) -> Scene:
    """The scene of a message. An edit begins from the book without what its message had said before."""
    on = day.session_day(book, now)
    before = _of(book, incoming.number) if incoming.edit else ()
    came = before[0].at if before else incoming.first_came if incoming.edit else None
    at = came or now
    then = day.session_day(replace(book, kept=_earlier(book, incoming.number)), came) if came else on
    scene = Scene(
        book=replace(book, kept=tuple(kept for kept in book.kept if kept not in before)),
        now=now,
        at=at,
        on=then,
        live=then == on,
        message=incoming.number,
        came=incoming.number,
        adviser=adviser,
        edited=incoming.edit,
        words=incoming.text,
        gone=tuple(kept.act for kept in before if isinstance(kept.act, SetAct)),
    )
    return without_effects(scene, before)


def of_clock(on: date | None, book: Book, now: datetime, adviser: Adviser) -> Scene:
    """The scene of a thing that has come due."""
    today = day.session_day(book, now)
    if on is not None and on != today:
        book = replace(book, planned_for_today=book.changed_days.get(on), targets={})
    return Scene(book=book, now=now, at=now, on=on or today, message=0, came=0, adviser=adviser)


def _of(book: Book, message: int) -> tuple[Kept, ...]:
    return tuple(kept for kept in book.kept if kept.message == message)


def _earlier(book: Book, message: int) -> tuple[Kept, ...]:
    return tuple(kept for kept in book.kept if kept.message < message)
