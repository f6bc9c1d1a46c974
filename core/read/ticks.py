"""Lists with ticks: what is not ticked is not done. Also the labels of a list, which count nothing.

Knows lines and marks only.
"""

from typing import Final

from core.read.stream import Stream


def lines(s: Stream) -> list[tuple[int, int]]:
    """The lines of the message as ranges of lexemes."""
    out: list[tuple[int, int]] = []
    first = 0
    for i in (*s.places("NL"), len(s)):
        if i > first:
            out.append((first, i))
        first = i + 1
    return out


def unticked(s: Stream) -> set[int]:
    """Lexemes of lines that are not ticked in a list where others are; crosses too. Tick marks are used up."""
    out: set[int] = set()
    rows = lines(s)
    counting = [row for row in rows if any(s.all[i].has("NUM", "LOADQ", "EX") for i in range(*row))]
    ticks = {row: _tick(s, row, many=len(counting) > 1) for row in counting}
    ticked = [row for row, tick in ticks.items() if tick is True]
    crossed = [row for row, tick in ticks.items() if tick is False]
    if ticked and len(counting) > 1:
        for row in counting:
            if ticks[row] is not True:
                out.update(range(*row))
    for row in crossed:
        out.update(range(*row))
    return out


def _tick(s: Stream, row: tuple[int, int], *, many: bool) -> bool | None:
    """True for ticked, False for crossed or an empty box, None for neither."""
    first, last = row
    found: bool | None = None
    for i in range(first, last):
        lexeme = s.all[i]
        if "TICK" in lexeme.k:
            s.use([i])
            found = True
        elif "CROSS" in lexeme.k:
            s.use([i])
            found = False if found is None and i == first else found
        elif lexeme.text == "[":
            if s.is_(i + 1, "CLOSE"):
                s.use([i, i + 1])
                found = False
            elif i + 2 < last and s.all[i + 1].text in ("x", "v", "✓") and s.all[i + 2].text == "]":
                s.use([i, i + 1, i + 2])
                found = True
    if many and found is None and last - first > 1 and s.all[last - 1].is_word("done"):
        s.use([last - 1])
        return True
    return found


def drop_labels(s: Stream) -> None:
    """Set 1, set 2: or 1. 2. 3. at the start of lines name the sets and count nothing."""
    rows = lines(s)
    numbered = [row for row in rows if s.is_(row[0], "NUM") and _list_mark(s, row[0] + 1)]
    if len(numbered) > 1:
        for first, _ in numbered:
            s.use([first, first + 1])
    for i in s.places("ORD", "SETREF", "SETS"):
        if _labels_a_set(s, i):
            of = s.is_(i + 2, "OF", "SLASH") and s.is_(i + 3, "NUM")
            s.use([i, i + 1, i + 2, i + 3] if of and not s.is_(i + 4, "X") else [i, i + 1])
    for first, last in rows:
        s.use(_date(s, first, last))
    _drop_counting(s, rows)
    _drop_inline(s)
    for first, last in rows:
        if _lettered(s, first, last):
            s.use([first, first + 1])


def _date(s: Stream, first: int, last: int) -> range:
    """'25/11 squat 120 5 5 5': day and month ahead of a name that has its own counts."""
    if not (s.is_(first, "NUM") and s.is_(first + 1, "SLASH") and s.is_(first + 2, "NUM")):
        return range(0)
    day, month = s.all[first].value, s.all[first + 2].value
    glued = s.all[first + 1].glued and s.all[first + 2].glued
    end = first + 2 + 2 * (s.is_(first + 3, "SLASH") and s.num(first + 4) is not None)
    name = s.skip(end + 1, "COLON", "DASH", "WEEKDAY", "COMMA")
    told = s.is_(name, "EX") and any(s.is_(i, "NUM", "LOADQ") for i in range(name + 1, last + 1))
    dated = max(day, month) <= MOST_DAYS and min(day, month) <= MOST_MONTHS
    return range(first, end + 1) if glued and dated and told else range(0)


MOST_DAYS: Final = 31
MOST_MONTHS: Final = 12


