"""Makes what a queued letter still lacks, outside of any transaction: documents, the course of an exercise, pictures.

A letter that waits for it holds no other one up. What channel it goes to is not known here, only whether it shows
pictures.
"""

import asyncio
import io
import json
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace
from datetime import date, datetime
from functools import partial
from typing import Any, Final

import structlog
from sqlalchemy import Connection
from sqlalchemy.exc import OperationalError

from bot import exporting
from bot.desk import coach_ahead, coach_looks, group_words
from bot.desk.office import Office, at_desk
from bot.desk.rooms import Parts
from bot.folding import FOLDING
from bot.log import fault
from bot.pictures import Pictures, ahead_picture, course_picture, overview_picture, standings_picture, week_picture
from bot.ports import Now
from bot.recipes import COURSE, WEEK
from bot.store import about, contest, dossier, outbox, people, progress, reports
from bot.store.engine import Store
from bot.store.outbox import Letter, Recipe, Undrawn
from core import checkin, coursing
from core.model.course import Glance, PictureWords
from core.say import desk
from core.say import progress as say_progress
from core.say.reply import voice_of

TRIES: Final = 3
"""Times that making something is tried; then its words go alone."""

log = structlog.get_logger(__name__)

ARTIST: Final = Pictures()
"""The workers of this process, whatever channel it serves."""

_PARTS: Final = Parts(checkin.answer, checkin.remind, FOLDING, {}, str, FOLDING.version)
"""What a desk needs where no message lies before it."""


async def make(store: Store, one: Undrawn, now: Now, *, pictures: bool) -> None:
    """Make one letter's missing part, and let it go. What fails is tried again, then left out; its words still go."""
    try:
        await _MAKERS[one.recipe.kind](store, one, now, pictures)
    except OperationalError as trouble:
        fault(log, "store_failed", trouble)
    except Exception as bug:  # noqa: BLE001  # a picture's bug must not hold up the words
        fault(log, "making_failed", bug, seq=one.seq, what=one.recipe.kind)
        await store.write(partial(outbox.not_drawn, seq=one.seq, most=TRIES))


async def _sets(store: Store, one: Undrawn, _now: Now, _pictures: bool) -> None:
    rows = await store.read(lambda conn: list(reports.sets_of(conn, _body(one)["who"])))
    out = io.StringIO()
    exporting.as_csv(rows, out)
    await _done(store, one, one.text, out.getvalue().encode())


async def _everything(store: Store, one: Undrawn, now: Now, _pictures: bool) -> None:
    found = await store.read(lambda conn: dossier.everything(conn, _body(one)["who"], now()))
    await _done(store, one, one.text, json.dumps(found, ensure_ascii=False, indent=1).encode())


async def _course(store: Store, one: Undrawn, now: Now, pictures: bool) -> None:
    """The facts in words first; the picture of them after, where pictures are shown."""
    body = _body(one)
    who, exercise, today = body["who"], body["exercise"], date.fromisoformat(body["today"])
    past = await store.read(partial(_past, who=who, exercise=exercise, today=today))
    profile, lifter, days = past
    voice = voice_of(profile, lifter.unit)
    course = await asyncio.to_thread(coursing.course_of, exercise, voice.heading(exercise), lifter, days)

    def tell(conn: Connection) -> None:
        outbox.drawn(conn, one.seq, say_progress.course(voice, exercise, course), None)
        if pictures and course is not None and len(course.points) > 1:
            shown = replace(course, words=say_progress.course_words(voice, course))
            recipe = Recipe("course.png", "course_picture", COURSE.dump_json(shown).decode())
            beside = Letter(say_progress.caption(voice, course), recipe=recipe)
            outbox.beside(conn, one.seq, beside, now())

    await store.write(tell)


def _past(conn: Connection, who: int, exercise: str, today: date) -> Any:
    past = progress.past_of(conn, who, exercise, today, FOLDING)
    days = tuple((each.lifter, each.aim, each.session) for each in past)
    return people.profile(conn, who), about.body_of(conn, who), days


