"""A parcel out, and what became of it: each row of the table of failures, at a real server or with the real cause."""

import asyncio
import warnings
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from io import BytesIO
from typing import Any

import aiohttp
import pytest
from hypothesis import given
from hypothesis import strategies as st
from PIL import Image
from telegram.error import BadRequest, InvalidToken, NetworkError, RetryAfter, TelegramError, TimedOut

from bot.channels.telegram import Telegram
from bot.channels.telegram_errors import delivery_of, flood_seconds, without_secret
from bot.channels.telegram_parcel import requests_of, split, units
from bot.ports import Delivery, Later, Moved, Parcel, Refused, Sent, Uncertain
from tests.bot.api_stub import BotApi, Drop, Fault, Garble, Refuse
from tests.bot.api_updates import TOKEN

ANN, BEN = 1000001, 1000002
GROUP, SUPERGROUP = -55, -1009000001


class Ticks:
    """A clock that stands still until it is moved."""

    def __init__(self) -> None:
        self.now = 100.0

    def __call__(self) -> float:
        return self.now


@asynccontextmanager
async def wired(**more: Any) -> AsyncIterator[tuple[BotApi, Telegram]]:
    async with BotApi(TOKEN) as api:
        telegram = Telegram(TOKEN, api.base_url, **more)
        try:
            yield api, telegram
        finally:
            await telegram.close()


async def test_text_and_buttons_arrive_as_they_are() -> None:
    async with wired() as (api, telegram):
        buttons = (("10 kg for 10", "a:1"), ("ten sets of 10", "a:2"), ("neither of the two", "é" * 32))
        result = await telegram.send(Parcel(ANN, "*60* x_8_ <b>&amp;", buttons))
        assert result == Sent(api.sent[0].message_id)
        arguments = api.sent[0].arguments
        assert arguments["text"] == "*60* x_8_ <b>&amp;"
        assert "parse_mode" not in arguments
        pressed = [(b["text"], b["callback_data"]) for row in arguments["reply_markup"]["inline_keyboard"] for b in row]
        assert tuple(pressed) == buttons


async def test_a_button_that_telegram_refuses_is_left_out_and_the_text_still_arrives() -> None:
    async with wired() as (api, telegram):
        buttons = (("too long", "é" * 33), ("fits", "x" * 64), ("empty", ""), (" ", "blank"))
        assert isinstance(await telegram.send(Parcel(ANN, "which?", buttons)), Sent)
        assert api.sent[0].arguments["reply_markup"]["inline_keyboard"] == [
            [{"text": "fits", "callback_data": "x" * 64}]
        ]


async def test_a_long_text_arrives_whole_in_order_with_its_buttons_at_the_end() -> None:
    lines = [f"{number:04d} " + "🏋️" * 20 for number in range(300)]
    async with wired() as (api, telegram):
        assert isinstance(await telegram.send(Parcel(ANN, "\n".join(lines), (("ok", "ok"),))), Sent)
        assert "\n".join(api.texts(ANN)).split("\n") == lines
        assert ["reply_markup" in message.arguments for message in api.sent] == [False] * (len(api.sent) - 1) + [True]


@pytest.mark.parametrize("stop", [Refuse(429, "Too Many Requests", {"retry_after": 3}), Refuse(502, "Bad Gateway")])
async def test_a_long_text_goes_on_from_where_it_stopped(stop: Fault) -> None:
    parcel = Parcel(ANN, "\n".join(letter * 4000 for letter in "abc"))
    async with wired() as (api, telegram):
        api.fail("sendMessage", None, stop)
        assert isinstance(await telegram.send(parcel), Later | Uncertain)
        assert isinstance(await telegram.send(parcel), Sent)
        assert [text[0] for text in api.texts(ANN)] == ["a", "b", "c"]
        assert isinstance(await telegram.send(parcel), Sent)
        assert [text[0] for text in api.texts(ANN)] == ["a", "b", "c"] * 2


