"""What a number can be on this exercise, for this lifter: a load, a count of sets, repetitions.

Weighs it against the plan, the last set, the usual load and what the exercise allows; decides nothing by itself.
"""

from typing import Final

from core.evidence.exercises import EXERCISES, Exercise
from core.evidence.plausible import BOUNDS
from core.model.acts import SetAct
from core.model.quantities import from_kg
from core.model.reading import Setting
from core.read.groups import Group, Parsed, Rep
from core.read.loads import Known, is_barbell, known_load, outside, usual_kg
from core.read.remark import TOP_EFFORT

HARDLY_LOADED: Final = frozenset({
    "bodyweight-squat", "push-up", "knee-push-up", "hands-elevated-push-up", "feet-elevated-push-up", "pike-push-up",
    "close-grip-push-up", "bench-dip", "burpee", "crunch", "sit-up", "ab-wheel",
})  # fmt: skip
"""Lifts to which hardly anyone adds a load without saying so (common practice, no source)."""
SAME_LOAD: Final = 0.02
"""Share by which a load may differ from the known one and still be the same (rounding of pounds)."""


class Likely:
    """The likelihoods on one exercise; ``before`` is the set just settled, which the next is weighed against."""

    def __init__(self, parsed: Parsed, exercise: str, setting: Setting) -> None:
        self.parsed = parsed
        self.id = exercise
        self.row: Exercise = EXERCISES[exercise]
        self.setting = setting
        self.before: SetAct | None = None
        self.given: Known = known_load(exercise, setting)
        self.outside = outside(self.row)

    def usual(self) -> float | None:
        """The known load in the lifter's unit."""
        if self.before is not None and self.before.load is not None and self.before.load.kg:
            return from_kg(self.before.load.kg, self.setting.unit)
        kg = usual_kg(self.id, self.setting)
        return None if kg is None else from_kg(kg, self.setting.unit)

    def near(self, number: float, share: float | None = None) -> bool:
        usual = self.usual()
        part = BOUNDS["near_known_load"].value if share is None else share
        return usual is not None and abs(number - usual) <= part * usual

    def can_be_load(self, number: float) -> bool:
        if not self.outside and not self.parsed.weighted and not self.parsed.assisted:
            return False
        least = from_kg(BOUNDS["least_barbell_kg"].value, self.setting.unit) if is_barbell(self.id) else 1.0
        return number >= least

    def can_be_sets(self, number: float) -> bool:
        return number == int(number) and 1 <= number <= BOUNDS["likely_sets"].value

    def backwards(self, group: Group, lead: float) -> bool:
        """'5 x 120': more than anyone repeats, or near the known load as the first number is not, so it is the load."""
        only = len(group.reps) == 1 and group.reps[0].kind == "R" and not group.reps[0].explicit
        if not only or group.load is not None or group.sets is not None or group.behind is not None:
            return False
        second = group.reps[0].n
        most = BOUNDS["most_reps_heavy" if self.row.kind == "compound" else "most_reps_light"].value
        if not self.outside or lead > most or lead != int(lead) or second < 2 * lead:
            return False
        if self.planned_as(lead, second):
            return False
        return second > most or (self.usual() is not None and self.near(second) and not self.near(lead, 0.6))

    def planned_as(self, sets: float, reps: float) -> bool:
        """Whether the plan has just so many sets of so many repetitions."""
        line = next((one for one in self.setting.plan if one.exercise == self.id), None)
        return line is not None and line.sets == sets and line.reps is not None and line.reps[0] <= reps <= line.reps[1]

    def certain(self, lead: float) -> bool:
        """Too many for sets by any count."""
        return lead > 3 * BOUNDS["likely_sets"].value

    def weigh(self, lead: float, reps: float, *, as_load: bool, as_sets: bool) -> str:
        if lead == reps and (as_load or self.outside) and self.usual() is None and not self.certain(lead):
            return "ask"
        if as_sets != as_load:
            return "load" if as_load else "sets"
        if not as_load:
            times = lead <= BOUNDS["most_sets"].value or (self.id in HARDLY_LOADED and self.can_be_sets(reps))
            return "sets" if times and not self.outside else "load"
        if self.near(lead):
            return "ask" if lead == reps and not self.near(lead, SAME_LOAD) else "load"
        if self.usual() is not None:
            usual = self.usual() or 0.0
            if lead < 0.4 * usual:
                return "sets"
            return "ask" if lead <= 6 else "load"
        if lead < reps:
            if lead <= 5:
                return "sets"
            return "load" if self.row.load_kind == "per_hand" or self.row.kind == "isolation" else "ask"
        if reps >= 5:
            return "load"
        return "ask" if self.row.kind == "isolation" or self.row.load_kind == "per_hand" else "sets"

    def first_as_load(self, group: Group, first: Rep, rest: list[float], *, carried: bool) -> bool:
        if first.plural or first.n != int(first.n):
            return True
        if not first.explicit and all(rep.explicit for rep in group.reps[1:]) and first.n > max(rest):
            return True
        most = max(rest)
        ratio = first.n / most if most else 10.0
        apart = (
            bool(group.gaps)
            and group.gaps[0] in (" ", "COLON")
            and all(gap not in (" ", "COLON") for gap in group.gaps[1:])
            and (len(group.gaps) > 1)
        )
        known = self.given is not None or carried
        if not self.can_be_load(first.n) or (group.behind is not None and group.behind > TOP_EFFORT):
            return False
        if known:
            return (
                (ratio >= 1.7 and (self.near(first.n, 0.5)))
                or (apart and self.near(first.n))
                or (first.n >= 40 and ratio >= 3)
            )
        if ratio >= 1.7 and first.n >= 12:
            return True
        if first.n < min(rest) and len(rest) > 1 and max(rest) == min(rest):
            return True
        if ratio >= 1.6 and first.n >= 20 and len(rest) == 1:
            return True
        if ratio >= 1.5 and first.n >= 16 and len(rest) > 1 and max(rest) - min(rest) <= 4:
            return True
        if apart or (group.gaps and group.gaps[0] == "COLON"):
            return True
        return first.n > 30 and ratio > 1.3
