"""English, what the body says: parts, pains, and the signs that must stop training.

Source: common practice; the signs are those of the reading contract. Nothing here diagnoses.
"""

from typing import Final

Rows = tuple[tuple[str, object, str], ...]

ROWS: Final[Rows] = (
    ("PART", "shoulder", "shoulder, shoulders, rotator cuff, rotator, shoulder joint, shoulder blade, delt, delts"),
    ("PART", "lower-back", "lower back, low back, lumbar, back lower, lowerback"),
    ("PART", "upper-back", "upper back, mid back, thoracic, middle back, traps, trap"),
    ("PART", "back", "back, spine"),
    ("PART", "knee", "knee, knees, kneecap, kneecaps, patella, knee joint"),
    ("PART", "elbow", "elbow, elbows"),
    ("PART", "wrist", "wrist, wrists"),
    ("PART", "neck", "neck"),
    ("PART", "hip", "hip, hips, hip flexor, hip flexors"),
    ("PART", "groin", "groin, adductor, adductors"),
    ("PART", "ankle", "ankle, ankles"),
    ("PART", "foot", "foot, feet, heel, heels, arch, plantar"),
    ("PART", "toe", "toe, toes, big toe"),
    ("PART", "shin", "shin, shins"),
    ("PART", "calf", "calf, calves"),
    ("PART", "achilles", "achilles, achillies, achilles tendon"),
    ("PART", "hamstring", "hamstring, hamstrings, hammy, hammies, ham"),
    ("PART", "quad", "quad, quads, thigh, thighs"),
    ("PART", "glute", "glute, glutes"),
    ("PART", "bicep", "bicep, biceps, bicep tendon"),
    ("PART", "tricep", "tricep, triceps"),
    ("PART", "forearm", "forearm, forearms"),
    ("PART", "hand", "hand, hands"),
    ("PART", "finger", "finger, fingers"),
    ("PART", "thumb", "thumb, thumbs"),
    ("PART", "rib", "rib, ribs"),
    ("PART", "pec", "pec, pecs"),
    ("PART", "lat", "lat, lats"),
    ("PART", "abs", "abs, abdominals, core"),
    ("PART", "jaw", "jaw"),
    ("PART", "si-joint", "si joint, sij"),
    ("PART", "tailbone", "tailbone, coccyx"),
    ("LIMB", 0, "arm, arms, leg, legs, limb, limbs"),
    ("CHESTPART", 0, "chest, sternum, breastbone, ribcage"),
    ("HEADPART", 0, "head, skull, temple"),
    ("HEARTPART", 0, "heart, heartbeat, heart beat, pulse, heart rate"),
    ("FACE", 0, "face, mouth, speech, words, eyelid, smile"),
    (
        "PAIN",
        0,
        "pain, pains, painful, hurt, hurts, hurting, ache, aches, aching, achy, sharp, stabbing, stab, niggle, niggling, niggles, niggly, twinge, twinges, twinged, twingey, twingy, tweak, tweaked,"  # noqa: E501
        " grumbling, grumbled, grumbly, grumble, grumpy, cranky, playing up, played up, acting up, giving me grief, giving me trouble, bothering me, bothering, bugging me, bugging, irritated, irritating, tender, sore, stiff, stiffness, pinch, pinching, pinched, pinchy, flared up, flaring up, flare up, flared, unhappy, complaining, complained, twangy, angry, throbbing, throbs, throb, dodgy, ouch, ouchy, hurty, jabbing, burning pain, discomfort, uncomfortable, nagging, nag, sensitive, inflamed, clicking painfully, not happy, feels off, felt off, felt weird, feels weird, feels funny, felt funny, giving me gyp, giving me jip, gyp, jip, moaning, wonky, impingement, impinged, tendonitis, tendinitis, tendinopathy, strained, strain, pulled, jarred, jammed, whinging, not right, isnt right, not feeling right, feels wrong, felt wrong, barking, nipping, nippy, iffy, sprained, sprain, rolled, problem, trouble, issue, issues, discomfort, sharp pain, shooting pain down, killing me, aggravated, aggro, crunchy, tweaky, seized up, seized, locking up, catching, spasm, spasms, spasming, cramp pain, giving me hell, giving me bother, talking to me, barked, talking, off, tight, tightness, funny, pings, pinging, zings, swelling",
    ),  # noqa: E501
    (
        "SORENESS",
        0,
        "doms, sore from, muscle soreness, sore muscles, pump, pumped, fried, cooked, toast, smoked, dead, jelly, tired, fatigued, on fire, burning, destroyed, wrecked, jello, noodles, shot, spent, burn, burns, burnt, burned, trashed, knackered, heavy legs, soreness, still sore, sore today, sore after, from yesterday, good sore, sore but, sore as, super sore, so sore, sore still, a bit sore from, bit sore from, gone, blasted, obliterated, screaming, lit up, taxed, full of blood",
    ),  # noqa: E501
    ("LEVELWORD", 0, "out of, outta, / 10, level, pain level"),
    ("BOTH", 0, "both, both sides, bilateral"),
    # chest
    (
        "CHESTSIGN",
        0,
        "pressure, tight, tightness, tightening, tightened, pain, pains, painful, hurt, hurts, hurting, ache, aching, squeezing, squeeze, squeezed, heavy, heaviness, crushing, crushed, stabbing, sharp, burning, elephant, weight on, discomfort, constricted, constriction, gripping, twinge, twinges, clenching, clenched, squashed, vice, vise, band around, uncomfortable, odd, weird, funny, weight, sore inside, compressed, compressing, sitting on, closing in, tweaky, niggle, throbbing, feels off, stab, stabs, twinging, pinch, pinching, jabbing, stitch",
    ),  # noqa: E501
    (
        "ALARM",
        "chest",
        "angina, heart attack, chest pain, chest pains, chest tightness, chest pressure, tight chest, tight chested, pressure in my chest, pain in my chest, pain in chest, tightness in my chest, tightness in chest, pressure in chest, pressure on my chest, elephant on my chest, elephant sitting on my chest, elephant sat on my chest, pain down my left arm, pain down left arm, pain in my left arm and jaw, pain in my jaw and arm, pain behind my breastbone, behind my breastbone, behind the breastbone, behind my sternum, behind the sternum",
    ),  # noqa: E501
    (
        "ALARM",
        "breath",
        "cant catch my breath, couldnt catch my breath, cant get my breath back, cant get my breath, couldnt get my breath back, cant breathe, couldnt breathe, struggling to breathe, struggled to breathe, trouble breathing, hard to breathe, cant get enough air, short of breath at rest, still short of breath, breathless at rest, breathless just walking, gasping for air still, breathing wont settle, breath wont settle, breathing wont calm, breathlessness, wheezing, wheezy, difficulty breathing, difficult to breathe, cannot breathe, cant get air in, cant take a full breath, cant take a deep breath, couldnt take a deep breath, wont get my breath back, never got my breath back, unable to breathe, shortness of breath, breathing hasnt settled, still cant breathe, out of breath just sitting, cant seem to catch my breath, not getting my breath back, breath isnt coming back, breathing isnt settling, fighting for breath, fighting for air, not getting enough air, cant get a breath, couldnt get a breath, cant get a full breath, couldnt get enough air, still gasping, winded just, short of breath, breath hasnt come back, breathing wont come down, still havent got my breath back, havent got my breath back, havent caught my breath, still havent caught my breath, breath wont come back, breathless, out of breath climbing, out of breath walking, out of breath doing nothing, out of breath for no reason, out of breath from nothing, out of breath sitting",
    ),  # noqa: E501
    ("BREATHPART", 0, "breath, breathing, breathe, air, puffed, winded, panting, gasping"),
    (
        "WONTSETTLE",
        0,
        "wont settle, wont settle down, wont calm down, hasnt settled, still, wont slow down, wont stop, wont come down, not settling, isnt settling, 10 min later, 10 mins later, minutes later, mins later, after 10 min, at rest, for no reason, just sitting, sitting down, sitting still, sat down, lying down, just walking, doing nothing, while resting, ages later, wouldnt settle, hours later, an hour later, even sitting, between sets, out of nowhere, hasnt calmed down, wouldnt slow down, hasnt come down, wouldnt calm down, in bed, all day, all morning, keeps, since yesterday, since this morning, last night, on the sofa, on the couch, at my desk, randomly, all night, half an hour, minutes after, climbing stairs, up the stairs, a flight of stairs, one flight, walking to the car, walking to, out of proportion, longer than normal, more than usual, way more than usual, more than it should, than it should, than normal, way too easily, barely did anything, barely doing anything, during warmup, in the warm up, on the warm up, on warmups, even though i only, just from",
    ),  # noqa: E501
    # faint
    (
        "ALARM",
        "faint",
        "fainted, faint, fainting, nearly fainted, almost fainted, passed out, passing out, pass out, nearly passed out, almost passed out, blacked out, blacking out, black out, blackout, nearly blacked out, almost blacked out, greyed out, grayed out, grey out, dizzy, dizziness, dizzy spell, lightheaded, light headed, light headedness, lightheadedness, lightheadness, woozy, vision went black, vision went dark, vision went grey, vision going black, vision going dark, went dark, going dark, went black, seeing stars, saw stars, saw spots, seeing spots, saw black, room spinning, room was spinning, room spun, head spinning, head was spinning, tunnel vision, lost consciousness, collapsed, keeled over, came to on the floor, woke up on the floor, everything went black, everything went dark, lights went out, vision closed in, vision narrowed, black spots, world went dark, head rush, unsteady, giddy, wobbly head, swimmy, vertigo, nearly went down, blurry vision, vision blurred, vision went blurry, vision got blurry, vision went fuzzy, vision tunnelled, vision tunneled, vision faded, sight went, lost my vision, everything went white, everything went grey, everything spinning, everything was spinning, spinning, vision went, vision blurry, stars in my eyes, head went light, nearly keeled over, almost keeled over, blck out, vision is blurry, knocked me out cold, out cold, came over all funny, came over funny, swaying, spaced out and dizzy, saw sparkles, sparkles in my vision, eyes went dark, sight went dark, sight went black, edges went dark, edges of my vision, everything started going black, lost my sight",
    ),  # noqa: E501
    # heart
    (
        "HEARTSIGN",
        0,
        "racing, raced, race, fluttering, flutter, flutters, fluttered, skipping, skipped, skips, skip, pounding, pounds, palpitations, irregular, jumping, jumped, thumping, hammering, beats, doing flips, flip flop, flip flopping, flopping, missing beats, missed a beat, missed beats, erratic, all over the place, bounding, weird, funny, galloping, banging, fast, double beat, out of rhythm, stuttering, flipping, going mad, going crazy, going nuts, going mental, acting up, acting weird, acting funny, rhythm, uneven, 180, 190, 170, 160, 150, 140, 130, misfiring, stumbling, thudding, quivering, high, through the roof",
    ),  # noqa: E501
    (
        "ALARM",
        "heart",
        "palpitations, palpitation, heart palpitations, heart skipped a beat, heart skipped beats, heart skipping beats, heart skips beats, skipping beats, skipped beats, skipped a beat, extra beats, missed beats, missing beats, heart fluttering, heart flutters, heart fluttered, fluttering in my chest, flutter in my chest, flutters in my chest, heart flipping, heart flopping, arrhythmia, afib, irregular heartbeat, irregular heart beat, ectopics, racing heart at rest, tachycardia, fluttering heart, heart flutter, thumping in my chest, skips beats, skips a beat, heart is fluttering, chest is fluttering, chest fluttering",
    ),  # noqa: E501
    # nerve
    (
        "NERVESIGN",
        0,
        "numb, numbness, tingling, tingly, tingle, tingles, pins and needles, pins n needles, pins & needles, shooting pain, shooting pains, electric, electric shock, electric shocks, zap, zaps, zapping, shooting down, shoots down, shot down, weak, weakness, gone weak, went weak, lost strength, lost all strength, loss of strength, no strength, gave out, gives out, giving way, gave way, gives way, lost feeling, no feeling, cant feel, couldnt feel, dead arm, went dead, gone dead, asleep, fell asleep, drop foot, foot drop, radiating, radiates, radiated, shooting, burning down, pain down, fizzing, buzzing, lightning, cant grip, couldnt grip, dropping things, lost my grip strength, jolt, jolts, prickling, prickly, pinned needles, sciatica, travelling down, traveling down, running down, goes down, went limp, limp, zinger, zing, zings, stinger, went to sleep, gone to sleep, dead leg, no power, lost power, feels dead, felt dead, pain running down, pain shooting, pain going down, cant lift, couldnt lift my, cant feel my, cant move my, lost sensation, no sensation, sensation",
    ),  # noqa: E501
    (
        "ALARM",
        "nerve",
        "pins and needles, pins n needles, pins & needles, shooting pain, shooting pains, electric shock, electric shocks, sciatica, numbness, tingling, tingly, foot drop, drop foot, went numb, gone numb, going numb, goes numb, are numb, is numb, feels numb, felt numb, feel numb, cant feel my, couldnt feel my, nerve pain, pain shooting down, pain shot down, shoots down my leg, shooting down my leg, shooting down my arm, shot down my leg, pain down my leg, pain down the leg, pain down my arm, zaps down my leg, zap down my leg, zaps down, zap down, electric feeling, electric pain, stinger, numb, pain runs down my leg, pain running down my leg, pain radiating, radiates down, radiating down, radiating into, tingles, tingle, no feeling in, lost feeling in, lost the feeling in, lost strength in, no strength in, lost all strength in, zing down, zinging down, lightning down, dead arm, dead leg, grip just went, grip strength has gone, lost grip strength",
    ),  # noqa: E501
    # bladder
    (
        "ALARM",
        "bladder",
        "wet myself, pissed myself, peed myself, peed a bit, peed a little, leaked a bit, leaked urine, lost control of my bladder, lost bladder control, bladder control, cant pee, couldnt pee, cant urinate, unable to pee, unable to pass water, cant pass water, couldnt pass water, cant go to the toilet, lost control of my bowels, lost bowel control, bowel control, soiled myself, shat myself, shit myself, pooped myself, numb between my legs, numb between the legs, numb groin, groin is numb, saddle numbness, saddle is numb, numb saddle, numb crotch, crotch is numb, numb down below, numb down there, numbness down there, numbness between my legs, cant feel myself wipe, cant feel when i pee, leaking, incontinent, incontinence, peed my pants, bladder leaked, bladder leak, wee came out, wet my pants, leaked, cant wee, couldnt wee, bladder gave way, bladder let go, havent been able to pee, havent been able to wee, havent peed, not been able to pee, no control of my bladder, control of my bladder, control of my bowels, control my bladder, control my bowels, numb bum, bum is numb, perineum, numb undercarriage, undercarriage, numb privates, genitals, privates, numb backside, backside is numb, crapped myself, accident in my shorts, pee came out, peeing myself, bladder emptied, wet my shorts, poo came out, hold my pee, hold my wee, hold my bladder, unable to urinate, unable to wee, saddle area, cant hold my pee, havent passed water, trouble peeing, trouble passing water",
    ),  # noqa: E501
    # urine
    (
        "URINE",
        0,
        "pee, piss, urine, wee, peeing, pissing, weeing, peed, pissed, passed water, loo, toilet, urinating, weed, water",
    ),
    (
        "DARK",
        0,
        "brown, dark, cola, coke, tea, black, coffee, red, rust, rusty, blood, bloody, pink, tea coloured, tea colored, cola coloured, cola colored, like tea, like cola, like coke, amber, maroon, mahogany, dr pepper, guinness, stout, treacle, pepsi, root beer, iced tea, port, syrup, soy sauce, chocolate, molasses",
    ),  # noqa: E501
    (
        "ALARM",
        "dark-urine",
        "rhabdo, cola coloured pee, brown pee, dark pee, dark urine, brown urine, tea coloured urine, cola colored urine, rhabdomyolysis, blood in my pee, blood in my urine, blood in pee, peeing blood, pissing blood, peeing brown, pissing brown, peed brown, peeing cola, peeing tea",
    ),  # noqa: E501
    # head
    (
        "ALARM",
        "head",
        "worst headache, worst headache ever, sudden headache, splitting headache, thunderclap, thunderclap headache, exploding headache, headache came on suddenly, hit my head, banged my head, hit in the head, bar hit my head, smacked my head, cracked my head, bumped my head, whacked my head, knocked my head, concussion, concussed, slurring, slurred, slurring my words, words slurring, face drooping, face droop, face drooped, drooping, droopy face, face is drooping, confused and, im confused, feel confused, feeling confused, felt confused, dont know where i am, didnt know where i was, cant speak properly, words came out wrong, mouth drooping, exertional headache, explosive headache, killer headache, massive headache, blinding headache, pounding headache came, headache out of nowhere, headache mid set, plate hit my head, plate on my head, bar on my head, confusion, dropped a plate on my head, dropped the bar on my head, dropped on my head, landed on my head, fell and hit my head, head hit, clonked my head, clocked my head, clouted my head, slur, mixing up words, cant find words, words are jumbled, words jumbled, forgot where i was, face went numb, face is numb, half my face, one side of my face, eyelid drooping, speech went, speech is, speech was, headbutted, hit on the head, hit me on the head, bar to the head, dumbbell to the head, plate to the head, knock to the head, blow to the head, bang on the head, bump on the head, whack to the head, hit me in the head, smashed my head",
    ),  # noqa: E501
    (
        "HEADACHE",
        0,
        "headache, head ache, migraine, headaches, head pain, head hurts, head is pounding, head pounding, head splitting, pain in my head",
    ),
    (
        "SUDDEN",
        0,
        "sudden, suddenly, worst, out of nowhere, mid set, mid rep, during the set, on the last rep, exploded, exploding, thunderclap, instantly, never had, ever had, ever, came on, like being hit, like a hammer, like a thunderclap, bang, blinding, splitting, massive, intense, severe, back of my head, back of the head, came from nowhere, all of a sudden, explosive, terrible, horrendous, horrific, insane, excruciating, awful, brutal, unreal, when i strained, while lifting, while pressing, whilst, during, halfway through, at the top of the rep, straining, pounding, unbearable",
    ),  # noqa: E501
    # injury
    (
        "INJURYSIGN",
        0,
        "popped, pop, popping, snapped, snap, tore, tear, torn, ripped, ripping, dislocated, dislocation, popped out, came out of its socket, out of socket, broke, broken, fractured, fracture, ruptured, rupture, cracked, crack, crunch, gave a pop, twanged, twang, pinged, ping, something went, something gave, went bang, cant use, cant walk, cant lift, cant move, cant straighten, cant bend, cant bear weight, cant put weight, cant weight bear, useless, cant raise, cant stand on, bunched up, rolled up, hanging off, subluxed, sublux, went ping, slid out, slipped out, went crunch, a tearing, tearing, gone ping, deformed, sticking out, out of place, popped right out, cant close, cant make a fist, unable to walk, unable to move, unable to lift, unable to bear, cant walk on it, snapping, shredded, couldnt walk, couldnt move, couldnt stand up, cant stand, cant stand up, wont bend, wont move, wont straighten, wont take weight, wont work, bone, mangled, crushed, smashed, came out, came off, lump, locked",
    ),  # noqa: E501
    (
        "ALARM",
        "injury",
        "felt a pop, heard a pop, a loud pop, loud pop, felt something pop, something popped, something snapped, felt a snap, heard a snap, something tore, felt a tear, felt something tear, felt it tear, dislocated, came out of its socket, popped out of its socket, popped out of socket, popped out of the socket, out of its socket, tore my, ive torn, torn my, ripped my bicep, snapped my, ruptured, fractured, broke my arm, broke my wrist, broke my finger, broke my toe, broke my foot, broke my hand, broke my leg, broke my ankle, broken wrist, broken finger, broken toe, broken ankle, broken foot, broken collarbone, cant walk on it, cant put weight on it, cant put any weight on it, cant bear weight, cant use my arm, cant move my arm, cant lift my arm, cant move my leg, cant move my shoulder, cant raise my arm, cant straighten my, cant bend my, went pop, goes pop, something ripped, felt a rip, something went pop, something went bang, felt something give, felt something go, felt something rip, felt something snap, something gave way, sounded like a gunshot, heard a crack, felt a crack, popped out, cant move it, cant lift it, cant use it, subluxed, felt a popping, something went in my, felt it go, it just went pop, popped my, arm is useless, arm wont work, think its broken, think ive broken, think i broke, think i tore, think ive torn, felt a twang, shoulder came out, shoulder popped out, knee gave way, something went twang, something pinged, felt a ping, audible pop, audible crack, audible snap, dislocate, heard it pop, felt it pop, heard something pop, heard something snap, heard something tear, rip in my, tear in my, pop in my, snap in my, a pop, popped",
    ),  # noqa: E501
    (
        "CRUSHER",
        0,
        "dropped a plate on, dropped the plate on, dropped a dumbbell on, dropped a db on, dropped the bar on, dropped the dumbbell on, dropped a weight on",
    ),
    # swelling
    (
        "SWELL",
        0,
        "swollen, swelling, swelled, swells, swelled up, swollen up, blown up, ballooned, puffed up, puffy, blew up, balloon, ballooning, size of a, like a balloon, like a grapefruit, twice the size, double the size, like a melon, like an orange, come up like, came up like, twice its size, twice its normal size, huge, tennis ball, golf ball, egg, swole up, fat, doubled in size, bulging, ballooned up, inflated, fluid",
    ),  # noqa: E501
    (
        "JOKE",
        0,
        "from laughing, metaphorically, figuratively, jk, just kidding, joking, kidding, only joking, messing, in a good way, in the best way, sleep like a baby, on the couch, on the sofa, in bed, on my bed, asleep by, my ego, ego, my pride, the fridge, wallet, from cuteness, laughing, from boredom, of boredom, in front of the tv, watching tv, on the bed, netflix",
    ),  # noqa: E501
    (
        "LONGAGO",
        0,
        "years ago, year ago, months ago, last year, as a kid, when i was, in 2019, in 2020, in 2021, in 2022, in 2023, in 2024, healed, fully healed, long healed, back in, old injury, history of, used to, years back, ages ago, long ago, in school, in high school, in college, at school, at uni, decade ago, decades ago, in my twenties, in my 20s, all healed, recovered from, fully recovered, since surgery, post surgery, surgery, rehabbed, cleared by, once had, once upon, last summer, last winter, before covid, in january last, childhood, growing up, as a child, in my teens, cleared it, all clear, long time ago, month ago",
    ),  # noqa: E501
    (
        "WORRY",
        0,
        "worried, worry, scared, afraid, avoid, avoiding, prevent, risk, risk of, what if, in case, dont want to, dont wanna, without, never, anymore, any more, no longer, not anymore, stopped, cleared up, all gone, has gone, is gone, gone now, went away, settled now, better now, sorted, might, could, can cause, cause, causes, imagine, feels like it could, about to, gonna, going to, almost killed, would, signs of, symptoms of, people who, if i, if you, do people, can you, does it",
    ),  # noqa: E501
)

