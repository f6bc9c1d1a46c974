"""Done, or only planned, wished, asked, quoted or another's? Marks the lexemes that report nothing done.

Knows how people frame what they say; nothing of sets or exercises.
"""

from collections.abc import Iterator
from typing import Final

from core.read.aims import aimed, contrasts, goes_on, meant_to_be
from core.read.stream import Clause, Stream

_CLAUSE_ENDS: Final = ("COMMA", "BUT", "THEN", "OPEN", "CLOSE")
_COUNTING: Final = ("NUM", "LOADQ", "DUR", "DIST", "REPN", "PLATE", "SETN")


def clauses(s: Stream) -> list[Clause]:
    """The message cut at commas, 'but', 'then', sentence ends and lines; cut once and remembered."""
    if not s.parts:
        s.parts.extend(_cut(s))
        for clause in s.parts:
            clause.asked = clause.asked and not _bids(s, clause)
    return s.parts


def _cut(s: Stream) -> list[Clause]:
    out: list[Clause] = []
    first, opens, line, blank = 0, True, True, False
    for i in (*s.places("NL", "STOP", "DASH", *_CLAUSE_ENDS), len(s)):
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


_YOU_DO: Final = frozenset(
    {"can you", "could you", "would you", "will you", "please can you", "can", "could", "would", "will"}
)


def _bids(s: Stream, clause: Clause) -> bool:
    """'can you delete the last set?': a polite word to the service to mend its log or plan, not a question."""
    words = [(i, s.all[i].text) for i in range(clause.first, clause.last)]
    swaps = sum(s.all[i].has("EX") for i, _ in words) > 1
    at = next(
        (
            i
            for i, _ in words
            if s.all[i].has("ERASE") or s.all[i].k.get("AMEND") == "strong" or (swaps and s.all[i].has("SWAPFROM"))
        ),
        None,
    )
    if at is None:
        return False
    before = [text for i, text in words if i < at]
    told = any(text in _YOU_DO for text in before) and any("you" in text.split() for text in before)
    return told and not any(text == "i" or s.all[i].has("EX", "NUM") for i, text in words if i < at)


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
    if not s.says(_FRAMING) and not s.says(_CONTRAST) and "?" not in s.text:
        return undone
    carry = line_carry = heading = theirs = False
    for before, clause in _pairs(clauses(s)):
        if meant_to_be(s, clause):
            undone.update(range(clause.first, clause.last))
            continue
        resumes = s.all[clause.first].is_word("resumes")
        line_carry = line_carry and not resumes and not (clause.opens_line and clause.blank_before)
        heading = heading and not (clause.opens_line or resumes)
        if clause.opens or resumes:
            carry = (line_carry and clause.opens_line) or heading
        theirs = theirs and not (clause.opens or resumes)
        first, last = clause.first, clause.last
        counts = [i for i in range(first, last) if _counts(s, i)]
        theirs = _still_theirs(s, clause, counts, theirs=theirs)
        resumed = before is not None and bool(counts) and (goes_on(s, before, clause) or contrasts(s, before, clause))
        theirs, carry = theirs and not resumed, carry and not resumed
        verdict = _verdict(s, clause, counts)
        if theirs and counts and not verdict:
            verdict = range(first, last)
        if verdict is None:
            if carry:
                undone.update(range(first, last))
            continue
        undone.update(verdict)
        heading = heading or _heads_line(s, clause)
        whole = len(verdict) == last - first
        carry = bool(verdict) and (not whole or not clause.asked)
        if not verdict:
            line_carry = False
        elif (
            whole
            and not counts
            and clause.opens_line
            and _ends_line(s, last)
            and _find(s, clause, "UNDONE") is not None
        ):
            line_carry = True
        if whole:
            _backwards(s, clause, before, counts, undone)
    return undone


def _heads_line(s: Stream, clause: Clause) -> bool:
    """'Next week: deadlift ... . rows ...': a plan's heading holds for its line."""
    start = s.skip(clause.first, "FILLER")
    return clause.opens_line and s.is_(start, "UNDONE") and s.is_(start + 1, "COLON")


