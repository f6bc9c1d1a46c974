"""Short labels for the answers to a question: figures with units, in the lifter's own unit. No sentences."""

from core.model.acts import SetAct
from core.model.quantities import Unit, from_kg


def label(sets: tuple[SetAct, ...], unit: Unit) -> str:
    """What an answer would record: ``1 x 10, 10 kg``."""
    if not sets:
        return ""
    first = sets[0]
    counts = [_count(act) for act in sets]
    same = all(count == counts[0] for count in counts)
    told = f"{len(sets)} x {counts[0]}" if same else ", ".join(counts)
    load = first.load
    if load is None or load.kind == "body":
        return told
    if load.kg is None:
        return f"{told}, {load.label or load.kind}"
    return f"{told}, {round(from_kg(load.kg, unit), 2):g} {unit}"


def _count(act: SetAct) -> str:
    if act.hold_s is not None:
        return f"{act.hold_s:g} s"
    if act.distance_m is not None:
        return f"{act.distance_m:g} m"
    return str(act.reps)
