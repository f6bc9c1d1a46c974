"""What the clock says: the session to come, the missed one, the recap of silence, the week; and what is answered."""

from datetime import UTC, date, datetime, time, timedelta

import pytest

from core.checkin import answer, remind
from core.model.acts import AcheAct, Alarm, Finish
from core.model.book import Incoming
from core.model.outcome import AgendaChange, Outcome
from core.model.plan import Plan, TrainingDay
from tests.core.flow_world import LEGS, MONDAY, SPLIT, ZONE, World, squat, text

TUESDAY = MONDAY + timedelta(days=1)
LEAD = datetime(2026, 3, 2, 17, 30, tzinfo=ZONE).astimezone(UTC)


def local(day: int, hour: int, minute: int = 0) -> datetime:
    return datetime(2026, 3, day, hour, minute, tzinfo=ZONE).astimezone(UTC)


def rings(world: World, kind: str, on: date, now: datetime) -> Outcome:
    world.now = now
    outcome = remind(kind, on, world.book, now)
    world.keeper.apply(outcome, None, now)
    return outcome


def presses(world: World, outcome: Outcome, label: str) -> Outcome:
    buttons = {button.label: button.data for button in outcome.replies[0].buttons}
    world.number += 1
    incoming = Incoming(world.number, "", press=buttons[label])
    done = answer(incoming, world.book, world.now)
    world.keeper.apply(done, incoming, world.now)
    return done


def rows(outcome: Outcome) -> dict[tuple[str, date], datetime | None]:
    return {(row.kind, row.on): row.due for row in outcome.agenda}


def test_a_session_is_announced_in_its_lines_with_three_answers() -> None:
    outcome = rings(World(), "prompt", MONDAY, LEAD)
    lines = text(outcome).split("\n")
    assert lines[0].startswith("Legs at 18:30, about ")
    assert 2 <= len(lines) <= 5
    (reply,) = outcome.replies
    assert reply.kind == "prompt"
    assert [button.label for button in reply.buttons] == ["moved to tomorrow", "not today", "travelling"]
    assert all(len(button.data.encode()) <= 64 for button in reply.buttons)
    following = rows(outcome)
    assert following["prompt", MONDAY + timedelta(days=7)] == LEAD + timedelta(days=7)


def test_the_targets_of_the_prompt_are_those_of_the_session() -> None:
    world = World()
    rings(world, "prompt", MONDAY, LEAD)
    targets = dict(world.book.targets)
    assert targets
    world.now = LEAD + timedelta(hours=1)
    world.does(squat(12))
    assert world.book.targets[SPLIT] == targets[SPLIT]


def test_a_prompt_after_the_start_is_dropped_and_the_next_one_is_set() -> None:
    outcome = rings(World(), "prompt", MONDAY, local(2, 18, 30))
    assert outcome.replies == ()
    assert ("prompt", MONDAY + timedelta(days=7)) in rows(outcome)


def test_a_session_that_has_begun_is_not_announced() -> None:
    world = World()
    world.now = local(2, 17)
    world.does(squat(12))
    assert rings(world, "prompt", MONDAY, LEAD).replies == ()


def test_moved_to_tomorrow_moves_prompt_and_question() -> None:
    world = World()
    prompt = rings(world, "prompt", MONDAY, LEAD)
    outcome = presses(world, prompt, "moved to tomorrow")
    assert text(outcome) == "Moved to Tuesday at 18:30."
    following = rows(outcome)
    assert following["prompt", TUESDAY] == local(3, 17, 30)
    assert following["missed", MONDAY] is None
    assert text(rings(world, "prompt", TUESDAY, local(3, 17, 30))).startswith("Legs at 18:30")
    assert ("missed", MONDAY) not in world.keeper.agenda


def test_a_session_moves_past_days_that_have_their_own() -> None:
    week = Plan((LEGS, TrainingDay(1, LEGS.at, "Push", LEGS.exercises)))
    world = World(plan=week)
    prompt = rings(world, "prompt", MONDAY, LEAD)
    assert prompt.replies[0].buttons[0].label == "moved to Wednesday"
    assert "Wednesday" in text(presses(world, prompt, "moved to Wednesday"))


@pytest.mark.parametrize("label", ["not today", "travelling"])
def test_a_day_off_is_asked_about_no_more(label: str) -> None:
    world = World()
    outcome = presses(world, rings(world, "prompt", MONDAY, LEAD), label)
    assert text(outcome)
    assert "guilt" not in text(outcome)
    assert AgendaChange("missed", MONDAY, None) in outcome.agenda
    assert ("missed", MONDAY) not in world.keeper.agenda


def test_the_answer_can_be_typed() -> None:
    world = World()
    rings(world, "prompt", MONDAY, LEAD)
    world.number += 1
    outcome = answer(Incoming(world.number, "not today"), world.book, world.now)
    assert text(outcome) == "Today is off. Nothing to make up for."


def test_a_missed_session_is_one_kind_question_next_morning() -> None:
    world = World()
    outcome = rings(world, "missed", MONDAY, local(3, 9))
    assert text(outcome) == "Legs on Monday has no sets. What became of it?"
    assert [button.label for button in outcome.replies[0].buttons] == [
        "did it, will write it",
        "moved to today",
        "let it go",
    ]
    assert "Legs, about" in text(presses(world, outcome, "moved to today"))
    world.does(squat(12))
    assert len(world.sets(TUESDAY)) == 1


def test_a_kept_session_is_not_asked_about() -> None:
    world = World()
    world.does(squat(12))
    assert rings(world, "missed", MONDAY, local(3, 9)).replies == ()


