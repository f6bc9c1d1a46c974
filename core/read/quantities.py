"""Numbers into atoms: a count with its unit, a load with what makes it one, or a bare number left open."""

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from core.read.atoms import Atom, LoadSaid, LoadWay
from core.read.changes import changed
from core.read.lexeme import Lexeme
from core.read.loads_said import bar_said, load_said
from core.read.remark import MOST_LAST
from core.read.stream import Stream
from core.read.totals import of_the_aimed, sums_up

MOST_WARMUPS = 5.0
"""More warm-up sets than this are not counted out by a number (common practice, no source)."""


def quantity(s: Stream, i: int, before: list[Atom]) -> Atom | None:
    """A number with what makes it a quantity; the first kind of the table that it can be."""
    lexeme = s.all[i]
    for kind, form in QUANTITIES:
        if kind in lexeme.k:
            return form(s, i, lexeme, before)
    return None


def _load(s: Stream, i: int, lexeme: Lexeme, before: list[Atom]) -> Atom | None:
    if s.is_(i + 1, "EMPTYBAR") and s.is_(i + 2, "AND", "PLUS"):
        barred = bar_said(s, i + 1, before)
        if barred is not None and barred.load is not None and barred.load.per_side:
            return replace(barred, first=i)
    return load_said(s, i, lexeme.num("LOADQ"), in_kg=True, before=before)


def _time(s: Stream, i: int, lexeme: Lexeme, before: list[Atom]) -> Atom | None:
    """Seconds; but '40 m' can be minutes or metres, and is read as metres."""
    if "DIST" in lexeme.k:
        return Atom("D", i, i, lexeme.num("DIST"), text="m")
    del s, before
    return Atom("H", i, i, lexeme.num("DUR"))


def _distance(s: Stream, i: int, lexeme: Lexeme, before: list[Atom]) -> Atom | None:
    del s, before
    return Atom("D", i, i, lexeme.num("DIST"))


def _sets(s: Stream, i: int, lexeme: Lexeme, before: list[Atom]) -> Atom | None:
    del s, before
    rounds = any(word in lexeme.text for word in ("round", "rds", "rnd"))
    return Atom("S", i, i, lexeme.num("SETQ"), strong=rounds)


def _times(s: Stream, i: int, lexeme: Lexeme, before: list[Atom]) -> Atom | None:
    del before
    return Atom("T", i, i, lexeme.num("TIMESQ"), strong=s.is_(i - 1, "THAT"))


def _named(s: Stream, i: int, lexeme: Lexeme, before: list[Atom]) -> Atom | None:
    """A double, three singles; but a single kettlebell counts no repetition."""
    del before
    if s.is_(i + 1, "IMPL"):
        return None
    if s.all[i].is_word("single") and s.is_(i + 1, "LOADQ", "NUM") and s.is_(i + 2, "IMPL"):
        return _so_many_implements(s, i, 1.0)
    return Atom("R", i, i, lexeme.num("REPN"), text="named", plural=lexeme.text.endswith("s"))


def _so_many_more(s: Stream, i: int, lexeme: Lexeme) -> Atom | None:
    """'2 more sets the same', 'x2 more', 'another two of those': so many more sets like the last."""
    if not 1 < lexeme.value <= MOST_MORE:
        return None
    another = s.is_(i - 1, "SAME") and s.all[i - 1].is_word("another time")
    j = i + 1 if another else s.skip(i + 1, "MORE")
    if j == i + 1 and not another:
        return None
    k = s.skip(j, "SETS", "TIMES")
    alike = s.is_(k, "LIKETHAT") or (s.is_(k, "SAME") and not s.all[k].is_word("another time"))
    those = s.is_(k, "OF") and s.is_(k + 1, "THAT", "SAME")
    ends = k >= len(s) or s.is_(k, "COMMA", "STOP", "NL")
    timed = (s.is_(i - 1, "X") and not s.is_(i - 2, "NUM", "LOADQ")) or s.is_(j, "TIMES")
    if not alike and not those and not (timed and ends):
        return None
    return Atom("SAME", i, k + 1 if those else k if alike else k - 1, lexeme.value, text="more sets")


MOST_MORE: Final = 6.0
"""More further sets than this are not counted out (common practice, no source)."""


