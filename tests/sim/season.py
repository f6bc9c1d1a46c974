"""``python -m tests.sim.season``: is the challenge fair? Simulated members, the real core and scoring, one table.

Points are to follow diligence and nothing else: not strength, sex, body weight, kit or years of training, and not lies.
"""

import argparse
import time
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from dataclasses import dataclass, field, replace
from functools import partial
from pathlib import Path
from typing import Final, Literal

import numpy as np
from pydantic import TypeAdapter
from scipy.stats import spearmanr

from core.challenge.ledger import chances_of
from core.challenge.standings import points_of
from tests.sim.season_life import CHALLENGE, Lived, Manner, inflated, paced, patient, said_yes, season, told_twice
from tests.sim.season_people import FULL, draw_member

GROUPS = 4
"""Groups of different people for the correlations; one of 400 is off by 0.05 (sd) by chance alone."""

TRUE = ("honest", "misses")
"""Manners that tell only what happened: the coach says yes to what waited."""

MANNERS = {
    "honest": Manner(),
    "inflates": Manner(tell=inflated),
    "patient": Manner(tell=patient),
    "invents": Manner(invents=0.3),
    "misses": Manner(skips=0.3),
}

LIARS = (
    ("reports inflated by 20 %", "inflates", "honest"),
    ("reports inflated by a little more each week, 24 % in the sixth", "patient", "honest"),
    ("sessions invented, told in one message", "invents", "misses"),
)
"""What the liar does, and what the twin does with the same luck: the same, or only what was true of it."""


@dataclass(frozen=True, slots=True)
class Line:
    """What one member brought: points, the member's nature, how much waited, what became of targets."""

    points: float
    nature: dict[str, float]
    diligence: float
    held: int
    results: Counter[str] = field(default_factory=Counter)
    sessions: int = 0
    late: int = 0
    otherwise: float = 0.0
    """Points of the same season told otherwise: every session twice (honest), or set by set in real time (invents)."""


@dataclass(frozen=True, slots=True)
class Group:
    """Whose season it is: how many members, the seed, and their diligence.

    ``even``: all have the same habits, and each their luck with them. ``full``: all do all that is asked, so that what
    differs is the scoring's doing. ``varied``: habits differ.
    """

    members: int
    seed: int
    diligence: Literal["even", "full", "varied"] = "even"


@dataclass(frozen=True, slots=True)
class Pool:
    """Who lives the seasons, and where they are kept, so that a long run can be broken off and goes on."""

    workers: ProcessPoolExecutor
    folder: Path | None = None

    def kept(self, name: str) -> list[Line]:
        """The seasons that are there, from the first member on."""
        file = self.folder / name if self.folder is not None else None
        return _LINES.validate_json(f"[{','.join(file.read_text().splitlines())}]") if file and file.exists() else []

    def keep(self, name: str, one: Line) -> None:
        """Write one season down."""
        if self.folder is not None:
            with (self.folder / name).open("a") as file:
                file.write(_LINE.dump_json(one).decode() + "\n")


_LINE: Final = TypeAdapter(Line)
_LINES: Final = TypeAdapter(list[Line])


def line(number: int, group: Group, manner: str) -> Line:
    """One member's season."""
    member = draw_member(group.seed, number, varied=group.diligence == "varied")
    if group.diligence == "full":
        member = replace(member, habits=FULL)
    nature = {
        "strength": member.strength,
        "body weight": member.bodyweight,
        "kit size": float(member.kit),
        "experience": member.weeks_trained,
        "sex": float(member.woman),
    }
    lived = season(member, number, MANNERS[manner])
    points = _exact(said_yes(lived) if manner in TRUE else lived)
    other = _exact(said_yes(paced(lived) if manner == "invents" else told_twice(lived)))
    return Line(points, nature, member.diligence, lived.held, Counter(lived.results), lived.sessions, lived.late, other)


def _exact(lived: Lived) -> float:
    """Points before rounding; the rounded ones are those that are shown."""
    chances = chances_of(CHALLENGE, lived.record)
    if points_of(CHALLENGE, chances) is None:
        return 0.0
    return 100.0 * sum(one.earned for one in chances) / sum(one.worth for one in chances)


def lines(group: Group, manner: str, pool: Pool) -> list[Line]:
    """Every member's season; those that were kept are not lived again."""
    kept = pool.kept(f"{manner}-{group.diligence}-{group.seed}")
    fresh = range(len(kept), group.members)
    found = pool.workers.map(partial(line, group=group, manner=manner), fresh, chunksize=4)
    for one in found:
        kept.append(one)
        pool.keep(f"{manner}-{group.diligence}-{group.seed}", one)
    return kept[: group.members]


def correlation(points: list[float], other: list[float]) -> float:
    """Rank correlation; ties share their rank."""
    return float(spearmanr(points, other).statistic)


def no_gain(liars: list[Line], twins: list[Line]) -> float:
    """The share of liars whose shown points, without what waits for the coach, are no more than the twin's."""
    pairs = zip(liars, twins, strict=True)
    return float(np.mean([round(liar.points) <= round(twin.points) for liar, twin in pairs]))


