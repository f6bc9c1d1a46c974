"""One set as evidence: what it says of strength, and how loudly. Turns acts into numbers; weighs nothing.

A set is a point (so many repetitions with so many left), or a lower bound (at least so many). What was asked settles
what was left unsaid: stopping inside the range means the reserve asked, stopping short of it means failure, stopping
at its top says only "at least".
"""

from dataclasses import dataclass, replace
from math import isfinite, log

from core.estimate.people import rest_loss, usual_rest
from core.evidence.body import moved_kg, seconds_or_metres
from core.evidence.numbers import value
from core.model.acts import SetAct
from core.model.quantities import Range, Tempo
from core.model.target import Aim, Target, TargetSet
from core.model.working import count_of, working_sets


@dataclass(frozen=True, slots=True)
class Asked:
    """What was asked of one set: low and high end (repetitions), reserve, rest, tempo."""

    low: float
    high: float
    rir: float
    rest_s: float
    tempo: Tempo | None


@dataclass(frozen=True, slots=True)
class Sighting:
    """One set as evidence. Counts are repetitions (holds and carries turned into them).

    ``tired`` is the loss summed over the sets before, for a person of middle tiring; ``slow`` is ln of the time a
    repetition takes over the usual one; ``rungs`` is range past the usual (-1 for a part of it); ``extra_sd`` is doubt
    in ln strength beside the table's (a band of unknown pull, a part of the range).
    """

    mass: float
    reps: float
    rir: float
    bound: bool
    sd: float
    said: bool
    tired: float
    slow: float
    rungs: float
    extra_sd: float
    near: bool
    form: str | None


def effort_sd(rir: float) -> float:
    """The table's error of a reserve, in repetitions, between its rows in a straight line."""
    at = min(max(rir, 0.0), 5.0)
    low = min(int(at), 4)
    first, second = value(f"effort.sd_{low}"), value(f"effort.sd_{low + 1}")
    return first + (at - low) * (second - first)


def seconds_a_rep(tempo: Tempo | None) -> float:
    """Seconds of one whole repetition; unsaid parts are the usual ones, an explosive lift takes the least."""
    if tempo is None:
        return value("tempo.reference_s")
    down, bottom, up, top = tempo
    lowering = value("tempo.default_down_s") if down is None else max(down, value("tempo.part_min_s"))
    lifting = value("tempo.default_up_s") if up is None else max(up, value("tempo.part_min_s"))
    return min(lowering + lifting + (bottom or 0.0) + (top or 0.0), 60.0)


def slow_of(tempo: Tempo | None) -> float:
    """ln of the time of a repetition over the usual one."""
    return log(max(seconds_a_rep(tempo), 0.5) / value("tempo.reference_s"))


def rungs_of(span: Range | None) -> float:
    """Range as steps past the usual: 0 for full or unsaid, one a rung for more, -1 for a part."""
    if span is None or span.grade in (None, "full"):
        return 0.0
    if span.grade == "partial":
        return -1.0
    cm = span.cm if span.cm is not None and isfinite(span.cm) else value("range.rung_cm")
    return min(max(cm, 0.0), 30.0) / value("range.rung_cm")


def tires(reserve: float) -> float:
    """How much of a set's full tiring is left when it was stopped with so much in reserve."""
    return 1.0 / (1.0 + max(reserve, 0.0) / value("rest.reserve_half"))


def asked_of(position: int, exercise: str, aim: Aim, target: Target | None) -> Asked:
    """What was asked of the set at that position, from the target in force, else the aim."""
    wanted: TargetSet | None = None
    if target is not None and target.sets:
        wanted = target.sets[min(position, len(target.sets) - 1)]
    reps = wanted.reps if wanted else aim.reps
    rir = wanted.rir if wanted and wanted.rir is not None else aim.rir
    rest = wanted.rest_s if wanted and wanted.rest_s is not None else aim.rest_s
    return Asked(
        low=float(reps[0]),
        high=float(reps[1]),
        rir=rir,
        rest_s=usual_rest(exercise) if rest is None else rest,
        tempo=wanted.tempo if wanted and wanted.tempo is not None else aim.tempo,
    )


