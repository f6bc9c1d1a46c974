"""Today goes otherwise: less time, another kit, or all of it after all. It may not know how the wish was worded."""

from collections.abc import Mapping
from dataclasses import replace
from typing import Final

from core.evidence.body import row_of
from core.flow import course, day
from core.flow.scene import Scene
from core.flow.targets import opened, renewed
from core.model.acts import Begin, OnlyKit, SetAct, Skip
from core.model.facts import Held, KitOfDay, Told, Trimmed
from core.model.lifter import Kit
from core.model.working import working_sets

_BY_KIND: Final[Mapping[str, int]] = {"compound": 0, "isolation": 1}
"""Exercises of several joints matter most when time is short. Common practice, no source."""


def shortened(scene: Scene, minutes: int) -> Scene:
    """The session cut to so many minutes from now: whole exercises go, those that matter least first."""
    scene = opened(_without_cuts(scene))
    todo = [one for one in day.places(scene.book, scene.on) if not day.is_off(scene.book, one)]
    left = [one.exercise for one in todo if not day.is_complete(scene.book, scene.on, one.exercise)]
    if not left:
        return scene.says(Told("trim.nothing"))
    stays: list[str] = []
    room = minutes * 60.0
    for exercise in _by_worth(scene, left):
        takes = _takes(scene, exercise)
        if not stays or takes <= room:
            stays.append(exercise)
            room -= takes
    gone = tuple(one for one in left if one not in stays)
    for exercise in gone:
        scene = scene.keeps(Skip(exercise, for_time=True))
    in_order = tuple(one for one in left if one in stays)
    return scene.says(Trimmed(minutes, in_order, gone, tight=len(stays) == 1 and room < 0))


def _takes(scene: Scene, exercise: str) -> float:
    return course.seconds(scene.book.targets.get(exercise), len(working_sets(scene.done(exercise))))


def _by_worth(scene: Scene, names: list[str]) -> list[str]:
    """Most worth first: what is begun, then what works several joints, new muscles before the same again."""
    ordered: list[str] = []
    left = list(names)
    while left:
        covered = {muscle for name in ordered for muscle in row_of(name).main_muscles}

        def worth(name: str, covered: set[str] = covered) -> tuple[bool, int, bool]:
            row = row_of(name)
            again = set(row.main_muscles) <= covered
            return not scene.done(name), _BY_KIND[row.kind], again

        best = min(left, key=worth)  # the first in the plan's order, where two are alike
        ordered.append(best)
        left.remove(best)
    return ordered


def only_with(scene: Scene, kit: Kit | None, said: KitOfDay) -> Scene:
    """Another kit for today: targets follow at once, and what it cannot load is named. ``said``: it as understood."""
    scene = opened(scene)
    before = dict(scene.book.targets)
    scene = scene.keeps(OnlyKit(kit))
    if scene.book.hold:
        return scene.says(said, Held(scene.book.hold.since))
    open_ = [name for name in before if not day.is_complete(scene.book, scene.on, name)]
    scene = renewed(scene, open_)
    off = tuple(name for name in open_ if scene.book.targets[name].way == "stop" and before[name].way != "stop")
    return scene.says(replace(said, off=off))


def all_again(scene: Scene) -> Scene:
    """All of today's session with the usual kit: what was left out comes back."""
    changed = [kept for kept in day.acts_on(scene.book, scene.on) if isinstance(kept.act, Skip | OnlyKit)]
    if not changed:
        return scene.says(Told("today.all.already"))
    for kept in changed:
        scene = scene.changes(kept, None)
    scene = opened(scene)
    if not scene.book.hold:
        scene = renewed(scene, tuple(scene.book.targets))
    return scene.says(Told("today.all"))


def _without_cuts(scene: Scene) -> Scene:
    """Without what an earlier cut of today left out."""
    for kept in day.acts_on(scene.book, scene.on):
        if isinstance(kept.act, Skip) and kept.act.for_time:
            scene = scene.changes(kept, None)
    return scene


def stands(scene: Scene) -> Scene:
    """With how the session stands now: the next set where it has begun, else its list."""
    if scene.book.hold:
        return scene
    begun = any(isinstance(kept.act, SetAct | Begin) for kept in day.acts_on(scene.book, scene.on))
    if begun:
        return course.standing(scene)
    listed = course.listed(scene, started=False)
    if listed is None:
        return scene
    told = any(isinstance(fact, KitOfDay) and fact.off for fact in scene.facts)
    return scene.says(replace(listed, waits=()) if told else listed)
