"""The set grammar: atoms into groups, in one pass with a look ahead of a few, so that the cost is linear."""

from dataclasses import replace
from typing import Final

from core.read.atoms import Atom, LoadSaid
from core.read.chains import roles
from core.read.groups import Group, Parsed, Placed, Rep
from core.read.modifiers import Remark

LONGEST_CHAIN: Final = 12
"""Quantities linked by x in one chain, at most; what follows starts anew."""
MOST_SETS: Final = 20.0
"""More sets than this in one message are not counted out by a number (common practice, no source)."""
_COUNTS: Final = ("N", "R", "H", "D")


class Grammar:
    """One pass over a stretch's atoms, with a look ahead of a few; no way back, so the cost is linear."""

    def __init__(self, atoms: list[Atom], *, named: bool = True) -> None:
        self._a = _remarks_behind(atoms)
        self._named = named
        self._i = 0
        self._out = Parsed([], [])
        self._pending: LoadSaid | None = None
        self._pending_at = 0
        self._sets: float | None = None
        self._apart = False
        self._line = False
        self._near_last = False
        self._near_all = False
        self._drop = False
        self._working = False
        self._gap = ""
        self._side: str | None = None
        self._parted = False
        self._amending = False
        self._amending_nth: int | None = None
        self._new_line = False

    def parse(self) -> Parsed:
        """All groups and remarks of the stretch."""
        while self._i < len(self._a):
            at = self._i
            self._step(self._a[at])
            if self._i == at:
                self._i += 1
        self._finish()
        return self._out

    def _kind(self, i: int) -> str:
        return self._a[i].kind if i < len(self._a) else ""

    def _step(self, atom: Atom) -> None:
        kind = atom.kind
        if kind in ("N", "R", "H", "D"):
            self._counts()
        elif kind == "L":
            self._load(atom)
        elif kind in ("S", "T"):
            self._set_count(atom)
        elif kind == "SEP":
            self._separator(atom)
        elif kind == "M" and atom.remark is not None:
            self._remark(atom.remark)
        elif kind == "DELTA" and self._hangs_on():
            self._out.groups[-1].load = _hung(atom.load)
            self._out.groups[-1].last = atom.last
            self._i += 1
        elif kind == "SAME" and atom.text == "again" and self._told_just_now():
            self._i += 1
        elif kind in ("SAME", "SAMEREPS", "MORE", "DELTA", "UPTO"):
            self._sameness(atom)
        elif kind == "X" and self._kind(self._i + 1) in ("N", "R", "S", "H", "D"):
            self._leading_times()
        elif kind == "AT" or kind == "FOR":
            self._link(kind)
        elif kind == "SIDE":
            self._sided(atom)
        elif kind == "NOT" and self._out.groups:
            self._i = self._past_count(self._i + 1)
        else:
            self._word(atom)

    def _told_just_now(self) -> bool:
        """'8 again': the count is said, so 'again' adds nothing."""
        before = self._a[self._i - 1].kind if self._i else ""
        return before in _COUNTS and bool(self._out.groups) and self._kind(self._i + 1) not in (*_COUNTS, "FOR", "AT")

    def _hangs_on(self) -> bool:
        """40s +10kg: a signed load right behind counts that have none."""
        groups = self._out.groups
        return (
            bool(groups)
            and not self._gap
            and groups[-1].load is None
            and bool(groups[-1].reps)
            and groups[-1].lead is None
        )

    def _word(self, atom: Atom) -> None:
        kind = atom.kind
        if kind == "DROP":
            self._drop = bool(self._out.groups)
            self._out.dropset = self._out.dropset or not self._drop
        elif kind == "WEIGHTED":
            self._out.weighted = True
        elif kind == "ASSIST":
            self._out.assisted = True
        elif kind == "LAST":
            self._near_last = True
        elif kind == "ALL":
            self._near_all = True
        elif kind == "WORKING":
            self._working = True
        elif kind == "UNI":
            self._out.unilateral = True
        elif kind == "AMEND":
            self._amending = bool(self._out.groups)
        elif kind == "NTH" and self._amending:
            self._amending_nth = int(atom.value)
        elif kind == "W":
            self._out.strangers.append(atom.first)

    def _separator(self, atom: Atom) -> None:
        if atom.text in ("COMMA", "NL", "STOP", "DASH", "BUT"):
            self._apart = True
        if atom.text == "NL":
            self._line = True
            self._new_line = True
        if atom.strong:
            self._parted = True
            self._working = False
            self._near_all = False
            self._near_last = False
        self._gap = atom.text

    def _remark(self, remark: Remark) -> None:
        groups = self._out.groups
        placed = Placed(remark, len(groups) - 1, self._apart, self._line, self._near_last, self._near_all)
        follow = self._a[self._i + 1 : self._i + 3]
        placed.then = any(atom.kind == "SEP" and atom.text == "THEN" for atom in follow)
        placed.heads = self._kind(self._i + 1) == "SEP" and self._a[self._i + 1].text in ("COLON", "NL", "DASH")
        self._out.placed.append(placed)

    # loads

    def _past_count(self, i: int) -> int:
        """Past the old value in '60x9 not 60x8'."""
        while self._kind(i) in (*_COUNTS, "L", "X"):
            i += 1
        return i

    def _load(self, atom: Atom) -> None:
        follow = self._kind(self._i + 1)
        if follow == "X" or (follow == "FOR" and self._kind(self._i + 2) in (*_COUNTS, "S")):
            self._chain()
            return
        self._i += 1
        groups = self._out.groups
        before = groups[-1] if groups else None
        if (
            before is not None
            and before.load is None
            and not self._new_line
            and before.behind is None
            and not before.like
            and self._pending is None
            and not self._amending
            and (not self._count_follows() or before.chained or self._closes_field() or atom.text == "paren")
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
        self._pending, self._pending_at = atom.load, atom.first

    def _closes_field(self) -> bool:
        """'10 reps 50kg, 9 reps 50kg': the load stands right behind its count and ends the field."""
        before = self._a[self._i - 2].kind if self._i >= 2 else ""
        return before in ("R", "N") and self._kind(self._i) in ("SEP", "") and self._out.groups[-1].explicit

    def _count_follows(self) -> bool:
        j = self._i
        while self._kind(j) in ("SEP", "M", "AT", "SIDE", "W", "OF"):
            j += 1
        return self._kind(j) in (*_COUNTS, "X", "FOR", "S")

    def _take(self) -> LoadSaid | None:
        said, self._pending = self._pending, None
        return said

    # chains and counts

    def _link(self, kind: str) -> None:
        """An at-sign or 'for' that no chain has eaten."""
        nxt = self._i + 1
        groups = self._out.groups
        if kind == "AT" and self._kind(nxt) == "N" and groups and self._kind(nxt + 1) not in ("X", "FOR"):
            group, number = groups[-1], self._a[nxt]
            if group.behind is not None and group.behind > 10 >= number.value and group.load is None:
                group.load = LoadSaid("plain", group.behind)
                group.behind = None
            if number.plural and group.reps and group.load is None and group.behind is None:
                group.load = LoadSaid("plain", number.value, plural=True)
                group.last = number.last
                self._back_fill(group)
                self._i = nxt + 1
                return
            if group.reps and group.behind is None and group.lead is None and group.load is None:
                group.behind = number.value
                group.last = number.last
                self._back_fill(group)
                self._i = nxt + 1
                return
            if group.reps and group.behind is None:
                group.behind = self._a[nxt].value
                group.last = self._a[nxt].last
                self._i = nxt + 1
                return
        if kind == "AT" and self._kind(nxt) == "N" and self._kind(nxt + 1) not in ("X", "FOR"):
            number = self._a[nxt]
            self._pending = LoadSaid("plain", number.value, plural=number.plural)
            self._pending_at = number.first
            self._i = nxt + 1
            return
        self._i = nxt

    def _back_fill(self, group: Group) -> None:
        """A load said at the end of a list counts for the sets before it that have none."""
        for earlier in reversed(self._out.groups[:-1]):
            if (
                earlier.load is not None
                or earlier.behind is not None
                or earlier.lead is not None
                or earlier.bare is False
            ):
                break
            earlier.load, earlier.behind = group.load, group.behind

    def _leading_times(self) -> None:
        """x8 behind a load, or x3 behind a finished group."""
        groups = self._out.groups
        follow = self._a[self._i + 1]
        if (
            not groups
            and self._pending is None
            and self._heads(self._i + 2)
            and follow.kind == "N"
            and (follow.value <= MOST_SETS / 2 and self._nothing_else(self._i + 2))
        ):
            self._out.rounds = follow.value
            self._i += 2
            return
        if self._amending or self._pending is not None or not groups or follow.kind in ("R", "H", "D"):
            self._i += 1
            self._counts(chained=True)
            return
        if follow.kind == "S":
            self._i += 1
            return
        group = groups[-1]
        parted = self._gap in ("STOP", "NL", "THEN") or (bool(self._gap) and follow.value > MOST_SETS / 2)
        if group.sets is None and group.reps and follow.value <= MOST_SETS and not parted:
            group.sets = follow.value
            group.last = follow.last
            self._i += 2
            return
        self._i += 1
        self._counts(chained=True)

    def _heads(self, i: int) -> bool:
        """Whether a count of sets stands as a heading: before a colon or a line's end, or alone where no name is."""
        if self._kind(i) == "SEP":
            return self._a[i].text in ("COLON", "NL")
        return not self._named and i >= len(self._a)

    def _nothing_else(self, i: int) -> bool:
        return all(atom.kind in ("SEP", "W") for atom in self._a[i:])

    def _apart_line(self) -> bool:
        return self._new_line

    def _counts(self, *, chained: bool = False) -> None:
        follow = self._kind(self._i + 1)
        if not chained and follow == "X" and self._kind(self._i + 2) in ("N", "L", "R", "H", "D", "S"):
            self._chain()
            return
        if not chained and follow == "FOR" and self._kind(self._i + 2) in (*_COUNTS, "S"):
            self._chain()
            return
        if not chained and self._named_at_loads():
            return
        if not chained and self._a[self._i].kind == "N" and self._named_follows():
            self._sets = self._a[self._i].value
            self._i += 1
            return
        if not chained and (self._load_behind_chain() or self._plural_before_count()):
            return
        if self._a[self._i].kind == "N" and (self._lead_then_chain() or (not chained and self._times_below())):
            number = self._a[self._i]
            self._pending = LoadSaid("plain", number.value, plural=number.plural)
            self._pending_at = number.first
            self._i += 1
            return
        atom = self._a[self._i]
        group = self._start(atom)
        group.bare = not chained and atom.kind == "N" and group.load is None
        group.chained = chained
        group.lead_plural = atom.plural
        self._i += 1
        self._append(group, atom)
        if group.sets is not None and group.sets > 1:
            if self._counted_list(group):
                group.sets = None
        else:
            self._list(group)
        self._close(group)

    def _named_at_loads(self) -> bool:
        """Doubles: 90, 95, 100 and singles at 100, 105: one set of the named count at each load."""
        named = self._a[self._i]
        if named.kind != "R" or named.text != "named" or not named.plural or self._sets is not None:
            return False
        j = self._i + 1
        if not (self._kind(j) == "AT" or (self._kind(j) == "SEP" and self._a[j].text in ("COLON", "DASH"))):
            return False
        loads: list[Atom] = []
        j += 1
        while self._kind(j) in ("N", "L") and self._a[j].value >= 0:
            loads.append(self._a[j])
            j += 1
            if self._kind(j) == "SEP" and self._kind(j + 1) in ("N", "L"):
                j += 1
        if len(loads) < 2 or any(one.kind == "N" and one.value < 10 for one in loads):
            return False
        for one in loads:
            said = one.load or LoadSaid("plain", one.value, plural=one.plural)
            group = Group(
                named.first, one.last, load=said, reps=[Rep(named.value, explicit=True)], explicit=True, chained=True
            )
            self._close(group)
        self._i = j
        return True

    def _named_follows(self) -> bool:
        """3 doubles: the number counts sets."""
        j = self._i + 1
        return (
            self._kind(j) == "R"
            and self._a[j].text == "named"
            and self._a[j].plural
            and self._a[self._i].value <= MOST_SETS
        )

    def _load_behind_chain(self) -> bool:
        """3x8 60: a number too large for a count, right behind sets x reps, is the load."""
        groups, number = self._out.groups, self._a[self._i]
        if not groups or self._gap or number.kind != "N" or self._kind(self._i + 1) in ("X", "FOR", "N"):
            return False
        group = groups[-1]
        if group.lead is None or group.load is not None or group.behind is not None or group.lead > MOST_SETS / 2:
            return False
        if number.value < 2 * max(rep.n for rep in group.reps):
            return False
        group.load = LoadSaid("plain", number.value, plural=number.plural)
        group.last = number.last
        self._i += 1
        return True

    def _plural_before_count(self) -> bool:
        """32s 40m x 3: a plural right before a time, a distance or a chain is the load."""
        number, j = self._a[self._i], self._i + 1
        if not number.plural or self._kind(j) not in ("D", "H") or number.kind != "N":
            return False
        self._pending = LoadSaid("plain", number.value, plural=True)
        self._pending_at = number.first
        self._i = j
        return True

    def _times_below(self) -> bool:
        """405, then x3 on lines of their own."""
        j = self._i + 1
        return (
            self._kind(j) == "SEP"
            and self._kind(j + 1) == "X"
            and self._kind(j + 2) in ("N", "R")
            and not self._out.groups
        )

    def _lead_then_chain(self) -> bool:
        """60 3x8, 60: 3x8, 60 3 sets of 8: a number right before a count of sets is the load."""
        j = self._i + 1
        if self._kind(j) == "SEP" and self._a[j].text in ("COLON", "DASH"):
            j += 1
        if self._kind(j) == "S" and self._a[j].text == "" and self._kind(j + 1) in ("OF", *_COUNTS):
            return self._a[self._i].value > MOST_SETS / 2
        if self._kind(j) != "N" or self._kind(j + 1) != "X" or self._kind(j + 2) not in ("N", "R", "H"):
            return False
        first, sets, reps = self._a[self._i].value, self._a[j].value, self._a[j + 2].value
        if self._out.groups and self._out.groups[-1].load is None and self._gap == "":
            return False
        return sets <= 10 and reps <= 30 and (first >= 12 or self._a[self._i].plural) and sets < first

    def _start(self, atom: Atom) -> Group:
        group = Group(atom.first, atom.last, load=self._take())
        if group.load is not None:
            group.first = min(group.first, self._pending_at)
        group.sets, self._sets = self._sets, None
        group.drop, self._drop = self._drop, False
        group.working, self._working = self._working, False
        group.parted, self._parted = self._parted, False
        group.arrow = self._gap == "ARROW"
        self._new_line = False
        return group

    def _close(self, group: Group) -> None:
        if self._amending and self._out.groups:
            self._corrected(group)
        else:
            self._out.groups.append(group)
        self._amending, self._amending_nth = False, None
        self._apart = self._line = self._near_last = self._near_all = False
        self._gap = ""

    def _corrected(self, new: Group) -> None:
        """A correction inside the message: what is said anew replaces it in the set just told (or the one named)."""
        groups = self._out.groups
        nth = self._amending_nth
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

    def _append(self, group: Group, atom: Atom) -> None:
        rep = Rep(atom.value, "R" if atom.kind == "N" else atom.kind, self._side, plural=atom.plural)
        rep.explicit = atom.kind == "R"
        self._side = None
        group.most_later = max(group.most_later, rep.n) if group.reps else 0.0
        group.most = max(group.most, rep.n)
        group.kinds.add(rep.kind)
        group.reps.append(rep)
        group.explicit = group.explicit or atom.kind == "R"
        group.last = max(group.last, atom.last)
        while (
            self._kind(self._i) == "PLUS"
            and self._kind(self._i + 1) in ("N", "R")
            and (self._kind(self._i + 2) not in ("X", "FOR") and rep.n > self._a[self._i + 1].value)
        ):
            rep.parts.append(self._a[self._i + 1].value)
            group.last = self._a[self._i + 1].last
            self._i += 2
        if rep.side is None and self._trailing_side():
            rep.side = self._a[self._i].text.lower()
            group.last = self._a[self._i].last
            self._i += 1

    def _trailing_side(self) -> bool:
        """Whether the side right here belongs to the count before it: 8 left 9 right, but not 14s left 8 right 7."""
        j = self._i
        if self._kind(j) != "SIDE" or self._a[j].text not in ("LEFT", "RIGHT"):
            return False
        ends = "SIDE"
        while True:
            step = j + 1
            while self._kind(step) == "SEP" and self._a[step].text in ("COMMA", "SLASH", "AND", "THEN", "DASH"):
                step += 1
            kind = self._kind(step)
            if kind not in ("SIDE", *_COUNTS) or (kind == "SIDE") == (ends == "SIDE"):
                break
            ends, j = kind if kind == "SIDE" else "count", step
        return ends == "SIDE"

    def _list(self, group: Group) -> None:
        """Further counts at the same load: 8,8,7 or 8 8 7 or 8/8/7."""
        while True:
            j, gap = self._i, " "
            if self._kind(j) == "SEP" and self._a[j].text in (
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
                gap = self._a[j].text
                j += 1
                if self._kind(j) == "SEP" and self._a[j].text in ("AND", "THEN", "NL"):
                    j += 1
            elif self._kind(j) == "PLUS":
                gap = "PLUS"
                j += 1
            if gap in ("NL", "COLON", "THEN") and not self._same_kind_list(group, gap, j):
                return
            side: str | None = None
            if (
                self._kind(j) == "SIDE"
                and self._a[j].text in ("LEFT", "RIGHT")
                and self._kind(j + 1) in ("N", "R", "H")
            ):
                side, j = self._a[j].text.lower(), j + 1
            if self._kind(j) not in _COUNTS or not self._continues(group, j):
                return
            self._side = side
            group.gaps.append(gap)
            self._i = j + 1
            self._append(group, self._a[j])

    def _same_kind_list(self, group: Group, gap: str, j: int) -> bool:
        if gap == "THEN":
            return (
                not group.chained and self._kind(j) == "N" and self._kind(j + 1) in ("SEP", "", "M") and not self._drop
            )
        if gap == "COLON":
            return group.bare and len(group.reps) == 1
        return gap == "NL" and (group.bare or group.load is not None) and not group.chained

    def _continues(self, group: Group, j: int) -> bool:
        atom = self._a[j]
        after = self._kind(j + 1)
        if after in ("X", "FOR") and self._kind(j + 2) in ("N", "L", "R", "S", "H", "D"):
            return False
        if (
            after == "AT"
            and self._kind(j + 2) in ("N", "L")
            and (group.load is not None or group.lead is not None or group.behind is not None)
        ):
            return self._a[j + 2].kind == "N" and self._a[j + 2].value <= 10
        if atom.plural and not group.reps[-1].plural:
            return False
        if atom.kind == "N" and atom.value != int(atom.value):
            return False
        if atom.kind == "N" and self._kind(j + 1) == "R" and self._a[j + 1].text == "named":
            return False
        kinds = group.kinds
        own = "R" if atom.kind == "N" else atom.kind
        if own not in kinds and not (own == "R" and kinds == {"H"}):
            return False
        if own == "R" and kinds == {"H"}:
            return atom.value >= 5
        if group.sets is not None and not group.bare:
            return False
        if self._lead_here(j):
            return False
        if group.load is not None or group.lead is not None or len(group.reps) > 1:
            most = group.most if group.load is not None or group.lead is not None else group.most_later
            return not (atom.value >= 2.2 * most and atom.value >= 20 and own == "R")
        return True

    def _lead_here(self, j: int) -> bool:
        saved, self._i = self._i, j
        try:
            return self._lead_then_chain()
        finally:
            self._i = saved

    def _chain(self) -> None:
        """Quantities linked by x or for; roles follow from kinds, and what stays open is kept open."""
        parts = [self._a[self._i]]
        links: list[Atom] = []
        j = self._i + 1
        while self._kind(j) in ("X", "FOR") and len(parts) < LONGEST_CHAIN:
            k = j + 1
            if self._kind(k) not in ("N", "L", "R", "H", "D", "S"):
                break
            links.append(self._a[j])
            parts.append(self._a[k])
            j = k + 1
            if self._lists_by_times(parts, links) and self._kind(j) == "SEP" and self._kind(j + 1) == "X":
                j += 1
        self._i = j
        if (
            self._pending is not None
            and self._pending.way in ("bar", "body")
            and parts[0].kind == "N"
            and (len(parts) == 2 and parts[1].kind in ("N", "R") and parts[0].value > MOST_SETS)
        ):
            self._pending = None
        group = self._start(parts[0])
        group.chained = True
        group.first = min(group.first, parts[0].first)
        group.last = parts[-1].last
        if len(parts) == 2 and parts[0].value == 2 and parts[1].kind == "L" and self._kind(j) in _COUNTS:
            self._pending, self._pending_at = (
                replace(parts[1].load or LoadSaid("plain"), way="per_hand"),
                parts[0].first,
            )
            return
        roles(group, parts, [link.kind for link in links], listed=self._lists_by_times(parts, links))
        if parts[-1].kind == "S" and len(parts) == 2 and parts[0].kind in ("N", "L"):
            self._sets_then_counts(group, parts[0])
        elif group.reps:
            self._extend(group)
        self._close(group)

    def _sets_then_counts(self, group: Group, first: Atom) -> None:
        """70 for 3 sets of 8: the counts come behind, so what stands before is the load."""
        j = self._i + 1 if self._kind(self._i) == "OF" else self._i
        if self._kind(j) not in _COUNTS:
            return
        group.load = first.load or LoadSaid("plain", first.value, plural=first.plural)
        group.reps.clear()
        self._i = j + 1
        self._append(group, self._a[j])
        if not self._counted_list(group):
            group.last = max(group.last, self._a[j].last)

    def _lists_by_times(self, parts: list[Atom], links: list[Atom]) -> bool:
        """80kg x12 x12 x10: each x stands at its own count, so these are counts and not sets."""
        if len(parts) < 3 or any(part.kind not in ("N", "R") for part in parts[1:]):
            return False
        return len(parts) > 3 or all(link.text == "x" for link in links)

    def _extend(self, group: Group) -> None:
        last = group.reps.pop()
        stub = Atom({"R": "N"}.get(last.kind, last.kind), group.last, group.last, last.n, plural=last.plural)
        self._append(group, stub)
        if group.sets is None or group.sets == 1:
            self._list(group)
        elif self._counted_list(group):
            group.sets = None

    def _counted_list(self, group: Group) -> bool:
        """3x8,8,7 where the count of sets is the length of the list that follows."""
        sets = group.sets
        group.sets = None
        mark, reps, gaps, last = self._i, list(group.reps), list(group.gaps), group.last
        self._list(group)
        if len(group.reps) == sets:
            return True
        self._i, group.reps, group.gaps, group.last, group.sets = mark, reps, gaps, last, sets
        return False

    # sets said by a count, sides, sameness

    def _set_count(self, atom: Atom) -> None:
        groups = self._out.groups
        if atom.kind == "T" and not groups and self._pending is not None:
            self._a[self._i] = replace(atom, kind="R")
            self._counts(chained=True)
            return
        if atom.strong:
            self._out.rounds = atom.value
        j = self._i + 1
        if (
            self._kind(j) in ("OF", "SEP", "X", "FOR", "AT")
            and self._kind(j + 1) in (*_COUNTS, "L")
            and not (self._kind(j) == "SEP" and self._a[j].text in ("NL", "STOP", "THEN") and groups)
        ):
            j += 1
        direct = self._kind(j) in ("N", "R", "H", "D") and not (atom.kind == "T" and not self._kind(j))
        before = groups[-1] if groups else None
        if (
            before is not None
            and before.sets is None
            and before.reps
            and not (direct and self._kind(self._i + 1) == "OF")
            and (not direct or atom.text == "twice")
        ):
            before.sets = atom.value
            before.last = atom.last
            if before.lead is None and len(before.reps) > 1 and len(before.reps) == atom.value:
                before.sets = None
            self._i += 1
            return
        if not direct and before is None:
            self._sets = atom.value
            self._out.rounds = atom.value
            self._i += 1
            return
        self._sets = atom.value
        self._i = j

    def _sided(self, atom: Atom) -> None:
        if atom.text in ("LEFT", "RIGHT") and self._kind(self._i + 1) in _COUNTS:
            self._side = atom.text.lower()
            return
        if self._kind(self._i + 1) == "SEP" and self._a[self._i + 1].text == "COLON" and atom.text in ("LEFT", "RIGHT"):
            self._side = atom.text.lower()
            self._i += 2
            return
        self._out.sides.append((atom.text, len(self._out.groups) - 1))

    def _sameness(self, atom: Atom) -> None:
        """As the last set, with what is changed said beside it."""
        if atom.kind == "MORE" and atom.value > 0 and self._out.groups and self._gap:
            self._breathed(atom)
            return
        group = Group(atom.first, atom.last, like=True)
        seen = False
        while self._i < len(self._a):
            atom = self._a[self._i]
            kind = atom.kind
            if kind in ("SAME", "SAMEREPS"):
                pass
            elif kind == "MORE":
                group.reps_change = atom.value
            elif kind == "SIDE" and atom.text in ("LEFT", "RIGHT"):
                self._out.sides.append((atom.text, len(self._out.groups)))
            elif kind == "DELTA":
                group.load_change = atom.load
            elif kind == "UPTO" and self._kind(self._i + 1) in ("N", "L"):
                self._i += 1
                target = self._a[self._i]
                group.load = target.load or LoadSaid("plain", target.value, plural=target.plural)
                if self._kind(self._i + 1) == "X" or self._kind(self._i + 1) == "FOR":
                    self._i += 1
            elif kind == "L" and atom.load is not None:
                group.load = atom.load
            elif (
                (
                    kind == "SEP"
                    and atom.text in ("COMMA", "AND", "BUT", "COLON", "DASH")
                    and self._sameness_goes_on(self._i + 1)
                )
                or (
                    kind == "SEP"
                    and atom.text == "STOP"
                    and group.load_change
                    and not group.reps
                    and self._kind(self._i + 1) == "R"
                )
                or (kind == "AT" and self._kind(self._i + 1) in ("DELTA", "R", "H"))
                or (kind == "SEP" and atom.text == "THEN" and self._sameness_goes_on(self._i + 1))
            ):
                pass
            elif (
                kind == "AT"
                and self._kind(self._i + 1) in ("L", "N")
                and (self._kind(self._i + 1) == "L" or self._a[self._i + 1].value > 10)
            ):
                self._i += 1
                target = self._a[self._i]
                group.load = target.load or LoadSaid("plain", target.value, plural=target.plural)
            elif kind in ("FOR", "X", "OF") and self._kind(self._i + 1) in (*_COUNTS, "S"):
                pass
            elif kind == "S" and not seen:
                group.sets = atom.value
            elif kind in _COUNTS and not group.reps:
                if kind == "N" and self._kind(self._i + 1) == "X" and self._kind(self._i + 2) in ("N", "R"):
                    break
                self._i += 1
                self._append(group, atom)
                group.chained = True
                self._list(group)
                group.last = max(group.last, atom.last)
                seen = True
                continue
            else:
                break
            group.last = max(group.last, atom.last)
            self._i += 1
        if self._pending is not None and group.load is None:
            group.load = self._take()
        if group.sets is None:
            group.sets, self._sets = self._sets, None
        group.drop, self._drop = self._drop, False
        self._new_line = False
        self._close(group)

    def _breathed(self, atom: Atom) -> None:
        """'8, breathe, 3 more': more repetitions of the set just told, after a breath."""
        group = Group(atom.first, atom.last, reps=[Rep(atom.value, explicit=True)], explicit=True, drop=True)
        self._i += 1
        self._close(group)

    def _sameness_goes_on(self, i: int) -> bool:
        kind = self._kind(i)
        while kind in ("SEP", "AT"):
            i += 1
            kind = self._kind(i)
        return kind in ("MORE", "DELTA", "UPTO", "SAMEREPS", "SAME", "FOR") or (
            kind in _COUNTS and self._kind(i + 1) not in ("X", "FOR")
        )

    def _split_loads(self) -> None:
        """'225, missed, zero reps': a lone number, then counts said to be repetitions, is their load."""
        groups = self._out.groups
        n = 0
        while n + 1 < len(groups):
            first, then = groups[n], groups[n + 1]
            lone = first.bare and len(first.reps) == 1 and first.sets is None and first.behind is None
            if (
                lone
                and (then.explicit or first.lead_plural)
                and then.load is None
                and not then.like
                and first.reps[0].n > then.most
            ):
                then.load = LoadSaid("plain", first.reps[0].n, plural=first.lead_plural)
                then.first = first.first
                del groups[n]
                for placed in self._out.placed:
                    placed.after -= placed.after > n
            n += 1

    def _finish(self) -> None:
        self._split_loads()
        groups = self._out.groups
        if self._drop or (len(groups) > 1 and all(group.arrow for group in groups[1:])):
            self._out.dropset = True
        said = self._take()
        if said is None:
            return
        waiting = [group for group in groups if group.load is None and group.lead is None]
        if groups and len(waiting) == len(groups):
            for group in waiting:
                group.load = said
        elif not groups or said.way not in ("bar", "body"):
            group = Group(self._pending_at, self._pending_at, load=said)
            group.sets, self._sets = self._sets, None
            groups.append(group)


def _nearer(number: float, load: float, reps: float) -> bool:
    """Whether a bare number corrects the load and not the repetitions: clearly nearer to it in proportion."""
    return number != int(number) or 2 * abs(number - load) * max(reps, 1.0) < abs(number - reps) * load


def _remarks_behind(atoms: list[Atom]) -> list[Atom]:
    """A remark between a link and its count (for a warm-up set of 8) is moved behind the count."""
    out = list(atoms)
    for i in range(len(out) - 2):
        if out[i].kind in ("FOR", "X", "OF") and out[i + 1].kind == "M" and out[i + 2].kind in _COUNTS:
            out[i + 1], out[i + 2] = out[i + 2], out[i + 1]
    return out


def _hung(said: LoadSaid | None) -> LoadSaid | None:
    """A signed load right behind its counts is what was hung on or taken off, not a change."""
    if said is None or said.number is None:
        return said
    return replace(said, way="added" if said.number >= 0 else "assist", number=abs(said.number))
