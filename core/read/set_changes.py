"""What a correction changes in a set: from the atoms and remarks of its clause to fields and their new values."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

from core.model.acts import SetAct
from core.model.quantities import POUND_KG, Load, from_kg, to_kg
from core.model.reading import Setting
from core.read.atoms import Atom, LoadSaid
from core.read.loads import moved
from core.read.remark import LEAST_FELT, TOP_EFFORT, Remark
from core.read.stream import Stream

Change = dict[str, object]


@dataclass(frozen=True, slots=True)
class Context:
    """The stream, what is known, the set corrected and its exercise. ``by_number``: an earlier set than the
    last. ``named``: the field that the correction names, load or reps."""

    s: Stream
    setting: Setting
    last: SetAct | None
    exercise: str | None
    by_number: bool = False
    named: str | None = None


def quantities(change: Change, atoms: list[Atom], at: Context) -> None:
    """Counts, loads, sides and flags of a correction's clause, written into ``change``."""
    for n, atom in enumerate(atoms):
        write = _WRITES.get(atom.kind)
        if write is not None:
            write(change, atoms, n, at)
    if at.last is not None and not at.by_number and len(change) > 1:
        for field in ("load", "reps"):
            if field in change and len(change) > 1 and change[field] == getattr(at.last, field):
                del change[field]


def _reps(change: Change, atoms: list[Atom], n: int, at: Context) -> None:
    del at
    change["reps"] = int(atoms[n].value)


def _more(change: Change, atoms: list[Atom], n: int, at: Context) -> None:
    if at.last is not None and at.last.reps is not None:
        change["reps"] = int(at.last.reps + atoms[n].value)


def _hold(change: Change, atoms: list[Atom], n: int, at: Context) -> None:
    rest = any(at.s.is_(i, "REST") for i in range(max(0, atoms[n].first - 4), atoms[n].first))
    change["rest_s" if rest else "hold_s"] = atoms[n].value


def _distance(change: Change, atoms: list[Atom], n: int, at: Context) -> None:
    del at
    change["distance_m"] = atoms[n].value


def _load(change: Change, atoms: list[Atom], n: int, at: Context) -> None:
    said = atoms[n].load
    counted = said is not None and (said.way != "plates" or at.s.is_(atoms[n].first, "NUM"))
    if said is None or not counted or at.exercise is None:
        return
    load = moved(said, at.exercise, at.setting, at.last.load if at.last is not None else None)
    if load is not None:
        change["load"] = load


def _side(change: Change, atoms: list[Atom], n: int, at: Context) -> None:
    del at
    change["side"] = {"LEFT": "left", "RIGHT": "right"}.get(atoms[n].text, "each")


def _drop(change: Change, atoms: list[Atom], n: int, at: Context) -> None:
    del atoms, n, at
    change["drop"] = True


def _bare(change: Change, atoms: list[Atom], n: int, at: Context) -> None:
    """A bare number: an effort behind an at-sign, a count behind an x, a load before one; else what it is nearer to."""
    value = atoms[n].value
    before = atoms[n - 1].kind if n else ""
    after = atoms[n + 1].kind if n + 1 < len(atoms) else ""
    if before == "AT" and "reps" in change and LEAST_FELT <= value <= TOP_EFFORT:
        change["rir"] = TOP_EFFORT - value
        return
    if before in ("X", "FOR"):
        change["reps"] = int(value)
        return
    counted = n + 2 < len(atoms) and atoms[n + 2].kind in ("N", "R", "S")
    loaded = (after in ("X", "FOR") and counted) or value != int(value) or atoms[n].plural
    field = at.named or ("load" if loaded else _likelier(value, at.last, at.setting))
    if field == "load":
        _bare_load(change, value, at)
    else:
        change[field] = int(value) if field == "reps" else value


def _bare_load(change: Change, value: float, at: Context) -> None:
    """A bare number as a load keeps the way of the last one: the same kind, in the lifter's unit."""
    last = at.last.load if at.last is not None else None
    if last is not None and last.kind not in ("body", "band"):
        change["load"] = Load(last.kind, to_kg(value, at.setting.unit))
    elif at.exercise is not None:
        load = moved(LoadSaid("plain", value), at.exercise, at.setting, None)
        if load is not None:
            change["load"] = load


_WRITES: Final[dict[str, Callable[[Change, list[Atom], int, Context], None]]] = {
    "R": _reps,
    "MORE": _more,
    "H": _hold,
    "D": _distance,
    "L": _load,
    "DELTA": _load,
    "SIDE": _side,
    "DROP": _drop,
    "N": _bare,
}


def _likelier(value: float, last: SetAct | None, setting: Setting) -> str:
    """Which field of the last set a bare number corrects: the one that it is nearer to, in proportion."""
    if last is None:
        return "load" if value > 30 else "reps"
    if last.hold_s is not None:
        return "hold_s"
    if last.distance_m is not None:
        return "distance_m"
    kg = last.load.kg if last.load is not None else None
    if not kg or last.reps is None:
        return "reps"
    load = from_kg(kg, setting.unit)
    reps = max(1.0, float(last.reps))
    off_load = abs(value - load) / load
    off_reps = abs(value - reps) / reps
    return "load" if 2 * off_load < off_reps else "reps"


def from_remark(change: Change, remark: Remark, *, cleared: bool) -> None:
    """What a remark in a correction changes."""
    what, value = remark.what, remark.value
    if what == "warmup":
        change["warmup"] = not cleared
    elif what == "failed":
        change["failed"] = True
        change["rir"] = 0.0
        if isinstance(value, float):
            change["reps"] = int(value) - 1
    elif what == "rir" and value is None and not remark.each and cleared:
        change["rir"] = None
    elif what in ("rir", "tempo", "rest_s", "form", "range", "partials") and value is not None:
        change[what] = value


def unit_only(change: Change, s: Stream, place: tuple[int, int], last: SetAct) -> None:
    """'that was lb not kg': the same number in the other unit."""
    if change or last.load is None or last.load.kg is None:
        return
    for i in range(*place):
        if s.is_(i, "LB", "KG") and not s.is_(i, "NUM", "LOADQ"):
            number = from_kg(last.load.kg, "kg" if s.is_(i, "LB") else "lb")
            change["load"] = replace(last.load, kg=number * POUND_KG if s.is_(i, "LB") else number)
