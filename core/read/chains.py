"""The roles of quantities linked by x or 'for': which is the load, which the sets, which the repetitions."""

from core.read.atoms import Atom, LoadSaid
from core.read.groups import Group, Rep

MOST_LIKELY_SETS = 10.0
"""Above this, a number in a chain counts repetitions and no sets (common practice, no source)."""


def roles(group: Group, parts: list[Atom], links: list[str], *, listed: bool) -> None:
    """Fill the group from linked parts. ``listed``: all behind the first are counts."""
    if listed:
        first = parts[0]
        group.load = first.load if first.kind == "L" else LoadSaid("plain", first.value, plural=first.plural)
        for part in parts[1:]:
            _count(group, part)
        return
    kinds = "".join(part.kind for part in parts)
    if len(parts) == 1:
        _count(group, parts[0])
        return
    loads = [part for part in parts if part.kind == "L"]
    counts = [part for part in parts if part.kind in ("R", "H", "D")]
    sets = [part for part in parts if part.kind == "S"]
    bare = [part for part in parts if part.kind == "N"]
    if loads:
        group.load = loads[0].load
    if sets:
        group.sets = sets[0].value
    if counts:
        _count(group, counts[0])
        group.explicit = True
    if not bare:
        if not group.reps and len(counts) == 0 and sets and loads:
            return
        return
    _place_bare(group, bare, kinds, links)


def _count(group: Group, part: Atom) -> None:
    if part.kind == "L":
        group.load = part.load
    elif part.kind == "S":
        group.sets = part.value
    else:
        group.reps.append(Rep(part.value, "R" if part.kind == "N" else part.kind, plural=part.plural))


def _rep(group: Group, part: Atom) -> None:
    group.reps.append(Rep(part.value, plural=part.plural))


def _place_bare(group: Group, bare: list[Atom], kinds: str, links: list[str]) -> None:
    with_load = group.load is not None
    if len(bare) == 1:
        one = bare[0]
        held = bool(group.reps) and group.reps[0].kind == "H" and links[0] == "FOR" and not with_load
        if held and one.value <= 10:
            group.sets = one.value
        elif not group.reps:
            _single_bare(group, one, kinds)
        elif group.sets is None and (with_load or one.value <= 10) and not one.plural and links[0] == "X":
            if with_load:
                group.sets = one.value
            else:
                group.lead, group.lead_plural = one.value, one.plural
        elif not with_load:
            group.load = LoadSaid("plain", one.value, plural=one.plural)
        return
    if len(bare) == 2:
        _two_bare(group, bare, kinds, links)
        return
    if len(bare) > 3:
        counts = bare if with_load else bare[1:]
        group.load = group.load or LoadSaid("plain", bare[0].value, plural=bare[0].plural)
        for part in counts:
            _rep(group, part)
        return
    _three_bare(group, bare, links)


def _single_bare(group: Group, one: Atom, kinds: str) -> None:
    if group.sets is not None and group.load is None and kinds in ("NS", "SN"):
        _rep(group, one)
        return
    _rep(group, one)


def _two_bare(group: Group, bare: list[Atom], kinds: str, links: list[str]) -> None:
    first, second = bare
    if group.load is not None:
        if kinds == "LNN":
            _load_then_two(group, first, second)
        else:
            backwards = first.value > MOST_LIKELY_SETS >= second.value
            group.sets = second.value if backwards else first.value
            _rep(group, first if backwards else second)
        return
    if group.reps:
        group.load, group.sets = LoadSaid("plain", first.value, plural=first.plural), second.value
        return
    if group.sets is not None:
        group.load = LoadSaid("plain", first.value, plural=first.plural)
        _rep(group, second)
        return
    if links[0] == "FOR" or first.plural:
        group.load = LoadSaid("plain", first.value, plural=first.plural)
        group.open_after = links[0] == "FOR"
    else:
        group.lead = first.value
    _rep(group, second)


def _load_then_two(group: Group, first: Atom, second: Atom) -> None:
    """60kg x 8 x 3 is three sets of eight; 60kg x 3 x 8 can only be three sets of eight too."""
    if first.value <= 5 and second.value >= 6:
        group.sets = first.value
        _rep(group, second)
    else:
        group.sets = second.value
        _rep(group, first)


def _three_bare(group: Group, bare: list[Atom], links: list[str]) -> None:
    a, b, c = bare
    if links[0] == "FOR":
        group.load = LoadSaid("plain", a.value, plural=a.plural)
        group.sets = b.value
        _rep(group, c)
        return
    if links[-1] == "FOR" or (c.value >= a.value and c.value > 12) or (a.value <= 6 and c.value > b.value):
        group.load, group.sets = LoadSaid("plain", c.value, plural=c.plural), a.value
        _rep(group, b)
        if links[-1] == "FOR" and c.value <= a.value:
            group.load = LoadSaid("plain", a.value)
            group.sets = c.value
        return
    group.load, group.sets = LoadSaid("plain", a.value, plural=a.plural), c.value
    _rep(group, b)
