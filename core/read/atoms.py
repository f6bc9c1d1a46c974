"""Free lexemes into the atoms of the set grammar: bare numbers, loads as said, counts, links and words of sameness.

Knows how loads are said, not on which exercise; complete.py turns a load as said into one moved.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final, Literal

from core.read.lexemes import Lexeme
from core.read.modifiers import Remark
from core.read.stream import Stream

LoadWay = Literal[
    "plain", "per_side", "per_hand", "total", "one", "added", "assist", "band", "band_help", "body", "bar", "plates",
    "same", "plan", "delta",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class LoadSaid:
    """A load as said: a number in the lifter's unit, or in kg where a unit was said, and the way it counts."""

    way: LoadWay
    number: float | None = None
    in_kg: bool = False
    plural: bool = False
    label: str | None = None
    per_side: bool = False
    signed: bool = False


@dataclass(frozen=True, slots=True)
class Atom:
    """``kind``: N bare number, L load, R reps, H hold, D distance, S sets, X, FOR, AT, OF, SEP, PLUS, SIDE, SAME,
    MORE, LESS, DELTA, DROP, AMEND, M a remark, W a word that means nothing here."""

    kind: str
    first: int
    last: int
    value: float = 0.0
    load: LoadSaid | None = None
    text: str = ""
    remark: Remark | None = None
    plural: bool = False
    strong: bool = False


INLINE: Final = frozenset({
    "make that", "make it", "actually", "sorry", "sry", "soz", "i mean", "i meant", "meant", "correction", "oops", "ooops", "whoops",
    "scratch that", "should be", "shouldve been", "should have been", "my bad", "typo", "no wait", "wait no", "wait", "err", "er",
    "was actually", "that should be", "it should be", "rather", "nope", "pardon", "should say", "apologies", "hmm no", "oh wait", "misread",
})  # fmt: skip
"""Words that correct the set said just before them."""
_LINKS: Final[dict[str, str]] = {
    "X": "X", "FOR": "FOR", "AT": "AT", "WITH": "AT", "ON": "AT", "OF": "OF", "COMMA": "SEP", "SLASH": "SEP", "AND": "SEP",
    "THEN": "SEP", "NL": "SEP", "STOP": "SEP", "COLON": "SEP", "ARROW": "SEP", "DASH": "SEP", "PLUS": "PLUS",
    "BUT": "SEP", "BULLET": "SEP", "OR": "W",
}  # fmt: skip


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
        for recognise in _FORMERS:
            atom = recognise(self._s, i, before)
            if atom is not None and atom.last < last:
                return replace(atom, text="paren") if atom.kind == "L" and self._s.is_(i - 1, "OPEN") else atom
        lexeme = self._s.all[i]
        if lexeme.mention is not None:
            return None
        for kind, link in _LINKS.items():
            if kind in lexeme.k:
                if kind in ("ON", "WITH") and not self._counted_next(i):
                    return None
                strong = kind in ("NL", "STOP", "THEN", "BUT")
                apart = link == "X" and not lexeme.glued and i + 1 < len(self._s) and self._s.all[i + 1].glued
                return Atom(link, i, i, text="x" if apart else kind, strong=strong)
        if lexeme.has("ARTICLE", "FILLER", "ABOUT", "BE", "IN", "TO", "FEEL", "IMPL", "LOADWORD", "OPEN", "CLOSE"):
            return None
        return Atom("W", i, i, text=lexeme.text) if "WORD" in lexeme.k else None


