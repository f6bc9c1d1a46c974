"""Equipment in free words -> a kit: "two 10s and two 20s, a pull-up bar, a bench; lb". Knows no exercise.

What carries no load (a bench, a pull-up bar) is taken note of; what is not understood is given back.
"""
# ruff: noqa: E501, ISC004 - a row is a pattern, whole

import re
from collections import Counter
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from typing import Final, Literal

from core.evidence.equipment import BAR, HEAVIEST, HEAVIEST_PLATE, MOST_ALIKE, RACK_FROM, RACK_STEP, STACK_STEP
from core.join.wishes import KitSaid
from core.model.lifter import Kit
from core.model.quantities import Unit, to_kg

Noun = Literal["bar", "plate", "dumbbell", "kettlebell", "stack", "band", "beside"]

_NOUNS: Final[tuple[tuple[str, Noun], ...]] = (
    (r"(?:pull|chin)[- ]?up bars?|dip (?:bars?|station)|rings?|trx|bench(?:es)?|box(?:es)?|(?:squat |power |half )?racks?|"
     r"mats?|steps?|parallettes?|ab wheels?|wheel|foam rollers?|rope|belt|straps|chair|klimmzugstange|bank|banco|"
     r"barra de dominadas|slings?|sliders?|(?:weight )?vest|treadmill|rower|bike|stairs", "beside"),
    (r"(?:olympic |bar ?)?plates?|discs?|discos?|scheiben?|hantelscheiben?", "plate"),
    (r"dumb-?bells?|db'?s?|mancuernas?|kurzhanteln?|hand ?weights?", "dumbbell"),
    (r"kettle-?bells?|kb'?s?|pesas rusas|pesa rusa|kettlebells?", "kettlebell"),
    (r"(?:cable (?:machine|tower|station)|cables?|lat pull-?down|machines?|weight stack|stack|kabelzug|poleas?|polea)",
     "stack"),
    (r"(?:resistance |rubber )?(?:bands?|tubes?)|bandas?|bänder|band", "band"),
    (r"(?:olympic |long |straight )?(?:barbells?|bar|langhantel|barra)", "bar"),
)  # fmt: skip
_FINDERS: Final = tuple((re.compile(rf"\b(?:{words})(?![\w-])"), noun) for words, noun in _NOUNS)

_COUNTS: Final[Mapping[str, int]] = {
    "a": 1, "an": 1, "one": 1, "single": 1, "un": 1, "una": 1, "ein": 1, "eine": 1, "two": 2, "pair": 2, "dos": 2,
    "zwei": 2, "couple": 2, "three": 3, "four": 4, "cuatro": 4, "vier": 4, "five": 5, "six": 6, "eight": 8, "ten": 10,
}  # fmt: skip
_PAIR: Final = re.compile(r"\b(?:a |one )?(?:pair|set|couple)s? of\b")
_UNIT: Final[Mapping[str, Unit]] = {
    "kg": "kg", "kgs": "kg", "kilo": "kg", "kilos": "kg", "lb": "lb", "lbs": "lb", "pound": "lb", "pounds": "lb",
    "pfund": "lb", "libras": "lb",
}  # fmt: skip
_NUMBER: Final = r"\d+(?:[.,]\d+)?"
_TIMES: Final = re.compile(rf"(\d{{1,2}}) ?[x×] ?({_NUMBER})")
_SPAN: Final = re.compile(
    rf"({_NUMBER}) ?(?:kg|lbs?)? ?(?:to|-|–|bis|a|up to) ?({_NUMBER})|\b(?:up to|to|bis|hasta) ({_NUMBER})"
    rf"|({_NUMBER}) ?(?:kg|lbs?)? (?:max|at most|tops)\b"
)
_STEP: Final = re.compile(
    rf"\b(?:in|by|with) ({_NUMBER}) ?(?:kg|lbs?)? ?(?:steps?|jumps?|increments?)|steps? of ({_NUMBER})"
)
_SMALL: Final = re.compile(
    r"\b(?:of|with|and|the|my|i|have|got|ive|we|there|is|are|at|home|only|just|some|up|to|in|from|each|also|adjustable|"
    r"fixed|all|kg|kgs|kilos?|lbs?|pounds?|for|it|total|weigh(?:s|ing)?|y|und|con|mit|tengo|ich|habe|had|which|go|goes|going|hasta|max|most|tops|nothing|few|several|lots?|bunch|couple|heavier|than|one|hotel|gym|has|here|today)\b|[^\w\s]"
)
_FULL: Final = frozenset({
    "full gym", "a full gym", "gym", "the gym", "a gym", "commercial gym", "everything", "all of it", "all", "full",
    "big gym", "gimnasio", "gimnasio completo", "alles", "studio", "fitnessstudio", "volles studio", "todo",
})  # fmt: skip
_GYM: Final = re.compile(
    r"(?:i (?:train|go|lift|work out) )?(?:at |in |to )?(?:a |the |my |your |normal |regular |usual |commercial |local |big |"
    r"proper |decent |standard |well equipped |well-equipped |public |university |office )*gym"
    r"(?:[ ,]*(?:with |so |has |it has )?(?:everything|all of it|all the usual|the usual|full))?|"
    r"(?:pretty much |almost |basically )?(?:everything|all)(?: you need| i need)?"
)
_NOTHING: Final = frozenset({
    "nothing", "none", "no kit", "no equipment", "bodyweight", "bodyweight only", "body weight only", "just me",
    "my body", "only bodyweight", "nada", "nichts", "solo mi cuerpo", "nur mein körper",
})  # fmt: skip


