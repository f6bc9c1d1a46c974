"""Updates in: confirmed only when persisted, waited for politely, and never stopped by what the world does."""

import asyncio
import logging
import traceback
from collections.abc import AsyncIterator, Awaitable, Callable
from contextlib import aclosing, asynccontextmanager

import pytest

from bot.channels.telegram import Telegram
from bot.ports import ChannelRefused, Malformed, RawUpdate, Words
from core.flow import phrases
from tests.bot.api_stub import BotApi, Drop, Fault, Garble, Refuse
from tests.bot.api_updates import TOKEN, USERNAME, press, text

ANN = 1000001
PHRASE_WORDS = [words for all_words in phrases.PHRASES.values() for words in all_words]
SECRET = TOKEN.partition(":")[2]


class Naps:
    """In place of sleeping: notes each wait, passes at once, and may do something on the way."""

    def __init__(self) -> None:
        self.waits: list[float] = []
        self.then: Callable[[int], Awaitable[object]] | None = None

    async def __call__(self, seconds: float) -> None:
        self.waits.append(seconds)
        await asyncio.sleep(0)
        if self.then is not None:
            await self.then(len(self.waits))


@asynccontextmanager
async def wired(poll_seconds: int = 50) -> AsyncIterator[tuple[BotApi, Telegram, Naps]]:
    naps = Naps()
    async with BotApi(TOKEN) as api:
        telegram = Telegram(TOKEN, api.base_url, sleep=naps, poll_seconds=poll_seconds)
        try:
            yield api, telegram, naps
        finally:
            await telegram.close()


def ids(batch: tuple[RawUpdate, ...]) -> list[int]:
    return [raw.update_id for raw in batch]


async def test_a_batch_is_confirmed_only_by_asking_for_the_next() -> None:
    async with wired() as (api, telegram, _), aclosing(telegram.updates()) as updates:
        await api.push(text(ANN, "one"), text(ANN, "two", 2))
        assert ids(await anext(updates)) == [1, 2]
        assert (api.pending, len(api.called("getUpdates"))) == (2, 1)
        await api.push(text(ANN, "three", 3))
        assert ids(await anext(updates)) == [3]
        assert api.pending == 1


async def test_the_first_request_has_no_offset_and_asks_for_what_we_read() -> None:
    async with wired() as (api, telegram, _), aclosing(telegram.updates()) as updates:
        await api.push(text(ANN, "one"))
        await anext(updates)
        await api.push(text(ANN, "two"))
        await anext(updates)
        first, second = (call.arguments for call in api.called("getUpdates"))
        assert first == {
            "timeout": "50",
            "limit": "100",
            "allowed_updates": ["message", "edited_message", "callback_query", "my_chat_member"],
        }
        assert second["offset"] == "2"


async def test_what_was_not_confirmed_comes_again_after_a_restart() -> None:
    async with wired() as (api, telegram, _):
        await api.push(text(ANN, "one"))
        async with aclosing(telegram.updates()) as updates:
            before = await anext(updates)
        async with aclosing(telegram.updates()) as updates:
            assert await anext(updates) == before


async def test_a_malformed_update_is_set_aside_alone() -> None:
    async with wired() as (api, telegram, _), aclosing(telegram.updates()) as updates:
        odd: list[object] = [{"message": 5}, None, [], "x", {"message": {"chat": {"id": ANN}}}]
        await api.push(*odd, text(ANN, "squat 60x8"))
        batch = await anext(updates)
        meanings = [telegram.open(raw) for raw in batch]
        assert [isinstance(meaning, Malformed) for meaning in meanings] == [True] * 5 + [False]
        assert isinstance(meanings[5], Words)
        assert [raw.chat for raw in batch] == [0, 0, 0, 0, ANN, ANN]
        await api.push(text(ANN, "bench 40x8"))
        assert ids(await anext(updates)) == [7]


async def test_an_update_without_an_id_cannot_be_confirmed_and_does_not_spin() -> None:
    async with wired() as (api, telegram, naps), aclosing(telegram.updates()) as updates:
        await api.push(None)
        first = await anext(updates)
        assert await anext(updates) == first
        assert naps.waits == [3.0]
        await api.push(text(ANN, "on we go"))
        assert ids(await anext(updates))[-1] == 2
        await api.push(text(ANN, "and on"))
        assert ids(await anext(updates)) == [3]


async def test_a_server_that_answers_nothing_at_once_is_not_asked_in_a_circle() -> None:
    async with wired(poll_seconds=0) as (api, telegram, naps), aclosing(telegram.updates()) as updates:

        async def news(times: int) -> None:
            if times == 4:
                await api.push(text(ANN, "at last"))

        naps.then = news
        await anext(updates)
        assert naps.waits == [3.0] * 4
        assert len(api.called("getUpdates")) == 5


CONFLICT = Refuse(409, "Conflict: terminated by other getUpdates request")


@pytest.mark.parametrize(
    ("faults", "waits"),
    [
        ([CONFLICT], [3.0]),
        ([CONFLICT] * 4, [3.0, 3.0, 4.0, 8.0]),
        ([Refuse(502, "Bad Gateway")] * 9, [1.0, 2.0, 4.0, 8.0, 16.0, 32.0, 60.0, 60.0, 60.0]),
        ([Drop(accepted=False)] * 2, [1.0, 2.0]),
        ([Refuse(429, "Too Many Requests", {"retry_after": 17})], [17.0]),
        ([Garble(b"no json"), Garble(b"[]"), Garble(b'{"ok": true, "result": {}}')], [1.0, 2.0, 4.0]),
        ([Refuse(401, "Unauthorized"), Refuse(404, "Not Found")], [1.0, 2.0]),
    ],
)
async def test_the_poll_outlives_every_failure(faults: list[Fault], waits: list[float]) -> None:
    async with wired() as (api, telegram, naps), aclosing(telegram.updates()) as updates:
        await telegram.start()
        api.fail("getUpdates", *faults)
        await api.push(text(ANN, "still here"))
        assert ids(await anext(updates)) == [1]
        assert naps.waits == waits


