"""Sets as the last one, with what is changed said beside it: same, again, one less, +2.5, up to 24."""

from core.read.atoms import Atom, LoadSaid
from core.read.cursor import COUNTS, Cursor
from core.read.groups import Group, Rep
from core.read.listing import further_counts


def as_before(c: Cursor, atom: Atom) -> None:
    """As the last set, with what is changed said beside it."""
    if atom.kind == "MORE" and atom.value > 0 and c.out.groups and c.gap:
        _breathed(c, atom)
        return
    group = Group(atom.first, atom.last, like=True)
    seen = False
    while c.i < len(c.a):
        atom = c.a[c.i]
        kind = atom.kind
        if kind in ("SAME", "SAMEREPS"):
            pass
        elif kind == "MORE":
            group.reps_change = atom.value
        elif kind == "SIDE" and atom.text in ("LEFT", "RIGHT"):
            c.out.sides.append((atom.text, len(c.out.groups)))
        elif kind == "DELTA":
            group.load_change = atom.load
        elif kind == "UPTO" and c.kind(c.i + 1) in ("N", "L"):
            c.i += 1
            target = c.a[c.i]
            group.load = target.load or LoadSaid("plain", target.value, plural=target.plural)
            if c.kind(c.i + 1) == "X" or c.kind(c.i + 1) == "FOR":
                c.i += 1
        elif kind == "L" and atom.load is not None:
            group.load = atom.load
        elif (
            (kind == "SEP" and atom.text in ("COMMA", "AND", "BUT", "COLON", "DASH") and _goes_on(c, c.i + 1))
            or (
                kind == "SEP"
                and atom.text == "STOP"
                and group.load_change
                and not group.reps
                and c.kind(c.i + 1) == "R"
            )
            or (kind == "AT" and c.kind(c.i + 1) in ("DELTA", "R", "H"))
            or (kind == "SEP" and atom.text == "THEN" and _goes_on(c, c.i + 1))
        ):
            pass
        elif kind == "AT" and c.kind(c.i + 1) in ("L", "N") and (c.kind(c.i + 1) == "L" or c.a[c.i + 1].value > 10):
            c.i += 1
            target = c.a[c.i]
            group.load = target.load or LoadSaid("plain", target.value, plural=target.plural)
        elif kind in ("FOR", "X", "OF") and c.kind(c.i + 1) in (*COUNTS, "S"):
            pass
        elif kind == "S" and not seen:
            group.sets = atom.value
        elif kind in COUNTS and not group.reps:
            if kind == "N" and c.kind(c.i + 1) == "X" and c.kind(c.i + 2) in ("N", "R"):
                break
            c.i += 1
            c.append(group, atom)
            group.chained = True
            further_counts(c, group)
            group.last = max(group.last, atom.last)
            seen = True
            continue
        else:
            break
        group.last = max(group.last, atom.last)
        c.i += 1
    if c.pending is not None and group.load is None:
        group.load = c.take()
    if group.sets is None:
        group.sets, c.sets = c.sets, None
    group.drop, c.drop = c.drop, False
    c.new_line = False
    c.close(group)


def _breathed(c: Cursor, atom: Atom) -> None:
    """'8, breathe, 3 more': more repetitions of the set just told, after a breath."""
    group = Group(atom.first, atom.last, reps=[Rep(atom.value, explicit=True)], explicit=True, drop=True)
    c.i += 1
    c.close(group)


def _goes_on(c: Cursor, i: int) -> bool:
    kind = c.kind(i)
    while kind in ("SEP", "AT"):
        i += 1
        kind = c.kind(i)
    return kind in ("MORE", "DELTA", "UPTO", "SAMEREPS", "SAME", "FOR") or (
        kind in COUNTS and c.kind(i + 1) not in ("X", "FOR")
    )


def told_just_now(c: Cursor) -> bool:
    """'8 again': the count is said, so 'again' adds nothing."""
    before = c.a[c.i - 1].kind if c.i else ""
    return before in COUNTS and bool(c.out.groups) and c.kind(c.i + 1) not in (*COUNTS, "FOR", "AT")
