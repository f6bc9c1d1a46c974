"""Updates brought to the door: on the disk before the 200, back later while the store is down, harmless when odd."""

import asyncio
import hmac
import json
from collections.abc import AsyncIterator
from contextlib import suppress
from pathlib import Path

import httpx
import pytest
from sqlalchemy.exc import OperationalError

from bot import config, listening
from bot.bootstrap import parts
from bot.channels import telegram_hook
from bot.channels.telegram import BROUGHT, Telegram
from bot.channels.telegram_hook import Door, application
from bot.channels.telegram_shape import ALLOWED_UPDATES
from bot.clock import now
from bot.config import SettingsError, hook_of
from bot.intake import Intake
from bot.ports import RawUpdate
from bot.store import watch
from bot.store.engine import Store
from bot.store.tables import inbox
from tests.bot.api_stub import BotApi, Drop, Refuse
from tests.bot.api_updates import TOKEN, press, text
from tests.bot.test_telegram_poll import Naps

ANN = 1000001
SECRET = "a-Secret_of-the-tests-0123456789"
HEADERS = {telegram_hook.HEADER: SECRET}
PLANTED = "my left knee hurts"


class Shelf:
    """Keeps what is brought, or fails as it is told to."""

    def __init__(self) -> None:
        self.kept: list[RawUpdate] = []
        self.told: list[RawUpdate] = []
        self.fails: list[Exception] = []

    async def keep(self, batch: tuple[RawUpdate, ...]) -> None:
        if self.fails:
            raise self.fails.pop(0)
        self.kept += batch

    def door(self, channel: str = "telegram") -> Door:
        return Door(channel, self.keep, self.told.extend)


def caller(shelf: Shelf) -> httpx.AsyncClient:
    transport = httpx.ASGITransport(application(SECRET, {"": shelf.door()}), raise_app_exceptions=True)
    return httpx.AsyncClient(transport=transport, base_url="http://here", headers=HEADERS)


async def test_an_update_is_kept_as_it_came_and_then_answered() -> None:
    shelf = Shelf()
    update = {"update_id": 7, **text(ANN, "squat 60x8")}
    async with caller(shelf) as call:
        answer = await call.post("/hook", json=update)
    assert (answer.status_code, answer.content) == (200, b"")
    (raw,) = shelf.kept
    assert (raw.channel, raw.update_id, raw.chat, json.loads(raw.body)) == ("telegram", 7, ANN, update)
    assert shelf.told == shelf.kept


@pytest.mark.parametrize("given", [None, "", SECRET[:-1], SECRET + "x", SECRET.upper(), "\xe9" * 20])
async def test_without_the_secret_nothing_is_taken(given: str | None) -> None:
    shelf = Shelf()
    async with caller(shelf) as call:
        headers = {} if given is None else {telegram_hook.HEADER: given.encode("latin-1")}
        del call.headers[telegram_hook.HEADER]
        answer = await call.post("/hook", json={"update_id": 1}, headers=headers)  # type: ignore[arg-type]
    assert answer.status_code == 403
    assert shelf.kept == []


async def test_the_secret_is_compared_in_constant_time(monkeypatch: pytest.MonkeyPatch) -> None:
    compared = []
    real = hmac.compare_digest

    def watched(one: bytes, other: bytes) -> bool:
        compared.append((one, other))
        return real(one, other)

    monkeypatch.setattr(telegram_hook.hmac, "compare_digest", watched)
    async with caller(Shelf()) as call:
        await call.post("/", json={"update_id": 1})
    assert compared == [(SECRET.encode(), SECRET.encode())]


@pytest.mark.parametrize("trouble", [OperationalError("insert", {}, Exception(PLANTED)), OSError(28, PLANTED)])
async def test_while_the_store_is_down_it_is_to_come_again_later(
    trouble: Exception, capsys: pytest.CaptureFixture[str]
) -> None:
    shelf = Shelf()
    shelf.fails = [trouble]
    async with caller(shelf) as call:
        answer = await call.post("/hook", json={"update_id": 1})
        assert (answer.status_code, answer.headers["retry-after"]) == (503, "5")
        assert shelf.told == []
        assert (await call.post("/hook", json={"update_id": 1})).status_code == 200
    out = capsys.readouterr()
    assert "hook_not_kept" in out.out + out.err
    assert "knee" not in answer.text + out.out + out.err


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"no json",
        b"\xff\xfe",
        b"[]",
        b"null",
        b'"x"',
        b"[" * 50_000,
        b'{"update_id": "7"}',
        b'{"update_id": 1e99}',
    ],
)
async def test_what_is_no_update_is_kept_aside_and_not_brought_for_ever(body: bytes) -> None:
    shelf = Shelf()
    async with caller(shelf) as call:
        assert (await call.post("/hook", content=body)).status_code == 200
        assert (await call.post("/hook", content=body)).status_code == 200
    first, second = shelf.kept
    assert first == second
    assert first.update_id < 0


