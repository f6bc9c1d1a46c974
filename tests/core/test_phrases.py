"""Everyday words to the service, in every language: each phrase is said somehow, and nothing is said for two."""

from typing import get_args

import pytest

from core.flow.phrases import SPOKEN, Phrase, is_courtesy, phrase_of

CODES = sorted(SPOKEN)
SAID = [
    ("es", "Hola", "hello"),
    ("es", "¿por qué?", "why"),
    ("es", "vale, gracias", "thanks"),
    ("es", "hoy no puedo", "off"),
    ("es", "manana no puedo", "off_tomorrow"),
    ("es", "ya estoy bien!", "well_again"),
    ("es", "un momento...", "later"),
    ("de", "moin", "hello"),
    ("de", "Rückgängig", "undo"),
    ("de", "rueckgaengig", "undo"),
    ("de", "ruckgangig", "undo"),
    ("de", "also, warum?", "why"),
    ("de", "mir gehts wieder gut", "well_again"),
    ("de", "morgen", None),
    ("de", "bankdrücken 60x8", None),
    ("fr", "hello", "hello"),
    ("en", "hola", None),
]


@pytest.mark.parametrize("code", CODES)
def test_every_phrase_can_be_said(code: str) -> None:
    assert set(SPOKEN[code].PHRASES) == set(get_args(Phrase))


@pytest.mark.parametrize("code", CODES)
def test_nothing_is_said_for_two(code: str) -> None:
    said = [words for all_words in SPOKEN[code].PHRASES.values() for words in all_words]
    assert sorted(words for words in said if said.count(words) > 1) == []


@pytest.mark.parametrize(("code", "words"), [(c, w) for c in CODES for w in SPOKEN[c].PHRASES["thanks"]])
def test_thanks_are_a_courtesy(code: str, words: str) -> None:
    assert is_courtesy(f"{words}, {words}", code)


@pytest.mark.parametrize(("code", "text", "phrase"), SAID)
def test_what_is_said_is_understood(code: str, text: str, phrase: str | None) -> None:
    assert phrase_of(text, code) == phrase


@pytest.mark.parametrize("code", CODES)
def test_english_is_understood_beside_every_language(code: str) -> None:
    assert phrase_of("not today", code) == "off"