async def test_a_long_text_goes_on_in_the_chats_new_place() -> None:
    text = "\n".join(letter * 4000 for letter in "ab")
    async with wired() as (api, telegram):
        api.fail("sendMessage", None, Refuse(400, "Bad Request: upgraded", {"migrate_to_chat_id": SUPERGROUP}))
        assert await telegram.send(Parcel(GROUP, text)) == Moved(SUPERGROUP)
        assert isinstance(await telegram.send(Parcel(SUPERGROUP, text)), Sent)
        assert [message.text[0] for message in api.sent] == ["a", "b"]


async def test_a_document_carries_its_text_as_caption() -> None:
    async with wired() as (api, telegram):
        await telegram.send(Parcel(ANN, "Your sets.", attachment=("sets.csv", b"a,b\n1,2\n")))
        call = api.called("sendDocument")[0]
        assert call.files["document"] == ("sets.csv", b"a,b\n1,2\n")
        assert call.arguments["caption"] == "Your sets."


@pytest.mark.parametrize(
    ("size", "method"),
    [
        ((960, 720), "sendPhoto"),
        ((960, 9_040), "sendPhoto"),
        ((960, 9_100), "sendDocument"),
        ((10, 300), "sendDocument"),
    ],
)
async def test_a_picture_is_shown_as_one_where_telegram_can(size: tuple[int, int], method: str) -> None:
    drawn = BytesIO()
    Image.new("1", size).save(drawn, "PNG")
    async with wired() as (api, telegram):
        assert isinstance(await telegram.send(Parcel(GROUP, "The end.", attachment=("a.png", drawn.getvalue()))), Sent)
        (call,) = api.called(method)
        assert call.arguments["caption"] == "The end."
        assert call.files[method.removeprefix("send").lower()] == ("a.png", drawn.getvalue())


async def test_what_only_is_called_a_picture_goes_as_a_document() -> None:
    async with wired() as (api, telegram):
        await telegram.send(Parcel(ANN, "x", attachment=("a.png", b"no picture")))
        assert len(api.called("sendDocument")) == 1


async def test_a_text_too_long_for_a_caption_goes_ahead_of_its_document() -> None:
    async with wired() as (api, telegram):
        result = await telegram.send(Parcel(ANN, "x" * 1025, (("ok", "ok"),), attachment=("a.txt", b"1")))
        assert [message.text for message in api.sent] == ["x" * 1025, ""]
        assert result == Sent(api.sent[1].message_id)
        assert "reply_markup" in api.sent[1].arguments


@pytest.mark.parametrize("text", ["", " \n"])
async def test_nothing_is_refused_here_already(text: str) -> None:
    async with wired() as (api, telegram):
        assert isinstance(await telegram.send(Parcel(ANN, text)), Refused)
        assert api.called("sendMessage") == []


BLOCKED = "Forbidden: bot was blocked by the user"


@pytest.mark.parametrize(
    ("fault", "meaning"),
    [
        (Refuse(429, "Too Many Requests: retry after 3", {"retry_after": 3}), Later(3.0, "chat")),
        (Refuse(500, "Internal Server Error"), Uncertain),
        (Refuse(502, "Bad Gateway"), Uncertain),
        (Garble(b"<html>gateway</html>", 504), Uncertain),
        (Garble(b"<html>hello</html>"), Uncertain),
        (Garble(b"[]"), Uncertain),
        (Garble(b'{"ok": true}'), Uncertain),
        (Garble(b'{"ok": true, "result": true}'), Uncertain),
        (Drop(accepted=True), Uncertain),
        (Drop(accepted=False), Uncertain),
        (Refuse(400, "Bad Request: message is not modified: same text"), Sent()),
        (Refuse(400, "Bad Request: query is too old and response timeout expired"), Sent()),
        (Refuse(400, "Bad Request: chat not found"), Refused("chat not found", chat_gone=True)),
        (Refuse(400, "Bad Request: private chat not found"), Refused("chat not found", chat_gone=True)),
        (Refuse(400, "Bad Request: message text is wrong"), Refused("BadRequest: Message text is wrong")),
        (Refuse(403, BLOCKED), Refused(f"Forbidden: {BLOCKED}", chat_gone=True)),
        (Refuse(403, "Forbidden: user is deactivated"), Refused),
        (Refuse(403, "Forbidden: bot was kicked from the group chat"), Refused),
        (Refuse(400, "Bad Request: upgraded", {"migrate_to_chat_id": SUPERGROUP}), Moved(SUPERGROUP)),
        (Refuse(409, "Conflict: terminated by other getUpdates request"), Later(60.0, "bot")),
        (Refuse(401, "Unauthorized"), Later(60.0, "bot")),
        (Refuse(404, "Not Found"), Later(60.0, "bot")),
    ],
)
async def test_each_refusal_has_its_meaning(fault: Fault, meaning: Delivery | type[Delivery]) -> None:
    async with wired() as (api, telegram):
        api.fail("sendMessage", fault)
        result = await telegram.send(Parcel(ANN, "hello"))
        assert isinstance(result, meaning) if isinstance(meaning, type) else result == meaning


