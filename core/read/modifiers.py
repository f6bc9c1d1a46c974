"""What is said beside a set: effort, rest, tempo, form, range, side, failure, partials, warm-up, drop, day.

Each recogniser looks at one place in the stream and may return one remark. Where a remark belongs is attach.py's.
"""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Final

from core.model.quantities import Range
from core.read.stream import Stream

MOST_RESERVE: Final = 10.0
"""The scale's end: reserve and RPE run from 0 to 10 (the reading contract)."""
LONGEST_PHASE: Final = 30.0
"""Seconds; a longer lowering or pause is not a tempo (common practice, no source)."""
LONGEST_DIGIT: Final = 6.0
"""A tempo written without the word has no part longer than this many seconds (common practice, no source)."""
MOST_MISSED: Final = 30.0
"""A number behind 'failed at' up to this is a repetition, above it a load (common practice, no source)."""
BARE_REST_MINUTES: Final = 6.0
"""A bare number after 'rest' up to this is minutes, above it seconds (common practice, no source)."""


@dataclass(frozen=True, slots=True)
class Remark:
    """One thing said beside sets. ``first`` and ``last`` are lexeme indices. ``wide``: meant for all the sets."""

    what: str
    value: object
    first: int
    last: int
    wide: bool = False
    last_only: bool = False
    each: tuple[float, ...] = ()


Found = Remark | None


def _range_middle(s: Stream, i: int) -> tuple[float, int] | None:
    """A number or a spread (8-9, 1 to 2, one or two): its middle and the last index."""
    first = s.num(i)
    if first is None or s.all[i].has("SETQ", "LOADQ") or s.all[i].plural:
        return None
    j = i + 1
    if s.is_(j, "DASH", "TO", "OR", "SLASH") and (second := s.num(j + 1)) is not None:
        apart = second - first
        listed = s.is_(j, "SLASH") and s.is_(j + 2, "SLASH", "COMMA") and s.is_(j + 3, "NUM")
        if 0 < apart <= 2 and not listed and not (s.is_(j, "SLASH") and second == MOST_RESERVE):
            return (first + second) / 2, j + 1
    return first, i


def _effort_word(s: Stream, i: int) -> Found:
    scale = "RPE" if s.is_(i, "RPE") else "RIR"
    j = s.skip(i + 1, "ABOUT", "OF", "COLON", "AT", "BE", "FEEL", "DASH", "ALL", "IN", "OPEN")
    spread = _range_middle(s, j)
    first = i - 1 if s.is_(i - 1, "AT", "FEEL") else i
    if spread is None or spread[0] > MOST_RESERVE:
        return _effort_before(s, i, scale)
    value, end = spread
    if s.is_(end + 1, "SLASH") and s.num(end + 2) == MOST_RESERVE:
        return Remark("rir", _reserve(scale, value), first, end + 2)
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
                or s.is_(k + 1, "X", "FOR", "AT", "RIR", "RPE", "TANK")
            ):
                break
            if scale == "RPE" and extra < 5:
                break
            each.append(extra)
            end = k
    if len(each) > 1:
        return Remark("rir", None, first, end, each=tuple(_reserve(scale, one) for one in each))
    return Remark("rir", _reserve(scale, value), first, end)


def _at_spread(s: Stream, i: int) -> Found:
    """@7-8: a spread behind an at-sign can only be an effort."""
    spread = _range_middle(s, i + 1)
    if spread is None or spread[1] != i + 3 or not 5 <= spread[0] <= MOST_RESERVE or s.is_(i + 4, "DASH", "X"):
        return None
    return Remark("rir", MOST_RESERVE - spread[0], i, i + 3)


def _effort_before(s: Stream, i: int, scale: str) -> Found:
    """2 rir, 1-2 rir, 8 rpe: the number stands before its word."""
    for back in (3, 1):
        spread = _range_middle(s, i - back)
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


