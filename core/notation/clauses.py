"""What follows the name: reserve, tempo, rest, ways, sides, notes. All of it must be understood or kept as a note.

It knows neither names nor days; the sets themselves are read in ``amounts``.
"""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from typing import Final

from core.model.quantities import Tempo, Way
from core.model.target import Aim
from core.notation.hidden import MEASURED, ORDERED, SHORT_OF_FAILURE, Trouble, asked_about
from core.notation.lengths import LENGTH, span
from core.notation.words import PHASES, WAY_FILLERS, WAYS


@dataclass(frozen=True, slots=True)
class Said:
    """What a line says so far; None where it says nothing, so that a day's or plan's own words can fill it."""

    sets: int | None = None
    reps: tuple[int, int] | None = None
    rir: float | None = None
    tempo: Tempo | None = None
    rest_s: float | None = None
    ways: tuple[Way, ...] | None = None
    never: tuple[Way, ...] = ()
    sides: bool = False
    notes: tuple[str, ...] = ()
    remarks: tuple[Trouble, ...] = ()

    def filled(self, other: "Said") -> "Said":
        """With the gaps filled from what is said of the whole day or plan."""
        return replace(
            self,
            rir=other.rir if self.rir is None else self.rir,
            tempo=other.tempo if self.tempo is None else self.tempo,
            rest_s=other.rest_s if self.rest_s is None else self.rest_s,
            ways=other.ways if self.ways is None else self.ways,
            never=self.never or other.never,
        )

    def aim(self) -> Aim:
        """As a prescription; what nobody said has the usual value."""
        if self.sets is None or self.reps is None:
            raise ValueError("an aim needs sets and repetitions")
        usual = Aim(self.sets, self.reps)
        ways = usual.ways if self.ways is None else self.ways
        return replace(
            usual,
            rir=usual.rir if self.rir is None else self.rir,
            tempo=self.tempo,
            rest_s=self.rest_s,
            ways=tuple(way for way in ways if way not in self.never),
        )


Fill = Callable[[Said, "re.Match[str]"], "Said | Trouble"]

MAX_TEMPO_S: Final = 10.0
"""A phase longer than this is a slip of the pen (limits.md: a repetition stays under 10 s)."""
MAX_REST_S: Final = 900.0
"""Nobody rests longer between sets; "45 min" is how long the session takes."""
_A_REST_FROM: Final = 30
"""A pair of dumbbells from here on may as well be seconds of a rest."""
_LEAST_LOAD: Final = 11
"""A bare number after "at" from here on can be no effort."""


def scan(text: str, said: Said, *, explicit_note: bool = False) -> Said | Trouble:
    """Everything in ``text``, clause by clause. ``explicit_note``: figures may stand in what is left as a note."""
    rest = text
    while rest := _LEAD.sub("", rest, count=1).lstrip():
        for pattern, fill in CLAUSES:
            if part := pattern.match(rest):
                done = fill(said, part)
                rest = rest[part.end() :]
                break
        else:
            done, rest = _leftover(rest, said, explicit_note=explicit_note)
        if isinstance(done, Trouble):
            return done
        said = done
    return said


def is_clauses_only(text: str) -> Said | None:
    """What a line says that holds clauses and nothing else; None when anything else is in it."""
    said = scan(text, Said())
    return None if isinstance(said, Trouble) or said.notes or said == Said() else said


_REST_WORD: Final = r"(?:rests?|breaks?|ri|r(?=\s*[:=]?\s*(?:\d{2,}|\d+\s*(?:s|m|'|\"|:\d))))"
"""A rest by its first letter needs a unit or two figures: "r2" may as well be a reserve."""

