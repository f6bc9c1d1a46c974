"""The web side of the page: addresses and answers. What stands in the chats, and who sees which, is asked of rooms."""

import asyncio
import json
from collections.abc import AsyncIterator, Awaitable, Callable, Mapping
from dataclasses import dataclass
from importlib.resources import files
from typing import Any, Final
from urllib.parse import parse_qs

from starlette.applications import Starlette
from starlette.exceptions import HTTPException
from starlette.requests import Request
from starlette.responses import HTMLResponse, JSONResponse, RedirectResponse, Response, StreamingResponse
from starlette.routing import Route
from starlette.types import ASGIApp

from bot.channels.page import login, seating
from bot.channels.page.channel import CLOCK, Look, Page
from bot.channels.page.guard import Guard
from bot.channels.page.rooms import Refused, Rooms, Visitor, visitor_of
from bot.channels.page.seating import Seat
from bot.page_clock import TARGETS, Jumps
from bot.ports import Now
from bot.store.engine import Store

BEAT_SECONDS: Final = 15
"""How often a silent line says that it is there."""
COOKIE: Final = "rungbook"
TOKEN_HEADER: Final = "x-rungbook-token"  # noqa: S105  # a name, no secret

_STATIC: Final = files("bot.channels.page") / "static"
_TYPES: Final[Mapping[str, str]] = {".css": "text/css", ".js": "text/javascript", ".svg": "image/svg+xml"}
_STATUS: Final[Mapping[Refused, int]] = {"none": 404, "shape": 400, "long": 413, "other": 403}
_LINES: Final = 80

Handler = Callable[[Request, Visitor], Awaitable[Response]]


@dataclass(frozen=True, slots=True)
class Doors:
    """What the page stands on. ``jumps`` None: the clock is the wall's. ``login``: only by a link, else everyone."""

    store: Store
    page: Page
    rooms: Rooms
    now: Now
    origins: frozenset[str]
    key: bytes
    jumps: Jumps | None = None
    login: bool = False
    secure: bool = False
    """The page is reached by https, so its cookie goes no other way."""


def application(doors: Doors) -> ASGIApp:
    """The whole of it, guarded."""
    web = _Web(doors)
    routes = [
        Route("/", web.index),
        Route("/static/{name}", _static),
        Route("/enter", web.ask_in),
        Route("/enter", web.let_in, methods=["POST"]),
        Route("/leave", web.inside(web.leave), methods=["POST"]),
        Route("/room", web.inside(web.room)),
        Route("/events", web.inside(web.events)),
        Route("/files/{number:int}", web.inside(web.file)),
        Route("/clock", web.inside(web.clock), methods=["POST"]),
        Route("/chats/{chat}", web.inside(web.lines)),
        Route("/chats/{chat}", web.inside(web.hear), methods=["POST"]),
    ]
    return Guard(Starlette(routes=routes), doors.origins)


