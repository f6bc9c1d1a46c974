"""Conversations of the coach's desk, word for word, through the real shell and the real core."""

from pathlib import Path

import pytest

from tests.bot.office import played, printed, scripts, steps_of

TALKS = [(path.stem, path.read_text(encoding="utf-8")) for path in scripts()]
LEAST = 40


@pytest.mark.parametrize("text", [text for _, text in TALKS], ids=[name for name, _ in TALKS])
async def test_talk_goes_as_written(text: str, tmp_path: Path) -> None:
    remarks, steps = steps_of(text)
    assert printed(remarks, await played(tmp_path, steps)) == text


def test_there_are_enough_and_each_says_what_it_shows() -> None:
    assert len(TALKS) >= LEAST
    assert all(text.startswith("# ") for _, text in TALKS)
