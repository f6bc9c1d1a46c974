"""The questions at joining, in their order, with the answers that are offered. Where a joining stands is a value."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Final, Literal, get_args

Key = Literal[
    "consent",
    "name",
    "unit",
    "zone",
    "days",
    "kit",
    "experience",
    "aches",
    "screen.heart",
    "screen.signs",
    "screen.body",
]

ORDER: Final[tuple[Key, ...]] = get_args(Key)
"""Consent first: on a no nothing is kept, and nothing needs to be asked."""

SCREENING: Final[tuple[Key, ...]] = ("screen.heart", "screen.signs", "screen.body")
"""Three questions that defer to a physician. A yes holds all targets until the coach clears it."""

MUST: Final[frozenset[Key]] = frozenset({"consent"})
"""Can't be skipped, only left."""

OFFERED: Final[Mapping[Key, tuple[str, ...]]] = {
    "consent": ("yes", "no"),
    "name": ("keep", "later"),
    "unit": ("kg", "lb", "later"),
    "zone": ("keep", "later"),
    "days": ("later",),
    "kit": ("gym", "nothing", "later"),
    "experience": ("new", "some", "long", "later"),
    "aches": ("none", "later"),
    "screen.heart": ("no", "yes", "later"),
    "screen.signs": ("no", "yes", "later"),
    "screen.body": ("no", "yes", "later"),
}
"""What can be pressed under each question; the words of an answer are wording's. Typing works too."""


@dataclass(frozen=True, slots=True)
class Stand:
    """Where a joining stands: what is answered, what was put off, the question that is open."""

    answered: tuple[Key, ...] = ()
    put_off: tuple[Key, ...] = ()
    open: Key | None = "consent"
    told: bool = False
    """The coach was told what came of it."""

    @property
    def is_over(self) -> bool:
        """Everything is answered."""
        return self.open is None and not self.put_off

    def answers(self, key: Key) -> "Stand":
        """With a question answered, and the next one open if it was the open one."""
        answered = tuple(one for one in ORDER if one in {*self.answered, key})
        stand = replace(self, answered=answered, put_off=tuple(one for one in self.put_off if one != key))
        return stand.goes_on() if key == self.open else stand

    def puts_off(self) -> "Stand":
        """With the open question left for later."""
        if self.open is None:
            return self
        return replace(self, put_off=(*self.put_off, self.open)).goes_on()

    def stops(self) -> "Stand":
        """With all that is not answered left for later."""
        left = tuple(one for one in ORDER if one not in self.answered)
        return replace(self, put_off=left, open=None)

    def takes_up(self) -> "Stand":
        """With what was left for later asked again."""
        return replace(self, put_off=()).goes_on()

    def is_told(self) -> "Stand":
        """With the coach told."""
        return replace(self, told=True)

    def goes_on(self) -> "Stand":
        """With the first question open that is neither answered nor put off."""
        done = {*self.answered, *self.put_off}
        return replace(self, open=next((one for one in ORDER if one not in done), None))