_LEAD: Final = re.compile(
    r"^(?:[\s,;.|:&+/>→–—-]|(?!(?:with|w/|using)\s*(?:the\s+)?\d{1,3}(?:[.,]\d)?s\b(?!\s*(?:of\s+)?[a-z]))(?:with|w/|and|using|then|slow(?:ly)?|controlled|an?)(?=\s*[\d(]|\s+down\s+\d|\s+an?\s+\d|\s+(?:rest|tempo|lower|pause))(?!\s+\d{2,3}(?![\d:.,]*\s*(?:s|m|'|\"|kg|kilo|lb|pound))))+",
    re.IGNORECASE,
)
_SEGMENT: Final = re.compile(r"[^,;|(\"\n]*?(?=\s*(?:[,;|(\"\n]|\.\s|\.$|\s[-–—]\s|$))")
_QUOTED: Final = re.compile(r"\"([^\"]*)\"|\(([^()]*)\)|\[([^\[\]]*)\]|(?:->|→|//|\*\*?)\s*(.+)$", re.IGNORECASE)


def _leftover(rest: str, said: Said, *, explicit_note: bool) -> tuple[Said | Trouble, str]:
    if marked := _QUOTED.match(rest):
        inner = next(group for group in marked.groups() if group is not None).strip()
        return _bracketed(inner, said, free=not any(marked.group(n) is not None for n in (1, 2, 3))), rest[
            marked.end() :
        ]
    segment = _SEGMENT.match(rest)
    words = (segment.group() if segment else rest).strip() or rest.strip()
    left = rest[len(words) :] if rest.startswith(words) else ""
    if not re.search(r"\w", words):
        return said, left
    if odd := asked_about(words):
        return odd, left
    if not explicit_note and (ORDERED.search(words) or MEASURED.search(words)):
        return Trouble("words_left", name=words), left
    if not explicit_note and re.search(r"\d", words):
        return Trouble("words_left", name=words), left
    return _noted(said, words), left


def _bracketed(inner: str, said: Said, *, free: bool) -> Said | Trouble:
    if not inner:
        return said
    if free:
        return _noted(said, inner)
    if odd := asked_about(inner):
        return odd
    meant = scan(inner, replace(said, notes=()))
    if not isinstance(meant, Trouble) and not meant.notes:
        return replace(meant, notes=said.notes)
    return _noted(said, inner)


NO_WORDS: Final = Said()


def _noted(said: Said, words: str) -> Said:
    return replace(said, notes=(*said.notes, words.strip(" .-–")))


def _number(text: str) -> float:
    return float(text.replace(",", "."))


def _middle(said: Said, words: str, low: float, high: float) -> tuple[Said, float]:
    """The middle of a spread, and that it was taken."""
    if low == high:
        return said, low
    told = replace(said, remarks=(*said.remarks, Trouble("middle_taken", name=words.strip())))
    return told, (low + high) / 2


# What each clause sets


def _reserve(said: Said, part: "re.Match[str]") -> Said | Trouble:
    low = _number(part.group("a"))
    high = _number(part.group("b")) if part.group("b") else low
    if high > MAX_TEMPO_S:
        return Trouble("beyond_limits", name=part.group().strip())
    told, rir = _middle(said, part.group(), low, high)
    return _once(said, part, "rir", rir) or replace(told, rir=rir)


def _rpe(said: Said, part: "re.Match[str]") -> Said | Trouble:
    low = _number(part.group("a"))
    told, rpe = _middle(said, part.group(), low, _number(part.group("b")) if part.group("b") else low)
    return _once(said, part, "rir", 10 - rpe) or replace(told, rir=10 - rpe)


def _once(said: Said, part: "re.Match[str]", what: str, value: float) -> Trouble | None:
    """A second reserve or rest in the same line that is another one: sets that differ cannot be held."""
    before = getattr(said, what)
    return Trouble("words_left", name=part.group().strip(" ,")) if before is not None and before != value else None


def _failure(said: Said, _part: "re.Match[str]") -> Said:
    return replace(said, rir=0.0)


def _as_note(said: Said, part: "re.Match[str]") -> Said:
    return _noted(said, part.group())


