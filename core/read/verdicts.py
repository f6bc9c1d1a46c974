"""The lifter's verdict on form, and how far the repetitions went."""

from typing import Final

from core.model.quantities import Range
from core.read.remark import MOST_LAST, Found, Remark
from core.read.stream import Stream

_VERDICTS: Final = {"GOODQ": "clean", "FAIRQ": "fair", "BADQ": "loose"}


def form(s: Stream, i: int) -> Found:
    if s.is_(i, "FORMNOUN"):
        j = s.skip(i + 1, "BE", "FILLER", "FEEL", "COLON", "ABOUT", "ON", "ALL", "LAST", "DASH", "ARTICLE")
        last_only = any(s.all[k].has("LAST") for k in range(i, j))
        for kind, verdict in _VERDICTS.items():
            if s.is_(j, kind):
                return Remark("form", _negated(s, j, verdict), i, j, wide=not last_only, last_only=last_only)
        if s.is_(j, "FORM"):
            verdict = _negated(s, j, str(s.all[j].k["FORM"]))
            return Remark("form", verdict, i, j, wide=not last_only, last_only=last_only)
        return None
    if s.is_(i, "FORM"):
        end = i + 1 if s.is_(i + 1, "FORMNOUN") else i
        last = s.skip(end + 1, "ARTICLE", "ON")
        if s.is_(last, "LAST"):
            last += (s.num(last + 1) or MOST_LAST + 1) <= MOST_LAST and not s.is_(
                last + 2, "X", "FOR", "AT", "REPS", "NUM"
            )
            return Remark("form", _negated(s, i, str(s.all[i].k["FORM"])), i, last, last_only=True)
        return Remark("form", _negated(s, i, str(s.all[i].k["FORM"])), i, end)
    for kind, verdict in _VERDICTS.items():
        if s.is_(i, kind) and s.is_(i + 1, "FORMNOUN"):
            return Remark("form", _negated(s, i, verdict), i, i + 1)
    return None


def _negated(s: Stream, i: int, verdict: str) -> str:
    if s.is_(i - 1, "NEG") or (s.is_(i - 2, "NEG") and s.is_(i - 1, "FILLER", "ARTICLE", "BE")):
        return {"clean": "loose", "loose": "clean", "fair": "loose"}[verdict]
    return verdict


def extent(s: Stream, i: int) -> Found:
    """Range of motion: a grade, a length, or both."""
    if s.is_(i, "HALF"):
        return Remark("range", Range("partial"), i, i) if s.is_(i + 1, "EX") else None
    if s.is_(i, "LEN"):
        centimetres = s.all[i].num("LEN")
        j = s.skip(i + 1, "ARTICLE", "FILLER", "OF")
        if s.is_(i - 1, "HUNG", "MORE") and s.all[i - 1].is_word("extra"):
            return Remark("range", Range("extra", centimetres), i - 1, j if s.is_(j, "RANGE") else i)
        if s.is_(j, "RANGE") and s.all[j].k["RANGE"] == "extra":
            return Remark("range", Range("extra", centimetres), i, j)
        if s.is_(j, "DEFICIT"):
            return Remark("range", Range("extra", centimetres), i, j)
        if any(s.is_(k, "DEFICIT") for k in range(max(0, i - 4), i)):
            return Remark("range", Range("extra", centimetres), i, i)
        if s.is_(j, "EX") or s.is_(j, "HEIGHT"):
            return Remark("range", Range(None, centimetres), i, j if s.is_(j, "HEIGHT") else i)
        return Remark("range", Range(None, centimetres), i, i)
    if s.is_(i, "DEFICIT"):
        j = s.skip(i + 1, "OF", "COLON", "ARTICLE")
        return Remark("range", Range("extra", s.all[j].num("LEN")), i, j) if s.is_(j, "LEN") else None
    grade = str(s.all[i].k["RANGE"])
    j = s.skip(i + 1, "FILLER", "X")
    if grade == "extra" and s.is_(j, "LEN"):
        return Remark("range", Range("extra", s.all[j].num("LEN")), i, j)
    return Remark("range", Range(grade), i, i)  # type: ignore[arg-type]
