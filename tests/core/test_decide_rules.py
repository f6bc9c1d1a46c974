"""Each rule just inside and just outside its limit, and the page of rules kept current."""

from dataclasses import replace
from datetime import timedelta
from itertools import pairwise
from pathlib import Path

import pytest

from core.advising import absorb, advise, begin
from core.decide.page import rules_page
from core.decide.rules import RULES
from core.evidence.layoff import RETURNS, after
from core.evidence.numbers import NUMBERS, value
from core.evidence.sources import SOURCES
from core.model.acts import SetAct
from core.model.lifter import Ache, Kit
from core.model.quantities import BODY, Load, Range
from core.model.target import Advice, Aim, Question, Session, Target, TargetSet
from tests.core.advising_cases import AIM, BENCH, LIFTER, ON, ask, did, target

ROOT = Path(__file__).parents[2]


def rule(advice: Advice) -> str:
    return advice.why[0].rule


def kg(advice: Advice) -> float:
    assert advice.sets[0].load is not None
    assert advice.sets[0].load.kg is not None
    return advice.sets[0].load.kg


def test_page_of_rules_is_current() -> None:
    """core/evidence/rules.md is what the rows say."""
    assert (ROOT / "core/evidence/rules.md").read_text() == rules_page()


def test_every_rule_and_number_names_known_sources() -> None:
    """No row without a source, no source that is not in the table, no value outside its own range."""
    assert len({one.id for one in RULES}) == len(RULES)
    for one in RULES:
        assert one.sources
        assert set(one.sources) <= set(SOURCES)
        assert set(one.numbers) <= set(NUMBERS)
    for number in NUMBERS.values():
        assert number.sources
        assert set(number.sources) <= set(SOURCES)
        assert number.low <= number.value <= number.high


def test_first_is_light_and_makeable() -> None:
    """No history: the heaviest load at which the repetitions are likely, loose form being as likely at any load."""
    advice = advise(ask())
    assert (advice.way, rule(advice)) == ("first", "first")
    assert advice.chance > 0.5
    load = advice.sets[0].load
    assert load is not None
    assert load.kg is not None
    heavier = tuple(replace(one, load=replace(load, kg=load.kg * 1.3)) for one in advice.sets)
    assert advise(replace(ask(), consider=heavier)).chance < 0.4
    assert all(at.reps > one.reps[0] + 5 for at, one in zip(advice.forecast, advice.sets, strict=True))
    assert advise(ask(did(10, 10, 10))).way != "first"


@pytest.mark.parametrize(("level", "way"), [(3.0, "hold"), (3.5, "hold"), (4.0, "ease"), (5.5, "ease"), (6.0, "stop")])
def test_ache_bands(level: float, way: str) -> None:
    """From 3 nothing harder, from 4 less, from 6 not today; each with a caution."""
    lifter = replace(LIFTER, aches=(Ache("shoulder", ON, None, level),))
    advice = advise(ask(did(12, 12, 12), did(12, 12, 12), lifter=lifter))
    assert advice.way == way
    assert any("physician" in text for text in advice.cautions)


def test_ache_below_the_hold_level_spares_load_only() -> None:
    """An ache of 2: more repetitions may come, more load may not; at another part nothing changes."""
    past = (did(12, 12, 12, rir=4.0), did(12, 12, 12, rir=4.0))
    free = advise(ask(*past, aim=replace(AIM, ways=("load",))))
    sore = replace(LIFTER, aches=(Ache("shoulder", ON, None, 2.0),))
    assert free.way == "load"
    assert kg(advise(ask(*past, lifter=sore, aim=replace(AIM, ways=("load",))))) == 60.0
    assert advise(ask(*past, lifter=sore)).way == "reps"
    far = replace(LIFTER, aches=(Ache("ankle", ON, None, 9.0),))
    assert advise(ask(*past, lifter=far)).way == advise(ask(*past)).way