async def test_a_dropped_answer_may_have_been_delivered() -> None:
    async with wired() as (api, telegram):
        api.fail("sendMessage", Drop(accepted=True), Drop(accepted=False))
        assert [isinstance(await telegram.send(Parcel(ANN, word)), Uncertain) for word in ("one", "two")] == [True] * 2
        assert api.texts(ANN) == ["one"]


async def test_an_api_that_is_not_there_was_sent_nothing() -> None:
    api = await BotApi(TOKEN).start()
    await api.stop()
    telegram = Telegram(TOKEN, api.base_url)
    assert await telegram.send(Parcel(ANN, "hello")) == Later(5.0, "bot")
    await telegram.close()


def caused(error: Exception, cause: Exception) -> Exception:
    error.__cause__ = cause
    return error


@pytest.mark.parametrize(
    ("error", "meaning"),
    [
        (caused(TimedOut(), aiohttp.ConnectionTimeoutError("x")), Later(5.0, "bot")),
        (caused(TimedOut(), aiohttp.SocketTimeoutError("x")), Uncertain("why")),
        (caused(TimedOut(), TimeoutError("x")), Uncertain("why")),
        (caused(NetworkError("x"), aiohttp.ServerDisconnectedError("x")), Uncertain("why")),
        (TimedOut(), Uncertain("why")),
        (TelegramError("Invalid server response"), Uncertain("why")),
        (BadRequest("not enough rights"), Refused("why")),
        (InvalidToken(), Later(60.0, "bot")),
        (KeyError("result"), Uncertain("why")),
    ],
)
def test_a_timeout_means_what_its_cause_says(error: Exception, meaning: Delivery) -> None:
    assert delivery_of(error, "why") == meaning


