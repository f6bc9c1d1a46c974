"""Every reply in every language: the same keys, the same slots, plurals where the first language has them."""

import string

import pytest

from core.evidence.exercises import EXERCISES
from core.say.render import Voice
from core.say.wording import FALLBACK, LANGUAGES, Template, template

OTHERS = sorted(set(LANGUAGES) - {FALLBACK})
MAY_BE_MORE = ("name.", "rule.")
"""Keys that the first language takes from elsewhere: names from the catalogue, reasons from the rules."""


def slots(words: Template) -> list[set[str]]:
    forms = (words,) if isinstance(words, str) else words
    return [{name for _, name, _, _ in string.Formatter().parse(form) if name} for form in forms]


@pytest.mark.parametrize("language", OTHERS)
def test_no_key_is_missing_and_none_is_of_its_own(language: str) -> None:
    own, first = set(LANGUAGES[language]), set(LANGUAGES[FALLBACK])
    assert first - own == set()
    assert {key for key in own - first if not key.startswith(MAY_BE_MORE)} == set()


@pytest.mark.parametrize("language", OTHERS)
def test_every_slot_is_there_and_no_other(language: str) -> None:
    wrong = []
    for key, words in LANGUAGES[FALLBACK].items():
        wanted = set.union(*slots(words))
        if set.union(*slots(LANGUAGES[language][key])) != wanted:
            wrong.append(key)
    assert wrong == []


@pytest.mark.parametrize("language", OTHERS)
def test_a_plural_is_a_pair_where_the_first_language_has_one(language: str) -> None:
    pairs = {key for key, words in LANGUAGES[FALLBACK].items() if not isinstance(words, str)}
    assert {key for key in pairs if isinstance(LANGUAGES[language][key], str)} == set()


@pytest.mark.parametrize("language", OTHERS)
def test_words_were_translated(language: str) -> None:
    """Longer sentences differ from the first language's; short ones may be alike (kg, s)."""
    same = [
        key
        for key, words in LANGUAGES[FALLBACK].items()
        if words == LANGUAGES[language][key]
        and len(string.Template(str(words)).template.split()) > 4
        and "{" in str(words)
    ]
    assert [
        key for key in same if any(word.isalpha() and len(word) > 3 for word in str(LANGUAGES[language][key]).split())
    ] == []


@pytest.mark.parametrize(
    ("language", "one", "many"), [("en", "1 set", "2 sets"), ("es", "1 serie", "2 series"), ("de", "1 Satz", "2 Sätze")]
)
def test_plurals(language: str, one: str, many: str) -> None:
    assert template(language, "count.none", 1).format(n=1) == one
    assert template(language, "count.none", 2).format(n=2) == many


@pytest.mark.parametrize(
    ("language", "decimal", "said"), [("en", ".", "62.5 kg"), ("es", ",", "62,5 kg"), ("de", ",", "62,5 kg")]
)
def test_decimals(language: str, decimal: str, said: str) -> None:
    from datetime import UTC

    voice = Voice("Ruth", UTC, language=language, decimal=decimal)  # type: ignore[arg-type]
    assert voice.mass(62.5) == said


@pytest.mark.parametrize("language", OTHERS)
def test_every_exercise_has_its_name(language: str) -> None:
    assert {one for one in EXERCISES if f"name.{one}" not in LANGUAGES[language]} == set()
