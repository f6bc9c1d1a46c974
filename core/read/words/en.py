"""English, what the words mean to the reader: rows of kind, value, and the phrases that say it.

Kinds are the reader's own. Source: common practice of the trade, no single source.
"""

from typing import Final

from core.read.lexicon import Rows
from core.read.numerals import Numerals

NUMERALS: Final = Numerals(
    ones={
        "zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
        "ten": 10, "eleven": 11, "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16,
        "seventeen": 17, "eighteen": 18, "nineteen": 19,
    },
    tens={
        "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80,
        "ninety": 90,
    },
    hundred=frozenset({"hundred", "hundo"}),
    point=frozenset({"point"}),
    joint=frozenset({"and"}),
    half=frozenset({"half"}),
    zero_between=frozenset({"oh", "o"}),
    article=frozenset({"a"}),
    plurals={
        "fives": 5, "sevens": 7, "nines": 9, "elevens": 11, "thirteens": 13, "fourteens": 14, "seventeens": 17, "nineteens": 19, "sixes": 6, "eights": 8, "tens": 10, "twelves": 12, "fifteens": 15, "sixteens": 16,
        "eighteens": 18, "twenties": 20, "thirties": 30, "forties": 40, "fifties": 50, "sixties": 60,
        "seventies": 70, "eighties": 80, "nineties": 90, "hundreds": 100,
    },
    whole={"dozen": 12, "couple": 2},
    short_hundreds=True,
)  # fmt: skip

# fmt: off
UNITS: Final[Rows] = (
    ("KG", 1.0, "kg, kgs, kilo, kilos, kilogram, kilograms, kgm, kilogramme, kilogrammes, keys"),
    ("GKG", 1.0, "k"),
    ("LB", 1.0, "lb, lbs, pound, pounds, pds, lbz, #, pounders, pounder"),
    ("SEC", 1.0, "sec, secs, second, seconds, s"),
    ("MIN", 60.0, "min, mins, minute, minutes, m, '"),  # noqa: E501
    ("HOUR", 3600.0, "h, hr, hrs, hour, hours"),
    ("METRE", 1.0, "m, metre, metres, meter, meters, mtr, mtrs"),
    ("METRE", 0.9144, "yd, yds, yard, yards"),
    ("METRE", 0.3048, "ft, feet, foot"),
    ("FAR", 1000.0, "km, k run, km run, mile, miles, kms, cals, calories, watts, g, grams, gram, mg, ml, kcal, cl, k in"),
    ("CM", 1.0, "cm, cms, centimetre, centimetres, centimeter, centimeters"),
    ("CM", 2.54, 'inch, inches, in, "'),
    ("STRIDES", 0, "steps, strides, paces"),
    ("CLOCK", 0, "am, pm, oclock, o clock"),
    ("PERCENT", 0, "%, percent, pct"),
    ("PLURAL", 0, "s"),
)

COUNTS: Final[Rows] = (
    ("REPS", 0, "reps, rep, repetitions, repetition, r, resp, repss, rps"),
    ("SETS", 0, "sets, set, rounds, round, rds, rnds, rnd, working sets, work sets, straight sets, working set, work set, sts, st, hard sets, trips, trip, lengths, laps, goes"),
    ("REPN", 1, "single, singles, single rep"),
    ("REPN", 2, "double, doubles"),
    ("REPN", 3, "triple, triples"),
    ("REPN", 4, "quad, quadruple"),
    ("SETN", 1, "once"),
    ("SETN", 2, "twice, both times, both sets, two times"),
    ("SETN", 3, "thrice"),
    ("TIMES", 0, "times, time"),
    ("ROUNDHEAD", 0, "superset, supersetted, supersets, circuit, giant set, complex, ss, alternating, super set, supersetting, back and forth, emom, tri set, triset, super sets"),
    ("X", 0, "x, by, ex"),
    ("FOR", 0, "for, fo, 4r"),
    ("AT", 0, "@, at"),
    ("WITH", 0, "with, w, w /, using, holding, wearing, wth, wit, usin, wi, wi the"),
    ("ON", 0, "on, onto, off"),
    ("OF", 0, "of, o"),
    ("IN", 0, "in"),
    ("TO", 0, "to"),
    ("ARTICLE", 0, "a, an, the, my, some, a set of"),
    ("AND", 0, "and, &, n, nd, adn, also, und"),
    ("THEN", 0, "then, followed by, after that, and then, then finished with, into, straight into, thn"),  # noqa: E501
    ("BUT", 0, "but, though, tho, except, however, although, instead got"),
    ("OR", 0, "or"),
    ("ABOUT", 0, "about, approx, roughly, around, like, ca, ish, circa, probably, maybe, prob, mb, say, id say, id call it"),
)

