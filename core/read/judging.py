"""Marks on the scale of effort that are given without its name: the last one a 9, that was an 8, 8 out of 10."""

from typing import Final

from core.read.remark import LEAST_FELT, MOST_RESERVE, Found, Remark, range_middle
from core.read.stream import Stream


def judged(s: Stream, i: int) -> Found:
    """The last one a 9, that was an 8, first two a solid 7: a mark on the scale, given to a set that is pointed at."""
    if not s.all[i].is_word("a", "an"):
        return None
    j = s.skip(i + 1, "FILLER", "NEARLIMIT", "GOODQ", "BADQ", "ABOUT")
    spread = range_middle(s, j)
    if spread is None or not LEAST_JUDGED <= spread[0] <= MOST_RESERVE or s.all[j].has("REPQ", "TIMESQ", "DUR"):
        return None
    end = s.skip(spread[1] + 1, "FILLER")
    if end < len(s) and not s.is_(end, "COMMA", "STOP", "NL", "AND", "THEN", "BUT", "CLOSE", "DASH"):
        return None
    k = i - 1
    while s.is_(k, "BE", "FEEL", "ABOUT", "FILLER", "LIKETHAT") and not s.is_(k, "DONE", "THAT"):
        k -= 1
    one = s.is_(k, "NUM") and s.all[k].is_word("one")
    pointed = s.is_(k, "LAST", "ORD", "ALL", "EACH", "THAT") or (one and s.is_(k - 1, "ORD", "LAST", "EACH"))
    called = s.is_(k, "AMEND") and s.all[k].is_word("called so")
    return Remark("rir", MOST_RESERVE - spread[0], i, spread[1]) if pointed or called else None


LEAST_JUDGED: Final = 6.0
"""Efforts below this are not told without their scale (common practice, no source)."""


def out_of_ten(s: Stream, i: int) -> Found:
    """'80x5, 8 out of 10', 'felt 8/10': a mark out of ten behind a whole set or a feeling."""
    whole = s.num(i + 2) == MOST_RESERVE and not s.is_(i + 3, "X", "SLASH", "COMMA", "NUM", "REPS")
    value = s.num(i)
    if value is None or not whole or not LEAST_FELT <= value <= MOST_RESERVE or s.all[i].has("REPQ", "SETQ"):
        return None
    felt_so = s.is_(i - 1, "FEEL", "ABOUT") or (s.is_(i - 1, "FILLER") and s.is_(i - 2, "FEEL"))
    apart = s.is_(i - 1, "COMMA", "DASH", "STOP", "OPEN") and s.is_(i - 2, "NUM", "REPN") and s.is_(i - 3, "X", "FOR")
    if (s.is_(i + 1, "OUTOF") and (apart or felt_so)) or (s.is_(i + 1, "SLASH") and felt_so):
        return Remark("rir", MOST_RESERVE - value, i, i + 2)
    return None
