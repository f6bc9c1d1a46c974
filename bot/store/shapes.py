"""What is kept as JSON text: nouns to text and back. Acts and targets take the shape of the contracts.

The same text gives the same value, which nobody changes: those read lately are not read again.
"""

import json
from functools import cache, lru_cache
from typing import Any, TypeVar

from pydantic import TypeAdapter

from bot import codec
from core.model.acts import Act
from core.model.reading import Ask, Option
from core.model.target import Target

T = TypeVar("T")


def act_text(act: Act) -> str:
    """An act as contract JSON."""
    return _text(codec.act_out(act))


@lru_cache(8192)
def act_of(text: str) -> Act:
    """An act from ``act_text``."""
    return codec.act_in(json.loads(text))


def target_text(target: Target) -> str:
    """A target as contract JSON."""
    return _text(codec.target_out(target))


@lru_cache(4096)
def target_of(text: str) -> Target:
    """A target from ``target_text``."""
    return codec.target_in(json.loads(text))


def ask_text(ask: Ask) -> str:
    """A question with the acts behind its answers."""
    options = [{"label": one.label, "acts": [codec.act_out(act) for act in one.acts]} for one in ask.options]
    return _text({"about": ask.about, "options": options})


def ask_of(text: str) -> Ask:
    """A question from ``ask_text``."""
    row = json.loads(text)
    options = (Option(one["label"], tuple(codec.act_in(act) for act in one["acts"])) for one in row["options"])
    return Ask(row["about"], tuple(options))


def noun_text(noun: object) -> str:
    """A lifter or a plan, its defaults left out."""
    kind: Any = type(noun)
    return _adapter(kind).dump_json(noun, exclude_defaults=True).decode()


def noun_of(kind: type[T], text: str) -> T:
    """A lifter or a plan from ``noun_text``."""
    key: Any = kind
    noun: T = _noun_of(key, text)
    return noun


@lru_cache(2048)
def _noun_of(kind: Any, text: str) -> Any:
    return _adapter(kind).validate_json(text)


def _text(value: object) -> str:
    return json.dumps(value, ensure_ascii=False, separators=(",", ":"))


@cache
def _adapter(kind: Any) -> TypeAdapter[Any]:
    return TypeAdapter(kind)
