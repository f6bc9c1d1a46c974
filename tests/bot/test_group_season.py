"""A whole season of the demo group through the real pass: nothing private in any post, and the rules seen at work."""

import re
from pathlib import Path

import pytest

from core.evidence.exercises import EXERCISES
from tests.sim.group_season import ASKS, BOASTS, LATE, LEAVES, SHOWN, season_in

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
    posts = [text for text, _ in season.posts()]
    names = [one.profile.name for one in season.lifters] + [season.gym.coach.name]
    seen = [*posts, *season.pictured()]
    assert len(seen) == len(posts) + 1
    assert {text: found for text in seen if (found := leaks(text, names))} == {}
    closes = [text for text in posts if "is closed" in text]
    assert len(closes) == 5
    assert posts[-1].startswith("Harbour spring is over.")
    assert any(over for _, over in season.posts())
    assert SHOWN[LATE] not in closes[0]
    assert SHOWN[LATE] in closes[-1]
    assert SHOWN[LEAVES] in closes[0]
    assert SHOWN[LEAVES] not in closes[-1]
    asked = [one.text for one in season.room.wire.sent if ASKS in one.text]
    assert any(SHOWN[BOASTS] in text for text in asked)
    lines = [line for line in posts[-1].split("\n") if re.match(r"\d+\. ", line)]
    assert int(lines[-1].split(".")[0]) > 1
    assert SHOWN[BOASTS] not in lines[0]


def test_the_leak_test_finds_leaks() -> None:
    for text in ("Mo: 24 kg x 10", "Mo did goblet squat", "Mo's left knee, 4 of 10", "Ines says", "Mo weighs 80"):
        assert leaks(text, ["Ines"])
    assert not leaks("1. Mo: 95 points, 5 of 5 sessions, up 2", ["Ines"])