SAMENESS: Final[Rows] = (
    ("SAME", 'all', "same, same again, same thing, same as last, same as before, same as last time, same as last set, again, another, another one, another set, ditto, repeat, repeated, same deal, same same, one more set, once more, same as the last, same as the last one, as before, same as above, same there, and again, one more time, another round, another go, and another, same for, the same, same as that, 1 more set, one more like that, identical, likewise, repeat of that, repeat of the last, repeat of last, repeat of the same, copy of that, copy of the last, copy of the last set, copy of the last one, copy of last set, copy that set, repeat the last set, repeat last set, repeat that, exact same, exactly the same, exactly the same again, same as before but, same as that one"),
    ("SAMELOAD", 'load', "same weight, same load, same weights, same kg, same kilos, same dumbbells, same dbs, same bell, same bar, the same weight, same band, same w, same plates, kept the weight, same kettlebell, same kb, same resistance, same setting, same stack, same pin"),
    ("SAMEREPS", 'reps', "same reps, same number, same rep count, same amount, same number of reps, reps the same, same count"),
    ("MORE", 0, "more, extra, further"),
    ("HEAVIER", 0, "heavier, up"),
    ("LIGHTER", 0, "lighter, down, off"),
    ("LESS", 0, "less, fewer, short"),
    ("UP", 0, "up, upped, added, add, bumped, raised, increased, increase, bump, bumped it, upped it, adding, up another, went up, moved up, jumped"),
    ("DOWN", 0, "down, dropped, lowered, took off, minus, reduced, decreased, knocked off, went down, stripped, drop, moved down, dropped it, backed off, taking off, come down, came down"),
    ("UPTO", 0, "up to, went up to, down to, went down to, bumped to, moved to, dropped to, moved up to, lowered to, upped to, dropped it to, changed to, switched to, raised to, reduced to, back to, back down to, back up to, worked up to, jumped to, came down to, upped it to, bumped it to, went to, went back to, took it to, took it up to, took it down to, stayed at, stayed on, stayed with, down to just, build to, built to, built up to, ramped to, ramped up to, topped out at"),
    ("PLUS", 0, "+, plus"),
    ("DASH", 0, "-"),
)

