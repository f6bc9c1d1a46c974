"""Signs told by a part of the body and a mark near it, or by one phrase.

Knows effort, pumps and figures of speech that are no sign; knows nothing of denial or other people.
"""

from collections.abc import Callable
from typing import Final, cast

from core.model.acts import Sign
from core.read.stream import Stream
from core.read.telling import WINDOW, Told

FAST_PULSE: Final = 115.0
"""Beats a minute that are fast for someone who rests (common practice, no source; not a diagnosis)."""


_WEAK_NERVE: Final = frozenset({
    "weak", "weakness", "gone weak", "went weak", "gave out", "gives out", "giving way", "gave way",
    "gives way", "went dead", "gone dead", "asleep", "fell asleep", "went limp", "limp", "went to sleep",
    "gone to sleep", "feels dead", "felt dead", "shot down", "goes down", "running down", "no power",
    "lost power", "no strength",
})  # fmt: skip


_YIELDS: Final = frozenset({
    "asleep", "fell asleep", "went to sleep", "gone to sleep", "gave out", "gives out", "giving way",
    "gave way", "gives way", "went limp", "shot down", "goes down", "running down",
})  # fmt: skip
"""What a limb does, said behind its name."""


_TIRED: Final = frozenset({
    "leg", "legs", "arms", "quad", "quads", "glute", "glutes", "calf", "calves", "abs", "pec", "pecs", "lat", "lats",
    "bicep", "biceps", "tricep", "triceps", "delts", "shoulders", "hamstring", "hamstrings", "forearms", "thighs",
})  # fmt: skip
"""Parts that people jokingly cannot feel after a hard set."""


_NOISES: Final = frozenset({
    "popping", "crack", "cracked", "crunch", "pop", "ping", "pinged", "snapping", "lump", "locked", "bone",
    "smashed", "crushed", "ripped", "came out", "useless", "snap",
})  # fmt: skip


_PAIRS: Final[tuple[tuple[Sign, tuple[str, ...], str], ...]] = (
    ("chest", ("CHESTPART",), "CHESTSIGN"),
    ("heart", ("HEARTPART",), "HEARTSIGN"),
    ("breath", ("BREATHPART",), "WONTSETTLE"),
    ("head", ("HEADACHE",), "SUDDEN"),
    ("nerve", ("LIMB", "PART"), "NERVESIGN"),
    ("injury", ("LIMB", "PART"), "INJURYSIGN"),
    ("swelling", ("LIMB", "PART"), "SWELL"),
    ("head", ("HEADPART",), "HIT"),
    ("head", ("FACE",), "DROOP"),
    ("injury", ("CRUSHER",), "PART"),
    ("head", ("CRUSHER",), "HEADPART"),
)
"""A part and a sign near each other, and the alarm that they make."""


def signs(s: Stream, first: int, last: int) -> list[Told]:
    """Every sign that the lexemes ``first`` up to but without ``last`` tell by a phrase or by a pair."""
    out: list[Told] = []
    spots: dict[str, list[int]] = {}
    for i in range(first, last):
        for kind in s.all[i].k:
            spots.setdefault(kind, []).append(i)
        if "ALARM" in s.all[i].k:
            out.append(Told(cast("Sign", s.all[i].k["ALARM"]), i, i))
    out.extend(_paired(s, spots))
    out.extend(_joined_pains(s, spots))
    numb = [
        *(i for i in spots.get("NERVESIGN", []) if not s.all[i].is_word("shooting")),
        *(i for i in spots.get("ALARM", []) if s.all[i].k["ALARM"] == "nerve" and not s.all[i].is_word("shooting")),
    ]
    saddle = _near(s, "bladder", spots.get("SADDLE", []), numb)
    if saddle is not None:
        out.append(Told("bladder", *saddle))
    if any(one.sign == "injury" for one in out):
        out = [one for one in out if one.sign != "nerve" or not s.all[one.last].is_word("gives")]
    if any(one.sign == "bladder" for one in out):
        out = [one for one in out if one[0] != "nerve"]
    if any(one.sign == "head" for one in out):
        out = [one for one in out if one[0] != "faint" or not s.all[one[1]].is_word("stars")]
        out = [one for one in out if one[0] not in ("injury", "swelling")]
    bpm = _fast_pulse(s, spots)
    if bpm is not None:
        out.append(Told("heart", bpm, bpm))
    return out


