"""Where the set grammar stands in its atoms, what it has made so far, and what waits for a home."""

from dataclasses import dataclass, field
from typing import Final

from core.read.atoms import Atom, LoadSaid
from core.read.corrections import corrected
from core.read.groups import Group, Parsed, Rep

MOST_SETS: Final = 20.0
"""More sets than this in one message are not counted out by a number (common practice, no source)."""
LIKELY_TIMES: Final = 5.0
"""More than this behind a load and its count is hardly a count of sets (common practice, no source)."""
OPPOSITE: Final = {"left": "right", "right": "left"}
COUNTS: Final = ("N", "R", "H", "D")
"""Kinds of atoms that count: bare numbers, repetitions, holds, distances."""


@dataclass(slots=True)
class Cursor:
    """``a`` the atoms, ``i`` the place, ``named`` whether the stretch names its exercise, ``loaded``
    whether that has an outside load. ``pending`` is a load said
    before its counts, ``sets`` a count of sets said before them, ``bound`` to what directly follows and no heading;
    the rest are marks set by words on the way."""

    a: list[Atom]
    named: bool
    loaded: bool = False
    i: int = 0
    out: Parsed = field(default_factory=lambda: Parsed([], []))
    pending: LoadSaid | None = None
    pending_at: int = 0
    sets: float | None = None
    bound: bool = False
    apart: bool = False
    line: bool = False
    near_last: bool = False
    near_all: bool = False
    drop: bool = False
    working: bool = False
    gap: str = ""
    side: str | None = None
    parted: bool = False
    amending: bool = False
    amending_nth: int | None = None
    new_line: bool = False

    def kind(self, i: int) -> str:
        return self.a[i].kind if i < len(self.a) else ""

    def take(self) -> LoadSaid | None:
        said, self.pending = self.pending, None
        return said

    def start(self, atom: Atom) -> Group:
        group = Group(atom.first, atom.last, load=self.take())
        if group.load is not None:
            group.first = min(group.first, self.pending_at)
        group.headed = self.sets is not None and not self.bound
        group.sets, self.sets = self.sets, None
        group.drop, self.drop = self.drop, False
        group.working, self.working = self.working, False
        group.parted, self.parted = self.parted, False
        group.arrow = self.gap == "ARROW"
        self.new_line = False
        return group

    def close(self, group: Group) -> None:
        if self.amending and self.out.groups:
            corrected(self.out.groups, self.amending_nth, group)
        elif (self.near_last or self._all_planned()) and self._ends_before(group):
            self.out.groups[-1].tail, self.out.groups[-1].last = group.reps[0].n, group.last
        else:
            self.out.groups.append(group)
        self.amending, self.amending_nth = False, None
        self.apart = self.line = self.near_last = self.near_all = False
        self.gap = ""

    def _all_planned(self) -> bool:
        """Whether the whole plan was just told as done, so that what follows is what differed at its end."""
        return bool(self.out.groups) and self.out.groups[-1].planned and self.out.groups[-1].sets is None

    def _ends_before(self, group: Group) -> bool:
        """'3x12, last set only 10': the count of the last of the sets just told."""
        if not self.out.groups or group.like or group.drop or group.load is not None or group.lead is not None:
            return False
        before = self.out.groups[-1]
        if before.planned:
            return self._all_planned() and len(group.reps) == 1
        several = before.lead is not None or (before.sets is not None and before.sets > 1)
        alone = len(group.reps) == 1 and group.sets is None and group.behind is None
        return several and alone and len(before.reps) == 1 and group.kinds == before.kinds

    def append(self, group: Group, atom: Atom) -> None:
        rep = Rep(atom.value, "R" if atom.kind == "N" else atom.kind, self.side, plural=atom.plural)
        rep.explicit = atom.kind == "R"
        self.side = None
        group.most_later = max(group.most_later, rep.n) if group.reps else 0.0
        group.most = max(group.most, rep.n)
        group.kinds.add(rep.kind)
        group.reps.append(rep)
        group.explicit = group.explicit or atom.kind == "R"
        group.last = max(group.last, atom.last)
        while (
            self.kind(self.i) == "PLUS"
            and self.kind(self.i + 1) in ("N", "R")
            and (self.kind(self.i + 2) not in ("X", "FOR") and rep.n > self.a[self.i + 1].value)
        ):
            rep.parts.append(self.a[self.i + 1].value)
            group.last = self.a[self.i + 1].last
            self.i += 2
        if rep.side is None and self._trailing_side():
            rep.side = self.a[self.i].text.lower()
            group.last = self.a[self.i].last
            self.i += 1
        elif rep.side is None and self._turns(group):
            rep.side = OPPOSITE[group.reps[-2].side or ""]
            group.last = self.a[self.i].last
            self.i += 1

    def _turns(self, group: Group) -> bool:
        """Whether 'other leg' stands right behind this count, and the count before it has a side."""
        here = self.kind(self.i) == "SIDE" and self.a[self.i].text == "OTHERSIDE"
        return here and len(group.reps) > 1 and group.reps[-2].side in OPPOSITE

    def _trailing_side(self) -> bool:
        """Whether the side right here belongs to the count before it: 8 left 9 right, but not 14s left 8 right 7."""
        j = self.i
        if self.kind(j) != "SIDE" or self.a[j].text not in ("LEFT", "RIGHT"):
            return False
        ends = "SIDE"
        while True:
            step = j + 1
            while self.kind(step) == "SEP" and self.a[step].text in ("COMMA", "SLASH", "AND", "THEN", "DASH"):
                step += 1
            kind = self.kind(step)
            if kind not in ("SIDE", *COUNTS) or (kind == "SIDE") == (ends == "SIDE"):
                break
            if kind != "SIDE" and self.kind(step + 1) in ("X", "FOR"):
                break
            ends, j = kind if kind == "SIDE" else "count", step
        return ends == "SIDE"
