"""``python -m tests.sim``: the whole table of measures next to goals. ``--fast`` is for one core in under a minute."""

import argparse
import time

from tests.sim.report import Sizes, run


def main() -> None:
    """Read the options, run, print."""
    parser = argparse.ArgumentParser(prog="python -m tests.sim", description=__doc__)
    parser.add_argument("--lifters", type=int, default=200, help="simulated lifters for each measure")
    parser.add_argument("--sessions", type=int, default=24, help="sessions a lifter")
    parser.add_argument("--seed", type=int, default=1)
    parser.add_argument("--fast", action="store_true", help="40 lifters, 12 sessions")
    parser.add_argument("--without-core", action="store_true", help="only the plain rules and the oracle")
    given = parser.parse_args()
    sizes = Sizes(40, 12) if given.fast else Sizes(given.lifters, given.sessions)
    began = time.perf_counter()
    print(run(sizes, given.seed, not given.without_core))
    print(
        f"\n{time.perf_counter() - began:.0f} s, {sizes.lifters} lifters, {sizes.sessions} sessions, seed {given.seed}"
    )


if __name__ == "__main__":
    main()
