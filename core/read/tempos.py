"""Seconds of the parts of a repetition: codes such as 40X1, and words such as 3 s negatives."""

from typing import Final

from core.read.lexeme import Lexeme
from core.read.remark import Found, Remark
from core.read.stream import Stream

LONGEST_PHASE: Final = 30.0
"""Seconds; a longer lowering or pause is not a tempo (common practice, no source)."""
LONGEST_DIGIT: Final = 6.0
"""A tempo written without the word has no part longer than this many seconds (common practice, no source)."""
_PHASES: Final = ("ECC", "BOTTOM", "CON", "TOP")


def tempo_code(s: Stream, i: int) -> Found:
    """Digits of a tempo: 40X1, 3010, 3-1-1-0, 3/1/X/1; with the word before or behind, or plainly one."""
    worded = s.is_(i, "TEMPO")
    if not worded and not _can_be_code(s, s.all[i]):
        return None
    j = s.skip(i + 1, "COLON", "OF", "AT", "BE", "DASH") if worded else i
    if worded and s.is_(i + 1, "EX"):
        j = s.skip(i + 2, "COLON", "AT", "DASH", "COMMA")
    parts, end = _code_parts(s, j)
    if len(parts) < 3 or len(parts) > 4:
        return None
    if not worded and not s.is_(end + 1, "TEMPO") and not _plainly_tempo(s, j, end, parts):
        return None
    if not worded and s.is_(end + 1, "TEMPO") and not all(lexeme.glued for lexeme in s.all[j + 1 : end + 1]):
        return None
    last = end + 1 if not worded and s.is_(end + 1, "TEMPO") else end
    first = i - 1 if s.is_(i - 1, "AT", "WITH") else i
    if worded and s.is_(i + 1, "EX"):
        s.use([i])
        first = j
    seconds = [*parts, None][:4] if len(parts) == 3 else parts
    return Remark("tempo", tuple(seconds), first, last)


def _can_be_code(s: Stream, first: Lexeme) -> bool:
    """Whether a code may start at a number: most messages have neither the word nor a dash, a stroke or a large X."""
    return len(first.text) >= SHORTEST_CODE or "X" in s.text or s.says(_OF_CODES)


SHORTEST_CODE: Final = 3
"""Figures of the shortest code in one run (301)."""
_OF_CODES: Final = frozenset({"TEMPO", "DASH", "SLASH"})


def _ahead(s: Stream, code: list[Lexeme], last: int) -> bool:
    """'20X0 on squats 100x3': a code with a large X, ahead of the counts."""
    large = [one for one in code if "X" in one.k and s.text[one.start : one.end] == "X"]
    return len(large) == 1 and any(s.all[k].has("X") for k in range(last + 1, len(s)))


def _code_parts(s: Stream, i: int) -> tuple[list[float | None], int]:
    parts: list[float | None] = []
    j = i
    while len(parts) < 4 and s.is_(j, "NUM", "X"):
        lexeme = s.all[j]
        if "X" in lexeme.k:
            if not lexeme.is_word("x"):
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
    if _behind_set(s, first, last, parts):
        return True
    if len(parts) != 4 or s.is_(first - 1, "X", "IN"):
        return False
    lexemes = s.all[first : last + 1]
    if not any("NUM" in lexeme.k for lexeme in s.all[:first]) and not (
        _only_code(s, last, parts) or _ahead(s, lexemes, last)
    ):
        return False
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


def _behind_set(s: Stream, first: int, last: int, parts: list[float | None]) -> bool:
    """4-1-1 or 3/1/1/0 right behind a whole set (60x10), where elsewhere it could be a list of repetitions."""
    glued = all(lexeme.glued for lexeme in s.all[first + 1 : last + 1])
    dashed = any(lexeme.has("DASH", "SLASH") for lexeme in s.all[first : last + 1])
    whole = s.is_(first - 1, "NUM") and s.is_(first - 2, "X") and s.is_(first - 3, "NUM", "LOADQ")
    seconds = [part or 0.0 for part in parts]
    return glued and dashed and whole and max(seconds) <= LONGEST_DIGIT and min(seconds) <= 1


def _only_code(s: Stream, last: int, parts: list[float | None]) -> bool:
    """A code at the message's start: other counts follow, none with an x, and the pause at the top is short."""
    later = s.all[last + 1 :]
    return (
        any("NUM" in lexeme.k for lexeme in later)
        and not any(lexeme.is_word("x") for lexeme in later)
        and ((parts[0] or 0) <= 5 and (parts[3] or 0) <= 3)
    )


