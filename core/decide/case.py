"""One question as the rules see it: lifter, exercise, aim, what is remembered, what can be loaded, whom to ask.

Everything a rule reads is here, computed once, and none of it can be changed by a rule. Knows no rule.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from datetime import date
from functools import cache
from math import isfinite, log, sqrt
from typing import Final

from core.decide.facts import Facts
from core.decide.kit import Shelf, at_most, hardness, load_at, shelf
from core.evidence.aches import loads_part
from core.evidence.body import Traits, body_mass, moved_kg, row_of, seconds_or_metres, traits_of
from core.evidence.exercises import Exercise
from core.evidence.numbers import value
from core.model.acts import SetAct
from core.model.lifter import Lifter
from core.model.quantities import BODY, Load, Range, Tempo
from core.model.target import Aim, Forecaster, TargetSet

Sets = tuple[TargetSet, ...]
Carries = Callable[[Sets], tuple[float, ...]]
"""Counts carried at the reserve asked for these sets, by an estimate that only rises with better results."""


_KNOWN: Final = 50
"""Sessions after which more of them make nothing surer."""


@cache
def spread_of(low: float, rir: float, sessions: int) -> float:
    """How far repetitions at a low end may lie from what is carried (sd): more in long sets, with much in reserve, and
    where few sessions are known. It hangs on what is asked alone, never on what was done.
    """
    table = [value(f"effort.sd_{left}") for left in range(6)]
    at = min(max(rir, 0.0), 5.0)
    effort = table[int(at)] + (at % 1.0) * (table[min(int(at) + 1, 5)] - table[int(at)])
    to_ln = low + rir - 1.0 + 1.0 / value("curve.k")
    doubts = (value("day.sd"), value("step.doubt"), value("step.doubt_early") / max(sessions, 1) ** 0.5)
    parts = (value("set.sd"), effort * value("effort.scale"), *(to_ln * doubt for doubt in doubts))
    return sqrt(sum(part**2 for part in parts))


@dataclass(frozen=True, slots=True)
class Case:
    """See the module's head. ``base`` is the last target in the aim's sets and reserve; empty without a history."""

    lifter: Lifter
    exercise: Exercise
    traits: Traits
    aim: Aim
    facts: Facts
    on: date
    today: tuple[SetAct, ...]
    base: Sets
    loads: Shelf
    ache: float | None
    ache_where: str
    carries: Carries
    forecast: Forecaster

    def fits(self, sets: Sets) -> bool:
        """Whether every set's low end is carried with something to spare."""
        pairs = zip(self.carries(sets), sets, strict=True)
        return all(have >= one.reps[0] + self.spare(one.reps[0]) for have, one in pairs)

    def spare(self, low: float) -> float:
        """What must be carried over that low end for a step, in repetitions (or seconds, or metres).

        More where more sets must all reach it; little after reaching its top again and again. It hangs on
        what was done only by that, so a better result never finds a step harder to earn.
        """
        scale = seconds_or_metres(self.exercise.id)
        margin = value("step.margin") + value("step.margin_sets") * log(self.aim.sets)
        if self.facts.topped >= value("topped.sessions"):
            margin = min(margin, value("step.margin_topped"))
        if self.facts.stood >= value("stood.sessions"):
            margin = min(margin, value("step.margin_stood"))
        if self.facts.over >= value("over.sessions"):
            margin = min(margin, value("step.margin_over"))
        return scale * (margin * self._sd(low) - value("effort.half"))

    def _sd(self, low: float) -> float:
        return spread_of(low / seconds_or_metres(self.exercise.id), self.aim.rir, min(self.facts.sessions, _KNOWN))

    def far_short(self, sets: Sets) -> bool:
        """Whether what is carried falls so far short of a low end that the same again is all but lost."""
        scale = seconds_or_metres(self.exercise.id)
        most = value("ease.short") * scale
        pairs = zip(self.carries(sets), sets, strict=True)
        # What was missed was missed: that little is known yet makes it no less so.
        return any(
            have < one.reps[0] - most * spread_of(one.reps[0] / scale, self.aim.rir, _KNOWN) for have, one in pairs
        )

    @property
    def days_off(self) -> int:
        """Days since the last session; 0 without one."""
        return 0 if self.facts.on is None else max((self.on - self.facts.on).days, 0)


