"""The page's server: who is let in, from where, to which chats, and what becomes of what they send."""

import asyncio
import json
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import dataclass, replace
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import httpx
import pytest

from bot import clock, serving
from bot.channels.page import login, shape
from bot.channels.page.address import PageCall
from bot.channels.page.channel import Page
from bot.channels.page.shape import open_update
from bot.desk.rooms import Parts
from bot.folding import FOLDING
from bot.intake import Intake
from bot.outbox import Pace
from bot.page_clock import Ahead
from bot.page_side import PageSide, Wanted
from bot.picture_facts import facts_in
from bot.pictures import week_picture
from bot.ports import Malformed, Media, Press, RawUpdate, Words
from bot.running import until_told_to_stop
from bot.staff import Business
from bot.store import outbox, people
from bot.store.outbox import Letter
from bot.store.tables import inbox, setting
from core.model.course import MuscleSets, WeekView
from core.model.outcome import Button, Outcome, Reply
from tests.bot.page.gym import free_port
from tests.bot.shell import FakeCore, FakeWire, HandClock, Shell, shell, with_people

HOME = "http://127.0.0.1:8137"


@dataclass
class Served:
    """The page on a store with a coach, two clients and their group."""

    room: Shell
    core: FakeCore
    side: PageSide
    intake: Intake
    web: httpx.AsyncClient

    async def token(self) -> str:
        page = await self.web.get("/")
        assert page.status_code == 200, page.text
        return page.text.partition('name="token" content="')[2].partition('"')[0]

    async def post(self, path: str, body: Any, **headers: str) -> httpx.Response:
        given = {"origin": HOME, "x-rungbook-token": await self.token(), **headers}
        answer = await self.web.post(path, content=json.dumps(body), headers=given)
        await self.intake.settle()
        await self.side.deliver()
        return answer

    async def chats(self) -> dict[str, dict[str, Any]]:
        return {seat["name"]: seat for seat in (await self.web.get("/room")).json()["seats"]}

    async def say(self, name: str, text: str, nonce: str = "", **more: Any) -> httpx.Response:
        chat = (await self.chats())[name]["chat"]
        return await self.post(f"/chats/{chat}", {"text": text, "nonce": nonce or text, **more})

    async def lines(self, name: str) -> list[dict[str, Any]]:
        chat = (await self.chats())[name]["chat"]
        found: list[dict[str, Any]] = (await self.web.get(f"/chats/{chat}")).json()
        return found

    async def texts(self, name: str) -> list[str]:
        return [line["text"] for line in await self.lines(name)]


@asynccontextmanager
async def served(folder: Path, **how: Any) -> AsyncIterator[Served]:
    async with shell(folder) as room:
        await with_people(room)

        def group(conn: Any) -> None:
            people.add_group(conn, "Early Birds", people.coaches(conn)[0].id, [o.id for o in people.lifters(conn)])

        await room.store.write(group)
        ahead = Ahead(room.clock)
        side = await PageSide.open(room.store, ahead)
        openers = {shape.NAME: open_update, room.wire.name: room.wire.open}
        desk = Parts(room.core.answer, room.core.remind, FOLDING, openers, lambda code: f"/start={code}", "test")
        intake = Intake(room.store, desk, ahead, side.wake)

        async def look() -> None:
            await side.deliver()

        wanted = Wanted(frozenset({HOME, "http://localhost:8137"}), **how)
        app = await side.application(wanted, intake.keep, openers, (ahead, look))
        transport = httpx.ASGITransport(app=app)
        async with httpx.AsyncClient(transport=transport, base_url=HOME) as web:
            yield Served(room, room.core, side, intake, web)


@pytest.fixture
async def page(tmp_path: Path) -> AsyncIterator[Served]:
    async with served(tmp_path, clock=True) as one:
        yield one


@pytest.fixture
async def closed(tmp_path: Path) -> AsyncIterator[Served]:
    async with served(tmp_path, login=True) as one:
        yield one


# Who is let in


