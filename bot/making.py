"""Makes what a queued letter still lacks, outside of any transaction: documents, the course of an exercise, pictures.

A letter that waits for it holds no other one up. What channel it goes to is not known here, only whether it shows
pictures.
"""

import asyncio
import io
import json
from collections.abc import Awaitable, Callable, Mapping
from dataclasses import replace
from datetime import UTC, date
from functools import partial
from typing import Any, Final

import structlog
from pydantic import TypeAdapter
from sqlalchemy import Connection
from sqlalchemy.exc import OperationalError

from bot import exporting
from bot.folding import FOLDING
from bot.log import fault
from bot.ports import Now
from bot.store import about, contest, dossier, outbox, people, progress, reports
from bot.store.engine import Store
from bot.store.outbox import Letter, Recipe, Undrawn
from core import coursing
from core.model.course import Course, WeekView
from core.say import progress as say_progress
from core.say.render import Voice
from core.say.reply import voice_of

TRIES: Final = 3
"""Times that making something is tried; then its words go alone."""

log = structlog.get_logger(__name__)

COURSE: Final = TypeAdapter(Course)
WEEK: Final = TypeAdapter(WeekView)


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
    from bot.pictures import course_picture

    await _drawn(store, one, course_picture, COURSE.validate_json(one.recipe.body), pictures=pictures)


async def _week_picture(store: Store, one: Undrawn, _now: Now, pictures: bool) -> None:
    from bot.pictures import week_picture

    await _drawn(store, one, week_picture, WEEK.validate_json(one.recipe.body), pictures=pictures)


async def _standings(store: Store, one: Undrawn, _now: Now, pictures: bool) -> None:
    """The end of a challenge in a picture; where none is shown, the words alone."""
    if not pictures:
        await _done(store, one, one.text, None)
        return
    from bot.pictures import standings_picture

    found, made = await store.read(partial(contest.final, key=_body(one)["challenge"]))
    title = Voice("", UTC).say("group.final.picture", title=found.noun.title)
    await _drawn(store, one, partial(standings_picture, title), made, pictures=True)


async def _drawn(store: Store, one: Undrawn, draw: Callable[..., bytes], value: object, *, pictures: bool) -> None:
    """Draw in a process of its own that ends with it; a channel without pictures is told nothing twice."""
    if not pictures:
        await _done(store, one, "", None)
        return
    from bot.pictures import Pictures

    artist = Pictures()
    try:
        content = await artist.draw(draw, value)
    finally:
        await asyncio.to_thread(artist.close)
    await _done(store, one, one.text, content)


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
}
"""How each kind of recipe is made."""
