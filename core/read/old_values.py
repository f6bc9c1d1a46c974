"""The value that a correction does away with: turned down ("not 65"), or owned up to ("put 8 by mistake")."""

from typing import Final

from core.read.stream import Clause, Stream

_VALUES: Final = ("NUM", "LOADQ", "DUR", "TIME", "REPN", "DIST", "EX")
_MARKED: Final = ("KG", "LB", "LEFT", "RIGHT")
"""What can be an old value: a quantity or a name; a unit or a side alone."""


def turned_down(s: Stream, i: int) -> int | None:
    """Index of the old value behind the 'not' at ``i``, an article between them ('not the 24s'); None without one."""
    at = s.skip(i + 1, "ARTICLE", "X")
    return at if s.is_(i, "NOTWORD") and s.is_(at, *_VALUES, *_MARKED) else None


def old_value(s: Stream, clause: Clause) -> int | None:
    """Index of the 'not' before the old value in '62.5 not 65' or 'not 65'."""
    return next((i for i in range(clause.first, clause.last) if turned_down(s, i) is not None), None)


def turns_down(s: Stream, clause: Clause) -> bool:
    """Whether the clause only turns down an old value: 'not 275'."""
    old = turned_down(s, clause.first)
    return old is not None and not s.is_(old, *_MARKED) and clause.last - old <= 2


def owns_up(s: Stream, clause: Clause) -> bool:
    """'that was 9, put 8 by mistake': behind a correction the old value is only owned up to."""
    start = s.skip(clause.first, "SELF", "OPENER", "FILLER", "AND", "BUT")
    rest = range(start + 2, clause.last)
    wrote = s.is_(start, "WROTE") and s.is_(start + 1, "NUM", "LOADQ", "REPN")
    return wrote and all(s.all[i].has("ERASE", "FILLER", "REPS", "INSTEADALONE", "KG", "LB") for i in rest)
