"""Facts as plain JSON values and back, exactly. Knows no rule."""

from collections.abc import Mapping
from dataclasses import asdict
from datetime import date
from typing import Any

from core.decide.facts import Facts, Totals
from core.model.quantities import Load, Range
from core.model.target import Target, TargetSet

Plain = Mapping[str, Any]


def facts_plain(facts: Facts) -> dict[str, Any]:
    """The facts as JSON values."""
    return {**asdict(facts), "on": facts.on.isoformat() if facts.on else None}


def facts_from(plain: Plain) -> Facts:
    """The facts of those values; KeyError, TypeError or ValueError when they are not facts."""
    last, totals = plain["last"], plain["totals"]
    return Facts(
        **{
            **plain,
            "last": None if last is None else Target(last["way"], tuple(_set(one) for one in last["sets"])),
            "on": None if plain["on"] is None else date.fromisoformat(plain["on"]),
            "well": _load(plain["well"]),
            "least": _load(plain["least"]),
            "totals": None if totals is None else Totals(**{**totals, "load": _load(totals["load"])}),
        }
    )


def _load(plain: Plain | None) -> Load | None:
    return None if plain is None else Load(**plain)


def _set(plain: Plain) -> TargetSet:
    tempo, span = plain["tempo"], plain["range"]
    return TargetSet(
        load=_load(plain["load"]),
        reps=(plain["reps"][0], plain["reps"][1]),
        rir=plain["rir"],
        tempo=None if tempo is None else (tempo[0], tempo[1], tempo[2], tempo[3]),
        rest_s=plain["rest_s"],
        range=None if span is None else Range(**span),
    )
