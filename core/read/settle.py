"""Groups on a known exercise into bare sets: what grammar left open is decided by weighing what the exercise, the plan,
the last set and the usual load make likely; what even they leave open is a doubt.

Knows no remarks; attach.py adds those.
"""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Final

from core.evidence.exercises import EXERCISES
from core.evidence.plausible import BOUNDS
from core.model.acts import Act, SetAct
from core.model.quantities import from_kg
from core.model.reading import About, Setting
from core.read.atoms import LoadSaid, LoadWay
from core.read.groups import Group, Parsed, Rep
from core.read.loads import Known, is_barbell, known_load, moved, outside, plausible, unsaid, usual_kg

_HOLDS: Final = frozenset({"hold", "carry"})


@dataclass(slots=True)
class Doubt:
    """What must be asked, with the readings that can answer it."""

    about: About
    readings: list[tuple[str, Sequence[Act]]] = field(default_factory=list)


@dataclass(slots=True)
class Settled:
    """Bare sets of each group, in order, or the first doubt."""

    sets: list[list[SetAct]]
    doubt: Doubt | None = None
    first_parts: list[int] = field(default_factory=list)


class Settler:
    """Decides the groups of one stretch, each in the light of those before it."""

    def __init__(self, parsed: Parsed, exercise: str, setting: Setting) -> None:
        self._parsed = parsed
        self._id = exercise
        self._row = EXERCISES[exercise]
        self._setting = setting
        self._before: SetAct | None = None
        self._given = known_load(exercise, setting)
        self._counted = self._row.pattern in _HOLDS
        self._outside = outside(self._row)

    def settle(self) -> Settled:
        """All groups decided, stopping at the first doubt."""
        out = Settled([])
        total = 0
        for n, group in enumerate(self._parsed.groups):
            done = self._group(n, group)
            if isinstance(done, Doubt):
                out.doubt = done
                return out
            out.sets.append(done)
            total += len(done)
            if total > BOUNDS["most_message_sets"].value:
                out.doubt = Doubt("numbers")
                return out
            if done:
                self._before = done[-1]
        return out

    # what a number can be

    def _usual(self) -> float | None:
        """The known load in the lifter's unit."""
        if self._before is not None and self._before.load is not None and self._before.load.kg:
            return from_kg(self._before.load.kg, self._setting.unit)
        kg = usual_kg(self._id, self._setting)
        return None if kg is None else from_kg(kg, self._setting.unit)

    def _near(self, number: float, share: float | None = None) -> bool:
        usual = self._usual()
        part = BOUNDS["near_known_load"].value if share is None else share
        return usual is not None and abs(number - usual) <= part * usual

    def _can_be_load(self, number: float) -> bool:
        if not self._outside and not self._parsed.weighted and not self._parsed.assisted:
            return False
        least = from_kg(BOUNDS["least_barbell_kg"].value, self._setting.unit) if is_barbell(self._id) else 1.0
        return number >= least

    def _can_be_sets(self, number: float) -> bool:
        return number == int(number) and 1 <= number <= BOUNDS["likely_sets"].value

    # one group

    def _group(self, n: int, group: Group) -> list[SetAct] | Doubt:
        if group.like:
            return self._alike(group)
        self._hold_counts(group)
        if group.lead is not None:
            doubt = self._lead(group)
            if doubt is not None:
                return doubt
        elif group.bare and group.load is None:
            doubt = self._bare(n, group)
            if doubt is not None:
                return doubt
        if group.behind is not None:
            self._behind(group)
        load = self._load(group)
        if isinstance(load, Doubt):
            return load
        if not group.reps:
            return self._no_reps(n, group, load)
        return self._built(group, load)

    def _hold_counts(self, group: Group) -> None:
        """On a hold, bare counts are seconds; 30s means seconds there."""
        if self._row.pattern == "hold":
            for rep in group.reps:
                if rep.kind == "R":
                    rep.kind = "H"
            if group.lead_plural and group.lead is not None and len(group.reps) == 1:
                lead, group.lead = group.lead, None
                group.sets, group.reps[0].n = group.reps[0].n, lead
            said = group.load
            if said is not None and said.plural and said.number is not None and not said.in_kg:
                group.load = None
                times = group.reps[0].n if group.reps else None
                group.reps, group.sets = [Rep(said.number, "H")], times or group.sets
            return
        if self._row.pattern == "carry" or not group.bare:
            plurals = [rep for rep in group.reps if rep.plural and rep.kind == "R"]
            loaded = group.load is not None or self._given is not None
            for rep in plurals:
                if loaded and self._row.pattern == "carry":
                    rep.kind = "H"
        if self._row.pattern == "carry" and group.bare and len(group.reps) > 1 and group.reps[0].plural:
            group.load = LoadSaid("plain", group.reps.pop(0).n, plural=True)
            group.bare = False

    def _lead(self, group: Group) -> Doubt | None:
        """a x b: a load and repetitions, or a count of sets."""
        lead, reps = float(group.lead or 0.0), group.reps[0].n
        as_load, as_sets = self._can_be_load(lead), self._can_be_sets(lead)
        if group.sets is not None and group.load is None and as_load:
            group.load, group.lead = LoadSaid("plain", lead, plural=group.lead_plural), None
            return None
        if group.load is not None or (group.behind is not None and self._behind_is_load(group, lead)):
            as_load = False
            as_sets = lead <= BOUNDS["most_sets"].value
        elif group.reps[0].kind != "R":
            as_load = as_load and not as_sets
        told = group.load is not None or group.behind is not None
        choice = "sets" if told and not as_load else self._weigh(lead, reps, as_load=as_load, as_sets=as_sets)
        if choice == "ask":
            return self._two_ways(group, lead)
        group.lead = None
        if choice == "sets" and len(group.reps) == 1 and lead > BOUNDS["likely_sets"].value >= reps:
            group.sets, group.reps[0].n = reps, lead
            return None
        if choice == "sets" and lead == len(group.reps) and lead > 1:
            return None
        if choice == "sets" and (len(group.reps) == 1 or group.sets is None):
            group.sets = lead
        else:
            group.load = LoadSaid("plain", lead, plural=group.lead_plural)
        return None

    def _weigh(self, lead: float, reps: float, *, as_load: bool, as_sets: bool) -> str:
        if lead == reps and (as_load or self._outside) and self._usual() is None and not self._certain(lead):
            return "ask"
        if as_sets != as_load:
            return "load" if as_load else "sets"
        if not as_load:
            return "sets" if lead <= BOUNDS["most_sets"].value and not self._outside else "load"
        if self._near(lead):
            return "load"
        if self._usual() is not None:
            usual = self._usual() or 0.0
            if lead < 0.4 * usual:
                return "sets"
            return "ask" if lead <= 6 else "load"
        if lead < reps:
            if lead <= 5:
                return "sets"
            return "load" if self._row.load_kind == "per_hand" or self._row.kind == "isolation" else "ask"
        if reps >= 5:
            return "load"
        return "ask" if self._row.kind == "isolation" or self._row.load_kind == "per_hand" else "sets"

    def _certain(self, lead: float) -> bool:
        """Too many for sets by any count."""
        return lead > 3 * BOUNDS["likely_sets"].value

    def _two_ways(self, group: Group, lead: float) -> Doubt:
        with_load = replace_group(group, load=LoadSaid("plain", lead), sets=None)
        with_sets = replace_group(group, load=None, sets=lead)
        out = Doubt("numbers")
        for one in (with_load, with_sets):
            load = self._load(one)
            if not isinstance(load, Doubt):
                acts = self._built(one, load)
                if not isinstance(acts, Doubt):
                    out.readings.append(("", acts))
        return out

    def _bare(self, n: int, group: Group) -> Doubt | None:
        """A list of numbers: the first is the load, or all are repetitions."""
        first = group.reps[0]
        if first.kind != "R":
            return None
        rest = [rep.n for rep in group.reps[1:]]
        if not self._outside:
            takes = self._parsed.weighted or self._parsed.assisted or first.plural
            if (
                takes
                and (rest or group.sets is not None or group.behind is not None)
                and not self._row.load_kind == "band"
            ):
                if rest or first.n > 12:
                    self._first_is_load(group)
            return None
        carried = n > 0 and self._before is not None and self._before.load is not None
        if not rest:
            return self._single(group, first, carried=carried)
        if self._first_as_load(group, first, rest, carried=carried):
            self._first_is_load(group)
            return None
        if carried or self._given is not None or group.behind is not None:
            return None
        return self._no_load(group, [first.n, *rest])

    def _first_is_load(self, group: Group) -> None:
        first = group.reps.pop(0)
        way: LoadWay = "assist" if self._parsed.assisted and not self._outside else "plain"
        group.load = LoadSaid(way, first.n, plural=first.plural)
        group.gaps = group.gaps[1:]
        if not group.reps and group.sets is not None:
            group.reps, group.sets = [Rep(group.sets)], None

    def _first_as_load(self, group: Group, first: Rep, rest: list[float], *, carried: bool) -> bool:
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
        known = self._given is not None or carried
        if not self._can_be_load(first.n) or group.behind is not None:
            return False
        if known:
            return (
                (ratio >= 1.7 and (self._near(first.n, 0.5)))
                or (apart and self._near(first.n))
                or (first.n >= 40 and ratio >= 3)
            )
        if ratio >= 1.7 and first.n >= 12:
            return True
        if first.n < min(rest) and len(rest) > 1 and max(rest) == min(rest):
            return True
        if ratio >= 1.6 and first.n >= 20 and len(rest) == 1:
            return True
        if ratio >= 1.5 and first.n >= 20 and len(rest) > 1 and max(rest) - min(rest) <= 2:
            return True
        if apart or (group.gaps and group.gaps[0] == "COLON"):
            return True
        return first.n > 30 and ratio > 1.3

    def _single(self, group: Group, first: Rep, *, carried: bool) -> Doubt | None:
        number = first.n
        if group.behind is not None or group.sets is not None:
            return None
        if first.plural:
            group.reps.clear()
            group.load = LoadSaid("plain", number, plural=True)
            return None
        heavy = number > 30 or number != int(number)
        if carried:
            if heavy and self._near(number, 0.6):
                group.reps.clear()
                group.load = LoadSaid("plain", number)
            return None
        if self._given is not None:
            if heavy and (self._near(number, 0.6) or number != int(number)):
                group.reps.clear()
                group.load = LoadSaid("plain", number)
            return None
        if heavy and self._can_be_load(number):
            group.reps.clear()
            group.load = LoadSaid("plain", number)
            return None
        return Doubt("load")

    def _no_load(self, group: Group, numbers: list[float]) -> Doubt:
        if len(numbers) == 2 and numbers[0] == numbers[1] and self._can_be_load(numbers[0]):
            return self._two_ways(replace_group(group, reps=[group.reps[-1]]), numbers[0])
        return Doubt("load")

    def _behind_is_load(self, group: Group, lead: float) -> bool:
        """a x b @ c: c is the load unless a is plainly the load already, or c can only be an effort."""
        behind = float(group.behind or 0.0)
        if behind > 10 or not (behind * 2).is_integer():
            return True
        if not self._can_be_load(behind):
            return False
        if self._usual() is not None:
            return self._near(behind, 0.6) and not self._near(lead)
        return self._can_be_sets(lead) and lead < 6

    def _behind(self, group: Group) -> None:
        """The number behind an at-sign: the load where none is known, else RPE."""
        behind = float(group.behind or 0.0)
        known = group.load is not None
        if known or not self._behind_is_load(group, group.sets or 1.0):
            if behind <= 10:
                return
        if not known:
            way: LoadWay = "assist" if self._parsed.assisted and not self._outside else "plain"
            group.load = LoadSaid(way, behind)
        group.behind = None

    def _load(self, group: Group) -> Known | Doubt:
        before = self._before.load if self._before is not None else None
        if group.load is None:
            if before is not None and group.inherits:
                return before
            load = unsaid(self._id, self._setting)
            return Doubt("load") if load is None else load
        said = group.load
        if said.way == "plain" and self._parsed.assisted and not self._outside:
            said = replace(said, way="assist")
        reference = before if before is not None else self._given
        load = moved(said, self._id, self._setting, reference)
        if load is None:
            return Doubt("load")
        if not plausible(load, self._id, self._setting):
            return Doubt("load")
        return load

    def _no_reps(self, n: int, group: Group, load: Known) -> list[SetAct] | Doubt:
        """A load alone: the first repetition was missed, or the missed one was named; else it must be asked."""
        for placed in self._parsed.placed:
            if placed.remark.what == "failed" and placed.after in (n, n - 1, -1):
                missed = placed.remark.value
                reps = int(missed) - 1 if isinstance(missed, float) and missed >= 1 else 0
                return [SetAct(self._id, load, reps)]
        return Doubt("reps")

    def _alike(self, group: Group) -> list[SetAct] | Doubt:
        """As the last set, changed as said."""
        last = self._before
        if last is None and self._setting.last is not None and self._setting.last.exercise == self._id:
            last = self._setting.last
        load: Known = last.load if last is not None else unsaid(self._id, self._setting)
        for said in (group.load, group.load_change):
            if said is not None:
                if said.way == "added" and self._outside and said is group.load:
                    said = replace(said, way="delta")  # noqa: PLW2901
                if said.way == "plain" and not self._outside and load is not None and load.kind in ("assist", "added"):
                    said = replace(said, way=load.kind)  # type: ignore[arg-type]  # noqa: PLW2901
                load = moved(said, self._id, self._setting, load)
        if load is None:
            return Doubt("load")
        if not plausible(load, self._id, self._setting):
            return Doubt("load")
        if not group.reps:
            if last is None:
                return Doubt("reps")
            base = SetAct(self._id, load, last.reps, last.hold_s, last.distance_m)
            if group.reps_change:
                base = self._recounted(base, group.reps_change)
            acts = [base]
        else:
            self._hold_counts(group)
            built = self._built(group, load)
            if isinstance(built, Doubt):
                return built
            acts = built
        if last is not None:
            acts = [
                replace(act, load=load, side=act.side or last.side, tempo=last.tempo, range=last.range) for act in acts
            ]
        times = int(group.sets or 1) if not group.reps else 1
        return acts * max(1, times)

    def _recounted(self, base: SetAct, change: float) -> SetAct:
        if base.reps is not None:
            return replace(base, reps=max(0, int(base.reps + change)))
        if base.hold_s is not None:
            return replace(base, hold_s=max(0.0, base.hold_s + change))
        return base

    def _built(self, group: Group, load: Known) -> list[SetAct] | Doubt:
        sets = group.sets or 1.0
        if len(group.reps) > BOUNDS["most_message_sets"].value:
            return Doubt("numbers")
        if sets > BOUNDS["most_sets"].value or sets != int(sets) or sets < 1:
            return Doubt("numbers")
        out: list[SetAct] = []
        reps = group.reps * int(sets) if len(group.reps) == 1 or group.sets else group.reps
        for rep in reps:
            act = self._one(rep, load)
            if act is None:
                return Doubt("reps" if rep.n != int(rep.n) or rep.n > 1000 else "numbers")
            out.append(act)
            out.extend(replace(act, reps=int(part), drop=True) for part in rep.parts)
        if group.drop and out:
            out = [replace(act, drop=True) for act in out] if len(out) == 1 else out
        return out

    def _one(self, rep: Rep, load: Known) -> SetAct | None:
        side = rep.side if rep.side in ("left", "right") else None
        if rep.kind == "H":
            within = 0 < rep.n <= BOUNDS["most_hold_s"].value
            return SetAct(self._id, load, hold_s=rep.n, side=side) if within else None  # type: ignore[arg-type]
        if rep.kind == "D":
            return SetAct(self._id, load, distance_m=rep.n, side=side)  # type: ignore[arg-type]
        if rep.n != int(rep.n) or rep.n > self._most_reps(load):
            return None
        return SetAct(self._id, load, int(rep.n), side=side)  # type: ignore[arg-type]

    def _most_reps(self, load: Known) -> float:
        if load is None or load.kind in ("body", "band", "assist"):
            return BOUNDS["most_reps_body"].value
        if self._id == "kettlebell-swing":
            return BOUNDS["most_reps_body"].value
        return BOUNDS["most_reps_heavy" if self._row.kind == "compound" else "most_reps_light"].value


def replace_group(group: Group, **changes: object) -> Group:
    """A copy of a group with fields changed and the open ones closed."""
    copy = replace(group, **changes)  # type: ignore[arg-type]
    copy.lead = None
    copy.reps = list(copy.reps)
    return copy


def effort_behind(group: Group) -> float | None:
    """The RPE left behind an at-sign after settling, as repetitions in reserve."""
    if group.behind is None or group.behind > 10:
        return None
    return 10 - group.behind
