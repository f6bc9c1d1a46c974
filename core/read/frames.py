"""Signs told by several small words that each say little: a part, what it does, how long, how much.

Words are matched to concepts, concepts to frames. Knows no word and no sign of its own: both are rows of a language.
"""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from typing import Final

MOST_HITS: Final = 30
"""Places of one concept that are looked at: a message that says a word more often says nothing new."""
STOP_COSTS: Final = 2
"""Words that a sentence's end counts for, when distances are measured."""
FAST: Final = (105.0, 250.0)
"""Beats a minute that are fast for someone who rests (common practice, no source; not a diagnosis)."""
FAST_FIGURES: Final = 3
"""Figures of such a number."""
_VOWELS: Final = frozenset("aeiou")

FrameRow = tuple[str, str, int]
"""A sign; slots parted by spaces, each of concepts parted by ``|``, ``>`` before one that follows the first slot,
``!`` before one that must not be said in the same sentences; words between the slots, at most."""


def inflected(word: str) -> tuple[str, ...]:
    """A verb with its everyday endings: flutter, flutters, fluttered, fluttering."""
    stem = word.removesuffix("e")
    hissing = word.endswith(("s", "x", "z", "sh", "ch"))
    out = [word, word + ("es" if hissing else "s"), stem + "ed", stem + "ing"]
    if len(word) > 2 and word[-1] not in "aeiouwxy" and word[-2] in _VOWELS:
        out += [word + word[-1] + "ed", word + word[-1] + "ing"]
    if word.endswith("y") and word[-2] not in _VOWELS:
        out += [word[:-1] + "ied", word[:-1] + "ies"]
    return tuple(out)


@dataclass(frozen=True, slots=True)
class _Frame:
    sign: str
    need: tuple[int, ...]
    slots: tuple[tuple[tuple[int, ...], bool], ...]
    veto: int
    window: int


@dataclass(frozen=True, slots=True)
class Found:
    """A sign, the words first and last that told it, and each of its phrases."""

    sign: str
    first: int
    last: int
    said: tuple[tuple[int, int], ...]


class Frames:
    """The concepts and frames of one language, indexed."""

    __slots__ = (
        "_by_anchor",
        "_fast",
        "_firsts",
        "_frames",
        "_joined",
        "_not_words",
        "_phrases",
        "_single",
        "_spoken",
        "words",
    )

    def __init__(
        self,
        concepts: Mapping[str, str],
        rows: Iterable[FrameRow],
        spoken: Mapping[str, str],
        joined: Mapping[str, str],
    ) -> None:
        self._spoken, self._joined = spoken, joined
        self._not_words = frozenset(joined.values())
        number = {name: n for n, name in enumerate((*concepts, "FASTPULSE"))}
        self._fast = number["FASTPULSE"]
        self._single: dict[str, list[int]] = {}
        self._phrases: dict[tuple[str, str], list[tuple[tuple[str, ...], int]]] = {}
        self.words: set[str] = set()
        for name, phrases in concepts.items():
            for phrase in phrases.split(","):
                for words in _spread(phrase.split()):
                    self.words.update(words)
                    if len(words) == 1:
                        self._single.setdefault(words[0], []).append(number[name])
                    else:
                        self._phrases.setdefault((words[0], words[1]), []).append((words, number[name]))
        self._frames = tuple(_compiled(row, number) for row in rows)
        self._by_anchor: dict[int, list[int]] = {}
        for n, frame in enumerate(self._frames):
            for concept in set(frame.slots[0][0]):
                self._by_anchor.setdefault(concept, []).append(n)
        self._firsts = frozenset(first for first, _ in self._phrases)
        self.words.update(spoken)

    def find(self, words: list[str], stops: list[bool]) -> Iterator[Found]:
        """Every frame that the words fill; ``stops`` tells which of them end a sentence."""
        hits, present = self._hits(self.plainly(words))
        if not present:
            return
        places: tuple[list[int], list[int]] | None = None
        for number in sorted({number for concept in hits for number in self._by_anchor.get(concept, ())}):
            frame = self._frames[number]
            for mask in frame.need:
                if not present & mask:
                    break
            else:
                places = places or _places(stops)
                yield from self._fill(frame, hits, *places)

    def plainly(self, words: list[str]) -> list[str]:
        """The words as most people write them; ``could not`` as ``couldnt`` and an empty word, so that places stay."""
        if "not" not in words and self._spoken.keys().isdisjoint(words):
            return words
        out: list[str] = []
        for word in words:
            if word == "not" and out and out[-1] in self._joined:
                out[-1] = self._joined[out[-1]]
                out.append("")
            else:
                out.append(self._spoken.get(word, word))
        return out

    def _hits(self, words: list[str]) -> tuple[dict[int, list[tuple[int, int]]], int]:
        hits: dict[int, list[tuple[int, int]]] = {}
        present = 0
        before = ""
        joined = self._not_words
        for i, word in enumerate(words):
            for concept in self._single.get(word, ()):
                found = hits.setdefault(concept, [])
                if len(found) < MOST_HITS:
                    found.append((i, i + (i + 1 < len(words) and not words[i + 1] and word in joined)))
                present |= 1 << concept
            for phrase, concept in self._phrases.get((before, word), ()) if before in self._firsts else ():
                first, last = i - 1, i - 2 + len(phrase)
                if len(phrase) > 2 and tuple(words[first : last + 1]) != phrase:
                    continue
                found = hits.setdefault(concept, [])
                if len(found) < MOST_HITS:
                    found.append((first, last))
                present |= 1 << concept
            before = word
            if len(word) == FAST_FIGURES and _is_fast(word):
                hits.setdefault(self._fast, []).append((i, i))
                present |= 1 << self._fast
        return hits, present

    def _fill(
        self, frame: _Frame, hits: dict[int, list[tuple[int, int]]], at: list[int], sentence: list[int]
    ) -> Iterator[Found]:
        anchors = [hit for concept in frame.slots[0][0] for hit in hits.get(concept, ())]
        for first, last in anchors[:MOST_HITS]:
            taken = _taken(frame, (first, last), hits, at)
            if taken is None:
                continue
            span = min(a for a, _ in taken), max(b for _, b in taken)
            said = range(sentence[span[0]], sentence[span[1]] + 1)
            if frame.veto and any(
                sentence[hit[0]] in said
                for concept, places in hits.items()
                if frame.veto >> concept & 1
                for hit in places
            ):
                continue
            yield Found(frame.sign, *span, tuple(taken))