LOADS: Final[Rows] = (
    ("EMPTYBAR", 0, "empty bar, just the bar, bar only, the bar, bar, unloaded bar, only the bar, empty barbell, naked bar, just bar, oly bar, olympic bar, just the barbell, the empty bar, an empty bar, w just the bar, bare bar"),
    ("PLATE", 1, "plate, plates"),
    ("PERSIDE", 0, "a side, per side, each side, either side, both sides, e / s, side, each end, per end, aside, ea side, every side, sides, / side, a sides, p / s, on each side, on either side, each sides, l / r, l & r, per sides, for each side, on both sides, each way"),
    ("PERLIMB", 0, "each leg, per leg, each arm, per arm, e / l, a leg, an arm, ea leg, ea arm, / leg, / arm, either leg, either arm, both legs, both arms, each foot, every leg, e / a, on each leg, on each arm, p / l, a leg, each legs, each arms, legs each, eachside, eachleg, eacharm, per limb, leg each, arm each, with each arm, with each leg, on both legs"),
    ("EACH", 0, "each, ea, apiece, per"),
    ("PERHAND", 0, "each hand, per hand, in each hand, a hand, in either hand, ea hand, per db, per dumbbell, each db, each dumbbell, per bell, each bell, in eahc hand, / hand, in both hands, in ea hand, per kb, each kb, per kettlebell, in every hand, in hand, each hands, / db, per side db"),
    ("TOTAL", 0, "total, in total, altogether, all in, all up, combined, overall, all told, incl bar, including the bar, including bar, with the bar, bar included, inc bar, w bar, with bar"),
    ("BOTHHANDS", 0, "both hands, two handed, 2 handed, with both hands, two hands, held in both hands, two hand"),
    ("IMPL", 0, "dumbbell, dumbbells, db, dbs, kettlebell, kettlebells, kb, kbs, bell, bells, dumbell, dumbells, d b, dumbbells s"),
    ("HUNG", 0, "vest, belt, weight vest, weighted vest, weight belt, chain, chains, dip belt, rucksack, backpack, ruck, hanging, on the belt, on a belt, on my back, on back, between my feet, between feet, added, extra weight, hung, strapped on, added weight, weights vest, between the legs, between my legs, on my lap, on lap, on my chest, extra"),
    ("WEIGHTED", 0, "weighted, wtd, wt, w8ed, wghtd"),
    ("ASSIST", 0, "assist, assisted, assistance, help, of help, counterweight, assited, asst, helped, assisting, of assist, of assistance, counterbalance, off, support, asisted"),
    ("BANDHELP", 0, "band assisted, band assist, with band help, band assistance"),
    ("BAND", 0, "band, bands, banded, loop, tube, mini band, theraband, resistance band, resistance bands"),
    ("COLOUR", 0, "green, red, blue, black, purple, yellow, orange, grey, gray, white, pink, light, medium, heavy, thin, thick, mini, strong, monster, silver, gold, brown, teal"),
    ("BODY", 0, "bodyweight, bw, body weight, unweighted, no weight, just bodyweight, b w, body only, bwt, no added weight, without weight, just body weight, no load, just bw, no weights, nothing but my own weight, own weight, my own weight, just my bodyweight, without weights, own bodyweight, my bodyweight, no added load, unloaded, just me, just body, body alone, with nothing in my hands, nothing in my hands, empty hands, empty handed"),
    ("LOADWORD", 0, "weight, load, stack, pin, plan weight, weights, loaded"),
    ("PLANLOAD", 0, "planned weight, planned load, prescribed weight, plan weight, programmed weight, the planned weight, weight on the plan, target weight, prescribed load, weights as planned, weight as planned, load as planned, at plan weight, scheduled weight, weight as prescribed, at the plan weight"),
    ("HOLDWORD", 0, "hold, holds, held, static, iso, isometric, hung"),
)