def _rest(said: Said, part: "re.Match[str]") -> Said | Trouble:
    told, rest_s = _middle(said, part.group(), *span(part))
    if rest_s > MAX_REST_S:
        return Trouble("beyond_limits", name=part.group().strip())
    return _once(said, part, "rest_s", rest_s) or replace(told, rest_s=rest_s)


def _rest_free(said: Said, _part: "re.Match[str]") -> Said:
    return replace(said, rest_s=None)


def _tempo(said: Said, part: "re.Match[str]") -> Said | Trouble:
    marks = re.findall(
        r"\d+(?:[.,]\d)?|[xX]" if re.search(r"[-/: .]", part.group("t").strip()) else r"\d|[xX]", part.group("t")
    )
    phases = [0.0 if mark in "xX" else _number(mark) for mark in marks]
    if max(phases) > MAX_TEMPO_S:
        return Trouble("beyond_limits", name=part.group().strip())
    padded: list[float | None] = [*phases, *([None] * (4 - len(phases)))]
    return replace(said, tempo=(padded[0], padded[1], padded[2], padded[3]))


def _phase(said: Said, part: "re.Match[str]") -> Said | Trouble:
    value = _number(part.group("n"))
    if value > MAX_TEMPO_S:
        return Trouble("beyond_limits", name=part.group().strip())
    place = PHASES[part.group("w").lower()]
    if re.search(r"\btop\b", part.group(), re.IGNORECASE):
        place = 3
    now = list(said.tempo or (None, None, None, None))
    now[place] = value
    tempo: Tempo = (now[0], now[1], now[2], now[3])
    return replace(said, tempo=tempo)


def _explosive(said: Said, _part: "re.Match[str]") -> Said:
    now = said.tempo or (None, None, None, None)
    return replace(said, tempo=(now[0], now[1], 0.0, now[3]))


def _ways(said: Said, part: "re.Match[str]") -> Said:
    words = re.findall(r"[a-z]+", part.group().lower())
    return replace(said, ways=tuple(dict.fromkeys(WAYS[word] for word in words if word in WAYS)))


def _never(said: Said, part: "re.Match[str]") -> Said:
    return replace(said, never=(*said.never, WAYS[part.group("w").lower()]))


def _double(said: Said, _part: "re.Match[str]") -> Said:
    return replace(said, ways=("reps", "load"))


def _form_only(said: Said, _part: "re.Match[str]") -> Said:
    return replace(said, ways=())


def _sides(said: Said, _part: "re.Match[str]") -> Said:
    return replace(said, sides=True)


def _load(said: Said, part: "re.Match[str]") -> Said:
    return replace(said, remarks=(*said.remarks, Trouble("load_written", name=part.group().strip(" ,@"))))


def _bare_load(said: Said, part: "re.Match[str]") -> Said | Trouble:
    if _number(part.group("n")) < _LEAST_LOAD:
        return Trouble("words_left", name=part.group().strip())
    return _load(said, part)


def _pair_load(said: Said, part: "re.Match[str]") -> Said | Trouble:
    """ "With 10s" is a pair of them; "with 60s" may as well be a rest."""
    return _load(said, part) if _number(part.group("n")) < _A_REST_FROM else Trouble("words_left", name=part.group())


def _when_done(said: Said, part: "re.Match[str]") -> Said:
    return _noted(replace(said, ways=said.ways or ("reps", "load")), part.group())


