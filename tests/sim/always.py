"""An outside checker of "What must always hold" (advising contract, rules 1 to 7).

A question and its advice in, breaches out. Written from the contract and the evidence alone. Where the words leave
two readings, only what breaks both is a breach. Rules 8 and 9 need two answers: see ``monotone.py``.
"""

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import timedelta
from typing import Final

from core.evidence.exercises import EXERCISES
from core.model.quantities import Load
from core.model.target import Advice, Question, Target, TargetSet
from tests.sim.gyms import can_make, makeable
from tests.sim.joints import loads
from tests.sim.standing import (
    STEPS,
    compare_loads,
    countable,
    days_off,
    differs,
    family,
    fits_aim,
    form_last_said,
    last_met,
    last_target,
    same_target,
    seconds,
    signed,
    trained,
    was_met,
    with_targets,
    work,
)


@dataclass(frozen=True, slots=True)
class Breach:
    """One promise broken: the rule's number, what in general, and the particulars."""

    rule: str
    what: str
    detail: str = ""


Check = Callable[[Question, Advice], Iterator[Breach]]

LEFTOVER_WAYS: Final = ("first", "hold", "ease", "stop", "form")


def breaches(question: Question, advice: Advice) -> list[Breach]:
    """Every breach of the contract in one answer."""
    if question.consider is not None:
        return list(shape(question, advice))
    return [breach for check in CHECKS for breach in check(question, advice)]


def shape(question: Question, advice: Advice) -> Iterator[Breach]:
    """The fields say what the contract says they say."""
    if len(advice.forecast) != len(advice.sets):
        yield Breach("out", "one forecast a set", f"{len(advice.forecast)} for {len(advice.sets)}")
    if not 0.0 <= advice.chance <= 1.0:
        yield Breach("out", "chance is a probability", str(advice.chance))
    if any(not (math.isfinite(f.reps) and math.isfinite(f.sd) and f.reps >= 0 and f.sd >= 0) for f in advice.forecast):
        yield Breach("out", "forecasts are finite", str(advice.forecast))
    if question.consider is not None:
        if advice.sets != question.consider:
            yield Breach("out", "consider gives exactly these sets")
        return
    yield from _decided(question, advice)


def _decided(question: Question, advice: Advice) -> Iterator[Breach]:
    if not 1 <= len(advice.why) <= 4 or any(not each.text.strip() or not each.rule for each in advice.why):
        yield Breach("out", "one to four sentences, each with a rule", str(advice.why))
    if advice.way not in (*LEFTOVER_WAYS, *question.aim.ways):
        yield Breach("out", "only a way that the coach allows", advice.way)
    timed = EXERCISES[question.exercise].pattern in ("hold", "carry")
    for each in advice.sets:
        if not timed and not 1 <= each.reps[0] <= each.reps[1]:
            yield Breach("out", "repetitions run from low to high", str(each.reps))
    known = any((act.reps or act.hold_s or act.distance_m) for s in trained(question) for act in work(s.sets))
    if advice.way == "first" and known:
        yield Breach("out", "first only without a history")
    if not trained(question) and not question.today and advice.way not in ("first", "ease", "stop"):
        yield Breach("out", "no history: find a starting load", advice.way)
    if advice.way == "stop" and advice.sets:
        yield Breach("out", "stop has no sets")


def kit_makes(question: Question, advice: Advice) -> Iterator[Breach]:
    """Every load can be made with the kit; a load in use is there in a full gym, or where any tool makes it."""
    known = _known_loads(question)
    for each in advice.sets:
        if each.load is None or makes(question, each.load) or _odd_kind(question, each.load):
            continue
        if each.load not in known or not _some_tool_makes(question, each.load):
            yield Breach("kit", "every load can be made with the kit", f"{question.exercise} {each.load}")
            return


def _odd_kind(question: Question, load: Load) -> bool:
    """True for a kind of load that the exercise is not done with, so that no tool can be named for it."""
    own = EXERCISES[question.exercise].load_kind
    hands = own == "per_hand" and load.kind == "total"
    return not hands and family(load) != family(Load(own))


def _some_tool_makes(question: Question, load: Load) -> bool:
    kit = question.lifter.kit
    return kit is None or any(
        can_make(exercise, load, kit, question.lifter.unit)
        for exercise in ("back-squat", "lat-pulldown", "goblet-squat", "leg-press", "dumbbell-curl")
    )


