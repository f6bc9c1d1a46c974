"""English words of every day that lie a slip or two from a word of the trade, and are meant as they stand.

Without them 'score' would be mended to 'sore' and 'began' to 'begin'. Words that people's phones put for a word of the
trade (literal raises, squads, good mourning) are left out, so that they are still mended. Source: common English; no
single source.
"""

from typing import Final

PLAIN: Final = frozenset(
    """
    abby abdominal abducted abducting abide abode abort about above accent aces acres actor addiction addition adds
    afternoon again agent aggravate aging agnes agree ahead aide aided aiding ailing aimed airing airline airlines
    airport alarm alarmed alas album alight alive allow alone along alter always amen among angel angle angles anklet
    anklets another anyone anything anyway anyways apart apologizes app apple appointment apps april archery arches
    ardent arena argue arise arises arising arming armor armored army arrive arrives arriving ascend ashes aside asset
    atone attach auction aunts aunty austrian autumn avid avoid await awaited awaiting awake award aware baby back
    backfire backing backseat backup bacon bade badge bagged bagging bait baited baith baiting baked baking balanced
    bale bales ball ballast balling ballots ballsy bandaged bandits banger bank banked banking banks banned banning
    barber barely barfed barge barged barging baring barks barley barman baron barred barring base based bases basil
    basis basking batch bath bathe bathed bats batter battled bawling beach beached beads beak beaks beaming beams
    bean beans beard bearded bearing bears beasts beat bedside been beeps beer began begat begun bell bella belle
    bellies bellows bells belly belts benchs bended berry beset best bested beta better betting bide bike biker bill
    bills billy binding binds binge bird birth birthday bison bite bites biting bitterly black blacker blacks blake
    blame blamed bland blank blaring blast blaster blaze blazing bleach bleached bleak bleating bleed blend blended
    blending bless blew blind blinded blink blinking bloc blocking blond blood bloods bloom blow blows blurted
    blushing boar board boarded boars boasted boat boating boats boiled boiling bold bond bonded bonding bonds boned
    book booked boot booted booth born borne borrow borrowed borrowing borrows bosom boss bossy both bother bothers
    bottle bough boughs bouncer bounty bow bowed bowl bowler bowls boxed boxes boys brain brains braised brake braking
    branch branches branching brand branded brands bras brass brats breach breaching bread breadth breathes breech
    breed bribe brick brides brief bright bring bringer brink brisk brits brittle broad broker brood brook brooke
    broom broth brother brow brown brug bruises brunch brunt brush buck budget bug bugger build builder builders bulbs
    bulk bull bulls bummed bummer bump bunch bundled bunks bunny buns burdens buries burmese burn burner burying bush
    buster busy butler butter butty cab cabs cache caddy caged cain cake caked calfs call caller callers calls calm
    calmed calmer calming calms calorie came camel camp camped camping cancer candles cannon canst capable capped caps
    card cardiologist cards care cared cares caring carl carly carp carriages carrie carrier carriers carrots carry
    cars cart carton carts carve carved carving case cased cases casey cash casing cast caste castles casts catchy
    caused cave caves cawing cease cell cellar cells certain chain chair chairman chairs changes chant chanting chap
    charge charged charging charles charter chase chatter cheap cheater cheats check checks cheek cheeky cheer cheers
    cheese chemist cherries cherry chess chick chicken chief child chili chill china chinese chink chip chipped chips
    chloride choir choke choked chore chose christmas chunk churning circled circling city clacking claim clams clan
    clans clap clapped claps clash clasp class classy clause clawing claws clay cleaner cleaning cleanly cleanse
    cleansed cleanup clear clearer clearest clearing clearly clears clench clever click clicked climb cling clinic
    clip clippings clips cloak cloaked cloaking clock clogged clone cloned clones cloning close closely closer closest
    closet closets closure cloth clothed cloud clover clucking clump clutter coach coal coals coarse coast coat
    coating coats cock cocked cocking code coded codes coding coffee coin cold collage combine combines combing combs
    come comet comets comfortably coming command commanded commander commands commend compare compares compete
    competed complain complaint complaints completes concept concern concerto concession conch condo cones confuse
    constructed construction contraption controller convention conventions convert convoy convoys cooing cook cooker
    cooking cooks cool cooled cooped cope copied coping copping copy cord core cores corn cosmic cost costa couch
    cough count counted countess counties county coupe couple coupled coupling coursing court courted courtesy courts
    cover coveted crabs craft cram cramming cramp crank crapping crash crashed crashes crashing crass crate craved
    craving crawl craze crazy cream created creating creative creche crest crew crime cringe crispy crock crop cropped
    crops crore crossbow crosses crossfire crouch crow crowd cruel crumble crunchy crusader crusaders crush cuddling
    cult curb cure cured cures curing curly curse cursed cursing curved cut cute cuts cycle cycles daddy daily dairy
    dance daring dark data date dated dawn dawns days deadline deal deals dear dearly death debt debts deceased deceit
    decide decides deck decode decrease decreases decree decreed decrees deeds deep defects defied defined definite
    degrade deleted deliver delivered delivers delta demands denies dented deny depicts depress derive descend
    descends desk desks destroyer deviled dial dialing diary didst diet digging dined diner dining dinner dips dirt
    disagree disc discord discs dish ditches ditty dive dived diving docks docs doctor dodge does doggy dollar donor
    doorbell doorframe doping dorms dose doses doting doubly doubted dove doves down downloaded downright downside
    doze dozed dozing draft drafted drain drama drank draw draws dread dreaded dreading dream dreamer drench dress
    dresser dresses dried drifter drink drip drips drive driven driver driving drone droplets drown drowns drug
    drugging drugs drum duck ducks dull dump dumping dunk duped dust dutch duty dying each early earn ease east easter
    easy edge edict eggs either elected elevate elise else elves email empties enact entice envoy erased eraser esther
    ether even evening event ever everyone everything evil exam example exchanged excite excites exercised exit exited
    exits exorcise expert explodes explore explored exploring express extinction fabled faced facedown fact faction
    fail fair fairy faked faking fall falter fame famed fancies fanny farce fare farm farmed farms farted farther fast
    fasten faster fate fated father fats fatten faxed fear feared fearing feast feather feed feeder feeding feeds feel
    fees fell fella felled feller fellow fellows felt ferry fever fiend fiends fight figured file filed filing fill
    fillet filly film filmed filth finals finance find finder finders fine fined finer fines finishes finite finnish
    fire firearm firearms fireball fired fireman firepower fires firewall firm firms fish five fiver fixes flag
    flagship flailing flair flake flame flaming flank flares flats flatter flattered flattering flattery flaw flawed
    flaws flayed fled flees fleet flew flier flies flight fling flint flip flood floor floored flop floss flour flow
    flows flu fluid flustered flying foiled folder folk follow follower folly font fool foothold forever forge forged
    forger forgo forks form former fort forts forum four foyer fractures frail frank fred free freed freeing freer
    freight french friction fries fringe from fronted frosty fuel fueling fuels full fuller fund funky funny fuzz gain
    gals gambled game gaping gaps gary gassing gate gather gave gavel gear gene gentlemen gents germany gift giles
    gills girl girly give giver giving glad globe gloom gloss glowing glue gluten goal goat gobbled goes gold golf
    gone gong goody grab grabs graced grade graded grades grain gram grams grand grander grant grape graph grasp
    grasping grass grassy grate grave gray grazed great greed greek green greet grey grid grids grinds gripe grits
    groan groping gross grove groves grow growling grump guerilla guess gulf gutting hackers haggling hair half hall
    hallow halls hallway halted hammers hand handled handler handles handling handover handy hang hanger hangman happy
    hardy harm harms hast haste hastings hatched hatching hate haters hatred hats haunt haunted haunting have haven
    hawks head header heading heady healer healing heals hear hearing hears hearth hearty heat heated heating heave
    heaven heel held hell hello hells helm helmets help helper helpers helps herd herded herding here hero heroin
    hicks hide hiding high hill hinge hinting hippy hire hired hiring hoard hobby holders hole holed holes holiday
    holidays hollow holy home homer homey homie homing honestly honesty honey honing hook hooks hope hoped hopes
    hoping horn horribly horse hospital host hotel hounded hour hours house how however howls hug huge hugged hugging
    hull hump hung hunger hunt hunter hunting hunts hurl hurling hurry hurtling huts hype idea ideal ignored imagined
    imaging impress inane incense inch incited include includes increases infer inflame inflate influence influenced
    influences inhale inherited injure inserted insider into invented inverse invested invited iron irony irritate
    irritates issued itches item jack jackals jackets jackson jagged jane jared jean jerky jocks join joins joke joked
    joker jokers jolly jones joust jumble jump jumper jumpsuit jury just keen keep keeping kept kick kicker kill kills
    kind kinds king kinks kiss kitchen knack knee kneels knew knitted know known lack lacked lacking lacks lady laid
    lake lakes lambs lamp land landing lane lanes lapping lapse larceny lashing last lasted lasting lasts late lately
    later latex latte latter launch lawns layer lead leading leads leaf leaky lean leaning leans leap leapt learn
    learned learning lease leased leases leash leasing leaving lectured lecturer left lend length lengthy less lesson
    lester letter lever licked licking life lift light lighted lighten lightening lighting like liked limbo line lined
    linen liner linger lingers lining link linking links lion lips lire list listing lists liter litre litter live
    lively liver livers living loading loads loan loaned loaning loathed loaves located lock locket locks lodged
    lodging lofty logo london lonely loner long longed longs look looking lookout looks looming looms looped loops
    loosen looted looting lord lose loser losers loss lost lotus loud lounge louse love lover lovers loving low
    lowdown luck lucked lugging lull lumber lump lumpy lunch lunches lung lungs lynch lyric macho made mail mails main
    make male males mall mana manager manages mangy mania manly manner manners manpower many maple marched marches
    marching marines marion mark marker markers markets marking marry marsh mask masking mass massing masters mate
    mated mater math mating mats matter matters meadow meal meals mean meaning means meat medal meddle meet megan
    mellow melt menial menu menus mere mess metal metals metro might mighty mikes milk mills mince mind minds mine
    mined miner mines mingled mining minister mints minutes mired mislead misled miss missy mists misused mixer mixes
    mobster mode moles monastery monday money monsieur month months mood moon mooning moore moped moping more morning
    mortified most mother moths mouths move mover moving mow much muddle mug mules must musty myth nail name named
    napping narrowly navel navy near nearby nearly neatly neck need needless needy neither nest neural never newer
    news next nice nicer niche nick nigh night nights nine nobody nomadic none noodle noon noose norm nose note
    nothing noticeable noting now null number nurse nursed nursery object obliterate odor okay omens once only onto
    open oral other others otter otters ounce ours outlying outright outsider outstanding oven ovens over overhear
    overheard overloaded overpower oversaw oversee overstep overt overweight ozone pace pacing pack packs page paged
    pager paid pain paint painting pair pairs palace palate pale pales palm pamper pane pangs panned pant pants panty
    pappy parents paris park parker parking parks parrots parson part parted parties parting parts party pass passes
    past pasta paste pasted pasting pasty patent patents path patting pawns paying payoff payoffs peach peaches peak
    pearl pecking peeking peeling peeping peering peking pence penned people person personal pester petrol petty phone
    phoned phoney phony photo photos phrase phrases physics physio pick picking pickled pictured pieced pied pierce
    pigs pile piled pill pills pimped pines pining pink pinning pint pipe piper pirates pitch pitched pitches pitching
    pizza placate placed places placing plaid plain plains plan plane planes planet planks planner plans plant
    planting plants plate plateau plating play player playoff plays pleas pleased plot ploy plug plugs plums plunder
    plunge plunged plus poachers poem poet point pointing points pointy poked poll polling polls pond ponder pool
    pooping poor pope poppy pork port ports pose possibly post posted posts potion potions pots potter pour powder
    powered praised praises prank pranks pray prayed praying preach preached prefect prefers premises prescribe
    present presents presided president presiding press pressie pressure pressured pressuring presumed presuming
    preying preys priced pricey pried priests primates prime prince print printing prints prison prize probable probe
    process processed processes processing profane profess programmer progress propane propel property prose prosper
    protecting protein prove prowess pulled puller pulling pulls pump punch punched punches punching pure purple purse
    purses pursues pusher pushes puzzled puzzling quack quad quads qualify quartet quench quiet quit quite quota quote
    quoted rabies race racer rack racked racking racks radiate radioed rage raged raggedy raging raiders raiding rail
    railing rain rained raining rains rainy raisin raisins raked raking rally rammed ramming rancher rang ranger rank
    rapping rapture rare rarely raring rash rate rates rather ratings ratted raving razed reach reaches reacted read
    reading real realm reaping rear reason reasonable rebel rebels receives reckon reckons recovers reds reduce
    reduces reefs reeks regained regaining regal rehearse relieves rely remand removed renal rent rented renting rents
    repeal repel repent reserved reset resides result retained retaining revel revere reversal reversed reverted
    revised reviving rewind rice rich ride rider ridge riding rigged right rigs ring ringside rinse riot rioting rip
    ripper rise risen rises risk risking risky river road roads roaming roaring robbing robes robot rock rocky roger
    role roles roll roof roofing room rooming rooms root rooting rope roped rose roses rotting rouge roughed rouse
    rousing routing rover roving rude rug rugged ruin ruining ruins rule runes runner rush russia rusted sable sack
    sacks sacred saddled safe safely safer sage said sail sailed saith sake salad sale sales salt same sample sand
    sang sassy satchel sauce saucer saucy save saving savings sawing sayings scabs scale scaled scales scaly scams
    scar scare scares scarf scarred scars scatter scent scented schedules scold score scored scout scram scrape
    scrapes scraping scrapped scraps scratched scratches scratchy scuff seal seams seared season seating seats seattle
    seaweed sedated seed seeded seek seeking seem seeming seen seep seeping seize seizes self sell selling sells semen
    semi seminal seminary send sending sent series serious serrated serves settles sexes shack shacked shacking shady
    shaft shake shaken shakes shalt shame shamed shapes shard share shared sharing shark sharks shaving shawl sheds
    sheep sheer sheet shelf shelled shelling shells shift shifting shin shine shines ship shipped shipping ships shirt
    shirts shoe shoes shone shook shop shopped shops shore shores short shorting shorts shorty shot shout shouting
    shouts shove shoved shoves show shower showers showing shown shredder shrimp shrine shrink shrub shudder shut sick
    side sidekick sidewalk sifting sight sighting sign silent silk silvery simmer simple sing singed singled sinner
    sipping sired site sites sitter size skate skated skates skies skill skills skimming skin skinning skins skipper
    skirt skis slacking slashed slayed slays sleek sleep sleepy slept slices slick slide slight slinging slip slips
    slits sliver sloth slots slow slowed slowing slows slumber slums slurping smart smarter smarts smelled smells
    smelly smelt smiley smiling smite smoke smoker smokes snare sneak sneaked sneakers snide sniff snitch snitched
    snitches snitching snoop snore snort snorts snout snow snowed snows snuck snuff soap soared sobbing socked sofa
    soft soil sold sole solo some someday somehow someone something sometimes song soon sora sorry sort sorts soul
    soup sow sowing space spaces spade spain spake spam spanning spar spared spares sparing spatter spear speck specs
    spelled spelling spells spelt spend spending spewing spiced spied spilt spin spirits spit spite spits spitting
    splint spoiled spoiler sponge sponges sport sporting sports spot spotted spout spouting sprang spring springs
    sprung spunk spurred spying squad square squares squash squeak squeal squeals squid squint squish squished stacked
    stacking stacy staff stag staged staging stained staining stains stake staked staking stale stalk stalked stan
    standby stank staple staples star stare stared stares staring stark starlight starling starred starring starter
    starting startled startling stashed state stated stating stats stave stay staying stays steak steal steep steeped
    stem stems stench step steven stevens stiffed sting stinging stingy stinking stir stirs stock stocking stocks
    stoke stole stomp stomped stomping stony stoop stooped stop stopping store stores stories stork stormy stove
    stowed strain strand strands strangle strapping straws stray strayed strays streaming street strep stress
    stretcher stretches strictly stride strife strikes string strip stripe striped stripes stripper strips strive
    stroke strokes struggle struggles strung strut stud studied studios studs stuffy stump stunk stupider sturdy
    substituted such suck sucker sued suing suit suite sully summed summer summit summons sums sundae sunday sung
    sunny superb supper supplying supporter supporters sure swabs swallow swamped swarm sweated sweater sweep swept
    swig swill swim swindle swings swoop swore symptom syringe tablet tail take taker tale tales talk talked tall
    tally tamed taming tang tangle tank tanker tanks tanned tape taped tapes taping tapped tarp task tasked taste
    tasting tater taxes taxing teach teaches team teaming teasing teen teenage teensy teeny tell tells telly tempt
    tend tended tends tenner tenners tent tents term terribly text texts than thank thanked thanking thanks them theme
    therapist thine thing things thingy think thinker thinner thinning thirsty this thong thorn thorough those thrash
    thrashed threw thrive throes throw throws thru thug thugs thumb thump thus tick ticket tickle tides tidied tier
    ties tight tile till timed timer timers tinker tinkling tinted tips tires title titled toast todays together
    toiled token told tones tonights took tool tooth tops torch torches touch touched touchy toughest tours tow towed
    tower toyed toying trace traced tracing track trade trader trades traffic trail trailer trailing train trained
    trainer trainers training trains trait tramp tramps trash trashy travel trays treading treat tree trench trent
    triad trick tricked tried tries trifle trip tripled trivial troubled trough trouser truce truck true truer trump
    trumped trumps trusted trustee trustees trusting truth tucked tucker tuned tunes twine twinkle twister twit
    unbearably unbeatable unfit unit unite unity untie updated upfront uphold uploaded upside upstanding upstate
    uptight usable veer verses vets video videos viewing vince vow wack wager wailing waited waiter waiting waitress
    waits waiver waken waking walker walkers wall walled wally walter wander wandering want wanting wards warmer
    warned warp warped warring warts wash wasps waste wasting watch watcher watches water watery wave waver waving
    ways weaken weakling wear wearer wearing weather weaver wedding wee weeds week weekend weeks weeping weeps weighs
    weirdo welding went were west whale what whatever wheat wheeled wheeling when whenever where whereas whether which
    while whine whining whit white whiter whites whole whose wide widen widow width wife wild wiles wind wine wines
    wing winged winging wings winked winner winners winter wiped wipes wired wires wiring wish wishing witch wives
    woken wolf women wood woods woody word wore worker worlds worms worn worry worse worst worth wouldst wow wrap
    wrapper wreak wrench wring writ writer writers writing year yearly yearn yearns years yeast yellow yong zipping
    zoned
    """.split()  # noqa: SIM905  # a list of so many words would be two thousand lines
)
"""Everyday words that must not be mended into words of the trade."""