async def test_a_body_past_the_bound_is_refused_whether_it_says_its_length_or_not() -> None:
    async def drip() -> AsyncIterator[bytes]:
        for _ in range(telegram_hook.LARGEST // 65536 + 1):
            yield b" " * 65536

    shelf = Shelf()
    async with caller(shelf) as call:
        assert (await call.post("/hook", content=b" " * (telegram_hook.LARGEST + 1))).status_code == 413
        assert (await call.post("/hook", content=drip())).status_code == 413
        odd = {"Content-Length": "-1"}
        assert (await call.post("/hook", content=b"", headers=odd)).status_code == 413
        assert (await call.post("/hook", content=b" " * telegram_hook.LARGEST)).status_code == 200
    assert len(shelf.kept) == 1


async def test_only_what_telegram_does_is_answered() -> None:
    async with caller(Shelf()) as call:
        assert (await call.get("/hook")).status_code == 405
    transport = httpx.ASGITransport(application(SECRET, {"one": Shelf().door()}))
    async with httpx.AsyncClient(transport=transport, base_url="http://here", headers=HEADERS) as call:
        assert (await call.post("/hook/two", json={})).status_code == 404


async def test_each_bot_has_a_door_of_its_own() -> None:
    one, two = Shelf(), Shelf()
    doors = {"111": one.door("telegram:111"), "222": two.door("telegram:222")}
    transport = httpx.ASGITransport(application(SECRET, doors))
    async with httpx.AsyncClient(transport=transport, base_url="http://here", headers=HEADERS) as call:
        await call.post("/hook/222", json={"update_id": 5})
    assert (one.kept, [raw.channel for raw in two.kept]) == ([], ["telegram:222"])


async def test_brought_again_and_again_it_is_in_the_store_once(tmp_path: Path) -> None:
    """Real store, real HTTP server: forty at a time, each twice, some malformed."""
    async with await Store.open(f"sqlite+aiosqlite:///{tmp_path / 'gym.db'}") as store:
        intake = Intake(store, parts({}, str), now, lambda: None)
        taken = listening.bind("127.0.0.1:0", "RUNGBOOK_LISTEN")
        port = taken.getsockname()[1]
        app = application(SECRET, {"": Door("telegram", intake.keep, lambda _: None)})
        serving = asyncio.ensure_future(listening.serve(app, taken))
        updates = [{"update_id": n, **text(ANN + n % 7, f"bench {n} x 8", n)} for n in range(1, 61)]
        bodies = [json.dumps(one).encode() for one in updates] * 2 + [b"no json"] * 3
        async with httpx.AsyncClient(headers=HEADERS, trust_env=False) as call:
            answers = await asyncio.gather(*(call.post(f"http://127.0.0.1:{port}/", content=body) for body in bodies))
        assert {answer.status_code for answer in answers} == {200}
        rows = await store.read(lambda conn: conn.execute(inbox.select()).all())
        assert sorted(row.update_id for row in rows if row.update_id > 0) == list(range(1, 61))
        assert len(rows) == 61
        assert (await store.read(lambda conn: watch.figures(conn, now()))).came_in["waiting"] == 61
        serving.cancel()
        with suppress(asyncio.CancelledError):
            await serving


async def test_at_the_start_telegram_is_told_where_to_bring_updates() -> None:
    async with BotApi(TOKEN) as api:
        naps = Naps()
        telegram = Telegram(TOKEN, api.base_url, sleep=naps)
        api.fail("setWebhook", Refuse(502, "Bad Gateway"), Drop(accepted=False))
        await telegram.start_hook("https://gym.example/hook", SECRET)
        assert naps.waits == [1.0, 2.0]
        assert api.hook == {
            "url": "https://gym.example/hook",
            "secret_token": SECRET,
            "allowed_updates": list(ALLOWED_UPDATES),
            "max_connections": str(BROUGHT),
        }
        await telegram.close()


@pytest.mark.parametrize("refusals", [0, 1])
async def test_polling_takes_a_webhook_away(refusals: int) -> None:
    async with BotApi(TOKEN) as api:
        naps = Naps()
        telegram = Telegram(TOKEN, api.base_url, sleep=naps)
        await telegram.start_hook("https://gym.example/hook", SECRET)
        api.fail("deleteWebhook", *[Refuse(502, "Bad Gateway")] * refusals)
        await api.push(text(ANN, "hello"))
        updates = telegram.updates()
        (raw,) = await anext(updates)
        assert (api.hook, raw.update_id) == (None, 1)
        assert naps.waits == [3.0] * refusals
        await updates.aclose()
        await telegram.close()


async def test_a_press_that_was_brought_stops_waiting() -> None:
    async with BotApi(TOKEN) as api:
        telegram = Telegram(TOKEN, api.base_url)
        shelf = Shelf()
        app = application(SECRET, {"": Door("telegram", shelf.keep, telegram.kept)})
        async with httpx.AsyncClient(
            transport=httpx.ASGITransport(app), base_url="http://here", headers=HEADERS
        ) as call:
            await call.post("/", json={"update_id": 3, **press(ANN, "a:1", token="q9")})
        await api.until(lambda: len(api.called("answerCallbackQuery")) == 1)
        await telegram.close()


HOOK = {
    "RUNGBOOK_INTAKE": "webhook",
    "RUNGBOOK_PUBLIC_URL": "https://gym.example/hook",
    "RUNGBOOK_LISTEN": "127.0.0.1:8443",
    "RUNGBOOK_SECRET": SECRET,
}


@pytest.mark.parametrize(
    ("change", "named"),
    [
        ({"RUNGBOOK_PUBLIC_URL": ""}, ["RUNGBOOK_PUBLIC_URL"]),
        ({"RUNGBOOK_LISTEN": "", "RUNGBOOK_SECRET": ""}, ["RUNGBOOK_LISTEN", "RUNGBOOK_SECRET"]),
        ({"RUNGBOOK_PUBLIC_URL": "http://gym.example"}, ["RUNGBOOK_PUBLIC_URL", "https"]),
        ({"RUNGBOOK_PUBLIC_URL": "gym.example"}, ["RUNGBOOK_PUBLIC_URL"]),
        ({"RUNGBOOK_LISTEN": "8443"}, ["RUNGBOOK_LISTEN"]),
        ({"RUNGBOOK_LISTEN": "127.0.0.1:84430"}, ["RUNGBOOK_LISTEN"]),
        ({"RUNGBOOK_SECRET": "two words"}, ["RUNGBOOK_SECRET"]),
        ({"RUNGBOOK_SECRET": "x" * 257}, ["RUNGBOOK_SECRET"]),
        ({"RUNGBOOK_STATUS_LISTEN": "nine"}, ["RUNGBOOK_STATUS_LISTEN"]),
    ],
)
def test_what_is_missing_or_off_is_named(
    change: dict[str, str], named: list[str], monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    monkeypatch.chdir(tmp_path)
    for name, value in (HOOK | change).items():
        monkeypatch.setenv(name, value)
    with pytest.raises(SettingsError) as told:
        hook_of(config.load())
    assert all(name in str(told.value) for name in named)
    assert (HOOK | change)["RUNGBOOK_SECRET"] not in str(told.value) or not (HOOK | change)["RUNGBOOK_SECRET"]


def test_with_all_of_it_updates_are_brought(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.chdir(tmp_path)
    for name, value in HOOK.items():
        monkeypatch.setenv(name, value)
    hook = hook_of(config.load())
    assert hook is not None
    assert (hook.public_url, hook.listen) == ("https://gym.example/hook", "127.0.0.1:8443")
    assert SECRET not in repr(hook)


async def test_an_address_that_is_taken_is_told_with_the_setting() -> None:
    taken = listening.bind("127.0.0.1:0", "RUNGBOOK_LISTEN")
    with pytest.raises(listening.AddressTaken, match="RUNGBOOK_STATUS_LISTEN"):
        listening.bind(f"127.0.0.1:{taken.getsockname()[1]}", "RUNGBOOK_STATUS_LISTEN")
    taken.close()
