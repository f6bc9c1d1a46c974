"""What acts do to a session: kept, corrected, erased, skipped, swapped; aches and alarms; the hold that holds."""

from datetime import UTC, date, datetime, timedelta

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.evidence.exercises import EXERCISES
from core.flow import day
from core.flow.replacements import can_be_done
from core.model.acts import (
    AcheAct,
    Act,
    Alarm,
    Amend,
    AsPlanned,
    Begin,
    Bodyweight,
    Erase,
    Finish,
    Next,
    SetAct,
    Skip,
    Swap,
)
from core.model.lifter import Kit, Lifter
from core.model.outcome import AgendaChange
from core.model.plan import Plan
from core.model.quantities import BODY, Load
from tests.core.flow_world import CALF, EVENING, LEGS, MONDAY, SPLIT, SQUAT, ZONE, World, split, squat, text, to_coach

KNEE = "knee"


# Sets


def test_a_set_is_kept_for_the_day_and_answered_with_the_next_one() -> None:
    world = World()
    outcome = world.does(squat(12, rir=2.0))
    assert world.sets() == [squat(12, rir=2.0)]
    assert [one.on for one in outcome.keep] == [MONDAY]
    first, following = text(outcome).split("\n")[:2]
    assert first == "Goblet squat 24 kg: 12 reps, 2 in reserve."
    assert following.startswith("Rest 2 min, then set 2 of 3: ")


def test_the_days_targets_are_put_in_force_once_and_stay() -> None:
    world = World()
    first = world.does(Begin())
    assert {one.exercise for one in first.given} == {SQUAT, SPLIT, CALF}
    targets = dict(world.book.targets)
    world.does(squat(12))
    assert world.book.targets[SPLIT] == targets[SPLIT]
    third = world.does(squat(12))
    assert third.given == ()


def test_a_first_load_is_settled_by_the_first_set_that_is_done() -> None:
    world = World()
    world.does(Begin())
    assert world.book.targets[SQUAT].way == "first"
    outcome = world.does(squat(12, 20.0, rir=2.0))
    assert [one.load for one in world.book.targets[SQUAT].sets] == [Load("total", 20.0)] * 3
    assert "set 2 of 3: 20 kg for 10 to 12" in text(outcome)
    short = world.does(squat(3, 20.0, rir=0.0))
    assert "20 kg for" not in text(short)


def test_the_end_of_an_exercise_says_what_is_next_with_its_reason() -> None:
    outcome = World().does(squat(12), squat(12), squat(11))
    assert "Next: split squat" in text(outcome)
    assert "Why: " in text(outcome)


def test_the_end_of_the_plan_says_so_and_what_is_asked_next_time() -> None:
    world = World()
    world.does(*[squat(12)] * 3, *[split(10)] * 3)
    outcome = world.does(*[SetAct(CALF, Load("total", 40.0), 15)] * 2)
    assert "last of today's plan" in text(outcome)
    assert "Standing calf raise next time: " in text(outcome)


@pytest.mark.parametrize("exercise", sorted(EXERCISES))
def test_one_set_is_answered_in_under_400_characters(exercise: str) -> None:
    row = EXERCISES[exercise]
    load = BODY if row.load_kind == "body" else Load(row.load_kind, None if row.load_kind == "band" else 20.0)
    said = SetAct(exercise, load, 10, rir=1.5, tempo=(3.0, 1.0, None, None), form="fair", rest_s=90.0)
    assert len(text(World().does(said))) < 400
    assert len(text(World(plan=Plan()).does(said))) < 400


def test_yesterdays_sets_go_to_yesterday_and_ask_nothing_of_today() -> None:
    world = World()
    outcome = world.does(squat(9, day=-1))
    assert world.sets(MONDAY - timedelta(days=1)) == [squat(9)]
    assert world.sets() == []
    assert text(outcome) == "Yesterday: Goblet squat 24 kg: 9 reps."
    assert outcome.given == ()


def test_a_session_past_midnight_keeps_its_day_for_four_hours() -> None:
    world = World()
    world.now = datetime(2026, 3, 2, 23, 50, tzinfo=ZONE).astimezone(UTC)
    world.does(squat(12))
    world.does(squat(12), minutes=4 * 60)
    assert len(world.sets()) == 2
    world.does(squat(12), minutes=4 * 60 + 1)
    assert len(world.sets()) == 2
    assert len(world.sets(MONDAY + timedelta(days=1))) == 1


