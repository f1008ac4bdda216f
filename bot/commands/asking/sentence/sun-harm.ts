/**
 * Lines that come near what the Sun does to eyes, cameras and tubes, whatever they are asked for: an eclipse and what one looks with, a filter
 * taken off, the Sun low and red, a projection, a sweep by day. Pure; English, and the plainest words of seven more languages (from memory).
 */
import { foldWords } from '../../../ground/fold-text.js';
import { asksOfGuard, isGuardedInFront, takesNoYes } from './guarded-in-front.js';
import { eclipseGlasses, isFilterHurt, isOfWelding, type SunCaution } from './sun-guards.js';

/** Anything with a lens or a screen behind one, by itself or over an eye. */
export const CAMERA =
  /\b(?:selfies?|(?:phone|front) ?cams?|cameras?|camara|kamera|dslrs?|mirrorless|web ?cams?|sensors?|live ?view|phones?|smart ?phones?|mobile|handy|movil|celular|telefon\w*|telefoon|cell ?phones?|iphone|(?:electronic )?view ?finder)\b/u;
export const TUBE =
  /\b(?:telesco\w*|telskop\w*|telesk\w*|scopes?|spotters?|dobs?(?:onian)?|newt(?:onian)?s?|refractors?|reflectors?|sct|mak|binos?|bino\w*|bins|\d+ ?x ?\d{2}|prismaticos|binoculos|binocolo|jumelles|fernglas\w*|feldstecher|verrekijkers?|kijkers?|lornet\w*|lunet\w*|cannocchiale|finder\w*|guide ?scope|polar ?scope|barlow|eye ?pieces?|ep|okular\w*|ocular\w*|oculaire\w*)\b/u;
export const GUARD =
  /\b(?:filt\w*|shades|sun ?glass\w*|glass\w*|specs|goggles|welding|welders?|smoked?|sooty|soot|tint\w*|mylar|films?|foil|blanket|x ?-?rays?|negatives?|cds?|dvds?|floppy|polari[sz]er\w*|pinholes?|mask|brille\w*|sonnenbrille\w*|zonnebril\w*|eclipsbril\w*|lunettes|gafas|occhiali|okulary|oculos)\b/u;
export const NO_FILTER =
  /\b(?:no|without|with ?out|w ?o|wo|minus|lost my|forgot (?:my|the)|sin|ohne|sans|senza|sem|zonder|bez) (?:an? |the |any |my |front |solar |sun )*(?:filt\w*|filtr\w*|film|protection|glass(?:es)?|bril|brille|occhiali|gafas|lunettes|oculos|okular\w*)\b|\bunfiltered\b/u;
export const LOOKS =
  /\b(?:look\w*|star(?:e|es|ing)|gaz\w+|peek\w*|peep\w*|glanc\w*|squint\w*|watch\w*|view\w*|observ\w*|photo\w*|foto\w*|pics?|pictures?|snap\w*|shoot\w*|film(?:ing|ed|en|er|ar|are|ieren)|aufnehmen|aufnahme\w*|video\w*|imag\w+|mirar|miro|mirado|mirando|ver|veo|visto|voir|vu|sehen|gesehe?n|vedere|anschau\w*|ansehen|schau\w*|gucken|regard\w*|guardare|guardo|kijk\w*|bekijk\w*|patrz\w*|popatrz\w*|ogladac|olhar|olho|safe\w*|danger\w*|seguro|sicher|sicuro|veilig|bezpieczn\w*)\b/u;
export const MAY = /\b(?:safe\w*|ok|okay|fine|allowed|dangerous|harm\w*|hurts?|damag\w*|pain|blind\w*)\b/u;

/** Leave to look is asked for in other languages, or whether it is safe. */
const MAY_ABROAD =
  /\b(?:darf|duerfen|durfen|kann ich|konnen wir|puedo|podemos|puede|se puede|posso|possiamo|si puo|pode|podemos|puis je|peut on|on peut|je peux|mag (?:ik|je|men)|mogen we|kan ik|moge|mozna|seguro|sicher|sicuro|veilig|bezpieczn\w*|peligroso|gefahrlich|dangereux|pericoloso|perigoso|gevaarlijk|niebezpieczn\w*)\b/u;

