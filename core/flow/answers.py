"""A typed or pressed answer to an open question: the acts that it chooses or completes. The reader is handed in."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from typing import Final

from rapidfuzz import fuzz

from core.evidence.exercises import EXERCISES
from core.flow.phrases import plain
from core.model.acts import Act, SetAct, Skip, Swap
from core.model.book import Pending
from core.model.quantities import BODY, Load, LoadKind, Unit, to_kg
from core.model.reading import Option, Reading

Reread = Callable[[str], Reading]
"""The reader, with the setting of the moment already in it."""

ALIKE: Final = 90.0
"""Likeness (0 to 100) from which typed words are an answer's label with a slip in it. Choice of ours."""

ORDINALS: Final[Mapping[str, int]] = {
    "1": 0, "first": 0, "1st": 0, "one": 0, "former": 0,
    "2": 1, "second": 1, "2nd": 1, "two": 1,
    "3": 2, "third": 2, "3rd": 2, "three": 2,
    "4": 3, "fourth": 3, "4th": 3, "four": 3,
    "5": 4, "fifth": 4, "5th": 4, "five": 4,
    "last": -1, "latter": -1,
}  # fmt: skip

SAME_AS: Final[Mapping[str, str]] = {
    "y": "yes", "yep": "yes", "yeah": "yes", "sure": "yes", "ok": "yes", "okay": "yes", "do it": "yes", "go on": "yes",
    "yes please": "yes", "n": "no", "nope": "no", "nah": "no", "dont": "no", "leave it": "no", "better not": "no",
    "no thanks": "no", "cancel": "no",
}  # fmt: skip
"""Other words for the two shortest answers."""

UNITS: Final[Mapping[str, Unit | None]] = {
    "": None, "kg": "kg", "kgs": "kg", "kilo": "kg", "kilos": "kg", "k": "kg",
    "lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb",
}  # fmt: skip

_ORDINAL: Final = re.compile(r"(?:(?:the|number|no\.?|option|#|answer) ?)*(\w+)(?: one| option)?[.)]?")
_LOAD: Final = re.compile(
    r"(?:(?:at|with|about|it was|was|@|the) ?)*(\d{1,4}(?:[.,]\d+)?) ?"
    rf"({'|'.join(UNITS)})(?: ?(each|per hand|a hand|in each hand))?"
)
_COUNT: Final = re.compile(r"(?:(?:it was|was|did|i did|for|x) ?)*(\d{1,3})(?: ?(?:reps?|times|repetitions))?")
_BODY: Final = frozenset({"bodyweight", "body weight", "bw", "just me", "just my body", "no weight", "none", "nothing"})

_REJOINED: Final[Mapping[str, tuple[str, ...]]] = {
    "load": ("{said} {answer}", "{answer} {said}"),
    "reps": ("{said} x {answer}", "{said} for {answer}", "{said} {answer}"),
    "exercise": ("{answer} {said}", "{answer}\n{said}"),
}
"""How an answer completes the words that raised the question, where no answers were offered."""


@dataclass(frozen=True, slots=True)
class Question:
    """The open question with all that completing it needs."""

    pending: Pending
    unit: Unit
    reread: Reread


def pressed(pending: Pending | None, message: int, index: int) -> tuple[Act, ...] | None:
    """The acts of a pressed answer; None when that question is not open any more."""
    if pending is None or pending.message != message or not 0 <= index < len(pending.ask.options):
        return None
    return pending.ask.options[index].acts


def typed(question: Question, text: str) -> tuple[Act, ...] | None:
    """The acts that typed words choose or complete; None when they are no answer."""
    words = plain(text)
    words = SAME_AS.get(words, words)
    if not words:
        return None
    for way in (_by_label, _by_place, _by_load, _by_count, _by_name, _by_rejoining):
        acts = way(question, words)
        if acts is not None:
            return acts
    return None


def is_place(text: str) -> bool:
    """The words only point to an answer ("the second"), whether or not there is one."""
    words = plain(text)
    found = _ORDINAL.fullmatch(words)
    return found is not None and found[1] in ORDINALS and not words.isdigit() and found[1] != words


def restated(pending: Pending, reading: Reading) -> bool:
    """The new message says one of the offered readings in its own words."""
    said = _outline(reading.acts)
    return bool(said) and any(_outline(option.acts) == said for option in pending.ask.options)