def drop_addresses(s: Stream) -> None:
    """Platform 3, turned 40: a number that tells where or how old counts nothing."""
    for i in range(len(s) - 1):
        if not s.all[i].marks and s.all[i].kinds.isdisjoint(_LEADS_NO_COUNT):
            continue
        if _cause(s, i):
            s.use([s.skip(i + 1, "ARTICLE", "ALL", "THAT")])
        if s.is_(i, "LAST") and s.is_(i + 1, "REPQ") and not s.says(_PART_OF_A_SET):
            s.use([i + 1])  # burning on the last 5 reps
        if s.all[i].has("FEEL") and s.is_(i + 1, "ABOUT") and s.is_(i + 2, "ARTICLE") and s.is_(i + 3, "PLURAL"):
            s.use([i + 3, *([i - 1] if s.is_(i - 1, "PLURAL") else [])])  # the 22s felt like the 30s
        if s.is_(i, "EMPTYBAR") and s.is_(i + 1, "BE") and s.is_(i + 2, "NUM"):
            s.use(_of_the_bar(s, i))
        if s.is_(i, "DUR") and s.is_(i + 1, "TOTAL"):
            s.use([i, i + 1])
        if s.all[i].has("HEARTPART"):
            j = s.skip(i + 1, "BE", "DONE", "UPTO", "AT", "ABOUT", "TO", "FILLER", "UP", "OF")
            s.use([j] if s.is_(j, "NUM") and not s.is_(j + 1, "X") else [])
        counts = s.is_(i + 2, "X", "FOR", "REPS") or (s.is_(i + 2, "CM") and s.all[i].is_word("addresses"))
        if s.all[i].is_word("its", "it is") and s.is_(i + 1, "NUM") and _minutes(s, i + 2):
            s.use([i + 1, i + 2])
        told = (s.all[i].is_word("addresses", "ages") or s.all[i].has("CLOCKLEAD")) and not counts
        if s.is_(i + 1, "NUM") and (told or _year(s, i) or _of_oneself(s, i)):
            s.use([i + 1])


_PART_OF_A_SET: Final = frozenset({"PARTIALS", "RANGE", "FAIL", "AMEND", "X", "LOADQ"})
_LEADS_NO_COUNT: Final = frozenset({"LAST", "DUR", "EMPTYBAR", "FEEL", "HEARTPART", "CLOCKLEAD"})
"""Kinds that may make a number near them one that counts nothing, beside the words that the language marks."""


def _minutes(s: Stream, i: int) -> bool:
    """Its 7 30: the minutes of a clock time, two figures."""
    return s.is_(i, "NUM") and s.all[i].text.isdigit() and len(s.all[i].text) == 2 and s.all[i].value < 60


def _of_the_bar(s: Stream, i: int) -> list[int]:
    """'the ez bar is 10 not 8': what a bar weighs, where the sentence reports nothing with it."""
    end = next((k for k in range(i, len(s)) if s.all[k].has("STOP", "NL")), len(s))
    if any(s.is_(k, "X", "LOADQ", "FOR", "EX") for k in range(i + 1, end)):
        return []
    return [k for k in range(i, end) if s.is_(k, "NUM", "EMPTYBAR")]


def _cause(s: Stream, i: int) -> bool:
    """'dizzy after the 20 rep squats', 'on fire after 100 skips': what it comes from, told as known and no report."""
    if not s.all[i].is_word("after"):
        return False
    at = s.skip(i + 1, "ARTICLE", "ALL", "THAT")
    behind = at + 1
    if (
        not s.is_(at, "NUM")
        or s.is_(behind, "X", "FOR", "KG", "LB")
        or any(s.is_(k, "X", "LOADQ") for k in range(i, len(s)))
    ):
        return False
    return at > i + 1 or s.is_(behind, "SKIP", "CARDIO", "HEARTSIGN")


def _of_oneself(s: Stream, i: int) -> bool:
    """Im 34, im 1.80 tall: years or metres, where nothing behind the number says what it counts."""
    if not s.all[i].is_word("who am") or s.all[i + 1].has("REPQ", "SETQ", "TIMESQ"):
        return False
    behind = i + 2
    return (
        behind >= len(s) or s.all[behind].is_word("stature") or s.all[behind].has("COMMA", "STOP", "NL", "AND", "BUT")
    )


def _year(s: Stream, i: int) -> bool:
    """Since 2014: a year."""
    number = s.all[i + 1]
    dated = number.text.isdigit() and len(number.text) == 4 and 1950 <= number.value <= 2050
    return dated and s.all[i].is_word("since", "from", "in", "back in")