def _known_loads(question: Question) -> list[Load | None]:
    """Loads that were done or asked before."""
    done = [act.load for session in question.past for act in session.sets]
    return done + [each.load for session in question.past if session.target for each in session.target.sets]


def makes(question: Question, load: Load) -> bool:
    """True if this lifter's kit makes the load for this exercise."""
    return can_make(question.exercise, load, question.lifter.kit, question.lifter.unit)


def _surely_makes(question: Question, load: Load) -> bool:
    """True if the usual tool makes it, so that nobody may call the load impossible."""
    kit = question.lifter.kit
    if kit is None or load.kg is None:
        return makes(question, load)
    made = makeable(question.exercise, load.kind, kit, usual=True)
    return load.kind == "body" or any(abs(load.kg - kg) < 0.01 for kg in made)


def form_first(question: Question, advice: Advice) -> Iterator[Breach]:
    """Rule 1."""
    if form_last_said(question) in (None, "clean"):
        return
    if advice.way not in ("form", "hold", "ease", "stop"):
        yield Breach("1", "form first", f"{advice.way} after {form_last_said(question)} form")
    yield from _not_harder_than_last(question, advice, "1", "loose form never raises a target")


def _not_harder_than_last(question: Question, advice: Advice, rule: str, what: str) -> Iterator[Breach]:
    last = last_target(question)
    if last is None or not fits_aim(last[1], question):
        return
    for each, before in _beside(question, advice, last[1]):
        harder = differs(each, before)[0]
        if harder:
            yield Breach(rule, what, f"{sorted(harder)}: {each} after {before}")
            return


def _beside(question: Question, advice: Advice, base: Target) -> list[tuple[TargetSet, TargetSet]]:
    """The sets still to do beside the same sets of an earlier target."""
    skip = len(work(question.today))
    return list(zip(advice.sets, base.sets[skip:], strict=False))


def one_way(question: Question, advice: Advice) -> Iterator[Breach]:
    """Rule 2."""
    if advice.way in ("ease", "stop"):
        return
    left = max(question.aim.sets - len(work(question.today)), 0)
    if countable(work(question.today)) and len(advice.sets) != left:
        yield Breach("2", "the sets of the aim stay", f"{len(advice.sets)} for {left}")
    if any(each.rir != question.aim.rir for each in advice.sets):
        yield Breach("2", "the reserve of the aim stays", str([each.rir for each in advice.sets]))
    if advice.way in ("hold", "form"):
        yield from _not_harder_than_last(question, advice, "2", f"{advice.way} is no harder than the last target")
        return
    base = last_met(question)
    newest = last_target(question)
    if advice.way not in STEPS or base is None or newest is None or not fits_aim(base, question):
        return
    pairs = _beside(question, advice, base)
    for each, before in pairs:
        harder, easier = differs(each, before)
        if harder - {advice.way}:
            yield Breach("2", "one way at a time", f"{advice.way} but {sorted(harder)}: {each} after {before}")
        if easier - _may_lower(question, advice, before):
            yield Breach(
                "2", "only a step in load lowers, and only repetitions", f"{advice.way}: {each} after {before}"
            )
    moved = any(advice.way in differs(each, before)[0] for each, before in pairs)
    unsaid = advice.way in ("tempo", "rest") and any(
        None in (each.tempo, before.tempo) if advice.way == "tempo" else None in (each.rest_s, before.rest_s)
        for each, before in pairs
    )
    tellable = pairs and not unsaid
    if newest[1] == base and tellable and not moved and not question.today:
        yield Breach("2", "the named way moves up", f"{advice.way}: {pairs[0][0]} after {pairs[0][1]}")


def _may_lower(question: Question, advice: Advice, before: TargetSet) -> set[str]:
    """What may get easier: repetitions with a step in load, and whatever lay beyond the limits or the kit."""
    beyond = {
        "reps": advice.way == "load" or before.reps[1] > 30,
        "rest": before.rest_s is not None and before.rest_s < rest_floor(question.exercise),
        "load": before.load is not None and not _surely_makes(question, before.load),
        "tempo": before.tempo is not None and any(True for _ in _tempo(before, None)),
    }
    return {name for name, held in beyond.items() if held}


