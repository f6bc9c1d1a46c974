"""The posts of a group's challenge: a table of standings in, words out. It is given no load, body, ache or target."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import timedelta
from typing import get_args

from core.evidence.numbers import value
from core.model.challenge import Challenge, Standing, Table
from core.model.quantities import Way
from core.say.render import Voice


def opening(voice: Voice, challenge: Challenge, link: str | None = None) -> str:
    """The post that opens a challenge and asks to join."""
    lines = [
        voice.say(
            "group.open",
            title=challenge.title,
            weeks=challenge.weeks,
            first=_day(voice, challenge),
            last=voice.date(challenge.last),
        ),
        voice.say(f"group.open.{challenge.counts}"),
        voice.say("group.open.points"),
        voice.say("group.open.shown.sessions" if challenge.counts == "sessions" else "group.open.shown"),
    ]
    if challenge.teams:
        lines.append(voice.say("group.open.teams", list=voice.listed(list(challenge.teams)), team=challenge.teams[0]))
    lines.append(voice.say("group.open.join"))
    if link is not None:
        lines.append(voice.say("group.open.door", link=link))
    return "\n".join(lines)


def _day(voice: Voice, challenge: Challenge) -> str:
    return f"{voice.weekday(challenge.starts)} {voice.date(challenge.starts)}"


def standings(voice: Voice, challenge: Challenge, table: Table, *, closed: bool) -> str:
    """The standings of a week, as they are now or as they were at its close."""
    key = "group.table.closed" if closed else "group.table"
    head = voice.say(key, title=challenge.title, week=table.week, weeks=challenge.weeks)
    return "\n".join((head, *_lines(voice, table), *_teams(voice, table), *_praise(voice, table)))


def final(voice: Voice, challenge: Challenge, table: Table) -> str:
    """The last post: who came first, and what all did together."""
    lines = [voice.say("group.final", title=challenge.title)]
    first = [one for one in table.standings if one.place == 1]
    if first:
        names = voice.listed([one.shown for one in first])
        points = _points(voice, first[0].points or 0)
        lines.append(voice.say("group.final.first", len(first), list=names, points=points))
    teams = [one.team for one in table.teams if one.place == 1]
    if teams:
        lines.append(voice.say("group.final.team", len(teams), list=voice.listed(teams)))
    kept, planned = (sum(getattr(one, name) for one in table.standings) for name in ("kept", "planned"))
    if planned:
        lines.append(voice.say("group.final.kept", n=kept, planned=planned))
    level = Table(table.week, tuple(replace(one, trend=None) for one in table.standings))
    return "\n".join((*lines, *_lines(voice, level)))


def _lines(voice: Voice, table: Table) -> Iterable[str]:
    if not table.standings:
        yield voice.say("group.none")
    for one in table.standings:
        if one.place is not None and one.points is not None:
            kept = voice.say("group.line.kept", one.planned, n=one.kept, planned=one.planned) if one.planned else ""
            slots = {"points": _points(voice, one.points), "kept": kept, "trend": _trend(voice, one)}
            yield voice.say("group.line", place=one.place, name=one.shown, **slots)
    yield from _unplaced(voice, [one for one in table.standings if one.place is None])


def _unplaced(voice: Voice, those: list[Standing]) -> Iterable[str]:
    """Those with too few chances for a place, on one line."""
    each = [
        voice.say("group.line.new.one", name=one.shown, kept=one.kept, planned=one.planned)
        if one.planned
        else one.shown
        for one in those
    ]
    if each:
        yield voice.say("group.line.new", n=round(value("challenge.least_sessions")), list=voice.listed(each))


def _points(voice: Voice, points: int) -> str:
    return voice.say("group.line.points", points, n=points)


def _trend(voice: Voice, one: Standing) -> str:
    if one.trend is None:
        return ""
    key = "even" if one.trend == 0 else "up" if one.trend > 0 else "down"
    return voice.say(f"group.line.{key}", n=abs(one.trend))


def _teams(voice: Voice, table: Table) -> list[str]:
    if not table.teams:
        return []
    each = [voice.say("group.team", team=one.team, points=_points(voice, one.points)) for one in table.teams]
    return [voice.say("group.teams", list=voice.listed(each))]


def _praise(voice: Voice, table: Table) -> list[str]:
    """A word for every step of the week: each way that went up, with those who made it go up."""
    names = {way: [name for name, ways in table.steps if way in ways] for way in get_args(Way)}
    each = [
        voice.say("group.steps.one", way=voice.say(f"group.way.{way}"), names=voice.listed(who))
        for way, who in names.items()
        if who
    ]
    return [voice.say("group.steps", list=voice.listed(each))] if each else []


def counting_from(voice: Voice, challenge: Challenge, name: str, joined: timedelta) -> str:
    """The answer to a join: ``joined`` is how long before the start it was (negative: after it)."""
    if joined <= timedelta(0):
        return voice.say("group.joined", name=name)
    return voice.say("group.joined.early", name=name, day=_day(voice, challenge))
