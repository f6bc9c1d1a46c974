"""How it goes, in words: the course of an exercise and one's own week. The pictures show the same facts."""

from typing import Final, get_args

from core.model.course import Course, PictureWords
from core.model.quantities import Way, from_kg
from core.model.week import WeekFacts
from core.say.render import Voice
from core.say.wording import has

_NAMED: Final = 4
"""Steps that are named one by one; of more only the last ones."""

_SHARE: Final = 4
"""A move of the estimate by less than this part of its span lies within doubt. Choice of ours."""


def course(voice: Voice, exercise: str, one: Course | None) -> str:
    """An exercise's course: what could be lifted now, how it moved, the steps."""
    name = voice.heading(exercise)
    if one is None:
        return voice.say("about.course.none", exercise=voice.exercise(exercise))
    last, first = one.points[-1], one.points[0]
    n, low, high = (_shown(voice, one, value) for value in (last.estimate, last.low, last.high))
    if one.in_reps:
        lines = [voice.say("about.course.now.reps", exercise=name, n=n, low=low, high=high)]
    else:
        lines = [
            voice.say("about.course.now", exercise=name, n=voice.say(f"unit.{voice.unit}", n=n), low=low, high=high)
        ]
    if len(one.points) == 1:
        return "\n".join([*lines, voice.say("about.course.first")])
    lines.append(_moved(voice, one))
    count = len(one.points)
    lines.append(voice.say("about.course.sessions", count, n=count, day=voice.date(first.on)))
    return "\n".join([*lines, *_steps(voice, one)])


def _moved(voice: Voice, one: Course) -> str:
    last, first = one.points[-1], one.points[0]
    day = voice.date(first.on)
    if abs(last.estimate - first.estimate) < (last.high - last.low) / _SHARE or not first.estimate:
        return voice.say("about.course.same", day=day)
    share = (last.estimate / first.estimate - 1) * 100
    return voice.say("about.course.up" if share > 0 else "about.course.down", n=voice.number(abs(share), 0), day=day)


def _steps(voice: Voice, one: Course) -> list[str]:
    made = [point for point in one.points if point.way is not None]
    if not made:
        return []
    texts = [
        voice.say("about.course.step", what=voice.say(f"step.short.{point.way}"), day=voice.date(point.on))
        for point in made[-_NAMED:]
    ]
    key = "about.course.steps" if len(made) <= _NAMED else "about.course.steps.last"
    return [voice.say(key, len(made), n=len(made), list=voice.listed(texts))]


def _shown(voice: Voice, one: Course, value: float) -> str:
    return voice.number(value if one.in_reps else from_kg(value, voice.unit), 0 if one.in_reps else 1)


def caption(voice: Voice, one: Course) -> str:
    """The words under the picture of a course."""
    first, last = voice.date(one.points[0].on), voice.date(one.points[-1].on)
    return voice.say("about.course.caption", exercise=one.title, first=first, last=last)


def week(voice: Voice, facts: WeekFacts) -> str:
    """One's own last seven days."""
    span = {"first": voice.date(facts.first), "last": voice.date(facts.last)}
    key = "week.none" if not facts.sets else "week.head" if facts.planned else "week.head.unplanned"
    sets = voice.say("count.none", facts.sets, n=facts.sets)
    lines = [voice.say(key, facts.kept, **span, kept=facts.kept, planned=facts.planned, sets=sets)]
    if facts.steps:
        texts = [
            voice.say("recap.step", exercise=voice.exercise(one.exercise), what=voice.say(f"step.short.{one.way}"))
            for one in facts.steps
        ]
        lines.append(voice.say("about.week.steps", len(texts), list=voice.listed(texts)))
    groups = []
    for side in ("under", "inside", "over"):
        rows = [f"{muscle(voice, one.muscle)} {voice.number(one.sets, 1)}" for one in facts.muscles if one.side == side]
        if rows:
            groups.append(voice.say(f"about.week.{side}", list=voice.listed(rows)))
    if groups and facts.sets:
        low, high = (voice.number(end) for end in facts.span)
        lines.append(voice.say("about.week.muscles", low=low, high=high, list="; ".join(groups)))
    return "\n".join(lines)


def week_caption(voice: Voice, facts: WeekFacts) -> str:
    """The words under the picture of a week."""
    return voice.say("about.week.title", first=voice.date(facts.first), last=voice.date(facts.last))


def muscle(voice: Voice, name: str) -> str:
    """A muscle's name."""
    key = f"muscle.{name}"
    return voice.say(key) if has(voice.language, key) else name.replace("-", " ")


def course_words(voice: Voice, one: Course) -> PictureWords:
    """The words in the picture of a course."""
    axis = voice.say("picture.reps") if one.in_reps else voice.say("picture.once", unit=voice.unit)
    ways = {way: voice.say(f"picture.way.{way}") for way in get_args(Way)}
    return PictureWords(axis=axis, day=voice.say("picture.day"), ways=ways)


def week_words(voice: Voice, title: str, kept: int, planned: int) -> PictureWords:
    """The words in the picture of a week."""
    sets = voice.say("picture.sets")
    if not planned:
        return PictureWords(
            voice.say("picture.week.unplanned", kept, title=title, kept=kept), sets, decimal=voice.decimal
        )
    head = voice.say("picture.week", planned, title=title, kept=kept, planned=planned)
    return PictureWords(head, sets, decimal=voice.decimal)