@pytest.mark.parametrize("path", ["/", "/room", "/static/page.js", "/static/none.js", "/nowhere", "/chats/77"])
async def test_every_answer_carries_the_strict_policy(page: Served, path: str) -> None:
    answer = await page.web.get(path)
    policy = answer.headers["content-security-policy"]
    assert "default-src 'none'" in policy
    assert "unsafe" not in policy
    assert answer.headers["x-content-type-options"] == "nosniff"
    assert answer.headers["cache-control"] == "no-store"


async def test_the_page_names_no_address_outside_and_no_script_inside(page: Served) -> None:
    text = (await page.web.get("/")).text
    assert "://" not in text
    assert "<script>" not in text
    assert "style=" not in text
    assert " on" not in text.replace(" on ", "")


@pytest.mark.parametrize("host", ["evil.example", "evil.example:8137", "127.0.0.1:9999", "127.0.0.1.evil.example:8137"])
async def test_another_name_for_this_host_is_refused(page: Served, host: str) -> None:
    assert (await page.web.get("/room", headers={"host": host})).status_code == 421


@pytest.mark.parametrize("origin", ["http://evil.example", "null", "https://127.0.0.1:8137", ""])
async def test_what_another_site_sends_is_refused_and_not_kept(page: Served, origin: str) -> None:
    chat = (await page.chats())["Ruth"]["chat"]
    answer = await page.post(f"/chats/{chat}", {"text": "60x8", "nonce": "n"}, origin=origin)
    assert answer.status_code == 403
    assert await page.room.rows(inbox) == []


async def test_without_the_token_nothing_is_kept(page: Served) -> None:
    chat = (await page.chats())["Ruth"]["chat"]
    for token in ("", "0" * 64):
        answer = await page.post(f"/chats/{chat}", {"text": "60x8", "nonce": "n"}, **{"x-rungbook-token": token})
        assert answer.status_code == 403
    assert await page.room.rows(inbox) == []


@pytest.mark.parametrize(("path", "status"), [("/", 200), ("/room", 403), ("/events", 403), ("/chats/1", 403)])
async def test_another_site_can_open_the_page_and_read_nothing(page: Served, path: str, status: int) -> None:
    headers = {"sec-fetch-site": "cross-site", "sec-fetch-mode": "navigate"}
    assert (await page.web.get(path, headers=headers)).status_code == status


async def test_the_size_of_what_comes_in_is_bounded(page: Served) -> None:
    assert (await page.say("Ruth", "x" * 4001)).status_code == 413
    assert (await page.say("Ruth", "x" * 70_000)).status_code == 413
    assert (await page.say("Ruth", "x" * 4000)).status_code == 202


@pytest.mark.parametrize(
    "body",
    [
        *([], "x", {}, {"text": "60x8"}, {"text": 7, "nonce": "n"}, {"text": " ", "nonce": "n"}, {"nonce": "n"}),
        {"text": "60x8", "nonce": "n", "user": 424242},
        {"media": "virus", "text": "", "nonce": "n"},
    ],
)
async def test_what_is_not_in_shape_is_refused(page: Served, body: Any) -> None:
    chat = (await page.chats())["Ruth"]["chat"]
    assert (await page.post(f"/chats/{chat}", body)).status_code == 400
    assert await page.room.rows(inbox) == []


async def test_bytes_that_are_no_text_are_refused(page: Served) -> None:
    headers = {"origin": HOME, "x-rungbook-token": await page.token()}
    answer = await page.web.post("/chats/2", content=b"\xff\xfe{", headers=headers)
    assert answer.status_code == 400


# What becomes of what is sent


async def test_a_message_is_worked_and_stands_in_the_store(page: Served) -> None:
    assert (await page.say("Ruth", "60x8")).status_code == 202
    assert await page.texts("Ruth") == ["60x8", "heard 60x8"]
    assert await page.texts("Tomas") == []


async def test_the_same_message_sent_again_counts_once(page: Served) -> None:
    for _ in range(3):
        await page.say("Ruth", "60x8", nonce="once")
    assert await page.texts("Ruth") == ["60x8", "heard 60x8"]


