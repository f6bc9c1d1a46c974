"""Whole conversations, word for word: every script of fixtures/conversations gives the answers that it states."""

from pathlib import Path

import pytest

from tests.bot.scripts import parse, played, printed, scripts

SCRIPTS = list(scripts())
LEAST = 60


@pytest.mark.parametrize("path", SCRIPTS, ids=lambda path: path.stem)
def test_conversation_goes_as_written(path: Path) -> None:
    remarks, entries = parse(path.read_text(encoding="utf-8"))
    assert printed(remarks, played(entries)) == printed(remarks, entries)


@pytest.mark.parametrize("path", SCRIPTS, ids=lambda path: path.stem)
def test_every_message_is_answered_and_short(path: Path) -> None:
    _, entries = parse(path.read_text(encoding="utf-8"))
    for this, following in zip(entries, [*entries[1:], None], strict=True):
        if this.head in ("lifter", "press", "press data", "media") or this.head.startswith("edit"):
            assert following is not None, this.text
            assert following.head == "service", this.text
            assert 0 < len(following.text) < 900, following.text


def test_there_are_enough_and_each_says_what_it_shows() -> None:
    assert len(SCRIPTS) >= LEAST
    assert all(parse(path.read_text(encoding="utf-8"))[0] for path in SCRIPTS)
