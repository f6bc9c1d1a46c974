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
    "LEG": (
        "leg, legs, thigh, quad, hamstring, hammy, calf, shin, achilles, lower leg, glute, hip, groin, thighs, "
        "calves, shins, quads, hamstrings, limb, bum to heel, bum, buttock, butt, ham, adductor, hips, glutes"
    ),
    "LOWJOINT": "knee, ankle, foot, feet, toe, toes, heel, kneecap, ankles, knees, instep, big toe, sole, soles",
    "ARM": (
        "arm, arms, forearm, bicep, biceps, tricep, triceps, upper arm, shoulder, delt, forearms, pec, lat, armpit, "
        "shoulders, neck, rotator, trap"
    ),
    "HAND": (
        "hand, hands, finger, fingers, thumb, pinky, pinkie, wrist, elbow, palm, knuckle, knuckles, fingertip, "
        "fingertips, thumbs, index finger, ring finger, little finger, wrists, elbows, paw"
    ),
    "BONE": "collarbone, collar bone, clavicle, bone, shinbone, rib, ribs, breastbone",
    "BACK": "back, spine, lower back",
    "SOMETHING": "something, summat, sth, somethin, somethings, something in, something inside",
    "LEFTARM": "left arm, arm and jaw, jaw and arm, arm and my jaw, left shoulder, down my arm, both arms and jaw",
    "JAW": "jaw, my jaw, teeth, throat and jaw",
    "CHEST": (
        "chest, breastbone, sternum, ribcage, rib cage, breast bone, chests, middle of me, centre of me, center of "
        "me, centre of me chest, across my front, across the front, over my heart, round my heart, around my heart, "
        "over the heart, near my heart, behind my ribs, under my ribs, under the ribs, my ribs, behind the ribs, deep "
        "inside, chest wall, where my heart is, left boob, left pec, left tit, my front, nipple, left nipple, left "
        "breast, up top, solar plexus, breast, between my nipples, chestal, thorax, round the chest"
    ),
    "INCHEST": (
        "in my chest, in the chest, in me chest, in my ribcage, in my ribs, behind my ribs, under my ribs, in there, "
        "chest, my ribcage, my throat, in my throat, under my shirt, in my neck, in my ears"
    ),
    "HEART": (
        "heart, hearts, heartbeat, heartbeats, heart beat, pulse, ticker, hr, heart rate, bpm, my heart, ticka, "
        "rhythm, beats"
    ),
    "EYES": "vision, eyes, eyesight, sight, my eyes, view, eye sight, peripheral",
    "ONEEYE": "eye, one eye, eyelid, eyelids, lid",
    "HEAD": (
        "head, skull, nut, bonce, temple, forehead, noggin, crown, brow, back of my head, back of the head, top of my "
        "head, scalp, heads, eyebrow, head first, swede, napper"
    ),
    "FACE": "face, smile, mouth, lip, lips, cheek, eyelid, side of my face, half my face, eyebrow, tongue",
    "BRUISE": "bruise, bruises, graze, scab, scar, tattoo, mole, scratch, rash, blister, callus, cut",
    "DENTISTLIKE": (
        "like after the dentist, like ive been to the dentist, like ive been at the dentist, like the dentist, like a "
        "dentist, like dentist, like novocaine, like anaesthetic, like the dentists, like an injection"
    ),
    "NUMBED": "minus, freezing, beta alanine, pre workout, preworkout, wind, windy, snow, snowing, balaclava, sunburn, sunburnt, make up, makeup",
    "SPEECH": "speech, words, talking, sentences, sentence, tongue, speaking, talk, speak",
    "ROOM": (
        "room, gym, floor, world, walls, wall, ceiling, ground, horizon, platform, mirrors, lights, mirror, bar, "
        "weights"
    ),
    "ALLOFIT": (
        "everything, it all, whole world, the world, whole gym, whole room, the room, the gym, things, all, it all "
        "went, whole gym went, gym went"
    ),
    "SADDLE": (
        "crotch, groin and bum, privates, private parts, bits, undercarriage, saddle, perineum, genitals, down there, "
        "down below, bum, backside, arse, butt cheeks, bum cheeks, inner thighs, where i sit, between my legs, "
        "between the legs, downstairs, bike saddle, seat, when i wipe, wipe, wiping, nethers, nether regions, taint, "
        "balls, behind, cheeks, back passage, rear end, round the back, lady bits, bits and bum, willy, penis, "
        "vagina, anus, bumhole, bum hole, arsehole, front bottom, between the cheeks, groin area, pelvic floor"
    ),
    "URINE": (
        "pee, wee, piss, urine, peed, peeing, weeing, pissing, pissed, urinate, urinating, a slash, number one, "
        "number ones, my water, pass water, passing water, a leak, tinkle, peepee, pees, a wazz, a jimmy, weed, "
        "passed water, water works, waterworks, widdle, my waters"
    ),
    "PASSED": (
        "i passed, when i go, when i went, came out of me, toilet bowl, the bowl, in the bowl, in the loo, the loo, "
        "the toilet, went to the loo, went to the toilet, urinal, first trip to the loo, comes out, came out, when i "
        "go to the loo, coming out, water coming out, waters coming out, its coming out, toilet water, the pan, loo "
        "water, the sample, sample pot, sample, toilet looks, toilet looked, bowl looks, bowl looked, bowl"
    ),
    "BLADDER": "bladder, bladders, bowel, bowels, my water, number two",
    "GO": (
        "pee, wee, piss, urinate, go for a wee, go for a pee, go to the toilet, go to the loo, go toilet, pass water, "
        "pass urine, empty my bladder, have a wee, have a pee, peeing, weeing, pissing, toilet, loo, urinal, pass "
        "anything, going to the toilet, bathroom, use the toilet, use the bathroom, use the loo, widdle, needing to "
        "go, need to go, needing the loo, needing the toilet, needing to pee, needing to wee, havent peed, havent "
        "weed, hasnt peed, peed since, to pee, to wee, start the stream, get the stream, stream going, start a "
        "stream, a stream, start my stream, get going at the toilet"
    ),
    "POO": (
        "poo, poop, shit, crap, soiled, messed, bowel, bowels, skid mark, skid marks, accident, accidents, soil, "
        "pooed, pooped, number two, crapped, shat, leaked, sharted, gone in my pants, gone in my shorts"
    ),
    "PANTS": (
        "pants, shorts, leggings, myself, trousers, knickers, undies, underwear, boxers, joggers, my leg, my legs, "
        "singlet, on the platform, on the floor"
    ),
    # what it feels like
    "PRESS": (
        "squeez*, squeeze, pressure, press*, tight, tighten*, tightness, tighter, tight band, band, belt, strap, "
        "clamp*, grip*, vice, vise, fist, squash*, crush*, constrict*, clench*, compress*, pulled together, closing "
        "in, caving in, bear hug, hug*, straitjacket, corset, cling*, too small, girdle, iron, rope, wrung, winch*, "
        "ratchet*, stitch*, constrictor, python, snake, nutcracker, hydraulic press, leaning on me, strapped, "
        "sandwich, garrotte, wrapped, straining, wetsuit, wet suit, sizes small, oppressive, oppress*, suffocat*, "
        "tightly, tensed, tension, stiff, armour, cage, plaster cast, bandage, shrink wrapped, saran wrap, cellophane"
    ),
    "WEIGH": (
        "heavy, heaviness, weight, lead weight, brick, bricks, anvil, stone, slab, boulder, concrete, sandbag, van, "
        "car, truck, lorry, elephant, hippo, horse, rhino, cow, stood on, sat on, sitting on, standing on, kneeling "
        "on, parked, plate on, load on, leaning on, pushing on, piano, fridge on, rock on, bag of sand, cement, lead, "
        "leaded, pressing, press*, bowling ball, barbell on, sumo wrestler, wrestler, person on, someone on, dumbbell "
        "on, fat bloke, tank, tractor, wardrobe, cupboard, washing machine, sofa on, paving slab, cannonball, "
        "sinking, full, fullness, swollen feeling"
    ),
    "HURT": (
        "pain, pains, painful, hurt*, ache, aches, aching, achy, ached, sore, burn*, stab*, stabby, stabbing, sharp, "
        "pinch*, pinchy, niggl*, niggle, twing*, twinge, throb*, knot, knotted, cramp*, jab*, dagger, knife, needle, "
        "needles, poker, dull, catch*, tug*, discomfort, uncomfortable, odd, weird, funny, strange, not right, isnt "
        "right, raw, tender, tweak*, spasm*, gnaw*, skewer, ember, embers, fire, hot"
    ),
    "INDIGESTION": "indigestion, heartburn, reflux, acid",
    "EXERT": (
        "exert*, uphill, up hill, sprint*, stair, stairs, push hard, run for, effort, rows, climb*, hills, hill, "
        "walk*, carry*, walk fast, jog*, run*, hurry, every set, each set, mow*"
    ),
    "RELIEF": "stop, stops, stopped, rest, rested, eases, goes off, goes away, sit down",
    "ARMACHE": "ache*, heavy, pain, hurt*, numb, dull, throb*, weird, dead, tingl*",
    "COLDSWEAT": "cold sweat, cold sweats, clammy",
    # breath
    "PUFF": (
        "like darth vader, like a pug, like a bulldog, like a walrus, like a steam train, like bellows, "
        "puff*, pant*, gasp*, gulp*, wheez*, wheeze, winded, out of breath, out of puff, breathless, huffing, sucking "
        "air, sucking wind, sucking in air, short of breath, breathing hard, breathing heavy, blowing hard, blowing "
        "like, heaving, gulping, gassed, hyperventilat*, no breath, lost my breath, runs out of breath, run out of "
        "breath, ran out of breath, choking, choking for air, starved of air, starving for air, hungry for air, air "
        "hunger, blowing, blown, sips, little sips, breathlessness, panting, fighting for air, chasing my breath, "
        "labouring, labored, laboured, wrecked and wheezing, ran out of air, run out of air, running out of air, out "
        "of air, short of air, no air, low on air, struggling for breath, struggling for air, chasing breath, hunting "
        "for air, begging for air"
    ),
    "BREATH": (
        "breath, breaths, breathe, breathing, lungs, lungful, oxygen, air, lung, breather, breathed, my wind, inhale, "
        "exhale, my wind back, wind back"
    ),
    "SMALLDEED": (
        "stair, stairs, stairwell, sock, socks, shoe, shoes, lace, laces, teeth, shower*, dressed, kettle, shopping, "
        "groceries, standing here, standing still, sitting, sat, lying, lie flat, lying flat, walk to, walking to, "
        "walked to, one set, 1 set, first set, single set, warm up, warmup, empty bar, just the bar, bed, car, "
        "letterbox, mailbox, the post, hoover*, driveway, corridor, tidying, washing up, water fountain, bathroom, to "
        "the loo, talking, on the phone, phone call, on the sofa, on the couch, at my desk, desk, resting, doing "
        "nothing, not doing anything, hair, nothing at all, bins, the bin, cooking, pillows, propped up, escalator, "
        "platform stairs, one flight, a flight, from the sofa, from nothing, for no reason, out of nowhere, one set "
        "of, just one set, thats not me, not like me, walking up, carrying, car park, up to my flat, up to the flat, "
        "to the door, the gate, parking lot, talk, chatting, eating, lunch, breakfast, changing room, locker room, to "
        "the bus, to the shop, making tea, making coffee, make the bed, feeding, ironing, cleaning, gardening, "
        "wheelie bin, trolley, holding the baby, playing with, walk, walked, stood, standing, sat down, sat in, sat "
        "here, warmup set, warm ups, woke up, since i woke, in bed, upstairs, laundry, basket, suitcase, bags, "
        "hoovering, mowing, pushing the pram, pram, tying, bending, speaking, reading aloud, singing, easy set, easy "
        "one, light set, warm up set"
    ),
    "LONG": (
        "minutes, mins, min, minutes later, mins later, still, since, ages, forever, quarter of an hour, half an "
        "hour, an hour, hours, all day, all night, all morning, all evening, long after, wont, hasnt, hours later, so "
        "long, longer, afterwards, longest time, way after, yet, never came back, all week, for days, days, keep, "
        "keeps"
    ),
    "UNABLE": (
        "cant, couldnt, cannot, can not, could not, not able to, unable to, wont, wouldnt, isnt, isnt going, doesnt, "
        "dont, didnt, hard to, struggl*, fight*, fought, fail*, no longer, cant even, never, not getting, barely, "
        "hardly, havent been able to, impossible, havent, hasnt, arent, trouble, difficult, difficulty, need to sit "
        "up to, hang onto, have to stop, had to stop, had to sit, refuses to, refused to, not, without"
    ),
    "FULL": (
        "fill, full, enough, properly, in, deep, catch, get, back, settle, let go, calm, normal, expand, slow, down, "
        "flat, finish, whole, come back, lying, going in, in properly, satisfying, a decent breath, proper, big "
        "enough, deep enough, to the bottom, past"
    ),
    "STRAW": (
        "through a straw, straw, like half, half of them, half full, shallow, short and fast, fast and short, rapid, "
        "accordion, mid sentence, mid word, between words, cut off, choking, underwater, drowning, thin air, "
        "altitude, wet cloth, pillow over, top of my lungs, top half, whistl*, rattl*, crackl*, crackly, longer to "
        "breathe, need to sit up, needing to sit up, sit up to breathe, took me longer, took longer, longer than "
        "usual, longer than it, slow to come back, sips, little sips, wont deepen, hitch*, catches, sticks, stuck, in "
        "bits, stutters, hard work, laboured, labored, heavy going, an effort, tight, short and shallow, too quick, "
        "too fast, wet, bubbly, burbl*, gurgl*, half the size, smaller, shrunk, shrunken, half capacity, not working, "
        "stopped halfway, full of, sticky, stuck halfway, satisfying, satisfy, yawn*, sigh*, like breathing, like "
        "trying to, like sucking, through a sock, through cloth, through a pillow, squeak*, wheez*, whistly, "
        "whistling, bottomed out, short, feels short, cut short, wont land, wont go deep, wont go down, half empty, "
        "half way, half a lung, one lung, with one lung, a quarter lung, half my lungs"
    ),
    "SENTENCE": (
        "finish a sentence, get a sentence out, get through a sentence, get a full sentence, say a full sentence, "
        "speak in full sentences, mid sentence, finish my sentence, full sentence, whole sentence, finish sentences, "
        "talk in full, word bits, word bursts, word chunks, words at a time, three word, two word, one word, few "
        "words at a time, talk in bits, speak in bits, only speak in, string a sentence, speak properly, talk "
        "properly"
    ),
    "THROAT": "throat, windpipe, airway",
    "CLOSE": "closing, close, closed, swelling, tight, tightening, narrow*",
    "SETTLED": (
        "recovered, came down quick, came down fast, settled quickly, settled fast, settled quick, and then fine, "
        "then i was fine, then fine, came back quick, in no time, within a minute, in a minute, after a minute, in "
        "30, normal stuff, thats the point, brilliant, great session, loved it, love it, as it should, expected, as "
        "expected"
    ),
    # faint
    "GODARK": (
        "dim, dimmed, dims, dimming, dark, darker, black, grey, greyed, gray, fuzzy, blurry, blurr*, blur, blurred, "
        "tunnel*, tunnel, narrow*, shrink*, shrank, shrunk, fade*, faded, fog, foggy, misty, white, spotty, speckl*, "
        "sparkl*, swim*, swam, went, gone, static, snowy, pinhole, keyhole, tube, curtain, closing in, closed in, "
        "cloud*, patchy, wavy, double, flicker*, zoom*, vignette, going, puls*, in and out, shimmer*, grainy, pixel*, "
        "pixelated, dissolv*, drain*, melt*, jumpy, milky, smear*, smeary, letterbox, pinprick, shut*, clos*, closed, "
        "coming back, came back, stars, lights, squiggles, squiggly, zigzags, zig zags, hazy, haze, snow, glitter, "
        "sparkles, like a tunnel, like an old telly"
    ),
    "DARK": (
        "grey, gray, black, dark, dim, dimmed, white, fuzzy, blurry, muffled, far away, distant, hazy, echoey, blank, "
        "purple, faded, woolly, quiet, silent, slow motion, sparkly, bright, underwater, under water, far off, echo, "
        "like a tunnel, like a dream, unreal, dreamy, in slow motion"
    ),
    "TILT": (
        "tilt*, spin*, spun, sway*, sideways, slow spin, lurch*, rotat*, revolv*, swirl*, swim, swam, swimming, like "
        "a boat, on a boat, ship, roundabout, merry go round, carousel, moved under, came up, rushed up, wobbled, "
        "turning, tumble dryer, rock*, waltz*, wavy, wobbly, swaying, was moving, moving under, tipped, tipping, "
        "going round, goes round, went round, round and round, on its side, slope, drop away, dropped away, fell "
        "away, falling away, drifted, moved like, like jelly, like a wave, drift*, drift away, float away, floated "
        "off, fade out, melted, rippled, ripple*, pull away, pulled away"
    ),
    "STARS": (
        "stars, sparkles, sparkly, spots, dots, fireflies, twinkles, twinkly, glitter, floaters, snow, flashing "
        "lights, little lights, sparks, fairy lights, confetti"
    ),
    "SEE": (
        "see, saw, seeing, seen, vision, eyes, sight, everywhere, all over, in front of me, dancing, then stars, had "
        "stars, got stars"
    ),
    "FLOATY": (
        "floaty, float*, swimmy, light, woozy, spin*, spun, fuzzy, helium, balloon, far away, wobbly, swim*, empty, "
        "airy, giddy, not attached, cotton wool, drifting, rush, whirl*, swirl*, whoosh*, vacant, carousel, off my "
        "shoulders, roundabout, went funny, gone funny"
    ),
    "SPELL": (
        "took a turn, took a bad turn, had a turn, bad turn, funny do, funny moment, took bad, took queer, taken bad, taken queer, dizzy spell, whirlies, the whirlies, funny turn, the spins, fainty, faint spell, funny spell, head rush, headrush, head "
        "rushes, brown out, browned out, brownout, swooned, swoon, nearly went over, almost went over, nearly "
        "dropped, almost dropped, bed spins, about to keel, wooziness, giddiness, lightheadness, unconscious, knocked "
        "out, sparked out, spark out, lost the room, swimmy headed, light in the head, not with it for a, timbered, "
        "keel over, keeled, seeing double stars, went under, going under, sea legs, like being drunk, feel drunk, "
        "felt drunk, nearly hit the deck, almost hit the deck, nearly hit the floor, almost hit the floor, tunnel "
        "like, all tunnel, went tunnel, tunnelled, tunnelling, tunneling, tunneled, presyncope, syncope, light "
        "headed, lightheaded, vasovagal, vagal, bit whoozy, whoozy, woosy, wuzzy, swirly, spinny, all spinny, spinny "
        "head, topsy turvy, drunk feeling, sozzled feeling, faintish, wobbly on my feet, wobbly when i, unsteady on "
        "my feet, legs like string, swam in front, everything swam"
    ),
    "CAMEOVER": "came over, come over, comes over, coming over, comin over, cum over, came all over",
    "QUEER": (
        "queer, funny, peculiar, strange, odd, weird, faint, giddy, hot, cold, clammy, dizzy, shaky, weak, swimmy, "
        "wobbly, light, floaty, unwell, poorly, bad, woozy, foggy, distant, sick, ill, trembly"
    ),
    "FLOORED": (
        "hit the deck, hit the floor, on the floor, on the deck, on the ground, went down like, dropped like, folded "
        "like, crumpled, keeled, fell over, face down, lowered onto, lowered to, looking up at, went over like, "
        "caught me, picked me up, hit the ground, went down, fell down, dropped to, on my back, sack of spuds, sack "
        "of potatoes, sack of, deckchair, deck chair, slid down the wall, kissed the floor, met the floor, toppled, "
        "on my knees, ended up on, woke up on, on the platform, on the mat, on the tiles, on the carpet, on the "
        "pavement, fanning me"
    ),
    "CAMETO": (
        "came to, came round, came around, woke up, next thing i know, next thing i knew, next thing, people over me, "
        "people standing over, faces over me, looking down at me, looking up at, caught me, had to catch me, nearly, "
        "almost, picked me up, lowered, dropped like, folded like, went down like, blinked, smelling salts, dont "
        "remember, sack of"
    ),
    "LOSTTIME": (
        "couple of seconds, few seconds, couple of secs, few secs, a second, a sec, couple seconds, bit of time, a "
        "moment, split second, some time, ten seconds, five seconds, the last bit, a minute, gap, a few moments, half "
        "a second, half a minute"
    ),
    "LOST": (
        "lost, missing, dont remember, cant remember, no memory, blank, blanked, gap, lights out, was out, went out, "
        "wasnt there, was gone, switched off, checked out, unplugged, pulled the plug, shut off, blacked, went away, "
        "left the building, was elsewhere"
    ),
    "NOMEMORY": (
        "dont remember, cant remember, no memory of, dont recall, cant recall, no recollection, no idea how i"
    ),
    "THEDEED": (
        "racking, the rack, finishing, putting it down, the last rep, last reps, the set, walking out, setting it "
        "down, the bar down, sitting down, got here, got home, driving home, how i got"
    ),
    "GRABBED": (
        "grab*, held onto, hold onto, hang on to, clung, lean on, leaned on, steadied, steady myself, sit before, sat "
        "before, had to sit, sat down quick, sat down fast, hold the rack, had to hold, kneel, knelt, lie down, sit "
        "down quick"
    ),
    "BEFOREFALL": (
        "before i fell, before i went, before i dropped, or id have gone, nearly fell, almost fell, legs went, so i "
        "didnt fall, to stay up, to stay upright, from falling, went wobbly, wobbled, knees went, legs turned, to "
        "keep from, balance, stop me falling, before i hit, all fuzzy, went fuzzy, world, tilted"
    ),
    "PALE": (
        "white as a sheet, white as a ghost, pale as a, went pale, went white, gone pale, gone white, turned white, "
        "went green, went grey, colour drained, color drained, all the blood left, blood drained, all clammy, hot and "
        "clammy, cold and clammy, cold sweat, lips went white, grey in the face, white in the face, white lips, blood "
        "left my head"
    ),
    "SITLIE": (
        "sit, sat, lie, lay, lowered, bench, floor, down, felt, sick, went, sweat, shaky, sound, weak, shaking, "
        "deads, deadlift, set"
    ),
    "EARS": "ears, hearing, sound, sounds, noise, music, voices, sounded, everything sounded, everyone sounded",
    "MUFFLED": (
        "muffled, far away, whoosh*, rushing, underwater, hollow, echoey, distant, faded, went quiet, went dull, "
        "dull, cut out"
    ),
    "STANDUP": (
        "stand up, stood up, standing up, get up, got up, getting up, bend over, bent over, sit up, sat up, off the "
        "floor, off the bench, between sets, turn my head, after the set, when i racked, rack it, racked it, rise, on "
        "rep, last rep, unrack*, when i stand, i stand, i stood, standing"
    ),
    "UNSTEADY": (
        "wobbly, wobble*, unsteady, off balance, drunk, tipsy, legless, stagger*, like a boat, sea legs, bambi, "
        "tipping over, like a newborn, weaving"
    ),
    "LIGHTSOUT": (
        "lights out, lights went, lights go, lights went off, out like a light, telly switched off, tv switched off, "
        "screen went, someone flipped the switch, someone hit the switch, someone turned the lights, someone turned "
        "the dimmer, dimmer switch, turned the lights down, switched the lights off, curtain came down, curtains "
        "closing, curtains closed, shutters came down, shutter came down, blinds came down"
    ),
    "ATDEED": (
        "at the top, top of, at the bottom, on rep, last rep, after the, for a second, for a sec, for a moment, in my "
        "eyes, over my eyes, on that, during, when i racked, mid rep, mid set, deadlift, squat, squats, deadlifts, "
        "press, there, bar, single, set, stood, rack, after that, triple, double, rep, after my"
    ),
    "POWERCUT": (
        "power cut, powercut, electricity, fuse, power went, generator, power back, blackout curtains, curtains are, "
        "telly, tv, screen, paint*, painted, lamp, bulb, janitor, closing time, storm, projector, cinema, theatre, "
        "stage, concert, mirror, camera, photo, curtains, tattoo, blackout, speaker, dj, video, class, classes, "
        "instructor, favourite, team, coffee, review, hotel, rating, uber, tickets, lineup, celebrities, football, "
        "bike class, wifi, website, app, cloud, clouds, night sky, tonight, telescope, meteor, meteor shower, "
        "stargazing, observatory, moon"
    ),
    # heart
    "ODDBEAT": (
        "trip*, stumble*, stutter*, skip*, skippy, miss, misses, missed, missing, flip*, flop*, floppy, backflip, "
        "backflips, somersault, somersaults, samba, jig, tap dance, tapdance, dance*, conga, salsa, tango, jazz, "
        "morse, morse code, drop a beat, dropped a beat, dropping beats, pause*, stop and start, stops and starts, "
        "irregular, all over the shop, all over the place, uneven, late, extra, early, hiccup*, jitter*, quiver*, "
        "tumble*, out of time, out of sync, out of rhythm, off beat, offbeat, jumpy, jump*, leap*, lurch*, kick*, "
        "flutter*, fluttery, wobble*, misfir*, misfire, backfir*, vibrat*, buzz*, trembl*, does its own thing, own "
        "thing, double beat, double tap, popcorn, forgets to, forgot a beat, forgot to beat, twitch*, cartwheel, "
        "cartwheels, somersaulting, roll*, swap*, squirm*, limp*, fish, bird, big thump, fast then, then nothing, "
        "then fast, nothing then, quick then slow, slow then quick, no pattern, no rhythm, polka, cha cha, bongo, "
        "bongos, like a bag of, double taps, metronome, stall*, catching up, catch up, hesitat*, syncopat*, stagger*, "
        "limping, glitch*, gallop rhythm, random, sporadic, erratic, bumpy, haywire, staccato, sputter*, splutter*, "
        "cough*, conked, palpitat*, off kilter, jiggle, jiggl*, shimmy, shiver*, spasm*, judder*, blip*, knock*, bump "
        "nothing, nothing bump, goes bump, thump nothing, beat nothing, long gap, ba dum, stops for, stopped for, "
        "slam*, restart*, starts again, start again, gone jazz, extra kick, extra thump, skipping rope, every few, "
        "every third, every fourth, every fifth, every so often, now and then, odd beat, odd rhythm, funny rhythm, "
        "weird rhythm, strange rhythm, wrong rhythm, not regular, not in time, isnt in time, isnt regular, isnt even, "
        "not even, blank*, drops out, dropped out, cut out, cuts out, triplets, syncop*, shuffle, shuffl*, gurgl*, "
        "bubbl*, sloshing, turn over, turned over, turns over, rolled over, rolls over, dips, freez*, froze"
    ),
    "FASTBEAT": (
        "race*, racing, gallop*, run*, sprint*, thud*, thump*, bang*, hammer*, pound*, clappers, fast, so fast, like "
        "a train, drum*, drum n bass, drum and bass, bass drum, techno, rave, took off, takes off, going mad, going "
        "mental, going nuts, going crazy, through the roof, sky high, speed*, sped, zoom*, spike*, beating out of, "
        "out of my chest, like a hummingbird, hummingbird, woodpecker, jackhammer, machine gun, sewing machine, fire "
        "alarm, overdrive, whirr*, revving, rev*, flat out, going like, like mad, hundred miles an hour, ten to the "
        "dozen, nineteen to the dozen, marathon, sprinting, up high, way up, high, jumped to, shot up, wont come "
        "down, wont drop, wont slow, wont calm, wont settle, loud, wild, bounce*, bounding, see my shirt moving, "
        "shirt moving, moving my shirt, see it beating, see it pumping, hear it, visible, 10 to the dozen, a mile a "
        "minute, mile a minute, going nineteen, hop*, skitter*, scamper*, gone wild, gone mad, gone mental, gone "
        "nuts, gone crazy, gone jazz, gone techno, set off, kicks off, kicked off, like a rabbit, rabbit, like a "
        "piston, piston, double time, double speed, turbo, full throttle, redlin*, red line, high gear, on overdrive"
    ),
    "BEASTIE": (
        "fish, bird, butterfly, butterflies, hummingbird, moth, frog, sparrow, flutter*, fluttery, flop*, bassline, "
        "jackhammer, woodpecker, popcorn, bongo, bongos, jelly, jellyfish, drum n bass, drum and bass, drum solo, "
        "drum roll, washing machine, motor, engine, rabbit, pigeon, wings, hamster, trapped, mouse, kangaroo, "
        "trampoline, tap dancing, trembl*, vibrat*, quiver*, phone on vibrate, jiggling, wriggl*, squirm*, flapping, "
        "flap*, fizzing, ping pong, pinball, tumble dryer, disco, somersault, somersaults, flipping, hopping, jumping"
    ),
    "EARBEAT": (
        "in my ears, in my neck, in my throat, through the pillow, in the pillow, through my shirt, in my temples, in "
        "my head, against my ribs, in my pillow, in the mattress, in my teeth, in my stomach, in my eyes, shaking the "
        "bed, shake the bed"
    ),
    "REST": (
        "sat, sitting, sit, seated, lying, lie, lay, bed, sofa, couch, desk, telly, tv, watching, resting, rested, "
        "rest, at rest, doing nothing, half an hour, hour, hours, all night, all day, tonight, last night, for no "
        "reason, out of nowhere, out of the blue, nowhere, on its own, by itself, havent even started, between sets, "
        "driving, bath, at work, in the car, reading, minutes later, mins later, ten minutes, 10 min, 10 mins, 20 "
        "min, 20 mins, 15 min, 15 mins, minutes, still, wont, randomly, random, just now, this morning, at night, "
        "night, dinner, eating, pillow, right now, chilling, settee, armchair, before i started, evening, asleep, "
        "middle of, woke, standing still, waiting, on the bus, on the train, meeting, cooking, woke me, wakes me, "
        "woke me up, at two, at three, at four, in the night, while i was, making, watered, washing, shopping, sat "
        "here, just sat, just sitting, lounging, suddenly, quietly, finished, ago, later, after training, afterwards, "
        "queue, in line, only in, only sat, only stood, just stood, in a chair, parked, on the tube, on the phone, "
        "coffee"
    ),
    "BEATS": "beats, beat, thump, thumps, thud, thuds",
    "EXCITED": (
        "nervous, nerves, excited, excitement, meet day, before the meet, competition, interview, exam, wedding, in "
        "love, date, crush, new pr, song, movie, film, match, news, proud, happy, price, goal, game, first day, "
        "butterflies in my stomach, opener, roller coaster, penalty, penalties, meet, nervous for, before my opener, "
        "when she, when he, when you, when they, when i saw, when i heard, asked me out, cute, gorgeous, handsome, "
        "smiled at"
    ),
    # nerve
    "NUMB": (
        "numb, numbness, tingl*, tingly, pins and needles, pins n needles, buzz*, buzzy, fizz*, fizzy, fizzing, "
        "static, gone to sleep, went to sleep, goes to sleep, fallen asleep, falls asleep, cotton wool, dentist, no "
        "feeling, lost feeling, no sensation, cant feel, couldnt feel, dont feel, crawl*, ants, bugs, spiders, "
        "prick*, prickl*, prickly, electric*, electric, zap*, zing*, lightning, shock, shocks, spark*, sparky, "
        "current, jolt*, hot water, warm water, cold water, trickl*, hot wire, barbed wire, live wire, lost all "
        "feeling, novocaine, anaesthetic, dead patch, dead area, wont wake up, pop rocks, champagne, soda, sherbet, "
        "nettle, nettles, stung by nettles, bees, belongs to someone else, not mine, isnt mine, someone elses, "
        "somebody elses, wooden, rubber, plastic, not there, isnt there, thick sock, sandpaper, electrocut*, eel, "
        "cold patch, taser, tasered, firework, fireworks, gone dead, went dead, goes dead, feels dead, felt dead, "
        "dead to the touch, wearing a glove, in a glove, gloves on, like a glove, dead cold, like it was dead, gone "
        "numb, like its dead, like electricity, covered in sand, gravel, wrapped in, made of wood, made of rubber, "
        "padded, cardboard, belongs to, thick skin, sunburnt inside, ghost, phantom, not attached, velvet, carpet, "
        "mitten, mittens, like gloves, wearing gloves, wearing socks, bubble wrap, foam, like foam, clingfilm, cling "
        "film, numbish, tickl*, anaesthetis*, anesthetiz*, numbed, deadened, pins in my, pins and, needles in my, "
        "tickling, wet feeling, water running, water trickling, cold water running, insects, something crawling, "
        "vibrat*, humming, hums, hum, electrical, volts, tens machine, tingle, sparkle, sparkles, sparkling, sparkly, "
        "burning cold, hot and numb, half numb, part numb, less feeling, no touch, reduced feeling, lack of feeling, "
        "funny feeling in, strange feeling in, blunted, velcroed, swollen feeling, wool, stuffed with, full of sand, "
        "full of cotton, full of needles, on a different body, a different body, not connected, switched off, feels "
        "fuzzy, feel fuzzy, felt fuzzy, gone fuzzy"
    ),
    "BOLT": (
        "lightning, lightning bolt, bolt, electric, electricity, electric shock, shock, zap*, zing*, jolt*, spark*, "
        "current, hot water, hot wire, wire, shoot*, shot, burning line, line of fire, fire, fizz*, static, buzz*, "
        "trickle*, eel, electrocut*, taser, whip, streak, red hot, cattle prod, prod, hot knife, hot poker, laser"
    ),
    "DOWNLIMB": (
        "down my arm, down the arm, down my leg, down the leg, down one leg, down one arm, back of my leg, back of "
        "the leg, back of my thigh, to my thumb, to my fingers, to my foot, to my toes, to heel, to the heel, to my "
        "heel, to my knee, to my calf, into my hand, into my foot, into my fingers, into my toes, into my arm, into "
        "my leg, into my calf, down to my, to my little finger, to my pinky, to my hand, to my ankle, to my elbow, "
        "both legs, both arms, down my right, down my left, up my arm, down my back, down my spine, all the way to"
    ),
    "WEAK": (
        "just drops, just dropped, drops when i, drops on its own, drops by itself, no force, not force, without force, lost force, force is gone, no strength in, without strength, weak, weakness, limp, floppy, no strength, no power, powerless, lost strength, lost power, lost all power, "
        "lost all strength, half as strong, half the strength, isnt firing, not firing, wont fire, switched off, "
        "switches off, shut down, shuts down, shut off, goes soft, gone soft, gave way, gives way, giving way, give "
        "way, folded, folds, buckle*, drag*, slap*, dead weight, lame, wont respond, doesnt respond, not responding, "
        "isnt responding, wont listen, do what i, did what i, does what i, what i tell it, what i told it, what my "
        "brain, unresponsive, lazy, conked out, went on strike, on strike, paralys*, paralyz*, paralysed, flops, "
        "flopped, trips me, catches on, no push, no drive, wont work, stopped working, not working, isnt working, "
        "doesnt work, gives out, gave out, giving out, gone weak, went weak, wont switch on, wont turn on, missing in "
        "action, no grip, lost grip, lost my grip, delayed, slow to open, slow to close, slow to respond, dont work, "
        "wont do, wont obey, doesnt obey, disobey*, wont cooperate, no oomph, got no oomph, nothing there, nothing in "
        "it, gone missing, heavy and slow, wont hold the, cant hold up, gone on holiday, gave up on, shaking "
        "uncontrollably, just dropped, sags, collaps*, crumpl*, given way, goes from under, goes out from under, went "
        "from under, went out from under, wont push, wont extend, wont contract, wont flex, doesnt fire, doesnt "
        "switch on, doesnt push, feels disconnected, disconnected, unplugged, dead on me"
    ),
    "ONELIMB": (
        "my arm, my left arm, my right arm, left arm, right arm, one arm, my leg, my left leg, my right leg, left "
        "leg, right leg, one leg, my foot, left foot, right foot, my hand, left hand, right hand, one hand, my thumb, "
        "my ankle, my wrist, left thigh, right thigh, left quad, right quad, my quad, left calf, right calf, left "
        "side, right side, one side, my knee, left knee, right knee, the arm, the leg, the foot, the hand, leg, arm, "
        "foot, hand, quad, calf, tricep, left tricep, right tricep, big toe, thumb, toes, fingers, left glute, right "
        "glute, shoulder, delt"
    ),
    "LETGO": (
        "drop*, letting go, let go, lets go, spill*, fumbl*, knock over, slips out, slip out, slipping out, slipped "
        "out, falls out, fall out, falling out, fell out, slip through, slips through, slides out, flies out, opens, "
        "just opens, falling from, fall from, falls from, fell from, falling, slipping from, slips from, slid from"
    ),
    "THINGY": (
        "cup, cups, mug, mugs, keys, key, pen, fork, spoon, cutlery, plates, glass, glasses, kettle, jar, stuff, "
        "things, toothbrush, everything, coins, chopsticks, remote, pencil, my coffee, my tea, a plate"
    ),
    "REPEATED": (
        "keep, keeps, kept, twice, three times, 3 times, all day, all the time, since, again, constantly, always, "
        "every, third time, second time, today, this week, cant stop, all morning, hand"
    ),
    "FINETASK": (
        "button*, buttons, jar, a jar, jars, key, keys, kettle, tap, door handle, doorknob, pen, write, writing, zip, "
        "zips, lace*, shoelaces, texting, typing, coin, coins, lid, bottle top, toothbrush, chopsticks, cup, mug, "
        "signature, fork, jar lid, type, card, milk, teabag"
    ),
    "CANT": (
        "cant, couldnt, cannot, can not, could not, not able to, unable to, wont, wouldnt, impossible, struggl*, "
        "trouble, hardly, barely, clumsy, clumsily, no longer, refuses to, refused to, refuse to, harder, hard to, "
        "difficult, not, doesnt, isnt, cant even, havent been able to, failed to, useless at, fail*, weird, like a "
        "toddler, like a child"
    ),
    "FOOTLIFT": (
        "front of my foot, front of the foot, my toes up, toes up, lift my toes, raise my toes, lift my foot, raise "
        "my foot, pick my foot up, pick up my foot, my toe up, move my toes, wiggle my toes, wiggle my fingers, "
        "wiggle the toes, move my fingers, stand on tiptoe, stand on my toes, on tiptoes, tiptoes, tip toes, heel "
        "raise, big toe up"
    ),
    "FOOTSLAP": (
        "foot slaps, foot drags, foot drops, foot flaps, toes drag, toe drags, toe catches, toes catch, foot catches, "
        "trip over my own foot, tripping over my foot, tripping over my own foot, tripping over my toes, leg drags, "
        "dragging my foot, dragging my leg, stub my toe, foot is slapping, foot flops, foot scuffs, scuffing my toe, "
        "scuffing my foot, foot feels dead, drag my foot, drag my leg"
    ),
    "GRIPGONE": (
        "grip has gone, grip is gone, grips gone, grip gone, grip vanished, grips vanished, lost grip, lost my grip, "
        "no grip, grip has vanished, grip disappeared, grip is half, grip is nothing, grip failed, grip strength "
        "gone, cant grip, couldnt grip, grip is dead, lost the grip, grip is shot, grip"
    ),
    "ONESIDED": (
        "one side, left hand, right hand, one hand, left side, right side, on the left, on the right, in my left, in "
        "my right, left arm, right arm, jar, cup, suddenly, all of a sudden, out of nowhere, kettle, on my left, on "
        "my right, vanished"
    ),
    "STRONGFATIGUE": (
        "farmer*, carries, carry, dead hang, pull ups, after 3 sets, by the end, last set, last rep, on rep, burnout, "
        "finisher, amrap, deads, deadlifts, to failure, shrugs, straps"
    ),
    "COLD": "cold, winter, snow, ice, frozen, freezing, ice bath, chilly, plunge, vibration, motorbike, mower",
    "SATON": (
        "slept on, sat on, sitting on, cross legged, crossed legs, lay on, train, flight, plane, sitting funny, "
        "kneeling, on the bus, toilet too long, on the toilet, leaning on it, while i sat, sat reading, fell asleep "
        "while, sitting weird, sitting on my foot, awkward position"
    ),
    # bladder
    "WET": "wet, soaked, leak*, pee*, piss*, weed, dribbl*, squirt*, spurt*, trickl*, puddle, damp",
    "OWN": (
        "myself, pants, my pants, shorts, my shorts, leggings, my leggings, trousers, knickers, down my leg, down my "
        "legs, my leg, a bit, a little, bit of wee, bit of pee, undies, underwear, boxers, platform, on rep, last "
        "rep, deadlift, squat, squats, deadlifts, box jumps, skipping, rope"
    ),
    "NOTHING": (
        "nothing, nothing happens, nothing comes, nothing came, not a drop, no stream, wont come, wont start, wont "
        "go, dribbles, dribble, push, strain*, cant start, couldnt start, cant begin, forever, drops only, few drops, "
        "blocked, stuck, wont empty, cant empty, not coming, trickle, weak stream, ten minutes, ages, no joy, without "
        "success, no luck, doesnt come, full but"
    ),
    "NOTFEEL": (
        "cant feel, couldnt feel, dont feel, didnt feel, didnt even feel, no feeling, no idea, cant tell, couldnt "
        "tell, dont know when, dont know if, didnt know, without knowing, without feeling, without noticing, no "
        "warning, didnt notice, cant sense, no urge, lost the urge, no sensation, never felt it, unaware, not aware, "
        "before i knew, lost all sensation, lost feeling, lost sensation, stopped feeling, just came, numb, dont "
        "notice, not notice, never notice, lost the feeling, lost the sense, no sense of, never felt a thing, never "
        "felt, feel it coming, felt nothing, no signal, cant tell if, cant tell when, without me, dont get the "
        "feeling, dont realise, didnt realise, didnt realize, dont feel it"
    ),
    "CONTROL": (
        "no control, lost control, losing control, cant control, couldnt control, cant hold, couldnt hold, couldnt "
        "hold it, cant hold it, incontinen*, incontinent, lose control, not in control, out of control, control is "
        "gone, wont hold, lost my bowels, lost my bladder, lost my water, lost bladder, lost bowel, lose my water, "
        "loses control, leaks out, just leaks, came out by itself, comes out by itself"
    ),
    "DOWNTHERE": (
        "down there, bladder, bowel, bowels, my water, my pee, my wee, wee, pee, water, down below, toilet, bum, "
        "bathroom, poo, going to the loo, my bowels, my bladder, on the bar"
    ),
    "DEADISH": (
        "numb, numbness, dead, no feeling, cant feel, couldnt feel, tingl*, pins and needles, dentist, anaesthetic, "
        "lost feeling, lost all feeling, lost sensation, lost all sensation, no sensation, asleep, gone to sleep, "
        "novocaine, cotton wool, isnt there, not there, someone elses, fuzzy, prickl*, anaesthetis*, anesthetiz*, "
        "anaesthetized, anesthetised, deadened, dead to the touch, numbed"
    ),
    # dark urine
    "BROWN": (
        "brown, brownish, dark, darker, black, rust, rusty, red, reddish, pink, pinkish, blood, bloody, mahogany, "
        "conker, maroon, burgundy, copper, amber, orange, chestnut, bronze, crimson, ruby, tan, muddy, murky, tawny, "
        "auburn, brick, ochre, sepia"
    ),
    "DRINK": (
        "tea, coffee, cola, coke, gravy, treacle, stout, beer, ale, whisky, whiskey, "
        "wine, port, rose, soy sauce, soya sauce, beetroot juice, molasses, bourbon, maple syrup, syrup, chocolate, "
        "mud, toffee, caramel, espresso, cold brew, brew, root beer, iced tea, prune juice, iodine, rum, brandy, "
        "cherry, cherryade, vimto, ribena, marmite, bovril, balsamic, vinegar, worcester sauce, ketchup, sherry, "
        "teabag, tea bag, latte, americano, pond, canal, swamp, ditch, puddle, creosote, cranberry juice, cranberry, "
        "cider, rooibos, builders tea, builders brew, motor oil, engine oil, oil, tar, varnish, wood stain, peat, "
        "bog, beetroot, soda, irn bru, honey, cocoa, hot chocolate, mahogany, conker, rust, barbecue sauce, bbq "
        "sauce, blackcurrant, whisky barrels, flat cola, strong tea, copper, liquid copper, pot of coffee, rust "
        "water, teak, blackberry, plum juice, red wine, merlot, apple juice concentrate, old blood, grape juice, "
        "tomato soup, tomato juice, borscht water, onion gravy, oxtail, dishwater, dirty water, dirty puddle, muddy "
        "puddle, licorice, liquorice, mulled wine, sangria, tamarind, fish sauce, prune, black coffee, dark ale, dark "
        "beer, bitter, lager gone wrong, pennies, penny, tobacco, swamp water, wood, walnut, chestnut, hazelnut, "
        "coconut shell, porter, a porter, dark rum, cuppa, stewed tea, tea bags, leather, leather belt, leather sofa, "
        "tan boots, brown bread, brown sauce, hp sauce, brick, terracotta, henna, walnut stain, teak oil, dark "
        "chocolate, pumpkin spice, cinnamon, tea leaves, dregs, sludge, soup, blood orange, cherry coke, "
        "cherry juice, raspberry, jam, port wine, malt, malt vinegar, bock, dunkel, irish stout, mead"
    ),
    "LIKE": (
        "like, looks, look, looked, looking, colour, color, coloured, colored, shade, resembl*, could pass for, might "
        "as well be, same as, as dark as, hue, mistaken, more like, was basically, basically, is basically, turned "
        "into, turned to, gone to, was pure, straight, literally, colour of, that was, comes out, came out, coming "
        "out, is like, was like, turned, gone, a bit like, pretty much, dipped, ish, bottled, bottle it, sell it as, "
        "passed for, went dark, hint of, might be, more of a, basically pure, well on the way to, leather"
    ),
    "ATE": (
        "beetroot salad, ate beetroot, eating beetroot, beetroot salads, borscht, beets, beet, vitamins, vitamin, "
        "b12, b vitamins, multivitamin, rhubarb, dye, tablets, supplement, supplements, pre workout, preworkout, "
        "berries, beetroot turned, asparagus, beetroot curry, creatine, tea please"
    ),
    # head
    "HIT": (
        "hit*, bang*, smack*, whack*, knock*, clock*, crack*, bump*, clonk*, wallop*, smash*, bash*, thump*, clip*, "
        "bonk*, clatter*, clobber*, thwack*, bounc*, dink*, donk*, wallop, met, headbutt*, head butt*, nutted, nut*, "
        "struck, strike, caught, got me, whacked, landed on, fell on, came down on, dropped on, twatted, belted, "
        "conk*, crown*, split, gash*, cut, twonk*, clout*, dong*, scon*, sconed, brained, ding*, took a, wore a, ate "
        "a, rapped, rap, jolted, cannoned, clang*, clink*, skull*, dunt*, head first into, face first into"
    ),
    "GYMTHING": (
        "bar, barbell, plate, dumbbell, db, kettlebell, kb, rack, hook, j hook, jhook, rig, pin, cage, pulley, cable, "
        "handle, machine, bench, beam, door, cupboard, pull up bar, safety, weight, locker, shelf, ceiling, ball, "
        "collar, sandbag, upright, pole, ring, rings, landmine, stack, attachment, floor, box, clip, band, carabiner, "
        "wall, ground, stand, doorframe, step, stairs, post, sled post, sled, dumbell, dumbells, dumbbells, plates, "
        "log, atlas stone, trap bar, cable attachment, squat rack, spotter arm, safeties, stopper"
    ),
    "ME": "me, my, myself, i, im, ive, mine",
    "WALKEDINTO": (
        "walked into, ran into, stood up into, bumped into, walked straight into, stood up under, came up under, "
        "stood up and hit"
    ),
    "HEADISH": (
        "headache, head ache, head pain, migraine, head pains, pain in my head, pain in my skull, pain behind, behind "
        "my eye, behind one eye, behind my eyes, in my skull, in my head, inside my head, back of my skull, back of "
        "my head, head feels, head felt, skull feels, skull felt, my head, head, through my skull, through my head, "
        "across my skull, through my temple, behind the eyes, base of my skull, side of my head, one side of my head, "
        "over my eye"
    ),
    "BURST": (
        "explod*, explosion, split, splitting, axe, thunderclap, boom, burst*, pop*, bomb, ice pick, icepick, ripped "
        "open, cracked open, blinding, like a switch, switched on, out of nowhere, out of the blue, instant, "
        "instantly, suddenly, sudden, worst, never had, like never before, flash of pain, like a hammer, hammer, "
        "sledgehammer, zero to, bang, gunshot, lightning, shot, stabbed, skewer, like a bullet, struck, spike "
        "through, nail through, drill, within seconds, in a second, came on, snapped, slammed, firework, firecracker, "
        "grenade, cleaver"
    ),
    "PAINY": "pain, headache, hurt*, ache, pressure, felt, feels, like, migraine, something, came",
    "LOPSIDED": (
        "droop*, droopy, crooked, lopsided, slid, sliding, sagg*, saggy, sag, not moving, isnt moving, wont move, not "
        "moving right, doesnt move, numb, dropped, hanging, wonky, uneven, slack, fallen, asleep, melting, melted, "
        "slipped, one sided, only goes up, only moves, on one side, stuck, twisted, half, wont lift, wont close, wont "
        "smile, wont go up, wont open, doesnt lift, not lifting, half asleep, half dead, hangs, hanging down, "
        "drooled, drool*, dribbl*, not level, gone south, sags, not matching, different from the other"
    ),
    "GARBLED": (
        "scrambled, slur*, slurred, jumbl*, jumbled, muddl*, mush, mushy, thick, garbled, nonsense, gibberish, wrong, "
        "backwards, drunk, mixed up, gobbledygook, cant find, couldnt find, cant get, coming out, came out, not "
        "coming, lost, tangled, blurred, in the wrong order, rubbish, alphabet soup, soup, wont come, wont come out, "
        "come out, comes out, dont come, not working, fumbled, slow, heavy, stuck, like im drunk, making no sense, "
        "makes no sense, dont make sense, word salad, salad"
    ),
    "SLUR": "slur*, slurry, slurred",
    "CONFUSED": (
        "confused, confus*, foggy, dazed, daz*, out of it, think straight, cant think, cant remember, dont remember, "
        "dont know where, dont know what day, forgot where, forgot what day, spaced, spaced out, spacey, muddled, "
        "concuss*, concussed, concussion, blank, memory, fuzzy, seeing double, double vision, two of everything, "
        "sick, nausea, nauseous, puked, puking, vomit*, threw up, thrown up, throwing up, lights hurt, light hurts, "
        "bright lights, ringing, sleepy, groggy, vacant, lost, which gym, what day, dizzy, headache, egg, lump, bump, "
        "stitches, bleed*, blood, bleeding, woozy, cant focus, not myself, silly, stupid, cross eyed, wobbly, stars, "
        "out cold, dopey, not right since"
    ),
    "DOUBLE": (
        "seeing double, see double, double vision, two of everything, seeing two of, seeing two bars, saw two bars, "
        "saw two of, see two of, there were two bars, two of the bar, two of him, two of her"
    ),
    "LOSTSELF": (
        "where i am, where i was, what day it is, what year it is, my own name, my name, which gym, how i got here, "
        "my pin code"
    ),
    # injury
    "TORN": (
        "pop*, snap*, tore, torn, tear, tearing, rip*, ping*, twang*, clunk*, crunch*, velcro, elastic, guitar "
        "string, rubber band, gunshot, slid out, slipped out, came out, out of joint, out of place, out of socket, "
        "out of its socket, dislocat*, sublux*, round the side, dent, gap, rolled up, bunched up, curled up, sticking "
        "out, sticking up, stuck out, poking out, poking through, wrong way, wrong direction, wrong angle, funny "
        "angle, weird angle, odd angle, bent right back, bent back, dangling, dangles, just hangs, hanging off, "
        "detach*, ruptur*, sever*, fractur*, broke, broken, crack*, shatter*, splinter*, gone purple, going purple, "
        "gone black, went bang, went twang, unzipp*, unzip*, zipper, pulled off, came off, came away, in half, "
        "creak*, knuckle cracking, dry twig, twig, celery, snapp*, crackl*, ripping, like a shot, popping, kicked me, "
        "been kicked, been shot, shot me, hit by a ball, inside out, step in it, lump of muscle, popeye, like a "
        "carrot, gave way with, blew out, pinging, popped out, popped off, went pop, off the bone, pointing the wrong "
        "way, out of line, exploded, burst, shredded, snapping, crackled"
    ),
    "DROPPEDIT": (
        "dropped it, dropped the bar, dropped them, dropped the weight, dropped the weights, dropped the dumbbell, "
        "dropped the dumbbells, dropped the db, dropped the dbs, dropped the kettlebell, dropped the kb, dropped the "
        "plate, dropped a plate, dropped a dumbbell, dropped a db, dropped my phone, dropped that, dropped one"
    ),
    "OFFGROUND": (
        "came off the bench, came off the floor, came off the ground, came off the pad, came off the seat, came off "
        "the platform, came off the deck, came off the mat, came off the bar, came off the step, came off the plate"
    ),
    "TEARING": (
        "pop, popped, pops, snap, snapped, tore, torn, rip, ripped, ripping, ping, pinged, twang, twanged, clunk, "
        "clunked, let go, gave, shifted, crunch, crunched, broke, broken, crack, cracked, unzipped, slipped out, slid "
        "out, detached, ruptured, went bang, shattered, popping, moved, slipped, give, came out, came away, come out, "
        "come off, came off, went in, go in, went pop, went ping, go pop, went twang, went at the back, went behind"
    ),
    "NOISE": "heard, hear, sound, sounded, noise, audible, loud, whole gym heard, felt",
    "NOISY": (
        "velcro, guitar string, rubber band, gunshot, elastic, twig, branch, celery, carrot, stick, popping candy, "
        "bang, crack, snap, pop, rip, crunch, tear, zip, breaking, knuckle, whip, whipcrack, shot, cracker, chicken "
        "bone, wet paper, sheet, paper, cloth, jeans, kicked me, kicked in, been kicked, been shot, bubble wrap, "
        "tearing, ripping"
    ),
    "FUNCTION": (
        "walk, stand, weight, weight bear, put down, put it down, put my foot down, bend, bends, bending, straighten, "
        "straightens, lift it, lift my arm, lift my arms, lift the arm, raise, raise it, raise my, above my, above "
        "shoulder, above my waist, over my head, overhead, move it, move my, move the, use it, use my, use the, bear "
        "weight, rotate, turn it, get my arm, close my fist, make a fist, close my hand, twist it, put any weight, "
        "put weight, lift, unbend, stand on, push off, stand up, past half, bear any, straighten past, straighten my, "
        "bend past, bend my, lift it higher, lift my arm higher, raise it higher, sit down on, get it above, get it "
        "overhead, hold it up, comb my hair, brush my hair, reach, reach behind, reach up, put my sock, get up the "
        "stairs"
    ),
    "HOP": (
        "had to hop, hopping, hopped, hobbl*, limping, limp, limped, crutches, carried me, had to be carried, helped "
        "me to the car, carry me, on one leg, wheelchair, cant limp, couldnt drive, clutch, had to hop to"
    ),
    "FOOTDOWN": (
        "put my foot down, put weight on, put any weight on, bear weight, weight bear, stand on it, walk on it, put "
        "my heel down, put the foot down, put it down, stand on my, walk on my, walk at all, stand up straight, "
        "straighten up"
    ),
    "SORENESS": (
        "doms, sore, soreness, leg day, legday, pump, pumped, fried, cooked, smoked, tired, toast, jelly, "
        "shaking, fatigue, fatigued, burned out, gassed, spent, knackered, wrecked, good burn, the "
        "burn, burnt out, trashed, destroyed, are dead, were dead, absolutely dead, dead tired"
    ),
    "PUMP": (
        "forearms blown up, forearms inflated, forearms are blown up, forearms are inflated, forearms were blown "
        "up, forearms were inflated, biceps blown up, biceps inflated, biceps are blown up, biceps are inflated, "
        "biceps were blown up, biceps were inflated, arms blown up, arms inflated, arms are blown up, arms are "
        "inflated, arms were blown up, arms were inflated, quads blown up, quads inflated, quads are blown up, "
        "quads are inflated, quads were blown up, quads were inflated, calves blown up, calves inflated, calves "
        "are blown up, calves are inflated, calves were blown up, calves were inflated, shoulders blown up, "
        "shoulders inflated, shoulders are blown up, shoulders are inflated, shoulders were blown up, shoulders "
        "were inflated, delts blown up, delts inflated, delts are blown up, delts are inflated, delts were blown "
        "up, delts were inflated, pecs blown up, pecs inflated, pecs are blown up, pecs are inflated, pecs were "
        "blown up, pecs were inflated, triceps blown up, triceps inflated, triceps are blown up, triceps are "
        "inflated, triceps were blown up, triceps were inflated, thighs blown up, thighs inflated, thighs are "
        "blown up, thighs are inflated, thighs were blown up, thighs were inflated, forearms blew up, forearms "
        "ballooned up, biceps blew up, biceps ballooned up, arms blew up, arms ballooned up, quads blew up, quads"
        " ballooned up, calves blew up, calves ballooned up, shoulders blew up, shoulders ballooned up, delts "
        "blew up, delts ballooned up, pecs blew up, pecs ballooned up, triceps blew up, triceps ballooned up, "
        "thighs blew up, thighs ballooned up, "
        "superset, supersets, drop set, dropset, drop sets, dropsets, love it, loving it, tri set, giant set, 21s, "
        "pump, pumped, pumps, vascular, gains, growth, grew, mirror, photo, flex, flexing, sleeves are too "
        "small, doms from, guys, lads, dreams, waist, jeans, shirt size, tape measure, bulk, bulking, measured, arm "
        "day, cm, blew up my, blew up from, blow up from, blow up my, blown up from, reppers, burnout, burnouts, myo "
        "reps, 20 reps, high reps"
    ),
    "MASS": (
        "bar, barbell, plate, plates, dumbbell, db, kettlebell, kb, weight, weights, 20, 25, 15, 10, 30, 40, 12, 16, "
        "24, bench, rack, sled, stack, sandbag, stone, roller, pin, trolley, ball, bumper, log"
    ),
    "FELLON": "onto, on, on to, over, between, under",
    "CRUSHVERB": (
        "drop*, roll*, fell, fallen, landed, land, came down, crush*, smash*, trap*, squash*, slam*, pinch*, caught, "
        "stuck, jammed, slip*, slid, hit, ran over, bounced"
    ),
    "CRUSHED": (
        "crushed, smashed, trapped, squashed, black, purple, flat, broken, cant, wont, jammed, mangled, split, "
        "bleeding, swollen, pulp, throbbing, blue, nail, mashed"
    ),
    "FOOTHAND": "foot, toe, toes, feet, hand, finger, fingers, thumb, big toe, ankle, shin",
    # swelling
    "SIZE": (
        "size of a, size of an, size of my, the size of, big as a, big as an, as big as, has doubled, have doubled, doubled in size, doubled up overnight, twice the, "
        "twice its, twice my, bigger than the other, fatter than the other, thicker than the other, larger than the "
        "other, wider than the other, bigger than the left, bigger than the right, fatter than the left, fatter than "
        "the right, thicker than the left, thicker than the right, bigger than its, puff*, puffy, puffy looking, "
        "swell*, swoll*, swollen, swole up, ballooned, balloon*, blown up, blew up, come up like, came up like, "
        "coming up like, filled up, filled with, fill up, filling up, fluid, water balloon, squidgy, squishy, boggy, "
        "spongy, egg, plum, melon, coconut, grapefruit, tennis ball, golf ball, sausage, sausages, bread roll, boxing "
        "glove, marshmallow, doughy, tree trunk, like a pillow, like dough, like a melon, like an orange, like a "
        "balloon, like a ball, like a loaf, like a football, bulg*, bulge, inflat*, michelin, michelin man, ready to "
        "burst, about to burst, bowling ball, grown overnight, keeps getting bigger, getting bigger, getting fatter, "
        "gets bigger, larger than, clearly larger, visibly bigger, visibly thicker, way bigger, that big, all big, so "
        "big, big and blue, big and hot, twice as big, twice as thick, three times, rugby ball, potato, baseball, "
        "softball, cushion, bagel, doughnut, donut, hippo, elephant foot, elephant leg, clown, cantaloupe, chunky, "
        "chubby, cankle, cankles, blob, airbag, bouncy castle, water bed, waterbed, jelly on it, satsuma, aubergine, "
        "turnip, beach ball, puffer fish, pufferfish, plump, lump, double the other, double the size, double its, "
        "like a mango, like a lemon, like an avocado, like a peach, has doubled, double the left, double the right, "
        "bigger today, fatter today, thicker today, massively, enormous, twice as fat, egg on, double what it was, "
        "like popeye, fat as a, as fat as, puffing up, bulbous, bloated, engorged, is huge, is massive, are huge and, "
        "gone huge, gone massive, is bigger, is fatter, bigger by the hour, fatter by the hour, got fatter, got fat, "
        "looks fat, gone fat, squashy, bag of, a bag on, sack of fluid, cushiony, jelly like, jellied, puffing, came "
        "up in a, come up in a, up in a lump, massive lump, big lump, huge lump, double size, size bigger, sizes "
        "bigger, up like a balloon, not going down"
    ),
    "TAUT": (
        "shiny, taut, stretched, stretched skin, tight and hot, hot and tight, tight and shiny, shiny and tight, "
        "tight and warm, warm and tight, hot and red, red and hot, rock hard and hot, hot to touch, hot to the touch, "
        "its hot, leaves a dent, leaves a mark, leaves a dimple, dents when, pits when, pitting, finger mark, fat and "
        "hot, red and shiny, warm and, tense and hot"
    ),
    "FITS": (
        "ring, rings, shoe, shoes, sock, socks, boot, boots, trainer, trainers, sleeve, watch, watch strap, slipper, "
        "slippers, glove, bracelet, knee sleeve, wedding ring, wedding band, lifter, lifters, sandal, strap"
    ),
    "NOFIT": (
        "cant get, couldnt get, wont go, wont fit, doesnt fit, dont fit, wouldnt go, wouldnt fit, too tight, left a "
        "trench, left a dent, left a groove, left a mark, digs in, cutting in, wont come off, wont do up, cant do up, "
        "cut off, had to cut, stuck on, cant close, barely fits, trench, groove"
    ),
    "BONEGONE": (
        "ankle bone, ankle bones, knuckles, kneecap, knee cap, my ankles, the bone, veins, tendons, shape, dimples, "
        "outline, contours"
    ),
    "NOTSEE": (
        "cant see, couldnt see, disappeared, vanished, gone, no longer see, lost, where is, hidden, wheres my, cant "
        "find, cant make out"
    ),
    "HOT": "hot, warm, red, blue, tight, shiny, hard, purple, throbbing",
    "DAYSLATER": (
        "days later, day later, next day, two days, 2 days, three days, 3 days, overnight, since, this morning, hours "
        "later, morning after, after a week, still, yesterday, woke up"
    ),
    "SOFA": "sofa, couch, bed, asleep, snoring",
    "KIT": (
        "plate on chest, plate on my chest, kg on chest, kg on my chest, dumbbell on chest, db on chest, dumbbell on my "
        "chest, db on my chest, plate held on, medball on, kg plate on, lb plate on, plate across, bar on chest, bar on my "
        "chest, bar to chest, bar touched, touched my chest, touched chest, "
        "belt, sleeves, wraps, jeans, trousers, shirt, tshirt, t shirt, sleeve, costume, suit, bra, mask, jacket, "
        "waistband, chest strap, hr strap, hr belt, chest supported, chest press, chest day, chest fly, chest flys, "
        "chest flyes, chest workout, chest session, chest to, chest up, cat, dog, baby, toddler, kids, kitten, puppy, "
        "hairy, hair, tattoo, sunburn, sunburnt, acne, waxed, shaved, rash, than my chest, to my chest, above my "
        "chest, off my chest, touch my chest, touches my chest, chest height, chest level, from my chest, chest "
        "machine, my chest hair, chest freezer, treasure"
    ),
    "CHESTPUMP": (
        "pump, pumped, doms, sore from, from flyes, from flys, from bench, from dips, from yesterday, from the bench, "
        "push ups, pec day, chest day, good sore, so sore, growing, stretch, stretched, contraction, mind muscle, "
        "mind to muscle, connection, on fire after, on fire from, on fire with, burning after flys, burning after flyes, touch and go, contract, swole"
    ),
    "NOTDOMS": (
        "not in a pump way, not a pump, not pump, not from the pump, not the good kind, not in a good way, not a good tight, not doms, isnt doms, not the pump, not a pump, not muscle, not muscular, inside, its not doms, doms "
        "probably, probably doms, doms maybe, maybe doms, prob doms, might be doms, could be doms, guess its doms, "
        "think its doms, assume doms, must be doms, doms i guess, doms or, doms i hope, hopefully doms, just doms "
        "right, probs doms, is that doms, is it doms"
    ),
    "CHRONIC": (
        "as always, always, as usual, usual, for years, my whole life, normal, since forever, never hurts, crepitus, "
        "painless, doesnt hurt, like every session, clicky, popped my knuckles, cracked my knuckles, cracking my "
        "knuckles, pop my knuckles, popped my ears, cracked my back, popped my back, crack my back, callus, calluses, "
        "callouses, callous, callus tear, blister, blisters, torn callus, skin, knuckles, nail polish, chalk"
    ),
    "LAUGH": (
        "laughing, laugh, laughed, giggling, from laughing, smell, stink, stinks, price, expensive, paint fumes, "
        "perfume, view, beauty"
    ),
    "DEFORM": (
        "pointing the wrong way, wrong way, wrong direction, wrong angle, funny angle, weird angle, odd angle, "
        "sticking out, sticking up, stuck out, poking out, poking through, bent right back, dangling, dangles, just "
        "hangs, hanging off, out of socket, out of its socket, out of the socket, out of joint, out of place, "
        "dislocat*, sublux*, popped out, slid out, slipped out, came out, rolled up, bunched up, curled up, dent, has "
        "a gap, inside out, off the bone, detach*, ruptur*, in half, went round the side, unzipped, hangs there, "
        "where there shouldnt be, where it shouldnt be, sits lower, out of line, shattered, fractured, snapped, "
        "ripped off, tore off, pulled off, hollow where, went out and, out and back, went one way, looks wrong, looks "
        "weird, looks odd, looks funny, looks different, looks deformed, not where it should, halfway up, bent like, "
        "bent the wrong, bends backwards, at ninety degrees, step in, lower than the other, higher than the other, "
        "isnt where, concave, caved in, bulge at, like a fork, ball of muscle, round the wrong side, facing the "
        "wrong, stuck halfway, wrong place, funny shape, different shape, weird shape, odd shape, wrong shape, new "
        "shape, strange shape, z shape, s shape, where it shouldnt, where they shouldnt, crater, divot, dip in, "
        "valley in, groove in, shouldnt bend, hole in it, gap in, balled up like, fell out of its socket, fell out of "
        "the socket, fell out, came off the bone, sits wrong, sitting wrong, two inches lower, higher up than, "
        "crooked now, is crooked, bent now, is bent, roller blind, like a blind, gone up like, rolled right up"
    ),
    "HOPPED": (
        "had to hop, hop to the car, hopped to, hopped out, hopped off, carried me, had to be carried, carried out, "
        "crutches, hobbled out, hobbled home, limped out, limped home, limped to, wheelchair, helped me off, cant put "
        "weight through"
    ),
    "PRESSLIKE": (
        "hand round, hand around, hands round, hands around, fist round, fist around, belt round, belt around, strap "
        "round, strap around, rope round, rope around, band round, band around, arms round, arms around, wrapped round, "
        "wrapped around, like a hand, squeezed by, gripped by, like a belt, like a strap, a belt being, like a seatbelt, like a seat belt, like a corset, like a band, "
        "strap being, being tightened, being wrapped, notch too, like a bra, ratchet, like my bra, bra strap is, like "
        "my bra strap"
    ),
    "LONGSIT": (
        "flight, train, drive, on the bike, spin class, turbo, toilet too long, saddle too long, saddle sore, cold "
        "bench, hard bench, long ride, 2 hours on, bike seat"
    ),
    "DOMS": "doms, leg day, legday, squat day, glute day, hip thrust, hip thrusts",
    "SIMILE": (
        "feels like, felt like, feel like, like its, like it was, like someone, like somebody, like something, like "
        "im, like i had, like theres, like there was, like being, as if, as though, sort of, kind of, like a, like "
        "an, almost like"
    ),
    "KEEPS": (
        "keeps, keep, been doing, doing, does a, does this, did a, does its, did its, did this, having a, having its, "
        "feels like, felt like, decided to, wants to, isnt beating, not beating right, wasnt right, feels wrong, "
        "feels off, feels odd, acting"
    ),
    "EFFORTS": (
        "after that, set, sets, sprint, sprints, finisher, workout, burpees, circuit, cardio, run, hill, "
        "row, sank, isnt in it, in it, training, sore, pr, happy, warm, full, love, melts"
    ),
    "STOPPED": (
        "had to stop, have to stop, need to stop, had to sit, have to sit, need to sit, had to pause, had to rest, "
        "have to rest, had to hang, have to hang, had to lean, stop halfway, stopped halfway, stop twice, had to "
        "kneel, need to rest, woke up, wake up, have to pause"
    ),
    "FORAIR": (
        "to breathe, for air, for breath, for a breath, to get my breath, to catch my breath, get my breath, for "
        "oxygen, to get air, to recover, my breath back"
    ),
    "BETWEEN": (
        "between sets, sprint, sprints, burpees, intervals, finisher, assault bike, amrap, metcon, emom, hiit, "
        "conditioning, bag work, sparring, race, 5k, 10k, 400s, 400m, hill reps"
    ),
    "NEARLY": (
        "nearly, almost, about to, close to, came close, thought i was, thought id, felt myself, started to, just "
        "about"
    ),
    "GOING": (
        "going, went over, go over, go down, going down, kissed the floor, hit the floor, hit the deck, kiss the "
        "floor, met the floor, dropped, drop, went out, pass out, passing out, keel over, topple, toppled, went down, "
        "fell over, collapse, collapsed, blacking out, lost it completely, timber, hit the ground, face planted, "
        "faceplanted, out cold"
    ),
    "WASOUT": (
        "i was out for, was out for, out for maybe, out for about, out for a few, was out cold, went out for, out for "
        "a couple, out for three, out for two, standing over me, stood over me, people over me, leaning over me, "
        "crouched over me, slapping my face, slapping my cheeks, splashing water on my face, felt myself going, felt "
        "myself go, felt myself slipping, felt myself drifting, feet up in the air, put my feet up, raised my legs, "
        "legs up on a bench, slow motion and, went into slow motion, turned into slow motion, fading out, faded out, "
        "drifted off for a, sat down by itself, woke up with my, see through, lil nap on, little nap on, nap on the "
        "platform, unplanned nap, short nap on the, whitey, a whitey, colour of milk, color of milk, held up by, hold "
        "me up, held me up, kept me upright, caught me before, caught me as, had to catch me, lost consciousness, "
        "lights came back, came back round, brought me round, splashed water, white as paper, white as milk, went "
        "translucent, drained of colour"
    ),
    "TOES": "toes, toe, big toe, front of my foot, foot, ankle",
    "NOLIFT": (
        "dont lift, wont lift, doesnt lift, wont come up, dont come up, doesnt come up, cant lift, wont pull up, not "
        "lifting, wont clear, dont clear, keeps catching, keep catching, keeps dragging, wont flex, wont point, wont "
        "move, dont move, wont wiggle"
    ),
    "WETBED": (
        "wet the bed, wet my bed, wet the mattress, peed the bed, pissed the bed, wet my pants, wet my shorts, wet "
        "myself, pissed myself, peed myself, weed myself, pooed myself, pooped myself, shat myself, crapped myself, "
        "soiled myself, messed myself, leak when i, leaking when i, pee leaks, pee leaked, leaked pee, leaked urine, "
        "leaking urine, wee leaked, leaked wee, incontinent, need a nappy, wearing a nappy, need a pad, no bladder "
        "control, no bowel control, in a wet bed, wet bed, wet sheets, woke up wet, bed was wet, bed wet, wet patch, "
        "lost my bowels, lost my bladder"
    ),
    "HURTJOINT": "knee, ankle, elbow, wrist, hand, foot, calf, shin, finger, thumb, toe, forearm, leg, arm",
    "LOOKSLIKE": (
        "looks like a, looks like an, looks like my, look like a, looking like a, resembles, is like a, has become a, "
        "turned into a, just a tube, just a, has no shape, no shape, lost its shape, shape of a, is full of, full of "
        "water, full of fluid, full of jelly, full of something, sloshing, sloshes, sloshy, squelch*, wobbles like, "
        "water in it, water on it, water on the"
    ),
    "NEWLOOK": (
        "looks like a new, looks like new, like a champ, like a pro, like a dream, pump, tattoo, gains, "
        "grandpa, grandma, machine, spring, rock, boss, charm, beast"
    ),
    "SWEATY": (
        "sweaty, sweat, chalk, lotion, cream, oily, greasy, slippery, wet, soapy, butter fingers, clumsy me, buttery"
    ),
    "DRUNK": (
        "beers, beer, pints, wine, drunk, vodka, gin, tequila, whisky, shots, hungover, hangover, party, pub, "
        "dentist, filling, novocaine, injection"
    ),
    "POURED": (
        "poured, tipped, emptied, dipped, dropped a teabag, spilled, rinsed, someone made, washed a brush, washed "
        "paintbrushes"
    ),
    "ANYLIKE": (
        "looks like, looked like, was like, colour of, the colour, color of, comes out like, came out like, coming "
        "out like, turned the, shade of, is more like, is like"
    ),
    "CLEARISH": (
        "clear, water, normal, pale, yellow, lemonade, racehorse, horse, crazy, mad, nothing, fine, every, hydrated, "
        "hydration, straw, neon, lemon, tap"
    ),
    "TOOK": "took, takes, copped, caught, wore, ate, got, get",
    "DISTAL": "finger, fingers, fingertips, thumb, toes, toe, pinky, ring finger, little finger, foot, feet, wrist",
    "TEMP": (
        "hot from cold, cold from hot, hot and cold, hot or cold, feel heat, feel the heat, feel the cold water, "
        "sharp from blunt, feel a pin, feel the pin, light touch, feel me touching, feel it when i touch, feel touch"
    ),
    "SAW": "saw, see, seeing",
    "BLANKNESS": "white, black, grey, gray, nothing, double, purple, red, a tunnel, darkness",
    "ASLEEP": (
        "asleep, fell asleep, falling asleep, falls asleep, fallen asleep, sleeping, gone to sleep, goes to sleep, "
        "went to sleep, going to sleep"
    ),
    "SLEPT": (
        "sleeping wrong, slept wrong, sleeping funny, slept funny, sleeping badly, slept badly, from sleeping, while "
        "sleeping, sleeping on, not sleeping, been sleeping, sleeping bag, sleeping well"
    ),
    "CUDDLING": "baby, toddler, cat, dog, kid, kids, son, daughter",
    "START": "start, to start, get started, get going, going, begin, flow, stream",
    "NOTHINGOUT": (
        "nothing comes out, nothing comes, nothing came out, nothing came, nothing happens, nothing happened, not a "
        "drop, only a dribble, only drops, only a trickle, wont come out, nothing will come, barely a trickle, just "
        "dribbles, just a dribble"
    ),
    "TRYGO": (
        "i go, try to go, trying to go, tried to go, go to the, the loo, the toilet, full, pee, wee, bladder, "
        "bathroom, urge, pushing, pushed"
    ),
    "HEARDIT": (
        "heard it rip, heard it tear, heard it go, heard it crack, heard it snap, heard it pop, felt it rip, felt it "
        "tear, felt it snap, felt it crack, felt it unzip, felt it come off, felt it come away, felt it pop, felt it "
        "give, felt it let go, felt it ping, felt it detach, felt the snap, felt the tear, felt the rip, heard the "
        "rip, heard the snap, heard the tear, something exploded, something burst, something ripped, something tore, "
        "something snapped, something shredded, something popped, something cracked, something went bang, something "
        "went crack, something went pop, felt a rip, felt a tear, heard a rip, heard a tear, big pop, loud crack, "
        "almighty crack, almighty pop, sickening, nasty crack, nasty pop, horrible crack, horrible pop, gunshot"
    ),
    "CLOTHES": (
        "shorts, trousers, leggings, jeans, sleeve, sleeves, belt, strap, straps, band, shirt, bench, bag, laces, "
        "glove, gloves, video, tape, suit, seam, wraps, rope, cable, film, movie, fridge, neighbour, outside, door, "
        "window, upstairs, street"
    ),
    "FEELSLIKE": (
        "feels like its, feels like theyre, feel like theyre, feels like im, feel like its, feels like it belongs, "
        "feels like it isnt, feels like it is, feel like they are, feels like someone elses, feels like its not, "
        "feels like i have, feels as if, feel as if, feels as though, feel as though"
    ),
    "RUNSOUT": (
        "runs out, just runs, running out of me, ran out of me, slips out, comes out when, comes out on, escapes, "
        "escaped, drips out, dripping when, leaks when, leaks out, dribbles out, seeps"
    ),
    "TRYING": (
        "trying to pee, trying to wee, trying to go, tried to pee, tried to wee, tried to go, try to pee, try to wee, "
        "trying to piss, wanting to pee, needing to pee"
    ),
    "THANKS": (
        "thank, thanks, describe, express, happy, grateful, proud, song, lyrics, crossword, eat my words, password"
    ),
}

