"""Today goes otherwise, in the lifter's words: less time, another kit, another day. Joins the reading of such wishes
(core.join) with what the session makes of them (core.flow); what else the message tells is worked beside."""

from core.flow import calendar, phrases, talk, today
from core.flow.scene import Scene
from core.flow.setting import setting_of
from core.flow.work import work
from core.join.today import Found, Usual, today_in
from core.join.wishes import AllAgain, MoveTo, OnlyToday, ShortOfTime, Today
from core.model.acts import Alarm, Begin
from core.model.facts import KitOfDay
from core.read.reader import read


def heard(scene: Scene, text: str) -> Scene | None:
    """The answer to a wish for today, if the message states one; an alarm in it outranks the wish."""
    lifter = scene.book.lifter
    found = today_in(text, Usual(lifter.unit, lifter.kit, scene.on))
    if found is None or any(isinstance(act, Alarm) for act in read(text, setting_of(scene)).acts):
        return None
    return _worked(scene, found)


def _worked(scene: Scene, found: Found) -> Scene:
    """A beginning is told of today as wished; sets are kept before what is left is cut."""
    reading = read(found.rest, setting_of(scene))
    begins = any(isinstance(act, Begin) for act in reading.acts)
    if not begins:
        scene = work(scene, reading.acts, asks=True)
    scene = _wished(scene, found.wish)
    scene = work(scene, reading.acts, asks=reading.ask is not None) if begins else scene
    scene = talk.beside(
        scene, () if reading.acts or phrases.is_courtesy(found.rest, scene.book.profile.language) else (found.rest,)
    )
    if reading.ask is not None:
        return talk.asks(scene, reading.ask)
    return scene if begins or isinstance(found.wish, MoveTo) else today.stands(scene)


def _wished(scene: Scene, wish: Today) -> Scene:
    match wish:
        case ShortOfTime(minutes):
            return today.shortened(scene, minutes)
        case OnlyToday(kit, beside, odd, without):
            return today.only_with(scene, kit, KitOfDay(kit, beside, odd, without=without))
        case MoveTo(on, at):
            return calendar.moved_to(scene, on, at)
        case AllAgain():
            return today.all_again(scene)
