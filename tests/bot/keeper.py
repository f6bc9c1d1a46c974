"""A book kept in memory: applies outcomes as a store would, so that core alone can hold a conversation over weeks.

Days that are over are folded into progress, as the real store folds them.
"""

from dataclasses import dataclass, field, replace
from datetime import date, datetime, timedelta

from core.advising import absorb, begin, dump, load
from core.flow.day import acts_of, aim_of, session_day, sets_on
from core.flow.mends import UNDO_WITHIN
from core.model.acts import Act, Alarm, SetAct
from core.model.book import Book, Ended, Incoming, Kept
from core.model.outcome import Keep, Outcome
from core.model.plan import Plan
from core.model.target import Session, Target

REACHES_BACK = timedelta(days=8)


@dataclass(frozen=True, slots=True)
class Change:
    """What a message changed of another one's act."""

    by: int
    at: datetime
    before: Kept
    after: Kept | None


@dataclass(slots=True)
class Keeper:
    """One lifter's book, and what a store holds beside it: old targets, changed days, the agenda, the notes."""

    book: Book
    day: date
    targets: dict[tuple[str, date], Target | None] = field(default_factory=dict)
    days: dict[date, Plan] = field(default_factory=dict)
    agenda: dict[tuple[str, date], datetime] = field(default_factory=dict)
    notes: list[str] = field(default_factory=list)
    everything: list[Kept] = field(default_factory=list)
    changed: list["Change"] = field(default_factory=list)
    next_id: int = 1

    def at(self, now: datetime) -> Book:
        """The book as it stands at an instant: what lies before its day is history."""
        self.day = session_day(replace(self.book, kept=tuple(self.everything)), now)
        targets = {name: one for (name, on), one in self.targets.items() if on == self.day and one is not None}
        self.book = replace(
            self.book,
            kept=tuple(one for one in self.everything if one.on >= self.day - REACHES_BACK),
            targets=targets,
            planned_for_today=self.days.get(self.day),
            changed_days={on: plan for on, plan in self.days.items() if on > self.day},
            progress=self._folded(),
            usual={**self.book.usual, **self._usual()},
            ended=self._ended(now),
        )
        return self.book

    def _usual(self) -> dict[str, float]:
        past = (one.act for one in self.everything if isinstance(one.act, SetAct) and one.on < self.day)
        return {act.exercise: act.load.kg for act in past if act.exercise and act.load and act.load.kg}

    def _folded(self) -> dict[str, str]:
        book = replace(self.book, kept=tuple(self.everything))
        sets = [(kept.on, kept.act) for kept in self.everything if isinstance(kept.act, SetAct)]
        past = sorted({(on, act.exercise) for on, act in sets if on < self.day and act.exercise is not None})
        folded: dict[str, str] = {}
        for on, exercise in past:
            session = Session(on, acts_of(sets_on(book, on, exercise)), self.targets.get((exercise, on)))
            progress = load(folded[exercise]) if exercise in folded else begin(book.lifter, exercise)
            folded[exercise] = dump(absorb(progress, book.lifter, aim_of(book, on, exercise), session))
        return folded

    def reopen(self, message: int) -> None:
        """Before a message is read anew: what it had changed of other messages stands as before."""
        for one in reversed([one for one in self.changed if one.by == message]):
            if one.after is None:
                self._insert(one.before)
            else:
                self.everything = [one.before if kept == one.after else kept for kept in self.everything]
        self.changed = [one for one in self.changed if one.by != message]

    def _ended(self, now: datetime) -> tuple[Ended, ...]:
        """What was changed a moment ago and was not changed again."""
        chains: dict[tuple[int, int], Change] = {}
        for one in self.changed:
            first = chains.get((one.by, one.before.id), one)
            chains[one.by, one.before.id] = replace(one, before=first.before)
        alive = [one for one in chains.values() if one.after is None or one.after in self.everything]
        return tuple(
            Ended(one.before, one.by, one.at, one.after.id if one.after else None)
            for one in alive
            if now - one.at <= UNDO_WITHIN
        )

    def apply(self, outcome: Outcome, incoming: Incoming | None, now: datetime) -> None:
        """Carry out an outcome."""
        number = incoming.number if incoming else 0
        if incoming is not None and incoming.edit:
            self.everything = [one for one in self.everything if one.message != number]
            self.changed = [one for one in self.changed if one.before.message != number]
        if outcome.taken_back is not None:
            self.reopen(outcome.taken_back)
            gone = [one for one in self.everything if one.message == outcome.taken_back]
            self.everything = [one for one in self.everything if one not in gone or isinstance(one.act, Alarm)]
        for one in outcome.replace:
            self._replace(one.id, one.act, number, now)
        for keep in outcome.keep:
            self._keep(keep, number, now)
        for given in outcome.given:
            self.targets[given.exercise, given.on] = given.target
        for day in outcome.planned:
            self.days[day.on] = day.plan
        for row in outcome.agenda:
            self.agenda.pop((row.kind, row.on), None)
            if row.due is not None:
                self.agenda[row.kind, row.on] = row.due
        self.notes += outcome.notes
        book = self.book
        pending = outcome.pending or (None if outcome.answered else book.pending)
        lifter, hold = outcome.lifter or book.lifter, outcome.hold or book.hold
        self.book = replace(book, pending=pending, lifter=lifter, hold=hold)

    def _replace(self, key: int, act: Act | None, number: int, now: datetime) -> None:
        before = next(one for one in self.everything if one.id == key)
        after = None if act is None else replace(before, act=act)
        self.changed.append(Change(number, now, before, after))
        stands = [] if after is None else [after]
        at = self.everything.index(before)
        self.everything = [*self.everything[:at], *stands, *self.everything[at + 1 :]]

    def _keep(self, keep: Keep, number: int, now: datetime) -> None:
        message = number if keep.message is None else keep.message
        self._insert(Kept(self.next_id, keep.act, keep.on, now, message))
        self.next_id += 1

    def _insert(self, new: Kept) -> None:
        before = [one for one in self.everything if (one.message, one.id) <= (new.message, new.id)]
        self.everything = [*before, new, *(one for one in self.everything if one not in before)]
