"""What the body says: signs that must stop training, and aches. High recall; denial, other people, jokes and the
long past are told apart. Never diagnoses; knows nothing of sets.
"""

from typing import Final, cast

from core.model.acts import Alarm, Sign
from core.read.aches import aches
from core.read.dismissal import dismissed
from core.read.frames import Frames
from core.read.lexeme import Lexeme
from core.read.lexicon import FIGURE
from core.read.pairs import signs
from core.read.stream import Stream
from core.read.telling import APOSTROPHES, BODY_KINDS, Heard, Told


def symptoms(s: Stream, frames: Frames) -> list[Heard]:
    """Every alarm (each sign once) and ache, in order; their lexemes are marked as used."""
    out: list[Heard] = []
    seen: set[Sign] = set()
    framed = _framed(s, frames)
    for first, last in _sentences(s) if framed or s.says(_BODILY) else ():
        told = [one for one in framed if first <= one.first < last]
        if not told and not any(s.all[i].has(*BODY_KINDS) for i in range(first, last)):
            continue
        alarms = _settled([*signs(s, first, last), *told], s, (first, last), sure=bool(seen))
        for one in alarms:
            sign = cast("Sign", one.sign)
            if sign not in seen:
                seen.add(sign)
                out.append(Heard(Alarm(sign, s.span(one.first, one.last)), one.first))
        if alarms:
            for one in alarms:
                _spend(s, one)
            held = {one.sign for one in alarms}
            s.use(i for one in told if one.sign.rstrip("?") in held for i in one.said if not s.all[i].has(*_REPORTING))
            _quieten(s, first, last, min(one.first for one in alarms))
        else:
            out.extend(aches(s, first, last))
    _name_no_lift(s)
    out.sort(key=lambda heard: heard.at)
    return out


def _name_no_lift(s: Stream) -> None:
    """A tight hamstring, my hamstring: the word names the part here, and no lift."""
    for i in s.places("PART"):
        if "EX" not in s.all[i].k:
            continue
        beside = [s.all[k] for k in (i - 1, i + 1) if 0 <= k < len(s)]
        if any(one.has("PAIN", "SORENESS") for one in beside) or (i and s.all[i - 1].is_word("my", "left", "right")):
            s.use([i])


def _of_a_rep(lexeme: Lexeme) -> bool:
    """'squeeze up top', 'bar drifted': a part of the repetition or of its form, told in one phrase, and no sign."""
    return lexeme.has("TOP", "BOTTOM", "FORM") and lexeme.text.split(" ")[0] in _OF_A_REP


_OF_A_REP: Final = frozenset(
    {"squeeze", "squeezes", "squeezed", "squeezing", "hold", "holds", "pause", "pauses", "peak", "bar"}
)


def _framed(s: Stream, frames: Frames) -> list[Told]:
    """What the frames of small words tell, by lexemes instead of words. The leg of a leg curl is no body part."""
    words: list[str] = []
    stops: list[bool] = []
    places: list[int] = []
    for i, lexeme in enumerate(s.all):
        kinds = lexeme.k
        if "STOP" in kinds or "NL" in kinds or "DASH" in kinds:
            if stops and "DASH" not in kinds:
                stops[-1] = True
            continue
        text = f"{lexeme.value:.0f}" if lexeme.spelled and lexeme.value >= 100 else lexeme.text
        if text[-1:] == "s" and s.text[lexeme.end - 2 : lexeme.end - 1] in APOSTROPHES:
            text = text[:-1]
        text = "" if FIGURE in kinds or (" " in text and _of_a_rep(lexeme)) else text
        *parts, last = text.split(" ") if " " in text else (text,)
        if parts and "EX" in kinds and "PART" not in kinds and "LIMB" not in kinds:
            parts = [""] * len(parts)
        for word in (*parts, last):
            words.append(word)
            stops.append(False)
            places.append(i)
    return [
        Told(
            one.sign,
            places[one.first],
            places[one.last],
            frozenset(places[i] for a, b in one.said for i in range(a, b + 1)),
        )
        for one in frames.find(words, stops)
    ]


