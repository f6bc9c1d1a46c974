"""The body speaks: aches ease today's targets, alarms stop everything. Design, "Safety". No wording, no diagnosis."""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from core.evidence.numbers import value
from core.flow import day
from core.flow.scene import Scene
from core.flow.targets import careful, opened, renewed
from core.model.acts import AcheAct, Alarm, Bodyweight, OnlyKit
from core.model.book import Hold, Kept
from core.model.facts import Ached, Alarmed, AlertAche, AlertAlarm, Eased, OffToday, Weighed
from core.model.lifter import Ache

QUOTED: Final = 200
"""Characters of a message that are quoted to the coach."""


def ache(scene: Scene, acts: Sequence[AcheAct]) -> Scene:
    """Keep aches, make today's targets anew under them, and tell the coach of those that need a word."""
    scene = opened(scene)
    for act in acts:
        told = scene.book.profile.coach is not None and (act.level is None or act.level >= value("ache.ease_level"))
        lifter = scene.book.lifter
        noted = Ache(act.where, scene.on, act.side, act.level)
        others = tuple(one for one in lifter.aches if not _same_place(one, act))
        scene = scene.keeps(act).says(Ached(act, told)).makes(replace(lifter, aches=(*others, noted)))
        scene, eased, off = _eased(scene)
        if told:
            scene = scene.alerts_coach(AlertAche(scene.book.profile.name, act, eased, off, _words(scene)))
    return scene


def _words(scene: Scene) -> str:
    """What is quoted to the coach: the message, in the lifter's own words."""
    return scene.words[:QUOTED]


def without_effects(scene: Scene, gone: Sequence[Kept]) -> Scene:
    """Without the aches that these acts told of, and with the targets made anew that they, or a kit, had changed."""
    told = {(kept.act.where, kept.act.side, kept.on) for kept in gone if isinstance(kept.act, AcheAct)}
    if told:
        lifter = scene.book.lifter
        aches = tuple(ache for ache in lifter.aches if (ache.where, ache.side, ache.on) not in told)
        aches += tuple(ache for ache in _told_before(scene, gone) if ache not in aches)
        scene = scene.makes(replace(lifter, aches=aches))
    another = any(isinstance(kept.act, OnlyKit) and kept.on == scene.on for kept in gone)
    return renewed(scene, tuple(scene.book.targets)) if (told or another) and not scene.book.hold else scene


def _told_before(scene: Scene, gone: Sequence[Kept]) -> tuple[Ache, ...]:
    """What was said of the same places before, which a later word had taken the place of."""
    found: dict[tuple[str, str | None], Ache] = {}
    places = {kept.act.where for kept in gone if isinstance(kept.act, AcheAct)}
    for kept in scene.book.kept:
        if isinstance(kept.act, AcheAct) and kept not in gone and kept.act.where in places:
            act = kept.act
            found[act.where, act.side] = Ache(act.where, kept.on, act.side, act.level)
    return tuple(found.values())


def _same_place(one: Ache, act: AcheAct) -> bool:
    """What is said now of a place stands for what was said of it before."""
    return one.where == act.where and (one.side == act.side or None in (one.side, act.side))


def _eased(scene: Scene) -> tuple[Scene, tuple[Eased, ...], tuple[str, ...]]:
    """Targets of today made anew; those that ask less now or are off are said, with one caution for all."""
    if scene.book.hold:
        return scene, (), ()
    before = dict(scene.book.targets)
    scene = renewed(scene, before)
    after = scene.book.targets
    in_order = dict.fromkeys((*(place.exercise for place in day.places(scene.book, scene.on)), *before))
    known = [name for name in in_order if name in before]
    todo = [name for name in known if after[name] != before[name] and not day.is_complete(scene.book, scene.on, name)]
    off = tuple(name for name in todo if after[name].way == "stop")
    eased = tuple(
        Eased(name, after[name].way, after[name].sets) for name in todo if after[name].way in ("ease", "hold")
    )
    touched = [*off, *(one.exercise for one in eased)]
    cautions = [one for name in touched for one in careful(scene.adviser.today(scene.book, scene.on, name, ()))]
    says = (*((OffToday(off),) if off else ()), *eased, *cautions[:1])
    return scene.says(*says), eased, off


def alarm(scene: Scene, acts: Sequence[Alarm]) -> Scene:
    """Stop: keep the signs, hold every target until the coach clears it, tell the coach at once."""
    coach = scene.book.profile.coach
    for act in acts:
        scene = scene.keeps(act).says(Alarmed(act.sign, coach is not None))
    first, *others = dict.fromkeys(act.sign for act in acts)
    scene = scene.alerts_coach(AlertAlarm(scene.book.profile.name, first, _words(scene), tuple(others)))
    for exercise in tuple(scene.book.targets):
        scene = scene.gives(exercise, None)
    hold = scene.book.hold or Hold(acts[0].sign, scene.now)
    return replace(scene, book=replace(scene.book, hold=hold), out=replace(scene.out, hold=hold))


def bodyweight(scene: Scene, acts: Sequence[Bodyweight]) -> Scene:
    """Keep the body mass, and use it from now on."""
    for act in acts:
        scene = scene.keeps(act).makes(replace(scene.book.lifter, bodyweight_kg=act.kg)).says(Weighed(act.kg))
    return scene