def _outline(acts: tuple[Act, ...]) -> tuple[tuple[object, ...], ...]:
    return tuple((one.exercise, one.reps, one.load and one.load.kg) for one in acts if isinstance(one, SetAct))


def _by_label(question: Question, words: str) -> tuple[Act, ...] | None:
    options = question.pending.ask.options
    labels = [plain(option.label) for option in options]
    if words in labels:
        return options[labels.index(words)].acts
    close = [(fuzz.ratio(words, label), -n) for n, label in enumerate(labels) if not _figures_differ(words, label)]
    best = max(close, default=(0.0, 0))
    if best[0] >= ALIKE:
        return options[-best[1]].acts
    within = [option for option, label in zip(options, labels, strict=True) if f" {words} " in f" {label} "]
    return within[0].acts if len(within) == 1 and not words.isdigit() else None


def _figures_differ(one: str, other: str) -> bool:
    return re.findall(r"\d+", one) != re.findall(r"\d+", other)


def _by_place(question: Question, words: str) -> tuple[Act, ...] | None:
    options = question.pending.ask.options
    found = _ORDINAL.fullmatch(words)
    if found is None or not options:
        return None
    if question.pending.ask.about in ("load", "reps") and (words.isdigit() or found[1] == words):
        return None
    place = ORDINALS.get(found[1])
    return None if place is None or place >= len(options) else options[place].acts


def _by_load(question: Question, words: str) -> tuple[Act, ...] | None:
    if question.pending.ask.about != "load" or not question.pending.ask.options:
        return None
    found = _LOAD.fullmatch(words)
    if words not in _BODY and found is None:
        return None

    def loaded(act: SetAct) -> SetAct:
        if found is None:
            return replace(act, load=BODY)
        kg = to_kg(float(found[1].replace(",", ".")), UNITS[found[2]] or question.unit)
        return replace(act, load=Load("per_hand" if found[3] else _kind(act), kg))

    return _completed(question, loaded)


def _kind(act: SetAct) -> LoadKind:
    if act.load is not None and act.load.kind != "body":
        return act.load.kind
    usual = EXERCISES[act.exercise].load_kind if act.exercise in EXERCISES else "total"
    return "added" if usual == "body" else usual


def _by_count(question: Question, words: str) -> tuple[Act, ...] | None:
    found = _COUNT.fullmatch(words)
    if question.pending.ask.about != "reps" or found is None or not question.pending.ask.options:
        return None
    return _completed(question, lambda act: replace(act, reps=int(found[1])))


def _by_name(question: Question, words: str) -> tuple[Act, ...] | None:
    if question.pending.ask.about != "exercise" or not question.pending.ask.options:
        return None
    named = [act.exercise for act in question.reread(f"skip {words}").acts if isinstance(act, Skip) and act.exercise]
    if len(named) != 1:
        return None
    first = question.pending.ask.options[0].acts
    if all(isinstance(act, Swap) for act in first):
        return tuple(replace(act, to=named[0]) for act in first if isinstance(act, Swap))
    return _completed(question, lambda act: replace(act, exercise=named[0]))


def _completed(question: Question, change: Callable[[SetAct], SetAct]) -> tuple[Act, ...]:
    """The first offered reading, its sets changed."""
    option: Option = question.pending.ask.options[0]
    return tuple(change(act) if isinstance(act, SetAct) else act for act in option.acts)


def _by_rejoining(question: Question, words: str) -> tuple[Act, ...] | None:
    ask, said = question.pending.ask, question.pending.said
    if ask.options or not said or not _could_be(question, words):
        return None
    for form in _REJOINED.get(ask.about, ()):
        reading = question.reread(form.format(said=said, answer=words))
        if reading.ask is None and any(isinstance(act, SetAct) for act in reading.acts):
            return reading.acts
    return None


def _could_be(question: Question, words: str) -> bool:
    """Only what has the form of an answer is tried, so that the next set is not taken for one."""
    about = question.pending.ask.about
    if about == "load":
        found = _LOAD.fullmatch(words)
        return words in _BODY or found is not None
    if about == "reps":
        return _COUNT.fullmatch(words) is not None
    return about == "exercise" and not any(char.isdigit() for char in words)
