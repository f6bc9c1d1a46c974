"""A flow act with its place, and which exercise a name means in it."""

from dataclasses import dataclass

from core.model.acts import AsPlanned, Begin, Bodyweight, Finish, Next, Skip, Swap
from core.model.reading import Setting
from core.read.names import Mention

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
    if not mention.generic:
        return mention.ids[0]
    here = {setting.now_on, setting.last.exercise if setting.last else None, *(line.exercise for line in setting.plan)}
    fits = [one for one in mention.ids if one in here]
    return fits[0] if len(fits) == 1 else None
