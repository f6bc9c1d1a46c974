"""A member's day made ready for the scoring: what was planned, asked and told comes in, a day of facts goes out.

The page that joins a challenge with advice: reports are held against the forecast made before them. Knows no store and
no chat, and gives no load, ache or target away: ``DayDone`` has no place for them.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import UTC, date, tzinfo

from core.advising import advise_from, load
from core.challenge.judging import Surprise, beyond_belief, considered, no_more_than, result_of, surprise
from core.challenge.telling import Telling, told_live
from core.decide.judge import as_asked
from core.evidence.aches import loads_part
from core.evidence.body import row_of
from core.evidence.numbers import value
from core.model.acts import Begin, Finish, SetAct, Swap
from core.model.book import Kept
from core.model.challenge import Attempt, DayDone, Word
from core.model.lifter import Ache, Lifter
from core.model.plan import Planned, TrainingDay
from core.model.target import Aim, Target, TargetSet


@dataclass(frozen=True, slots=True)
class Told:
    """One member's day as it stands: what was planned, the acts kept for it, the targets in force, what was known.

    ``before`` maps an exercise to its progress text from before that day, ``believed`` to the sets of earlier days that
    the coach let count though no forecast would have. ``off``: it was called off.
    """

    on: date
    planned: TrainingDay
    acts: tuple[Kept, ...]
    targets: Mapping[str, Target]
    lifter: Lifter
    before: Mapping[str, str] = field(default_factory=dict)
    believed: Mapping[str, tuple[SetAct, ...]] = field(default_factory=dict)
    off: bool = False
    held: bool = False
    zone: tzinfo = UTC
    """The lifter's, for the times of messages."""


def day_of(told: Told) -> DayDone:
    """The day of facts. What the forecast cannot believe, and a session told in one go, is marked as waiting."""
    attempts = tuple(_attempt(told, one) for one in _swapped(told))
    done = any(isinstance(kept.act, SetAct) for kept in told.acts)
    word: Word = "waits" if done and not told_live(tellings(told), told.on) else "unneeded"
    return DayDone(told.on, attempts, off=told.off and not done, held=told.held, word=word)


def with_words(day: DayDone, said: Mapping[str, Word], *, trusted: bool) -> DayDone:
    """The day with the coach's words, by exercise; "" is the session as a whole, which a no takes out at any time."""
    attempts = tuple(replace(one, word=_word(one.word, said.get(one.exercise))) for one in day.attempts)
    struck = said.get("") == "no"
    whole: Word = "no" if struck else "unneeded" if trusted and day.word == "waits" else _word(day.word, said.get(""))
    return replace(day, attempts=attempts, word=whole)


def _word(asked: Word, said: Word | None) -> Word:
    return said if asked == "waits" and said is not None else asked


def tellings(told: Told) -> tuple[Telling, ...]:
    """The day's messages that begin, tell sets or end, with how long what they tell takes as asked."""
    rests = {exercise: target.sets[-1].rest_s for exercise, target in told.targets.items() if target.sets}
    by_message: dict[int, Telling] = {}
    for kept in told.acts:
        if not isinstance(kept.act, SetAct | Begin | Finish):
            continue
        so_far = by_message.get(kept.message, Telling(kept.at.astimezone(told.zone)))
        takes_s = _takes_s(kept.act, rests) if isinstance(kept.act, SetAct) else 0.0
        by_message[kept.message] = replace(so_far, takes_s=so_far.takes_s + takes_s)
    return tuple(by_message.values())


def _takes_s(act: SetAct, rests: Mapping[str, float | None]) -> float:
    """A set with the rest after it, in seconds: as asked, else as the trade has it at the least."""
    rest_s = rests.get(act.exercise or "")
    tempo = sum(part for part in act.tempo or () if part is not None) or value("tempo.reference_s")
    work_s = act.hold_s if act.hold_s is not None else (act.reps or 0) * tempo
    return work_s + (value("rest.floor_isolation_s") if rest_s is None else rest_s)


def _swapped(told: Told) -> tuple[Planned, ...]:
    """The day's exercises, those swapped by what was done in their place."""
    found = list(told.planned.exercises)
    for kept in told.acts:
        act = kept.act
        if isinstance(act, Swap) and act.to is not None:
            found = [Planned(act.to, one.aim) if one.exercise == act.from_ else one for one in found]
    return tuple({one.exercise: one for one in found}.values())


def _attempt(told: Told, planned: Planned) -> Attempt:
    exercise = planned.exercise
    target = told.targets.get(exercise) or _aimed(planned.aim)
    sets = tuple(
        act for act in (kept.act for kept in told.acts) if isinstance(act, SetAct) and act.exercise == exercise
    )
    ached = any(loads_part(row_of(exercise), one.where) for one in _aching(told))
    off = _surprise(told, exercise, planned.aim, target, sets)
    result = result_of(target, sets, as_asked, off)
    waits = beyond_belief(off) and not no_more_than(sets, told.believed.get(exercise, ()))
    return Attempt(exercise, target.way, result, ached, "waits" if waits else "unneeded")


def _aching(told: Told) -> list[Ache]:
    """What ached on that day, by the newest word on each part.

    One that keeps exercises off the day lasts until it is said to be better, or as long as it keeps them off.
    """
    newest: list[Ache] = []
    for ache in sorted(told.lifter.aches, key=lambda one: one.on):
        if ache.on <= told.on:
            newest = [*(one for one in newest if not _same_place(one, ache)), ache]
    return [one for one in newest if one.level != 0 and (told.on - one.on).days <= _lasts_days(one)]


def _lasts_days(ache: Ache) -> float:
    off = ache.level is not None and ache.level >= value("ache.stop_level")
    return value("ache.stale_days" if off else "challenge.ache_days")


def _same_place(one: Ache, other: Ache) -> bool:
    return one.where == other.where and (one.side == other.side or None in (one.side, other.side))


def _aimed(aim: Aim) -> Target:
    """Without a target in force, the aim itself at any load."""
    return Target("first", (TargetSet(None, aim.reps, aim.rir, aim.tempo, aim.rest_s),) * aim.sets)


def _surprise(told: Told, exercise: str, aim: Aim, target: Target, sets: tuple[SetAct, ...]) -> Surprise:
    """How far the sets lie off what was expected of them; no surprise before anything is known."""
    before = told.before.get(exercise)
    asked = considered(target, sets)
    if before is None or not asked or any(one.load is None for one in asked):
        return Surprise()
    seen = advise_from(load(before), told.lifter, exercise, aim, told.on, (), asked)
    return surprise(sets, seen.forecast)