def _twice(s: Stream, i: int, lexeme: Lexeme, before: list[Atom]) -> Atom | None:
    if s.is_(i + 1, "MORE") and s.is_(i - 1, "THAT", "SAME"):
        return Atom("SAME", i, i + 1, lexeme.num("SETN"), text="more sets")
    if s.is_(i - 1, "DOWN", "UP", "WORD", "KNOWN", "ON", "CHAT", "FORM", "FAIL") and not s.is_(i - 1, "NUM", "FILLER"):
        return Atom("W", i, i, text=lexeme.text)
    del before
    return Atom("S", i, i, lexeme.num("SETN"), text="twice")


def _reps(s: Stream, i: int, lexeme: Lexeme, before: list[Atom]) -> Atom | None:
    del before
    change = changed(s, i, i + 1, lexeme)
    return change or Atom("R", i, i, lexeme.num("REPQ"))


def _lone_one(s: Stream, i: int, lexeme: Lexeme) -> bool:
    """'one' that stands for a thing and counts nothing."""
    if not lexeme.is_word("one"):
        return False
    if s.is_(i - 1, "AMEND") and s.is_(i + 1, "COMMA"):
        return True  # "forgot one, 3 sets of rows"
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
    return not s.is_(i + 1, *counts) and not s.is_(i - 1, "X", "FOR", "NUM", "SLASH", "LOADQ")


def _ends(s: Stream, i: int) -> bool:
    return i >= len(s) or s.is_(i, "COMMA", "STOP", "NL", "CLOSE")


_OF_THE_LAST: Final = ("ON", "BE", "FEEL", "FORM", "SLOW", "WITH", "LEFT", "RIGHT")


def _both_sides(s: Stream, i: int, lexeme: Lexeme) -> Atom | None:
    """'8/8, 8/8, 7/7' on a lift done one side at a time: each pair is one set. One alone can be two sets as well."""
    if not s.sided or not _pair_at(s, i):
        return None
    pairs = (k for k in s.places("SLASH") if k - 1 != i and _pair_at(s, k - 1))
    return Atom("R", i, i + 2, lexeme.value) if next(pairs, None) is not None else None


def _pair_at(s: Stream, i: int) -> bool:
    """Two equal counts with a stroke glued between them, and no third."""
    if not (s.is_(i, "NUM") and s.is_(i + 1, "SLASH") and s.is_(i + 2, "NUM")):
        return False
    glued = s.all[i + 1].glued and s.all[i + 2].glued
    return glued and s.all[i].value == s.all[i + 2].value and not s.is_(i + 3, "SLASH") and not s.is_(i - 1, "SLASH")


def _nothing_counted(s: Stream, i: int, lexeme: Lexeme) -> Atom | None:
    """Numbers that only stand for things: 'the last one', 'in 5', 'the 20 ones'."""
    if _lone_one(s, i, lexeme):
        return Atom("W", i, i, text="one")
    if sums_up(s, i, lexeme):
        return Atom("W", i, i, text=lexeme.text)
    if (
        s.is_(i - 1, "LAST")
        and 1 < lexeme.value <= MOST_LAST
        and (s.is_(i + 1, *_OF_THE_LAST) or (s.all[i - 1].is_word("on the last") and _ends(s, i + 1)))
    ):
        return Atom("W", i, i, text=lexeme.text)
    soon = s.is_(i - 1, "IN") and s.all[i - 1].is_word("in") and not s.is_(i + 1, "SETS", "X", "EX")
    some = not s.is_(i - 1, "X", "FOR", "AT") and any(one.is_word("ones") for one in s.all[i + 1 : i + 3])
    return Atom("W", i, i, text=lexeme.text) if soon or some else None


def _by_its_neighbour(s: Stream, i: int, lexeme: Lexeme) -> Atom | None:
    """Two warm-ups, weight 40, one more at 100, 12 steps each: the word beside it tells what it counts."""
    kind = s.skip(i + 1, "OF")
    if kind < len(s) and s.all[kind].has("WARMUP", "WORKING") and s.all[kind].text.endswith("s"):
        listed = s.is_(i - 1, "COMMA") and s.is_(i - 2, "NUM", "LOADQ")
        led = s.is_(i - 1, "X", "FOR", "AT", "NUM") or listed or s.is_(i - 2, "X")
        if not led and lexeme.value <= MOST_WARMUPS:
            return Atom("S", i, i, lexeme.value)
    if s.is_(i + 1, "EACH") and _of_a_pair(s, i):
        return Atom("L", i, i + 1, load=LoadSaid("per_hand", lexeme.value))
    if i and s.all[i - 1].is_word("weight", "load") and not lexeme.has("REPQ", "SETQ", "TIMESQ"):
        return Atom("L", i, i, load=LoadSaid("plain", lexeme.value, plural=lexeme.plural))
    if lexeme.value == 1 and s.is_(i + 1, "MORE") and s.is_(i + 2, "AT", "WITH"):
        return Atom("SAME", i, i + 1, text="one more")
    if lexeme.has("STRIDEQ") and s.is_(i + 1, "PERLIMB", "PERSIDE", "EACH"):
        return Atom("R", i, i, lexeme.value)
    return None


