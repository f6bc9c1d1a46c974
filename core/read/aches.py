"""Aches: a part that hurts, its side and level. Muscle soreness is none. Knows nothing of signs that stop training."""

from typing import Final, Literal

from core.model.acts import AcheAct
from core.read.dismissal import denied, long_past, theirs
from core.read.stream import Stream
from core.read.telling import APOSTROPHES, WINDOW, Heard

_MUSCLES: Final = frozenset({
    "quad", "glute", "hamstring", "calf", "pec", "lat", "bicep", "tricep", "abs", "forearm", "upper-back",
})  # fmt: skip


TOP_LEVEL: Final = 10.0
"""The top of the scale of an ache (the reading contract)."""


def aches(s: Stream, first: int, last: int) -> list[Heard]:
    out: list[Heard] = []
    pains = [i for i in range(first, last) if (s.all[i].has("PAIN") or _sore(s, i)) and not denied(s, i, first)]
    parts = [
        i
        for i in range(first, last)
        if s.all[i].has("PART", "LIMB", "HEADACHE") and i not in s.used and not _returned(s, i)
    ]
    if not parts or any(s.all[i].has("JOKE", "RESOLVED") or long_past(s, i) for i in range(first, last)):
        return out
    claimed: set[str] = set()
    for n, p in enumerate(parts[:20]):
        where = _where(s, p)
        if where in claimed or theirs(s, p) or denied(s, p, first) or (n and _where(s, parts[n - 1]) == where):
            continue
        floor = parts[n - 1] + 1 if n else first
        following = next((q for q in parts[n + 1 :] if _where(s, q) != where and not _side_only(s, q, last)), None)
        level, spent = _level(s, p, floor, following if following is not None else last, first)
        pain = next(
            (m for m in pains if m != p and abs(m - p) <= WINDOW + 1),
            p if s.all[p].has("HEADACHE", "AILMENT") else None,
        )
        if pain is None and (level is None or "PART" not in s.all[p].k or spent[0] >= last):
            continue
        if claimed and _side_only(s, p, last):
            continue
        if pain is not None and (not _is_ache(s, p, pain, first, last, level) or _was(s, pain, last)):
            continue
        claimed.add(where)
        a, b = (p, p) if pain is None else (min(p, pain), max(p, pain))
        side, at = _ache_side(s, p, first, last)
        out.append(Heard(AcheAct(where, side, level, s.span(a, b)), a))
        s.use(i for i in range(a, b + 1) if not s.all[i].has("EX", "NUM", "X") or s.all[i].has("PART"))
        s.use([*spent, *at])
    if out:
        _hush(s, first, last)
    return out


def _side_only(s: Stream, q: int, last: int) -> bool:
    """'big toe sore on lunges, left foot, a 2': the limb only says which side."""
    sided = s.all[q].has("LEFT", "RIGHT") or s.is_(q - 1, "LEFT", "RIGHT")
    limb = s.all[q].is_word("whole limb")
    return sided and limb and not any(s.all[i].has("PAIN") for i in range(q + 1, min(q + 4, last)))


def _was(s: Stream, pain: int, last: int) -> bool:
    """'the shoulder that was bothering me is fine': it hurt, and is said to be well."""
    near = range(pain + 1, min(pain + 5, last))
    if any(s.all[i].is_word("well again") for i in near):
        return not any(s.all[i].has("NEG") and not s.all[i].is_word("well again") for i in near)
    past = any(i >= 0 and s.all[i].is_word("was so") for i in (pain - 1, pain - 2))
    well = [i for i in range(pain + 1, last) if s.all[i].has("BE", "FEEL")]
    return past and any(
        s.all[k].has("GOODQ") and not s.all[k - 1].has("NEG")
        for i in well
        for k in range(i + 1, min(i + 4, last))
        if all(s.all[j].has("FILLER", "WORD", "KNOWN", "ALL") for j in range(i + 1, k))
    )


def _feels(s: Stream, p: int, pain: int) -> bool:
    """'lower back is a bit tight': felt, and not held so, as a back or elbows are told to be."""
    held = any(s.all[i].is_word("held so") for i in range(max(0, p - 3), pain))
    between = range(p + 1, pain)
    felt = any(s.all[i].has("BE", "FEEL", "ABOUT", "ARTICLE") or s.all[i].is_word("a little") for i in between)
    return p < pain <= p + NEAR_WORDS and felt and not held


