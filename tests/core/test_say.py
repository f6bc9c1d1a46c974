"""Sentences: the table is whole in every language, figures are right in each unit, and nothing is left unfilled."""

import re
import string
from datetime import date, time
from pathlib import Path
from typing import get_args
from zoneinfo import ZoneInfo

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.evidence.exercises import EXERCISES
from core.model.acts import AcheAct, SetAct, Sign, Swap
from core.model.facts import (
    Alarmed,
    AlertAche,
    AlertAlarm,
    Amended,
    Asked,
    Eased,
    EraseAsked,
    Erased,
    Fact,
    Held,
    Line,
    Listed,
    Noted,
    Offered,
    Recapped,
    Recorded,
    Stepped,
    Told,
    Upcoming,
)
from core.model.quantities import BODY, POUND_KG, Load, Range, Way
from core.model.reading import About, Ask, Option
from core.model.target import Target, TargetSet
from core.say import figures
from core.say.compose import LABEL_FITS, alert, compose
from core.say.render import Voice
from core.say.wording import FALLBACK, LANGUAGES

KG = Voice("Tomas", ZoneInfo("Europe/Berlin"), coach="Ines")
COMMA = Voice("Jonas", ZoneInfo("Europe/Berlin"), decimal=",", coach="Ines")
LB = Voice("Ruth", ZoneInfo("America/New_York"), unit="lb")
MONDAY = date(2026, 3, 2)
SQUAT = "goblet-squat"


def squat(reps: int, kg: float = 24.0, **more: object) -> SetAct:
    return SetAct(SQUAT, Load("total", kg), reps, **more)  # type: ignore[arg-type]


def said(voice: Voice, *facts: Fact) -> str:
    return compose(facts, voice).text


def slots(template: str | tuple[str, str]) -> set[str]:
    forms = (template,) if isinstance(template, str) else template
    return {name for form in forms for _, name, _, _ in string.Formatter().parse(form) if name}


# The table


def test_every_language_has_the_same_keys_slots_and_forms() -> None:
    first = LANGUAGES[FALLBACK]
    for language, table in LANGUAGES.items():
        assert {key for key in table if not key.startswith(("name.", "rule.", "part."))} == set(first), language
        for key, template in first.items():
            assert slots(table[key]) == slots(template), (language, key)
            assert isinstance(table[key], tuple) == isinstance(template, tuple), (language, key)


def test_every_key_of_the_table_is_said_by_someone() -> None:
    files = [path for folder in ("say", "flow") for path in Path("core", folder).glob("*.py")]
    code = "\n".join(path.read_text() for path in files if path.name != "english.py")
    whole = set(re.findall(r"""["']([a-z_]+(?:\.[a-zA-Z_0-9-]+)*)["']""", code))
    stems = tuple(set(re.findall(r'f"([a-z_]+\.[a-z_.]*)\{', code)))
    by_part = re.compile(r"(set|target)\.(tempo\.)?(down|bottom|up|fast|top|range\..+)|load\.(assist\.)?band")
    unsaid = [
        key
        for key in LANGUAGES[FALLBACK]
        if key.removesuffix(".alone") not in whole and not key.startswith(stems) and not by_part.fullmatch(key)
    ]
    assert unsaid == []


def test_every_template_is_whole_and_calm() -> None:
    for key, template in LANGUAGES[FALLBACK].items():
        for form in (template,) if isinstance(template, str) else template:
            assert form == form.strip() or key == "join.list", key
            assert "!" not in form, key
            assert not re.search(r"\b(diagnos|medication|painkill|ibuprofen|push through)", form, re.IGNORECASE), key


@pytest.mark.parametrize("sign", get_args(Sign))
def test_every_alarm_stops_and_says_whom_to_turn_to(sign: Sign) -> None:
    text = said(KG, Alarmed(sign, told=True))
    assert text.startswith("Stop here")
    assert re.search("emergency|doctor", text)
    assert "Ines is told" in text
    assert len(text) < 400
    alone = said(LB, Alarmed(sign, told=False))
    assert "Ines" not in alone
    assert "None" not in alone


@pytest.mark.parametrize("way", get_args(Way))
def test_every_way_has_its_praise(way: Way) -> None:
    assert said(KG, Stepped(SQUAT, way)).startswith("A step")