def _backwards(s: Stream, clause: Clause, before: Clause | None, counts: list[int], undone: set[int]) -> None:
    """What a clause says of those before it: that was the plan; isn't it?"""
    if any(s.all[i].has("UNDONEBACK") for i in range(clause.first, clause.last)):
        undone.update(range(clause.first))
    if before is not None and _tag(s, clause, counts) and _find(s, before, "DONE") is None:
        undone.update(range(before.first, before.last))


def _still_theirs(s: Stream, clause: Clause, counts: list[int], *, theirs: bool) -> bool:
    """Whether the sentence still speaks of someone else: named before any count, until the lifter comes in."""
    for i in range(clause.first, clause.last):
        lexeme = s.all[i]
        if lexeme.is_word("i or we") or lexeme.has("EX") or (counts and i >= counts[0] and not theirs):
            if lexeme.is_word("i or we"):
                return False
            continue
        if is_other(s, i) and not _only_when(s, i):
            return not _comes_back(s, i, clause.last)
    return theirs


def _only_when(s: Stream, i: int) -> bool:
    """'with my brother', 'before the kids woke up': who or when it was done with, not by."""
    return any(s.is_(k, "WITH", "FOR") or (k >= 0 and s.all[k].is_word("whens")) for k in (i - 1, i - 2))


def is_other(s: Stream, i: int) -> bool:
    """Whether the lexeme names another person, and is not how the lifter calls the one written to."""
    lexeme = s.all[i]
    if "OTHER" not in lexeme.k or i in s.used:
        return False
    if s.is_(i - 1, "NEG", "OF") and ("NEG" in s.all[i - 1].k or lexeme.has("THAT")):
        return False
    if lexeme.k["OTHER"] != "vocative":
        return True
    if i > 0 and (s.all[i - 1].has("ARTICLE") or s.all[i - 1].is_word("our", "that", "this", "his", "her")):
        return True
    follow = s.skip(i + 1, "FILLER")
    return (lexeme.is_word("buddy", "mate", "lad", "bloke") and s.is_(follow, "DONE")) or s.is_(i + 1, "IN", "AT")


def _pairs(found: list[Clause]) -> Iterator[tuple[Clause | None, Clause]]:
    """Each clause with the one before it."""
    return zip([None, *found], found, strict=False)


def _tag(s: Stream, clause: Clause, counts: list[int]) -> bool:
    """isnt it? right? correct?: a question about what was said just before."""
    tags = any(s.all[i].is_word("tags") for i in range(clause.first, clause.last))
    return clause.asked and not counts and tags and clause.last - clause.first <= 2


def _counts(s: Stream, i: int) -> bool:
    if s.all[i].text.isdigit() and len(s.all[i].text) == 4 and 1950 <= s.all[i].value <= 2050:
        return False
    return s.all[i].has(*_COUNTING)


def _ends_line(s: Stream, i: int) -> bool:
    while i < len(s) and s.all[i].has("STOP", "COLON"):
        i += 1
    return i >= len(s) or s.all[i].has("NL")


def _find(s: Stream, clause: Clause, *kinds: str) -> int | None:
    if s.spots.keys().isdisjoint(kinds):
        return None
    for i in range(clause.first, clause.last):
        if i not in s.used and not s.all[i].kinds.isdisjoint(kinds):
            return i
    return None


