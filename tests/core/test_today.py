"""Today goes otherwise: less time, another kit, all of it after all; and word that a rest is over."""

from dataclasses import replace
from datetime import timedelta

import pytest

from core.checkin import remind
from core.join.today import Usual, today_in
from core.join.wishes import OnlyToday, ShortOfTime
from core.model.acts import OnlyKit, Skip
from core.model.lifter import Kit, Lifter
from core.model.outcome import Outcome
from tests.core.flow_world import CALF, MONDAY, SPLIT, SQUAT, World, text
from tests.core.test_checkin import says

GYM = Usual("kg", None, MONDAY)


@pytest.mark.parametrize(
    ("words", "minutes"),
    [
        ("only 20 minutes", 20), ("I only have 20 minutes today", 20), ("just 20 min", 20), ("20 min max", 20),
        ("only half an hour tonight, sorry", 30), ("got 25 minutes today", 25), ("have to leave in 30 minutes", 30),
        ("can you make it 20 minutes?", 20), ("short on time, 20 min", 20), ("a 30 minute session please", 30),
        ("I've only got twenty minutes", 20), ("nur 20 Minuten heute", 20), ("hoy solo tengo 20 minutos", 20),
        ("Starting. Only 45 minutes though", 0), ("only 8 today", 0), ("only 20", 0), ("plank 20 seconds only", 0),
        ("just did 20 minutes", 0), ("only 2 minutes", 0), ("only 20 minutes tomorrow", 0), ("rest 2 minutes", 0),
        ("20 minutes on the bike", 0),
    ],
)  # fmt: skip
def test_a_short_time_is_understood_and_nothing_else_is_taken_for_one(words: str, minutes: int) -> None:
    found = today_in(words, GYM)
    assert (found.wish.minutes if found and isinstance(found.wish, ShortOfTime) else 0) == minutes


@pytest.mark.parametrize(
    ("words", "heaviest"),
    [
        ("only dumbbells up to 20 today", 20.0), ("hotel gym, dumbbells up to 20", 20.0),
        ("I've only got dumbbells to 15 here", 15.0), ("only 12 kg dumbbells today", 12.0),
        ("only dumbbells today, 20 max", 20.0), ("heute nur Kurzhanteln bis 20", 20.0),
        ("hoy solo mancuernas hasta 20", 20.0), ("only dumbbells today", 50.0), ("just bodyweight today", 0.0),
        ("no dumbbells here today", 0.0), ("no barbell today", 50.0),
    ],
)  # fmt: skip
def test_a_kit_for_the_day_is_understood(words: str, heaviest: float) -> None:
    found = today_in(words, GYM)
    assert found is not None
    assert isinstance(found.wish, OnlyToday)
    assert found.wish.kit is not None
    assert max(found.wish.kit.dumbbells_kg, default=0.0) == heaviest
    assert (found.wish.kit.bar_kg is not None) == words.startswith("no dumbbells")


@pytest.mark.parametrize(
    "words",
    ["today bench 60x8", "today dumbbell bench 20s x 10", "no pain today", "no bench today", "only 3 sets today",
     "only the last one was ugly today", "dumbbell press only 8 today"],
)  # fmt: skip
def test_what_is_no_kit_is_none(words: str) -> None:
    assert today_in(words, GYM) is None


def test_kinds_named_bare_are_those_at_home() -> None:
    home = Usual("kg", Kit(20.0, {20.0: 2}, (10.0, 14.0), (24.0,)), MONDAY)
    found = today_in("only dumbbells today", home)
    assert found is not None
    assert found.wish == OnlyToday(Kit(dumbbells_kg=(10.0, 14.0)))
    found = today_in("no kettlebell here", home)
    assert found is not None
    assert found.wish == OnlyToday(Kit(20.0, {20.0: 2}, (10.0, 14.0)), without="kettlebell")


def left_out(world: World) -> list[str | None]:
    return [one.act.exercise for one in world.keeper.everything if isinstance(one.act, Skip)]


def test_short_of_time_whole_exercises_go_the_least_first() -> None:
    world = World()
    outcome = says(world, "only 20 minutes")
    assert left_out(world) == [CALF]
    assert "standing calf raise" in text(outcome).casefold()
    says(world, "only 10 minutes")
    assert left_out(world) == [SPLIT, CALF]
    says(world, "undo")
    assert left_out(world) == [CALF]
    says(world, "whole session after all")
    assert left_out(world) == []