def _quantity(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    lexeme = s.all[i]
    k = lexeme.k
    if "LOADQ" in k:
        return _load(s, i, lexeme.num("LOADQ"), in_kg=True, before=before)
    if "DUR" in k and "DIST" in k:
        return Atom("D", i, i, lexeme.num("DIST"), text="m")
    if "DUR" in k:
        return Atom("H", i, i, lexeme.num("DUR"))
    if "DIST" in k:
        return Atom("D", i, i, lexeme.num("DIST"))
    if "SETQ" in k:
        rounds = any(word in lexeme.text for word in ("round", "rds", "rnd"))
        return Atom("S", i, i, lexeme.num("SETQ"), strong=rounds)
    if "REPQ" in k:
        return _reps(s, i, lexeme)
    if "TIMESQ" in k:
        return Atom("T", i, i, lexeme.num("TIMESQ"))
    if "REPN" in k:
        return Atom("R", i, i, lexeme.num("REPN"), text="named", plural=lexeme.text.endswith("s"))
    if "SETN" in k:
        return Atom("S", i, i, lexeme.num("SETN"), text="twice")
    if "NUM" in k:
        return _number(s, i, lexeme, before)
    return None


def _reps(s: Stream, i: int, lexeme: Lexeme) -> Atom | None:
    change = _change(s, i, i + 1, lexeme)
    return change or Atom("R", i, i, lexeme.num("REPQ"))


def _change(s: Stream, i: int, j: int, lexeme: Lexeme) -> Atom | None:
    """One less, 2 more reps, 5 more kg, 10 heavier: a change against the last set."""
    if s.is_(i - 1, "FOR", "X"):
        return None
    if s.is_(j, "MORE", "LESS") and not (s.is_(j, "MORE") and s.all[j].text == "extra"):
        sign = 1.0 if s.is_(j, "MORE") else -1.0
        if s.is_(j + 1, "KG", "LB") and not s.is_(j + 1, "NUM"):
            pounds = s.is_(j + 1, "LB")
            kg = lexeme.value * (0.45359237 if pounds else 1.0)
            return Atom("DELTA", i, j + 1, load=LoadSaid("delta", sign * kg, in_kg=True))
        if s.is_(j + 1, "SETS"):
            return Atom("S", i, j + 1, lexeme.value, text="more")
        last = j + 1 if s.is_(j + 1, "REPS") else j
        if lexeme.value != int(lexeme.value) and not s.is_(j + 1, "REPS"):
            return Atom("DELTA", i, j, load=LoadSaid("delta", sign * lexeme.value))
        if s.is_(last + 1, "NUM", "LOADQ") or s.is_(last + 1, "FOR", "X", "AT"):
            return None
        if (
            s.is_(j, "MORE")
            and not s.is_(j + 1, "REPS")
            and lexeme.text == "one"
            and not s.is_(i - 1, "SAME", "BUT", "COMMA")
        ):
            return None
        return Atom("MORE", i, last, sign * lexeme.value)
    if s.is_(j, "HEAVIER", "LIGHTER") and (
        s.all[j].text in ("heavier", "lighter") or s.is_(i - 1, "SAME", "BUT") or _closes(s, j + 1)
    ):
        sign = 1.0 if s.is_(j, "HEAVIER") else -1.0
        in_kg = "LOADQ" in lexeme.k
        number = lexeme.num("LOADQ") if in_kg else lexeme.value
        return Atom("DELTA", i, j, load=LoadSaid("delta", sign * number, in_kg=in_kg))
    return None


def _closes(s: Stream, i: int) -> bool:
    """Whether nothing more of the phrase comes."""
    return i >= len(s) or s.is_(i, "COMMA", "STOP", "NL", "SAMEREPS", "SAME")


def _lone_one(s: Stream, i: int, lexeme: Lexeme) -> bool:
    """'one' that stands for a thing and counts nothing."""
    if lexeme.text != "one":
        return False
    counts = (
        "X",
        "EX",
        "FOR",
        "AT",
        "MORE",
        "LESS",
        "PLATE",
        "IMPL",
        "REPS",
        "SETS",
        "COMMA",
        "NUM",
        "LOADQ",
        "PERLIMB",
    )
    return not s.is_(i + 1, *counts) and not s.is_(i - 1, "X", "FOR", "NUM", "SLASH", "LOADQ", "GOT")


def _number(s: Stream, i: int, lexeme: Lexeme, before: list[Atom]) -> Atom | None:
    if _lone_one(s, i, lexeme):
        return Atom("W", i, i, text="one")
    soon = s.is_(i - 1, "IN") and s.all[i - 1].text == "in" and not s.is_(i + 1, "SETS", "X", "EX")
    some = any(one.text == "ones" for one in s.all[i + 1 : i + 3])
    if soon or some:
        return Atom("W", i, i, text=lexeme.text)
    if lexeme.has("CLOCKTIME", "PCT", "LONG", "FARQ"):
        return Atom("W", i, i, text=lexeme.text)
    pair = _one_or_two(s, i, lexeme)
    if pair is not None:
        return pair
    change = _change(s, i, i + 1, lexeme)
    if change is not None:
        return change
    if s.is_(i + 1, "PLATE", "PERHAND", "IMPL", "TOTAL", "BOTHHANDS", "HUNG", "ASSIST", "BAND", "PERSIDE"):
        load = _load(s, i, lexeme.value, in_kg=False, before=before)
        if load is not None:
            return load
    return Atom("N", i, i, lexeme.value, text=lexeme.text, plural=lexeme.plural)


def _one_or_two(s: Stream, i: int, lexeme: Lexeme) -> Atom | None:
    """One 35 dumbbell, two 16kg kettlebells: the first number counts implements."""
    if lexeme.value not in (1, 2) or not s.is_(i + 1, "LOADQ", "NUM") or not s.is_(i + 2, "IMPL"):
        return None
    in_kg = "LOADQ" in s.all[i + 1].k
    number = s.all[i + 1].num("LOADQ") if in_kg else s.all[i + 1].value
    last = i + 3 if s.is_(i + 3, "BOTHHANDS", "PERHAND") else i + 2
    return Atom("L", i, last, load=LoadSaid("one" if lexeme.value == 1 else "per_hand", number, in_kg=in_kg))


MOST_PLATES: Final = 9
"""More plates than this on one side are not counted; a larger number is the plate's own weight (no source)."""
_TAILS: Final[tuple[tuple[str, LoadWay], ...]] = (
    ("PERHAND", "per_hand"), ("BOTHHANDS", "one"), ("TOTAL", "total"), ("HUNG", "added"), ("BANDHELP", "assist"),
    ("ASSIST", "assist"),
)  # fmt: skip


def _load(s: Stream, i: int, number: float, *, in_kg: bool, before: list[Atom]) -> Atom | None:
    """A number with what makes it a load: a unit before this, or a hand, a side, a vest, plates behind it."""
    lexeme = s.all[i]
    if in_kg:
        change = _change(s, i, i + 1, lexeme)
        if change is not None:
            return change
    elif s.is_(i + 1, "PLATE") and number > MOST_PLATES:
        side = s.is_(i + 2, "PERSIDE")
        last = i + 2 if side or s.is_(i + 2, "HUNG") else i + 1
        return Atom("L", i, last, load=LoadSaid("per_side" if side else "added", number, per_side=side))
    elif s.is_(i + 1, "PLATE"):
        return _plates(s, i, number, i + 1)
    said = LoadSaid("plain", number, in_kg=in_kg, plural=lexeme.plural)
    j = i + 1
    one = number != int(number) or lexeme.plural
    if s.is_(j, "IMPL") and not (s.is_(j + 1, "EX") and not in_kg):
        many = s.all[j].text.endswith("s")
        said = replace(said, plural=said.plural or many, way="per_hand" if many else "plain")
        if not said.plural and s.is_(i - 1, "NUM") and s.all[i - 1].value == 1:
            said = replace(said, way="one")
        j += 1
    if s.is_(j, "EMPTYBAR") and s.all[j].text in ("bar", "barbell"):
        return Atom("L", i, j, load=replace(said, way="total"))
    for kind, way in _TAILS:
        k = s.skip(j, "OF", "ARTICLE", "ON", "WITH", "IN") if kind in ("HUNG", "ASSIST") else s.skip(j, "IN")
        if s.is_(k, kind) and not (kind == "TOTAL" and s.is_(k + 1, "REPS")) and not _rep_like(s, k):
            return Atom("L", i, k, load=replace(said, way=way))
    if s.is_(j, "PLATE") and in_kg:
        if s.is_(j + 1, "PERSIDE"):
            return Atom("L", i, j + 1, load=replace(said, way="per_side", per_side=True))
        return Atom("L", i, j, load=replace(said, way="added"))
    if s.is_(j, "BAND"):
        return Atom("L", i, j, load=replace(said, way="band"))
    if s.is_(j, "PERSIDE") and not s.sided and (in_kg or one or not _after_link(before)):
        loaded = any(atom.kind == "L" for atom in before)
        follows = not loaded and (s.is_(j + 1, "X", "FOR", "NUM", "COLON", "REPN") or s.is_(j + 2, "NUM"))
        if in_kg or one or follows or (s.barred and not loaded):
            return Atom("L", i, j, load=replace(said, way="per_side", per_side=True))
        return None
    if in_kg or j > i + 1:
        return Atom("L", i, j - 1, load=said)
    return None


def _rep_like(s: Stream, k: int) -> bool:
    """'extra' or 'off' that belongs to another phrase."""
    return s.all[k].text in ("off", "extra") and s.is_(k + 1, "NUM", "EX")


def _after_link(before: list[Atom]) -> bool:
    return bool(before) and before[-1].kind in ("X", "FOR", "OF")


def _plates(s: Stream, first: int, count: float, i: int) -> Atom:
    """Plates: 2 plates, a plate a side, a plate and a 10 each side."""
    last, extra = i, 0.0
    per_side = s.is_(i + 1, "PERSIDE")
    if per_side:
        last = i + 1
    j = s.skip(i + 1, "AND", "PLUS", "ARTICLE")
    if j > i + 1 and s.is_(j, "NUM") and (s.is_(j + 1, "PERSIDE") or s.all[j].plural) and not per_side:
        extra = s.all[j].value
        last = j + 1 if s.is_(j + 1, "PERSIDE") else j
    return Atom(
        "L", first, last, load=LoadSaid("plates", count, per_side=per_side, label=str(extra) if extra else None)
    )


def _plate(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    del before
    if s.is_(i, "PLATE") and not (s.is_(i - 1, "ARTICLE") and s.all[i - 1].text in ("the", "my")):
        return _plates(s, i, 1.0, i)
    return None


def _bar(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    del before
    if not s.is_(i, "EMPTYBAR"):
        return None
    j = s.skip(i + 1, "AND", "PLUS")
    if j > i + 1 and s.is_(j, "NUM", "LOADQ") and (s.is_(j + 1, "PERSIDE") or s.all[j].plural):
        in_kg = "LOADQ" in s.all[j].k
        number = s.all[j].num("LOADQ") if in_kg else s.all[j].value
        last = j + 1 if s.is_(j + 1, "PERSIDE") else j
        return Atom("L", i, last, load=LoadSaid("per_side", number, in_kg=in_kg, per_side=True))
    return Atom("L", i, i, load=LoadSaid("bar"), text=s.all[i].text)


def _band(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    """A band, with its own name if said, and whether it is said to help."""
    del before
    j = i
    label = None
    if s.is_(i, "COLOUR"):
        if not (s.is_(i + 1, "BAND", "BANDHELP") or (s.is_(i + 1, "EX") and s.all[i + 1].text.startswith("band"))):
            return None
        label = s.all[i].text
        j = i + 1
        if s.is_(j, "EX"):
            return Atom("L", i, i, load=LoadSaid("band", label=label))
    if s.is_(j, "BANDHELP"):
        return Atom("L", i, j, load=LoadSaid("band_help", label=label))
    if not s.is_(j, "BAND"):
        return None
    k = s.skip(j + 1, "FOR")
    if s.is_(k, "ASSIST"):
        return Atom("L", i, k, load=LoadSaid("band_help", label=label))
    if s.is_(i - 1, "ASSIST"):
        return Atom("L", i, j, load=LoadSaid("band_help", label=label))
    return Atom("L", i, j, load=LoadSaid("band", label=label))


def _assist(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    if not s.is_(i, "ASSIST") or s.all[i].text == "off":
        return None
    j = s.skip(i + 1, "AT", "WITH", "COLON", "BY", "OF", "ARTICLE", "DASH")
    if s.is_(j, "LOADQ"):
        return Atom("L", i, j, load=LoadSaid("assist", s.all[j].num("LOADQ"), in_kg=True))
    if s.is_(j, "COLOUR", "BAND"):
        band = _band(s, j, before)
        if band is not None and band.load is not None:
            return replace(band, first=i, load=replace(band.load, way="band_help"))
    return Atom("ASSIST", i, i)


def _body(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    """Body weight, with something hung on or taken off it: bw+10, bw -20."""
    del before
    if not s.is_(i, "BODY"):
        return None
    if s.is_(i + 1, "PLUS", "DASH", "AND") and s.is_(i + 2, "LOADQ", "NUM") and not s.is_(i + 3, "X"):
        dash = s.is_(i + 1, "DASH")
        if dash and not s.all[i + 2].glued:
            return Atom("L", i, i, load=LoadSaid("body"))
        lexeme = s.all[i + 2]
        in_kg = "LOADQ" in lexeme.k
        number = lexeme.num("LOADQ") if in_kg else lexeme.value
        last = i + 3 if s.is_(i + 3, "HUNG", "ASSIST") else i + 2
        return Atom("L", i, last, load=LoadSaid("assist" if dash else "added", number, in_kg=in_kg))
    if s.is_(i + 1, "PLUS") and s.is_(i + 2, "LOADQ", "NUM"):
        lexeme = s.all[i + 2]
        in_kg = "LOADQ" in lexeme.k
        number = lexeme.num("LOADQ") if in_kg else lexeme.value
        return Atom("L", i, i + 2, load=LoadSaid("added", number, in_kg=in_kg))
    return Atom("L", i, i, load=LoadSaid("body"))


def _signed(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    """+10 or -20 standing alone, with nothing counted before it."""
    if not s.is_(i, "PLUS", "DASH") or not s.is_(i + 1, "LOADQ", "NUM") or not s.all[i + 1].glued:
        return None
    if s.all[i].glued and not s.is_(i - 1, "OPEN") and before and before[-1].kind in ("N", "R", "L"):
        return None
    bracketed = s.is_(i - 1, "OPEN")
    if (
        before
        and before[-1].kind in ("N", "R", "H")
        and s.is_(i, "PLUS")
        and "LOADQ" not in s.all[i + 1].k
        and not bracketed
    ):
        return None
    if s.is_(i, "DASH") and before and before[-1].kind in ("N", "R", "L", "X") and s.all[i].glued:
        return None
    lexeme = s.all[i + 1]
    if lexeme.has("REPQ"):
        return Atom("MORE", i, i + 1, lexeme.value if s.is_(i, "PLUS") else -lexeme.value)
    in_kg = "LOADQ" in lexeme.k
    number = lexeme.num("LOADQ") if in_kg else lexeme.value
    sign = 1.0 if s.is_(i, "PLUS") else -1.0
    last = i + 2 if s.is_(i + 2, "HUNG", "ASSIST", "PERHAND") and s.all[i + 2].text != "off" else i + 1
    return Atom("DELTA", i, last, load=LoadSaid("delta", sign * number, in_kg=in_kg, signed=True))


def _moved(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    """Up 5, down 10kg: a change; up to 24: a load; dropped to 30 behind a set: a drop."""
    if s.is_(i, "DROP") and any(atom.kind in ("N", "R", "H", "L") for atom in before):
        return Atom("DROP", i, i)
    if s.is_(i, "UPTO"):
        aimed = s.is_(s.skip(i + 1, "ABOUT", "ARTICLE", "X"), "NUM", "LOADQ", "PLATE", "COLOUR", "BAND")
        return Atom("UPTO", i, i) if aimed else None
    if not s.is_(i, "UP", "DOWN"):
        return None
    j = s.skip(i + 1, "ABOUT", "BY", "ARTICLE", "SAMELOAD", "LOADWORD", "X")
    if s.is_(i, "DROP") and s.is_(j + 1, "COLON", "X", "FOR"):
        return None
    if s.is_(j, "LOADQ", "NUM") and not s.all[j].has("SETQ", "TIMESQ") and not s.is_(j + 1, "X"):
        lexeme = s.all[j]
        sign = 1.0 if s.is_(i, "UP") else -1.0
        if s.is_(j + 1, "REPS") or lexeme.has("REPQ"):
            return Atom("MORE", i, j, sign * lexeme.value)
        in_kg = "LOADQ" in lexeme.k
        number = lexeme.num("LOADQ") if in_kg else lexeme.value
        return Atom("DELTA", i, j, load=LoadSaid("delta", sign * number, in_kg=in_kg))
    return None


_PLAIN_ATOMS: Final[tuple[tuple[str, str], ...]] = (
    ("SAME", "SAME"), ("SAMEREPS", "SAMEREPS"), ("DROP", "DROP"), ("WEIGHTED", "WEIGHTED"), ("HOLDWORD", "HOLDWORD"),
    ("PERLIMB", "SIDE"), ("PERSIDE", "SIDE"), ("EACH", "SIDE"), ("LEFT", "SIDE"), ("RIGHT", "SIDE"), ("LAST", "LAST"),
    ("WORKING", "WORKING"), ("ALL", "ALL"), ("UNILAT", "UNI"),
)  # fmt: skip


def _worded(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    del before
    if s.is_(i, "SAMELOAD"):
        return Atom("L", i, i, load=LoadSaid("same"))
    if s.is_(i, "PLANLOAD"):
        return Atom("L", i, i, load=LoadSaid("plan"))
    if s.is_(i, "ORD") and (s.is_(i + 1, "SETS") or (s.is_(i + 1, "NUM") and s.all[i + 1].text == "one")):
        return Atom("NTH", i, i + 1, s.all[i].num("ORD"))
    if s.is_(i, "AMEND") and s.all[i].text in INLINE and not s.is_(i, "NUM"):
        return Atom("AMEND", i, i, text=s.all[i].text)
    if s.is_(i, "NOTWORD") and s.is_(i + 1, "NUM", "LOADQ") and s.all[i].text != "no":
        return Atom("NOT", i, i)
    for kind, atom in _PLAIN_ATOMS:
        if s.is_(i, kind):
            return Atom(atom, i, i, text=s.all[i].text if kind == "SAME" else kind)
    return None


_FORMERS: Final[tuple[Callable[[Stream, int, list[Atom]], Atom | None], ...]] = (
    _signed, _quantity, _plate, _bar, _band, _assist, _body, _moved, _worded,
)  # fmt: skip

_FORMING: Final = frozenset({
    *_LINKS, *(kind for kind, _ in _PLAIN_ATOMS), "NUM", "LOADQ", "DUR", "DIST", "REPN", "SETN", "PLATE", "EMPTYBAR", "COLOUR", "BAND",
    "BANDHELP", "ASSIST", "BODY", "UP", "DOWN", "UPTO", "SAMELOAD", "PLANLOAD", "ORD", "AMEND", "NOTWORD",
})  # fmt: skip
"""Kinds that can start an atom; most words of a message have none."""
