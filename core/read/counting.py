"""Counts where they begin: a bare number, a count of sets, a leading x, a load right before its counts."""

from dataclasses import replace

from core.read.atoms import Atom, LoadSaid
from core.read.cursor import COUNTS, LIKELY_TIMES, MOST_SETS, Cursor
from core.read.groups import Group, Rep, leads_with_load
from core.read.linking import linked
from core.read.listing import counted_list, further_counts, leads_a_chain


def counts(c: Cursor, *, chained: bool = False) -> None:
    follow = c.kind(c.i + 1)
    if not chained and follow == "X" and c.kind(c.i + 2) in ("N", "L", "R", "H", "D", "S"):
        linked(c)
        return
    if not chained and follow == "FOR" and c.kind(c.i + 2) in (*COUNTS, "S"):
        linked(c)
        return
    if not chained and _named_at_loads(c):
        return
    if not chained and c.a[c.i].kind == "N" and _named_follows(c):
        c.sets = c.a[c.i].value
        c.i += 1
        return
    if not chained and _sets_of(c):
        c.sets = c.a[c.i].value
        c.i += 2
        return
    if not chained and (_load_behind_chain(c) or _plural_before_count(c) or _plural_behind_all(c)):
        return
    if c.a[c.i].kind == "N" and (leads_a_chain(c) or (not chained and _times_below(c))):
        number = c.a[c.i]
        c.pending = LoadSaid("plain", number.value, plural=number.plural)
        c.pending_at = number.first
        c.i += 1
        return
    atom = c.a[c.i]
    group = c.start(atom)
    group.bare = not chained and atom.kind == "N" and group.load is None
    group.chained = chained
    group.lead_plural = atom.plural
    c.i += 1
    c.append(group, atom)
    if group.sets is not None and group.sets > 1:
        if counted_list(c, group):
            group.sets = None
    else:
        further_counts(c, group)
    c.close(group)


def _named_at_loads(c: Cursor) -> bool:
    """Doubles: 90, 95, 100 and singles at 100, 105: one set of the named count at each load."""
    named = c.a[c.i]
    if named.kind != "R" or named.text != "named" or not named.plural or c.sets is not None:
        return False
    j = c.i + 1
    if not (c.kind(j) == "AT" or (c.kind(j) == "SEP" and c.a[j].text in ("COLON", "DASH"))):
        return False
    loads: list[Atom] = []
    j += 1
    while c.kind(j) in ("N", "L") and c.a[j].value >= 0:
        loads.append(c.a[j])
        j += 1
        if c.kind(j) == "SEP" and c.kind(j + 1) in ("N", "L"):
            j += 1
    if len(loads) < 2 or any(one.kind == "N" and one.value < 10 for one in loads):
        return False
    for one in loads:
        said = one.load or LoadSaid("plain", one.value, plural=one.plural)
        group = Group(
            named.first, one.last, load=said, reps=[Rep(named.value, explicit=True)], explicit=True, chained=True
        )
        c.close(group)
    c.i = j
    return True


def _named_follows(c: Cursor) -> bool:
    """3 doubles: the number counts sets."""
    j = c.i + 1
    return c.kind(j) == "R" and c.a[j].text == "named" and c.a[j].plural and c.a[c.i].value <= MOST_SETS


def _sets_of(c: Cursor) -> bool:
    """Squat 3 of 12: a small number of a larger one counts sets."""
    number, j = c.a[c.i], c.i + 2
    if not c.named or number.kind != "N" or c.kind(c.i + 1) != "OF" or c.kind(j) != "N":
        return False
    return number.value <= min(MOST_SETS / 2, c.a[j].value) and not c.a[j].plural


def _load_behind_chain(c: Cursor) -> bool:
    """3x8 60, 3 sets of 8 squats 60: a number too large for a count, right behind sets and reps, is the load."""
    groups, number = c.out.groups, c.a[c.i]
    if not groups or c.gap or number.kind != "N" or c.kind(c.i + 1) in ("X", "FOR", "N"):
        return False
    group = groups[-1]
    told = c.loaded and len(group.reps) == 1 and (group.sets is not None or group.explicit) and group.lead is None
    chain = group.lead is not None and group.lead <= MOST_SETS / 2
    if group.load is not None or group.behind is not None or not (told or chain):
        return False
    if number.value < 2 * max(rep.n for rep in group.reps):
        return False
    group.load = LoadSaid("plain", number.value, plural=number.plural)
    group.last = number.last
    c.i += 1
    return True


def _plural_before_count(c: Cursor) -> bool:
    """32s 40m x 3: a plural right before a time, a distance or a chain is the load."""
    number, j = c.a[c.i], c.i + 1
    if not number.plural or c.kind(j) not in ("D", "H") or number.kind != "N":
        return False
    c.pending = LoadSaid("plain", number.value, plural=True)
    c.pending_at = number.first
    c.i = j
    return True


