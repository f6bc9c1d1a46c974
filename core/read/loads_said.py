"""Loads as people say them: plates, the bar, bands, body weight with something hung on, a hand, a side."""

from bisect import bisect_left
from dataclasses import replace
from typing import Final

from core.evidence.exercises import EXERCISES
from core.read.atoms import Atom, LoadSaid, LoadWay
from core.read.changes import changed
from core.read.lexeme import Lexeme
from core.read.stream import Stream

MOST_PLATES: Final = 9
"""More plates than this on one side are not counted; a larger number is the plate's own weight (no source)."""
_TAILS: Final[tuple[tuple[str, LoadWay], ...]] = (
    ("PERHAND", "per_hand"), ("BOTHHANDS", "one"), ("TOTAL", "total"), ("HUNG", "added"), ("BANDHELP", "assist"),
    ("ASSIST", "assist"),
)  # fmt: skip


def load_said(s: Stream, i: int, number: float, *, in_kg: bool, before: list[Atom]) -> Atom | None:
    """A number with what makes it a load: a unit before this, or a hand, a side, a vest, plates behind it."""
    lexeme = s.all[i]
    if in_kg:
        change = changed(s, i, i + 1, lexeme)
        if change is not None:
            return change
    elif s.is_(i + 1, "PLATE"):
        return _plate_of(s, i, number) if number > MOST_PLATES else _plates(s, i, number, i + 1)
    said = LoadSaid("plain", number, in_kg=in_kg, plural=lexeme.plural)
    j = i + 1
    if s.is_(j, "IMPL") and not (s.is_(j + 1, "EX") and not in_kg):
        said = _implements(s, j, said)
        j += 1
    if s.is_(j, "EMPTYBAR") and s.all[j].is_word("bar", "barbell"):
        return Atom("L", i, j, load=replace(said, way="total"))
    for kind, way in _TAILS:
        k = s.skip(j, "OF", "ARTICLE", "ON", "WITH", "IN") if kind in ("HUNG", "ASSIST") else s.skip(j, "IN")
        worn = kind == "HUNG" and s.barred and not in_kg
        if s.is_(k, kind) and not worn and not (kind == "TOTAL" and s.is_(k + 1, "REPS")) and not _rep_like(s, k):
            return Atom("L", i, k, load=replace(said, way=way))
    if s.is_(j, "PLATE") and in_kg:
        side = s.is_(j + 1, "PERSIDE")
        return Atom("L", i, j + side, load=replace(said, way="per_side" if side else "added", per_side=side))
    if s.is_(j, "BAND"):
        return Atom("L", i, j, load=replace(said, way="band"))
    barred = _bar_behind(s, j)
    if barred and not said.plural and not _after_link(before):
        return Atom("L", i, barred, load=replace(said, way="per_side", number=number / 2, per_side=True))
    if s.is_(j, "PERSIDE") and not s.sided and (in_kg or not _after_link(before) or _odd(lexeme)):
        barred = _bar_behind(s, j + 1)
        return (
            Atom("L", i, barred or j, load=replace(said, way="per_side", per_side=True))
            if (in_kg or barred or _odd(lexeme) or _loads_a_side(s, j, before))
            else None
        )
    return Atom("L", i, j - 1, load=said) if in_kg or j > i + 1 else None


def _bar_behind(s: Stream, j: int) -> int:
    """The place of the bar in 'plus the bar', told beside its plates; 0 where there is none."""
    k = s.skip(j + 1, "ARTICLE")
    return k if s.is_(j, "PLUS", "AND") and s.is_(k, "EMPTYBAR") else 0


def _odd(lexeme: Lexeme) -> bool:
    """A number that can count no repetitions: 22.5, or the 20s."""
    return lexeme.value != int(lexeme.value) or lexeme.plural


def _plate_of(s: Stream, i: int, number: float) -> Atom:
    """A 45 plate: one plate by its own weight."""
    side = s.is_(i + 2, "PERSIDE")
    last = i + 2 if side or s.is_(i + 2, "HUNG") else i + 1
    return Atom("L", i, last, load=LoadSaid("per_side" if side else "added", number, per_side=side))


def _implements(s: Stream, j: int, said: LoadSaid) -> LoadSaid:
    """Dumbbells in the plural are one in each hand; 'one 20 dumbbell' is one alone."""
    if s.all[j].text.endswith("s"):
        return replace(said, plural=True, way="per_hand")
    alone = not said.plural and s.is_(j - 2, "NUM") and s.all[j - 2].value == 1
    return replace(said, way="one") if alone else said


def _loads_a_side(s: Stream, j: int, before: list[Atom]) -> bool:
    """Whether '20 a side' is a load: nothing loaded before, and a bar to load or counts behind."""
    if any(atom.kind == "L" for atom in before):
        return s.barred and s.is_(j + 1, "X", "FOR")
    return s.barred or s.is_(j + 1, "X", "FOR", "NUM", "COLON", "REPN") or s.is_(j + 2, "NUM")


def _rep_like(s: Stream, k: int) -> bool:
    """'extra' or 'off' that belongs to another phrase; 'hanging' behind counts tells how the lift is done."""
    if s.all[k].is_word("hanging") and s.is_(k - 1, "NUM") and not s.is_(k - 2, "WITH", "PLUS", "EX", "AT"):
        return not s.is_(k + 1, "NUM", "X", "FOR", "COMMA", "COLON")
    return s.all[k].is_word("off", "extra") and s.is_(k + 1, "NUM", "EX")


