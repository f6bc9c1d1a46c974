"""The numbers of the coach's desk: weekly sets, what needs a word and when. Rows in the shape of numbers.py; no logic."""  # noqa: E501

from typing import Final

from core.evidence.numbers import Number


def _n(key: str, value: float, unit: str, span: tuple[float, float], sources: str, grade: str, meaning: str) -> Number:
    return Number(key, value, unit, span[0], span[1], tuple(sources.split()), grade, meaning)  # type: ignore[arg-type]


# fmt: off
_ROWS: Final = (
    _n("sets.low", 10, "sets a week", (4, 20), "acsm-2026", "strong", "fewest weekly sets for a muscle, unless the coach wants another range"),  # noqa: E501
    _n("sets.high", 20, "sets a week", (8, 30), "baz-valle-2022", "weak", "most weekly sets for a muscle"),
    _n("sets.indirect", 0.5, "1", (0.0, 1.0), "pelland-2024", "strong", "a set counts so much for a muscle that only helps"),  # noqa: E501
    _n("attention.missed", 2, "sessions", (1, 3), "practice", "convention", "so many planned sessions missed in a row need a word"),  # noqa: E501
    _n("attention.silent_days", 7, "days", (4, 14), "practice", "convention", "no word for so long needs one"),
    _n("attention.stall", 3, "sessions", (2, 5), "rogerson-2024 derived", "judgement", "the same target so often in a row is a stall"),  # noqa: E501
    _n("attention.form_share", 0.34, "1", (0.2, 0.6), "derived", "judgement", "from this share of sets said not clean on, form is slipping"),  # noqa: E501
    _n("attention.form_sets", 4, "sets", (3, 10), "derived", "judgement", "with fewer words on form than this nothing is said of it"),  # noqa: E501
    _n("attention.effort_reps", 3, "reps", (2, 5), "zourdos-2021 derived", "judgement", "a later set at the same load that shows so many more in hand than an earlier one cannot be right"),  # noqa: E501
    _n("attention.effort_days", 2, "days", (1, 4), "derived", "judgement", "on so many days before it is mentioned"),
    _n("attention.window_days", 14, "days", (7, 28), "derived", "judgement", "how far back form and effort are looked at"),  # noqa: E501
    _n("attention.ache_days", 3, "days", (1, 7), "silbernagel-2007 derived", "judgement", "an ache told within so many days needs a word"),  # noqa: E501
    _n("attention.ache_old_days", 7, "days", (4, 28), "practice", "convention", "an ache of which nothing was said for so long, while it eases what is trained, is asked about"),  # noqa: E501
    _n("attention.praise_days", 1, "days", (1, 7), "practice", "convention", "a step made within so many days is worth praising"),  # noqa: E501
    _n("overrule.step", 0.25, "1", (0.1, 0.5), "practice", "convention", "up to this share over the last load a coach may ask for by a yes of their own; past it the number is a slip"),  # noqa: E501
    _n("easier.shortest", 2, "weeks", (2, 4), "rogerson-2024 derived", "judgement", "a block with an easier week at its end has at least so many weeks"),  # noqa: E501
    _n("easier.longest", 16, "weeks", (8, 16), "rogerson-2024 derived", "judgement", "and no more than so many; past it the number is a slip (every 5.6 weeks, spread 2.3)"),  # noqa: E501
    _n("trend.weeks", 3, "weeks", (2, 8), "derived", "judgement", "an estimate is compared with one at least so old"),
    _n("trend.oldest_weeks", 8, "weeks", (4, 16), "derived", "judgement", "and not older than this"),
)
# fmt: on

DESK: Final = {row.key: row for row in _ROWS}
"""Every number of the desk by its key."""


def desk_value(key: str) -> float:
    """The number of that key; a key that is not in the table is our bug and raises KeyError."""
    return DESK[key].value
