"""Changes against the last set: one less, 5 more kg, +2.5, up 10, up to 24."""

from typing import Final

from core.model.quantities import POUND_KG
from core.read.atoms import Atom, LoadSaid, LoadWay
from core.read.lexeme import Lexeme
from core.read.stream import Stream


def changed(s: Stream, i: int, j: int, lexeme: Lexeme) -> Atom | None:
    """One less, 2 more reps, 5 more kg, 10 heavier: a change against the last set."""
    if not s.is_(j, "MORE", "LESS", "HEAVIER", "LIGHTER") or s.is_(i - 1, "FOR", "X"):
        return None
    if s.is_(j, "LESS") and s.all[j].text == "short" and j + 1 < len(s) and s.all[j + 1].has("REST"):
        return None
    if s.is_(j, "MORE", "LESS") and not (s.is_(j, "MORE") and s.all[j].is_word("extra")):
        sign = 1.0 if s.is_(j, "MORE") else -1.0
        if s.barred and s.is_(j + 1, "PERSIDE"):
            in_kg = "LOADQ" in lexeme.k
            number = lexeme.num("LOADQ") if in_kg else lexeme.value
            return Atom("DELTA", i, j + 1, load=LoadSaid("delta", 2 * sign * number, in_kg=in_kg))
        if "LOADQ" in lexeme.k:
            return Atom("DELTA", i, j, load=LoadSaid("delta", sign * lexeme.num("LOADQ"), in_kg=True))
        if s.is_(j + 1, "KG", "LB") and not s.is_(j + 1, "NUM"):
            pounds = s.is_(j + 1, "LB")
            kg = lexeme.value * (POUND_KG if pounds else 1.0)
            return Atom("DELTA", i, j + 1, load=LoadSaid("delta", sign * kg, in_kg=True))
        if (
            s.is_(j, "MORE")
            and s.is_(j + 1, "ON")
            and (j + 2 >= len(s) or s.is_(j + 2, "COMMA", "STOP", "NL", "EMPTYBAR"))
        ):
            return Atom("DELTA", i, j + 1, load=LoadSaid("delta", lexeme.value))
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
            and lexeme.is_word("one")
            and not s.is_(i - 1, "SAME", "BUT", "COMMA")
        ):
            return None
        return Atom("MORE", i, last, sign * lexeme.value)
    return _in_words(s, i, j, lexeme)


def _in_words(s: Stream, i: int, j: int, lexeme: Lexeme) -> Atom | None:
    """5 heavier, 10 lighter, took 10 off."""
    taken = _taken_off(s, i, j, lexeme)
    if taken is not None:
        return taken
    if s.is_(j, "HEAVIER", "LIGHTER") and (
        s.all[j].is_word("heavier", "lighter") or s.is_(i - 1, "SAME", "BUT") or _closes(s, j + 1)
    ):
        sign = 1.0 if s.is_(j, "HEAVIER") else -1.0
        in_kg = "LOADQ" in lexeme.k
        number = lexeme.num("LOADQ") if in_kg else lexeme.value
        return Atom("DELTA", i, j, load=LoadSaid("delta", sign * number, in_kg=in_kg))
    return None


def _taken_off(s: Stream, i: int, j: int, lexeme: Lexeme) -> Atom | None:
    """'took 10 off', 'took 10 off each side'."""
    if not s.barred or not s.all[i - 1].is_word("taking off") or not s.is_(j, "LIGHTER") or not s.all[j].is_word("off"):
        return None
    sides = 2 if s.is_(j + 1, "PERSIDE") else 1
    number = lexeme.num("LOADQ") if "LOADQ" in lexeme.k else lexeme.value
    return Atom("DELTA", i, j + sides - 1, load=LoadSaid("delta", -sides * number, in_kg="LOADQ" in lexeme.k))


def _closes(s: Stream, i: int) -> bool:
    """Whether nothing more of the phrase comes."""
    return i >= len(s) or s.is_(i, "COMMA", "STOP", "NL", "SAMEREPS", "SAME")


def signed(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    """+10 or -20 standing alone, with nothing counted before it."""
    if not s.is_(i, "PLUS", "DASH") or not s.is_(i + 1, "LOADQ", "NUM"):
        return None
    if not s.all[i + 1].glued and (not s.all[i].is_word("plus") or before):
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
    hung = s.is_(i + 2, "HUNG", "ASSIST") and not s.all[i + 2].is_word("off")
    if hung and s.is_(i + 3, "NUM"):
        way: LoadWay = "assist" if s.is_(i + 2, "ASSIST") or sign < 0 else "added"
        return Atom("L", i, i + 2, load=LoadSaid(way, number, in_kg=in_kg))
    if s.barred and s.is_(i + 2, "PERSIDE"):
        return Atom("DELTA", i, i + 2, load=LoadSaid("delta", 2 * sign * number, in_kg=in_kg, signed=True))
    last = i + 2 if hung or s.is_(i + 2, "PERHAND") else i + 1
    return Atom("DELTA", i, last, load=LoadSaid("delta", sign * number, in_kg=in_kg, signed=True))


REACH: Final = 60
"""Atoms back to where a count is looked for that a drop comes behind: keeps the cost of rows of such words linear."""


def moved_by(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    """Up 5, down 10kg: a change; up to 24: a load; dropped to 30 behind a set: a drop."""
    if s.is_(i, "DROP") and s.is_(i + 1, "ARTICLE") and not s.is_(i + 2, *_SHEDDABLE):
        return Atom("W", i, i, text=s.all[i].text)
    if s.is_(i, "DROP") and any(atom.kind in ("N", "R", "H", "L") for atom in before[-REACH:]):
        return Atom("DROP", i, i, text=s.all[i].text)
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
        j += in_kg and s.is_(j + 1, "PLATE", "IMPL")
        if s.barred and s.is_(j + 1, "PERSIDE"):
            number, j = 2 * number, j + 1
        return Atom("DELTA", i, j, load=LoadSaid("delta", sign * number, in_kg=in_kg))
    return None


_SHEDDABLE: Final = ("NUM", "LOADQ", "LOADWORD", "IMPL", "PLATE", "KG", "LB", "SETS", "PIN", "EX")
"""What a lifter drops for a lighter set; anything else that is dropped is none."""
