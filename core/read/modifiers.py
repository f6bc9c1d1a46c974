"""All that is said beside sets, found in one pass: each recogniser looks where it can start, and the first has it.

Where a remark belongs is attach.py's.
"""

from collections.abc import Callable
from dataclasses import replace
from typing import Final

from core.read.effort import at_list, at_spread, effort_word, felt, tank, zero_reserve
from core.read.judging import judged, out_of_ten
from core.read.missing import attempt, fail, only_partials, partials
from core.read.placing import continued, placed
from core.read.remark import Found, Remark
from core.read.rests import long_pause, rest
from core.read.stream import Stream
from core.read.tempos import explode, no_pause, tempo_code, tempo_phase
from core.read.verdicts import extent, form


def _warmup(s: Stream, i: int) -> Found:
    if _timed(s, i):
        return None
    over = s.skip(i + 1, "SETS", "ALL", "BE")
    if (
        s.is_(over, "DONE")
        and s.all[over].is_word("done", "finished")
        and not any(one.has("NUM", "LOADQ") for one in s.all[:i])
    ):
        return Remark("nothing", None, i, over)  # "warm ups done, 90x5": what follows is none
    return Remark("warmup", s.all[i].text, i, i)


def _timed(s: Stream, i: int) -> bool:
    """A 10 min warm-up on the bike before anything was lifted: none of the sets."""
    bounds = ("DUR", "EX", "NUM", "LOADQ", "COMMA", "STOP", "NL", "X")
    back = next((j for j in range(i - 1, max(i - 6, -1), -1) if s.is_(j, *bounds)), -1)
    on = next((j for j in range(i + 1, min(i + 6, len(s))) if s.is_(j, *bounds)), len(s))
    if s.is_(back, "DUR"):
        return not any(one.has("EX", "NUM", "LOADQ") for one in s.all[:back])
    return s.is_(on, "DUR") and not any(one.has("EX", "NUM", "LOADQ") for one in s.all[:on])


def _breath(s: Stream, i: int) -> Found:
    return Remark("restpause", s.all[i].text, i, i)


_PHASES: Final = frozenset({"ECC", "BOTTOM", "CON", "TOP"})
_ANY: Final[frozenset[str]] = frozenset()

RECOGNISERS: Final[tuple[tuple[tuple[str, ...], frozenset[str], Callable[[Stream, int], Found]], ...]] = (
    (("TEMPO",), _ANY, tempo_code),
    (("NUM",), _ANY, tempo_code),
    (("RPE", "RIR"), _ANY, effort_word),
    (("AT",), _ANY, at_spread),
    (("AT",), _ANY, at_list),
    (("NUM", "COULDHAVE"), frozenset({"TANK", "COULDHAVE"}), tank),
    (("FEEL", "ABOUT"), _ANY, felt),
    (("ARTICLE",), frozenset({"LAST", "ORD", "ALL", "EACH", "THAT", "AMEND"}), judged),
    (("NUM",), frozenset({"OUTOF", "FEEL", "ABOUT"}), out_of_ten),
    (("REST", "NOREST"), _ANY, rest),
    (("DUR",), _ANY, rest),
    (("NUM",), frozenset({"REST", "BETWEEN", "DUR", "PLURAL"}), rest),
    (("ECC", "BOTTOM", "CON", "TOP", "DUR", "NUM"), _PHASES, tempo_phase),
    (("PLUS", "THEN", "AND", "WITH", "COMMA"), frozenset({"PARTIALS"}), partials),
    (("PARTIALS",), _ANY, only_partials),
    (("ZERORIR",), _ANY, zero_reserve),
    (("ATTEMPT",), _ANY, attempt),
    (("FAIL",), _ANY, fail),
    (("LEN", "DEFICIT", "RANGE", "HALF"), _ANY, extent),
    (("FORMNOUN", "FORM", "GOODQ", "FAIRQ", "BADQ"), _ANY, form),
    (("BOTTOM",), frozenset({"DUR"}), long_pause),
    (("NOPAUSE",), _ANY, no_pause),
    (("EXPLODE",), _ANY, explode),
    (("WARMUP",), _ANY, _warmup),
    (("RESTPAUSE",), _ANY, _breath),
)
"""Where each can start, what the message must have somewhere for it (most lack it, and are not looked through), and
what recognises it. In order: the first that recognises a place has it."""


def remarks(s: Stream) -> list[Remark]:
    """All remarks of the message, in order; their lexemes are marked as used."""
    out: list[Remark] = []
    said = s.spots.keys()
    for kinds, needs, recognise in RECOGNISERS:
        if said.isdisjoint(kinds) or (needs and said.isdisjoint(needs)):
            continue
        for i in s.places(*kinds):
            if i in s.used:
                continue
            found = recognise(s, i)
            if found is not None:
                found = placed(s, _of_last_rep(s, found))
            if found is not None and s.used.isdisjoint(range(found.first, found.last + 1)):
                for one in (found, *continued(s, found)):
                    out.append(one)
                    s.use(range(one.first, one.last + 1))
    out.sort(key=lambda remark: remark.first)
    return out


def _of_last_rep(s: Stream, remark: Remark) -> Remark:
    """'the last rep got sloppy': a verdict on the end is of the last set."""
    i = remark.first - 1
    while i > 0 and s.is_(i, "BE", "FILLER", "FEEL", "DONE"):
        i -= 1
    if remark.what == "form" and s.is_(i, "LASTREP", "LAST"):
        return replace(remark, wide=False, last_only=True)
    return remark
