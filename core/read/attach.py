"""Remarks onto the sets they belong to, by the contract's rules of place.

Right behind a set or a list at one load: that set or list. Set apart, or with 'all': every set of the stretch,
warm-ups aside. 'Last set': the last alone. Between sets: the one before.
"""

from dataclasses import replace
from typing import Final, Literal

from core.evidence.exercises import Exercise
from core.model.acts import SetAct
from core.model.quantities import Range
from core.read.groups import Parsed, Placed
from core.read.loads import is_barbell
from core.read.remark import Remark
from core.read.settle import effort_behind

Sets = list[list[SetAct]]

_WHOLE: Final = ("tempo", "range")
"""Remarks on how every repetition was done; behind the last of several groups they still mean all of them."""


def attach(parsed: Parsed, sets: Sets, row: Exercise) -> list[SetAct]:
    """The stretch's sets with everything said about them."""
    _warmups(parsed, sets)
    for n, group in enumerate(parsed.groups):
        reserve = effort_behind(group)
        if reserve is not None and n < len(sets):
            _put(sets, [n], Remark("rir", reserve, 0, 0))
    for placed in parsed.placed:
        if placed.remark.what in ("warmup", "restpause", "nothing"):
            continue
        if placed.remark.each:
            _one_to_each(placed, sets)
        elif placed.remark.what == "failed":
            _failed(placed, sets)
        elif placed.remark.what == "partials":
            _partials(placed, sets)
        else:
            _remark(placed, sets)
    _sides(parsed, sets, row)
    _drops(parsed, sets)
    if row.id.startswith("deficit-"):
        _deepened(sets)
    return [replace(act, failed=True, rir=0.0) if act.reps == 0 else act for group in sets for act in group]


def _home(sets: Sets, after: int) -> int:
    """The group a remark stands behind; the first for one before all."""
    return min(max(after, 0), len(sets) - 1)


def _remark(placed: Placed, sets: Sets) -> None:
    if not sets:
        return
    remark, home = placed.remark, _home(sets, placed.after)
    flat = [(g, i) for g, group in enumerate(sets) for i in range(len(group))]
    pointed = [flat[nth - 1 if nth > 0 else nth] for nth in remark.nths if -len(flat) <= nth <= len(flat)]
    for g, i in pointed:
        sets[g][i] = _with(sets[g][i], remark, only_empty=False)
    if pointed:
        return
    if placed.near_last or remark.last_only:
        _put_last(sets, home if placed.after >= 0 else len(sets) - 1, remark)
        return
    if placed.after < 0:
        _put(sets, range(len(sets)), remark)
        return
    later = placed.after < len(sets) - 1
    if remark.what == "rest_s" and later and not remark.wide:
        _put(sets, [home], remark, only_empty=False)
        return
    wide = remark.wide or placed.near_all or placed.apart or (remark.what in _WHOLE and not later)
    if wide and not (later and not placed.near_all and not remark.wide):
        _put(sets, range(len(sets)), remark, only_empty=not (placed.near_all or remark.wide))
    else:
        _put(sets, [home], remark, only_empty=False)


def _put(sets: Sets, homes: range | list[int], remark: Remark, *, only_empty: bool = True) -> None:
    working = any(not act.warmup for home in homes for act in sets[home])
    for home in homes:
        for i, act in enumerate(sets[home]):
            if act.warmup and working and remark.what != "day":
                continue
            sets[home][i] = _with(act, remark, only_empty=only_empty)


def _put_last(sets: Sets, home: int, remark: Remark) -> None:
    if sets[home]:
        sets[home][-1] = _with(sets[home][-1], remark, only_empty=False)


def _with(act: SetAct, remark: Remark, *, only_empty: bool) -> SetAct:
    what, value = remark.what, remark.value
    if what == "rest_s" and act.drop:
        return act
    if what == "tempo" and isinstance(value, tuple):
        old = act.tempo or (None, None, None, None)
        merged = tuple(new if new is not None else was for new, was in zip(value, old, strict=True))
        return replace(act, tempo=merged)  # type: ignore[arg-type]
    if what == "range" and isinstance(value, Range) and act.range is not None:
        return replace(act, range=Range(value.grade or act.range.grade, value.cm or act.range.cm))
    if only_empty and getattr(act, what) is not None:
        return act
    return replace(act, **{what: value})  # type: ignore[arg-type]


def _one_to_each(placed: Placed, sets: Sets) -> None:
    each = placed.remark.each
    flat = [(g, i) for g, group in enumerate(sets) for i, act in enumerate(group) if not act.warmup and not act.drop]
    if placed.after >= 0 and len(each) != len(flat):
        home = _home(sets, placed.after)
        own = [(g, i) for g, i in flat if g == home]
        flat = own if len(each) == len(own) else flat[-len(each) :]
    for (g, i), value in zip(flat, each, strict=False):
        sets[g][i] = replace(sets[g][i], rir=value)


def _failed(placed: Placed, sets: Sets) -> None:
    if not sets:
        return
    home = len(sets) - 1 if placed.remark.last_only or placed.after < 0 else _home(sets, placed.after)
    if not sets[home]:
        return
    act = sets[home][-1]
    missed = placed.remark.value
    reps = act.reps
    if (
        isinstance(missed, float)
        and act.reps is not None
        and missed - 1 < act.reps
        and (len(sets[home]) == 1 or placed.remark.last_only or placed.near_last)
    ):
        reps = int(missed) - 1
    if missed is None and reps == 1 and placed.after == home and not placed.apart:
        reps = 0
    sets[home][-1] = replace(act, failed=True, rir=0.0, reps=reps)


