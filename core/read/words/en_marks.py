"""English, single words (or what stands for one) that a pattern tells apart beyond their kinds.

Most marks are a word by itself and are named after it; another language gives its own word for each. Source: common
English; no single source.
"""

from collections.abc import Mapping
from typing import Final

_THEMSELVES: Final = (
    "a, about to, ache, aches, aching, achy, after, again, aim, air, all of it, all the, almost, always, an, "
    "and next, another, another one, any, arm, armpit, arms, as usual, back, back in, bar, barbell, bed, before, "
    "between, blew up, bloke, blown up, bowl, bp, break, buddy, can, cant feel my, couch, could, "
    "couldnt feel my, crushed, crushing, day, different, doesnt, doms, done, doon, down, except, extra, find me, "
    "finished, first, from, funny, give me, goal, going to, gonna, got, gotta, haha, half, half a, hanging, "
    "have to, heavier, her, his, hope, hopefully, hurt, hurting, hurts, i, i need, i put, i said, i wrote, if, "
    "ill, im, in, inside, instead, it is, it was, its, jelly, joint, just finished, l, lad, left, leg, leg day, "
    "legs, lighter, load, lol, lower, lungs, m, mate, me, might, min, mine, minute, muscle, my, nearly, need, "
    "never, never hurts, next, next time, next week, no, nope, normal, not, nothing, now, off, one, one more, "
    "ones, our, pause, paused, pauses, planned, plus, pulled, pump, pumped, quarter, r, remove it, reps, rest, "
    "resting, right, rolled, round, scratch that, set, sets, should, since, single, sofa, something else, soon, "
    "squeeze, squeezed, squeezing, suggest, swelled, swells, take it off, talking, target, tendon, that, "
    "that was, the, the bar, the lot, their, thinking, this, those were, til, to, toilet bowl, toilet water, "
    "tomorrow, undo, until, up, upper back, ups, usual, want, wanted, was aiming for, was going for, was i, "
    "was it, was only, was that, water, weight, were those, when, will, wish, without, would, x"
)

