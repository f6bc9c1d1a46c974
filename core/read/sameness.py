"""Sets as the last one, with what is changed said beside it: same, again, one less, +2.5, up to 24."""

from collections.abc import Callable
from typing import Final

from core.read.atoms import Atom, LoadSaid
from core.read.cursor import COUNTS, Cursor
from core.read.groups import Group, Rep
from core.read.listing import further_counts
from core.read.remark import TOP_EFFORT


def as_before(c: Cursor, atom: Atom) -> None:
    """As the last set, with what is changed said beside it."""
    if atom.kind == "MORE" and atom.value > 0 and c.out.groups and c.gap:
        _breathed(c, atom)
        return
    group = Group(atom.first, atom.last, like=True)
    while c.i < len(c.a):
        atom = c.a[c.i]
        take = _TAKES.get(atom.kind)
        if take is None or not take(c, group, atom):
            break
        group.last = max(group.last, atom.last)
    if c.pending is not None and group.load is None:
        group.load = c.take()
    if group.sets is None:
        group.sets, c.sets = c.sets, None
    group.drop, c.drop = c.drop, False
    c.new_line = False
    c.close(group)


def _word(c: Cursor, group: Group, atom: Atom) -> bool:
    if atom.kind == "SAME" and atom.value > 1:
        group.sets = atom.value
    c.i += 1
    return True


def _more(c: Cursor, group: Group, atom: Atom) -> bool:
    """One more, two less; but '10 kg off and 12 more' counts twelve."""
    if atom.value >= LEAST_COUNT and not group.reps:
        c.i += 1
        c.append(group, Atom("R", atom.first, atom.last, atom.value))
        return True
    group.reps_change = atom.value
    c.i += 1
    return True


def _delta(c: Cursor, group: Group, atom: Atom) -> bool:
    group.load_change = atom.load
    c.i += 1
    return True


def _load(c: Cursor, group: Group, atom: Atom) -> bool:
    group.load = atom.load or LoadSaid("plain", atom.value, plural=atom.plural)
    c.i += 1
    return True


def _side(c: Cursor, group: Group, atom: Atom) -> bool:
    del group
    if atom.text not in ("LEFT", "RIGHT", "OTHERSIDE"):
        return False
    c.out.sides.append((atom.text, len(c.out.groups)))
    c.i += 1
    return True


def _up_to(c: Cursor, group: Group, atom: Atom) -> bool:
    del atom
    if c.kind(c.i + 1) not in ("N", "L"):
        return False
    c.i += 1
    _load(c, group, c.a[c.i])
    if c.kind(c.i) in ("X", "FOR"):
        c.i += 1
    return True


def _at(c: Cursor, group: Group, atom: Atom) -> bool:
    """'same at 65', 'same but with 12 reps'."""
    del atom
    follow = c.kind(c.i + 1)
    if follow in ("DELTA", "R", "H"):
        c.i += 1
        return True
    if follow == "L" or (follow == "N" and c.a[c.i + 1].value > TOP_EFFORT):
        c.i += 1
        return _load(c, group, c.a[c.i])
    return False


def _times(c: Cursor, group: Group) -> bool:
    """'same x2': so small a number behind an x, and nothing more, is how often and not how many."""
    number = c.a[c.i + 1]
    lone = number.kind == "N" and c.kind(c.i + 2) in ("", "M") and not group.reps and group.sets is None
    if not lone or group.load_change is not None or c.kind(c.i) != "X" or not 1 < number.value <= MOST_TIMES:
        return False
    group.sets = number.value
    c.i += 2
    return True


def _link(c: Cursor, group: Group, atom: Atom) -> bool:
    del atom
    if c.kind(c.i + 1) == "SAME" and c.a[c.i + 1].value > 1:
        c.i += 1
        return True
    if c.kind(c.i + 1) not in (*COUNTS, "S"):
        return False
    if _times(c, group):
        return True
    c.i += 1
    return True


def _sets(c: Cursor, group: Group, atom: Atom) -> bool:
    if group.reps:
        return False
    group.sets = atom.value
    c.i += 1
    return True