def test_what_is_begun_stays_and_is_counted_from_here() -> None:
    world = World()
    for words in ("split squat 2x10 kg x 10 each side", "10", "10"):
        says(world, words)
    says(world, "only 10 minutes left")
    assert left_out(world) == [CALF]
    says(world, "skip goblet squat")
    says(world, "only 40 minutes")
    assert left_out(world) == [SQUAT]  # what the lifter left out stays out


def test_when_even_one_is_too_long_it_stays_and_that_is_said() -> None:
    outcome = says(World(), "only 5 minutes")
    assert "as many sets as fit" in text(outcome)


def targets(world: World) -> dict[str, float | None]:
    return {name: one.sets[0].load.kg if one.sets and one.sets[0].load else None
            for name, one in world.book.targets.items()}  # fmt: skip


def test_targets_follow_another_kit_at_once_and_come_back() -> None:
    world = World(lifter=Lifter(bodyweight_kg=80.0))
    says(world, "starting")
    before = targets(world)
    outcome = says(world, "only dumbbells up to 6 kg today")
    after = targets(world)
    assert after != before
    assert all((kg or 0.0) <= 6.0 for name, kg in after.items() if name != CALF)
    assert "Not possible with that: standing calf raise" in text(outcome)
    assert world.book.lifter.kit is None  # for good, nothing changed
    says(world, "undo")
    assert targets(world) == before


def test_the_kit_of_a_day_ends_with_it() -> None:
    world = World()
    says(world, "only bands today")
    assert [one.act for one in world.keeper.everything] == [OnlyKit(Kit(bands=("band",)))]
    world.now += timedelta(days=7)
    assert "Goblet squat" in text(says(world, "starting"))


def test_an_edit_takes_the_kit_back() -> None:
    world = World()
    says(world, "starting")
    before = targets(world)
    says(world, "only dumbbells up to 6 kg today")
    says(world, "thanks", edit=2)
    assert targets(world) == before


def test_an_alarm_beside_a_short_time_outranks_it() -> None:
    outcome = says(World(), "only 20 minutes, my chest feels tight and strange")
    assert outcome.hold is not None


# Nudges


def nudged(world: World, seconds: float) -> Outcome:
    """What comes of the row that is due so long from now."""
    kind, on = next(key for key in world.keeper.agenda if key[0].startswith("rest"))
    later = world.now + timedelta(seconds=seconds)
    return remind(kind, on, world.keeper.at(later), later)


def eager() -> World:
    world = World()
    world.keeper.book = replace(world.keeper.book, profile=replace(world.keeper.book.profile, nudges=True))
    return world


def rests(world: World) -> list[float]:
    """Seconds until each word about a rest that is to come."""
    rows = world.keeper.agenda.items()
    return [(due - world.now).total_seconds() for (kind, _), due in rows if kind.startswith("rest")]


def test_a_nudge_comes_when_the_rest_is_over_and_names_the_set() -> None:
    world = eager()
    says(world, "goblet squat 24 kg x 12")
    assert rests(world) == [120.0]
    assert text(nudged(world, 120)).startswith("The rest is over.\nSet 2 of 3: 24 kg for 10 to 12")
    assert nudged(world, 119).replies == ()
    assert nudged(world, 301).replies == ()


def test_the_next_set_cancels_it_and_sets_its_own() -> None:
    world = eager()
    says(world, "goblet squat 24 kg x 12")
    kind = next(kind for kind, _ in world.keeper.agenda if kind.startswith("rest"))
    world.now += timedelta(seconds=90)
    says(world, "11")
    assert rests(world) == [120.0]
    assert not any(one == kind for one, _ in world.keeper.agenda)
    says(world, "done for today")
    assert rests(world) == []


def test_asking_what_is_next_does_not_put_it_off() -> None:
    world = eager()
    says(world, "goblet squat 24 kg x 12")
    world.now += timedelta(seconds=60)
    says(world, "what's next?")
    assert rests(world) == [60.0]


def test_without_the_wish_there_is_none() -> None:
    world = World()
    says(world, "goblet squat 24 kg x 12")
    assert rests(world) == []


def test_a_set_taken_back_is_not_nudged_for() -> None:
    world = eager()
    says(world, "goblet squat 24 kg x 12")
    says(world, "undo")
    assert rests(world) == [] or nudged(world, 120).replies == ()
