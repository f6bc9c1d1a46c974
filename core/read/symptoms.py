"""What the body says: signs that must stop training, and aches. High recall; denial, other people, jokes and the
long past are told apart. Never diagnoses; knows nothing of sets.
"""

from dataclasses import dataclass
from typing import Final, Literal, cast

from core.model.acts import AcheAct, Alarm, Sign
from core.read.moods import clauses, other_person
from core.read.stream import Stream

WINDOW: Final = 7
"""Lexemes between a part of the body and what it does, at most (chosen on invented messages)."""
_MUSCLES: Final = frozenset({
    "quad", "glute", "hamstring", "calf", "pec", "lat", "bicep", "tricep", "abs", "forearm", "upper-back",
})  # fmt: skip
_MILD: Final = frozenset({
    "sore", "tight", "tightness", "stiff", "stiffness", "off", "tender", "talking", "problem", "issue", "issues", "trouble",
    "sensitive", "burning",
})  # fmt: skip
_VAGUE: Final = frozenset(
    {
        "off",
        "tight",
        "tightness",
        "talking",
        "problem",
        "issue",
        "issues",
        "trouble",
        "pulled",
        "rolled",
        "funny",
        "crunchy",
    }
)
_STRONG_HEART: Final = frozenset({
    "fluttering", "flutter", "flutters", "fluttered", "skipping", "skipped", "skips", "skip", "irregular", "missing beats",
    "missed a beat", "missed beats", "erratic", "flip flop", "flip flopping", "flopping", "doing flips", "double beat",
    "out of rhythm", "stuttering", "flipping", "misfiring", "stumbling", "quivering", "uneven", "jumping", "jumped",
})  # fmt: skip
_WEAK_NERVE: Final = frozenset({
    "weak", "weakness", "gone weak", "went weak", "gave out", "gives out", "giving way", "gave way", "gives way", "went dead",
    "gone dead", "asleep", "fell asleep", "went limp", "limp", "went to sleep", "gone to sleep", "feels dead", "felt dead",
    "buzzing", "shot down", "goes down", "running down", "no power", "lost power", "weakness", "no strength",
})  # fmt: skip
_NOISES: Final = frozenset(
    {
        "popping",
        "crack",
        "cracked",
        "crunch",
        "pop",
        "ping",
        "pinged",
        "snapping",
        "lump",
        "locked",
        "bone",
        "smashed",
        "crushed",
        "ripped",
        "came out",
        "useless",
        "snap",
    }
)


@dataclass(frozen=True, slots=True)
class Heard:
    """A symptom act and the lexeme where it was said."""

    act: Alarm | AcheAct
    at: int


def symptoms(s: Stream) -> list[Heard]:
    """Every alarm (each sign once) and ache, in order; their lexemes are marked as used."""
    out: list[Heard] = []
    seen: set[Sign] = set()
    alarmed: list[tuple[int, int]] = []
    for first, last in _sentences(s):
        if not any(s.all[i].has(*_BODY_KINDS) for i in range(first, last)):
            continue
        for sign, a, b in _signs(s, first, last):
            if _dismissed(s, a, b, first, last, sign):
                continue
            alarmed.append((a, b))
            s.use(range(a, b + 1))
            if sign not in seen:
                seen.add(sign)
                out.append(Heard(Alarm(sign, s.span(a, b)), a))
        if not any(first <= a < last for a, _ in alarmed):
            out.extend(_aches(s, first, last))
    out.sort(key=lambda heard: heard.at)
    return out


_BODY_KINDS: Final = (
    "ALARM", "PART", "LIMB", "CHESTPART", "HEARTPART", "BREATHPART", "URINE", "HEADACHE", "HEADPART", "CRUSHER",
)  # fmt: skip


def _sentences(s: Stream) -> list[tuple[int, int]]:
    out: list[tuple[int, int]] = []
    first = 0
    for i in range(len(s) + 1):
        if i == len(s) or s.all[i].has("NL", "STOP"):
            if i > first:
                out.append((first, i))
            first = i + 1
    return out


_PAIRS: Final[tuple[tuple[Sign, tuple[str, ...], str], ...]] = (
    ("chest", ("CHESTPART",), "CHESTSIGN"),
    ("heart", ("HEARTPART",), "HEARTSIGN"),
    ("breath", ("BREATHPART",), "WONTSETTLE"),
    ("dark-urine", ("URINE",), "DARK"),
    ("head", ("HEADACHE",), "SUDDEN"),
    ("nerve", ("LIMB", "PART", "FACE"), "NERVESIGN"),
    ("injury", ("LIMB", "PART"), "INJURYSIGN"),
    ("swelling", ("LIMB", "PART"), "SWELL"),
    ("injury", ("CRUSHER",), "PART"),
    ("head", ("CRUSHER",), "HEADPART"),
)
"""A part and a sign near each other, and the alarm that they make."""


