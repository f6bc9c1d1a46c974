"""Sets kept, whether said one by one or as "as planned". It may not know how they are worded."""

from collections.abc import Sequence
from dataclasses import replace
from datetime import date, timedelta
from typing import Final

from core.evidence.body import row_of
from core.flow import day, nudges
from core.flow.scene import Scene
from core.flow.targets import opened, praised, settled
from core.model.acts import AsPlanned, SetAct
from core.model.facts import Fact, Recorded, Told
from core.model.outcome import AgendaChange
from core.model.target import TargetSet
from core.model.working import working_sets

SILENCE: Final = timedelta(hours=2)
"""After this long without a word a session is taken to be over, and recapped. Choice of ours."""


TWICE_WITHIN: Final = timedelta(seconds=15)
"""The same report again within this time was likely sent twice. Choice of ours: no set with its rest is as short."""


def sets(scene: Scene, acts: Sequence[SetAct]) -> Scene:
    """Keep sets, exercise by exercise in the order of first mention, and put the day's targets in force first."""
    twice = _sent_twice(scene, acts)
    for exercise, ago in dict.fromkeys((one.exercise, one.day) for one in acts):
        if exercise is None:
            continue
        some = tuple(one for one in acts if (one.exercise, one.day) == (exercise, ago))
        scene = _kept(scene, exercise, some, scene.on + timedelta(days=ago))
        scene = scene.says(Recorded(exercise, some, scene.on + timedelta(days=ago), ago, scene.edited))
        scene = praised(scene, exercise) if ago == 0 else scene
    return scene.says(Told("twice")) if twice else scene


def _sent_twice(scene: Scene, acts: Sequence[SetAct]) -> bool:
    """The same was reported so short a time ago that it cannot have been done again."""
    last = day.last_set(scene.book, scene.on)
    if last is None or scene.edited or last.message == scene.message or scene.now - last.at > TWICE_WITHIN:
        return False
    before = day.acts_of(one for one in day.sets_on(scene.book, scene.on) if one.message == last.message)
    return [replace(one, span=None) for one in acts] == [replace(one, span=None) for one in before]


def _kept(scene: Scene, exercise: str, some: Sequence[SetAct], on: date) -> Scene:
    if on == scene.on:
        scene = opened(scene, exercise)
    if on == scene.on and scene.live:
        scene = nudges.cancelled(scene).plans(AgendaChange("recap", on, scene.now + SILENCE))
    for one in some:
        scene = scene.keeps(replace(one, day=0), on)
    if on == scene.on:
        scene = settled(scene, exercise)
    return scene.plans(AgendaChange("missed", on, None))


def as_planned(scene: Scene, acts: Sequence[AsPlanned]) -> Scene:
    """Keep the sets of today's targets that are still to do, at their low ends."""
    if scene.book.hold:
        return scene.says(Told("as_planned.held"))
    for act in acts:
        scene = opened(scene, *([act.exercise] if act.exercise else []))
        names = [act.exercise] if act.exercise else [p.exercise for p in day.places(scene.book, scene.on)]
        facts: list[Fact] = []
        for exercise in names:
            scene, fact = _one_as_planned(scene, exercise)
            facts += [fact] if fact else []
        scene = scene.says(*(facts or [Told("as_planned.nothing")]))
    return scene


def _one_as_planned(scene: Scene, exercise: str) -> tuple[Scene, Fact | None]:
    places = [place for place in day.places(scene.book, scene.on) if place.exercise == exercise]
    if any(day.is_off(scene.book, place) for place in places):
        return scene, None
    target = scene.book.targets.get(exercise)
    asked = target.sets[len(working_sets(scene.done(exercise))) :] if target else ()
    if not asked:
        return scene, None
    if any(load_unknown(one) for one in asked):
        return scene, Told("as_planned.no_load", (("exercise", exercise),))
    some = tuple(as_done(exercise, one) for one in asked)
    scene = _kept(scene, exercise, some, scene.on)
    return scene, Recorded(exercise, some, scene.on, planned=True)


def load_unknown(one: TargetSet) -> bool:
    """Nothing says which load it would be."""
    return one.load is None or (one.load.kg is None and one.load.kind != "band" and one.load.label is None)


def as_done(exercise: str, asked: TargetSet) -> SetAct:
    """The set that meets a target set exactly, at its low end."""
    row = row_of(exercise)
    low = asked.reps[0]
    counted = {"hold": {"hold_s": float(low)}, "carry": {"distance_m": float(low)}}.get(row.pattern, {"reps": low})
    return SetAct(
        exercise,
        asked.load,
        tempo=asked.tempo,
        rest_s=asked.rest_s,
        range=asked.range,
        side=row.default_side,
        **counted,  # type: ignore[arg-type]
    )
