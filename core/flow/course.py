"""The course of a session: begin, next, skip, swap, finish. It may not know how they are worded."""

from collections.abc import Sequence
from typing import Final

from core.flow import day, nudges
from core.flow.replacements import replacements
from core.flow.scene import Scene
from core.flow.steps import step_of
from core.flow.targets import announced, next_time, opened
from core.model.acts import Begin, Finish, Next, SetAct, Skip, Swap
from core.model.facts import Line, Listed, NextTime, Offered, Recapped, Skipped, Stepped, Swapped, Told
from core.model.outcome import AgendaChange
from core.model.target import Target
from core.model.working import working_sets

COMING_SHOWN: Final = 4
"""Exercises whose next target a recap names, so that it stays short."""

SECONDS_A_REP: Final = 4.0
SETTING_UP_S: Final = 60.0
"""For "about 50 minutes": a repetition and the walk to the next exercise. Common practice, no source."""


def begin(scene: Scene, acts: Sequence[Begin]) -> Scene:
    """The session starts: its list, when there is a plan."""
    del acts
    scene = opened(scene.keeps(Begin()))
    if scene.book.hold:
        return scene
    nothing = "begin.all_off" if day.places(scene.book, scene.on) else "begin.unplanned"
    return scene.says(listed(scene) or Told(nothing))


def listed(scene: Scene, *, started: bool = True) -> Listed | None:
    """Today's session with its targets in force; None where nothing is planned."""
    planned = day.training_day(scene.book, scene.on)
    places = [place for place in day.places(scene.book, scene.on) if not day.is_off(scene.book, place)]
    if planned is None or not places:
        return None
    lines = tuple(
        Line(
            p.exercise,
            scene.book.targets.get(p.exercise),
            p.aim.sets,
            p.aim.reps,
            len(working_sets(scene.done(p.exercise))),
        )
        for p in places
    )
    waits = tuple(
        one.exercise for one in day.places(scene.book, scene.on) if day.is_off(scene.book, one) and not one.left_out
    )
    return Listed(planned.title, lines, planned.at, minutes(scene, places), started, waits=waits)


def minutes(scene: Scene, places: Sequence[day.Place]) -> int:
    """About how long these exercises take, to the next five minutes."""
    return max(5, 5 * round(sum(seconds(scene.book.targets.get(place.exercise)) for place in places) / 300))


def seconds(target: Target | None, done: int = 0) -> float:
    """About how long a target's sets take from the ``done``-th on, with the way to the exercise."""
    total = SETTING_UP_S
    for one in target.sets[done:] if target else ():
        tempo = sum(part for part in one.tempo or () if part is not None) or SECONDS_A_REP
        total += one.reps[1] * tempo + (one.rest_s if one.rest_s is not None else 0.0)
    return total


def next_(scene: Scene, acts: Sequence[Next]) -> Scene:
    """What to do next is answered by what follows every message."""
    del acts
    return opened(scene)


def skip(scene: Scene, acts: Sequence[Skip]) -> Scene:
    """Leave an exercise out today: the one named, else the one that is on."""
    scene = opened(scene)
    for act in acts:
        exercise = act.exercise or day.now_on(scene.book, scene.on)
        if exercise is None:
            scene = scene.says(Told("skip.nothing"))
            continue
        scene = scene.keeps(Skip(exercise)).says(Skipped(exercise))
    return scene


def swap(scene: Scene, acts: Sequence[Swap]) -> Scene:
    """One exercise in the place of another; asked for one, offer up to three."""
    scene = opened(scene)
    for act in acts:
        from_ = act.from_ or day.now_on(scene.book, scene.on)
        if act.to is not None:
            scene = scene.keeps(Swap(from_, act.to))
            scene = scene.says(Swapped(from_, act.to) if from_ and from_ != act.to else Told("swap.open"))
            scene = opened(scene, act.to)
        elif from_ is None:
            scene = scene.says(Told("swap.which"))
        else:
            scene = scene.says(Offered(from_, replacements(scene, from_)))
    return scene


def finish(scene: Scene, acts: Sequence[Finish]) -> Scene:
    """The session is over."""
    del acts
    scene = nudges.cancelled(scene).keeps(Finish())
    return scene.plans(AgendaChange("recap", scene.on, None), AgendaChange("missed", scene.on, None))


def closed(scene: Scene, *, by_silence: bool = False) -> Scene:
    """With the recap: what was done, the steps made, what is asked next time."""
    sets = day.acts_of(day.sets_on(scene.book, scene.on))
    names = [name for name in dict.fromkeys(one.exercise for one in sets) if name is not None]
    done = tuple((name, tuple(one for one in sets if one.exercise == name)) for name in names)
    skipped = tuple(place.exercise for place in day.places(scene.book, scene.on) if place.left_out)
    return scene.says(Recapped(done, steps(scene, names), _coming(scene, names), skipped, by_silence))


def steps(scene: Scene, names: Sequence[str]) -> tuple[Stepped, ...]:
    """The steps made today."""
    targets, met = scene.book.targets, scene.adviser.met
    found = (step_of(name, targets.get(name), scene.done(name), met) for name in names)
    return tuple(step for step in found if step is not None)


def _coming(scene: Scene, names: Sequence[str]) -> tuple[NextTime, ...]:
    if scene.book.hold:
        return ()
    advice = ((name, next_time(scene, name)) for name in names[:COMING_SHOWN])
    return tuple(NextTime(name, one.way, one.sets) for name, one in advice)


def is_on(scene: Scene) -> bool:
    """A session is planned today or under way."""
    busy = any(isinstance(kept.act, SetAct | Begin) for kept in day.acts_on(scene.book, scene.on))
    return busy or bool(day.places(scene.book, scene.on))


def standing(scene: Scene) -> Scene:
    """With what comes next, unless targets are held or nothing was ever begun."""
    if scene.book.hold:
        return scene
    return announced(scene) if is_on(scene) else scene.says(Told("next.unplanned"))