def _signs(s: Stream, first: int, last: int) -> list[tuple[Sign, int, int]]:
    out: list[tuple[Sign, int, int]] = []
    spots: dict[str, list[int]] = {}
    for i in range(first, last):
        for kind in s.all[i].k:
            spots.setdefault(kind, []).append(i)
        if "ALARM" in s.all[i].k:
            out.append((cast("Sign", s.all[i].k["ALARM"]), i, i))
    for sign, parts, mark in _PAIRS:
        marks = spots.get(mark)
        if not marks:
            continue
        for part in parts:
            found = _near(s, sign, spots.get(part, []), marks)
            if found is not None:
                out.append((sign, *found))
    return out


def _near(s: Stream, sign: Sign, parts: list[int], marks: list[int]) -> tuple[int, int] | None:
    for p in parts[:40]:
        for m in marks[:40]:
            if (
                m != p
                and abs(m - p) <= (WINDOW + 5 if sign in ("breath", "head", "dark-urine") else WINDOW)
                and _fits(s, sign, p, m)
            ):
                return min(p, m), max(p, m)
    return None


def _fits(s: Stream, sign: Sign, p: int, m: int) -> bool:
    """Whether this part with this mark is a sign and not effort, a pump, or a figure of speech."""
    word, part = s.all[m].text, s.all[p].text
    between = range(min(p, m) + 1, max(p, m))
    if any(s.all[i].has("EX") and not s.all[i].has("PART") for i in between) and sign != "breath":
        return False
    sentence = _around(s, p)
    if sign == "heart":
        settles = any(s.all[i].has("WONTSETTLE") for i in sentence)
        effort = any(s.all[i].has("EX") or s.all[i].text in ("after", "from", "set", "during") for i in sentence)
        return word in _STRONG_HEART or settles or not effort
    if sign == "nerve":
        single = not part.endswith("s") or part in ("pins",)
        return word not in _WEAK_NERVE or single
    if sign == "injury" and s.all[p].has("CRUSHER"):
        return True
    if sign == "injury":
        if part.endswith("s") and word in _NOISES and part not in ("biceps", "triceps"):
            return False
        return not (word in ("cracked", "crack") and s.all[p].k.get("PART") in ("back", "neck"))
    if sign == "chest":
        return not any(s.all[i].text in ("pump", "pumped", "doms", "day", "to") for i in sentence) and not (
            any(s.all[i].has("RANGE", "BOTTOM", "TOP") for i in between)
        )
    if sign == "swelling":
        return not any(s.all[i].text in ("pump", "pumped") for i in sentence)
    return True


def _around(s: Stream, i: int) -> range:
    first, last = i, i
    while first > 0 and not s.all[first - 1].has("STOP", "NL"):
        first -= 1
    while last + 1 < len(s) and not s.all[last + 1].has("STOP", "NL"):
        last += 1
    return range(max(first, i - 30), min(last, i + 30) + 1)


def _dismissed(s: Stream, a: int, b: int, first: int, last: int, sign: Sign) -> bool:  # noqa: PLR0913
    if _denied(s, a, first) or (b != a and _denied(s, b, max(first, a + 1))):
        return True
    near = range(max(first, a - 30), min(last, b + 30))
    if any(s.all[i].has("LONGAGO") for i in near):
        return True
    if any(s.all[i].has("JOKE") for i in near):
        return True
    if any(s.all[i].has("WORRY") and s.all[i].k["WORRY"] == "before" for i in range(max(first, a - 6), a)):
        return True
    if sign == "faint" and any(s.all[i].text in ("bed", "couch", "sofa", "netflix") for i in near):
        return True
    return _theirs(s, a)


def _theirs(s: Stream, at: int) -> bool:
    for clause in clauses(s):
        if clause.first <= at < clause.last:
            other = other_person(s, clause)
            return other is not None and other < at
    return False


_DENYING: Final = frozenset({"cant", "couldnt", "wont", "nothing", "gone", "doesnt", "free", "skip", "never"})


def _denied(s: Stream, at: int, first: int) -> bool:
    """'no', 'not', 'without' before the sign, with only a list or fillers between."""
    for i in range(at - 1, max(first, at - 14) - 1, -1):
        lexeme = s.all[i]
        if lexeme.has("NEG") and (lexeme.text not in _DENYING or lexeme.text in ("never", "doesnt") and at - i <= 3):
            return not _goes_on(s, i, at)
        if lexeme.has("BUT", "THEN", "DONE", "STOP", "NL") or lexeme.text in ("i", "my", "im"):
            if (
                lexeme.text in ("i", "my", "im")
                and i > first
                and s.all[i - 1].has("IN", "ON", "NEG", "OF", "TO", "FROM", "PAIN", "CHESTSIGN")
            ):
                continue
            return False
    return False


