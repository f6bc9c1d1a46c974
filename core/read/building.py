"""A settled group into its bare sets, with what no person lifts or counts turned into a question."""

from dataclasses import replace

from core.evidence.exercises import Exercise
from core.evidence.plausible import BOUNDS
from core.model.acts import SetAct
from core.read.doubts import Doubt
from core.read.groups import Group, Rep
from core.read.loads import Known


def built(group: Group, load: Known, row: Exercise) -> list[SetAct] | Doubt:
    """A group with its load known, as bare sets."""
    sets = group.sets or 1.0
    if len(group.reps) > BOUNDS["most_message_sets"].value:
        return Doubt("numbers")
    if sets > BOUNDS["most_sets"].value or sets != int(sets) or sets < 1:
        return Doubt("numbers")
    out: list[SetAct] = []
    reps = group.reps * int(sets) if len(group.reps) == 1 or group.sets else group.reps
    for rep in reps:
        for place, count in enumerate((rep.n, *rep.parts)):
            act = _one(rep, count, load, row)
            if act is None:
                return Doubt("reps" if count != int(count) or count > 1000 else "numbers")
            out.append(replace(act, drop=True) if place else act)
    if group.tail is not None and len(out) > 1:
        last = _one(group.reps[-1], group.tail, load, row)
        out = [*out[:-1], last] if last is not None else out
    if group.drop and out:
        out = [replace(act, drop=True) for act in out] if len(out) == 1 else out
    return out


def _one(rep: Rep, count: float, load: Known, row: Exercise) -> SetAct | None:
    """One set of ``count`` repetitions, seconds or metres, as the count itself or a part of it behind a breath."""
    side = rep.side if rep.side in ("left", "right") else None
    if rep.kind == "H":
        within = 0 < count <= BOUNDS["most_hold_s"].value
        return SetAct(row.id, load, hold_s=count, side=side) if within else None  # type: ignore[arg-type]
    if rep.kind == "D":
        return SetAct(row.id, load, distance_m=count, side=side)  # type: ignore[arg-type]
    if count != int(count) or count > _most_reps(load, row):
        return None
    return SetAct(row.id, load, int(count), side=side)  # type: ignore[arg-type]


def _most_reps(load: Known, row: Exercise) -> float:
    if load is None or load.kind in ("body", "band", "assist"):
        return BOUNDS["most_reps_body"].value
    if row.id == "kettlebell-swing":
        return BOUNDS["most_reps_body"].value
    return BOUNDS["most_reps_heavy" if row.kind == "compound" else "most_reps_light"].value


def recounted(base: SetAct, change: float) -> SetAct:
    """The same set with its count changed; a count that is said anew is not recounted."""
    if base.reps is not None:
        return replace(base, reps=max(0, int(base.reps + change)))
    if base.hold_s is not None:
        return replace(base, hold_s=max(0.0, base.hold_s + change))
    return base
