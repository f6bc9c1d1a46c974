"""Numbers joined with the units and words that make quantities of them: 60 kg, 90 s, 8 reps, 1 min 30."""

from collections.abc import Callable
from typing import Final

from core.model.quantities import POUND_KG
from core.read.lexeme import Lexeme


def join_units(lexemes: list[Lexeme]) -> list[Lexeme]:
    """Numbers joined with the unit that follows them."""
    out: list[Lexeme] = []
    i, last = 0, len(lexemes)
    while i < last:
        lexeme = lexemes[i]
        follow = lexemes[i + 1] if i + 1 < last else None
        if (
            "NUM" in lexeme.k
            and follow is not None
            and not _set_label(lexemes, i)
            and _join(lexeme, follow, lexemes, i)
        ):
            i += 1
        elif not lexeme.marks:  # most words: none of those told apart below
            pass
        elif lexeme.is_word("half") and i + 2 < last and lexemes[i + 1].is_word("a") and lexemes[i + 2].has("MIN"):
            lexeme = Lexeme({"DUR": 30.0, "NUMDUR": 1}, lexeme.start, lexemes[i + 2].end, "half a min", 30.0)
            i += 2
        elif (
            lexeme.is_word("a", "an", "half a") and follow is not None and follow.has("MIN") and not follow.is_word("m")
        ):
            lexeme = Lexeme({"DUR": 60.0, "NUMDUR": 1}, lexeme.start, follow.end, "a minute", 60.0)
            i += 1
        elif (
            lexeme.is_word("minute", "min") and follow is not None and follow.is_word("off", "rest", "break", "between")
        ):
            lexeme = Lexeme({"DUR": 60.0, "NUMDUR": 1}, lexeme.start, lexeme.end, "a minute", 60.0)
        elif lexeme.has("REPS", "SETS") and lexeme.is_word("reps", "sets") and _labelled(lexemes, i):
            count = lexemes[i + 2] if lexemes[i + 1].has("COLON") else lexemes[i + 1]
            kind = "REPQ" if lexeme.is_word("reps") else "SETQ"
            lexeme = Lexeme({"NUM": count.value, kind: count.value}, lexeme.start, count.end, lexeme.text, count.value)
            i = lexemes.index(count, i)
        if "DUR" in lexeme.k and [one.text for one in lexemes[i + 1 : i + 4]] == ["and", "a", "half"]:
            lexeme.k["DUR"] = lexeme.num("DUR") + 30
            lexeme.end = lexemes[i + 3].end
            i += 3
        out.append(lexeme)
        i += 1
    return _long_durations(out)


def _labelled(lexemes: list[Lexeme], i: int) -> bool:
    """reps: 12, sets: 2: the count behind its word."""
    rest = lexemes[i + 1 : i + 3]
    alone = i == 0 or not lexemes[i - 1].has("NUM", "HALF", "LAST", "NEG", "ALL", "SAME", "MORE", "PARTIALS")
    if rest and "NUM" in rest[0].k and lexemes[i].is_word("reps") and alone and not rest[0].plural:
        return not (len(rest) == 2 and rest[1].has("X", "KG", "LB"))
    return len(rest) == 2 and rest[0].has("COLON") and "NUM" in rest[1].k and not rest[1].plural


def _set_label(lexemes: list[Lexeme], i: int) -> bool:
    """The number of 'set 3 reps were 6' names the set."""
    return i > 0 and lexemes[i - 1].is_word("set") and lexemes[i + 1].has("REPS") and lexemes[i].value <= 12


def _join(lexeme: Lexeme, unit: Lexeme, lexemes: list[Lexeme], i: int) -> bool:
    """Give a number the meaning of the unit behind it; False where the word behind it is no unit of it."""
    if lexeme.plural and not unit.glued:
        return False
    for kind, meanings, fits in _UNITS:
        if kind in unit.k and fits(unit, lexemes, i):
            for meaning, factor in meanings:
                lexeme.k[meaning] = lexeme.value * (unit.num(kind) if factor is None else factor)
            lexeme.grow(unit)
            if lexeme.k.keys().isdisjoint(("REPQ", "SETQ", "TIMESQ")):
                lexeme.k.pop("NUM", None)
            return True
    return False


def _always(unit: Lexeme, lexemes: list[Lexeme], i: int) -> bool:
    del unit, lexemes, i
    return True


def _glued(unit: Lexeme, lexemes: list[Lexeme], i: int) -> bool:
    del lexemes, i
    return unit.glued


def _counted_sets(unit: Lexeme, lexemes: list[Lexeme], i: int) -> bool:
    """'1 set', '3 sets'; but in '8 set 2 7' the word belongs to the number behind it."""
    follow = lexemes[i + 2] if i + 2 < len(lexemes) else None
    singular = unit.is_word("set", "round") and lexemes[i].value != 1 and not unit.glued
    return not (singular and follow is not None and follow.has("NUM"))


