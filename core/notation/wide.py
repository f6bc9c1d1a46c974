"""Lines about the whole plan, onto the page: from when, how many weeks, which of them is easier. Knows no exercise."""

import re
from dataclasses import replace
from typing import Final

from core.notation import blocks, days
from core.notation.hidden import Trouble
from core.notation.page import Page

_PARTS: Final = re.compile(r"(?<=[A-Za-z0-9):])\.\s+(?=[A-Z0-9])|\s*;\s+")
_AS_WRITTEN: Final = re.compile(
    r"\s*[:,-]?\s*(?:as\s+(?:below|follows|written)|below|normal|the\s+same|build(?:ing)?(?:\s+up)?)\s*$", re.IGNORECASE
)
_LAST: Final = re.compile(
    r"(?P<n>\d{1,2})[\s-]*weeks?\b(?P<more>.*?)[.,;(]\s*(?P<last>(?:the\s+)?last\s+(?:week|one)\b[^,;.]*)(?P<rest>.*)$",
    re.IGNORECASE,
)


def whole_plan(page: Page, number: int, line: str, _find: object) -> Page | None:
    """The page with what the line says of the whole plan; None: it says something else."""
    parts = [part.strip() for part in _PARTS.split(line)]
    in_commas = [part.strip() for part in line.split(",")]
    return (
        _together(page, number, line, parts)
        or _said(page, number, line)
        or _together(page, number, line, in_commas if len(in_commas) > 1 else [])
    )


def _together(page: Page, number: int, line: str, parts: list[str]) -> Page | None:
    """A line whose parts are each about the whole plan."""
    if days.opened(line) is not None:
        return None
    if last := _LAST.search(line):  # "4-week block from 9 March. Last week is a deload": the number is in another part
        parts = [
            f"{last['n']} weeks, {last['last'].rstrip(')')}",
            *filter(None, (_dated(last["more"]), _dated(last["rest"]))),
        ]
    elif len(parts) < 2:
        return None
    for part in parts:
        after = _said(page, number, _AS_WRITTEN.sub("", part))
        if after is None:
            return None
        page = after
    return page


def with_parts(page: Page, line: str) -> Page | None:
    """What a heading says beside itself of the whole plan: "Push, pull, legs, every 5th week easy"."""
    found = [
        easier for part in re.split(r"[,;.]\s+|\(|\)", line) if isinstance(easier := blocks.easier_every(part), int)
    ]
    return replace(page, easier=found[0]) if found and page.easier is None else None


def _dated(words: str) -> str:
    found = re.search(r"\b(?:from|start|begin)", words, re.IGNORECASE)
    return words[found.start() :].strip(" .,;") if found else ""


def _said(page: Page, number: int, line: str) -> Page | None:
    bare = line.strip("#* ")
    easier = blocks.easier_every(bare)
    if easier is not None:
        return page.asks(number, line, easier) if isinstance(easier, Trouble) else replace(page, easier=easier)
    start = blocks.starts(bare, page.today)
    if start is not None:
        return page.asks(number, line, start) if isinstance(start, Trouble) else replace(page, starts=start)
    bare, within = blocks.weeks_and_easier(bare)
    first = blocks.is_weeks(bare)
    if first is None:
        return None
    if isinstance(within, int) and first and not page.drafts:
        page = replace(page, easier=within)
    if first and not page.drafts:
        return page.tells(number, line, Trouble("no_end", name=bare))
    return replace(page.asks(number, line, Trouble("one_block", name=bare)), open_=None, closed=True)