def _is_fast(word: str) -> bool:
    return word.isascii() and word.isdigit() and FAST[0] <= int(word) <= FAST[1]


def _taken(
    frame: _Frame, anchor: tuple[int, int], hits: dict[int, list[tuple[int, int]]], at: list[int]
) -> list[tuple[int, int]] | None:
    """The phrases of the frame around this anchor, or None where a slot stays empty."""
    taken = [anchor]
    for concepts, follows in frame.slots[1:]:
        best: tuple[int, tuple[int, int]] | None = None
        for concept in concepts:
            for hit in hits.get(concept, ()):
                if any(hit[0] <= b and a <= hit[1] for a, b in taken) or (follows and hit[0] < anchor[0]):
                    continue
                away = at[hit[0]] - at[anchor[1]] if hit[0] > anchor[1] else at[anchor[0]] - at[hit[1]]
                if away <= frame.window + 1 and (best is None or away < best[0]):
                    best = away, hit
        if best is None:
            return None
        taken.append(best[1])
    return taken


def _places(stops: list[bool]) -> tuple[list[int], list[int]]:
    """Where each word stands, a stop counting for more than one; and the number of its sentence."""
    at: list[int] = []
    sentence: list[int] = []
    place = number = 0
    for stop in stops:
        at.append(place)
        sentence.append(number)
        place += 1
        if stop:
            place += STOP_COSTS
            number += 1
    return at, sentence


def _spread(words: list[str]) -> Iterator[tuple[str, ...]]:
    """The phrase in all endings of its starred words."""
    if not words:
        yield ()
        return
    heads = inflected(words[0][:-1]) if words[0].endswith("*") else (words[0],)
    for rest in _spread(words[1:]):
        for head in heads:
            yield (head, *rest)


def _compiled(row: FrameRow, number: Mapping[str, int]) -> _Frame:
    sign, told, window = row
    slots: list[tuple[tuple[int, ...], bool]] = []
    veto = 0
    for slot in told.split():
        concepts = tuple(number[name] for name in slot.lstrip(">!").split("|"))
        if slot.startswith("!"):
            veto |= sum(1 << concept for concept in concepts)
        else:
            slots.append((concepts, slot.startswith(">")))
    need = tuple(sum(1 << concept for concept in set(concepts)) for concepts, _ in slots)
    return _Frame(sign, need, tuple(slots), veto, window)