async def test_waits_start_small_again_after_a_success() -> None:
    async with wired() as (api, telegram, naps), aclosing(telegram.updates()) as updates:
        down = Refuse(502, "Bad Gateway")
        api.fail("getUpdates", down, down, None, down)
        await api.push(text(ANN, "one"))
        await anext(updates)
        await api.push(text(ANN, "two"))
        await anext(updates)
        assert naps.waits == [1.0, 2.0, 1.0]


async def test_a_second_poller_of_the_same_bot_does_not_end_the_first() -> None:
    async with wired() as (api, telegram, naps), aclosing(telegram.updates()) as updates:
        waiting = asyncio.ensure_future(anext(updates))
        await api.until(lambda: len(api.called("getUpdates")) == 1)
        other = Telegram(TOKEN, api.base_url, poll_seconds=0)
        naps.then = lambda _: api.push(text(ANN, "hello"))
        await other._ask(None)
        assert ids(await waiting) == [1]
        assert naps.waits == [3.0]
        await other.close()


@pytest.mark.parametrize("status", [401, 404])
async def test_a_wrong_token_is_told_at_once_and_not_shown(status: int) -> None:
    async with wired() as (api, telegram, naps), aclosing(telegram.updates()) as updates:
        api.fail("getMe", Refuse(status, "Unauthorized"))
        with pytest.raises(ChannelRefused, match="RUNGBOOK_TOKEN") as told:
            await anext(updates)
        assert SECRET not in "".join(traceback.format_exception(told.value))
        assert naps.waits == []


@pytest.mark.parametrize("token", ["", "1:a b", "1:ab\n", "1:\x00"])
def test_what_cannot_be_a_token_is_refused_without_a_request(token: str) -> None:
    with pytest.raises(ChannelRefused, match="RUNGBOOK_TOKEN"):
        Telegram(token)


async def test_the_start_waits_for_the_network_and_minds_no_refused_courtesy() -> None:
    async with wired() as (api, telegram, naps), aclosing(telegram.updates()) as updates:
        api.fail("getMe", Drop(accepted=False), Refuse(500, "Internal Server Error"), Garble(b'{"ok": true}'))
        api.fail("setMyCommands", Refuse(400, "Bad Request: BOT_COMMAND_INVALID"))
        api.fail("deleteWebhook", Refuse(500, "Internal Server Error"))
        await api.push(text(ANN, "hello"))
        await anext(updates)
        assert naps.waits == [1.0, 2.0, 4.0]


async def test_asked_once_who_we_are() -> None:
    async with wired() as (api, telegram, naps):
        assert telegram.link("CoDe") == "/start=CoDe"
        api.fail("getMe", Refuse(502, "Bad Gateway"), Refuse(401, "Unauthorized"))
        assert await telegram.whoami() is None
        with pytest.raises(ChannelRefused):
            await telegram.whoami()
        assert await telegram.whoami() == USERNAME
        assert telegram.link("CoDe") == f"https://t.me/{USERNAME}?start=CoDe"
        assert naps.waits == []


async def test_the_menu_holds_words_that_telegram_takes() -> None:
    async with wired() as (api, telegram, _):
        await telegram.start()
        commands = api.called("setMyCommands")[0].arguments["commands"]
        known = {words[1:] for words in (*PHRASE_WORDS, *phrases.COMMANDS) if words.startswith("/")}
        assert commands
        assert {entry["command"] for entry in commands} <= known
        assert all(entry["command"].isascii() and entry["command"].islower() for entry in commands)
        assert all(1 <= len(entry["command"]) <= 32 and 1 <= len(entry["description"]) <= 256 for entry in commands)


async def test_a_press_stops_waiting_once_it_was_persisted() -> None:
    async with wired() as (api, telegram, _), aclosing(telegram.updates()) as updates:
        await api.push(press(ANN, "a:1", token="q7"), {"callback_query": "odd"})
        await anext(updates)
        assert api.called("answerCallbackQuery") == []
        api.fail("answerCallbackQuery", Refuse(400, "Bad Request: query is too old"))
        await api.push(text(ANN, "next"))
        await anext(updates)
        await asyncio.gather(*telegram._answers)
        assert [call.arguments["callback_query_id"] for call in api.called("answerCallbackQuery")] == ["q7"]


async def test_the_token_is_in_no_log_line(
    caplog: pytest.LogCaptureFixture, capsys: pytest.CaptureFixture[str]
) -> None:
    caplog.set_level(logging.DEBUG)
    async with wired() as (api, telegram, _), aclosing(telegram.updates()) as updates:
        api.fail("getMe", Drop(accepted=False), Garble(TOKEN.encode(), 500))
        api.fail(
            "getUpdates",
            CONFLICT,
            Garble(f"{TOKEN} a person's words".encode()),
            Refuse(502, f"no route to /bot{TOKEN}/getUpdates"),
        )
        await api.push(text(ANN, "hello"))
        await anext(updates)
    out = capsys.readouterr()
    assert "poll_failed" in out.out + out.err + caplog.text
    assert SECRET not in out.out + out.err + caplog.text
    assert "a person's words" not in out.out + out.err + caplog.text
    assert SECRET not in repr(telegram)
