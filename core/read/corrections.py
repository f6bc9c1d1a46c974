"""A correction inside one message: what is said anew replaces it in the set just told, or in the one named."""

from dataclasses import replace

from core.read.atoms import LoadSaid
from core.read.groups import Group


def corrected(groups: list[Group], nth: int | None, new: Group) -> None:
    """A correction inside the message: what is said anew replaces it in the set just told (or the one named)."""
    place = nth - 1 if nth is not None and 0 < nth <= len(groups) else len(groups) - 1
    old = groups[place]
    old.last = max(old.last, new.last)
    whole = new.lead is not None or (new.load is not None and new.reps)
    if whole:
        groups[place] = replace(new, first=old.first, last=old.last)
        if new.lead is not None and old.load is not None:
            groups[place].load, groups[place].lead = LoadSaid("plain", new.lead), None
        return
    if new.load is not None:
        old.load, old.lead, old.behind = new.load, None, None
        if old.bare and len(old.reps) > 1 and old.reps[0].n > 2 * old.reps[1].n:
            old.reps.pop(0)
        return
    if not new.reps:
        return
    number = new.reps[0]
    load = old.lead if old.lead is not None else (old.load.number if old.load is not None else None)
    reps = old.reps[-1].n if old.reps else 0.0
    nearer = (
        load is not None
        and number.kind == "R"
        and not new.chained
        and not new.explicit
        and _nearer(number.n, load, reps)
    )
    if nearer and old.lead is not None:
        old.lead = number.n
    elif nearer and old.load is not None:
        old.load = replace(old.load, number=number.n)
    elif len(new.reps) > 1:
        old.reps = new.reps
    elif old.reps:
        old.reps[-1] = replace(old.reps[-1], n=number.n)


def _nearer(number: float, load: float, reps: float) -> bool:
    """Whether a bare number corrects the load and not the repetitions: clearly nearer to it in proportion."""
    return number != int(number) or 2 * abs(number - load) * max(reps, 1.0) < abs(number - reps) * load
