"""Corrections of sets kept before: what to change, what to erase, and of which set.

Works clause by clause on messages that report no new set there; knows the last set from the setting.
"""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final

from core.evidence.exercises import EXERCISES
from core.model.acts import Amend, Erase, SetAct, Which
from core.model.quantities import POUND_KG, Load, from_kg, to_kg
from core.model.reading import Setting
from core.read.atoms import Atom, LoadSaid
from core.read.flow import one_of
from core.read.forming import Atomiser
from core.read.loads import moved
from core.read.moods import clauses
from core.read.names import Mention
from core.read.remark import Remark
from core.read.stream import Clause, Stream

STRONG: Final = frozenset({
    "make that", "make it", "actually", "sorry", "sry", "soz", "i mean", "i meant", "meant", "correction", "oops", "ooops", "whoops",
    "scratch that", "should be", "should have been", "shouldve been", "was actually", "change it to", "change that to", "my bad",
    "typo", "no wait", "was meant to be", "were actually", "that should be", "wait no", "correct that to", "it should be", "set it to",
    "mistyped", "miscounted", "apologies", "apols", "i put", "i wrote", "amend", "adjust", "mistake", "oh wait", "change the last",
    "change last", "fix last", "fix that", "forgot", "forgot to say", "forgot to mention", "forgot to add", "call that", "call it", "mark it",
    "mark that", "mark", "mark set", "mark the last", "count that", "log that as", "log it as", "misread", "misclicked", "wrong", "add em", "hmm no", "rather",
    "change set", "change", "edit", "fix", "update", "err", "er", "wait", "nope", "hang on", "pardon", "put that down as", "ah", "duh",
    "class that", "should say", "tweak", "supposed to be", "i said",
})  # fmt: skip
"""Words that by themselves announce a correction."""
POINTING: Final = frozenset(
    {
        "that was",
        "it was",
        "those were",
        "they were",
        "thats",
        "was",
        "were",
        "them were",
        "reads",
        "add",
        "put",
        "was only",
        "were only",
    }
)
"""Words that correct only when they point at a set already kept."""
INLINE: Final = STRONG - {
    "change", "edit", "fix", "update", "forgot", "forgot to say", "forgot to mention", "forgot to add", "wrong", "mistake", "add em", "ah",
    "duh", "hang on", "i said", "tweak", "i put", "i wrote", "adjust", "supposed to be",
}  # fmt: skip

Change = dict[str, object]


@dataclass(frozen=True, slots=True)
class Corrected:
    """A correction and the lexeme where it starts."""

    act: Amend | Erase
    at: int


def erasures(s: Stream, undone: set[int]) -> list[Corrected]:
    """Sets said not to have happened; their lexemes are marked as used."""
    out: list[Corrected] = []
    for clause in clauses(s):
        at = next((i for i in range(clause.first, clause.last) if s.is_(i, "ERASE")), None)
        inline = (
            at is not None
            and not clause.opens
            and any(s.is_(i, "X") for i in range(clause.first))
            and s.is_(clause.last + 1, "NUM", "LOADQ")
        )
        if inline or at is None or clause.asked or (at in undone and not s.is_(at, "TODAYALL")):
            continue
        if any(s.is_(i, "RPE", "RIR", "TEMPO", "REST", "FORMNOUN", "SIDE") for i in range(clause.first, clause.last)):
            continue
        which = _targets(s, clause, at)
        if (
            which == ["last"]
            and out
            and not clause.opens
            and not any(s.is_(i, "LAST") for i in range(clause.first, clause.last))
        ):
            s.use(range(clause.first, clause.last))
            continue
        if not which or any(s.is_(i, "LOADQ", "X") for i in range(clause.first, clause.last)):
            continue
        span = s.span(clause.first, clause.last - 1)
        out.extend(Corrected(Erase(one, span), clause.first) for one in which)
        s.use(range(clause.first, clause.last))
        if clause.last + 1 < len(s) and s.is_(clause.last + 1, "ERASE"):
            s.use([clause.last + 1])
    return out