def test_a_finished_session_does_not_reach_past_midnight() -> None:
    world = World()
    world.now = datetime(2026, 3, 2, 23, 30, tzinfo=ZONE).astimezone(UTC)
    world.does(squat(12), Finish())
    world.does(squat(12), minutes=60)
    assert len(world.sets(MONDAY + timedelta(days=1))) == 1


def test_left_and_right_make_one_set() -> None:
    world = World()
    outcome = world.does(split(10, side="left"), split(10, side="right"))
    assert "set 2 of 3" in text(outcome)


def test_warm_ups_and_drops_do_not_count() -> None:
    outcome = World().does(squat(12, 12.0, warmup=True), squat(12), squat(4, drop=True))
    assert "set 2 of 3" in text(outcome)


def test_two_exercises_in_turn_keep_their_own_places() -> None:
    world = World()
    world.does(squat(12))
    world.does(split(10))
    outcome = world.does(squat(12))
    assert day.now_on(world.book, MONDAY) == SPLIT
    assert "set 2 of 3" in text(outcome)


def test_without_a_plan_sets_are_kept_and_targets_come_from_the_usual_aim() -> None:
    world = World(plan=Plan())
    outcome = world.does(squat(12))
    assert "set 2 of 3" in text(outcome)
    done = world.does(squat(12), squat(12))
    assert "Goblet squat next time: " in text(done)
    assert "plan" not in text(done)


def test_silence_is_looked_at_two_hours_after_the_last_set() -> None:
    world = World()
    outcome = world.does(squat(12))
    assert AgendaChange("recap", MONDAY, world.now + timedelta(hours=2)) in outcome.agenda
    assert AgendaChange("missed", MONDAY, None) in outcome.agenda
    finished = world.does(Finish())
    assert AgendaChange("recap", MONDAY, None) in finished.agenda


# As planned


def test_as_planned_keeps_what_is_still_to_do_at_its_low_end() -> None:
    world = World()
    world.does(squat(12))
    outcome = world.does(AsPlanned(SQUAT))
    target = world.book.targets[SQUAT]
    assert [one.reps for one in world.sets()] == [12, target.sets[1].reps[0], target.sets[2].reps[0]]
    assert text(outcome).startswith("As planned: Goblet squat")
    everything = world.does(AsPlanned())
    assert {one.exercise for one in world.sets()} == {SQUAT, SPLIT, CALF}
    assert "Goblet squat" not in text(everything).split("last of")[0]


def test_as_planned_with_nothing_planned_says_so() -> None:
    assert "Write the sets with their numbers" in text(World(plan=Plan()).does(AsPlanned()))


# Corrections


def test_the_last_set_and_a_numbered_set_can_be_changed() -> None:
    world = World()
    world.does(squat(12, 22.0), squat(11), squat(10))
    outcome = world.does(Amend("last", {"reps": 9, "form": "loose"}))
    assert world.sets()[-1] == squat(9, form="loose")
    assert text(outcome).startswith("Goblet squat, set 3: now 24 kg for 9 reps, loose (was 10 reps).")
    world.does(Amend(1, {"load": Load("total", 24.0)}))
    assert world.sets()[0] == squat(12)
    assert [one.reps for one in world.sets()] == [12, 11, 9]


def test_a_number_counts_within_the_exercise_of_the_last_set_without_warm_ups() -> None:
    world = World()
    world.does(squat(12), squat(5, 12.0, warmup=True), squat(11))
    world.does(Amend(2, {"reps": 8}))
    assert [one.reps for one in world.sets()] == [12, 5, 8]


def test_a_field_can_be_cleared_and_an_exercise_mended() -> None:
    world = World()
    world.does(squat(12, rir=2.0))
    world.does(Amend("last", {"rir": None}))
    assert world.sets() == [squat(12)]
    outcome = world.does(Amend("last", {"exercise": "front-squat"}))
    assert world.sets()[0].exercise == "front-squat"
    assert "was goblet squat" in text(outcome)


def test_a_set_moved_to_another_day_goes_there() -> None:
    world = World()
    world.does(squat(12))
    world.does(Amend("last", {"day": -1}))
    assert world.sets() == []
    assert world.sets(MONDAY - timedelta(days=1)) == [squat(12)]


