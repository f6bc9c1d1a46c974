"""Atoms put in the order that the grammar reads: remarks behind their counts, repeated 'times' as counts, the load of a
missed lift as its own, runs of loads dealt out. Knows no exercise.
"""

from dataclasses import replace
from itertools import pairwise
from typing import Final

from core.read.atoms import Atom, LoadSaid
from core.read.cursor import COUNTS
from core.read.spreading import spread_out


def arranged(atoms: list[Atom], *, loaded: bool) -> list[Atom]:
    """The atoms as the grammar takes them. ``loaded``: the exercise has an outside load."""
    told = _missed_at(_sets_at(_spoken_times(_fives(_instead(_times_listed(_remarks_behind(atoms)))))))
    return spread_out(told) if loaded else told


def _remarks_behind(atoms: list[Atom]) -> list[Atom]:
    """A remark between a link and its count (for a warm-up set of 8) is moved behind the count."""
    out = [
        atom
        for i, atom in enumerate(atoms)
        if not (atom.text == "again" and i and atoms[i - 1].kind in ("N", "L") and _linked_next(atoms, i))
    ]
    for i in range(len(out) - 2):
        if out[i].kind in ("FOR", "X", "OF") and out[i + 1].kind == "M" and out[i + 2].kind in COUNTS:
            out[i + 1], out[i + 2] = out[i + 2], out[i + 1]
    for i in range(len(out) - 3):
        if (
            out[i].kind in ("N", "L")
            and out[i + 1].text in ("LEFT", "RIGHT")
            and out[i + 2].kind == "X"
            and out[i + 3].kind == "N"
        ):
            out[i + 1 : i + 4] = [out[i + 2], out[i + 3], out[i + 1]]
    return out


def _missed_at(atoms: list[Atom]) -> list[Atom]:
    """'120x3 then missed the second at 125': the load behind a miss is the missed set's own."""
    out = list(atoms)
    for i, atom in enumerate(atoms[:-2]):
        load = atoms[i + 2]
        missed = atom.kind == "M" and atom.remark is not None and atom.remark.what == "failed"
        if not missed or atoms[i + 1].kind != "AT" or load.kind not in ("N", "L"):
            continue
        told = [one for one in atoms[:i] if one.kind in ("N", "L")]
        again = any(one.value == load.value and one.load == load.load for one in told)
        if told and not again and (i + 3 >= len(atoms) or atoms[i + 3].kind not in ("X", "FOR")):
            said = load.load or LoadSaid("plain", load.value, plural=load.plural)
            out[i + 1] = replace(atoms[i + 1], kind="SEP", text="COMMA")
            out[i + 2] = replace(load, kind="L", load=said, text="missed")
    return out


def _spoken_times(atoms: list[Atom]) -> list[Atom]:
    """'one fifty times three': spoken for 150x3; 'repeated 3 times': so many sets, this one among them."""
    out: list[Atom] = []
    for i, atom in enumerate(atoms):
        follow = atoms[i + 1].kind if i + 1 < len(atoms) else ""
        if atom.kind == "T" and atom.value > MOST and follow in ("N", "R"):
            out += [replace(atom, kind="N"), Atom("X", atom.last, atom.last, text="X")]
        elif not (atom.kind == "SAME" and atom.text == "repeated" and follow in ("T", "S") and out):
            out.append(atom)
    return out


def _fives(atoms: list[Atom]) -> list[Atom]:
    """'five fives at 90': a small number before a small plural counts sets, where a load follows."""
    for i in range(len(atoms) - 3):
        sets, reps, at, load = atoms[i : i + 4]
        small = (
            sets.kind == reps.kind == "N" and reps.plural and not sets.plural and max(sets.value, reps.value) <= MOST
        )
        first = i == 0 or atoms[i - 1].kind in ("SEP", "W")
        if small and first and at.kind == "AT" and load.kind in ("N", "L") and load.value != sets.value:
            told = [replace(sets, kind="S"), replace(reps, kind="R", plural=False)]
            return [*atoms[:i], *told, *atoms[i + 2 :]]
    return atoms


MOST: Final = 12.0
"""So many sets, or repetitions, are told in this way at most (common practice, no source)."""


def _instead(atoms: list[Atom]) -> list[Atom]:
    """'70 instead of 80 for 8': what it was not is left out where the count is still to come."""
    out = list(atoms)
    for i in range(len(atoms) - 3, 0, -1):
        turned = out[i].kind == "NOT" and out[i - 1].kind in ("N", "L") and out[i + 1].kind in ("N", "L")
        alone = i < 2 or out[i - 2].kind not in ("X", "FOR")
        if turned and alone and out[i + 2].kind in ("X", "FOR"):
            del out[i : i + 2]
    return out


def _sets_at(atoms: list[Atom]) -> list[Atom]:
    """'5 sets at 92.5: 5 5 5 4 4': the load before as many counts as sets; the list says how many there were."""
    for i, atom in enumerate(atoms):
        j = i + 1
        while j < len(atoms) and (atoms[j].kind == "AT" or (atoms[j].kind == "SEP" and atoms[j].text == "AND")):
            j += 1
        if atom.kind != "S" or atom.value < 2 or j >= len(atoms) or atoms[j].kind not in ("N", "L"):
            continue
        load, end = atoms[j], j + 1
        while end < len(atoms) and atoms[end].kind == "SEP" and atoms[end].text in ("COLON", "COMMA", "DASH"):
            end += 1
        counts = [one for one in atoms[end:] if one.kind in ("N", "R")]
        run = [one.kind for one in atoms[end : end + 2 * len(counts)] if one.kind != "SEP"]
        listed = len(counts) == atom.value and all(kind in ("N", "R") for kind in run[: len(counts)])
        heavy = load.kind == "L" or load.value > 2 * max((one.value for one in counts), default=load.value)
        if end > j + 1 and listed and heavy and not any(one.kind in ("X", "L", "FOR") for one in atoms[end:]):
            said = load.load or LoadSaid("plain", load.value, plural=load.plural)
            return [*atoms[:i], replace(load, kind="L", load=said), *atoms[j + 1 : end], *atoms[end:]]
    return atoms


def _times_listed(atoms: list[Atom]) -> list[Atom]:
    """'10 times, 10 times, 8 times': several in a row count repetitions."""
    times = [i for i, atom in enumerate(atoms) if atom.kind == "T"]
    near = {
        a
        for a, b in pairwise(times)
        if all(one.kind == "SEP" for one in atoms[a + 1 : b]) and atoms[a].value <= 2 * atoms[b].value
    }
    listed = near | {b for a, b in pairwise(times) if a in near}
    return [replace(atom, kind="R") if i in listed else atom for i, atom in enumerate(atoms)] if listed else atoms


def _linked_next(atoms: list[Atom], i: int) -> bool:
    """'150 again for a double': the word stands between a load and its count."""
    return i + 2 < len(atoms) and atoms[i + 1].kind in ("FOR", "X") and atoms[i + 2].kind in COUNTS
