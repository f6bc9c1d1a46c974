"""The coach's words: who needs one, a client's week in under 1,500 characters. Knows facts and the table of words."""

from collections import Counter
from collections.abc import Sequence
from datetime import date
from typing import Final, get_args

from core.evidence.body import row_of, traits_of
from core.model.acts import AcheAct
from core.model.course import PictureWords
from core.model.lifter import Ache
from core.model.quantities import Way, from_kg
from core.model.week import OFFERED, ChangeSeen, Concern, Honesty, MuscleLoad, Proposal, Standing, WeekFacts
from core.say import body, figures
from core.say.progress import muscle
from core.say.render import Voice

MOST: Final = 1_500
"""Characters of one client's week; more is not read on a phone."""
SHOWN: Final = 12
"""Clients in one morning word; more would not be read. The others are named."""
_TOP: Final = 5
_WAYS: Final = frozenset(get_args(Way))
_WHOLE_FROM: Final = 10
_SHARE: Final = 4
"""A move of the estimate by less than this part of its span lies within doubt."""


def place(voice: Voice, ache: Ache) -> str:
    """Where it aches."""
    return body.place(voice, AcheAct(ache.where, ache.side, ache.level))


def when(voice: Voice, on: date, today: date) -> str:
    """A day as it is said in passing."""
    ago = (today - on).days
    if ago in (0, 1):
        return voice.say("day.yesterday" if ago else "day.today")
    return voice.say("day.on", day=voice.date(on))


# Who needs a word


def attention(voice: Voice, found: Sequence[Concern], clients: int, today: date) -> str:
    """The morning word: those who need one, most urgent first, and then the praise."""
    if not clients:
        return voice.say("attention.empty")
    fresh = [one for one in found if not one.still]
    still = [one for one in found if one.still]
    needs = [one for one in fresh if one.row not in OFFERED]
    lines = [_attention_head(voice, len(needs), len(still), clients)]
    lines += [concern(voice, one, today) for one in needs[:SHOWN]]
    if still:
        lines.append(voice.say("attention.still", list=voice.listed([concern(voice, one, today) for one in still])))
    praise = [one for one in fresh if one.row in OFFERED][: max(SHOWN - len(needs), 0)]
    if praise:
        lines += [voice.say("attention.praise.head"), *(concern(voice, one, today) for one in praise)]
    shown = (*needs[:SHOWN], *praise)
    if more := [one.name for one in fresh if one not in shown]:
        lines.append(voice.say("attention.more", len(more), n=len(more), names=voice.listed(more)))
    rest = clients - len(found)
    if rest and (needs or still):
        lines.append(voice.say("attention.rest", rest, n=rest))
    return "\n".join(lines)


def _attention_head(voice: Voice, needs: int, still: int, clients: int) -> str:
    if needs:
        return voice.say("attention.head", needs, n=needs)
    return voice.say("attention.none.new") if still else voice.say("attention.none", clients, n=clients)


def concern(voice: Voice, one: Concern, today: date) -> str:
    """One client's line, or a few words where nothing has changed."""
    slots: dict[str, object] = {"name": one.name, "n": one.count, "more": one.count - 1, **one.more}
    key = f"attention.still.{one.row}" if one.still else f"attention.{one.row}"
    if one.exercise:
        slots["exercise"] = voice.exercise(one.exercise)
    if one.other:
        slots["next"] = voice.exercise(one.other)
    if one.way:
        slots["way"] = voice.say(f"way.{one.way}")
    if one.sign:
        slots["sign"] = voice.say(f"sign.{one.sign}")
    if one.on:
        slots["day"] = when(voice, one.on, today) if one.ache else voice.date(one.on)
    if one.ache:
        slots["where"] = place(voice, one.ache)
        key = key if one.ache.level is not None else f"{key}.unsaid"
        slots["level"] = voice.number(one.ache.level or 0.0)
    return voice.say(key, one.count, **slots)


# Pictures


def overview_words(voice: Voice) -> PictureWords:
    """The words in the picture of everyone."""
    said = {key: voice.say(f"picture.overview.{key}") for key in ("name", "this", "last")}
    said["weeks"] = voice.say("picture.overview.weeks", n="{n}")
    said["week"] = voice.say("picture.overview.week", kept="{kept}", planned="{planned}", steps="{steps}")
    return PictureWords(foot=voice.say("picture.overview.foot"), decimal=voice.decimal, facts=said)


