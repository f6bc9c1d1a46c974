"""Every number of the trade that the core uses: value, unit, range allowed, sources, grade. Rows, no logic.

A coach may move a number inside its range. Grades: "strong" (agreeing studies), "weak" (one study, or from memory),
"convention" (how the trade does it), "judgement" (ours; no published number).
"""

# ruff: noqa: E501 - one row a line
from dataclasses import dataclass
from typing import Final, Literal

Grade = Literal["strong", "weak", "convention", "judgement"]


@dataclass(frozen=True, slots=True)
class Number:
    """One number with all that is known of why it is so."""

    key: str
    value: float
    unit: str
    low: float
    high: float
    sources: tuple[str, ...]
    grade: Grade
    meaning: str


def _n(
    key: str, value: float, unit: str, span: tuple[float, float], sources: str, grade: Grade, meaning: str
) -> Number:
    return Number(key, value, unit, span[0], span[1], tuple(sources.split()), grade, meaning)


# fmt: off
_ROWS: Final = (
    # the curve: repetitions to failure against load
    _n("curve.k", 0.0333, "1", (0.015, 0.06), "nuzzo-2024 derived", "strong", "n = 1 + (maximum / load - 1) / k"),
    _n("curve.k_shrink", 0.7, "1", (0.0, 1.0), "hoeger-1990 derived", "judgement", "how far k by exercise is trusted against the common k"),
    _n("curve.k_log_sd", 0.27, "ln", (0.15, 0.4), "zourdos-2021", "weak", "spread of ln k between people, published for one lift"),
    _n("curve.long_set", 12, "reps", (10, 15), "halperin-2022", "strong", "past this, effort and curve are less sure"),
    _n("curve.shape", 1.0, "1", (-1.0, 2.0), "nuzzo-2024 derived", "judgement", "1 is a line in 1/share, -1 a line in the share; published formulas lie between and beyond"),
    _n("curve.shape_sd", 0.8, "1", (0.1, 1.5), "nuzzo-2024 derived", "judgement", "spread of that shape"),
    _n("curve.pin", 0.8, "1", (0.7, 0.9), "nuzzo-2024 derived", "judgement", "share of the maximum at which all shapes agree"),
    _n("curve.most", 80, "reps", (40, 120), "hoeger-1990", "weak", "no set is expected to go on past this, whatever the curve says"),
    # effort
    _n("effort.bias", 0.95, "reps", (0.0, 2.0), "halperin-2022", "strong", "lifters have about one more than they say"),
    _n("effort.bias_sd", 0.9, "reps", (0.3, 1.5), "halperin-2022 derived", "judgement", "spread of that bias between people"),
    _n("effort.sd_0", 0.8, "reps", (0.3, 1.5), "refalo-2023 derived", "weak", "error of a reserve said as 0"),
    _n("effort.sd_1", 1.0, "reps", (0.5, 2.0), "refalo-2023 derived", "weak", "error of a reserve said as 1"),
    _n("effort.sd_2", 1.4, "reps", (0.7, 2.5), "zourdos-2021 derived", "weak", "error of a reserve said as 2"),
    _n("effort.sd_3", 1.9, "reps", (1.0, 3.0), "zourdos-2021 derived", "weak", "error of a reserve said as 3"),
    _n("effort.sd_4", 2.3, "reps", (1.2, 3.5), "zourdos-2021 derived", "weak", "error of a reserve said as 4"),
    _n("effort.sd_5", 2.9, "reps", (1.5, 4.0), "zourdos-2021", "weak", "error of a reserve said as 5 or more"),
    _n("effort.fade", 2.0, "reps", (1.0, 3.0), "halperin-2022 refalo-2023 derived", "judgement", "the bias comes in over the last so many repetitions"),
    _n("effort.long_bias", 1.5, "1", (1.0, 3.0), "halperin-2022 derived", "weak", "bias of a long set against a short one"),
    _n("effort.long_sd", 1.0, "1", (1.0, 2.0), "halperin-2022 zourdos-2021 derived", "judgement", "error of a long set against a short one"),
    _n("effort.long_width", 2.0, "reps", (0.5, 8.0), "derived", "judgement", "over so many repetitions a set turns from short to long"),
    _n("effort.scale", 0.68, "1", (0.4, 1.5), "refalo-2023 derived", "judgement", "a person's own error against the table, which holds the spread between people too"),
    _n("effort.scale_log_sd", 0.3, "ln", (0.1, 0.6), "derived", "judgement", "spread of that scale between people"),
    _n("effort.day_share", 0.28, "1", (0.0, 0.8), "derived", "judgement", "share of effort's error common to a day's sets"),
    _n("effort.unsaid_sd", 1.1, "reps", (0.3, 2.0), "derived", "judgement", "added error when the reserve is unsaid inside the range"),
    _n("effort.at_low_share", 0.75, "1", (0.0, 1.0), "derived", "judgement", "share of the reserve asked that is left at the low end exactly, unsaid"),
    _n("effort.short_share", 0.3, "1", (0.0, 1.0), "derived", "judgement", "share of the reserve asked that is left when a set ended under the low end, unsaid"),
    _n("effort.top_left", 1.0, "reps", (0.0, 2.0), "derived", "judgement", "so much more than asked is thought left at the top of the range, unsaid"),
    _n("effort.failure_sd", 0.5, "reps", (0.2, 1.0), "derived", "judgement", "a set to failure stops at a whole repetition"),
    _n("effort.informative_max", 8.5, "reps", (5, 9), "hackett-2017 zourdos-2016", "strong", "a reserve above this says only 'at least'"),
    _n("effort.half", 0.5, "reps", (0.5, 0.5), "derived", "convention", "a reserve this close to the one asked is the one asked"),
    # tempo and rest
    _n("tempo.exponent", 0.6, "1", (0.4, 0.9), "hatfield-2006 lachance-1994", "weak", "repetitions fall with (seconds / reference)^-b"),
    _n("tempo.exponent_sd", 0.12, "1", (0.05, 0.2), "hatfield-2006 derived", "judgement", "spread of b"),
    _n("tempo.reference_s", 3.0, "s", (1.5, 4.0), "acsm-2009 derived", "judgement", "a repetition at an unsaid tempo: 2 s down, 1 s up"),
    _n("tempo.default_down_s", 2.0, "s", (1.0, 2.0), "acsm-2009", "convention", "lowering when unsaid"),
    _n("tempo.default_up_s", 1.0, "s", (0.5, 2.0), "acsm-2009", "convention", "lifting when unsaid"),
    _n("tempo.part_min_s", 0.5, "s", (0.5, 1.0), "schoenfeld-2015", "strong", "shortest lowering or lifting"),
    _n("tempo.part_max_s", 3.0, "s", (2.0, 3.0), "schoenfeld-2015 wilk-2021", "strong", "longest lowering or lifting"),
    _n("tempo.rep_max_s", 9.5, "s", (6.0, 9.5), "schoenfeld-2015", "strong", "longest repetition; it stays under 10 s"),
    _n("tempo.step_s", 0.5, "s", (0.5, 1.0), "derived", "convention", "one step of slower lowering"),
    _n("rest.bench_c0", 0.61, "1", (0.3, 0.9), "willardson-2005 derived", "weak", "loss to the next set after one minute, presses and pulls"),
    _n("rest.bench_p", 1.4, "1", (0.8, 2.0), "willardson-2005 derived", "weak", "how rest mends that loss"),
    _n("rest.squat_c0", 0.30, "1", (0.15, 0.5), "willardson-2005 derived", "weak", "loss to the next set after one minute, legs"),
    _n("rest.squat_p", 1.0, "1", (0.6, 1.6), "willardson-2005 derived", "weak", "how rest mends that loss"),
    _n("rest.long_set", 15, "reps", (12, 20), "willardson-2005 derived", "weak", "past this the fit of rest promises too much"),
    _n("rest.log_sd", 0.5, "ln", (0.1, 0.7), "willardson-2005 derived", "judgement", "spread of the loss between people"),
    _n("rest.reserve_half", 1.5, "reps", (1.0, 4.0), "derived", "judgement", "a set stopped with this much in reserve tires half as much"),
    _n("rest.default_compound_s", 150, "s", (120, 300), "acsm-2009", "strong", "rest when unsaid, multi-joint lifts"),
    _n("rest.default_isolation_s", 90, "s", (60, 180), "acsm-2009", "strong", "rest when unsaid, single-joint lifts"),
    _n("rest.floor_compound_s", 120, "s", (120, 300), "acsm-2009 senna-2011 grgic-2018", "strong", "no less rest than this, multi-joint lifts"),
    _n("rest.floor_isolation_s", 60, "s", (60, 180), "acsm-2009 singer-2024", "strong", "no less rest than this, single-joint lifts"),
    _n("rest.ceiling_s", 600, "s", (300, 900), "practice", "convention", "no longer rest is asked"),
    _n("rest.step_s", 15, "s", (5, 30), "derived", "convention", "one step of shorter rest"),
    _n("rest.cost_max", 0.10, "1", (0.05, 0.10), "willardson-2005 derived", "judgement", "share of the repetitions that a shorter rest may cost"),
    # range
    _n("range.rung_cm", 2.5, "cm", (1.0, 5.0), "derived", "convention", "one step of range"),
    _n("range.rung_cost", 0.03, "ln", (0.0, 0.1), "enoki-2023 derived", "judgement", "strength that one step of range costs; no published number"),
    _n("range.rung_cost_sd", 0.03, "ln", (0.01, 0.1), "enoki-2023 derived", "judgement", "doubt of that cost"),
    _n("range.partial_gain", 0.15, "ln", (0.0, 0.3), "enoki-2023 derived", "judgement", "strength over a part of the range; wide"),
    _n("range.partial_sd", 0.15, "ln", (0.05, 0.3), "enoki-2023 derived", "judgement", "doubt of that gain"),
    # strength, day to day and over months
    _n("day.sd", 0.025, "ln", (0.01, 0.04), "mitter-2022 grgic-2020", "strong", "today's strength around its level, shared by the day's sets"),
    _n("day.process_sd", 0.009, "ln", (0.002, 0.015), "derived", "judgement", "wander of the level from session to session"),
    _n("set.sd", 0.65, "reps", (0.2, 1.0), "mitter-2022 derived", "judgement", "what is left between sets of a day, whole repetitions included"),
    _n("gain.new", 0.005, "ln per session", (0.0, 0.015), "steele-2022", "strong", "gain of the first year"),
    _n("gain.some", 0.002, "ln per session", (0.0, 0.008), "steele-2022", "strong", "gain after the first year"),
    _n("gain.long", 0.0007, "ln per session", (0.0, 0.004), "steele-2022", "strong", "gain after four years"),
    _n("gain.log_sd", 0.8, "1", (0.3, 1.5), "steele-2022 derived", "judgement", "spread of the gain, as a share of it"),
    _n("prior.log_sd", 0.35, "ln", (0.2, 0.6), "derived", "judgement", "spread of strength between people of one mass and experience"),
    _n("prior.new", 0.75, "1", (0.5, 1.0), "steele-2022 derived", "judgement", "strength of a first year against the middle"),
    _n("prior.long", 1.25, "1", (1.0, 1.6), "steele-2022 derived", "judgement", "strength after four years against the middle"),
    _n("prior.apart_min", 0.1, "1", (0.02, 0.5), "derived", "judgement", "share of the middle maximum that is not the body's own counts at least so much in that spread"),
    _n("prior.bodyweight_kg", 75, "kg", (50, 100), "practice", "convention", "body mass when unsaid"),
    _n("prior.related_sd", 0.18, "ln", (0.1, 0.4), "derived", "judgement", "doubt of strength carried over from a related lift"),
    # form
    _n("form.near_loose", 0.15, "1", (0.02, 0.5), "derived", "judgement", "share of sets near failure that turn loose"),
    _n("form.near_weight", 4.0, "sets", (1, 20), "derived", "judgement", "how many sets that guess is worth"),
    _n("form.away_loose", 0.05, "1", (0.01, 0.3), "derived", "judgement", "share of other sets that turn loose"),
    _n("form.away_weight", 8.0, "sets", (1, 20), "derived", "judgement", "how many sets that guess is worth"),
    _n("form.near_reserve", 1.0, "reps", (0.5, 2.0), "derived", "judgement", "with less than this left a set is near failure"),
    _n("form.unsaid_weight", 0.15, "sets", (0.0, 1.0), "derived", "judgement", "what a set without a word on form says for clean form"),
    _n("form.look_z", 1.0, "sd", (0.0, 2.0), "derived", "judgement", "only a result this far above what was believed is looked at"),
    _n("form.doubt_z", 3.0, "sd", (2.0, 5.0), "derived", "judgement", "a result further than this above the most expected at failure is not taken for clean"),
    _n("form.doubt_reps", 3.0, "reps", (2.0, 6.0), "derived", "judgement", "and at least this many repetitions above it"),
    _n("people.trust", 0.7, "1", (0.3, 1.0), "derived", "judgement", "how far one set weighs the possible people against each other; under 1, because no curve is quite true"),
    _n("own.sessions", 2, "sessions", (1, 5), "derived", "judgement", "so many own sessions must be known before a result can be a slip or a doubt of form"),
    _n("effort.slip_z", 2.4, "sd", (1.0, 5.0), "derived", "judgement", "a set further off than this pulls no harder than one just so far off"),
    # deciding
    _n("reps.cap", 30, "reps", (15, 30), "schoenfeld-2017", "weak", "no more repetitions a set are asked"),
    _n("hold.cap_s", 180, "s", (60, 300), "practice", "convention", "no longer hold is asked"),
    _n("load.step_min", 0.02, "1", (0.02, 0.05), "acsm-2009", "strong", "smallest step in load"),
    _n("load.step_max", 0.10, "1", (0.05, 0.10), "acsm-2009", "strong", "largest step in load, unless the forecast carries a larger one"),
    _n("step.margin", 0.9, "sd", (0.0, 1.0), "derived", "judgement", "what must be carried over the low end of a single set for a step, in sd of its repetitions (0.7: met three times in four)"),
    _n("step.margin_sets", 0.35, "sd", (0.0, 0.8), "derived", "judgement", "and so much more for each doubling (ln) of the sets, which must all reach it"),
    _n("step.margin_over", 0.3, "sd", (0.0, 1.0), "nsca-essentials derived", "judgement", "only this much, after going over the target in enough sessions running"),
    _n("over.reps", 2, "reps", (1, 4), "nsca-essentials acsm-2009", "strong", "every set so far over the top of its range (reserve beyond the one asked counted in) went over the target"),
    _n("over.sessions", 2, "sessions", (2, 4), "nsca-essentials", "weak", "in so many sessions running, and the step is earned"),
    _n("topped.sessions", 4, "sessions", (2, 6), "practice", "judgement", "after the top of the range in every set in so many sessions running less is asked over the low end"),
    _n("step.margin_topped", 0.8, "sd", (0.0, 1.5), "practice derived", "judgement", "no more than this then"),
    _n("stood.sessions", 4, "sessions", (3, 12), "practice", "judgement", "after the top of one and the same target in every set in so many sessions running nothing more is learned from it, so a step is tried"),
    _n("step.margin_stood", -0.3, "sd", (-1.0, 0.5), "practice derived", "judgement", "with so much over the low end, which may be a little under it"),
    _n("step.doubt", 0.03, "ln", (0.0, 0.08), "derived", "judgement", "doubt of what is carried"),
    _n("step.doubt_early", 0.1, "ln", (0.0, 0.15), "nsca-essentials derived", "judgement", "and so much more after one session, less by the root of their number: two agreeing sessions earn a step"),
    _n("ease.chance", 0.35, "1", (0.2, 0.35), "derived", "judgement", "under this chance of the same again, less is asked"),
    _n("ease.short", 0.5, "sd", (0.0, 2.0), "derived", "judgement", "and what is carried must fall short of a low end by more than this"),
    _n("easier.load_factor", 0.9, "1", (0.8, 1.0), "rogerson-2024 derived", "judgement", "load of a plan's easier week against the usual"),
    _n("easier.set_factor", 0.6, "1", (0.4, 0.8), "rogerson-2024 derived", "judgement", "sets of a plan's easier week against the usual"),
    _n("easier.reserve", 2, "reps", (1, 4), "rogerson-2024 derived", "judgement", "so much more is left in reserve in a plan's easier week"),
    _n("ease.coarse", 0.15, "1", (0.05, 0.3), "derived", "judgement", "a lighter load further under the one wanted than this is passed over for fewer repetitions"),
    _n("choice.sd", 0.18, "1", (0.1, 1.0), "practice", "judgement", "how far the first load tried may lie from what suits the aim, as a share of the repetitions"),
    _n("first.step_down", 0.15, "1", (0.05, 0.4), "practice", "judgement", "no more than this share lighter from set to set while a first load is looked for, if the kit has it"),
    _n("first.chance", 0.65, "1", (0.5, 0.9), "acsm-2009 derived", "judgement", "chance of reaching the repetitions that a first load is chosen for, form apart"),
    _n("misses.allowed", 3, "sessions", (2, 3), "rogerson-2024 derived", "judgement", "the same target missed so often is eased"),
    _n("misses.load_factor", 0.95, "1", (0.8, 0.95), "rogerson-2024 derived", "judgement", "load then"),
    _n("carry.share", 0.3, "1", (0.1, 0.6), "derived", "judgement", "how far one session moves what is carried, once the lifter is known"),
    _n("ache.ease_level", 4, "of 10", (3, 4), "silbernagel-2007", "weak", "from here less is asked"),
    _n("ache.hold_level", 3, "of 10", (3, 3), "silbernagel-2007", "weak", "from here nothing gets harder"),
    _n("ache.stop_level", 6, "of 10", (5, 6), "silbernagel-2007", "weak", "from here the exercise waits"),
    _n("ache.load_factor", 0.80, "1", (0.5, 0.9), "silbernagel-2007 derived", "judgement", "load while it aches"),
    _n("ache.again_factor", 0.95, "1", (0.8, 1.0), "derived", "judgement", "load when the last target was an eased one already"),
    _n("ache.floor", 0.6, "1", (0.3, 0.9), "derived", "judgement", "no less of the heaviest load lifted well than this, however long it aches; from there fewer repetitions"),
    _n("ache.set_factor", 0.67, "1", (0.5, 1.0), "silbernagel-2007 derived", "judgement", "sets while it aches"),
    _n("ache.stale_days", 28, "days", (14, 56), "derived", "judgement", "an ache not spoken of for so long has passed"),
    _n("hold.seconds_per_rep", 4.0, "s", (2, 6), "derived", "judgement", "a hold of so many seconds counts as one repetition in the curve"),
    _n("carry.metres_per_rep", 2.0, "m", (1, 5), "derived", "judgement", "a carry of so many metres counts as one repetition in the curve"),
    _n("detrain.free_weeks", 3, "weeks", (2, 4), "mcmaster-2013", "weak", "strength is kept so long"),
    _n("detrain.per_week", 0.006, "ln", (0.0, 0.02), "bosquet-2013 derived", "judgement", "loss for each week past that"),
    _n("detrain.max", 0.15, "ln", (0.05, 0.3), "bosquet-2013 derived", "judgement", "no more loss than this"),
    # the group's challenge: no published numbers, all of them our own choice, held to by simulation (tests/sim/season.py)
    _n("challenge.beyond_z", 4.0, "sd", (2.5, 5.0), "derived", "judgement", "a report further than this off its forecast waits for the coach's word"),
    _n("challenge.beyond_reps", 3.0, "reps", (2.0, 6.0), "derived", "judgement", "and at least this many repetitions above it"),
    _n("challenge.short_z", 3.0, "sd", (2.0, 5.0), "derived", "judgement", "short by more than this was not ended where asked, whatever is said of it"),
    _n("challenge.otherwise_share", 0.9, "1", (0.5, 0.95), "derived", "judgement", "worth of every set done, but not as asked"),
    _n("challenge.least_share", 0.3, "1", (0.1, 0.5), "derived", "judgement", "less than this of the repetitions or the load that were asked is not the exercise done"),
    _n("challenge.exercise_week", 3, "1", (1, 7), "derived", "judgement", "chances of one exercise in a week"),
    _n("challenge.off_week", 1, "1", (0, 3), "derived", "judgement", "sessions a week that may be called off beforehand at no cost"),
    _n("challenge.kept_share", 0.5, "1", (0.3, 1.0), "derived", "judgement", "share of a session's exercises begun that makes it kept"),
    _n("challenge.least_sessions", 2, "sessions", (1, 6), "derived", "judgement", "chances worth this many sessions are needed for a place"),
    _n("challenge.weeks", 6, "weeks", (1, 26), "derived", "judgement", "length when unsaid, and the bounds of a said one"),
    _n("challenge.ache_days", 7, "days", (1, 28), "derived", "judgement", "an ache said so lately makes what was not done no chance"),
    _n("challenge.live_share", 0.3, "1", (0.15, 0.6), "derived", "judgement", "a session told over at least this share of the time that its sets take as asked was told while it happened"),
    _n("challenge.late_h", 4, "h", (0, 6), "derived", "judgement", "hours after midnight at which a session of the day before may still be begun"),
)
# fmt: on

NUMBERS: Final = {row.key: row for row in _ROWS}
"""Every number by its key."""


def value(key: str) -> float:
    """The number of that key; a key that is not in the table is our bug and raises KeyError."""
    return NUMBERS[key].value
