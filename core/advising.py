"""A lifter's history in, the next target out: the one page that joins estimate and decide. The only one that may.

``Progress`` is what past sessions of one lifter and one exercise come to: of constant size, so that advice costs the
same after three years. ``advise`` folds a whole history; the chat keeps the fold and calls ``absorb`` and
``advise_from``. Nothing here decides: the rules do.
"""

import json
from dataclasses import asdict, dataclass, replace
from datetime import date
from functools import cache, lru_cache
from hashlib import blake2b
from math import log
from typing import Final

from core.decide.case import Case, case_of, sane_aim
from core.decide.choose import choose
from core.decide.facts import Facts, facts_after, facts_beside
from core.decide.keep import facts_from, facts_plain
from core.decide.rules import DURING
from core.estimate.belief import (
    FURTHEST,
    Belief,
    absorb_set,
    next_session,
    open_day,
    prior,
    usable_bodyweight,
    weights,
)
from core.estimate.carry import Carry, carried, carry_after
from core.estimate.keep import belief_from, belief_text
from core.estimate.outlook import FormBelief, Paths, believable, form_after, outlook, paths_of
from core.estimate.people import POINTS
from core.estimate.seeing import STRENGTH
from core.estimate.sighting import Day, Sighting, load_choice, sightings
from core.evidence.body import row_of, traits_of
from core.evidence.numbers import NUMBERS, value
from core.model.acts import SetAct
from core.model.lifter import Lifter
from core.model.sane import sane_act, sane_session, sane_set
from core.model.target import Advice, Aim, Forecast, Forecaster, Outlook, Question, Reason, Session, TargetSet
from core.model.working import working_sets

_SHAPE: Final = 3
"""Raised by whoever changes how a progress comes about without changing a number of the evidence."""

_KEPT: Final = 512
"""Sets of sessions under way that are gone on from; what is believed behind one takes 75 KB."""


@dataclass(frozen=True, slots=True, eq=False)
class Progress:
    """All that advice needs of the past: belief with its doubt, what is carried, form, and the facts of the rules."""

    exercise: str
    belief: Belief
    carry: Carry
    form: FormBelief
    facts: Facts
    seen: date | None = None


def begin(lifter: Lifter, exercise: str, related: tuple[Progress, ...] = ()) -> Progress:
    """Before the first session. ``related``: what is known of the same lifter in other exercises."""
    return Progress(exercise, prior(lifter, exercise, _from_related(exercise, related)), Carry(), FormBelief(), Facts())


def _from_related(exercise: str, related: tuple[Progress, ...]) -> tuple[float, float] | None:
    """Mean and sd of ln strength carried over from the most alike exercise, or None without one."""
    row = row_of(exercise)
    alike = [
        other
        for other in related
        if other.seen is not None
        and (row_of(other.exercise).pattern == row.pattern or row_of(other.exercise).main_muscles == row.main_muscles)
    ]
    if not alike:
        return None
    offsets = []
    for other in sorted(alike, key=lambda one: one.exercise):
        known = float((weights(other.belief) * other.belief.mean[STRENGTH]).sum())
        offsets.append(known + log(traits_of(exercise).strength / traits_of(other.exercise).strength))
    return sum(offsets) / len(offsets), value("prior.related_sd")


def absorb(progress: Progress, lifter: Lifter, aim: Aim, session: Session) -> Progress:
    """The progress after one more session."""
    aim, session = sane_aim(aim, progress.exercise), sane_session(session)
    day = Day(progress.exercise, usable_bodyweight(lifter), aim, session.target)
    found, _, count = sightings(session.sets, day)
    if not count:
        return replace(progress, facts=facts_after(progress.facts, aim, session, believed=True))
    before = belief = _opened(progress, session.on)
    if progress.seen is None and found:
        belief, _ = absorb_set(belief, progress.exercise, load_choice(found[0], day))
    # Only against what the lifter's own sessions say can a result be a slip, or too good to be clean.
    known = bool(progress.carry.seen) and progress.carry.seen[0] >= value("own.sessions")
    highest, furthest = 0.0, value("effort.slip_z") if known else FURTHEST
    for one in found:
        belief, surprise = absorb_set(belief, progress.exercise, one, furthest)
        highest = max(highest, surprise)
    believed = True
    if known and highest > value("form.look_z"):
        believed = believable(paths_of(before, progress.exercise, 0.0, 0), working_sets(session.sets), day)
    return Progress(
        exercise=progress.exercise,
        belief=open_day(belief),
        carry=carry_after(progress.carry, session.sets, day, lifter.experience),
        form=form_after(progress.form, found),
        facts=_facts(progress.facts, aim, session, believed=believed),
        seen=session.on if progress.seen is None else max(progress.seen, session.on),
    )


def _facts(facts: Facts, aim: Aim, session: Session, *, believed: bool) -> Facts:
    if aim.easier and facts.last is not None and working_sets(session.sets):
        return facts_beside(facts, session)
    return facts_after(facts, aim, session, believed)


def _opened(progress: Progress, on: date) -> Belief:
    """The belief at the start of a session on that day."""
    if progress.seen is None:
        return progress.belief
    return next_session(progress.belief, (on - progress.seen).days)


