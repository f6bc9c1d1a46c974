"""The only place of the measures that calls the core: a lifter's history in, advice or a forecast out."""

from dataclasses import dataclass, field
from datetime import date

from core.advising import Progress, absorb, advise_from, begin
from core.model.target import Advice, Question, Session, TargetSet
from tests.sim.people import Person


@dataclass(slots=True)
class Asker:
    """One lifter's history, told to the core as it grows, the way the chat service tells it."""

    person: Person
    past: list[Session] = field(default_factory=list)
    progress: Progress | None = None

    def question(self, on: date) -> Question:
        """The whole question, for the checker."""
        person = self.person
        return Question(person.lifter, person.exercise, person.aim, tuple(self.past), on)

    def keep(self, session: Session) -> None:
        """A session is over."""
        person = self.person
        self.past.append(session)
        self.progress = absorb(self._known(), person.lifter, person.aim, session)

    def advise(self, on: date, consider: tuple[TargetSet, ...] | None = None) -> Advice:
        """What the core says."""
        person = self.person
        return advise_from(self._known(), person.lifter, person.exercise, person.aim, on, (), consider)

    def _known(self) -> Progress:
        if self.progress is None:
            self.progress = begin(self.person.lifter, self.person.exercise)
        return self.progress
