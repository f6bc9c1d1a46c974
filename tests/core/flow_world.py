"""One invented lifter with a plan, and a pass over acts without text: how the flow is tested apart from the reader."""

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from core.adviser import Advisers
from core.flow import opening
from core.flow.work import work
from core.model.acts import Act, SetAct
from core.model.book import Book, Incoming, Profile
from core.model.lifter import Lifter
from core.model.outcome import Outcome
from core.model.plan import Plan, Planned, TrainingDay
from core.model.quantities import Load
from core.model.target import Aim
from core.say.reply import Moment, replied
from tests.bot.keeper import Keeper

ZONE = ZoneInfo("Europe/Berlin")
MONDAY = date(2026, 3, 2)
EVENING = datetime(2026, 3, 2, 18, 31, tzinfo=ZONE).astimezone(UTC)
SQUAT, SPLIT, CALF = "goblet-squat", "split-squat", "standing-calf-raise"

LEGS = TrainingDay(
    0,
    time(18, 30),
    "Legs",
    (
        Planned(SQUAT, Aim(3, (10, 12), 2.0, None, 120.0, ("tempo", "reps")), note="heels down"),
        Planned(SPLIT, Aim(3, (8, 12), 2.0, None, 120.0)),
        Planned(CALF, Aim(2, (12, 18), 1.0, None, 60.0)),
    ),
)


def squat(reps: int, kg: float = 24.0, **more: object) -> SetAct:
    """A set of goblet squats."""
    return SetAct(SQUAT, Load("total", kg), reps, **more)  # type: ignore[arg-type]


def split(reps: int, **more: object) -> SetAct:
    """A set of split squats."""
    return SetAct(SPLIT, Load("per_hand", 10.0), reps, **({"side": "each"} | more))  # type: ignore[arg-type]


class World:
    """The lifter, the clock, and what was last said."""

    def __init__(self, *, plan: Plan | None = None, coach: str | None = "Ines", lifter: Lifter | None = None) -> None:
        profile = Profile("Tomas", ZONE, coach=coach)
        book = Book(profile, lifter or Lifter(bodyweight_kg=80.0), Plan((LEGS,)) if plan is None else plan)
        self.keeper = Keeper(book, MONDAY)
        self.now = EVENING
        self.number = 0

    @property
    def book(self) -> Book:
        """The book as it stands now."""
        return self.keeper.at(self.now)

    def does(self, *acts: Act, edit: int | None = None, sure: bool = False, minutes: float = 1) -> Outcome:
        """Work acts as one message, or as the new reading of an earlier one."""
        self.now += timedelta(minutes=minutes)
        self.number += edit is None
        incoming = Incoming(edit or self.number, "words", edit=edit is not None)
        if edit is not None:
            self.keeper.reopen(edit)
        scene = opening.of_message(incoming, self.book, self.now, Advisers())
        scene = work(replace(scene, sure=sure), acts)
        moment = Moment(scene.book.profile, scene.book.lifter.unit, scene.came, self.now, "words")
        outcome = replied(scene.outcome(), scene.facts, scene.alerts, moment)
        self.keeper.apply(outcome, incoming, self.now)
        return outcome

    def sets(self, on: date = MONDAY) -> list[SetAct]:
        """The sets that stand for a day."""
        return [one.act for one in self.keeper.everything if one.on == on and isinstance(one.act, SetAct)]


def text(outcome: Outcome) -> str:
    """What the lifter reads."""
    return "\n".join(reply.text for reply in outcome.replies if reply.to == "sender")


def to_coach(outcome: Outcome) -> list[str]:
    """What the coach reads."""
    return [reply.text for reply in outcome.replies if reply.to == "coach"]