def gain(liars: list[Line], twins: list[Line]) -> float:
    """Mean points of the liars beyond the twins'."""
    return float(np.mean([liar.points - twin.points for liar, twin in zip(liars, twins, strict=True)]))


def row(name: str, value: float, goal: str = "", good: bool | None = None) -> str:
    """One line of the table."""
    verdict = "" if good is None else "yes" if good else "no"
    return f"| {name} | {value:.2f} | {goal} | {verdict} |"


def report(group: Group, groups: int, pool: Pool) -> list[str]:
    """The whole table, of so many groups where people are compared."""
    honest = {manner: lines(group, manner, pool) for manner in TRUE}
    even = honest["honest"]
    points = [one.points for one in even]
    out = ["| measure | value | goal | reached |", "| --- | --- | --- | --- |"]
    others = [replace(group, seed=group.seed + more) for more in range(1, groups)]
    out += _fairness("equal diligence", [even, *(lines(one, "honest", pool) for one in others)])
    full = [lines(replace(one, diligence="full"), "honest", pool) for one in (group, *others)]
    out += _fairness("all done as asked", full)
    out += [_apart(name, [one for even in full for one in even]) for name in NATURE]
    varied = lines(replace(group, diligence="varied"), "honest", pool)
    found = correlation([one.points for one in varied], [one.diligence for one in varied])
    out.append(row("varied diligence: points with diligence", found, "0.70 or more", found >= 0.7))
    fewer = honest["misses"]
    for name, manner, twin in LIARS:
        liars = lines(group, manner, pool)
        share = no_gain(liars, honest[twin])
        out.append(row(f"{name}: no gain over the honest twin", share, "0.95 or more", share >= 0.95))
        out.append(row(f"{name}: mean points beyond the twin's", gain(liars, honest[twin])))
        out.append(row(f"{name}: a report waited as beyond belief", _any_held(liars)))
    again = float(np.mean([one.otherwise <= one.points for one in even]))
    out.append(row("every session told twice: no gain over the honest twin", again, "0.95 or more", again >= 0.95))
    acted = [replace(one, points=one.otherwise) for one in liars]
    out.append(row("sessions invented set by set in real time: mean points beyond the twin's", gain(acted, fewer)))
    waited = sum(one.late for one in even) / sum(one.sessions for one in even)
    out.append(row("honest sessions told in more than one message that were not taken as live", waited))
    out.append(row("honest members of whom any report waited as beyond belief", _any_held(even)))
    told = sum(sum(count for name, count in one.results.items() if name != "none") for one in even)
    out.append(row("honest reports that waited as beyond belief", sum(one.held for one in even) / told))
    total: Counter[str] = sum((one.results for one in even), Counter())
    became = ", ".join(f"{name} {count / total.total():.0%}" for name, count in total.most_common())
    out.append(f"\nWhat became of targets at equal diligence: {became}")
    out.append(f"Points at equal diligence: mean {np.mean(points):.0f}, sd {np.std(points):.0f}")
    return out


NATURE = ("strength", "body weight", "kit size", "experience")
SEXES = (("women", 1.0), ("men", 0.0))


def _any_held(members: list[Line]) -> float:
    return float(np.mean([one.held > 0 for one in members]))


def _fairness(how: str, groups: list[list[Line]]) -> list[str]:
    """Points against nature: the mean over groups of different people with its standard error, and each."""
    out = [_with(name, groups, how) for name in (*NATURE, "sex")]
    for sex, is_ in SEXES:
        own = [[one for one in even if one.nature["sex"] == is_] for even in groups]
        out += [_with(name, own, f"{how}, {sex} alone") for name in NATURE]
    return out


def _apart(name: str, members: list[Line]) -> str:
    """How many points lie between the quarters with the least and the most of something."""
    order = sorted(members, key=lambda one: one.nature[name])
    quarter = len(order) // 4
    least, most = (float(np.mean([one.points for one in some])) for some in (order[:quarter], order[-quarter:]))
    return row(f"all done as asked: points of the quarter with the most {name} less those of the least", most - least)


def _with(name: str, groups: list[list[Line]], whose: str) -> str:
    found = [correlation([one.points for one in even], [one.nature[name] for one in even]) for even in groups]
    mean, each = float(np.mean(found)), ", ".join(f"{one:.2f}" for one in found)
    error = 1.0 / np.sqrt(sum(len(even) for even in groups))
    told = f"{whose}: points with {name} (standard error {error:.2f}; groups: {each})"
    return row(told, mean, "within 0.10 of 0", abs(mean) <= 0.1)


def main() -> None:
    """Read the options, run, print."""
    parser = argparse.ArgumentParser(prog="python -m tests.sim.season", description=__doc__)
    parser.add_argument("--members", type=int, default=400)
    parser.add_argument("--groups", type=int, default=GROUPS)
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--workers", type=int, default=2)
    parser.add_argument("--keep", type=Path, help="a folder for the seasons: what is there is not lived again")
    given = parser.parse_args()
    began = time.perf_counter()
    with ProcessPoolExecutor(given.workers) as workers:
        print("\n".join(report(Group(given.members, given.seed), given.groups, Pool(workers, given.keep))))
    print(f"\n{given.members} members, six weeks, seed {given.seed}, {time.perf_counter() - began:.0f} s")


if __name__ == "__main__":
    main()