/** The Sun itself in other languages: an article tells "sol" and "sole" from names. */
export const SUN_ABROAD =
  /\b(?:sonne|soleil|sunn+|(?:el|al|de|del|o|ao|do|no|pro) sol|(?:il|al|del|col|nel|sul) sole|(?:de|naar de|in de) zon|slonc\w+)\b/u;
export const SUN = /\b(?:sun+s?|sunspots?|solar)\b/u;

const ECLIPSE =
  /\b(?:ecl?ip(?:se|ses|sed|s)|eclissi|sonnenfinsternis\w*|finsternis|zonsverduistering\w*|verduistering|zacmieni\w*)\b/u;
const OF_ECLIPSE =
  /\b(?:totality|(?:partial|annular) phases?|(?:second|third|2nd|3rd) contact|path of totality|baily s beads|bailys beads|diamond ring|ring of fire|annular\w*|max(?:imum)? eclipse|filters?\b.*\bc[1-4]|c[1-4]\b.*\bfilters?)\b/u;
const PARTLY_COVERED = /\b\d{2}(?: \d)? ?(?:percent|per cent|pct|partial)\b|\bpartial\b/u;
/** Other eclipses hurt nobody. */
export const OTHER_ECLIPSE =
  /\b(?:moons?|moon s|lunar|luna|lune|lunes|mond\w*|maan\w*|ksiezyc\w*|lua|blood|penumbra\w*|io|europa|ganymede|callisto|titan|tonight|at night|midnight|jupiter\w*|saturn\w*|algol|minim\w+|binar\w+|variables?|battery|humidity|charge\w*)\b/u;
export const ASKS_WHEN =
  /\b(?:when|next|what time|what date|which date|how long|where|list|wann|cuando|quand|quando|wanneer|kiedy)\b/u;

const EDGE =
  /\b(?<!(?:does|will|do|the) )(?:sun ?sets?|sun ?rises?)\b|\b(?:the )?(?:sunset|sunrise|setting sun|rising sun|sonnenuntergang|sonnenaufgang|(?:puesta|salida) del? sol|atardecer|(?:coucher|lever) (?:de|du) soleil|tramonto|alba|zonsondergang|zonsopkomst|(?:zachod|wschod) slonca|por do sol|nascer do sol)\b/u;
const AS_HOUR =
  /\b(?:before|after|until|till|since|around|by|at|from|past|following|nach|vor|bis|despues de|antes de|apres|avant|dopo|prima|na|voor|po|przed|depois|um \w+|min\w* (?:before|after)) (?:the |la |le |el |o |il |del |der |dem )?(?:sun ?set|sun ?rise|sonnenuntergang|sonnenaufgang|puesta|salida|coucher|lever|tramonto|alba|zonsondergang|zonsopkomst|zachod\w*|wschod\w*|por)\b/u;
const GREEN_FLASH = /\bgreen flash\b/u;

/** Guards that are for the Sun alone: named at all, they are asked of it. */
const SUN_GUARD =
  /\b(?:solar|sun|eclipse) (?:safe |continuum |white light )?(?:filt\w*|film|foil|glass(?:es)?|viewers?|shades|goggles|wedge)\b|\bherschel wedge\b|\biso ?12312\b|\b(?:space|emergency|rescue|survival) (?:blanket|foil)\b.*\bfilt\w*|\bh ?alpha\b.*\b(?:without|no|front)\b|\bsonnenfilter\w*|\bfiltro solar\b|\bfiltre solaire\b|\bfiltro solare\b|\bzonnefilter\w*/u;
/** "Pin hole in the film". */
const HOLED_FILM =
  /\b(?:pin ?holes?|holes?|scratch\w*|crease\w*|tear|torn)\b.*\b(?:solar|filter|\w+ style) (?:film|foil)\b|\b(?:solar|filter) (?:film|foil)\b.*\b(?:pin ?holes?|scratch\w*|torn)\b|\b(?:pin ?)?holes? in (?:the|my|a) (?:film|foil)\b/u;