async def _course_picture(store: Store, one: Undrawn, _now: Now, pictures: bool) -> None:
    await _drawn(store, one, course_picture, COURSE.validate_json(one.recipe.body), pictures=pictures)


async def _week_picture(store: Store, one: Undrawn, _now: Now, pictures: bool) -> None:
    await _drawn(store, one, week_picture, WEEK.validate_json(one.recipe.body), pictures=pictures)


async def _standings(store: Store, one: Undrawn, _now: Now, pictures: bool) -> None:
    """The end of a challenge in a picture; where none is shown, the words alone."""
    if not pictures:
        await _done(store, one, one.text, None)
        return
    found, made = await store.read(partial(contest.final, key=_body(one)["challenge"]))
    title = group_words.voice(found).say("group.final.picture", title=found.noun.title)
    await _drawn(store, one, partial(standings_picture, title), made, pictures=True)


async def _drawn(store: Store, one: Undrawn, draw: Callable[..., bytes], value: object, *, pictures: bool) -> None:
    """Draw in another process; a channel without pictures is told nothing twice."""
    if not pictures:
        await _done(store, one, "", None)
        return
    await _done(store, one, one.text, await ARTIST.draw(draw, value))


async def _week_of(store: Store, one: Undrawn, now: Now, _pictures: bool) -> None:
    """One client's week, in a transaction of its own, so that nobody's answer waits for all of them."""
    body = _body(one)

    def tell(conn: Connection) -> None:
        office = _desk_of(conn, body["coach"], now())
        who = people.get(conn, body["who"])
        mine = who.coach == body["coach"]
        text = coach_looks.week_text(office, who, body["name"]) if mine else None
        outbox.drawn(conn, one.seq, text or "", None)

    await store.write(tell)


async def _overview(store: Store, one: Undrawn, now: Now, pictures: bool) -> None:
    """The picture of everyone; where none is shown, its words alone."""
    if not pictures:
        await _done(store, one, one.text, None)
        return
    coach = _body(one)["coach"]

    def look(conn: Connection) -> tuple[tuple[Glance, ...], PictureWords]:
        office = _desk_of(conn, coach, now())
        return coach_looks.glances(office), desk.overview_words(office.voice)

    found, words = await store.read(look)
    await _drawn(store, one, partial(overview_picture, words=words), found, pictures=True)


def _desk_of(conn: Connection, coach: int, now: datetime) -> Office:
    return at_desk(conn, _PARTS, people.get(conn, coach), now)


async def _what_if(store: Store, one: Undrawn, _now: Now, pictures: bool) -> None:
    """Both courses side by side in processes of their own, then their words and their picture."""
    asked = coach_ahead.QUESTION.validate_json(one.recipe.body)
    courses = await asyncio.gather(*(ARTIST.draw(coach_ahead.course, asked, ways) for ways in asked.orders))
    coach = await store.read(lambda conn: people.profile(conn, asked.coach))
    text, ahead = coach_ahead.answer(asked, coach, courses)
    await _done(store, one, text, await ARTIST.draw(ahead_picture, ahead) if pictures else None)


async def _done(store: Store, one: Undrawn, text: str, content: bytes | None) -> None:
    await store.write(partial(outbox.drawn, seq=one.seq, text=text, content=content))


def _body(one: Undrawn) -> dict[str, Any]:
    body: dict[str, Any] = json.loads(one.recipe.body)
    return body


_MAKERS: Final[Mapping[str, Callable[[Store, Undrawn, Now, bool], Awaitable[None]]]] = {
    "sets": _sets,
    "everything": _everything,
    "course": _course,
    "course_picture": _course_picture,
    "week_picture": _week_picture,
    "standings": _standings,
    coach_looks.WEEK_OF: _week_of,
    coach_looks.OVERVIEW: _overview,
    coach_ahead.KIND: _what_if,
}
"""How each kind of recipe is made."""