def only_from_met(question: Question, advice: Advice) -> Iterator[Breach]:
    """Rule 3."""
    last = last_target(question)
    if last is None or was_met(last[1], last[0].sets) is not False:
        return
    yield from _not_harder_than_last(question, advice, "3", "a step only from a target that was met")
    sessions = trained(question)
    if advice.way in STEPS and all(s.target is not None for s in sessions) and last_met(question) is None:
        unsure = any(was_met(target, session.sets) is None for session, target in with_targets(question))
        if not unsure:
            yield Breach("3", "no target was ever met", advice.way)


def rest_floor(exercise: str) -> float:
    """Seconds of rest that no target goes under."""
    return 120.0 if EXERCISES[exercise].kind == "compound" else 60.0


def limits(question: Question, advice: Advice) -> Iterator[Breach]:
    """Rule 4, apart from the size of a step in load."""
    floor = rest_floor(question.exercise)
    aim = question.aim
    for each in advice.sets:
        if each.reps[1] > 30:
            yield Breach("4", "no more than 30 repetitions", str(each.reps))
        if each.rest_s is not None and each.rest_s < floor - 0.01:
            yield Breach("4", "rest at the floor or above", f"{each.rest_s} under {floor}")
        if each.tempo is not None:
            yield from _tempo(each, aim.tempo)
        deeper = each.range is not None and each.range.grade == "extra"
        if deeper and EXERCISES[question.exercise].pattern in ("hold", "carry", "olympic", "conditioning", "shrug"):
            yield Breach("4", "range only where there is more of it", question.exercise)


def _tempo(each: TargetSet, aimed: tuple[float | None, ...] | None) -> Iterator[Breach]:
    assert each.tempo is not None
    for name, place in (("lowering", 0), ("lifting", 2)):
        part = each.tempo[place]
        asked = None if aimed is None else aimed[place]
        if part is None or part == asked:
            continue
        if not 0.5 <= part <= 3.0:
            yield Breach("4", f"0.5 to 3 s for the {name}", str(each.tempo))
    total = seconds(each.tempo)
    if total is not None and total >= 10.0:
        yield Breach("4", "under 10 s a repetition", str(each.tempo))


def load_step(question: Question, advice: Advice) -> Iterator[Breach]:
    """Rule 4: a step of 2 to 10 % where the kit has one; a larger one only if the forecast reaches the low end."""
    base = last_met(question)
    if advice.way != "load" or base is None:
        return
    for number, (each, before) in enumerate(_beside(question, advice, base)):
        if compare_loads(each.load, before.load) != 1:
            continue
        share, options = _step_share(question, each, before)
        if share is None:
            continue
        has_one = any(0.02 <= option <= 0.10 for option in options)
        reaches = number < len(advice.forecast) and advice.forecast[number].reps >= each.reps[0] - 0.05
        if share > 0.1001 and (has_one or not reaches):
            yield Breach("4", "a load step of at most 10 % where the kit has one, else one that the forecast carries",
                         f"{share:.1%}: {each} after {before}")  # fmt: skip
            return
        if share < 0.0199 and has_one:
            yield Breach("4", "a load step of at least 2 % where the kit has one", f"{share:.2%}")
            return


def _step_share(question: Question, each: TargetSet, before: TargetSet) -> tuple[float | None, list[float]]:
    """The step as a share of the load before, and the shares the kit offers. On the body: of body mass and load."""
    now, then = signed(each.load), signed(before.load)
    if now is None or then is None or each.load is None or before.load is None:
        return None, []
    if each.load.kind in ("body", "added", "assist"):
        body = question.lifter.bodyweight_kg
        if body is None:
            return None, []
        # Generous: the smallest and largest share of body mass of the catalogue's lifts lie between 0.4 and 1.
        return (now - then) / (body + then), []
    if then <= 0 or question.lifter.kit is None:
        return (now - then) / then if then > 0 else None, [0.05] if then >= 50.0 else []
    made = makeable(question.exercise, each.load.kind, question.lifter.kit)
    return (now - then) / then, [option / then - 1.0 for option in made]


