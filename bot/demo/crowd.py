"""Writes down many invented lifters at once, for measuring: people, messages and the sets that they hold.

Each set points to a message whose text says it, as with anybody; nothing was advised to them, so no targets stand.
"""

import json
from collections.abc import Iterator
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from random import Random
from typing import Any, Final

from sqlalchemy import Connection, func, insert, select

from bot.channels import terminal
from bot.demo import life
from bot.demo.gym import Gym, Invented
from bot.folding import FOLDING
from bot.store import people, plans
from bot.store.acts import PLACES
from bot.store.engine import Store
from bot.store.shapes import act_text
from bot.store.tables import act, inbox
from core.evidence.exercises import EXERCISES
from core.model.acts import SetAct
from core.model.plan import TrainingDay

_AT_ONCE: Final = 100
"""Lifters in one transaction."""
_FIRST_USER: Final = 1_000_001
_KEPT_SHARE: Final = 0.92


@dataclass(frozen=True, slots=True)
class Crowd:
    """Lifters number ``done`` + 1 to ``lifters``, each with ``weeks`` of history ending yesterday."""

    coach: int
    group: int
    done: int
    lifters: int
    weeks: int
    seed: int


async def write_down(store: Store, gym: Gym, wanted: Crowd, now: datetime) -> None:
    """Write all of them down, some in each transaction."""
    for first in range(wanted.done, wanted.lifters, _AT_ONCE):
        numbers = range(first, min(first + _AT_ONCE, wanted.lifters))
        await store.write(lambda conn, numbers=numbers: _some(conn, gym, wanted, numbers, now))  # type: ignore[misc]


def _some(conn: Connection, gym: Gym, wanted: Crowd, numbers: range, now: datetime) -> None:
    seq = conn.execute(select(func.coalesce(func.max(inbox.c.seq), 0))).scalar_one()
    messages: list[dict[str, Any]] = []
    sets: list[dict[str, Any]] = []
    for number in numbers:
        chance = Random(f"{wanted.seed}/{number}")  # noqa: S311  # an invented history, nothing secret
        who = _someone(gym, number, chance)
        person = _enter(conn, wanted, who, number)
        for at, day in _days(who, wanted.weeks, now):
            if chance.random() > _KEPT_SHARE:
                continue
            seq += 1
            message, done = _session(who, day, (now - at) / timedelta(weeks=1), chance)
            body = {"user": _FIRST_USER + number, "private": True, "message": seq, "text": message}
            messages.append(_message(seq, _FIRST_USER + number, body, at))
            sets += [_set(person, seq, place, one, at, who) for place, one in enumerate(done)]
    for table, rows in ((inbox, messages), (act, sets)):
        if rows:
            conn.execute(insert(table), rows)


def _someone(gym: Gym, number: int, chance: Random) -> Invented:
    """One of the named lifters under another name, with another strength, weight and pace."""
    like = gym.lifters[number % len(gym.lifters)]
    scale = chance.uniform(0.7, 1.3)
    weight = round((like.lifter.bodyweight_kg or 75) * chance.uniform(0.85, 1.15), 1)
    return replace(
        like,
        profile=replace(like.profile, name=f"lifter-{number + 1}"),
        lifter=replace(like.lifter, bodyweight_kg=weight, aches=()),
        strength={exercise: value * scale for exercise, value in like.strength.items()},
        gain_per_week=like.gain_per_week * chance.uniform(0.5, 1.5),
    )


def _enter(conn: Connection, wanted: Crowd, who: Invented, number: int) -> int:
    person = people.add(conn, who.profile.name, str(who.profile.zone), datetime(2026, 1, 1, tzinfo=UTC)).id
    people.make_lifter(conn, person, wanted.coach, who.lifter)
    people.set_profile(conn, person, who.profile)
    plans.set_weekly(conn, person, who.plan)
    for channel in ("telegram", terminal.NAME):
        people.reach(conn, person, channel, _FIRST_USER + number)
    people.put_member(conn, wanted.group, person)
    return person


def _days(who: Invented, weeks: int, now: datetime) -> Iterator[tuple[datetime, TrainingDay]]:
    today = now.astimezone(who.profile.zone).date()
    for back in range(weeks * 7, 0, -1):
        on = today - timedelta(days=back)
        if (day := who.plan.on(on.weekday())) is not None:
            yield datetime.combine(on, day.at, tzinfo=who.profile.zone).astimezone(UTC), day


def _session(who: Invented, day: TrainingDay, weeks_ago: float, chance: Random) -> tuple[str, list[SetAct]]:
    lines, acts = [], []
    for item in day.exercises:
        done = life.train(who, item.exercise, life.opening(item.aim, item.exercise), weeks_ago, chance)
        lines.append(life.text(who, item.exercise, done, chance))
        acts += [_act(item.exercise, one) for one in done]
    return "\n".join(lines), acts


def _act(exercise: str, one: life.Done) -> SetAct:
    row = EXERCISES[exercise]
    held = row.pattern == "hold"
    reps, hold = (None, float(one.count)) if held else (one.count, None)
    return SetAct(exercise, one.load, reps, hold_s=hold, side=row.default_side)


def _message(seq: int, user: int, body: dict[str, Any], at: datetime) -> dict[str, Any]:
    row = {"seq": seq, "channel": terminal.NAME, "update_id": seq, "chat": user, "body": json.dumps(body)}
    return row | {"received": at, "state": "done", "attempts": 0, "message_id": seq, "reader": FOLDING.version}


def _set(person: int, seq: int, place: int, one: SetAct, at: datetime, who: Invented) -> dict[str, Any]:
    row = {"person": person, "kind": "set", "exercise": one.exercise, "on": at.astimezone(who.profile.zone).date()}
    row |= {"at": at, "body": act_text(one), "message": seq, "origin": seq, "place": seq * PLACES + place}
    return row | {"state": "kept"}