def test_newest_word_on_a_part_counts_and_old_ones_pass() -> None:
    """A level said later takes the place of an earlier one; four weeks of silence end an ache."""
    past = (did(10, 10, 10), did(10, 10, 10))
    better = (Ache("wrist", ON - timedelta(days=5), None, 7.0), Ache("wrist", ON, None, 0.0))
    assert advise(ask(*past, lifter=replace(LIFTER, aches=better))).way != "stop"
    for days, stopped in ((28, True), (29, False)):
        old = (Ache("wrist", ON - timedelta(days=days), None, 7.0),)
        assert (advise(ask(*past, lifter=replace(LIFTER, aches=old))).way == "stop") is stopped


@pytest.mark.parametrize(("days", "eased"), [(13, False), (14, True), (20, True), (21, True), (100, True)])
def test_lay_off_begins_at_two_weeks(days: int, eased: bool) -> None:
    """The return table's second row begins at 14 days."""
    advice = advise(ask(did(10, 10, 10, days=days)))
    assert (rule(advice) == "lay-off") is eased
    if eased:
        assert kg(advice) <= 60.0 * after(days).load_factor
        assert len(advice.sets) == max(1, round(3 * after(days).set_factor - 1e-9))
        assert all(one.rir is not None and one.rir >= after(days).min_rir for one in advice.sets)


def test_return_table_only_falls() -> None:
    """Longer off, never more (evidence notes, section 10)."""
    for first, second in pairwise(RETURNS):
        assert first.weeks < second.weeks
        assert first.load_factor >= second.load_factor
        assert first.set_factor >= second.set_factor
        assert first.min_rir <= second.min_rir
    assert all(row.load_factor <= 1 and row.set_factor <= 1 for row in RETURNS)


@pytest.mark.parametrize(("misses", "eased"), [(2, False), (3, True)])
def test_three_misses_of_the_same_target(misses: int, eased: bool) -> None:
    """Two misses: the same again. Three: less."""
    advice = advise(ask(did(10, 10, 10), *[did(9, 8, 7)] * misses))
    assert (rule(advice) == "three-misses") is eased
    assert (advice.way == "ease") is eased
    if eased:
        assert kg(advice) < 60.0 or advice.sets[0].reps[0] < 8


def test_misses_of_another_target_do_not_add_up() -> None:
    """Three misses, but of two targets: not eased."""
    last = [did(10, 10, 8, asked=target(low=9))] * 2
    assert advise(ask(did(10, 10, 10), did(10, 9, 7), *last)).way == "hold"


def test_far_too_much_is_eased_at_once() -> None:
    """A first load that is far too heavy: less after the first session, and the same again had little chance."""
    asked = ask(did(4, 3, 3, rir=0.0))
    advice = advise(asked)
    assert (advice.way, rule(advice)) == ("ease", "too-much")
    again = target()
    assert advise(replace(asked, consider=again.sets)).chance < value("ease.chance")
    assert advise(replace(asked, consider=advice.sets)).chance > 0.35


def test_two_sessions_over_the_target_are_counted_and_one_short_of_it_ends_the_count() -> None:
    """NSCA's two for two: two over the top, what is left beyond the reserve asked counted in."""
    counts = []
    progress = begin(LIFTER, BENCH)
    for session in (did(14, 14, 14), did(12, 12, 12, rir=4.0), did(12, 12, 11, rir=4.0), did(14, 14, 14, rir=None)):
        progress = absorb(progress, LIFTER, AIM, session)
        counts.append(progress.facts.over)
    assert counts == [1, 2, 0, 1]


@pytest.mark.parametrize("form", ["fair", "loose"])
def test_form_first(form: str) -> None:
    """Form last said not clean: the same again, whatever the repetitions; said clean after: on again."""
    loose = did(12, 12, 12, rir=4.0, form=form)  # type: ignore[arg-type]
    advice = advise(ask(did(10, 10, 10), loose))
    assert (advice.way, rule(advice)) == ("form", "form-first")
    assert [(one.load, one.reps[0]) for one in advice.sets] == [(Load("total", 60.0), 8)] * 3
    assert advise(ask(did(10, 10, 10), loose, did(12, 12, 12, rir=4.0))).way in ("reps", "load")
    silent = did(12, 12, 12, rir=4.0, form=None)
    assert advise(ask(did(10, 10, 10), loose, silent)).way == "form"