EFFORTS: Final[Rows] = (
    ("RPE", 0, "rpe, @rpe, rated, rpe s, rp e, effort, r p e"),
    ("RIR", 0, "rir, reps in reserve, rep in reserve, r i r"),
    ("TANK", 0, "in the tank, left in the tank, in reserve, reps left, rep left, left, to spare, in hand, left in me, more in me, in me, left over, reps to spare, more in the tank, still in the tank, remaining, reps remaining, reps in hand, off failure, from failure, shy of failure, short of failure, away from failure, before failure, reps from failure, reps off failure, rep off failure, rep from failure, reps short of failure, rep short of failure, reps shy of failure, rep shy of failure, reps away from failure, reps before failure, rep before failure, more left, left in reserve, left at the end, reps in the tank, rep in the tank, more in there, in th tank, still left, more reps in me, more rep in me, left in it, reps in me, rep in me, spare, in the bank, in bank, left in the bank"),
    ("COULDHAVE", 0, "couldve done, could have done, could of done, couldve got, could have got, couldve had, could do, had, could have gotten, couldve gotten, couldve squeezed, couldve gone for, had maybe, had about, felt like i had, couldve hit, could have hit, couldve managed, could have managed, couldve done maybe, could have squeezed out, couldve squeezed out, i had, still had, prob had, probably had, couldve repped, could have repped, coulda done, coulda got, couldve pulled, couldve pushed out, left"),
    ("ZERORIR", 0, "to failure, amrap, all out, nothing left, no gas left, failure, max effort, maxed out, to fail, till failure, until failure, no reps left, none left, nothing in the tank, empty tank, tank empty, zero left, nothing left in the tank, 0 left, absolute max, absolute limit, couldnt do another, couldnt have done another, everything i had, that was everything, total failure, muscular failure, no more in me, nothing more in me, to the limit, all i had, taken to failure, went to failure, hit failure, max reps, rep max, none in the tank, no gas left in the tank, no more left, not one more, not another rep in me, none in reserve, nothing in reserve, true failure, true max, zero in the tank, til failure, couldnt have got another, couldnt get another, no reps in reserve, 2 failure, not a rep more, couldnt do one more, completely maxed, ran out of gas, max set, max effort set, all out set, burnout set"),
    ("NEARLIMIT", 0, "easy, grindy, hard, heavy, light, tough, brutal, grinder, comfortable, challenging, easily, piece of cake, smooth sailing"),
    ("LASTREPHARD", 0, "last rep was a grind"),
    ("FAIL", 0, "failed, fail, missed, miss, couldnt get, couldnt lock out, failing, couldnt finish, faild, didnt get, got stuck, didnt lock out, stuck on, failled, couldnt make, no rep, bailed, dumped, couldnt complete, fails, pinned, didnt make, got pinned, didnt leave the floor, didnt move, wouldnt budge, glued to the floor, got buried, buried, wouldnt move, wouldnt go, nope, no go, couldnt get it, missed it, failed it, didnt budge, couldnt budge, missed lockout, lost it, couldnt press it, didnt go up, stapled, got stapled, crumpled, folded, missed the lift, got crushed, dumped it, had to dump, had to bail, no lift, would not go up, wouldnt go up, would not go, would not move, did not go up, didnt go, would not budge, slipped off, slipt off, had to pull it off me, pulled it off me, lifted it off me, pull it off me, spotter took it, spotter grabbed it, spotter had to, ground to a halt, stalled, wouldnt lock, would not lock out, stuck halfway"),  # noqa: E501
    ("FAIL", "ordinal", "died on, died at, gave out on, gassed out on, ran out on, died, stuck, stuck at, stuck halfway, wouldnt, folded on"),
    ("ATTEMPT", 0, "attempt, attempted, tried, try, went for, attempting, tried for, tryed for, going for a, reached for, tried a, attempted a"),
    ("ORDREP", 1, "1st rep, first rep, 1st"),
    ("ORD", 1, "first, 1st"),
    ("ORD", 2, "second, 2nd"),
    ("ORD", 3, "third, 3rd"),
    ("ORD", 4, "fourth, 4th"),
    ("ORD", 5, "fifth, 5th"),
    ("ORD", 6, "sixth, 6th"),
    ("ORD", 7, "seventh, 7th"),
    ("ORD", 8, "eighth, 8th"),
    ("ORD", 9, "ninth, 9th"),
    ("ORD", 10, "tenth, 10th"),
    ("ORD", 11, "eleventh, 11th"),
    ("ORD", 12, "twelfth, 12th"),
    ("ORD", 13, "13th"),
    ("ORD", 14, "14th"),
    ("ORD", 15, "15th"),
    ("ORD", 16, "16th"),
    ("ORD", 20, "20th"),
    ("LAST", 0, "last set, last one, the last, last, final set, final one, final, that last one, the last set, the last one, last round, that last set, on the last, lastset, my last set, my last one, on the last one, on the last set, in the last one, in the last set, for the last one, for the last set, on my last set, on my last one, last go, very last, very last set, on the final set, on the final one"),
    ("LASTREP", 0, "last rep, final rep, last reps, last couple, last couple of reps, last few reps, last two reps, last 2 reps, last few, the last rep, last 3 reps, last three reps"),
    ("ALL", 0, "all, every set, all sets, each set, throughout, across the board, the lot, all of them, every one, everything, for all, each one, all reps, every rep, both, across all sets, across, all three, all 3, all four, all 4, all five, all 5, the whole way, every time, everytime, each time, on all, all done, per set, for each set, on every set, on each set, on all sets, on all three, on all 3, for all three, for all 3, on all four, on all 4, across all three, across all 3, on all five, on all 5, throughout all, the entire time, start to finish, from start to finish, first to last, on each one, on every one, on every rep, on each rep, for every set, for all sets, for each, all round, whole time"),
)

