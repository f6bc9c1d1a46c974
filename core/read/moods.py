"""Done, or only planned, wished, asked, quoted or another's? Marks the lexemes that report nothing done.

Knows how people frame what they say; nothing of sets or exercises.
"""

from collections.abc import Iterator
from typing import Final

from core.read.stream import Clause, Stream

_CLAUSE_ENDS: Final = ("COMMA", "BUT", "THEN", "OPEN", "CLOSE")
_COUNTING: Final = ("NUM", "LOADQ", "DUR", "DIST", "REPN", "PLATE", "SETN")
_RESET: Final = ("DONE",)


def clauses(s: Stream) -> list[Clause]:
    """The message cut at commas, 'but', 'then', sentence ends and lines; cut once and remembered."""
    if not s.parts:
        s.parts.extend(_cut(s))
    return s.parts


def _cut(s: Stream) -> list[Clause]:
    out: list[Clause] = []
    first, opens, line, blank = 0, True, True, False
    for i in range(len(s) + 1):
        ends = i == len(s) or s.all[i].has("NL", "STOP", *_CLAUSE_ENDS) or _spaced_dash(s, i)
        if not ends:
            continue
        if i > first:
            out.append(Clause(first, i, opens, line, blank))
            opens = line = blank = False
        if i < len(s) and s.all[i].has("NL", "STOP"):
            if s.all[i].text == "?":
                _mark_asked(out)
            opens = True
            if s.all[i].has("NL"):
                line = True
                blank = blank or s.text[s.all[i].start : s.all[i].end].count("\n") > 1
        first = i + 1
    return out


def _spaced_dash(s: Stream, i: int) -> bool:
    lexeme = s.all[i]
    if "DASH" not in lexeme.k or lexeme.glued or i + 1 >= len(s):
        return False
    return not s.all[i + 1].glued


def _mark_asked(out: list[Clause]) -> None:
    """The question mark's clause; the whole sentence when its first clause already asks is found later."""
    if out:
        out[-1].asked = True


def mark_undone(s: Stream) -> set[int]:
    """Indices of the lexemes whose counts were not done."""
    undone: set[int] = set()
    carry = line_carry = False
    for before, clause in _pairs(clauses(s)):
        if clause.opens_line and line_carry and not clause.blank_before:
            carry = True
        elif clause.opens:
            carry = False
        if clause.blank_before:
            line_carry = False
        if clause.opens_line:
            line_carry = line_carry and not clause.blank_before
        first, last = clause.first, clause.last
        counts = [i for i in range(first, last) if _counts(s, i)]
        verdict = _verdict(s, clause, counts)
        if verdict is not None:
            undone.update(verdict)
            whole = len(verdict) == last - first
            carry = bool(verdict) and _carries(s, clause, whole=whole)
            if not counts and _ends_line(s, last) and clause.opens_line and whole:
                line_carry = True
            elif not verdict:
                carry = line_carry = False
            if whole and _points_back(s, clause):
                undone.update(range(first))
            if whole and _tag(s, clause, counts) and before is not None and _find(s, before, "DONE") is None:
                undone.update(range(before.first, before.last))
        elif carry:
            undone.update(range(first, last))
    return undone


def _pairs(found: list[Clause]) -> Iterator[tuple[Clause | None, Clause]]:
    """Each clause with the one before it."""
    before: Clause | None = None
    for clause in found:
        yield before, clause
        before = clause


def _tag(s: Stream, clause: Clause, counts: list[int]) -> bool:
    """isnt it? right? correct?: a question about what was said just before."""
    words = {s.all[i].text for i in range(clause.first, clause.last)}
    return clause.asked and not counts and bool(words & _TAGS) and clause.last - clause.first <= 2


_TAGS: Final = frozenset({"isnt it", "right", "correct", "yeah", "arent they", "is it", "yes", "no", "innit"})


def _counts(s: Stream, i: int) -> bool:
    return s.all[i].has(*_COUNTING)


def _ends_line(s: Stream, i: int) -> bool:
    while i < len(s) and s.all[i].has("STOP", "COLON"):
        i += 1
    return i >= len(s) or s.all[i].has("NL")


def _points_back(s: Stream, clause: Clause) -> bool:
    return any(s.all[i].has("UNDONEBACK") for i in range(clause.first, clause.last))


def _carries(s: Stream, clause: Clause, *, whole: bool) -> bool:
    """A question mark at the clause's own end closes with it; a wish runs on through the sentence."""
    if not whole:
        return True
    return not clause.asked