def _verdict(s: Stream, clause: Clause, counts: list[int]) -> range | None:
    """Which lexemes of the clause report nothing: all, a part, none (an empty range), or unknown (None)."""
    first, last = clause.first, clause.last
    if not clause.asked and not _framed(s, first, last):
        return None
    whole = range(first, last)
    done = _find(s, clause, "DONE")
    back = next((i for i in range(first, last) if s.all[i].is_word("but done")), None)
    if back is not None and counts and counts[0] > back and not clause.asked:
        return range(first, back)
    if _find(s, clause, "DIDNT") is not None:
        return whole
    if _asks(s, clause, done):
        return whole
    resting = next((i for i in range(first, last) if s.all[i].is_word("resting")), None)
    if (
        resting is not None
        and not any(s.all[i].has("BETWEEN", "EACH", "ALL") for i in range(first, last))
        and not (counts and counts[0] < resting and not s.all[last - 1].is_word("now", "first"))
    ):
        return range(resting, last)
    coming = next(
        (i for i in range(first, last) if s.all[i].is_word("next", "and next") and s.all[i].has("NEXTQ")), None
    )
    if coming is not None and counts and counts[-1] < coming and done is None:
        return whole
    wish = _find(s, clause, "UNDONE", "UNDONEBACK")
    missed = aimed(s, clause, counts)
    if missed is not None:
        return missed
    if wish is not None and not (done is not None and done > wish and not _future_done(s, wish)):
        before = [i for i in counts if i < wish]
        after = [i for i in counts if i > wish]
        if before and (after or (done is not None and done < wish)):
            other = _other_person(s, clause)
            return whole if other is not None and other < before[0] else range(wish, last)
        return whole
    told = _told(s, clause, counts)
    if told is not None:
        return told
    if done is not None or _find(s, clause, "DAY") is not None:
        return range(0)
    return None


_CONTRAST: Final = frozenset({"BUT"})
_FRAMING: Final = frozenset({
    "ATTEMPT", "DONE", "DIDNT", "ASKWORD", "UNDONE", "UNDONEBACK", "NEXTQ",
    "COMPARED", "PASTTIME", "QUOTED", "OTHER", "DAY", "REST", "IN", "ABOUT",
})  # fmt: skip


def _framed(s: Stream, first: int, last: int) -> bool:
    """Whether any word of the clause could frame what it says: most clauses of a log have none."""
    return any(not s.all[i].kinds.isdisjoint(_FRAMING) for i in range(first, last)) or any(
        s.all[i].is_word("since", "from", "resting") for i in range(first, last)
    )


def _future_done(s: Stream, wish: int) -> bool:
    """'will have done', 'want to get': the done word only follows from the wish."""
    return not s.all[wish].is_word(
        "was going for", "was aiming for", "planned", "aim", "target", "goal", "should", "wanted"
    )


def _asks(s: Stream, clause: Clause, done: int | None) -> bool:
    start = clause.first
    while start < clause.last and s.all[start].has("FILLER", "AND") and not s.all[start].has("ASKWORD"):
        start += 1
    starts_asking = start < clause.last and s.all[start].has("ASKWORD")
    if _bids(s, clause):
        return False
    if starts_asking and s.all[start].is_word("was it", "was that", "were those", "was i") and not clause.asked:
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
            and (s.all[i - 1].has("IN") or s.all[i - 1].is_word("since", "from", "back in", "in"))
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
    if year is not None and counts:
        return range(first, last)
    if past is not None and not any(s.all[i].has("SAME", "COMPARED") for i in range(first, past)):
        after = [i for i in counts if i > past]
        return range(past, last) if after and any(i < past for i in counts) else range(first, last)
    quoted = _find(s, clause, "QUOTED")
    if quoted is not None:
        return range(quoted, last) if any(i < quoted for i in counts) else range(first, last)
    other = _other_person(s, clause)
    after = [i for i in counts if other is not None and i > other]
    if other is not None and after and not any(s.all[k].is_word("i or we") for k in range(other, after[0])):
        return range(other, last)
    return None


def _other_person(s: Stream, clause: Clause) -> int | None:
    """Where the clause turns to someone else, if the lifter does not come in."""
    for i in range(clause.first, clause.last):
        if s.all[i].is_word("i or we"):
            return None
        if is_other(s, i) and not _only_when(s, i):
            return None if _comes_back(s, i, clause.last) else i
    return None


def _comes_back(s: Stream, i: int, last: int) -> bool:
    """'the kids were loud but got 60x8': behind another person, of whom nothing is counted, the one who writes."""
    back = next((k for k in range(i, last) if s.all[k].is_word("but done")), None)
    return back is not None and not any(_counts(s, k) for k in range(i, back))