def _tank(s: Stream, i: int) -> Found:
    """Repetitions left: 2 in the tank, 1-2 left, had one more in me, could've done 2 more."""
    first = i
    if s.is_(i, "COULDHAVE"):
        i = s.skip(i + 1, "ABOUT", "SAME", "ARTICLE", "COULDHAVE", "LEFT")
        spread = _range_middle(s, i)
        if spread is None or spread[0] > MOST_RESERVE:
            return None
        j = s.skip(spread[1] + 1, "MORE", "TANK", "IN", "REPS", "OF")
        if j == spread[1] + 1 and not s.is_(first + 1, "SAME"):
            return None
        return Remark("rir", spread[0], first, j - 1)
    spread = _range_middle(s, i)
    if spread is None or spread[0] > MOST_RESERVE:
        return None
    j = s.skip(spread[1] + 1, "ABOUT", "MORE", "OF", "FILLER", "REPS")
    if not s.is_(j, "TANK") or (s.is_(j, "LEFT") and _sided(s, j, spread[0])):
        return None
    while s.is_(first - 1, "WITH", "ABOUT", "ARTICLE", "COULDHAVE"):
        first -= 1
    return Remark("rir", spread[0], first, j)


def _sided(s: Stream, i: int, value: float) -> bool:
    """Whether 'left' at ``i`` is the side and not what is left."""
    if value > 5:
        return True
    return any(("RIGHT" in lexeme.k and lexeme.text != "right") or lexeme.text == "right" for lexeme in s.all[i:])


def _zero_reserve(s: Stream, i: int) -> Found:
    return Remark("rir", 0.0, i, i)


def _rest(s: Stream, i: int) -> Found:
    if s.is_(i, "NOREST"):
        j = s.skip(i + 1, "BETWEEN", "EACH", "ALL", "SETS")
        return Remark("rest_s", 0.0, i, j - 1, wide=_covers_all(s, i, j))
    if s.is_(i, "REST") and (s.dur(i - 1) is not None or (s.is_(i - 1, "OF") and s.dur(i - 2) is not None)):
        return None
    if s.is_(i, "REST"):
        j = s.skip(i + 1, "OF", "FOR", "BE", "ABOUT", "COLON", "BETWEEN", "DASH", "SETS", "ARTICLE", "AT", "REST")
        seconds = _rest_length(s, j)
        if seconds is None or s.all[i].text == "off":
            return None
        end = s.skip(seconds[1] + 1, "BETWEEN", "EACH", "ALL", "IN")
        return _unless_coming(s, Remark("rest_s", seconds[0], i, end - 1, wide=_covers_all(s, i, end)))
    seconds = _rest_length(s, i)
    if seconds is None:
        return None
    j = s.skip(seconds[1] + 1, "OF", "ARTICLE", "IN", "FILLER")
    bare = s.dur(i) is None and not s.is_(i + 1, "DASH", "TO", "OR")
    off = j < len(s) and s.all[j].text == "off" and s.is_(j + 1, "COMMA", "NUM", "THEN", "STOP")
    if off and not bare:
        return _unless_coming(s, Remark("rest_s", seconds[0], i, j))
    if not s.is_(j, "REST", "BETWEEN") or (bare and not s.is_(j, "REST")):
        return None
    end = s.skip(j + 1, "BETWEEN", "EACH", "ALL", "IN", "REST", "SETS")
    first = i
    while s.is_(first - 1, "WITH", "AT", "ABOUT", "ON", "FOR"):
        first -= 1
    return _unless_coming(s, Remark("rest_s", seconds[0], first, end - 1, wide=_covers_all(s, j, end)))


def _rest_length(s: Stream, i: int) -> tuple[float, int] | None:
    seconds = s.dur(i)
    if seconds is not None:
        return seconds, i
    bare = s.num(i)
    if bare is None or s.all[i].has("LOADQ", "REPQ", "SETQ", "TIMESQ") or s.is_(i + 1, "X"):
        return None
    if s.is_(i + 1, "DASH", "TO", "OR") and (second := s.dur(i + 2)) is not None:
        unit = 60.0 if second >= 60 and s.all[i + 2].value <= BARE_REST_MINUTES else 1.0
        return (bare * unit + second) / 2, i + 2
    if s.is_(i - 1, "X", "AT"):
        return None
    return (bare * 60 if bare <= BARE_REST_MINUTES else bare), i


