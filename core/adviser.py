"""What the flow of a session asks of advice, answered by advising and by the rows of decide. One for each pass.

It remembers within the pass what it was asked, because the same target is wanted for the setting, the list and the
next set. What was asked lately is not worked out again in the next pass either: the same history, body, aim and sets
give the same advice. It may not know acts other than sets, nor words.
"""

from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass, field, replace
from datetime import date
from functools import lru_cache
from hashlib import blake2b
from typing import Final

from core.advising import Progress, absorb, advise_from, begin, load
from core.decide.judge import met as met_target
from core.decide.kit import plates_a_side
from core.decide.rules import RULES
from core.evidence.body import row_of, traits_of
from core.flow.day import aim_of, lifter_on
from core.model.acts import SetAct
from core.model.book import Book
from core.model.lifter import Lifter
from core.model.target import Advice, Reason, Session, Target, TargetSet
from core.model.working import working_sets

ON_A_BAR: Final = frozenset({"bar"})
"""Implements whose plates are named side by side; what else is loaded differs from gym to gym."""

BODY_FIRST: Final = frozenset({"ache-stop", "ache-ease", "ache-hold"})
"""Rules that outrank a target set by hand."""

_RULES: Final = {rule.id: rule for rule in RULES}


_HISTORIES_KEPT: Final = 256
_ADVICES_KEPT: Final = 4096

_loaded = lru_cache(_HISTORIES_KEPT)(load)
"""Nobody changes a history once it is made. Few are kept, because each takes as much as a hundred advices."""

_LATELY: Final[OrderedDict[object, Advice]] = OrderedDict()


def _once_lately(key: object, ask: Callable[[], Advice]) -> Advice:
    """The advice of that key, worked out when it was not lately. The key must hold all that it depends on."""
    found = _LATELY.get(key)
    if found is None:
        found = _LATELY[key] = ask()
        if len(_LATELY) > _ADVICES_KEPT:
            _LATELY.popitem(last=False)
    return found


def _print_of(text: str) -> bytes:
    return blake2b(text.encode(), digest_size=16).digest()


@dataclass(frozen=True, slots=True)
class Advisers:
    """Advice for one pass over one lifter's book."""

    asked: dict[object, Advice] = field(default_factory=dict)

    def today(self, book: Book, on: date, exercise: str, done: tuple[SetAct, ...]) -> Advice:
        """Advice for the sets still to do today."""
        fixed = book.fixed.get(exercise)
        key = ("today", on, exercise, done, aim_of(book, on, exercise), _person(lifter_on(book, on)), fixed)
        return self._once(key, lambda: _today(book, on, exercise, done))

    def after(self, book: Book, session: Session, exercise: str, on: date) -> Advice:
        """Advice for ``on``, once ``session`` is history."""
        aim = aim_of(book, session.on, exercise)

        def ask() -> Advice:
            progress = absorb(_progress(book, exercise), book.lifter, aim, session)
            return advise_from(progress, book.lifter, exercise, replace(aim, easier=book.plan.is_easier(on)), on)

        return self._once(("after", on, exercise, session.sets, aim, _person(book.lifter)), ask)

    def _once(self, key: object, ask: Callable[[], Advice]) -> Advice:
        if key not in self.asked:
            self.asked[key] = ask()
        return self.asked[key]

    def plates(self, lifter: Lifter, exercise: str, target: Target) -> tuple[float, ...] | None:
        """The plates for one side of the bar in the first set, in the lifter's unit, where a bar is loaded."""
        load_ = target.sets[0].load if target.sets else None
        if load_ is None or load_.kg is None or load_.kind != "total":
            return None
        if traits_of(exercise).implement not in ON_A_BAR:
            return None
        return plates_a_side(lifter.kit, lifter.unit, load_.kg)

    def met(self, sets: tuple[SetAct, ...], target: Target) -> bool:
        """Whether these sets met that target."""
        return met_target(sets, target)

    def sources(self, rule: str) -> tuple[str, ...]:
        """The ids of the sources of a rule."""
        return _RULES[rule].sources if rule in _RULES else ()


def _today(book: Book, on: date, exercise: str, done: tuple[SetAct, ...]) -> Advice:
    aim, lifter = aim_of(book, on, exercise), lifter_on(book, on)

    def ask() -> Advice:
        return advise_from(_progress(book, exercise), lifter, exercise, aim, on, today=done)

    # Where nothing is known of the exercise, what is known of its likes begins from the lifter as such.
    past = tuple((name, _print_of(book.progress[name])) for name in _told_by(book, exercise))
    advice = _once_lately((exercise, on, done, aim, lifter, book.lifter, past), ask)
    fixed = book.fixed.get(exercise)
    if fixed is None or advice.why[0].rule in BODY_FIRST:
        return advice
    progress = _progress(book, exercise)
    return _by_hand(advise_from(progress, lifter, exercise, aim, on, done, _left(fixed, done)), fixed, done)


def _left(fixed: Target, done: tuple[SetAct, ...]) -> tuple[TargetSet, ...]:
    return fixed.sets[len(working_sets(done)) :]


def _by_hand(seen: Advice, fixed: Target, done: tuple[SetAct, ...]) -> Advice:
    """The coach's own target, with what is expected of it."""
    return replace(seen, way=fixed.way, sets=_left(fixed, done), why=(Reason(_RULES["by-hand"].say, "by-hand"),))


def _person(lifter: Lifter) -> object:
    return lifter.aches, lifter.bodyweight_kg, repr(lifter.kit)


def _progress(book: Book, exercise: str) -> Progress:
    """The folded history; without one, a beginning that leans on what is known of the most alike exercises."""
    text = book.progress.get(exercise)
    if text is not None:
        return _loaded(text)
    alike = tuple(_loaded(book.progress[name]) for name in _told_by(book, exercise))
    return begin(book.lifter, exercise, alike)


def _told_by(book: Book, exercise: str) -> tuple[str, ...]:
    """The exercises whose history says something about this one: its own, or where there is none the most alike."""
    if exercise in book.progress:
        return (exercise,)
    return tuple(name for name in sorted(book.progress) if _is_alike(name, exercise))


def _is_alike(name: str, exercise: str) -> bool:
    one, other = row_of(name), row_of(exercise)
    return one.pattern == other.pattern or one.main_muscles == other.main_muscles