NEAR_WORDS: Final = 4
"""Words between a part and a word that can mean much else, at most."""
_UNEASY: Final = frozenset({"lower-back", "back", "neck", "knee", "elbow", "wrist", "shoulder"})
"""Parts of which 'tight' tells discomfort and no pump (common practice, no source)."""
_JOINTS: Final = frozenset({"knee", "elbow", "wrist", "ankle", "neck", "finger", "thumb", "hand", "achilles", "shin"})
"""Parts that have no muscle to be sore from training."""


def _sore(s: Stream, i: int) -> bool:
    return s.all[i].has("SORENESS") and "sore" in s.all[i].text.split(" ")


def _returned(s: Stream, i: int) -> bool:
    """The elbow's back: it has come back, and is no back."""
    owner = s.all[i - 1] if i else None
    return (
        s.all[i].is_word("back")
        and owner is not None
        and "PART" in owner.k
        and s.text[owner.end - 1] == "s"
        and (s.text[owner.end - 2] in APOSTROPHES)
    )


def _hush(s: Stream, first: int, last: int) -> None:
    """The clauses that tell of an ache report no set, unless they count something, or say "same again" ahead of it."""
    start = first
    told = next((j for j in range(first, last) if s.all[j].has("PART", "LIMB", "HEADACHE", "PAIN")), last)
    for i in range(first, last + 1):
        if i < last and not s.all[i].has("COMMA", "BUT", "THEN", "OPEN"):
            continue
        inside = range(start, i)
        counts = any(
            s.is_(j, "X", "LOADQ", "REPQ", "SETQ", "DUR") or (s.is_(j, "NUM") and not s.all[j].is_word("one"))
            for j in inside
        )
        ahead = i <= told and all(s.all[j].has("SAME", "FILLER", "OPENER") for j in inside)
        if not counts and not ahead:
            s.use(
                j
                for j in inside
                if s.all[j].has("SAME", "LAST", "LEFT", "RIGHT", "BOTH", "ALL") or s.all[j].is_word("one")
            )
        start = i + 1


def _where(s: Stream, p: int) -> str:
    part = s.all[p].k.get("PART")
    if isinstance(part, str):
        return part
    if s.all[p].has("HEADACHE"):
        return "head"
    return s.all[p].text.split(" ")[-1].rstrip("s")


def _is_ache(s: Stream, p: int, pain: int, first: int, last: int, level: float | None) -> bool:
    where = _where(s, p)
    sore = any(s.all[i].has("SORENESS") and i not in (pain, pain - 1) for i in range(first, last))
    if any(s.all[i].has("EX") and not s.all[i].has("PART") for i in range(min(p, pain) + 1, max(p, pain))) and pain < p:
        return False
    if level is not None:
        return True
    if _sore(s, pain):
        return where in _JOINTS
    hurting = s.all[pain]
    if hurting.is_word("vague"):
        if where in _UNEASY and hurting.is_word("tight"):
            return _feels(s, p, pain)
        if hurting.is_word("pulled"):
            return _pulled(s, p, pain)
        return hurting.is_word("off", "talking", "funny", "rolled") and where not in _MUSCLES and abs(p - pain) <= 3
    if hurting.is_word("mild"):
        muscle = where in _MUSCLES and not s.all[p].is_word("upper back")
        return not muscle and not sore and not s.all[p].is_word("arms", "legs")
    return not (sore and hurting.is_word("aching", "ache", "aches", "achy", "hurts", "hurt", "hurting"))


def _pulled(s: Stream, p: int, pain: int) -> bool:
    """'pulled a muscle in my back', 'pulled my hamstring'; but 'pulled my shoulders back' tells how it was done."""
    drawn = p + 1 < len(s) and s.all[p + 1].is_word("drawn")
    return p > pain and not drawn and all(s.all[i].is_word("before a part") for i in range(pain + 1, p))


def _ache_side(s: Stream, p: int, first: int, last: int) -> tuple[Literal["left", "right", "both"] | None, list[int]]:
    for i in sorted(range(max(first, p - 8), min(last, p + 12)), key=lambda i: abs(i - p)):
        lexeme = s.all[i]
        if lexeme.has("BOTH"):
            return "both", [i]
        short = lexeme.is_word("r", "l") and i + 1 != p
        if lexeme.has("LEFT", "RIGHT") and not short and not s.is_(i - 1, "NUM"):
            return ("left" if lexeme.has("LEFT") else "right"), [i]
    return None, []


