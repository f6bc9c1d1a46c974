"""A coach's words to orders: as typed, with slips, with names that fit two, and words that are no order."""

from datetime import date
from typing import get_args

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.order import orders
from core.order.limits import LIMITS, Bound
from core.order.names import find_name, names_at_start
from core.order.orders import About, Lacking, NoClient, Simple, Understood, WhichClient
from core.order.read import Around, read_order
from core.read.finding import find

ROSTER = ("Mira", "Tomas", "Ruth", "Piet", "Anna Berg", "Anna Holm", "Ruben")
PLANNED = {"Mira": ("goblet-squat", "dumbbell-row", "goblet-squat"), "Tomas": ("back-squat", "barbell-bench-press")}
AROUND = Around(ROSTER, find, date(2026, 3, 2), PLANNED)
BENCH, SQUAT, GOBLET = "barbell-bench-press", "back-squat", "goblet-squat"

SAID: list[tuple[str, Understood]] = [
    ("invite Jonas", orders.Invite("Jonas")),
    ("/invite Jonas Weg", orders.Invite("Jonas Weg")),
    ("cancel the invitation of Jonas", orders.Invite("Jonas", cancel=True)),
    ("uninvite Jonas", orders.Invite("Jonas", cancel=True)),
    ("clients", Simple("clients")),
    ("who needs a word?", Simple("attention")),
    ("digest", Simple("attention")),
    ("weeks", Simple("weeks")),
    ("overview", Simple("overview")),
    ("spreadsheet please", Simple("sheet")),
    ("csv of Mira", About("sheet", "Mira")),
    ("yes", Simple("yes")),
    ("No.", Simple("no")),
    ("plan of mira", About("plan", "Mira")),
    ("8 to 14 sets of chest for Mira", orders.SetRange("Mira", "chest", (8, 14))),
    ("Mira: 8-14 stes of chest", orders.SetRange("Mira", "chest", (8, 14))),
    ("chest 12 sets a week for mira", orders.SetRange("Mira", "chest", (12, 12))),
    ("6-12 weekly sets for Tomas", orders.SetRange("Tomas", None, (6, 12))),
    ("usual sets of hams for Mira", orders.SetRange("Mira", "hamstrings")),
    ("usual sets for Mira", orders.SetRange("Mira")),
    ("10 sets of back for Mira", Lacking("which_muscle", "back", ("lats", "upper-back", "lower-back"))),
    ("41 sets of chest for Mira", Lacking("set_range_how", "Mira")),
    ("every 4th week easier for Mira", orders.Easier("Mira", 4)),
    ("Tomas: evry other week easier", orders.Easier("Tomas", 2)),
    ("deload every 5 weeks for Ruth", orders.Easier("Ruth", 5)),
    ("every 30th week easier for Ruth", Lacking("easier_how", "Ruth")),
    ("no easier weeks for Ruth", orders.Easier("Ruth", None)),
    ("swap goblet squat for bulgarian split squat for Mira", orders.Swap("Mira", GOBLET, "bulgarian-split-squat")),
    ("swap Mira's squats for bulgarians", orders.Swap("Mira", GOBLET, "bulgarian-split-squat")),
    ("change tomas bench to incline bench please", orders.Swap("Tomas", BENCH, "incline-barbell-bench-press")),
    ("feet elevated push ups instead of push-ups for Ruth", orders.Swap("Ruth", "push-up", "feet-elevated-push-up")),
    ("swpa squats with leg press for Tomas", orders.Swap("Tomas", SQUAT, "leg-press")),
    ("swap bench for bench press for Tomas", Lacking("swap_same", "Tomas")),
    ("swap bench for blorbs for Tomas", Lacking("no_exercise", "blorbs")),
    ("swap Tomas for leg press", Lacking("swap_how", "Tomas")),
    ("Mira's plan", About("plan", "Mira")),
    ("show plan of Tomas", About("plan", "Tomas")),
    ("plan for Mira:\nMon 18:00\nsquat 3x5", orders.NewPlan("Mira", "Mon 18:00\nsquat 3x5")),
    ("copy Mira's plan to Tomas", orders.CopyPlan("Mira", "Tomas")),
    ("copy plan of Mira to Tomas", orders.CopyPlan("Mira", "Tomas")),
    ("copy Mira's plan to Mira", Lacking("copy_same", "Mira")),
    ("put back the old plan of Mira", About("old_plan", "Mira")),
    ("put back the old plan", Lacking("old_plan_whose")),
    ("week of Tomas", About("week", "Tomas")),
    ("Tomas's week", About("week", "Tomas")),
    ("tell Mira well done on Monday", orders.Tell(("Mira",), "well done on Monday")),
    ("tell Mira, Tomas and Piet: bring water", orders.Tell(("Mira", "Tomas", "Piet"), "bring water")),
    ("tell everyone: closed on Friday", orders.Tell(None, "closed on Friday")),
    ("ask Ruth how the knee is", orders.Tell(("Ruth",), "how the knee is")),
    ("tell Mira", Lacking("tell_how", "Mira")),
    ("note on Ruth: operated in 2019", orders.Note("Ruth", "operated in 2019")),
    ("note on Ruth", Lacking("note_how", "Ruth")),
    ("tel tomas and ruth nice work both", orders.Tell(("Tomas", "Ruth"), "nice work both")),
    ("tell evryone gym clsoed, holding weeks", orders.Tell(None, "gym clsoed, holding weeks")),
    ("note on ruht: hates freee weights", orders.Note("Ruth", "hates freee weights")),
    ("note on Bruno hates mornings", NoClient("Bruno", ("Ruben",))),
    ("end wrok with tomas", About("end", "Tomas")),
    ("notes ruth", About("notes", "Ruth")),
    ("week ruth pls", About("week", "Ruth")),
    ("yes pls", Simple("yes")),
    ("notes on Ruth", About("notes", "Ruth")),
    ("Mira free", orders.Under("Mira", "free")),
    ("ask first for Mira", orders.Under("Mira", "ask")),
    ("hold Tomas's squats", orders.Under("Tomas", "hold", SQUAT)),
    ("hold Mira's squats", orders.Under("Mira", "hold", GOBLET)),
    ("62.5 for 8 next time on bench for Tomas", orders.NextTime("Tomas", BENCH, 62.5, None, (8, 8))),
    ("62,5 kg for 8-10 on bench for Tomas", orders.NextTime("Tomas", BENCH, 62.5, "kg", (8, 10))),
    ("135 lb x 5 x 3 on squat for Tomas", orders.NextTime("Tomas", SQUAT, 135.0, "lb", (5, 5), 3)),
    ("60 for 80 next time on bench for Tomas", Lacking("next_beyond", "60 for 80")),
    ("no heavier for Piet", orders.NoHeavier("Piet")),
    (
        "no heavier on shoulders for Tomas until May",
        orders.NoHeavier("Tomas", part="shoulder", until=date(2026, 5, 1)),
    ),
    ("no heavier for Tomas's bench until friday", orders.NoHeavier("Tomas", BENCH, until=date(2026, 3, 6))),
    ("no heavier for Tomas until someday", Lacking("which_day", "someday")),
    ("tempo before load for Mira's squats", orders.WayOrder("Mira", ("tempo", "load"), GOBLET)),
    ("tempo first for Mira", orders.WayOrder("Mira", ("tempo",))),
    ("clear Mira's alarm", About("clear", "Mira")),
    ("clear", Lacking("clear_how")),
    ("end work with Piet", About("end", "Piet")),
    ("hand Piet to Jana", orders.Hand("Piet", "Jana")),
    ("what if Mira did tempo before load for 6 weeks", orders.WhatIf("Mira", ("tempo", "load"), 6)),
    (
        "what if Tomas did tempo before load on bench for four weeks",
        orders.WhatIf("Tomas", ("tempo", "load"), 4, BENCH),
    ),
    ("what if Mira did yoga", Lacking("what_if_how", "Mira")),
    ("what if Mira did tempo for 40 weeks", Lacking("what_if_how", "Mira")),
    ("digest at 6:30", orders.Hour("digest", 6, 30)),
    ("weeks on monday at 8 pm", orders.Hour("weeks", 20, 0, 0)),
    ("weeks at 8", Lacking("weeks_hour_how")),
    ("help", Simple("help")),
    ("week of Xavier", NoClient("Xavier")),
    ("week of Myra", NoClient("Myra", ("Mira",))),
]

