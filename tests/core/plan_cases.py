"""Plan cases: parse `.plan` files, compare a plan as labelled with a plan as read. Knows the format, not the reader."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from datetime import date, time
from pathlib import Path

from core.model.plan import Plan, Planned, TrainingDay
from core.model.quantities import Tempo
from core.model.target import Aim
from core.notation.read import PlanReading

FOLDER = Path(__file__).parents[2] / "fixtures" / "plans"
TODAY = date(2026, 3, 1)
"""The day on which every plan of the corpus was written: a Sunday."""

_DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")
_ITEM = re.compile(
    r"(?P<id>[a-z0-9-]+) (?P<sets>\d+)x(?P<low>\d+)(?:-(?P<high>\d+))?(?: rir (?P<rir>[\d.]+))?"
    r"(?: tempo (?P<tempo>\S+))?(?: rest (?P<rest>[\d.]+))?(?: ways (?P<ways>[a-z,]+))?(?: note (?P<note>.+))?"
)


class CaseError(ValueError):
    """A file that does not follow the format."""


@dataclass(frozen=True)
class Case:
    """A plan as written and as labelled. ``asks`` should be asked about, ``misses`` a person would have read."""

    id: str
    text: str
    plan: Plan
    asks: tuple[tuple[int, str], ...] = ()
    misses: tuple[tuple[int, str], ...] = ()
    tells: tuple[tuple[int, str], ...] = ()


@dataclass
class _Label:
    days: list[TrainingDay] = field(default_factory=list)
    starts: date | None = None
    easier: int | None = None
    rows: dict[str, list[tuple[int, str]]] = field(default_factory=lambda: {"ask": [], "miss": [], "tell": []})


def cases() -> Iterator[Case]:
    """Every file of the corpus."""
    for path in sorted(FOLDER.glob("*.plan")):
        yield parse(path.stem, path.read_text(encoding="utf-8"))


def parse(name: str, body: str) -> Case:
    """One file. Raises CaseError where it breaks the format."""
    text, mark, label = body.partition("\n---\n")
    if not mark:
        raise CaseError(f"{name}: no line of ---")
    found = _Label()
    for line in filter(None, label.split("\n")):
        if not _labelled(found, line):
            raise CaseError(f"{name}: {line!r}")
    plan = Plan(tuple(found.days), found.starts, found.easier)
    return Case(name, text, plan, *(tuple(found.rows[kind]) for kind in ("ask", "miss", "tell")))


def _labelled(label: _Label, line: str) -> bool:
    words = line.split()
    if words[0] in label.rows and len(words) == 3:
        label.rows[words[0]].append((int(words[1]), words[2]))
    elif words[0] == "starts":
        label.starts = date.fromisoformat(words[1])
    elif words[0] == "easier":
        label.easier = int(words[1])
    elif words[0] in _DAYS:
        title = " ".join(words[2:])
        label.days.append(TrainingDay(_DAYS.index(words[0]), time.fromisoformat(words[1]), title, ()))
    elif (item := _ITEM.fullmatch(line.strip())) and label.days:
        last = label.days[-1]
        label.days[-1] = TrainingDay(last.weekday, last.at, last.title, (*last.exercises, _item(item)))
    else:
        return False
    return True


def _item(part: "re.Match[str]") -> Planned:
    low = int(part["low"])
    aim = Aim(
        int(part["sets"]),
        (low, int(part["high"] or low)),
        rir=float(part["rir"] or 2),
        tempo=_tempo(part["tempo"]) if part["tempo"] else None,
        rest_s=float(part["rest"]) if part["rest"] else None,
        ways=tuple(part["ways"].split(",")) if part["ways"] else ("reps", "load"),  # type: ignore[arg-type]
    )
    return Planned(part["id"], aim, part["note"])


def _tempo(text: str) -> Tempo:
    a, b, c, d = (None if one == "-" else float(one) for one in text.split("/"))
    return (a, b, c, d)


def differences(case: Case, reading: PlanReading) -> list[str]:
    """What was read otherwise than labelled; empty when all is as it should be."""
    out: list[str] = []
    want = {day.weekday: day for day in case.plan.days}
    have = {day.weekday: day for day in reading.plan.days}
    for weekday in sorted(want.keys() | have.keys()):
        out += _day_differences(_DAYS[weekday], want.get(weekday), have.get(weekday))
    for what, a, b in (
        ("starts", case.plan.starts, reading.plan.starts),
        ("easier", case.plan.easier_every, reading.plan.easier_every),
        ("asks", sorted(case.asks + case.misses), sorted((row.line, row.trouble.kind) for row in reading.unread)),
        ("tells", sorted(case.tells), sorted((row.line, row.trouble.kind) for row in reading.remarks)),
    ):
        if a != b:
            out.append(f"{what}: want {a}, have {b}")
    return out


def _day_differences(name: str, want: TrainingDay | None, have: TrainingDay | None) -> list[str]:
    if want is None or have is None:
        return [f"{name}: want {want}, have {have}"]
    out = [f"{name}: {want.at} {want.title!r}, have {have.at} {have.title!r}"] * (
        (want.at, want.title) != (have.at, have.title)
    )
    rows = max(len(want.exercises), len(have.exercises))
    for n in range(rows):
        a = want.exercises[n] if n < len(want.exercises) else None
        b = have.exercises[n] if n < len(have.exercises) else None
        if a != b:
            out.append(f"{name} {n + 1}: want {a}, have {b}")
    return out


def lines_of(case: Case) -> int:
    """Exercise lines that the labels count: read, missed or rightly asked."""
    return sum(len(day.exercises) for day in case.plan.days) + len(case.asks) + len(case.misses)
