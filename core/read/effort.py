"""How hard: RPE, repetitions in reserve, what is left in the tank, to failure."""

from typing import Final

from core.read.remark import LEAST_FELT, MOST_RESERVE, Found, Remark, range_middle
from core.read.stream import Stream


def effort_word(s: Stream, i: int) -> Found:
    scale = "RPE" if s.is_(i, "RPE") else "RIR"
    j = s.skip(i + 1, "ABOUT", "OF", "COLON", "AT", "BE", "FEEL", "DASH", "ALL", "IN", "OPEN")
    if s.is_(j, "ON", "FOR", "THAT", "LAST") and s.is_(s.skip(j, "ON", "FOR", "ARTICLE"), "THAT", "LAST", "AMEND"):
        j = s.skip(j, "ON", "FOR", "ARTICLE", "THAT", "LAST", "AMEND", "BE", "MORE", "ABOUT", "COLON", "FEEL")
    spread = range_middle(s, j)
    first = i - 1 if s.is_(i - 1, "AT", "FEEL") else i
    if spread is None or spread[0] > MOST_RESERVE:
        return _effort_before(s, i, scale)
    value, end = spread
    if s.is_(end + 1, "SLASH") and s.num(end + 2) == MOST_RESERVE:
        return Remark("rir", _reserve(scale, value), first, end + 2)
    if end == j and s.is_(end + 1, "ABOUT") and (other := s.num(end + 2)) is not None and 0 < other - value <= 1:
        return Remark("rir", _reserve(scale, (value + other) / 2), first, end + 2)
    each = [value]
    if end == j:
        while True:
            k = s.skip(end + 1, "COMMA", "SLASH", "AND", "THEN", "DASH", "ARROW")
            extra = s.num(k)
            lone = extra is not None and not s.all[k].has("SETQ", "REPQ", "LOADQ", "TIMESQ") and not s.all[k].plural
            if (
                not lone
                or extra is None
                or extra > MOST_RESERVE
                or s.is_(k + 1, "X", "AT", "RIR", "RPE", "TANK")
                or (s.is_(k + 1, "FOR") and not (each[1:] and s.is_(k + 3, "X")))
            ):
                break
            if scale == "RPE" and extra < LEAST_FELT:
                break
            each.append(extra)
            end = k
    if len(each) > 1:
        return Remark("rir", None, first, end, each=tuple(_reserve(scale, one) for one in each))
    return Remark("rir", _reserve(scale, value), first, end)


def at_spread(s: Stream, i: int) -> Found:
    """@7-8: a spread behind an at-sign can only be an effort."""
    spread = range_middle(s, i + 1)
    if spread is None or spread[1] != i + 3 or not LEAST_FELT <= spread[0] <= MOST_RESERVE or s.is_(i + 4, "DASH", "X"):
        return None
    return Remark("rir", MOST_RESERVE - spread[0], i, i + 3)


def at_list(s: Stream, i: int) -> Found:
    """12 11 9 @ 8 9 10: as many efforts behind the at-sign as counts before it."""
    after = _run(s, i + 1, 1)
    efforts = [s.all[k].value for k in after]
    before = _run(s, i - 1, -1)
    if before and after and (s.is_(before[-1] - 1, "AT") or s.is_(after[-1] + 1, "AT")):
        return None
    if len(after) < 2 or len(before) != len(after) or s.is_(after[-1] + 1, "X", "FOR"):
        return None
    if not all(LEAST_FELT <= one <= MOST_RESERVE for one in efforts):
        return None
    return Remark("rir", None, i, after[-1], each=tuple(MOST_RESERVE - one for one in efforts))


def _run(s: Stream, i: int, step: int) -> list[int]:
    """Bare numbers one behind the other from here, small marks between them."""
    out: list[int] = []
    while s.is_(i, "NUM", "COMMA", "SLASH"):
        if s.is_(i, "NUM"):
            if s.all[i].has("REPQ", "SETQ", "TIMESQ"):
                break
            out.append(i)
        i += step
    return out


def _effort_before(s: Stream, i: int, scale: str) -> Found:
    """2 rir, 1-2 rir, 8 rpe: the number stands before its word."""
    for back in (3, 1):
        spread = range_middle(s, i - back)
        if spread is not None and spread[1] == i - 1 and spread[0] <= MOST_RESERVE:
            first = i - back
            if s.is_(first - 1, "AT"):
                first -= 1
            elif s.is_(first - 1, "X", "FOR") and not s.is_(first - 2, "RPE", "RIR"):
                return None
            return Remark("rir", _reserve(scale, spread[0]), first, i)
    return None


def _reserve(scale: str, value: float) -> float:
    return MOST_RESERVE - value if scale == "RPE" else value


