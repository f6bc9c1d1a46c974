"""Why, in the lifter's language. The first language is the rules' own; the others say it from a table by the rule's id.

The slots come as values and are made words here. It knows no rule.
"""

from collections.abc import Callable, Mapping
from typing import Any, Final

from core.model.quantities import Load, Range
from core.model.target import Reason, Slot
from core.say.body import part
from core.say.render import Voice
from core.say.wording import has


def reason(voice: Voice, one: Reason) -> str:
    """The reason of a target."""
    key = f"rule.{one.rule}"
    return _filled(voice, key, one.slots) if has(voice.language, key) else one.text


def caution(voice: Voice, text: str, slots: tuple[tuple[str, Slot], ...]) -> str:
    """What to watch. There is one caution, that of an ache (a test sees to it)."""
    return _filled(voice, "rule.caution", slots) if has(voice.language, "rule.caution") else text


def _filled(voice: Voice, key: str, slots: tuple[tuple[str, Slot], ...]) -> str:
    values = dict(slots)
    words = {name: make(voice, values.get(name)) for name, make in WORDS.items()}
    least = values.get("least")
    return voice.say(key, least if isinstance(least, int) else None, **words)


def _load(voice: Voice, load: Load | None) -> str:
    if load is None:
        return voice.say("rule.load.none")
    if load.kg is None or load.kind == "body":
        kind = "body" if load.kind == "body" else "band.named" if load.label else "band"
        return voice.say(f"rule.load.{kind}", label=load.label)
    return voice.say(f"rule.load.{load.kind}", kg=voice.mass(load.kg))


def _range(voice: Voice, span: Range | None) -> str:
    if span is None or span.cm is None:
        return voice.say("rule.range.full")
    return voice.say("rule.range.cm", n=voice.number(span.cm))


def _seconds(voice: Voice, value: float | None) -> str:
    return voice.say("rule.time.none") if value is None else voice.duration(value)


WORDS: Final[Mapping[str, Callable[[Voice, Any], str]]] = {
    "load": _load,
    "rest": _seconds,
    "down": _seconds,
    "range": _range,
    "least": lambda voice, value: voice.number(value or 0),
    "where": lambda voice, value: part(voice, value or "body"),
    "level": lambda voice, value: voice.number(value or 0),
    "weeks": lambda voice, value: voice.number(value or 0),
    "misses": lambda voice, value: voice.number(value or 0),
    "variant": lambda voice, value: voice.exercise(value) if value else "",
}
"""How each slot of a rule is said."""