_SPREAD: Final = r"(?P<a>\d{1,2}(?:[.,]\d)?)(?:\s*(?:-|–|to)\s*(?P<b>\d{1,2}(?:[.,]\d)?))?"
_EFFORT: Final = (
    r"(?P<a>(?:10|[4-9])(?:[.,]\d)?)(?:\s*(?:-|–|to)\s*(?P<b>(?:10|[4-9])(?:[.,]\d)?))?(?![\d.,]*\d)(?!\s*(?:kg|lb|%))"
)
_MARK: Final = r"(?:\d(?:[.,]5)?|x)"
_WAY: Final = "|".join(sorted(WAYS, key=len, reverse=True))
_FILLER: Final = "|".join(sorted((re.escape(word) for word in WAY_FILLERS), key=len, reverse=True))
_PHASE: Final = "|".join(sorted(PHASES, key=len, reverse=True))
_STOP: Final = r"(?=\s*(?:[,;.()|]|$))"
_SIDE: Final = r"(?:side|leg|arm|hand|limb|way)s?"
_BETWEEN: Final = r"(?:\s*(?:between|btw|in\s+between|after)(?:\s+(?:each|all|the|every))?(?:\s+(?:sets?|exercises?|rounds?|trio|both|pairs|supersets|pair|superset|circuit|[A-H]\d|\d[a-d]))?)?"  # noqa: E501
_MASS: Final = r"\d{1,3}(?:[.,]\d{1,2})?\s*(?:kgs?|kilos?|lbs?|pounds?)\b(?:\s*(?:each|a\s+side|per\s+(?:hand|side)|dumbbells?|dbs?|kettlebells?|kbs?|bar|plates?))*"  # noqa: E501

