"""What stands between a report's counts and is none: an aim with what came of it (wanted 8 got 6; should have been 8
but only 7), and a word about someone else (80x5, my spotter was late, 80x5).

Knows how these are told; nothing of sets or exercises.
"""

from typing import Final

from core.read.stream import Clause, Stream


def aimed(s: Stream, clause: Clause, counts: list[int]) -> range | None:
    """'was going for 8 got 6': what was aimed at and then what was done; only the aim is undone."""
    for i in range(clause.first, clause.last):
        if not s.is_(i, "UNDONE", "ATTEMPT") or i in s.used:
            continue
        done = next((k for k in range(i + 1, clause.last) if s.is_(k, "DONE")), None)
        if done is None:
            return None
        aims = [k for k in counts if i < k < done]
        got = [k for k in counts if k > done]
        if not aims or not got or (s.is_(i, "ATTEMPT") and not _fewer(s, aims, got)):
            return None
        return range(i, done)
    return None


def _fewer(s: Stream, aims: list[int], got: list[int]) -> bool:
    """'went for 8 and got 7': both count repetitions, and fewer came than were tried."""
    aim, done = s.all[aims[-1]], s.all[got[0]]
    bare = len(aims) == 1 and aim.has("NUM") and done.has("NUM") and not s.is_(got[0] + 1, "X", "FOR")
    return bare and done.value < aim.value <= MOST_AIMED


MOST_AIMED: Final = 30.0
"""More than this behind 'went for' is a load and no count of repetitions (common practice, no source)."""


def contrasts(s: Stream, before: Clause, clause: Clause) -> bool:
    """'the aim was 8 but 6 was all i had': an aim of the past, and behind a 'but' what came of it."""
    past = any(s.all[i].is_word("aimed before") for i in range(before.first, before.last))
    return past and s.is_(clause.first - 1, "BUT")


def meant_to_be(s: Stream, clause: Clause) -> bool:
    """'should have been 8 but only 7': the aim, and behind the 'but' what came of it."""
    if not s.is_(clause.last, "BUT"):
        return False
    opens = s.skip(clause.first, "FILLER", "ARTICLE", "THAT")
    if opens >= clause.last or not s.all[opens].is_word("meant to be"):
        return False
    return any(s.is_(i, "NUM", "LOADQ") for i in range(clause.last, len(s)))


def goes_on(s: Stream, before: Clause, clause: Clause) -> bool:
    """'80x5, my spotter was late, 80x5': what another was or did counts nothing, and the report goes on behind it."""
    if clause.opens or before.opens or not s.is_(clause.first, "NUM", "LOADQ"):
        return False
    words = range(before.first, before.last)
    if not s.is_(before.first - 2, "NUM", "LOADQ", "REPN") or before.last - before.first < _SHORTEST:
        return False
    chain = any(s.is_(i, "X", "FOR") for i in range(clause.first, clause.last))
    return chain and not any(s.is_(i, *_TELLING) for i in words)


_TELLING: Final = ("NUM", "LOADQ", "DONE", "UNDONE", "UNDONEBACK", "DIDNT", "IN", "AT", "ON", "WITH")
"""What makes a clause tell more than a word in passing: counts, wishes, what was done or where."""
_SHORTEST: Final = 3
"""A word about someone else takes at least so many pieces; 'my mate' alone heads what the mate did."""
