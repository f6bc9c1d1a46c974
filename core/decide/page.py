"""The page of rules, made from the rows: every rule, number, row of the return table and source. Text only."""

from collections.abc import Iterator
from typing import Final

from core.decide.rules import AFTER, BEFORE, DURING, STEPS, Rule
from core.evidence.layoff import RETURNS, SOURCES_USED
from core.evidence.numbers import NUMBERS
from core.evidence.sources import SOURCES

_HEAD: Final = """# Rules

Made from the rows in `core/decide/rules.py` and `core/evidence/`; do not edit by hand (`core/decide/page.py`).

The first rule that speaks decides. Hard limits come last and no rule overrides them: one way at a time, a step only
from a target that was met, loads that the kit makes, nothing heavier or deeper for a lifter who is to be spared.
A coach may move a number inside its range.
"""


def rules_page() -> str:
    """The whole page as Markdown."""
    parts = [_HEAD]
    for title, rules in (
        ("Asked first, in this order", BEFORE),
        ("Asked next, in the coach's order of ways", tuple(STEPS.values())),
        ("Asked last, in this order", AFTER),
        ("Spoken from elsewhere", DURING),
    ):
        parts += [f"## {title}\n", _table(("rule", "says", "numbers", "sources"), (_rule(one) for one in rules))]
    parts += ["## After a break\n", _returns(), f"\nSources: {', '.join(SOURCES_USED)}.\n"]
    parts += ["## Numbers\n", _numbers()]
    parts += ["## Sources\n", _table(("source", "title", "read"), ((s.id, s.title, s.read) for s in SOURCES.values()))]
    return "\n".join(part.rstrip("\n") + "\n" for part in parts)


def _rule(rule: Rule) -> tuple[str, ...]:
    numbers = "; ".join(f"{key} = {NUMBERS[key].value:g} {NUMBERS[key].unit}" for key in rule.numbers)
    return f"`{rule.id}`", rule.sentence, numbers, ", ".join(rule.sources)


def _returns() -> str:
    rows = (
        (str(row.weeks), f"{row.load_factor:g}", f"{row.set_factor:g}", f"{row.min_rir:g}", f"{row.extra_sd:g}")
        for row in RETURNS
    )
    return _table(("from weeks", "load", "sets", "least reserve", "added doubt (ln)"), rows)


def _numbers() -> str:
    rows = (
        (f"`{n.key}`", f"{n.value:g}", n.unit, f"{n.low:g} to {n.high:g}", n.meaning, n.grade, ", ".join(n.sources))
        for n in NUMBERS.values()
    )
    return _table(("number", "value", "unit", "range", "meaning", "grade", "sources"), rows)


def _table(head: tuple[str, ...], rows: Iterator[tuple[str, ...]]) -> str:
    lines = [head, ("---",) * len(head), *rows]
    return "\n".join(f"| {' | '.join(line)} |" for line in lines) + "\n"