def _covers_all(s: Stream, first: int, end: int) -> bool:
    return any(s.all[k].has("BETWEEN", "EACH", "ALL") or s.all[k].text.endswith("between") for k in range(first, end))


def _unless_coming(s: Stream, remark: Remark) -> Found:
    """A rest that is still to come is none."""
    before = s.all[remark.first - 1] if remark.first else None
    after = s.all[remark.last + 1] if remark.last + 1 < len(s) else None
    coming = (before is not None and before.has("UNDONE", "BEGIN")) or (
        after is not None and (after.text in ("now", "before") or after.has("UNDONE"))
    )
    return Remark("nothing", None, remark.first, remark.last) if coming else remark


_PHASES: Final = ("ECC", "BOTTOM", "CON", "TOP")


def _tempo_code(s: Stream, i: int) -> Found:
    """Digits of a tempo: 40X1, 3010, 3-1-1-0, 3/1/X/1; with the word before or behind, or plainly one."""
    worded = s.is_(i, "TEMPO")
    j = s.skip(i + 1, "COLON", "OF", "AT", "BE", "DASH") if worded else i
    parts, end = _code_parts(s, j)
    if len(parts) < 3 or len(parts) > 4:
        return None
    if not worded and not s.is_(end + 1, "TEMPO") and not _plainly_tempo(s, j, end, parts):
        return None
    if not worded and s.is_(end + 1, "TEMPO") and not all(lexeme.glued for lexeme in s.all[j + 1 : end + 1]):
        return None
    last = end + 1 if not worded and s.is_(end + 1, "TEMPO") else end
    first = i - 1 if s.is_(i - 1, "AT", "WITH") else i
    seconds = [*parts, None][:4] if len(parts) == 3 else parts
    return Remark("tempo", tuple(seconds), first, last)


def _code_parts(s: Stream, i: int) -> tuple[list[float | None], int]:
    parts: list[float | None] = []
    j = i
    while len(parts) < 4 and s.is_(j, "NUM", "X"):
        lexeme = s.all[j]
        if "X" in lexeme.k:
            if lexeme.text != "x":
                break
            parts.append(0.0)
        elif (
            len(lexeme.text) > 1
            and (s.is_(j + 1, "DASH", "SLASH") or s.is_(j - 1, "DASH", "SLASH"))
            and lexeme.text != "10"
        ):
            return [], j
        elif lexeme.text.isdigit() and len(lexeme.text) <= 4 - len(parts):
            whole = lexeme.text if not (lexeme.text == "10" and s.is_(j + 1, "DASH")) else ""
            parts.extend(float(digit) for digit in whole) if whole else parts.append(10.0)
        else:
            break
        j += 1
        if len(parts) < 4 and s.is_(j, "DASH", "SLASH", "DOT", "COMMA") and s.is_(j + 1, "NUM", "X"):
            j += 1
    return parts, j - 1


def _plainly_tempo(s: Stream, first: int, last: int, parts: list[float | None]) -> bool:
    """Without the word: an X among the parts typed large or between dashes, or four figures in one run."""
    if len(parts) != 4 or s.is_(first - 1, "X", "IN"):
        return False
    if not any("NUM" in lexeme.k for lexeme in s.all[:first]) and not _only_code(s, first, last, parts):
        return False
    lexemes = s.all[first : last + 1]
    most = max(part or 0 for part in parts)
    if most > LONGEST_DIGIT or not all(lexeme.glued for lexeme in lexemes[1:]):
        return False
    if len(lexemes) == 1:
        year = lexemes[0].text.startswith(("19", "20"))
        return lexemes[0].text.isdigit() and not year and not lexemes[0].plural and not s.is_(last + 1, "X", "FOR")
    crosses = [lexeme for lexeme in lexemes if "X" in lexeme.k]
    dashes = any("DASH" in lexeme.k for lexeme in lexemes)
    if not crosses:
        return dashes and most <= 5 and min(part or 0 for part in parts) <= 1
    large = s.text[crosses[0].start : crosses[0].end] == "X" and s.text != s.text.upper()
    return len(crosses) == 1 and (large or dashes) and len(lexemes[0].text) == (1 if dashes else 2)


