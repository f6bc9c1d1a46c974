"""Messages that no person means, and messages that mean harm: read without an error, at a cost like their length."""

import sys
from types import FrameType

import pytest

from core.model.reading import Setting
from core.read.reader import read
from tests.bench.bench_reader import HOSTILE
from tests.bench.fuzz_reader import SETTINGS

FOUND = (
    "hack squat, a plate per side,, a plateate 3 plates of lasagne, 2 of tiramisu and id do it again per side, x15",
    "Open4x6 with 62½,5 on the pendlay rows, vamosing 5am to 11pm from the 1st, 365 days",
    "-01-ph- x3\nnb26t me oc",
    " -6 e,’x1t5 01,",
    "ACH LAND AGAIN, RPE 9 NOWEG X 3 - NEVER SENT EM SUNDAY'S WALKING",
    "bench ⑩,5 x 8",
    "bench 6½,5,½ x 8",
)
"""Messages that the fuzz or a look at odd signs found to be read wrongly once."""


@pytest.mark.parametrize("text", FOUND)
def test_what_was_found_is_read(text: str) -> None:
    for setting in SETTINGS:
        for act in read(text, setting).acts:
            assert act.span is not None
            assert 0 <= act.span[0] < act.span[1] <= len(text), act


def work(text: str) -> int:
    """How many functions of the reader a message calls: its cost, whatever else the machine does."""
    count = 0

    def seen(frame: FrameType, event: str, arg: object) -> None:
        nonlocal count
        count += event == "call"

    before = sys.getprofile()
    sys.setprofile(seen)
    try:
        read(text, Setting(now_on="barbell-bench-press"))
    finally:
        sys.setprofile(before)
    return count


@pytest.mark.parametrize("name", sorted(HOSTILE))
def test_cost_grows_like_the_length(name: str) -> None:
    """Twice the length costs at most two and a half times as much, with what every message costs let off."""
    short, long = HOSTILE[name][:900], HOSTILE[name][:1800]
    work(long)  # whatever is remembered is remembered now
    assert work(long) <= 2.5 * work(short) + 200