@pytest.mark.parametrize(("reps", "doubted"), [(13, False), (28, True)])
def test_a_jump_beyond_belief_asks_about_form(reps: int, doubted: bool) -> None:
    """Form unsaid: a few more are believed, more than twice as many are not; said clean, they are."""
    usual = [did(10, 10, 10)] * 5
    advice = advise(ask(*usual, did(reps, reps, reps, form=None)))
    assert (rule(advice) == "form-doubt") is doubted
    assert rule(advise(ask(*usual, did(reps, reps, reps)))) != "form-doubt"


@pytest.mark.parametrize(
    ("reps", "rir", "met"), [(8, 2.0, True), (8, 1.5, True), (8, 1.4, False), (7, 2.0, False), (8, None, True)]
)
def test_met_is_low_end_and_reserve_within_half(reps: int, rir: float | None, met: bool) -> None:
    """Contract rule 3, just inside and just outside; unsaid reserve counts as asked."""
    advice = advise(ask(did(12, 12, 12, rir=4.0), did(12, 12, reps, rir=rir)))
    assert (rule(advice) != "not-met") is met


def test_reps_rise_inside_the_range_then_load() -> None:
    """Carried well over the low end: more repetitions; at the top of the range: more load, fewer repetitions fine."""
    advice = advise(ask(did(12, 12, 12, rir=3.0), did(12, 12, 12, rir=3.0)))
    assert (advice.way, rule(advice)) == ("reps", "more-reps")
    assert all(8 <= one.reps[0] <= 12 for one in advice.sets)
    top = target(low=12)
    advice = advise(ask(*[did(12, 12, 12, rir=4.0, asked=top)] * 3))
    assert (advice.way, rule(advice)) == ("load", "heavier")
    assert 60.0 * 1.02 <= kg(advice) <= 60.0 * 1.10
    assert all(one.reps[0] >= 8 for one in advice.sets)


def test_no_step_when_nothing_is_carried() -> None:
    """Met with nothing to spare: the same again."""
    advice = advise(ask(*[did(8, 8, 8)] * 4))
    assert (advice.way, rule(advice)) == ("hold", "same-again")


def _tempo(down: float) -> Advice:
    aim = replace(AIM, ways=("tempo",), tempo=(down, 0.0, 1.0, 0.0))
    return advise(ask(*[did(12, 12, 12, rir=4.0, asked=target(aim=aim))] * 3, aim=aim))


@pytest.mark.parametrize(("down", "moves"), [(2.5, True), (3.0, False)])
def test_tempo_stops_at_three_seconds(down: float, moves: bool) -> None:
    """Half a second slower, up to three."""
    advice = _tempo(down)
    assert (advice.way == "tempo") is moves
    assert advice.sets[0].tempo == (3.0, 0.0, 1.0, 0.0)


@pytest.mark.parametrize(("rest", "moves"), [(135.0, True), (134.0, False), (120.0, False)])
def test_rest_stops_at_the_floor(rest: float, moves: bool) -> None:
    """A compound lift: not under two minutes."""
    aim = replace(AIM, ways=("rest",), rest_s=rest)
    advice = advise(ask(*[did(12, 12, 12, rir=4.0, asked=target(aim=aim))] * 3, aim=aim))
    assert (advice.way == "rest") is moves
    assert advice.sets[0].rest_s == (120.0 if moves else rest)


@pytest.mark.parametrize(("second", "back"), [((9, 9, 9), False), ((9, 9, 8), True)])
def test_shorter_rest_that_costs_more_than_a_tenth_is_taken_back(second: tuple[int, ...], back: bool) -> None:
    """30 repetitions before: 27 are a tenth less and stand, 26 are taken back."""
    aim = replace(AIM, ways=("rest",))
    shorter = replace(aim, rest_s=135.0)
    past = (did(10, 10, 10, asked=target(aim=aim)), did(*second, asked=target(aim=shorter)))
    advice = advise(ask(*past, aim=aim))
    assert (rule(advice) == "rest-back") is back
    assert advice.sets[0].rest_s == (150.0 if back else advice.sets[0].rest_s)
    if back:
        again = advise(ask(*past, did(12, 12, 12, rir=4.0, asked=target(aim=aim)), aim=aim))
        assert again.sets[0].rest_s == 150.0


