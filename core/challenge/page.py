"""The page of the scoring, made from the rows: what earns how much and why, and what cannot be seen. Text only."""

from collections.abc import Iterable
from typing import Final

from core.challenge.bounds import BOUNDS, UNSEEN, Bound
from core.challenge.scoring import EXERCISE, SESSION, Row, T
from core.evidence.numbers import NUMBERS

_HEAD: Final = """# How a challenge is scored

Made from the rows in `core/challenge/scoring.py`, `bounds.py` beside it and `core/evidence/numbers.py` by
`rungbook rules --challenge`; do not edit by hand.

A planned session is worth one when it is kept, and one more that its exercises share. Points are what was earned of
every hundred that could be. Of each table the first row that fits decides. No load, no body weight, no kit and no years
of training enter anywhere. The reasons are ours: a contest among unequal people is a matter of choice, not of science.
"""


def scoring_page() -> str:
    """The whole page as Markdown."""
    parts = [
        _HEAD,
        "## Sessions\n",
        _rows(SESSION),
        "## Exercises\n",
        _rows(EXERCISE),
        "## What holds besides\n",
        _bounds(BOUNDS, ("rule", "says", "why", "numbers")),
        "## What cannot be seen\n",
        _bounds(UNSEEN, ("", "what", "why, and what then", "numbers")),
        "## Numbers\n",
        _numbers(),
    ]
    return "\n".join(part.rstrip("\n") + "\n" for part in parts)


def _rows(rows: tuple[Row[T], ...]) -> str:
    return _table(
        ("rule", "says", "earns", "why", "numbers"),
        ((f"`{row.id}`", row.sentence, _earns(row), row.reason, _used(row.numbers)) for row in rows),
    )


def _earns(row: Row[T]) -> str:
    return "no chance" if row.share is None else f"{row.share():g}"


def _bounds(bounds: tuple[Bound, ...], head: tuple[str, ...]) -> str:
    return _table(head, ((f"`{one.id}`", one.sentence, one.reason, _used(one.numbers)) for one in bounds))


def _used(keys: tuple[str, ...]) -> str:
    return "; ".join(f"{key} = {NUMBERS[key].value:g} {NUMBERS[key].unit}".removesuffix(" 1") for key in keys)


def _numbers() -> str:
    mine = (row for key, row in NUMBERS.items() if key.startswith("challenge."))
    rows = ((f"`{n.key}`", f"{n.value:g}", n.unit, f"{n.low:g} to {n.high:g}", n.meaning) for n in mine)
    return _table(("number", "value", "unit", "range", "meaning"), rows)


def _table(head: tuple[str, ...], rows: Iterable[tuple[str, ...]]) -> str:
    lines = [head, ("---",) * len(head), *rows]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines) + "\n"
