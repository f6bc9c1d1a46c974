"""Several loads told in one run, dealt out to their counts: 140/160/180 for 5/3/1; 3x5 at 100, 105, 110.

Rewrites atoms into one load and one count a set, so that the grammar need not know such runs; knows no exercise.
"""

from dataclasses import replace
from typing import Final

from core.read.atoms import Atom, LoadSaid
from core.read.cursor import MOST_SETS

LEAST_BARE_LOAD: Final = 15.0
"""A number below this, without a unit, does not stand out as one of several loads (common practice, no source)."""
FARTHEST_APART: Final = 4.0
"""Loads of one run differ at most by this factor (common practice, no source)."""
LEAST_UNMARKED: Final = 3
"""So many loads before one count are told apart from stray numbers (common practice, no source)."""
_BETWEEN: Final = ("COMMA", "SLASH", "AND", "DASH", "NL")
_LOAD_WAYS: Final = ("plain", "per_hand", "per_side", "total")


def spread_out(atoms: list[Atom]) -> list[Atom]:
    """The atoms, with every run of several loads dealt out to its counts."""
    if sum(atom.kind in ("N", "L") for atom in atoms) < LEAST_UNMARKED:
        return atoms
    out: list[Atom] = []
    i = 0
    while i < len(atoms):
        dealt = _starts(out) and (_loads_first(atoms, i) or _counts_first(atoms, i))
        if dealt:
            out.extend(dealt[0])
            i = dealt[1]
        else:
            out.append(atoms[i])
            i += 1
    return out


def _starts(before: list[Atom]) -> bool:
    """Whether a run can start here: nothing right before it that it would belong to."""
    return not before or before[-1].kind not in ("N", "L", "R", "X", "FOR", "AT", "OF", "PLUS", "S")


def _kind(atoms: list[Atom], i: int) -> str:
    return atoms[i].kind if i < len(atoms) else ""


def _run(atoms: list[Atom], i: int, *kinds: str) -> tuple[list[Atom], int, str]:
    """Atoms of these kinds one behind the other, where the run ends, and the first mark between them."""
    out: list[Atom] = []
    gap = ""
    j = i
    while _kind(atoms, j) in kinds:
        out.append(atoms[j])
        i = j = j + 1
        while _kind(atoms, j) == "SEP" and atoms[j].text in (_BETWEEN if gap != "SLASH" else ("SLASH",)):
            gap = gap or atoms[j].text
            j += 1
    return out, i, gap


def _loads_first(atoms: list[Atom], i: int) -> tuple[list[Atom], int] | None:
    """140/160/180 for 5/3/1, and 60/70/80 x5."""
    loads, j, gap = _run(atoms, i, "N", "L")
    if len(loads) < 2:
        return None
    named = j
    while _kind(atoms, j) in ("X", "FOR") or (j == named and _kind(atoms, j) == "SEP" and atoms[j].text == "COLON"):
        j += 1
    listed = gap == "SLASH" and _kind(atoms, j) == "SEP" and atoms[j].text == "COMMA"
    counts, end, count_gap = _run(atoms, j + listed, "N", "R")
    if listed and count_gap != "SLASH":
        return None
    if (j == named and not listed) or _linked_on(atoms, end):
        return None
    told = len(loads) >= LEAST_UNMARKED or gap == "SLASH" or _kind(atoms, j + 1) in ("SIDE", "ALL")
    if len(counts) == 1 and told and _kind(atoms, named) != "SEP":
        counts = counts * len(loads)
    if len(counts) != len(loads) or not _fit(loads, counts):
        return None
    return _dealt(loads, counts), end


def _counts_first(atoms: list[Atom], i: int) -> tuple[list[Atom], int] | None:
    """3x5 at 100, 105, 110, and 3 sets of 5: 100/105/110."""
    j = i + 1
    if _kind(atoms, i) == "S":
        j += _kind(atoms, j) == "OF"
    elif _kind(atoms, i) == "N" and _kind(atoms, j) == "X":
        j += 1
    else:
        return None
    if _kind(atoms, j) not in ("N", "R") or atoms[i].value > MOST_SETS:
        return None
    count = atoms[j]
    j += 1
    while _kind(atoms, j) == "AT" or (_kind(atoms, j) == "SEP" and atoms[j].text in ("COLON", "COMMA", "DASH")):
        j += 1
    loads, end, _ = _run(atoms, j, "N", "L")
    if len(loads) < 2 or len(loads) != atoms[i].value or _linked_on(atoms, end):
        return None
    counts = [count] * len(loads)
    return (_dealt(loads, counts), end) if _fit(loads, counts) else None


def _linked_on(atoms: list[Atom], i: int) -> bool:
    return _kind(atoms, i) in ("X", "FOR", "PLUS", "S", "R") or (
        _kind(atoms, i) == "AT" and _kind(atoms, i + 1) in ("N", "L")
    )


def _fit(loads: list[Atom], counts: list[Atom]) -> bool:
    """Whether these can only be loads and those only counts."""
    if any(one.load is not None and (one.load.way not in _LOAD_WAYS or one.load.signed) for one in loads):
        return False
    if any(one.value != int(one.value) for one in counts):
        return False
    bare = [one.value for one in loads if one.kind == "N" and not one.plural]
    if not bare:
        return True
    near = min(bare) >= LEAST_BARE_LOAD and max(bare) <= FARTHEST_APART * min(bare)
    return near and min(bare) >= 2 * max(one.value for one in counts)


def _dealt(loads: list[Atom], counts: list[Atom]) -> list[Atom]:
    out: list[Atom] = []
    for load, count in zip(loads, counts, strict=True):
        if out:
            out.append(Atom("SEP", count.first, count.first, text="COMMA"))
        said = load.load or LoadSaid("plain", load.value, plural=load.plural)
        out.extend((replace(load, kind="L", load=said), Atom("X", count.first, count.first, text="X"), count))
    return out
