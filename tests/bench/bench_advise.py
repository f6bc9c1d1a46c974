"""How long an update and an advice take: ``python -m tests.bench.bench_advise``. Goal: p99 under 5 ms.

Times one ``absorb`` and one ``advise_from`` with a kept progress, the fold of 24 sessions, and of three years.
"""

import sys
from collections.abc import Callable
from datetime import timedelta
from time import perf_counter

from core.advising import absorb, advise, advise_from, begin, dump, load
from core.model.acts import SetAct
from core.model.lifter import Lifter
from core.model.quantities import Load
from core.model.target import Aim, Question, Session, Target
from tests.core.advising_cases import BENCH, ON

AIM = Aim(4, (8, 12), 2.0, (2.0, 0.0, 1.0, 0.0), 180.0, ("reps", "tempo", "range", "rest", "load"))
WHO = Lifter("kg", 80.0)


def past(sessions: int) -> tuple[Session, ...]:
    """A life of following the advice, repetitions up and down a little."""
    progress, told = begin(WHO, BENCH), []
    for place in range(sessions):
        on = ON - timedelta(days=3 * (sessions - place))
        advice = advise_from(progress, WHO, BENCH, AIM, on)
        acts = tuple(
            SetAct(BENCH, one.load or Load("total", 60.0), one.reps[0] + (place * 7 + n * 3) % 4 - 1, rir=2.0)
            for n, one in enumerate(advice.sets)
        )
        told.append(Session(on, acts, Target(advice.way, advice.sets)))
        progress = absorb(progress, WHO, AIM, told[-1])
    return tuple(told)


def timed(what: Callable[[], object], times: int) -> tuple[float, float]:
    """Median and 99th percentile in milliseconds."""
    took = []
    for _ in range(times):
        began = perf_counter()
        what()
        took.append(1000 * (perf_counter() - began))
    took.sort()
    return took[len(took) // 2], took[int(len(took) * 0.99)]


def main() -> None:
    """Print one line a measure."""
    days, years = past(24), past(470)
    progress = begin(WHO, BENCH)
    for session in days:
        progress = absorb(progress, WHO, AIM, session)
    kept = dump(progress)

    def one_pass() -> None:
        after = absorb(progress, WHO, AIM, days[-1])
        advise_from(after, WHO, BENCH, AIM, ON)

    lines = (
        ("update and advice, kept progress", one_pass, 400),
        ("advice alone", lambda: advise_from(progress, WHO, BENCH, AIM, ON), 400),
        ("load and dump of a progress", lambda: dump(load(kept)), 400),
        ("whole question, 24 sessions", lambda: advise(Question(WHO, BENCH, AIM, days, ON)), 30),
        ("whole question, 470 sessions", lambda: advise(Question(WHO, BENCH, AIM, years, ON)), 3),
    )
    for name, what, times in lines:
        middle, worst = timed(what, times)
        sys.stdout.write(f"{name:36s} median {middle:8.2f} ms   p99 {worst:8.2f} ms\n")
    sys.stdout.write(f"{'size of a kept progress':36s} {len(kept)} characters\n")


if __name__ == "__main__":
    main()
