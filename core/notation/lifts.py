"""One line -> exercises with their aims. Finds the names by a function that is handed in; knows nothing of days."""

import re
from collections.abc import Callable
from dataclasses import dataclass, replace
from itertools import pairwise
from typing import Final

from core.evidence.exercises import EXERCISES
from core.notation.amounts import MAX_REPS, Amount, amounts, in_figures
from core.notation.clauses import NO_WORDS, Said, is_clauses_only, scan
from core.notation.hidden import Trouble, asked_about
from core.notation.words import EVERYWHERE, MANNERS, SECTIONS

FindExercise = Callable[[str], tuple[str, ...]]
"""A name as written -> the ids it may mean: one when it is clear, several when it is not, none when unknown."""

_HELD: Final = frozenset({"hold", "carry"})
"""Patterns of the catalogue whose aim counts seconds."""


@dataclass(frozen=True, slots=True)
class Lift:
    """One exercise as its line says it; ``label`` is the letter of a superset it was marked with ("A" of A1).

    ``row`` is the number of its line, ``bullet`` whether that opened with one.
    """

    exercise: str
    said: Said
    label: str = ""
    row: int = 0
    bullet: bool = False


@dataclass(frozen=True, slots=True)
class Piece:
    """One part of a line and what came of it."""

    text: str
    found: Lift | Trouble


BULLETS: Final = ("-", "–", "—", "*", "•", "·", "▪", "◦", "‣", ">")
_LABEL: Final = re.compile(
    r"\s*(?:[-–—*•·▪◦‣>]\s*|\[[ x]?\]\s*|\d{1,2}\s*[.)]\s+|\d{1,2}\s+-\s+|(?P<letter>[A-Ha-h])(?P<n>\d)\s*[.):\-–]?\s+"
    r"|(?P<pair>\d)(?P<of>[a-d])\s*[.):\-–]?\s+"
    r"|[A-Ha-h]\s*[.)]\s+|(?-i:[A-H])\s+(?=[A-Za-z]{2}))*"
)
_JOIN: Final = re.compile(
    r"[,;+/&|]|\bss\b|\bsuper\s?set(?:ted)?(?:\s+with)?\b:?|\bpaired\s+with\b|\band\b|\bthen\b|\binto\b|\s[-–—]\s",
    re.IGNORECASE,
)
_PAIRED: Final = re.compile(r"\bss\b|\bsuper\s?set(?:s|ted)?(?:\s+with)?\b:?|\bpaired\s+with\b", re.IGNORECASE)
_NOTE: Final = re.compile(r"\b(note|cue|nb)\s*:\s", re.IGNORECASE)
_LOOSE_END: Final = re.compile(r"[\s,;+&/|]*(?:\b(?:then|and|into)\b[\s,;+&/|]*)*$", re.IGNORECASE)
_FILLER: Final = re.compile(
    r"^[\s,]*(?:(?:and|then|plus|also|finally|next|first|now|followed\s+by|(?:finish|start|begin|end)(?:ing|e?s)?\s+(?:off\s+)?with"
    r"|she|he|they|you|we|i|i'?d|i'?ll|we'?ll|you'?ll|will|should|would|like|want|to|her|him|them|please|let'?s|have|do|does|make|perform|an?|the|some"
    r"|after\s+(?:that|this|those|which))[\s,:]+)+(?=[A-Za-z]{2}|\d)",
    re.IGNORECASE,
)
"""Words before a name in a plan that was spoken."""
_EDGES: Final = " \t,;:.-–—@+&|/*_="


def unlabelled(line: str) -> tuple[str, str]:
    """The line without its bullet or number, and the letter of its superset."""
    marked = _LABEL.match(line)
    if marked is None:
        return line, ""
    return line[marked.end() :], (marked.group("letter") or marked.group("pair") or "").upper()


def looks_prescribed(line: str) -> bool:
    """Sets and repetitions, or what looks like them, stand in the line."""
    return bool(amounts(in_figures(without_note(line)[0])))


def without_note(line: str) -> tuple[str, str]:
    """The line, and the words behind "note:" as they stand."""
    head, mark, note = _NOTE.split(line, maxsplit=1) if _NOTE.search(line) else (line, "", "")
    return (head, note.strip()) if mark and note.strip() else (line, "")


def opens_with_amount(line: str) -> bool:
    """No name stands in front of the first amount."""
    places = amounts(in_figures(line.strip()))
    return bool(places) and places[0][0] == 0