const OF_PHOTOGRAPHY = /\b(?:camera film|roll of film|dew|mirror|lens coating)\b/u;

const FILTER_OFF =
  /\bfilt\w*(?: \w+){0,2} (?:off|away|removed)\b|\b(?:take|takes|taking|took|remove\w*|removing|pull|pulling|unscrew|drop)\b(?: \w+){0,4} (?:filt\w*|glasses)\b|\b(?:glasses|filt\w*) (?:come|comes|go|goes) off\b/u;
const OFF_AT =
  /\b(?:contact|totality|total|max|maximum|path|annular\w*|ring|eclip\w*|seconds|partial|percent|when|zone)\b/u;
const OTHER_FILTER =
  /\b(?:uhc|oiii|o3|nebula|light pollution|lp|cls|moon filter|colou?r(?:ed)?|filter wheel|wheel|thread\w*|stuck|jammed|luminance|narrow ?band|ha|nir|ir)\b/u;

/** "Wind blew my filter off": a filter in front, and no other. */
const FELL_OFF =
  /\b(?:wind|gust|front|tape)\b.*\bfilt\w*.*\b(?:off|away|loose)\b|\bfilt\w*\b.*\b(?:fell|blew|blown|slipped)\b.*\b(?:wind|front|tape|sun)\b/u;
const FINDER_OPEN = /\bfinder\w*\b.*\b(?:open|uncapped|uncovered|cap|cover|caps)\b.*\b(?:solar|sun)\b/u;
/** Densities that photographers darken with. */
const GREY_GLASS = /\bnd ?(?:3|3 0|3 8|5|5 0|400|1000|100000)\b/u;

const TRANSIT_OF_SUN = /\btransit (?:of )?(?:mercury|venus)\b|\b(?:mercury|venus) transit\b/u;

export const PROJECTS = /\bproject(?:s|ed|ing|ion|ors?)?\b/u;
const ONTO =
  /\b(?:sun|solar|eclip\w*)\b|\b(?:on|onto|to|over|against|behind)\b.*\b(?:paper|card|cardboard|wall|screen|sheet)\b|\b(?:paper|card|cardboard|white light)\b/u;

export const SWEEPS =
  /\b(?:sweep\w*|scan(?:s|ning)?|pan(?:ning)?|hunt\w*|search\w*|suchen?|buscar|busco|chercher|cercare|procurar|zoeken|szukac|(?:look\w*|slew\w*|mov(?:e|ing)|point\w*|wander\w*|poke|swing\w*)(?: it| the \w+)? (?:around|about|round))\b(?! (?:from|to|over to)\b)/u;
const BY_HAND =
  /\b(?:look\w* (?:for|at)|see|view\w*|watch\w*|find\w*|locat\w+|spot\w*|pick up|catch\w*)\b.*\b(?:binos?|bino\w*|bins|\d+ ?x ?\d{2}|finder|low power|by hand|by eye|\d{2} ?mm)\b/u;
const LOST = /\blost\b/u;
export const NEAR_SUN =
  /\b(?:venus|mercury|merkur\w*|mercurio|mercure|mercurius|venere|wenus|comet|(?:thin|young|old|crescent) (?:moon|crescent))\b/u;
export const SAYS_DAY =
  /\b(?:day ?time|day ?light|by day|(?:in|during) the day|day sky|broad day\w*|noon|mid ?day|lunch\w*|afternoon|(?:[89]|1[01])(?: [0-5]\d)? ?am|(?:12|[1-3])(?: [0-5]\d)? ?pm|sun (?:is |s )?(?:still )?(?:half )?up|(?:near|next to|close to|beside|around|from|by|past) (?:the )?sun|(?:before|at) sun ?set|at sun ?rise)\b/u;
/** From sunrise on. */
const SUN_RISEN =
  /\b(?:after|past|since|once|when|as soon as) (?:the )?(?:sun ?rise|sun ?up|dawn|day ?break|first light|sun (?:is |s |has )?(?:just )?(?:up|out|risen|rises|comes up|come up))\b|\b(?:while|as|when|with) (?:the )?sun (?:is |s )?(?:just |now )?(?:rising|coming up)\b/u;