async def test_a_message_that_is_changed_stands_where_it_stood(page: Served) -> None:
    await page.say("Ruth", "60x8")
    await page.say("Ruth", "later")
    own = (await page.lines("Ruth"))[0]
    assert (await page.say("Ruth", "60x9", message=own["message"])).status_code == 202
    assert await page.texts("Ruth") == ["60x9", "heard 60x8", "later", "heard later", "heard 60x9"]
    assert [line["edited"] for line in await page.lines("Ruth")] == [True, False, False, False, False]
    assert [asked.edit for asked, _ in page.core.asked] == [False, False, True]


async def test_only_the_one_who_wrote_a_message_can_change_it(page: Served) -> None:
    users = {one["name"]: one["user"] for one in (await page.chats())["Early Birds"]["speakers"]}
    assert set(users) == {"Ruth", "Tomas", "Ines"}
    await page.say("Early Birds", "60x8", user=users["Ruth"])
    message = (await page.lines("Early Birds"))[0]["message"]
    for user, status in ((users["Tomas"], 403), (users["Ruth"], 202)):
        answer = await page.say("Early Birds", "60x9", nonce=str(user), user=user, message=message)
        assert answer.status_code == status
    assert (await page.say("Ruth", "60x7", message=12345)).status_code == 403


async def test_an_answer_is_pressed_and_shown_as_pressed(page: Served) -> None:
    two = Reply("Two ways", buttons=(Button("one set", "a:1:0"), Button("ten sets", "a:1:1")))
    page.core.script["10x10"] = Outcome(replies=(two,))
    await page.say("Ruth", "10x10")
    asked = (await page.lines("Ruth"))[-1]
    assert asked["buttons"] == [["one set", "a:1:0"], ["ten sets", "a:1:1"]]
    chat = (await page.chats())["Ruth"]["chat"]
    press = {"press": "a:1:1", "message": asked["message"], "nonce": "p"}
    assert (await page.post(f"/chats/{chat}", press)).status_code == 202
    lines = await page.lines("Ruth")
    assert [(line["kind"], line["text"]) for line in lines][2] == ("press", "ten sets")
    assert lines[1]["pressed"] == ["a:1:1"]
    assert page.core.asked[-1][0].press == "a:1:1"


async def test_of_a_picture_only_its_kind_comes_in(page: Served) -> None:
    chat = (await page.chats())["Ruth"]["chat"]
    assert (await page.post(f"/chats/{chat}", {"media": "photo", "text": "my rack", "nonce": "m"})).status_code == 202
    assert page.core.asked[-1][0].media == "photo"
    assert (await page.lines("Ruth"))[0]["kind"] == "photo"


async def test_a_picture_stays_with_its_facts_and_a_document_is_never_shown(page: Served) -> None:
    picture = week_picture(WeekView("Ruth", 2, 3, (MuscleSets("front-delts", 4, 6, 10),)))
    ruth = (await page.room.store.read(lambda conn: people.by_name(conn, "Ruth")))[0]
    for name, content in (("week.png", picture), ("<b>.csv", b"<script>alert(1)</script>")):
        letter = Letter("here", person=ruth.id, attachment=(name, content))
        await page.room.store.write(lambda conn, letter=letter: outbox.queue(conn, letter, page.room.clock()))
    await page.side.deliver()
    first, second = (line["file"] for line in await page.lines("Ruth"))
    assert first["facts"] == [["muscle", "sets", "asked for"], ["front delts", "4", "6 to 10"]]
    assert facts_in(picture) == tuple(tuple(row) for row in first["facts"])
    shown = await page.web.get(f"/files/{first['number']}")
    assert (shown.content, shown.headers["content-type"]) == (picture, "image/png")
    given = await page.web.get(f"/files/{second['number']}")
    assert given.headers["content-type"] == "application/octet-stream"
    assert given.headers["content-disposition"] == 'attachment; filename="_b_.csv"'


async def test_a_post_that_is_written_over_stands_once(page: Served) -> None:
    await page.say("Ruth", "hello")

    def over(conn: Any) -> None:
        chat = people.chat_of(conn, shape.NAME, people.user_of(conn, 2, shape.NAME) or 0)
        assert chat is not None
        letter = Letter("standings one", kind="post", chat=chat.id)
        key = outbox.queue(conn, letter, page.room.clock())
        outbox.sent(conn, key, 99)
        outbox.rewrite(conn, key, replace(letter, text="standings two"), page.room.clock())

    await page.room.store.write(over)
    await page.side.deliver()
    assert await page.texts("Ruth") == ["hello", "heard hello", "standings two"]


