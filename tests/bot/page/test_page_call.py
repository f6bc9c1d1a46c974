"""How the page's commands are called: which addresses are taken, which are refused, and in which words."""

from pathlib import Path

import pytest

from bot import page_call
from bot.channels.page import login
from bot.channels.page.address import PageCall, address, own_origins
from bot.clock import now
from bot.ports import StoreError
from bot.store.engine import Store
from tests.bot.shell import shell, with_people


def asked(
    listen: str = "127.0.0.1", public: str | None = None, *, login: bool = False, clock: bool = False
) -> str | PageCall:
    return page_call.asked_for(listen, public, login=login, clock=clock, show=False)


@pytest.mark.parametrize(
    ("listen", "host", "port"),
    [
        ("127.0.0.1", "127.0.0.1", None),
        ("localhost:8200", "localhost", 8200),
        ("::1", "::1", None),
        ("[::1]", "::1", None),
        ("[::1]:8200", "::1", 8200),
    ],
)
def test_an_address_of_this_machine_is_taken(listen: str, host: str, port: int | None) -> None:
    call = asked(listen, clock=True)
    assert isinstance(call, PageCall)
    assert (call.host, call.port, call.clock, call.login) == (host, port, True, False)


@pytest.mark.parametrize("listen", ["127.0.0.1:0", "127.0.0.1:x", "127.0.0.1:70000", "localhost:"])
def test_what_is_no_address_is_refused(listen: str) -> None:
    assert "is no address" in str(asked(listen))


def test_everyones_chat_is_served_on_this_machine_only() -> None:
    assert "only served on this machine" in str(asked("0.0.0.0", "https://gym.example"))
    assert "only served on this machine" in str(asked("127.0.0.1", "https://gym.example"))
    assert "by https" in str(asked("0.0.0.0", login=True))
    assert "by https" in str(asked("0.0.0.0", "http://gym.example", login=True))
    assert isinstance(asked("0.0.0.0", "https://gym.example", login=True), PageCall)
    assert "trying out alone" in str(asked(login=True, clock=True))


def test_the_page_answers_to_its_own_names_only() -> None:
    assert own_origins("127.0.0.1", 1) == {"http://127.0.0.1:1", "http://localhost:1", "http://[::1]:1"}
    assert own_origins("10.0.0.7", 2) == {"http://10.0.0.7:2"}
    assert address("::1", 3) == "http://[::1]:3"


@pytest.mark.parametrize(
    ("environment", "platform", "there"),
    [
        ({}, "linux", False),
        ({"DISPLAY": ":0"}, "linux", True),
        ({"WAYLAND_DISPLAY": "w"}, "linux", True),
        ({}, "darwin", True),
    ],
)
def test_a_browser_opens_only_on_a_desktop(environment: dict[str, str], platform: str, there: bool) -> None:
    assert page_call.has_screen(environment, platform) is there


async def test_a_link_lets_in_whom_it_names(tmp_path: Path) -> None:
    async with shell(tmp_path) as room:
        await with_people(room)
        url = room.url
        link = await page_call.link(url, "ruth", "https://gym.example/")
        coachs = await page_call.link(url, "Ines", "https://gym.example")
    head, _, word = link.partition("/enter?link=")
    assert head == "https://gym.example"
    async with await Store.open(url) as store:
        assert await store.read(lambda conn: login.whose_link(conn, word, now())) == 2
        assert await store.read(lambda conn: login.whose_link(conn, coachs.rpartition("=")[2], now())) == 1
    with pytest.raises(StoreError, match="no lifter is called Zebulon"):
        await page_call.link(url, "Zebulon", "https://gym.example")
