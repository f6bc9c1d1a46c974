"""Makes stores to measure on: many invented lifters, each with weeks of sets, the messages of these and the answers.

Some hundred lifters are invented (bot.demo.crowd); more of them are copies of these in SQL, under other numbers.
"""

from datetime import datetime
from pathlib import Path
from typing import Final

from sqlalchemy import Connection, text

from bot.clock import now
from bot.demo import crowd
from bot.demo.gym import Gym, load_gym
from bot.store import people
from bot.store.engine import Store

INVENTED: Final = 200
"""Lifters who are invented one by one."""

FIRST_USER: Final = 1_000_001
_SEED: Final = 1


def url_of(file: Path) -> str:
    """The store's URL."""
    return f"sqlite+aiosqlite:///{file}"


async def make(file: Path, lifters: int, weeks: int) -> int:
    """A new store with that many lifters; says how many sets it holds."""
    moment = now()
    gym = load_gym(moment.date())
    invented = min(lifters, INVENTED)
    async with await Store.open(url_of(file)) as store:
        coach, group = await store.write(lambda conn: _coach(conn, gym, moment))
        await crowd.write_down(store, gym, crowd.Crowd(coach, group, 0, invented, weeks, _SEED), moment)
        for turn in range(1, lifters // invented):
            await store.write(lambda conn, turn=turn: _copied(conn, turn, invented))  # type: ignore[misc]
        await store.write(_answered)
        return await store.read(lambda conn: int(conn.execute(text("SELECT count(*) FROM act")).scalar_one()))


def _coach(conn: Connection, gym: Gym, at: datetime) -> tuple[int, int]:
    coach = people.add(conn, gym.coach.name, str(gym.coach.zone), at, coaches=True)
    people.set_profile(conn, coach.id, gym.coach)
    people.reach(conn, coach.id, "telegram", gym.coach_user)
    return coach.id, people.add_group(conn, gym.group, coach.id, [])


_PEOPLE: Final = ("lifter", "plan", "silence")
_STEP: Final = 1_000_000
"""Between the keys of one turn of copies and those of the next."""


def _copied(conn: Connection, turn: int, invented: int) -> None:
    """All that the invented lifters have once more, for as many others."""
    step = turn * _STEP
    _again(conn, "person", {"id": f"id + {step}", "name": f"name || '-{turn}'"}, f"lifts = 1 AND id < {_STEP}")
    of_crowd = f"person < {_STEP} AND person IN (SELECT id FROM person WHERE lifts = 1)"
    for table in _PEOPLE:
        _again(conn, table, {"person": f"person + {step}"}, of_crowd)
    numbers = {"person": f"person + {step}", "user": f"user + {turn * invented}"}
    _again(conn, "address", numbers, of_crowd)
    numbers = {"id": f"id + {step}", "platform": f"platform + {turn * invented}", "person": f"person + {step}"}
    _again(conn, "chat", numbers, of_crowd)
    _again(conn, "member", {"person": f"person + {step}"}, of_crowd)
    numbers = {"seq": f"seq + {step}", "update_id": f"update_id + {step}", "chat": f"chat + {turn * invented}"}
    _again(conn, "inbox", numbers, f"seq < {_STEP}")
    numbers = {"id": f"id + {step}", "place": f"place + {step * 1000}"}
    numbers |= {name: f"{name} + {step}" for name in ("person", "message", "origin")}
    _again(conn, "act", numbers, f"id < {_STEP}")


def _again(conn: Connection, table: str, changed: dict[str, str], which: str) -> None:
    names = [row[1] for row in conn.exec_driver_sql(f"PRAGMA table_info({table})")]
    kept = ", ".join(f'"{name}"' for name in names)
    new = ", ".join(changed.get(name, f'"{name}"') for name in names)
    conn.exec_driver_sql(f"INSERT INTO {table} ({kept}) SELECT {new} FROM {table} WHERE {which}")


def _answered(conn: Connection) -> None:
    """Each message got its answer, as in a service that ran all the time."""
    conn.exec_driver_sql(
        "INSERT INTO outbox (chat, kind, text, buttons, state, attempts, made, message_id, reply_to)"
        " SELECT chat.id, 'reply', 'Kept. Next set: 60 kg for 8 to 10.', '[]', 'sent', 0, inbox.received, inbox.seq,"
        " inbox.seq FROM inbox JOIN chat ON chat.channel = 'telegram' AND chat.platform = inbox.chat"
    )
