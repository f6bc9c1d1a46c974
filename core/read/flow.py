"""The flow of a session: begin, finish, next, skip, swap, done as planned, body weight.

Looks at whole clauses; a clause that is wished, asked or another's says none of these, but for the asking ones.
"""

from typing import Final

from core.model.acts import AsPlanned, Begin, Bodyweight, Finish, Next, Skip
from core.model.quantities import to_kg
from core.model.reading import Setting
from core.read.flowed import FlowAct, Flowed, planned_one
from core.read.moods import clauses
from core.read.names import Mention
from core.read.stream import Clause, Stream
from core.read.swaps import Swaps

LEAST_BODY_KG: Final = 30.0
MOST_BODY_KG: Final = 300.0
"""What a scale can say of an adult (common practice, no source)."""
LEAST_TALL_M: Final = 1.3
MOST_TALL_M: Final = 2.3
"""How tall adults are (common practice, no source)."""
_COUNTING: Final = ("NUM", "LOADQ", "DIST", "REPN", "PLATE", "SETN")


class Flow:
    """Reads the flow acts of one message."""

    def __init__(self, s: Stream, setting: Setting, undone: set[int]) -> None:
        self._s = s
        self._setting = setting
        self._undone = undone
        self._out: list[Flowed] = []
        self._swaps = Swaps(s, setting, undone)

    def read(self) -> list[Flowed]:
        """All flow acts in order; their lexemes are marked as used."""
        for clause in clauses(self._s):
            spots = self._spots(clause)
            if not spots:
                continue
            counts = [i for i in range(clause.first, clause.last) if self._s.is_(i, *_COUNTING)]
            for reader in (self._weight, self._swap, self._skip, self._next, self._planned, self._edges):
                if reader(clause, spots, counts):
                    if spots.get("FINISH", -1) > max(spots.get("PLANNED", -1), spots.get("SKIP", -1)) >= 0:
                        self._edges(clause, spots, counts)
                    break
        return self._out

    def _spots(self, clause: Clause) -> dict[str, int]:
        spots: dict[str, int] = {}
        for i in range(clause.first, clause.last):
            if i in self._s.used:
                continue
            for kind in self._s.all[i].k:
                if kind in FLOWING:
                    spots.setdefault(kind, i)
        return spots

    def _add(self, act: FlowAct, first: int, last: int, unsure: Mention | None = None) -> None:
        self._out.append(Flowed(act, first, unsure))
        self._s.use(range(first, last + 1))

    def _names(self, clause: Clause) -> list[int]:
        return [i for i in range(clause.first, clause.last) if self._s.is_(i, "EX")]

    def _exercise(self, i: int) -> str | None:
        return planned_one(self._s.all[i].mention, self._setting)

    def _live(self, i: int) -> bool:
        return i not in self._undone

    # body weight

    def _weight(self, clause: Clause, spots: dict[str, int], counts: list[int]) -> bool:
        at = spots.get("WEIGHIN", self._i_am(clause))
        at = self._morning_weight(clause, spots) if at is None else at
        if at is None or self._names(clause):
            return False
        s = self._s
        reach = [i for i in counts if not self._stature(i)]
        if not reach and clause.first >= 2 and s.is_(clause.first - 1, "COMMA"):
            reach = [i for i in range(max(0, clause.first - 4), clause.first - 1) if s.is_(i, "NUM", "LOADQ")]
        if not reach and clause.last + 1 < len(s) and s.is_(clause.last, "COMMA", "STOP", "NL"):
            reach = [i for i in range(clause.last + 1, min(clause.last + 3, len(s))) if s.is_(i, "NUM", "LOADQ")][:1]
        if len(reach) > 1:
            reach = [i for i in reach if abs(i - at) == 1] or reach
        if len(reach) != 1 or at in self._undone:
            return False
        i = reach[0]
        lexeme = s.all[i]
        if lexeme.has("REPQ", "SETQ", "TIMESQ") or lexeme.plural:
            return False
        kg = lexeme.num("LOADQ") if lexeme.has("LOADQ") else to_kg(lexeme.value, self._setting.unit)
        if not LEAST_BODY_KG <= kg <= MOST_BODY_KG:
            return False
        first, last = min(at, i), max(at, i)
        self._add(Bodyweight(kg, s.span(first, last)), first, last)
        end = clause.last
        while end < len(s) and not s.all[end].has("NL", "STOP", "EX") and self._parenthesis(clause, end):
            end += 1
        s.use(range(clause.first, end))
        return True

    def _i_am(self, clause: Clause) -> int | None:
        """'im 81 kilos': oneself is weighed by it."""
        s = self._s
        return next(
            (
                i
                for i in range(clause.first, clause.last - 1)
                if s.all[i].is_word("who am")
                and s.is_(i + 1, "LOADQ")
                and not any(s.is_(k, "X", "REPQ", "SETQ", "FOR", "PLATE", "MORE") for k in range(i + 1, clause.last))
            ),
            None,
        )

    def _stature(self, i: int) -> bool:
        """Metres tall or years old: told beside a weight, and none."""
        s = self._s
        number = s.num(i)
        tall = number is not None and LEAST_TALL_M <= number <= MOST_TALL_M and number != int(number)
        return (
            tall
            or s.is_(i, "DIST")
            or any(s.is_(k, "LEN", "LONG") or s.all[k].is_word("stature") for k in range(i, min(i + 2, len(s))))
        )

    def _morning_weight(self, clause: Clause, spots: dict[str, int]) -> int | None:
        """'weight 82.4 this morning', 'weight 80 kg and 1.78 tall': no load is lifted in so few words."""
        s = self._s
        at = next((i for i in range(clause.first, clause.last) if s.is_(i, "LOADWORD")), None)
        if "MORNING" in spots and at is None:
            words = [s.all[i] for i in range(clause.first, clause.last)]
            only = all(one.has("LOADQ", "MORNING", "FILLER", "DAY", "SELF", "BE", "ARTICLE") for one in words)
            return spots.get("LOADQ") if only else None
        if at is None or "MORNING" in spots:
            return at
        tall = any(one.is_word("stature", "who am") for one in s.all)
        return at if tall and s.is_(at + 1, "LOADQ", "NUM") else None

    def _parenthesis(self, clause: Clause, end: int) -> bool:
        """A remark in brackets behind the weight, such as the change since last time."""
        return self._s.all[clause.last].has("OPEN") and end - clause.last < 8

    def _swap(self, clause: Clause, spots: dict[str, int], counts: list[int]) -> bool:
        del counts
        found = self._swaps.read(clause, spots, self._names(clause))
        self._out.extend(found)
        return bool(found)

    # skip, next, planned, begin and finish

    def _skip(self, clause: Clause, spots: dict[str, int], counts: list[int]) -> bool:
        s, at = self._s, spots.get("SKIP")
        if at is None or clause.asked or self._asked(clause, at):
            return False
        if any(i > at or not s.is_(i - 1, "AT") for i in counts):
            return False  # "bus at 5, so skipping the rows": a time ahead of it counts nothing
        after = [i for i in self._names(clause) if i > at]
        direct = s.skip(at + 1, "ARTICLE", "FILLER", "ALL", "MORE", "DAY") if at + 1 < len(s) else at + 1
        if s.all[at].k["SKIP"] == "short" and any(
            (name := s.all[i].mention) is not None and name.lacking for i in after
        ):
            return False
        if s.all[at].k["SKIP"] == "short" and (
            not after or direct != after[0] or not self._ends_there(after[-1], clause)
        ):
            return False
        if after:
            for i in after:
                exercise = self._exercise(i)
                unsure = s.all[i].mention if exercise is None else None
                self._add(Skip(exercise, s.span(at, i)), i if i != after[0] else at, i, unsure)
            return True
        if s.all[at].text.startswith("skip") or s.all[at].k["SKIP"] == "back":
            before = self._told_off(at)
            if before is not None:
                self._add(Skip(self._exercise(before), s.span(before, at)), before, at)
                return True
        words = {s.all[i].text for i in range(at, clause.last)}
        if not s.says(frozenset({"ERASE"})) and words & {
            "rest",
            "them",
            "it",
            "those",
            "these",
            "that",
            "remaining",
            "rest of",
        }:
            self._add(
                Skip(self._last_named(at) or self._setting.now_on, s.span(at, clause.last - 1)), at, clause.last - 1
            )
            return True
        return False

    def _ends_there(self, i: int, clause: Clause) -> bool:
        """Whether only small words follow the name: 'no curls today', not 'no bench at home'."""
        return not any(self._s.all[k].has("WORD", "AT", "CHAT") for k in range(i + 1, clause.last))

    def _told_off(self, at: int) -> int | None:
        """'leg extensions are out, skipping': the name stands before, and nothing is counted."""
        s = self._s
        i = at - 1
        while i >= 0 and not s.all[i].has("STOP", "NL"):
            if s.is_(i, *_COUNTING):
                return None
            if s.is_(i, "EX"):
                return i
            i -= 1
        return None

    def _asked(self, clause: Clause, at: int) -> bool:
        return any(self._s.all[i].has("ASKWORD") for i in range(clause.first, at)) or any(
            self._s.all[i].is_word("tomorrow", "next week", "next time", "might", "thinking", "if")
            for i in range(clause.first, clause.last)
        )

    def _last_named(self, before: int) -> str | None:
        for i in range(before - 1, -1, -1):
            if self._s.all[i].mention is not None:
                return self._exercise(i)
        return None

    def _next(self, clause: Clause, spots: dict[str, int], counts: list[int]) -> bool:
        at = spots.get("NEXTQ")
        if at is None or counts:
            return False
        s = self._s
        follow = s.all[at + 1].text if at + 1 < clause.last else ""
        if follow in ("time", "week", "session", "month", "year", "workout", "for", "set", "block", "monday"):
            return False
        if s.all[at].k["NEXTQ"] == "bare":
            others = [i for i in range(clause.first, clause.last) if i != at and s.all[i].has("WORD", "EX", "LONG")]
            if others:
                return False
        self._add(Next(s.span(at, at)), at, at)
        s.use(range(clause.first, clause.last))
        return True

    def _planned(self, clause: Clause, spots: dict[str, int], counts: list[int]) -> bool:
        at = spots.get("PLANNED")
        s = self._s
        if at is None or counts or clause.asked:
            return False
        if any(
            s.all[i].has("NEG", "ASKWORD")
            or s.all[i].is_word("almost", "nearly", "if", "hope", "hopefully", "except", "should", "will")
            for i in range(clause.first, clause.last)
            if i != at
        ):
            return False
        if clause.last < len(s) and s.all[clause.last].has("BUT"):
            return False
        names = self._names(clause)
        if not names:
            self._add(AsPlanned(None, s.span(at, at)), at, at)
        for i in names:
            exercise = self._exercise(i)
            unsure = s.all[i].mention if exercise is None else None
            self._add(AsPlanned(exercise, s.span(min(i, at), max(i, at))), i, i, unsure)
        s.use(range(clause.first, clause.last))
        return True

    def _edges(self, clause: Clause, spots: dict[str, int], counts: list[int]) -> bool:
        s = self._s
        for kind, act in (("FINISH", Finish), ("BEGIN", Begin)):
            at = spots.get(kind)
            if at is None or clause.asked or self._hedged(clause, at):
                continue
            names = [i for i in self._names(clause) if i > at]
            if names and (kind == "FINISH" or counts):
                continue
            others = [i for i in range(clause.first, clause.last) if i != at and not s.all[i].has("FILLER", "OTHER")]
            if s.all[at].is_word("finished", "just finished") and (others or not clause.opens):
                continue
            if s.all[at].is_word("leaving") and not any(s.all[i].has("NUM", "DONE") for i in range(at)):
                continue
            if kind == "FINISH" and s.is_(at + 1, "WITH") and not s.is_(at + 2, "DAY", "TODAYALL"):
                continue
            if s.all[at].is_word("places") and any(
                s.all[i].has("WORD", "KNOWN", "EX", "ALARM", "OTHER") for i in range(clause.first, clause.last)
            ):
                continue
            if kind == "BEGIN" and (
                counts or self._of_a_thing(clause, at) or (s.all[at].is_word("soft begins") and names)
            ):
                continue
            self._add(act(s.span(at, at)), at, at)
            return True
        return False

    def _of_a_thing(self, clause: Clause, at: int) -> bool:
        """'starting a new job', 'like starting a lawnmower': begun is something else."""
        s = self._s
        return s.is_(at + 1, "ARTICLE") and any(s.is_(i, "WORD", "KNOWN", "CHAT") for i in range(at + 2, clause.last))

    def _hedged(self, clause: Clause, at: int) -> bool:
        s = self._s
        for i in range(clause.first, clause.last):
            if i == at:
                continue
            lexeme = s.all[i]
            if lexeme.has("ASKWORD") and i < at:
                return True
            if lexeme.is_word(
                "tomorrow", "almost", "nearly", "before", "when", "not", "until", "til", "if", "soon", "wish", "in"
            ):
                if lexeme.is_word("in") and not any(s.all[j].has("DUR", "NUM", "LONG") for j in range(i, clause.last)):
                    continue
                return True
        return False


FLOWING: Final = frozenset(
    {
        "WEIGHIN",
        "LOADQ",
        "LOADWORD",
        "MORNING",
        "INSTEAD",
        "INSTEADALONE",
        "SWAPFROM",
        "OCCUPIED",
        "SWAPTO",
        "SUBIN",
        "ALTERNATIVE",
        "SKIP",
        "NEXTQ",
        "PLANNED",
        "FINISH",
        "BEGIN",
    }
)
