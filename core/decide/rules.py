"""The rules, in the order in which they are asked: the first that speaks decides, and its id goes with the target.

Each row says its rule in a plain sentence, names its sources and the numbers it hangs on, and gives the words for the
lifter. The page of rules is made from these rows. Limits come after, in limits.py.
"""

from collections.abc import Callable
from dataclasses import dataclass, replace
from math import floor
from typing import Final

from core.decide import ways
from core.decide.case import Case, Sets
from core.decide.kit import hardness, lighter, load_at
from core.decide.limits import Choice
from core.evidence.layoff import after
from core.evidence.numbers import value
from core.model.quantities import BODY, Load, Way
from core.model.target import TargetSet


@dataclass(frozen=True, slots=True)
class Rule:
    """One row. ``when`` asks, ``then`` answers (None: not after all, ask on), ``say`` is told with {slots}."""

    id: str
    sentence: str
    sources: tuple[str, ...]
    numbers: tuple[str, ...]
    when: Callable[[Case], bool]
    then: Callable[[Case], Choice | None]
    say: str
    caution: str = ""


_CARE: Final = (
    "This is not medical advice: if the {where} hurts again or does not settle, see a physician or a physiotherapist."
)


# --- when ---------------------------------------------------------------------------------------------------------
def _aches(key: str) -> Callable[[Case], bool]:
    return lambda case: case.ache is not None and case.ache >= value(key)


def _cannot_load(case: Case) -> bool:
    return not case.loads or (case.facts.last is not None and not case.base and not _load_unknown(case))


def _load_unknown(case: Case) -> bool:
    last = case.facts.last
    return last is not None and not case.base and any(one.load is None for one in last.sets)


def _laid_off(case: Case) -> bool:
    return after(case.days_off).load_factor < 1.0


def _form_said(case: Case) -> bool:
    today = next((act.form for act in reversed(case.today) if act.form is not None), None)
    return (today or case.facts.form) in ("fair", "loose")


def _too_much(case: Case) -> bool:
    """By what is carried first, which only rises with a better result; by the chance as well, as promised."""
    if case.facts.met or not case.base or not case.far_short(case.base):
        return False
    return case.forecast(case.base).chance < value("ease.chance")


# --- then ---------------------------------------------------------------------------------------------------------
def _stop(case: Case) -> Choice:  # noqa: ARG001 - a row's answer is given the case whether it needs it or not
    return Choice("stop", ())


def first_sets(case: Case) -> Sets:
    """The aim at the heaviest load at which the repetitions are likely; how light it is does not make form cleaner."""
    like = BODY if case.exercise.load_kind == "body" else Load(case.exercise.load_kind, None)
    done = [act.load for act in case.today if act.load is not None and hardness(act.load) is not None]
    if like.kind == "band" or not case.loads:
        bands = case.lifter.kit.bands if case.lifter.kit is not None else ()
        return _at(case, done[-1] if done else Load("band", None, bands[0] if bands else None))
    options = case.loads
    if done:
        now = hardness(done[-1]) or 0.0
        most, least = now * (1.0 + value("load.step_max")), now * (1.0 - value("first.step_down"))
        options = tuple(one for one in options if one <= most + 0.01) or options[:1]
        if like.kind in ("total", "per_hand"):
            options = tuple(one for one in options if one >= least - 0.01) or options[-1:]
    low, high = 0, len(options) - 1
    while low < high:
        middle = (low + high + 1) // 2
        if case.forecast(_at(case, load_at(options[middle], like))).reached >= value("first.chance"):
            low = middle
        else:
            high = middle - 1
    return _at(case, load_at(options[low], like))


def _at(case: Case, load: Load) -> Sets:
    aim = case.aim
    return (TargetSet(load, aim.reps, aim.rir, aim.tempo, aim.rest_s, None),) * aim.sets


def _first(case: Case) -> Choice:
    return Choice("first", first_sets(case))