def _targets(s: Stream, clause: Clause, at: int) -> list[Which]:
    inside = range(clause.first, clause.last)
    if any(s.is_(i, "TODAYALL") and s.all[i].text not in ("all of it", "the lot") for i in inside):
        return ["today"]
    numbers = _set_numbers(s, clause)
    if numbers:
        return list(numbers)
    last = next((i for i in inside if s.is_(i, "LAST")), None)
    if last is not None:
        count = s.num(last + 1)
        if count is not None and 1 <= count <= 5 and s.all[last + 1].text != "one":
            return ["last"] * int(count)
        if s.is_(last + 1, "BOTH") or s.all[last].text.endswith("couple"):
            return ["last", "last"]
        return ["last"]
    if any(s.is_(i, "NUM") for i in inside) or any(s.is_(i, "EX") for i in inside):
        return []
    if any(s.is_(i, "THAT") for i in inside) or s.all[at].text in ("undo", "take it off", "remove it", "scratch that"):
        return ["last"]
    return []


def _set_numbers(s: Stream, clause: Clause) -> list[int]:
    """Set 2, second set, sets 2 and 3."""
    out: list[int] = []
    for i in range(clause.first, clause.last):
        if s.is_(i, "SETS") and s.all[i].text in ("set", "sets", "round") and _small(s, i + 1):
            out.append(int(s.all[i + 1].value))
            j = i + 2
            while s.is_(j, "AND", "COMMA") and _small(s, j + 1) and s.all[i].text == "sets":
                out.append(int(s.all[j + 1].value))
                j += 2
        elif s.is_(i, "ORD") and (s.is_(i + 1, "SETS") or s.is_(i + 1, "NUM")):
            out.append(int(s.all[i].num("ORD")))
        elif s.is_(i, "SETREF") and _small(s, i + 1):
            out.append(int(s.all[i + 1].value))
    return out