def lifts(line: str, find: FindExercise) -> tuple[Piece, ...]:
    """Every exercise of a line. A line that is half understood comes back as a trouble, whole."""
    line, note = without_note(line)
    parts = _MARKED.split(in_figures(line))
    done = [piece for part in parts for piece in _of_part(part, note if part is parts[-1] else "", find)]
    return tuple(done)


_MARKED: Final = re.compile(r"\s*[+/,;&|]\s*(?=(?-i:[A-H])\d\s*[.):\-–]?\s+[A-Za-z])")
"""Between two exercises of a superset in one line, the second with its own mark: "A1 bench 3x8 + A2 row 3x8"."""


def _of_part(part: str, note: str, find: FindExercise) -> list[Piece]:
    body, label = unlabelled(part)
    head, body = _said_before(_FILLER.sub("", without_section(body)))
    body, common = _said_of_all(body)
    pieces = _cut(body, find)
    paired = "superset" if len(pieces) > 1 and _PAIRED.search(body) else ""
    done = []
    for piece in pieces:
        found = _lift(_FILLER.sub("", _PAIRED.sub(" ", piece) if paired else piece), find)
        if isinstance(found, Lift):
            said = replace(found.said, notes=(*found.said.notes, paired)) if paired else found.said
            said = replace(said, notes=(*said.notes, note)) if note and piece is pieces[-1] else said
            found = replace(found, said=said.filled(head).filled(common), label=label)
        done.append(Piece(piece.strip(_EDGES), found))
    return done


_OF_ALL: Final = re.compile(rf"(?P<body>.*\d.*?)\s*[,;:–—-]\s*{EVERYWHERE}\b[\s:,]*(?P<said>[^;]*\d.*)$", re.IGNORECASE)


_FIGURE: Final = re.compile(r"\d")


def _said_before(body: str) -> tuple[Said, str]:
    """Clauses that stand in front of a name with a colon: "3' rest: squat 3x5"."""
    head, mark, rest = body.partition(":")
    said = (
        is_clauses_only(head)
        if mark and _FIGURE.search(head) and not rest[:1].isdigit() and looks_prescribed(rest)
        else None
    )
    return (said, rest.strip()) if said is not None else (NO_WORDS, body)


def _said_of_all(body: str) -> tuple[str, Said]:
    """What a line of several exercises says at its end of all of them: "squat 3x5, bench 3x5, all 2 left"."""
    found = _OF_ALL.match(body)
    said = is_clauses_only(found["said"]) if found and len(amounts(found["body"])) > 1 else None
    return (found["body"], said) if found and said is not None else (body, NO_WORDS)


def without_section(body: str) -> str:
    """The line without the heading it opens with ("Finisher: burpees 1x20")."""
    head, mark, rest = body.partition(":")
    return rest.strip() if mark and rest.strip() and head.strip(" *_").lower() in SECTIONS else body


def _cut(body: str, find: FindExercise) -> list[str]:
    """The line in pieces of one exercise each."""
    places = amounts(body)
    cuts = [0]
    for (_, end, _), (start, _, _) in pairwise(places):
        at = _name_start(body, end, start, find)
        if at is not None:
            cuts.append(at)
    ends = [*cuts[1:], len(body)]
    return [body[a:b] if b == len(body) else _LOOSE_END.sub("", body[a:b]) for a, b in zip(cuts, ends, strict=True)]


def _name_start(body: str, after: int, before: int, find: FindExercise) -> int | None:
    """Where the name in front of an amount starts: behind the first join from which on it is a known name."""
    joins = list(_JOIN.finditer(body, after, before))
    for join in joins:
        if _ids(_FILLER.sub("", body[join.end() : before]), find):
            return join.start() if _PAIRED.fullmatch(join.group()) else join.end()
    if (
        joins
        and not body[joins[-1].end() : before].strip()
        and not isinstance(_named_after(body[after:], find), Trouble)
    ):
        return joins[-1].end()
    if joins and re.fullmatch(r"[\sA-Za-z'’-]*[A-Za-z]{3}[\sA-Za-z'’-]*", body[joins[-1].end() : before]):
        return joins[-1].end()
    return None


