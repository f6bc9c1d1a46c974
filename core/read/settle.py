"""Groups on a known exercise into bare sets: what grammar left open is decided by weighing what the exercise, the plan,
the last set and the usual load make likely; what even they leave open is a doubt.

Knows no remarks; attach.py adds those.
"""

from dataclasses import replace
from typing import Final

from core.evidence.exercises import EXERCISES
from core.evidence.plausible import BOUNDS
from core.model.acts import SetAct
from core.model.reading import Setting
from core.read.atoms import LoadSaid, LoadWay
from core.read.building import built, recounted
from core.read.carried import as_planned, turn
from core.read.doubts import Doubt, Settled
from core.read.groups import Group, Parsed, Rep
from core.read.likely import Likely
from core.read.loads import Known, moved, plausible, unsaid
from core.read.remark import TOP_EFFORT

LIGHTEST_ANNOUNCED: Final = 12.0
"""A lone number above this, on the body with a load announced, is that load (common practice, no source)."""


class Settler:
    """Decides the groups of one stretch, each in the light of those before it."""

    def __init__(self, parsed: Parsed, exercise: str, setting: Setting) -> None:
        self._parsed = parsed
        self._id = exercise
        self._row = EXERCISES[exercise]
        self._likely = Likely(parsed, exercise, setting)
        self._setting = setting

    def settle(self) -> Settled:
        """All groups decided, stopping at the first doubt."""
        out = Settled([])
        turn(self._parsed, self._id, self._setting)
        total = 0
        for n, group in enumerate(self._parsed.groups):
            done = [] if self._announces(n, group) else self._group(n, group)
            if isinstance(done, Doubt):
                out.doubt = done
                return out
            out.sets.append(done)
            total += len(done)
            if total > BOUNDS["most_message_sets"].value:
                out.doubt = Doubt("numbers")
                return out
            if done:
                self._likely.before = done[-1]
        return out

    def _announces(self, n: int, group: Group) -> bool:
        """'up 5, 85x5': a change of load that the set behind it carries out, or one that changes nothing known."""
        told = self._parsed.groups[n + 1 : n + 2]
        changes = group.like and not (group.reps or group.sets) and (group.load_change or group.load) is not None
        if not changes or not told or told[0].like or not told[0].reps:
            return False
        then = told[0].load.number if told[0].load is not None else told[0].lead or told[0].behind
        last = self._likely.before or self._setting.last
        if then is None or last is None or last.exercise != self._id or last.load is None or last.load.kg is None:
            return then is not None
        changed = self._changed_load(group, last)
        in_kg = told[0].load is not None and told[0].load.in_kg
        after = moved(LoadSaid("plain", then, in_kg=in_kg), self._id, self._setting, None)
        return changed is not None and after is not None and changed.kg is not None and changed.kg == after.kg

    # one group

    def _group(self, n: int, group: Group) -> list[SetAct] | Doubt:
        if group.planned:
            return as_planned(group, self._row, self._setting)
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
            return self._no_reps(n, load)
        return built(group, load, self._row)

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
            loaded = group.load is not None or self._likely.given is not None
            for rep in plurals:
                if loaded and self._row.pattern == "carry":
                    rep.kind = "H"
        if self._row.pattern == "carry" and group.bare and len(group.reps) > 1 and group.reps[0].plural:
            group.load = LoadSaid("plain", group.reps.pop(0).n, plural=True)
            group.bare = False

    def _lead(self, group: Group) -> Doubt | None:
        """a x b: a load and repetitions, or a count of sets."""
        lead, reps = float(group.lead or 0.0), group.reps[0].n
        if self._likely.backwards(group, lead):
            group.load, group.lead = LoadSaid("plain", reps), None
            group.reps[0].n = lead
            return None
        as_load, as_sets = self._likely.can_be_load(lead), self._likely.can_be_sets(lead)
        if group.sets is not None and group.load is None and as_load:
            group.load, group.lead = LoadSaid("plain", lead, plural=group.lead_plural), None
            return None
        if group.load is not None or (group.behind is not None and self._behind_is_load(group, lead)):
            as_load = False
            as_sets = lead <= BOUNDS["most_sets"].value
        elif group.reps[0].kind != "R":
            as_load = as_load and not as_sets
        told = group.load is not None or group.behind is not None
        choice = "sets" if told and not as_load else self._likely.weigh(lead, reps, as_load=as_load, as_sets=as_sets)
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

    def _two_ways(self, group: Group, lead: float) -> Doubt:
        with_load = replace_group(group, load=LoadSaid("plain", lead), sets=None)
        with_sets = replace_group(group, load=None, sets=lead)
        out = Doubt("numbers")
        for one in (with_load, with_sets):
            load = self._load(one)
            if not isinstance(load, Doubt):
                acts = built(one, load, self._row)
                if not isinstance(acts, Doubt):
                    out.readings.append(("", acts))
        return out

    def _bare(self, n: int, group: Group) -> Doubt | None:
        """A list of numbers: the first is the load, or all are repetitions."""
        first = group.reps[0]
        if first.kind != "R":
            return None
        rest = [rep.n for rep in group.reps[1:]]
        if not self._likely.outside:
            self._bare_on_the_body(group, first, rest)
            return None
        carried = n > 0 and self._likely.before is not None and self._likely.before.load is not None
        if not rest:
            return self._single(group, first, carried=carried)
        if self._likely.first_as_load(group, first, rest, carried=carried):
            self._first_is_load(group)
            return None
        if carried or self._likely.given is not None or group.behind is not None:
            return None
        return self._no_load(group, [first.n, *rest])

    def _bare_on_the_body(self, group: Group, first: Rep, rest: list[float]) -> None:
        """On the body alone a list is repetitions, unless a load was announced (weighted, assisted, the 10s)."""
        announced = self._parsed.weighted or self._parsed.assisted or first.plural
        more = bool(rest) or ((group.sets is not None or group.behind is not None) and first.n > LIGHTEST_ANNOUNCED)
        if announced and more and self._row.load_kind != "band":
            self._first_is_load(group)

    def _first_is_load(self, group: Group) -> None:
        first = group.reps.pop(0)
        way: LoadWay = "assist" if self._parsed.assisted and not self._likely.outside else "plain"
        group.load = LoadSaid(way, first.n, plural=first.plural)
        group.gaps = group.gaps[1:]
        if not group.reps and group.sets is not None:
            group.reps, group.sets = [Rep(group.sets)], None

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
            if heavy and self._likely.near(number, 0.6):
                group.reps.clear()
                group.load = LoadSaid("plain", number)
            return None
        if self._likely.given is not None:
            if heavy and (self._likely.near(number, 0.6) or number != int(number)):
                group.reps.clear()
                group.load = LoadSaid("plain", number)
            return None
        if heavy and self._likely.can_be_load(number):
            group.reps.clear()
            group.load = LoadSaid("plain", number)
            return None
        return Doubt("load")

    def _no_load(self, group: Group, numbers: list[float]) -> Doubt:
        if len(numbers) == 2 and numbers[0] == numbers[1]:
            return self._two_ways(replace_group(group, reps=[group.reps[-1]]), numbers[0])
        return Doubt("load")

    def _behind_is_load(self, group: Group, lead: float) -> bool:
        """a x b @ c: c is the load unless a is plainly the load already, or c can only be an effort."""
        behind = float(group.behind or 0.0)
        if behind > 10 or not (behind * 2).is_integer():
            return True
        if not self._likely.can_be_load(behind):
            return False
        if self._likely.usual() is not None:
            return self._likely.near(behind, 0.6 if self._likely.before is None else None) and not self._likely.near(
                lead
            )
        return self._likely.can_be_sets(lead) and lead < 6

    def _behind(self, group: Group) -> None:
        """The number behind an at-sign: the load where none is known, else RPE."""
        behind = float(group.behind or 0.0)
        known = group.load is not None
        if behind <= TOP_EFFORT and (known or not self._behind_is_load(group, group.sets or 1.0)):
            return
        if not known:
            way: LoadWay = "assist" if self._parsed.assisted and not self._likely.outside else "plain"
            group.load = LoadSaid(way, behind)
        group.behind = None

    def _load(self, group: Group) -> Known | Doubt:
        before = self._likely.before.load if self._likely.before is not None else None
        if group.load is None:
            if before is not None and group.inherits:
                return before
            load = unsaid(self._id, self._setting)
            return Doubt("load") if load is None else load
        said = group.load
        if said.way == "plain" and self._parsed.assisted and not self._likely.outside:
            said = replace(said, way="assist")
        reference = before if before is not None else self._likely.given
        load = moved(said, self._id, self._setting, reference)
        if load is None:
            return Doubt("load")
        if not plausible(load, self._id, self._setting):
            return Doubt("load")
        return load

    def _no_reps(self, n: int, load: Known) -> list[SetAct] | Doubt:
        """A load alone: the first repetition was missed, or the missed one was named; else it must be asked."""
        for placed in self._parsed.placed:
            if placed.remark.what == "failed" and placed.after in (n, n - 1, -1):
                missed = placed.remark.value
                reps = int(missed) - 1 if isinstance(missed, float) and missed >= 1 else 0
                placed.after = n
                return [SetAct(self._id, load, reps)]
        said = self._parsed.groups[n].load
        if said is not None and said.way == "plain" and not said.in_kg and said.number and not self._likely.outside:
            return built(Group(0, 0, reps=[Rep(said.number)]), unsaid(self._id, self._setting), self._row)
        return Doubt("reps")

    def _alike(self, group: Group) -> list[SetAct] | Doubt:
        """As the last set, changed as said."""
        last = self._likely.before
        if last is None and self._setting.last is not None and self._setting.last.exercise == self._id:
            last = self._setting.last
        if self._row.pattern == "hold":
            self._hold_counts(group)
        if group.behind is not None and group.load is None and self._likely.near(group.behind):
            group.load, group.behind = LoadSaid("plain", group.behind), None
        load = self._changed_load(group, last)
        if load is None or not plausible(load, self._id, self._setting):
            return Doubt("load")
        if group.reps:
            self._hold_counts(group)
            acts = built(group, load, self._row)
            if isinstance(acts, Doubt):
                return acts
        elif last is None:
            return Doubt("reps")
        else:
            base = SetAct(self._id, load, last.reps, last.hold_s, last.distance_m)
            acts = [recounted(base, group.reps_change)] * max(1, int(group.sets or 1))
        if last is None:
            return acts
        return [replace(act, load=load, side=act.side or last.side, tempo=last.tempo, range=last.range) for act in acts]

    def _changed_load(self, group: Group, last: SetAct | None) -> Known:
        """The last set's load with the changes said; on the body, a bare number keeps its way (added or taken off)."""
        load: Known = last.load if last is not None else unsaid(self._id, self._setting)
        if group.load is not None:
            way: LoadWay = group.load.way
            if way == "added" and self._likely.outside:
                way = "delta"
            elif way == "plain" and not self._likely.outside and load is not None and load.kind == "assist":
                way = "assist"
            load = moved(replace(group.load, way=way), self._id, self._setting, load)
        if group.load_change is not None:
            load = moved(group.load_change, self._id, self._setting, load)
        return load


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