def ahead_words(voice: Voice, *, in_reps: bool) -> PictureWords:
    """The words in the picture of what would likely come."""
    axis = voice.say("picture.ahead.reps") if in_reps else voice.say("picture.ahead.load", unit=voice.unit)
    span = voice.say("picture.ahead.span", n="{n}", low="{low}", high="{high}")
    said = {"day": voice.say("picture.ahead.day"), "span": span}
    return PictureWords(axis=axis, day=voice.say("picture.day"), decimal=voice.decimal, facts=said)


# A week


def week(voice: Voice, facts: WeekFacts) -> str:
    """One client's week; the least telling lines go first when it would be too long."""
    lines = [line for line in (part(voice, facts) for part in _PARTS) if line]
    while len("\n".join(lines)) > MOST:
        lines.pop(max(range(1, len(lines)), key=lambda n: len(lines[n])))
    return "\n".join(lines)


def _head(voice: Voice, facts: WeekFacts) -> str:
    key = "review.head" if facts.planned else "review.head.coming" if facts.has_plan else "review.head.unplanned"
    more, sets = facts.kept - facts.planned, voice.say("review.sets", facts.sets, n=facts.sets)
    key = "review.head.more" if facts.planned and more > 0 else key
    slots = {"kept": facts.kept, "planned": facts.planned, "more": more, "sets": sets}
    return voice.say(
        key, facts.kept, name=facts.name, first=voice.date(facts.first), last=voice.date(facts.last), **slots
    )


def _held(voice: Voice, facts: WeekFacts) -> str:
    if facts.held == "screening":
        return voice.say("review.held.screening")
    return voice.say("review.held", sign=voice.say(f"sign.{facts.held}")) if facts.held else ""


def _heard(voice: Voice, facts: WeekFacts) -> str:
    return voice.say("review.heard", day=voice.date(facts.heard)) if facts.heard is not None and not facts.sets else ""


def _easier(voice: Voice, facts: WeekFacts) -> str:
    if facts.easier:
        return voice.say("review.easier")
    return voice.say("review.easier.next") if facts.easier_next else ""


def _steps(voice: Voice, facts: WeekFacts) -> str:
    if not facts.steps:
        return voice.say("review.steps.none") if facts.sets and not facts.easier else ""
    counted = Counter((one.exercise, one.way) for one in facts.steps)
    texts = []
    for (exercise, way), n in counted.items():
        key = "review.step.times" if n > 1 else "review.step"
        texts.append(voice.say(key, exercise=voice.exercise(exercise), way=voice.say(f"way.{way}"), n=n))
    return voice.say("review.steps", len(texts), list=_some(voice, texts))


def _trend(voice: Voice, facts: WeekFacts) -> str:
    if not facts.standings or not facts.sets:
        return ""
    line = voice.say("review.trend", list=_some(voice, [_standing(voice, one) for one in facts.standings]))
    return " ".join(filter(None, (line, _moves(voice, facts.standings))))


def _standing(voice: Voice, one: Standing) -> str:
    low, middle, high = (_shown(voice, one, value) for value in (one.low, one.estimate, one.high))
    both = row_of(one.exercise).load_kind == "per_hand" and traits_of(one.exercise).hands == figures.BOTH_HANDS
    each = "2 x " if both else ""
    what = middle if one.in_reps else each + voice.say(f"unit.{voice.unit}", n=middle)
    key = f"review.trend.{figures.unit_of(one.exercise)}" if one.in_reps else "review.trend.one"
    return voice.say(key, exercise=voice.exercise(one.exercise), n=what, low=low, high=high)


def _shown(voice: Voice, one: Standing, value: float) -> str:
    """To whole units from ten on: the doubt is wider than that."""
    shown = value if one.in_reps else from_kg(value, voice.unit)
    return voice.number(shown, 0 if one.in_reps or shown >= _WHOLE_FROM else 1)


def _moves(voice: Voice, standings: Sequence[Standing]) -> str:
    """What moved beyond doubt since some weeks ago: by more than a quarter of the span."""
    old = [one for one in standings if one.before and one.since is not None]
    if not old:
        return ""
    clear = [one for one in old if one.before and abs(one.estimate - one.before) >= (one.high - one.low) / _SHARE]
    texts = []
    for one in clear:
        share = (one.estimate / (one.before or one.estimate) - 1) * 100
        key = "review.moved.up" if share > 0 else "review.moved.down"
        texts.append(voice.say(key, exercise=voice.exercise(one.exercise), n=voice.number(abs(share), 0)))
    day = voice.date(min(one.since for one in old if one.since is not None))
    if not texts:
        return voice.say("review.moved.none", day=day)
    return voice.say(
        "review.moved.all" if len(clear) == len(old) else "review.moved", day=day, list=voice.listed(texts)
    )


