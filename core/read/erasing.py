"""Sets said not to have happened, and which set a correction points at."""

from dataclasses import dataclass

from core.model.acts import Act, Amend, Erase, SetAct, Which
from core.read.moods import clauses
from core.read.stream import Clause, Stream


@dataclass(frozen=True, slots=True)
class Corrected:
    """A correction and the lexeme where it starts."""

    act: Amend | Erase
    at: int


def erasures(s: Stream, undone: set[int]) -> list[Corrected]:
    """Sets said not to have happened; their lexemes are marked as used."""
    out: list[Corrected] = []
    erased = False
    for clause in clauses(s):
        erased = erased and not clause.opens
        at = next((i for i in range(clause.first, clause.last) if s.is_(i, "ERASE") or _takes_off(s, clause, i)), None)
        inline = (
            at is not None
            and not clause.opens
            and any(s.is_(i, "X") for i in range(clause.first))
            and s.is_(clause.last + 1, "NUM", "LOADQ")
        )
        why = at is not None and s.all[at].k.get("ERASE") == "reason"
        if (erased or (at is not None and out and (why or not clause.opens))) and not _says_more(s, clause):
            s.use(range(clause.first, clause.last))
            continue
        if at is not None and _replaces(s, clause, at):
            continue
        if inline or at is None or clause.asked or (at in undone and not s.is_(at, "TODAYALL")):
            continue
        if any(s.is_(i, "RPE", "RIR", "TEMPO", "REST", "FORMNOUN", "SIDE") for i in range(clause.first, clause.last)):
            continue
        which = _targets(s, clause, at)
        if not which or any(s.is_(i, "LOADQ", "X") for i in range(clause.first, clause.last)):
            continue
        span = s.span(clause.first, clause.last - 1)
        out.extend(Corrected(Erase(one, span), clause.first) for one in which)
        erased = True
        s.use(range(clause.first, clause.last))
        if clause.last + 1 < len(s) and s.is_(clause.last + 1, "ERASE"):
            s.use([clause.last + 1])
    return out


def _takes_off(s: Stream, clause: Clause, i: int) -> bool:
    """'take that last one off': a verb parted from its particle by what it takes away."""
    if not s.is_(i, "TAKE"):
        return False
    end = next((k for k in range(i + 2, min(i + 7, clause.last)) if s.all[k].is_word("particles")), None)
    return (
        end is not None
        and all(
            s.is_(k, "LAST", "THAT", "SETS", "SETREF", "ORD", "NUM", "ARTICLE", "FILLER", "SAME")
            for k in range(i + 1, end)
        )
        and any(s.is_(k, "LAST", "SETS", "SETREF", "ORD") for k in range(i + 1, end))
    )


def _replaces(s: Stream, clause: Clause, at: int) -> bool:
    """'60x8 scratch the last one 60x9': told anew in the same breath, so it corrects and erases nothing."""
    told = any(s.is_(i, "X") for i in range(clause.first, at))
    last = next((i for i in range(at + 1, clause.last) if s.is_(i, "LAST")), None)
    if not told or last is None or not any(s.is_(i, "X") for i in range(last + 1, clause.last)):
        return False
    s.all[at].k["AMEND"] = "inline"
    s.use(range(at + 1, last + 1))
    return True


def taken_back(acts: tuple[Act, ...]) -> tuple[Act, ...]:
    """'100x5 105x5, scrap the last one': a set told and taken back in one message was never kept."""
    out: list[Act] = []
    for act in acts:
        if isinstance(act, Erase) and act.which == "last" and out and isinstance(out[-1], SetAct):
            out.pop()
        else:
            out.append(act)
    return tuple(out)


def _says_more(s: Stream, clause: Clause) -> bool:
    """Whether a clause behind an erasure tells more than why: another set, a count, an exercise."""
    if s.is_(clause.first, "NUM"):
        return True
    return any(
        s.is_(i, "X", "LOADQ", "LAST", "SETS", "SETREF", "ORD", "EX", "TODAYALL")
        for i in range(clause.first, clause.last)
    )


def _targets(s: Stream, clause: Clause, at: int) -> list[Which]:
    """Which sets are meant. Words that throw away many things (lose, dump) must name theirs."""
    inside = range(clause.first, clause.last)
    whole = [s.all[i].text for i in inside if s.is_(i, "TODAYALL") and not s.all[i].is_word("all of it", "the lot")]
    numbers = set_numbers(s, clause)
    last = next((i for i in inside if s.is_(i, "LAST")), None)
    one = bool(numbers) or last is not None or any(s.is_(i, "THAT") for i in inside)
    if any(text != "today" or not one for text in whole):
        return ["today"]
    if numbers:
        return list(numbers)
    if last is not None:
        count = s.num(last + 1)
        if count is not None and 1 <= count <= 5 and not s.all[last + 1].is_word("one"):
            return ["last"] * int(count)
        if s.is_(last + 1, "BOTH") or s.all[last].text.endswith("couple"):
            return ["last", "last"]
        return ["last"]
    if (
        any(s.is_(i, "NUM") for i in inside)
        or any(s.is_(i, "EX") for i in inside)
        or s.all[at].k.get("ERASE") == "named"
    ):
        return []
    if any(s.is_(i, "THAT") for i in inside) or s.all[at].is_word("undo", "take it off", "remove it", "scratch that"):
        return ["last"]
    return []


def set_numbers(s: Stream, clause: Clause) -> list[int]:
    """Set 2, second set, sets 2 and 3."""
    out: list[int] = []
    for i in range(clause.first, clause.last):
        if s.is_(i, "SETS") and s.all[i].is_word("set", "sets", "round") and small(s, i + 1):
            out.append(int(s.all[i + 1].value))
            j = i + 2
            while s.is_(j, "AND", "COMMA") and small(s, j + 1) and _further(s, i, j):
                out.append(int(s.all[j + 1].value))
                j += 2
        elif s.is_(i, "ORD") and s.all[i].num("ORD") == 1 and small(s, i + 1) and s.all[i + 1].value > 1:
            out.extend(range(1, int(s.all[i + 1].value) + 1))
        elif s.is_(i, "ORD") and (s.is_(i + 1, "SETS") or s.is_(i + 1, "NUM")):
            out.append(int(s.all[i].num("ORD")))
        elif s.is_(i, "SETREF") and small(s, i + 1):
            out.append(int(s.all[i + 1].value))
    return out


def _further(s: Stream, i: int, j: int) -> bool:
    """Whether the number behind ``j`` names one more set: 'sets 1 and 2', 'set 1 and 2 were'."""
    return s.all[i].is_word("sets") or (s.is_(j, "AND") and s.is_(j + 2, "AMEND", "BE"))


def small(s: Stream, i: int) -> bool:
    """Whether a number that can name a set stands here."""
    number = s.num(i)
    return number is not None and number == int(number) and 1 <= number <= 12