SLIPS = [
    ("plna of Mira", "plan of Mira"),
    ("my clinets", "clients"),
    ("tel Mira hello there", "tell Mira hello there"),
    ("invte Jonas", "invite Jonas"),
    ("week of Tomaz", "week of Tomas"),
    ("overveiw", "overview"),
    ("claer Ruth", "clear Ruth"),
]

NONE = [
    "squat 60 kg 3x8",
    "did 60x8, was that enough",
    "hold on a second",
    "free lunch today",
    "good morning",
    "",
    "   ",
    "60x8",
]


@pytest.mark.parametrize(("text", "wanted"), SAID, ids=[text[:40] for text, _ in SAID])
def test_said_is_understood(text: str, wanted: Understood) -> None:
    assert read_order(text, AROUND) == wanted


@pytest.mark.parametrize(("slipped", "meant"), SLIPS)
def test_slips_are_forgiven(slipped: str, meant: str) -> None:
    assert read_order(slipped, AROUND) == read_order(meant, AROUND) is not None


@pytest.mark.parametrize("text", NONE)
def test_what_is_no_order_is_left_to_others(text: str) -> None:
    assert read_order(text, AROUND) is None


def test_two_who_fit_are_asked_about_and_each_answer_is_an_order() -> None:
    asked = read_order("week of Anna", AROUND)
    assert isinstance(asked, WhichClient)
    assert asked.names == ("Anna Berg", "Anna Holm")
    assert [read_order(text, AROUND) for text in asked.texts] == [About("week", name) for name in asked.names]


