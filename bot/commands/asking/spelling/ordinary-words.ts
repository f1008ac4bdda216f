/**
 * Words of everyday English that stand near a word of questions, or are two of them, and are right as they are ("paint", "plane", "quiet").
 * Found by running the speller over the 39,000 commonest words of SCOWL (sizes 10 to 35, release 2020.12.07): whatever it changed.
 */
export const ORDINARY_WORDS: readonly string[] = `
  abate abbot abet ably abode abort abound abscess abuses abysses access accrues ace acres actuality actuary acutely
  adapt adapted adaptor adapts adept adopt adopted advise adviser aground aid aide ail ailing ails aims ain airlines
  airmail airmails airs alas ale alias alien aliened aliening alight allays alleys allot alongside altar amaze amble
  amended amiss among amuse amusing angel angels anger ankle ankles anon antenna anthem antler anyplace anyway apes
  apexes apiece appeal appease appeased appeases apter aptitude aquarium aquariums arable arch areas aren arenas arias
  arise arises arm armed armies arms aromas arose arouse arrays arse art arteries ashtray aspersion ass assassin
  assent assessor assets assignment assort assure asterisk astride astrological ate atone attires attitude augment
  aura author avert awe axes aye ayes babble back backers backhands backwoods bacon badder baddest badness baggier
  baggiest bait baited baits bakeries bakers bakery baloney ban banking banners bans banters barbed barber bard bare
  bared bares barest barged barked barnyard barrel barren barrette barter bartered barters basest basses baste bath
  bathe battered battering battles bayed beagle beaker bean beans beast beat beater beaver became become becomes
  becoming bedder bedroom bedside bedsides bee beef beefiest beeper beer beet began beggar beggars begging begin
  begins begun behalf behave behaving behead beige belied belies belittle bellied belling bellow belonged bemuse bend
  bequest berried berries beset besiege besieges bet betrays bets bettor bewared bible bibs bicker bides bigots billow
  bin bind binds birthed births bite bitter blackhead blacklist blackout blanking bleak bleat blew blight blinding
  bloc block blogs blonds blow bluff blur boat boats bode boded bodice bodies bolt bone bookcase boom boons boost boot
  booted bootee bootees booth booties boots bored bores bosses botch bounce bout bouts brace braces brackets brag
  braid brain brained brainiest brains braise braises brake brakes bran bras brass brasses brassiest brat brats brave
  braver braves bravest bray brayed brays brazens bread bred breed breeder brides briefest brightened brightens brim
  brittlest broadside broadsides brooches brood broth brought brute brutes bubbly buff buggier buggiest bulb bun
  bunking buns burble burred busied busies bust butt butte buttered buttery buttress bygone bytes cab cabooses cabs
  cajole calibre calibres caller calluses calm camel cameo camper camps campus canaries cancellation cancellations
  candle cane canker cannon canny canoe canoes canon canopies capable cape capsize captor caresses cargo carol
  carolling carols carouses carps carrier carrot case cast caste caster casters cat cater caterer caucus caused
  caustic caustics cease ceases cede cedes ceding celebrate celibate cellar cellars censor cent cents centuries
  century cereal chainsaw chair chairs chameleon chameleons chance changeable changeover channel chant chaps char
  charge chargeable charm chars chart chaster cheapen cheat cheats cheeked cheeks cheeps cheery cheese chefs chess
  chews chick chicks chiefs chills chins chips chirp chirps choirs chooses chord chore chores chose cinder circus
  cistern cisterns citation cite cites citing civic clad clamber clan claps class classes clatter clatters clauses
  clean cleans cleanse cleat cleats clicks cliffs climate climates climber clime clip clips clod clods cloister
  cloisters clone closet closets closure clots cloudburst clout clouts clove clover cls clubs clucks clued clues
  clutter clutters coaster coasters coats cobble cocaine codes cods coercion cokes cold collaborate collar collect
  collected collecting collection colon colones column combats combs comic comma commando commandos commas commence
  commend commends comment comments commerce commit commits common commons commune communed communes commute commuter
  compact compacter compacts company compels compete competed competes compile compiler completer compose composer
  composes compost composts compress compunction compunctions compute computed computes con conceal conceit conception
  concoct concoction conduct confection confections congest congestion conjugation conjugations connective connector
  conned connote consolation consolations consternation constipation contact contention contest context contours
  control controlled controls convection convention convict conviction cool cooled cooler coop cooper coops
  coordinated coordinator cop cope copes copper cops core cornea corned cornet cornier corns corny coroner corpus
  correct corrected correcting correction correctly cosies cosiest cots couldn counsel count counter counters county
  coup coups courses coves covet covets crabby crane crap crashes crass crasser crassest crate crated crates crave
  craze crazed crazes crazies crease creased creases creator creep crepe crescendo crest crews crib cries crises
  crisis crocus crocuses crooks crop crops crouch crows cruises crushes crustier cuddle cued cull culled cult
  cultivate cultivates cumming cup cups curator curfews currant currency currents curses cuter cuts dabble dabbled
  dabbles dairies dairy daisy dallied dally dankest dapper dares daring darkens date datum daydreamed dead deader
  deafer deal dealer dealt dean dearths debris deck declaration declension decrease decree decreed decrees decries
  deed deem deems deeper defines degrade degrades dejection delay deli delight delude delving den deplete depress desk
  despair despise despot despots destination detection device devious diction didn died dies differ difficulty
  digestion digress dilate dill dilute dim dime dimer dimes dimmed dims din dine diner dinner dire directed directer
  directing directive director directory directs direr direst dirges disable discharge disclose disco discolour
  disconnect disconnected disconnecting discover discus disk dislike dislocation dismissed dismisses dismissing
  dismount displace displaced displease disposition dispute dissection dissent dissipate disusing dither diver dock
  doe doer doesn doily dole doles doll dolly dome domes don doodle doodles dopes dos dose doses dotes doubly doubt
  doubtless doubts dour dousing doves downright downy doze dozes draconian draft drafts drawn dream dreamer drier
  dries driest drily drive drivel driven drives drone drove dryness dual dub dubs due duel dues duke dull dully duly
  dune dupes duration dusky dyes dying eager ear earl earring ease eases easygoing eat eater eats eave edgy editorial
  eels eerie eerier eeriest eight eighth eighths eighty elapse elapses elation election elector electors elevate
  elevated elevates elevating elevator eleven eleventh elevenths ellipse ellipses ellipsis elongate elongated
  elongates elongating elsewhere endears enter enters entice entire entities entrails entraps entreat entreats equate
  equated equates equation equips erring ether evading eve event evergreen evermore everyday evoking excerpt exempt
  exert factor fads fail fails faint fainted faints fairy fake faking fall falls falter falters fame fan fans fantasy
  faraway fare fast faster fastest fat fate fates fathered fats fatter fattest fattier fatties fattiest fatuous favour
  favoured favouring favours faze fazing fear fears feasible feast feat feats fee feed feeder feeders feeding feel
  feeler feelers feels fees feet feigns feint feinted feinting feints fell fells fen fend fender fending ferns ferret
  ferrets ferries festers fetter fetters fez fezzes fiddle fiend fierce fiery fiesta fifteenth fifteenths fifth
  fiftieth fig fight fighter fighters fights figs file filed fill filled filler fills filming filth fin fine fined
  finesse finger finishes fir fire fires firework firs fist fit fits fitter fittest five fizz fizzing flag flagging
  flailing flair flak flake flaking flamingo flanks flap flapping flaps flaring flatters flatting flawing fleeter
  flings flits flocks flog flop flops flutters foaming foe foes fog fogey fold folder folders folds foliage folksy
  fond font food fool fools foot foots foraged foray forced fore foremost foretaste forever forewords forge forged
  forger forges forgive forgo forgoes forgoing forgone forgot forked forks fort forte forth forts forwent fosters
  fought foul fouls fount four fourths fox frame framing francs franks fray freeway fret fried fro frog frond frost
  fry fuel fuels fume fuming fun fund fur fuse fusing fuss fussing fuzz fuzzing gabs gain gaits galas gallon game
  gamer gardenia gating gave gays geed gees gene genre gents genus germ getaway gibbers gin gins glacier glassier
  glazes glean glide globe globes globule globules gloss glossier glows gnat gnaw gnome gnu gnus goad gobs gong goo
  goodbye goodnight goodwill goody goof goon gore gores goring grafts grain gram grandchildren grandstand grant graph
  graphs grate gravies greed greenhouse greet grid griefs grim grime grin grind grit groan groin grouse guess guile
  guise gun gunner gurus guts gutting guy gybes hadn hair hairdo hairier hairs hale halfway hall halo halve ham
  handbag handbags handbook handbooks handed handiest handled handout hands hang hardier hardy hare hared haring hart
  hasn hate hats hays haze headfirst headier headlands headlight headlights headquarter headway healer health hear
  heard hearing hears hearse heat heated heathen heather heats heave heed heeded heeds heel heifer height heighten
  heights heir heirs hell hem hemming hens herd herding hereafter hereby herein herewith hero hes hew hewing hews hid
  hideaway hideous highlands highlight highlights highway hiker hikes hill hindsight hire hires hiring hit hither hits
  hive hives hiving hoard hoarder hoarse hobble hobbled hobbles hock hocked hoe hoes holy homelands homemade homework
  homey hone hood hoofing hoot hooter hooting horde horsepower hose host hotter housework hove hover howls huddles hue
  hued hues huffing huger hugest hull hum humbles hundred hurries hurt hurting ice ices icier icy idle ifs illuminate
  illuminates imagine impart impartial imposition impossible improbably improper improperly incite incited income
  incomes incoming indeed indirection indirectly indivisible induce industry infallible infeasible infer infield
  inflame inflaming inserted instep instil insure intake integer inter interacting intercede interface interior intern
  interval intervene interview interviewer invariable invented invested invincible invisibly ire islands isn itches
  ivy jail jell jelly jest jolly jury juts keeled keels keen keens keynote kid killed killer kiln kilos kin kinda
  kinds king kinks kipper kiss kisses kites kits knead kneaded kneading kneed knees knew knight knit knocking knot
  knotting knotty koala labs lace lacerate lacier lack lacking lacks lad ladder lade laded lades lading lads lady lag
  lager lags laid lairs lake lamer laming lance lances lancing lane lapped laps lapse lard larding lards larva lass
  latex lathe lather latter lattice lauding lauds laws lax laxer lay layer layout layouts lays lazier leak leaking
  leaks leans leaped leapt lease leases leash least leave leek leeks leers leftmost lend lending lends lesson lest
  letdown levee libel lice lids lie lied life lift ligament lighthouse likeable lilt limerick liniment linking lips
  lit lithe litre litter liveable livestock lobs locating lock locking locks loft logs loll lone long longest longish
  lookout loomed looming looms loonies loons loose loosed looser loosest loosing loot looted looting loots lope loped
  lopes lopped lore lose loser loses loss lotion louse love lover lowdown luck lucking lucks lugging lugs lulling lung
  lure lust lustier lustre lute lye lyrics mace mad magnate magnates magnet magnetise magnetises maid mains maizes
  makeup male males mandate mane mangy manor manures mare mares marked marker market marking marooning maroons marries
  marring marrows marsh mas mass massed masses massing mast mat match mate mating matt matte matter matters matting
  maximum mayor mayors mazes meagre meal meant ment meantime meanwhile measles measure meat meddle meek meeker meekly
  melting memento memos mend mentors mercy mere merging mess messed messes messing met mete meted meteoric meter
  meters metes meting metre metres metro metros mews microscopic midway mien miens mighty mike mikes mild mile miles
  milk mill miller mimes mince minced minces mine mined miner mines minimal minimalist mining mint minted mints minuet
  minuets minus minuses mire mires miring mirth miser misers mist misting mists misuse misused misuses misusing mite
  mites mitt mittens mixes mixing moan moaning moans moat mob mock mod mode model moist moles money monies monk moo
  mood moods moor mooring moorings moors moos moose moot mooting moots moreover morns morons morose moss mosses moth
  motionless motor motors moult mound mourning mourns mouse moused mouses mousing mousse moussed mousses moussing
  mouth mouthing muck mud muddle muddles muddy muffing muffles mulch mules mulls mummies mums munch muse mush musk
  musty mutate mute muter mutes mutilate muting mutt mutter mutters muzzles nag nagging naiver natty nay nays neat
  neater neatest neatly nebulous necessity needlework neither neon nest nested net nether netting nettle newt niche
  niece nigh night nights nighttime nine noble nobles nod nodded nodding non noodle noose norm norms northeast
  northeastern northwest northwestern nose nosing notable notching note noticing noun nova nowhere nuance nun nut
  nutting nutty objective objector objectors observance observant oceans offence offended offsets offsetting offspring
  oking oks olden oncoming ongoing onions onset onsets ooze oozing opposite opposites otter ounce ousted ouster
  outburst outcome outcomes outdid outdoes outdoing outdone outfield outgoing outhouse outlast outlive outlook
  outlooks outright outrunning outset outsets outstation ova ovation overall overcame overcharge overcoat overcoats
  overcome overcomes overcoming overdid overdo overdoes overdoing overdone overdose overeat overhand overhear
  overheard overheat overheated overheats overlies overload overlook overlooking overlooks overnight overpower
  override overrode overrunning oversaw oversee overseeing overseen overshooting overt overtake overtime overtook
  overturn overturns overuse overusing overview overwork overworking pace pack pact pail pails paint pal palace
  palatial pale paler pall pallor palls pals pant panted panting pantries pantry pants paper par parent parse parses
  partake particle party pas passable pasta paste pastor pasture pasty pat pats pave pays peaceable peal peals peanuts
  pear pears pecan peck pecks peek peeks peel peels peered peerless peers pelleted pen perjure perks person pert
  perter perturb peruses pest petite petition phonics phonograph phonographs photographic photography phrase pick
  picks piece pieced pieces pierce pierces piers pies pigs pike pikes pile pill pillar pills pinker pint pis piston
  pits pizzas placid plaice plaids plainest plan plane planed planes planetarium planetariums planks planned planner
  planners plant plants plaques plate plates platoon play player plays plea plead pleaded pleads pleas pleat pleats
  pliant plied pliers plies plights plods plucks plummets plus plush plusher poet poets poise poises poke poker
  polarise police polish polite polka poll pollutant pollute pollutes polluting polo ponder ponds pool poops pope
  poplar poppies portable portend portended portent porthole portion poses posies possess possibly post poster posture
  pot potion pots potter pounds pout pouted pouts powder powerhouse praised praises prayer precede precedes precious
  precise preface presence present preside presides press pressed presses prevent price priced prices pride prides
  pried pries prim prime primer primmer princess print printed printer printing prints prise prised prises private
  privies priviest privy prize prizes probable probe proceeds process prod profess proffer prop propel property
  prophecy prophesy propped props prosper provable provably proves prowess prudes puck pucks puke pull pulleys
  puncture punt punted punter punting punts puppies purse purses pursues pus pusses pussies putt quack quadrants
  quainter quake quarries quart quarterlies quartet quarts quartz quash quay questing questionable quiet quirk quit
  quota quote race racer races racing racking racks raffle raft rafter rage raid raider raids rain rained raining
  raise raises rally ranches rang range rare rarer rarest rasher rashes rat rate rates rattler rawer ray rays raze
  razes razing razor react reaction reactor reactors reacts reader ready realer realm reals realty ream reason rebind
  recent recess reckoned recompense redirection reduction reef reels refer reflect reflected reflection reflections
  reflective reflects reflex regales regatta registrar registry rehashes reigns rein reindeer reined reining reins
  rejoinder rejoinders relay rely remainder remainders remained remote render renders reply rescind resent reset
  resistor rest retch retches retract retraction retractions rev rewind rice rices rich riches richest richness ricing
  riddance ride rides riding rife rifer rift rifted rifting rifts rightmost rigs rile riles rinds ringlet rinks rinse
  rinses ripen risks rites river roach roaches road rocket roes rooking rooming roost root rooting rosy rot rote
  rouging round rounding rouse rouses rousing rout route routeing routing royally rubbing rudder ruder rues ruff
  ruffing ruing ruling ruminate ruminates run rune rung rungs ruse ruses rushes rust rut rutting sad sades sagas sage
  sages sagest sail sailor saint sale salve sand sandy sane sanest sang sari saris sat satin saturate savvies scale
  scars scathing scene scenic scent sceptre scolds scoop scooting score scuff sculpture scythe sea seal seam seamen
  sears seas seat seating seats secondaries secretion sections sector sects seed seeds seeks seem seer seethe seethes
  seething seize seller semen senator senile senior sense sensed sensor sentry separate separated separates separating
  separator series serious serpent serpents session settler settling seven sevenths sever sew sewed sewer sewers
  sewing sewn sews shame shave shawl shell shield shies shiver shivers shoal shoaled shod shoe shoes shooed shooing
  shoos shopped shopper shoppers shops shore shoring short shots shouldn shouting showdown showier showy shutting
  sickest sicks sics side sides sideshow sideshows sidetrack sidetracking sidetracks sidles sieges sieve sieving sight
  sighting sights sill silvery simmer sin sine sing singe sire sires siring sirs sister situation six sixes size
  sizeable skew skewed skewers skewing skews ski skids skill skim skims skins skip skips skits skulk skylight
  skylights slave slay slaying slays sled sleds sleeve slice slides sling slit slither slope slopped slow slowed
  slower slowing slows sluice slummer slung slur smart smashing smell smelling smile smite smites smoother smoothing
  smugger smuggest sneer sneers sneeze sniff sniffing snitch snore snort snowfall snows snuff snuffing snuggest soar
  sod sods soggiest soil soiled sold solving sombre someday somehow someplace somewhat somewhats son song soot soothe
  soothes soothing sooty sopped sore sorta sounder sounds source sourer sourest sours southeast southeastern southwest
  southwestern sow sown sows spas spat spate spays speaker speediest spend spent spewing spews spice spicy spies spill
  spilled spilt spinal spindly spit spite spites splat splint splinted splints spoilt spool spooled spoon spore sport
  spotlight spotlights spouse spout sprang spreeing sprig springtime sprinter sprung squeeze stabs stack staff stags
  staid stain stained stair stairs stake stale staler stall stallion standby standoff standpoint standpoints
  standstill stank stare stark starlight state static stating statue stave stay stays steak steal steel steep steeped
  steer steering steers stellar step stepped sterile stern stew stewing stews stiff sting stings stinks stir stirring
  stirs stitch stoke stole stomp stone stool stoop stopover stopwatch storehouse storey stork storm story stout stove
  stows strain strait straits strand strange strap strata straw stray strayed straying strays street strew strewing
  stride strides stringy strode stroller strong strung strut stuck study stuffy sturdy style suave subset suburban
  suburbans sucker suctions sue sued suede sues suffer sufferer suffers suffice sugar suggestive suing suite suites
  summaries summarise summed summon sums sundae sundry sung sunlight super superb supper surge swam swathing swill
  swindle switchable swoon swore syringe tab tack tacking tacks tacky taillight taillights tailor taint takeoff
  takeover tale tall tame tan tang tangle tangs tank tanks tapes tariffs tarried tarries tars tart tarts tax teak team
  teammate tears teas tease teats tee teem tees ten tenet tent tether thaws theatre thee theist theme thence theories
  thereafter thereby therein thereof thereon thereupon thick thieve thigh thin thins thirst thirsty thirteen thirty
  thong thongs thorough thou thought thous thousand thread threads three threw throne throughout throughput thud thug
  thugs thunder thus thy tick tidy tied tiers tight tilde tile ting tingle tings tint tired tires toad toil toll
  tomato tome ton tonal tone toned tongs tonnage tonne tool topped tore torn tot tote toucan toucans tough tours trace
  traces tracing tracts trailing trails trains trait trance transact transacts transient transients transitive
  transmit transmits transparent transparently trapeze trapped traps trays tread treads trek trekking treks triangular
  trick tricking tricks trill trios trip tripe triple tripled triples tripos tripped trips trite trough trounce
  troupes truce truck trucking trucks true trued trues truing tub tuba tuck tune turbine tureens turfs turnaround
  turnout turnover turrets tweet twelfth twelve twenty tying udder undergo undergoes undergoing undergone underlies
  underside undersides understand undertake undertook underwent united unset untie up upended upkeep upright uprising
  upsets upsetting upstart uptake upturn upturns urgently urns usable vagaries vain vainer vainest valuable van vane
  vanes vanished vanning vans vary vase vast vaster vastest vat vats veal veer veining vending venting venues
  veritable vexing via viable vice vicing victor victors vie vied viewpoint viewpoints vile viler villa villain
  villains villas vine vines virtue vise visibly vising vista vogue voice volleys voltage vote voter voters vouch
  vowing wad wade wades wads wafer waft wage wager waif wail waist waiver wakened wakens walk wan wand wander wandered
  wandering wanders wane wanton warding warm warming warping washer washing washout wasn waste watt watts waver wavier
  wayside waysides weak weaken weakened weakens weaker weakest weakly wealthier wean weaning weans wearies weaver wed
  wedder wee weed weedier weediest weekday weer weest weigh weighing weight weights weirdest weld weren wet wets
  wetter whack whacked wharf whatever wheat wheel wheezes wheezing whence whereas whereby wherein whereupon wherever
  whet whets whichever whiff whiffed whiffs whine whining whirrs whisking whizzing whoa whoever wholesome whore whores
  whose wick wicked wicker wicket width wield wife wigged wildcats willpower wilt wily win wince windier wine wining
  winner winning wins wintertime wiper wire wires wise wiser wisest wish wist wit within withstand woe wok woke woken
  won wood woof wool wording wore workable workout workplace workstation world worming worn worthwhile worthy wouldn
  wound wrapper wrath wreath wrens wrest wriggle wright wring wrist writ write writhe wrongdoing wrote wrung yearlies
  yell yew zanies zealous zest zoo zoom zooms zoos`
  .trim()
  .split(/\s+/u);
