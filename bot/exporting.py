"""Writes a lifter's sets as JSON Lines or CSV, one a line. Knows the form, not the store."""

import csv
import json
from collections.abc import Callable, Iterable, Mapping
from dataclasses import fields
from typing import Any, Final, TextIO

from bot.store.reports import SetRow
from core.model.acts import SetAct
from core.model.quantities import Load, Range

_NESTED: Final = {"load": Load, "range": Range}
_PHASES: Final = ("down", "bottom", "up", "top")
_NOT_SHOWN: Final = frozenset({"span", "day"})
"""A receipt of one reading, and a day said in words that ``on`` holds already."""
_FORMULA: Final = ("=", "+", "-", "@", "\t", "\r", "\n")
_LAST: Final = ("on", "at", "message", "state")


def as_json_lines(rows: Iterable[SetRow], out: TextIO) -> None:
    """Each set in the shape of a set act, with its day, instant, message and state."""
    out.writelines(json.dumps(_plain(row), ensure_ascii=False) + "\n" for row in rows)


def as_csv(rows: Iterable[SetRow], out: TextIO) -> None:
    """The same in columns; what is unsaid is empty, load, range and tempo have a column for each part."""
    writer = csv.DictWriter(out, list(columns()), lineterminator="\n")
    writer.writeheader()
    for row in rows:
        writer.writerow(_flat(_plain(row)))


FORMS: Final[Mapping[str, Callable[[Iterable[SetRow], TextIO], None]]] = {"jsonl": as_json_lines, "csv": as_csv}


def columns() -> tuple[str, ...]:
    """The columns of the CSV form."""
    names: list[str] = []
    for field in fields(SetAct):
        if field.name in _NESTED:
            names += [f"{field.name}_{part.name}" for part in fields(_NESTED[field.name])]
        elif field.name == "tempo":
            names += [f"tempo_{phase}" for phase in _PHASES]
        elif field.name not in _NOT_SHOWN:
            names.append(field.name)
    return (*names, *_LAST)


def _plain(row: SetRow) -> dict[str, Any]:
    act = {name: value for name, value in json.loads(row.body).items() if name not in _NOT_SHOWN}
    at = row.at.isoformat(timespec="seconds").replace("+00:00", "Z")
    return {**act, "on": row.on.isoformat(), "at": at, "message": row.message, "state": row.state}


def _flat(plain: Mapping[str, Any]) -> dict[str, Any]:
    flat: dict[str, Any] = {}
    for name, value in plain.items():
        if isinstance(value, Mapping):
            flat |= {f"{name}_{part}": item for part, item in value.items()}
        elif name == "tempo" and value is not None:
            flat |= {f"tempo_{phase}": item for phase, item in zip(_PHASES, value, strict=True)}
        elif name != "act":
            flat[name] = str(value).lower() if isinstance(value, bool) else value
    return {name: _harmless(value) for name, value in flat.items()}


def _harmless(value: object) -> object:
    """A word that a spreadsheet would take for a formula, or for the end of its line, as a word; numbers stay."""
    if not isinstance(value, str):
        return value
    marked = f"'{value}" if value.startswith(_FORMULA) else value
    return marked.replace("\r", " ")
