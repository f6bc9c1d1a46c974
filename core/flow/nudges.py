"""Word that a rest is over, for who wants it. Its row is named after the message of the set before: each is said once,
the next set cancels it, and one that comes late is not said. It may not know how it is worded."""

from dataclasses import replace
from datetime import date, datetime, timedelta
from typing import Final

from core.flow import day
from core.flow.scene import Scene
from core.model.acts import Finish
from core.model.book import Kept
from core.model.facts import Told, Upcoming
from core.model.outcome import AgendaChange

KIND: Final = "rest"

LATEST: Final = timedelta(minutes=3)
"""A word that comes later than this is of no use any more. Choice of ours."""


def set_up(scene: Scene, rest_s: float | None) -> Scene:
    """With word to come when the rest after the last set is over."""
    last = day.last_set(scene.book, scene.on)
    if last is None or not rest_s or not scene.live or not scene.book.profile.nudges:
        return scene
    over = last.at + timedelta(seconds=rest_s)
    return scene.plans(AgendaChange(_kind(last), scene.on, over)) if over > scene.now else scene


def cancelled(scene: Scene) -> Scene:
    """Without word about the rest after the last set: another one follows it, or nothing does."""
    last = day.last_set(scene.book, scene.on)
    if last is None or not scene.book.profile.nudges or last.message == scene.message:
        return scene
    return scene.plans(AgendaChange(_kind(last), scene.on, None))


def said(scene: Scene, on: date, message: int, standing: Scene) -> Scene:
    """The rest is over, and the next set; nothing, where something came after it. ``standing``: with what is next."""
    last = day.last_set(scene.book, on)
    closed = any(isinstance(kept.act, Finish) for kept in day.acts_on(scene.book, on))
    if last is None or last.message != message or closed or scene.on != on or scene.book.hold:
        return scene
    coming = next((fact for fact in standing.facts if isinstance(fact, Upcoming) and not fact.fresh), None)
    if coming is None or not _is_now(last, coming.step.rest_s, scene.now):
        return scene
    return scene.says(Told("nudge"), replace(coming, step=replace(coming.step, rest_s=None)))


def _is_now(last: Kept, rest_s: float | None, now: datetime) -> bool:
    return rest_s is not None and timedelta() <= now - last.at - timedelta(seconds=rest_s) <= LATEST


def _kind(last: Kept) -> str:
    return f"{KIND}:{last.message}"