def _paired(s: Stream, spots: dict[str, list[int]]) -> list[Told]:
    out: list[Told] = []
    for sign, parts, mark in _PAIRS:
        marks = spots.get(mark, [])
        if sign == "chest":
            marks = sorted({*marks, *(i for i in spots.get("PAIN", []) if not s.all[i].is_word("mild"))})
        if not marks:
            continue
        for part in parts:
            found = _near(s, sign, spots.get(part, []), marks)
            if found is not None:
                loose = sign == "injury" and any(s.all[i].is_word("loose injury") for i in found)
                out.append(Told(f"{sign}?" if loose else sign, *found))
    return out


def _joined_pains(s: Stream, spots: dict[str, list[int]]) -> list[Told]:
    """Signs told by more than two words: an arm with the jaw; not being able to pass water."""
    out: list[Told] = []
    jaws = [i for i in spots.get("PART", []) if s.all[i].k["PART"] == "jaw"]
    arms = [i for i in spots.get("LIMB", []) if "arm" in s.all[i].text]
    if jaws and arms and (spots.get("PAIN") or spots.get("CHESTSIGN") or spots.get("NERVESIGN")):
        out.append(Told("chest", min(jaws[0], arms[0]), max(jaws[0], arms[0])))
    unable = [i for i in spots.get("NEG", []) if s.all[i].is_word("unable")] + spots.get("UNABLE", [])
    found = _near(
        s, "bladder", unable, [i for i in spots.get("URINE", []) if not s.all[i].is_word("bowl", "toilet bowl")]
    )
    if found is not None and not spots.get("DARK"):
        out.append(Told("bladder", *found))
    breath = _near(
        s, "injury", unable, [i for i in spots.get("BREATHPART", []) if not s.all[i].is_word("lungs", "air")]
    )
    if breath is not None:
        out.append(Told("breath", *breath))
    some = [
        i for i in spots.get("SOMETHING", []) if any("INJURYSIGN" in s.all[k].k for k in range(i, min(i + 9, len(s))))
    ]
    if (some and spots.get("PART", []) + spots.get("LIMB", []) + spots.get("SETS", [])) or (
        some and _body_hint(s, some[0])
    ):
        sign = next(k for k in range(some[0], min(some[0] + 9, len(s))) if "INJURYSIGN" in s.all[k].k)
        out.append(Told("injury", some[0], sign))
    return out


def _body_hint(s: Stream, i: int) -> bool:
    """Whether a something that ripped is in the body: a muscle, the armpit, inside."""
    return any(
        s.all[k].is_word("muscle", "armpit", "inside", "joint", "tendon", "arm") for k in range(i, min(i + 10, len(s)))
    )


def _fast_pulse(s: Stream, spots: dict[str, list[int]]) -> int | None:
    """A pulse in figures that is fast, while resting."""
    if "WONTSETTLE" not in spots or "HEARTPART" not in spots:
        return None
    return next((i for i in spots.get("NUM", []) if FAST_PULSE <= s.all[i].value <= 250), None)


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
    between = range(min(p, m) + 1, max(p, m))
    if any(s.all[i].has("EX") and not s.all[i].has("PART") for i in between) and sign != "breath":
        return False
    sentence = _around(s, p)
    rule = _RULES.get(sign)
    return rule is None or rule(s, p, m, sentence)


def _heart_fits(s: Stream, p: int, m: int, sentence: range) -> bool:
    del p
    settles = any(s.all[i].has("WONTSETTLE") for i in sentence)
    effort = any(s.all[i].has("EX", "CARDIO") or s.all[i].is_word("efforts") for i in sentence)
    return s.all[m].is_word("strong heart") or settles or not effort


def _breath_fits(s: Stream, p: int, m: int, sentence: range) -> bool:
    """A limb that is puffed up is no breath."""
    del m, sentence
    if not s.all[p].text.startswith("puff") or not any(s.all[i].has("PART", "LIMB") for i in range(max(0, p - 4), p)):
        return True
    return not any(s.all[i].text.split(" ")[-1] in ("up", "out") for i in range(p + 1, min(p + 3, len(s))))


