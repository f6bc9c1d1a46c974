"""Running all measures and printing them as one table."""

from collections import Counter
from dataclasses import dataclass

import numpy as np

from tests.sim.coaches import COACHES
from tests.sim.families import FAMILIES, HELD_OUT
from tests.sim.following import Following, follow, follow_coach
from tests.sim.forecasting import Scores, calibration, score_person
from tests.sim.goals import GOALS
from tests.sim.gyms import GYMS
from tests.sim.people import draw_people
from tests.sim.yardsticks import RULES


@dataclass(frozen=True, slots=True)
class Sizes:
    """How much to simulate."""

    lifters: int
    sessions: int


def run(sizes: Sizes, seed: int, with_core: bool) -> str:
    """Every measure, as text."""
    names, held = [family.name for family in FAMILIES], [family.name for family in HELD_OUT]
    scores, apart = Scores(), Scores()
    for person, own in draw_people(seed, sizes.lifters):
        score_person(person, own, sizes.sessions, scores, with_core)
    for person, own in draw_people(seed + 2, max(sizes.lifters // 4, 2), HELD_OUT):
        score_person(person, own, sizes.sessions, apart, with_core)
    lines = _forecast_lines(scores, ["all", "early", "later", *names], with_core)
    lines += _forecast_lines(
        apart, ["all", *held], with_core, "(a*) the same for held-out families: not to be tuned on"
    )
    if not with_core:
        return "\n".join(lines)
    lines += _chance_lines(scores.chance["all"], "(b) chance of fixed targets")
    lines += _chance_lines(apart.chance["all"], "(b*) chance of fixed targets, held-out families")
    tallies = followed(sizes, seed)
    total = tallies["all"]
    lines += _chance_lines(total.chance, "(b2) chance of the core's own targets")
    lines += _follow_lines(tallies)
    lines += _goal_lines((scores, apart), names, total, sizes.sessions)
    return "\n".join(lines)


def followed(sizes: Sizes, seed: int) -> dict[str, Following]:
    """Advice followed: everyone, by family, experience, unit and gym; held-out families; two other coaches."""
    order = [
        "all",
        *(family.name for family in FAMILIES),
        "new",
        "some",
        "long",
        "kg",
        "lb",
        *(gym.name for gym in GYMS),
    ]
    out = {name: Following() for name in order}
    for person, own in draw_people(seed + 1, sizes.lifters):
        one = Following()
        follow(person, own, sizes.sessions, one)
        lifter = person.lifter
        for group in ("all", person.truth.family.name, lifter.experience, lifter.unit, person.gym.name):
            _pour(one, out[group])
    out["held-out*"] = Following()
    for person, own in draw_people(seed + 3, max(sizes.lifters // 4, 2), HELD_OUT):
        follow(person, own, sizes.sessions, out["held-out*"])
    for name, coach in COACHES.items():
        out[name] = Following()
        for person, own in draw_people(seed + 1, max(sizes.lifters // 4, 2)):
            follow_coach(person, own, sizes.sessions, out[name], coach)
    return out


def _pour(one: Following, total: Following) -> None:
    total.asked += one.asked
    total.met += one.met
    total.asked_of += one.asked_of
    total.met_of += one.met_of
    total.steps += one.steps
    total.lifters += one.lifters
    for mine, whole in (
        (one.reach, total.reach), (one.strength_gained, total.strength_gained), (one.work_gained, total.work_gained),
        (one.broken, total.broken), (one.chance, total.chance), (one.first_met, total.first_met),
    ):  # fmt: skip
        whole.extend(mine)  # type: ignore[arg-type]


def _forecast_lines(
    scores: Scores, groups: list[str], with_core: bool, title: str = "(a) error of forecasts, repetitions per ten done"
) -> list[str]:
    who = [name for name, _ in RULES] + (["core"] if with_core else []) + ["oracle"]
    lines = [title, " " * 10 + "".join(f"{name:>20}" for name in who)]
    for group in groups:
        errors = scores.per_ten(group)
        row = f"{group:<10}" + "".join(f"{errors[name]:>20.2f}" for name in who)
        if with_core:
            row += f"   gap closed {scores.gap_closed(group):.0%}, in 80 % band {np.mean(scores.inside[group]):.0%}"
        lines.append(row)
    return lines


def _chance_lines(answers: list[tuple[float, bool, float]], title: str) -> list[str]:
    bins, gap, skill = calibration(answers)
    _, _, best = calibration([(truth, met, truth) for _, met, truth in answers])
    lines = [f"\n{title}: {len(answers)} answers, mean gap {gap:.3f}, Brier skill {skill:.3f} (oracle {best:.3f})"]
    lines.append("  said " + " ".join(f"{said:6.2f}" for said, _, _ in bins))
    lines.append("  met  " + " ".join(f"{met:6.2f}" for _, met, _ in bins))
    lines.append("  n    " + " ".join(f"{n:6d}" for _, _, n in bins))
    return lines


def _follow_lines(groups: dict[str, Following]) -> list[str]:
    columns = (
        ("met", 8),
        ("first met", 11),
        ("reach", 8),
        ("steps", 8),
        ("strength", 10),
        ("target", 8),
        ("broken", 8),
    )
    lines = ["\n(c) advice followed", " " * 16 + "".join(f"{name:>{wide}}" for name, wide in columns) + "   ways"]
    for name, each in ((name, each) for name, each in groups.items() if each.lifters):
        asked = max(sum(each.asked_of.values()), 1)
        ways = ", ".join(f"{way} {n / asked:.0%}" for way, n in each.asked_of.most_common())
        values = (
            f"{each.share_met():.1%}", f"{np.mean(each.first_met or [False]):.0%}", f"{each.how_far():.2f}",
            f"{each.steps / max(each.lifters, 1):.1f}", f"{np.mean(each.strength_gained or [0]):.1%}",
            f"{np.mean(each.work_gained or [0]):.1%}", str(len(each.broken)),
        )  # fmt: skip
        row = "".join(f"{value:>{wide}}" for value, (_, wide) in zip(values, columns, strict=True))
        lines.append(f"{name:<16}{row}   {ways}")
    whole = groups["all"]
    rates = [f"{way} {whole.met_of[way]}/{n}" for way, n in whole.asked_of.most_common()]
    lines.append("  met by way: " + ", ".join(rates))
    for what, n in Counter((breach.rule, breach.what) for breach, _ in whole.broken).most_common(12):
        lines.append(f"  broken: rule {what[0]}: {what[1]} x {n}")
    return lines


def _goal_lines(both: tuple[Scores, Scores], names: list[str], total: Following, sessions: int) -> list[str]:
    scores, apart = both
    _, gap, skill = calibration(scores.chance["all"])
    values = (
        scores.gap_closed("all"), min(scores.gap_closed(name) for name in names),
        apart.gap_closed("all"), gap, skill,
        float(np.mean(scores.inside["all"])), total.share_met(), total.how_far(),
        total.steps / total.lifters * 24 / sessions, float(len(total.broken)),
    )  # fmt: skip
    lines = [f"\n{'measure':<42}{'value':>9}{'goal':>8}{'stretch':>9}"]
    lines += [
        f"{goal.name:<42}{value:>9.3f}{goal.goal:>8.2f}{goal.stretch:>9.2f}  {goal.verdict(value)}"
        for goal, value in zip(GOALS, values, strict=True)
    ]
    return lines