def _effort(act: SetAct, count: float, asked: Asked) -> tuple[float, bool, float, bool]:
    """Reserve, whether it is only a bound, its error, whether it was said."""
    if act.failed:
        return 0.0, False, value("effort.failure_sd"), True
    if act.rir is not None:
        top = value("effort.informative_max")
        return min(act.rir, top), act.rir > top, effort_sd(act.rir), True
    if count < asked.low:
        # Some go on until nothing is left, some stop short at the reserve asked: in between, and wide.
        left = asked.rir * value("effort.short_share")
        return left, False, (effort_sd(left) ** 2 + value("effort.unsaid_sd") ** 2) ** 0.5, False
    if count >= asked.high:
        return asked.rir, True, effort_sd(asked.rir), False
    if count < asked.low + 1:
        # Many push on to the low end when the reserve is gone, so less than asked may be left.
        left = asked.rir * value("effort.at_low_share")
        return left, False, (effort_sd(left) ** 2 + value("effort.unsaid_sd") ** 2) ** 0.5, False
    return asked.rir, False, (effort_sd(asked.rir) ** 2 + value("effort.unsaid_sd") ** 2) ** 0.5, False


@dataclass(frozen=True, slots=True)
class Day:
    """What the evidence of a day hangs on, the sets apart."""

    exercise: str
    bodyweight_kg: float
    aim: Aim
    target: Target | None = None


def sightings(sets: tuple[SetAct, ...], day: Day) -> tuple[tuple[Sighting, ...], float, int]:
    """The day's working sets as evidence, the loss they leave for the next set, and how many they are."""
    scale = seconds_or_metres(day.exercise)
    tired, found = 0.0, []
    work = working_sets(sets)
    for position, act in enumerate(work):
        asked = asked_of(position, day.exercise, day.aim, day.target)
        rest = asked.rest_s if act.rest_s is None else act.rest_s
        seen = _one(act, asked, day, scale, tired)
        if seen is not None:
            found.append(seen)
        tired += rest_loss(day.exercise, rest) * tires(seen.rir if seen else asked.rir)
    return tuple(found), tired, len(work)


def _one(act: SetAct, asked: Asked, day: Day, scale: float, tired: float) -> Sighting | None:
    """One set as evidence, or None when it says nothing of strength."""
    mass = moved_kg(act.load, day.exercise, day.bodyweight_kg)
    count = count_of(act)
    if mass is None or count is None or not isfinite(count) or not 0 <= count < 10000:
        return None
    rir, bound, sd, said = _effort(act, count, asked)
    reps = min(count / scale, 200.0)
    rungs = rungs_of(act.range)
    unknown = act.load is None or act.load.kg is None
    return Sighting(
        mass=mass,
        reps=reps,
        rir=rir,
        bound=bound or reps > 60.0,
        sd=sd,
        said=said,
        tired=tired,
        slow=slow_of(act.tempo if act.tempo is not None else asked.tempo),
        rungs=rungs,
        extra_sd=(0.15 if unknown and day_band(act) else 0.0) + (value("range.partial_sd") if rungs < 0 else 0.0),
        near=rir <= value("form.near_reserve"),
        form=act.form,
    )


def load_choice(first: Sighting, day: Day) -> Sighting:
    """What the first load ever tried says before it is lifted: somebody thought that it suits the aim."""
    asked = asked_of(0, day.exercise, day.aim, day.target)
    scale = seconds_or_metres(day.exercise)
    middle = (asked.low + asked.high) / 2.0 / scale + asked.rir
    # A wide range suits many loads, so it says little of the one chosen.
    sd = max(value("choice.sd") * middle, (asked.high - asked.low) / scale / 2.0)
    return replace(first, reps=middle, rir=0.0, bound=False, sd=sd, said=False, tired=0.0, form=None)


def day_band(act: SetAct) -> bool:
    """Whether a band of unknown pull took part."""
    return act.load is not None and act.load.kind in ("band", "assist") and act.load.kg is None


def as_forecast(wanted: TargetSet, day: Day, spread_of: Aim) -> Sighting | None:
    """A set to do in the shape of evidence, with the reserve asked; None when its mass is not known."""
    mass = moved_kg(wanted.load, day.exercise, day.bodyweight_kg)
    if mass is None:
        return None
    rir = spread_of.rir if wanted.rir is None else wanted.rir
    tempo = wanted.tempo if wanted.tempo is not None else spread_of.tempo
    return Sighting(
        mass=mass,
        reps=0.0,
        rir=rir,
        bound=False,
        sd=effort_sd(rir),
        said=True,
        tired=0.0,
        slow=slow_of(tempo),
        rungs=rungs_of(wanted.range),
        extra_sd=0.0,
        near=False,
        form=None,
    )