def _separator(c: Cursor, group: Group, atom: Atom) -> bool:
    """What parts the words of one sameness; a full stop only where the count is still to come."""
    if atom.value:
        return False
    if atom.text == "STOP":
        counted = group.load_change is not None and c.kind(c.i + 1) == "R"
        alone = c.kind(c.i + 1) == "N" and c.kind(c.i + 2) in ("", "M", "W")
        goes = not group.reps and (counted or alone or c.kind(c.i + 1) in ("S", "MORE", "SAMEREPS"))
    else:
        told = atom.text in ("COMMA", "BUT", "COLON", "DASH") and not group.reps and _sets_of_the_same(c, c.i + 1)
        goes = told or (atom.text in ("COMMA", "AND", "BUT", "COLON", "DASH", "THEN") and _goes_on(c, c.i + 1))
    c.i += goes
    return goes


def _sets_of_the_same(c: Cursor, i: int) -> bool:
    """'same but 3x6': so many sets of so many, at the load that stands."""
    few = c.kind(i) == "N" and c.a[i].value <= MOST_OF_THE_SAME and not c.a[i].plural
    return few and c.kind(i + 1) == "X" and c.kind(i + 2) in ("N", "R") and c.kind(i + 3) not in ("X", "FOR")


def _count(c: Cursor, group: Group, atom: Atom) -> bool:
    each = c.kind(c.i + 1) == "X" and c.a[c.i + 1].text == "x"  # "bw+5 x6 x6 x5": each x stands at its own count
    if atom.kind == "N" and c.kind(c.i + 1) == "X" and c.kind(c.i + 2) in ("N", "R") and not each:
        most = MOST_LISTED if group.load_change is not None else MOST_OF_THE_SAME
        open_ = not group.reps and group.sets is None and group.load is None
        if not open_ or atom.value > most or c.kind(c.i + 3) in ("X", "FOR"):
            return False
        group.sets = atom.value
        c.i += 2
        return True
    if group.reps:
        return False
    if atom.plural and group.load is None and atom.kind == "N":
        return _load(c, group, atom)
    c.i += 1
    c.append(group, atom)
    group.chained = True
    while c.kind(c.i) == "X" and c.a[c.i].text == "x" and c.kind(c.i + 1) in ("N", "R"):
        c.i += 2
        c.append(group, c.a[c.i - 1])
    further_counts(c, group)
    return True


_TAKES: Final[dict[str, Callable[[Cursor, Group, Atom], bool]]] = {
    "SAME": _word,
    "SAMEREPS": _word,
    "ASSIST": _word,
    "MORE": _more,
    "DELTA": _delta,
    "L": _load,
    "SIDE": _side,
    "UPTO": _up_to,
    "AT": _at,
    "FOR": _link,
    "X": _link,
    "OF": _link,
    "S": _sets,
    "SEP": _separator,
    "N": _count,
    "R": _count,
    "H": _count,
    "D": _count,
}
"""What each kind of atom says of a set that is as the last one; each says whether it was taken, and moves on."""
LEAST_COUNT: Final = 6.0
"""So many 'more' are a set of their own and no change of the last count (common practice, no source)."""
MOST_LISTED: Final = 10.0
"""'+10 3x5': up to so many before an x are sets (common practice, no source)."""
MOST_OF_THE_SAME: Final = 6.0
"""'same 3x8': up to so many before an x are sets, and no other load (common practice, no source)."""
MOST_TIMES: Final = 3.0
"""Up to so many, 'same x2' tells sets (common practice, no source)."""


def _breathed(c: Cursor, atom: Atom) -> None:
    """'8, breathe, 3 more': more repetitions of the set just told, after a breath."""
    group = Group(atom.first, atom.last, reps=[Rep(atom.value, explicit=True)], explicit=True, drop=True)
    c.i += 1
    c.close(group)


def _goes_on(c: Cursor, i: int) -> bool:
    kind = c.kind(i)
    while kind in ("SEP", "AT") or (kind == "SIDE" and c.a[i].text in ("LEFT", "RIGHT")):
        i += 1
        kind = c.kind(i)
    return kind in ("S", "MORE", "DELTA", "UPTO", "SAMEREPS", "SAME", "FOR") or (
        kind in COUNTS and c.kind(i + 1) not in ("X", "FOR")
    )


def told_just_now(c: Cursor) -> bool:
    """'8 again', '8 again at 60': the count is said, so 'again' adds nothing."""
    before = c.a[c.i - 1].kind if c.i else ""
    if before not in COUNTS or not c.out.groups:
        return False
    group, follow = c.out.groups[-1], c.kind(c.i + 1)
    if follow == "AT" and c.kind(c.i + 2) in ("N", "L"):
        return group.load is None and group.lead is None and len(group.reps) == 1 and not group.like
    return follow not in (*COUNTS, "FOR", "AT")
