"""The parts that a service can be split into, and which of them a role has. Rows, no logic."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Final


class Role(StrEnum):
    """What one process does."""

    ALL = "all"
    INTAKE = "intake"
    WORKER = "worker"
    SENDER = "sender"
    CLOCK = "clock"


@dataclass(frozen=True, slots=True)
class Does:
    """Takes updates in, works them, sends what is queued, keeps the clock."""

    intake: bool = False
    works: bool = False
    sends: bool = False
    clock: bool = False


DOES: Final[dict[Role, Does]] = {
    Role.ALL: Does(intake=True, works=True, sends=True, clock=True),
    Role.INTAKE: Does(intake=True),
    Role.WORKER: Does(works=True),
    Role.SENDER: Does(sends=True),
    Role.CLOCK: Does(clock=True),
}