def _restart(case: Case) -> Choice:
    return Choice("hold", first_sets(case))


def _ache_ease(case: Case) -> Choice:
    base, last = case.base or first_sets(case), case.facts.last
    # What was eased the last time is what still aches: a little less again, or a long ache would end at nothing.
    again = last is not None and last.way == "ease"
    factor = value("ache.again_factor" if again else "ache.load_factor")
    sets = ways.eased(case, base, factor, value("ache.set_factor"), case.aim.rir)
    if again and _under_floor(case, sets):
        low = max(case.aim.reps[0] // 2, 1)
        sets = tuple(
            replace(one, reps=(min(max(one.reps[0] - 1, low), one.reps[0]), one.reps[1])) for one in base[: len(sets)]
        )
    return Choice("ease", sets)


def _under_floor(case: Case, sets: Sets) -> bool:
    """Whether the load falls under the share of what was lifted well at which an ache's easing stops."""
    first, well = sets[0].load if sets else None, case.facts.well
    if first is None or well is None or first.kind not in ("total", "per_hand") or well.kind != first.kind:
        return False
    return (hardness(first) or 0.0) < value("ache.floor") * (hardness(well) or 0.0)


def _return(case: Case) -> Choice:
    row = after(case.days_off)
    return Choice("ease", ways.eased(case, case.base, row.load_factor, row.set_factor, row.min_rir))


def _easier_week(case: Case) -> Choice:
    rir = case.aim.rir + value("easier.reserve")
    return Choice("ease", ways.eased(case, case.base, value("easier.load_factor"), value("easier.set_factor"), rir))


def _after_misses(case: Case) -> Choice:
    return Choice("ease", _carried_less(case) or _table_less(case))


def _table_less(case: Case) -> Sets:
    return ways.eased(case, case.base, value("misses.load_factor"), 1.0, case.aim.rir)


def _carried_less(case: Case) -> Sets | None:
    """The nearest that is less and carried: lower low ends at the same load, else a lighter load, else, where the kit
    has none that is light enough, low ends under the coach's range; None if not even that.
    """
    floors = [min(case.aim.reps[0], one.reps[0]) for one in case.base]
    return _lower(case, floors) or _lighter(case, floors) or _lower(case, [1] * len(floors))


def _lower(case: Case, floors: list[int]) -> Sets | None:
    """The same load with the low ends that are carried, none under its floor and at least one of them lower."""
    have = case.carries(case.base)
    lows = [
        max(least, min(one.reps[0], floor(at - case.spare(one.reps[0]))))
        for least, at, one in zip(floors, have, case.base, strict=True)
    ]
    lower = tuple(replace(one, reps=(at, one.reps[1])) for at, one in zip(lows, case.base, strict=True))
    less = any(at < one.reps[0] for at, one in zip(lows, case.base, strict=True))
    return lower if less and (case.fits(lower) or set(lows) == {1}) else None


def _lighter(case: Case, floors: list[int]) -> Sets | None:
    """The heaviest lighter load that carries the floors."""
    first = case.base[0].load
    hard = hardness(first) if first is not None else None
    if first is None or hard is None:
        return None
    for candidate in lighter(case.loads, hard)[:12]:
        new = load_at(candidate, first)
        sets = tuple(
            replace(one, load=new, reps=(least, one.reps[1])) for least, one in zip(floors, case.base, strict=True)
        )
        if case.fits(sets):
            return sets
    return None


def _eased_to_carried(case: Case) -> Choice | None:
    less = _carried_less(case)
    return None if less is None else Choice("ease", less)


def _same(case: Case) -> Choice:
    return Choice("hold", case.base)


def _form(case: Case) -> Choice:
    return Choice("form", case.base)


def _step(way: Way, step: ways.Step) -> Callable[[Case], Choice | None]:
    def then(case: Case) -> Choice | None:
        sets = step(case)
        return None if sets is None else Choice(way, sets)

    return then


def _never(case: Case) -> bool:  # noqa: ARG001 - see _stop
    return False


def _always(case: Case) -> bool:  # noqa: ARG001 - see _stop
    return True


# fmt: off
BEFORE: Final = (
    Rule("ache-stop", "An ache of 6 or more in a part that the exercise loads: not today.",
         ("silbernagel-2007",), ("ache.stop_level",), _aches("ache.stop_level"), _stop,
         "Your {where} is at {level} of 10, so this one waits.", _CARE),
    Rule("kit", "With a kit that cannot load the exercise as lightly as needed, it waits.",
         ("practice",), (), _cannot_load, _stop,
         "Nothing in your kit makes a load for this one."),
    Rule("ache-ease", "An ache of 4 or 5 in a part that the exercise loads: less load, fewer sets.",
         ("silbernagel-2007", "derived"),
         ("ache.ease_level", "ache.load_factor", "ache.again_factor", "ache.floor", "ache.set_factor"),
         _aches("ache.ease_level"), _ache_ease,
         "Your {where} is at {level} of 10, so this is lighter and shorter.", _CARE),
    Rule("first-next", "With no history but today's sets, the rest of the day goes on from them, at most a step up.",
         ("acsm-2009", "derived"), ("first.chance", "load.step_max", "first.step_down"),
         lambda case: case.facts.last is None and bool(case.today), _first,
         "Still finding your load: {load} next, and say how it felt."),
    Rule("first", "Without a history, a starting load that is likely met is chosen, rather light than heavy.",
         ("acsm-2009", "derived"), ("first.chance",), lambda case: case.facts.last is None, _first,
         "First time here, so start at {load} and say how it felt."),
    Rule("load-unknown", "Where no load was told, a starting load is chosen as if for the first time.",
         ("derived",), ("first.chance",), _load_unknown, _restart,
         "Your last load is not known, so start at {load} and say how it felt."),
    Rule("lay-off", "After two weeks or more without the exercise, less, by the return table.",
         ("bosquet-2013", "mcmaster-2013", "caterisano-2019", "derived"), (), _laid_off, _return,
         "{weeks} weeks since the last time, so come back easy: {load}."),
    Rule("easier-week", "In an easier week of the coach's plan: less load, fewer sets, more left; then on from before.",
         ("rogerson-2024", "derived"), ("easier.load_factor", "easier.set_factor", "easier.reserve"),
         lambda case: case.aim.easier and bool(case.base), _easier_week,
         "Your plan's easier week: {load}, with less to do and more left over."),
    Rule("three-misses", "The same target missed three times is eased.",
         ("rogerson-2024", "derived"), ("misses.allowed", "misses.load_factor"),
         lambda case: case.facts.misses >= value("misses.allowed"), _after_misses,
         "Missed {misses} times, so step back and build again."),
    Rule("form-first", "Form last said not clean: the same again, done cleanly.",
         ("derived", "practice"), (), _form_said, _form,
         "The same again, every rep clean: more waits until form holds."),
    Rule("form-doubt", "A result that the forecast cannot believe, form unsaid: the same again, and form is asked.",
         ("derived",), ("form.doubt_z", "form.doubt_reps"), lambda case: case.facts.doubted, _form,
         "That was far more than expected. Do the same again and say whether form was clean."),
    Rule("ache-hold", "An ache of 3 in a part that the exercise loads: nothing gets harder.",
         ("silbernagel-2007",), ("ache.hold_level",), _aches("ache.hold_level"), _same,
         "Your {where} is at {level} of 10, so nothing gets harder for now.", _CARE),
    Rule("rest-back", "A shorter rest that cost more than a tenth of the repetitions is taken back.",
         ("willardson-2005", "derived"), ("rest.cost_max",), lambda case: case.facts.give_back is not None, _same,
         "The shorter rest cost too many reps, so rest {rest} again."),
    Rule("too-much", "What is carried falls far short of the last target, and the same again has little chance: eased.",
         ("derived",), ("ease.short", "ease.chance"), _too_much, _eased_to_carried,
         "That was too much for now, so ease to {least} at {load} and build from there."),
    Rule("not-met", "A step is made only from a target that was met: else the same again.",
         ("acsm-2009", "nsca-essentials"), ("effort.half",), lambda case: not case.facts.met, _same,
         "The same again: a step comes once this is met."),
)
"""Asked first, in this order."""

STEPS: Final = {
    "reps": Rule("more-reps", "More repetitions inside the coach's range, as many as are carried.",
                 ("acsm-2009", "nsca-essentials"), ("step.margin",), _always, _step("reps", ways.reps),
                 "All met, so a few more reps at the same load."),
    "tempo": Rule("slower", "Slower lowering, by half a second, up to three seconds.",
                  ("schoenfeld-2015", "wilk-2021"), ("tempo.step_s", "tempo.part_max_s", "tempo.rep_max_s"), _always,
                  _step("tempo", ways.tempo), "All met, so lower in {down} this time."),
    "range": Rule("further", "More range, by a rung, where the exercise has more of it.",
                  ("pallares-2021", "derived"), ("range.rung_cm",), _always, _step("range", ways.range_),
                  "All met, so a little more range this time: {range}."),
    "rest": Rule("shorter-rest", "Shorter rest, by a quarter of a minute, not under the floor.",
                 ("acsm-2009", "senna-2011", "grgic-2018"),
                 ("rest.step_s", "rest.floor_compound_s", "rest.floor_isolation_s"), _always, _step("rest", ways.rest),
                 "All met, so rest {rest} between sets this time."),
    "load": Rule("heavier", "More load: the largest step of 2 to 10 % that is carried at the low end of the range.",
                 ("acsm-2009", "nsca-essentials"), ("load.step_min", "load.step_max", "step.margin"), _always,
                 _step("load", ways.load), "All met, so up to {load}. Fewer reps are fine at first."),
}  # fmt: skip
"""Asked next, in the coach's order of ways."""

AFTER: Final = (
    Rule("past-range", "Where the load cannot move, more repetitions than the coach's range, 30 at most.",
         ("schoenfeld-2017",), ("reps.cap",), lambda case: "reps" in case.aim.ways, _step("reps", ways.more_reps),
         "The load cannot move yet, so the reps go on."),
    Rule("same-again", "No step is carried yet: the same again.",
         ("acsm-2009",), ("step.margin",), _always, _same,
         "Met. The same again until a step is likely to work."),
)
"""Asked last, in this order."""

DURING: Final = (
    Rule("done", "All sets of the session are done.", ("practice",), (), _never, _same, "That was the last set."),
    Rule("bad-day", "Today's sets fell short and the rest has little chance: what is left is eased.",
         ("derived",), ("ease.chance",), _never, _same, "Today runs short of the plan, so the rest is lighter."),
    Rule("by-hand", "A target that the coach set, inside the limits, comes before the rules' own; an ache outranks it.",
         ("practice",), (), _never, _same, "Your coach set this one."),
    Rule("limits", "Hard limits, applied last; no rule overrides them.", ("schoenfeld-2015", "acsm-2009"), (), _never,
         _same, "Kept inside the limits."),
    Rule("next-rung", "Where the body is the load, none can be added and the repetitions top the coach's range, the "
         "variant that moves the next larger share of the body is named, if its low end is carried.",
         ("ebben-2011", "schoenfeld-2017", "derived"), ("step.margin",), _never, _same,
         "A harder variant is within reach for your next plan: {variant}."),
    Rule("considered", "Asked only to forecast these sets; nothing is decided.", ("derived",), (), _never, _same,
         "Only a forecast of these sets; nothing is decided."),
)
"""Spoken from elsewhere: within a session, and by the limits."""
# fmt: on

RULES: Final = (*BEFORE, *STEPS.values(), *AFTER, *DURING)
"""Every rule, in the order asked."""