@pytest.mark.parametrize("which", [0, 4, -1])
def test_a_set_that_is_not_there_is_said_to_be_missing(which: int) -> None:
    world = World()
    world.does(squat(12), squat(12))
    outcome = world.does(Amend(which, {"reps": 9}))
    assert "goblet squat has 2 sets so far" in text(outcome)
    assert outcome.replace == ()


def test_there_is_nothing_to_mend_before_the_first_set() -> None:
    assert "no set yet" in text(World().does(Amend("last", {"reps": 9})))
    assert "no set yet" in text(World().does(Erase("last")))


def test_the_last_two_can_be_taken_out_one_after_the_other() -> None:
    world = World()
    world.does(squat(12), squat(11), squat(10))
    outcome = world.does(Erase("last"), Erase("last"))
    assert world.sets() == [squat(12)]
    assert text(outcome).startswith("Taken out: goblet squat 24 kg for 10 reps, goblet squat 24 kg for 11 reps.")


def test_a_target_follows_a_correction() -> None:
    world = World()
    world.does(squat(12), squat(12), squat(12))
    outcome = world.does(Erase("last"))
    assert "set 3 of 3" in text(outcome)


@pytest.mark.parametrize(("sets", "asks"), [(3, False), (4, True)])
def test_erasing_the_day_asks_only_when_it_is_much(sets: int, asks: bool) -> None:
    world = World()
    world.does(*[squat(12)] * sets)
    outcome = world.does(Erase("today"))
    assert (outcome.pending is not None) is asks
    assert len(world.sets()) == (sets if asks else 0)
    if asks:
        assert [button.label for button in outcome.replies[0].buttons] == ["yes", "no"]
        world.does(Erase("today"), sure=True)
        assert world.sets() == []


def test_an_amended_set_keeps_its_place() -> None:
    world = World()
    world.does(squat(12), squat(11))
    world.does(Amend(1, {"reps": 10}))
    world.does(Amend("last", {"reps": 9}))
    assert [one.reps for one in world.sets()] == [10, 9]


# Edits


def test_an_edited_message_is_read_anew_in_its_place() -> None:
    world = World()
    world.does(squat(12))
    world.does(squat(11))
    outcome = world.does(squat(10), edit=1)
    assert [one.reps for one in world.sets()] == [10, 11]
    assert text(outcome).startswith("Changed to: Goblet squat 24 kg: 10 reps.")


def test_an_edited_correction_corrects_the_same_set() -> None:
    world = World()
    world.does(squat(12))
    world.does(Amend("last", {"reps": 9}))
    world.does(Amend("last", {"reps": 8}), edit=2)
    assert world.sets() == [squat(8)]


def test_an_edit_takes_back_an_ache_that_it_no_longer_tells() -> None:
    world = World()
    world.does(AcheAct(KNEE, "left", 5.0))
    assert len(world.book.lifter.aches) == 1
    world.does(squat(12), edit=1)
    assert world.book.lifter.aches == ()


# The course of a session


def test_a_session_begins_with_its_list() -> None:
    lines = text(World().does(Begin())).split("\n")
    assert lines[0].startswith("Legs, about ")
    assert len(lines) == 4
    assert "Nothing is planned" in text(World(plan=Plan()).does(Begin()))


def test_the_coachs_cue_comes_with_the_first_set_only() -> None:
    world = World()
    assert "Ines says: heels down" in text(world.does(Next()))
    assert "heels down" not in text(world.does(squat(12)))


def test_a_skipped_exercise_is_off_today_and_the_next_one_comes() -> None:
    world = World()
    outcome = world.does(Skip(SQUAT))
    assert text(outcome).startswith("Goblet squat is off for today.\nNext: split squat")
    assert day.now_on(world.book, MONDAY) == SPLIT
    world.does(Skip())
    assert day.now_on(world.book, MONDAY) == CALF


def test_skipping_what_has_begun_leaves_its_sets() -> None:
    world = World()
    world.does(squat(12))
    assert "Next: split squat" in text(world.does(Skip(SQUAT)))
    assert world.sets() == [squat(12)]


def test_a_swap_takes_the_place_and_the_aim() -> None:
    world = World()
    outcome = world.does(Swap(SQUAT, "leg-press"))
    assert text(outcome).startswith("Leg press in the place of goblet squat today.\nNext: leg press")
    assert day.aim_of(world.book, MONDAY, "leg-press") == LEGS.exercises[0].aim
    assert SQUAT not in [place.exercise for place in day.places(world.book, MONDAY)]


