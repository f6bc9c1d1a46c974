"""A heading of a superset ("Superset 1 (rest 75 s)"): what follows is of that pair. Knows no exercise."""

import re
from dataclasses import replace
from typing import Final

from core.notation.clauses import NO_WORDS, is_clauses_only
from core.notation.lifts import Lift
from core.notation.page import Page

_HEAD: Final = re.compile(
    r"(?:super\s?set|pair|tri-?set)s?\s*#?(?P<of>[A-H]|\d)\b\s*[:,(–—-]*\s*(?P<rest>[^()]*?)\)?\s*:?$", re.IGNORECASE
)


def headed(page: Page, _number: int, line: str, _find: object) -> Page | None:
    """The page with a pair open; None: no such heading."""
    found = _HEAD.match(line.strip("-•*# "))
    if found is None or page.day() is None:
        return None
    said = is_clauses_only(found["rest"]) if found["rest"] else NO_WORDS
    return replace(page, group=(found["of"].upper(), said)) if said is not None else None


def of_group(page: Page, lift: Lift) -> Lift:
    """The exercise as one of the pair that is open; its own words go first, and its own mark ends the pair's."""
    if page.group is None or (lift.label and lift.label != page.group[0]):
        return lift
    label, said = page.group
    return replace(lift, label=label, said=lift.said.filled(said))
