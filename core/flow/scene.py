"""What a pass has come to so far: the book as it would stand now, the changes to carry out, the facts to say.

A value; each step returns the next one. It may not know how advice is made: that comes in as a function.
"""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from datetime import date, datetime
from typing import Protocol

from core.flow import day
from core.model.acts import Act, SetAct
from core.model.book import Book, Ended, Kept
from core.model.facts import Alert, Fact
from core.model.lifter import Lifter
from core.model.outcome import AgendaChange, Given, Keep, Outcome, Replace
from core.model.target import Advice, Session, Target


class Adviser(Protocol):
    """How a flow asks for advice without importing its making: for today, or for the time after a session."""

    def today(self, book: Book, on: date, exercise: str, done: tuple[SetAct, ...]) -> Advice:
        """Advice for the sets still to do today."""
        ...

    def after(self, book: Book, session: Session, exercise: str, on: date) -> Advice:
        """Advice for ``on``, once ``session`` is history."""
        ...

    def plates(self, lifter: Lifter, exercise: str, target: Target) -> tuple[float, ...] | None:
        """The plates for one side of the bar in the first set, in the lifter's unit, where a bar is loaded."""
        ...

    def sources(self, rule: str) -> tuple[str, ...]:
        """The ids of the sources of a rule."""
        ...

    def met(self, sets: tuple[SetAct, ...], target: Target) -> bool:
        """Whether these sets met that target."""
        ...


@dataclass(frozen=True, slots=True)
class Scene:
    """One pass over one message, as far as it has come. ``on`` is the session's local day.

    Acts that are not in the store yet stand in the book with ids below zero.
    """

    book: Book
    now: datetime
    at: datetime
    """When the message first came; earlier than ``now`` for an edit."""
    on: date
    message: int
    """The message that acts belong to: the one that came, or for an answer the one that raised the question."""
    came: int
    adviser: Adviser
    edited: bool = False
    live: bool = True
    """The session's day is today. An edit of an older message mends that day and asks nothing of this one."""
    serial: int = 0
    """How many acts this pass has kept so far, those changed again included; gives the unstored ones their ids."""
    sure: bool = False
    """These acts are the answer to a question: don't ask it again."""
    words: str = ""
    gone: tuple[SetAct, ...] = ()
    """The sets that an edit takes out before it is read."""
    facts: tuple[Fact, ...] = ()
    alerts: tuple[Alert, ...] = ()
    out: Outcome = field(default_factory=Outcome)

    def says(self, *facts: Fact) -> "Scene":
        """With more to say."""
        return replace(self, facts=self.facts + facts)

    def alerts_coach(self, alert: Alert) -> "Scene":
        """With word to the coach, if there is one."""
        return replace(self, alerts=(*self.alerts, alert)) if self.book.profile.coach else self

    def keeps(self, act: Act, on: date | None = None) -> "Scene":
        """With one more act kept, for the session's day or another, in the order of its message's arrival."""
        new = Kept(-1 - self.serial, act, on or self.on, self.at, self.message)
        before = tuple(one for one in self.book.kept if one.message <= self.message)
        later = tuple(one for one in self.book.kept if one.message > self.message)
        return replace(self, serial=self.serial + 1, book=replace(self.book, kept=(*before, new, *later)))

    def changes(self, kept: Kept, act: Act | None) -> "Scene":
        """With a kept act changed in its place, or erased (None)."""
        now_kept = tuple(
            replace(one, act=act) if one.id == kept.id and act is not None else one
            for one in self.book.kept
            if one.id != kept.id or act is not None
        )
        scene = replace(self, book=replace(self.book, kept=now_kept))
        if kept.id < 0:
            return scene
        others = tuple(one for one in self.out.replace if one.id != kept.id)
        return replace(scene, out=replace(self.out, replace=(*others, Replace(kept.id, act))))

    def takes_back(self, message: int, gone: Iterable[Kept], back: Iterable[Ended]) -> "Scene":
        """With what a message recorded taken out, and what it had changed as it was before."""
        back = tuple(back)
        out = {kept.id for kept in gone}
        again = {one.heir: one.kept for one in back if one.heir is not None}
        standing = [again.get(kept.id, kept) for kept in self.book.kept if kept.id not in out]
        for kept in (one.kept for one in back if one.heir is None):
            standing.insert(_place_of(kept, standing), kept)
        book = replace(self.book, kept=tuple(standing), ended=tuple(one for one in self.book.ended if one not in back))
        return replace(self, book=book, out=replace(self.out, taken_back=message))

    def gives(self, exercise: str, target: Target | None) -> "Scene":
        """With a target put in force for the session's day, or taken back (None)."""
        targets = {name: one for name, one in self.book.targets.items() if name != exercise}
        if target is not None:
            targets[exercise] = target
        given = tuple(one for one in self.out.given if one.exercise != exercise)
        return replace(
            self,
            book=replace(self.book, targets=targets),
            out=replace(self.out, given=(*given, Given(exercise, self.on, target))),
        )

    def makes(self, lifter: Lifter) -> "Scene":
        """With the lifter changed."""
        return replace(self, book=replace(self.book, lifter=lifter), out=replace(self.out, lifter=lifter))

    def plans(self, *rows: AgendaChange) -> "Scene":
        """With rows of the agenda set or cancelled; a later row of the same kind and day stands."""
        keys = {(row.kind, row.on) for row in rows}
        kept = tuple(row for row in self.out.agenda if (row.kind, row.on) not in keys)
        return replace(self, out=replace(self.out, agenda=(*kept, *rows)))

    def outcome(self) -> Outcome:
        """The changes, those acts included that the book holds and the store does not."""
        new = (kept for kept in self.book.kept if kept.id < 0)
        fresh = tuple(Keep(one.act, one.on, None if one.message == self.came else one.message) for one in new)
        return replace(self.out, keep=fresh)

    def done(self, exercise: str) -> tuple[SetAct, ...]:
        """The sets of an exercise done today, so far."""
        return day.acts_of(day.sets_on(self.book, self.on, exercise))


def _place_of(kept: Kept, among: list[Kept]) -> int:
    """Where an act that stands again belongs: in its message, before what the message said after it."""
    later = (i for i, one in enumerate(among) if (one.message, one.id) > (kept.message, kept.id))
    return next(later, len(among))
