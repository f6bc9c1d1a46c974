"""What a tired person types at each question of joining, and what is made of it."""

from datetime import UTC, datetime, time
from zoneinfo import ZoneInfo

import pytest

from bot.desk import zones
from core.join.aches import as_report
from core.join.answers import Around, read_answer
from core.join.questions import Key
from core.join.wishes import Counted, Experienced, KitSaid, Named, NoAches, Plain, Trains, Wish, YesNo, Zoned
from core.model.acts import AcheAct
from core.model.reading import Setting
from core.read.reader import read

HERE = zones.here(datetime(2026, 3, 2, 18, tzinfo=UTC), ZoneInfo("Europe/Berlin"))
RUTH = Around("kg", HERE, "Ruth")
LATER, SIX = Plain("later"), time(18)

SAID: dict[Key, dict[str, Wish | None]] = {
    "consent": {
        "yeah fine": YesNo(yes=True), "ok sure": YesNo(yes=True), "Fine by me.": YesNo(yes=True),
        "sounds good": YesNo(yes=True), "go for it": YesNo(yes=True), "👍": YesNo(yes=True), "yup": YesNo(yes=True),
        "no thanks": YesNo(yes=False), "nope": YesNo(yes=False), "why?": None,
    },
    "name": {
        "Ruthie please": Named("Ruthie"), "you can call me Ru": Named("Ru"), "whatever": Named("Ruth"),
        "the same": Named("Ruth"), "just Ruth": Named("Ruth"), "Ruth is fine": Named("Ruth"), "yes": Named("Ruth"),
    },
    "unit": {
        "pounds please": Counted("lb"), "kgs pls": Counted("kg"), "kg of course": Counted("kg"), "both": None,
        "pounds mostly": Counted("lb"), "metric": Counted("kg"), "in kg": Counted("kg"),
    },
    "zone": {
        "berlin time": Zoned("Europe/Berlin"), "same": Zoned("Europe/Berlin"), "CET": Zoned("Europe/Berlin"),
        "central time": Zoned("America/Chicago"), "it's 7pm here": Zoned("Europe/Berlin"),
        "yep": Zoned("Europe/Berlin"),
        "near Munich": Zoned("Europe/Berlin"), "new york city": Zoned("America/New_York"),
    },
    "days": {
        "mon wed fri around 6pm": Trains(((0, SIX), (2, SIX), (4, SIX))), "whenever": LATER, "it depends": LATER,
        "mon, wed. 18:00": Trains(((0, SIX), (2, SIX))), "I don't know yet": LATER, "twice a week": None,
        "Tuesday after work, Saturday morning": Trains(((1, SIX), (5, time(8)))),
    },
    "kit": {
        "I train at a gym": KitSaid(None), "normal gym": KitSaid(None), "commercial gym, everything": KitSaid(None),
        "pretty much everything": KitSaid(None), "just dumbbells": None, "not much": None,
    },
    "experience": {
        "since 2019": Experienced("long"), "since 2025": Experienced("some"), "few years": Experienced("some"),
        "used to lift a lot": Experienced("some"), "year and a half": Experienced("some"), "ages": Experienced("long"),
        "complete beginner": Experienced("new"), "6 months": Experienced("new"),
    },
    "aches": {
        "fine": NoAches(), "nothing serious": NoAches(), "nothing right now": NoAches(), "don't think so": NoAches(),
        "nope": NoAches(), "feeling good": NoAches(), "all good thanks": NoAches(), "left knee sometimes, 2": None,
    },
    "screen.heart": {
        "not at all": YesNo(yes=False), "I don't think so": YesNo(yes=False), "no nothing like that": YesNo(yes=False),
        "yes once": YesNo(yes=True), "i had a heart murmur as a kid": None, "maybe": None, "not sure": LATER,
    },
}  # fmt: skip


@pytest.mark.parametrize(("key", "words"), [(key, words) for key, rows in SAID.items() for words in rows])
def test_an_answer_means_what_it_says(key: Key, words: str) -> None:
    assert read_answer(key, words, RUTH) == SAID[key][words]


@pytest.mark.parametrize(
    ("words", "plates", "dumbbells"),
    [
        ("adjustable dumbbells up to 24", 0, (5.0, 24.0)),
        ("dumbbells 2-24kg", 0, (2.0, 24.0)),
        ("bench, rack, bar, 4x20 2x10", 2, ()),
        ("bar and two 20s, two 10s", 2, ()),
    ],
)
def test_a_span_reaches_its_top_and_what_follows_a_bar_is_plates(
    words: str, plates: int, dumbbells: tuple[float, ...]
) -> None:
    said = read_answer("kit", words, RUTH)
    assert isinstance(said, KitSaid)
    assert said.kit is not None
    assert len(said.kit.plates_kg) == plates
    assert said.kit.dumbbells_kg[:1] + said.kit.dumbbells_kg[1:][-1:] == dumbbells


@pytest.mark.parametrize(
    ("words", "where", "side", "level"),
    [
        ("left knee sometimes, 2", "knee", "left", 2.0), ("lower back now and then", "lower-back", None, None),
        ("my right shoulder clicks", "shoulder", "right", None), ("both knees, 2", "knee", "both", 2.0),
        ("elbow, since last year, maybe 2 of 10", "elbow", None, 2.0), ("left knee", "knee", "left", None),
        ("right hip 4 when I sit long", "hip", "right", 4.0), ("old shoulder injury", "shoulder", None, None),
        ("knee a bit", "knee", None, None), ("wrist 3/10", "wrist", None, 3.0), ("my back", "back", None, None),
    ],
)  # fmt: skip
def test_an_ache_told_in_passing_is_reported(words: str, where: str, side: str | None, level: float | None) -> None:
    report = as_report(words)
    assert report is not None
    (told,) = read(report, Setting()).acts
    assert isinstance(told, AcheAct)
    assert (told.where, told.side, told.level) == (where, side, level)


@pytest.mark.parametrize("words", ["i tore my acl in 2015", "bench 60x8", "", "what do you mean by aches exactly"])
def test_what_is_no_place_is_no_ache(words: str) -> None:
    report = as_report(words)
    assert report is None or not any(isinstance(act, AcheAct) for act in read(report, Setting()).acts)
