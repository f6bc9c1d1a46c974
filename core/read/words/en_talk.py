"""English, everyday talk around training: turns of phrase made of a few parts, and figures of speech.

Rows like those of the other tables, but put together from their parts, so that every combination is known. Source:
common English; no single source.
"""

from itertools import product
from typing import Final

from core.read.lexicon import Rows


def _every(*parts: str) -> str:
    """Every phrase made of one alternative of each part, in order."""
    choices = [[one.strip() for one in part.split(",")] for part in parts]
    return ", ".join(" ".join(filter(None, words)) for words in product(*choices))


_MUST_I: Final = (
    "am i meant to, am i supposed to, do i have to, should i, do i, shall i, do you want me to, can i, would you like "
    "me to, must i, do you need me to, have i got to, did you want me to, would you want me to, do i need to, i should, "
    "i need to, i have to, i gotta, am i, i do"
)
_FEARS: Final = _every(
    "scared of, afraid of, worried about, terrified of, nervous about, dreading, fear of", "doing, trying,"
)
_DO_I: Final = "can i, could i, should i, do i, shall i, might i, would i, can we, could you suggest, is there to"

# fmt: off
ROWS: Final[Rows] = (
    ("NEXTQ", 0, _every("what", _MUST_I, "do, be doing, move to, go to, doing", "now, next, after, after this, after that, after these")),
    ("NEXTQ", 0, _every("where, where to", "do i go, am i going, should i go, do we go", "now, next, from here, after this")),
    ("NEXTQ", 0, _every("send me, give me, tell me, show me, hit me with", "the next one, the next exercise, whats next, what is next, the next lift, the next thing, the next move, what to do next")),
    ("NEXTQ", 0, "whats on now, whats on next, what have you got for me next, ready for the next one, ready for next, onto the next, on to the next, on to the next one, onto the next one, whats the next thing, whats the next lift, whats the next move, which is next, whats my next, whats my next exercise, whats my next lift"),
    ("ALTERNATIVE", "asks", _every("what, what else", _DO_I, "do, use, try", "for, instead of, in place of, rather than")),
    ("ALTERNATIVE", "asks", "what else is there for"),
    ("ALTERNATIVE", 0, "another way to do, other way to do, other ways to do, something in place of, anything in place of, something to replace, anything to replace"),
    ("ALTERNATIVE", 0, _every("something, anything, another exercise, a different exercise", "instead of, in place of, rather than")),
    ("ALTERNATIVE", "asks", _every("can we, can i, could we, could i, may i, id like to, i want to, is it ok to", "do, have, use, try", "something, something else, anything, another exercise, a different exercise", "instead of, in place of")),
    ("UNDONE", 0, _FEARS),
    ("WORRY", "before", _FEARS),
    ("UNDONE", 0, _every("the thought of, thinking of, thinking about, tempted to, tempted by, the idea of, toying with, fancy, fancying, dont fancy, didnt fancy, cant be bothered with, sick of, bored of, curious about, eager to, itching to, excited to, excited for, excited about", "doing, trying,")),
    ("UNDONE", 0, "goes to, goes up to, only goes to, only goes up to, go up to, only go to, only go up to, maxes out at, max out at, tops out at, top out at, it goes, it only goes, runs out at"),
    ("UNDONE", 0, _every("i, we", "never, always, usually, normally, generally, rarely, hardly ever, tend to, typically, only ever, prefer, prefer to, dont usually, dont normally, dont like, hate", "do, go, use, lift, train, hit, get, doing, going,")),
    ("CLOCKLEAD", 0, _every("up, awake, open, out, busy, working, here, free, in, away, closed, shut, on shift, at work, stuck, in bed, asleep", "til, till, until, past, by, from")),
    ("SKIP", "short", _every("cba, cba with, cant be arsed with, cant be bothered with, couldnt be bothered with, couldnt be arsed with, not in the mood for, not up for, not up to, swerving, swerve, no thanks to, body swerving, sod, forget about, forgetting about, leaving off, leave off, knocking, gonna swerve, gonna give, going to give", "the, doing,")),
    ("FINISH", 0, _every("gotta, got to, have to, need to, must, better, im gonna, ill, ive gotta, i gotta, ive got to, i have to, i need to, i must, i better, id better", "dash, shoot, fly, go, scoot, split, bounce, head off, head home, head out, get going, be off, get off home, get off")),
    ("FINISH", 0, _every("all finished, finished, done, im done, im finished, all done, thats me done, thats it, thats me, were done, finished up", "for this evening, for the evening, for this morning, for the morning, for this afternoon, for this session, with this session, with it all, with everything")),
    ("FINISH", 0, "thats my lot, thats your lot, thats us finished, thats me off, im away home, away home, im off home now, that does me, thatll do me, that will do me, over and out, see you next time, see ya next time, til next time, till next time, until next time"),
    ("BEGIN", 0, _every("lets, time to, right lets, ok lets, gonna", "crack on, get cracking, have it, roll, rock, rock and roll, get to work, get going, get lifting, lift, get stuck in, get this done, get into it, get to it, get it done, get moving")),
    ("BEGIN", 0, "cracking on, here goes, game on, ready when you are, good to go, getting stuck in, rock and roll, all set, at the rack, bars loaded, bar is loaded, ready and waiting, raring to go"),
    ("NEXTQ", 0, _every("which, which one, which ones, which exercise, whats, what, what is", "after, comes after, follows, is after, goes after, do i do after")),
    ("AMEND", "strong", "i typed, i entered, i tapped, i keyed, i keyed in, i punched in, i logged, i texted"),
    ("MORNING", 0, "first thing, 1st thing, straight out of bed, out of bed, before breakfast, before brekkie, on an empty stomach"),
    ("FILLER", 0, "a miss"),
    ("UNDONE", 0, _every("dont, please dont, pls dont, never, do not, wont, dont you", "make me do, ask me to do, ask me for, tell me to do, force me to do, make us do")),
    ("WHIRLED", 0, _every("spinning, swinging, twirling, whirling", "my, the", "daughter, son, kids, kid, girls, boys, niece, nephew, baby, little one, toddler, wife, partner,", "round, around")),
    ("WHIRLED", 0, "on the waltzers, on the teacups, at the fairground, on the rollercoaster, on a rollercoaster, on the merry go round, on the ferry, seasick, carsick, travel sick"),
    ("SKIN", 0, "papercut, paper cut, paper cuts, splinter, hangnail, blistered, grazed, scab, chapped, cut my finger, cut on my finger, cut on my hand, cut my hand, cut my thumb"),
    ("JOKE", 0, _every("dog, cat, kid, kids, baby, toddler, wife, husband, puppy, missus", "lying, laying, sleeping, sitting, lay, sat, asleep, slept, fell asleep", "on it, on my arm, on my leg, on my hand, on me, on my legs, on my foot")),
    ("HEADACHE", 0, "splitting head, thumping head, pounding head, bursting head, banging headache, thumping headache"),
    ("OTHER", 0, _every("training, lifting, gym, workout, squat, bench, sparring, running", "partner, buddy, mate, pal, bro, friend, mates, buddies, pals, friends, partners, crew, group")),
    ("UNDONE", 0, "kit list, equipment list, my kit, my equipment, the kit here, home gym list, inventory, to buy, shopping list, for sale, wish list, wishlist, christmas list, packing list"),
    ("SKIP", "back", _every("not, isnt, arent, wont be, are not, is not", "happening, on the menu, on the cards")),
    ("SKIP", "back", _every("are, is", "off the menu, off the table, off the cards, getting skipped, getting binned, getting a miss")),
    ("SKIP", "back", "can wait, will have to wait, have to wait, can wait til next time, can do one, can get in the bin"),
    ("IDIOM", 0, _every("left side, right side, left arm, right arm, left leg, right leg, left, right", "lagging, lags, lagged, is lagging, was lagging, still lagging, catching up, is catching up, was catching up, is stronger, was stronger, felt stronger, lagging behind")),
    ("IDIOM", 0, "done warming up, finished warming up, all warmed up, properly warmed up"),
    ("IDIOM", 0, _every("noise like, noises like, sound like, sounded like, sounds like, cracking like, creaking like, crackling like, creak like, crackle like", "bubble wrap, popcorn, gravel, popping candy, a creaky door, an old door, castanets, rice crispies, rice krispies, crisps, a rusty gate, a rusty hinge")),
    ("PAIN", 0, "sair"),
    ("PART", "finger", "fingertip, fingertips"),
    ("FROZEN", 0, "snowball, snowballs, snowman, snowmen, ice cubes, ice bucket, in the freezer, scraping the windscreen, scraping ice"),
    ("PASTTIME", 0, _every("back in, in, during, when i was in, back when i was in", "high school, college, uni, university, the army, the navy, the marines, the service, my twenties, my 20s, my teens, my thirties, my 30s, my prime, my youth")),
    ("NEXTQ", 0, _every("what, whats", "we doing, we got, do we have, have we got, are we on, am i on, we on, i got", "next, after, after this, after that, after these, now then")),
    ("ERASE", 0, _every("scratch, strike, scrap, delete, forget, bin, undo, nix, remove, drop", "that one")),
    ("PLANNED", 0, "to a t, to a tee, to the t, to the tee, down to a t, stuck to it exactly, to the rep, followed it exactly"),
    ("JOKE", 0, _every("just, from just, even", "hearing, thinking about, reading about, typing", "it, the word, that, this, them, about it,")),
    ("CLOCKLEAD", 0, _every("pin, stack, machine, cable, seat, treadmill", "is, was,", "stuck, jammed", "on, at")),
    ("SKIP", "back", _every("are, is,", "getting", "the boot, the chop, the sack, the elbow, the heave ho")),
    ("FINISH", 0, "wrapping it up, wrapping it up there, wrapping it there, leaving it there, ill leave it there, i will leave it there, leaving it at that, ill leave it at that, gonna leave it there, going to leave it there, calling it a wrap, calling time"),
    ("BEGIN", 0, "warming up as we speak, getting warmed up, started my warm up, starting my warm up"),
    ("PLANNED", 0, _every("nailed, smashed, crushed, completed, did, finished, got through", "the whole, the entire, all of the, the full, the whole of the", "plan, programme, program, list")),
    ("TAKE", 0, "take, knock, rub, cross, strike, pull, get, chuck, throw, leave, takes, taking, cut"),
    ("FILLER", 0, "take, get, leave"),
    ("IDIOM", 0, _every("about to, gonna, going to, ready to, feel like theyre about to, fit to, could", "fall off, drop off, combust, fry, melt, give up on me, snap off, divorce me, go on strike, burst into flames, pop out of my shirt")),
    ("IDIOM", 0, _every("biceps, bicep, triceps, arms, forearms, quads, legs, thighs, calves, glutes, shoulders, delts, pecs, lats, traps, abs", "are, is,", "about to, gonna, going to, ready to", "explode, burst")),
    ("IDIOM", 0, _every("head was, head is, heads, head has been", "spinning, swimming, fried, mush", "with all, from all, from work, with work, with numbers, from the numbers, with spreadsheets, with emails, from meetings, with deadlines, from revision")),
    ("IDIOM", 0, "bladder of steel, nerves of steel, abs of steel, buns of steel, lungs of steel, heart of steel, bladder of iron, heart in my mouth, heart was in my mouth, heart in mouth, heart in me mouth, heart isnt in it, heart wasnt in it, heart not in it, heart just isnt in it, heart just wasnt in it, heart is not in it, heart was not in it, heart goes out to, heart went out to, heart of gold, broke my heart, breaks my heart, breaking my heart, broken heart, heart set on, heart to heart, by heart, off by heart, heart sank, heart melted, lost my head, lose my head, keep my head, off my head, head over heels, head start, head in the game, head isnt in it, head wasnt in it, head in the clouds, bang on about, head down, heads up, head count, do my head in, doing my head in, did my head in, does my head in, wrap my head around, get my head around, get my head round, over my head about, on my mind, out of my head, blew my mind, blows my mind, mind blown, cost an arm and a leg, costs an arm and a leg, arm and a leg, cold feet, pulling my leg, pull my leg, pulling your leg, chip on my shoulder, weight off my shoulders, weight off my chest, off my chest, off my shoulders, look over my shoulder, looking over my shoulder, over my shoulder at, over the shoulder, shoulder to cry on, cold shoulder, jaw dropped, jaw on the floor, jaw hit the floor, face like thunder, face palm, facepalm, face the music, face lit up, took my breath away, takes my breath away, took the breath away, breath of fresh air, waste my breath, waste of breath, save my breath, save your breath, under my breath, dont hold your breath, held my breath for the results, out of hand, hand in hand, on the other hand, hands down, hands full, first hand, second hand, give me a hand, gave me a hand, lend a hand, lending a hand, need a hand, big hand, caught red handed, thumbs up, thumb war, green fingers, fingers crossed, crossed fingers, wrapped around her finger, toe the line, toe to toe, pain in the arse, pain in the ass, pain in the bum, pain in the backside, pain in the butt, royal pain, painful to watch, painfully slow, pain to get to, pain to park, my back is covered, got my back, have my back, has my back, watch my back, behind my back, back on track, back to square one, turn my back, eyes popped out, eyes lit up, eye opener, eyes bigger than, blood boil, blood boiling, made my blood boil, sweat blood, butterflies about, gut feeling, spit my tea, elbow room, elbow grease, knee deep, knees up, weak at the knees, bees knees, neck of the woods, breathing down my neck, breathe down my neck, neck and neck, up to my neck, skin of my teeth, stomach for it, no stomach for"),
)
# fmt: on
