"""Further counts at one load (8,8,7 or 8 8 7 or 8/8/7), and when a number begins something else instead."""

from core.read.cursor import COUNTS, MOST_SETS, OPPOSITE, Cursor
from core.read.groups import LEAST_LEAD, Group, leads_with_load


def further_counts(c: Cursor, group: Group) -> None:
    """Further counts at the same load: 8,8,7 or 8 8 7 or 8/8/7."""
    while True:
        j, gap = c.i, " "
        if c.kind(j) == "SEP" and c.a[j].text in (
            "COMMA",
            "SLASH",
            "AND",
            "DASH",
            "ARROW",
            "THEN",
            "NL",
            "PLUS",
            "COLON",
        ):
            gap = c.a[j].text
            j += 1
            if c.kind(j) == "SEP" and c.a[j].text in ("AND", "THEN", "NL"):
                j += 1
        elif c.kind(j) == "PLUS":
            gap = "PLUS"
            j += 1
        if gap in ("NL", "COLON", "THEN") and not _same_kind_list(c, group, gap, j):
            return
        side: str | None = None
        if c.kind(j) == "SIDE" and c.a[j].text in ("LEFT", "RIGHT") and c.kind(j + 1) in ("N", "R", "H"):
            side, j = c.a[j].text.lower(), j + 1
        elif c.kind(j) == "SIDE" and c.a[j].text == "OTHERSIDE" and c.kind(j + 1) in ("N", "R", "H"):
            side, j = OPPOSITE.get(group.reps[-1].side or ""), j + 1
        if c.kind(j) not in COUNTS or not _continues(c, group, j):
            return
        c.side = side
        group.gaps.append(gap)
        c.i = j + 1
        c.append(group, c.a[j])


def _same_kind_list(c: Cursor, group: Group, gap: str, j: int) -> bool:
    if gap == "THEN":
        return not group.chained and c.kind(j) == "N" and c.kind(j + 1) in ("SEP", "", "M") and not c.drop
    if gap == "COLON":
        return group.bare and len(group.reps) == 1
    return gap == "NL" and (group.bare or group.load is not None) and not group.chained


def _continues(c: Cursor, group: Group, j: int) -> bool:
    atom = c.a[j]
    after = c.kind(j + 1)
    if after in ("X", "FOR") and c.kind(j + 2) in ("N", "L", "R", "S", "H", "D"):
        return False
    if (
        after == "AT"
        and c.kind(j + 2) in ("N", "L")
        and (group.load or group.lead is not None or group.behind is not None or leads_with_load(group))
    ):
        return c.a[j + 2].kind == "N" and c.a[j + 2].value <= 10
    if atom.plural and not group.reps[-1].plural:
        return False
    if atom.kind == "N" and atom.value != int(atom.value):
        return False
    if atom.kind == "N" and c.kind(j + 1) == "R" and c.a[j + 1].text == "named":
        return False
    kinds = group.kinds
    own = "R" if atom.kind == "N" else atom.kind
    if own not in kinds and not (own == "R" and kinds == {"H"}):
        return False
    if own == "R" and kinds == {"H"}:
        return atom.value >= 5
    if group.sets is not None and not group.bare:
        return False
    if c.loaded and group.explicit and len(group.reps) == 1 and atom.kind == "N" and atom.value >= 2 * group.most:
        return atom.value < LEAST_LEAD
    if leads_here(c, j):
        return False
    if group.load is not None or group.lead is not None or len(group.reps) > 1:
        most = group.most if group.load is not None or group.lead is not None else group.most_later
        return not (atom.value >= 2.2 * most and atom.value >= 20 and own == "R")
    return True


def leads_here(c: Cursor, j: int) -> bool:
    saved, c.i = c.i, j
    try:
        return leads_a_chain(c)
    finally:
        c.i = saved


def leads_a_chain(c: Cursor) -> bool:
    """60 3x8, 60: 3x8, 60 3 sets of 8: a number right before a count of sets is the load."""
    j = c.i + 1
    if c.kind(j) == "SEP" and c.a[j].text in ("COLON", "DASH"):
        j += 1
    if c.kind(j) == "S" and c.a[j].text == "" and c.kind(j + 1) in ("OF", *COUNTS):
        return c.a[c.i].value > MOST_SETS / 2
    if c.kind(j) != "N" or c.kind(j + 1) != "X" or c.kind(j + 2) not in ("N", "R", "H"):
        return False
    first, sets, reps = c.a[c.i].value, c.a[j].value, c.a[j + 2].value
    if c.out.groups and c.out.groups[-1].load is None and c.gap == "":
        return False
    return sets <= 10 and reps <= 30 and (first >= 12 or c.a[c.i].plural) and sets < first


def counted_list(c: Cursor, group: Group) -> bool:
    """3x8,8,7 where the count of sets is the length of the list that follows."""
    sets = group.sets
    group.sets = None
    mark, reps, gaps, last = c.i, list(group.reps), list(group.gaps), group.last
    further_counts(c, group)
    if len(group.reps) == sets or (len(group.reps) - 1 == sets and leads_with_load(group)):
        return True
    c.i, group.reps, group.gaps, group.last, group.sets = mark, reps, gaps, last, sets
    return False
