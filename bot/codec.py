"""The contract's JSON to core's nouns and back. The only place that knows both; it decides nothing.

Shapes are those of the reading and advising contracts (DEVELOPERS.md, "The contracts"). Fields that are null or have
their default are left out of acts; targets and forecasts name every field.
"""

from collections.abc import Mapping
from dataclasses import MISSING, Field, fields, is_dataclass
from datetime import date
from functools import cache
from typing import Any, Final, get_type_hints

from pydantic import TypeAdapter, ValidationError

from core.evidence.exercises import EXERCISES
from core.model.acts import (
    AcheAct,
    Act,
    Alarm,
    Amend,
    AsPlanned,
    Begin,
    Bodyweight,
    Erase,
    Finish,
    Next,
    OnlyKit,
    SetAct,
    Skip,
    Swap,
)
from core.model.reading import Reading, Setting
from core.model.target import Advice, Aim, Question, Target, TargetSet

Json = dict[str, Any]

ACTS: Final[Mapping[str, type]] = {
    "set": SetAct,
    "as_planned": AsPlanned,
    "amend": Amend,
    "erase": Erase,
    "ache": AcheAct,
    "alarm": Alarm,
    "begin": Begin,
    "finish": Finish,
    "next": Next,
    "skip": Skip,
    "swap": Swap,
    "bodyweight": Bodyweight,
    "only_kit": OnlyKit,
}
"""The contract's name of each act."""

_NAMES: Final = {kind: name for name, kind in ACTS.items()}
_NOT_CARRIED: Final = frozenset({"span"})
"""A receipt belongs to one reading of one text; it is not part of the act as kept or exchanged."""

_DECIMALS: Final = 4
"""Loads are compared to 0.05 kg; four decimals keep pounds exact enough to come back as typed."""


class CodecError(ValueError):
    """The JSON is not in the contract's shape; the message names the field and what is wrong with it."""


# Out


def plain(value: object) -> Any:
    """Any noun as JSON values, default fields left out, whole numbers without a decimal point."""
    if isinstance(value, float):
        return _number(value)
    if isinstance(value, date):
        return value.isoformat()
    if isinstance(value, Mapping):
        return {str(_key(key)): plain(item) for key, item in value.items()}
    if isinstance(value, tuple | list):
        return [plain(item) for item in value]
    if is_dataclass(value) and not isinstance(value, type):
        return {
            f.name.rstrip("_"): plain(getattr(value, f.name))
            for f in fields(value)
            if f.name not in _NOT_CARRIED and getattr(value, f.name) != _default(f)
        }
    return value


def act_out(act: Act) -> Json:
    """One act in the reading contract's shape."""
    return {"act": _NAMES[type(act)], **plain(act)}


def reading_out(reading: Reading) -> Json:
    """A reading in the reading contract's shape: its acts and its question."""
    ask = reading.ask and {
        "about": reading.ask.about,
        "options": [
            {"label": option.label, "acts": [act_out(act) for act in option.acts]} for option in reading.ask.options
        ],
    }
    return {"acts": [act_out(act) for act in reading.acts], "ask": ask}


def target_set_out(one: TargetSet) -> Json:
    """One set to do, every field named."""
    return {f.name: plain(getattr(one, f.name)) for f in fields(one)}


def target_out(target: Target) -> Json:
    """A target in the shape in which ``past[].target`` takes it."""
    return {"way": target.way, "sets": [target_set_out(one) for one in target.sets]}


def advice_out(advice: Advice) -> Json:
    """An answer in the advising contract's shape."""
    return {
        "way": advice.way,
        "sets": [target_set_out(one) for one in advice.sets],
        "forecast": [{"reps": plain(f.reps), "sd": plain(f.sd)} for f in advice.forecast],
        "chance": plain(advice.chance),
        "why": [{"text": reason.text, "rule": reason.rule} for reason in advice.why],
        "cautions": list(advice.cautions),
    }


# In


def act_in(data: object) -> Act:
    """An act from the contract's shape."""
    row = _mapping(data, "act")
    kind = ACTS.get(str(row.get("act", "set")))
    if kind is None:
        raise CodecError(f"act: {row.get('act')!r} is not one of {', '.join(ACTS)}")
    row = {("from_" if key == "from" else key): item for key, item in row.items() if key != "act"}
    if kind is Amend:
        row["change"] = _change_in(row.get("change", {}))
    act: Act = _parse(kind, row)
    return act


def setting_in(data: object) -> Setting:
    """The reader's setting from the contract's shape; null and absent are the same."""
    row = {key: item for key, item in _mapping(data or {}, "setting").items() if item is not None}
    if "last" in row:
        row["last"] = act_in({"act": "set", **_mapping(row["last"], "last")})
    setting: Setting = _parse(Setting, row)
    _known(setting.now_on, "now_on")
    for line in setting.plan:
        _known(line.exercise, "plan.exercise")
    return setting


def question_in(data: object) -> Question:
    """A question to the progression core from the advising contract's shape."""
    row = _without_nulls(_mapping(data, "question"))
    question: Question = _parse(Question, row)
    _known(question.exercise, "exercise")
    low, high = question.aim.reps
    if question.aim.sets < 1 or low < 1 or high < low:
        raise CodecError("aim: sets and reps are whole numbers from 1, and the low end is not above the high end")
    return question


def aim_in(data: object) -> Aim:
    """A prescription from the advising contract's shape."""
    aim: Aim = _parse(Aim, data)
    return aim


def target_in(data: object) -> Target:
    """A target from the shape of ``target_out``."""
    target: Target = _parse(Target, data)
    return target


def _without_nulls(value: Any) -> Any:
    """Null and absent mean the same everywhere in the contracts, except inside a tempo."""
    if isinstance(value, dict):
        return {
            key: (item if key == "tempo" else _without_nulls(item)) for key, item in value.items() if item is not None
        }
    if isinstance(value, list):
        return [_without_nulls(item) for item in value]
    return value


def _change_in(data: object) -> Json:
    types = get_type_hints(SetAct)
    change = _mapping(data, "change")
    unknown = [name for name in change if name not in types]
    if unknown:
        raise CodecError(f"change: {unknown[0]!r} is not a field of a set")
    return {name: _parse(types[name], item) for name, item in change.items()}


def _mapping(data: object, what: str) -> Json:
    if not isinstance(data, dict):
        raise CodecError(f"{what}: an object was expected")
    return data


def _known(exercise: str | None, where: str) -> None:
    if exercise is not None and exercise not in EXERCISES:
        raise CodecError(f"{where}: {exercise!r} is not in the catalogue of exercises")


@cache
def _adapter(kind: Any) -> TypeAdapter[Any]:
    return TypeAdapter(kind)


def _parse(kind: Any, data: object) -> Any:
    try:
        return _adapter(kind).validate_python(data)
    except ValidationError as problem:
        first = problem.errors(include_url=False, include_input=False)[0]
        where = ".".join(str(part) for part in first["loc"])
        raise CodecError(f"{where}: {first['msg']}" if where else first["msg"]) from None


def _default(field: Field[Any]) -> object:
    return field.default_factory() if field.default_factory is not MISSING else field.default


def _number(value: float) -> float | int:
    rounded = round(value, _DECIMALS)
    return int(rounded) if rounded == int(rounded) else rounded


def _key(key: object) -> object:
    return _number(key) if isinstance(key, float) else key