class _Web:
    def __init__(self, doors: Doors) -> None:
        self._doors = doors

    def inside(self, handler: Handler) -> Callable[[Request], Awaitable[Response]]:
        """For those who are in; whatever changes something also carries the token of their page."""

        async def handle(request: Request) -> Response:
            visitor = await self._visitor(request)
            if visitor is None:
                raise HTTPException(401, "A link of today lets you in.")
            given = request.headers.get(TOKEN_HEADER, "")
            if request.method == "POST" and given != self._token(visitor):
                raise HTTPException(403, "This page is older than your login: load it again.")
            return await handler(request, visitor)

        return handle

    async def index(self, request: Request) -> Response:
        visitor = await self._visitor(request)
        if visitor is None:
            return HTMLResponse(_page("closed.html"), 401)
        return HTMLResponse(_page("index.html").replace("{{token}}", self._token(visitor)))

    async def ask_in(self, request: Request) -> Response:
        """A link only shows a door: what looks at links beforehand must not use them up."""
        if not self._doors.login or not request.query_params.get("link"):
            return RedirectResponse("/", 303)
        return HTMLResponse(_page("enter.html"))

    async def let_in(self, request: Request) -> Response:
        word = parse_qs((await request.body()).decode("utf-8", "replace")).get("link", [""])[0]
        word, now = word or request.query_params.get("link", ""), self._doors.now()
        who = await self._doors.store.read(lambda conn: login.whose_link(conn, word, now))
        session = await self._doors.store.write(lambda conn: login.enter(conn, word, now))
        if who is None or session is None:
            return HTMLResponse(_page("closed.html"), 403)
        await self._doors.store.write(lambda conn: seating.take_one(conn, who))
        answer = RedirectResponse("/", 303)
        lasts = int(login.SESSION_LASTS.total_seconds())
        secure = self._doors.secure
        answer.set_cookie(COOKIE, session, lasts, secure=secure, httponly=True, samesite="strict")
        return answer

    async def leave(self, _request: Request, visitor: Visitor) -> Response:
        await self._doors.store.write(lambda conn: login.leave(conn, visitor.session))
        answer = Response(status_code=204)
        answer.delete_cookie(COOKIE)
        return answer

    async def room(self, _request: Request, visitor: Visitor) -> Response:
        seats = await self._doors.rooms.seats(visitor)
        return JSONResponse(
            {
                "seats": [_seat_out(seat) for seat in seats],
                "now": self._doors.now().isoformat(),
                "clock": self._doors.jumps is not None,
                "login": self._doors.login,
            }
        )

    async def lines(self, request: Request, visitor: Visitor) -> Response:
        seat = await self._seat(request, visitor)
        most = request.query_params.get("most", "")
        found = await self._doors.rooms.lines(seat, int(most) if most.isdecimal() else _LINES, self._doors.now)
        return JSONResponse(found)

    async def hear(self, request: Request, visitor: Visitor) -> Response:
        seat = await self._seat(request, visitor)
        refused = await self._doors.rooms.hear(seat, await _json(request))
        return Response(status_code=202 if refused is None else _STATUS[refused])

    async def file(self, request: Request, visitor: Visitor) -> Response:
        found = await self._doors.rooms.file(visitor, request.path_params["number"])
        if found is None:
            raise HTTPException(404)
        name, content, picture = found
        plain = "".join(one if one.isascii() and (one.isalnum() or one in "-_.") else "_" for one in name)
        way = "inline" if picture else "attachment"
        headers = {"content-disposition": f'{way}; filename="{plain}"'}
        return Response(content, headers=headers, media_type="image/png" if picture else "application/octet-stream")

    async def clock(self, request: Request, visitor: Visitor) -> Response:
        wanted = await _json(request)
        where, chat = wanted.get("to"), str(wanted.get("chat"))
        if self._doors.jumps is None or where not in TARGETS:
            raise HTTPException(404)
        seats = await self._doors.rooms.seats(visitor)
        seat = next((one for one in seats if str(one.chat) == chat), None)
        if seat is None:
            raise HTTPException(404)
        before = self._doors.page.said
        reached = await self._doors.jumps.to(where, seat.zone, seat.person)
        self._doors.page.tell(CLOCK)
        said = self._doors.page.said - before
        return JSONResponse({"reached": reached.isoformat() if reached else None, "said": said})

    async def events(self, _request: Request, visitor: Visitor) -> Response:
        own = None if visitor.only is None else {seat.chat for seat in await self._doors.rooms.seats(visitor)}
        return StreamingResponse(_news(self._doors.page, own), media_type="text/event-stream")

    async def _visitor(self, request: Request) -> Visitor | None:
        if not self._doors.login:
            return Visitor()
        return await visitor_of(self._doors.store, request.cookies.get(COOKIE), self._doors.now)

    async def _seat(self, request: Request, visitor: Visitor) -> Seat:
        given = request.path_params["chat"]
        number = int(given) if given.removeprefix("-").isdecimal() else 0
        seat = await self._doors.rooms.seat(visitor, number)
        if seat is None:
            raise HTTPException(404, "There is no such chat here.")
        return seat

    def _token(self, visitor: Visitor) -> str:
        return login.token(self._doors.key, visitor.session)


async def _news(page: Page, own: set[int] | None) -> AsyncIterator[str]:
    """Which chats have something new, for as long as someone listens."""
    with page.looking() as look:
        yield "retry: 1000\nevent: here\ndata: {}\n\n"
        while True:
            chats = await _soon(look)
            if chats is None:
                yield "event: beat\ndata: {}\n\n"
                continue
            seen = [str(chat) for chat in chats if own is None or chat in own]
            if seen:
                yield f"data: {json.dumps(seen)}\n\n"


async def _soon(look: Look) -> list[int] | None:
    try:
        async with asyncio.timeout(BEAT_SECONDS):
            return await look.news()
    except TimeoutError:
        return None


def _seat_out(seat: Seat) -> dict[str, Any]:
    speakers = [{"user": user, "name": name} for user, name in seat.speakers]
    row = {"chat": str(seat.chat), "kind": seat.kind, "name": seat.name, "zone": seat.zone, "speakers": speakers}
    return row | {"known": bool(seat.keys)}


async def _json(request: Request) -> dict[str, Any]:
    try:
        found = json.loads(await request.body())
    except ValueError:
        found = None
    if not isinstance(found, dict):
        raise HTTPException(400, "A JSON object was expected.")
    return found


async def _static(request: Request) -> Response:
    found = _assets().get(request.path_params["name"])
    if found is None:
        raise HTTPException(404)
    return Response(found[0], media_type=found[1])


def _assets() -> dict[str, tuple[bytes, str]]:
    return {
        one.name: (one.read_bytes(), kind)
        for one in _STATIC.iterdir()
        for end, kind in _TYPES.items()
        if one.name.endswith(end)
    }


def _page(name: str) -> str:
    return (_STATIC / name).read_text(encoding="utf-8")