def _only_code(s: Stream, first: int, last: int, parts: list[float | None]) -> bool:
    """A code at the message's start: other counts follow, none with an x, and the pause at the top is short."""
    later = s.all[last + 1 :]
    return (
        any("NUM" in lexeme.k for lexeme in later)
        and not any(lexeme.text == "x" for lexeme in later)
        and ((parts[0] or 0) <= 5 and (parts[3] or 0) <= 3)
    )


def _tempo_phase(s: Stream, i: int) -> Found:
    """Seconds with the part of the repetition they belong to, in either order."""
    if s.is_(i, *_PHASES) and not s.is_(i, "NUM"):
        j = (
            s.skip(i + 1, "FOR", "OF", "COLON", "ABOUT", "BE", "ARTICLE", "WITH", "COMMA")
            if not s.is_(i, "CON")
            else s.skip(i + 1, "IN", "FOR")
        )
        seconds = s.dur(j)
        counted = s.skip(j, "SLOW", "COUNT", "OF", "ARTICLE")
        if seconds is None and any(s.all[k].has("COUNT") for k in range(j, counted)) and (s.num(counted) or 99) <= 10:
            return Remark("tempo", _phase(s, i, s.num(counted) or 0.0), i, counted)
        if seconds is None and s.is_(i + 1, "IN", "FOR") and _phase_precedes(s, i) and (s.num(j) or 99) <= 10:
            seconds = s.num(j)
        if seconds is None or seconds > LONGEST_PHASE or s.is_(j + 1, "REST", "BETWEEN", *_PHASES):
            return None
        if s.is_(i, "ECC", "CON") and s.all[i].text in ("down", "up", "lower", "ups") and s.is_(j + 1, "FOR"):
            return None
        end = j + 1 if s.is_(j + 1, "COUNT") else j
        return Remark("tempo", _phase(s, i, seconds), s.skip(i, "SLOW"), end)
    return _seconds_first(s, i)


def _seconds_first(s: Stream, i: int) -> Found:
    seconds = s.dur(i)
    counted = s.is_(i + 1, "COUNT")
    bare = s.num(i)
    if seconds is None and bare is not None and counted:
        seconds = bare
    k = i + 1
    if seconds is None and s.is_(k, "DASH") and s.is_(k + 1, "COUNT", "SEC"):
        seconds, k = bare, k + 1
    j = s.skip(k, "COUNT", "SEC", "SLOW", "ON", "ARTICLE", "OF", "DASH", "FOR", "HOLDWORD", "FILLER", "IN", "TO", "AT")
    if not s.is_(j, *_PHASES):
        return None
    if seconds is None:
        plain = (
            (s.all[j].text in ("down", "up", "doon") or s.is_(j, "BOTTOM"))
            and j == i + 1
            and bare is not None
            and bare <= 8
        )
        if not plain or s.is_(i - 1, "X", "FOR", "AT") or (s.is_(j + 1, "NUM", "TO") and not _phase_follows(s, j + 1)):
            return None
        if not _phase_follows(s, s.skip(j + 1, "COMMA", "AND")) and not _phase_precedes(s, i):
            return None
        seconds = bare
    if seconds is None or seconds > LONGEST_PHASE:
        return None
    if s.is_(j, "BOTTOM") and s.is_(j + 1, "TOP"):
        j += 1
    elif (
        s.is_(j, "BOTTOM")
        and s.all[j].text in ("pause", "paused", "pauses")
        and s.is_(s.skip(j + 1, "ON", "IN", "AT", "ARTICLE"), "BOTTOM", "TOP")
    ):
        j = s.skip(j + 1, "ON", "IN", "AT", "ARTICLE")
    first = i
    while s.is_(first - 1, "WITH", "ABOUT", "SLOW"):
        first -= 1
    return Remark("tempo", _phase(s, j, seconds), first, j)


