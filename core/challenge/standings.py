"""How they stand: records in, a table out, for a week as it was at its close or as it is now. Pure and repeatable.

Knows no words and no chats. Who has left is not shown; who was erased is not there to be shown.
"""

from collections import defaultdict
from collections.abc import Iterable
from statistics import fmean
from typing import Final

from core.challenge.ledger import chances_of, session_worth
from core.evidence.numbers import value
from core.model.challenge import Challenge, Chance, Entrant, Record, Standing, Table, TeamStanding
from core.model.quantities import Way

HUNDRED: Final = 100
_TINY: Final = 1e-9


def table(challenge: Challenge, records: Iterable[Record], week: int) -> Table:
    """The standings with everything up to the end of that week (1 is the first)."""
    all_ = tuple(records)
    chances = {one.entrant.who: chances_of(challenge, one) for one in all_}
    shown = [one.entrant for one in all_ if _still_in(one.entrant)]
    lines = [_line(challenge, entrant, chances[entrant.who], week) for entrant in shown]
    placed = _placed(sorted(lines, key=_order))
    return Table(week, placed, _teams(placed), _steps(shown, chances, week))


def points_of(challenge: Challenge, chances: Iterable[Chance]) -> int | None:
    """Points of a hundred, or None with too few chances for a place."""
    had = list(chances)
    worth = sum(one.worth for one in had)
    if worth < value("challenge.least_sessions") * session_worth(challenge) - _TINY:
        return None
    return round(HUNDRED * sum(one.earned for one in had) / worth)


def _still_in(entrant: Entrant) -> bool:
    return any(stay.until is None for stay in entrant.stays)


def _line(challenge: Challenge, entrant: Entrant, chances: tuple[Chance, ...], week: int) -> Standing:
    upto = [one for one in chances if one.week <= week]
    sessions = [one for one in upto if one.exercise is None]
    now, before = (points_of(challenge, some) for some in (upto, [one for one in upto if one.week < week]))
    trend = now - before if now is not None and before is not None else None
    kept = sum(one.rule == "session.kept" for one in sessions)
    return Standing(entrant.who, entrant.shown, now, None, kept, len(sessions), trend, entrant.team)


def _order(line: Standing) -> tuple[int, str]:
    return (-line.points if line.points is not None else 1, line.shown.casefold())


def _placed(lines: list[Standing]) -> tuple[Standing, ...]:
    ranks = _places([line.points for line in lines])
    return tuple(
        Standing(line.who, line.shown, line.points, place, line.kept, line.planned, line.trend, line.team)
        for line, place in zip(lines, ranks, strict=True)
    )


def _places(points: list[int | None]) -> list[int | None]:
    """The place of each, best first: as many as are better, and one; equal points share it."""
    return [
        None if mine is None else 1 + sum(other is not None and other > mine for other in points) for mine in points
    ]


def _teams(lines: tuple[Standing, ...]) -> tuple[TeamStanding, ...]:
    by_team: dict[str, list[int]] = defaultdict(list)
    for line in lines:
        if line.team is not None and line.points is not None:
            by_team[line.team].append(line.points)
    means = sorted(
        ((round(fmean(points)), team) for team, points in by_team.items()), key=lambda one: (-one[0], one[1])
    )
    places = _places([points for points, _ in means])
    return tuple(TeamStanding(team, points, place or 1) for (points, team), place in zip(means, places, strict=True))


def _steps(
    shown: list[Entrant], chances: dict[int, tuple[Chance, ...]], week: int
) -> tuple[tuple[str, tuple[Way, ...]], ...]:
    found = []
    for entrant in sorted(shown, key=lambda one: one.shown.casefold()):
        ways = [one.way for one in chances[entrant.who] if one.week == week and one.way is not None]
        if ways:
            found.append((entrant.shown, tuple(dict.fromkeys(ways))))
    return tuple(found)