def _small(s: Stream, i: int) -> bool:
    number = s.num(i)
    return number is not None and number == int(number) and 1 <= number <= 12


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
            found = self._clause(clause)
            if found:
                out.extend(found)
                self._s.use(range(clause.first, clause.last))
                closed = True
            elif closed and not clause.opens and self._only_repeats(clause):
                self._s.use(range(clause.first, clause.last))
            elif self._reports(clause):
                break
        return out

    def _only_repeats(self, clause: Clause) -> bool:
        """A lone quantity behind a correction says it again: 'that was pounds not kilos, 50 lb'."""
        return clause.last - clause.first == 1 and self._s.is_(clause.first, "NUM", "LOADQ")

    def _joined(self) -> list[Clause]:
        """Clauses, a bare 'no,' or 'correction,' with the one that it announces."""
        out: list[Clause] = []
        for clause in clauses(self._s):
            if (out and not clause.opens and _turns_down(self._s, clause)) or (
                out and not clause.opens and self._misspoke(out[-1])
            ):
                out[-1] = replace(out[-1], last=clause.last)
            elif (
                out
                and not clause.opens
                and (self._announces(out[-1]) or (self._announces(clause) and _set_numbers(self._s, out[-1])))
            ):
                out[-1] = Clause(
                    out[-1].first, clause.last, out[-1].opens, out[-1].opens_line, out[-1].blank_before, clause.asked
                )
            else:
                out.append(clause)
        return out

    def _misspoke(self, clause: Clause) -> bool:
        """'i said eight but it was seven': the old value, then the new."""
        return any(self._s.all[i].text in ("i said", "i put", "i wrote") for i in range(clause.first, clause.last))

    def _announces(self, clause: Clause) -> bool:
        s = self._s
        words = range(clause.first, clause.last)
        return any(s.is_(i, "AMEND", "NEG") for i in words) and all(
            s.all[i].has("AMEND", "NEG", "FILLER", "THAT", "ARTICLE", "COMMA") for i in words
        )

    def _reports(self, clause: Clause) -> bool:
        s = self._s
        return any(
            s.is_(i, "NUM", "LOADQ", "REPN") and not s.is_(i - 1, "SETS", "SETREF")
            for i in range(clause.first, clause.last)
        )

    def _clause(self, clause: Clause) -> list[Corrected]:
        s = self._s
        inside = range(clause.first, clause.last)
        numbers = _set_numbers(s, clause)
        points = any(s.is_(i, "LAST", "THAT") for i in inside) or bool(numbers)
        strong = any(s.is_(i, "AMEND") and s.all[i].text in STRONG for i in inside)
        weak = any((s.is_(i, "AMEND") and s.all[i].text in POINTING) or s.is_(i, "NEG", "BE", "FEEL") for i in inside)
        starts_no = s.all[clause.first].text in ("no", "nope") and len(inside) > 1
        negated = self._old_value(clause)
        clears = any(s.is_(i, "CLEARIT") for i in inside) and any(
            s.is_(i, "RPE", "RIR", "TEMPO", "REST", "FORMNOUN") for i in inside
        )
        if not (
            strong
            or clears
            or (
                weak
                and (
                    points
                    or negated is not None
                    or "that" in s.all[clause.first].text
                    or "it was" in s.all[clause.first].text
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
        if numbers and not (strong or weak or negated is not None):
            return []
        change = self._change(clause, numbers, negated)
        if not change:
            return []
        span = s.span(clause.first, clause.last - 1)
        which: list[Which] = list(numbers) or ["last"]
        return [Corrected(Amend(one, change, span), clause.first) for one in which]

    def _old_value(self, clause: Clause) -> int | None:
        """Index of the 'not' before the old value in '62.5 not 65' or 'not 65'."""
        s = self._s
        for i in range(clause.first, clause.last):
            if s.is_(i, "NOTWORD") and (
                s.is_(i + 1, "NUM", "LOADQ", "DUR", "REPN", "DIST") or s.is_(i + 1, "EX", "KG", "LB", "LEFT", "RIGHT")
            ):
                return i
        return None

    def _change(self, clause: Clause, numbers: list[int], negated: int | None) -> Change:
        s, last = self._s, self._setting.last
        change: Change = {}
        first_clear = next((i for i in range(clause.first, clause.last) if s.is_(i, "CLEARIT", "NEG")), None)
        for remark in self._remarks:
            if clause.first <= remark.first < clause.last:
                self._from_remark(
                    change, remark, cleared=s.is_(remark.first - 1, "NEG") or s.is_(remark.first - 2, "NEG")
                )
        atoms = Atomiser(s, []).atoms(clause.first, clause.last)
        taken = {i for remark in self._remarks for i in range(remark.first, remark.last + 1)}
        skip = self._skipped(clause, numbers, negated)
        for i in range(clause.first, clause.last):
            if s.is_(i, "NUM") and s.is_(i + 1, "PARTIALS") and i not in skip:
                change["partials"] = int(s.all[i].value)
                skip.add(i)
        useful = [a for a in atoms if a.first not in skip and a.first not in taken]
        self._quantities(change, useful, last)
        for i in range(clause.first, clause.last):
            if i in skip or not s.is_(i, "EX"):
                continue
            exercise = one_of(s.all[i].mention, self._setting) or self._alike(s.all[i].mention, last)
            if exercise is not None and (last is None or last.exercise != exercise):
                change["exercise"] = exercise
        if negated is not None and last is not None:
            self._unit_only(change, clause, negated, last)
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
            skip.update(range(negated, clause.last) if ahead else (negated, negated + 1))
        for i in range(clause.first, clause.last):
            later = any(s.is_(k, "NUM", "LOADQ") for k in range(i + 2, clause.last))
            if s.all[i].text in ("i said", "i put", "i wrote") and s.is_(i + 1, "NUM", "LOADQ") and later:
                skip.add(i + 1)
        if numbers:
            for i in range(clause.first, clause.last):
                if s.is_(i, "SETS", "SETREF") and _small(s, i + 1) and int(s.all[i + 1].value) in numbers:
                    skip.add(i + 1)
                    j = i + 2
                    while s.is_(j, "AND") and _small(s, j + 1):
                        skip.add(j + 1)
                        j += 2
                if s.is_(i, "ORD") and s.num(i + 1) == 1 and s.all[i + 1].text == "one":
                    skip.add(i + 1)
        for i in range(clause.first, clause.last):
            if s.is_(i, "LAST", "THAT") and s.is_(i + 1, "NUM") and s.all[i + 1].text == "one":
                skip.add(i + 1)
            if s.is_(i, "NUM") and s.all[i].text == "one" and s.is_(i + 1, "BE", "AMEND"):
                skip.add(i)
        return skip

    def _from_remark(self, change: Change, remark: Remark, *, cleared: bool) -> None:
        what, value = remark.what, remark.value
        if what == "warmup":
            change["warmup"] = not cleared
        elif what == "failed":
            change["failed"] = True
            change["rir"] = 0.0
            if isinstance(value, float):
                change["reps"] = int(value) - 1
        elif what in ("rir", "tempo", "rest_s", "form", "range", "partials") and value is not None:
            change[what] = value

    def _quantities(self, change: Change, atoms: list[Atom], last: SetAct | None) -> None:
        exercise = last.exercise if last is not None and last.exercise else self._setting.now_on
        linked = False
        for n, atom in enumerate(atoms):
            if atom.kind == "R":
                change["reps"] = int(atom.value)
            elif atom.kind == "MORE" and last is not None and last.reps is not None:
                change["reps"] = int(last.reps + atom.value)
            elif atom.kind == "H":
                change["hold_s"] = atom.value
            elif atom.kind == "D":
                change["distance_m"] = atom.value
            elif (
                atom.kind == "L"
                and atom.load is not None
                and atom.load.way == "plates"
                and not self._s.is_(atom.first, "NUM")
            ):
                continue
            elif atom.kind in ("L", "DELTA") and atom.load is not None and exercise in EXERCISES:
                load = moved(atom.load, exercise or "", self._setting, last.load if last is not None else None)
                if load is not None:
                    change["load"] = load
            elif atom.kind == "SIDE":
                change["side"] = {"LEFT": "left", "RIGHT": "right"}.get(atom.text, "each")
            elif atom.kind == "DROP":
                change["drop"] = True
            elif atom.kind == "X":
                linked = True
            elif atom.kind == "N" and n and atoms[n - 1].kind == "AT" and "reps" in change and 5 <= atom.value <= 10:
                change["rir"] = 10 - atom.value
            elif atom.kind == "N":
                after = atoms[n + 1].kind if n + 1 < len(atoms) else ""
                self._number(
                    change,
                    atom,
                    last,
                    before_x=after in ("X", "FOR"),
                    after_x=linked or (n > 0 and atoms[n - 1].kind in ("X", "FOR")),
                )
                linked = False
        if last is not None:
            for field in ("load", "reps"):
                if field in change and len(change) > 1 and change[field] == getattr(last, field):
                    del change[field]

    def _number(self, change: Change, atom: Atom, last: SetAct | None, *, before_x: bool, after_x: bool) -> None:
        value = atom.value
        if after_x:
            change["reps"] = int(value)
            return
        field = "load" if before_x or value != int(value) else self._likelier(value, last)
        if field == "load":
            kind = (
                last.load.kind
                if last is not None and last.load is not None and last.load.kind not in ("body", "band")
                else None
            )
            exercise = last.exercise if last is not None and last.exercise else self._setting.now_on
            if kind is not None:
                change["load"] = Load(kind, to_kg(value, self._setting.unit))
            elif exercise in EXERCISES:
                load = moved(LoadSaid("plain", value), exercise or "", self._setting, None)
                if load is not None:
                    change["load"] = load
        elif field == "hold_s":
            change["hold_s"] = value
        elif field == "distance_m":
            change["distance_m"] = value
        else:
            change["reps"] = int(value)

    def _likelier(self, value: float, last: SetAct | None) -> str:
        """Which field of the last set a bare number corrects: the one that it is nearer to, in proportion."""
        if last is None:
            return "load" if value > 30 else "reps"
        if last.hold_s is not None:
            return "hold_s"
        if last.distance_m is not None:
            return "distance_m"
        kg = last.load.kg if last.load is not None else None
        if not kg or last.reps is None:
            return "reps"
        load = from_kg(kg, self._setting.unit)
        reps = max(1.0, float(last.reps))
        off_load = abs(value - load) / load
        off_reps = abs(value - reps) / reps
        return "load" if 2 * off_load < off_reps else "reps"

    def _unit_only(self, change: Change, clause: Clause, negated: int, last: SetAct) -> None:
        """'that was lb not kg': the same number in the other unit."""
        s = self._s
        if change or last.load is None or last.load.kg is None:
            return
        for i in range(clause.first, negated):
            if s.is_(i, "LB", "KG") and not s.is_(i, "NUM", "LOADQ"):
                number = from_kg(last.load.kg, "kg" if s.is_(i, "LB") else "lb")
                change["load"] = replace(last.load, kg=number * POUND_KG if s.is_(i, "LB") else number)

    def _cleared(self, change: Change, clause: Clause) -> None:
        fields: Mapping[str, str] = {"RPE": "rir", "RIR": "rir", "REST": "rest_s", "TEMPO": "tempo", "FORMNOUN": "form"}
        for i in range(clause.first, clause.last):
            for kind, field in fields.items():
                if self._s.is_(i, kind):
                    change[field] = None


def _turns_down(s: Stream, clause: Clause) -> bool:
    """Whether the clause only turns down an old value: 'not 275'."""
    return (
        s.is_(clause.first, "NOTWORD")
        and s.is_(clause.first + 1, "NUM", "LOADQ", "DUR", "TIME", "EX")
        and clause.last - clause.first <= 3
    )
