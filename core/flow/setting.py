"""What the reader is told of the moment a message was written: unit, plan, the exercise that is on, the last set."""

from dataclasses import replace
from datetime import date

from core.flow import day
from core.flow.scene import Scene
from core.flow.targets import opened
from core.model.book import Book
from core.model.reading import PlanLine, Setting
from core.model.target import TargetSet


def as_of(book: Book, message: int) -> Book:
    """The book without the acts of that message and of all later ones: how it stood when the message was written."""
    return replace(book, kept=tuple(kept for kept in book.kept if kept.message < message))


def setting_of(scene: Scene, *, told: bool = False) -> Setting:
    """The reader's setting, as of this message. ``told``: loads never lifted count too, which are guesses of ours."""
    book = as_of(opened(scene).book, scene.message)
    last = day.last_set(book, scene.on)
    sets = day.acts_of((last,)) if last else ()
    return Setting(
        unit=book.lifter.unit,
        now_on=day.now_on(book, scene.on),
        plan=tuple(
            _line(book, scene.on, place, told=told) for place in day.places(book, scene.on) if not place.left_out
        ),
        last=sets[0] if sets else None,
        bodyweight_kg=book.lifter.bodyweight_kg,
        today=scene.on,
        language=book.profile.language,
        usual=book.usual,
    )


def bare(setting: Setting) -> Setting:
    """The same without any load known before: how the words stand by themselves."""
    return replace(setting, plan=tuple(replace(line, load=None) for line in setting.plan), last=None, usual={})


def _line(book: Book, on: date, place: day.Place, *, told: bool) -> PlanLine:
    target = book.targets.get(place.exercise)
    done = day.sets_on(book, on, place.exercise)
    known = told or place.exercise in book.progress or bool(done)
    first: TargetSet | None = target.sets[0] if target and target.sets else None
    aim = place.aim
    return PlanLine(
        exercise=place.exercise,
        sets=aim.sets,
        reps=first.reps if first else aim.reps,
        load=first.load if first and known else None,
        rest_s=aim.rest_s,
        tempo=aim.tempo,
    )