/** It goes down, and so is still up: "the sun goes down in 10 minutes", "just before sunset", "Sonne geht gleich unter". */
const STILL_UP =
  /(?<!\b(?:when|after|once|until|till|if|as soon as|where|what time|does|will) )(?<!\b(?:when|after|once|until|till|if|as soon as|where|what time|does|will) the )\bsun (?:(?:is |s )?(?:just |now |nearly |almost |about to |soon |going to |gonna )*(?:setting|going down|set|sets|go down|goes down)\b(?= (?:in (?:a |\d|ten|five|fifteen|twenty|half|few)|now|soon|any|at the moment|right now|shortly)|$)|(?:is |s )?(?:just |nearly |almost |about |about to )+(?:setting|going down|set|down|go down|gone)\b|(?:is |s )?(?:setting|going down)\b|(?:is |s )still (?:up|there|shining)\b|(?:not|is ?n ?t|has ?n ?t|has not)(?: yet)? (?:down|set|gone)\b)|\b(?:nearly|almost|just before|minutes? (?:to|before|until|till)|mins? (?:to|before|until|till)) (?:the )?sun ?(?:set|down)\b|\bstill (?:\w+ )?(?:day )?light\b|\bsonne geht (?:\w+ ){0,3}unter\b/u;
export const SAYS_NIGHT =
  /\b(?:after (?:the )?(?:sun ?set|sun (?:is|has|s) (?:down|set|gone)|dark)|before (?:the )?(?:sun ?rise|dawn|sun (?:is up|rises|comes up))|tonight|evening|(?:[4-9]|1[01])(?: [0-5]\d)? ?pm|by night|at night|dusk)\b/u;

/** It has happened: eyes come first. */
const HURT =
  /\b(?:eyes?|sight|vision)\b.*\b(?:hurts?|sore|blur\w*|burn\w*|ache\w*|spots?)\b|\b(?:blurr?y|blind|dark|black) spots?\b/u;
/** A spot that somebody sees since; not those on the Sun itself. */
const SEES_SPOT =
  /\b(?:ve|veo|vede|vedo|voit|vois|sieht|sehe|sees?|seeing) (?:una? |eine?n? |une? |des |a )?(?:dark |black )?(?:manchas?|fleck(?:en?)?|taches?|macchi[ae]|spots?)\b(?! (?:on|in|en|auf|sur|sul) )/u;

/** Other questions: reminders. */
export const WAITS = /\b(?:remind\w*|warn|alert|wake|ping|let me know|tell me when)\b/u;

const isOfEclipse = (plain: string): boolean =>
  (ECLIPSE.test(plain) || OF_ECLIPSE.test(plain)) && (!OTHER_ECLIPSE.test(plain) || SUN.test(plain));

const THROUGH = '(?:through|thru|with|w|in|by|mit|durch|con|col|avec|met|przez|com|per|por|pelo) (?:\\w+ ){0,3}?';
const ECLIPSE_THROUGH = new RegExp(
  `(?:${ECLIPSE.source}) (?:\\w+ )?${THROUGH}(?:${TUBE.source}|${CAMERA.source})`,
  'u',
);
/** An account of a mount that names an eclipse by the way. */
export const OF_TROUBLE =
  /\b(?:connect\w*|usb|com ?ports?|ports?|drivers?|errors?|won ?t|cables?|firmware|time ?outs?|wi ?fi|bluetooth|hand ?set|hand controller|stopped|since)\b/u;

/** Of an eclipse one may ask the hour; with what one looks at it is asked of eyes. */
const isEclipseLooked = (plain: string): boolean => {
  if (!isOfEclipse(plain)) return false;
  if (NO_FILTER.test(plain) || GUARD.test(plain) || FILTER_OFF.test(plain) || HURT.test(plain)) return true;
  if (OF_TROUBLE.test(plain) || (ASKS_WHEN.test(plain) && !LOOKS.test(plain))) return false;
  if (MAY.test(plain) || (MAY_ABROAD.test(plain) && LOOKS.test(plain))) return true;
  return (TUBE.test(plain) || CAMERA.test(plain)) && (LOOKS.test(plain) || ECLIPSE_THROUGH.test(plain));
};

