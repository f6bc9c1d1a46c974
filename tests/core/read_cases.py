"""Reading cases: parse `.case` files, and compare labelled acts with acts read.

Knows the case format and the reading contract; knows nothing of how the reader works.
Run as a module it prints cases as JSON Lines.
"""

import json
import re
import sys
import tomllib
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

FOLDER = Path(__file__).parents[2] / "fixtures" / "readings"
KG_TOLERANCE = 0.05  # the contract's

Json = dict[str, object]

_SET_DEFAULTS: Json = {"warmup": False, "drop": False, "failed": False, "partials": 0, "day": 0}


class CaseError(ValueError):
    """A case file that does not follow the format."""


@dataclass(frozen=True, slots=True)
class Case:
    """One message with its label; ``tag`` is the topic of its file."""

    id: str
    text: str
    setting: Json
    acts: tuple[Json, ...]
    ask: str | None
    tag: str

    def as_line(self) -> Json:
        """The case in the shape of the contract's example lines."""
        want: Json = {"acts": list(self.acts)}
        if self.ask is not None:
            want["ask"] = self.ask
        return {"id": self.id, "text": self.text, "setting": self.setting, "want": want, "tag": self.tag}


def parse(path: Path) -> Iterator[Case]:
    """The cases of one file, in order. Raises CaseError where the file breaks the format."""
    tag = path.stem.partition("_")[2] or path.stem
    _, *blocks = re.split(r"^=== *", path.read_text(encoding="utf-8"), flags=re.MULTILINE)
    for block in blocks:
        name, _, rest = block.partition("\n")
        parts = re.split(r"^---$\n?", rest, maxsplit=1, flags=re.MULTILINE)
        if len(parts) != 2:
            raise CaseError(f"{path.name}: {name}: no line of ---")
        told, label = parts
        yield _case(name.strip(), told, label, tag)


def _case(name: str, told: str, label: str, tag: str) -> Case:
    setting: Json = {}
    if told.startswith("setting:"):
        line, _, told = told.partition("\n")
        setting = json.loads(line.removeprefix("setting:"))
    acts: list[Json] = []
    ask = None
    for line in filter(None, map(str.strip, label.splitlines())):
        if line.startswith("ask:"):
            ask = line.removeprefix("ask:").strip()
        elif not line.startswith("#"):
            counted = re.fullmatch(r"(?:(\d+) \* )?(\{.*\})", line)
            if counted is None:
                raise CaseError(f"{name}: neither an act nor a question: {line}")
            acts += [json.loads(counted[2]) for _ in range(int(counted[1] or 1))]
    return Case(name, told.removesuffix("\n"), setting, tuple(acts), ask, tag)


def all_cases() -> list[Case]:
    """Every case of the folder. Raises CaseError if an id is used twice."""
    cases = [case for path in sorted(FOLDER.glob("*.case")) for case in parse(path)]
    ids = [case.id for case in cases]
    twice = sorted({one for one in ids if ids.count(one) > 1})
    if twice:
        raise CaseError(f"ids used twice: {twice}")
    return cases


def lean(act: Json) -> Json:
    """An act without its nulls and defaults; the nulls of a change stay, because there they clear a field."""
    kept = {key: _pruned(value) if key != "change" else value for key, value in act.items() if value is not None}
    defaults = _SET_DEFAULTS if act["act"] == "set" else {}
    return {key: value for key, value in kept.items() if key not in defaults or value != defaults[key]}


def _pruned(value: object) -> object:
    return {key: part for key, part in value.items() if part is not None} if isinstance(value, dict) else value


def same(want: object, got: object, key: str = "") -> bool:
    """Whether two values of acts are equal, kilograms to the contract's tolerance."""
    if isinstance(want, dict) and isinstance(got, dict):
        return want.keys() == got.keys() and all(same(want[each], got[each], each) for each in want)
    if isinstance(want, list | tuple) and isinstance(got, list | tuple):
        return len(want) == len(got) and all(same(one, other) for one, other in zip(want, got, strict=True))
    if key == "kg" and isinstance(want, int | float) and isinstance(got, int | float):
        return abs(want - got) <= KG_TOLERANCE
    return want == got


def known_failures() -> dict[str, str]:
    """Ids of the cases that fail today, with the reason."""
    listed: dict[str, str] = tomllib.loads((FOLDER / "known_failures.toml").read_text())["known_failures"]
    return listed


if __name__ == "__main__":
    for name in sys.argv[1:]:
        for found in parse(Path(name)):
            print(json.dumps(found.as_line(), ensure_ascii=False))
