"""What the rules need to remember of one lifter and one exercise: of constant size, folded session by session.

Knows no rule, and nothing of strength beyond what is told: whether a result could be believed.
"""

from dataclasses import dataclass, replace
from datetime import date

from core.decide.judge import implied, lifted_well, met, over, same_target
from core.decide.kit import hardness
from core.evidence.numbers import value
from core.model.quantities import Form, Load
from core.model.target import Aim, Session, Target
from core.model.working import count_of, working_sets


@dataclass(frozen=True, slots=True)
class Totals:
    """One session's sum over its sets, and what it may be compared by: load, number of sets, rest."""

    load: Load | None
    sets: int
    rest_s: float | None
    total: float


@dataclass(frozen=True, slots=True)
class Facts:
    """See the module's head.

    ``last``: the last target, or what the last sets amount to. ``met``: it was met. ``misses``: in a row, of the same
    target. ``form``: as last said. ``doubted``: the last result was too good to be clean and nothing was said of form.
    ``well``: heaviest load lifted well, ``least``: lightest load lifted at all. ``totals``: of the last session, to
    judge the next one's rest by. ``give_back``: rest to return to, because shortening it cost too much;
    ``rest_least``: no shorter rest than this is tried again at this load. ``sessions``: how many had a working set.
    ``over``, ``topped``: in how many sessions running every set went clearly over the top of the target, or reached it;
    ``stood``: the same, of one and the same target.
    """

    last: Target | None = None
    met: bool = False
    misses: int = 0
    on: date | None = None
    form: Form | None = None
    doubted: bool = False
    well: Load | None = None
    least: Load | None = None
    totals: Totals | None = None
    give_back: float | None = None
    rest_least: float | None = None
    sessions: int = 0
    over: int = 0
    topped: int = 0
    stood: int = 0


def facts_after(facts: Facts, aim: Aim, session: Session, believed: bool) -> Facts:
    """The facts after one more session; a session without a working set changes nothing but the form said."""
    said = next((act.form for act in reversed(session.sets) if act.form is not None), None)
    form = said if said is not None else facts.form
    work = working_sets(session.sets)
    target = session.target if session.target and session.target.sets else implied(session.sets, aim)
    if not work or target is None:
        return replace(facts, form=form)
    done = met(session.sets, target)
    again = facts.last is not None and same_target(facts.last, target)
    totals = _totals(session, target)
    topped = done and over(session.sets, target, 0.0)
    give_back = _rest_cost(facts.totals, totals)
    moved = totals is None or facts.totals is None or totals.load != facts.totals.load
    return Facts(
        last=target,
        met=done,
        misses=0 if done else (facts.misses if again else 0) + 1,
        on=session.on if facts.on is None else max(facts.on, session.on),
        form=form,
        doubted=said is None and not believed,
        well=_heavier_of(facts.well, [act.load for act in work if act.load and lifted_well(act, aim.reps[0])]),
        least=_lighter_of(facts.least, [act.load for act in work if act.load and (count_of(act) or 0) >= 1]),
        totals=totals,
        give_back=give_back,
        sessions=facts.sessions + 1,
        over=facts.over + 1 if done and over(session.sets, target, value("over.reps")) else 0,
        topped=facts.topped + 1 if topped else 0,
        stood=(facts.stood + 1 if again else 1) if topped else 0,
        rest_least=give_back if give_back is not None else (None if moved else facts.rest_least),
    )


def facts_beside(facts: Facts, session: Session) -> Facts:
    """The facts after a session of an easier week: what was asked before it is what is gone on from.

    It was trained on that day and its words on form count; that less was done, because less was asked, counts nothing.
    """
    if facts.last is None or not working_sets(session.sets):
        raise ValueError("only a session with working sets, of somebody with a history, stands beside the others")
    said = next((act.form for act in reversed(session.sets) if act.form is not None), None)
    return replace(
        facts,
        on=session.on if facts.on is None else max(facts.on, session.on),
        form=said if said is not None else facts.form,
    )


def _totals(session: Session, target: Target) -> Totals | None:
    """The session's total, or None when its form was loose, so that nothing may be compared with it."""
    work = working_sets(session.sets)[: len(target.sets)]
    if any(act.form in ("fair", "loose") for act in work):
        return None
    loads = {act.load for act in work}
    rest = target.sets[0].rest_s
    return Totals(loads.pop() if len(loads) == 1 else None, len(work), rest, sum(count_of(act) or 0.0 for act in work))


def _rest_cost(before: Totals | None, after: Totals | None) -> float | None:
    """The rest to return to, when less of it cost more than the table allows at the same load and form."""
    if before is None or after is None or before.rest_s is None or after.rest_s is None or before.load is None:
        return None
    if (after.load, after.sets) != (before.load, before.sets) or after.rest_s >= before.rest_s:
        return None
    cost = 1.0 - after.total / before.total if before.total > 0 else 0.0
    return before.rest_s if cost > value("rest.cost_max") else None


def _heavier_of(known: Load | None, loads: list[Load]) -> Load | None:
    measured = [load for load in ([known] if known else []) + loads if hardness(load) is not None]
    return max(measured, key=lambda load: hardness(load) or 0.0, default=None)


def _lighter_of(known: Load | None, loads: list[Load]) -> Load | None:
    measured = [load for load in ([known] if known else []) + loads if hardness(load) is not None]
    return min(measured, key=lambda load: hardness(load) or 0.0, default=None)
