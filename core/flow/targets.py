"""Targets put in force for a day, and the next set announced. It may not know how advice is made."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date, timedelta
from typing import Final

from core.flow import day, nudges
from core.flow.scene import Scene
from core.flow.steps import step_of
from core.model.acts import AcheAct, SetAct
from core.model.facts import Because, Careful, NextTime, PlanDone, Told, Upcoming
from core.model.quantities import Load
from core.model.target import Advice, Session, Target, TargetSet
from core.model.working import working_sets

DAYS_AHEAD: Final = 14
"""How far the plan is searched for the next day of an exercise."""

A_WEEK: Final = timedelta(days=7)


def opened(scene: Scene, *more: str) -> Scene:
    """Every exercise of today, and those named, has its target in force: the one for the whole of its sets."""
    if scene.book.hold:
        return scene
    planned = (place.exercise for place in day.places(scene.book, scene.on) if not place.left_out)
    for exercise in dict.fromkeys((*planned, *more)):
        if exercise not in scene.book.targets:
            advice = scene.adviser.today(scene.book, scene.on, exercise, ())
            scene = scene.gives(exercise, Target(advice.way, advice.sets))
    return scene


def renewed(scene: Scene, exercises: Iterable[str]) -> Scene:
    """The targets of these exercises made anew, as after an ache; what is done already was asked as it was."""
    for exercise in exercises:
        given = scene.book.targets.get(exercise)
        if given is not None and given.sets and len(working_sets(scene.done(exercise))) >= len(given.sets):
            continue
        advice = scene.adviser.today(scene.book, scene.on, exercise, ())
        target = _with_load_done(Target(advice.way, advice.sets), scene.done(exercise))
        if target != scene.book.targets.get(exercise):
            scene = scene.gives(exercise, target)
    return scene


def settled(scene: Scene, exercise: str) -> Scene:
    """The load that the sets are done with takes the place of one that was a guess of ours, or that was lighter."""
    target = scene.book.targets.get(exercise)
    if target is None or (after := _with_load_done(target, scene.done(exercise))) == target:
        return scene
    return scene.gives(exercise, after)


def _with_load_done(target: Target, done: tuple[SetAct, ...]) -> Target:
    work = working_sets(done)
    if not work or work[0].load is None or target.way in ("ease", "stop"):
        return target
    if target.way == "first":
        return replace(target, sets=tuple(replace(one, load=work[0].load) for one in target.sets))
    above = [act.load for act, one in zip(work, target.sets, strict=False) if _heavier(act.load, one.load)]
    if len(above) < len(work):
        return target
    own = min((load for load in above if load), key=lambda load: load.kg or 0.0)
    return replace(target, sets=tuple(replace(one, load=own) for one in target.sets))


def _heavier(done: Load | None, asked: Load | None) -> bool:
    if done is None or asked is None or done.kind != asked.kind or done.kind in ("assist", "band"):
        return False
    return done.kg is not None and asked.kg is not None and done.kg > asked.kg * 1.01


def announced(scene: Scene) -> Scene:
    """With the next set to do, or with what the next session will ask when nothing is left."""
    exercise = day.now_on(scene.book, scene.on)
    tried: set[str] = set()
    while exercise is not None and exercise not in tried:
        tried.add(exercise)
        scene = opened(scene, exercise)
        advice = scene.adviser.today(scene.book, scene.on, exercise, scene.done(exercise))
        if advice.sets and not _off(scene, exercise):
            return _next_set(scene, exercise, advice)
        exercise = day.next_after(scene.book, scene.on, exercise)
    return _nothing_left(scene)


def _off(scene: Scene, exercise: str) -> bool:
    return any(day.is_off(scene.book, one) for one in day.places(scene.book, scene.on) if one.exercise == exercise)


def _next_set(scene: Scene, exercise: str, advice: Advice) -> Scene:
    sets = scene.done(exercise)
    left = still_to_do(scene, exercise, advice)
    done, fresh = len(working_sets(sets)), not sets
    plates = scene.adviser.plates(day.lifter_on(scene.book, scene.on), exercise, Target(advice.way, left))
    note = next((p.note for p in day.places(scene.book, scene.on) if p.exercise == exercise), None) if fresh else None
    last = day.last_set(scene.book, scene.on)
    named = last is not None and isinstance(last.act, SetAct) and last.act.exercise != exercise
    scene = scene.says(Upcoming(exercise, left[0], done + 1, done + len(left), fresh, named, plates, note))
    scene = scene if fresh else nudges.set_up(scene, left[0].rest_s)
    if fresh or _moved(scene, exercise, left):
        scene = scene.says(Because(advice.why))
    return scene.says(*careful(advice)) if fresh and _unwarned(scene) else scene


def careful(advice: Advice) -> tuple[Careful, ...]:
    """The first caution, with what it is about."""
    slots = advice.why[0].slots if advice.why else ()
    return tuple(Careful(text, slots) for text in advice.cautions[:1])


def still_to_do(scene: Scene, exercise: str, advice: Advice) -> tuple[TargetSet, ...]:
    """The sets to go. A first load, or a heavier one of the lifter's own, stays for the day when done as asked."""
    target, done = scene.book.targets.get(exercise), working_sets(scene.done(exercise))
    if target is None or not target.sets or not done or not advice.sets or advice.way in ("ease", "stop"):
        return advice.sets
    if advice.way != "first" and not _heavier(target.sets[0].load, advice.sets[0].load):
        return advice.sets
    asked = Target("first", target.sets[: len(done)])
    return target.sets[len(done) :] if scene.adviser.met(done, asked) and target.sets[len(done) :] else advice.sets


