"""Free lexemes into the atoms of the set grammar.

Knows how things are said, not on which exercise; settle.py turns a load as said into one moved.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from typing import Final

from core.read.atoms import Atom, LoadSaid
from core.read.changes import moved_by, signed
from core.read.loads_said import assist_said, band_said, bar_said, body_said, plate_said
from core.read.quantities import QUANTITIES, quantity
from core.read.remark import Remark
from core.read.stream import Stream

_LINKS: Final[dict[str, str]] = {
    "X": "X",
    "FOR": "FOR",
    "AT": "AT",
    "WITH": "AT",
    "ON": "AT",
    "OF": "OF",
    "COMMA": "SEP",
    "SLASH": "SEP",
    "AND": "SEP",
    "THEN": "SEP",
    "NL": "SEP",
    "STOP": "SEP",
    "COLON": "SEP",
    "ARROW": "SEP",
    "DASH": "SEP",
    "PLUS": "PLUS",
    "BUT": "SEP",
    "BULLET": "SEP",
    "OR": "W",
}


class Atomiser:
    """Walks a stretch of the stream and forms atoms."""

    __slots__ = ("_remarks", "_s")

    def __init__(self, s: Stream, remarks: list[Remark]) -> None:
        self._s = s
        self._remarks = {remark.first: remark for remark in remarks}

    def atoms(self, first: int, last: int, *, sided: bool = False, barred: bool = False) -> list[Atom]:
        """Atoms of the lexemes from ``first`` up to but without ``last``. ``sided``: done one side at a time, so that
        'a side' counts repetitions."""
        self._s.sided, self._s.barred = sided, barred
        out: list[Atom] = []
        i = first
        while i < last:
            remark = self._remarks.get(i)
            if remark is not None:
                out.append(Atom("M", remark.first, remark.last, remark=remark))
                i = remark.last + 1
            elif i in self._s.used:
                i += 1
            else:
                atom = self._atom(i, last, out)
                if atom is not None:
                    out.append(atom)
                    i = atom.last + 1
                else:
                    i += 1
        return out

    def _counted_next(self, i: int) -> bool:
        """Whether a count or a load comes right behind a small word."""
        j = self._s.skip(i + 1, "ARTICLE", "ABOUT", "FILLER")
        return self._s.is_(j, "NUM", "LOADQ", "PLATE", "EMPTYBAR", "BAND", "COLOUR", "BODY", "IMPL")

    def _atom(self, i: int, last: int, before: list[Atom]) -> Atom | None:
        if self._s.all[i].kinds.isdisjoint(_FORMING):
            return Atom("W", i, i, text=self._s.all[i].text) if "WORD" in self._s.all[i].k else None
        for recognise in _formers(tuple(self._s.all[i].k)):
            atom = recognise(self._s, i, before)
            if atom is not None and atom.last < last:
                return replace(atom, text="paren") if atom.kind == "L" and self._s.is_(i - 1, "OPEN") else atom
        lexeme = self._s.all[i]
        if lexeme.mention is not None:
            return None
        kind = _linking(tuple(lexeme.k))
        if kind is not None:
            link = _LINKS[kind]
            if kind in ("ON", "WITH") and not self._counted_next(i):
                return None
            newly = link == "SEP" and i + 1 in self._s.used and self._labels(i + 1)
            strong = kind in ("NL", "STOP", "THEN", "BUT")
            apart = link == "X" and not lexeme.glued and i + 1 < len(self._s) and self._s.all[i + 1].glued
            return Atom(link, i, i, float(newly), text="x" if apart else kind, strong=strong)
        if lexeme.has("ARTICLE", "FILLER", "ABOUT", "BE", "IN", "TO", "FEEL", "IMPL", "LOADWORD", "OPEN", "CLOSE"):
            return None
        return Atom("W", i, i, text=lexeme.text) if "WORD" in lexeme.k else None

    def _labels(self, i: int) -> bool:
        """Whether the name of a set stood here: 3rd set, set 3."""
        s = self._s
        return i not in self._remarks and s.all[i].has("ORD", "SETS", "SETREF") and not s.all[i].has("SETQ")


_PLAIN_ATOMS: Final[tuple[tuple[str, str], ...]] = (
    ("SAME", "SAME"),
    ("SAMEREPS", "SAMEREPS"),
    ("DROP", "DROP"),
    ("WEIGHTED", "WEIGHTED"),
    ("HOLDWORD", "HOLDWORD"),
    ("PERLIMB", "SIDE"),
    ("PERSIDE", "SIDE"),
    ("EACH", "SIDE"),
    ("LEFT", "SIDE"),
    ("RIGHT", "SIDE"),
    ("OTHERSIDE", "SIDE"),
    ("LAST", "LAST"),
    ("WORKING", "WORKING"),
    ("ALL", "ALL"),
    ("UNILAT", "UNI"),
)


def _worded(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    del before
    if s.is_(i, "LIKETHAT") and s.is_(i - 1, "SETS", "SETQ", "MORE"):
        return Atom("SAME", i, i, text="like that")
    if s.is_(i, "SAMELOAD"):
        return Atom("L", i, i, load=LoadSaid("same"))
    if s.is_(i, "PLANLOAD"):
        return Atom("L", i, i, load=LoadSaid("plan"))
    if s.is_(i, "ORD") and (s.is_(i + 1, "SETS") or (s.is_(i + 1, "NUM") and s.all[i + 1].is_word("one"))):
        return Atom("NTH", i, i + 1, s.all[i].num("ORD"))
    if s.is_(i, "AMEND") and not s.is_(i, "NUM") and (s.all[i].k["AMEND"] == "inline" or _turned_down(s, i)):
        return Atom("AMEND", i, i, text=s.all[i].text)
    if s.is_(i, "NOTWORD") and s.is_(i + 1, "NUM", "LOADQ") and not s.all[i].is_word("no"):
        return Atom("NOT", i, i)
    if s.all[i].is_word("again") and i and s.all[i - 1].has(*_STATES) and not s.all[i - 1].has("FORM"):
        return Atom("W", i, i, text="again")
    if s.is_(i, "ALLN"):
        return Atom("ALL", i, i, s.all[i].num("ALLN"), text="ALL")
    for kind, atom in _PLAIN_ATOMS:
        if s.is_(i, kind):
            return Atom(atom, i, i, text=s.all[i].text if kind == "SAME" else kind)
    return None


def first_sets(s: Stream, i: int) -> tuple[float, int] | None:
    """'the first two', 'set 1', 'sets 1 and 2', 'the first set': how many sets from the first on, and the last word."""
    if s.is_(i, "ORD") and s.all[i].num("ORD") == 1:
        if s.is_(i + 1, "SETQ") or (s.is_(i + 1, "NUM") and not s.all[i + 1].is_word("one")):
            return s.all[i + 1].value, i + 1 + s.is_(i + 2, "SETS")
        return 1.0, i + s.is_(i + 1, "SETS", "NUM")
    if s.is_(i, "SETS") and s.num(i + 1) == 1 and not s.is_(i, "NUM"):
        spread = s.is_(i + 2, "AND", "DASH", "TO") and s.num(i + 3) is not None and not s.is_(i + 4, "X")
        return (s.num(i + 3) or 1.0, i + 3) if spread else (1.0, i + 1)
    return None


def _set_run(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    """'sets 1-3 were 10 each at 50': so many sets, told together."""
    del before
    led = first_sets(s, i) if s.is_(i, "ORD") and s.is_(i + 1, "NUM") and not s.all[i + 1].is_word("one") else None
    if led is not None and led[1] == i + 1 and 1 < led[0] < MOST_RUN and _told_of(s, i + 2, led[0]):
        return Atom("S", i, i + 1, led[0], text="run")
    if not s.is_(i, "SETS") or not s.is_(i + 2, "AND", "DASH", "TO") or not s.is_(i + 4, "BE", "COLON", "NUM", "AT"):
        return None
    first, last = s.num(i + 1), s.num(i + 3)
    if first is None or last is None or not 0 < last - first < MOST_RUN or s.is_(i + 4, "X"):
        return None
    return Atom("S", i, i + 3, last - first + 1, text="run")


def _further_set(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    """'two sets of 12 and a third of 10', '3 sets of 8 and one of 6': one more set, behind sets that were counted."""
    one = s.is_(i, "ORD") or (s.is_(i, "NUM") and s.all[i].is_word("one"))
    counted = one and s.is_(i + 1, "OF") and s.is_(i + 2, "NUM", "REPQ")
    return Atom("S", i, i, 1.0, text="further") if counted and any(atom.kind == "S" for atom in before) else None


def _told_of(s: Stream, i: int, count: float) -> bool:
    """Whether what follows 'the first two' tells of them: at 80, were 8s, 5 5."""
    if s.is_(i, "AT", "WITH", "BE", "COLON"):
        return s.is_(i + 1, "NUM", "LOADQ", "ARTICLE")
    run = 0
    while s.is_(i, "NUM", "COMMA", "AND", "SLASH"):
        run += s.is_(i, "NUM")
        i += 1
    return run == count and not s.is_(i, "X", "FOR")


MOST_RUN: Final = 8
"""'sets 1-8': a longer run is not told by its first and last set (common practice, no source)."""


def _planned(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    """First two as planned, 2 sets as planned, sets 1 and 2 as planned; and as planned, with what differed to come."""
    del before
    if s.is_(i, "PLANNED"):
        told = first_sets(s, s.skip(i + 1, "FOR", "ON", "IN", "ARTICLE")) if s.is_(i + 1, "FOR", "ON", "IN") else None
        return Atom("PLANNED", i, i) if told is None else Atom("PLANNED", i, told[1], told[0])
    if s.is_(i, "ORD") and s.all[i].num("ORD") == 1 and s.is_(i + 1, "NUM"):
        many, j = s.all[i + 1].value, i + 2
    elif s.is_(i, "SETQ"):
        many, j = s.all[i].num("SETQ"), i + 1
    elif s.is_(i, "SETS") and s.is_(i + 1, "NUM") and s.is_(i + 2, "AND", "DASH", "TO") and s.is_(i + 3, "NUM"):
        many, j = s.all[i + 3].value - s.all[i + 1].value + 1, i + 4
    elif s.is_(i, "ALLN"):
        many, j = s.all[i].num("ALLN"), i + 1
    else:
        return None
    j = s.skip(j, "SETS", "BE", "FILLER", "DONE", "OF", "THAT")
    return Atom("PLANNED", i, j, many) if s.is_(j, "PLANNED") and many >= 1 else None


_STATES: Final = ("GOODQ", "FAIRQ", "BADQ", "PAIN", "SORENESS", "NERVESIGN")
"""'Fine again', 'sore again': how one is, and no set like the last."""


def _turned_down(s: Stream, i: int) -> bool:
    """'80x10, no, 80x9': a 'no' on its own between two counts."""
    if not s.all[i].is_word("no") or not s.is_(i - 1, "COMMA", "STOP", "DASH", "OPEN"):
        return False
    before = i - 2
    while s.is_(before, "DOT", "STOP"):
        before -= 1
    if not s.is_(before, *_COUNTED):
        return False
    parted = s.is_(i + 1, "COMMA", "STOP", "DASH") and s.is_(i + 2, *_COUNTED)
    return parted or (s.is_(i + 1, "NUM", "LOADQ") and s.is_(i + 2, "X", "FOR"))


_COUNTED: Final = ("NUM", "LOADQ", "REPN", "DUR")
_Former = Callable[[Stream, int, list[Atom]], Atom | None]
_FORMERS: Final[tuple[_Former, ...]] = (
    signed,
    _planned,
    _further_set,
    _set_run,
    quantity,
    plate_said,
    bar_said,
    band_said,
    assist_said,
    body_said,
    moved_by,
    _worded,
)
_STARTS: Final[dict[_Former, frozenset[str]]] = {
    signed: frozenset({"PLUS", "DASH"}),
    _further_set: frozenset({"ORD", "NUM"}),
    quantity: frozenset(kind for kind, _ in QUANTITIES),
    plate_said: frozenset({"PIN", "PLATE", "HALF"}),
    bar_said: frozenset({"EMPTYBAR"}),
    band_said: frozenset({"COLOUR", "BAND", "BANDHELP"}),
    assist_said: frozenset({"ASSIST"}),
    body_said: frozenset({"BODY"}),
    moved_by: frozenset({"DROP", "UPTO", "UP", "DOWN"}),
    _planned: frozenset({"PLANNED", "ORD", "SETQ", "SETS", "ALLN"}),
    _worded: frozenset(
        {"LIKETHAT", "SAMELOAD", "PLANLOAD", "ORD", "AMEND", "NOTWORD", *(kind for kind, _ in _PLAIN_ATOMS)}
    ),
}
"""The kinds that each can start with; one that is not listed is asked everywhere."""


@lru_cache(maxsize=1024)
def _formers(kinds: tuple[str, ...]) -> tuple[_Former, ...]:
    """Those that can start with a lexeme of these kinds, in their order. There are few such mixtures of kinds."""
    return tuple(former for former in _FORMERS if former not in _STARTS or not _STARTS[former].isdisjoint(kinds))


@lru_cache(maxsize=1024)
def _linking(kinds: tuple[str, ...]) -> str | None:
    """The first kind of the table of links that is among these."""
    return next((kind for kind in _LINKS if kind in kinds), None)


_FORMING: Final = frozenset(
    {
        *_LINKS,
        *(kind for kind, _ in _PLAIN_ATOMS),
        "ALLN",
        "PLANNED",
        "SETS",
        "NUM",
        "STRIDEQ",
        "LOADQ",
        "DUR",
        "DIST",
        "REPN",
        "SETN",
        "PLATE",
        "HALF",
        "PIN",
        "EMPTYBAR",
        "COLOUR",
        "BAND",
        "BANDHELP",
        "ASSIST",
        "BODY",
        "UP",
        "DOWN",
        "UPTO",
        "SAMELOAD",
        "LIKETHAT",
        "PLANLOAD",
        "ORD",
        "AMEND",
        "NOTWORD",
    }
)
"""Kinds that can start an atom; most words of a message have none."""
