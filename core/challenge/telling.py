"""Was a session told while it happened? Its messages' times are held against the time that its sets take as asked.

Knows no act, no target and no chat. What is not told live is not called a lie: it waits for the coach's word.
"""

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta

from core.evidence.numbers import value


@dataclass(frozen=True, slots=True)
class Telling:
    """One message of a session: when it came, in the lifter's zone, and how long the sets told in it take as asked.

    ``takes_s`` is in seconds, rests between the sets included; 0 for a message that tells no set ("starting").
    """

    at: datetime
    takes_s: float = 0.0


def told_live(tellings: Iterable[Telling], on: date) -> bool:
    """Whether a session of that local day was told while it happened.

    It was when its first message came on the day (or shortly after midnight), and the last set was told late enough
    after that message for a good part of all sets to have been done in between. A word after the last set adds nothing.
    """
    in_order = sorted(tellings, key=lambda one: one.at)
    told = [one for one in in_order if one.takes_s > 0.0]
    if not told or not _on_its_day(in_order[0].at, on):
        return False
    span = told[-1].at - in_order[0].at
    return span / timedelta(seconds=1) >= value("challenge.live_share") * sum(one.takes_s for one in told)


def _on_its_day(first: datetime, on: date) -> bool:
    since = first.replace(tzinfo=None) - datetime.combine(on, time(0))
    return since < timedelta(days=1, hours=value("challenge.late_h"))
