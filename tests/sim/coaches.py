"""Two coaches beside the core, to see what following advice can be worth: a plain one, one who knows all but luck."""

from collections.abc import Callable
from typing import Final

import numpy as np

from core.model.quantities import Load
from core.model.target import Session, Target, TargetSet
from tests.sim.people import Person
from tests.sim.standing import was_met, work
from tests.sim.yardsticks import oracle

Coach = Callable[[Person, list[Session], int], Target]

SURE_ENOUGH: Final = 0.6
"""The all-knowing coach asks the most that is met with this chance (estimation notes: about 0.6)."""

MOST_REPS: Final = 30


def asked(person: Person, load: Load, low: int) -> Target:
    """The aim's sets at a load, from that low end."""
    aim = person.aim
    low = int(np.clip(low, 1, MOST_REPS))
    one = TargetSet(load, (low, max(low, min(aim.reps[1], MOST_REPS))), aim.rir, aim.tempo, aim.rest_s)
    return Target("hold", (one,) * aim.sets)


def plain(person: Person, past: list[Session], seed: int) -> Target:
    """Double progression: one repetition more when all was met, the next load at the top, back after three misses."""
    if not past or past[-1].target is None:
        return asked(person, person.start, person.aim.reps[0])
    last = past[-1].target
    place, low = person.loads.index(last.sets[0].load or person.start), last.sets[0].reps[0]
    if was_met(last, past[-1].sets):
        if low < person.aim.reps[1] or place + 1 >= len(person.loads):
            return asked(person, person.loads[place], low + 1)
        return asked(person, person.loads[place + 1], person.aim.reps[0])
    missed = [s for s in past[-3:] if s.target == last and not was_met(last, s.sets)]
    if len(missed) < 3:
        return last
    return asked(person, person.loads[max(place - 1, 0)], person.aim.reps[0])


def all_knowing(person: Person, past: list[Session], seed: int) -> Target:
    """The most that is met with chance enough: loads nearby, every low end of the aim and a little around it."""
    now = person.start if not past else past[-1].sets[0].load or person.start
    place = person.loads.index(now)
    best: tuple[float, Target] | None = None
    for load in person.loads[max(place - 1, 0) : place + 2]:
        for low in range(max(person.aim.reps[0] - 2, 1), MOST_REPS + 1):
            target = asked(person, load, low)
            if oracle(person, target.sets, seed, 80)[1] < SURE_ENOUGH:
                break
            worth = float(np.log(person.truth.system_kg(load)) + np.log1p(person.truth.k * (low + person.aim.rir)))
            if best is None or worth > best[0]:
                best = (worth, target)
    return best[1] if best is not None else asked(person, person.loads[max(place - 1, 0)], person.aim.reps[0])


def harder(target: Target, session: Session | None) -> bool:
    """More load or more repetitions than in the session before."""
    if session is None or session.target is None or not work(session.sets):
        return False
    one, other = target.sets[0], session.target.sets[0]
    heavier = (one.load.kg or 0.0) - (other.load.kg or 0.0) if one.load and other.load else 0.0
    return heavier > 0.01 or (abs(heavier) <= 0.01 and one.reps[0] > other.reps[0])


COACHES: Final[dict[str, Coach]] = {"plain coach": plain, "all-knowing": all_knowing}
