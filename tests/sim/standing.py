"""Where a lifter stands, read from the history by the contract's words alone: targets met, form last said, lay-off."""

from collections.abc import Iterator
from typing import Final, Literal

from core.model.acts import SetAct
from core.model.quantities import Load, Tempo
from core.model.target import Question, Session, Target, TargetSet

CLOSE: Final = 0.5
"""Half a repetition: how far the reserve said may lie under the one asked (contract rule 3)."""

STEPS: Final = ("reps", "tempo", "range", "rest", "load")
RANGES: Final = {"partial": 0, None: 1, "full": 1, "extra": 2}

Dim = Literal["load", "reps", "tempo", "rest", "range", "rir"]


def work(sets: tuple[SetAct, ...]) -> list[SetAct]:
    """The sets that count: no warm-ups, no later parts of drop sets."""
    return [act for act in sets if not act.warmup and not act.drop]


def trained(question: Question) -> list[Session]:
    """Earlier sessions in which work was done, oldest first."""
    return [session for session in question.past if work(session.sets)]


def countable(acts: list[SetAct]) -> bool:
    """False where sets cannot be laid beside a target: holds, distances, one side at a time."""
    return all(act.reps is not None and act.side not in ("left", "right") for act in acts)


def signed(load: Load | None) -> float | None:
    """One scale for a kind: added above the body, assist below it; None where there is no number."""
    if load is None or load.kind == "band" or load.kg is None:
        return None
    return -load.kg if load.kind == "assist" else load.kg


def family(load: Load) -> str:
    """Kinds that are one scale."""
    return "body" if load.kind in ("body", "added", "assist") else load.kind


def compare_loads(one: Load | None, other: Load | None) -> int | None:
    """1 heavier, -1 lighter, 0 the same; None where the two are not on one scale."""
    a, b = signed(one), signed(other)
    if one is None or other is None or a is None or b is None or family(one) != family(other):
        return 0 if one == other and one is not None else None
    return 0 if abs(a - b) < 0.01 else (1 if a > b else -1)


def seconds(tempo: Tempo | None) -> float | None:
    """Whole seconds a repetition, None when a part is unsaid."""
    if tempo is None or any(part is None for part in tempo):
        return None
    return float(sum(part or 0.0 for part in tempo))


def differs(one: TargetSet, other: TargetSet) -> tuple[set[Dim], set[Dim]]:
    """In what ``one`` is harder, and in what easier, than ``other``; what cannot be compared is in neither."""
    signs: dict[Dim, float] = {"load": compare_loads(one.load, other.load) or 0}
    low, high = one.reps[0] - other.reps[0], one.reps[1] - other.reps[1]
    signs["reps"] = low or max(high, 0)  # a lower top alone makes nothing easier: the low end is what must be met
    mine, theirs = seconds(one.tempo), seconds(other.tempo)
    signs["tempo"] = 0.0 if mine is None or theirs is None else _zero(mine - theirs)
    both_rest = one.rest_s is not None and other.rest_s is not None
    signs["rest"] = _zero((other.rest_s or 0.0) - (one.rest_s or 0.0)) if both_rest else 0.0
    signs["range"] = RANGES[one.range.grade if one.range else None] - RANGES[other.range.grade if other.range else None]
    both_rir = one.rir is not None and other.rir is not None
    signs["rir"] = _zero((other.rir or 0.0) - (one.rir or 0.0)) if both_rir else 0.0
    return {dim for dim, sign in signs.items() if sign > 0}, {dim for dim, sign in signs.items() if sign < 0}


def _zero(value: float) -> float:
    return 0.0 if abs(value) < 0.01 else value


def was_met(target: Target, sets: tuple[SetAct, ...]) -> bool | None:
    """Rule 3: every set at its low end, reserve not more than half under the asked, form clean or unsaid.

    None where it cannot be told.
    """
    acts = work(sets)
    if not countable(acts) or not target.sets:
        return None
    if len(acts) < len(target.sets):
        return False
    if any(act.form not in (None, "clean") for act in acts):
        return False
    verdicts = [_set_met(asked, act) for asked, act in zip(target.sets, acts, strict=False)]
    return False if False in verdicts else None if None in verdicts else True


