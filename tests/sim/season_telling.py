"""When a simulated member tells a session: set by set, by exercise, at the end, or as a whole in one message.

How members divide over the manners, and how fast they go, is a judgement; no source.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, date, datetime, time, timedelta
from typing import Final, Literal

import numpy as np

from core.challenge.telling import told_live
from core.contest import Told, tellings
from core.model.acts import Act, Begin, SetAct
from core.model.book import Kept
from core.model.lifter import Lifter
from core.model.plan import TrainingDay
from core.model.target import Target

Manner = Literal["sets", "exercises", "end", "once"]
LIVE: Final[tuple[Manner, ...]] = ("sets", "exercises", "end")
SHARES: Final = (0.4, 0.35, 0.25)
"""Of those who tell a session as it goes; "end" says "starting" and tells all of it at the end."""

SLOWEST_REP_S: Final = 4.0


@dataclass(frozen=True, slots=True)
class Done:
    """One exercise of a session: what was asked, what was told of it."""

    target: Target
    sets: tuple[SetAct, ...]


@dataclass(frozen=True, slots=True)
class Pace:
    """How a session is told, and how long it takes of the time that was asked: 0.5 is twice as fast."""

    manner: Manner
    of_asked: float


def own_pace(luck: np.random.Generator) -> Pace:
    """How an honest member tells sessions and how fast they go: mostly a little faster than asked, a few twice."""
    return Pace(LIVE[int(luck.choice(len(LIVE), p=SHARES))], float(np.clip(luck.lognormal(-0.15, 0.25), 0.4, 2.0)))


def is_live(session: Sequence[Done], pace: Pace, on: date) -> bool:
    """Whether the session, told like this, counts as told while it happened."""
    targets = {one.sets[0].exercise or "": one.target for one in session if one.sets}
    day = TrainingDay(on.weekday(), time(18), "", ())
    return told_live(tellings(Told(on, day, _kept(session, pace, on), targets, Lifter())), on)


def messages(session: Sequence[Done], pace: Pace) -> int:
    """In how many messages a session is told like this."""
    return len({one.message for one in _kept(session, pace, date.min)})


def _kept(session: Sequence[Done], pace: Pace, on: date) -> tuple[Kept, ...]:
    """The acts with the times of their messages."""
    now = datetime.combine(on, time(18), tzinfo=UTC)
    told: list[tuple[Act, datetime, int]] = [(Begin(), now, 0)] if pace.manner == "end" else []
    number = 1
    for one in session:
        for act, asked in zip(one.sets, one.target.sets, strict=False):
            now += timedelta(seconds=pace.of_asked * (act.reps or 0) * SLOWEST_REP_S)
            told.append((act, now, number))
            now += timedelta(seconds=pace.of_asked * (asked.rest_s if asked.rest_s is not None else 60.0))
            number += pace.manner == "sets"
        number += pace.manner == "exercises"
    last_of = {message: at for _, at, message in told}
    return tuple(Kept(at, act, on, last_of[message], message) for at, (act, _, message) in enumerate(told))