async def test_the_clock_goes_on_and_says_how_much_was_said(page: Served) -> None:
    chat = (await page.chats())["Ruth"]["chat"]
    before = (await page.web.get("/room")).json()["now"]
    answer = (await page.post("/clock", {"to": "hour", "chat": chat})).json()
    assert answer == {"reached": (datetime.fromisoformat(before) + timedelta(hours=1)).isoformat(), "said": 0}
    assert (await page.web.get("/room")).json()["now"] == answer["reached"]
    for wanted in ({"to": "hour"}, {"to": "christmas", "chat": chat}, {"to": "hour", "chat": "77"}):
        assert (await page.post("/clock", wanted)).status_code == 404


async def test_nothing_is_kept_of_a_stranger(page: Served) -> None:
    await page.say("Someone new", "hello?")
    said = await page.texts("Someone new")
    assert said[0] == "hello?"
    assert "I don't know you yet" in said[1]
    assert [row.body for row in await page.room.rows(inbox)] == [""]


async def test_who_looks_hears_of_each_chat_once() -> None:
    page = Page(1)
    with page.looking() as one, page.looking() as two:
        page.tell(5)
        page.tell(5, 6)
        assert (await one.news(), await two.news()) == ([5, 6], [5, 6])
    page.tell(7)


@pytest.mark.parametrize("body", ["", "[]", "{}", '{"user": 1, "private": true, "message": 1}', "null", '"x"'])
def test_an_update_out_of_shape_is_malformed(body: str) -> None:
    assert isinstance(open_update(RawUpdate(shape.NAME, 1, 7, body)), Malformed)


def test_updates_are_read_as_they_were_written() -> None:
    sender = shape.From(7, 8, private=True)
    number = shape.number_of("n")
    assert open_update(shape.words(sender, "n", "60x8")) == Words(7, 8, number, "60x8")
    assert open_update(shape.words(sender, "n", "60x8", 5)) == Words(7, 8, 5, "60x8", edit=True)
    assert open_update(shape.press(sender, "n", "a:1", 5)) == Press(7, 8, 5, "a:1", token="")
    assert open_update(shape.media(sender, "n", "photo", "hm")) == Media(7, 8, number, "photo", "hm")
    assert 0 < number < 1 << 53


# The login


async def test_nobody_sees_anything_without_a_login(closed: Served) -> None:
    for path in ("/room", "/events", "/chats/2", "/files/1"):
        assert (await closed.web.get(path)).status_code == 401
    page = await closed.web.get("/")
    assert page.status_code == 401
    assert "token" not in page.text


async def link(closed: Served, name: str) -> str:
    who = (await closed.room.store.read(lambda conn: people.by_name(conn, name)))[0].id
    return await closed.room.store.write(lambda conn: login.make_link(conn, who, closed.room.clock()))


async def enter(closed: Served, word: str) -> httpx.Response:
    return await closed.web.post(f"/enter?link={word}", headers={"origin": HOME})


async def test_a_link_lets_one_person_in_once_to_their_own_chat(closed: Served) -> None:
    word = await link(closed, "Ruth")
    assert (await closed.web.get(f"/enter?link={word}")).status_code == 200
    answer = await enter(closed, word)
    assert answer.status_code == 303
    cookie = answer.headers["set-cookie"].lower()
    assert "httponly" in cookie
    assert "samesite=strict" in cookie
    assert list(await closed.chats()) == ["Ruth"]
    await closed.say("Ruth", "60x8")
    assert await closed.texts("Ruth") == ["60x8", "heard 60x8"]
    tomas = (await closed.room.store.read(lambda conn: people.by_name(conn, "Tomas")))[0].id
    assert (await closed.web.get(f"/chats/{tomas}")).status_code == 404
    assert (await closed.post(f"/chats/{tomas}", {"text": "hi", "nonce": "n"})).status_code == 404
    closed.web.cookies.clear()
    assert (await enter(closed, word)).status_code == 403
    assert (await closed.web.get("/room")).status_code == 401


