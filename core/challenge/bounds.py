"""What holds beside the rows of the scoring, and what it cannot see. Sentences with their reasons; no logic."""

from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class Bound:
    """What holds beside the rows."""

    id: str
    sentence: str
    reason: str
    numbers: tuple[str, ...] = ()


BOUNDS: Final[tuple[Bound, ...]] = (
    Bound(
        "bound.evenly",
        "The exercises of a session share one session's worth evenly.",
        "Nobody gains by many small exercises.",
    ),
    Bound(
        "bound.exercise_week",
        "One exercise is a chance at most three times a week, the first three.",
        "Nobody gains by doing the easiest one every day.",
        ("challenge.exercise_week",),
    ),
    Bound(
        "bound.once",
        "A day counts once for each exercise, however often it is told.",
        "The same act never counts twice.",
    ),
    Bound(
        "bound.planned",
        "Only what the coach planned is a chance.",
        "Extra sessions, real or not, bring nothing.",
    ),
    Bound(
        "bound.hundred",
        "Points are what was earned of every hundred that could be.",
        "Two sessions a week or five, from the start or from the third week: the same diligence, the same points.",
    ),
    Bound(
        "bound.joined",
        "Chances begin the day after joining; pauses and days after leaving hold none; coming back keeps what was.",
        "Nothing done before is won by joining later, and leaving wipes no slate.",
    ),
    Bound(
        "bound.few",
        "A place needs as many chances as two full sessions at least.",
        "One good day is no season.",
        ("challenge.least_sessions",),
    ),
    Bound(
        "bound.ties",
        "Equal points share a place.",
        "There is nothing honest to tell them apart by.",
    ),
    Bound(
        "bound.closed",
        "What is changed after a week's close does not move that week; the coach's word still does.",
        "A closed week is a closed week.",
    ),
)

UNSEEN: Final[tuple[Bound, ...]] = (
    Bound(
        "unseen.patient",
        "Someone who makes a session up and sits through it with the phone, set by set in the time that it takes.",
        "Each such set is what a diligent beginner tells as well: just what was asked. A rule against exact sets would "
        "punish those who do as they are asked. The coach can take the session out of the count.",
    ),
    Bound(
        "unseen.form",
        "Loose form, or a range cut short, that is not said.",
        "Nobody sees the set. Saying so costs a tenth of the exercise, so that it is said.",
    ),
    Bound(
        "unseen.small",
        "A repetition or two more than were done.",
        "A forecast is not that sharp; but a set that was stopped where asked counts in full, so that it wins nothing.",
    ),
    Bound(
        "unseen.steady",
        "Reports that are a little too high, and by a little more each week.",
        "A forecast learns what it is told. Held against one from weeks ago, honest members who grow would be asked "
        "about as well; and there is nothing to be won: a set that was stopped where asked counts in full without it.",
    ),
    Bound(
        "unseen.ache",
        "An ache that is said and not felt, or a session called off for no reason.",
        "What is no chance lowers nobody, so that a hundred can be kept on few sessions; the standings show how few. "
        "An ache that had to be proven would be hidden.",
    ),
)
"""What the scoring cannot see, and why nothing is made up against it."""
