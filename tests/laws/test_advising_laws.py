"""What must always hold of advice (advising contract, "What must always hold"), whatever the question."""

import math
from dataclasses import replace
from datetime import timedelta

from hypothesis import HealthCheck, assume, given, settings
from hypothesis import strategies as st

from core.advising import absorb, advise, advise_from, begin, dump, load
from core.decide.kit import shelf
from core.evidence.aches import loads_part
from core.evidence.exercises import EXERCISES
from core.model.acts import SetAct
from core.model.lifter import Lifter
from core.model.quantities import POUND_KG, Load
from core.model.target import Advice, Aim, Question, Session, Target, TargetSet
from core.model.working import working_sets
from tests.laws.advising_questions import DAY, acts, questions, usual_load

LAW = settings(max_examples=40, deadline=None, suppress_health_check=list(HealthCheck))
STEPS = ("reps", "tempo", "range", "rest", "load")


def _hard(load: Load | None) -> float:
    if load is None or load.kg is None:
        return 0.0
    return -load.kg if load.kind == "assist" else load.kg


def _is_known(load: Load) -> bool:
    """A band of unknown pull says nothing of what is heavier."""
    return load.kg is not None or load.kind == "body"


def _last(question: Question) -> Session | None:
    trained = [session for session in question.past if working_sets(session.sets)]
    return trained[-1] if trained else None


class TestShape:
    """The fields say what the contract says, for any question at all."""

    @LAW
    @given(questions())
    def test_answer_is_whole(self, question: Question) -> None:
        advice = advise(question)
        assert 1 <= len(advice.why) <= 4
        assert len(advice.forecast) == len(advice.sets)
        assert 0.0 <= advice.chance <= 1.0
        assert all(math.isfinite(f.reps) and f.reps >= 0 and 0 < f.sd < math.inf for f in advice.forecast)
        assert advice.way in (*STEPS, "form", "first", "hold", "ease", "stop")
        assert (advice.way == "stop") <= (not advice.sets)

    @LAW
    @given(questions())
    def test_rule_8_same_bytes(self, question: Question) -> None:
        assert repr(advise(question)) == repr(advise(question))

    @LAW
    @given(questions())
    def test_dump_gives_the_same_advice_back(self, question: Question) -> None:
        progress = begin(question.lifter, question.exercise)
        for session in question.past:
            progress = absorb(progress, question.lifter, question.aim, session)
        again = load(dump(progress))
        asked = (question.lifter, question.exercise, question.aim, question.on, question.today)
        assert repr(advise_from(again, *asked)) == repr(advise_from(progress, *asked)) == repr(advise(question))
        assert dump(again) == dump(progress)


odd = st.sampled_from([float("nan"), float("inf"), -5.0, 0.0, 1e12, 1e-9, 60.0])
odd_loads = st.builds(
    Load, st.sampled_from(["total", "per_hand", "added", "assist", "body", "band"]), st.one_of(st.none(), odd)
)
odd_tempos = st.one_of(st.none(), st.tuples(odd, odd, odd, odd))
odd_acts = st.builds(
    SetAct,
    st.just("any"),
    st.one_of(st.none(), odd_loads),
    reps=st.one_of(st.none(), st.sampled_from([0, -3, 7, 10**9])),
    hold_s=st.one_of(st.none(), odd),
    rir=st.one_of(st.none(), odd),
    rest_s=st.one_of(st.none(), odd),
    tempo=odd_tempos,
    side=st.sampled_from([None, "left", "right", "each"]),
)
odd_sets = st.builds(
    TargetSet,
    st.one_of(st.none(), odd_loads),
    st.sampled_from([(8, 12), (0, 0), (99, 3)]),
    odd,
    odd_tempos,
    st.one_of(st.none(), odd),
)
odd_targets = st.builds(Target, st.sampled_from(["load", "stop", "ease"]), st.lists(odd_sets, max_size=4).map(tuple))
odd_sessions = st.builds(
    Session,
    st.integers(-4000, 4000).map(lambda days: DAY + timedelta(days=days)),
    st.lists(odd_acts, max_size=5).map(tuple),
    st.one_of(st.none(), odd_targets),
)


class TestNeverRaises:
    """What people can send, and what they cannot: an answer all the same."""

    @LAW
    @given(questions(), st.lists(odd_sessions, max_size=4), st.lists(odd_acts, max_size=3), st.booleans())
    def test_absurd_histories(
        self, question: Question, past: list[Session], today: list[SetAct], unknown: bool
    ) -> None:
        exercise = "no-such-exercise" if unknown else question.exercise
        told = replace(question, exercise=exercise, past=(*question.past, *past), today=tuple(today))
        advice = advise(told)
        assert all(math.isfinite(f.reps) and math.isfinite(f.sd) for f in advice.forecast)
        assert 0.0 <= advice.chance <= 1.0
        considered = advise(replace(told, consider=advice.sets))
        assert len(considered.forecast) == len(advice.sets)

    def test_ten_thousand_sets(self) -> None:
        """One endless session and as many warm-ups."""
        act = SetAct("back-squat", Load("total", 60.0), 8)
        past = (Session(DAY - timedelta(days=3), (act,) * 5000 + (replace(act, warmup=True),) * 5000),)
        aim = Aim(3, (8, 12), 2.0, None, 120.0, ("reps", "load"))
        assert advise(Question(Lifter("kg", 80.0), "back-squat", aim, past, DAY)).sets


