"""How a service of many bots spreads over several databases: a simulated evening of 100,000 clients. Prints the tables.

python -m tests.sim.growth [--clients 100000] [--server-rate 150] [--seed 1]

What is compared: the bot as the key by which rows are spread, put by chance or the largest first where most room is,
against the lifter as the key; how even the servers' load is in the busiest minute, and how much must ask several
servers. And what Telegram's limit of one bot means: how many clients a bot can have before answers wait.

Everything about people is a row below, by judgement without a source. ``--server-rate`` is measured, not assumed: what
one PostgreSQL keeps a second (tests.bench.bench_workers on the machine in question).
"""

import argparse
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

import numpy as np
from numpy.typing import NDArray

Counts = NDArray[np.int64]

MEDIAN_CLIENTS: Final = 40
"""Of a bot; half of all coaches have fewer."""
SPREAD: Final = 1.3
"""Of the logarithm of a bot's clients: the largest of two thousand has some thousands."""
LARGEST: Final = 5000
TRAINING: Final = 0.5
"""Share of clients who train on a busy day."""
MESSAGES: Final = 40
"""In a session."""
BEGINS: Final = (18.5, 1.5)
"""Hour of the day at which a session begins: mean and standard deviation."""
LASTS_MIN: Final = 60
PACE: Final = 25
"""Answers a second that we send for one bot (bot/outbox.py); Telegram takes about 30."""
HEADROOM: Final = 0.6
"""Share of a server's rate that is planned for in the busiest minute."""
SERVERS: Final = (2, 4, 8, 16)
MINUTES: Final = 24 * 60


@dataclass(frozen=True)
class Evening:
    """Messages of every client's bot by the minute."""

    sizes: Counts
    """Clients of each bot."""
    by_bot: Counts
    """Messages: a row a bot, a column a minute of the day."""
    clients: Counts
    """The bot of each client who trains."""
    minutes: Counts
    """Of each message; the messages of one client stand side by side."""

    @property
    def busiest(self) -> int:
        """The minute with the most messages."""
        return int(self.by_bot.sum(axis=0).argmax())


def sizes(clients: int, chance: np.random.Generator) -> Counts:
    """Bots until there are so many clients."""
    drawn = np.exp(chance.normal(np.log(MEDIAN_CLIENTS), SPREAD, size=clients))
    drawn = np.clip(np.rint(drawn), 1, LARGEST).astype(np.int64)
    return drawn[: int(np.searchsorted(np.cumsum(drawn), clients)) + 1]


def evening(of: Counts, chance: np.random.Generator) -> Evening:
    """A busy day."""
    everyone = np.repeat(np.arange(len(of)), of)
    here = everyone[chance.random(len(everyone)) < TRAINING]
    begun = chance.normal(*BEGINS, size=len(here)) * 60
    minutes = (begun[:, None] + chance.random((len(here), MESSAGES)) * LASTS_MIN).astype(np.int64) % MINUTES
    by_bot = np.zeros((len(of), MINUTES), dtype=np.int64)
    np.add.at(by_bot, (np.repeat(here, MESSAGES), minutes.ravel()), 1)
    return Evening(of, by_bot, here, minutes)


def by_chance(loads: Counts, servers: int, chance: np.random.Generator) -> Counts:
    """Each at a server by its hash."""
    return chance.integers(servers, size=len(loads))


def largest_first(loads: Counts, servers: int) -> Counts:
    """Each where most room is, the largest first: what an operator does who moves bots."""
    room = np.zeros(servers)
    place = np.zeros(len(loads), dtype=np.int64)
    for one in np.argsort(-loads):
        place[one] = int(room.argmin())
        room[place[one]] += loads[one]
    return place


def unevenness(loads: Counts, place: Counts, servers: int) -> float:
    """The fullest server's load over the mean."""
    found = np.bincount(place, weights=loads, minlength=servers)
    return float(found.max() / found.mean())


def waits(clients: int, chance: np.random.Generator) -> float:
    """Seconds that an answer waits in the busiest hour of a bot with so many clients: the 99th of a hundred."""
    here = int(clients * TRAINING)
    begun = chance.normal(*BEGINS, size=here) * 3600
    came = np.sort((begun[:, None] + chance.random((here, MESSAGES)) * LASTS_MIN * 60).ravel())
    middle = np.searchsorted(came, (BEGINS[0] * 3600, (BEGINS[0] + 1) * 3600))
    # A queue of one server that takes 1/PACE each: left at = max(came, left before) + 1/PACE.
    served = np.arange(len(came)) / PACE
    left = np.maximum.accumulate(came - served) + served
    return float(np.quantile((left - came)[middle[0] : middle[1]], 0.99))


def table(head: Sequence[str], rows: Sequence[Sequence[object]]) -> None:
    """As the page has it."""
    print("| " + " | ".join(head) + " |")
    print("|" + " --- |" * len(head))
    for row in rows:
        print("| " + " | ".join(str(cell) for cell in row) + " |")
    print()


def spread_over(day: Evening, chance: np.random.Generator) -> list[list[object]]:
    """A row for each number of servers."""
    loads = day.by_bot[:, day.busiest]
    each = (day.minutes == day.busiest).sum(axis=1)
    rows: list[list[object]] = []
    for servers in SERVERS:
        tries = [unevenness(loads, by_chance(loads, servers, chance), servers) for _ in range(20)]
        lifters = unevenness(each, by_chance(each, servers, chance), servers)
        packed = unevenness(loads, largest_first(loads, servers), servers)
        asked = np.minimum(day.sizes, np.rint(servers * (1 - (1 - 1 / servers) ** day.sizes))).astype(int)
        rows.append(
            [servers, f"{np.median(tries):.2f} ({max(tries):.2f})", f"{packed:.2f}", f"{lifters:.2f}", 0, asked.sum()]
        )
    return rows


def main() -> None:
    """The command."""
    words = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    words.add_argument("--clients", type=int, default=100_000)
    words.add_argument("--server-rate", type=float, default=150, help="messages a second that one PostgreSQL keeps")
    words.add_argument("--seed", type=int, default=1)
    asked = words.parse_args()
    chance = np.random.default_rng(asked.seed)
    day = evening(sizes(asked.clients, chance), chance)
    whole = day.by_bot.sum(axis=0)
    rate = whole[day.busiest] / 60
    top = day.by_bot.max(axis=1) / 60
    print(
        f"{day.sizes.sum():,} clients of {len(day.sizes):,} bots (median {np.median(day.sizes):.0f}, largest"
        f" {day.sizes.max():,}); {whole.sum():,} messages in the day, {rate:.0f} a second in the busiest minute;"
        f" the busiest bot {top.max():.1f} a second, bots beyond {PACE}: {(top > PACE).sum()}.\n"
        f"At {asked.server_rate:.0f} messages a second a server, filled to {HEADROOM:.0%}:"
        f" {int(np.ceil(rate / (asked.server_rate * HEADROOM)))} servers.\n"
    )
    table(
        ("servers", "bot, by hash: fullest over mean, median of 20 (worst)", "bot, largest first", "lifter, by hash",
         "asks of several servers a day, key bot", "the same, key lifter (a digest a coach)"),
        spread_over(day, chance),
    )  # fmt: skip
    table(
        ("clients of one bot", "answers wait in the busiest hour, p99"),
        [
            [f"{number:,}", f"{waits(number, chance):.1f} s"]
            for number in (1000, 5000, 10_000, 14_000, 16_000, 18_000, 20_000)
        ],
    )


if __name__ == "__main__":
    main()
