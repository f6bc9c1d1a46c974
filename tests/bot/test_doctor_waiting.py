"""What the doctor says of waiting, doubtful and dead messages, and of secrets."""

from dataclasses import replace
from pathlib import Path

import pytest
from pydantic import SecretStr

from bot import doctor_waiting
from bot.config import Settings
from bot.store.watch import Figures

QUIET = Figures({"waiting": 0, "dead": 0, "aside": 0}, {}, 0.0, 0.0, 0.0, 0, 0)


@pytest.mark.parametrize(
    ("seen", "well", "words"),
    [
        (QUIET, True, "0 wait"),
        (replace(QUIET, came_in={"waiting": 3, "aside": 1}, oldest_in=600.0), True, "3 wait, 0 could not be worked"),
        (replace(QUIET, came_in={"waiting": 3}, oldest_in=601.0), False, "is `rungbook serve` running?"),
        (replace(QUIET, came_in={"dead": 2}), False, "2 could not be worked"),
    ],
)
def test_what_came_in_and_is_not_worked(seen: Figures, well: bool, words: str) -> None:
    said = doctor_waiting.came_in(seen)
    assert said[0] is well
    assert words in said[1]


def test_letters_given_up_are_counted_by_kind() -> None:
    letters = {("reply", "dead"): 2, ("post", "dead"): 1, ("prompt", "uncertain"): 4, ("summary", "queued"): 5}
    well, words = doctor_waiting.goes_out(replace(QUIET, goes_out=letters, closed_chats=3))
    assert well
    assert words == (
        "5 wait, 4 may or may not have arrived, 3 were given up (1 post, 2 reply); 3 chats are closed to us"
    )


def test_letters_that_wait_for_long_are_well_only_when_we_were_told_to_wait() -> None:
    late = replace(QUIET, oldest_out=7200.0)
    assert doctor_waiting.goes_out(late)[0] is False
    told, words = doctor_waiting.goes_out(replace(late, halted=300.0))
    assert told
    assert "wait 5 min more" in words


def test_secrets_that_others_may_read_or_guess_are_named_and_not_shown(tmp_path: Path) -> None:
    file = tmp_path / ".env"
    file.write_text("RUNGBOOK_TOKEN=x")
    file.chmod(0o644)
    assert doctor_waiting.secrets(Settings(), file)[0] is False
    file.chmod(0o600)
    assert doctor_waiting.secrets(Settings(), file)[0] is True
    well, words = doctor_waiting.secrets(Settings(intake="webhook", secret=SecretStr("short-one")), file)
    assert (well, "short-one" in words) == (False, False)
    assert doctor_waiting.secrets(Settings(intake="webhook", secret=SecretStr("x" * 24)), file)[0] is True