def _plural_behind_all(c: Cursor) -> bool:
    """'10, 10, 9, 20s': a plural that closes a list of counts without a load is their load."""
    number, groups = c.a[c.i], c.out.groups
    closes = c.kind(c.i + 1) in ("", "M") or (c.kind(c.i + 1) == "SEP" and c.a[c.i + 1].text in ("NL", "STOP"))
    if number.kind != "N" or not number.plural or not groups or not closes or c.pending is not None:
        return False
    if any(
        one.load or one.lead or one.behind or one.like or any(rep.plural or rep.kind != "R" for rep in one.reps)
        for one in groups
    ):
        return False
    for group in groups:
        group.load = LoadSaid("plain", number.value, plural=True)
    groups[-1].last = number.last
    c.i += 1
    return True


def _times_below(c: Cursor) -> bool:
    """405, then x3 on lines of their own."""
    j = c.i + 1
    return c.kind(j) == "SEP" and c.kind(j + 1) == "X" and c.kind(j + 2) in ("N", "R") and not c.out.groups


def leading_times(c: Cursor) -> None:
    """x8 behind a load, or x3 behind a finished group."""
    groups = c.out.groups
    follow = c.a[c.i + 1]
    if (
        not groups
        and c.pending is None
        and _heads(c, c.i + 2)
        and follow.kind == "N"
        and (follow.value <= MOST_SETS / 2 and _nothing_else(c, c.i + 2))
    ):
        c.out.rounds = follow.value
        c.i += 2
        return
    if c.amending or c.pending is not None or not groups or follow.kind in ("R", "H", "D"):
        c.i += 1
        counts(c, chained=True)
        return
    if follow.kind == "S":
        c.i += 1
        return
    group = groups[-1]
    parted = c.gap in ("STOP", "NL", "THEN") or (bool(c.gap) and _counts_again(group, follow.value))
    if group.sets is None and group.reps and follow.value <= MOST_SETS and not parted and not _in_a_run(c, group):
        group.sets = follow.value
        group.last = follow.last
        c.i += 2
        return
    c.i += 1
    counts(c, chained=True)


def _counts_again(before: Group, value: float) -> bool:
    """'80x9, x8', '100x5, x4': behind a comma, a number near the count before it counts repetitions again."""
    last = before.reps[-1].n if before.reps else 0.0
    return value > MOST_SETS / 2 or (value > LIKELY_TIMES and value >= last / 2) or value == last - 1


def _in_a_run(c: Cursor, before: Group) -> bool:
    """x12, x12, x10: each x counts repetitions where several follow one another, each behind its comma."""
    further = c.kind(c.i + 2) == "SEP" and c.kind(c.i + 3) == "X" and c.kind(c.i + 4) in ("N", "R")
    spaced = c.a[c.i].text == "x" and before.chained and c.a[c.i + 1].value > LIKELY_TIMES
    if spaced and before.load is None and before.lead is None:
        return True
    loadless = before.load is None and before.lead is None and before.chained
    return bool(c.gap) and (further or loadless)


def _heads(c: Cursor, i: int) -> bool:
    """Whether a count of sets stands as a heading: before a colon or a line's end, or alone where no name is."""
    if c.kind(i) == "SEP":
        return c.a[i].text in ("COLON", "NL")
    return not c.named and i >= len(c.a)


def _nothing_else(c: Cursor, i: int) -> bool:
    return all(atom.kind in ("SEP", "W") for atom in c.a[i:])


def count_of_sets(c: Cursor, atom: Atom) -> None:
    groups = c.out.groups
    times = c.kind(c.i + 1) in ("N", "R") and c.a[c.i + 1].value > atom.value
    if atom.kind == "T" and not groups and c.pending is not None and not times:
        c.a[c.i] = replace(atom, kind="R")
        counts(c, chained=True)
        return
    if atom.strong:
        c.out.rounds = atom.value
    j = c.i + 1
    if (
        c.kind(j) in ("OF", "SEP", "X", "FOR", "AT")
        and c.kind(j + 1) in (*COUNTS, "L")
        and not (c.kind(j) == "SEP" and c.a[j].text in ("NL", "STOP", "THEN") and groups)
    ):
        j += 1
    while c.kind(j) == "WORKING":
        c.working = True
        j += 1
    direct = c.kind(j) in ("N", "R", "H", "D") and not (atom.kind == "T" and not c.kind(j))
    before = groups[-1] if groups else None
    if (
        before is not None
        and before.sets is None
        and before.reps
        and not (direct and c.kind(c.i + 1) == "OF")
        and (not direct or atom.text == "twice")
    ):
        ended = c.i > 0 and c.a[c.i - 1].kind == "AT"
        if ended and len(groups) > 1 and sum((one.sets or 1) * max(1, _listed(one)) for one in groups) == atom.value:
            c.i += 1
            return
        before.sets = atom.value
        before.last = atom.last
        if before.lead is None and len(before.reps) > 1 and _listed(before) == atom.value:
            before.sets = None
        if atom.text == "twice" and c.near_all:
            c.out.rounds = atom.value
        c.i += 1
        return
    c.bound = atom.text == "run" or (c.kind(c.i + 1) == "M" and c.kind(c.i + 2) in ("AT", "OF", "FOR"))
    if not direct and before is None:
        c.sets = atom.value
        c.out.rounds = atom.value
        c.i += 1
        return
    c.sets = atom.value
    c.i = j


def _listed(group: Group) -> int:
    """How many counts a group lists, a load in front apart."""
    return len(group.reps) - leads_with_load(group)
