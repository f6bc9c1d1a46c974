"""What is remembered between passes is never another lifter's, nor of another history, day or kit."""

from datetime import date
from zoneinfo import ZoneInfo

from core.adviser import Advisers
from core.advising import absorb, advise_from, begin, dump
from core.flow.day import aim_of
from core.model.acts import SetAct
from core.model.book import Book, Profile
from core.model.lifter import Kit, Lifter
from core.model.quantities import Load
from core.model.target import Session

ON = date(2026, 3, 2)
LIFT = "barbell-bench-press"
DONE = SetAct(LIFT, Load("total", 60.0), 8, rir=2.0)
PROFILE = Profile("Ann", ZoneInfo("UTC"))
LIFTERS = (
    Lifter(bodyweight_kg=60),
    Lifter(bodyweight_kg=90),
    Lifter(bodyweight_kg=60, kit=Kit(bar_kg=20, plates_kg={20.0: 2, 10.0: 2})),
    Lifter(bodyweight_kg=60, kit=Kit(bar_kg=20, plates_kg={5.0: 2})),
    Lifter(bodyweight_kg=60, experience="long"),
)


def test_asked_in_turns_everyone_gets_what_advising_says_for_them() -> None:
    seen = set()
    for _ in range(2):
        for lifter in LIFTERS:
            fresh = begin(lifter, LIFT)
            aim = aim_of(Book(PROFILE, lifter), ON, LIFT)
            trained = absorb(fresh, lifter, aim, Session(ON.replace(day=1), (DONE, DONE)))
            for progress, folded in ((fresh, {}), (trained, {LIFT: dump(trained)})):
                book = Book(PROFILE, lifter, progress=folded)
                for done in ((), (DONE,)):
                    advice = Advisers().today(book, ON, LIFT, done)
                    assert advice == advise_from(progress, lifter, LIFT, aim, ON, today=done)
                    seen.add(advice)
    assert len(seen) > len(LIFTERS)


def test_a_kit_is_the_same_whatever_the_order_of_its_plates() -> None:
    one, other = Kit(plates_kg={20.0: 2, 10.0: 4}), Kit(plates_kg={10.0: 4, 20.0: 2})
    assert one == other
    assert hash(one) == hash(other)
    assert len({one, other, Kit(plates_kg={20.0: 4, 10.0: 2})}) == 2
