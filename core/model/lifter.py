"""Who trains: body, kit, experience, aches."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import Literal

from core.model.quantities import Unit

Experience = Literal["new", "some", "long"]


@dataclass(frozen=True, slots=True)
class Kit:
    """The equipment that is there; what is absent is not there. Masses in kg.

    ``plates_kg`` counts single plates, ``dumbbells_kg`` lists pairs, ``stack_step_kg`` is a machine's step.
    """

    bar_kg: float | None = None
    plates_kg: Mapping[float, int] = field(default_factory=dict)
    dumbbells_kg: tuple[float, ...] = ()
    kettlebells_kg: tuple[float, ...] = ()
    stack_step_kg: float | None = None
    bands: tuple[str, ...] = ()

    def __hash__(self) -> int:
        """Kits that are equal have the same, whatever the order of their plates."""
        plates = frozenset(self.plates_kg.items())
        return hash((self.bar_kg, plates, self.dumbbells_kg, self.kettlebells_kg, self.stack_step_kg, self.bands))


@dataclass(frozen=True, slots=True)
class Ache:
    """A complaint of a body part on a day; ``level`` 0 to 10, None when unsaid."""

    where: str
    on: date
    side: Literal["left", "right", "both"] | None = None
    level: float | None = None


@dataclass(frozen=True, slots=True)
class Lifter:
    """What the progression core needs to know of a person. ``kit`` None is a full gym."""

    unit: Unit = "kg"
    bodyweight_kg: float | None = None
    experience: Experience = "some"
    kit: Kit | None = None
    no_heavier: bool = False
    aches: tuple[Ache, ...] = ()