# fmt: off
MARKS: Final[Mapping[str, str]] = {word: word for word in _THEMSELVES.split(", ")} | {
    # before a number that tells where
    "addresses": "level, floor, junction, exit, terminal, chapter, page, route, deck, platform, rack, locker, lane, bay, room, gate, station, bus, week, day, session, number, phase, cycle",
    # before a number that tells how old
    "ages": "turned, turning, turns, aged, age",
    "before year": "from, since, back, back in, january, february, march, april, may, june, july, august, september, october, november, december, summer, winter, spring, autumn, early, late, of",
    # before a guess of effort
    "calls": "call it, id call it",
    "denying": "cant, couldnt, wont, nothing, gone, doesnt, free, skip, never",
    # words that tie a fast heart to the work done
    "efforts": "after, from, set, during, after that, last set, that last set, sets, finisher",
    # asked of anyone
    "general": "you, your, people, anyone, someone, lifters, deadlifts, creatine, squats",
    # what a joint does when it is injured, and told so in the same sentence
    "gives": "gave out, gave way, giving way, gives way, gives out, gave",
    # what a part of the body rests on while lifting
    "ground": "bench, floor, ground, pad, seat, platform, deck, mat, plate, bar, handle, handles, step",
    # who did it
    "i or we": "i, im, ive, we, id, ill",
    # initials that name an exercise only right before a count
    "initials": "fs, pc, hc, ps, pp, bs, dl, sq, gm, sl, bp",
    "laughter": "haha, hahaha, lol, lmao, rofl, leg day",
    # leaving for somewhere ends a session only when something was reported before it
    "leaving": "off to work, off to bed, off to the pub, off to eat, off for a shower, off to get food, off for food, off to the shower",
    # words of a chest that a heart out of step tells as well
    "loose chest": "weird, funny, strange, odd, fluttering, flutter, thumping, pounding, racing",
    # words of an injury that a swelling or a nerve can tell as well
    "loose injury": "lump, bone, wont bend, cant close, locked, cant grip anything, cant hold anything",
    "loose quotes": "heard, ever, usually, normally, all time, apparently, a guy, covered, letter",
    # words of an ache that are soreness as well
    "mild": "sore, tight, tightness, stiff, stiffness, off, tender, talking, problem, issue, issues, trouble, sensitive, burning, hate, hated, hates, dont like, doesnt like, didnt like, not happy, unhappy",
    # what one does to a calendar or with leaflets, too
    "objected": "blacked out, blacking out, black out, passed out, passing out",
    # how the lifter comes into a sentence
    "oneself": "i, im, ive, my, me, id, ill, mine",
    # behind a number: how tall or how old somebody is
    "stature": "tall, years old, yrs old, yo, y o, year old, years of age, high, in height",
    # what the lifter wrote before, that is corrected now
    "i put": "i put, i typed, i entered, i tapped, i keyed, i keyed in, i punched in, i logged, i texted",
    # words that throw away the last set by themselves
    "scratch that": "scratch that, scratch that one, strike that one, scrap that one, delete that one, forget that one, bin that one, undo that one, remove that one, drop that one, nix that one",
    # what was done all the same, by the one who writes
    "but done": "but got, but did, but managed, but hit, but made, but finished, but still",
    # what one lies on or waits for, behind a word for any one of them
    "furniture": "bench, benches, rack, squat rack",
    "some one": "a, another, any, free, empty, every, spare, which, the only, each",
    # how a limb is laid on that goes to sleep
    "laid": "on the sofa, on the couch, on sofa, sofa, couch, slept on it, slept on my arm, slept on my hand, slept on my, cuddling, spooning, shaking it, shook it, cross legged",
    # what opens a sentence and says nothing of form, side or corrections
    "openers": "ok, okay, alright, right, update, oki, okey",
    "other days": "tomorrow, next week, next time, next session, next month, next workout",
    # where one is begins a session only when nothing else is told of the place
    "places": "in the gym, at the gym",
    # words that come back to what was done, whatever was said before
    "resumes": "anyway, anyways, anyhow, but today, today, back to today",
    # what runs along a nerve, and is no numbness of the saddle
    "shooting": "lightning, shooting, shooting pain, shooting pains, electric, electric shock, electric shocks, zap, zaps, zapping, zing, zings, zinger, jolt, jolts, sparks, sciatica, radiating, radiates, electric feeling, electric feelings, electric current, electricity, current",
    "soft begins": "begin, beginning",
    # after a blow these belong to it
    "stars": "saw stars, seeing stars, saw spots, seeing spots",
    "strong heart": "fluttering, flutter, flutters, fluttered, skipping, skipped, skips, skip, irregular, missing beats, missed a beat, missed beats, erratic, flip flop, flip flopping, flopping, doing flips, double beat, out of rhythm, stuttering, flipping, misfiring, stumbling, quivering, uneven, jumping, jumped",
    # a question behind what was said
    "tags": "isnt it, right, correct, yeah, arent they, is it, yes, innit",
    "unable": "cant, couldnt, havent, hasnt",
    # words of an ache that are much else
    "vague": "off, tight, tightness, talking, problem, issue, issues, trouble, pulled, rolled, funny, crunchy",
    # what has a size on the skin, and is no swelling
    "on the skin": "bruise, bruises, graze, scab, scar, tattoo, mole, scratch, rash, blister, callus, cut",
    # what blows muscles up for an hour
    "pumping": "superset, supersets, dropset, drop set, popeye, vascular, gains, mirror, burnout, burnouts, arm day, leg day",
    # what stands before how old or tall one is
    "who am": "im, i am, am",
    "whens": "before, after, while, until, till, when, once, since",
    # what was aimed at before what came of it
    "aimed before": "was, were, wanted, hoped for, meant to, planned, expected, thought i could, thought i had, thought i would, thought id, thought id get, was after, was aiming for, was expecting, was going for, was hoping for, was meant to, was meant to be, was my best, was my max, was my pr, was only, was only doing, was planned, was possible, was supposed to, was the goal, was the plan, was it, was that, was i, was actually, was full, was taken, was busy, was occupied, was broken, was being used",
    "a little": "bit, slightly, still",
    "another time": "another, another go, another one, another round, another set",
    # of a limb that is cuddled or lain on
    "asleep": "asleep, fell asleep, went to sleep, gone to sleep",
    "at present": "now, today, atm, currently, rn, tonight, again",
    # between what was pulled and the part of the body
    "before a part": "my, a, an, the, muscle, something, in, left, right, lower, upper, bloody, damn, of",
    # before a mark on the scale of effort
    "called so": "call it, call that, was, that was, it was, those were",
    # between a part of the body and how much it hurts
    "came to": "its, went, gone, dropped, got, s, come, came",
    # what begins a correction, and no set
    "changes it": "make it, make that, make last one, make last set, make the last, make the last one, make the last set, change it to, change that to, change last, change the last",
    # of a lift that failed, and before 'to failure' of a set that was not taken there
    "didnt go": "didnt go, did not go, didnt take it, wouldnt go",
    # where a part is pulled to by how the lift is done
    "drawn": "back, down, in, together, forward",
    # what is done to a back or to elbows on purpose
    "held so": "keep, kept, keeping, stay, pulled, wraps",
    # what corrects a kept set where it stands alone, and tells an aim where a 'but' and a count follow
    "meant to be": "should be, should have been, shouldve been, supposed to be, was supposed to be, was meant to be, meant to be",
    "merely": "only, just",
    "on the last": "on the last, on the last one, on the last set, on my last one, on my last set, on the final one, on the final set",
    # what is parted from its verb by what it takes away
    "particles": "off, out, away, back, back out",
    "pausing": "pause, pauses, paused, pause at bottom, pause at the bottom, pauses at the bottom, paused at the bottom, pause in the hole, pause in the stretch, pause on the chest, pauses on the chest, paused on the chest, pause rep, pause reps, paused reps",
    # several implements, one in each hand
    "several": "dumbbells, dbs, dumbells, kettlebells, kbs",
    "sized": "size of a, size of an, size of my",
    # plates that come off
    "taking off": "took, take, taking, stripped, pulled, knocked, dropped",
    "tight": "tight, tightness",
    # before a pain that was
    "was so": "was, were, been, had, it was, it were, that was, them were, they were, those were, i had, ever had, never had, once had, still had, prob had, probably had, we all were, when i was, i think it was",
    # of a part that hurt
    "well again": "gone, vanished, disappeared, cleared, sorted, all gone, has gone, went, went away",
    # behind a smaller part of it, these only tell its side
    "whole limb": "foot, hand, leg, arm, left foot, right foot, left hand, right hand, left leg, right leg, left arm, right arm",
}
# fmt: on
"""Each mark with its words."""