_ROWS: Final[tuple[tuple[str, Fill], ...]] = (
    (rf"(?:leave\s+)?{_SPREAD}\s*(?:reps?\s+)?(?:left(?:\s+in\s+the\s+tank)?|in\s+(?:reserve|the\s+tank)|r\.?i\.?r\.?|shy(?:\s+of\s+failure)?|short\s+of\s+failure|from\s+failure)(?![A-Za-z])", _reserve),  # noqa: E501
    (rf"(?:@\s*)?(?:rir|reserve|leave|leaving|keep(?:ing)?)\s*[:=]?\s*{_SPREAD}(?:\s*reps?)?(?:\s*(?:left|in\s+(?:reserve|the\s+tank)))?(?![\d])", _reserve),  # noqa: E501
    (rf"(?:@\s*)?rpe\s*[:=@]?\s*{_EFFORT}", _rpe),
    (rf"@\s*{_EFFORT}(?:\s*rpe\b)?", _rpe),
    (rf"{_EFFORT}\s*rpe\b", _rpe),
    (SHORT_OF_FAILURE, _as_note),
    (r"(?:to\s+)?failure" + _STOP, _failure),
    (rf"{_REST_WORD}\s*[:=]?\s*(?:about|around|of|~)?\s*{LENGTH}(?:\s*rest)?{_BETWEEN}(?![A-Za-z])", _rest),
    (rf"{LENGTH}\s*(?:of\s+)?(?:rests?|breaks?|off\b|(?=between|btw|in\s+between|after\s+(?:[A-H]\d|\d[a-d]|both|each|every|all|the)\b)){_BETWEEN}(?![A-Za-z])", _rest),  # noqa: E501
    (rf"{_REST_WORD}\s+(?:as\s+(?:long\s+as\s+)?(?:you\s+)?need(?:ed)?|as\s+you\s+like|freely)\b", _rest_free),
    (rf"@?\s*\(?(?:tempo|t)\s*[:=@]?\s*(?P<t>{_MARK}(?:\s*[-/:.]?\s*{_MARK}){{2,3}})(?![\dA-Za-z])", _tempo),
    (r"@?\s*(?P<t>\d[0-9xX][0-9xX][0-9xX]|\d(?:[.,]5)?\s*([-/:.])\s*\d\s*\2\s*[\dxX](?:[.,]5)?\s*\2\s*\d)(?:\s*tempo)?(?![\dA-Za-z])", _tempo),  # noqa: E501
    (rf"@?\s*(?P<t>\d\s*-\s*[0-2]\s*-\s*[\dxX])(?:\s*tempo)?{_STOP}", _tempo),
    (rf"(?P<w>{_PHASE})\s*(?:in|for|over|of|phase|at\s+the\s+bottom|at\s+the\s+top)?\s*:?\s*(?P<n>\d{{1,2}}(?:[.,]\d)?)\s*(?:s|secs?|seconds?)\b(?:\s*(?:at|in|on)\s+(?:the\s+)?(?:bottom|top|hole|stretch|box|chest|floor|ground))?", _phase),  # noqa: E501
    (rf"(?P<n>\d{{1,2}}(?:[.,]\d)?)\s*-?\s*(?:s|secs?|seconds?|count)\b\s*-?\s*(?:on\s+the\s+(?:way\s+)?)?(?P<w>{_PHASE})\b(?:\s*(?:phase|(?:at|in|on)\s+(?:the\s+)?(?:bottom|top|hole|stretch|chest|box|floor|ground)))?", _phase),  # noqa: E501
    (r"explosive(?:ly)?(?:\s+(?:up|lift|concentric))?\b" + _STOP, _explosive),
    (rf"{LENGTH}(?<=[^\d\s]){_STOP}", _rest),
    (rf"(?P<a>\d{{1,2}}[:'’′][0-5]\d)(?:\s*(?:-|–|to)\s*(?P<b>\d{{1,2}}[:'’′][0-5]\d))?{_STOP}", _rest),
    (rf"(?:no|never)\s+(?:more\s+|extra\s+)?(?P<w>load|weight|heavier|tempo|slower|range|deeper)\b{_STOP}", _never),
    (rf"(?:ways?\s*[:=]?\s*|by\s+|progress\s*(?:by\s+|[:=]\s*)?|add\s+)?(?:{_WAY})\b(?:(?:\s*(?:{_FILLER}))*\s*\b(?:{_WAY})\b)*(?:\s+(?:only|first))?{_STOP}", _ways),  # noqa: E501
    (r"(?:form|technique)\s+only\b", _form_only),
    (r"double\s+progression\b", _double),
    (rf"(?:each|per|every|both|a|ea\.?|/)?\s*{_SIDE}\b(?=\s*(?:[,;.()|@\d]|$))|(?:each|per|every|both|a|ea\.?|/)\s*{_SIDE}\b|(?:each|ea|e/s|p/s|l/r|l\+r|per\s+side|/side|unilateral)\b\.?", _sides),  # noqa: E501
    (rf"(?:start(?:ing)?\s+)?(?:x|×|@|at|with|from|using|about|around)?\s*{_MASS}", _load),
    (r"(?:start(?:ing)?\s+)?(?:@|at|with|from)?\s*\d{2,3}(?:\s*(?:-|–|to)\s*\d{2,3})?\s*%(?:\s*(?:of\s+)?(?:1\s?rm|max|tm|training\s+max))?", _load),  # noqa: E501
    (r"(?:start(?:ing)?\s+(?:at|with|from)|@|at|x|×)\s*(?P<n>\d{1,3}(?:[.,]\d{1,2})?)(?![\d:/-])(?!\s*(?:s|m|rir|rpe|rep)\w*)", _bare_load),  # noqa: E501
    (r"(?:with\s+)?the\s+\d{1,3}(?:[.,]\d)?\s*s?\b", _load),
    (rf"(?:with|w/|using)\s*(?P<n>\d{{1,3}}(?:[.,]\d)?)s{_STOP}", _pair_load),
    (r"(?:add|put\s+on|more)\s+(?:weight|load)\s+(?:when|once|if|after)\b[^,;]*", _when_done),
)  # fmt: skip

CLAUSES: Final[tuple[tuple["re.Pattern[str]", Fill], ...]] = tuple(
    (re.compile(pattern, re.IGNORECASE), fill) for pattern, fill in _ROWS
)
"""Each clause that may follow the sets, and what it sets; tried in this order."""
