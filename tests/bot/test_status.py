"""Health, readiness and metrics: true numbers, and nothing of any person in them; the log likewise."""

import io
import logging
from collections.abc import AsyncIterator
from datetime import timedelta
from functools import partial
from pathlib import Path

import httpx
import pytest
import structlog
from sqlalchemy import insert

from bot import log, metrics, status
from bot.ports import Later, RawUpdate, Refused, Uncertain
from bot.store import outbox, people, watch
from bot.store.outbox import Letter
from bot.store.tables import agenda
from tests.bot.shell import CHANNEL, INES, MONDAY, RUTH, TOMAS, Shell, shell, with_people

PLANTED = {
    "name": "Zebulonia Quist",
    "text": "my left knee hurts since the yellow stairs",
    "token": "123456789:AAplanted-token-for-tests-only_00000",
    "secret": "planted-hook-secret-77",
    "code": "planted-invite-code-4411",
    "user": "7007007007",
}


@pytest.fixture
async def room(tmp_path: Path) -> AsyncIterator[Shell]:
    async with shell(tmp_path) as opened:
        yield await with_people(opened)


@pytest.fixture
def logged() -> io.StringIO:
    return io.StringIO()


@pytest.fixture(autouse=True)
def _logging(logged: io.StringIO) -> AsyncIterator[None]:
    top = logging.getLogger()
    before, level = top.handlers[:], top.level
    levels = {name: logging.getLogger(name).level for name in log._QUIET}
    log.set_up("debug", logged)
    yield  # type: ignore[misc]
    top.handlers[:], top.level = before, level
    for name, was in levels.items():
        logging.getLogger(name).setLevel(was)
    structlog.reset_defaults()


def caller(room: Shell, **checks: status.Check) -> httpx.AsyncClient:
    async def look() -> watch.Figures:
        return await room.store.read(partial(watch.figures, now=room.clock()))

    transport = httpx.ASGITransport(status.application(look, checks))
    return httpx.AsyncClient(transport=transport, base_url="http://here")


async def yes() -> bool:
    return True


async def no() -> bool:
    return False


async def broken() -> bool:
    raise RuntimeError(PLANTED["text"])


async def test_a_process_that_answers_is_healthy_and_one_that_can_work_is_ready(room: Shell) -> None:
    async with caller(room, telegram=yes) as call:
        assert (await call.get("/healthz")).text == "ok\n"
        answer = await call.get("/readyz")
    assert (answer.status_code, answer.text) == (200, "store: ok\ntelegram: ok\n")


@pytest.mark.parametrize("check", [no, broken])
async def test_what_is_not_well_is_named_and_nothing_more(room: Shell, check: status.Check) -> None:
    async with caller(room, telegram=check) as call:
        answer = await call.get("/readyz")
        assert (answer.status_code, answer.text) == (503, "store: ok\ntelegram: not ready\n")
        assert (await call.get("/healthz")).status_code == 200


async def test_a_store_that_is_down_is_not_ready_and_still_healthy(room: Shell) -> None:
    async def look() -> watch.Figures:
        raise OSError(PLANTED["text"])

    transport = httpx.ASGITransport(status.application(look, {}))
    async with httpx.AsyncClient(transport=transport, base_url="http://here") as call:
        answer = await call.get("/readyz")
        assert (answer.status_code, answer.text) == (503, "store: not ready\n")
        assert (await call.get("/healthz")).status_code == 200
        assert "rungbook_store_up 0.0" in (await call.get("/metrics")).text


def value(text: str, name: str) -> float:
    return float(next(line.rpartition(" ")[2] for line in text.splitlines() if line.startswith(name + " ")))