def tank(s: Stream, i: int) -> Found:
    """Repetitions left: 2 in the tank, 1-2 left, had one more in me, could've done 2 more."""
    first = i
    if s.is_(i, "COULDHAVE"):
        i = s.skip(i + 1, "ABOUT", "SAME", "ARTICLE", "COULDHAVE", "LEFT")
        if s.is_(i - 1, "SAME") and s.all[i - 1].is_word("another", "another one", "one more") and s.is_(i, "TANK"):
            return Remark("rir", 1.0, first, i)
        if s.is_(i, "ORD"):
            return _one_beyond(s, first, i)
        spread = range_middle(s, i)
        if spread is None or spread[0] > MOST_RESERVE:
            return None
        j = s.skip(spread[1] + 1, "MORE", "TANK", "IN", "REPS", "OF")
        if j == spread[1] + 1 and not s.is_(first + 1, "SAME"):
            beyond = s.all[first].k.get("COULDHAVE") == "could" and spread[1] == i
            return _one_beyond(s, first, i) if beyond else None
        return Remark("rir", spread[0], first, j - 1)
    spread = range_middle(s, i)
    if spread is None or spread[0] > MOST_RESERVE:
        return None
    j = s.skip(spread[1] + 1, "ABOUT", "MORE", "OF", "FILLER", "REPS", "PLUS")
    counted = s.is_(first - 1, "COMMA") and s.is_(first - 2, "NUM", "REPN")
    if not s.is_(j, "TANK") or (s.is_(j, "LEFT") and _sided(s, j, spread[0], counted)):
        return None
    while s.is_(first - 1, "WITH", "ABOUT", "ARTICLE", "COULDHAVE"):
        first -= 1
    return Remark("rir", spread[0], first, j)


def _one_beyond(s: Stream, first: int, i: int) -> Found:
    """'2 reps, could have had a third', '6, could have done 9': what would still have gone."""
    told = next((s.all[k] for k in range(first - 1, -1, -1) if s.all[k].has("NUM", "REPN")), None)
    done = None if told is None else told.num("REPN") if told.has("REPN") else told.value
    beyond = s.all[i].num("ORD") if s.is_(i, "ORD") else s.all[i].value
    if done is None and s.all[first].k.get("COULDHAVE") == "could":
        return Remark("nothing", None, first, i)
    if done is None or not 0 < beyond - done <= MOST_BEYOND:
        return None
    return Remark("rir", beyond - done, first, s.skip(i + 1, "REPS", "TANK", "IN", "MORE") - 1)


MOST_BEYOND: Final = 4.0
"""A repetition named as possible lies at most so far beyond the last one done (common practice, no source)."""
MOST_ALONE: Final = 5
"""More than so many 'left' without a count before them are repetitions of a side (common practice, no source)."""
MOST_BEHIND_A_COUNT: Final = 8
"""The same behind a count (12, 12, 6 left): more than this is hardly told as what is left."""


def _sided(s: Stream, i: int, value: float, counted: bool) -> bool:
    """Whether 'left' at ``i`` is the side and not what is left. ``counted``: a count stands right before the number."""
    if value > (MOST_BEHIND_A_COUNT if counted else MOST_ALONE):
        return True
    return any(("RIGHT" in lexeme.k and not lexeme.is_word("right")) or lexeme.is_word("right") for lexeme in s.all[i:])


def felt(s: Stream, i: int) -> Found:
    """Felt like an 8, call it a 9: a number with an article behind a feeling is an RPE."""
    j = s.skip(i + 1, "ABOUT", "MORE")
    if s.all[i].is_word("calls") and s.is_(j, "THAT"):
        j += 1
    if not s.is_(j, "ARTICLE") or not s.all[j].is_word("a", "an"):
        return None
    spread = range_middle(s, s.skip(j + 1, "FILLER"))
    if spread is None or not LEAST_FELT <= spread[0] <= MOST_RESERVE:
        return None
    end = spread[1]
    if s.is_(end + 1, "X", "FOR", "AT", "NUM", "REPS", "SETS", "SLASH") or s.all[end].has("REPQ", "SETQ", "TIMESQ"):
        return None
    return Remark("rir", MOST_RESERVE - spread[0], i, end)


def zero_reserve(s: Stream, i: int) -> Found:
    """To failure: nothing in reserve; 'not to failure' leaves open how much."""
    k = i - 1
    while s.is_(k, "FILLER", "ARTICLE") and not s.is_(k, "NEG"):
        k -= 1
    if k >= 0 and k not in s.used and s.all[k].is_word("didnt go"):
        return Remark("rir", None, k, i)
    return Remark("rir", None if s.is_(k, "NEG") else 0.0, i, i)
