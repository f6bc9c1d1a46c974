"""What answers "how much of 10?" in a session under way, in three languages, and what is a set all the same."""

from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

import pytest

from core.checkin import answer
from core.model.acts import AcheAct, SetAct
from core.model.book import Book, Incoming, Kept, Profile
from core.model.lifter import Lifter
from core.model.outcome import Outcome
from core.model.plan import Plan, Planned, TrainingDay
from core.model.quantities import Load
from core.model.target import Aim

NOW = datetime(2026, 3, 2, 18, 0, tzinfo=ZoneInfo("UTC"))
BENCH = "barbell-bench-press"
PLAN = Plan((TrainingDay(0, time(18), "Push", (Planned(BENCH, Aim(5, (3, 12))),)),))
SET = Kept(1, SetAct(BENCH, Load("total", 60.0), 8), date(2026, 3, 2), NOW - timedelta(minutes=5), 1)
ACHE = Kept(2, AcheAct("knee", "left", None), date(2026, 3, 2), NOW - timedelta(minutes=1), 2)


def said(text: str, language: str = "en", kept: tuple[Kept, ...] = (SET, ACHE)) -> Outcome:
    """What is made of a text behind a set of bench presses and an ache whose level was not told."""
    profile = Profile("Tomas", ZoneInfo("UTC"), language, coach="Ines")
    return answer(Incoming(3, text), Book(profile, Lifter(bodyweight_kg=80.0), PLAN, kept), NOW)


def kept_by(outcome: Outcome) -> list[object]:
    return [one.act for one in outcome.keep]


@pytest.mark.parametrize(
    ("text", "level", "language"),
    [
        ("its like a 3", 3, "en"),
        ("It's about a 4, maybe", 4, "en"),
        ("3/10", 3, "en"),
        ("5 out of 10 tops", 5, "en"),
        ("maybe a 2", 2, "en"),
        ("como un 4", 4, "es"),
        ("tres de diez", 3, "es"),
        ("so ne 3", 3, "de"),
        ("drei von zehn", 3, "de"),
    ],
)
def test_a_level_is_the_aches(text: str, level: float, language: str) -> None:
    """Words that only a level has: the ache is kept again with it, on its side, and no set."""
    assert kept_by(said(text, language)) == [AcheAct("knee", "left", level)]


@pytest.mark.parametrize("text", ["3", "8", "3ish"])
def test_a_bare_number_is_asked_about(text: str) -> None:
    """The level, or a set? Nothing is kept before that is known."""
    outcome = said(text)
    assert kept_by(outcome) == []
    assert outcome.pending is not None
    level, sets = (option.acts for option in outcome.pending.ask.options)
    assert isinstance(level[0], AcheAct)
    assert isinstance(sets[0], SetAct)


@pytest.mark.parametrize("text", ["60x8", "12", "8, 2 left", "same again", "62.5 for 6 rpe 8", "8 reps"])
def test_a_set_stays_a_set(text: str) -> None:
    """More than ten, a load, an effort, a word for sets: nothing that an ache has."""
    assert all(isinstance(act, SetAct) for act in kept_by(said(text)))
    assert len(kept_by(said(text))) == 1


@pytest.mark.parametrize(
    "kept",
    [
        (SET,),
        (ACHE, SET),
        (SET, Kept(2, AcheAct("knee", "left", 4.0), date(2026, 3, 2), NOW, 2)),
        (SET, Kept(2, AcheAct("knee", "left", None), date(2026, 3, 2), NOW - timedelta(minutes=11), 2)),
    ],
    ids=["no ache", "a set since", "its level is known", "long ago"],
)
def test_without_an_open_level_a_number_is_a_set(kept: tuple[Kept, ...]) -> None:
    """Only what was just asked is answered."""
    assert [type(act) for act in kept_by(said("8", kept=kept))] == [SetAct]