def _labels_a_set(s: Stream, i: int) -> bool:
    """set 2, second set, the third one: which set it is, not how many."""
    if s.is_(i, "ORD"):
        named = s.is_(i + 1, "SETS") or (i + 1 < len(s) and s.all[i + 1].is_word("one"))
        return named and not any(s.is_(k, "AMEND") for k in range(max(0, i - 4), i))
    if s.is_(i, "SETREF"):
        return s.is_(i + 1, "NUM") and s.all[i + 1].value <= MOST_LABELS and not s.is_(i + 2, "X", "REPS")
    if not s.is_(i, "SETS") or s.is_(i, "NUM") or not s.all[i].is_word("set", "round", "sets"):
        return False
    number = s.num(i + 1)
    run = s.is_(i + 2, "AND", "DASH", "TO") and s.num(i + 3) is not None and s.all[i].is_word("sets")
    if run or any(s.is_(k, "PLANNED") for k in range(max(0, i - 3), i)):
        return False
    if number is None or number != int(number) or number > MOST_LABELS or s.all[i + 1].has("REPQ", "SETQ"):
        return False
    return _names_a_set(s, i) or (s.all[i].is_word("set") and not s.is_(i + 2, "X", "REPS"))


MOST_LABELS = 12
"""A set's number in its exercise is not larger (common practice, no source)."""


def _lettered(s: Stream, first: int, last: int) -> bool:
    """A1 bench, B: row: letters that name the lines of a list."""
    letter = s.all[first].text
    if len(letter) != 1 or not letter.isalpha():
        return False
    if s.is_(first + 1, "COLON"):
        return last - first > 3
    if not s.is_(first + 1, "NUM") or not s.all[first + 1].glued:
        return False
    return s.is_(s.skip(first + 2, "CLOSE", "STOP", "COLON", "DASH", "DOT"), "EX", "BODY", "WEIGHTED")


def _drop_counting(s: Stream, rows: list[tuple[int, int]]) -> None:
    """1 bench 60x8, 2 row 50x10: numbers that only count the lines."""
    led = [first for first, last in rows if s.is_(first, "NUM") and s.is_(first + 1, "EX") and last - first > 2]
    if len(led) > 1 and [s.all[first].value for first in led] == [float(n + 1) for n in range(len(led))]:
        s.use(led)


def _drop_inline(s: Stream) -> None:
    """s1 60x8 s2 60x8, or 1) 60x8 2) 60x8: labels inside a line, known by counting up from one."""
    bracketed = [
        (i, i, i + 1)
        for i in s.places("NUM")
        if s.is_(i, "NUM")
        and i + 1 < len(s)
        and (s.all[i + 1].text == ")" or (s.all[i + 1].text == "." and s.is_(i + 2, "EX")))
    ]
    lettered = [
        (i, i - 1, i)
        for i in s.places("NUM")
        if i > 0
        and s.all[i].glued
        and len(s.all[i - 1].text) == 1
        and s.all[i - 1].text.isalpha()
        and not s.all[i - 1].has("X", "ARTICLE")
        and s.is_(i, "NUM")
    ]
    for labels in (bracketed, lettered):
        values = [s.all[at].value for at, _, _ in labels]
        if len(values) > 1 and values == [float(n + 1) for n in range(len(values))]:
            for _, first, last in labels:
                s.use([first, last])


def _names_a_set(s: Stream, i: int) -> bool:
    follow = s.skip(i + 2, "COLON", "DASH", "ARTICLE", "FILLER", "BE", "AT", "DONE", "COMMA", "CLOSE", "AMEND")
    starts = i == 0 or s.all[i - 1].has("NL", "STOP", "COMMA", "COLON", "FILLER", "EX", "THEN", "BULLET", "AND", "DASH")
    return starts and s.is_(follow, "NUM", "LOADQ", "PLATE", "EMPTYBAR", "REPN", "FAIL", "DUR", "SAME", "BODY", "EX")


def _list_mark(s: Stream, i: int) -> bool:
    return (
        i < len(s)
        and s.all[i].text in (".", ")")
        and i + 1 < len(s)
        and s.is_(i + 1, "NUM", "EX", "LOADQ", "FILLER", "WORD", "PLATE", "EMPTYBAR")
    )