@dataclass(slots=True)
class _Pile:
    """What was found so far, in the unit as written."""

    unit: Unit
    bar: float | None = None
    plates: Counter[float] = field(default_factory=Counter)
    dumbbells: set[float] = field(default_factory=set)
    kettlebells: set[float] = field(default_factory=set)
    stack: float | None = None
    bands: list[str] = field(default_factory=list)
    beside: list[str] = field(default_factory=list)
    odd: list[str] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class _Chunk:
    """A part of the list: its words, its noun, and pieces as (count, mass); ``counted``: a count was said."""

    text: str
    noun: Noun | None
    name: str
    pieces: tuple[tuple[int, float], ...]
    left: str
    step: float | None = None


def kit_in(text: str, unit: Unit, *, adds: bool = False) -> KitSaid | None:
    """The kit that the words list, in ``unit`` unless they name another. None: nothing of it is a kit."""
    words = " ".join(text.casefold().split()).strip(" .!")
    if words in _FULL or _GYM.fullmatch(words):
        return KitSaid(None, adds=adds)
    if words in _NOTHING:
        return KitSaid(Kit(), adds=adds)
    named = _unit_named(words)
    chunks = _with_nouns([_chunk(part, named or unit) for part in _parts(words)])
    pile = _Pile(named or unit)
    for one in chunks:
        _add(pile, one)
    if not (pile.bar or pile.plates or pile.dumbbells or pile.kettlebells or pile.stack or pile.bands or pile.beside):
        return None
    return KitSaid(_kit(pile), tuple(pile.beside), tuple(pile.odd), adds, named)


def names_gear(text: str) -> bool:
    """Whether a piece of equipment is named at all, so that bare figures are not taken for one."""
    words = text.casefold()
    return any(finder.search(words) for finder, _ in _FINDERS)


def nouns_in(text: str) -> tuple[Noun, ...]:
    """The kinds of equipment that are named, each once; a pull-up bar is no bar."""
    rest, found = text.casefold(), []
    for finder, noun in _FINDERS:
        if finder.search(rest):
            found.append(noun)
            rest = finder.sub(" ", rest)
    return tuple(dict.fromkeys(found))


def _unit_named(words: str) -> Unit | None:
    said = [_UNIT[word] for word in re.findall(r"[a-z]+", re.sub(r"(\d)([a-z])", r"\1 \2", words)) if word in _UNIT]
    return said[-1] if said else None


def _parts(words: str) -> Iterable[str]:
    apart = re.sub(r"(?<=\d),(?=\d)", ".", words)
    parts = re.split(r"[,;\n]|\.\s|\b(?:and|plus|y|und|sowie|also|with|con|mit)\b|&|\+", apart)
    return [part.strip() for part in parts if part.strip() and part.strip() not in _UNIT]


def _chunk(part: str, unit: Unit) -> _Chunk:
    step = _STEP.search(part)
    rest = part if step is None else part.replace(step[0], " ")
    hits = ((finder.search(rest), noun) for finder, noun in _FINDERS)
    at, noun = next(((hit, noun) for hit, noun in hits if hit), (None, None))
    rest = rest if at is None else f"{rest[: at.start()]} {rest[at.end() :]}"
    size = float(step[1] or step[2]) if step else None
    pieces, left = _pieces(_PAIR.sub(" two ", rest), size or RACK_STEP[unit], unit)
    return _Chunk(part, noun, at[0] if at else "", tuple(pieces), left, size)


def _pieces(text: str, step: float, unit: Unit) -> tuple[list[tuple[int, float]], str]:
    """Counts and masses: "two 10s", "4x5", "10 20 30", "5 to 30"; and what is left of the words."""
    pieces: list[tuple[int, float]] = []
    span = _SPAN.search(text)
    if span is not None:
        low = float(span[1]) if span[1] else RACK_FROM[unit]
        high = float(next(one for one in span.groups()[1:] if one))
        if low < high <= HEAVIEST[unit]:
            pieces += [(2, mass) for mass in _span(low, high, step)]
        text = text.replace(span[0], " ")
    for times in _TIMES.finditer(text):
        pieces.append((int(times[1]), float(times[2])))
    text = _TIMES.sub(" ", text)
    count: int | None = None
    for word in re.findall(rf"{_NUMBER}|[^\W\d]+", re.sub(rf"({_NUMBER})'?s\b", r"\1", text)):
        if word in _COUNTS:
            count = _COUNTS[word]
        elif word[0].isdigit():
            pieces.append((count or 0, float(word)))
            count = None
    left = re.sub(rf"{_NUMBER}'?s?", " ", text)
    left = " ".join(word for word in _SMALL.sub(" ", left).split() if word not in _COUNTS)
    good = [(n, mass) for n, mass in pieces if 0 < mass <= HEAVIEST[unit] and n <= MOST_ALIKE]
    return good, left


