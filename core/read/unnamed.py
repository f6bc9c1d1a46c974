"""The exercise of a set that names none: what is trained now, was last, is all that is planned, or was asked about."""

from itertools import pairwise
from typing import Final

from core.evidence.exercises import EXERCISES
from core.model.reading import Setting
from core.read.flowed import one_of
from core.read.moods import clauses
from core.read.stream import Stream
from core.read.stretches import Stretch

_TO_COME: Final = ("should", "tomorrow", "will", "next", "next time", "next week")
"""With one of these a question is about what is not done yet."""


def unnamed(s: Stream, setting: Setting) -> str | None:
    """Its id; None when nothing says which."""
    if setting.now_on in EXERCISES:
        return setting.now_on
    if setting.last is not None and setting.last.exercise in EXERCISES:
        return setting.last.exercise
    if len(setting.plan) == 1 and setting.plan[0].exercise in EXERCISES:
        return setting.plan[0].exercise
    return _asked_about(s, setting)


def nothing_to_change(s: Stream, setting: Setting, stretch: Stretch) -> bool:
    """'make that 5' where no set was kept: a correction of nothing, and no set of five."""
    first = stretch.ranges[0][0]
    changes = s.is_(first, "AMEND") and s.all[first].is_word("changes it")
    inside = (i for start, end in stretch.ranges for i in range(start, end))
    return (
        setting.last is None and stretch.mention is None and changes and not any(s.is_(i, "X", "LOADQ") for i in inside)
    )


def _asked_about(s: Stream, setting: Setting) -> str | None:
    """The one asked about right before a plain report: "what do hip thrusts even hit? did 80 10 10 10"."""
    for asked, told in pairwise(clauses(s)):
        if not asked.asked or not s.is_(s.skip(told.first, "SELF", "OPENER"), "DONE"):
            continue
        words = s.all[asked.first : asked.last]
        named = [one.mention for one in words if one.mention is not None]
        if len(named) == 1 and not any(one.has("OTHER", "SKIP") or one.is_word(*_TO_COME) for one in words):
            return one_of(named[0], setting)
    return None
