"""What was not understood of a written plan, and what was taken otherwise than perhaps meant, in sentences.

It knows the troubles only by their kind, name and choices; the plan itself is written by the notation.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Final

from core.evidence.exercises import EXERCISES
from core.model.plan import Plan
from core.say.render import Voice

MOST_CHOICES: Final = 4
"""Exercises named in one question, so that it stays a line or two."""
QUOTED: Final = 60


@dataclass(frozen=True, slots=True)
class Odd:
    """One line: its number and words, the kind of trouble, and what fills its sentence."""

    line: int
    text: str
    kind: str
    name: str = ""
    choices: tuple[str, ...] = ()
    below: int = 0


def asked(voice: Voice, odd: Odd) -> str:
    """A line that was left out, with what would do."""
    names = _names(voice, odd.choices)
    near = voice.say("plan.ask.near", choices=names) if odd.choices and odd.kind == "unknown_exercise" else ""
    what = voice.say(f"plan.ask.{odd.kind}", name=odd.name, choices=names, near=near).strip()
    below = voice.say("plan.ask.below", odd.below, n=odd.below) if odd.below else ""
    asked_ = voice.say("plan.ask", line=odd.line, text=odd.text[:QUOTED], what=what)
    return " ".join(filter(None, (asked_, below)))


def told(voice: Voice, odd: Odd) -> str:
    """A line that was taken, with how."""
    what = voice.say(f"plan.tell.{odd.kind}", name=odd.name, choices=_names(voice, odd.choices))
    return voice.say("plan.tell", line=odd.line, what=what)


def days(voice: Voice, plan: Plan) -> str:
    """The week in a line: "Monday 18:30 Legs, Thursday 18:30"."""
    return voice.listed(
        [" ".join(filter(None, (voice.say(f"weekday.{d.weekday}"), f"{d.at:%H:%M}", d.title))) for d in plan.days]
    )


def _names(voice: Voice, choices: Iterable[str]) -> str:
    some = list(choices)[:MOST_CHOICES]
    return voice.listed([voice.exercise(one) if one in EXERCISES else one for one in some])
