"""The advising contract's JSON, written and read from the contract's tables alone, to check answers from outside."""

from datetime import date
from typing import Any, Final, get_args

from core.model.acts import SetAct
from core.model.lifter import Ache, Kit, Lifter
from core.model.quantities import Load, Range
from core.model.target import Advice, Aim, Forecast, Question, Reason, Session, Target, TargetSet, Verdict

Json = dict[str, Any]

_PLAIN: Final = ("reps", "hold_s", "distance_m", "rir", "rest_s", "form", "side")
_FLAGS: Final = ("warmup", "drop", "failed")


def load_out(load: Load | None) -> Json | None:
    """A load as ``{"kind", "kg"}``."""
    if load is None:
        return None
    data: Json = {"kind": load.kind}
    if load.kg is not None:
        data["kg"] = load.kg
    return data | ({"label": load.label} if load.label else {})


def range_out(asked: Range | None) -> Json | None:
    """A range as ``{"grade", "cm"}``."""
    return None if asked is None else {"grade": asked.grade, "cm": asked.cm}


def act_out(act: SetAct) -> Json:
    """A set act, defaults left out."""
    data: Json = {"act": "set", "exercise": act.exercise}
    if act.load is not None:
        data["load"] = load_out(act.load)
    data |= {name: getattr(act, name) for name in _PLAIN if getattr(act, name) is not None}
    data |= {name: True for name in _FLAGS if getattr(act, name)}
    if act.tempo is not None:
        data["tempo"] = list(act.tempo)
    if act.partials:
        data["partials"] = act.partials
    if act.range is not None:
        data["range"] = range_out(act.range)
    return data


def target_set_out(one: TargetSet) -> Json:
    """One set of a target."""
    return {
        "load": load_out(one.load), "reps": list(one.reps), "rir": one.rir,
        "tempo": None if one.tempo is None else list(one.tempo), "rest_s": one.rest_s, "range": range_out(one.range),
    }  # fmt: skip


def question_out(question: Question) -> Json:
    """A whole question, ready for ``rungbook advise``."""
    lifter, aim = question.lifter, question.aim
    data: Json = {
        "id": "case",
        "lifter": {
            "unit": lifter.unit, "bodyweight_kg": lifter.bodyweight_kg, "experience": lifter.experience,
            "kit": None if lifter.kit is None else _kit_out(lifter.kit), "no_heavier": lifter.no_heavier,
            "aches": [{"where": a.where, "side": a.side, "level": a.level, "on": a.on.isoformat()}
                      for a in lifter.aches],
        },
        "exercise": question.exercise,
        "aim": {"sets": aim.sets, "reps": list(aim.reps), "rir": aim.rir,
                "tempo": None if aim.tempo is None else list(aim.tempo), "rest_s": aim.rest_s, "ways": list(aim.ways)},
        "past": [_session_out(each) for each in question.past],
        "on": question.on.isoformat(),
        "today": [act_out(act) for act in question.today],
    }  # fmt: skip
    if question.consider is not None:
        data["consider"] = [target_set_out(each) for each in question.consider]
    return data


def _kit_out(kit: Kit) -> Json:
    return {
        "bar_kg": kit.bar_kg, "plates_kg": {repr(kg): count for kg, count in kit.plates_kg.items()},
        "dumbbells_kg": list(kit.dumbbells_kg), "kettlebells_kg": list(kit.kettlebells_kg),
        "stack_step_kg": kit.stack_step_kg, "bands": list(kit.bands),
    }  # fmt: skip


def _session_out(session: Session) -> Json:
    target = session.target
    shown = None if target is None else {"way": target.way, "sets": [target_set_out(each) for each in target.sets]}
    return {"on": session.on.isoformat(), "sets": [act_out(act) for act in session.sets], "target": shown}


def load_in(data: Json | None) -> Load | None:
    """A load from its JSON."""
    return None if data is None else Load(data["kind"], data.get("kg"), data.get("label"))


def target_set_in(data: Json) -> TargetSet:
    """One set of a target or an answer."""
    spread = data.get("range")
    tempo = data.get("tempo")
    return TargetSet(
        load_in(data.get("load")), (data["reps"][0], data["reps"][1]), data.get("rir"),
        None if tempo is None else (tempo[0], tempo[1], tempo[2], tempo[3]), data.get("rest_s"),
        None if spread is None else Range(spread.get("grade"), spread.get("cm")),
    )  # fmt: skip


def act_in(data: Json) -> SetAct:
    """A set act; what is absent has its default."""
    spread, tempo = data.get("range"), data.get("tempo")
    given: Json = {name: data.get(name) for name in _PLAIN} | {name: bool(data.get(name)) for name in _FLAGS}
    given["partials"] = data.get("partials") or 0
    given["tempo"] = None if tempo is None else (tempo[0], tempo[1], tempo[2], tempo[3])
    given["range"] = None if spread is None else Range(spread.get("grade"), spread.get("cm"))
    return SetAct(data.get("exercise"), load_in(data.get("load")), **given)


def question_in(data: Json) -> Question:
    """A question from the contract's JSON."""
    person, aim, kit = data["lifter"], data["aim"], data["lifter"].get("kit")
    lifter = Lifter(
        person.get("unit", "kg"), person.get("bodyweight_kg"), person.get("experience", "some"),
        None if kit is None else _kit_in(kit), bool(person.get("no_heavier")),
        tuple(Ache(a["where"], date.fromisoformat(a["on"]), a.get("side"), a.get("level"))
              for a in person.get("aches") or ()),
    )  # fmt: skip
    tempo = aim.get("tempo")
    asked = Aim(
        aim["sets"], (aim["reps"][0], aim["reps"][1]), aim.get("rir", 2.0),
        None if tempo is None else (tempo[0], tempo[1], tempo[2], tempo[3]), aim.get("rest_s"),
        tuple(aim.get("ways") or ()),
    )  # fmt: skip
    consider = data.get("consider")
    return Question(
        lifter, data["exercise"], asked, tuple(_session_in(each) for each in data.get("past") or ()),
        date.fromisoformat(data["on"]), tuple(act_in(each) for each in data.get("today") or ()),
        None if consider is None else tuple(target_set_in(each) for each in consider),
    )  # fmt: skip


def _kit_in(kit: Json) -> Kit:
    return Kit(
        kit.get("bar_kg"), {float(kg): int(count) for kg, count in (kit.get("plates_kg") or {}).items()},
        tuple(kit.get("dumbbells_kg") or ()), tuple(kit.get("kettlebells_kg") or ()), kit.get("stack_step_kg"),
        tuple(kit.get("bands") or ()),
    )  # fmt: skip


def _session_in(data: Json) -> Session:
    shown = data.get("target")
    target = None if shown is None else Target(_way(shown["way"]), tuple(target_set_in(each) for each in shown["sets"]))
    return Session(date.fromisoformat(data["on"]), tuple(act_in(each) for each in data["sets"]), target)


def _way(word: str) -> Verdict:
    allowed = {name for part in get_args(Verdict) for name in (get_args(part) or (part,))}
    if word not in allowed:
        raise ValueError(f"not a way of the contract: {word}")
    return word  # type: ignore[return-value]


def advice_in(data: Json) -> Advice:
    """An answer of ``rungbook advise``."""
    return Advice(
        _way(data["way"]), tuple(target_set_in(each) for each in data["sets"]),
        tuple(Forecast(each["reps"], each["sd"]) for each in data["forecast"]), data["chance"],
        tuple(Reason(each["text"], each["rule"]) for each in data["why"]), tuple(data["cautions"]),
    )  # fmt: skip
