"""Every reply in every language: the same keys, the same slots, plurals where the first language has them."""

import string
from datetime import UTC

import pytest

from core.decide.rules import RULES
from core.evidence.exercises import EXERCISES
from core.model.quantities import Load, Range
from core.model.target import Reason, Slot
from core.read.words.en_symptoms import ROWS
from core.say.reasons import reason
from core.say.render import Voice
from core.say.wording import FALLBACK, LANGUAGES, Template, template

OTHERS = sorted(set(LANGUAGES) - {FALLBACK})
MAY_BE_MORE = ("name.", "rule.", "part.")
"""Keys that the first language takes from elsewhere: names, parts of the body, reasons of the rules."""


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
    voice = Voice("Ruth", UTC, language=language, decimal=decimal)  # type: ignore[arg-type]
    assert voice.mass(62.5) == said


@pytest.mark.parametrize("language", OTHERS)
def test_every_exercise_has_its_name(language: str) -> None:
    assert {one for one in EXERCISES if f"name.{one}" not in LANGUAGES[language]} == set()


@pytest.mark.parametrize("language", OTHERS)
def test_every_rule_is_told_with_its_own_slots(language: str) -> None:
    wrong = []
    for rule in RULES:
        said = LANGUAGES[language].get(f"rule.{rule.id}", "")
        if any(one != slots(rule.say)[0] for one in slots(said)):
            wrong.append(rule.id)
    assert wrong == []


@pytest.mark.parametrize("language", OTHERS)
def test_no_rule_is_told_that_is_not_there(language: str) -> None:
    beside = ("rule.load.", "rule.range.", "rule.time.", "rule.caution")
    told = {key for key in LANGUAGES[language] if key.startswith("rule.") and not key.startswith(beside)}
    assert told == {f"rule.{rule.id}" for rule in RULES}


def test_there_is_one_caution_and_every_language_has_it() -> None:
    (caution,) = {rule.caution for rule in RULES if rule.caution}
    for language in OTHERS:
        assert slots(LANGUAGES[language]["rule.caution"]) == slots(caution)


@pytest.mark.parametrize("language", OTHERS)
def test_every_reason_is_said_whole_in_the_language(language: str) -> None:
    """With every slot filled: nothing of the first language shows through, and figures have the decimal mark."""
    voice = Voice("Ruth", UTC, language=language, decimal=",")
    values: dict[str, Slot] = {"load": Load("total", 62.5), "rest": 90.0, "down": 3.0, "range": Range("extra", 5.0),
                               "least": 1, "where": "lower-back", "level": 4.5, "weeks": 3, "misses": 3}  # fmt: skip
    for rule in RULES:
        said = reason(voice, Reason(rule.say, rule.id, tuple(values.items())))
        assert said != rule.say
        assert not [odd for odd in ("{", "}", "lower back", "62.5", "4.5") if odd in said], said
        assert ("{load}" in rule.say) == ("62,5 kg" in said)
        assert ("{level}" in rule.say) == ("4,5" in said)


@pytest.mark.parametrize("language", OTHERS)
def test_every_part_of_the_body_has_its_name(language: str) -> None:
    read = {row[1] for row in ROWS if row[0] == "PART"}
    assert len(read) > 30
    assert {one for one in read if f"part.{one}" not in LANGUAGES[language]} == set()
