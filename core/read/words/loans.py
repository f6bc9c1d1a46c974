"""Words of the trade that are written alike in every gym: they tell nothing of the language of a message."""

from typing import Final

# fmt: off
LOANS: Final = frozenset({
    "x", "kg", "kgs", "kilo", "kilos", "lb", "lbs", "h", "hr", "min", "mins", "m", "cm", "km", "s", "sec", "r", "rep",
    "reps", "set", "sets", "rpe", "rir", "tempo", "drop", "dropset", "amrap", "emom", "rom", "superset", "pr", "pb",
    "rm", "max", "ok", "okay", "plan", "stop", "start", "fit", "pump", "top", "super", "normal", "total", "range", "bw",
    "warmup", "db", "dbs", "kb", "kbs", "bb", "sz", "ez", "haha", "lol", "oh", "ah", "eh", "hm", "video", "app", "chat",
    "online", "team", "training", "workout", "gym", "box", "band", "finisher", "burpee", "plank",
})

PHRASES: Final[tuple[tuple[str, str], ...]] = tuple((phrase, phrase) for phrase in (
    "a side", "a leg", "an arm", "a hand", "a plate", "a bench", "on a bench", "on a box", "on the box", "a set of",
    "a minute", "a bit", "a lot", "a few", "a couple", "a couple of", "a touch", "pull ups", "push ups", "chin ups",
    "press ups", "step ups", "sit ups", "last set", "last one", "last rep",
))
"""Phrases that mix with words of other languages and hold a word that means something else there."""
# fmt: on
