"""A flow act with its place, and which exercise a name means in it."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from core.evidence.exercises import EXERCISES
from core.model.acts import AsPlanned, Begin, Bodyweight, Finish, Next, Skip, Swap
from core.model.reading import Setting
from core.read.names import Mention
from core.read.stream import Stream

FlowAct = AsPlanned | Begin | Bodyweight | Finish | Next | Skip | Swap


@dataclass(frozen=True, slots=True)
class Flowed:
    """A flow act, the lexeme where it stands, and names that could not be settled to one exercise."""

    act: FlowAct
    at: int
    unsure: Mention | None = None


def one_of(mention: Mention | None, setting: Setting) -> str | None:
    """The exercise that a name means here; None when it is lacking or several fit."""
    if mention is None or mention.lacking:
        return None
    here = {setting.now_on, setting.last.exercise if setting.last else None, *(line.exercise for line in setting.plan)}
    if not mention.generic:
        return mention.ids[0]
    fits = [one for one in mention.ids if one in here]
    return fits[0] if len(fits) == 1 else None


VARIANTS: Final = (
    ("FEETON", "push-up", "feet-elevated-push-up"),
    ("KNEESON", "push-up", "knee-push-up"),
    ("HANDSON", "push-up", "hands-elevated-push-up"),
)
"""Words away from the name that make an exercise its variant."""


def varied(exercise: str, s: Stream, inside: Sequence[int]) -> str | None:
    """The variant that words among these lexemes make of an exercise; None where they make none."""
    for kind, base, other in VARIANTS:
        if exercise == base and any(s.all[i].has(kind) and not s.all[i - 1].has("NEG") for i in inside):
            return other
    return None


def planned_one(mention: Mention | None, setting: Setting) -> str | None:
    """The exercise that a name means where only what is planned or under way can be meant, as when it is left out.

    'The squats' are the back squat by name, but the goblet squat where the plan has no other squat.
    """
    one = one_of(mention, setting)
    here = [line.exercise for line in setting.plan] or [setting.now_on or ""]
    if one is None or one in here or mention is None or len(mention.words) != 1:
        return one
    (word,) = mention.words
    pattern = EXERCISES[one].pattern
    kin = [o for o in here if o in EXERCISES and EXERCISES[o].pattern == pattern and word in o.replace("-", "")]
    return kin[0] if len(kin) == 1 else one