def _lift(piece: str, find: FindExercise) -> Lift | Trouble:
    places = amounts(piece)
    if not places:
        return Trouble("no_sets", name=piece.strip(_EDGES))
    start, end, amount = places[0]
    named = _named(piece[:start], find) if piece[:start].strip(_EDGES) else _named_after(piece[end:], find)
    if isinstance(named, Trouble):
        return named
    exercise, before, after = named
    if isinstance(amount, Trouble):
        return amount
    if len(places) > 1:
        return Trouble("two_amounts", name=piece.strip(_EDGES))
    said = _counted(amount, exercise, piece[start:end])
    for text in (before, piece[end:] if after is None else after):
        said = said if isinstance(said, Trouble) else scan(text, said)
    return said if isinstance(said, Trouble) else Lift(exercise, _sided(said, exercise))


def _counted(amount: Amount, exercise: str, words: str) -> Said | Trouble:
    held = EXERCISES[exercise].pattern in _HELD
    if amount.unit == "m":
        return Trouble("in_metres", name=words.strip())
    if amount.unit == ("reps" if held else "s"):
        return Trouble("reps_of_seconds" if held else "seconds_of_reps", name=words.strip(), choices=(exercise,))
    if not held and amount.high > MAX_REPS:
        return Trouble("beyond_limits", name=words.strip())
    return Said(sets=amount.sets, reps=(amount.low, amount.high))


def _sided(said: Said, exercise: str) -> Said:
    """ "Each side" goes without saying for a one-sided exercise; for another it is a note to its lifter."""
    if not said.sides or EXERCISES[exercise].default_side == "each":
        return said
    return replace(said, notes=(*said.notes, "each side"))


def _named(before: str, find: FindExercise) -> tuple[str, str, str | None] | Trouble:
    """The id, and what else stood in front of the amount."""
    ids = _ids(before, find)
    rest = ""
    if not ids:
        for pattern in (_BRACKET, _TAIL, _SIDED, _MASS):
            if cut := pattern.match(before):
                ids, rest = _ids(cut.group(1), find), before[cut.end(1) :]
            if ids:
                break
    manner, _, name = before.strip(_EDGES).partition(" ")
    if not ids and manner.lower() in MANNERS and (ids := _ids(name, find)):
        rest = manner.lower()
    return _one(ids, before) or (ids[0], rest, None)


def _named_after(after: str, find: FindExercise) -> tuple[str, str, str | None] | Trouble:
    """ "3x8 bench press, 2 left": the longest run of words behind the amount that is a name."""
    part = _NAME_AFTER.match(after)
    if part is None:
        return Trouble("no_name")
    words = part.group(1).split()
    for count in range(len(words), 0, -1):
        ids = _ids(" ".join(words[:count]), find)
        if ids:
            rest = " ".join(words[count:]) + after[part.end(1) :]
            return _one(ids, " ".join(words[:count])) or (ids[0], "", rest)
    return Trouble("unknown_exercise", name=part.group(1).strip())


_BRACKET: Final = re.compile(r"([^()]*)\(.*\)[\s:–-]*$")
_TAIL: Final = re.compile(r"(.*?)\s*(?:,|\s[-–—]\s|:\s).*$")
_SIDED: Final = re.compile(r"(.*?)\s*(?:/\s*(?:side|leg|arm)|\b(?:each|per)\b.*)$", re.IGNORECASE)
_MASS: Final = re.compile(
    r"(.*?)\s*(?:@|\bat\b)?\s*\d{1,3}(?:[.,]\d+)?\s*(?:kgs?|kilos?|lbs?|%)?\s*(?:for|x|:|-)?\s*$", re.IGNORECASE
)
_SMALL: Final = re.compile(r"\b(?:with|using|on|the|an?|of|for|your)\b", re.IGNORECASE)
_NAME_AFTER: Final = re.compile(r"\s*(?:of\s+|x\s+)?([A-Za-z][A-Za-z'’ -]*)")


def _one(ids: tuple[str, ...], name: str) -> Trouble | None:
    if len(ids) == 1:
        return None
    if not ids and (odd := asked_about(name)):
        return odd
    return Trouble("which_exercise" if ids else "unknown_exercise", name=name.strip(_EDGES), choices=ids)


def _ids(name: str, find: FindExercise) -> tuple[str, ...]:
    clean = name.strip(_EDGES + "()")
    return (find(clean) or find(_SMALL.sub(" ", clean).strip())) if clean else ()


def name_at_start(line: str, find: FindExercise) -> str | None:
    """The exercise name that a line without sets opens with, if it opens with one."""
    body, _ = unlabelled(line)
    part = _NAME_AFTER.match(body)
    words = part.group(1).split() if part else []
    for count in range(len(words), 0, -1):
        if find(" ".join(words[:count])):
            return " ".join(words[:count])
    return None
