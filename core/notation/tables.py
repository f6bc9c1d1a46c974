"""A table of a plan, its columns named by a head row, to lines as they would be written without one.

It knows the words of columns and the marks between cells; names, counts and days are not its own.
"""

import re
from collections.abc import Iterator
from typing import Final

from core.notation.words import COLUMNS

Line = tuple[int, str]
"""A line's number and its text."""

_WIDE: Final = re.compile(r"\s{2,}")
"""Columns of blanks: where a cell fills its column, the places of the head's words tell them apart."""
_SPLITS: Final = (re.compile(r"\s*\|\s*"), re.compile(r"\s*\t+\s*"), re.compile(r"\s*;\s*"), _WIDE,
                  re.compile(r"\s*,\s*"))  # fmt: skip
"""What may stand between cells, the surest first."""
_MARKS: Final = _SPLITS[:2]
"""Marks that are no part of a sentence: behind them a row may end early, its last cells empty."""
_RULE: Final = re.compile(r"[\s|:+=-]+")
_EMPTY: Final = frozenset({"", "-", "–", "—", "/", "x", "n/a"})
_FEWEST: Final = 3
"""A head row of fewer columns may as well be words."""


def unrolled(lines: list[Line]) -> Iterator[Line]:
    """The lines, those of a table written out: "Bench | 3 | 8 | 90s" under its head becomes "Bench 3 x 8, rest 90s"."""
    columns: tuple[str, ...] = ()
    split, places = _SPLITS[0], list[int]()
    for number, line in lines:
        found = _head(line)
        if found is not None:
            columns, split = found
            places = [line.index(cell) for cell in _cells(line, split)]
            continue
        cells = _cells(line, split) if columns else []
        if columns and len(cells) != len(columns) and split is _WIDE:
            cells = [line[a:b].strip() for a, b in zip(places, (*places[1:], len(line)), strict=True)]
        if _FEWEST <= len(cells) < len(columns) and split in _MARKS:
            cells += [""] * (len(columns) - len(cells))
        if columns and _RULE.fullmatch(line) and "-" in line:
            continue
        if columns and len(cells) == len(columns) and _fits(columns, cells):
            yield number, _row(columns, cells)
        else:
            yield number, line


def _head(line: str) -> "tuple[tuple[str, ...], re.Pattern[str]] | None":
    for split in _SPLITS:
        cells = [COLUMNS.get(cell.strip(" .*_").lower(), "") for cell in _cells(line, split)]
        if len(cells) >= _FEWEST and all(cells) and {"name", "reps"} <= set(cells) and len({*cells}) == len(cells):
            return tuple(cells), split
    return None


def _cells(line: str, split: "re.Pattern[str]") -> list[str]:
    return [cell.strip() for cell in split.split(line.strip().strip("|").strip())] if line.strip() else []


def _fits(columns: tuple[str, ...], cells: list[str]) -> bool:
    """The counts are counts: a line of words with as many commas is no row."""
    return any(char.isdigit() for name, cell in zip(columns, cells, strict=True) if name == "reps" for char in cell)


_SAID: Final = {"rir": "{} left", "rpe": "rpe {}", "tempo": "tempo {}", "rest": "rest {}", "load": "at {}"}
"""How each column but names, counts and notes is said in a line."""


def _row(columns: tuple[str, ...], cells: list[str]) -> str:
    said = {name: cell for name, cell in zip(columns, cells, strict=True) if cell.lower() not in _EMPTY}
    amount = f"{said['sets']} x {said['reps']}" if said.get("sets") else said.get("reps", "")
    rest = [form.format(said[name]) for name, form in _SAID.items() if name in said]
    mark = f"{said['mark']} " if "mark" in said else ""
    note = f". note: {said['note']}" if "note" in said else ""
    return ", ".join([f"{mark}{said.get('name', '')} {amount}", *rest]) + note