MODS: Final[Rows] = (
    ("TEMPO", 0, "tempo, tempos, tempo of, cadence"),
    ("ECC", 0, "negative, negatives, eccentric, eccentrics, ecc, neg, negs, lowering, descent, on the way down, lower, down, way down, coming down, lowered, going down, descents, lowers, ecentric, ecentrics, lowering phase, on the descent, down phase, eccentric phase, on the negative, on the eccentric, excentric, downs, to lower, on the lowering, lowered over, down slow, doon, on the way doon"),
    ("NOPAUSE", 0, "no pause, no pauses, without a pause, without pausing, no stop"),
    ("BOTTOM", 0, "pause at the bottom, pause, pauses, paused, hold at the bottom, at the bottom, in the hole, on the chest, pause on the chest, bottom, pause in the hole, dead stop, bottom pause, at bottom, pause at bottom, on chest, pausing, hold at bottom, at the chest, stretch hold, pause in the stretch, in the bottom, pause reps, on the floor, holding the bottom, holding at the bottom, in the stretch, at the stretch, bottom hold, paused reps, paused at the bottom, pause rep, stop at the bottom, holds at the bottom, pauses at the bottom, paused on the chest, pauses on the chest"),
    ("CON", 0, "concentric, on the way up, way up, up, ups, coming up, going up, lifting, concentrics, up phase, to lift, on the concentric, ascent, on the ascent, rising, rise, standing up, driving up, pushing up, pulling up, on the press, came up, came up in, pressed up in, pushed up in, pulled up in, drove up in, stood up in, back up in, up again in, lifted in, raised in, raised over, lifted over, to push up, to press up, to come up, to stand up, to stand, to pull up, to drive up, to raise, to get up"),
    ("TOP", 0, "at the top, hold at the top, pause at the top, squeeze at the top, squeeze, top, squeezes, top hold, at top, top squeeze, lockout, squeeze up top, up top, holding at the top, hold up top, held at the top, squeezed at the top, peak contraction, contraction, pause up top, pauses at the top, at lockout, at the contraction, peak squeeze, holds at the top, squeezing at the top, squeezed, at the chest top"),
    ("EXPLODE", 0, "explosive, explode, fast up, explosive up, explosively, up fast, explode up, exploded up"),
    ("COUNT", 0, "count, counts, ct, beat, beats"),
    ("SLOW", 0, "slow, slowly, controlled, slower, slo"),
    ("REST", 0, "rest, rests, rested, resting, break, breaks, rest between, rest in between, rst, rest time, recovery, of rest, breather, rest periods, rest period, rets, rest btw, rest of, pause between sets"),
    ("BETWEEN", 0, "between, in between, between sets, inbetween, btw sets, btwn, between each, between all, between each set, between rounds, btwn sets, beteen sets, beteen, inbetween sets, in between sets, b / w, between them, bw sets, between the sets, apart, betw, in btwn, between every set, between all sets, btween, in between each"),
    ("NOREST", 0, "no rest, no break, without rest, zero rest, without resting, no rests, no breaks, straight through, back to back, norest, without a break"),
    ("LEFT", 0, "left, left side, left arm, left leg, lefty, lh, on the left, on left, left hand, l, lft, left one, left foot, with the left, with left, lhs, l side, the left, the left one, on the left one, left ones"),
    ("RIGHT", 0, "right, right side, right arm, right leg, rh, on the right, on right, right hand, rt, rght, right one, right foot, with the right, with right, rhs, r side, the right, r, the right one, on the right one"),
    ("FORM", 'clean', "clean, crisp, tidy, textbook, perfect form, good form, great form, perfect reps, nice and clean, clean reps, solid form, form on point, spotless, dialed in, immaculate, picture perfect, strict form, clean as a whistle, pristine, clean af, squeaky clean, nice form, excellent form, super clean, technically clean, flawless, technically perfect, no form breakdown, no breakdown, good technique, great technique, clean technique, perfect technique, beautiful reps, pretty reps, looked good, no wobble, clean and controlled, strict reps, strict, good reps, nice reps, no cheat, neat, butter, form held, form held up, form stayed tight, tight form, form was there, quality reps, form sound, impeccable, clean throughout, no wobbles, rock solid, well controlled, cleaner, tidier, crisper"),  # noqa: E501
    ("FORM", 'fair', "ok form, okay form, decent form, average form, so so form, not perfect, bit off, acceptable, passable, fair, meh form, not my cleanest, not the cleanest, okayish form, alright form, fair form, not too bad, okish form, decent technique, ok technique, average technique, half decent form, could be cleaner, mostly clean, fairly clean, mostly ok, reasonably clean, cleanish, clean ish, clean enough, so so technique, slightly off, little off, a touch off, fair technique, pretty decent form, could have been cleaner, not bad form, couldve been cleaner, form wobbled a bit, mostly good form, sorta clean, kinda clean, somewhat clean, not super clean"),
    ("FORM", 'loose', "sloppy, ugly, loose, messy, cheated, cheaty, cheat reps, sloppily, form broke down, form went, form slipped, form breakdown, bad form, poor form, swinging, used momentum, momentum, body english, janky, scrappy, bounced, bouncy, wobbly, form fell apart, form was gone, terrible form, shit form, crap form, form went out the window, not clean, wasnt clean, not pretty, wasnt pretty, rounded, back rounded, hips shot up, knees caved, kipping, kipped, form started to go, form was going, form going, form got bad, cheating, cheat, shaky form, awful form, form deteriorated, form died, form broke, form failed, slop, sloppier, form slipping, form was slipping, lost form, form collapsed, rounding, butt came up, butt off the bench, lots of swing, swung, heaved, heaving, swingy, form off, form was off, ragged, horrible form, form not great, form got loose, form loosened, form got worse, form suffered, lost my form, sloppyish, form crumbled, form got ugly, form tanked, not strict, rough form, form went to shit, form went to hell, form got away from me, wasnt strict, worst form, form dropped off, bit of cheating, bit of swing, little swing, some swing, cheated a bit, hitched, hitching, lost tightness, lost tension, form gave out, form gave way, form fading, form faded, weak form, form was fading, form started slipping, form started to slip, form started to break down, form starting to go, form got messy, form getting messy, form getting loose, form getting sloppy, leaned back, slopy, messier, uglier, looser, rougher"),  # noqa: E501
    ("FORMNOUN", 0, "form, technique, tech, execution, reps looked, forms, reps were, reps felt, bar path, movement"),
    ("GOODQ", 0, "good, great, solid, perfect, nice, spot on, on point, excellent, crisp, tight, flawless, dialed, dialled, fine, held, held up, stayed good, a1, mint, awesome, lovely, better, sound, stable, very good, really good, pretty good, super, bang on, locked in, spotless, immaculate, impeccable, a lot better, exemplary, correct, proper"),
    ("FAIRQ", 0, "ok, okay, alright, decent, average, meh, so so, ish, fairish, not bad, not great not terrible, passable, acceptable, all right, fair, mediocre, iffy, okayish"),
    ("BADQ", 0, "bad, poor, terrible, awful, shit, crap, off, gone, rough, not great, not good, shaky, going, breaking down, slipping, wasnt great, wasnt good, horrible, garbage, trash, rubbish, dreadful, all over the place, went, questionable, suffering, shite, wonky, sucked, worse, broken, no good"),
    ("FEEL", 0, "felt, feels, feeling, feel, fel, looked, looks, looking, seemed, moved"),
    ("BE", 0, "was, were, is, are, wass, got, getting, went, stayed, been, be, remained, started"),
    ("RANGE", 'partial', "half reps, half rep, quarter reps, quarter rep, partial reps, halves, half range, partial rom, partial range, short rom, short range, only halfway, halfway, half way, cut depth, above parallel, top half, bottom half, half rom, half depth, not to depth, not full depth, not full range, not full rom, not all the way, half repped, quarter depth, three quarter reps, cut short, limited range, limited rom, bottom halves, top halves, cut them short, half ones, half way down, halfway down, half way up, halfway up, short reps, shallow, partial range of motion, half range of motion, short range of motion, reduced rom, reduced range, partials only, all partials, just partials, only partials, didnt hit depth, missed depth, no depth, no full rom, quarter range, half r o m, 3/4 reps, board press, depth was short, short on depth, not deep, not deep enough, lengthened partials, 1/2 reps, 1 / 2 reps, 1 / 4 reps, 3 / 4 reps"),  # noqa: E501
    ("RANGE", 'full', "full rom, full range, full range of motion, all the way down, all the way up, all the way, full depth, ass to grass, atg, a2g, a t g, to depth, chest to floor, chest to bar, full reps, full stretch, to full depth, full motion, chest to the floor, chin over the bar, dead hang to chin over, to parallel, hit depth, all to depth, nose to floor, full extension, complete range, complete rom, rock bottom, proper depth, good depth, hit full depth, full lockout, entire range, whole range, full range reps, depth on all, depth was good, hit depth on all, good rom, to full lockout, from a dead hang, from dead hang, chest to deck, full r o m, chin over bar, parallel, complete range of motion, full squat depth"),
    ("RANGE", 'extra', "deeper, extra stretch, extra range, extra depth, more depth, extra deep, extra rom, deeper than usual, deeper than normal, bigger rom, bigger range, more rom, more range, below parallel, increased rom, longer range, big stretch, longer rom, super deep, really deep, deeper stretch, extended range, more stretch, extended rom, past parallel, extra range of motion, more range of motion, extra deep stretch, deep stretch, deep deficit, from a deficit, off a deficit, on a deficit, lower than usual, of depth, of extra depth"),
    ("HALF", 0, "half, quarter, three quarter"),  # noqa: E501
    ("DEFICIT", 0, "deficit"),
    ("FEETON", 0, "feet on, feet up on, feet elevated on, my feet on, with feet on"),
    ("HANDSON", 0, "hands on, my hands on, with hands on"),
    ("KNEESON", 0, "on my knees, on knees, from my knees, from knees, from the knees, on the knees"),
    ("HEIGHT", 0, "box, step, bench, block, blocks, elevated, elevation, feet on, hands on, raised, platform, feet, hands, high, chair, stool, books, couch, plyo box, plate, height, plates, tall, bumpers, bumper"),
    ("WARMUP", 0, "warm up, warmup, warmups, warm ups, warm, warmed up, wu, w u, warming up, warm up set, warm up sets, warmup set, warmup sets, to warm up, w / u, wus, as a warm up, as warm up, as warmup, feeler, feelers, warmed up with, ramp up, ramping, warmup with, warmed, to get warm, warm up with, w / up, warmup set of, warm up set of, warmup sets of, w up"),
    ("WORKING", 0, "working sets, work sets, working set, work set, working, top set, topset, top single, working weight, main sets, work, top sets, proper sets, real sets, back off, back offs, backoff, back off set, backoff sets, back off sets, working up"),
    ("DROP", 0, "drop set, dropset, drop sets, dropsets, dropped to, drop to, drop, stripped to, then dropped to, dropping to, strip set, strip sets, triple drop, double drop, dropped down to, drops, ds, dropped it to, stripped down to, then dropped it to, drop down to, running the rack, ran the rack, run the rack, dropped, down the rack, straight down the rack"),
    ("RESTPAUSE", 0, "rest pause, rp, myo, myo reps, myoreps, cluster, clusters, rest pauses, mini sets, rest paused, rest pause set, myo rep, breathers, breath, breaths, breaths then, a breath, few breaths, after a breath, a few breaths"),
    ("PARTIALS", 0, "partials, partial, partial reps, half reps, lengthened partials, halves, partial rep, half rep, burns, pulses, quarter reps, partials at the end, partial ones, half ones"),
    ("SETREF", 0, "set #, set no, set no ., set number, sets number"),
)

