"""Which day the sets were done. Knows the words of days and the date that the setting gives."""

from bisect import bisect_left

from core.model.reading import Setting
from core.read.stream import Stream

Spans = list[tuple[int, int, int]]


def days(s: Stream, setting: Setting, undone: set[int]) -> Spans:
    """Stretches of lexemes (first, last) with the day their sets belong to; the lexemes of days are marked as used."""
    marks: list[tuple[int, int]] = []
    for i in range(len(s)):
        if i in undone or i in s.used:
            continue
        lexeme = s.all[i]
        if "DAY" in lexeme.k:
            marks.append((i, int(lexeme.num("DAY"))))
            s.use([i])
        elif "WEEKDAY" in lexeme.k and setting.today is not None and not s.is_(i, "NUM"):
            back = (setting.today.weekday() - int(lexeme.num("WEEKDAY"))) % 7 or 7
            marks.append((i, -back))
            s.use([i])
        elif "DAYSAGO" in lexeme.k and (count := s.num(i - 1)) is not None and count <= 14:
            marks.append((i, -int(count)))
            s.use([i - 1, i])
    return _reach(s, marks)


def _reach(s: Stream, marks: list[tuple[int, int]]) -> Spans:
    """A day said before sets holds up to the next day said; one said behind them holds for its own line."""
    out: Spans = []
    for n, (at, day) in enumerate(marks):
        first = at
        floor = marks[n - 1][0] if n else -1
        if not _counted(s, at, _line_end(s, at)):
            while first - 1 > floor and not s.all[first - 1].has("NL"):
                first -= 1
        last = marks[n + 1][0] if n + 1 < len(marks) else len(s)
        if n == 0 and not _counted(s, 0, first):
            first = 0
        out.append((first, last, day))
    return out


def _line_end(s: Stream, i: int) -> int:
    lines = s.places("NL")
    n = bisect_left(lines, i)
    return lines[n] if n < len(lines) else len(s)


def _counted(s: Stream, first: int, last: int) -> bool:
    counts = s.places("NUM", "LOADQ", "DUR", "REPN")
    return bisect_left(counts, first) < bisect_left(counts, last)


def day_at(spans: Spans, i: int) -> int:
    """The day of a set whose lexemes start at ``i``."""
    for first, last, day in spans:
        if first <= i < last:
            return day
    return 0
