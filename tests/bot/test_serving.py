"""A service in this process: two bots on either engine, each with its own people; and a database that goes away."""

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest
from aiohttp import web
from sqlalchemy import Connection

from bot import admin, bots, serving
from bot.config import Settings
from bot.store import people
from bot.store.engine import Store
from bot.store.tables import invite
from tests.bot import stores
from tests.bot.api_stub import BotApi
from tests.bot.api_updates import text
from tests.bot.postgres import Server

TOKENS = {"north": "111111111:" + "n" * 35, "south": "222222222:" + "s" * 35}
INES = 900001
PATIENCE = 60


@asynccontextmanager
async def world() -> AsyncIterator[tuple[str, dict[str, BotApi]]]:
    """One address that is the Bot API of both bots."""
    apis = {token: BotApi(token) for token in TOKENS.values()}

    async def handle(request: web.Request) -> web.StreamResponse:
        return await apis[request.match_info["token"]]._handle(request)

    app = web.Application()
    app.router.add_route("*", "/bot{token}/{method}", handle)
    runner = web.AppRunner(app, shutdown_timeout=0.5)
    await runner.setup()
    await web.TCPSite(runner, "127.0.0.1", 0).start()
    try:
        yield f"http://127.0.0.1:{runner.addresses[0][1]}/bot", {name: apis[token] for name, token in TOKENS.items()}
    finally:
        for api in apis.values():
            await api.stop()
        await runner.cleanup()


@asynccontextmanager
async def running(settings: Settings) -> AsyncIterator[None]:
    """The service, which must not end by itself."""
    task = asyncio.create_task(serving.serve(settings))
    try:
        yield
        assert not task.done()
    finally:
        task.cancel()
        await asyncio.gather(task, return_exceptions=True)


def names(conn: Connection) -> list[str]:
    return [one.name for one in people.lifters(conn)] + [one.name for one in people.by_name(conn, "Ines")]


async def say(api: BotApi, chat: int, words: str, message: int) -> str:
    """What the bot answers."""
    before = len(api.texts(chat))
    await api.push(text(chat, words, message))
    async with asyncio.timeout(PATIENCE):
        await api.until(lambda: len(api.texts(chat)) > before)
    return api.texts(chat)[before]


@pytest.mark.slow
async def test_two_bots_are_two_businesses(each_store: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert each_store
    where = {name: bots.store_of(stores.url_in(tmp_path), name) for name in TOKENS}
    rows = "".join(f'[[bot]]\nname = "{name}"\ntoken_env = "{name.upper()}"\n' for name in TOKENS)
    file = tmp_path / "bots.toml"
    file.write_text(rows)
    for name, token in TOKENS.items():
        monkeypatch.setenv(name.upper(), token)
    codes = {name: await admin.coach_code(url, "Ines", "UTC") for name, url in where.items()}
    async with world() as (address, apis):
        settings = Settings(_env_file=None, bots=file, api_url=address, store=stores.url_in(tmp_path))  # type: ignore[call-arg]
        async with running(settings):
            turned_away = await say(apis["south"], INES, f"/start {codes['north']}", 1)
            welcome = await say(apis["north"], INES, f"/start {codes['north']}", 1)
            assert turned_away != welcome
            assert "Mira" in await say(apis["north"], INES, "invite Mira", 2)
            assert await say(apis["south"], INES, "invite Mira", 2) != ""
    found = {}
    for name, url in where.items():
        async with await Store.open(url, hold=False, create=False) as store:
            found[name] = await store.read(names)
    assert found == {"north": ["Ines"], "south": []}


@pytest.mark.slow
async def test_a_database_that_goes_away_and_comes_back_costs_no_message(postgresql: Server, tmp_path: Path) -> None:
    """Killed and started again while the service runs, twice: with nothing on its way, and with messages on theirs."""
    with stores.on(postgresql):
        url = stores.url_in(tmp_path)
        code = await admin.coach_code(url, "Ines", "UTC")
        token = TOKENS["north"]
        async with BotApi(token) as api:
            settings = Settings(_env_file=None, token=token, api_url=api.base_url, store=url)  # type: ignore[call-arg, arg-type]
            async with running(settings):
                await say(api, INES, f"/start {code}", 1)
                await asyncio.to_thread(postgresql.control, "restart", "-m", "immediate")
                await api.push(text(INES, "invite Mira", 2))
                async with asyncio.timeout(PATIENCE):
                    await api.until(lambda: "Mira" in api.texts(INES)[-1])
                clients = [f"Client {n}" for n in range(5)]
                await api.push(*(text(INES, f"invite {name}", 3 + n) for n, name in enumerate(clients)))
                await asyncio.to_thread(postgresql.control, "restart", "-m", "immediate")
                async with asyncio.timeout(PATIENCE):
                    await api.until(lambda: all(name in "".join(api.texts(INES)) for name in clients))
                first = [next(n for n, words in enumerate(api.texts(INES)) if name in words) for name in clients]
                assert first == sorted(first)
        async with await Store.open(url) as store:
            invited = await store.read(lambda conn: [row.name for row in conn.execute(invite.select())])
        assert sorted(name for name in invited if name) == [*clients, "Mira"]
