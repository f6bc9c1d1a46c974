"""The set grammar: atoms into groups, in one pass with a look ahead of a few, so that the cost is linear.

This module walks the atoms and hands each to the module that knows it; what a group means is settled later.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from core.read.arranging import arranged
from core.read.atoms import Atom, LoadSaid
from core.read.counting import count_of_sets, counts, leading_times
from core.read.cursor import COUNTS, Cursor
from core.read.groups import LEAST_LEAD, Group, Parsed, Placed, leads_with_load
from core.read.linking import behind_link, linked
from core.read.remark import TOP_EFFORT
from core.read.sameness import as_before, told_just_now


def parse(atoms: list[Atom], *, named: bool = True, loaded: bool = False) -> Parsed:
    """All groups and remarks of a stretch. ``named``: it names its exercise; ``loaded``: that has an outside load."""
    c = Cursor(arranged(atoms, loaded=loaded), named, loaded)
    while c.i < len(c.a):
        at = c.i
        _step(c, c.a[at])
        if c.i == at:
            c.i += 1
    _finish(c)
    return c.out


def _step(c: Cursor, atom: Atom) -> None:
    kind = atom.kind
    if kind == "DELTA" and _hangs_on(c) and not _loads_next(c):
        c.out.groups[-1].load = _hung(atom.load)
        c.out.groups[-1].last = atom.last
        c.i += 1
    elif kind == "DELTA" and (c.amending or _loads_next(c)) and c.kind(c.i + 1) in ("X", "FOR"):
        c.a[c.i] = replace(atom, kind="L", load=_hung(atom.load))
        _load(c, c.a[c.i])
    elif kind == "SAME" and atom.text == "again" and told_just_now(c):
        c.i += 1
    elif kind == "X":
        if c.kind(c.i + 1) in (*COUNTS, "S"):
            leading_times(c)
    elif kind == "NOT" and (c.out.groups or c.sets is not None or c.pending is not None):
        c.i = _past_count(c, c.i + 1)
    else:
        _STEPS.get(kind, _word)(c, atom)


def _loads_next(c: Cursor) -> bool:
    """'x8 x8 +5kg x6': on the body, a signed load before its own count is that set's."""
    told = bool(c.out.groups) and c.out.groups[-1].kinds == {"R"} and not c.loaded
    return told and c.kind(c.i + 1) in ("X", "FOR") and c.kind(c.i + 2) in ("N", "R")


def _hangs_on(c: Cursor) -> bool:
    """40s +10kg: a signed load right behind counts that have none."""
    groups = c.out.groups
    return bool(groups) and not c.gap and groups[-1].load is None and bool(groups[-1].reps) and groups[-1].lead is None


def _word(c: Cursor, atom: Atom) -> None:
    kind = atom.kind
    if kind == "DROP":
        c.drop = bool(c.out.groups)
        c.out.dropset = c.out.dropset or not c.drop
        if c.drop:
            c.out.drops_from = min(c.out.drops_from, len(c.out.groups))
    elif kind == "WEIGHTED":
        c.out.weighted = True
    elif kind == "ASSIST":
        c.out.assisted = True
    elif kind == "LAST":
        c.near_last = True
    elif kind == "ALL":
        c.near_all = True
        _so_many(c, atom)
    elif kind == "WORKING":
        c.working = True
    elif kind == "UNI":
        c.out.unilateral = True
    elif kind == "AMEND":
        c.amending = bool(c.out.groups)
    elif kind == "NTH" and c.amending:
        c.amending_nth = int(atom.value)
    elif kind == "W":
        c.out.strangers.append(atom.first)


def _planned(c: Cursor, atom: Atom) -> None:
    """'first two as planned, third only 5', 'as planned but 6 on the last': sets as the plan has them."""
    c.i += 1
    if not atom.value and (c.out.groups or not _differs_last(c)):
        return
    group = Group(atom.first, atom.last, like=True, planned=True, sets=atom.value or None)
    c.close(group)


