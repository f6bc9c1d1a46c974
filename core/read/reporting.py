"""Sets told in the words that corrections use as well: set 1 was 10, set 2 was 9; the third was heavy so i got 5.

Knows which of these is a report; amends.py reads the rest.
"""

from dataclasses import replace

from core.model.acts import Amend, SetAct
from core.read.erasing import Corrected, set_numbers
from core.read.moods import clauses
from core.read.remark import Remark
from core.read.set_changes import Change, from_remark
from core.read.stream import Clause, Stream


def lists_last(s: Stream, clause: Clause) -> bool:
    """'last two sets were 8 and 7': as many counts as sets, so these are sets and no correction."""
    for i in range(clause.first, clause.last - 1):
        many = s.all[i + 1].num("SETQ") if s.is_(i + 1, "SETQ") else s.num(i + 1)
        if s.is_(i, "LAST") and many is not None and many > 1:
            return sum(s.is_(k, "NUM", "REPQ") for k in range(i + 2, clause.last)) == many
    return False


def reports_sets(s: Stream, last: SetAct | None) -> bool:
    """'set 1 was 10, set 2 was 9': sets told one after the other from the first, with none kept yet."""
    if last is not None:
        return False
    told = [set_numbers(s, clause) for clause in clauses(s)]
    named = [numbers for numbers in told if numbers]
    return len(named) > 1 and named[0][0] == 1


def got(s: Stream, clause: Clause) -> bool:
    """'the third set was too heavy so i only got 5': a count that was got is a set done."""
    return any(
        s.is_(i, "DONE") and not s.all[i].is_word("was only") and s.is_(s.skip(i + 1, "FILLER", "ABOUT"), "NUM", "REPN")
        for i in range(clause.first, clause.last)
    )


def loads_up(s: Stream, clause: Clause) -> bool:
    """'so i put 20 more on': plates put on the bar, and nothing put down in the log."""
    inside = range(clause.first, clause.last)
    more = any(s.is_(i, "MORE") and s.is_(i + 1, "ON") for i in inside)
    return more and any(s.all[i].is_word("i put") for i in inside)


def said_anew(s: Stream, clause: Clause, remarks: list[Remark], kept: Corrected) -> Corrected | None:
    """'it was not to failure, 1 left': what a correction cleared, told anew in its next breath."""
    said = [one for one in remarks if clause.first <= one.first < clause.last]
    taken = {i for one in said for i in range(one.first, one.last + 1)}
    if not isinstance(kept.act, Amend) or any(
        s.is_(i, "NUM", "LOADQ") and i not in taken for i in range(clause.first, clause.last)
    ):
        return None
    change: Change = {}
    for one in said:
        from_remark(change, one, cleared=False)
    again = {field: value for field, value in change.items() if field in kept.act.change}
    return Corrected(replace(kept.act, change={**kept.act.change, **again}), kept.at) if again else None