class TestLimits:
    """Rules 2, 4 and 6: nothing leaves the limits, whatever the history."""

    @LAW
    @given(questions())
    def test_rule_4_tempo_rest_repetitions(self, question: Question) -> None:
        floor = 120.0 if EXERCISES[question.exercise].kind == "compound" else 60.0
        timed = EXERCISES[question.exercise].pattern in ("hold", "carry")
        for one in advise(question).sets:
            assert one.rest_s is not None
            assert one.rest_s >= floor
            assert 1 <= one.reps[0] <= one.reps[1] <= (180 if timed else 30)
            if one.tempo is None:
                continue
            down, _, up, _ = one.tempo
            explosive = question.aim.tempo is not None and question.aim.tempo[2] == 0
            assert down is None or 0.5 <= down <= 3.0
            assert up is None or 0.5 <= up <= 3.0 or (up == 0 and explosive)
            assert sum(part or 0.0 for part in one.tempo) < 10.0

    @LAW
    @given(questions())
    def test_every_load_can_be_made(self, question: Question) -> None:
        for one in advise(question).sets:
            if one.load is None or one.load.kg is None or question.lifter.kit is None:
                continue
            made = shelf(question.lifter.kit, question.exercise, one.load, question.lifter.unit)
            assert any(abs(_hard(one.load) - kg) < 0.02 for kg in made)

    @LAW
    @given(questions(own_targets=True))
    def test_rule_2_and_3_one_way_from_a_met_target(self, question: Question) -> None:
        question = replace(question, today=())
        advice, last = advise(question), _last(question)
        assume(last is not None and last.target is not None and advice.sets)
        assert last is not None
        assert last.target is not None
        base = last.target.sets[0]
        harder = set()
        for one in advice.sets:
            harder |= {"load"} if _hard(one.load) > _hard(base.load) + 0.01 else set()
            harder |= {"reps"} if one.reps[0] > min(base.reps[0], 30) else set()
            lowering = [tempo[0] for tempo in (one.tempo, base.tempo) if tempo is not None and tempo[0] is not None]
            harder |= {"tempo"} if len(lowering) == 2 and lowering[0] > lowering[1] else set()
            harder |= {"rest"} if one.rest_s is not None and one.rest_s < (base.rest_s or 0.0) else set()
            harder |= {"range"} if one.range is not None and one.range.grade == "extra" else set()
        assert harder <= ({advice.way} if advice.way in STEPS else set())
        if advice.way not in ("ease", "stop"):
            assert len(advice.sets) == question.aim.sets
            assert all(one.rir == question.aim.rir for one in advice.sets)
        if advice.way in STEPS:
            work = working_sets(last.sets)
            assert len(work) >= len(last.target.sets)
            assert all((act.reps or act.hold_s or 0) >= base.reps[0] for act in work[: len(last.target.sets)])
            assert all(act.form in (None, "clean") for act in work[: len(last.target.sets)])

    @LAW
    @given(questions())
    def test_rule_1_form_first(self, question: Question) -> None:
        said = [act.form for session in question.past for act in session.sets if act.form is not None]
        assume(said and said[-1] != "clean" and not question.today)
        assert advise(question).way in ("form", "hold", "ease", "stop", "first")

    @LAW
    @given(questions())
    def test_rule_6_aches(self, question: Question) -> None:
        question = replace(question, today=())
        row = EXERCISES[question.exercise]
        ached = [a for a in question.lifter.aches if loads_part(row, a.where) and (DAY - a.on).days <= 7]
        assume(len({a.where for a in question.lifter.aches}) == len(question.lifter.aches))
        worst = max((1.0 if a.level is None else a.level for a in ached), default=0.0)
        assume(worst > 0)
        advice, last = advise(question), _last(question)
        if worst >= 6:
            assert advice.way == "stop"
        elif worst >= 4:
            assert advice.way in ("ease", "stop")
        assert any("physician or a physiotherapist" in text for text in advice.cautions)
        if last is not None and last.target is not None:
            assert all(_hard(one.load) <= _hard(last.target.sets[0].load) + 0.01 for one in advice.sets)

    @LAW
    @given(questions())
    def test_rule_6_no_heavier(self, question: Question) -> None:
        question = replace(question, lifter=replace(question.lifter, no_heavier=True), today=())
        lifted = [
            _hard(act.load)
            for session in question.past
            for act in working_sets(session.sets)
            if act.load is not None and _is_known(act.load) and (act.reps or act.hold_s)
        ]
        assume(lifted)
        assert all(_hard(one.load) <= max(lifted) + 0.01 for one in advise(question).sets)


