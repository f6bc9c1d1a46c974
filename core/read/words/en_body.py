"""English, how people tell a sign indirectly: small concepts, and the frames that join them.

Source: common practice; the signs are those of the reading contract. A star stands for a verb's everyday endings.
Nothing here diagnoses.
"""

from collections.abc import Mapping
from typing import Final

from core.read.frames import FrameRow

# fmt: off
CONCEPTS: Final[Mapping[str, str]] = {
    # parts of the body
    "LEG": "leg, legs, thigh, quad, hamstring, hammy, calf, shin, achilles, lower leg, glute, hip, groin, thighs, calves, shins, quads, hamstrings, limb, bum to heel, bum, buttock, butt, ham, adductor, hips, glutes",  # noqa: E501
    "LOWJOINT": "knee, ankle, foot, feet, toe, toes, heel, kneecap, ankles, knees, instep, big toe, sole, soles",  # noqa: E501
    "ARM": "arm, arms, forearm, bicep, biceps, tricep, triceps, upper arm, shoulder, delt, forearms, pec, lat, armpit, shoulders, neck, rotator, trap",  # noqa: E501
    "HAND": "hand, hands, finger, fingers, thumb, pinky, pinkie, wrist, elbow, palm, knuckle, knuckles, fingertip, fingertips, thumbs, index finger, ring finger, little finger, wrists, elbows, paw",  # noqa: E501
    "BONE": "collarbone, collar bone, clavicle, bone, shinbone, rib, ribs, breastbone",  # noqa: E501
    "BACK": "back, spine, lower back",  # noqa: E501
    "SOMETHING": "something, summat, sth, somethin, somethings, something in, something inside",  # noqa: E501
    "LEFTARM": "left arm, arm and jaw, jaw and arm, arm and my jaw, left shoulder, down my arm, both arms and jaw",  # noqa: E501
    "JAW": "jaw, my jaw, teeth, throat and jaw",  # noqa: E501
    "CHEST": "chest, breastbone, sternum, ribcage, rib cage, breast bone, chests, middle of me, centre of me, center of me, centre of me chest, across my front, across the front, over my heart, round my heart, around my heart, over the heart, near my heart, behind my ribs, under my ribs, under the ribs, my ribs, behind the ribs, deep inside, chest wall, where my heart is, left boob, left pec, left tit, my front",  # noqa: E501
    "INCHEST": "in my chest, in the chest, in me chest, in my ribcage, in my ribs, behind my ribs, under my ribs, in there, chest, my ribcage, my throat, in my throat, under my shirt, in my neck, in my ears",  # noqa: E501
    "HEART": "heart, hearts, heartbeat, heartbeats, heart beat, pulse, ticker, hr, heart rate, bpm, my heart, ticka, rhythm, beats",  # noqa: E501
    "EYES": "vision, eyes, eyesight, sight, my eyes, view, eye sight, peripheral",  # noqa: E501
    "ONEEYE": "eye, one eye, eyelid, eyelids, lid",  # noqa: E501
    "HEAD": "head, skull, nut, bonce, temple, forehead, noggin, crown, brow, back of my head, back of the head, top of my head, scalp, heads, eyebrow, head first, swede, napper",  # noqa: E501
    "FACE": "face, smile, mouth, lip, lips, cheek, eyelid, side of my face, half my face, eyebrow, tongue",  # noqa: E501
    "SPEECH": "speech, words, talking, sentences, sentence, tongue, speaking, talk, speak",  # noqa: E501
    "ROOM": "room, gym, floor, world, walls, wall, ceiling, ground, horizon, platform",  # noqa: E501
    "ALLOFIT": "everything, it all, whole world, the world, whole gym, whole room, the room, the gym, things, all",  # noqa: E501
    "SADDLE": "crotch, groin and bum, privates, private parts, bits, undercarriage, saddle, perineum, genitals, down there, down below, bum, backside, arse, butt cheeks, bum cheeks, inner thighs, where i sit, between my legs, between the legs, downstairs, bike saddle, seat, when i wipe, wipe, wiping, nethers, nether regions, taint, balls, behind, cheeks",  # noqa: E501
    "URINE": "pee, wee, piss, urine, peed, peeing, weeing, pissing, pissed, urinate, urinating, a slash, number one, number ones, my water, pass water, passing water, a leak, tinkle, peepee, pees, a wazz, a jimmy, weed, passed water, water works, waterworks, widdle, my waters",  # noqa: E501
    "PASSED": "i passed, when i go, when i went, came out of me, toilet bowl, the bowl, in the bowl, in the loo, the loo, the toilet, went to the loo, went to the toilet, urinal, first trip to the loo, comes out, came out, when i go to the loo",  # noqa: E501
    "BLADDER": "bladder, bladders, bowel, bowels, my water, number two",  # noqa: E501
    "GO": "pee, wee, piss, urinate, go for a wee, go for a pee, go to the toilet, go to the loo, go toilet, pass water, pass urine, empty my bladder, have a wee, have a pee, peeing, weeing, pissing, toilet, loo, urinal, pass anything, going to the toilet, bathroom, use the toilet, use the bathroom, use the loo, widdle",  # noqa: E501
    "POO": "poo, poop, shit, crap, soiled, messed, bowel, bowels, skid mark, skid marks, accident, accidents, soil, pooed, pooped, number two, crapped, shat, leaked, sharted, gone in my pants, gone in my shorts",  # noqa: E501
    "PANTS": "pants, shorts, leggings, myself, trousers, knickers, undies, underwear, boxers, joggers, my leg, my legs, singlet, on the platform, on the floor",  # noqa: E501
    # what it feels like
    "PRESS": "squeez*, squeeze, pressure, press*, tight, tighten*, tightness, tighter, tight band, band, belt, strap, clamp*, grip*, vice, vise, fist, squash*, crush*, constrict*, clench*, compress*, pulled together, closing in, caving in, bear hug, hug*, straitjacket, corset, cling*, too small, girdle, iron, rope, wrung, winch*, ratchet*, stitch*",  # noqa: E501
    "WEIGH": "heavy, heaviness, weight, lead weight, brick, bricks, anvil, stone, slab, boulder, concrete, sandbag, van, car, truck, lorry, elephant, hippo, horse, rhino, cow, stood on, sat on, sitting on, standing on, kneeling on, parked, plate on, load on, leaning on, pushing on, piano, fridge on, rock on, bag of sand, cement, lead",  # noqa: E501
    "HURT": "pain, pains, painful, hurt*, ache, aches, aching, achy, ached, sore, burn*, stab*, stabby, stabbing, sharp, pinch*, pinchy, niggl*, niggle, twing*, twinge, throb*, knot, knotted, cramp*, jab*, dagger, knife, needle, needles, poker, dull, catch*, tug*, discomfort, uncomfortable, odd, weird, funny, strange, not right, isnt right, raw, tender, tweak*, spasm*, gnaw*, skewer, ember, embers, fire, hot",  # noqa: E501
    "INDIGESTION": "indigestion, heartburn, reflux, acid",  # noqa: E501
    "EXERT": "exert*, uphill, up hill, sprint*, stair, stairs, push hard, run for, effort, rows, climb*, hills, hill, walk*, carry*, walk fast, jog*, run*, hurry, every set, each set, mow*",  # noqa: E501
    "RELIEF": "stop, stops, stopped, rest, rested, eases, goes off, goes away, sit down",  # noqa: E501
    "ARMACHE": "ache*, heavy, pain, hurt*, numb, dull, throb*, weird, dead, tingl*",  # noqa: E501
    "COLDSWEAT": "cold sweat, cold sweats, clammy",  # noqa: E501
    # breath
    "PUFF": "puff*, pant*, gasp*, gulp*, wheez*, wheeze, winded, out of breath, out of puff, breathless, huffing, sucking air, sucking wind, sucking in air, short of breath, breathing hard, breathing heavy, blowing hard, blowing like, heaving, gulping, gassed, breathless, hyperventilat*, no breath, lost my breath, runs out of breath, run out of breath, ran out of breath",  # noqa: E501
    "BREATH": "breath, breaths, breathe, breathing, lungs, lungful, oxygen, air, lung, breather, breathed, my wind, inhale, exhale",  # noqa: E501
    "SMALLDEED": "stair, stairs, stairwell, sock, socks, shoe, shoes, lace, laces, teeth, shower*, dressed, kettle, shopping, groceries, standing here, standing still, sitting, sat, lying, lie flat, lying flat, walk to, walking to, walked to, one set, 1 set, first set, single set, warm up, warmup, empty bar, just the bar, bed, car, letterbox, mailbox, the post, hoover*, driveway, corridor, tidying, washing up, water fountain, bathroom, to the loo, talking, on the phone, phone call, on the sofa, on the couch, at my desk, desk, resting, doing nothing, not doing anything, hair, nothing at all, bins, the bin, cooking, pillows, propped up, escalator, platform stairs, one flight, a flight, from the sofa, from nothing, for no reason, out of nowhere, one set of, just one set, thats not me, not like me, walking up, carrying",  # noqa: E501
    "LONG": "minutes, mins, min, minutes later, mins later, still, since, ages, forever, quarter of an hour, half an hour, an hour, hours, all day, all night, all morning, all evening, long after, wont, hasnt, hours later, so long, longer, afterwards, longest time, way after, yet, never came back, all week, for days, days, keep, keeps",  # noqa: E501
    "UNABLE": "cant, couldnt, cannot, can not, could not, not able to, unable to, wont, wouldnt, isnt, isnt going, doesnt, dont, didnt, hard to, struggl*, fight*, fought, fail*, no longer, cant even, never, not getting, barely, hardly, havent been able to, impossible, havent, hasnt, arent, trouble, difficult, difficulty, need to sit up to, hang onto, have to stop, had to stop, had to sit, refuses to, refused to, not, no longer",  # noqa: E501
    "FULL": "fill, full, enough, properly, in, deep, catch, get, back, settle, let go, calm, normal, expand, slow, down, flat, finish, whole, come back, lying, going in, in properly",  # noqa: E501
    "STRAW": "through a straw, straw, like half, half of them, half full, shallow, short and fast, fast and short, rapid, accordion, mid sentence, mid word, between words, cut off, choking, underwater, drowning, thin air, altitude, wet cloth, pillow over, top of my lungs, top half, whistl*, rattl*, crackl*, crackly, longer to breathe, need to sit up, needing to sit up, sit up to breathe, took me longer, took longer, longer than usual, longer than it, slow to come back",  # noqa: E501
    "SENTENCE": "finish a sentence, get a sentence out, get through a sentence, get a full sentence, say a full sentence, speak in full sentences, mid sentence, finish my sentence, full sentence, whole sentence, finish sentences, talk in full",  # noqa: E501
    "THROAT": "throat, windpipe, airway",  # noqa: E501
    "CLOSE": "closing, close, closed, swelling, tight, tightening, narrow*",  # noqa: E501
    "SETTLED": "back to normal, back to normal now, recovered, came down quick, came down fast, settled quickly, settled fast, settled quick, and then fine, then i was fine, then fine, came back quick, in no time, within a minute, in a minute, after a minute, in 30, normal stuff, thats the point, brilliant, great session, loved it, love it, as it should, expected, as expected, normal after, usual after",  # noqa: E501
    # faint
    "GODARK": "dim, dimmed, dims, dimming, dark, darker, black, grey, greyed, gray, fuzzy, blurry, blurr*, blur, blurred, tunnel*, tunnel, narrow*, shrink*, shrank, shrunk, fade*, faded, fog, foggy, misty, white, spotty, speckl*, sparkl*, swim*, swam, went, gone, static, snowy, pinhole, keyhole, tube, curtain, closing in, closed in, cloud*, patchy, wavy, double, flicker*, zoom*, vignette, going",  # noqa: E501
    "DARK": "grey, gray, black, dark, dim, dimmed, white, fuzzy, blurry, muffled, far away, distant, hazy, echoey, blank, purple, faded, woolly",  # noqa: E501
    "TILT": "tilt*, spin*, spun, sway*, sideways, slow spin, tip*, lurch*, rotat*, revolv*, swirl*, swim, swam, swimming, like a boat, on a boat, ship, roundabout, merry go round, carousel, moving, moved under, rolling, came up, rushed up, wobbled, turning, slid, tumble dryer, rock*, waltz*",  # noqa: E501
    "STARS": "stars, sparkles, sparkly, spots, dots, fireflies, twinkles, twinkly, glitter, floaters, snow, flashing lights, little lights, sparks, fairy lights, confetti",  # noqa: E501
    "SEE": "see, saw, seeing, seen, vision, eyes, sight, everywhere, all over, in front of me, dancing, then stars, had stars, got stars",  # noqa: E501
    "FLOATY": "floaty, float*, swimmy, light, woozy, spin*, spun, fuzzy, helium, balloon, far away, wobbly, swim*, empty, airy, giddy, not attached, cotton wool, drifting, rush, whirl*, swirl*, whoosh*, vacant, carousel, off my shoulders, roundabout, went funny, gone funny",  # noqa: E501
    "SPELL": "whirlies, the whirlies, funny turn, the spins, fainty, faint spell, funny spell, head rush, headrush, head rushes, brown out, browned out, brownout, swooned, swoon, nearly went over, almost went over, nearly dropped, almost dropped, bed spins, about to keel, wooziness, giddiness, lightheadness, unconscious, knocked out, sparked out, spark out, lost the room, swimmy headed, light in the head, not with it for a, timbered, keel over, keeled, seeing double stars, went under, going under, sea legs, like being drunk, feel drunk, felt drunk, nearly hit the deck, almost hit the deck, nearly hit the floor, almost hit the floor",  # noqa: E501
    "FLOORED": "hit the deck, hit the floor, on the floor, on the deck, on the ground, went down like, dropped like, folded like, crumpled, keeled, fell over, face down, lowered onto, lowered to, looking up at, went over like, caught me, picked me up, hit the ground, went down, fell down, dropped to, on my back, sack of spuds, sack of potatoes, sack of, deckchair, deck chair, slid down the wall, kissed the floor, met the floor, toppled, on my knees, ended up on, woke up on",  # noqa: E501
    "CAMETO": "came to, came round, came around, woke up, next thing i know, next thing i knew, next thing, people over me, people standing over, faces over me, looking down at me, looking up at, caught me, had to catch me, nearly, almost, picked me up, lowered, dropped like, folded like, went down like, blinked, smelling salts, dont remember, sack of",  # noqa: E501
    "LOSTTIME": "couple of seconds, few seconds, couple of secs, few secs, a second, a sec, couple seconds, bit of time, a moment, split second, some time, ten seconds, five seconds, the last bit, a minute, gap, a few moments, half a second, half a minute",  # noqa: E501
    "LOST": "lost, missing, dont remember, cant remember, no memory, blank, blanked, gap, lights out, was out, went out, wasnt there, was gone, switched off, checked out, unplugged, pulled the plug, shut off, blacked, went away, left the building, was elsewhere",  # noqa: E501
    "NOMEMORY": "dont remember, cant remember, no memory of, dont recall, cant recall, no recollection, no idea how i",  # noqa: E501
    "THEDEED": "racking, the rack, finishing, putting it down, the last rep, last reps, the set, walking out, setting it down, the bar down, sitting down, got here, got home, driving home, how i got",  # noqa: E501
    "GRABBED": "grab*, held onto, hold onto, hang on to, clung, lean on, leaned on, steadied, steady myself, sit before, sat before, had to sit, sat down quick, sat down fast, hold the rack, had to hold, kneel, knelt, lie down, sit down quick",  # noqa: E501
    "BEFOREFALL": "before i fell, before i went, before i dropped, or id have gone, nearly fell, almost fell, legs went, so i didnt fall, to stay up, to stay upright, from falling, went wobbly, wobbled, knees went, legs turned, to keep from, balance, stop me falling, before i hit, all fuzzy, went fuzzy, world, tilted",  # noqa: E501
    "PALE": "white as a sheet, white as a ghost, pale as a, went pale, went white, gone pale, gone white, turned white, went green, went grey, colour drained, color drained, all the blood left, blood drained, all clammy, hot and clammy, cold and clammy, cold sweat, lips went white, grey in the face, white in the face, white lips, blood left my head",  # noqa: E501
    "SITLIE": "sit, sat, lie, lay, lowered, bench, floor, down, felt, sick, went, sweat, shaky, sound, weak, shaking, deads, deadlift, set",  # noqa: E501
    "EARS": "ears, hearing, sound, sounds, noise, music, voices",  # noqa: E501
    "MUFFLED": "muffled, far away, whoosh*, rushing, underwater, hollow, echoey, distant, faded, went quiet, went dull, dull, cut out",  # noqa: E501
    "STANDUP": "stand up, stood up, standing up, get up, got up, getting up, bend over, bent over, sit up, sat up, off the floor, off the bench, between sets, turn my head, after the set, when i racked, rack it, racked it, rise, on rep, last rep, unrack*",  # noqa: E501
    "UNSTEADY": "wobbly, wobble*, unsteady, off balance, drunk, tipsy, legless, stagger*, like a boat, sea legs, bambi, tipping over, like a newborn, weaving",  # noqa: E501
    "LIGHTSOUT": "lights out, lights went, lights go, lights went off, out like a light, telly switched off, tv switched off, screen went, someone flipped the switch, someone hit the switch, someone turned the lights, someone turned the dimmer, dimmer switch, turned the lights down, switched the lights off, curtain came down, curtains closing, curtains closed, shutters came down, shutter came down, blinds came down",  # noqa: E501
    "ATDEED": "at the top, top of, at the bottom, on rep, last rep, after the, for a second, for a sec, for a moment, in my eyes, over my eyes, on that, during, when i racked, mid rep, mid set, deadlift, squat, squats, deadlifts, press, there, bar, single, set, stood, rack",  # noqa: E501
    "POWERCUT": "power cut, powercut, electricity, fuse, power went, generator, power back, blackout curtains, curtains are, telly, tv, screen, paint*, painted, lamp, bulb, janitor, closing time, storm, projector, cinema, theatre, stage, concert, mirror, camera, photo, curtains, tattoo, blackout, speaker, dj, video",  # noqa: E501
    # heart
    "ODDBEAT": "trip*, stumble*, stutter*, skip*, skippy, miss, misses, missed, missing, flip*, flop*, floppy, backflip, backflips, somersault, somersaults, samba, jig, tap dance, tapdance, dance*, conga, salsa, tango, jazz, morse, morse code, drop a beat, dropped a beat, dropping beats, pause*, stop and start, stops and starts, irregular, all over the shop, all over the place, uneven, late, extra, early, hiccup*, jitter*, quiver*, tumble*, out of time, out of sync, out of rhythm, off beat, offbeat, jumpy, jump*, leap*, lurch*, kick*, flutter*, fluttery, wobble*, misfir*, misfire, backfir*, vibrat*, buzz*, trembl*, shak*, does its own thing, own thing, double beat, double tap, popcorn, forgets to, forgot a beat, forgot to beat, twitch*, cartwheel, cartwheels, somersaulting, roll*, swap*, squirm*, limp*, fish, bird, big thump, fast then, then nothing, then fast, nothing then, quick then slow, slow then quick, no pattern, no rhythm, polka, cha cha, bongo, bongos, like a bag of",  # noqa: E501
    "FASTBEAT": "race*, racing, gallop*, run*, sprint*, thud*, thump*, bang*, hammer*, pound*, clappers, fast, so fast, like a train, drum*, drum n bass, drum and bass, bass drum, techno, rave, took off, takes off, going mad, going mental, going nuts, going crazy, through the roof, sky high, speed*, sped, zoom*, spike*, beating out of, out of my chest, like a hummingbird, hummingbird, woodpecker, jackhammer, machine gun, sewing machine, fire alarm, overdrive, whirr*, revving, rev*, flat out, going like, like mad, hundred miles an hour, ten to the dozen, nineteen to the dozen, marathon, sprinting, up high, way up, high, jumped to, shot up, wont come down, wont drop, wont slow, wont calm, wont settle, loud, wild, bounce*, bounding",  # noqa: E501
    "BEASTIE": "fish, bird, butterfly, butterflies, hummingbird, moth, frog, sparrow, flutter*, fluttery, flop*, bassline, jackhammer, woodpecker, popcorn, bongo, bongos, jelly, jellyfish, drum n bass, drum and bass, drum solo, drum roll, washing machine, motor, engine, rabbit, pigeon, wings, hamster, trapped, mouse, kangaroo, trampoline, tap dancing",  # noqa: E501
    "EARBEAT": "in my ears, in my neck, in my throat, through the pillow, in the pillow, through my shirt, in my temples, in my head, against my ribs",  # noqa: E501
    "REST": "sat, sitting, sit, seated, lying, lie, lay, bed, sofa, couch, desk, telly, tv, watching, resting, rested, rest, at rest, doing nothing, half an hour, hour, hours, all night, all day, tonight, last night, for no reason, out of nowhere, out of the blue, nowhere, on its own, by itself, havent even started, between sets, driving, bath, at work, in the car, reading, minutes later, mins later, ten minutes, 10 min, 10 mins, 20 min, 20 mins, 15 min, 15 mins, minutes, still, wont, randomly, random, just now, this morning, at night, night, dinner, eating, pillow, right now, chilling, settee, armchair, before i started, evening, asleep, middle of, woke, standing still, waiting, on the bus, on the train, meeting, cooking",  # noqa: E501
    "BEATS": "beats, beat, thump, thumps, thud, thuds",  # noqa: E501
    "EXCITED": "nervous, nerves, excited, excitement, meet day, before the meet, competition, interview, exam, wedding, in love, date, crush, new pr, song, movie, film, match, news, proud, happy, price, goal, game, first day, butterflies in my stomach, opener, roller coaster, penalty, penalties, meet, nervous for, before my opener",  # noqa: E501
    # nerve
    "NUMB": "numb, numbness, tingl*, tingly, pins and needles, pins n needles, buzz*, buzzy, fizz*, fizzy, fizzing, static, asleep, gone to sleep, went to sleep, goes to sleep, fallen asleep, fell asleep, falls asleep, cotton wool, dentist, no feeling, lost feeling, no sensation, cant feel, couldnt feel, dont feel, crawl*, ants, bugs, spiders, prick*, prickl*, prickly, electric*, electric, zap*, zing*, lightning, shock, shocks, spark*, sparky, current, jolt*, hot water, warm water, cold water, trickl*, hot wire, barbed wire, live wire, lost all feeling, novocaine, anaesthetic, dead patch, dead area, wont wake up, fuzzy, pop rocks, champagne, soda, sherbet, nettle, nettles, stung by nettles, bees, belongs to someone else, not mine, isnt mine, someone elses, somebody elses, wooden, rubber, plastic, not there, isnt there, thick sock, sandpaper, electrocut*, eel, cold patch, sleeping, taser, tasered, firework, fireworks, gone dead, went dead, goes dead, feels dead, felt dead, dead to the touch, wearing a glove, in a glove, gloves on, like a glove, dead cold, like it was dead, gone numb, like its dead, like electricity",  # noqa: E501
    "BOLT": "lightning, lightning bolt, bolt, electric, electricity, electric shock, shock, zap*, zing*, jolt*, spark*, current, hot water, hot wire, wire, shoot*, shot, burning line, line of fire, fire, fizz*, static, buzz*, trickle*, eel, electrocut*, taser, whip, streak, red hot, cattle prod, prod, hot knife, hot poker, laser",  # noqa: E501
    "DOWNLIMB": "down my arm, down the arm, down my leg, down the leg, down one leg, down one arm, back of my leg, back of the leg, back of my thigh, to my thumb, to my fingers, to my foot, to my toes, to heel, to the heel, to my heel, to my knee, to my calf, into my hand, into my foot, into my fingers, into my toes, into my arm, into my leg, into my calf, down to my, to my little finger, to my pinky, to my hand, to my ankle, to my elbow, both legs, both arms, down my right, down my left, up my arm, down my back, down my spine, all the way to",  # noqa: E501
    "WEAK": "weak, weakness, limp, floppy, no strength, no power, powerless, lost strength, lost power, lost all power, lost all strength, half as strong, half the strength, isnt firing, not firing, wont fire, switched off, switches off, shut down, shuts down, shut off, goes soft, gone soft, gave way, gives way, giving way, give way, folded, folds, buckle*, drag*, slap*, useless, dead weight, lame, wont respond, doesnt respond, not responding, isnt responding, wont listen, do what i, did what i, does what i, what i tell it, what i told it, what my brain, unresponsive, lazy, conked out, went on strike, on strike, paralys*, paralyz*, paralysed, flops, flopped, trips me, catches on, no push, no drive, wont work, stopped working, not working, isnt working, doesnt work, gives out, gave out, giving out, gone weak, went weak, wont switch on, wont turn on, missing in action, no grip, lost grip, lost my grip, delayed",  # noqa: E501
    "ONELIMB": "my arm, my left arm, my right arm, left arm, right arm, one arm, my leg, my left leg, my right leg, left leg, right leg, one leg, my foot, left foot, right foot, my hand, left hand, right hand, one hand, my thumb, my ankle, my wrist, left thigh, right thigh, left quad, right quad, my quad, left calf, right calf, left side, right side, one side, my knee, left knee, right knee, the arm, the leg, the foot, the hand, leg, arm, foot, hand, quad, calf, tricep, left tricep, right tricep, big toe, thumb, toes, fingers, left glute, right glute, shoulder, delt",  # noqa: E501
    "LETGO": "drop*, letting go, let go, lets go, spill*, fumbl*, knock over, slips out, slip out, slipping out, slipped out, falls out, fall out, falling out, fell out, slip through, slips through, slides out, flies out, opens, just opens",  # noqa: E501
    "THINGY": "cup, cups, mug, mugs, phone, keys, key, pen, fork, spoon, cutlery, plates, glass, glasses, kettle, jar, stuff, things, toothbrush, everything, coins, chopsticks, remote, bottle, pencil, my coffee, my tea, a plate",  # noqa: E501
    "REPEATED": "keep, keeps, kept, twice, three times, 3 times, all day, all the time, since, again, constantly, always, every, third time, second time, today, this week, cant stop, all morning, hand",  # noqa: E501
    "FINETASK": "button*, buttons, jar, a jar, jars, key, keys, kettle, tap, door handle, doorknob, pen, write, writing, zip, zips, lace*, shoelaces, texting, typing, coin, coins, lid, bottle top, toothbrush, chopsticks, cup, mug, signature, fork, jar lid, type, card, milk, teabag",  # noqa: E501
    "CANT": "cant, couldnt, cannot, can not, could not, not able to, unable to, wont, wouldnt, impossible, struggl*, trouble, hardly, barely, clumsy, clumsily, no longer, refuses to, refused to, refuse to, harder, hard to, difficult, not, doesnt, isnt, cant even, havent been able to, failed to, useless at, fail*, weird, like a toddler, like a child",  # noqa: E501
    "FOOTLIFT": "front of my foot, front of the foot, my toes up, toes up, lift my toes, raise my toes, lift my foot, raise my foot, pick my foot up, pick up my foot, my toe up, move my toes, wiggle my toes, wiggle my fingers, wiggle the toes, move my fingers, stand on tiptoe, stand on my toes, on tiptoes, tiptoes, tip toes, heel raise, big toe up",  # noqa: E501
    "FOOTSLAP": "foot slaps, foot drags, foot drops, foot flaps, toes drag, toe drags, toe catches, toes catch, foot catches, trip over my own foot, tripping over my foot, tripping over my own foot, tripping over my toes, leg drags, dragging my foot, dragging my leg, stub my toe, foot is slapping, foot flops, foot scuffs, scuffing my toe, scuffing my foot, foot feels dead, drag my foot, drag my leg",  # noqa: E501
    "GRIPGONE": "grip has gone, grip is gone, grips gone, grip gone, grip vanished, grips vanished, lost grip, lost my grip, no grip, grip has vanished, grip disappeared, grip is half, grip is nothing, grip failed, grip strength gone, cant grip, couldnt grip, grip is dead, lost the grip, grip is shot, grip",  # noqa: E501
    "ONESIDED": "one side, left hand, right hand, one hand, left side, right side, on the left, on the right, in my left, in my right, left arm, right arm, jar, cup, suddenly, all of a sudden, out of nowhere, kettle, on my left, on my right, vanished",  # noqa: E501
    "STRONGFATIGUE": "farmer*, carries, carry, dead hang, pull ups, after 3 sets, by the end, last set, last rep, on rep, burnout, finisher, amrap, deads, deadlifts, to failure, shrugs, straps",  # noqa: E501
    "COLD": "cold, winter, snow, ice, frozen, freezing, ice bath, chilly, plunge, vibration, motorbike, mower",  # noqa: E501
    "SATON": "slept on, sat on, sitting on, cross legged, crossed legs, lay on, train, flight, plane, sitting funny, kneeling, on the bus, toilet too long, on the toilet, leaning on it",  # noqa: E501
    # bladder
    "WET": "wet, soaked, leak*, pee*, piss*, weed, dribbl*, squirt*, spurt*, trickl*, puddle, damp",  # noqa: E501
    "OWN": "myself, pants, my pants, shorts, my shorts, leggings, my leggings, trousers, knickers, down my leg, down my legs, my leg, a bit, a little, bit of wee, bit of pee, undies, underwear, boxers, platform, on rep, last rep, deadlift, squat, squats, deadlifts, box jumps, skipping, rope",  # noqa: E501
    "NOTHING": "nothing, nothing happens, nothing comes, nothing came, not a drop, no stream, wont come, wont start, wont go, dribbles, dribble, push, strain*, cant start, couldnt start, cant begin, forever, drops only, few drops, blocked, stuck, wont empty, cant empty, not coming, trickle, weak stream, ten minutes, ages, no joy, without success, no luck, doesnt come, full but",  # noqa: E501
    "NOTFEEL": "cant feel, couldnt feel, dont feel, didnt feel, didnt even feel, no feeling, no idea, cant tell, couldnt tell, dont know when, dont know if, didnt know, without knowing, without feeling, without noticing, no warning, didnt notice, cant sense, no urge, lost the urge, no sensation, never felt it, unaware, not aware, before i knew, lost all sensation, lost feeling, lost sensation, stopped feeling, just came, numb",  # noqa: E501
    "CONTROL": "no control, lost control, losing control, cant control, couldnt control, cant hold, couldnt hold, couldnt hold it, cant hold it, incontinen*, incontinent, lose control, not in control, out of control, control is gone, wont hold",  # noqa: E501
    "DOWNTHERE": "down there, bladder, bowel, bowels, my water, my pee, my wee, wee, pee, water, down below, toilet, bum, bathroom, poo, going to the loo",  # noqa: E501
    "DEADISH": "numb, numbness, dead, no feeling, cant feel, couldnt feel, tingl*, pins and needles, dentist, anaesthetic, lost feeling, lost all feeling, lost sensation, lost all sensation, no sensation, asleep, gone to sleep, novocaine, cotton wool, isnt there, not there, someone elses, fuzzy, prickl*",  # noqa: E501
    # dark urine
    "BROWN": "brown, brownish, dark, darker, black, rust, rusty, red, reddish, pink, pinkish, blood, bloody, mahogany, conker, maroon, burgundy, copper, amber, orange, chestnut, bronze, crimson, ruby, tan, muddy, murky, tawny, auburn, brick, ochre, sepia",  # noqa: E501
    "DRINK": "tea, coffee, cola, coke, pepsi, dr pepper, gravy, treacle, stout, guinness, beer, ale, whisky, whiskey, wine, port, rose, soy sauce, soya sauce, beetroot juice, molasses, bourbon, maple syrup, syrup, chocolate, mud, toffee, caramel, espresso, cold brew, brew, root beer, iced tea, prune juice, iodine, rum, brandy, cherry, cherryade, vimto, ribena, marmite, bovril, balsamic, vinegar, worcester sauce, ketchup, sherry, teabag, tea bag, latte, americano, pond, canal, swamp, ditch, puddle, creosote, cranberry juice, cranberry, cider, rooibos, builders tea, builders brew, motor oil, engine oil, oil, tar, varnish, wood stain, peat, bog, beetroot, soda, irn bru, honey, cocoa, hot chocolate, mahogany, conker, rust, barbecue sauce, bbq sauce, blackcurrant, whisky barrels",  # noqa: E501
    "LIKE": "like, looks, look, looked, looking, colour, color, coloured, colored, shade, resembl*, could pass for, might as well be, same as, as dark as, hue, mistaken, more like, was basically, basically, is basically, turned into, turned to, gone to, was pure, straight, literally, colour of",  # noqa: E501
    "ATE": "beetroot salad, ate beetroot, eating beetroot, beetroot salads, borscht, beets, beet, vitamins, vitamin, b12, b vitamins, multivitamin, rhubarb, dye, tablets, supplement, supplements, pre workout, preworkout, berries, beetroot turned, asparagus, beetroot curry",  # noqa: E501
    # head
    "HIT": "hit*, bang*, smack*, whack*, knock*, clock*, crack*, bump*, clonk*, wallop*, smash*, bash*, thump*, clip*, bonk*, clatter*, clobber*, thwack*, bounc*, dink*, donk*, wallop, met, headbutt*, head butt*, nutted, nut*, struck, strike, caught, got me, whacked, landed on, fell on, came down on, dropped on, twatted, belted, conk*, crown*, split, gash*, cut, twonk*",  # noqa: E501
    "GYMTHING": "bar, barbell, plate, dumbbell, db, kettlebell, kb, rack, hook, j hook, jhook, rig, pin, cage, pulley, cable, handle, machine, bench, beam, door, cupboard, pull up bar, safety, weight, locker, shelf, ceiling, ball, collar, sandbag, upright, pole, ring, rings, landmine, stack, attachment, floor, box, clip, band, carabiner, wall, ground, stand, doorframe, step, stairs",  # noqa: E501
    "ME": "me, my, myself, i, im, ive, mine",  # noqa: E501
    "WALKEDINTO": "walked into, ran into, stood up into, bumped into, walked straight into, stood up under, came up under, stood up and hit",  # noqa: E501
    "HEADISH": "headache, head ache, head pain, migraine, head pains, pain in my head, pain in my skull, pain behind, behind my eye, behind one eye, behind my eyes, in my skull, in my head, inside my head, back of my skull, back of my head, head feels, head felt, skull feels, skull felt, my head, head",  # noqa: E501
    "BURST": "explod*, explosion, split, splitting, axe, thunderclap, boom, burst*, pop*, bomb, ice pick, icepick, ripped open, cracked open, blinding, like a switch, switched on, out of nowhere, out of the blue, instant, instantly, suddenly, sudden, worst, never had, like never before, flash of pain, like a hammer, hammer, sledgehammer, zero to, bang, gunshot, lightning, shot, stabbed, skewer, like a bullet, struck, spike through, nail through, drill, within seconds, in a second, came on, snapped, slammed, firework, firecracker, grenade, cleaver",  # noqa: E501
    "PAINY": "pain, headache, hurt*, ache, pressure, felt, feels, like, migraine, something, came",  # noqa: E501
    "LOPSIDED": "droop*, droopy, crooked, lopsided, slid, sliding, sagg*, saggy, sag, not moving, isnt moving, wont move, not moving right, doesnt move, numb, dropped, hanging, wonky, uneven, slack, fallen, asleep, melting, melted, slipped, one sided, only goes up, only moves, on one side, stuck, twisted, half",  # noqa: E501
    "GARBLED": "scrambled, slur*, slurred, jumbl*, jumbled, muddl*, mush, mushy, thick, garbled, nonsense, gibberish, wrong, backwards, drunk, mixed up, gobbledygook, cant find, couldnt find, cant get, coming out, came out, not coming, lost, tangled, blurred, in the wrong order, rubbish, alphabet soup, soup",  # noqa: E501
    "SLUR": "slur*, slurry, slurred",  # noqa: E501
    "CONFUSED": "confused, confus*, foggy, dazed, daz*, out of it, think straight, cant think, cant remember, dont remember, dont know where, dont know what day, forgot where, forgot what day, spaced, spaced out, spacey, muddled, concuss*, concussed, concussion, blank, memory, fuzzy, seeing double, double vision, two of everything, sick, nausea, nauseous, puked, puking, vomit*, threw up, thrown up, throwing up, lights hurt, light hurts, bright lights, ringing, sleepy, groggy, vacant, lost, which gym, what day, dizzy, headache, egg, lump, bump, stitches, bleed*, blood, bleeding, woozy, cant focus, not myself",  # noqa: E501
    "DOUBLE": "seeing double, see double, double vision, two of everything, seeing two, saw two of, two bars, two of the",  # noqa: E501
    "LOSTSELF": "where i am, where i was, what day it is, what year it is, my own name, my name, which gym, how i got here, my pin code",  # noqa: E501
    # injury
    "TORN": "pop*, snap*, tore, torn, tear, tearing, rip*, ping*, twang*, clunk*, crunch*, velcro, elastic, guitar string, rubber band, gunshot, slid out, slipped out, came out, out of joint, out of place, out of socket, out of its socket, dislocat*, sublux*, round the side, dent, gap, rolled up, bunched up, curled up, sticking out, sticking up, stuck out, poking out, poking through, wrong way, wrong direction, wrong angle, funny angle, weird angle, odd angle, bent right back, bent back, dangling, dangles, just hangs, hanging off, detach*, ruptur*, sever*, fractur*, broke, broken, crack*, shatter*, splinter*, gone purple, going purple, gone black, went bang, went twang, unzipp*, unzip*, zipper, pulled off, came off, came away, in half, creak*, knuckle cracking, dry twig, twig, celery, snapp*, crackl*, ripping, like a shot, popping, kicked me, been kicked, been shot, shot me, hit by a ball, inside out, step in it, lump of muscle, popeye, like a carrot, gave way with, blew out, pinging, popped out, popped off, went pop, off the bone, pointing the wrong way, out of line",  # noqa: E501
    "TEARING": "pop, popped, pops, snap, snapped, tore, torn, rip, ripped, ripping, ping, pinged, twang, twanged, clunk, clunked, let go, gave, shifted, crunch, crunched, broke, broken, crack, cracked, unzipped, slipped out, slid out, detached, ruptured, went bang, shattered, popping, moved, slipped, give, came out, came away, come out, come off, came off, went in, go in, went pop, went ping, go pop, went twang, went at the back, went behind",  # noqa: E501
    "NOISE": "heard, hear, sound, sounded, noise, audible, loud, whole gym heard, felt",  # noqa: E501
    "NOISY": "velcro, guitar string, rubber band, gunshot, elastic, twig, branch, celery, carrot, stick, popping candy, bang, crack, snap, pop, rip, crunch, tear, zip, breaking, knuckle, whip, whipcrack, shot, cracker, chicken bone, wet paper, sheet, paper, cloth, jeans, kicked me, kicked in, been kicked, been shot, bubble wrap, tearing, ripping",  # noqa: E501
    "FUNCTION": "walk, stand, weight, weight bear, put down, put it down, put my foot down, bend, bends, bending, straighten, straightens, lift it, lift my arm, lift my arms, lift the arm, raise, raise it, raise my, above my, above shoulder, above my waist, over my head, overhead, move it, move my, move the, use it, use my, use the, bear weight, rotate, turn it, get my arm, close my fist, make a fist, close my hand, twist it, put any weight, put weight, lift, unbend, stand on, push off, stand up",  # noqa: E501
    "HOP": "had to hop, hopping, hopped, hobbl*, limping, limp, limped, crutches, carried me, had to be carried, helped me to the car, carry me, on one leg, wheelchair, cant limp, couldnt drive, clutch, had to hop to",  # noqa: E501
    "FOOTDOWN": "put my foot down, put weight on, put any weight on, bear weight, weight bear, stand on it, walk on it, put my heel down, put the foot down, put it down, stand on my, walk on my, walk at all, stand up straight, straighten up",  # noqa: E501
    "SORENESS": "doms, sore, soreness, leg day, legday, pump, pumped, fried, cooked, smoked, tired, toast, jelly, haha, lol, hahaha, lmao, shaking, fatigue, fatigued, burned out, gassed, spent, knackered, wrecked, good burn, the burn, burnt out, trashed, 😂, destroyed, are dead, were dead, absolutely dead, dead tired",  # noqa: E501
    "PUMP": "pump, pumped, pumps, vascular, gains, growth, grew, mirror, photo, flex, flexing, haha, lol, sleeves are too small, doms from",  # noqa: E501
    "MASS": "bar, barbell, plate, plates, dumbbell, db, kettlebell, kb, weight, weights, 20, 25, 15, 10, 30, 40, 12, 16, 24, bench, rack, sled, stack, sandbag, stone, roller, pin, trolley, ball, bumper, log",  # noqa: E501
    "FELLON": "onto, on, on to, over, between, under",  # noqa: E501
    "CRUSHVERB": "drop*, roll*, fell, fallen, landed, land, came down, crush*, smash*, trap*, squash*, slam*, pinch*, caught, stuck, jammed, slip*, slid, hit, ran over, bounced",  # noqa: E501
    "CRUSHED": "crushed, smashed, trapped, squashed, black, purple, flat, broken, cant, wont, jammed, mangled, split, bleeding, swollen, pulp, throbbing, blue, nail, mashed",  # noqa: E501
    "FOOTHAND": "foot, toe, toes, feet, hand, finger, fingers, thumb, big toe, ankle, shin",  # noqa: E501
    # swelling
    "SIZE": "size of a, size of an, size of my, the size of, big as a, big as an, as big as, doubled, doubles, twice, bigger than the other, fatter than the other, thicker than the other, larger than the other, wider than the other, bigger than the left, bigger than the right, fatter than the left, fatter than the right, thicker than the left, thicker than the right, bigger than its, puff*, puffy, puffy looking, swell*, swoll*, swollen, swole up, ballooned, balloon*, blown up, blew up, come up like, came up like, coming up like, filled up, filled with, fill up, filling up, fluid, water balloon, squidgy, squishy, boggy, spongy, egg, plum, melon, coconut, grapefruit, tennis ball, golf ball, sausage, sausages, bread roll, boxing glove, marshmallow, doughy, tree trunk, like a pillow, like dough, like a melon, like an orange, like a balloon, like a ball, like a loaf, like a football, bulg*, bulge, inflat*, michelin, michelin man, ready to burst, about to burst, bowling ball, grown overnight, keeps getting bigger, getting bigger, getting fatter, gets bigger, larger than, clearly larger, visibly bigger, visibly thicker, way bigger, that big, all big, so big, big and blue, big and hot, twice as big, twice as thick, three times, rugby ball, potato, baseball, softball, cushion, bagel, doughnut, donut, hippo, elephant foot, elephant leg, clown, cantaloupe, bigger, fatter, chunky, chubby, cankle, cankles, blob, airbag, bouncy castle, water bed, waterbed, jelly on it, satsuma, aubergine, turnip, beach ball, puffer fish, pufferfish, plump, lump, double the other, double the size, double its, like a mango, like a lemon, like an avocado, like a peach, has doubled, double the left, double the right, bigger today, fatter today, thicker today",  # noqa: E501
    "TAUT": "shiny, taut, stretched, stretched skin, tight and hot, hot and tight, tight and shiny, shiny and tight, tight and warm, warm and tight, hot and red, red and hot, rock hard and hot, hot to touch, hot to the touch, its hot, leaves a dent, leaves a mark, leaves a dimple, dents when, pits when, pitting, finger mark, fat and hot, red and shiny, warm and, tense and hot",  # noqa: E501
    "FITS": "ring, rings, shoe, shoes, sock, socks, boot, boots, trainer, trainers, sleeve, watch, watch strap, slipper, slippers, jeans, trouser leg, glove, bracelet, knee sleeve, wedding ring, wedding band, lifter, lifters, sandal, strap",  # noqa: E501
    "NOFIT": "cant get, couldnt get, wont go, wont fit, doesnt fit, dont fit, wouldnt go, wouldnt fit, too tight, left a trench, left a dent, left a groove, left a mark, digs in, cutting in, wont come off, wont do up, cant do up, cut off, had to cut, stuck on, cant close, barely fits, trench, groove",  # noqa: E501
    "BONEGONE": "ankle bone, ankle bones, knuckles, kneecap, knee cap, my ankles, the bone, veins, tendons, shape, dimples, outline, contours",  # noqa: E501
    "NOTSEE": "cant see, couldnt see, disappeared, vanished, gone, no longer see, lost, where is, hidden, wheres my, cant find, cant make out",  # noqa: E501
    "HOT": "hot, warm, red, blue, tight, shiny, hard, purple, throbbing",  # noqa: E501
    "DAYSLATER": "days later, day later, next day, two days, 2 days, three days, 3 days, overnight, since, this morning, hours later, morning after, after a week, still, yesterday, woke up",  # noqa: E501
    "SOFA": "netflix, sofa, couch, bed, asleep, snoring",  # noqa: E501
    "KIT": "belt, sleeves, wraps, jeans, trousers, shirt, tshirt, t shirt, sleeve, costume, suit, bra, mask, jacket, waistband, chest strap, hr strap, hr belt, chest supported, chest press, chest day, chest fly, chest flys, chest flyes, chest workout, chest session, chest to, chest up, cat, dog, baby, toddler, kids, kitten, puppy, hairy, hair, tattoo, sunburn, sunburnt, acne, waxed, shaved, rash",  # noqa: E501
    "CHESTPUMP": "pump, pumped, doms, sore from, from flyes, from flys, from bench, from dips, from yesterday, from the bench, push ups, pec day, chest day, good sore, so sore, growing, stretch, stretched, contraction, mind muscle, mind to muscle, connection, touch and go, contract, swole",  # noqa: E501
    "NOTDOMS": "not doms, isnt doms, not the pump, not a pump, not muscle, not muscular, inside, its not doms",  # noqa: E501
    "CHRONIC": "as always, always, as usual, usual, for years, my whole life, normal, since forever, never hurts, crepitus, painless, doesnt hurt, like every session, clicky",  # noqa: E501
    "LAUGH": "laughing, laugh, laughed, giggling, from laughing, smell, stink, stinks, price, expensive, paint fumes, perfume, view, beauty",  # noqa: E501
    "DEFORM": "pointing the wrong way, wrong way, wrong direction, wrong angle, funny angle, weird angle, odd angle, sticking out, sticking up, stuck out, poking out, poking through, bent right back, dangling, dangles, just hangs, hanging off, out of socket, out of its socket, out of the socket, out of joint, out of place, dislocat*, sublux*, popped out, slid out, slipped out, came out, rolled up, bunched up, curled up, dent, has a gap, inside out, off the bone, detach*, ruptur*, in half, went round the side, unzipped, hangs there, where there shouldnt be, where it shouldnt be, sits lower, out of line, shattered, fractured, snapped, ripped off, tore off, pulled off, hollow where",  # noqa: E501
    "HOPPED": "had to hop, hop to the car, hopped to, hopped out, hopped off, carried me, had to be carried, carried out, crutches, hobbled out, hobbled home, limped out, limped home, limped to, wheelchair, helped me off, cant put weight through",  # noqa: E501
    "PRESSLIKE": "like a belt, like a strap, a belt being, like a seatbelt, like a seat belt, like a corset, like a band, strap being, being tightened, being wrapped, notch too, like a bra, ratchet",  # noqa: E501
    "LONGSIT": "flight, train, drive, on the bike, spin class, turbo, toilet too long, saddle too long, saddle sore, cold bench, hard bench, long ride, 2 hours on, bike seat",  # noqa: E501
    "DOMS": "doms, leg day, legday, squat day, glute day, hip thrust, hip thrusts",  # noqa: E501
    "THANKS": "thank, thanks, describe, express, happy, grateful, proud, song, lyrics, crossword, eat my words, password",  # noqa: E501
}

