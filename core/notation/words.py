"""The words of a written plan, as tables. No logic."""

from typing import Final

from core.model.quantities import Way

WEEKDAYS: Final[dict[str, tuple[int, ...]]] = {
    **dict.fromkeys(("mon", "monday", "mondays", "mo"), (0,)),
    **dict.fromkeys(("tue", "tues", "tuesday", "tuesdays", "tu"), (1,)),
    **dict.fromkeys(("wed", "weds", "wednesday", "wednesdays", "we"), (2,)),
    **dict.fromkeys(("thu", "thur", "thurs", "thursday", "thursdays", "th"), (3,)),
    **dict.fromkeys(("fri", "friday", "fridays", "fr"), (4,)),
    **dict.fromkeys(("sat", "saturday", "saturdays", "sa"), (5,)),
    **dict.fromkeys(("sun", "sunday", "sundays", "su"), (6,)),
    "mwf": (0, 2, 4),
    "weekdays": (0, 1, 2, 3, 4),
    "weekend": (5, 6),
    "weekends": (5, 6),
    "daily": (0, 1, 2, 3, 4, 5, 6),
}
SHORT_DAYS: Final = frozenset({"mo", "tu", "we", "th", "fr", "sa", "su"})
"""Two letters are a day only beside another day or a time; alone they may be a word."""

DAY_NAMES: Final = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")

MONTHS: Final[dict[str, int]] = {
    name: number
    for number, names in enumerate(
        [
            "jan january",
            "feb february",
            "mar march",
            "apr april",
            "may",
            "jun june",
            "jul july",
            "aug august",
            "sep sept september",
            "oct october",
            "nov november",
            "dec december",
        ],
        start=1,
    )
    for name in names.split()
}

WAYS: Final[dict[str, Way]] = {
    **dict.fromkeys(("reps", "rep", "repetitions"), "reps"),
    **dict.fromkeys(("tempo", "slower"), "tempo"),
    **dict.fromkeys(("range", "rom", "depth", "deeper"), "range"),
    **dict.fromkeys(("rest", "density"), "rest"),
    **dict.fromkeys(("load", "weight", "heavier", "kilos", "pounds"), "load"),
}
WAY_FILLERS: Final = frozenset({"then", "before", "first", "and", "or", "only", "by", ",", ">", "+", "more", "add"})
"""Words between two ways; the order in which the ways stand is the order that counts."""

PHASES: Final[dict[str, int]] = {
    **dict.fromkeys(("lower", "down", "lowering", "negative", "negatives", "eccentric", "descent"), 0),
    **dict.fromkeys(("pause", "paused", "hold", "bottom"), 1),
    **dict.fromkeys(("lift", "up", "lifting", "raise", "concentric"), 2),
    **dict.fromkeys(("top", "squeeze", "lockout"), 3),
}
"""Word of a phase -> its place in a tempo."""

NUMBER_WORDS: Final[dict[str, str]] = {
    word: str(number)
    for number, word in enumerate(
        [
            "one",
            "two",
            "three",
            "four",
            "five",
            "six",
            "seven",
            "eight",
            "nine",
            "ten",
            "eleven",
            "twelve",
            "thirteen",
            "fourteen",
            "fifteen",
        ],
        start=1,
    )
} | {
    "twenty": "20", "thirty": "30", "forty": "40", "forty-five": "45", "sixty": "60", "seventy-five": "75",
    "ninety": "90",
}  # fmt: skip

ASKED_WORDS: Final[tuple[tuple[str, str], ...]] = (
    (r"amrap|a\.m\.r\.a\.p|as many as possible|\bmax\b|maximum", "open_reps"),
    (
        r"drop\s*-?sets?|clusters?|rest[\s-]?pause|myo|waves?\b|emom|e2mom|back[\s-]?offs?|ramp|pyramid|circuit|tabata|giant set",  # noqa: E501
        "set_kind",
    ),
    (r"last set|first set|top set|final set|failure", "mixed_sets"),
    (r"\bor\b|\balternat|\boptional|\bevery other", "either_or"),
)
"""Words that change what is trained and that a plan cannot hold as a note: the line is asked about."""