def _forecasters(progress: Progress, day: Day, on: date, today: tuple[SetAct, ...]) -> tuple[Forecaster, Forecaster]:
    """One forecaster for a session from its first set, one for what comes after today's sets.

    The second never grows less sure of the next set with a set more: its sd is the least of those after each of
    today's sets.
    """
    found, tired, _ = sightings(today, day)
    form = form_after(progress.form, found)
    behind = [_Behind(_opened(progress, on))] if not found else [_begun(progress, on)]
    for one in found:
        behind.append(_behind(behind[-1], progress.exercise, one))
    # Nothing has tired the lifter before the first set; what has before each other is in its sighting.
    tiring = (0.0, *(one.tired for one in found[1:]), tired)

    @cache
    def paths(done: int) -> Paths:
        return paths_of(behind[done].belief, progress.exercise, tiring[done], done)

    def plan(sets: tuple[TargetSet, ...]) -> Outlook:
        return outlook(paths(0), progress.form, sets, day)

    def now(sets: tuple[TargetSet, ...]) -> Outlook:
        seen = outlook(paths(len(found)), form, sets, day)
        if not found or not sets:
            return seen
        first, *rest = seen.forecast
        earlier = (_sd_of_next(behind[done], (tiring[done], done), sets[0], day) for done in range(len(found)))
        return replace(seen, forecast=(Forecast(first.reps, min(first.sd, *earlier)), *rest))

    return plan, now


@dataclass(frozen=True, slots=True, eq=False)
class _Behind:
    """What is believed on a day behind so many of its sets."""

    belief: Belief


@lru_cache(_KEPT)
def _begun(progress: Progress, on: date) -> _Behind:
    """What is believed before the first set of a session that is under way."""
    return _Behind(_opened(progress, on))


@lru_cache(_KEPT)
def _behind(before: _Behind, exercise: str, one: Sighting) -> _Behind:
    """What is believed behind one more set. Kept a while: the next message of the session goes on from it."""
    return _Behind(absorb_set(before.belief, exercise, one)[0])


@lru_cache(_KEPT)
def _sd_of_next(behind: _Behind, tired: tuple[float, int], one: TargetSet, day: Day) -> float:
    """How sure the forecast of that set was then. Kept a while: it is asked again behind each further set."""
    return outlook(paths_of(behind.belief, day.exercise, *tired), FormBelief(), (one,), day).forecast[0].sd


def advise_from(
    progress: Progress, lifter: Lifter, exercise: str, aim: Aim, on: date, today: tuple[SetAct, ...] = (),
    consider: tuple[TargetSet, ...] | None = None,
) -> Advice:  # fmt: skip
    """The next target; with ``consider`` only what is expected of those sets."""
    aim, today = sane_aim(aim, exercise), tuple(sane_act(act) for act in today)
    day = Day(exercise, usable_bodyweight(lifter), aim)
    plan, now = _forecasters(progress, day, on, today)
    if consider is not None:
        seen = now(tuple(sane_set(one) for one in consider))
        told = next(rule for rule in DURING if rule.id == "considered")
        return Advice("hold", consider, seen.forecast, seen.chance, (Reason(told.say, told.id),), ())
    # Before any history today's sets are all that is known, so a first load is looked for behind them.
    forecaster = now if progress.seen is None else plan
    chosen = choose(_case(progress, lifter, aim, (on, today), forecaster), now)
    return Advice(chosen.way, chosen.sets, chosen.outlook.forecast, chosen.outlook.chance, chosen.why, chosen.cautions)


def _case(
    progress: Progress, lifter: Lifter, aim: Aim, when: tuple[date, tuple[SetAct, ...]], plan: Forecaster
) -> Case:
    exercise = progress.exercise
    day = Day(exercise, usable_bodyweight(lifter), aim)

    def carries(sets: tuple[TargetSet, ...]) -> tuple[float, ...]:
        return carried(progress.carry, sets, 0, day, aim)

    return case_of(lifter, exercise, aim, progress.facts, when[0], working_sets(when[1]), carries, plan)


def advise(question: Question) -> Advice:
    """The contract's question answered from its whole history."""
    progress = begin(question.lifter, question.exercise)
    for session in question.past:
        progress = absorb(progress, question.lifter, question.aim, session)
    return advise_from(
        progress, question.lifter, question.exercise, question.aim, question.on, question.today, question.consider
    )


def made_of() -> str:
    """A print of what a kept progress hangs on: its shape and every number. One of another print is built again."""
    numbers = ";".join(f"{key}={row.value!r}" for key, row in sorted(NUMBERS.items()))
    return blake2b(f"{_SHAPE} {POINTS} {numbers}".encode(), digest_size=8).hexdigest()


def dump(progress: Progress) -> str:
    """The progress as JSON text, for a cache; ``load`` gives it back exactly."""
    return json.dumps(
        {
            "exercise": progress.exercise,
            "belief": belief_text(progress.belief),
            "carry": asdict(progress.carry),
            "form": asdict(progress.form),
            "facts": facts_plain(progress.facts),
            "seen": progress.seen.isoformat() if progress.seen else None,
        },
        separators=(",", ":"),
    )


def load(text: str) -> Progress:
    """The progress of that text; ValueError (or KeyError, TypeError) when it is none of this version: then rebuild."""
    plain = json.loads(text)
    return Progress(
        exercise=plain["exercise"],
        belief=belief_from(plain["belief"]),
        carry=Carry(tuple(plain["carry"]["levels"]), tuple(plain["carry"]["seen"])),
        form=FormBelief(**plain["form"]),
        facts=facts_from(plain["facts"]),
        seen=date.fromisoformat(plain["seen"]) if plain["seen"] else None,
    )
