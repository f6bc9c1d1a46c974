"""Which part of a message speaks of which exercise. Knows mentions and separators; nothing of loads or sets."""

from bisect import bisect_left
from dataclasses import dataclass, field
from typing import Final, NamedTuple

from core.read.lexeme import Lexeme
from core.read.names import Mention
from core.read.stream import Stream

_CUTS: Final = ("NL", "STOP", "COMMA", "THEN", "AND", "ARROW", "BUT", "BULLET")
_COUNTING: Final = ("NUM", "LOADQ", "DUR", "DIST", "REPN", "PLATE", "EMPTYBAR", "SAME", "SAMELOAD", "SAMEREPS", "BODY")


@dataclass(slots=True)
class Stretch:
    """The lexeme ranges that belong to one mention, in order. ``line`` is the line where it starts."""

    mention: Mention | None
    at: int
    ranges: list[tuple[int, int]] = field(default_factory=list)

    def add(self, first: int, last: int) -> None:
        """Take in a range, with the separators between; what belongs to one exercise stands together."""
        if self.ranges:
            self.ranges[-1] = (min(self.ranges[-1][0], first), max(self.ranges[-1][1], last))
        else:
            self.ranges.append((first, last))


class Piece(NamedTuple):
    """A piece between separators: its range, its mentions, whether it counts, and the line it is on."""

    first: int
    last: int
    mentions: tuple[int, ...]
    counts: tuple[int, ...]
    line: int
    joined: bool


def _pieces(s: Stream) -> list[Piece]:
    out: list[Piece] = []
    first = line = 0
    joined = False
    names = [j for j in s.places("EX") if j not in s.used]
    counting = [j for j in s.places(*_COUNTING) if j not in s.used]
    for i in (*s.places(*_CUTS, "SLASH", "PLUS", "COLON", "DASH"), len(s)):
        at_end = i == len(s)
        if not at_end and not _cuts(s, i):
            continue
        if i > first:
            mentions = tuple(names[bisect_left(names, first) : bisect_left(names, i)])
            counts = tuple(counting[bisect_left(counting, first) : bisect_left(counting, i)])
            out.append(Piece(first, i, mentions, counts, line, joined))
        if not at_end:
            joined = s.all[i].has("AND", "SLASH", "PLUS")
            if s.all[i].has("NL"):
                line += 1
        first = i + 1
    return out


def _cuts(s: Stream, i: int) -> bool:
    lexeme = s.all[i]
    if lexeme.has(*_CUTS):
        return i not in s.used or not lexeme.has("THEN", "AND")
    if lexeme.has("SLASH", "PLUS"):
        return _parts_names(s, i, lexeme)
    if "COLON" in lexeme.k:
        return _heads(s, i)
    return "DASH" in lexeme.k and _spaced(s, i, lexeme)


def _parts_names(s: Stream, i: int, lexeme: Lexeme) -> bool:
    """A stroke or a plus between two exercises: a name on this side, and one soon on the other."""
    if s.is_(i + 1, "EX"):
        return True
    if lexeme.glued or i + 1 >= len(s) or s.all[i + 1].glued:
        return False
    ahead = range(i + 1, min(i + 4, len(s)))
    return any(s.is_(k, "EX") for k in ahead) and any(s.is_(k, "EX") for k in range(max(0, i - 8), i))


def _heads(s: Stream, i: int) -> bool:
    """A colon behind rounds or a heading, before the first name of its line."""
    j = i - 1
    while j >= 0 and not s.all[j].has("NL"):
        if s.is_(j, "EX"):
            return False
        j -= 1
    k = i + 1
    while k < len(s) and not s.all[k].has("NL", "STOP"):
        if s.is_(k, "EX"):
            return s.is_(i - 1, "SETQ") or s.is_(i - 2, "X")
        k += 1
    return False


def _spaced(s: Stream, i: int, lexeme: Lexeme) -> bool:
    return not lexeme.glued and i + 1 < len(s) and not s.all[i + 1].glued


def stretches(s: Stream, *, known: bool) -> list[Stretch]:
    """The stretches in order. ``known``: the setting says what an unnamed set would be of."""
    out: list[Stretch] = []
    unnamed: list[Piece] = []
    waiting: list[Stretch] = []
    line = 0
    for piece in _pieces(s):
        line, before = piece.line, line
        if not piece.mentions:
            if out and piece.line > before and _strangely_named(s, piece):
                stranger = Stretch(None, piece.first)
                stranger.add(piece.first, piece.last)
                out.append(stranger)
            elif out:
                out[-1].add(piece.first, piece.last)
            else:
                unnamed.append(piece)
            continue
        parts = _split(s, piece)
        if unnamed:
            _place_unnamed(s, out, unnamed, parts[0], piece, known=known)
            unnamed = []
        for stretch, counted in parts:
            if counted and waiting and piece.joined and _shared(s, piece):
                for other in waiting:
                    other.ranges = list(stretch.ranges)
            waiting = [] if counted else [*waiting, stretch]
            out.append(stretch)
    if unnamed:
        alone = Stretch(None, unnamed[0].first)
        for piece in unnamed:
            alone.add(piece.first, piece.last)
        out.append(alone)
    return out


def _strangely_named(s: Stream, piece: Piece) -> bool:
    """'zorbs 110x12' on a line of its own: a word that is nothing else, where the name of an exercise stands."""
    at = piece.counts[0] - 1 if piece.counts else -1
    while at > piece.first and s.is_(at, "COLON", "DASH"):
        at -= 1
    chained = any(s.is_(i, "X") for i in range(piece.first, piece.last))
    unknown = at >= piece.first and set(s.all[at].k) == {"WORD"} and at not in s.used
    return chained and unknown and all(s.all[i].has("WORD", "PART", "BULLET", "DASH") for i in range(piece.first, at))