def _push_ups(extra: float | None, exercise: str = "push-up") -> Advice:
    aim = Aim(3, (8, 12), 2.0, None, 150.0, ("range",))
    span = None if extra is None else Range("extra", extra)
    asked = Target("hold", (TargetSet(BODY, (8, 12), 2.0, None, 150.0, span),) * 3)
    sets = (SetAct(exercise, BODY, 12, rir=4.0, form="clean", range=span),) * 3
    past = tuple(Session(ON - timedelta(days=3 * n), sets, asked) for n in (3, 2, 1))
    return advise(Question(LIFTER, exercise, aim, past, ON))


@pytest.mark.parametrize(("extra", "moves"), [(None, True), (7.5, True), (10.0, False)])
def test_range_goes_by_rungs_as_far_as_the_exercise_has_it(extra: float | None, moves: bool) -> None:
    """2.5 cm at a time, ten at most for a push-up; a pull-up has no more to give."""
    advice = _push_ups(extra)
    assert (advice.way == "range") is moves
    if moves:
        assert advice.sets[0].range == Range("extra", (extra or 0.0) + 2.5)
    assert _push_ups(None, "pull-up").way != "range"


@pytest.mark.parametrize(("pairs", "way"), [((10.0, 11.0, 15.0), "load"), ((10.0, 10.1, 15.0), "hold")])
def test_load_step_between_two_and_ten_percent_or_carried(pairs: tuple[float, ...], way: str) -> None:
    """10 to 11 kg is ten percent; 10 to 15 is more and waits until the forecast reaches the low end."""
    aim = Aim(3, (8, 12), 2.0, None, 120.0, ("load",))
    asked = Target("hold", (TargetSet(Load("per_hand", 10.0), (8, 12), 2.0, None, 120.0),) * 3)
    sets = (SetAct("dumbbell-curl", Load("per_hand", 10.0), 12, rir=5.0, form="clean"),) * 3
    past = tuple(Session(ON - timedelta(days=3 * n), sets, asked) for n in (3, 2, 1))
    lifter = replace(LIFTER, kit=Kit(dumbbells_kg=pairs))
    advice = advise(Question(lifter, "dumbbell-curl", aim, past, ON))
    assert advice.way == way


def test_a_larger_jump_is_taken_when_the_forecast_reaches_the_low_end() -> None:
    """10 to 12.5 kg with 25 repetitions behind it; never a forecast under the low end."""
    aim = Aim(3, (8, 12), 2.0, None, 120.0, ("reps", "load"))
    asked = Target("hold", (TargetSet(Load("per_hand", 10.0), (20, 22), 2.0, None, 120.0),) * 3)
    sets = (SetAct("dumbbell-curl", Load("per_hand", 10.0), 22, rir=3.0, form="clean"),) * 3
    past = tuple(Session(ON - timedelta(days=3 * n), sets, asked) for n in (3, 2, 1))
    lifter = replace(LIFTER, kit=Kit(dumbbells_kg=(10.0, 12.5)))
    advice = advise(Question(lifter, "dumbbell-curl", aim, past, ON))
    assert advice.way == "load"
    assert kg(advice) == 12.5
    assert all(f.reps >= one.reps[0] for f, one in zip(advice.forecast, advice.sets, strict=True))


def _only_pair(low: int) -> Advice:
    aim = Aim(2, (8, 12), 2.0, None, 120.0, ("reps", "load"))
    asked = Target("hold", (TargetSet(Load("per_hand", 10.0), (low, max(low, 12)), 2.0, None, 120.0),) * 2)
    sets = (SetAct("dumbbell-curl", Load("per_hand", 10.0), low + 6, rir=4.0, form="clean"),) * 2
    past = tuple(Session(ON - timedelta(days=3 * n), sets, asked) for n in (3, 2, 1))
    lifter = replace(LIFTER, kit=Kit(dumbbells_kg=(10.0,)))
    return advise(Question(lifter, "dumbbell-curl", aim, past, ON))