def case_of(
    lifter: Lifter, exercise: str, aim: Aim, facts: Facts, on: date, today: tuple[SetAct, ...], carries: Carries,
    forecast: Forecaster,
) -> Case:  # fmt: skip
    """The case of a question. ``aim`` has gone through ``sane_aim``; ``facts`` may be empty."""
    row = row_of(exercise)
    like = _like(facts, row)
    loads = shelf(lifter.kit, exercise, like, lifter.unit)
    level, where = ache_of(lifter, row, on)
    return Case(
        lifter=lifter,
        exercise=row,
        traits=traits_of(exercise),
        aim=aim,
        facts=facts,
        on=on,
        today=today,
        base=_base(facts, aim, row, loads, lifter),
        loads=loads,
        ache=level,
        ache_where=where,
        carries=carries,
        forecast=forecast,
    )


def _like(facts: Facts, row: Exercise) -> Load:
    """A load of the family in use, to ask the kit with."""
    if facts.last is not None and facts.last.sets and facts.last.sets[0].load is not None:
        return facts.last.sets[0].load
    return BODY if row.load_kind == "body" else Load(row.load_kind, None)


def _base(facts: Facts, aim: Aim, row: Exercise, loads: Shelf, lifter: Lifter) -> Sets:
    """The last target with the aim's number of sets and reserve, every load one that can be made and allowed now.

    A shorter rest that cost too much is taken back here, whatever else is decided.
    """
    if facts.last is None or not facts.last.sets:
        return ()
    given = facts.last.sets
    out = []
    for position in range(aim.sets):
        one = given[min(position, len(given) - 1)]
        load = settled(one.load, loads, lifter, facts)
        if load is None:
            return ()
        low = one.reps[0]
        high = max(low, one.reps[1], aim.reps[1])
        asked = replace(one, load=load, reps=(low, high), rir=aim.rir)
        rest = one.rest_s if one.rest_s is not None else aim.rest_s
        if facts.give_back is not None:
            rest = max(rest or 0.0, facts.give_back)
        out.append(bounded(replace(asked, tempo=one.tempo or aim.tempo, rest_s=rest), aim, row))
    return tuple(out)


def bounded(one: TargetSet, aim: Aim, row: Exercise) -> TargetSet:
    """One set inside the table's limits of repetitions, tempo, rest and range."""
    cap = count_cap(row)
    low = int(min(max(one.reps[0], 1), cap))
    span, most = one.range, traits_of(row.id).extra_cm
    if span is not None and span.grade == "extra":
        cm = span.cm if span.cm is not None else value("range.rung_cm")
        span = Range("extra", min(cm, most)) if most > 0 else None
    return replace(
        one,
        reps=(low, int(min(max(one.reps[1], low), cap))),
        tempo=sane_tempo(one.tempo, aim.tempo),
        rest_s=sane_rest(one.rest_s, row),
        range=span,
    )


def settled(load: Load | None, loads: Shelf, lifter: Lifter, facts: Facts) -> Load | None:
    """The load itself, or the nearest one that can be made and is not heavier; None if there is none."""
    if load is None:
        return None
    hard = hardness(load)
    if hard is None:
        known = lifter.kit is None or load.label is None or load.label in lifter.kit.bands or not lifter.kit.bands
        return load if known else Load(load.kind, None, lifter.kit.bands[0] if lifter.kit else None)
    cap = cap_of(lifter, facts)
    found = at_most(loads, hard if cap is None else min(hard, cap))
    return None if found is None else (load if abs(found - hard) < 0.001 else load_at(found, load))