@pytest.mark.parametrize("about", get_args(About))
def test_every_question_has_its_words(about: About) -> None:
    two = Ask(about, (Option("this", ()), Option("that", ())))
    made = compose((Asked(two),), KG)
    assert made.text.endswith(("?", ":"))
    assert made.ask == two
    alone = compose((Asked(Ask(about)),), KG)
    assert alone.text
    assert alone.ask == Ask(about)
    assert alone.labels == ()


def test_a_doubted_reading_is_asked_about_as_it_stands() -> None:
    made = compose((Asked(Ask("meaning", (Option("", (squat(12, 90.0),)), Option("", ())))),), KG)
    assert made.labels == ("90 kg for 12 reps", "no")
    assert made.text == "That is far from what I know of this exercise. Is it right?"
    assert "anyone lifts" in said(KG, Asked(Ask("load"), unlikely=True))


def test_left_and_right_are_said_with_their_counts() -> None:
    sets = tuple(SetAct("split-squat", Load("per_hand", 10.0), n, side=s) for n, s in ((10, "left"), (8, "right")))
    assert said(KG, Recorded("split-squat", sets, MONDAY)) == "Split squat 2 x 10 kg: 10 left, 8 right."


# Receipts


@pytest.mark.parametrize(
    ("sets", "text"),
    [
        ((squat(12), squat(12), squat(10, rir=2.0)), "Goblet squat 24 kg: 12, 12, 10 reps, the last 2 in reserve."),
        ((squat(12), squat(12), squat(12)), "Goblet squat 24 kg: 3 sets of 12."),
        ((squat(1),), "Goblet squat 24 kg: 1 rep."),
        ((squat(8, rir=0.0),), "Goblet squat 24 kg: 8 reps, nothing in reserve."),
        ((squat(8, rir=0.0, failed=True),), "Goblet squat 24 kg: 8 reps, the next one missed."),
        ((squat(8), squat(6, 28.0)), "Goblet squat: 24 kg 8 reps, 28 kg 6 reps."),
        (
            (squat(8, form="loose"), squat(7, form="clean")),
            "Goblet squat 24 kg: 8, 7 reps, set 1 loose, the last clean.",
        ),
        (
            (squat(8, tempo=(3.0, 1.0, None, None), rest_s=90.0),),
            "Goblet squat 24 kg: 8 reps, lowered in 3 s, 1 s pause at the bottom, rest 90 s.",
        ),
        ((squat(8, rest_s=0.0, partials=2),), "Goblet squat 24 kg: 8 reps, and 2 partials, no rest."),
        ((squat(8, rest_s=150.0, partials=1),), "Goblet squat 24 kg: 8 reps, and 1 partial, rest 2 min 30 s."),
        ((squat(8, warmup=True),), "Goblet squat 24 kg: 8 reps, warm-up."),
        ((squat(5, range=Range("extra", 5.0)),), "Goblet squat 24 kg: 5 reps, 5 cm extra range."),
        ((SetAct("push-up", BODY, 20),), "Push-up: 20 reps."),
        ((SetAct("plank", BODY, hold_s=60.0),), "Plank: 60 s."),
        ((SetAct("farmers-carry", Load("per_hand", 32.0), distance_m=40.0),), "Farmer's carry 2 x 32 kg: 40 m."),
        ((SetAct("dumbbell-row", Load("per_hand", 32.5), 11, side="each"),), "One-arm dumbbell row 32.5 kg: 11 reps."),
        ((SetAct("pull-up", Load("added", 10.0), 6),), "Pull-up +10 kg: 6 reps."),
        ((SetAct("pull-up", Load("assist", 20.0), 6),), "Pull-up 20 kg of help: 6 reps."),
        ((SetAct("pull-up", Load("assist", None, "green"), 6),), "Pull-up green band's help: 6 reps."),
        ((SetAct("band-pull-apart", Load("band", None, "red"), 20),), "Band pull-apart red band: 20 reps."),
        ((SetAct("band-pull-apart", Load("band")),), "Band pull-apart band: 1 set."),
    ],
)
def test_a_receipt_repeats_what_was_understood(sets: tuple[SetAct, ...], text: str) -> None:
    assert said(KG, Recorded(sets[0].exercise or "", sets, MONDAY)) == text