def _goes_on(s: Stream, neg: int, at: int) -> bool:
    """Whether something new is said between the denial and the sign: a comma with a verb, a number."""
    return any(s.all[i].has("COMMA") and not _listed(s, i, at) for i in range(neg + 1, at))


def _listed(s: Stream, comma: int, at: int) -> bool:
    return all(
        s.all[i].has(
            "COMMA", "OR", "AND", "ARTICLE", "FILLER", "IN", *_BODY_KINDS, "PAIN", "CHESTSIGN", "NERVESIGN", "NEG"
        )
        for i in range(comma, at)
    )


# aches


def _aches(s: Stream, first: int, last: int) -> list[Heard]:
    out: list[Heard] = []
    pains = [i for i in range(first, last) if s.all[i].has("PAIN") and not _denied(s, i, first)]
    parts = [i for i in range(first, last) if s.all[i].has("PART", "LIMB", "HEADACHE") and i not in s.used]
    if not parts or (not pains and not any(s.all[i].has("HEADACHE") for i in parts)):
        return out
    near_all = range(first, last)
    if any(s.all[i].has("LONGAGO", "JOKE") for i in near_all):
        return out
    level = _level(s, parts[0], first, last)
    claimed: set[str] = set()
    for p in parts[:20]:
        pain = next((m for m in pains if m != p and abs(m - p) <= WINDOW + 1), p if s.all[p].has("HEADACHE") else None)
        if pain is None or _theirs(s, p) or _denied(s, p, first):
            continue
        where = _where(s, p)
        if where in claimed or not _is_ache(s, p, pain, first, last, level[0]):
            continue
        claimed.add(where)
        a, b = min(p, pain), max(p, pain)
        out.append(Heard(AcheAct(where, _ache_side(s, p, first, last), level[0], s.span(a, b)), a))
        s.use(i for i in range(a, b + 1) if not s.all[i].has("EX", "NUM") or s.all[i].has("PART"))
        s.use(level[1])
    return out


def _where(s: Stream, p: int) -> str:
    part = s.all[p].k.get("PART")
    if isinstance(part, str):
        return part
    if s.all[p].has("HEADACHE"):
        return "head"
    return s.all[p].text.rstrip("s")


def _is_ache(s: Stream, p: int, pain: int, first: int, last: int, level: float | None) -> bool:  # noqa: PLR0913
    word = s.all[pain].text
    where = _where(s, p)
    sore = any(s.all[i].has("SORENESS") and i != pain for i in range(first, last))
    if any(s.all[i].has("EX") and not s.all[i].has("PART") for i in range(min(p, pain) + 1, max(p, pain))) and pain < p:
        return False
    if level is not None:
        return True
    if word in _VAGUE:
        return word in ("off", "talking", "funny", "pulled", "rolled") and where not in _MUSCLES and abs(p - pain) <= 3
    if word in _MILD:
        return where not in _MUSCLES and not sore
    return not (sore and word in ("aching", "ache", "aches", "achy", "hurts", "hurt", "hurting"))


def _ache_side(s: Stream, p: int, first: int, last: int) -> Literal["left", "right", "both"] | None:
    for i in sorted(range(max(first, p - 8), min(last, p + 9)), key=lambda i: abs(i - p)):
        if s.all[i].has("BOTH"):
            return "both"
        if s.all[i].has("LEFT") and not s.is_(i - 1, "NUM") and s.all[i].text != "r":
            return "left"
        if s.all[i].has("RIGHT") and s.all[i].text not in ("r",):
            return "right"
    return None


def _level(s: Stream, p: int, first: int, last: int) -> tuple[float | None, list[int]]:
    """A number out of ten near the part: 3/10, 3 out of 10, maybe a 2, like 3."""
    stop = last
    if last < len(s) and s.all[last].has("STOP", "NL"):
        stop = min(len(s), last + 8)
    for i in range(first, stop):
        number = s.num(i)
        if number is None or number > 10 or s.all[i].has("REPQ", "SETQ", "TIMESQ") or s.all[i].plural:
            continue
        if (s.is_(i + 1, "SLASH") and s.num(i + 2) == 10) or (
            s.all[i + 1].text in ("out of", "outta") if i + 1 < len(s) else False
        ):
            return number, [i, i + 1, i + 2] if s.num(i + 2) == 10 else [i]
    for i in range(p + 1, last):
        number = s.num(i)
        if number is None or number > 10 or s.all[i].has("REPQ", "SETQ", "TIMESQ") or s.all[i].plural:
            continue
        told = s.is_(i - 1, "ABOUT", "LEVELWORD") or (
            s.is_(i - 1, "ARTICLE") and s.is_(i - 2, "ABOUT", "FILLER", "LEVELWORD", "PAIN", "COMMA")
        )
        if told and not s.is_(i + 1, "X", "KG", "LB") and i - p <= 12 and s.num(i + 1) is None:
            return number, [i]
    return None, []
