"""Rest said beside sets; a rest that is still to come is none."""

from typing import Final

from core.evidence.exercises import EXERCISES
from core.read.remark import Found, Remark
from core.read.stream import Stream

BARE_REST_MINUTES: Final = 6.0
"""A bare number after 'rest' up to this is minutes, above it seconds (common practice, no source)."""


def rest(s: Stream, i: int) -> Found:
    if s.is_(i, "NOREST"):
        j = s.skip(i + 1, "BETWEEN", "EACH", "ALL", "SETS")
        return Remark("rest_s", 0.0, i, j - 1, wide=_covers_all(s, i, j))
    if s.is_(i, "REST") and (s.dur(i - 1) is not None or (s.is_(i - 1, "OF") and s.dur(i - 2) is not None)):
        return None
    if s.is_(i, "REST"):
        j = s.skip(
            i + 1, "OF", "FOR", "BE", "ABOUT", "COLON", "BETWEEN", "DASH", "SETS", "ARTICLE", "AT", "REST", "OPEN"
        )
        seconds = _rest_length(s, j)
        if seconds is None or s.all[i].is_word("off"):
            return None
        end = s.skip(seconds[1] + 1, "BETWEEN", "EACH", "ALL", "IN")
        return _unless_coming(s, Remark("rest_s", seconds[0], i, end - 1, wide=_covers_all(s, i, end)))
    seconds = _rest_length(s, i)
    if seconds is None or (s.is_(i, "DUR") and s.is_(i - 1, "TO", "OR") and s.num(i - 2) is not None):
        return None
    if s.is_(i, "DUR") and s.is_(i - 1, "DASH") and s.num(i - 2) is not None and _spread(s, i - 2):
        return None
    if _between_counts(s, i):
        return Remark("rest_s", seconds[0], i, i)
    if _closes_sets(s, i):
        return Remark("rest_s", seconds[0], i, i)
    j = s.skip(seconds[1] + 1, "OF", "ARTICLE", "IN", "FILLER")
    bare = s.dur(i) is None and not s.is_(i + 1, "DASH", "TO", "OR")
    off = j < len(s) and s.all[j].is_word("off") and s.is_(j + 1, "COMMA", "NUM", "THEN", "STOP")
    if off and not bare:
        return _unless_coming(s, Remark("rest_s", seconds[0], i, j))
    if not s.is_(j, "REST", "BETWEEN") or (bare and not s.is_(j, "REST")):
        return None
    end = s.skip(j + 1, "BETWEEN", "EACH", "ALL", "IN", "REST", "SETS")
    first = i
    while s.is_(first - 1, "WITH", "AT", "ABOUT", "ON", "FOR"):
        first -= 1
    return _unless_coming(s, Remark("rest_s", seconds[0], first, end - 1, wide=_covers_all(s, j, end)))


def _between_counts(s: Stream, i: int) -> bool:
    """'5, 90 sec, 5': a time between two bare counts is the rest between them."""
    parted = s.is_(i - 1, "COMMA") and s.is_(i + 1, "COMMA") and s.is_(i, "DUR")
    return parted and s.num(i - 2) is not None and s.num(i + 2) is not None and s.dur(i + 2) is None


def long_pause(s: Stream, i: int) -> Found:
    """'three sets, pause 2 minutes': a pause too long for a repetition is a rest."""
    j = s.skip(i + 1, "OF", "COLON", "FOR", "BE", "ABOUT")
    seconds = s.dur(j)
    if not s.all[i].is_word("pausing") or seconds is None or seconds < LEAST_PAUSE:
        return None
    return _unless_coming(s, Remark("rest_s", seconds, i, j, wide=True))


LEAST_PAUSE: Final = 31.0
"""Seconds; a pause shorter than this can be one at the bottom (the longest phase of a tempo, and more)."""