/** "At 99% partial can I look", "97 percent here, are glasses needed". */
const isPartlyCovered = (plain: string): boolean =>
  PARTLY_COVERED.test(plain) &&
  !OTHER_ECLIPSE.test(plain) &&
  (/\b(?:glasses|goggles)\b/u.test(plain) || NO_FILTER.test(plain) || FILTER_OFF.test(plain));

const isFilterOff = (plain: string): boolean =>
  FILTER_OFF.test(plain) && OFF_AT.test(plain) && !OTHER_FILTER.test(plain) && !OTHER_ECLIPSE.test(plain);

const isEdgeLooked = (plain: string): boolean => {
  if (GREEN_FLASH.test(plain)) return TUBE.test(plain) || CAMERA.test(plain) || MAY.test(plain) || LOOKS.test(plain);
  if (!EDGE.test(plain) || AS_HOUR.test(plain)) return false;
  return NO_FILTER.test(plain) || ((TUBE.test(plain) || CAMERA.test(plain)) && LOOKS.test(plain));
};

/** To point at it, or to align on it. */
const POINTS_ABROAD =
  /\b(?:ausricht\w*|ausgerichtet|richten|zeigen|einstellen|einnorden|uitlijnen|richten op|aline(?:ar|o)|apunt(?:ar|o)|allinea(?:re|rlo)|punta(?:re|rlo)|align(?:er|e)|pointer|viser|alinhar|apontar|ustawic|skierowac|celowac)\b/u;
const SEES_ABROAD = /\b(?:ver|vedere|voir|zien|sehen|zobaczyc|widziec)\b/u;
const EDGE_ABROAD =
  /\b(?:puesta|salida|coucher|lever|tramonto|alba|por|nascer|zachod\w*|wschod\w*)(?: del?| du| do)? (?:sole?|soleil|slonc\w+)\b/gu;

/** Of the Sun itself: "posso guardare Venere dopo il tramonto del sole" is of an hour. */
const isLeaveAskedAbroad = (plain: string): boolean =>
  MAY_ABROAD.test(plain) &&
  (LOOKS.test(plain) || SEES_ABROAD.test(plain) || POINTS_ABROAD.test(plain)) &&
  SUN_ABROAD.test(plain.replace(EDGE_ABROAD, ' ')) &&
  !ASKS_WHEN.test(plain) &&
  !/\ba que hora\b|\ba che ora\b|\bquelle heure\b|\bhoe laat\b|\bo ktorej\b/u.test(plain) &&
  !NEAR_SUN.test(plain);

const isAbroad = (plain: string): boolean =>
  SUN_ABROAD.test(plain) &&
  (NO_FILTER.test(plain) ||
    (LOOKS.test(plain) && (TUBE.test(plain) || GUARD.test(plain) || CAMERA.test(plain))) ||
    isLeaveAskedAbroad(plain));

const isGuard = (plain: string): boolean =>
  SUN_GUARD.test(plain) ||
  isOfWelding(plain) ||
  (isFilterHurt(plain) && !OTHER_FILTER.test(plain)) ||
  FINDER_OPEN.test(plain) ||
  (FELL_OFF.test(plain) && !OTHER_FILTER.test(plain)) ||
  (GREY_GLASS.test(plain) && !OTHER_ECLIPSE.test(plain) && (TUBE.test(plain) || /\bvisual\b/u.test(plain))) ||
  (HOLED_FILM.test(plain) && !OF_PHOTOGRAPHY.test(plain));

const isSoughtByHand = (plain: string): boolean =>
  SWEEPS.test(plain) ||
  BY_HAND.test(plain) ||
  LOST.test(plain) ||
  // While it goes down any looking for it by eye may end in it.
  (STILL_UP.test(plain) && TUBE.test(plain)) ||
  (STILL_UP.test(plain) && /\blook\w* (?:for|at)\b|\b(?:find|see|spot|catch)\b/u.test(plain));

/** "Before the Sun comes up", "nearly up": it is not up yet. */
const BEFORE_UP =
  /\b(?:before|until|till|by the time) (?:the )?sun(?: is| s| has)? (?:up|rises|comes? up|come up|risen)\b|\bsun (?:is |s )?(?:nearly|almost|not|not yet) (?:yet )?up\b/u;