def _only_metres(unit: Lexeme, lexemes: list[Lexeme], i: int) -> bool:
    del lexemes, i
    return "MIN" not in unit.k


def _hours(unit: Lexeme, lexemes: list[Lexeme], i: int) -> bool:
    del lexemes, i
    return unit.glued or len(unit.text) > 1


def _lengths(unit: Lexeme, lexemes: list[Lexeme], i: int) -> bool:
    del lexemes, i
    return unit.glued or unit.text not in ("in", '"')


def _repetitions(unit: Lexeme, lexemes: list[Lexeme], i: int) -> bool:
    del lexemes, i
    return not unit.is_word("r") or unit.glued


def _seconds(unit: Lexeme, lexemes: list[Lexeme], i: int) -> bool:
    """'8 s2' and '8, second 60x7' are a count and what the next set is called."""
    follow = lexemes[i + 2] if i + 2 < len(lexemes) else None
    labels = len(unit.text) == 1 and not unit.glued and follow is not None and follow.glued and follow.has("NUM")
    ordinal = unit.has("ORD") and not unit.glued and follow is not None and follow.has("NUM", "LOADQ", "SETS")
    return not labels and not ordinal


_Fits = Callable[[Lexeme, list[Lexeme], int], bool]
_UNITS: Final[tuple[tuple[str, tuple[tuple[str, float | None], ...], _Fits], ...]] = (
    ("KG", (("LOADQ", 1.0),), _always),
    ("GKG", (("LOADQ", 1.0),), _glued),
    ("LB", (("LOADQ", POUND_KG),), _always),
    ("FAR", (("FARQ", 1.0),), _always),
    ("METRE", (("DIST", None),), _only_metres),
    ("METRE", (("DIST", None), ("DUR", 60.0)), _always),
    ("SEC", (("DUR", 1.0),), _seconds),
    ("MIN", (("DUR", 60.0),), _always),
    ("HOUR", (("LONG", 3600.0),), _hours),
    ("CM", (("LEN", None),), _lengths),
    ("CLOCK", (("CLOCKTIME", 1.0),), _always),
    ("PERCENT", (("PCT", 1.0),), _always),
    ("STRIDES", (("STRIDEQ", 1.0),), _always),
    ("REPS", (("REPQ", 1.0),), _repetitions),
    ("SETS", (("SETQ", 1.0),), _counted_sets),
    ("TIMES", (("TIMESQ", 1.0),), _always),
)
"""A unit's kind, the meanings it gives with their factors (None: the unit's own), and where it counts as one."""


def _long_durations(lexemes: list[Lexeme]) -> list[Lexeme]:
    """Minutes with the seconds behind them: 1 min 30, a minute ten, 2m30s, one and a half minutes."""
    out: list[Lexeme] = []
    for i, lexeme in enumerate(lexemes):
        before = out[-1] if out else None
        minute = before is not None and "DUR" in before.k and "TIME" not in before.k and before.num("DUR") % 60 == 0
        if minute and before is not None and before.text.split(" ")[-1][:1] == "m" and _adds_seconds(lexemes, i):
            extra = lexeme.num("DUR") if "DUR" in lexeme.k else lexeme.value
            before.k["DUR"] = before.num("DUR") + extra
            before.k.pop("DIST", None)
            before.grow(lexeme)
            continue
        out.append(lexeme)
    for i, lexeme in enumerate(out):
        lexeme.index = i
    return out


def _few(lexemes: list[Lexeme], i: int) -> bool:
    """A count of sets that ends its line: '1 min 15 x2'."""
    few = i < len(lexemes) and "NUM" in lexemes[i].k and lexemes[i].value <= MOST_TIMES
    return few and (i + 1 >= len(lexemes) or lexemes[i + 1].has("NL", "STOP", "COMMA"))


MOST_TIMES: Final = 5.0
"""A longer row of holds is not counted behind an x (common practice, no source)."""


def _adds_seconds(lexemes: list[Lexeme], i: int) -> bool:
    lexeme = lexemes[i]
    if "DUR" in lexeme.k:
        return 0 < lexeme.num("DUR") < 60
    whole_minutes = lexemes[i - 1].text.split(" ")[-1]
    if lexeme.plural and lexeme.glued and whole_minutes == "m":
        return 5 <= lexeme.value < 60
    if "NUM" not in lexeme.k or not 5 <= lexeme.value < 60 or lexeme.plural:
        return False
    if lexeme.has("REPQ", "SETQ", "LOADQ", "TIMESQ"):
        return False
    follow = lexemes[i + 1] if i + 1 < len(lexemes) else None
    times = follow is not None and follow.has("X") and _few(lexemes, i + 2) and lexeme.value % 5 == 0
    if follow is not None and follow.has("X", "NUM", "SLASH") and not times:
        return False
    return lexeme.glued or whole_minutes in ("minute", "minutes", "min", "mins")
