"""Numbers into atoms: a count with its unit, a load with what makes it one, or a bare number left open."""

from dataclasses import replace

from core.read.atoms import Atom, LoadSaid
from core.read.changes import changed
from core.read.lexeme import Lexeme
from core.read.loads_said import bar_said, load_said
from core.read.stream import Stream

MOST_WARMUPS = 5.0
"""More warm-up sets than this are not counted out by a number (common practice, no source)."""


def quantity(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    lexeme = s.all[i]
    k = lexeme.k
    if "LOADQ" in k and s.is_(i + 1, "EMPTYBAR") and s.is_(i + 2, "AND", "PLUS"):
        barred = bar_said(s, i + 1, before)
        if barred is not None and barred.load is not None and barred.load.per_side:
            return replace(barred, first=i)
    if "LOADQ" in k:
        return load_said(s, i, lexeme.num("LOADQ"), in_kg=True, before=before)
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
        return Atom("T", i, i, lexeme.num("TIMESQ"), strong=s.is_(i - 1, "THAT"))
    if "REPN" in k and s.is_(i + 1, "IMPL"):
        return None
    if "REPN" in k:
        return Atom("R", i, i, lexeme.num("REPN"), text="named", plural=lexeme.text.endswith("s"))
    if "SETN" in k:
        return Atom("S", i, i, lexeme.num("SETN"), text="twice")
    if "NUM" in k or "STRIDEQ" in k:
        return _number(s, i, lexeme, before)
    return None


def _reps(s: Stream, i: int, lexeme: Lexeme) -> Atom | None:
    change = changed(s, i, i + 1, lexeme)
    return change or Atom("R", i, i, lexeme.num("REPQ"))


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
    some = not s.is_(i - 1, "X", "FOR", "AT") and any(one.text == "ones" for one in s.all[i + 1 : i + 3])
    if soon or some:
        return Atom("W", i, i, text=lexeme.text)
    if i + 1 < len(s) and s.all[i + 1].has("WARMUP", "WORKING") and s.all[i + 1].text.endswith("s"):
        led = s.is_(i - 1, "X", "FOR", "AT", "NUM", "COMMA") or s.is_(i - 2, "X")
        if not led and lexeme.value <= MOST_WARMUPS:
            return Atom("S", i, i, lexeme.value)
    if i and s.all[i - 1].text in ("weight", "load") and not lexeme.has("REPQ", "SETQ", "TIMESQ"):
        return Atom("L", i, i, load=LoadSaid("plain", lexeme.value, plural=lexeme.plural))
    if lexeme.value == 1 and s.is_(i + 1, "MORE") and s.is_(i + 2, "AT", "WITH"):
        return Atom("SAME", i, i + 1, text="one more")
    if lexeme.has("STRIDEQ") and s.is_(i + 1, "PERLIMB", "PERSIDE", "EACH"):
        return Atom("R", i, i, lexeme.value)
    if lexeme.has("CLOCKTIME", "PCT", "LONG", "FARQ"):
        return Atom("W", i, i, text=lexeme.text)
    pair = _one_or_two(s, i, lexeme)
    if pair is not None:
        return pair
    change = changed(s, i, i + 1, lexeme)
    if change is not None:
        return change
    if s.is_(i + 1, "PLATE", "PERHAND", "IMPL", "TOTAL", "BOTHHANDS", "HUNG", "ASSIST", "BAND", "PERSIDE"):
        load = load_said(s, i, lexeme.value, in_kg=False, before=before)
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