def _settled(told: list[Told], s: Stream, sentence: tuple[int, int], *, sure: bool) -> list[Told]:
    """The signs that hold, the closest telling of each.

    A doubtful telling (its sign ends with ``?``) counts only alone: not if the message is ``sure`` of a sign already.
    """
    out: dict[str, Told] = {}
    told = sorted(told, key=lambda one: (one.sign.endswith("?"), one.last - one.first, one.first))
    for one in told:
        doubtful, sign = one.sign.endswith("?"), cast("Sign", one.sign.rstrip("?"))
        if sign in out or (doubtful and (out or sure)):
            continue
        if not dismissed(s, one, sentence, sign):
            out[sign] = one._replace(sign=sign)
    if "heart" in out and "chest" in out and not _hurts(s, out["chest"]):
        del out["chest"]  # the chest is only where the heart was felt
    swollen, torn = out.get("swelling"), out.get("injury")
    if swollen is not None and torn is not None and (swollen.first, swollen.last) == (torn.first, torn.last):
        del out["injury"]  # the same words tell of one thing
    for sign, explained in _EXPLAINS.items():
        if sign in out:
            for other in explained:
                out.pop(other, None)
    return list(out.values())


def _hurts(s: Stream, told: Told) -> bool:
    """Whether a chest is told to hurt or to be tight, in words that can hardly mean anything else."""
    inside = (s.all[i] for i in range(told.first, told.last + 1))
    return any(
        (one.has("PAIN", "CHESTSIGN") or one.k.get("ALARM") == "chest") and not one.is_word("vague", "loose chest")
        for one in inside
    )


def _spend(s: Stream, told: Told) -> None:
    """What tells the sign is spoken for, but for a set reported in its midst."""
    inside = range(told.first, told.last + 1)
    erased = told.first > 0 and s.all[told.first - 1].has("ERASE")
    if not erased and not any(s.all[i].has("X", "LOADQ", "REPQ", "EMPTYBAR") for i in inside):
        s.use(inside)
    else:
        s.use(i for i in (told.said or (told.first, told.last)) if not s.all[i].has(*_REPORTING))


_BODILY: Final = frozenset(BODY_KINDS)
_REPORTING: Final = (
    "X",
    "LOADQ",
    "REPQ",
    "SETQ",
    "ERASE",
    "EX",
    "SETS",
    "REPS",
    "BODY",
    "PERLIMB",
    "EACH",
    "LOADWORD",
    "EMPTYBAR",
)
"""Lexemes of a set, which no sign takes away."""


def _quieten(s: Stream, first: int, last: int, at: int) -> None:
    """The sentence of an alarm counts nothing, but for its clauses that report a set."""
    start = first
    for i in range(first, last + 1):
        if i < last and not s.all[i].has("COMMA", "BUT", "THEN", "OPEN"):
            continue
        inside = range(start, i)
        cause = next((j for j in inside if s.all[j].text.startswith(("since", "after"))), i)
        reports = any(s.is_(j, "X", "ERASE", "FINISH", "REPQ", "SETQ", "INSTEAD", "SAMELOAD") for j in inside) or (
            any(s.is_(j, "EX") and j < cause for j in inside)
            and any(
                s.is_(j, "NUM", "DUR", "SKIP") and not (j + 1 < i and s.all[j + 1].has("PART", "LIMB")) for j in inside
            )
        )
        if not reports and not (
            i <= at
            and any(s.is_(j, "NUM") for j in inside)
            and not any(s.all[j].has("WONTSETTLE", "DUR") for j in inside)
        ):
            s.use(j for j in inside if not s.all[j].has("FINISH", "EX"))
            s.use(j for j in inside if s.all[j].has("DAY") or (s.all[j].has("EX") and s.all[j].has("PART", "EMPTYBAR")))
        else:
            s.use(j for j in inside if s.all[j].has("LEFT", "RIGHT", "BOTH"))
        start = i + 1


_EXPLAINS: Final[dict[Sign, tuple[Sign, ...]]] = {
    "bladder": ("nerve",), "head": ("injury", "swelling"), "dark-urine": ("bladder",),
}  # fmt: skip
"""What a sign accounts for, so that it is not told twice."""


def _sentences(s: Stream) -> list[tuple[int, int]]:
    out: list[tuple[int, int]] = []
    first = 0
    for i in (*s.places("NL", "STOP"), len(s)):
        if i > first:
            out.append((first, i))
        first = i + 1
    return out