def _find(s: Stream, clause: Clause, *kinds: str) -> int | None:
    for i in range(clause.first, clause.last):
        if s.all[i].has(*kinds) and i not in s.used:
            return i
    return None


def _verdict(s: Stream, clause: Clause, counts: list[int]) -> range | None:
    """Which lexemes of the clause report nothing: all, a part, none (an empty range), or unknown (None)."""
    first, last = clause.first, clause.last
    whole = range(first, last)
    done = _find(s, clause, "DONE")
    if _find(s, clause, "DIDNT") is not None:
        return whole
    if _asks(s, clause, done):
        return whole
    resting = next((i for i in range(first, last) if s.all[i].text == "resting"), None)
    if resting is not None and not any(s.all[i].has("BETWEEN", "EACH", "ALL") for i in range(first, last)):
        return range(resting, last)
    coming = next(
        (i for i in range(first, last) if s.all[i].text in ("next", "and next") and s.all[i].has("NEXTQ")), None
    )
    if coming is not None and counts and counts[-1] < coming and done is None:
        return whole
    wish = _find(s, clause, "UNDONE", "UNDONEBACK")
    if wish is not None and not (done is not None and done > wish and not _future_done(s, wish)):
        before = [i for i in counts if i < wish]
        after = [i for i in counts if i > wish]
        if before and (after or (done is not None and done < wish)):
            return range(wish, last)
        return whole
    told = _told(s, clause, counts)
    if told is not None:
        return told
    if done is not None or _find(s, clause, "DAY") is not None:
        return range(0)
    return None


def _future_done(s: Stream, wish: int) -> bool:
    """'will have done', 'want to get': the done word only follows from the wish."""
    return s.all[wish].text not in (
        "was going for",
        "was aiming for",
        "planned",
        "aim",
        "target",
        "goal",
        "should",
        "wanted",
    )


def _asks(s: Stream, clause: Clause, done: int | None) -> bool:
    start = clause.first
    while start < clause.last and s.all[start].has("FILLER", "AND") and not s.all[start].has("ASKWORD"):
        start += 1
    starts_asking = start < clause.last and s.all[start].has("ASKWORD")
    if starts_asking and s.all[start].text in ("was it", "was that", "were those", "was i") and not clause.asked:
        return _find(s, clause, "NUM") is None
    if starts_asking:
        return True
    return clause.asked and not (done == start and clause.last - clause.first > 6)


def _year_at(s: Stream, clause: Clause) -> int | None:
    """In 2019: a year, so nothing of today."""
    for i in range(clause.first + 1, clause.last):
        lexeme = s.all[i]
        if (
            "NUM" in lexeme.k
            and len(lexeme.text) == 4
            and 1950 <= lexeme.value <= 2050
            and (s.all[i - 1].has("IN") or s.all[i - 1].text in ("since", "from"))
        ):
            return i
    return None


def _told(s: Stream, clause: Clause, counts: list[int]) -> range | None:
    """Another's, quoted, compared with or long past."""
    first, last = clause.first, clause.last
    compared = _find(s, clause, "COMPARED")
    if compared is not None and any(i > compared for i in counts):
        return range(compared, last)
    past = _find(s, clause, "PASTTIME")
    year = _year_at(s, clause)
    if year is not None and counts != [year]:
        return range(first, last)
    if past is not None and not any(s.all[i].has("SAME", "COMPARED") for i in range(first, past)):
        after = [i for i in counts if i > past]
        return range(past, last) if after and any(i < past for i in counts) else range(first, last)
    quoted = _find(s, clause, "QUOTED")
    if quoted is not None:
        return range(quoted, last) if any(i < quoted for i in counts) else range(first, last)
    other = other_person(s, clause)
    if other is not None and any(i > other for i in counts):
        return range(other, last)
    return None


def other_person(s: Stream, clause: Clause) -> int | None:
    """Where the clause turns to someone else, if it does."""
    for i in range(clause.first, clause.last):
        lexeme = s.all[i]
        if not lexeme.has("OTHER") or i in s.used:
            continue
        if lexeme.k["OTHER"] == "vocative" and not (i > clause.first and s.all[i - 1].has("ARTICLE")):
            if lexeme.text not in ("buddy", "mate", "lad", "bloke") or not _acts(s, i, clause.last):
                continue
        if any(s.all[j].text in ("i", "im", "ive", "we") for j in range(clause.first, clause.last)):
            continue
        return i
    return None


def _acts(s: Stream, i: int, last: int) -> bool:
    """Whether the person named does something: 'buddy just did'."""
    j = i + 1
    while j < last and s.all[j].has("FILLER"):
        j += 1
    return j < last and s.all[j].has("DONE")
