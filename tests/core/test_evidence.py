"""Every rule and number names its sources, and every source is used."""

from pathlib import Path

from core.decide.rules import RULES
from core.evidence.numbers import NUMBERS
from core.evidence.sources import SOURCES

TOP = Path(__file__).parents[2]


def test_every_rule_and_every_number_names_its_sources() -> None:
    assert all(rule.sources and set(rule.sources) <= set(SOURCES) for rule in RULES)
    assert all(row.sources and set(row.sources) <= set(SOURCES) for row in NUMBERS.values())
    assert all(key in NUMBERS for rule in RULES for key in rule.numbers)


def test_every_number_stands_inside_its_own_range() -> None:
    assert [row.key for row in NUMBERS.values() if not row.low <= row.value <= row.high] == []


def test_every_source_is_used() -> None:
    rows = [path for folder in ("core/evidence", "core/decide") for path in (TOP / folder).glob("*.py")]
    text = "\n".join(path.read_text() for path in rows if path.name != "sources.py")
    assert [source for source in SOURCES if source not in text] == []