@pytest.mark.parametrize("as_timedelta", ["0", "1"])
def test_the_wait_of_a_429_is_read_in_both_of_its_forms(as_timedelta: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("PTB_TIMEDELTA", as_timedelta)
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        error = RetryAfter(7)
    assert flood_seconds(error) == 7.0


async def test_two_chats_slowed_down_in_a_moment_mean_the_whole_bot() -> None:
    ticks = Ticks()
    async with wired(tick=ticks) as (api, telegram):
        slow = Refuse(429, "Too Many Requests", {"retry_after": 2})
        scopes = []
        for chat, later in ((ANN, 0.0), (ANN, 0.5), (BEN, 0.5), (ANN, 1.5)):
            ticks.now += later
            api.fail("sendMessage", slow)
            result = await telegram.send(Parcel(chat, "hello"))
            assert isinstance(result, Later)
            scopes.append(result.scope)
        assert scopes == ["chat", "chat", "bot", "chat"]


async def test_a_closed_topic_falls_back_to_the_general_one_once() -> None:
    async with wired() as (api, telegram):
        api.topics = {5}
        assert isinstance(await telegram.send(Parcel(SUPERGROUP, "in it", thread=5)), Sent)
        assert isinstance(await telegram.send(Parcel(SUPERGROUP, "beside it", thread=6)), Sent)
        assert [message.arguments.get("message_thread_id") for message in api.sent] == ["5", None]
        api.fail("sendMessage", *[Refuse(400, "Bad Request: message thread not found")] * 2)
        assert isinstance(await telegram.send(Parcel(SUPERGROUP, "nowhere", thread=6)), Refused)


async def test_an_earlier_message_is_written_over_where_it_stands() -> None:
    async with wired() as (api, telegram):
        first = await telegram.send(Parcel(GROUP, "week 1"))
        assert isinstance(first, Sent)
        assert await telegram.send(Parcel(GROUP, "week 2", thread=5, edits=first.message_id)) == first
        assert [(message.message_id, message.text) for message in api.sent] == [(first.message_id, "week 2")]
        assert await telegram.send(Parcel(GROUP, "week 2", edits=first.message_id)) == first


async def test_a_message_that_is_gone_is_sent_anew() -> None:
    async with wired() as (api, telegram):
        result = await telegram.send(Parcel(GROUP, "week 2", (("ok", "ok"),), edits=7))
        assert result == Sent(api.sent[0].message_id)
        assert api.sent[0].arguments["reply_markup"]


async def test_writing_over_may_be_tried_again_without_harm() -> None:
    async with wired() as (api, telegram):
        first = await telegram.send(Parcel(GROUP, "week 1"))
        assert isinstance(first, Sent)
        again = Parcel(GROUP, "week 2", edits=first.message_id)
        api.fail("editMessageText", Drop(accepted=True), Refuse(502, "Bad Gateway"))
        assert [await telegram.send(again) for _ in range(3)] == [Later(5.0), Later(5.0), first]
        assert [message.text for message in api.sent] == ["week 2"]


async def test_chats_do_not_wait_for_each_other() -> None:
    async with wired() as (api, telegram):
        results = await asyncio.gather(*(telegram.send(Parcel(chat, f"to {chat}")) for chat in range(1, 41)))
        assert all(isinstance(result, Sent) for result in results)
        assert sorted(message.chat for message in api.sent) == list(range(1, 41))


async def test_the_token_is_in_no_result() -> None:
    telegram = Telegram(TOKEN, f"http://127.0.0.1:1/{TOKEN.partition(':')[2]}\x7f/bot")
    result = await telegram.send(Parcel(ANN, "hello"))
    assert TOKEN.partition(":")[2] not in repr(result)
    await telegram.close()


def test_the_secret_half_alone_is_blotted_out_too() -> None:
    assert without_secret("at /bot1:abc/getMe or abc", "1:abc") == "at /bot1:[token]/getMe or [token]"
    assert without_secret("x 1: y", "1:") == "x [token] y"


TEXTS = st.text(st.sampled_from("ab \n🏋é\ud800"), max_size=60)


@given(TEXTS, st.integers(2, 20))
def test_pieces_fit_and_lose_no_letter(text: str, limit: int) -> None:
    whole = text.encode("utf-16-le", "surrogatepass").decode("utf-16-le", "replace")
    pieces = split(whole, limit)
    assert all(0 < units(piece) <= limit for piece in pieces)
    assert "".join("".join(pieces).split()) == "".join(whole.split())


def test_lines_stay_whole_where_they_fit() -> None:
    assert split("aa\nbb\ncc", 5) == ("aa\nbb", "cc")
    assert split("aa bb cc", 5) == ("aa bb", " cc")
    assert split("🏋🏋🏋", 3) == ("🏋", "🏋", "🏋")


@given(st.lists(st.tuples(st.text(max_size=30), st.text(max_size=70)), max_size=12))
def test_any_buttons_make_a_keyboard_that_telegram_takes(buttons: list[tuple[str, str]]) -> None:
    request = requests_of(Parcel(ANN, "which?", tuple(buttons)))[0]
    rows = request.arguments.get("reply_markup", {"inline_keyboard": []})["inline_keyboard"]
    assert all(1 <= len(row) <= 4 for row in rows)
    assert all(1 <= len(button["callback_data"].encode()) <= 64 and button["text"] for row in rows for button in row)
