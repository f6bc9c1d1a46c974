"""The reader's door: a message in, a reading out. It may not know channels, stores or clocks.

tokens -> lexemes -> what the body says, the session's flow, corrections -> remarks -> stretches -> set grammar ->
settled with the setting -> remarks attached -> acts in the order stated, or a question.
"""

from dataclasses import dataclass

from core.model.reading import Reading, Setting
from core.read.message import Message
from core.read.words.languages import language


def read(text: str, setting: Setting) -> Reading:
    """Read one message. Never raises for any text."""
    return Message(text, setting).reading()


def plainly(text: str, code: str) -> str:
    """The message in the reader's own words, for those who know whole phrases only in these; ``code``: the lifter's
    language."""
    return " ".join(token.text for token in language(code).tokens(text))


@dataclass(frozen=True, slots=True)
class Explanation:
    """How a message came to be read: its lexemes with their kinds, which of them report nothing done, the stretches
    with their exercise, and the reading."""

    lexemes: tuple[tuple[str, tuple[str, ...]], ...]
    undone: tuple[int, ...]
    stretches: tuple[tuple[str, str], ...]
    reading: Reading


def explain(text: str, setting: Setting) -> Explanation:
    """The reading of a message with the steps that led to it, for people who wonder why."""
    message = Message(text, setting)
    reading = message.reading()
    lexemes = tuple((lexeme.text, tuple(lexeme.k)) for lexeme in message.stream.all)
    return Explanation(lexemes, tuple(sorted(message.undone)), tuple(message.trace), reading)
