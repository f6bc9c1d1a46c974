"""The coach's desk at rest: plans with their history, what waits for a yes, reins, notes, words, hours, marks."""

import json
from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, time
from typing import Any, Final

from sqlalchemy import Connection, bindparam, delete, func, insert, select, update

from bot.store import plans
from bot.store.shapes import noun_of, noun_text, target_of, target_text
from bot.store.tables import act, hours, invite, mark, plan_version, question, rein, remark, word
from bot.store.upsert import put
from core.model.book import Book
from core.model.plan import Plan
from core.order.hand import Rein, laid_over

Json = dict[str, Any]


# Plans and their history


@dataclass(frozen=True, slots=True)
class Version:
    """One plan that was in force: who put it there, when, how."""

    id: int
    plan: Plan
    by: int | None
    at: datetime
    what: str


def put_in_force(conn: Connection, who: int, plan: Plan, by: int, at: datetime, what: str) -> None:
    """This plan is in force from now on; the one before it is kept."""
    if not versions(conn, who):
        before = plans.weekly(conn, who)
        if before.days:
            _version(conn, who, before, None, at, "earlier")
    plans.set_weekly(conn, who, plan)
    _version(conn, who, plan, by, at, what)


def _version(conn: Connection, who: int, plan: Plan, by: int | None, at: datetime, what: str) -> None:
    conn.execute(insert(plan_version).values(person=who, by=by, at=at, what=what, body=noun_text(plan)))


def versions(conn: Connection, who: int) -> list[Version]:
    """Every plan that was in force, the newest first."""
    rows = conn.execute(select(plan_version).where(plan_version.c.person == who).order_by(plan_version.c.id.desc()))
    return [Version(row.id, noun_of(Plan, row.body), row.by, row.at, row.what) for row in rows]


# What waits for a yes


@dataclass(frozen=True, slots=True)
class Question:
    """One question: who may answer it, whom it is about, what follows from a yes."""

    id: int
    asks: int
    about: int | None
    kind: str
    body: Json
    at: datetime
    until: datetime | None
    state: str


OPEN: Final = "open"


def ask(conn: Connection, asks: int, kind: str, body: Json, at: datetime, *, about: int | None = None) -> int:
    """A new question; one of the same kind and about the same person that still waited is passed over."""
    same = (question.c.asks == asks, question.c.kind == kind, question.c.about == about, question.c.state == OPEN)
    if kind != "target":
        conn.execute(update(question).where(*same).values(state="passed"))
    values = {"asks": asks, "about": about, "kind": kind, "body": json.dumps(body), "at": at, "state": OPEN}
    key: int = conn.execute(insert(question).values(**values).returning(question.c.id)).scalar_one()
    return key


def question_of(conn: Connection, key: int) -> Question | None:
    """The question with that key."""
    row = conn.execute(select(question).where(question.c.id == key)).one_or_none()
    return _question(row) if row else None


_OPEN: Final = (
    select(question).where(question.c.asks == bindparam("who"), question.c.state == OPEN).order_by(question.c.id.desc())
)
_OPEN_OF: Final = _OPEN.where(question.c.kind == bindparam("of"))


def open_questions(conn: Connection, asks: int, kind: str | None = None) -> list[Question]:
    """What waits for this person's answer, the newest first."""
    rows = conn.execute(_OPEN if kind is None else _OPEN_OF, {"who": asks} | ({} if kind is None else {"of": kind}))
    return [_question(row) for row in rows]


_ABOUT: Final = (
    select(question)
    .where(question.c.about.in_(bindparam("keys", expanding=True)))
    .where(question.c.kind == bindparam("of"), question.c.state == OPEN)
    .order_by(question.c.id)
)


def questions_about(conn: Connection, about: Iterable[int], kind: str) -> list[Question]:
    """Open questions of a kind about these people, oldest first."""
    return [_question(row) for row in conn.execute(_ABOUT, {"keys": list(about), "of": kind})]


def close(conn: Connection, key: int, state: str) -> bool:
    """Answer a question; False: it was answered before."""
    done = update(question).where(question.c.id == key, question.c.state == OPEN).values(state=state)
    return conn.execute(done).rowcount == 1


_LATER: Final = "later"
"""A plan that was agreed to and waits for its first day."""


def put_off(conn: Connection, key: int, about: int) -> None:
    """The plan of that question waits for its first day; another one that waited does so no more."""
    drop_put_off(conn, about)
    conn.execute(update(question).where(question.c.id == key).values(state=_LATER))


