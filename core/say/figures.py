"""Loads, sets and targets as parts of a line. Knows nouns and the table of words; knows no facts."""

from collections.abc import Sequence
from itertools import groupby
from typing import Final

from core.evidence.body import row_of, traits_of
from core.evidence.numbers import value
from core.model.acts import SetAct
from core.model.quantities import Load, Range, Tempo
from core.model.target import TargetSet, Verdict
from core.model.working import count_of
from core.say.render import Voice, capital

BOTH_HANDS: Final = 2
ONE_SIDED: Final = frozenset({"left", "right"})


def load(voice: Voice, exercise: str, one: Load | None) -> str:
    """A load as it is said; nothing for the body alone or an unknown load."""
    if one is None or one.kind == "body":
        return ""
    if one.kg is None:
        key = "load.assist" if one.kind == "assist" else "load"
        return voice.say(f"{key}.band", label=one.label) if one.label else voice.say(_PLAIN[one.kind])
    if one.kind == "per_hand" and traits_of(exercise).hands == BOTH_HANDS:
        return voice.say("load.per_hand.two", n=voice.mass(one.kg))
    key = "load.band.kg" if one.kind == "band" else f"load.{one.kind}"
    return voice.say(key, kg=voice.mass(one.kg))


_PLAIN: Final = {"assist": "load.assist.plain", "band": "load.band.plain"}


def unit_of(exercise: str) -> str:
    """What the exercise counts by its catalogue row: reps, s or m."""
    return {"hold": "s", "carry": "m"}.get(row_of(exercise).pattern, "reps")


def _unit(one: SetAct) -> str:
    return "reps" if one.reps is not None else "s" if one.hold_s is not None else "m"


def counts(voice: Voice, sets: Sequence[SetAct]) -> str:
    """What sets of one load counted: "12, 12, 10 reps", "3 sets of 8", "40 s"."""
    figures = [count_of(one) for one in sets]
    if any(figure is None for figure in figures):
        return voice.say("count.none", len(sets), n=len(sets))
    unit = _unit(sets[0])
    texts = [voice.number(figure) for figure in figures if figure is not None]
    if any(one.side in ONE_SIDED for one in sets):
        return voice.listed([_sided(voice, one, text) for one, text in zip(sets, texts, strict=True)])
    if len(texts) == 1:
        return voice.say(f"count.{unit}", figures[0], n=texts[0])
    if len(set(texts)) == 1:
        return voice.say(f"count.sets.{unit}", sets=len(texts), n=texts[0])
    return voice.say(f"count.list.{unit}", list=voice.listed(texts))


def _sided(voice: Voice, one: SetAct, text: str) -> str:
    return text if one.side is None else voice.say("count.side", n=text, side=voice.say(f"set.side.{one.side}"))


def summary(voice: Voice, exercise: str, sets: Sequence[SetAct]) -> str:
    """Sets of one exercise in one line, with its name: "Goblet squat 24 kg: 12, 12, 10 reps, 2 in reserve"."""
    return voice.listed([brief(voice, exercise, sets), *said(voice, exercise, sets)])


def brief(voice: Voice, exercise: str, sets: Sequence[SetAct]) -> str:
    """The same without what else was said of them."""
    groups = [(key[0], key[1], tuple(some)) for key, some in groupby(sets, key=lambda one: (one.load, _unit(one)))]
    if len(groups) == 1:
        head = " ".join(filter(None, (voice.heading(exercise), load(voice, exercise, groups[0][0]))))
        body = counts(voice, groups[0][2])
    else:
        head = voice.heading(exercise)
        parts = [
            " ".join(filter(None, (load(voice, exercise, one) or voice.say("load.body"), counts(voice, some))))
            for one, _, some in groups
        ]
        body = voice.listed(parts)
    return f"{head}: {body}"


def short(voice: Voice, one: SetAct) -> str:
    """One set inside a sentence, without its exercise: "62.5 kg for 8 reps, 1 in reserve"."""
    exercise = one.exercise or ""
    heavy, count = load(voice, exercise, one.load), counts(voice, (one,))
    head = voice.say("target.load", load=heavy, count=count) if heavy else count
    return voice.listed([head, *said(voice, exercise, (one,))])


def differing(voice: Voice, before: SetAct, after: SetAct) -> list[str]:
    """What of a set was otherwise before: its exercise, load, count, and what else was said."""
    old, new = before.exercise or "", after.exercise or ""
    words = [voice.exercise(old)] if old != new else []
    if before.load != after.load:
        words.append(load(voice, old, before.load) or voice.say("load.body"))
    if (count_of(before), _unit(before)) != (count_of(after), _unit(after)):
        words.append(counts(voice, (before,)))
    now = _said_of(voice, new, after)
    return words + [word for word in _said_of(voice, old, before) if word not in now]


