"""A command that fails is over: nothing that it opened is left behind, neither a thread nor a loop that never began."""

import asyncio
import os
import socket
import subprocess
import sys
import threading
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest
from filelock import FileLock

from bot import serving
from bot.bootstrap import chat
from bot.config import Settings
from bot.ports import ChannelRefused, StoreError
from bot.roles import Role
from bot.store.engine import Store
from tests.bot.api_stub import BotApi

TOKEN = "111111111:" + "n" * 35
ENDS_WITHIN = 120


ENDING_SECONDS = 20.0


@pytest.fixture
def no_thread_more() -> Iterator[None]:
    """As many threads after the test as before it."""
    before = set(threading.enumerate())
    yield
    later = [one for one in threading.enumerate() if one not in before]
    for one in later:
        one.join(ENDING_SECONDS)  # one that was told to end may still be on its last line
    assert [one.name for one in later if one.is_alive()] == []


def nowhere() -> int:
    with closing(socket.create_server(("127.0.0.1", 0))) as taken:
        port: int = taken.getsockname()[1]
        return port


def told(store: str, **more: str) -> Settings:
    given = {"token": TOKEN, "api_url": f"http://127.0.0.1:{nowhere()}/bot", "store": store, **more}
    return Settings.model_validate(given)


def url(file: Path) -> str:
    return f"sqlite+aiosqlite:///{file}"


async def ends(settings: Settings, role: Role = Role.ALL) -> BaseException:
    """What the service fails with."""
    async with asyncio.timeout(ENDS_WITHIN):
        try:
            await serving.serve(settings, role)
        except (StoreError, ChannelRefused) as failure:
            return failure
    raise AssertionError("it did not fail")


@pytest.mark.usefixtures("no_thread_more")
def test_a_file_that_is_no_store(tmp_path: Path) -> None:
    (tmp_path / "gym.db").write_bytes(os.urandom(9000))
    assert "cannot be opened" in str(asyncio.run(ends(told(url(tmp_path / "gym.db")))))


@pytest.mark.usefixtures("no_thread_more")
def test_a_store_of_a_later_version(tmp_path: Path) -> None:
    async def later() -> None:
        async with await Store.open(url(tmp_path / "gym.db")) as store:
            await store.write(lambda conn: conn.exec_driver_sql("UPDATE alembic_version SET version_num = '9999'"))

    asyncio.run(later())
    assert "later version" in str(asyncio.run(ends(told(url(tmp_path / "gym.db")))))


@pytest.mark.usefixtures("no_thread_more")
def test_a_store_that_another_holds(tmp_path: Path) -> None:
    with FileLock(tmp_path / "gym.db.lock"):
        assert "held by another" in str(asyncio.run(ends(told(url(tmp_path / "gym.db")))))


@pytest.mark.usefixtures("no_thread_more")
def test_a_token_that_telegram_refuses(tmp_path: Path) -> None:
    async def refused() -> BaseException:
        async with BotApi("222222222:" + "s" * 35) as api:
            return await ends(told(url(tmp_path / "gym.db"), api_url=api.base_url))

    assert "RUNGBOOK_TOKEN" in str(asyncio.run(refused()))


@pytest.mark.usefixtures("no_thread_more")
def test_an_address_that_is_taken(tmp_path: Path) -> None:
    """The loops of the service are made by then, and none of them began."""

    async def taken(port: int) -> BaseException:
        async with BotApi(TOKEN) as api:
            settings = told(url(tmp_path / "gym.db"), api_url=api.base_url, status_listen=f"127.0.0.1:{port}")
            return await ends(settings)

    with closing(socket.create_server(("127.0.0.1", 0))) as other:
        assert "RUNGBOOK_STATUS_LISTEN" in str(asyncio.run(taken(other.getsockname()[1])))


@pytest.mark.usefixtures("no_thread_more")
@pytest.mark.parametrize("role", [Role.ALL, Role.WORKER])
def test_a_database_that_is_away(role: Role) -> None:
    away = f"postgresql+psycopg://nobody@127.0.0.1:{nowhere()}/gym"
    assert "cannot be used" in str(asyncio.run(ends(told(away), role)))


@pytest.mark.usefixtures("no_thread_more")
def test_a_chat_on_a_file_that_is_no_store(tmp_path: Path) -> None:
    (tmp_path / "gym.db").write_bytes(os.urandom(9000))
    with pytest.raises(StoreError):
        asyncio.run(chat(url(tmp_path / "gym.db"), "Mira"))


@pytest.mark.slow
def test_the_process_of_a_command_that_failed_is_gone(tmp_path: Path) -> None:
    (tmp_path / "gym.db").write_bytes(os.urandom(9000))
    env = {"PATH": os.environ.get("PATH", ""), "PYTHONPATH": str(Path(__file__).parents[2])}
    env |= {"RUNGBOOK_TOKEN": TOKEN, "RUNGBOOK_STORE": url(tmp_path / "gym.db"), "OPENBLAS_NUM_THREADS": "1"}
    done = subprocess.run(
        [sys.executable, "-X", "dev", "-W", "ignore::DeprecationWarning", "-m", "bot", "serve"],
        cwd=tmp_path,
        env=env,
        capture_output=True,
        text=True,
        timeout=ENDS_WITHIN,
        check=False,
    )
    assert done.returncode == 1
    assert done.stderr.startswith("rungbook: the store at ")
    assert done.stderr.count("\n") == 1


async def test_a_command_that_looks_for_a_moment_does_not_keep_the_service_from_its_store(tmp_path: Path) -> None:
    look = FileLock(tmp_path / "gym.db.lock", thread_local=False)
    look.acquire()
    ending = threading.Timer(0.3, look.release)
    ending.start()
    async with await Store.open(url(tmp_path / "gym.db")):
        ending.join()