/** Held in the hand, and the Sun is up by what is said. */
const HAND_HELD = /\b(?:binos?|bino\w*|bins|\d+ ?x ?\d{2}|finder\w*|by eye|naked eye)\b/u;
const isHandHeldByDay = (plain: string): boolean =>
  HAND_HELD.test(plain) && (SUN_RISEN.test(plain) || /\b(?:day ?time|day ?light|by day|during the day)\b/u.test(plain));

const isSweep = (plain: string, isSunUp: boolean): boolean => {
  if (!NEAR_SUN.test(plain) || !(isSoughtByHand(plain) || isHandHeldByDay(plain))) return false;
  if (STILL_UP.test(plain)) return true;
  if (/\bsun\b.*\bup\b/u.test(plain) && !BEFORE_UP.test(plain)) return true;
  return SAYS_DAY.test(plain) || SUN_RISEN.test(plain) ? !SAYS_NIGHT.test(plain) : isSunUp && !SAYS_NIGHT.test(plain);
};

/** "Polar scope at the Sun by accident"; "left in the sun" is of the weather. */
const AT_SUN = /\b(?:at|on|onto|into|towards?|for|of) the sun\b(?! (?:side|terrace|deck|porch))/u;
const LOOKS_TAME =
  /\b(?:low|red|orange|dim|dull|dark|ha[sz]e|hazy|fog\w*|mist\w*|smog|clouds?|cloudy|setting|rising|half|deg\w*)\b/u;
const COVERED = /\bcover\w*\b.*\bsun\b|\bsun\b.*\bcover(?:ed|s)?\b/u;
/** "Sun with my old binoculars". */
const SUN_THROUGH = new RegExp(`(?:\\bsun+|${SUN_ABROAD.source}) ${THROUGH}(?:${TUBE.source}|${CAMERA.source})`, 'u');
const isNearSun = (plain: string): boolean =>
  SUN.test(plain) &&
  ((AT_SUN.test(plain) && (TUBE.test(plain) || CAMERA.test(plain))) ||
    (MAY.test(plain) && ((LOOKS_TAME.test(plain) && /\bpain\b|\bsafe\w*/u.test(plain)) || COVERED.test(plain))));

const isAtSun = (plain: string): boolean => SUN_THROUGH.test(plain) || isNearSun(plain);

const IN_TOTALITY =
  /\b(?:when|once|while|during|if|until|till|for|as|in) (?:it(?: is| s)? |its |the )?(?:fully |completely )?(?:total|totality|fully covered|all covered|completely covered)\b|\btotality\b|\b(?:bei|wahrend|durante|pendant|en|na|podczas) (?:der |la |il |a )?(?:totalit\w*|totalidad\w*)\b/u;

/** "Do we need glasses when it is total?", after an eclipse was told of. */
const isTotal = (plain: string): boolean => GUARD.test(plain) && !OTHER_ECLIPSE.test(plain) && IN_TOTALITY.test(plain);

const NEEDED =
  /\b(?:need(?:s|ed)?|necessary|require[sd]?|wear|use|keep|must|have to|has to|got to|should|supposed to|do (?:i|we|you)|what|which|any|brauche\w*|braucht|hace falta|necesit\w*|faut il|il faut|besoin|serv(?:e|ono)|nodig|potrzeb\w*|precis\w*)\b|^(?:\w+ )?(?:filt\w*|glasses|goggles) (?:for|in|during|at)\b/u;

/** Whether a filter is needed in totality, or which: a plain No would be heard of the whole eclipse, a plain Yes is not true of it. */
export const asksFilterInTotality = (plain: string): boolean =>
  isTotal(plain) && NEEDED.test(plain) && !FILTER_OFF.test(plain);