SPOKEN: Final[Mapping[str, str]] = {
    "cannae": "cant", "cannot": "cant", "huvnae": "havent", "hasnae": "hasnt", "dinnae": "dont", "didnae": "didnt",
    "wasnae": "wasnt", "isnae": "isnt", "wouldnae": "wouldnt", "couldnae": "couldnt", "willnae": "wont", "wullnae": "wont",
    "havnae": "havent", "doesnae": "doesnt", "ma": "my", "mah": "my", "ah": "i", "deid": "dead", "heid": "head",
    "doon": "down", "oot": "out", "aw": "all", "wan": "one", "efter": "after", "tae": "to", "fae": "from", "nae": "no",
    "airm": "arm", "haun": "hand", "hert": "heart", "erse": "arse", "een": "eyes", "hauf": "half", "wi": "with", "o": "of",
    "coz": "because", "cos": "because", "cuz": "because", "feelin": "feeling", "tinglin": "tingling", "goin": "going",
    "racin": "racing", "poundin": "pounding", "swellin": "swelling", "breathin": "breathing", "cudnt": "couldnt",
    "wudnt": "wouldnt", "couldve": "could", "hurtin": "hurting", "spinnin": "spinning", "ankel": "ankle",
    "sumthing": "something", "somethin": "something", "summat": "something", "summink": "something", "noo": "now",
}
"""How some people write a word, and the word."""
JOINED: Final[Mapping[str, str]] = {
    "can": "cant", "could": "couldnt", "do": "dont", "does": "doesnt", "did": "didnt", "is": "isnt", "was": "wasnt",
    "has": "hasnt", "have": "havent", "will": "wont", "would": "wouldnt", "are": "arent", "were": "werent",
}
"""A word with the ``not`` that follows it."""

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
    ("chest?", "CHEST SIMILE !CHESTPUMP|KIT|SORENESS", 3),
    ("breath", "PUFF SMALLDEED !SETTLED|LAUGH", 10),
    ("breath?", "PUFF LONG !SETTLED|LAUGH", 10),
    ("breath", "BREATH UNABLE FULL|SMALLDEED !SETTLED|LAUGH|KIT", 7),
    ("breath", "BREATH STRAW !SETTLED|LAUGH", 6),
    ("breath?", "BREATH LONG FULL|UNABLE !SETTLED|LAUGH", 9),
    ("breath", "SENTENCE UNABLE|BREATH|SMALLDEED", 8),
    ("breath", "THROAT CLOSE BREATH", 12),
    ("breath", "STOPPED FORAIR !BETWEEN|SETTLED|LAUGH", 10),
    ("breath", "SENTENCE LONG|SMALLDEED", 10),
    ("faint", "EYES GODARK !POWERCUT", 5),
    ("faint", "ROOM >TILT !POWERCUT", 4),
    ("faint", "ALLOFIT >DARK|TILT !POWERCUT", 4),
    ("faint?", "STARS SEE|ATDEED !SOFA|POWERCUT", 5),
    ("faint", "HEAD >FLOATY", 3),
    ("faint", "FLOATY HEAD STANDUP", 6),
    ("faint", "SPELL !DROPPEDIT", 1),
    ("faint", "CAMEOVER >QUEER", 2),
    ("faint", "FLOORED CAMETO ME !SATON", 10),
    ("faint", "LOST LOSTTIME ATDEED|THEDEED|ME", 8),
    ("faint?", "NOMEMORY THEDEED", 5),
    ("faint", "GRABBED BEFOREFALL", 8),
    ("faint", "PALE SITLIE", 8),
    ("faint", "EARS MUFFLED EYES|SITLIE|PALE", 8),
    ("faint", "UNSTEADY STANDUP|HEAD", 7),
    ("faint", "LIGHTSOUT ATDEED !POWERCUT", 8),
    ("faint", "NEARLY GOING FLOORED|GRABBED|SITLIE|ATDEED|STANDUP !DROPPEDIT", 7),
    ("faint", "WASOUT !LAUGH", 1),
    ("faint?", "SAW >BLANKNESS ATDEED|STANDUP !POWERCUT", 6),
    ("heart", "HEART ODDBEAT !EXCITED", 6),
    ("heart", "HEART FASTBEAT REST !EXCITED|SETTLED", 10),
    ("heart", "HEART FASTPULSE REST !SETTLED", 12),
    ("heart", "INCHEST BEASTIE !EXCITED|CHESTPUMP", 8),
    ("heart", "EARBEAT FASTBEAT REST !EXCITED|SETTLED", 9),
    ("heart", "BEATS ODDBEAT|FASTBEAT REST|HEART !EXCITED", 8),
    ("heart", "HEART KEEPS !EXCITED|EFFORTS|SETTLED", 3),
    ("nerve", _PARTS + " NUMB !SATON|COLD|SORENESS|PUMP", 7),
    ("nerve", "BOLT DOWNLIMB !SORENESS|PUMP", 8),
    ("nerve", "ONELIMB WEAK !SORENESS|SATON|COLD", 6),
    ("nerve", "LETGO THINGY REPEATED !SWEATY", 7),
    ("nerve", "FINETASK CANT HAND|ONESIDED !SORENESS|COLD|SWEATY", 9),
    ("nerve", "FOOTLIFT CANT !SORENESS|COLD", 5),
    ("nerve", "FOOTSLAP", 1),
    ("nerve", "GRIPGONE ONESIDED !SORENESS|COLD|STRONGFATIGUE", 7),
    ("nerve", "TOES NOLIFT !SORENESS|COLD", 3),
    ("nerve", "DISTAL DEADISH !SATON|COLD|SORENESS|PUMP", 7),
    ("nerve", "TEMP CANT " + _PARTS, 6),
    ("nerve", _PARTS + " >ASLEEP !SATON|COLD|SORENESS|SOFA|CUDDLING|SLEPT", 5),
    ("nerve?", "DISTAL FEELSLIKE !SORENESS|COLD|NEWLOOK|PUMP", 2),
    ("bladder", "SADDLE DEADISH !LONGSIT|DOMS", 7),
    ("bladder", "GO|BLADDER NOTHING ME !DOMS", 9),
    ("bladder", "GO|BLADDER UNABLE LONG|NOTHING|ME !DOMS", 6),
    ("bladder", "GO|BLADDER|WET NOTFEEL", 7),
    ("bladder", "WET OWN ME", 6),
    ("bladder", "POO PANTS ME", 7),
    ("bladder", "POO NOTFEEL", 14),
    ("bladder", "CONTROL DOWNTHERE", 5),
    ("bladder", "BLADDER NOTHING|UNABLE", 7),
    ("bladder", "WET PANTS NOTFEEL", 12),
    ("bladder", "WETBED !LAUGH", 1),
    ("bladder", "URINE LONG|NOTHING START !DOMS", 7),
    ("bladder", "NOTHINGOUT TRYGO", 9),
    ("bladder", "URINE RUNSOUT", 4),
    ("bladder", "TRYING NOTHING|NOTHINGOUT|UNABLE", 8),
    ("dark-urine", "URINE|PASSED BROWN !ATE", 7),
    ("dark-urine", "URINE|PASSED LIKE DRINK !ATE", 9),
    ("dark-urine", "PASSED POURED !ATE", 6),
    ("dark-urine", "URINE >ANYLIKE !ATE|CLEARISH", 3),
    ("head", "HIT >HEAD !THANKS", 5),
    ("head", "HEAD >HIT GYMTHING", 6),
    ("head", "GYMTHING HIT HEAD|FACE", 7),
    ("head", "WALKEDINTO GYMTHING HEAD|CONFUSED|FACE", 12),
    ("head", "HIT ME CONFUSED GYMTHING", 12),
    ("head", "HEADISH BURST PAINY", 9),
    ("head", "FACE LOPSIDED !DRUNK", 5),
    ("head", "FACE DENTISTLIKE", 7),
    ("head", "FACE DEADISH !DRUNK|COLD|LAUGH|NUMBED", 6),
    ("head", "ONEEYE LOPSIDED", 3),
    ("head", "SPEECH GARBLED !THANKS|DRUNK", 5),
    ("head", "SLUR ME !DRUNK", 4),
    ("head", "DOUBLE", 1),
    ("head", "CONFUSED LOSTSELF", 4),
    ("head", "GYMTHING >HEAD HIT|SEE|CONFUSED", 5),
    ("head", "TOOK GYMTHING >HEAD", 5),
    ("head", "CRUSHVERB GYMTHING|MASS >HEAD", 8),
    ("injury", _PARTS + "|BONE|BACK TORN NOISE|ME|SOMETHING !CHRONIC|OFFGROUND", 7),
    ("injury", _PARTS + "|BONE DEFORM !CHRONIC|PUMP", 7),
    ("injury?", "HOPPED !SORENESS", 1),
    ("injury", "SOMETHING TEARING " + _PARTS + "|BACK|BONE", 7),
    ("injury", "NOISE NOISY " + _PARTS + "|BACK", 7),
    ("injury?", _PARTS + "|BONE CANT FUNCTION !SORENESS", 6),
    ("injury?", "CANT FOOTDOWN !SORENESS", 3),
    ("injury?", "HOP " + _PARTS + "|TORN|ME !SORENESS", 7),
    ("injury", "CRUSHVERB MASS FELLON FOOTHAND", 6),
    ("injury", "MASS FOOTHAND CRUSHED CRUSHVERB", 8),
    ("injury", "HEARDIT !CLOTHES|CHRONIC", 1),
    ("swelling", _PARTS + " SIZE !PUMP|BRUISE", 6),
    ("swelling", _PARTS + " TAUT !PUMP", 7),
    ("swelling", _PARTS + " TAUT DAYSLATER", 9),
    ("swelling", "FITS NOFIT " + _PARTS + "|SIZE !PUMP", 9),
    ("swelling", "NOTSEE BONEGONE", 4),
    ("swelling", _PARTS + " HOT DAYSLATER SIZE|TAUT|HOT", 9),
    ("swelling?", "HURTJOINT LOOKSLIKE !NEWLOOK", 3),
)
# fmt: on
