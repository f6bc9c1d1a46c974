"""What answers "how much of 10?", and what is a set or nothing of the kind."""

import pytest

from core.flow.levels import Level, level_in


@pytest.mark.parametrize(
    ("text", "level"),
    [
        ("3", Level(3, plainly=False)),
        ("3ish", Level(3, plainly=False)),
        ("its like a 3", Level(3, plainly=True)),
        ("It's about a 4, maybe", Level(4, plainly=True)),
        ("3/10", Level(3, plainly=True)),
        ("5 out of 10 tops", Level(5, plainly=True)),
        ("3 or 4", Level(4, plainly=False)),
        ("2-3 i guess", Level(3, plainly=False)),
        ("two", Level(2, plainly=False)),
        ("2,5", Level(2.5, plainly=False)),
        ("como un 4", Level(4, plainly=True)),
        ("so ne 3", Level(3, plainly=True)),
        ("drei von zehn", Level(3, plainly=True)),
        ("0 now", Level(0, plainly=False)),
    ],
)
def test_a_level_is_heard(text: str, level: Level) -> None:
    """The higher end of a span; words that only a level has make it plain."""
    assert level_in(text) == level


@pytest.mark.parametrize(
    "text", ["12", "3x10", "60x8", "8 reps", "8 left", "3 sets", "its fine", "", "like", "a 20", "3 10"]
)
def test_what_is_no_level(text: str) -> None:
    """More than ten, a set, words alone."""
    assert level_in(text) is None
