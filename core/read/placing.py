"""Which set of several a remark is of: first set rpe 7, rpe 8 on the first two, set 3 sloppy, 9 on the last.

Knows how sets are pointed at; nothing of loads or repetitions.
"""

from dataclasses import replace
from typing import Final

from core.read.remark import MOST_RESERVE, Remark, range_middle
from core.read.stream import Stream

MOST_POINTED: Final = 12
"""Sets pointed at by their number, at most (common practice, no source)."""
_POINTED: Final = frozenset({"rir", "form", "rest_s", "range", "tempo"})


def placed(s: Stream, remark: Remark) -> Remark:
    """The remark with the sets that are named right before or behind it."""
    if remark.what not in _POINTED or remark.each or remark.last_only:
        return remark
    before = _before(s, remark.first)
    if before is not None:
        return replace(remark, nths=before[0], first=before[1], wide=False)
    behind = _behind(s, remark.last + 1)
    if behind is not None:
        return replace(remark, nths=behind[0], last=behind[1], wide=False)
    return remark


def continued(s: Stream, remark: Remark) -> list[Remark]:
    """'rpe 7 on the first, 9 on the last': the bare numbers behind an effort on a set, each with its own."""
    out: list[Remark] = []
    if remark.what != "rir" or not (remark.nths or remark.last_only):
        return out
    scale = next((s.all[i] for i in range(remark.first, remark.last + 1) if s.all[i].has("RPE", "RIR")), None)
    at = remark.last + 1
    while scale is not None:
        i = s.skip(at, "COMMA", "AND", "THEN", "BUT", "FILLER")
        spread = range_middle(s, i)
        if i == at or spread is None or spread[0] > MOST_RESERVE:
            break
        behind, last = _behind(s, spread[1] + 1), s.skip(spread[1] + 1, "FOR")
        value = MOST_RESERVE - spread[0] if scale.has("RPE") else spread[0]
        if behind is not None:
            out.append(Remark("rir", value, i, behind[1], nths=behind[0]))
        elif s.is_(last, "LAST"):
            out.append(Remark("rir", value, i, last, last_only=True))
        else:
            break
        at = out[-1].last + 1
    return out


Pointed = tuple[tuple[int, ...], int]


def _before(s: Stream, first: int) -> Pointed | None:
    """Sets named right before ``first``, and where their name begins."""
    i = first - 1
    while s.is_(i, "BE", "FILLER", "FEEL", "DONE", "COLON", "AT") and not s.is_(i, "NUM", "ORD"):
        i -= 1
    last = _of_the_last(s, i - 1, i)
    if last:
        return last, i - 1
    if s.is_(i, "NUM") and s.is_(i - 1, "SETS", "SETREF") and not s.is_(i - 1, "NUM") and _number(s, i):
        return (int(s.all[i].value),), i - 1
    if s.is_(i, "SETS") or (s.is_(i, "NUM") and s.all[i].is_word("one")):
        i -= 1
    if s.is_(i, "SETQ") and s.is_(i - 1, "ORD") and s.all[i - 1].num("ORD") == 1:
        return _first_of(int(s.all[i].num("SETQ"))), i - 1
    if s.is_(i, "NUM") and s.is_(i - 1, "ORD") and s.all[i - 1].num("ORD") == 1 and _number(s, i):
        return _first_of(int(s.all[i].value)), i - 1
    return ((int(s.all[i].num("ORD")),), i) if s.is_(i, "ORD") else None


def _behind(s: Stream, i: int) -> Pointed | None:
    """Sets named from ``i`` on (on the first two, for the third set), and where their name ends."""
    start = s.skip(i, "ON", "FOR", "IN", "ARTICLE")
    last = _of_the_last(s, start, start + 1)
    if last:
        return last, start + 1
    if s.is_(start, "SETS") and _number(s, start + 1) and start > i and not s.is_(start, "NUM"):
        return (int(s.all[start + 1].value),), start + 1
    if not s.is_(start, "ORD"):
        return None
    nth = int(s.all[start].num("ORD"))
    end = start + 1
    if nth == 1 and s.is_(end, "SETQ"):
        return _first_of(int(s.all[end].num("SETQ"))), end
    if nth == 1 and _number(s, end) and start > i:
        return _first_of(int(s.all[end].value)), end + s.is_(end + 1, "SETS")
    named = s.is_(end, "SETS") or (s.is_(end, "NUM") and s.all[end].is_word("one"))
    counted = s.is_(end + named, "COLON", "NUM", "LOADQ", "REPS", "RPE", "RIR", "FORM", "X")
    return None if counted or not (named or start > i) else ((nth,), end - 1 + named)


def _of_the_last(s: Stream, i: int, many: int) -> tuple[int, ...]:
    """'the last two sets', counted from the end: -2, -1."""
    if not s.is_(i, "LAST") or not s.is_(many, "SETQ"):
        return ()
    count = int(s.all[many].num("SETQ"))
    return tuple(range(-count, 0)) if 1 <= count <= MOST_POINTED else ()


def _number(s: Stream, i: int) -> bool:
    return s.is_(i, "NUM") and 1 <= s.all[i].value <= MOST_POINTED and not s.all[i].has("REPQ", "TIMESQ")


def _first_of(count: int) -> tuple[int, ...]:
    return tuple(range(1, count + 1))
