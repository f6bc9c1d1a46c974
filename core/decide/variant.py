"""The next rung of a body exercise: a harder variant of it, named when its repetitions are up and no load can be added.

The target itself stays in the exercise that was asked about; which exercise is trained is the coach's plan.
"""

from dataclasses import replace

from core.decide.case import Case
from core.decide.ways import load_can_move
from core.evidence.body import body_mass, traits_of
from core.evidence.ladders import rung_above
from core.model.quantities import Load


def next_variant(case: Case) -> str | None:
    """The id of the variant above, when the lifter tops the coach's range here and would carry its low end there.

    What is carried here says what is carried there: the variant moves more of the body, which is as if so much were
    added here, its own middle strength considered.
    """
    above = rung_above(case.exercise.id)
    topped = bool(case.base) and all(one.reps[0] >= case.aim.reps[1] for one in case.base)
    if above is None or not topped or not case.facts.met or not _bare(case) or load_can_move(case):
        return None
    here, there = traits_of(case.exercise.id), traits_of(above)
    asks = (there.share / there.strength) / (here.share / here.strength) - 1.0
    added = Load("added", max(asks, 0.0) * here.share * body_mass(case.lifter.bodyweight_kg))
    low, high = case.aim.reps
    return above if case.fits(tuple(replace(one, load=added, reps=(low, high)) for one in case.base)) else None


def _bare(case: Case) -> bool:
    """Whether the body alone is the load, and nobody who is to be spared is asked for more."""
    spared = case.ache is not None or case.lifter.no_heavier
    return not spared and all(one.load is not None and one.load.kind == "body" for one in case.base)
