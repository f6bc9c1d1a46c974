"""Phrases with many alternatives, matched slot by slot instead of spelled out. Knows no language and no meaning."""

from collections.abc import Iterable, Iterator, Sequence

Slot = tuple[frozenset[str], frozenset[tuple[str, ...]], bool]
"""The words, and the runs of words, that may stand in one place of a phrase; whether it may be left empty."""


class Slots:
    """Phrases as rows of slots, found by the words that they can begin with."""

    __slots__ = ("_by_first",)

    def __init__(self) -> None:
        self._by_first: dict[str, list[tuple[tuple[Slot, ...], object]]] = {}

    def add(self, slots: Sequence[Slot], meaning: object) -> None:
        """Take in a phrase; its meaning is given back where it is found."""
        row = (tuple(slots), meaning)
        for word in _firsts(slots):
            self._by_first.setdefault(word, []).append(row)

    def longest(self, words: Sequence[str], i: int) -> tuple[int, object]:
        """The end of the longest phrase that starts at ``i`` and its meaning; ``i`` itself when there is none."""
        best, meaning = i, None
        for slots, meant in self._by_first.get(words[i], ()):
            end = _end(slots, words, i)
            if end > best:
                best, meaning = end, meant
        return best, meaning

    def words(self) -> set[str]:
        """Every word of every phrase."""
        slots = [slot for found in self._by_first.values() for row, _ in found for slot in row]
        return {word for single, runs, _ in slots for word in (*single, *(one for run in runs for one in run))}


def _firsts(slots: Iterable[Slot]) -> Iterator[str]:
    for single, runs, optional in slots:
        yield from single
        yield from {run[0] for run in runs} - single
        if not optional:
            return


def _end(slots: Sequence[Slot], words: Sequence[str], i: int) -> int:
    """Where the phrase ends that starts at ``i``, at its longest; ``i`` if it does not stand there.

    All ways through are walked at once, so the cost is bounded by slots times words looked at.
    """
    places = {i}
    for single, runs, optional in slots:
        taken = {place + 1 for place in places if place < len(words) and words[place] in single}
        for run in runs:
            taken |= {place + len(run) for place in places if tuple(words[place : place + len(run)]) == run}
        places = taken | places if optional else taken
        if not places:
            return i
    return max(places)
