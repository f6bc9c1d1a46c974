"""What is carried over from the setting: sets as the plan has them, and the side that the last set was not on."""

from core.evidence.exercises import Exercise
from core.model.acts import SetAct
from core.model.reading import Setting
from core.read.building import built
from core.read.doubts import Doubt
from core.read.groups import Group, Parsed, Rep
from core.read.loads import planned_load, unsaid


def as_planned(group: Group, row: Exercise, setting: Setting) -> list[SetAct] | Doubt:
    """Sets with the plan's load and repetitions; a spread of repetitions leaves open how many were done."""
    line = next((one for one in setting.plan if one.exercise == row.id), None)
    if line is None or line.sets is None or line.reps is None or line.reps[0] != line.reps[1]:
        return Doubt("reps")
    load = planned_load(row.id, setting) or unsaid(row.id, setting)
    if load is None:
        return Doubt("load")
    done = Group(group.first, group.last, reps=[Rep(float(line.reps[1]))], sets=group.sets or float(line.sets))
    done.tail = group.tail
    return built(done, load, row)


def turn(parsed: Parsed, exercise: str, setting: Setting) -> None:
    """'other arm 10': the count starts on the side of the last set, from which the words turn it."""
    last, groups = setting.last, parsed.groups
    turned = any(word == "OTHERSIDE" and after <= 0 for word, after in parsed.sides)
    if not turned or last is None or last.exercise != exercise or last.side not in ("left", "right"):
        return
    if len(groups) == 1 and not groups[0].like and len(groups[0].reps) == 1 and groups[0].reps[0].side is None:
        groups[0].reps[0].side = last.side