def test_days_that_are_past_are_named() -> None:
    assert said(KG, Recorded(SQUAT, (squat(8),), date(2026, 3, 1), -1)).startswith("Yesterday: Goblet")
    assert said(KG, Recorded(SQUAT, (squat(8),), date(2026, 2, 26), -4)).startswith("On Thursday: Goblet")


def test_the_lifters_unit_and_decimal_mark_are_used() -> None:
    pounds = squat(8, 135 * POUND_KG)
    assert said(LB, Recorded(SQUAT, (pounds,), MONDAY)) == "Goblet squat 135 lb: 8 reps."
    assert said(COMMA, Recorded(SQUAT, (squat(8, 22.5, rir=1.5),), MONDAY)) == (
        "Goblet squat 22,5 kg: 8 reps, 1,5 in reserve."
    )


@given(st.integers(1, 4000))
def test_half_pounds_come_back_as_they_were_typed(halves: int) -> None:
    typed = halves / 2
    stored = round(typed * POUND_KG, 4)
    assert LB.mass(stored) == f"{typed:g} lb"


@given(st.integers(1, 4000))
def test_quarter_kilograms_come_back_as_they_were_typed(quarters: int) -> None:
    typed = quarters / 4
    assert KG.mass(typed) == f"{typed:g} kg"
    assert COMMA.mass(typed) == f"{typed:g} kg".replace(".", ",")


def test_a_change_says_what_was_otherwise() -> None:
    after = squat(9, 22.5, rir=2.0)
    assert said(KG, Amended(squat(9, 25.0, rir=2.0), after, 2)) == (
        "Goblet squat, set 2: now 22.5 kg for 9 reps, 2 in reserve (was 25 kg)."
    )
    assert said(KG, Amended(squat(9), squat(9, rir=2.0), 1)) == (
        "Goblet squat, set 1: now 24 kg for 9 reps, 2 in reserve."
    )
    assert said(KG, Amended(squat(9), squat(9), 1)).endswith("as it was.")
    other = SetAct("front-squat", Load("total", 24.0), 9)
    assert "was goblet squat" in said(KG, Amended(squat(9), other, 1))


def test_what_is_taken_out_is_named_or_counted() -> None:
    assert said(KG, Erased((squat(9),))) == "Taken out: goblet squat 24 kg for 9 reps."
    assert said(KG, Erased((squat(9),) * 7)) == "Taken out: 7 sets."


# What comes next


def test_the_next_set_says_rest_load_count_and_what_to_watch() -> None:
    step = TargetSet(Load("total", 24.0), (10, 12), 2.0, (2.5, None, None, None), 120.0, Range("extra", 2.5))
    assert said(KG, Upcoming(SQUAT, step, 2, 3, fresh=False)) == (
        "Rest 2 min, then set 2 of 3: 24 kg for 10 to 12, 2 in reserve, lower in 2.5 s, 2.5 cm deeper."
    )
    fresh = Upcoming(SQUAT, step, 1, 3, fresh=True, plates=(20.0, 1.25), note="elbows in")
    lines = said(COMMA, fresh).split("\n")
    assert lines[0].startswith("Next: goblet squat 24 kg, 3 x 10 to 12")
    assert lines[1:] == ["A side of the bar: 20 + 1,25.", "Ines says: elbows in"]


def test_the_usual_tempo_is_not_said() -> None:
    step = TargetSet(BODY, (10, 10), None, (2.0, 0.0, 1.0, 0.0), None)
    assert said(KG, Upcoming("push-up", step, 2, 3, fresh=False)) == "Set 2 of 3: 10 reps."


def test_an_unknown_first_load_is_asked_for_by_effort() -> None:
    step = TargetSet(None, (8, 12), 2.0)
    assert "a load you could do 2 more with, for 8 to 12" in said(KG, Upcoming(SQUAT, step, 1, 3, fresh=True))


def test_a_session_is_five_lines_at_most_and_loses_no_exercise() -> None:
    names = list(EXERCISES)[:9]
    step = TargetSet(Load("total", 24.0), (8, 12), 2.0, None, 120.0)
    lines = tuple(Line(name, Target("reps", (step,) * 3), 3, (8, 12)) for name in names)
    text = said(KG, Listed("Push", lines, time(18, 30), 50, started=False))
    assert text.split("\n")[0] == "Push at 18:30, about 50 minutes."
    assert len(text.split("\n")) == 5
    assert all(EXERCISES[name].name.lower() in text.lower() for name in names)


