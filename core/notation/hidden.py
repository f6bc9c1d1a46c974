"""Words that change what is trained, and that no note may hide: the line they stand in is asked about."""

import re
from dataclasses import dataclass
from typing import Final

from core.notation.words import ASKED_WORDS


@dataclass(frozen=True, slots=True)
class Trouble:
    """What is wrong with a line, or what was left out of it. ``kind`` is a key of the wording table."""

    kind: str
    name: str = ""
    choices: tuple[str, ...] = ()


SHORT_OF_FAILURE: Final = (
    r"(?:not|never|no|nothing|stop(?:ping)?\s+(?:short\s+of|before)|don['’]?t\s+go)\s+(?:quite\s+)?(?:to\s+)?failure\b"
)
"""The one word of failure that changes nothing: a note."""
_SHORT_OF_FAILURE: Final = re.compile(rf"\b{SHORT_OF_FAILURE}", re.IGNORECASE)


def asked_about(text: str) -> Trouble | None:
    """Words that change the training and that no note may hide."""
    plain = _SHORT_OF_FAILURE.sub("", text)
    for pattern, kind in ASKED_WORDS:
        if found := re.search(pattern, plain, re.IGNORECASE):
            return Trouble(kind, name=found.group().strip())
    return None


ORDERED: Final = re.compile(
    r"\b(?:(?:no|never|not)\s+(?:(?:more|any|extra)\s+)?(?:load|weight)|(?:load|weight|tempo|reps?|range)\s+(?:first|last|before|only)"
    r"|(?:no|never|nothing)\s+heavier)\b",
    re.IGNORECASE,
)
"""Words that order the ways; no note may hide them."""


MEASURED: Final = re.compile(r"\b(?:seconds?|minutes?|in\s+reserve|in\s+the\s+tank|rir|rpe)\b", re.IGNORECASE)
"""Words of a rest, a tempo or a reserve that was not understood: no note may hide them either."""