def test_a_swap_back_restores_the_exercise() -> None:
    world = World()
    world.does(Swap(SQUAT, "leg-press"))
    world.does(Swap("leg-press", SQUAT))
    assert [place.exercise for place in day.places(world.book, MONDAY)] == [SQUAT, SPLIT, CALF]


def test_at_most_three_replacements_are_offered_and_the_kit_allows_each() -> None:
    kit = Kit(dumbbells_kg=(10.0, 20.0))
    world = World(lifter=Lifter(bodyweight_kg=80.0, kit=kit))
    outcome = world.does(Swap(SQUAT, None))
    assert outcome.pending is not None
    picked = [act.to for option in outcome.pending.ask.options for act in option.acts if isinstance(act, Swap)]
    assert 1 <= len(picked) <= 3
    for to in picked:
        assert to is not None
        assert can_be_done(kit, to)
        assert set(EXERCISES[to].main_muscles) & set(EXERCISES[SQUAT].main_muscles)
    assert all(len(button.data.encode()) <= 64 for button in outcome.replies[0].buttons)


@pytest.mark.parametrize(
    ("kit", "exercise", "possible"),
    [
        (None, "back-squat", True),
        (Kit(), "back-squat", False),
        (Kit(bar_kg=20.0), "back-squat", True),
        (Kit(), "push-up", True),
        (Kit(kettlebells_kg=(16.0,)), SQUAT, True),
        (Kit(kettlebells_kg=(16.0,)), "dumbbell-curl", False),
        (Kit(stack_step_kg=5.0), "leg-press", True),
    ],
)
def test_a_kit_allows_what_it_has_the_implement_for(kit: Kit | None, exercise: str, possible: bool) -> None:
    assert can_be_done(kit, exercise) is possible


def test_a_recap_names_what_was_done_and_what_is_asked_next() -> None:
    world = World()
    world.does(squat(12), squat(12))
    outcome = world.does(Finish())
    assert text(outcome).startswith("2 sets today.\nGoblet squat 24 kg: 2 sets of 12.")
    assert "Next time:\nGoblet squat: " in text(outcome)
    assert len(text(outcome)) < 900
    assert "No sets" in text(World().does(Finish()))


def test_sets_an_ache_and_a_finish_in_one_message() -> None:
    world = World()
    outcome = world.does(squat(12), AcheAct(KNEE, "left", 2.0), Finish())
    said = text(outcome)
    assert said.index("12 reps") < said.index("Left knee, 2 of 10") < said.index("1 set today")
    assert "Rest 2 min" not in said


def test_body_weight_is_kept_and_used() -> None:
    world = World()
    assert text(world.does(Bodyweight(81.4))) == "Body weight 81.4 kg, kept."
    assert world.book.lifter.bodyweight_kg == 81.4


# The body


@pytest.mark.parametrize(("level", "heard"), [(2.0, False), (3.5, False), (4.0, True), (7.0, True), (None, True)])
def test_the_coach_hears_of_an_ache_from_level_four_or_unsaid(level: float | None, heard: bool) -> None:
    world = World()
    outcome = world.does(AcheAct(KNEE, "left", level))
    assert bool(to_coach(outcome)) is heard
    assert ("Ines hears of it" in text(outcome)) is heard
    assert to_coach(World(coach=None).does(AcheAct(KNEE, "left", level))) == []


def test_an_ache_changes_todays_targets_at_once() -> None:
    world = World()
    world.does(Begin())
    before = world.book.targets[SQUAT]
    outcome = world.does(AcheAct(KNEE, "left", 5.0))
    assert world.book.targets[SQUAT].way == "ease"
    assert world.book.targets[SQUAT] != before
    assert world.book.targets[CALF].way != "stop"
    assert text(outcome).count("physiotherapist") == 1


def test_over_five_the_exercise_is_off_and_the_next_one_comes() -> None:
    world = World()
    world.does(squat(12))
    outcome = world.does(AcheAct(KNEE, "left", 6.0))
    assert "Off for today: goblet squat, split squat." in text(outcome)
    assert "Next: standing calf raise" in text(outcome)
    assert "push through" not in text(outcome)


def test_what_is_said_now_of_a_place_replaces_what_was_said_before() -> None:
    world = World()
    world.does(AcheAct(KNEE, "left", 6.0))
    world.does(AcheAct(KNEE, "left", 1.0))
    assert [ache.level for ache in world.book.lifter.aches] == [1.0]
    world.does(AcheAct(KNEE, "right", 2.0))
    assert [ache.level for ache in world.book.lifter.aches] == [1.0, 2.0]