def drop_put_off(conn: Connection, about: int) -> None:
    """No plan waits for its first day any more."""
    waiting = (question.c.about == about, question.c.kind == "plan", question.c.state == _LATER)
    conn.execute(update(question).where(*waiting).values(state="passed"))


def put_off_plan(conn: Connection, about: int) -> Question | None:
    """The plan that waits for its first day, as the question that it was agreed to by."""
    waiting = (question.c.about == about, question.c.kind == "plan", question.c.state == _LATER)
    row = conn.execute(select(question).where(*waiting)).one_or_none()
    return _question(row) if row else None


def _question(row: Any) -> Question:
    return Question(row.id, row.asks, row.about, row.kind, json.loads(row.body), row.at, row.until, row.state)


# Reins


def take_in_hand(conn: Connection, who: int, one: Rein, by: int, at: datetime) -> None:
    """An order that holds from now on; one of the same kind for the same exercise or part ends."""
    end_reins(conn, who, at, (one.kind,), one.exercise, one.part)
    listed = one.sets or one.ways
    body = target_text(one.target) if one.target is not None else json.dumps(list(listed)) if listed else None
    values = {"person": who, "kind": one.kind, "exercise": one.exercise, "part": one.part, "body": body}
    conn.execute(insert(rein).values(**values, until=one.until, by=by, at=at))


def end_reins(
    conn: Connection, who: int, at: datetime, kinds: Iterable[str], exercise: str | None, part: str | None = None
) -> int:
    """Orders of these kinds end: of one exercise or part; without either, those of all exercises."""
    mine = (rein.c.person == who, rein.c.kind.in_(list(kinds)), rein.c.ended.is_(None))
    own = (rein.c.exercise.is_not_distinct_from(exercise), rein.c.part.is_not_distinct_from(part))
    if exercise is not None:
        own = (rein.c.exercise == exercise,)  # type: ignore[assignment]
    ended: int = conn.execute(update(rein).where(*mine, *own).values(ended=at)).rowcount
    return ended


def end_all_reins(conn: Connection, who: int, at: datetime, kinds: Iterable[str]) -> int:
    """Orders of these kinds end, whatever they are about."""
    mine = (rein.c.person == who, rein.c.kind.in_(list(kinds)), rein.c.ended.is_(None))
    ended: int = conn.execute(update(rein).where(*mine).values(ended=at)).rowcount
    return ended


_REINS: Final = select(rein).where(rein.c.person == bindparam("who"), rein.c.ended.is_(None)).order_by(rein.c.id)


def reins(conn: Connection, who: int, on: date) -> list[Rein]:
    """Orders that hold on that day. A target set by hand holds for the first session after it was set."""
    rows = conn.execute(_REINS, {"who": who}).all()
    return [_rein(row) for row in rows if row.kind != "fixed" or _fits(conn, row, on)]


def _fits(conn: Connection, row: Any, on: date) -> bool:
    sets = select(act.c.on, act.c.at).where(
        act.c.person == row.person, act.c.kind == "set", act.c.exercise == row.exercise, act.c.state == "kept"
    )
    done = conn.execute(sets.where(act.c.on >= row.at.date(), act.c.on <= on)).all()
    began_before = any(one.on == on and one.at < row.at for one in done)
    used = any(one.on < on and one.at > row.at for one in done)
    return not (began_before or used)


def _rein(row: Any) -> Rein:
    target = target_of(row.body) if row.kind == "fixed" else None
    ways = tuple(json.loads(row.body)) if row.kind == "ways" else ()
    sets = tuple(json.loads(row.body)) if row.kind == "sets" else None
    return Rein(row.kind, row.exercise, row.part, ways, target, row.until, sets)


_RANGES: Final = (
    select(rein.c.person, rein.c.part, rein.c.body)
    .where(rein.c.person.in_(bindparam("keys", expanding=True)), rein.c.kind == "sets", rein.c.ended.is_(None))
    .order_by(rein.c.id)
)


def set_ranges(conn: Connection, who: Iterable[int]) -> dict[int, dict[str, tuple[int, int]]]:
    """The weekly sets asked of muscles, by person and muscle; "" stands for each that has none of its own."""
    found: dict[int, dict[str, tuple[int, int]]] = {}
    for row in conn.execute(_RANGES, {"keys": list(who)}):
        low, high = json.loads(row.body)
        found.setdefault(row.person, {})[row.part or ""] = (low, high)
    return found