def _differs_last(c: Cursor) -> bool:
    """Whether the last set alone is told otherwise in what follows."""
    rest = [one for one in c.a[c.i :] if one.kind not in ("SEP", "W", "AT", "M")]
    return len(rest) == 2 and {one.kind for one in rest} in ({"LAST", "N"}, {"LAST", "R"})


def _so_many(c: Cursor, atom: Atom) -> None:
    """'8 on all 3', 'all three sets of 8': how many sets there were, where they are told as one."""
    groups = c.out.groups
    if atom.value < 2:
        return
    if not groups:
        j = c.i + 1 + (c.kind(c.i + 1) in ("OF", "AT"))
        if c.kind(j) in (*COUNTS, "L") and c.sets is None:
            c.sets = atom.value
        return
    only = groups[0]
    told_once = len(groups) == 1 and len(only.reps) - leads_with_load(only) == 1 and not only.like
    alone = told_once and only.sets is None and only.lead != atom.value
    if alone and not (only.bare and only.load is None and c.named and c.kind(c.i + 1) == "AT"):
        only.sets = atom.value
        only.last = max(only.last, atom.last)


def _separator(c: Cursor, atom: Atom) -> None:
    if atom.text in ("COMMA", "NL", "STOP", "DASH", "BUT"):
        c.apart = True
    if atom.text == "NL":
        c.line = True
        c.new_line = True
    if atom.strong:
        c.parted = True
        c.working = False
        c.near_all = False
        c.near_last = False
    c.gap = atom.text


def _remark(c: Cursor, atom: Atom) -> None:
    remark = atom.remark
    if remark is None:
        return
    groups = c.out.groups
    placed = Placed(remark, len(groups) - 1, c.apart, c.line, c.near_last, c.near_all)
    follow = c.a[c.i + 1 : c.i + 3]
    placed.near_last = placed.near_last or c.kind(c.i + 1) == "LAST"
    placed.then = any(atom.kind == "SEP" and atom.text == "THEN" for atom in follow)
    placed.heads = c.kind(c.i + 1) == "SEP" and c.a[c.i + 1].text in ("COLON", "NL", "DASH")
    c.out.placed.append(placed)
    if remark.what == "warmup" and placed.then and not groups:
        c.sets = None


def _past_count(c: Cursor, i: int) -> int:
    """Past the old value in '60x9 not 60x8'."""
    while c.kind(i) in (*COUNTS, "L", "X", "S"):
        i += 1
    return i


def _load(c: Cursor, atom: Atom) -> None:
    if atom.text == "missed":
        c.close(Group(atom.first, atom.last, load=atom.load))
        c.i += 1
        return
    follow = c.kind(c.i + 1)
    if follow == "X" or (follow == "FOR" and c.kind(c.i + 2) in (*COUNTS, "S")):
        linked(c)
        return
    c.i += 1
    groups = c.out.groups
    before = groups[-1] if groups else None
    if (
        before is not None
        and before.load is None
        and not c.new_line
        and before.behind is None
        and not before.like
        and c.pending is None
        and not c.amending
        and (not _count_follows(c) or before.chained or _closes_field(c) or atom.text == "paren")
    ):
        said_after = atom.load
        for group in reversed(groups):
            if group.load is not None or group.behind is not None:
                break
            group.load = said_after
            if atom.text == "paren":
                break
        before.last = max(before.last, atom.last)
        return
    c.pending, c.pending_at = atom.load, atom.first


def _closes_field(c: Cursor) -> bool:
    """'10 reps 50kg, 9 reps 50kg': the load stands right behind its count and ends the field."""
    before = c.a[c.i - 2].kind if c.i >= 2 else ""
    return before in ("R", "N") and c.kind(c.i) in ("SEP", "") and c.out.groups[-1].explicit


