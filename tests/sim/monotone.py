"""Rule 9 of the advising contract, which needs two answers: better results beside worse ones."""

from dataclasses import replace

import numpy as np

from core.model.acts import SetAct
from core.model.target import Advice, Question, TargetSet
from tests.sim.always import Breach
from tests.sim.standing import compare_loads, differs, seconds, trained, work


def improved(question: Question, rng: np.random.Generator) -> Question | None:
    """The same question with one set of the newest session better: more repetitions, or more left of the same.

    Small where form is unsaid, and not on top of a surprise: a jump that cannot be believed asks about form (rule 1).
    """
    sessions = trained(question)
    if not sessions:
        return None
    last = sessions[-1]
    high = min((each.reps[1] for each in last.target.sets), default=0) if last.target is not None else 10_000
    places = [
        n
        for n, act in enumerate(last.sets)
        if act in work(last.sets) and act.reps is not None and (act.form == "clean" or act.reps <= high + 1)
    ]
    if not places:
        return None
    at = int(rng.choice(places))
    act = last.sets[at]
    better = _better(act, rng)
    sets = (*last.sets[:at], better, *last.sets[at + 1 :])
    past = tuple(replace(each, sets=sets) if each is last else each for each in question.past)
    return replace(question, past=past)


def _better(act: SetAct, rng: np.random.Generator) -> SetAct:
    if act.rir is not None and not act.failed and act.rir <= 8 and rng.random() < 0.4:
        return replace(act, rir=act.rir + float(rng.choice([0.5, 1.0, 2.0])))
    most = 4 if act.form == "clean" else 2
    return replace(act, reps=(act.reps or 0) + int(rng.integers(1, most + 1)))


def easier(one: Advice, other: Advice) -> str | None:
    """How ``one`` is plainly easier than ``other``: easier in something, harder in nothing; None if it is not."""
    if not other.sets:
        return None
    if not one.sets:
        return f"{one.way} instead of {other.way}"
    gains: set[str] = set()
    losses: set[str] = set()
    for mine, theirs in zip(one.sets, other.sets, strict=False):
        if _unlike(mine, theirs):
            return None
        up, down = differs(mine, theirs)
        gains |= up
        losses |= down
    if len(one.sets) > len(other.sets):
        gains.add("sets")
    if len(one.sets) < len(other.sets):
        losses.add("sets")
    return f"{one.way} is easier than {other.way} in {sorted(losses)}" if losses and not gains else None


def _unlike(one: TargetSet, other: TargetSet) -> bool:
    """True where a tempo, a rest or a load is said in one only, so that neither is plainly easier."""
    tempo = one.tempo != other.tempo and (seconds(one.tempo) is None or seconds(other.tempo) is None)
    rest = (one.rest_s is None) != (other.rest_s is None)
    return tempo or rest or (one.load != other.load and compare_loads(one.load, other.load) is None)


def pair_breach(worse: Advice, better: Advice) -> Breach | None:
    """Rule 9: the better result must not get the easier target."""
    how = easier(better, worse)
    return None if how is None else Breach("9", "a better result never gives an easier target", how)


def surer_breach(before: Advice, after: Advice) -> Breach | None:
    """Rule 9: after one more set today, the forecast of the next set is no less sure. Both answer for the next set."""
    if not before.forecast or not after.forecast:
        return None
    if after.forecast[0].sd <= before.forecast[0].sd + 1e-9:
        return None
    return Breach("9", "another set never makes the next forecast less sure",
                  f"{before.forecast[0].sd:.3f} then {after.forecast[0].sd:.3f}")  # fmt: skip