def in_hand(conn: Connection, who: int, book: Book, on: date) -> Book:
    """The book as the coach's orders let it stand."""
    found = reins(conn, who, on)
    return laid_over(book, found, on) if found else book


# Notes and words


def add_remark(conn: Connection, by: int, about: int, at: datetime, text: str) -> None:
    """A private note."""
    conn.execute(insert(remark).values(by=by, about=about, at=at, text=text))


def remarks(conn: Connection, by: int, about: int) -> list[tuple[datetime, str]]:
    """A coach's own notes on one client, oldest first."""
    query = select(remark.c.at, remark.c.text).where(remark.c.by == by, remark.c.about == about)
    return [(row.at, row.text) for row in conn.execute(query.order_by(remark.c.id))]


def add_word(conn: Connection, by: int, to: int, at: datetime, text: str) -> None:
    """Words from one person to another."""
    conn.execute(insert(word).values(by=by, to=to, at=at, text=text, answered=0))


def unanswered(conn: Connection, to: int, since: datetime) -> tuple[int, int] | None:
    """The last words to this person that have no answer yet: their key and who said them."""
    query = select(word.c.id, word.c.by).where(word.c.to == to, word.c.answered == 0, word.c.at >= since)
    row = conn.execute(query.order_by(word.c.id.desc()).limit(1)).one_or_none()
    return (row.id, row.by) if row else None


def answered(conn: Connection, key: int) -> None:
    """An answer was passed on."""
    conn.execute(update(word).where(word.c.id == key).values(answered=1))


# Invitations


def withdraw(conn: Connection, coach: int, name: str, now: datetime) -> int:
    """Open invitations of that name no longer let anyone in; says how many there were."""
    open_ = (invite.c.coach == coach, invite.c.used.is_(None), invite.c.expires > now, invite.c.kind == "client")
    rows = conn.execute(select(invite.c.hash, invite.c.name).where(*open_)).all()
    gone = [row.hash for row in rows if row.name.casefold() == name.casefold()]
    if gone:
        conn.execute(delete(invite).where(invite.c.hash.in_(gone)))
    return len(gone)


# Hours and marks


@dataclass(frozen=True, slots=True)
class Hours:
    """When the morning word and the weeks come, in the coach's own zone."""

    digest_at: time = time(7, 0)
    week_day: int = 6
    week_at: time = time(19, 0)


def hours_of(conn: Connection, who: int) -> Hours:
    """The coach's hours, the usual ones when none were said."""
    row = conn.execute(select(hours).where(hours.c.person == who)).one_or_none()
    if row is None:
        return Hours()
    return Hours(time.fromisoformat(row.digest_at), row.week_day, time.fromisoformat(row.week_at))


def set_hours(conn: Connection, who: int, wanted: Hours) -> None:
    """These hours from now on."""
    texts = {"digest_at": wanted.digest_at.isoformat("minutes"), "week_at": wanted.week_at.isoformat("minutes")}
    put(conn, hours, person=who, week_day=wanted.week_day, **texts)


def set_mark(conn: Connection, who: int, exercise: str, on: date, estimate: float) -> None:
    """Note an estimate, to compare later ones with."""
    put(conn, mark, person=who, exercise=exercise, on=on, estimate=estimate)


_LAST_MARK: Final = (
    select(mark.c.exercise, func.max(mark.c.on).label("on"))
    .where(mark.c.person == bindparam("who"), mark.c.on >= bindparam("oldest"), mark.c.on <= bindparam("newest"))
    .group_by(mark.c.exercise)
    .subquery()
)
_MARKS: Final = (
    select(mark)
    .join(_LAST_MARK, (mark.c.exercise == _LAST_MARK.c.exercise) & (mark.c.on == _LAST_MARK.c.on))
    .where(mark.c.person == bindparam("who"))
)


def marks(conn: Connection, who: int, oldest: date, newest: date) -> dict[str, tuple[float, date]]:
    """The newest mark of each exercise between two days."""
    return {
        row.exercise: (row.estimate, row.on)
        for row in conn.execute(_MARKS, {"who": who, "oldest": oldest, "newest": newest})
    }


def plan_of(conn: Connection, who: int) -> Plan:
    """The plan in force as it was written, without what the coach's hand took away."""
    return plans.weekly(conn, who)
