"""The words that patterns tell apart stand in the language's table."""

import ast
from pathlib import Path

from core.read import reader
from core.read.words.en_marks import MARKS
from core.read.words.languages import language

READER = Path(reader.__file__).parent


def asked_for() -> set[str]:
    """Every mark that the reader's code asks a lexeme about."""
    calls = (
        node
        for path in READER.glob("*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr == "is_word"
    )
    return {
        one.value for call in calls for one in call.args if isinstance(one, ast.Constant) and isinstance(one.value, str)
    }


def test_every_mark_asked_for_is_in_the_table() -> None:
    assert asked_for() - set(MARKS) == set()


def test_every_mark_of_the_table_is_asked_for() -> None:
    assert set(MARKS) - asked_for() == set()


def test_every_marked_word_is_found() -> None:
    found = language("en").marks
    for mark, words in MARKS.items():
        assert all(mark in found[word] for word in words.split(", "))
