"""One exercise in the place of another: told as decided, or asked for. Works on one clause at a time."""

from core.model.acts import Swap
from core.model.reading import Setting
from core.read.flowed import Flowed, one_of, planned_one
from core.read.stream import Clause, Stream


class Swaps:
    """Reads swaps in the clauses of one message."""

    def __init__(self, s: Stream, setting: Setting, undone: set[int]) -> None:
        self._s = s
        self._setting = setting
        self._undone = undone
        self._out: list[Flowed] = []

    def read(self, clause: Clause, spots: dict[str, int], names: list[int]) -> list[Flowed]:
        """The swap that a clause tells or asks for; its lexemes are marked as used."""
        self._out = []
        self._swap(clause, spots, names)
        return self._out

    def _swap(self, clause: Clause, spots: dict[str, int], names: list[int]) -> bool:
        s = self._s
        if self._asks_for_swap(clause, spots, names):
            return True
        soft = "INSTEAD" in spots and len(names) > 1 and self._soon(clause)
        if (any(not self._live(i) for i in names) and not soft) or (clause.asked and not names):
            return False
        if "INSTEAD" in spots and len(names) >= 2:
            at = spots["INSTEAD"]
            before = [i for i in names if i < at]
            after = [i for i in names if i > at]
            if after and (before or len(after) >= 2):
                to, old = (before[-1], after[0]) if before else (after[1], after[0])
                self._swapped(old, to, at)
                return True
        if "SWAPFROM" in spots and names:
            at = spots["SWAPFROM"]
            after = [i for i in names if i > at]
            link = [i for i in range(at, clause.last) if s.is_(i, "SWAPTO", "THEN")]
            if len(after) >= 2:
                self._swapped(after[0], after[1], at)
                return True
            if len(after) == 1 and any(i < after[0] for i in link):
                self._swapped(None, after[0], at)
                return True
        blocked = self._blocked(clause, names)
        if blocked is not None:
            self._swapped(*blocked)
            return True
        if ("INSTEADALONE" in spots or "SUBIN" in spots) and names:
            self._swapped(
                self._dropped_before(clause), names[-1], spots.get("INSTEADALONE", spots.get("SUBIN", names[-1]))
            )
            return True
        return False

    def _blocked(self, clause: Clause, names: list[int]) -> tuple[int, int, int] | None:
        """'incline bench is full so im doing incline db press': what could not be had, what was done, and why."""
        s = self._s
        occupied = next((i for i in range(clause.first, clause.last) if s.is_(i, "OCCUPIED")), None)
        if len(names) != 2 or occupied is None or not occupied < names[1]:
            return None
        if occupied < names[0] and s.skip(occupied + 1, "ARTICLE", "FILLER") != names[0]:
            return None  # "camped on the hack squat": what is taken stands right behind
        did = any(s.is_(i, "WENTWITH") for i in range(max(occupied, names[0]) + 1, names[1]))
        counted = any(s.is_(i, "NUM", "LOADQ", "X") for i in range(clause.first, occupied))
        return (names[0], names[1], occupied) if did and not counted else None

    def _dropped_before(self, clause: Clause) -> int | None:
        """'pull-ups no, today neutral grip instead': the name turned down in the clause before."""
        s = self._s
        before = clause.first - 1
        if s.is_(before, "COMMA", "DASH", "BUT", "THEN"):
            k = before - 1
            while k >= 0 and not s.all[k].has("STOP", "NL", "COMMA"):
                if s.is_(k, "X", "LOADQ"):
                    break
                if s.is_(k, "EX"):
                    return k
                k -= 1
        i = clause.first - 2
        if i < 1 or not s.is_(clause.first - 1, "COMMA", "DASH") or not s.is_(i, "NEG"):
            return None
        return i - 1 if s.is_(i - 1, "EX") else None

    def _soon(self, clause: Clause) -> bool:
        """'gonna do dumbbell bench instead of bench': said of now, so decided."""
        if self._s.is_(self._s.skip(clause.first, "FILLER"), "ASKWORD"):
            return False
        words = [self._s.all[i] for i in range(clause.first, clause.last) if self._s.all[i].has("UNDONE")]
        return all(word.is_word("gonna", "going to", "ill", "will", "about to", "have to", "gotta") for word in words)

    def _swapped(self, old: int | None, to: int, at: int) -> None:
        s = self._s
        first = min(i for i in (old, to, at) if i is not None)
        last = max(i for i in (old, to, at) if i is not None)
        gone = self._given_up(old) if old is not None else None
        target = self._exercise(to)
        unsure = (
            s.all[to].mention if target is None else (s.all[old].mention if old is not None and gone is None else None)
        )
        self._out.append(Flowed(Swap(gone, target, s.span(first, last)), first, unsure))
        self._s.use([at] if old is None else [at, old])

    def _asks_for_swap(self, clause: Clause, spots: dict[str, int], names: list[int]) -> bool:
        """What can I do instead of pull ups? Any alternative to dips?"""
        s = self._s
        at = spots.get("ALTERNATIVE", spots.get("INSTEAD"))
        asks = (
            clause.asked
            or (at is not None and s.all[at].k.get("ALTERNATIVE") == "alone")
            or s.is_(s.skip(clause.first, "FILLER"), "ASKWORD")
            or any(
                s.all[i].is_word(
                    "need", "i need", "want", "any", "another", "different", "give me", "got", "find me", "suggest"
                )
                for i in range(clause.first, clause.last)
            )
        )
        if at is not None and s.all[at].k.get("ALTERNATIVE") == "asks":
            names = [i for i in names if i > at] or names
            asks = True
        if at is None or not asks or len(names) > 1 or (not names and self._not_now(clause)):
            return False
        if names and names[0] < at and s.all[at].is_word("instead", "something else") and clause.asked:
            return False
        if not names and (
            s.all[at].k.get("ALTERNATIVE") not in ("alone", "asked")
            or (s.all[at].k.get("ALTERNATIVE") == "asked" and not clause.asked)
        ):
            return False
        first = min([at, *names])
        last = max([at, *names])
        spoken = names[0] if names else self._spoken_of(at)
        old = self._given_up(spoken) if spoken is not None else None
        self._out.append(Flowed(Swap(old, None, s.span(first, last)), first))
        s.use(range(clause.first, clause.last))
        return True

    def _not_now(self, clause: Clause) -> bool:
        """'can we do 4x8 instead next week?': other counts, or another day, are no other exercise."""
        words = range(clause.first, clause.last)
        return any(self._s.is_(i, "X") or self._s.all[i].is_word("other days") for i in words)

    def _spoken_of(self, at: int) -> int | None:
        """'the hack squat is taken, give me something else': the name told before on the line, with nothing counted."""
        s = self._s
        for i in range(at - 1, -1, -1):
            if s.all[i].has("NL") or s.is_(i, "NUM", "LOADQ", "DUR", "DIST", "REPN", "PLATE"):
                return None
            if s.is_(i, "EX") or (
                s.all[i].mention is not None
                and any(s.is_(k, "SKIP") or "SKIP" in s.all[k].k for k in (i - 1, i - 2) if k >= 0)
            ):
                return i
        return None

    def _live(self, i: int) -> bool:
        return i not in self._undone

    def _exercise(self, i: int) -> str | None:
        return one_of(self._s.all[i].mention, self._setting)

    def _given_up(self, i: int) -> str | None:
        return planned_one(self._s.all[i].mention, self._setting)
