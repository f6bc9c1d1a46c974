"""The only place of the simulation that calls the core: a lifter's history in, advice or a forecast out."""

from dataclasses import dataclass, field
from datetime import date

from core.model.target import Advice, Question, Session, TargetSet
from tests.sim.people import Person


@dataclass(slots=True)
class Asker:
    """One lifter's history, told to the core as it grows."""

    person: Person
    past: list[Session] = field(default_factory=list)

    def question(self, on: date, consider: tuple[TargetSet, ...] | None = None) -> Question:
        """The whole question, for the core and for the checker."""
        person = self.person
        return Question(person.lifter, person.exercise, person.aim, tuple(self.past), on, (), consider)

    def keep(self, session: Session) -> None:
        """A session is over."""
        self.past.append(session)

    def advise(self, on: date, consider: tuple[TargetSet, ...] | None = None) -> Advice:
        """What the core says."""
        from core.advising import advise

        answer: Advice = advise(self.question(on, consider))
        return answer