def said(voice: Voice, exercise: str, sets: Sequence[SetAct]) -> list[str]:
    """What else was said of the sets: once for all, else with the number of its set."""
    words = [_said_of(voice, exercise, one) for one in sets]
    everywhere = [word for word in words[0] if all(word in other for other in words)]
    lines = list(everywhere)
    for n, some in enumerate(words, start=1):
        own = [word for word in some if word not in everywhere]
        last = n == len(sets)
        lines += [voice.say("set.last", what=w) if last else voice.say("set.one_of", n=n, what=w) for w in own]
    return lines


def _said_of(voice: Voice, exercise: str, one: SetAct) -> list[str]:
    words: list[str] = []
    if one.side is not None and one.side != row_of(exercise).default_side and one.side not in ONE_SIDED:
        words.append(voice.say(f"set.side.{one.side}"))
    words += [voice.say(f"set.{flag}") for flag in ("warmup", "drop") if getattr(one, flag)]
    if one.partials:
        words.append(voice.say("set.partials", one.partials, n=one.partials))
    if one.failed:
        words.append(voice.say("set.failed"))
    elif one.rir is not None:
        words.append(reserve(voice, one.rir))
    words += tempo(voice, one.tempo, "set", plain_too=True)
    if one.range is not None:
        words += _range(voice, one.range, "set")
    if one.form is not None:
        words.append(voice.say(f"set.form.{one.form}"))
    if one.rest_s is not None:
        rest = voice.say("set.rest", time=voice.duration(one.rest_s)) if one.rest_s else voice.say("set.rest.0")
        words.append(rest)
    return words


def reserve(voice: Voice, rir: float) -> str:
    """Repetitions in reserve in words."""
    return voice.say("set.rir", n=voice.number(rir)) if rir else voice.say("set.rir.0")


def tempo(voice: Voice, one: Tempo | None, whose: str, *, plain_too: bool) -> list[str]:
    """A tempo in words, part by part; unless ``plain_too``, only what differs from the usual."""
    if one is None:
        return []
    usual = (value("tempo.default_down_s"), 0.0, value("tempo.default_up_s"), 0.0)
    words = []
    for part, plain, name in zip(one, usual, ("down", "bottom", "up", "top"), strict=True):
        if part is None or (part == plain and not (plain_too and part)):
            continue
        if name == "up" and part == 0:
            words.append(voice.say(f"{whose}.tempo.fast" if whose == "set" else f"{whose}.fast"))
        elif part:
            words.append(
                voice.say(f"{whose}.tempo.{name}" if whose == "set" else f"{whose}.{name}", n=voice.number(part))
            )
    return words


def _range(voice: Voice, one: Range, whose: str) -> list[str]:
    if one.grade is None:
        return [voice.say("set.range.cm", n=voice.number(one.cm))] if whose == "set" and one.cm is not None else []
    if one.grade == "extra" and one.cm is not None:
        return [voice.say(f"{whose}.range.extra.cm", n=voice.number(one.cm))]
    return [voice.say(f"{whose}.range.{one.grade}")]


def span(voice: Voice, exercise: str, reps: tuple[int, int]) -> str:
    """From low to high, or the one figure."""
    unit, (low, high) = unit_of(exercise), reps
    if low == high:
        return voice.say("count.only.reps", n=low) if unit == "reps" else voice.say(f"count.{unit}", n=low)
    return voice.say(f"count.span.{unit}", low=low, high=high)


def asked(voice: Voice, exercise: str, step: TargetSet, *, loaded: bool = True, way: Verdict | None = None) -> str:
    """A set to do: "24 kg for 10 to 12, 2 in reserve, lower in 2.5 s"; without ``loaded`` no load is named."""
    count = span(voice, exercise, step.reps)
    heavy = load(voice, exercise, step.load) if loaded else ""
    if heavy:
        head = voice.say("target.load", load=heavy, count=count)
    elif step.load is None and loaded and row_of(exercise).load_kind not in ("body", "band"):
        head = voice.say("target.open_load", n=voice.number(step.rir or 0), count=count)
    elif loaded and unit_of(exercise) == "reps":
        head = voice.say("count.list.reps", list=count)
    else:
        head = count
    return voice.listed([head, *extras(voice, exercise, step, way)])


def extras(voice: Voice, exercise: str, step: TargetSet, way: Verdict | None = None) -> list[str]:
    """What a set to do asks beside load and count; rest apart."""
    words = [voice.say("target.each")] if row_of(exercise).default_side == "each" else []
    if step.rir is not None:
        words.append(reserve(voice, step.rir))
    words += tempo(voice, step.tempo, "target", plain_too=way == "tempo")
    if step.range is not None:
        words += _range(voice, step.range, "target")
    if way == "form":
        words.append(voice.say("target.clean"))
    return words


def headline(voice: Voice, exercise: str, one: Load | None) -> str:
    """An exercise and its load as the head of a line."""
    return capital(" ".join(filter(None, (voice.exercise(exercise), load(voice, exercise, one)))))