@pytest.mark.parametrize(("low", "way"), [(12, "reps"), (29, "reps"), (30, "hold")])
def test_past_the_range_up_to_thirty_where_the_load_cannot_move(low: int, way: str) -> None:
    """One pair of dumbbells: repetitions go on past the range, and stop at 30."""
    advice = _only_pair(low)
    assert advice.way == way
    assert max(one.reps[0] for one in advice.sets) <= 30
    if way == "reps":
        assert rule(advice) == "past-range"


def test_no_heavier() -> None:
    """Nothing heavier than was lifted well; the same lifter without the wish goes up."""
    past = [did(12, 12, 12, rir=4.0, asked=target(low=12))] * 3
    wish = replace(LIFTER, no_heavier=True)
    assert kg(advise(ask(*past))) > 60.0
    assert kg(advise(ask(*past, lifter=wish))) == 60.0
    heavy = did(3, 3, 2, kg=80.0, asked=target(80.0))
    assert kg(advise(ask(*past, heavy, lifter=wish))) <= 60.0


def test_kit_that_cannot_load_it() -> None:
    """A kit without a bar: the bench press waits, and says why."""
    advice = advise(ask(did(10, 10, 10), lifter=replace(LIFTER, kit=Kit(dumbbells_kg=(10.0,)))))
    assert (advice.way, advice.sets, rule(advice)) == ("stop", (), "kit")


def test_sets_already_done_are_not_asked_again() -> None:
    """Two sets left of three, one of three, none."""
    question = ask(did(10, 10, 10), did(10, 10, 10))
    act = SetAct(BENCH, Load("total", 60.0), 10, rir=2.0)
    assert [len(advise(replace(question, today=(act,) * n)).sets) for n in range(4)] == [3, 2, 1, 0]
    assert rule(advise(replace(question, today=(act,) * 3))) == "done"


def test_a_bad_day_lowers_what_is_left_and_a_good_one_jumps_nothing() -> None:
    """Three repetitions where eight were asked: less. Twenty: the plan's own load and low ends stand."""
    question = ask(did(10, 10, 10), did(10, 10, 10))
    plan = advise(question)
    bad = advise(replace(question, today=(SetAct(BENCH, Load("total", 60.0), 3, rir=0.0),)))
    assert (bad.way, rule(bad)) == ("ease", "bad-day")
    assert kg(bad) < kg(plan)
    good = advise(replace(question, today=(SetAct(BENCH, Load("total", 60.0), 14, rir=4.0),)))
    assert good.sets == plan.sets[1:]


def test_the_coachs_new_aim_wins_for_sets_and_reserve() -> None:
    """Four sets at one in reserve from now on, though three at two were done."""
    advice = advise(ask(did(10, 10, 10), did(10, 10, 10), aim=replace(AIM, sets=4, rir=1.0)))
    assert len(advice.sets) == 4
    assert {one.rir for one in advice.sets} == {1.0}


def test_consider_only_forecasts() -> None:
    """What-if: exactly these sets come back, and nothing is decided."""
    sets = (TargetSet(Load("total", 70.0), (5, 8), 1.0, None, 180.0),)
    advice = advise(replace(ask(did(10, 10, 10)), consider=sets))
    assert advice.sets == sets
    assert len(advice.forecast) == 1
    assert rule(advice) == "considered"


PUSH = "push-up"
NO_WEIGHTS = Kit()
AT_THE_TOP = Target("reps", (TargetSet(BODY, (12, 12), 2.0, AIM.tempo, 120.0),) * 3)


def push_ups(reps: int, asked: Target = AT_THE_TOP, sessions: int = 4, **of_lifter: object) -> Advice:
    """The next target after so many sessions of push-ups, every set the same."""
    acts = (SetAct(PUSH, BODY, reps, rir=2.0, form="clean"),) * 3
    past = tuple(Session(ON - timedelta(days=3 * (sessions - n)), acts, asked) for n in range(sessions))
    lifter = replace(LIFTER, **{"kit": NO_WEIGHTS, **of_lifter})
    return advise(Question(lifter, PUSH, replace(AIM, rest_s=120.0), past, ON))