async def test_a_file_of_anothers_chat_is_not_there(closed: Served) -> None:
    for name in ("Ruth", "Tomas"):
        closed.web.cookies.clear()
        await enter(closed, await link(closed, name))
    ruth = (await closed.room.store.read(lambda conn: people.by_name(conn, "Ruth")))[0].id
    letter = Letter("yours", person=ruth, attachment=("a.csv", b"1"))
    number = await closed.room.store.write(lambda conn: outbox.queue(conn, letter, closed.room.clock()))
    await closed.side.deliver()
    assert (await closed.web.get(f"/files/{number}")).status_code == 404
    closed.web.cookies.clear()
    await enter(closed, await link(closed, "Ruth"))
    assert (await closed.web.get(f"/files/{number}")).content == b"1"


async def test_links_and_sessions_expire_and_only_their_hashes_are_kept(closed: Served) -> None:
    hand: HandClock = closed.room.clock
    late = await link(closed, "Ruth")
    hand.at += login.LINK_LASTS
    assert (await enter(closed, late)).status_code == 403
    word = await link(closed, "Ruth")
    assert (await enter(closed, word)).status_code == 303
    kept = str(await closed.room.rows(setting))
    assert kept.count("page-session:") == 1
    assert word not in kept
    assert closed.web.cookies["rungbook"] not in kept
    hand.at += login.SESSION_LASTS - timedelta(seconds=1)
    assert (await closed.web.get("/room")).status_code == 200
    hand.at += timedelta(seconds=1)
    assert (await closed.web.get("/room")).status_code == 401


async def test_leaving_ends_the_session(closed: Served) -> None:
    await enter(closed, await link(closed, "Ruth"))
    session = closed.web.cookies["rungbook"]
    assert (await closed.post("/leave", {})).status_code == 204
    closed.web.cookies.clear()
    closed.web.cookies.set("rungbook", session)
    assert (await closed.web.get("/room")).status_code == 401


class Quiet(FakeWire):
    """A channel on which nobody says anything."""

    async def updates(self) -> AsyncIterator[tuple[RawUpdate, ...]]:
        await asyncio.Event().wait()
        yield ()


async def test_beside_another_channel_the_page_is_served_behind_its_login(tmp_path: Path) -> None:
    async with shell(tmp_path) as room:
        await with_people(room)
        told: asyncio.Future[str] = asyncio.get_running_loop().create_future()
        call = PageCall(port=free_port(), login=True, ready=told.set_result)
        desk = replace(room.parts, openers={**room.parts.openers, shape.NAME: open_update})
        _, loops = await serving.alone(Business("", room.store, Quiet(), desk, Pace()), call)
        running = asyncio.create_task(until_told_to_stop(*loops))
        address = await told
        word = await room.store.write(lambda conn: login.make_link(conn, 2, clock.now()))
        async with httpx.AsyncClient(base_url=address) as web:
            assert (await web.get("/room")).status_code == 401
            entered = await web.post(f"/enter?link={word}", headers={"origin": address}, follow_redirects=True)
            token = entered.text.partition('name="token" content="')[2].partition('"')[0]
            headers = {"origin": address, "x-rungbook-token": token}
            async with web.stream("GET", "/events") as events:
                news = events.aiter_lines()
                assert await anext(news) == "retry: 1000"
                said = await web.post("/chats/2", json={"text": "60x8", "nonce": "n"}, headers=headers)
                assert said.status_code == 202
                lines: list[dict[str, Any]] = []
                while len(lines) < 2:
                    while not (line := await anext(news)).startswith("data: ["):
                        assert line in ("", "event: here", "event: beat", "data: {}")
                    assert line == 'data: ["2"]'
                    lines = (await web.get("/chats/2")).json()
            assert [line["text"] for line in lines] == ["60x8", "heard 60x8"]
        running.cancel()
        await asyncio.gather(running, return_exceptions=True)


async def test_behind_a_login_no_clock_can_be_put_forward(closed: Served) -> None:
    await enter(closed, await link(closed, "Ruth"))
    chat = (await closed.chats())["Ruth"]["chat"]
    assert (await closed.post("/clock", {"to": "hour", "chat": chat})).status_code == 404
