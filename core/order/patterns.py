"""The table of orders as patterns: what may stand in each slot. Knows no maker of orders."""

import re
from collections.abc import Mapping
from functools import cache
from typing import Final

from core.order.words import PATTERNS, WAY_WORDS

_SLOTS: Final[Mapping[str, str]] = {
    "who": r"(?P<who>[^\s,:]+(?:\s+[^\s,:]+?)??)",
    "other": r"(?P<other>[^\s,:]+(?:\s+[^\s,:]+?)??)",
    "whose": r"(?P<whose>.+?)",
    "names": r"(?P<names>.+)",
    "noted": r"(?P<noted>.+)",
    "text": r"(?P<text>.+)",
    "rest": r"(?P<rest>.+)",
    "ex": r"(?P<ex>[^\d,:]+?)",
    "new": r"(?P<new>[^\d,:]+?)",
    "until": r"(?P<until>.+?)",
    "loads": r"(?P<loads>(?:\d+\s*x\s*)?[\d.,]+\s*(?:kg|kgs|kilos?|lbs?|pounds?)?\s*(?:for|x)\s*\d+(?:\s*(?:-|to)\s*\d+)?(?:\s*x\s*\d+)?)",  # noqa: E501
    "span": r"(?P<low>\d{1,2})(?:\s*(?:-|–|to)\s*(?P<high>\d{1,2}))?",
    "muscle": r"(?:the\s+)?(?P<muscle>[a-z]+(?:[\s-][a-z]+)?)",
    "block": r"(?P<block>(?:every|each)\s+\w+\s+weeks?\s+(?:is\s+)?(?:an?\s+)?(?:easier|easy|lighter|light|deload)"
    r"|(?:an?\s+)?(?:easier|easy|lighter|light|deload)\s+(?:week\s+)?(?:every|each)\s+\w+(?:\s+weeks?)?)",
    "ways": rf"(?P<ways>{WAY_WORDS}(?:\s*(?:,|then|before|first|and|>)\s*{WAY_WORDS})*(?:\s+(?:first|only))?)",
}


@cache
def compiled() -> tuple[tuple[str, "re.Pattern[str]"], ...]:
    """Every row with its pattern, its slots filled in."""
    made = []
    for name, pattern in PATTERNS:
        full = re.sub(r"<(\w+)>", lambda slot: _SLOTS[slot.group(1)], pattern)
        made.append(
            (
                name,
                re.compile(
                    rf"\s*(?:please\s+)?(?:{full})(?:\s+(?:please|pls|plz|thanks|thx))?\s*[.!?]*\s*",
                    re.IGNORECASE | re.DOTALL,
                ),
            )
        )
    return tuple(made)