def _level(s: Stream, p: int, floor: int, end: int, first: int) -> tuple[float | None, list[int]]:
    """A number out of ten near the part: 3/10, 3 out of 10, maybe a 2, like 3."""
    del first
    rated: tuple[float, list[int]] | None = None
    stop = end
    if end < len(s) and s.all[end].has("STOP", "NL"):
        stop = min(len(s), end + 6)
    for i in [*range(p + 1, stop), *range(floor, p)]:
        number = s.num(i)
        if number is None or number > 10 or s.all[i].has("REPQ", "SETQ", "TIMESQ") or s.all[i].plural:
            continue
        if s.is_(i - 1, "X"):
            continue
        if (
            s.num(i + 2) == 10
            and s.is_(i + 1, "SLASH", "LEVELWORD", "OF")
            and not s.is_(i + 3, "SLASH")
            and not s.is_(i - 1, "SLASH")
        ):
            if rated is not None and (i < p or not _latest(s, i)):
                break
            rated = number, [*(rated[1] if rated is not None else []), i, i + 1, i + 2]
    if rated is not None:
        return rated
    standing = _standing(s, p, end)
    if standing is not None:
        return s.num(standing), [k for k in range(p + 1, standing + 1) if s.num(k) is not None]
    for i in range(p + 1, end):
        number = s.num(i)
        if number is None or number > 10 or s.all[i].has("REPQ", "SETQ", "TIMESQ") or s.all[i].plural:
            continue
        told = (
            s.is_(i - 1, "ABOUT", "LEVELWORD")
            or (i > 1 and s.is_(i - 1, "ARTICLE") and s.all[i - 2].is_word("calls"))
            or (s.is_(i - 1, "COLON") and i - 2 == p)
            or (s.is_(i - 1, "ARTICLE") and s.is_(i - 2, "ABOUT", "FILLER", "LEVELWORD", "PAIN", "COMMA", "AT"))
        )
        if told and not s.is_(i + 1, "X", "KG", "LB") and i - p <= 12 and s.num(i + 1) is None:
            return number, [i]
    return _closing(s, p, end)


def _latest(s: Stream, i: int) -> bool:
    """'3/10 last week, now 1/10': said to be how it is now."""
    near = [s.all[k] for k in (*range(max(0, i - 3), i), *range(i + 3, min(i + 5, len(s))))]
    return any(one.is_word("at present", "its") or one.has("UPTO", "OCCUPIED") for one in near)


def _standing(s: Stream, p: int, end: int) -> int | None:
    """'knee is a 2 now', 'knee was a 5 last week, its a 2 now': where the number stands that the part is at last."""
    linked = s.all[p].text.endswith("s") and s.is_(p + 1, "ARTICLE")
    found: int | None = None
    for i in range(p + 1, end):
        lexeme = s.all[i]
        number = s.num(i)
        if number is not None:
            after = s.all[i + 1] if i + 1 < end else lexeme
            past = after.has("PASTTIME", "WEEKDAY") or after.k.get("DAY", 0) != 0
            telling = s.all[i - 1].has("ARTICLE", "TO", "AT", *_AMOUNTING) or any(
                s.all[k].is_word("at present") for k in (*range(max(p, i - 3), i), *range(i + 1, min(i + 3, end)))
            )
            counted = (
                lexeme.has("REPQ", "SETQ", "TIMESQ") or lexeme.plural or s.is_(i + 1, "X", "KG", "LB", "NUM", "AND")
            )
            if linked and telling and not past and not counted and number <= TOP_LEVEL:
                found = i
        elif lexeme.has("BE", "FEEL", "OCCUPIED") or lexeme.is_word("came to"):
            linked = True
        elif not lexeme.has(
            "FILLER", "AT", "ABOUT", "TO", "THAT", "COMMA", "PASTTIME", "DAY", "SELF", "PAIN", *_AMOUNTING
        ):
            break
    return found


_AMOUNTING: Final = ("ARTICLE", "UPTO", "COMPARED", "OCCUPIED", "GOODQ", "BADQ")


def _closing(s: Stream, p: int, end: int) -> tuple[float | None, list[int]]:
    """'knee a bit sore, 4': a lone number that closes the sentence, with no other count in the message."""
    i = end - 1
    while i > p and s.all[i].has("ABOUT"):
        i -= 1
    number = s.num(i)
    if number is None or number > TOP_LEVEL or number != int(number) or s.all[i].plural or not s.is_(i - 1, "COMMA"):
        return None, []
    counted = any(k != i and s.all[k].has("NUM", "LOADQ", "X", "SAME", "DUR") for k in range(len(s)))
    return (None, []) if counted or i <= p else (number, [i])