SECTIONS: Final = frozenset(
    [
        "main",
        "main lift",
        "main lifts",
        "main work",
        "accessory",
        "accessories",
        "accessory work",
        "assistance",
        "assistance work",
        "core",
        "finisher",
        "finishers",
        "strength",
        "warm-up",
        "warm up",
        "warmup",
        "cool down",
        "cool-down",
        "arms",
        "conditioning",
        "upper",
        "lower",
        "lower body",
        "upper body",
        "supersets",
        "superset",
        "block",
        "the rest",
        "then",
        "extras",
    ]
)
"""Headings inside a day; they sort the page and train nothing."""

ORDINALS: Final[dict[str, str]] = {
    "other": "2nd", "second": "2nd", "third": "3rd", "fourth": "4th", "fifth": "5th", "sixth": "6th", "eighth": "8th",
}  # fmt: skip
"""Ordinals written out, where weeks are counted."""

REST_DAY: Final = frozenset({"rest", "off", "rest day", "day off", "nothing", "free", "no training", "recovery"})
"""A day on which nothing is trained."""

EVERYWHERE: Final = (
    r"(?:(?:for|on|in|after)\s+)?(?:all\s+(?=rests?\b)|all\s+(?:the\s+)?(?:sets|exercises|lifts)|every\s+(?:exercise|set|lift)|everything|everywhere"
    r"|throughout|always|all)"
)
"""Said of a whole day or plan."""

COLUMNS: Final[dict[str, str]] = {
    **dict.fromkeys(("exercise", "exercises", "movement", "movements", "lift", "lifts", "what", "name"), "name"),
    **dict.fromkeys(("sets", "set", "s"), "sets"),
    **dict.fromkeys(("reps", "rep", "repetitions", "reps/time", "reps / time", "reps or time", "sets x reps"), "reps"),
    **dict.fromkeys(("sets×reps", "sets/reps", "setsxreps", "sxr", "prescription", "volume"), "reps"),
    **dict.fromkeys(("rir", "reserve", "left", "in reserve", "reps left", "in the tank"), "rir"),
    **dict.fromkeys(("rpe", "effort", "@"), "rpe"),
    "tempo": "tempo",
    **dict.fromkeys(("rest", "rests", "pause", "break", "rest (s)", "rest (min)"), "rest"),
    **dict.fromkeys(("load", "weight", "kg", "%", "%1rm", "% 1rm", "intensity"), "load"),
    **dict.fromkeys(("note", "notes", "cue", "cues", "comment", "comments", "remarks"), "note"),
    **dict.fromkeys(("#", "no", "nr", "order"), "mark"),
}
"""Heads of a table's columns, and which part of a line each is."""

MANNERS: Final = frozenset({"weighted", "paused", "pause", "strict", "slow", "heavy", "light", "easy", "controlled"})
"""A word before a name that says how it is done, not which exercise it is: kept as a note."""

CHATTER: Final = (
    r"(?:see\s+you|any\s+questions?|questions\b|let\s+me\s+know|shout\b|have\s+fun|enjoy\b|good\s+luck|well\s+done|thanks?\b"
    r"|cheers\b|hi\b|hey\b|hello\b|dear\b|best\b(?!\s+set)|(?:kind\s+)?regards\b|yours\b|text\s+me|message\s+me|call\s+me|talk\s+soon|that'?s\s+(?:it|all)\b|you'?ve\s+got\s+this)"
)
"""How a line opens that is a word between people and trains nothing."""

IN_FIGURES: Final[tuple[tuple[str, str], ...]] = (
    (r"\b(?:one|a)\s+minute\s+and\s+a\s+half\b|\b(?:one|1)\s+and\s+a\s+half\s+min(?:ute)?s?\b", "90 s"),
    (r"\b(?:two|2)\s+and\s+a\s+half\s+min(?:ute)?s?\b", "150 s"),
    (r"\bhalf\s+a\s+minute\b", "30 s"),
    (r"\b(?:a|one)\s+(?:full\s+)?minute\b", "1 min"),
    (r"\ba\s+couple\s+of\s+min(?:ute)?s?\b", "2 min"),
    (r"\b([bdk])/b\b", r"\1b"),
)
"""Lengths of time as they are spoken, and pieces of kit written with a stroke, in figures and letters."""