def _nerve_fits(s: Stream, p: int, m: int, sentence: range) -> bool:
    word, part = s.all[m].text, s.all[p].text
    if word in ("cant feel my", "cant feel"):
        tired = part in _TIRED or s.all[p].k.get("PART") in _TIRED
        return not tired or not any(s.all[i].is_word("haha", "lol", "leg", "leg day", "jelly") for i in sentence)
    if s.all[m].is_word("asleep") and any(s.all[i].is_word("laid") for i in sentence):
        return False
    single = not part.endswith("s") or part == "pins"
    return (word not in _WEAK_NERVE or single) and (word not in _YIELDS or p < m)


def _injury_fits(s: Stream, p: int, m: int, sentence: range) -> bool:
    word, part = s.all[m].text, s.all[p].text
    if s.all[p].has("CRUSHER"):
        return True
    if word == "came off" and _off_the_ground(s, m):
        return False
    if word.startswith("cant") and (
        any(s.all[i].has("SORENESS") for i in sentence) or part.split(" ")[-1] in ("toe", "toes", "foot", "feet")
    ):
        return False
    if word in _NOISES:
        if part.endswith("s") and part not in ("biceps", "triceps"):
            return False
        if any(s.all[i].is_word("always", "usual", "as usual", "normal", "never hurts") for i in sentence):
            return False
    return not (word in ("cracked", "crack") and s.all[p].k.get("PART") in ("back", "neck"))


def _off_the_ground(s: Stream, m: int) -> bool:
    """A heel that came off the floor, hips that came off the bench: a lapse of form."""
    ground = s.skip(m + 1, "ARTICLE")
    return ground < len(s) and s.all[ground].is_word("ground")


def _chest_fits(s: Stream, p: int, m: int, sentence: range) -> bool:
    if m < p and s.all[m].is_word("squeezing", "squeezed", "crushing", "crushed", "squeeze"):
        return False
    between = range(min(p, m) + 1, max(p, m))
    return not any(s.all[i].is_word("pump", "pumped", "doms", "day", "to") for i in sentence) and not (
        any(s.all[i].has("RANGE", "BOTTOM", "TOP") for i in between)
    )


def _swelling_fits(s: Stream, p: int, m: int, sentence: range) -> bool:
    made = (m < p or s.all[p].text.endswith("s")) and s.all[m].is_word("blew up", "blown up", "swells", "swelled")
    marked = s.all[m].is_word("sized") and any(s.all[i].is_word("on the skin") for i in sentence)
    return not made and not marked and not _pumped(s, p, sentence)


def _pumped(s: Stream, p: int, sentence: range) -> bool:
    """Muscles, both of them, that are full of blood from the work just done."""
    if any(s.all[i].is_word("pump", "pumped", "pumping") for i in sentence):
        return True
    if s.all[p].text not in _TIRED or not s.all[p].text.endswith("s"):
        return False
    worked = any(i != p and s.all[i].has("EX", "ROUNDHEAD", "SETS", "REPS", "DROP", "FAIL") for i in sentence)
    return worked and not any(s.all[i].has("WONTSETTLE", "DAY", "WEEKDAY", "LONG", "PAIN") for i in sentence)


def _head_fits(s: Stream, p: int, m: int, sentence: range) -> bool:
    del sentence
    return not (s.all[p].has("HEADPART") and s.all[m].has("HIT")) or m < p


_RULES: Final[dict[Sign, Callable[[Stream, int, int, range], bool]]] = {
    "heart": _heart_fits,
    "breath": _breath_fits,
    "nerve": _nerve_fits,
    "injury": _injury_fits,
    "chest": _chest_fits,
    "swelling": _swelling_fits,
    "head": _head_fits,
}
"""Of each sign, whether a part with a mark is one."""


def _around(s: Stream, i: int) -> range:
    first, last = i, i
    while first > 0 and not s.all[first - 1].has("STOP", "NL"):
        first -= 1
    while last + 1 < len(s) and not s.all[last + 1].has("STOP", "NL"):
        last += 1
    return range(max(first, i - 30), min(last, i + 30) + 1)