def _partials(placed: Placed, sets: Sets) -> None:
    home = _home(sets, placed.after)
    if sets and sets[home] and isinstance(placed.remark.value, int):
        if placed.near_all:
            sets[home] = [replace(act, partials=placed.remark.value) for act in sets[home]]
        else:
            sets[home][-1] = replace(sets[home][-1], partials=placed.remark.value)


def _warmups(parsed: Parsed, sets: Sets) -> None:
    """A warm-up said behind sets means the last of them, in the plural all before it; said before, all up to 'then'."""
    said = [placed for placed in parsed.placed if placed.remark.what == "warmup"]
    leads = bool(said) and said[0].after < 0
    for placed in said:
        if placed.then and placed.after < 0:
            continue
        word = str(placed.remark.value)
        plural = placed.near_all or placed.then or word.endswith(("s", "sets")) or word.startswith(("as ", "for "))
        listed = (
            plural
            or any(group.working for group in parsed.groups)
            or ("up" not in str(placed.remark.value).split()[-1:] and str(placed.remark.value) not in _SINGLE)
        )
        if placed.after < 0 or (placed.line and placed.after < len(sets) - 1):
            later = parsed.groups[placed.after + 2 :]
            run = listed or placed.heads or any(group.parted or (group.sets or 1) > 1 for group in later)
            homes = _until_work(parsed, placed.after + 1) if run else [placed.after + 1]
        elif plural:
            homes = list(range(placed.after + 1))
        elif leads and len(said) > 1 and placed.after < len(sets) - 1:
            homes = [placed.after + 1]
        elif placed.apart and placed.after < len(sets) - 1 and not placed.line:
            homes = _until_work(parsed, placed.after + 1)
        elif leads and placed.after < len(sets) - 1:
            homes = [placed.after + 1]
        else:
            homes = [placed.after]
        for home in homes:
            if home < len(sets):
                sets[home] = [replace(act, warmup=True) for act in sets[home]]


_SINGLE: Final = frozenset(
    {
        "wu",
        "w u",
        "w / u",
        "warmup",
        "warm up",
        "warm-up",
        "warm",
        "w / up",
        "w up",
        "warmup set",
        "warm up set",
        "feeler",
    }
)
"""Said in the singular, before a set, without a colon: that set alone."""


def _until_work(parsed: Parsed, first: int) -> list[int]:
    homes: list[int] = []
    for n in range(first, len(parsed.groups)):
        group = parsed.groups[n]
        if n > first and (group.parted or group.working or (group.sets or 1) > 1):
            break
        homes.append(n)
    return homes


def _sides(parsed: Parsed, sets: Sets, row: Exercise) -> None:
    for word, after in parsed.sides:
        if (
            word == "EACH"
            and not parsed.unilateral
            and row.default_side is None
            and row.pattern not in ("lunge", "carry")
        ):
            continue
        if word == "PERSIDE" and is_barbell(row.id):
            continue
        if word == "OTHERSIDE":
            _turned(sets, after)
            continue
        side = {"LEFT": "left", "RIGHT": "right"}.get(word, "each")
        lone = side != "each" and after >= 0
        if lone and any(rep.side for group in parsed.groups for rep in group.reps):
            continue
        if lone and any((both, after) in parsed.sides for both in _BOTH):
            continue  # both sides were done: "12 each side, wobbly on the left"
        for home in [_home(sets, after)] if lone and sets else range(len(sets)):
            for i, act in enumerate(sets[home]):
                if lone or act.side is None or act.side == "each":
                    sets[home][i] = replace(act, side=side)  # type: ignore[arg-type]


_BOTH: Final = ("EACH", "PERLIMB", "PERSIDE")
"""Words for one side after the other."""


def _turned(sets: Sets, after: int) -> None:
    """The other side: of the set before, or of the last one kept, which its copy still has."""
    home = min(max(after, 0), len(sets) - 1)
    if not sets or not sets[home]:
        return
    before = sets[home - 1][-1].side if home and sets[home - 1] else sets[home][0].side
    side = _OPPOSITE.get(before or "")
    if side is not None:
        sets[home] = [replace(act, side=side) for act in sets[home]]


_OPPOSITE: Final[dict[str, Literal["left", "right"]]] = {"left": "right", "right": "left"}


def _drops(parsed: Parsed, sets: Sets) -> None:
    """In a drop set every part but the first; and no part that follows has a rest."""
    first = 0 if parsed.dropset else parsed.drops_from - 1
    if first < len(sets) and sum(len(group) for group in sets) > 1:
        flat = [(g, i) for g, group in enumerate(sets) for i in range(len(group)) if g >= first]
        previous: float | None = None
        for g, i in flat:
            act = sets[g][i]
            kg = act.load.kg if act.load is not None else None
            lighter = previous is not None and kg is not None and kg < previous
            if lighter:
                sets[g][i] = replace(act, drop=True, rest_s=None)
            elif g > first and not parsed.dropset:
                break
            previous = kg
    for group in sets:
        for i, act in enumerate(group):
            if act.drop and act.rest_s is not None:
                group[i] = replace(act, rest_s=None)


def _deepened(sets: Sets) -> None:
    """A length said with a deficit is how much deeper it goes."""
    for group in sets:
        for i, act in enumerate(group):
            if act.range is not None and act.range.grade is None and act.range.cm:
                group[i] = replace(act, range=Range("extra", act.range.cm))
