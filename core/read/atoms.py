"""The atoms of the set grammar: bare numbers, loads as said, counts, links and words of sameness."""

from dataclasses import dataclass
from typing import Literal

from core.read.remark import Remark

LoadWay = Literal[
    "plain", "per_side", "per_hand", "total", "one", "added", "assist", "band", "band_help", "body", "bar", "plates",
    "same", "plan", "delta", "pin",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class LoadSaid:
    """A load as said: a number in the lifter's unit, or in kg where a unit was said, and the way it counts."""

    way: LoadWay
    number: float | None = None
    in_kg: bool = False
    plural: bool = False
    label: str | None = None
    per_side: bool = False
    signed: bool = False


@dataclass(slots=True)  # not frozen: several are made of every message, and a frozen one costs three times as much
class Atom:
    """``kind``: N bare number, L load, R reps, H hold, D distance, S sets, X, FOR, AT, OF, SEP, PLUS, SIDE, SAME,
    MORE, LESS, DELTA, DROP, AMEND, M a remark, W a word that means nothing here. A SEP of value 1 stands before the
    name of a set (set 3, the third set)."""

    kind: str
    first: int
    last: int
    value: float = 0.0
    load: LoadSaid | None = None
    text: str = ""
    remark: Remark | None = None
    plural: bool = False
    strong: bool = False