def _phase_follows(s: Stream, i: int) -> bool:
    return s.is_(i, "NUM", "DUR") and s.is_(i + 1, *_PHASES)


def _phase_precedes(s: Stream, i: int) -> bool:
    """Whether another part of the repetition has been timed before."""
    return any(k in s.used and s.all[k].has(*_PHASES) for k in range(max(0, i - 12), i))


def _phase(s: Stream, i: int, seconds: float) -> tuple[float | None, ...]:
    place = next(n for n, kind in enumerate(_PHASES) if kind in s.all[i].k)
    return tuple(seconds if n == place else None for n in range(4))


def _no_pause(s: Stream, i: int) -> Found:
    return (
        Remark("tempo", (None, 0.0, None, None), i, i)
        if any(k in s.used and s.all[k].has("ECC", "CON") for k in range(i))
        else None
    )


def _explode(s: Stream, i: int) -> Found:
    return Remark("tempo", (None, None, 0.0, None), i, i)


_VERDICTS: Final = {"GOODQ": "clean", "FAIRQ": "fair", "BADQ": "loose"}


def _form(s: Stream, i: int) -> Found:
    if s.is_(i, "FORMNOUN"):
        j = s.skip(i + 1, "BE", "FILLER", "FEEL", "COLON", "ABOUT", "ON", "ALL", "LAST", "DASH", "ARTICLE")
        last_only = any(s.all[k].has("LAST") for k in range(i, j))
        for kind, verdict in _VERDICTS.items():
            if s.is_(j, kind):
                return Remark("form", _negated(s, j, verdict), i, j, wide=not last_only, last_only=last_only)
        if s.is_(j, "FORM"):
            verdict = _negated(s, j, str(s.all[j].k["FORM"]))
            return Remark("form", verdict, i, j, wide=not last_only, last_only=last_only)
        return None
    if s.is_(i, "FORM"):
        end = i + 1 if s.is_(i + 1, "FORMNOUN") else i
        last = s.skip(end + 1, "ARTICLE", "ON")
        if s.is_(last, "LAST"):
            return Remark("form", _negated(s, i, str(s.all[i].k["FORM"])), i, last, last_only=True)
        return Remark("form", _negated(s, i, str(s.all[i].k["FORM"])), i, end)
    for kind, verdict in _VERDICTS.items():
        if s.is_(i, kind) and s.is_(i + 1, "FORMNOUN"):
            return Remark("form", _negated(s, i, verdict), i, i + 1)
    return None


def _negated(s: Stream, i: int, verdict: str) -> str:
    if s.is_(i - 1, "NEG") or (s.is_(i - 2, "NEG") and s.is_(i - 1, "FILLER", "ARTICLE", "BE")):
        return {"clean": "loose", "loose": "clean", "fair": "loose"}[verdict]
    return verdict


def _extent(s: Stream, i: int) -> Found:
    """Range of motion: a grade, a length, or both."""
    if s.is_(i, "LEN"):
        centimetres = s.all[i].num("LEN")
        j = s.skip(i + 1, "ARTICLE", "FILLER", "OF")
        if s.is_(i - 1, "HUNG", "MORE") and s.all[i - 1].text == "extra":
            return Remark("range", Range("extra", centimetres), i - 1, j if s.is_(j, "RANGE") else i)
        if s.is_(j, "RANGE") and s.all[j].k["RANGE"] == "extra":
            return Remark("range", Range("extra", centimetres), i, j)
        if s.is_(j, "DEFICIT"):
            return Remark("range", Range("extra", centimetres), i, j)
        if s.is_(j, "EX") or s.is_(j, "HEIGHT"):
            return Remark("range", Range(None, centimetres), i, j if s.is_(j, "HEIGHT") else i)
        return Remark("range", Range(None, centimetres), i, i)
    if s.is_(i, "DEFICIT"):
        j = s.skip(i + 1, "OF", "COLON", "ARTICLE")
        return Remark("range", Range("extra", s.all[j].num("LEN")), i, j) if s.is_(j, "LEN") else None
    grade = str(s.all[i].k["RANGE"])
    j = s.skip(i + 1, "FILLER", "X")
    if grade == "extra" and s.is_(j, "LEN"):
        return Remark("range", Range("extra", s.all[j].num("LEN")), i, j)
    return Remark("range", Range(grade), i, i)  # type: ignore[arg-type]


