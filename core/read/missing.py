"""Repetitions tried and missed, and partial repetitions behind the full ones."""

from typing import Final

from core.model.quantities import Range
from core.read.remark import Found, Remark
from core.read.stream import Stream

MOST_MISSED: Final = 30.0
"""A number behind 'failed at' up to this is a repetition, above it a load (common practice, no source)."""


def partials(s: Stream, i: int) -> Found:
    """Partial repetitions after the full ones: + 2 partials, then 3 half reps."""
    if s.is_(i, "COMMA") and not s.is_(i - 1, "NUM", "REPQ"):
        return None
    j = s.skip(i + 1, "ARTICLE", "ABOUT", "MORE", "AND", "PLUS")
    count = s.num(j)
    if count is None or count != int(count):
        return None
    k = s.skip(j + 1, "MORE", "FILLER")
    return Remark("partials", int(count), i, k) if s.is_(k, "PARTIALS") else None


def only_partials(s: Stream, i: int) -> Found:
    """'12 partials' with nothing counted before: that is all that was done."""
    first = i - 1
    full = s.is_(first - 1, "PLUS", "AND", "THEN", "COMMA", "WITH", "NUM", "SLASH", "OPEN")
    if s.num(first) is None or full or any(s.is_(k, "NUM", "REPQ") for k in range(max(0, first - 1), first)):
        return None
    return Remark("range", Range("partial"), i, i)


_BETWEEN_FAIL: Final = ("ON", "ARTICLE", "AT", "IN", "FILLER", "REPS", "TO", "LASTREP", "AND", "RANGE", "FOR")


def fail(s: Stream, i: int) -> Found:
    """A repetition tried and missed; the number of the missed one if said, before or behind."""
    first, missed = i, None
    if s.all[i].k["FAIL"] == "glued":
        behind = (s.all[i].glued and s.is_(i - 1, "NUM")) or (s.is_(i - 1, "OPEN") and s.is_(i + 1, "CLOSE"))
        return Remark("failed", None, i, i) if behind else None
    if s.all[i].k.get("AMEND") == "inline" and s.is_(i + 1, "NUM", "LOADQ") and s.is_(i + 2, "X", "FOR"):
        return None
    if s.is_(i - 1, "ORD"):
        first, missed = i - 1, s.all[i - 1].num("ORD")
    j = i + 1 if s.is_(i + 1, "EX") else s.skip(i + 1, *_BETWEEN_FAIL)
    last_only = s.is_(j, "LAST")
    if s.is_(j, "ORD", "ORDREP"):
        missed = s.all[j].num("ORD" if "ORD" in s.all[j].k else "ORDREP")
        j = s.skip(j + 1, "REPS", "SETS")
        missed = None if s.all[j - 1].has("SETS") else missed
    elif s.is_(j, "NUM") and _names_a_rep(s, i, j):
        missed = s.all[j].value
        j += 1
    if missed is None and s.all[i].k["FAIL"] == "ordinal":
        return None
    if missed is None and s.is_(j, "REPQ") and j == i + 1 and s.is_(j + 1, "IN"):
        s.use([i])
        return Remark("failed", None, j + 1, j + 1)
    end = max(i, j - 1)
    while s.is_(end + 1, "LASTREP", "LAST", "ON", "ARTICLE", "REPS", "ATTEMPT") and end - i < 8:
        end += 1
        last_only = last_only or s.is_(end, "LAST")
    while end > i and s.all[end].has("ON", "ARTICLE", "AND", "AT", "IN", "TO", "FOR") and not s.all[end].has("LAST"):
        end -= 1
    return Remark("failed", missed, first, end, last_only=last_only)


def _names_a_rep(s: Stream, i: int, j: int) -> bool:
    """Whether the number behind a failure is the repetition that was missed."""
    if _one_more_than_told(s, i, s.all[j].value):
        return True
    near = s.all[i + 1 : j]
    if any(one.has("REPS") for one in near):
        return True
    return any(one.has("ON", "AT") for one in near) and s.all[j].value <= MOST_MISSED and not s.is_(j + 1, "X")


def _one_more_than_told(s: Stream, i: int, value: float) -> bool:
    """Whether the last count told is one less: 11, got stuck on twelve."""
    for k in range(i - 1, max(-1, i - 8), -1):
        if "NUM" in s.all[k].k:
            return s.all[k].value == value - 1
    return False


def attempt(s: Stream, i: int) -> Found:
    """Went for a 7th, tried for 8: the next repetition tried and, being told so, missed."""
    j = s.skip(i + 1, "FOR", "ARTICLE", "REPS")
    if s.is_(j, "ORD"):
        missed = s.all[j].num("ORD")
    elif s.is_(j, "NUM") and _one_more_than_told(s, i, s.all[j].value):
        missed = s.all[j].value
    else:
        return None
    end = s.skip(j + 1, "REPS", "AND", "BUT", "ARTICLE", "FILLER", "SELF")
    end = end if s.is_(end, "FAIL") else j
    return Remark("failed", missed, i, end)