def _closes_sets(s: Stream, i: int) -> bool:
    """'60 3x8 2min', '8/leg x3 90s': a time that closes a line of sets, on a lift that is not held, is their rest."""
    lexeme = s.all[i]
    timed = s.is_(i, "DUR") or (lexeme.plural and s.text[lexeme.start : lexeme.end].endswith("s"))
    seconds = lexeme.num("DUR") if s.is_(i, "DUR") else lexeme.value
    if (
        not timed
        or not SHORTEST_ALONE <= seconds <= LONGEST_ALONE
        or not (_line_ends(s, i + 1) or _set_follows(s, i + 1))
    ):
        return False
    before = i - 1 - s.is_(i - 1, "COMMA", "DASH")
    whole = s.is_(before, "SETQ") or (s.is_(before, "NUM") and s.is_(before - 1, "X") and not s.is_(before, "DUR"))
    if not whole:
        return False
    named = next((s.all[k].mention for k in range(i - 1, max(-1, i - FARTHEST_NAME), -1) if s.is_(k, "EX")), None)
    ids = named.ids if named is not None else ()
    return bool(ids) and not any(EXERCISES[one].pattern in ("hold", "carry") for one in ids)


FARTHEST_NAME: Final = 40
"""Lexemes back to the name of the exercise, at most: a line of sets is not longer."""
SHORTEST_ALONE: Final = 20.0
"""Seconds; a time shorter than this is told as a rest only by its word (common practice, no source)."""
LONGEST_ALONE: Final = 600.0
"""Seconds; so is a longer one."""


def _set_follows(s: Stream, i: int) -> bool:
    """'100x5 3min 100x5': the next whole set, right behind the time."""
    return s.is_(i, "NUM", "LOADQ") and s.is_(i + 1, "X") and s.num(i + 2) is not None


def _line_ends(s: Stream, i: int) -> bool:
    return i >= len(s) or s.is_(i, "NL", "STOP") or (s.is_(i, "CLOSE") and _line_ends(s, i + 1))


def _rest_length(s: Stream, i: int) -> tuple[float, int] | None:
    seconds = s.dur(i)
    if seconds is not None:
        return seconds, i
    bare = s.num(i)
    if bare is None or s.all[i].has("LOADQ", "REPQ", "SETQ", "TIMESQ") or s.is_(i + 1, "X"):
        return None
    if s.is_(i + 1, "DASH") and not _spread(s, i):
        return None if s.dur(i + 2) is not None else _bare_length(s, i, bare)
    if s.is_(i + 1, "DASH", "TO", "OR") and (second := s.dur(i + 2)) is not None:
        unit = 60.0 if second >= 60 and s.all[i + 2].value <= BARE_REST_MINUTES else 1.0
        return (bare * unit + second) / 2, i + 2
    return _bare_length(s, i, bare)


def _bare_length(s: Stream, i: int, bare: float) -> tuple[float, int] | None:
    if s.is_(i - 1, "X", "AT"):
        return None
    return (bare * 60 if bare <= BARE_REST_MINUTES else bare), i


def _spread(s: Stream, i: int) -> bool:
    """'2-3 min': two lengths near each other, the dash glued to both; not '60x8 - 2 min'."""
    if not (s.is_(i + 1, "DASH") and s.is_(i + 2, "DUR")) or not (s.all[i + 1].glued and s.all[i + 2].glued):
        return False
    return 0 < s.all[i + 2].value - s.all[i].value <= max(2.0, s.all[i].value)


def _covers_all(s: Stream, first: int, end: int) -> bool:
    return any(s.all[k].has("BETWEEN", "EACH", "ALL") or s.all[k].text.endswith("between") for k in range(first, end))


def _unless_coming(s: Stream, remark: Remark) -> Found:
    """A rest that is still to come is none."""
    before = s.all[remark.first - 1] if remark.first else None
    after = s.all[remark.last + 1] if remark.last + 1 < len(s) else None
    coming = (before is not None and before.has("UNDONE", "BEGIN")) or (
        after is not None
        and (
            after.is_word("now")
            or (after.is_word("before") and not s.is_(remark.last + 2, "NUM"))
            or after.has("UNDONE")
        )
    )
    return Remark("nothing", None, remark.first, remark.last) if coming else remark
