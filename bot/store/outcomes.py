"""Carries out an outcome: every change that an answer asks for, in the transaction of the message. Sends nothing."""

from typing import Final

from sqlalchemy import Connection, delete, insert, update

from bot.store import acts, agenda, progress
from bot.store.acts import Cause
from bot.store.shapes import ask_text, noun_text, target_text
from bot.store.tables import day_plan, hold, lifter, note, pending, target
from bot.store.upsert import put
from core.model.book import Hold, Pending
from core.model.outcome import Given, Outcome


def reopen(conn: Connection, cause: Cause) -> None:
    """Before an edited message is read anew: what it had changed of other messages stands as before."""
    progress.touch(conn, cause.person, acts.reopen(conn, cause))


def carry_out(conn: Connection, cause: Cause, outcome: Outcome, *, edit: bool = False) -> None:
    """Change what an answer changes. ``edit``: its earlier acts, notes and question go first."""
    touched: acts.Touched = set()
    if edit:
        touched |= acts.supersede(conn, cause)
        conn.execute(delete(note).where(note.c.message == cause.number))
        conn.execute(delete(pending).where(pending.c.person == cause.person, pending.c.message == cause.number))
    if outcome.taken_back is not None:
        touched |= acts.take_back(conn, Cause(cause.person, outcome.taken_back, cause.at))
    for one in outcome.replace:
        touched |= acts.replace(conn, cause, one.id, one.act)
    touched |= acts.keep(conn, cause, outcome.keep)
    for text in outcome.notes:
        values = {"person": cause.person, "message": cause.number, "at": cause.at, "text": text}
        conn.execute(insert(note).values(**values))
    _standing(conn, cause.person, outcome)
    progress.touch(conn, cause.person, touched)


def clear_hold(conn: Connection, who: int) -> bool:
    """The coach cleared it with the client. False: nothing was held."""
    return conn.execute(delete(hold).where(hold.c.person == who)).rowcount > 0


def _standing(conn: Connection, who: int, outcome: Outcome) -> None:
    if outcome.given:
        conn.execute(_GIVE, [_given(who, one) for one in outcome.given])
    if outcome.pending is not None:
        _ask(conn, who, outcome.pending)
    elif outcome.answered:
        conn.execute(delete(pending).where(pending.c.person == who))
    if outcome.lifter is not None:
        conn.execute(update(lifter).where(lifter.c.person == who).values(body=noun_text(outcome.lifter)))
    if outcome.hold is not None:
        _hold(conn, who, outcome.hold)
    for one in outcome.planned:
        put(conn, day_plan, person=who, on=one.on, body=noun_text(one.plan))
    for change in outcome.agenda:
        agenda.change(conn, who, change)


_GIVE: Final = insert(target)


def _given(who: int, one: Given) -> dict[str, object]:
    body = target_text(one.target) if one.target is not None else None
    return {"person": who, "exercise": one.exercise, "on": one.on, "body": body}


def _ask(conn: Connection, who: int, one: Pending) -> None:
    put(conn, pending, person=who, message=one.message, at=one.at, text=one.text, said=one.said, body=ask_text(one.ask))


def _hold(conn: Connection, who: int, one: Hold) -> None:
    put(conn, hold, person=who, sign=one.sign, since=one.since)