PLAIN: Final = frozenset(
    (
        "than them thing think this those threw thru thumb ticket tight tile till title told took tool tooth touch tower track trade trail train treat tree trick tried trip truck true trust truth"  # noqa: E501
        " wall want wash waste watch wave ways wear went were west what when where which while white whole whose wide wife wild wind wine wing wish wood word wore worn worse worst worth wrap"
        " about above actor again agent agree ahead alarm album alive allow alone along alter among angle apart apple april argue arise armor army aside asset avoid award aware"
        " baby ball bank base bath beach beat been beer bell best bike bill bird birth bite black blame blank blast bleed blend blind blood blow board boat bold bond book boot born boss both bottle bowl boys brain brand bread breed brick brief bring broad brown brush build bulk burn bush busy"  # noqa: E501
        " cake call calm came camp card care case cash cast cave cell chain chair chase cheap check cheek cheer chess chief child chose city claim clap class clay clear climb clock close cloth cloud coach coal coast coat code coin cold come cook cool cope copy cord core corn cost couch cough count court cover craft crash crazy cream crew crime crop crowd cruel cycle"  # noqa: E501
        " daily dance dark data date dawn days deal dear debt deck deep deny desk dial diet dirt dish does dose down draft drama draw dream dress dried drink drive drug drum duck dust duty"
        " each earn ease east easy edge else even ever evil exam exit fact fail fair fall fame fare farm fast fate fear feed feel fell felt file fill film find fine fire firm fish five flag flew flip flow folk fool form fort four free from fuel full fund gain game gate gave gear gene gift girl give glad goal goat goes gold golf gone grey grow gulf hair half hall hand hang happy harm hate have head hear heat heel held hell help here hero hide high hill hire hole home hope horn host hour huge hung hunt idea inch into iron item jack jane jean join joke jump jury just keen keep kept kick kill kind king kiss knee knew know lack lady laid lake lamp land lane last late lead leaf lean leap left lend less life lift like line link lion list live loan lock logo long look lord lose loss lost loud love luck lung made mail main make male mall many mark mask mass mate math meal mean meat meet melt menu mess milk mind mine miss mode mood moon more most move much must myth nail name navy near neck need nest news next nice nick nine none noon norm nose note okay once only onto open oral ours oven over pace pack page paid pain pair pale palm park part pass past path peak pick pile pill pink pipe plan play plot plug plus poem poet poll pond pool poor pope pork port pose post pour pray pure race rage rail rain rank rare rate read real rear rely rent rice rich ride ring riot rise risk road rock role roll roof room root rope rose rude ruin rule rush safe said sail sake sale salt same sand save seal seed seek seem seen self sell semi send sent ship shoe shop shot show shut sick side sign silk site size skin slip slow snow soap sofa soft soil sold sole solo some song soon sort soul soup spin spot star stay stem step stop such suit sure swim tail take tale talk tall tank tape task team tell tend tent term text"  # noqa: E501
        " bean beans blew bell belle bells crunchy cell creche deal deals dial dips drip drips rip lips tips chip chips shin skin spin chain china crawl cruel curly crush crash cramp rash trash trip strip"
        " back sack pack rack track beach peach bunch lunch punch branch brunch breach reach preach breech bleach bench's french trench wrench stench clench drench quench"
        " press stress dress bless guess mess less express impress progress pressure present president pressie depress"
        " squad squash square squeak squeal squid squint quad quads quit quite quiet quote"
        " grow throw show know snow crow brow low bow tow mow sow vow wow how now roll rose rope road roads roof room rooms root"
        " daddy lately early nearly dearly barely rarely yearly clearly cleaner cleaning cleanly clear lean leans lane learn"
        " flying flight flew fled flow flaw flame flip flop floss floor fluid flu flies"
        " cult cure cute cut cuts carl card cart care curb hurl girl pearl"
        " hinge fringe binge cringe syringe plunge lounge lung lungs lunch sponge"
        " shrub shrimp shrink shrine brug drug thug rug hug mug bug"
        " dump bump lump pump jump trump stump thump grump hump"
        " plank's plant plants plane planes planet plain plan plans plate prank blank flank thank thanks drank frank crank"
        " pulled pulling pulls puller bull full fuller dull null hull lull"
        " swing's sting string spring sing wing wings king ring things thing bring cling fling"
        " calf's half call calls calm calmed wolf golf gulf self shelf"
        " hotel hollow follow fellow yellow mellow holy hello hallow"
        " hammer's summer simmer number slumber dinner winner sinner thinner manner"
        " other others another mother brother bother father rather gather either neither whether weather together"
        " sunny funny money honey bunny monday sunday someday somehow sometimes something anything nothing everything everyone anyone someone nobody"
        " house horse hours hour home hopes hope hoped hoping coping copied"
        " birthday christmas easter summer winter autumn spring week weeks weekend month months years year morning evening night nights afternoon"
        " great grate greet green grey gray grape graph grass grasp gram grams grab grabs"
        " sleep sleepy slept sheep sheet shirt short shorts shirts shoes shop shops"
        " water waiter later latte matter better butter letter litter litre liter twitter"
        " phone photo photos post posts video videos link links app apps text texts mail mails email"
        " paint point points print pint pants pant part parts party parties"
        " couple people purple simple sample example apple maple"
        " clever never ever fever lever river liver over lover cover clover"
        " trainer trainers training trains brain brains rain rains grain drain strain"
        " booked looking looks cooks cooking hooks hook took"
        " doctor docs nurse hospital clinic appointment physio therapist"
        " wedding holiday holidays travel flight hotel airport london paris germany spain"
        " cheese cheers chicken kitchen bacon steak salad pasta pizza sauce bread toast eggs protein shake shakes coffee"
        " sorry worry hurry carry marry ferry berry cherry fairy dairy diary"
        " serious series season reason lesson prison person personal"
        " whatever whenever however forever anyway anyways always"
        " creche nursery traffic parking petrol ticket doorframe doorbell delivered scales scale shower showers"
        " minute's today's tonight's cardiologist staff high street coming unit"
    ).split()
)
"""Everyday words that must not be mended into words of the trade."""
