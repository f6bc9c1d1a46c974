"""The flow's door: acts, one after another, onto the book; then what comes next. Reads no text, writes no sentence."""

from collections.abc import Callable, Iterable, Mapping, Sequence
from itertools import groupby
from typing import Any, Final

from core.flow import body, course, mends, records
from core.flow.scene import Scene
from core.model.acts import (
    AcheAct,
    Act,
    Alarm,
    Amend,
    AsPlanned,
    Begin,
    Bodyweight,
    Erase,
    Finish,
    Next,
    SetAct,
    Skip,
    Swap,
)
from core.model.facts import EraseAsked, Held, Offered

Handler = Callable[[Scene, Sequence[Any]], Scene]

HANDLERS: Final[Mapping[type, Handler]] = {
    Alarm: body.alarm,
    SetAct: records.sets,
    AsPlanned: records.as_planned,
    Amend: mends.amend,
    Erase: mends.erase,
    AcheAct: body.ache,
    Begin: course.begin,
    Finish: course.finish,
    Next: course.next_,
    Skip: course.skip,
    Swap: course.swap,
    Bodyweight: body.bodyweight,
}
"""What each kind of act does. Acts of one kind that follow each other are worked together."""

_MOVES_ON: Final = (SetAct, AsPlanned, Amend, Erase, AcheAct, Next, Skip, Swap)
"""After these the next set is said."""

_WANTS_TARGETS: Final = (*_MOVES_ON, Begin, Finish)


def work(scene: Scene, acts: Iterable[Act], *, asks: bool = False) -> Scene:
    """All acts of a message, alarms first because nothing outranks them, and what follows from them.

    ``asks``: a question follows, so the next set waits.
    """
    ordered = sorted(acts, key=lambda act: not isinstance(act, Alarm))
    for kind, some in groupby(ordered, key=type):
        scene = HANDLERS[kind](scene, tuple(some))
    return _followed(scene, ordered, asks=asks)


def _followed(scene: Scene, acts: Sequence[Act], *, asks: bool) -> Scene:
    """What a message ends with: the hold, a recap, or the next set."""
    kinds = tuple(type(act) for act in acts)
    if scene.book.hold:
        held = Alarm not in kinds and any(kind in _WANTS_TARGETS for kind in kinds)
        scene = scene.says(Held(scene.book.hold.since)) if held else scene
        return course.closed(scene) if Finish in kinds else scene
    if Finish in kinds:
        return course.closed(scene)
    asked = asks or any(isinstance(fact, EraseAsked | Offered) for fact in scene.facts)
    if asked or not scene.live or not _is_about_today(acts) or _told_in_passing(scene, acts):
        return scene
    return course.standing(scene)


def _is_about_today(acts: Sequence[Act]) -> bool:
    return any(isinstance(act, _MOVES_ON) and not (isinstance(act, SetAct) and act.day) for act in acts)


def _told_in_passing(scene: Scene, acts: Sequence[Act]) -> bool:
    """Only the body spoke, on a day without a session."""
    return all(isinstance(act, AcheAct) for act in acts) and not course.is_on(scene)