def _span(low: float, high: float, step: float) -> list[float]:
    """From low to high in steps; a top that the steps miss is there as well."""
    masses = [low + n * step for n in range(int((high - low) / step + 1e-6) + 1)]
    return masses if high - masses[-1] < 1e-6 else [*masses, high]


def _with_nouns(chunks: list[_Chunk]) -> list[_Chunk]:
    """Masses without a noun belong to the noun before them, else to the one after, else they are dumbbells."""
    named: list[_Chunk] = []
    before: _Chunk | None = None
    for place, one in enumerate(chunks):
        following = chunks[place + 1] if place + 1 < len(chunks) else None
        ahead = next((each for each in chunks[place + 1 :] if each.noun is not None), None)
        if one.noun is None and not one.pieces and following and following.noun == "band" and " " not in one.left:
            named.append(_Chunk(one.text, "band", "", (), one.left))
            continue
        if one.noun is None and one.pieces and not one.left:
            like = before or (ahead if ahead and all(count != 1 for count, _ in ahead.pieces) else None)
            noun: Noun = like.noun if like and like.noun in ("plate", "dumbbell", "kettlebell") else "dumbbell"
            noun = "plate" if like is not None and like.noun == "bar" else noun
            named.append(_Chunk(one.text, noun, "", one.pieces, ""))
            continue
        named.append(one)
        before = one if one.noun == "bar" or (one.noun in ("plate", "dumbbell", "kettlebell") and one.pieces) else None
    return named


def _add(pile: _Pile, one: _Chunk) -> None:
    masses = [mass for _, mass in one.pieces]
    if one.noun is None:
        pile.odd.append(one.text)
        return
    if one.noun == "beside":
        pile.beside.append(one.name)
    elif one.noun == "bar":
        pile.bar = masses[0] if masses else BAR[pile.unit]
    elif one.noun == "plate":
        for count, mass in one.pieces:
            pile.plates[mass] += count or 2 if mass <= HEAVIEST_PLATE[pile.unit] else 0
        pile.plates = +pile.plates
        pile.odd += [one.text] if any(mass > HEAVIEST_PLATE[pile.unit] for mass in masses) else []
    elif one.noun == "dumbbell":
        pile.dumbbells |= {mass for count, mass in one.pieces if count != 1}
        pile.odd += [one.text for count, _ in one.pieces if count == 1]
    elif one.noun == "kettlebell":
        pile.kettlebells |= set(masses)
    elif one.noun == "stack":
        pile.stack = one.step or STACK_STEP[pile.unit]
    else:
        pile.bands += one.left.split() or ["band"]
        return
    if one.noun in ("plate", "dumbbell", "kettlebell") and not one.pieces:
        pile.odd.append(one.text)
    elif one.left and one.noun != "beside":
        pile.odd.append(one.left)


def _kit(pile: _Pile) -> Kit:
    def kg(mass: float) -> float:
        return round(to_kg(mass, pile.unit), 4)

    return Kit(
        bar_kg=kg(pile.bar) if pile.bar else None,
        plates_kg={kg(mass): count for mass, count in sorted(pile.plates.items())},
        dumbbells_kg=tuple(kg(mass) for mass in sorted(pile.dumbbells)),
        kettlebells_kg=tuple(kg(mass) for mass in sorted(pile.kettlebells)),
        stack_step_kg=kg(pile.stack) if pile.stack else None,
        bands=tuple(dict.fromkeys(pile.bands)),
    )


def together(before: Kit | None, more: Kit) -> Kit | None:
    """A kit with more in it; a full gym stays one."""
    if before is None:
        return None
    plates = dict(before.plates_kg)
    for mass, count in more.plates_kg.items():
        plates[mass] = plates.get(mass, 0) + count
    return Kit(
        bar_kg=more.bar_kg or before.bar_kg,
        plates_kg=dict(sorted(plates.items())),
        dumbbells_kg=tuple(sorted({*before.dumbbells_kg, *more.dumbbells_kg})),
        kettlebells_kg=tuple(sorted({*before.kettlebells_kg, *more.kettlebells_kg})),
        stack_step_kg=more.stack_step_kg or before.stack_step_kg,
        bands=tuple(dict.fromkeys((*before.bands, *more.bands))),
    )
