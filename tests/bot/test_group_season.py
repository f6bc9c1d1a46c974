"""A whole season of the demo group through the real pass: nothing private in any post, and the rules seen at work."""

import re
from datetime import timedelta
from itertools import pairwise
from pathlib import Path

import pytest

from core.evidence.exercises import EXERCISES
from tests.sim.group_season import BOASTS, HURT, LATE, LEAVES, MONDAY, SHOWN, WEEKS, Season, season_in

UNITS = "kg|lb|lbs|kilos?|pounds?|reps?|sets?|s|cm|m|of 10(?! sessions)"
FIGURES = re.compile(rf"\b\d+([.,]\d+)?\s*({UNITS})\b", re.IGNORECASE)
PARTS = "knee|shoulder|lower back|elbow|wrist|hip|ache|aches|hurts?|pain|weigh\\w*|bodyweight"
BODY = re.compile(rf"\b({PARTS})\b", re.IGNORECASE)
SAID_OF_ALL = {"Weight on the bar doesn't.", "An ache or a pause costs nothing."}
"""Sentences of the opening that name such things without being about anyone."""


def leaks(post: str, names: list[str]) -> list[str]:
    """What of a post no member should see of another; ``names``: those that the coach calls them by."""
    for sentence in SAID_OF_ALL:
        post = post.replace(sentence, "")
    found = [name for name in names if re.search(rf"\b{name}\b", post)]
    found += [row.name for row in EXERCISES.values() if row.name.casefold() in post.casefold()]
    return found + [match.group() for pattern in (FIGURES, BODY) for match in pattern.finditer(post)]


@pytest.mark.slow
async def test_a_season_of_the_demo_group(tmp_path: Path) -> None:
    season = await season_in(tmp_path)
    _as_in_the_diary(season)
    _in_quiet_and_in_time(season)
    kept, anew = season.tables
    assert kept.standings == anew.standings  # the acts alone give the same points
    posts = [one.text for one in season.posts()]
    names = [one.profile.name for one in season.lifters] + [season.gym.coach.name]
    seen = [*posts, *season.pictured()]
    assert len(seen) == len(posts) + 1
    assert {text: found for text in seen if (found := leaks(text, names))} == {}
    closes = [text for text in posts if "is closed" in text]
    assert len(closes) == 5
    assert posts[-1].startswith("Harbour spring is over.")
    assert any(one.over for one in season.posts())
    assert SHOWN[LATE] not in closes[0]
    assert SHOWN[LATE] in closes[-1]
    assert SHOWN[LEAVES] in closes[0]
    assert SHOWN[LEAVES] not in closes[-1]
    assert all(SHOWN[BOASTS] in text for text in season.asked())
    assert 1 <= len(season.asked()) <= WEEKS  # one question a week at most
    lines = [line for line in posts[-1].split("\n") if re.match(r"\d+\. ", line)]
    assert int(lines[-1].split(".")[0]) > 1
    assert SHOWN[BOASTS] not in lines[0]


def _as_in_the_diary(season: Season) -> None:
    """Sessions kept of planned, as the season's own diary has them: of those who were there from first to last."""
    last = season.posts()[-1].text
    days = [MONDAY + timedelta(days=ahead) for ahead in range(7 * WEEKS)]
    for number, who in enumerate(season.lifters):
        if number in (LATE, LEAVES, HURT, BOASTS):
            continue
        kept = len(season.trained[number] & set(days))
        planned = sum(who.plan.on(day.weekday()) is not None for day in days)
        shown = SHOWN[number].rstrip(".")
        assert re.search(rf"^\d+\. {shown}: \d+ points, {kept} of {planned} sessions$", last, re.MULTILINE), shown


def _in_quiet_and_in_time(season: Season) -> None:
    """Nothing between the coach's quiet hours, a week's post written over and no new one, nothing that says nothing."""
    coach = season.gym.coach
    posts = season.posts()
    for one in posts:
        assert coach.quiet_to <= one.at.time() < coach.quiet_from, one
    weekly = [one for one in posts if re.match(r"Harbour spring(, week|: week)", one.text)]
    asked_for = 1  # "standings", once
    new = [one for one in weekly if not one.over]
    assert len(new) == 2 * WEEKS - 1 + asked_for
    assert all(before.text != after.text for before, after in pairwise(weekly) if after.over and before.over)


def test_the_leak_test_finds_leaks() -> None:
    for text in ("Mo: 24 kg x 10", "Mo did goblet squat", "Mo's left knee, 4 of 10", "Ines says", "Mo weighs 80"):
        assert leaks(text, ["Ines"])
    assert not leaks("1. Mo: 95 points, 5 of 5 sessions, up 2", ["Ines"])