def _set_met(asked: TargetSet, act: SetAct) -> bool | None:
    short = (act.reps or 0) < asked.reps[0]
    rir = 0.0 if act.failed and act.rir is None else act.rir
    spent = rir is not None and asked.rir is not None and rir < asked.rir - CLOSE - 1e-9
    if short or spent:
        return False
    if act.load is not None and asked.load is not None and compare_loads(act.load, asked.load) == -1:
        return False
    if (
        act.range is not None
        and act.range.grade == "partial"
        and (asked.range is None or asked.range.grade != "partial")
    ):
        return None
    return True


def with_targets(question: Question) -> Iterator[tuple[Session, Target]]:
    """Sessions that had a target and work, newest first."""
    for session in reversed(trained(question)):
        if session.target is not None and session.target.sets:
            yield session, filled(session, session.target)


def filled(session: Session, target: Target) -> Target:
    """The target with a load left open (a start found by feel) as the lifter took it."""
    acts = work(session.sets)
    if all(each.load is not None for each in target.sets) or not acts:
        return target
    sets = tuple(
        each if each.load is not None else TargetSet(acts[min(at, len(acts) - 1)].load, each.reps, each.rir, each.tempo,
                                                     each.rest_s, each.range)
        for at, each in enumerate(target.sets)
    )  # fmt: skip
    return Target(target.way, sets)


def last_target(question: Question) -> tuple[Session, Target] | None:
    """The newest session, if it had a target; a newest session without one leaves the question open."""
    sessions = trained(question)
    if not sessions or sessions[-1].target is None or not sessions[-1].target.sets:
        return None
    return sessions[-1], filled(sessions[-1], sessions[-1].target)


def last_met(question: Question) -> Target | None:
    """The newest target that was surely met."""
    for session, target in with_targets(question):
        if was_met(target, session.sets):
            return target
    return None


def fits_aim(target: Target, question: Question) -> bool:
    """True if the target could be one of this aim: else the coach has changed the aim and nothing can be compared."""
    aim = question.aim
    return (
        len(target.sets) == aim.sets
        and all(each.rir is None or each.rir == aim.rir for each in target.sets)
        and all(each.reps[1] >= aim.reps[0] for each in target.sets)
        and _same_rest_and_tempo(target, question)
    )


def _same_rest_and_tempo(target: Target, question: Question) -> bool:
    aim = question.aim
    for each in target.sets:
        if (each.tempo is None) != (aim.tempo is None) or (each.rest_s is None) != (aim.rest_s is None):
            return False
        if aim.rest_s is not None and each.rest_s is not None and each.rest_s > aim.rest_s + 0.01:
            return False
        mine, theirs = seconds(each.tempo), seconds(aim.tempo)
        if mine is not None and theirs is not None and mine < theirs - 0.01:
            return False
    return True


def form_last_said(question: Question) -> str | None:
    """The form last said, in today's sets or else in the newest session that has work; None when unsaid there."""
    sessions = trained(question)
    places = [work(question.today)] + ([work(sessions[-1].sets)] if sessions else [])
    for acts in places:
        for act in reversed(acts):
            if act.form is not None:
                return act.form
    return None


def days_off(question: Question) -> int | None:
    """Days since the newest session with work; None without one."""
    sessions = trained(question)
    return (question.on - sessions[-1].on).days if sessions else None


def same_target(one: Target, other: Target) -> bool:
    """The same sets asked."""
    return len(one.sets) == len(other.sets) and all(
        a.reps == b.reps and compare_loads(a.load, b.load) == 0 and not any(differs(a, b))
        for a, b in zip(one.sets, other.sets, strict=True)
    )
