"""Quantities linked by x, by 'for' or by an at-sign: 60x8, 3x8 @ 60, 60 for 8, 3 sets of 8 with the 20s."""

from dataclasses import replace
from typing import Final

from core.read.atoms import Atom, LoadSaid, LoadWay
from core.read.chains import MOST_LIKELY_SETS, roles
from core.read.cursor import COUNTS, LIKELY_TIMES, MOST_SETS, Cursor
from core.read.groups import Group, leads_with_load
from core.read.listing import counted_list, further_counts
from core.read.remark import LEAST_FELT, TOP_EFFORT

LONGEST_CHAIN: Final = 12
"""Quantities linked by x in one chain, at most; what follows starts anew."""


def linked(c: Cursor) -> None:
    """Quantities linked by x or for; roles follow from kinds, and what stays open is kept open."""
    parts = [c.a[c.i]]
    links: list[Atom] = []
    j = c.i + 1
    while c.kind(j) in ("X", "FOR") and len(parts) < LONGEST_CHAIN:
        k = j + 1
        if c.kind(k) not in ("N", "L", "R", "H", "D", "S"):
            break
        links.append(c.a[j])
        if c.kind(k) == "N" and c.kind(k + 1) == "R" and c.a[k + 1].text == "named" and c.a[k + 1].plural:
            c.sets, k = c.a[k].value, k + 1
        parts.append(c.a[k])
        j = k + 1
        if _lists_by_times(parts, links) and c.kind(j) == "SEP" and c.kind(j + 1) == "X":
            j += 1
    c.i = j
    if (
        c.pending is not None
        and c.pending.way in (("bar", "body", "plates") if c.loaded else ("bar", "plates"))
        and parts[0].kind == "N"
        and (len(parts) == 2 and parts[1].kind in ("N", "R") and parts[0].value > MOST_SETS)
    ):
        c.pending = None
    group = c.start(parts[0])
    group.chained = True
    group.first = min(group.first, parts[0].first)
    group.last = parts[-1].last
    parted = c.kind(j) == "SEP" and c.a[j].text == "COMMA"
    counts_next = c.kind(j + 1) in ("S", "R") or (c.kind(j + 1) == "N" and c.kind(j + 2) not in ("X", "FOR"))
    pair = len(parts) == 2 and parts[0].value == 2 and parts[1].kind == "L"
    one = len(parts) == 2 and parts[0].value == 1 and parts[1].kind == "L" and c.kind(j + 1) not in ("X", "FOR")
    if (pair and (c.kind(j) in COUNTS or (parted and counts_next))) or (one and c.kind(j) in COUNTS):
        way: LoadWay = "one" if one else "per_hand"
        c.pending, c.pending_at = replace(parts[1].load or LoadSaid("plain"), way=way), parts[0].first
        return
    roles(group, parts, [link.kind for link in links], listed=_lists_by_times(parts, links))
    if parts[-1].kind == "S" and len(parts) == 2 and parts[0].kind in ("N", "L"):
        _sets_then_counts(c, group, parts[0])
    elif group.reps:
        _extend(c, group)
    c.close(group)


def _sets_then_counts(c: Cursor, group: Group, first: Atom) -> None:
    """70 for 3 sets of 8: the counts come behind, so what stands before is the load."""
    j = c.i + 1 if c.kind(c.i) == "OF" else c.i
    if c.kind(j) not in COUNTS:
        return
    group.load = first.load or LoadSaid("plain", first.value, plural=first.plural)
    group.reps.clear()
    c.i = j + 1
    c.append(group, c.a[j])
    if not counted_list(c, group):
        group.last = max(group.last, c.a[j].last)


def _lists_by_times(parts: list[Atom], links: list[Atom]) -> bool:
    """80kg x12 x12 x10: each x stands at its own count, so these are counts and not sets."""
    if len(parts) < 3 or any(part.kind not in ("N", "R") for part in parts[1:]):
        return False
    return len(parts) > 3 or all(link.text == "x" for link in links) or _falls(parts)


def _falls(parts: list[Atom]) -> bool:
    """45s x 12 x 11: a last number a little below the one before it, and too many for sets, counts repetitions."""
    before, last = parts[1].value, parts[2].value
    falls = LIKELY_TIMES < last < before and last >= before - MOST_FALL
    return falls or MOST_LIKELY_SETS < last <= before


MOST_FALL: Final = 3.0
"""Repetitions lost from one set to the next, where a chain is read so (common practice, no source)."""


def _extend(c: Cursor, group: Group) -> None:
    last = group.reps.pop()
    stub = Atom({"R": "N"}.get(last.kind, last.kind), group.last, group.last, last.n, plural=last.plural)
    c.append(group, stub)
    if group.sets is None or group.sets == 1:
        further_counts(c, group)
    elif counted_list(c, group):
        group.sets = None


def behind_link(c: Cursor, kind: str) -> None:
    """An at-sign or 'for' that no chain has eaten."""
    nxt = c.i + 1
    groups = c.out.groups
    if kind == "AT" and c.kind(nxt) == "N" and groups and c.kind(nxt + 1) not in ("X", "FOR"):
        group, number = groups[-1], c.a[nxt]
        if group.behind is not None and group.behind > 10 >= number.value and group.load is None:
            group.load = LoadSaid("plain", group.behind)
            group.behind = None
        if number.plural and group.reps and group.load is None and group.behind is None:
            group.load = LoadSaid("plain", number.value, plural=True)
            group.last = number.last
            _back_fill(c, group)
            c.i = nxt + 1
            return
        if group.reps and group.behind is None and group.lead is None and group.load is None:
            group.behind = number.value
            group.last = number.last
            _back_fill(c, group)
            c.i = nxt + 1
            return
        if group.reps and group.behind is None:
            group.behind = c.a[nxt].value
            group.last = c.a[nxt].last
            c.i = nxt + 1
            return
    if kind == "AT" and c.kind(nxt) == "N" and c.kind(nxt + 1) not in ("X", "FOR"):
        number = c.a[nxt]
        if groups and groups[-1].like and groups[-1].behind is None and LEAST_FELT <= number.value <= TOP_EFFORT:
            groups[-1].behind = number.value
            groups[-1].last = number.last
            c.i = nxt + 1
            return
        c.pending = LoadSaid("plain", number.value, plural=number.plural)
        c.pending_at = number.first
        c.i = nxt + 1
        return
    c.i = nxt


def _back_fill(c: Cursor, group: Group) -> None:
    """A load said at the end of a list counts for the sets before it that have none."""
    for earlier in reversed(c.out.groups[:-1]):
        if earlier.load is not None or earlier.behind is not None or earlier.lead is not None or earlier.bare is False:
            break
        if leads_with_load(earlier):
            break
        earlier.load, earlier.behind = group.load, group.behind