DAYS: Final[Rows] = (
    ("UNILAT", 0, "one arm, single arm, one armed, unilateral, one handed, single handed, one arm at a time, one leg at a time, one leg, single leg, one legged, one at a time, one side at a time"),
    ("NOISE", 0, "going again, go again, im up again, ready to go again, back again, here again, try again, trying again, if im honest, if im being honest, if we re honest, to be honest, if you ask me, in the gym is, in the gym was, out in the gym, in the gym are, all the way through, all the way home, right in, right on, right away, right now, right after, right before, right there, right at, right where, thats right, one of those, one of them, in a row, at least, at last, so far, for once, for fun, for now, for a change, first time, first ever, for ages, in ages, waiting for a bench, waiting for the bench, waiting for the rack, at the end, up front, this one, that one, the one, no problem, no issues, no worries, not bad, for good measure, left the, wake up, woke up, showed up, turned up, free bench, bench was taken, bench taken, down the road, next to me, beside me, behind me, near me, in front of me, with me, spotting me, old man, went for another, tried another, tried for another, went for one more, tried one more, tried for one more, attempted another, out of nowhere, in between matches, pull up bar, pullup bar, dip bars, dip bar, dip station, chin up bar, squat rack, power rack, bench station, off the rack, off the floor, the cable station, cable station, smith machine bar, dumbbell rack, set aside, on the side, outside, inside, quick one, missed logging, forgot to log, forgot to send, late log, missed a day, missed my session, missed the session, missed class, missed you, missed the bus"),
    ("DAY", -1, "yesterday, yesterdays, yest, ystd, ystrday, last night, yday, yesterdy, last nights, yesteday, yesterday evening, yesterday morning"),
    ("DAY", -2, "day before yesterday, the day before yesterday, two days ago, 2 days ago, couple days ago, day before last, 2 d ago, two days back"),
    ("DAYSAGO", 0, "days ago, days back, d ago"),
    ("DAY", 0, "today, this morning, todays, tday, just now, this arvo, this afternoon, earlier today, earlier"),
    ("WEEKDAY", 0, "monday, mon, mondays"),
    ("WEEKDAY", 1, "tuesday, tue, tues, tuesdays"),
    ("WEEKDAY", 2, "wednesday, wed, weds, wednesdays"),
    ("WEEKDAY", 3, "thursday, thu, thur, thurs, thursdays"),
    ("WEEKDAY", 4, "friday, fri, fridays"),
    ("WEEKDAY", 5, "saturday, sat, saturdays"),
    ("WEEKDAY", 6, "sunday, sun, sundays"),
)
# fmt: on