def test_a_recap_is_short_even_when_much_was_done() -> None:
    done = tuple((name, tuple(SetAct(name, Load("total", 100.0), 5 + n) for n in range(6))) for name in EXERCISES)[:12]
    text = said(KG, Recapped(done, tuple(Stepped(name, "load") for name, _ in done[:3])))
    assert text.startswith("72 sets today.")
    assert len(text) < 900


# Questions


def test_short_answers_are_buttons_and_long_ones_are_numbered() -> None:
    short = Ask("numbers", (Option("one set, 10 kg for 10", (squat(10),)), Option("ten sets of 10", (squat(10),))))
    made = compose((Asked(short),), KG)
    assert made.labels == ("one set, 10 kg for 10", "ten sets of 10")
    assert made.text == "That can be read more than one way:"
    long = Ask("numbers", (Option("x" * (LABEL_FITS + 1), ()), Option("y", ())))
    made = compose((Asked(long),), KG)
    assert made.labels == ("1", "2")
    assert made.text.endswith("\n2. y")


def test_replacements_can_be_chosen_and_none_is_said_plainly() -> None:
    made = compose((Offered(SQUAT, (("leg-press", TargetSet(Load("total", 80.0), (8, 12))),)),), KG)
    assert made.ask is not None
    assert made.ask.options[0] == Option("leg press 80 kg", (Swap(SQUAT, "leg-press"),))
    none = compose((Offered(SQUAT, ()),), KG)
    assert none.ask is None
    assert "skip" in none.text


def test_erasing_much_asks_first() -> None:
    made = compose((EraseAsked(7),), KG)
    assert made.labels == ("yes", "no")
    assert "7 sets" in made.text


# The body and the coach


def test_the_coach_hears_in_one_or_two_lines() -> None:
    ache = AcheAct("lower-back", None, 5.0)
    eased = (Eased(SQUAT, "ease", ()),)
    assert alert(AlertAche("Tomas", ache, eased, ("leg-press",)), KG) == (
        "Tomas: lower back, 5 of 10.\nChanged today: goblet squat eased.\nOff today: leg press."
    )
    assert alert(AlertAche("Tomas", AcheAct("knee", "both"), ()), KG) == "Tomas: both sides, knee, level unsaid."
    told = alert(AlertAlarm("Tomas", "chest", "tight chest {braces} on set 3"), KG)
    assert '"tight chest {braces} on set 3"' in told
    assert "until you clear" in told


def test_a_hold_is_kind_with_and_without_a_coach() -> None:
    from datetime import UTC, datetime

    since = datetime(2026, 3, 2, tzinfo=UTC)
    assert "Ines clears you" in said(KG, Held(since))
    assert "Good to hear" in said(KG, Held(since, lifted_wish=True))
    assert "None" not in said(LB, Held(since)) + said(LB, Held(since, lifted_wish=True))


def test_words_kept_are_given_back_cut_to_size() -> None:
    text = said(KG, Noted(("x" * 500,), beside=True))
    assert text.startswith('Kept as a note for Ines: "xxx')
    assert len(text) < 200
    assert said(LB, Noted(("moonwalks",), beside=True)) == 'Kept as a note: "moonwalks"'


def test_help_fits_and_greets_nobody_wrongly() -> None:
    assert len(said(KG, Told("help"))) < 600
    assert said(KG, Told("hello")) == "Hello Tomas."


def test_a_line_is_never_said_twice() -> None:
    assert said(KG, Told("fine"), Told("fine")) == "All right."


def test_braces_in_names_and_words_stay_text() -> None:
    odd = Voice("{name}", ZoneInfo("UTC"), coach="{coach}")
    assert said(odd, Told("hello")) == "Hello {name}."
    assert "{coach}" in said(odd, Noted(("{x}",), beside=True))


def test_times_are_local() -> None:
    from datetime import UTC, datetime

    assert KG.clock(datetime(2026, 7, 1, 16, 30, tzinfo=UTC)) == "18:30"
    assert KG.date(MONDAY) == "2 March"
    assert figures.load(KG, "back-squat", Load("total", 100.0)) == "100 kg"