async def test_what_waits_is_given_up_or_doubtful_is_counted(room: Shell) -> None:
    def seed(conn: object) -> None:
        for user, words in ((RUTH, "1"), (TOMAS, "2"), (INES, "3")):
            to = people.chat_of(conn, CHANNEL, user)  # type: ignore[arg-type]
            assert to is not None
            outbox.queue(conn, Letter(words, kind="prompt", chat=to.id), MONDAY)  # type: ignore[arg-type]
        row = {"person": 2, "kind": "prompt", "on": MONDAY.date(), "due": MONDAY, "state": "waiting", "attempts": 0}
        conn.execute(insert(agenda).values(**row))  # type: ignore[attr-defined]

    await room.store.write(seed)
    room.wire.script = {
        RUTH: [Uncertain("x")],
        TOMAS: [Refused("blocked", chat_gone=True)],
        INES: [Later(90, scope="bot")],
    }
    await room.post.drain()
    await room.intake.keep((room.raw(user=RUTH, text="squat 60x8"),))
    room.clock.at = MONDAY + timedelta(seconds=30)
    async with caller(room) as call:
        text = (await call.get("/metrics")).text
    assert value(text, 'rungbook_outbox{kind="prompt",state="uncertain"}') == 1
    assert value(text, 'rungbook_outbox{kind="prompt",state="dead"}') == 1
    assert value(text, 'rungbook_outbox{kind="prompt",state="queued"}') == 1
    assert value(text, 'rungbook_inbox{state="waiting"}') == 1
    assert value(text, "rungbook_inbox_oldest_seconds") == 30
    assert value(text, "rungbook_outbox_oldest_seconds") == 30
    assert value(text, "rungbook_halted_seconds") == 60
    assert value(text, "rungbook_chats_closed") == 1
    assert value(text, "rungbook_agenda_overdue") == 1


async def test_the_counters_count(room: Shell) -> None:
    async with caller(room) as call:
        before = (await call.get("/metrics")).text
        one = room.raw(user=RUTH, text="squat 60x8")
        await room.hear(one)
        await room.hear(one)
        room.core.script["bug"] = RuntimeError(PLANTED["text"])
        await room.say(RUTH, "bug")
        after = (await call.get("/metrics")).text

    def grown(name: str) -> float:
        return value(after, name) - (value(before, name) if name + " " in before else 0.0)

    assert grown('rungbook_updates_total{seen="new"}') == 2
    assert grown('rungbook_updates_total{seen="again"}') == 1
    assert grown('rungbook_worked_total{result="done"}') == 1
    assert grown('rungbook_worked_total{result="dead"}') == 1
    assert grown('rungbook_sends_total{kind="reply",result="sent"}') == 2
    assert grown("rungbook_answer_seconds_count") == 1
    assert grown('rungbook_events_total{event="message_failed",level="error"}') == 3


async def test_nothing_of_a_person_is_in_the_numbers_or_the_log(room: Shell, logged: io.StringIO) -> None:
    """Planted strings go through every way in and out, also through failures that quote them."""
    user = int(PLANTED["user"])
    await room.say(user, PLANTED["text"], name=PLANTED["name"])
    await room.say(user, f"/start {PLANTED['code']}", name=PLANTED["name"])
    ruth = room.raw(user=RUTH, text=PLANTED["text"], name=PLANTED["name"])
    room.core.script[PLANTED["text"]] = RuntimeError(f"{PLANTED['text']} {PLANTED['token']}")
    room.wire.script[RUTH] = [Refused(f"{PLANTED['name']} {PLANTED['token']}"), Uncertain(PLANTED["text"])]
    await room.hear(ruth)
    await room.hear(RawUpdate(CHANNEL, 999, RUTH, f"no JSON: {PLANTED['text']}"))
    structlog.get_logger("bot").error(f"went wrong with {PLANTED['token']}", where=f"/bot{PLANTED['token']}/x")
    async with caller(room, telegram=broken) as call:
        pages = [(await call.get(path)).text for path in ("/healthz", "/readyz", "/metrics")]
    said = "".join(pages) + logged.getvalue()
    assert "message_failed" in logged.getvalue()
    assert 'rungbook_worked_total{result="dead"}' in pages[2]
    assert [name for name, words in PLANTED.items() if words in said] == []
    assert [name for name in ("Zebulonia", "knee", "AAplanted", "Ruth", str(RUTH)) if name in said] == []


@pytest.mark.parametrize("event", [PLANTED["text"], f"token {PLANTED['token']}", "", "Kept", "x" * 60, None, 7])
def test_an_event_that_is_no_fixed_word_is_counted_as_another(event: object) -> None:
    metrics.count_event(None, "info", {"event": event})
    seen = {sample.labels.get("event") for family in metrics.EVENTS.collect() for sample in family.samples}
    assert "other" in seen
    assert event not in seen