def _after_link(before: list[Atom]) -> bool:
    return bool(before) and before[-1].kind in ("X", "FOR", "OF")


def _plates(s: Stream, first: int, count: float, i: int) -> Atom:
    """Plates: 2 plates, a plate a side, a plate and a 10 each side."""
    per_side = s.is_(i + 1, "PERSIDE")
    last, extra = i + per_side, 0.0
    j = s.skip(last + 1, "AND", "PLUS", "ARTICLE", "WITH")
    one = j > last + 2 and s.is_(j - 1, "ARTICLE")
    if j > last + 1 and s.is_(j, "NUM") and (one or s.is_(j + 1, "PERSIDE") or s.all[j].plural):
        extra = s.all[j].value
        last = j + 1 if s.is_(j + 1, "PERSIDE") else j
    return Atom(
        "L", first, last, load=LoadSaid("plates", count, per_side=per_side, label=str(extra) if extra else None)
    )


def plate_said(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    del before
    pinned = s.is_(i, "PIN") or (s.is_(i, "PLATE") and not s.all[i].text.endswith("s"))
    j = s.skip(i + 1, "COLON")
    if pinned and s.is_(j, "NUM") and not s.all[j].plural and not s.is_(i - 1, "ARTICLE", "NUM"):
        return Atom("L", i, j, load=LoadSaid("pin", s.all[j].value))
    if s.is_(i, "HALF") and s.all[i].is_word("quarter") and s.is_(s.skip(i + 1, "ON"), "PERSIDE"):
        return Atom("L", i, s.skip(i + 1, "ON"), load=LoadSaid("pin"))
    if (
        s.is_(i, "PLATE")
        and not s.is_(i - 1, "ORD")
        and not (s.is_(i - 1, "ARTICLE") and s.all[i - 1].is_word("the", "my"))
    ):
        return _plates(s, i, 1.0, i)
    return None


def bar_said(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    del before
    if not s.is_(i, "EMPTYBAR") or (s.is_(i - 1, "ON") and s.all[i].is_word("the bar", "bar")):
        return None
    if _weighed_bar(s, i):
        return None
    j = s.skip(i + 1, "AND", "PLUS")
    if j > i + 1 and s.is_(j, "NUM", "LOADQ") and (s.is_(j + 1, "PERSIDE") or s.all[j].plural):
        in_kg = "LOADQ" in s.all[j].k
        number = s.all[j].num("LOADQ") if in_kg else s.all[j].value
        last = j + 1 if s.is_(j + 1, "PERSIDE") else j
        return Atom("L", i, last, load=LoadSaid("per_side", number, in_kg=in_kg, per_side=True))
    return Atom("L", i, i, load=LoadSaid("bar"), text=s.all[i].text)


def _weighed_bar(s: Stream, i: int) -> bool:
    """'35kg ez bar', '25 straight bar': its weight is said right before it, so the bar is not empty."""
    kind = s.is_(i - 1, "KNOWN") and not s.is_(i - 1, "NUM")
    return kind and s.is_(i - 2, "LOADQ", "NUM") and not s.is_(i - 3, "X", "FOR")


def band_said(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    """A band, with its own name if said, and whether it is said to help."""
    del before
    j = i
    label = None
    if s.is_(i, "COLOUR"):
        if s.all[i].k["COLOUR"] != "size" and not s.is_(i + 1, "BAND", "BANDHELP", "EX") and _banded(s, i):
            return Atom("L", i, i, load=LoadSaid("band", label=s.word(i)))
        if not (s.is_(i + 1, "BAND", "BANDHELP") or (s.is_(i + 1, "EX") and s.all[i + 1].text.startswith("band"))):
            return None
        label = s.word(i)
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


def _banded(s: Stream, i: int) -> bool:
    """Whether the exercise named nearest before, else behind, is done with a band."""
    names = s.places("EX")
    here = bisect_left(names, i)
    named = next((s.all[k].mention for k in reversed(names[:here]) if s.is_(k, "EX")), None)
    named = named or next((s.all[k].mention for k in names[here:] if k > i and s.is_(k, "EX")), None)
    if any(k != i for k in s.places("BAND")) and s.is_(i - 1, "COMMA", "OPEN"):
        return True
    return named is not None and bool(named.ids) and all(EXERCISES[one].load_kind == "band" for one in named.ids)


def assist_said(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    if not s.is_(i, "ASSIST") or s.all[i].is_word("off"):
        return None
    j = s.skip(i + 1, "AT", "WITH", "COLON", "BY", "OF", "ARTICLE", "DASH")
    if s.is_(j, "LOADQ"):
        return Atom("L", i, j, load=LoadSaid("assist", s.all[j].num("LOADQ"), in_kg=True))
    if s.is_(j, "COLOUR", "BAND"):
        band = band_said(s, j, before)
        if band is not None and band.load is not None:
            return replace(band, first=i, load=replace(band.load, way="band_help"))
    return Atom("ASSIST", i, i)


def body_said(s: Stream, i: int, before: list[Atom]) -> Atom | None:
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
