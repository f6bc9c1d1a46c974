"""How finished days are folded into an estimate: core's doors in the shape that the store asks for. Holds no state."""

from dataclasses import replace
from datetime import date
from importlib.metadata import version

from bot.store.progress import Folding, Past
from core import advising
from core.evidence.aims import default_aim
from core.model.plan import Plan
from core.model.target import Aim


def aim(plan: Plan, exercise: str, on: date) -> Aim:
    """What the coach aimed at that day, else on any day, else what is aimed at where nobody said anything."""
    days = [day for day in (plan.on(on.weekday()), *plan.days) if day is not None]
    said = (one.aim for day in days for one in day.exercises if one.exercise == exercise)
    return replace(next(said, None) or default_aim(exercise), easier=plan.is_easier(on))


def fold(exercise: str, before: str | None, past: tuple[Past, ...]) -> str:
    """One exercise's history with more days folded in.

    Every day passes through text, whether it is folded alone or with others: sums of numbers depend on how they lie in
    memory, in their last bit, and what is rebuilt must be the same to that bit.
    """
    folded = before if before is not None else advising.dump(advising.begin(past[0].lifter, exercise))
    for one in past:
        folded = advising.dump(advising.absorb(advising.load(folded), one.lifter, one.aim, one.session))
    return folded


FOLDING = Folding(f"{version('rungbook')} {advising.made_of()}", aim, fold)