def _partials(s: Stream, i: int) -> Found:
    """Partial repetitions after the full ones: + 2 partials, then 3 half reps."""
    if s.is_(i, "COMMA") and not s.is_(i - 1, "NUM", "REPQ"):
        return None
    j = s.skip(i + 1, "ARTICLE", "ABOUT", "MORE", "AND", "PLUS")
    count = s.num(j)
    if count is None or count != int(count):
        return None
    k = s.skip(j + 1, "MORE", "FILLER")
    return Remark("partials", int(count), i, k) if s.is_(k, "PARTIALS") else None


_BETWEEN_FAIL: Final = ("ON", "ARTICLE", "AT", "IN", "FILLER", "REPS", "TO", "LASTREP", "AND", "RANGE", "FOR")


def _fail(s: Stream, i: int) -> Found:
    """A repetition tried and missed; the number of the missed one if said, before or behind."""
    first, missed = i, None
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


def _attempt(s: Stream, i: int) -> Found:
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


def _warmup(s: Stream, i: int) -> Found:
    return Remark("warmup", s.all[i].text, i, i)


def _flag(what: str) -> Callable[[Stream, int], Found]:
    def found(s: Stream, i: int) -> Found:
        return Remark(what, s.all[i].text, i, i)

    return found


def _last(s: Stream, i: int) -> Found:
    return Remark("last", None, i, i)


RECOGNISERS: Final[tuple[tuple[tuple[str, ...], Callable[[Stream, int], Found]], ...]] = (
    (("TEMPO",), _tempo_code),
    (("NUM",), _tempo_code),
    (("RPE", "RIR"), _effort_word),
    (("AT",), _at_spread),
    (("NUM", "COULDHAVE"), _tank),
    (("REST", "NOREST"), _rest),
    (("DUR",), _rest),
    (("NUM",), _rest),
    (("ECC", "BOTTOM", "CON", "TOP", "DUR", "NUM"), _tempo_phase),
    (("PLUS", "THEN", "AND", "WITH", "COMMA"), _partials),
    (("ZERORIR",), _zero_reserve),
    (("ATTEMPT",), _attempt),
    (("FAIL",), _fail),
    (("LEN", "DEFICIT", "RANGE"), _extent),
    (("FORMNOUN", "FORM", "GOODQ", "FAIRQ", "BADQ"), _form),
    (("NOPAUSE",), _no_pause),
    (("EXPLODE",), _explode),
    (("WARMUP",), _warmup),
    (("RESTPAUSE",), _flag("restpause")),
)
"""In order: the first that recognises a place has it."""


def remarks(s: Stream) -> list[Remark]:
    """All remarks of the message, in order; their lexemes are marked as used."""
    out: list[Remark] = []
    spots = _spots(s)
    for kinds, recognise in RECOGNISERS:
        places = (
            spots.get(kinds[0], []) if len(kinds) == 1 else sorted({i for kind in kinds for i in spots.get(kind, ())})
        )
        for i in places:
            if i in s.used:
                continue
            found = recognise(s, i)
            if found is not None and s.used.isdisjoint(range(found.first, found.last + 1)):
                out.append(found)
                s.use(range(found.first, found.last + 1))
    out.sort(key=lambda remark: remark.first)
    return out


def _spots(s: Stream) -> dict[str, list[int]]:
    """Where each kind stands, so that a recogniser looks only where it can start."""
    spots: dict[str, list[int]] = {}
    for i, lexeme in enumerate(s.all):
        for kind in lexeme.k:
            spots.setdefault(kind, []).append(i)
    return spots
