"""Logs hold no token, no text of a message and no name, whoever writes them."""

import io
import json
import logging
from collections.abc import Iterator

import pytest
import structlog

from bot import log

SECRET = "AbCdEf-ghIjKl_mnOpQrStUvWxYz0123456"
TOKEN = f"123456789:{SECRET}"


@pytest.fixture
def out() -> Iterator[io.StringIO]:
    """What is logged, with logging put back as it was afterwards."""
    top = logging.getLogger()
    before, level = top.handlers[:], top.level
    levels = {name: logging.getLogger(name).level for name in log._QUIET}
    stream = io.StringIO()
    log.set_up("debug", stream)
    yield stream
    top.handlers[:], top.level = before, level
    for name, was in levels.items():
        logging.getLogger(name).setLevel(was)
    structlog.reset_defaults()


def lines(out: io.StringIO) -> list[dict[str, object]]:
    return [json.loads(line) for line in out.getvalue().splitlines()]


def test_lines_are_json_when_nobody_watches(out: io.StringIO) -> None:
    structlog.get_logger("bot.intake").info("kept", updates=3)
    logging.getLogger("some.library").warning("careful %s", "now")
    first, second = lines(out)
    assert (first["event"], first["updates"], first["level"]) == ("kept", 3, "info")
    assert (second["event"], second["level"]) == ("careful now", "warning")


@pytest.mark.parametrize("token", [TOKEN, TOKEN.replace(":", "%3A")])
def test_a_token_is_struck_out_wherever_it_stands(out: io.StringIO, token: str) -> None:
    address = f"http://127.0.0.1/bot{token}/getMe"
    structlog.get_logger("bot").warning(f"went to {address}", where=address, inside={"deep": [token]})
    logging.getLogger("some.library").warning("POST %s", address)
    try:
        int(token)
    except ValueError:
        logging.getLogger("some.library").exception("failed")
        structlog.get_logger("bot").exception("failed")
    assert len(lines(out)) == 4
    assert SECRET not in out.getvalue()
    assert out.getvalue().count("[token]") >= 6


@pytest.mark.parametrize("name", ["httpx", "httpcore", "telegram", "aiosqlite", "sqlalchemy.engine"])
def test_libraries_that_chat_about_addresses_and_words_are_kept_quiet(out: io.StringIO, name: str) -> None:
    logging.getLogger(name).info("POST somewhere")
    logging.getLogger(name).debug("text=my knee")
    assert out.getvalue() == ""


def test_a_fault_says_what_and_where_and_not_what_was_said(out: io.StringIO) -> None:
    try:
        int("my left knee")
    except ValueError as bug:
        log.fault(structlog.get_logger("bot"), "message_failed", bug, seq=7)
    (row,) = lines(out)
    assert (row["event"], row["kind"], row["seq"]) == ("message_failed", "ValueError", 7)
    assert str(row["at"]).startswith(__name__ + ":")
    assert "knee" not in out.getvalue()


def test_a_level_silences_what_is_below_it(out: io.StringIO) -> None:
    log.set_up("warning", out)
    structlog.get_logger("bot").info("kept")
    structlog.get_logger("bot").warning("careful")
    assert [row["event"] for row in lines(out)] == ["careful"]
