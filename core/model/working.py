"""Which of a day's sets count as work: no warm-ups, no parts of a drop set, left and right as one set.

Knows nothing of targets or of strength.
"""

from dataclasses import replace

from core.model.acts import SetAct


def count_of(act: SetAct) -> float | None:
    """What was counted: repetitions, else seconds held, else metres. None when nothing was."""
    for counted in (act.reps, act.hold_s, act.distance_m):
        if counted is not None:
            return float(counted)
    return None


def working_sets(sets: tuple[SetAct, ...]) -> tuple[SetAct, ...]:
    """The sets that count, in order. A left and a right set that follow each other are one: the lesser of the two."""
    work: list[SetAct] = []
    open_side: str | None = None
    for act in sets:
        if act.warmup or act.drop or count_of(act) is None:
            continue
        if open_side and act.side in ("left", "right") and act.side != open_side and act.load == work[-1].load:
            work[-1] = _lesser(work[-1], act)
            open_side = None
            continue
        open_side = act.side if act.side in ("left", "right") else None
        work.append(act)
    return tuple(work)


def _lesser(first: SetAct, second: SetAct) -> SetAct:
    """Both sides as one set: the fewer repetitions, the less reserve, the worse form."""
    worse = {"clean": 0, None: 1, "fair": 2, "loose": 3}
    low = min((first, second), key=lambda act: count_of(act) or 0.0)
    said = [act.rir for act in (first, second) if act.rir is not None]
    form = max((first.form, second.form), key=lambda form: worse[form])
    return replace(low, side="each", rir=min(said) if said else None, form=form, failed=first.failed or second.failed)