def test_while_targets_are_held_no_session_is_missed_and_a_prompt_says_the_hold() -> None:
    world = World()
    world.now = local(2, 9)
    world.does(Alarm("chest"))
    assert "on hold" in text(rings(world, "prompt", MONDAY, LEAD))
    assert rings(world, "missed", MONDAY, local(3, 9)).replies == ()


def test_two_quiet_hours_close_the_session_once() -> None:
    world = World()
    world.does(squat(12))
    due = world.now + timedelta(hours=2)
    outcome = rings(world, "recap", MONDAY, due)
    assert text(outcome).startswith("Two quiet hours, so I closed today: 1 set.")
    assert outcome.keep == ()
    assert outcome.replies[0].kind == "summary"
    world.does(Finish())
    assert rings(world, "recap", MONDAY, world.now).replies == ()


def test_a_recap_due_at_night_waits_for_the_morning() -> None:
    world = World()
    world.now = local(2, 20)
    world.does(squat(12))
    outcome = rings(world, "recap", MONDAY, local(2, 22))
    assert outcome.replies == ()
    assert rows(outcome) == {("recap", MONDAY): local(3, 7)}
    assert "1 set" in text(rings(world, "recap", MONDAY, local(3, 7)))


def test_a_week_is_summed_up() -> None:
    world = World()
    world.does(squat(12), squat(12))
    sunday = date(2026, 3, 8)
    outcome = rings(world, "summary", sunday, local(8, 18))
    assert text(outcome).startswith("Your week, 2 March to 8 March: 1 of 1 planned sessions, 2 sets.")
    assert rows(outcome) == {("summary", date(2026, 3, 15)): local(15, 18)}


def test_an_old_button_says_so_and_where_things_are() -> None:
    world = World()
    prompt = rings(world, "prompt", MONDAY, LEAD)
    world.now = local(5, 12)
    assert text(presses(world, prompt, "not today")).startswith("That question is closed.\nNo sets today so far.")


@pytest.mark.parametrize("data", ["", "a:1", "a:x:y", "d:99999999999:m", "d:0:m", "d:739677:z", "zzz", "a:1:²"])
def test_any_button_data_is_answered(data: str) -> None:
    outcome = answer(Incoming(1, "", press=data), World().book, LEAD)
    assert "closed" in text(outcome)


def test_an_unknown_kind_says_nothing() -> None:
    assert remind("moon", MONDAY, World().book, LEAD).replies == ()


def test_an_ache_of_yesterday_is_in_the_prompts_targets() -> None:
    world = World()
    world.now = local(1, 20)
    world.does(AcheAct("knee", "left", 7.0))
    said = text(rings(world, "prompt", MONDAY, LEAD))
    assert "Goblet squat, split squat: not for now." in said
    assert "Goblet squat 1" not in said


def early(hour: int = 7) -> World:
    """Trains on Mondays before the quiet hours are over an hour ahead, so it is announced the evening before."""
    return World(plan=Plan((TrainingDay(0, time(hour), "Legs", LEGS.exercises),)))


EVE = local(1, 21, 29)


def test_the_evening_before_the_day_is_named_and_so_are_the_answers() -> None:
    outcome = rings(early(), "prompt", MONDAY, EVE)
    assert text(outcome).startswith("Legs on Monday at 07:00, about ")
    assert [one.label for one in outcome.replies[0].buttons] == ["moved to Tuesday", "not tomorrow", "travelling"]


@pytest.mark.parametrize("words", ["moved to Tuesday", "can we do it on Tuesday?", None])
def test_an_early_session_moved_the_evening_before_is_announced_the_evening_before_its_new_day(
    words: str | None,
) -> None:
    world = early()
    prompt = rings(world, "prompt", MONDAY, EVE)
    outcome = presses(world, prompt, "moved to Tuesday") if words is None else typed(world, words)
    assert text(outcome) == "Moved to Tuesday at 07:00."
    assert rows(outcome)["prompt", TUESDAY] == local(2, 21, 29)
    assert text(rings(world, "prompt", TUESDAY, local(2, 21, 29))).startswith("Legs on Tuesday at 07:00")


@pytest.mark.parametrize("words", ["not tomorrow", "not today", None])
def test_an_early_session_called_off_the_evening_before(words: str | None) -> None:
    world = early()
    prompt = rings(world, "prompt", MONDAY, EVE)
    outcome = presses(world, prompt, "not tomorrow") if words is None else typed(world, words)
    assert text(outcome) == "Monday is off. Nothing to make up for."
    world.now = local(2, 7)
    assert "Nothing is planned" in text(typed(world, "starting"))


def test_another_time_of_today_moves_the_prompt() -> None:
    world = World()
    world.now = local(2, 12)
    outcome = typed(world, "push it to 20:00")
    assert text(outcome) == "Moved to Monday at 20:00."
    assert rows(outcome)["prompt", MONDAY] == local(2, 19)
    assert text(rings(world, "prompt", MONDAY, local(2, 19))).startswith("Legs at 20:00")


def test_a_day_with_a_session_of_its_own_is_taken_and_a_moved_one_counts() -> None:
    world = World(plan=Plan((LEGS, TrainingDay(2, time(18), "Push", LEGS.exercises))))
    world.now = local(2, 12)
    assert "Wednesday has its own session, Push" in text(typed(world, "move it to Wednesday"))
    typed(world, "move it to Tuesday")
    world.now = local(3, 12)
    assert text(typed(world, "moved to tomorrow")).startswith("Wednesday has its own session")
    assert text(typed(world, "move it to Thursday")) == "Moved to Thursday at 18:30."


def typed(world: World, words: str) -> Outcome:
    world.number += 1
    incoming = Incoming(world.number, words)
    outcome = answer(incoming, world.book, world.now)
    world.keeper.apply(outcome, incoming, world.now)
    return outcome
