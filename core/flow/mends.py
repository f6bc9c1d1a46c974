"""Corrections: which kept set a correction means, and what it becomes. It may not know how they are worded."""

from collections.abc import Mapping, Sequence
from dataclasses import fields, replace
from datetime import timedelta
from typing import Any, Final

from core.flow import day
from core.flow.body import without_effects
from core.flow.scene import Scene
from core.flow.setting import as_of
from core.flow.targets import opened
from core.model.acts import Alarm, Amend, Erase, OnlyKit, SetAct, Which
from core.model.book import Kept
from core.model.facts import Amended, EraseAsked, Erased, NoSuchSet, Told, Undone
from core.model.working import working_sets

ASK_ABOVE: Final = 3
"""Erasing all of today asks for a yes first when more sets than this would go. Choice of ours."""

UNDO_WITHIN: Final = timedelta(minutes=10)
"""How long "undo" reaches back. Choice of ours: a slip is seen at once or not at all."""

CORRECT_WITHIN: Final = timedelta(hours=18)
"""How long after its message a set of another day is still "the last one". Choice of ours: yesterday evening, not
last week, so that a slip before today's first set cannot change an old session unseen."""

_FIELDS: Final = frozenset(one.name for one in fields(SetAct)) - {"span", "day"}


def amend(scene: Scene, acts: Sequence[Amend]) -> Scene:
    """Change kept sets; each in its place."""
    for act in acts:
        kept = _meant(scene, act.which)
        if kept is None or not isinstance(kept.act, SetAct):
            scene = scene.says(_no_such(scene))
            continue
        before, number = kept.act, _number(scene, kept)
        after = _changed(before, act.change)
        if after.exercise is not None:
            scene = opened(scene, after.exercise)
        scene = _moved(scene, kept, after, act.change.get("day"))
        scene = scene.says(Amended(before, after, number))
    return scene


def _changed(before: SetAct, change: Mapping[str, object]) -> SetAct:
    known: dict[str, Any] = {name: value for name, value in change.items() if name in _FIELDS}
    if "failed" in known and known["failed"] and "rir" not in known:
        known["rir"] = 0.0
    return replace(before, **known)


def _moved(scene: Scene, kept: Kept, after: SetAct, ago: object) -> Scene:
    if not isinstance(ago, int) or ago == 0:
        return scene.changes(kept, after)
    return scene.changes(kept, None).keeps(after, scene.on + timedelta(days=ago))


def erase(scene: Scene, acts: Sequence[Erase]) -> Scene:
    """Take kept sets out. All of today asks for a yes when that is much."""
    gone: list[SetAct] = []
    for act in acts:
        if act.which == "today":
            today = day.sets_on(scene.book, scene.on)
            if len(today) > ASK_ABOVE and not scene.sure:
                return scene.says(EraseAsked(len(today)))
            found: tuple[Kept, ...] = today
        else:
            one = _meant(scene, act.which)
            found = (one,) if one else ()
        for kept in found:
            scene = scene.changes(kept, None)
        gone += day.acts_of(found)
    return scene.says(Erased(tuple(gone)) if gone else _no_such(scene))


def undo(scene: Scene) -> Scene:
    """Take back what the last message recorded or changed, if that was a moment ago; an alarm stays."""
    recent = [kept for kept in scene.book.kept if scene.now - kept.at <= UNDO_WITHIN]
    changed = [one for one in scene.book.ended if scene.now - one.at <= UNDO_WITHIN]
    last = max((*(kept.message for kept in recent), *(one.by for one in changed)), default=None)
    gone = [kept for kept in recent if kept.message == last and not isinstance(kept.act, Alarm)]
    back = [one for one in changed if one.by == last]
    if last is None or not (gone or back):
        return scene.says(Told("undo.nothing"))
    heirs = {one.heir: now for one in back for now in scene.book.kept if now.id == one.heir}
    scene = without_effects(
        scene.takes_back(last, gone, back), (*gone, *(one.kept for one in back if isinstance(one.kept.act, OnlyKit)))
    )
    sets, again = day.acts_of(gone), day.acts_of([one.kept for one in back])
    before = day.acts_of(heirs.values())
    return scene.says(Undone(sets, len(gone) - len(sets), again, before))


def _last(scene: Scene) -> Kept | None:
    """The set kept last in today's session, before the message where it is edited; failing that, one not long ago."""
    book = as_of(scene.book, scene.message) if scene.edited else scene.book
    sets = [kept for kept in book.kept if isinstance(kept.act, SetAct) and scene.now - kept.at <= CORRECT_WITHIN]
    return day.last_set(book, scene.on) or (sets[-1] if sets else None)


def _of_its_exercise(scene: Scene, kept: Kept) -> list[Kept]:
    if not isinstance(kept.act, SetAct):
        return []
    same = day.sets_on(scene.book, kept.on, kept.act.exercise)
    return [one for one in same if isinstance(one.act, SetAct) and working_sets((one.act,))] or list(same)


def _meant(scene: Scene, which: Which) -> Kept | None:
    last = _last(scene)
    if last is None or which == "last":
        return last
    if not isinstance(which, int):
        return None
    same = _of_its_exercise(scene, last)
    return same[which - 1] if 1 <= which <= len(same) else None


def _number(scene: Scene, kept: Kept) -> int:
    same = [one.id for one in _of_its_exercise(scene, kept)]
    return same.index(kept.id) + 1 if kept.id in same else len(same)


def _no_such(scene: Scene) -> NoSuchSet:
    last = _last(scene)
    if last is None or not isinstance(last.act, SetAct):
        return NoSuchSet(None, 0)
    return NoSuchSet(last.act.exercise, len(_of_its_exercise(scene, last)))