/** "What if i project it on paper": nothing else is projected so. */
const isProjectedOnPaper = (plain: string): boolean =>
  !OTHER_ECLIPSE.test(plain) &&
  /\bproject(?:ing|ed)? (?:it|that|this|(?:the|an|its) image) (?:\w+ ){0,2}?(?:on|onto|to|against)\b.*\b(?:paper|card|cardboard|wall|sheet)\b|\b(?:paper|card|cardboard|wall|sheet) to project (?:it|that|on)\b/u.test(
    plain,
  );

/** "Antares occultation by the Sun, look?" */
const isBehindSun = (plain: string): boolean =>
  /\b(?:occult\w*|hidden|covered|eclipsed) by (?:the )?sun\b|\b(?:the )?sun (?:occults?|occulting|hides|covers|passes over|passes in front of)\b(?! by)/u.test(
    plain,
  ) && !/\bmoon\b/u.test(plain);

const isTransit = (plain: string): boolean =>
  TRANSIT_OF_SUN.test(plain) && (NO_FILTER.test(plain) || GUARD.test(plain) || TUBE.test(plain));

/** With a filter over the front one may look, and what is asked of a guard itself is no look. @param glasses what is said of eclipse glasses */
const ofGuard = (plain: string, glasses: SunCaution | null): SunCaution | null => {
  const isOfLens = TUBE.test(plain) || CAMERA.test(plain);
  if (glasses === 'sun-glasses' && !isOfLens && asksOfGuard(plain)) return 'sun-glasses-bare';
  if (glasses !== null) return glasses;
  if (isGuardedInFront(plain)) return takesNoYes(plain) ? 'sun-how' : 'sun-guarded';
  return !CAMERA.test(plain) && asksOfGuard(plain) ? 'sun-filter' : null;
};

/** Which of the cautions fits words that are of looking at the Sun, however they are. */
export const sunCautionFor = (plain: string): SunCaution => {
  const isEclipse = isOfEclipse(plain);
  if (PROJECTS.test(plain)) return 'sun-projection';
  if (asksFilterInTotality(plain)) return 'sun-totality-filter';
  if (isFilterOff(plain) || isTotal(plain) || OF_ECLIPSE.test(plain) || (isEclipse && /\btotal\b/u.test(plain)))
    return 'sun-totality';
  if (!CAMERA.test(plain) && (isPartlyCovered(plain) || COVERED.test(plain))) return 'sun-totality';
  const glasses = eclipseGlasses(plain, [TUBE, CAMERA]);
  return ofGuard(plain, glasses) ?? (CAMERA.test(plain) ? 'sun-camera' : 'sun-looking');
};

/** The words without accents and marks, as these rules read them. */
export const plainHarm = (said: string): string =>
  foldWords(
    said
      .replace(/%/gu, ' percent ')
      .replace(/\b([ld])['’](?=\p{L})/giu, '$1 ')
      .replace(/\bw\/o\b/giu, ' without '),
  )
    .replaceAll('ł', 'l')
    .replace(/\bmoon filt\w*/u, 'filter')
    .replace(/^(?:ok|okay|fine) /u, '');

/**
 * @param plain the words as typed, slips mended or not, made plain by plainHarm
 * @param isSunUp where the asker usually stands, now; false where nobody knows
 * @returns what is to be said first; null: it comes near no such harm
 */
export const sunHarm = (plain: string, isSunUp: boolean): SunCaution | null => {
  if (WAITS.test(plain)) return null;
  if (SEES_SPOT.test(plain) && (SUN.test(plain) || SUN_ABROAD.test(plain))) return 'eyes';
  if (isSweep(plain, isSunUp)) return 'sun-sweep';
  if (PROJECTS.test(plain) && ONTO.test(plain) && /\b(?:white light|projection|projecting)\b/u.test(plain))
    return 'sun-projection';
  const isOfHarm = [
    isEclipseLooked,
    isPartlyCovered,
    isFilterOff,
    isEdgeLooked,
    isAbroad,
    isGuard,
    isAtSun,
    isTransit,
    isTotal,
    isProjectedOnPaper,
    isBehindSun,
  ].some((is) => is(plain));
  if (!isOfHarm) return null;
  return HURT.test(plain) && (isOfEclipse(plain) || SUN.test(plain) || SUN_ABROAD.test(plain))
    ? 'eyes'
    : sunCautionFor(plain);
};