def _count_follows(c: Cursor) -> bool:
    j = c.i
    effort = c.kind(j) == "AT" and c.kind(j + 1) == "N" and c.a[j + 1].value <= TOP_EFFORT
    if effort and c.kind(j + 2) in ("", "SEP", "M") and c.out.groups and c.out.groups[-1].sets is not None:
        return False
    while c.kind(j) in ("SEP", "M", "AT", "SIDE", "W", "OF"):
        j += 1
    return c.kind(j) in (*COUNTS, "X", "FOR", "S")


def _sided(c: Cursor, atom: Atom) -> None:
    if atom.text in ("LEFT", "RIGHT") and c.kind(c.i + 1) in COUNTS:
        c.side = atom.text.lower()
        return
    if c.kind(c.i + 1) == "SEP" and c.a[c.i + 1].text == "COLON" and atom.text in ("LEFT", "RIGHT"):
        c.side = atom.text.lower()
        c.i += 2
        return
    c.out.sides.append((atom.text, len(c.out.groups) - 1))


def _split_loads(c: Cursor) -> None:
    """'225, missed, zero reps': a lone number, then counts said to be repetitions, is their load."""
    groups = c.out.groups
    n = 0
    while n + 1 < len(groups):
        first, then = groups[n], groups[n + 1]
        lone = first.bare and len(first.reps) == 1 and first.sets is None and first.behind is None
        if (
            lone
            and not then.drop
            and (then.explicit or first.lead_plural or (c.loaded and _stands_out(first, then)))
            and then.load is None
            and not then.like
            and first.reps[0].n > then.most
        ):
            then.load = LoadSaid("plain", first.reps[0].n, plural=first.lead_plural)
            then.first = first.first
            del groups[n]
            for placed in c.out.placed:
                placed.after -= placed.after > n
        n += 1


def _stands_out(first: Group, then: Group) -> bool:
    """'85 for the last, got 4': a number so much larger than the count behind it is the load."""
    alone = len(then.reps) == 1 and then.lead is None and then.behind is None and then.sets is None
    return alone and first.reps[0].n >= LEAST_LEAD and first.reps[0].n >= STANDS_OUT * then.most > 0


STANDS_OUT: Final = 4.0
"""A number so many times the count behind it is hardly a count itself (common practice, no source)."""


def _finish(c: Cursor) -> None:
    _split_loads(c)
    groups = c.out.groups
    told = False  # some of those behind have their own: "2 sets of 12 and one of 10"
    for behind, group in enumerate(reversed(groups), start=1):
        heads = group.headed and group.sets is not None and 1 < group.sets == behind and not told
        told = told or group.sets is not None
        if heads:
            group.sets = None
    if c.drop or (len(groups) > 1 and all(group.arrow for group in groups[1:])):
        c.out.dropset = True
    said = c.take()
    if said is None:
        return
    waiting = [group for group in groups if group.load is None and group.lead is None and group.behind is None]
    if groups and len(waiting) == len(groups):
        for group in waiting:
            group.load = said
    elif not groups or said.way not in ("bar", "body"):
        group = Group(c.pending_at, c.pending_at, load=said)
        group.sets, c.sets = c.sets, None
        groups.append(group)


def _hung(said: LoadSaid | None) -> LoadSaid | None:
    """A signed load right behind its counts is what was hung on or taken off, not a change."""
    if said is None or said.number is None:
        return said
    return replace(said, way="added" if said.number >= 0 else "assist", number=abs(said.number))


def _counts(c: Cursor, atom: Atom) -> None:
    del atom
    counts(c)


def _linked(c: Cursor, atom: Atom) -> None:
    behind_link(c, atom.kind)


_STEPS: Final[dict[str, Callable[[Cursor, Atom], None]]] = {
    "N": _counts, "R": _counts, "H": _counts, "D": _counts, "L": _load, "S": count_of_sets, "T": count_of_sets,
    "SEP": _separator, "M": _remark, "PLANNED": _planned,
    "SAME": as_before, "SAMEREPS": as_before, "MORE": as_before, "DELTA": as_before,
    "UPTO": as_before, "AT": _linked, "FOR": _linked, "SIDE": _sided,
}  # fmt: skip
"""Which module or function knows each kind of atom; the rest are words."""
