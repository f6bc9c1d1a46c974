"""Short ways to tell a history in the tests of deciding: one lift, sessions three days apart, targets as advised."""

from dataclasses import replace
from datetime import date, timedelta

from core.model.acts import SetAct
from core.model.lifter import Lifter
from core.model.quantities import Form, Load
from core.model.target import Aim, Question, Session, Target, TargetSet

ON = date(2026, 3, 30)
BENCH = "barbell-bench-press"
AIM = Aim(3, (8, 12), 2.0, (2.0, 0.0, 1.0, 0.0), 150.0, ("reps", "load"))
LIFTER = Lifter("kg", 80.0)


def target(kg: float = 60.0, low: int = 8, aim: Aim = AIM) -> Target:
    """The aim at a load, from so many repetitions."""
    one = TargetSet(Load("total", kg), (low, max(low, aim.reps[1])), aim.rir, aim.tempo, aim.rest_s)
    return Target("hold", (one,) * aim.sets)


def did(
    *reps: int, rir: float | None = 2.0, form: Form | None = "clean", kg: float = 60.0, asked: Target | None = None,
    days: int = 3,
) -> Session:  # fmt: skip
    """A session of so many repetitions, so many days before ``ON``."""
    acts = tuple(SetAct(BENCH, Load("total", kg), each, rir=rir, form=form) for each in reps)
    return Session(ON - timedelta(days=days), acts, target(kg) if asked is None else asked)


def ask(*past: Session, lifter: Lifter = LIFTER, aim: Aim = AIM, exercise: str = BENCH) -> Question:
    """The question after those sessions, told oldest first; those without a day of their own are spread out."""
    days = [(ON - session.on).days for session in past]
    if len(set(days)) < len(days):
        count = len(past)
        past = tuple(replace(s, on=ON - timedelta(days=3 * (count - n))) for n, s in enumerate(past))
    return Question(lifter, exercise, aim, past, ON)