_PARTS: Final = "LEG|LOWJOINT|ARM|HAND"
FRAMES: Final[tuple[FrameRow, ...]] = (
    ("chest", "CHEST PRESS|WEIGH|HURT !CHESTPUMP|KIT", 7),
    ("chest", "CHEST PRESS|WEIGH|HURT NOTDOMS !KIT", 9),
    ("chest", "CHEST PRESSLIKE", 6),
    ("chest", "INDIGESTION EXERT|CHEST RELIEF|EXERT", 14),
    ("chest", "JAW LEFTARM|CHEST ARMACHE", 9),
    ("chest", "JAW ARMACHE EXERT", 10),
    ("chest", "LEFTARM ARMACHE EXERT RELIEF", 12),
    ("chest", "PRESS JAW|LEFTARM EXERT", 14),
    ("chest", "COLDSWEAT PRESS|WEIGH", 8),
    ("breath", "PUFF SMALLDEED !SETTLED|LAUGH", 10),
    ("breath?", "PUFF LONG !SETTLED|LAUGH", 10),
    ("breath", "BREATH UNABLE FULL|SMALLDEED !SETTLED|LAUGH|KIT", 7),
    ("breath", "BREATH STRAW !SETTLED|LAUGH", 6),
    ("breath", "BREATH LONG FULL|UNABLE !SETTLED|LAUGH", 9),
    ("breath", "SENTENCE UNABLE|BREATH|SMALLDEED", 8),
    ("breath", "THROAT CLOSE BREATH", 12),
    ("faint", "EYES GODARK !POWERCUT", 5),
    ("faint", "ROOM >TILT !POWERCUT", 4),
    ("faint", "ALLOFIT >DARK|TILT !POWERCUT", 4),
    ("faint?", "STARS SEE|ATDEED !SOFA", 5),
    ("faint", "HEAD >FLOATY", 3),
    ("faint", "FLOATY HEAD STANDUP", 6),
    ("faint", "SPELL", 1),
    ("faint", "FLOORED CAMETO ME !SATON", 10),
    ("faint", "LOST LOSTTIME ATDEED|THEDEED|ME", 8),
    ("faint", "NOMEMORY THEDEED", 5),
    ("faint", "GRABBED BEFOREFALL", 8),
    ("faint", "PALE SITLIE", 8),
    ("faint", "EARS MUFFLED EYES|SITLIE|PALE", 8),
    ("faint", "UNSTEADY STANDUP|HEAD", 7),
    ("faint", "LIGHTSOUT ATDEED !POWERCUT", 8),
    ("heart", "HEART ODDBEAT !EXCITED", 6),
    ("heart", "HEART FASTBEAT REST !EXCITED|SETTLED", 10),
    ("heart", "HEART FASTPULSE REST !SETTLED", 12),
    ("heart", "INCHEST BEASTIE !EXCITED|CHESTPUMP", 8),
    ("heart", "EARBEAT FASTBEAT REST !EXCITED|SETTLED", 9),
    ("heart", "BEATS ODDBEAT|FASTBEAT REST|HEART !EXCITED", 8),
    ("nerve", _PARTS + " NUMB !SATON|COLD|SORENESS|PUMP", 7),
    ("nerve", "BOLT DOWNLIMB !SORENESS|PUMP", 8),
    ("nerve", "ONELIMB WEAK !SORENESS|SATON|COLD", 6),
    ("nerve", "LETGO THINGY REPEATED", 7),
    ("nerve", "FINETASK CANT HAND|ONESIDED !SORENESS|COLD", 9),
    ("nerve", "FOOTLIFT CANT !SORENESS|COLD", 5),
    ("nerve", "FOOTSLAP", 1),
    ("nerve", "GRIPGONE ONESIDED !SORENESS|COLD|STRONGFATIGUE", 7),
    ("bladder", "SADDLE DEADISH !LONGSIT|DOMS", 7),
    ("bladder", "GO|BLADDER NOTHING ME !DOMS", 9),
    ("bladder", "GO|BLADDER UNABLE LONG|NOTHING|ME !DOMS", 6),
    ("bladder", "GO|BLADDER|WET NOTFEEL", 7),
    ("bladder", "WET OWN ME", 6),
    ("bladder", "POO PANTS ME", 7),
    ("bladder", "POO NOTFEEL", 14),
    ("bladder", "CONTROL DOWNTHERE", 5),
    ("dark-urine", "URINE|PASSED BROWN !ATE", 7),
    ("dark-urine", "URINE|PASSED LIKE DRINK !ATE", 9),
    ("head", "HIT >HEAD !THANKS", 5),
    ("head", "HEAD >HIT GYMTHING", 6),
    ("head", "GYMTHING HIT HEAD|FACE", 7),
    ("head", "WALKEDINTO GYMTHING HEAD|CONFUSED|FACE", 12),
    ("head", "HIT ME CONFUSED GYMTHING", 12),
    ("head", "HEADISH BURST PAINY", 9),
    ("head", "FACE LOPSIDED", 5),
    ("head", "ONEEYE LOPSIDED", 3),
    ("head", "SPEECH GARBLED !THANKS", 5),
    ("head", "SLUR ME", 4),
    ("head", "DOUBLE", 1),
    ("head", "CONFUSED LOSTSELF", 4),
    ("injury", _PARTS + "|BONE|BACK TORN NOISE|ME|SOMETHING !CHRONIC", 7),
    ("injury", _PARTS + "|BONE DEFORM !CHRONIC", 7),
    ("injury?", "HOPPED !SORENESS", 1),
    ("injury", "SOMETHING TEARING " + _PARTS + "|BACK|BONE", 7),
    ("injury", "NOISE NOISY " + _PARTS + "|BACK", 7),
    ("injury?", _PARTS + "|BONE CANT FUNCTION !SORENESS", 6),
    ("injury?", "CANT FOOTDOWN !SORENESS", 3),
    ("injury?", "HOP " + _PARTS + "|TORN|ME !SORENESS", 7),
    ("injury", "CRUSHVERB MASS FELLON FOOTHAND", 6),
    ("injury", "MASS FOOTHAND CRUSHED CRUSHVERB", 8),
    ("swelling", _PARTS + " SIZE !PUMP", 6),
    ("swelling", _PARTS + " TAUT !PUMP", 7),
    ("swelling", _PARTS + " TAUT DAYSLATER", 9),
    ("swelling", "FITS NOFIT " + _PARTS + "|SIZE !PUMP", 9),
    ("swelling", "NOTSEE BONEGONE", 4),
    ("swelling", _PARTS + " HOT DAYSLATER SIZE|TAUT|HOT", 9),
)
# fmt: on
