"""How plans are read at first sight, line by line: right, asked about, or otherwise than meant. Run as a module.

python -m tests.bench.score_plans FOLDER-OR-FILE...
"""

import sys
from collections.abc import Iterable, Iterator
from pathlib import Path

from core.model.plan import Planned, TrainingDay
from core.notation.page import PlanReading
from core.notation.read import read_plan
from core.read.finding import find
from tests.core.plan_cases import TODAY, Case, differences, parse


def files(places: Iterable[str]) -> Iterator[Path]:
    """The plans at these places."""
    for place in map(Path, places):
        yield from sorted(place.glob("*.plan")) if place.is_dir() else [place]


def score(case: Case, reading: PlanReading) -> tuple[int, int, int]:
    """Lines right, asked about without need, and read otherwise than labelled.

    A line is an exercise on a day, a day's head, a line that is rightly asked about, or one about the whole plan.
    """
    days = {day.weekday: day for day in reading.plan.days}
    asked = {row.line for row in reading.unread} - {line for line, _ in case.asks}
    right = missed = 0
    for day in case.plan.days:
        have = days.get(day.weekday)
        right += have is not None and (have.at, have.title) == (day.at, day.title)
        missed += have is None or (have.at, have.title) != (day.at, day.title)
        for item in day.exercises:
            same = have is not None and item in have.exercises
            right, missed = right + same, missed + (not same)
    extra = sum(1 for day in reading.plan.days for item in day.exercises if _is_extra(case, day, item))
    for want, got in ((case.plan.starts, reading.plan.starts), (case.plan.easier_every, reading.plan.easier_every)):
        right, missed = right + (want is not None and want == got), missed + (want != got)
        extra += want != got and got is not None
    kept = {row.line for row in reading.unread}
    right += sum(1 for line, _ in case.asks if line in kept)
    missed += sum(1 for line, _ in case.asks if line not in kept)
    wrong = extra if asked else max(extra, missed)
    return right, max(missed - wrong, 0), wrong


def _is_extra(case: Case, day: TrainingDay, item: Planned) -> bool:
    wanted = next((one.exercises for one in case.plan.days if one.weekday == day.weekday), ())
    return item not in wanted


def main() -> None:
    """Print what each plan lacks, and the shares."""
    total = [0, 0, 0]
    for path in files(sys.argv[1:]):
        case = parse(path.stem, path.read_text(encoding="utf-8"))
        reading = read_plan(case.text, find, TODAY)
        total = [a + b for a, b in zip(total, score(case, reading), strict=True)]
        for odd in differences(case, reading):
            sys.stdout.write(f"{case.id}: {odd}\n")
    lines = sum(total) or 1
    right, asked, wrong = (f"{n} ({n / lines:.1%})" for n in total)
    sys.stdout.write(f"{lines} lines: {right} right, {asked} asked about without need, {wrong} otherwise than meant\n")


if __name__ == "__main__":
    main()