def rest_back(question: Question, advice: Advice) -> Iterator[Breach]:
    """Rule 5: more than 10 % of the repetitions lost at a shorter rest, load and form the same: it is taken back."""
    sessions = trained(question)
    if len(sessions) < 2 or not advice.sets or question.today:
        return
    before, after = sessions[-2:]
    first, second = work(before.sets), work(after.sets)
    if before.target is None or after.target is None or not countable(first + second):
        return
    rests = [{each.rest_s for each in s.target.sets} for s in (before, after) if s.target is not None]
    if any(len(each) != 1 or None in each for each in rests) or len(first) != len(second):
        return
    long, short = (next(iter(each)) or 0.0 for each in rests)
    same = all(compare_loads(a.load, b.load) == 0 and a.range == b.range for a, b in zip(first, second, strict=True))
    clean = all(act.form in (None, "clean") for act in first + second)
    same_tempo = {each.tempo for each in before.target.sets} == {each.tempo for each in after.target.sets}
    fell = sum(act.reps or 0 for act in second) < 0.9 * sum(act.reps or 0 for act in first) - 1e-9
    kept = any(each.rest_s is not None and each.rest_s < long - 0.01 for each in advice.sets)
    if short < long and same and clean and same_tempo and fell and kept:
        yield Breach("5", "a shorter rest that costs repetitions is taken back", f"{short} after {long}")


ACTIVE: Final = timedelta(days=1)
CARE: Final = ("physician", "physio", "doctor")


def spared(question: Question, advice: Advice) -> Iterator[Breach]:
    """Rule 6."""
    lifted = [act.load for s in trained(question) for act in work(s.sets) if (act.reps or 0) >= 1]
    lifted += [act.load for act in work(question.today) if (act.reps or 0) >= 1]
    if question.lifter.no_heavier and lifted:
        for each in advice.sets:
            if all(compare_loads(each.load, load) == 1 for load in lifted):
                yield Breach("6", "no_heavier never gets a heavier load", str(each.load))
                break
    level = _ache_level(question)
    if level is None:
        return
    if level >= 6 and advice.way != "stop":
        yield Breach("6", "an ache from 6 stops", f"{advice.way} at {level}")
    elif level >= 4 and advice.way not in ("ease", "stop"):
        yield Breach("6", "an ache from 4 eases", f"{advice.way} at {level}")
    if level >= 4 and not any(word in text.lower() for text in advice.cautions for word in CARE):
        yield Breach("6", "a caution that defers to a physician or physiotherapist", str(advice.cautions))
    last = last_target(question)
    if last is None:
        return
    for each, before in _beside(question, advice, last[1]):
        if differs(each, before)[0] & {"load", "range"}:
            yield Breach("6", "an ache never gets a heavier or deeper target", f"{each} after {before}")
            return


def _ache_level(question: Question) -> float | None:
    """The worst level said today or yesterday of a part that the exercise surely loads; unsaid counts as 1."""
    levels = [
        1.0 if ache.level is None else ache.level
        for ache in question.lifter.aches
        if loads(question.exercise, ache.where) and timedelta(0) <= question.on - ache.on <= ACTIVE
    ]
    same_day = {ache.where for ache in question.lifter.aches}
    if len(same_day) < len(question.lifter.aches):
        return None  # said twice: which one counts is not written
    worst = max(levels, default=0.0)
    return worst if worst >= 1.0 else None


LAID_OFF: Final = 21
"""Days after which a lay-off is beyond doubt (evidence 10: nothing is lost before three weeks)."""


def easing(question: Question, advice: Advice) -> Iterator[Breach]:
    """Rule 7."""
    gap = days_off(question)
    if gap is not None and gap >= LAID_OFF and not question.today and advice.way not in ("ease", "stop"):
        yield Breach("7", "ease after a lay-off", f"{advice.way} after {gap} days")
    newest = list(with_targets(question))[:3]
    if len(newest) == 3 and len(trained(question)) >= 3 and not question.today:
        missed = all(was_met(target, session.sets) is False for session, target in newest)
        unbroken = [session for session, _ in newest] == trained(question)[-1:-4:-1]
        same = all(same_target(newest[0][1], target) for _, target in newest)
        stuck = missed and unbroken and same and form_last_said(question) in (None, "clean")
        if stuck and advice.way not in ("ease", "stop"):
            yield Breach("7", "ease after three misses of the same target", advice.way)
    last = last_target(question)
    if advice.way != "ease" or not advice.sets or last is None or not fits_aim(last[1], question):
        return
    yield from _not_harder_than_last(question, advice, "7", "ease is not harder than the last target")
    pairs = _beside(question, advice, last[1])
    fewer = len(advice.sets) < len(last[1].sets) - len(work(question.today))
    if not fewer and not any(differs(each, before)[1] for each, before in pairs):
        yield Breach("7", "ease is less", str(advice.sets[:1]))


CHECKS: Final[tuple[Check, ...]] = (
    shape, kit_makes, form_first, one_way, only_from_met, limits, load_step, rest_back, spared, easing,
)  # fmt: skip
