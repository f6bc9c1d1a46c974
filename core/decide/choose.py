"""The stage's door: ask the rules in order, apply the limits, leave what is still to do today, and say why."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Final

from core.decide.case import Case, Sets
from core.decide.judge import as_asked
from core.decide.limits import Choice, guarded
from core.decide.rules import AFTER, BEFORE, DURING, STEPS, Rule
from core.decide.variant import next_variant
from core.decide.ways import eased
from core.decide.words import slots, values
from core.evidence.body import row_of
from core.evidence.numbers import value
from core.model.target import Forecaster, Outlook, Reason, Verdict

_SPOKEN = {rule.id: rule for rule in DURING}


@dataclass(frozen=True, slots=True)
class Chosen:
    """The verdict, the sets still to do, what is expected of them, why, and what to be careful of."""

    way: Verdict
    sets: Sets
    outlook: Outlook
    why: tuple[Reason, ...]
    cautions: tuple[str, ...]


_AT_THE_TOP: Final = frozenset({"past-range", "same-again"})
"""Rules under which a harder variant is worth a word: no way of the coach's went up, or only past the range."""


def choose(case: Case, now: Forecaster) -> Chosen:
    """The target of the case; ``now`` forecasts sets to be done next, today's sets behind them."""
    rule, choice = _decide(case)
    why = [rule]
    done = len(case.today)
    left = choice.sets[done:] if choice.way != "first" else choice.sets[: max(len(choice.sets) - done, 0)]
    way: Verdict = choice.way
    if way != "stop" and not left:
        why, way = [_SPOKEN["done"]], way if way in ("ease", "first") else "hold"
    outlook = now(left) if left else Outlook((), 0.0 if way == "stop" else 1.0)
    if (
        left
        and done
        and way not in ("first", "stop")
        and outlook.chance < value("ease.chance")
        and _short(case, choice)
    ):
        way, left = "ease", guarded(case, Choice("ease", _less_of(case, left))).sets
        why, outlook = [_SPOKEN["bad-day"]], now(left)
    above = next_variant(case) if not done and rule.id in _AT_THE_TOP else None
    if above is not None:
        why.append(_SPOKEN["next-rung"])
    words = {**slots(case, left), "variant": row_of(above).name if above is not None else ""}
    said = (*values(case, left), ("variant", above))
    reasons = tuple(Reason(one.say.format(**words), one.id, said) for one in why)
    return Chosen(way, left, outlook, reasons, _cautions(case, why))


def _decide(case: Case) -> tuple[Rule, Choice]:
    """The first rule whose answer stands after the limits."""
    for rule in _in_order(case):
        if not rule.when(case):
            continue
        choice = rule.then(case)
        if choice is None:
            continue
        kept = guarded(case, choice)
        if kept.way == choice.way or choice.way not in STEPS:
            return (rule if kept.way == choice.way else _SPOKEN["limits"]), kept
    return _SPOKEN["limits"], Choice("hold", case.base)


def _in_order(case: Case) -> Iterator[Rule]:
    yield from BEFORE
    for way in case.aim.ways:
        if way in STEPS:
            yield STEPS[way]
    yield from AFTER


def _short(case: Case, choice: Choice) -> bool:
    """Whether any of today's sets fell short of what this session asked."""
    return any(not as_asked(act, wanted, wanted.reps[0]) for act, wanted in zip(case.today, choice.sets, strict=False))


def _less_of(case: Case, left: Sets) -> Sets:
    """What is left, a step lighter, all of it."""
    return eased(case, left, value("misses.load_factor"), 1.0, case.aim.rir)[: len(left)]


def _cautions(case: Case, why: list[Rule]) -> tuple[str, ...]:
    """Every fired rule's caution once; an ache is never passed over in silence."""
    words = slots(case, ())
    texts = [one.caution.format(**words) for one in why if one.caution]
    if case.ache is not None and not texts:
        texts = [next(rule.caution for rule in BEFORE if rule.id == "ache-hold").format(**words)]
    return tuple(dict.fromkeys(texts))
