"""What is said about a challenge in plain words: opened, joined, taken out of the count."""

from datetime import date

import pytest

from core.challenge.spoken import joining_of, opening_of, same_name, spoken
from core.challenge.striking import Struck, struck
from core.evidence.numbers import NUMBERS
from core.model.challenge import Challenge

TODAY = date(2026, 11, 25)  # a Wednesday


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("challenge", Challenge("Challenge", date(2026, 11, 30), 6)),
        (
            'challenge "Autumn" for 6 weeks from Monday, steps and sessions, teams Red and Blue',
            Challenge("Autumn", date(2026, 11, 30), 6, "both", ("Red", "Blue")),
        ),
        (
            "open a challenge called Long Dark, four weeks from 7 December, steps only",
            Challenge("Long Dark", date(2026, 12, 7), 4, "steps"),
        ),
        (
            "/challenge 8 weeks starting tomorrow, kept sessions only",
            Challenge("Challenge", date(2026, 11, 26), 8, "sessions"),
        ),
        (
            "Challenge: teams A, B and C from next Monday for 3 weeks",
            Challenge("Challenge", date(2026, 11, 30), 3, "both", ("A", "B", "C")),
        ),
        ("start a challenge from today", Challenge("Challenge", TODAY, 6)),
        ("new challenge from 3 January for two weeks", Challenge("Challenge", date(2027, 1, 3), 2)),
    ],
)  # fmt: skip
def test_opening_in_plain_words(text: str, expected: Challenge) -> None:
    said = spoken(text)
    assert said is not None
    assert said.kind == "open"
    opening = opening_of(said.rest, TODAY)
    assert (opening.challenge, opening.trouble) == (expected, None)


def test_opening_trouble_and_group() -> None:
    assert opening_of("from 2026-01-01", TODAY).trouble == "past"
    assert opening_of("for 40 weeks", TODAY).trouble == "weeks"
    assert opening_of("in Harbour Street, 4 weeks", TODAY).group == "Harbour Street"
    assert NUMBERS["challenge.weeks"].low <= opening_of("", TODAY).challenge.weeks <= NUMBERS["challenge.weeks"].high


@pytest.mark.parametrize(
    ("text", "kind"),
    [("challenge?", "how"), ("challenge help", "how"),
     ("end challenge", "end"), ("join as Mo", "join"), ("count me in", "join"), ("leave", "leave"), ("pause", "pause"),
     ("I'm back", "back"), ("standings", "standings"), ("back squat 100 x 5", None), ("pause 2 s at the bottom", None),
     ("points of contact", None), ("goblet squat 24 x 10", None)],
)  # fmt: skip
def test_words_about_a_challenge_and_words_that_are_not(text: str, kind: str | None) -> None:
    said = spoken(text)
    assert (said.kind if said else None) == kind


def test_joining_names_and_teams() -> None:
    teams = ("Red", "Blue")
    assert [joining_of(rest, teams).shown for rest in ("", "as Mo", "Blue as Mo B", "as Mo in team Red")] == [
        None,
        "Mo",
        "Mo B",
        "Mo",
    ]
    assert [joining_of(rest, teams).team for rest in ("", "as Mo", "Blue as Mo B", "as Mo in team Red")] == [
        None,
        None,
        "Blue",
        "Red",
    ]


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("don't count Mo on Tuesday", Struck("Mo", date(2026, 11, 24), counts=False)),
        ("Don’t count Mo B's session of last Monday.", Struck("Mo B", date(2026, 11, 23), counts=False)),
        ("do not count Mo on Thursday", Struck("Mo", date(2026, 11, 19), counts=False)),
        ("count Mo on Wednesday", Struck("Mo", TODAY, counts=True)),
        ("count Mo of yesterday", Struck("Mo", date(2026, 11, 24), counts=True)),
        ("don't count Jonas on 3 November", Struck("Jonas", date(2026, 11, 3), counts=False)),
        ("don't count Mo on 3 December", Struck("Mo", date(2025, 12, 3), counts=False)),
        ("don't count Mo on 2026-11-20", Struck("Mo", date(2026, 11, 20), counts=False)),
        ("don't count it", None),
        ("count me in", None),
        ("count Mo on the machine", None),
    ],
)
def test_the_coach_takes_a_session_out_or_puts_it_back(text: str, expected: Struck | None) -> None:
    assert struck(text, TODAY) == expected


@pytest.mark.parametrize(
    ("one", "other", "same"),
    [
        ("Heron", "heron", True),
        ("Heron", "He\u200bron", True),
        ("Heron", "\u202eHeron", True),
        ("Heron", "Ｈeron", True),
        ("Zoë", "Zoe\u0308", True),
        ("Heron", "Herons", False),
        ("Zoë", "Zoe", False),
    ],
)
def test_names_that_look_the_same_are_the_same(one: str, other: str, same: bool) -> None:
    assert same_name(one, other) is same


def test_a_name_of_nothing_visible_is_none() -> None:
    assert joining_of("as \u200b\u2060", ()).shown is None
    assert joining_of("as  The\u200b  Bell", ()).shown == "The Bell"
