"""The reader's parts on their own: tokens, number words, spelling, names, decimal commas, units, tables."""

import pytest

from core.evidence.exercises import EXERCISES
from core.model.reading import Setting
from core.read.lexemes import mark
from core.read.numerals import compose
from core.read.reader import read
from core.read.tokens import lex
from core.read.words import en_names
from core.read.words.languages import TABLES, language

ENGLISH = language("en")


def kinds(text: str) -> list[tuple[str, set[str]]]:
    """The lexemes of a text and what they can be."""
    return [(one.text, set(one.k)) for one in mark(ENGLISH.lexicon.spell(lex(text)), ENGLISH)]


@pytest.mark.parametrize(
    ("typed", "plain"),
    [
        ("６０×８", "60x8"),
        ("60✕8", "60x8"),
        ("60*8", "60x8"),
        ("57½ x 8", "57.5 x 8"),
        ("60 kg", "60 kg"),
        ("3–1–1–0", "3-1-1-0"),
    ],
)
def test_folded_signs_cut_as_plain_ones(typed: str, plain: str) -> None:
    assert [token.text for token in lex(typed)] == [token.text for token in lex(plain)]


def test_spans_are_of_the_text_as_typed() -> None:
    text = "🔥 ＢＥＮＣＨ 62½ × ８ 👍🏽"
    for token in lex(text):
        assert text[token.start : token.end].strip()
    [act] = read(text, Setting()).acts
    assert act.span is not None
    assert text[slice(*act.span)] == "62½ × ８"


@pytest.mark.parametrize(
    ("said", "value"),
    [
        ("sixty two point five", 62.5),
        ("one thirty five", 135),
        ("two twenty five", 225),
        ("one oh five", 105),
        ("a hundred", 100),
        ("one hundred and forty", 140),
        ("twenty-five", 25),
        ("three fifteen", 315),
        ("ninety", 90),
        ("dozen", 12),
        ("twenty two and a half", 22.5),
    ],
)
def test_number_words(said: str, value: float) -> None:
    tokens = lex(said)
    found = compose(ENGLISH.lexicon.numerals, tokens, 0)
    assert found is not None
    assert found[:2] == (value, len(tokens))


def test_plural_number_words_are_implements() -> None:
    assert compose(ENGLISH.lexicon.numerals, lex("fifteens"), 0) == (15.0, 1, True)


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("sqaut", "squat"),
        ("dedlift", "deadlift"),
        ("mornigns", "mornings"),
        ("shouldr", "shoulder"),
        ("weigth", "weight"),
    ],
)
def test_slips_are_mended(typed: str, meant: str) -> None:
    assert [token.text for token in ENGLISH.lexicon.spell(lex(typed))] == [meant]


@pytest.mark.parametrize("word", ["noticed", "learning", "lunch", "class", "dress", "hugging", "racking", "sleeping"])
def test_everyday_words_are_left_alone(word: str) -> None:
    assert [token.text for token in ENGLISH.lexicon.spell(lex(word))] == [word]


@pytest.mark.parametrize(
    ("text", "numbers"),
    [
        ("62,5 x 8,8,7", [62.5, 8, 8, 7]),
        ("57,5×6", [57.5, 6]),
        ("dips 8,7", [8, 7]),
        ("22,5s 10,10", [22.5, 10, 10]),
        ("12,5lb 15,15", [5.67, 15, 15]),
        ("rpe 8,5", [8.5]),
        ("that was 62,5 not 65", [62.5, 65]),
        ("10,10", [10, 10]),
    ],
)
def test_decimal_commas_and_lists(text: str, numbers: list[float]) -> None:
    found = [
        one.num("LOADQ") if "LOADQ" in one.k else one.value
        for one in mark(ENGLISH.lexicon.spell(lex(text)), ENGLISH)
        if one.k.keys() & {"NUM", "LOADQ"}
    ]
    assert found == pytest.approx(numbers, abs=0.01)


@pytest.mark.parametrize(
    ("text", "seconds"),
    [("1 min 30", 90), ("a minute ten", 70), ("2m30s", 150), ("a minute and a half", 90), ("half a minute", 30)],
)
def test_durations(text: str, seconds: float) -> None:
    [one] = mark(ENGLISH.lexicon.spell(lex(text)), ENGLISH)
    assert one.num("DUR") == seconds


def test_every_name_is_of_the_catalogue() -> None:
    assert set(en_names.EXERCISES) == set(EXERCISES)
    for _, members in en_names.FAMILIES:
        assert set(members.split()) <= set(EXERCISES)


def test_names_are_made_of_known_words_only() -> None:
    made = {word for words in ENGLISH.names.by_words for word in words}
    assert made <= set(en_names.CONCEPTS)


def test_no_exercise_is_hidden_by_a_family_or_a_lacking_name() -> None:
    reached = {one for mention in ENGLISH.names.by_words.values() if not mention.generic for one in mention.ids}
    assert reached == set(EXERCISES)


@pytest.mark.parametrize(
    ("text", "exercise"),
    [
        ("db row 24x10", "dumbbell-row"),
        ("incline db press 20s x8", "incline-dumbbell-press"),
        ("rdls 90x8", "romanian-deadlift"),
        ("press-ups 20", "push-up"),
        ("t-bar row 40x10", "t-bar-row"),
        ("leg curl (lying) 35x12", "leg-curl-lying"),
        ("skull crushers 25x10", "lying-triceps-extension"),
        ("goblets 24x10", "goblet-squat"),
        ("dead lift 140x3", "conventional-deadlift"),
    ],
)
def test_names_as_people_type_them(text: str, exercise: str) -> None:
    assert {getattr(act, "exercise", None) for act in read(text, Setting()).acts} == {exercise}


def test_every_language_brings_every_table() -> None:
    for code, tables in TABLES.items():
        tongue = language(code)
        assert tongue.lexicon.known, code
        assert set(tables.exercises) == set(EXERCISES), code
        for exercise in EXERCISES:
            assert any(mention.ids == (exercise,) for mention in tongue.names.by_words.values()), (code, exercise)


def test_a_glued_run_is_cut_behind_a_number() -> None:
    assert [text for text, _ in kinds("60kgx8 2minrest")] == ["60 kg", "x", "8", "2 min", "rest"]
