/**
 * Words of everyday English that stand a slip away from a word of questions and are right as they are ("paint", "plane", "quiet"). Found by
 * running the speller over the 28,000 commonest words of SCOWL (sizes 10 to 35, release 2020.12.07): whatever it changed.
 */
export const ORDINARY_WORDS: readonly string[] = `
  abound adapted adaptor aground ain alight amble aptitude aren ashtray astrological attitude beast beater bee
  beset bets bettor binds bitter blight booth botch bread brood broth camel cameo camps cannon cape carps caused chance
  chant chaps charge cheeks cheeps cheery claps clauses cleans cleats clods closet closets clouts clover cls
  clutter clutters cold collection commando commandos commend commends commuter compunction compunctions compute
  computed computes conception concoction confection confections congestion conjugation conjugations connective
  connector consternation contention controlled convection convention conviction coordinated coordinator
  correction couldn covets cultivates dankest declaration decrees deplete destination didn diver doesn doles domes
  don dopes dose doses dotes doubly doves downy dozes draft drafts drawn drier drive drivel driven drives drone
  dusky earl eats eight eleven ellipse ellipses elongating ether event fairy fiend filed fin fined firs fist five
  flair flaps flops folksy fond forge forged forger forges forgot fount four fund gents globes gobs goody gores
  greet hadn halve hasn heave hell hither homey hose howls hundred isn juts kinds latex lathe lather latter least
  lyrics mad mangy marsh meant meter meters midway mighty milk mined minuet minuets minuses moans moist moos
  morons moth mound mulch munch musty niche niece nigh night nights nine observance ounce overt pace pack paint
  palace par party pas pasta paste pasty pats peeks phonograph phonographs photographic photography phrase pint
  plaice plane planed planes planetarium planetariums plant plants pleas poplar possibly probable process property
  provably quack quadrants quartet quiet quit quote raise raises rally realty rebind remainder remainders remote
  rewind rices rigs rinse rinses rungs ruses salve sand scent seats sects semen seven shame shave shell short
  shouldn showier showy side sides sill simmer size slave slower slummer smite smites snitch snort soar sore spend
  spent spite spites spoon sport spout staff staid stair stairs stall stare stark stave stiff stirs stitch stomp
  stoop storey story strand stuffy suave subset suite suites summed sundae sundry surge swoon tank tanks tees thee
  theme thin thins thirty thongs thorough thought thousand three thy tough transmit transmits transparent
  transparently trill tripos trough trues twelve twenty up vie visibly wasn wee weren wets wheat whereas whore
  whores width winner wit won worthy wouldn wrest wring wrung`
  .trim()
  .split(/\s+/u);