def _only_rounds(s: Stream, piece: Piece) -> bool:
    """3 rounds, superset x3: a count of sets for what follows."""
    return bool(piece.counts) and all(s.is_(i, "SETQ") or s.is_(i - 1, "X") for i in piece.counts)


def _only_implements(s: Stream, piece: Piece) -> bool:
    """'my heaviest dumbbells are 12s': plurals alone, which count nothing by themselves."""
    return bool(piece.counts) and all(s.all[i].plural for i in piece.counts)


def _strange(s: Stream, piece: Piece) -> bool:
    """Chat beside the set, not part of its report."""
    return any("WORD" in s.all[i].k and i not in s.used for i in range(piece.first, piece.last))


def _paced(s: Stream, piece: Piece) -> bool:
    """A tempo said ahead of the name, which is a remark on the sets to come."""
    return any(
        i in s.used and s.all[i].has("ECC", "BOTTOM", "CON", "TOP", "TEMPO", "LAST", "RPE", "RIR")
        for i in range(piece.first, piece.last)
    )


_SAID_AHEAD: Final = (
    "REST",
    "BETWEEN",
    "NOREST",
    "FORM",
    "FORMNOUN",
    "ZERORIR",
    "RANGE",
    "RPE",
    "RIR",
    "TANK",
    "TEMPO",
)


def _rested(s: Stream, piece: Piece) -> bool:
    """A remark ahead of the name, alone in its piece ('60 sec rests, cable fly ...', 'form was solid. goblets ...'),
    and not a rest just taken."""
    inside = range(piece.first, piece.last)
    said = any(i in s.used and s.all[i].has(*_SAID_AHEAD) for i in inside)
    alone = all(i in s.used or s.all[i].has("FILLER", "ARTICLE", "WITH", "ALL", "DAY", "BE", "ON") for i in inside)
    return said and alone and not s.is_(piece.last, "THEN") and not any(s.all[i].is_word("after") for i in inside)


def _shared(s: Stream, piece: Piece) -> bool:
    return any(s.all[i].has("EACH", "ALL", "BOTH") for i in range(piece.first, piece.last))


def _place_unnamed(
    s: Stream, out: list[Stretch], unnamed: list[Piece], part: tuple[Stretch, bool], piece: Piece, *, known: bool
) -> None:
    """Counts before the first name: they are of that name if it has none of its own, or stands behind its counts."""
    stretch, counted = part
    behind = bool(piece.counts) and piece.counts[0] < stretch.at
    near = [
        one
        for one in unnamed
        if one.line == piece.line
        and not (_only_rounds(s, one) or _strange(s, one) or (counted and _only_implements(s, one)))
    ]
    if not any(one.counts for one in unnamed) and any(_paced(s, one) or _rested(s, one) for one in unnamed):
        near = unnamed
    joins = bool(near) and (
        (near is unnamed and not any(one.counts for one in near))
        or (any(one.counts for one in near) and (not counted or behind or not known))
    )
    if not joins and not known and not counted and _named_once(s) and not any(_strange(s, one) for one in unnamed):
        near, joins = unnamed, any(one.counts for one in unnamed)
    kept = [one for one in unnamed if not (joins and one in near)]
    if joins:
        ranges = [(one.first, one.last) for one in near]
        own = stretch.ranges
        stretch.ranges = []
        for first, last in [*ranges, *own]:
            stretch.add(first, last)
    if kept:
        alone = Stretch(None, kept[0].first)
        for one in kept:
            alone.add(one.first, one.last)
        out.append(alone)


def _named_once(s: Stream) -> bool:
    """Whether the message names one exercise, and that once: the counts ahead of it are of it."""
    return sum(lexeme.mention is not None for lexeme in s.all) == 1


def sentences_of(s: Stream, stretch: Stretch) -> list[tuple[int, int]]:
    """The sentences and lines of a stretch, but for the one that names its exercise."""
    out: list[tuple[int, int]] = []
    ends = s.places("NL", "STOP")
    for begin, end in stretch.ranges:
        first = begin
        for i in (*ends[bisect_left(ends, begin) : bisect_left(ends, end)], end):
            named = stretch.mention is not None and first <= stretch.at < i
            if i > first and not named:
                out.append((first, i))
            first = i + 1
    return out


def _split(s: Stream, piece: Piece) -> list[tuple[Stretch, bool]]:
    """A piece as one stretch a mention, cut before each name, or behind each when the counts come first."""
    mentions = piece.mentions
    behind = bool(piece.counts) and piece.counts[0] < mentions[0] and piece.counts[-1] < mentions[-1]
    bounds: list[tuple[int, int]] = []
    if behind:
        start = piece.first
        for n, at in enumerate(mentions):
            end = piece.last if n == len(mentions) - 1 else at + 1
            bounds.append((start, end))
            start = end
    else:
        for n, at in enumerate(mentions):
            start = piece.first if n == 0 else at
            end = piece.last if n == len(mentions) - 1 else mentions[n + 1]
            bounds.append((start, end))
    out: list[tuple[Stretch, bool]] = []
    for at, (first, last) in zip(mentions, bounds, strict=True):
        stretch = Stretch(s.all[at].mention, at)
        stretch.add(first, last)
        out.append((stretch, any(first <= count < last for count in piece.counts)))
    return out