@st.composite
def improved(draw: st.DrawFn) -> tuple[Question, Question]:
    """A question and the same one with one set of the last session better; form is said, so no jump is doubted."""
    question = replace(draw(questions(own_targets=True)), today=())
    last = _last(question)
    assume(last is not None)
    assert last is not None
    at = draw(st.integers(0, len(last.sets) - 1))
    sets = [replace(act, form="clean") if act.form is None else act for act in last.sets]
    act = sets[at]
    assume(act.reps is not None and not act.warmup and not act.drop)
    worse = tuple(sets)
    if act.rir is not None and not act.failed and act.rir < 8 and draw(st.booleans()):
        sets[at] = replace(act, rir=act.rir + draw(st.sampled_from([0.5, 1.0, 2.0])))
    else:
        sets[at] = replace(act, reps=(act.reps or 0) + draw(st.integers(1, 4)))
    place = max(n for n, each in enumerate(question.past) if each is last)

    def told(new: tuple[SetAct, ...]) -> Question:
        past = (*question.past[:place], replace(last, sets=new), *question.past[place + 1 :])
        return replace(question, past=past)

    return told(worse), told(tuple(sets))


def _easier(one: Advice, other: Advice) -> bool:
    """Whether one asks less than the other in something and more in nothing."""
    if not other.sets:
        return False
    if not one.sets:
        return True
    gains = losses = len(one.sets) - len(other.sets)
    gains, losses = max(gains, 0), max(-losses, 0)
    for mine, theirs in zip(one.sets, other.sets, strict=False):
        signs = [
            round(_hard(mine.load) - _hard(theirs.load), 3),
            mine.reps[0] - theirs.reps[0],
            sum(part or 0.0 for part in mine.tempo or ()) - sum(part or 0.0 for part in theirs.tempo or ()),
            (theirs.rest_s or 0.0) - (mine.rest_s or 0.0),
            ((mine.range.cm or 1.0) if mine.range else 0.0) - ((theirs.range.cm or 1.0) if theirs.range else 0.0),
        ]
        gains += any(sign > 0 for sign in signs)
        losses += any(sign < 0 for sign in signs)
    return losses > 0 and gains == 0


class TestMonotone:
    """Rule 9."""

    @settings(LAW, max_examples=80)
    @given(improved())
    def test_better_result_never_gets_an_easier_target(self, pair: tuple[Question, Question]) -> None:
        worse, better = advise(pair[0]), advise(pair[1])
        assert not _easier(better, worse), (worse.way, worse.sets, better.way, better.sets)

    @LAW
    @given(st.data())
    def test_one_more_set_never_less_sure(self, data: st.DataObject) -> None:
        question = data.draw(questions())
        kg = _hard(question.past[-1].sets[0].load) if question.past and question.past[-1].sets else 20.0
        asked = usual_load(question.exercise, abs(kg) or 20.0)
        consider = (TargetSet(asked, question.aim.reps, question.aim.rir, None, 120.0),)
        more = data.draw(acts(question.exercise, asked))
        before = advise(replace(question, consider=consider))
        after = advise(replace(question, today=(*question.today, more), consider=consider))
        assert after.forecast[0].sd <= before.forecast[0].sd + 1e-9


class TestUnits:
    """The same loads told by a lifter of the other unit, with the same kit, get the same target."""

    @LAW
    @given(questions())
    def test_unit_blind(self, question: Question) -> None:
        assume(question.lifter.kit is not None)
        other = "lb" if question.lifter.unit == "kg" else "kg"
        turned = advise(replace(question, lifter=replace(question.lifter, unit=other)))  # type: ignore[arg-type]
        same = advise(question)
        assert (turned.way, turned.sets, turned.forecast, turned.chance) == (
            same.way,
            same.sets,
            same.forecast,
            same.chance,
        )

    def test_words_are_in_the_lifters_unit(self) -> None:
        aim = Aim(3, (5, 8), 2.0, None, 180.0, ("load",))
        kg = 45 * POUND_KG
        one = TargetSet(Load("total", kg), (5, 8), 2.0, None, 180.0)
        done = SetAct("back-squat", Load("total", kg), 8, rir=4.0, form="clean")
        past = tuple(Session(DAY - timedelta(days=n), (done,) * 3, Target("hold", (one,) * 3)) for n in (9, 6, 3))
        advice = advise(Question(Lifter("lb", 80.0), "back-squat", aim, past, DAY))
        assert advice.way == "load"
        assert "lb" in advice.why[0].text
        assert "kg" not in advice.why[0].text
