"""Numbers that only sum up what is told beside them: 35 push-ups in total, 15 12 8; 60 squats as 3x20; 3 of 3 sets."""

from typing import Final

from core.evidence.exercises import EXERCISES
from core.read.atoms import Atom
from core.read.lexeme import Lexeme
from core.read.loads import outside
from core.read.stream import Stream

MOST_SUMMED: Final = 40
"""More numbers than this are not summed up in one message (common practice, no source)."""
REACH: Final = 3
"""Lexemes between a number and the word that makes it a total, at most (common practice, no source)."""


def sums_up(s: Stream, i: int, lexeme: Lexeme) -> bool:
    """Whether the number is the sum, or the product, of the other counts of the message, and told as such."""
    if not _called_total(s, i) and not _before_body_name(s, i):
        return False
    if len(s.places("NUM")) > MOST_SUMMED:
        return False
    others = [k for k in s.places("NUM") if k != i and s.is_(k, "NUM") and not s.is_(k, "PCT", "CLOCKTIME")]
    values = [s.all[k].value for k in others]
    if len(values) >= 2 and _called_total(s, i) and sum(values) == lexeme.value:
        return True
    chained = [k for k in others if s.is_(k + 1, "X") and s.num(k + 2) is not None]
    chained += [k for k in others if s.is_(k, "SETQ") and s.is_(k + 1, "OF") and s.num(k + 2) is not None]
    return any(s.all[k].value * (s.num(k + 2) or 0.0) == lexeme.value for k in chained)


def _called_total(s: Stream, i: int) -> bool:
    near = (*range(max(0, i - 2), i), *range(i + 1, min(len(s), i + 1 + REACH))) if "TOTAL" in s.spots else ()
    return any(s.is_(k, "TOTAL") for k in near) or (s.is_(i - 1, "COLON") and s.all[i - 1].text == "=")


def _before_body_name(s: Stream, i: int) -> bool:
    """'60 air squats as 3x20': before an exercise that has no load of its own."""
    mention = s.all[i + 1].mention if s.is_(i + 1, "EX") else None
    ids = mention.ids if mention is not None else ()
    return bool(ids) and not any(outside(EXERCISES[one]) for one in ids)


def of_the_aimed(s: Stream, i: int, lexeme: Lexeme) -> Atom | None:
    """'9 out of 10', 'only managed 9 of the 10', '2 of 3 sets': what was done of what was aimed at."""
    told = s.is_(i - 1, "DONE") or (s.is_(i - 1, "FILLER") and s.all[i - 1].is_word("merely"))
    j = s.skip(i + 2, "ARTICLE", "FILLER")
    if not s.is_(i + 1, "OUTOF", "OF") or not s.is_(j, "NUM") or s.all[j].plural or s.is_(j + 1, "X", "FOR"):
        return None
    many = s.all[j].value
    counts_sets = s.is_(j, "SETQ") or (many == lexeme.value and s.is_(j + 1, "DONE", "AT"))
    if counts_sets and 1 <= lexeme.value <= many:
        return Atom("S", i, j, lexeme.value)
    if s.is_(i + 1, "OF") and not (told or j > i + 2):
        return None
    return Atom("R", i, j, lexeme.value) if lexeme.value < many <= 2 * lexeme.value + 1 else None