def test_an_exercise_that_fits_several_is_asked_about() -> None:
    asked = read_order("hold Ruth's row", AROUND)
    assert isinstance(asked, Lacking)
    assert asked.what == "which_exercise"
    assert "barbell-row" in asked.choices


def test_a_name_is_never_guessed_between_two() -> None:
    assert find_name("rub", ("Ruben", "Rubina")).several == ("Ruben", "Rubina")
    assert find_name("Ruby", ("Ruben", "Rubio")).name is None


def test_names_open_a_text_and_the_rest_follows() -> None:
    found, typed, rest = names_at_start("Mira and Anna Holm, see you at 8", ROSTER)
    assert [one.name for one in found] == ["Mira", "Anna Holm"]
    assert typed == ["Mira", "Anna Holm"]
    assert rest == "see you at 8"


@settings(deadline=None)
@given(st.text(max_size=120))
def test_any_text_is_read_without_raising(text: str) -> None:
    read_order(text, AROUND)


@settings(deadline=None)
@given(st.sampled_from([text for text, _ in SAID]), st.sampled_from(ROSTER))
def test_nobody_outside_the_roster_is_ever_named(text: str, gone: str) -> None:
    left = tuple(name for name in ROSTER if name != gone)
    found = read_order(text, Around(left, find, AROUND.today, {}))
    named = {getattr(found, "who", None), getattr(found, "source", None), *(getattr(found, "names", None) or ())}
    assert gone not in named


def test_every_limit_says_whether_a_coach_may_overrule_it_and_why() -> None:
    """Common practice, no source: nothing of the body is overruled from afar."""
    assert set(LIMITS) == set(get_args(Bound))
    assert {name for name, row in LIMITS.items() if row.overruled} == {"step"}
    assert all(len(row.why) > 20 for row in LIMITS.values())