def _of_a_pair(s: Stream, i: int) -> bool:
    """'both dbs (15 each)', 'two dumbbells of 10 each': the number behind several implements is the load of each."""
    for k in range(i - 1, max(-1, i - 4), -1):
        if s.is_(k, "IMPL"):
            return s.all[k].text.endswith("s") and not s.is_(k - 1, "NUM", "LOADQ")
        if not s.is_(k, "OPEN", "OF", "COMMA", "AT", "ARTICLE"):
            return False
    return False


def _number(s: Stream, i: int, lexeme: Lexeme, before: list[Atom]) -> Atom | None:
    told = _both_sides(s, i, lexeme) or _nothing_counted(s, i, lexeme) or _by_its_neighbour(s, i, lexeme)
    if told is not None:
        return told
    if lexeme.has("CLOCKTIME", "PCT", "LONG", "FARQ"):
        return Atom("W", i, i, text=lexeme.text)
    pair = _one_or_two(s, i, lexeme) or of_the_aimed(s, i, lexeme)
    if pair is not None:
        return pair
    change = _so_many_more(s, i, lexeme) or changed(s, i, i + 1, lexeme)
    if change is not None:
        return change
    if s.is_(i + 1, "ASSIST") and _last_of_counts(lexeme.value, before):
        return Atom("N", i, i, lexeme.value, text=lexeme.text)
    if s.is_(i + 1, "PLATE", "PERHAND", "IMPL", "TOTAL", "BOTHHANDS", "HUNG", "ASSIST", "BAND", "PERSIDE"):
        load = load_said(s, i, lexeme.value, in_kg=False, before=before)
        if load is not None:
            return load
    return Atom("N", i, i, lexeme.value, text=lexeme.text, plural=lexeme.plural)


def _last_of_counts(value: float, before: list[Atom]) -> bool:
    """'8 8 6 assisted': the last of a list of counts, and no help of so many kilos."""
    behind = [one for one in before[-2:] if one.kind == "N"]
    return bool(behind) and abs(behind[-1].value - value) <= MOST_APART and behind[-1].value < LEAST_HELP


MOST_APART: Final = 4.0
LEAST_HELP: Final = 21.0
"""Counts of one list lie so near each other, and below this (common practice, no source)."""


def _one_or_two(s: Stream, i: int, lexeme: Lexeme) -> Atom | None:
    """One 35 dumbbell, two 16kg kettlebells: the first number counts implements."""
    if lexeme.value not in (1, 2) or not s.is_(i + 1, "LOADQ", "NUM") or not s.is_(i + 2, "IMPL"):
        return None
    return _so_many_implements(s, i, lexeme.value)


def _so_many_implements(s: Stream, i: int, count: float) -> Atom:
    in_kg = "LOADQ" in s.all[i + 1].k
    number = s.all[i + 1].num("LOADQ") if in_kg else s.all[i + 1].value
    last = i + 3 if s.is_(i + 3, "BOTHHANDS", "PERHAND") else i + 2
    last = last + 1 if s.is_(last + 1, "HUNG") else last
    way: LoadWay = "added" if s.is_(last, "HUNG") else "one" if count == 1 else "per_hand"
    return Atom("L", i, last, load=LoadSaid(way, number, in_kg=in_kg))


_Form = Callable[[Stream, int, Lexeme, list[Atom]], Atom | None]
QUANTITIES: Final[tuple[tuple[str, _Form], ...]] = (
    ("LOADQ", _load), ("DUR", _time), ("DIST", _distance), ("SETQ", _sets), ("REPQ", _reps), ("TIMESQ", _times),
    ("REPN", _named), ("SETN", _twice), ("NUM", _number), ("STRIDEQ", _number),
)  # fmt: skip
"""What a number can be by its kind, the surest first."""
