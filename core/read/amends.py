"""Corrections of sets kept before: what to change, what to erase, and of which set.

Works clause by clause on messages that report no new set there; knows the last set from the setting.
"""

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from core.evidence.exercises import EXERCISES
from core.model.acts import Amend, SetAct, Which
from core.model.reading import Setting
from core.read.erasing import Corrected, set_numbers, small
from core.read.flowed import one_of
from core.read.forming import Atomiser
from core.read.moods import clauses
from core.read.names import Mention
from core.read.old_values import old_value, owns_up, turned_down, turns_down
from core.read.remark import Remark
from core.read.reporting import got, lists_last, loads_up, reports_sets, said_anew
from core.read.set_changes import Change, Context, from_remark, quantities, unit_only
from core.read.stream import Clause, Stream


class Amender:
    """Reads the corrections of kept sets in one message."""

    def __init__(self, s: Stream, remarks: list[Remark], setting: Setting, undone: set[int]) -> None:
        self._s = s
        self._remarks = remarks
        self._setting = setting
        self._undone = undone

    def read(self) -> list[Corrected]:
        """Corrections, in order, while no new set was reported before them."""
        out: list[Corrected] = []
        closed = False
        for clause in self._joined():
            if clause.asked or clause.first in self._undone:
                continue
            owned = closed and not clause.opens and owns_up(self._s, clause)
            found = [] if owned else self._clause(clause)
            if found:
                out.extend(found)
                self._s.use(range(clause.first, clause.last))
                closed = True
            elif closed and not clause.opens and (more := said_anew(self._s, clause, self._remarks, out[-1])):
                out[-1] = more
                self._s.use(range(clause.first, clause.last))
            elif closed and not clause.opens and (owned or self._only_repeats(clause)):
                self._s.use(range(clause.first, clause.last))
            elif self._reports(clause):
                break
        return out

    def _only_repeats(self, clause: Clause) -> bool:
        """A lone quantity behind a correction says it again: 'that was pounds not kilos, 50 lb'."""
        s = self._s
        rest = range(clause.first + 1, clause.last)
        return s.is_(clause.first, "NUM", "LOADQ", "EX") and all(s.all[i].has("FILLER", "OTHER") for i in rest)

    def _joined(self) -> list[Clause]:
        """Clauses, a bare 'no,' or 'correction,' with the one that it announces."""
        out: list[Clause] = []
        for clause in clauses(self._s):
            if (
                out
                and not clause.opens
                and (turns_down(self._s, clause) or self._misspoke(out[-1]) or self._anew(out[-1], clause))
            ):
                out[-1] = replace(out[-1], last=clause.last)
            elif out and (
                self._announces(out[-1])
                or (not clause.opens and self._announces(clause) and set_numbers(self._s, out[-1]))
            ):
                out[-1] = Clause(
                    out[-1].first, clause.last, out[-1].opens, out[-1].opens_line, out[-1].blank_before, clause.asked
                )
            else:
                out.append(clause)
        return out

    def _anew(self, before: Clause, clause: Clause) -> bool:
        """'not 5, 6', 'it wasn't the 24s, it was the 22s': the old value turned down, then the new one alone."""
        s = self._s
        told = (
            s.skip(before.first, "THAT", "BE", "AMEND", "OPENER", "FILLER")
            if not s.is_(before.first, "NOTWORD")
            else before.first
        )
        old = turned_down(s, told)
        start = s.skip(clause.first, "THAT", "BE", "AMEND", "ARTICLE", "OPENER")
        return old is not None and old == before.last - 1 and self._only_repeats(replace(clause, first=start))

    def _misspoke(self, clause: Clause) -> bool:
        """'i said eight but it was seven': the old value, then the new."""
        return any(self._s.all[i].is_word("i said", "i put", "i wrote") for i in range(clause.first, clause.last))

    def _announces(self, clause: Clause) -> bool:
        s = self._s
        words = range(clause.first, clause.last)
        return any(s.is_(i, "AMEND", "NEG") for i in words) and all(
            s.all[i].has("AMEND", "NEG", "FILLER", "THAT", "ARTICLE", "COMMA") for i in words
        )

    def _reports(self, clause: Clause) -> bool:
        s = self._s
        return any(
            (s.is_(i, "NUM", "LOADQ", "REPN") and not s.is_(i - 1, "SETS", "SETREF"))
            or (s.is_(i, "SAME") and not s.is_(i - 1, "NEG"))
            for i in range(clause.first, clause.last)
        )

    def _clause(self, clause: Clause) -> list[Corrected]:
        s = self._s
        inside = range(clause.first, clause.last)
        numbers = set_numbers(s, clause)
        points = any(s.is_(i, "LAST", "THAT") and not s.all[i].is_word("its") for i in inside) or bool(numbers)
        strong = any(s.is_(i, "AMEND") and s.all[i].k["AMEND"] in ("strong", "inline") for i in inside)
        weak = any(
            (s.is_(i, "AMEND") and s.all[i].k["AMEND"] == "pointing")
            or s.is_(i, "NEG", "FEEL")
            or (s.is_(i, "BE") and not (s.is_(i, "DONE") and s.is_(i + 1, "NUM", "REPN")))
            for i in inside
        )
        start = s.skip(clause.first, "OPENER")
        starts_no = (
            start + 1 < clause.last
            and s.all[start].is_word("no", "nope")
            and not s.all[start + 1].has("WORD", "KNOWN", "HEIGHT")
        )
        negated = old_value(s, clause)
        clears = any(s.is_(i, "CLEARIT") for i in inside) and any(
            s.is_(i, "RPE", "RIR", "TEMPO", "REST", "FORMNOUN") for i in inside
        )
        told = (
            points
            and any(clause.first <= remark.first < clause.last for remark in self._remarks)
            and not self._counts_beside(clause)
        )
        if (
            lists_last(s, clause)
            or loads_up(s, clause)
            or (numbers and not strong and reports_sets(s, self._setting.last))
        ):
            return []
        if numbers and not strong and negated is None and got(s, clause):
            return []
        told = told or (points and any(s.is_(i, "NUM") and s.is_(i + 1, "PARTIALS") for i in inside))
        if not (
            strong
            or told
            or clears
            or (
                weak
                and (
                    points
                    or negated is not None
                    or (start < clause.last and "that" in s.all[start].text)
                    or (start < clause.last and "it was" in s.all[start].text)
                    or self._remarks_on_that(clause)
                )
            )
            or starts_no
            or negated is not None
        ):
            return []
        named = [i for i in inside if s.is_(i, "EX")]
        if named and not strong and negated is None and not points:
            return []
        if named and any(s.is_(i, "X") for i in inside) and not strong:
            return []
        pointed = bool(numbers) or any(s.is_(i, "LAST") for i in inside)
        if self._setting.last is None and (not pointed or self._setting.now_on is None):
            return []
        if self._setting.last is None and (
            self._counts_beside(clause) or (not numbers and self._counted_after(clause))
        ):
            return []
        if numbers and not (strong or weak or negated is not None):
            return []
        change = self._change(clause, numbers, negated)
        if not change:
            return []
        span = s.span(clause.first, clause.last - 1)
        which: list[Which] = list(numbers) or ["last"]
        return [Corrected(Amend(one, change, span), clause.first) for one in which]

    def _counts_beside(self, clause: Clause) -> bool:
        """'75x10 swinging on the last few': a set is counted, so its remark corrects nothing."""
        s = self._s
        taken = {i for remark in self._remarks for i in range(remark.first, remark.last + 1)}
        free = [i for i in range(clause.first, clause.last) if i not in taken]
        chained = any(s.is_(i, "X") and s.is_(i - 1, "NUM", "LOADQ") for i in free)
        return chained or any(s.is_(i, "NUM") and s.is_(i - 1, "DONE", "LAST", "COLON", "FILLER") for i in free)

    def _remarks_on_that(self, clause: Clause) -> bool:
        """'rpe on that was more like 9': a remark that points at the set just kept."""
        s = self._s
        points = any(s.all[i].is_word("that was", "it was", "those were") for i in range(clause.first, clause.last))
        told = any(clause.first <= remark.first < clause.last for remark in self._remarks)
        return points and told and not self._counts_beside(clause)

    def _counted_after(self, clause: Clause) -> bool:
        """'cheated the last one, 40kg curls 10 10 8': it speaks of the sets that follow."""
        s = self._s
        return any(s.is_(i, "NUM") for i in range(clause.last, len(s)))

    def _change(self, clause: Clause, numbers: list[int], negated: int | None) -> Change:
        s, last = self._s, self._setting.last
        change: Change = {}
        first_clear = next((i for i in range(clause.first, clause.last) if s.is_(i, "CLEARIT", "NEG")), None)
        for remark in self._remarks:
            counted = s.is_(remark.first, "PARTIALS") and s.is_(remark.first - 1, "NUM")
            if clause.first <= remark.first < clause.last and not counted:
                from_remark(change, remark, cleared=s.is_(remark.first - 1, "NEG") or s.is_(remark.first - 2, "NEG"))
        atoms = Atomiser(s, []).atoms(clause.first, clause.last)
        taken = {i for remark in self._remarks for i in range(remark.first, remark.last + 1)}
        skip = self._skipped(clause, numbers, negated)
        for i in range(clause.first, clause.last):
            if s.is_(i, "NUM") and s.is_(i + 1, "PARTIALS") and i not in skip:
                change["partials"] = int(s.all[i].value)
                skip.add(i)
        if first_clear is not None and s.is_(first_clear, "DROP") and self._kept(clause):
            skip.add(first_clear)
        useful = [a for a in atoms if a.first not in skip and a.first not in taken]
        quantities(change, useful, self._context(self._named_field(clause), by_number=bool(numbers)))
        for i in range(clause.first, clause.last):
            if i in skip or not s.is_(i, "EX"):
                continue
            exercise = one_of(s.all[i].mention, self._setting) or self._alike(s.all[i].mention, last)
            if exercise is not None and (last is None or last.exercise != exercise):
                change["exercise"] = exercise
        if negated is not None and last is not None:
            unit_only(change, self._s, (clause.first, negated), last)
        if not change and first_clear is not None:
            self._cleared(change, clause)
        return change

    def _alike(self, mention: Mention | None, last: SetAct | None) -> str | None:
        """Of the exercises that share a name, the one most like the last set's (incline, of a barbell bench)."""
        if mention is None or last is None or last.exercise is None or not mention.generic:
            return None
        words = set(last.exercise.split("-"))
        likeness = {one: len(words & set(one.split("-"))) for one in mention.ids}
        most = max(likeness.values())
        best = [one for one, count in likeness.items() if count == most]
        return best[0] if len(best) == 1 and most else None

    def _skipped(self, clause: Clause, numbers: list[int], negated: int | None) -> set[int]:
        s = self._s
        skip: set[int] = set()
        if negated is not None:
            ahead = [
                i
                for i in range(clause.first, negated)
                if s.is_(i, "NUM", "LOADQ", "DUR", "REPN", "EX", "LB", "KG", "LEFT", "RIGHT", "DIST")
            ]
            skip.update(range(negated, clause.last if ahead else (turned_down(s, negated) or negated) + 1))
        for i in range(clause.first, clause.last):
            later = any(s.is_(k, "NUM", "LOADQ") for k in range(i + 2, clause.last))
            if s.all[i].is_word("i said", "i put", "i wrote") and s.is_(i + 1, "NUM", "LOADQ") and later:
                skip.add(i + 1)
        if numbers:
            skip.update(self._naming(clause, numbers))
        for i in range(clause.first, clause.last):
            if s.is_(i, "LAST", "THAT") and s.is_(i + 1, "NUM") and s.all[i + 1].is_word("one"):
                skip.add(i + 1)
            one = s.is_(i, "NUM") and s.all[i].is_word("one")
            left_out = s.is_(i - 1, "AMEND") and s.all[i - 1].k["AMEND"] == "strong" and not s.is_(i + 1, "REPS")
            if one and (s.is_(i + 1, "BE", "AMEND") or left_out):
                skip.add(i)  # "forgot one, 3 sets of rows": a set, and no count
        return skip

    def _naming(self, clause: Clause, numbers: list[int]) -> set[int]:
        """The numbers that name the sets corrected: set 2, sets 2 and 3, the first two, the first one."""
        s = self._s
        out: set[int] = set()
        for i in range(clause.first, clause.last):
            if s.is_(i, "SETS", "SETREF") and small(s, i + 1) and int(s.all[i + 1].value) in numbers:
                out.add(i + 1)
                j = i + 2
                while s.is_(j, "AND") and small(s, j + 1):
                    out.add(j + 1)
                    j += 2
            first = s.is_(i, "ORD") and small(s, i + 1)
            if first and ((s.all[i].num("ORD") == 1 and s.all[i + 1].value > 1) or s.all[i + 1].is_word("one")):
                out.add(i + 1)
        return out

    def _named_field(self, clause: Clause) -> str | None:
        """'change the weight to 9', 'reps should be 9': the field by its name."""
        for i in range(clause.first, clause.last):
            if self._s.is_(i, "LOADWORD", "REPS") and not self._s.is_(i, "NUM"):
                return "load" if self._s.is_(i, "LOADWORD") else "reps"
        return None

    def _context(self, named: str | None, *, by_number: bool) -> Context:
        last = self._setting.last
        exercise = last.exercise if last is not None and last.exercise else self._setting.now_on
        return Context(self._s, self._setting, last, exercise if exercise in EXERCISES else None, by_number, named)

    def _kept(self, clause: Clause) -> bool:
        """Whether the clause names something kept beside a set: 'drop the rpe' clears it and tells no drop."""
        return any(self._s.is_(i, *_CLEARED) for i in range(clause.first, clause.last))

    def _cleared(self, change: Change, clause: Clause) -> None:
        for i in range(clause.first, clause.last):
            for kind, field in _CLEARED.items():
                if self._s.is_(i, kind):
                    change[field] = None


_CLEARED: Final[Mapping[str, str]] = {
    "RPE": "rir",
    "RIR": "rir",
    "REST": "rest_s",
    "TEMPO": "tempo",
    "FORMNOUN": "form",
}
"""What can be cleared by its name, and its field."""