def cap_of(lifter: Lifter, facts: Facts) -> float | None:
    """The hardest load that ``no_heavier`` leaves: the heaviest lifted well, else the lightest lifted at all."""
    known = facts.well if facts.well is not None else facts.least
    return hardness(known) if lifter.no_heavier and known is not None else None


def ache_of(lifter: Lifter, row: Exercise, on: date) -> tuple[float | None, str]:
    """The worst ache of a part that the exercise loads, by the newest word on each part; None without one.

    An unsaid level counts as 1: nothing heavier or deeper.
    """
    newest: dict[tuple[str, str | None], tuple[date, float]] = {}
    for ache in lifter.aches:
        level = 1.0 if ache.level is None else ache.level
        key, now = (ache.where, ache.side), (ache.on, level)
        newest[key] = max(newest.get(key, now), now)
    worst: tuple[float | None, str] = (None, "")
    for (where, _side), (said, level) in sorted(newest.items(), key=str):
        fresh = (on - said).days <= value("ache.stale_days")
        if level > 0 and fresh and loads_part(row, where) and (worst[0] is None or level > worst[0]):
            worst = (level, where)
    return worst


def step_share(case: Case, now: Load, new: Load) -> float:
    """How much a step in load is, as a share: of the load itself, or of the mass moved where the body is the load."""
    first, second = hardness(now), hardness(new)
    if first is None or second is None:
        return 0.0
    if now.kind in ("total", "per_hand") and first > 0:
        return second / first - 1.0
    moved = moved_kg(now, case.exercise.id, body_mass(case.lifter.bodyweight_kg)) or 1.0
    return (second - first) / moved


def sane_tempo(tempo: Tempo | None, aimed: Tempo | None) -> Tempo | None:
    """A tempo inside the table's limits; an explosive lift (0) only where the aim has it."""
    if tempo is None:
        return None
    low, high = value("tempo.part_min_s"), value("tempo.part_max_s")
    down, bottom, up, top = (max(part, 0.0) if part is not None and isfinite(part) else None for part in tempo)
    explosive = up == 0 and aimed is not None and aimed[2] == 0
    down = None if down is None else min(max(down, low), high)
    up = up if up is None or explosive else min(max(up, low), high)
    room = value("tempo.rep_max_s") - (down or 0.0) - (up or 0.0)
    bottom = None if bottom is None else min(bottom, room)
    top = None if top is None else min(top, max(room - (bottom or 0.0), 0.0))
    return (down, bottom, up, top)


def rest_floor(row: Exercise) -> float:
    """The least rest in seconds."""
    return value(f"rest.floor_{row.kind}_s")


def sane_rest(rest_s: float | None, row: Exercise) -> float | None:
    """A rest inside the table's limits."""
    if rest_s is None or not isfinite(rest_s):
        return None
    return min(max(rest_s, rest_floor(row)), max(value("rest.ceiling_s"), rest_floor(row)))


def count_cap(row: Exercise) -> int:
    """The most repetitions (or seconds, or metres) that are asked of a set."""
    return int(value("hold.cap_s") if row.pattern in ("hold", "carry") else value("reps.cap"))


def sane_aim(aim: Aim, exercise: str) -> Aim:
    """The aim inside the table's limits, with a rest and with low before high."""
    row = row_of(exercise)
    cap = count_cap(row)
    low, high = sorted(int(min(max(count, 1), cap)) for count in aim.reps)
    rir = aim.rir if 0 <= aim.rir <= 10 else 2.0
    rest = aim.rest_s if aim.rest_s is not None else value(f"rest.default_{row.kind}_s")
    return replace(
        aim,
        sets=min(max(int(aim.sets), 1), 20),
        reps=(low, high),
        rir=rir,
        tempo=sane_tempo(aim.tempo, aim.tempo),
        rest_s=sane_rest(rest, row),
    )