def test_an_alarm_stops_everything_and_reaches_the_coach() -> None:
    world = World()
    world.does(Begin())
    outcome = world.does(squat(12), Alarm("chest"), Next())
    assert text(outcome).startswith("Stop here, please.")
    assert "Rest 2 min" not in text(outcome)
    assert world.sets() == [squat(12)]
    assert world.book.hold is not None
    assert world.book.hold.sign == "chest"
    assert dict(world.book.targets) == {}
    assert len(to_coach(outcome)) == 1
    assert all(reply.kind == "alert" for reply in outcome.replies if reply.to == "coach")


def test_while_held_sets_are_kept_and_nothing_is_asked() -> None:
    world = World()
    world.does(Alarm("faint"))
    for acts in ([squat(12)], [Next()], [Begin()], [AsPlanned()], [Skip(SQUAT)], [Amend("last", {"reps": 9})]):
        outcome = world.does(*acts)
        assert outcome.given == ()
        assert "hold" in text(outcome) or "held" in text(outcome)
        assert "for 10" not in text(outcome)
    assert world.sets() == [squat(9)]


def test_the_first_sign_stays_the_reason_of_the_hold_and_each_is_told() -> None:
    world = World()
    world.does(Alarm("faint"))
    outcome = world.does(Alarm("chest"))
    assert world.book.hold is not None
    assert world.book.hold.sign == "faint"
    assert len(to_coach(outcome)) == 1


def test_without_a_coach_the_hold_defers_to_a_doctor() -> None:
    world = World(coach=None)
    outcome = world.does(Alarm("heart"))
    assert to_coach(outcome) == []
    assert "None" not in text(outcome)
    assert world.book.hold is not None


# Any order


_ACTS: st.SearchStrategy[Act] = st.one_of(
    st.builds(squat, st.integers(0, 30), st.sampled_from([8.0, 24.0, 32.0]), rir=st.sampled_from([None, 0.0, 2.0])),
    st.builds(split, st.integers(0, 30), side=st.sampled_from(["left", "right", "each"])),
    st.builds(squat, st.integers(1, 20), day=st.integers(-6, 0)),
    st.builds(Amend, st.sampled_from(["last", 1, 2, 3]), st.fixed_dictionaries({"reps": st.integers(0, 30)})),
    st.builds(Erase, st.sampled_from(["last", "today", 1, 2])),
    st.builds(AcheAct, st.sampled_from(["knee", "wrist", "moon"]), st.none(), st.sampled_from([None, 1.0, 5.0, 8.0])),
    st.builds(Alarm, st.just("chest")),
    st.builds(Skip, st.sampled_from([None, SQUAT, "plank"])),
    st.builds(Swap, st.sampled_from([None, SQUAT, SPLIT]), st.sampled_from([None, "leg-press", SQUAT])),
    st.builds(AsPlanned, st.sampled_from([None, SQUAT, "plank", "back-squat"])),
    st.builds(Bodyweight, st.sampled_from([60.0, 120.0])),
    st.sampled_from([Begin(), Finish(), Next()]),
)


@settings(max_examples=40, deadline=None)
@given(st.lists(st.lists(_ACTS, min_size=1, max_size=4), max_size=8), st.booleans())
def test_any_acts_in_any_order_are_answered_and_the_records_add_up(messages: list[list[Act]], planned: bool) -> None:
    world = World(plan=None if planned else Plan())
    for acts in messages:
        outcome = world.does(*acts)
        assert text(outcome)
        assert len(text(outcome)) < 2000
        if world.book.hold is not None:
            assert all(one.target is None for one in outcome.given)
        assert len({one.id for one in world.keeper.everything}) == len(world.keeper.everything)


def test_the_same_acts_give_the_same_outcome() -> None:
    def run() -> list[object]:
        world = World()
        return [world.does(Begin()), world.does(squat(12)), world.does(AcheAct(KNEE, None, 5.0)), world.does(Finish())]

    assert run() == run()


def test_a_pass_changes_nothing_that_it_was_given() -> None:
    world = World()
    world.does(Begin())
    book = world.book
    before = (book.kept, dict(book.targets), dict(book.progress))
    world.does(squat(12))
    assert (book.kept, dict(book.targets), dict(book.progress)) == before
    assert EVENING.tzinfo is UTC
    assert date.fromisoformat("2026-03-02") == MONDAY
