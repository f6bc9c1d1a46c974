"""The further languages of the reader: their tables hold together, and English is understood beside each."""

import pytest

from core.evidence.exercises import EXERCISES
from core.model.acts import SetAct
from core.model.reading import Setting
from core.read.glossary import spread
from core.read.lexemes import mark
from core.read.reader import read
from core.read.tokens import lex
from core.read.words.languages import GLOSSED, gloss, language
from tests.core.read_cases import all_cases

CODES = sorted(GLOSSED)
ENGLISH = language("en").lexicon
LEAST_ALIKE = 0.99
"""English messages read the same whichever language is chosen, at least so many of them."""


@pytest.mark.parametrize("code", CODES)
def test_a_phrase_means_one_thing(code: str) -> None:
    tables = gloss(code)
    meant: dict[str, set[str]] = {}
    for words, phrases in (*tables.words, *tables.names, *tables.exercises.items()):
        for form in spread(phrases, tables.endings):
            meant.setdefault(form, set()).add(words)
    assert {form: words for form, words in meant.items() if len(words) > 1} == {}


@pytest.mark.parametrize("code", CODES)
def test_what_a_phrase_means_is_known(code: str) -> None:
    tables = gloss(code)
    words = {token.text for meant, _ in (*tables.words, *tables.names) for token in lex(meant) if token.kind == "word"}
    assert words - ENGLISH.known - ENGLISH.plain == set()


@pytest.mark.parametrize("code", CODES)
def test_every_exercise_is_called_something_and_found_by_it(code: str) -> None:
    tables, tongue = gloss(code), language(code)
    assert set(EXERCISES) - set(tables.exercises) == set()
    found = {
        name: (exercise, [one.mention.ids for one in mark(tongue.tokens(f"{name} 10"), tongue) if one.mention])
        for exercise, names in tables.exercises.items()
        for name in spread(names, tables.endings)
    }
    assert {name: ids for name, (exercise, ids) in found.items() if ids != [(exercise,)]} == {}


@pytest.mark.parametrize("code", CODES)
def test_english_is_understood_beside(code: str) -> None:
    cases = [case for case in all_cases() if case.setting.get("language", "en") == "en"][::12]
    own, other = Setting(), Setting(language=code)
    alike = [read(case.text, own).acts == read(case.text, other).acts for case in cases]
    assert sum(alike) >= LEAST_ALIKE * len(cases)


@pytest.mark.parametrize(
    ("code", "text", "words"),
    [
        ("es", "Sentadilla Búlgara", ["bulgarian", "split", "squat"]),
        ("es", "sentadila", ["squat"]),
        ("es", "sesenta y dos coma cinco kilos", ["62.5", "kilos"]),
        ("es", "la 7a", ["the", "seventh"]),
        ("es", "8 a side", ["8", "a", "side"]),
        ("de", "Bankdrücken", ["bench"]),
        ("de", "bankdruecken", ["bench"]),
        ("de", "bankdrucken", ["bench"]),
        ("de", "kurzhanteln 16er", ["dumbbells", "16", "s"]),
        ("de", "er", ["he"]),
        ("de", "zweiundsechzig komma fünf", ["62.5"]),
        ("de", "hundertfünfunddreißig", ["135"]),
        ("de", "the last one was ugly", ["the", "last", "one", "was", "ugly"]),
    ],
)  # fmt: skip
def test_words_are_put_into_those_of_the_reader(code: str, text: str, words: list[str]) -> None:
    assert [token.text for token in language(code).tokens(text)] == words


@pytest.mark.parametrize("code", CODES)
def test_spans_lie_inside_the_text_as_typed(code: str) -> None:
    for case in all_cases():
        if case.setting.get("language") == code:
            for token in language(code).tokens(case.text):
                assert 0 <= token.start <= token.end <= len(case.text), case.text


@pytest.mark.parametrize("code", ["fr", "", "EN", "xx-YY"])
def test_a_language_that_is_not_spoken_is_read_as_english(code: str) -> None:
    [act] = read("bench 60x8", Setting(language=code)).acts
    assert isinstance(act, SetAct)
    assert act.reps == 8


@pytest.mark.parametrize("code", ["ES", "es-MX", "de-AT"])
def test_a_region_does_not_matter(code: str) -> None:
    [act] = read(
        "plancha 45 segundos" if code[:2].lower() == "es" else "Unterarmstütz 45 Sekunden", Setting(language=code)
    ).acts
    assert isinstance(act, SetAct)
    assert (act.exercise, act.hold_s) == ("plank", 45.0)


@pytest.mark.parametrize(("code", "colour", "text"), [
    ("es", "verde", "dominadas con goma verde 8"),
    ("de", "grün", "Klimmzüge mit grünem Band 8"),
    ("de", "green", "pull ups with green band 8"),
])  # fmt: skip
def test_a_band_is_called_as_the_lifter_calls_it(code: str, colour: str, text: str) -> None:
    [act] = read(text, Setting(language=code)).acts
    assert isinstance(act, SetAct)
    assert act.load is not None
    assert act.load.label == colour