def tempo_phase(s: Stream, i: int) -> Found:
    """Seconds with the part of the repetition they belong to, in either order."""
    if s.is_(i, *_PHASES) and not s.is_(i, "NUM"):
        j = (
            s.skip(i + 1, "FOR", "OF", "COLON", "ABOUT", "BE", "ARTICLE", "WITH", "COMMA", "OPEN", "OVERTIME")
            if not s.is_(i, "CON")
            else s.skip(i + 1, "IN", "FOR", "OPEN")
        )
        seconds = s.dur(j)
        counted = s.skip(j, "SLOW", "COUNT", "OF", "ARTICLE")
        if seconds is None and any(s.all[k].has("COUNT") for k in range(j, counted)) and (s.num(counted) or 99) <= 10:
            return Remark("tempo", _phase(s, i, s.num(counted) or 0.0), i, counted)
        timed = s.is_(i + 1, "IN", "FOR") or s.all[i].text.endswith((" in", " over"))
        if seconds is None and timed and _phase_precedes(s, i) and (s.num(j) or 99) <= 10:
            seconds = s.num(j)
        if seconds is None or seconds > LONGEST_PHASE or s.is_(j + 1, "REST", "BETWEEN", *_PHASES):
            return None
        if s.is_(i, "ECC", "CON") and s.all[i].is_word("down", "up", "lower", "ups") and s.is_(j + 1, "FOR"):
            return None
        end = j + 1 if s.is_(j + 1, "COUNT") else j
        return Remark("tempo", _phase(s, i, seconds), s.skip(i, "SLOW"), end)
    return _seconds_first(s, i)


MOST_COUNTED: Final = 10.0
"""Seconds that are counted aloud in one part of a repetition (common practice, no source)."""


def _seconds_first(s: Stream, i: int) -> Found:
    seconds = s.dur(i)
    counted = s.is_(i + 1, "COUNT")
    bare = s.num(i)
    aloud = s.is_(i - 1, "COUNTING") and bare is not None and bare <= MOST_COUNTED
    if seconds is None and bare is not None and (counted or aloud):
        seconds = bare
    k = i + 1
    if seconds is None and s.is_(k, "DASH") and s.is_(k + 1, "COUNT", "SEC"):
        seconds, k = bare, k + 1
    j = s.skip(k, "COUNT", "SEC", "SLOW", "ON", "ARTICLE", "OF", "DASH", "FOR", "HOLDWORD", "FILLER", "IN", "TO", "AT")
    if not s.is_(j, *_PHASES):
        held = s.dur(i) is not None and s.is_(i + 1, "HOLDWORD") and _lowered_before(s, i)
        return Remark("tempo", (None, s.dur(i), None, None), i, i + 1) if held else None
    if seconds is None:
        plain = (
            (s.all[j].is_word("down", "up", "doon") or s.all[j].text.startswith("to ") or s.is_(j, "BOTTOM"))
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
        and s.all[j].is_word("pause", "paused", "pauses")
        and s.is_(s.skip(j + 1, "ON", "IN", "AT", "ARTICLE"), "BOTTOM", "TOP")
    ):
        j = s.skip(j + 1, "ON", "IN", "AT", "ARTICLE")
    first = i
    while s.is_(first - 1, "WITH", "ABOUT", "SLOW", "COUNTING"):
        first -= 1
    return Remark("tempo", _phase(s, j, seconds), first, j)


def _lowered_before(s: Stream, i: int) -> bool:
    """'4 sec down 2 sec hold': right behind the lowering, a hold is at the bottom."""
    before = i - 1 - s.is_(i - 1, "COMMA", "AND", "THEN")
    return before in s.used and s.all[before].has("ECC")


def _phase_follows(s: Stream, i: int) -> bool:
    return s.is_(i, "NUM", "DUR") and s.is_(i + 1, *_PHASES)


def _phase_precedes(s: Stream, i: int) -> bool:
    """Whether another part of the repetition has been timed before."""
    return any(k in s.used and s.all[k].has(*_PHASES) for k in range(max(0, i - 12), i))


def _phase(s: Stream, i: int, seconds: float) -> tuple[float | None, ...]:
    place = next(n for n, kind in enumerate(_PHASES) if kind in s.all[i].k)
    return tuple(seconds if n == place else None for n in range(4))


def no_pause(s: Stream, i: int) -> Found:
    return (
        Remark("tempo", (None, 0.0, None, None), i, i)
        if any(k in s.used and s.all[k].has("ECC", "CON") for k in range(i))
        else None
    )


def explode(s: Stream, i: int) -> Found:
    """An explosive way up is 0 seconds."""
    del s
    return Remark("tempo", (None, None, 0.0, None), i, i)