def rungs(advice: Advice) -> list[str]:
    return [one.text for one in advice.why if one.rule == "next-rung"]


def test_harder_variant_is_named_when_repetitions_are_up_and_no_load_can_be_added() -> None:
    """Once, by its name, beside the rule that decided; the target stays in the exercise asked about."""
    advice = push_ups(20)
    (said,) = rungs(advice)
    assert "feet-elevated push-up" in said
    assert advice.why[0].rule == "past-range"


@pytest.mark.parametrize(
    "of_lifter",
    [
        {"no_heavier": True},
        {"kit": Kit(plates_kg={1.25: 2, 2.5: 2})},
        {"aches": (Ache("wrist", level=1.0, on=ON - timedelta(days=1)),)},
    ],
    ids=["no_heavier", "plates", "ache"],
)
def test_no_harder_variant_for_who_is_spared_or_can_add_load(of_lifter: dict[str, object]) -> None:
    """Where load can be added that comes first; who is to be spared is asked for nothing harder."""
    assert rungs(push_ups(20))
    assert not rungs(push_ups(20, **of_lifter))


def test_no_harder_variant_below_the_top_or_when_it_is_not_carried() -> None:
    """Inside the coach's range there is more to do here; at its low end a rung of a tenth more body is too much."""
    inside = Target("reps", (TargetSet(BODY, (8, 12), 2.0, AIM.tempo, 120.0),) * 3)
    assert not rungs(push_ups(9, asked=inside))
    barely = Target("reps", (TargetSet(BODY, (8, 8), 2.0, AIM.tempo, 120.0),) * 3)
    acts = (SetAct(PUSH, BODY, 8, rir=2.0, form="clean"),) * 3
    past = (Session(ON - timedelta(days=3), acts, barely),)
    narrow = replace(AIM, reps=(8, 8), rest_s=120.0)
    assert not rungs(advise(Question(replace(LIFTER, kit=NO_WEIGHTS), PUSH, narrow, past, ON)))


def test_who_tops_one_target_session_after_session_gets_a_step() -> None:
    """Always the top, always the reserve asked: nothing more is learned from it, so more is asked after the number."""
    enough = int(value("stood.sessions"))
    asked = Target("hold", (TargetSet(BODY, (10, 12), 2.0, AIM.tempo, 120.0),) * 3)
    assert push_ups(12, asked=asked, sessions=enough - 1).way == "hold"
    assert push_ups(12, asked=asked, sessions=enough).way == "reps"


def test_a_long_ache_eases_by_less_each_further_time() -> None:
    """A fifth the first time; from then on a little, or a month of aching would end at nothing."""
    sore = replace(LIFTER, aches=(Ache("shoulder", ON - timedelta(days=1), level=4.0),))
    once = advise(ask(did(10, 10, 10), lifter=sore))
    eased = Target("ease", once.sets)
    again = advise(ask(did(10, 10, 10), did(8, 8, kg=kg(once), asked=eased), lifter=sore))
    assert (rule(once), rule(again)) == ("ache-ease", "ache-ease")
    assert kg(once) <= 60.0 * value("ache.load_factor") < kg(again) / kg(once) * 60.0 < 60.0
    assert len(again.sets) == len(once.sets)


def test_a_long_ache_stops_easing_the_load_at_the_floor() -> None:
    """However long it aches: no less than the floor's share of what was lifted well, then fewer repetitions."""
    sore = replace(LIFTER, aches=(Ache("shoulder", ON - timedelta(days=1), level=4.0),))
    past = [did(10, 10, 10, kg=100.0)]
    for _ in range(12):
        advice = advise(ask(*past, lifter=sore))
        assert rule(advice) == "ache-ease"
        assert kg(advice) >= value("ache.floor") * 100.0
        past.append(did(*(one.reps[0] for one in advice.sets), kg=kg(advice), asked=Target("ease", advice.sets)))
    assert kg(advice) < value("ache.load_factor") * 100.0
    assert advice.sets[0].reps[0] < AIM.reps[0]