def _moved(scene: Scene, exercise: str, left: tuple[TargetSet, ...]) -> bool:
    """The sets to go are others than the last set found in their place; that was told already otherwise."""
    given, sets = scene.book.targets.get(exercise), scene.done(exercise)
    done = len(working_sets(sets))
    if given is not None and _asked_of(given.sets[done:]) == _asked_of(left):
        return False
    before = scene.adviser.today(scene.book, scene.on, exercise, sets[:-1])
    return done <= 1 or _asked_of(before.sets[1:]) != _asked_of(left)


def _asked_of(sets: tuple[TargetSet, ...]) -> list[tuple[object, ...]]:
    return [(one.load, one.reps, one.tempo, one.range) for one in sets]


def _unwarned(scene: Scene) -> bool:
    """No caution was shown today: no ache was told of, and nothing was done that had one."""
    if any(isinstance(kept.act, AcheAct) for kept in day.acts_on(scene.book, scene.on)):
        return False
    done = dict.fromkeys(one.exercise for one in day.acts_of(day.sets_on(scene.book, scene.on)))
    return not any(scene.adviser.today(scene.book, scene.on, name, ()).cautions for name in done if name)


def _nothing_left(scene: Scene) -> Scene:
    places = [one for one in day.places(scene.book, scene.on) if not one.left_out]
    waits = any(
        day.is_off(scene.book, one) and not day.is_complete(scene.book, scene.on, one.exercise) for one in places
    )
    if waits:
        scene = scene.says(Told("next.rest_waits"))
    elif day.places(scene.book, scene.on):
        scene = scene.says(PlanDone())
    last = day.last_set(scene.book, scene.on)
    if last is None or not isinstance(last.act, SetAct) or last.act.exercise is None:
        return scene if day.places(scene.book, scene.on) else scene.says(Told("next.unplanned"))
    advice = next_time(scene, last.act.exercise)
    return scene.says(NextTime(last.act.exercise, advice.way, advice.sets), Because(advice.why))


def next_time(scene: Scene, exercise: str) -> Advice:
    """What the next session of an exercise asks, once today's is history."""
    session = Session(scene.on, scene.done(exercise), scene.book.targets.get(exercise))
    return scene.adviser.after(scene.book, session, exercise, next_day_of(scene, exercise))


def next_day_of(scene: Scene, exercise: str) -> date:
    """The next day on which the plan holds the exercise; a week from now where it does not."""
    for ahead in range(1, DAYS_AHEAD + 1):
        when = scene.on + timedelta(days=ahead)
        planned = scene.book.plan.on(when.weekday())
        if planned and any(one.exercise == exercise for one in planned.exercises):
            return when
    return scene.on + A_WEEK


def praised(scene: Scene, exercise: str) -> Scene:
    """With the step named, when the last set completed the target and one way went up."""
    target, done = scene.book.targets.get(exercise), scene.done(exercise)
    step = step_of(exercise, target, done, scene.adviser.met)
    step = step if target and len(working_sets(done)) == len(target.sets) else None
    return scene.says(step) if step else scene