def _muscles(voice: Voice, facts: WeekFacts) -> str:
    if not facts.sets:
        return ""
    groups = []
    for side in ("under", "inside", "over"):
        rows = [one for one in facts.muscles if one.side == side]
        texts = [_muscle(voice, one) for one in rows]
        if texts:
            groups.append(voice.say(f"review.muscles.{side}", list=voice.listed(texts)))
    if not groups:
        return ""
    low, high = (voice.number(end) for end in facts.span)
    return voice.say("review.muscles", low=low, high=high, list="; ".join(groups))


def _muscle(voice: Voice, one: MuscleLoad) -> str:
    low, high = (voice.number(end) for end in one.asked)
    key = "review.muscle.own" if one.own else "review.muscle"
    return voice.say(key, muscle=muscle(voice, one.muscle), n=voice.number(one.sets, 1), low=low, high=high)


def _honesty(voice: Voice, facts: WeekFacts) -> str:
    return " ".join(filter(None, (_form(voice, facts.honesty), _effort(voice, facts.honesty)))) if facts.sets else ""


def _form(voice: Voice, said: Honesty) -> str:
    if not said.form_said:
        return ""
    if not said.form_off:
        return voice.say("review.form.clean", said.form_said, said=said.form_said)
    return voice.say("review.form", off=said.form_off, said=said.form_said)


def _effort(voice: Voice, said: Honesty) -> str:
    return voice.say("review.effort", said.effort_off, off=said.effort_off) if said.effort_off else ""


def _aches(voice: Voice, facts: WeekFacts) -> str:
    texts = []
    for ache in facts.aches:
        key = "review.ache" if ache.level is not None else "review.ache.unsaid"
        level = voice.number(ache.level or 0.0)
        texts.append(voice.say(key, where=place(voice, ache), level=level, day=voice.weekday(ache.on)))
    return voice.say("review.aches", list=_some(voice, texts)) if texts else ""


def _changes(voice: Voice, facts: WeekFacts) -> str:
    """What was changed and why, exercises with the same cause together."""
    alike: dict[tuple[str, str], list[str]] = {}
    for one in facts.changes:
        key = (voice.say(f"review.change.{one.way}"), _why(voice, one))
        alike.setdefault(key, []).append(voice.exercise(one.exercise))
    texts = [
        voice.say("review.change", exercises=voice.listed(list(dict.fromkeys(names))), what=what, cause=cause)
        for (what, cause), names in alike.items()
    ]
    return voice.say("review.changes", list="; ".join(texts)) if texts else ""


def _why(voice: Voice, one: ChangeSeen) -> str:
    if one.ache is None:
        return voice.say(f"review.cause.{one.cause}")
    where, level = place(voice, one.ache), voice.number(one.ache.level or 0.0)
    return voice.say("review.cause.ache", where=where, level=level, day=voice.date(one.ache.on))


def _proposes(voice: Voice, facts: WeekFacts) -> str:
    texts = [proposal(voice, one) for one in facts.proposals]
    return voice.say("review.proposes", list=_some(voice, texts)) if texts else ""


def proposal(voice: Voice, one: Proposal) -> str:
    """What would be asked next time, in a few words: "goblet squat 24 kg for 9 to 12 (more repetitions)"."""
    name = voice.exercise(one.exercise)
    if one.first is None:
        return voice.say("review.proposal.stop", exercise=name)
    words = voice.say("review.proposal", exercise=name, what=figures.asked(voice, one.exercise, one.first))
    return f"{words} ({voice.say(f'way.{one.way}')})" if one.way in _WAYS else words


def _some(voice: Voice, texts: list[str]) -> str:
    more = len(texts) - _TOP
    return voice.listed([*texts[:_TOP], *([voice.say("review.more", n=more)] if more > 0 else [])])


_PARTS: Final = (_head, _heard, _held, _easier, _steps, _trend, _muscles, _honesty, _aches, _changes, _proposes)
"""The lines of a week, in their order."""
