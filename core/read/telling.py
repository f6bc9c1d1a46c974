"""What the body tells, while it is still being weighed: a sign or an ache, and the lexemes that told it. No rules."""

from dataclasses import dataclass
from typing import Final, NamedTuple

from core.model.acts import AcheAct, Alarm

WINDOW: Final = 7
"""Lexemes between a part of the body and what it does, at most (chosen on invented messages)."""


APOSTROPHES: Final = ("'", "’", "‘")


class Told(NamedTuple):
    """A sign and the lexemes, first and last, that tell it; a ``?`` behind the sign where it may only be an ache.

    ``said`` holds the lexemes of its own words, which do not deny it.
    """

    sign: str
    first: int
    last: int
    said: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True)
class Heard:
    """A symptom act and the lexeme where it was said."""

    act: Alarm | AcheAct
    at: int


BODY_KINDS: Final = (
    "ALARM", "SADDLE", "SOMETHING", "FACE", "PART", "LIMB", "CHESTPART", "HEARTPART", "BREATHPART", "URINE", "HEADACHE",
    "HEADPART", "CRUSHER",
)  # fmt: skip
