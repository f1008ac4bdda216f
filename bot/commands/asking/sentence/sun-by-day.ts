/**
 * Lines that come near the Sun though few of them name it: work and open tubes by day, what stands beside the Sun or hides it, a cap with a small
 * hole. Pure; English, and the plainest words of other languages (from memory).
 */
import type { DayAt } from './day-at.js';
import type { SunCaution } from './sun-guards.js';
import { CAMERA, LOOKS, MAY, NEAR_SUN, OF_TROUBLE, SAYS_DAY, SAYS_NIGHT, SUN, SUN_ABROAD, TUBE } from './sun-harm.js';

const MOON = /\b(?:moons?|neumond|vollmond|moon s|lunar|luna|lune|mond\w*|maan\w*|lua|ksiezyc\w*)\b/u;
const ANY_LENS = new RegExp(`${TUBE.source}|${CAMERA.source}|\\b\\d{2,4} ?mm\\b|\\blens(?:es)?\\b|\\bzoom\\w*`, 'u');

/** A dog of the Sun is no star. */
const SUN_DOG = /\b(?:sun ?dogs?|mock suns?|parhel\w+|nebensonne\w*|parelio\w*|parelie\w*|bijzon\w*)\b/u;
const HALO = /\b(?:halo\w*|halos|aureole)\b/u;
const isHalo = (plain: string): boolean =>
  SUN_DOG.test(plain) ||
  (HALO.test(plain) &&
    !MOON.test(plain) &&
    !/\bgalax\w*|\bglobular|\bstars?\b/u.test(plain) &&
    (SUN.test(plain) || SUN_ABROAD.test(plain) || (/\b22\b/u.test(plain) && ANY_LENS.test(plain))));

const THE =
  '(?:the |a |an |my |our |some |that |this |der |die |das |dem |den |einem |einer |la |le |un |une |el |il |lo |o |de |het |een )?';
const BEHIND =
  '(?:behind|hidden (?:by|behind)|blocked (?:by|out by)|covered by|shielded by|hinter|verdeckt von|derriere|cache par|detras|tras|dietro|atras|achter|za)';
const IS =
  '(?:is |s |was |goes |gets |stands |ist |steht |est |esta |e |staat |just |only |right |now |already |kurz |gerade |justo |juste |still |still just )*';
const SUN_WORD = `(?:sun|sonne|soleil|sol|sole|zon)`;
const HIDES =
  'roof\\w*|rooftop|chimney\\w*|house\\w*|building\\w*|tree\\w*|wall\\w*|hill\\w*|mountain\\w*|ridge|fence|hedge|barn|shed|tower|church|garage|balcon\\w*|corner|pole|post|leaves|hand|dach\\w*|haus\\w*|kamin|schornstein|baum\\w*|berg\\w*|mauer|toit|maison|cheminee|arbre|mur|colline|tejado|casa|chimenea|arbol|muro|edificio|tetto|camino|albero|telhado|dak|huis|boom';
const SUN_HIDDEN = new RegExp(
  `\\b${SUN_WORD} ${IS}${BEHIND} (?:de |del |du |de la )?${THE}(?:\\w+ )?(?:${HIDES})\\b`,
  'u',
);
const BLOCKS = new RegExp(
  `\\b(?:block\\w*|hid(?:e|es|ing)|cover\\w*|shield\\w*|mask\\w*) (?:out )?(?:the )?sun\\b.{0,20}\\b(?:with|by|behind) (?:\\w+ ){0,2}?(?:${HIDES})\\b`,
  'u',
);
const IN_SHADOW =
  /\b(?:in|from|inside|under) (?:the |a |some )?(?:shade|shadow)\b|\b(?:im schatten|a l ombre|a la sombra|all ombra|in de schaduw)\b/u;

/** "Sun just behind the roof, Mercury in binoculars": of the Sun hidden, not set. */
const isHidden = (plain: string): boolean => {
  const hidden = SUN_HIDDEN.test(plain) || BLOCKS.test(plain);
  if (hidden) return (NEAR_SUN.test(plain) || TUBE.test(plain) || CAMERA.test(plain)) && !MOON.test(plain);
  return IN_SHADOW.test(plain) && NEAR_SUN.test(plain) && TUBE.test(plain) && !SAYS_NIGHT.test(plain);
};
const NEW_MOON = /\b(?:new moon|neumond|lune nouvelle|nouvelle lune|luna nueva|luna nuova|lua nova|nieuwe maan)\b/u;
const MOON_AT_NEW =
  /\bmoon (?:(?:right |just |exactly )?at|when|while|in) (?:its |it is |it s )?(?:new\b(?! moon)|conjunction)/u;
const BESIDE_SUN = new RegExp(
  `\\b(?:(?:right |just |close |very |so )*(?:next to|beside|near(?: to)?|close to|by|neben|nahe|bei|a cote|pres|al lado|junto|cerca|accanto|vicino|ao lado|perto|naast|bij)(?: an?)?(?: de| du| del| al| a| do)?) ${THE}${SUN_WORD}\\b`,
  'u',
);
const TAKES_PICTURE = /\b(?:photo\w*|foto\w*|imag(?:e|ing)|shoot\w*|shot|snap\w*|pic(?:s|ture)?|film\w*|capture\w*)\b/u;
const YOUNG = /\b(?:crescent|sichel|thin|young|old|days?|hours?|after|before|croissant|creciente|falce)\b/u;

/** "Imaging galaxies at new Moon" is of the dark. */
const PICTURE_OF_NEW_MOON = new RegExp(
  `${TAKES_PICTURE.source} (?:the |a |den |la |il |de )?(?:moon at )?(?:the )?${NEW_MOON.source}|^(?:den )?neumond (?:\\w+ )?(?:fotograf\\w*|film\\w*|aufnehmen)`,
  'u',
);

const isNewMoon = (plain: string): boolean => {
  if (!MOON.test(plain) || /\beclip|finsternis/u.test(plain)) return false;
  if (BESIDE_SUN.test(plain)) return LOOKS.test(plain) || ANY_LENS.test(plain);
  if (YOUNG.test(plain)) return false;
  if (MOON_AT_NEW.test(plain)) return LOOKS.test(plain) || TAKES_PICTURE.test(plain);
  return PICTURE_OF_NEW_MOON.test(plain);
};

const NO_CAP =
  '(?:open|uncapped|un ?capped|uncovered|un ?covered|bare|(?:with )?no (?:cap|caps|cover|lid)(?: on)?|without (?:an? |the |its |any )?(?:cap|caps|cover|lid)|(?:cap|caps|cover|lid) (?:is |was |are )?(?:off|removed|open)|not (?:capped|covered))';
const OPEN = new RegExp(
  `\\b(?:tube|ota|scope|telescope|dob\\w*|newt\\w*|refractor|reflector|sct|finder\\w*|it)\\b(?: \\w+){0,3}? ${NO_CAP}\\b|\\b${NO_CAP} (?:tube|ota|scope|telescope|dob\\w*|refractor|finder\\w*)\\b`,
  'u',
);
export const CAP_OFF = new RegExp(`\\b${NO_CAP}\\b`, 'u');
/** "Polar alignment still open" is of no tube. */
const CAPS = new RegExp(`\\b${NO_CAP.replace('open|', '').replace('|bare|', '|')}\\b`, 'u');
/** No word of it is of a roof, or of a trouble. */
const OTHER_OPEN = /\b(?:roof|dome|shed|shutter|source|cluster|open (?:the )?(?:app|port|file|menu|program\w*))\b/u;
export const LEFT =
  /\b(?:leav(?:e|es|ing)|left|park(?:ed|ing)?|stand(?:s|ing)?|stay(?:s|ing)?|keep\w*|kept|put|unattended|lass(?:e|en)?|steh(?:t|en)|lege?n?|stell(?:e|en)|dejar|dejo|deixar|lascia(?:re|to)|laisser|laisse|laten)\b/u;
export const DAY =
  /\b(?:day ?time|day ?light(?! (?:sav\w*|time))|by day|all day|whole day|(?:in|during|over|through) the day|during day|(?:at |around |by )?(?:noon|mid ?day|lunch ?time)|(?:this|all|in the) afternoon|sun ?light|in (?:the )?(?:full |bright |hot )?sun|(?:with|while|when) (?:the )?sun(?: is| s)? (?:still )?(?:up|out|at \w+)|sun (?:is |s )?(?:still )?(?:up|out)|ganzen tag|tagsuber|am tag|bei tag|mittags?|toute la journee|la journee|en plein jour|en pleno dia|todo el dia|de dia|tutto il giorno|di giorno|o dia todo|de dia|hele dag|overdag)\b/u;
export const AT_WINDOW =
  /\b(?:in|by|at|near|through|behind|to|towards|on|ans?|am|im|vors?|devant|a|en|alla|na|bij|voor) (?:the |a |my |our |its |la |el |una |de |het |o |das |dem )?(?:\w+ ){0,2}?(?:window\w*|conservator\w*|sun ?room|greenhouse|skylight|fenster\w*|fenetre|ventana|finestra|janela|raam)\b/u;
const GOT_HOT =
  /\b(?:got|gets|getting|went|became|felt|is|was|so|too|very|really) (?:\w+ )?(?:hot|warm|melted|burnt?)\b|\bmelt(?:s|ed|ing)?\b|\bsmok(?:e|es|ed|ing)\b/u;

const OF_EVENING = /\b(?:tonight|night|nights|evening|dusk|cool\w*|rain\w*|dew|frost)\b/u;

const A_TUBE =
  /\b(?:it|tube|ota|scope|telescope|telesk\w*|telesco\w*|teleskop\w*|binos?|binoculars|lens|eye ?piece|dob\w*)\b/u;
const isAtWindow = (plain: string): boolean =>
  A_TUBE.test(plain) &&
  ((LEFT.test(plain) && (DAY.test(plain) || MAY.test(plain))) || GOT_HOT.test(plain) || DAY.test(plain));

const ASKS_LEAVE = new RegExp(`${MAY.source}|\\b(?:right|problem|risk\\w*)\\b`, 'u');
/** Said by day of a tube of one's own: "take the cap off", "C11 cap off to cool now". */
const UNCAPS =
  /\b(?:take|taking|took|pull|get|remove)\b(?: \w+){0,3} (?:caps?|covers?|lids?) off\b|\b(?:take|taking|took|pull|get) off (?:the |my |its )?(?:\w+ )?(?:caps?|covers?|lids?)\b|\b(?:remove|removing) (?:the |my |its )?(?:\w+ )?(?:caps?|covers?|lids?)\b|\b(?:caps?|covers?|lids?) off\b/u;
const AT_NIGHT = /\b(?:tonight|night|nights|evening|dusk|dark|after sun ?set|later)\b/u;

const isLeftOpen = (plain: string, isSunUp: boolean): boolean => {
  if (isSunUp && UNCAPS.test(plain)) return ![OF_TROUBLE, OTHER_OPEN, AT_NIGHT].some((other) => other.test(plain));
  if (OF_TROUBLE.test(plain) || OTHER_OPEN.test(plain) || OF_EVENING.test(plain)) return false;
  if (AT_WINDOW.test(plain)) return isAtWindow(plain);
  const isLeft = LEFT.test(plain) && (OPEN.test(plain) || (TUBE.test(plain) && CAP_OFF.test(plain)));
  if (isLeft) return isSunUp || DAY.test(plain) || ASKS_LEAVE.test(plain);
  return OPEN.test(plain) && DAY.test(plain) && !IS_WORK.test(plain);
};

/** With the tube open. */
const IS_WORK =
  /\balign\w*|\bcalibrat\w* (?:the |my )?guid\w*|\bguid\w* calibrat\w*|\bflats\b|\bflat (?:fields?|frames?)\b/u;
/** Covered by what lights them, or of a trouble with them. */
const OTHER_WORK =
  /\b(?:panel|light ?box|tablet|indoors?|inside|t ?shirt|dusk|twilight|after sun ?set|evening|dust|vignett\w*|calibrate with|align(?:ment|ing)? stars?|stars? (?:to|for) align\w*)\b/u;

/** "At 1400", "at 2pm". */
const HOUR = /\bat (\d{1,2}(?: ?[ap]m| \d{2})?|\d{4})\b/u;
const hourSaid = (plain: string): string | null => {
  const hour = HOUR.exec(plain)?.[1];
  return hour === undefined ? null : hour.replace(/^(\d{1,2}) ?(\d{2})$/u, '$1:$2');
};

const ON_SUN = /\bon (?:the )?sun\b/u;
const STILL_LIGHT = /\b(?:its|it is|while|still) (?:\w+ )?(?:light|bright|day)\b/u;
const NOW = /\b(?:now|yet|at the moment)\b/u;
const OF_FLATS = /\bflats?\b/u;
const FLATS_AT_EDGE = /\bflats?\b.*\b(?:at|around|near|before) (?:the )?sun ?(?:set|rise)\b/u;
/** With the tube open, or flats that are to be taken now. */
const isOfThisMinute = (plain: string): boolean =>
  OPEN.test(plain) || CAPS.test(plain) || (NOW.test(plain) && OF_FLATS.test(plain));

const isDayWork = (plain: string, day: DayAt | null): boolean => {
  if (!IS_WORK.test(plain) || OTHER_WORK.test(plain) || ON_SUN.test(plain)) return false;
  if (OF_TROUBLE.test(plain) || OF_EVENING.test(plain)) return false;
  if (FLATS_AT_EDGE.test(plain)) return true;
  const hour = hourSaid(plain);
  if (hour !== null && day !== null) return day.isSunUp(hour);
  return DAY.test(plain) || STILL_LIGHT.test(plain) || (isOfThisMinute(plain) && day?.isSunUp('now') === true);
};

const SMALL_HOLE =
  /\b(?:(?:little|small|tiny|mini|other|second|2nd|inner|centre|center) (?:\w+ )?(?:hole|cap|opening|lid)|hole in (?:the|its|a) (?:\w+ )?(?:cap|cover|lid)|(?:cap|cover|lid) (?:with|has|having) (?:the |a )?(?:little |small |tiny )?(?:hole|opening))\b/u;
const OF_CAP = /\b(?:cap|caps|cover|lid|mask)\b/u;
const OPENS_IT = /\b(?:look\w*|view\w*|watch\w*|see|sun|eclip\w*|daylight|peek|solar)\b/u;
const isSmallHole = (plain: string): boolean =>
  SMALL_HOLE.test(plain) &&
  OF_CAP.test(plain) &&
  OPENS_IT.test(plain) &&
  !MOON.test(plain) &&
  !OTHER_SIGHTS.test(plain);

/** What else is looked at. */
const OTHER_SIGHTS =
  /\b(?:jupiter\w*|saturn\w*|mars|venus|mercury|uranus|neptune|galax\w*|nebula\w*|accretion|planets?|airy|airys|stars?|secchi|bahtinov|cluster\w*|moon\w*)\b/u;

const DAY_ABROAD =
  /\b(?:am (?:hellen )?tage?|bei tag(?:eslicht)?|tagsuber|mittags?|en plein jour|de jour|en pleno dia|de dia|a mediodia|di giorno|a mezzogiorno|in pieno giorno|overdag|bij daglicht|w dzien|em pleno dia)\b/u;
const BY_HAND = /\b(?:dob\w*|by hand|hand ?held|push ?to|push\w*|nudg\w*|no go ?to|without (?:a )?go ?to|manual\w*)\b/u;
const BY_BINOCULARS =
  /\b(?:bino\w*|bins|\d{1,2} ?x ?\d{2}s?|fernglas\w*|feldstecher|prismaticos|jumelles|binocolo|verrekijkers?|lornetk\w*)\b/u;
/** From eight on the Sun is up in most of the year where most people live: better warned for nothing. */
export const MORNING_HOUR =
  /\b(?:(?:half|quarter) (?:past|to) )?(?:[89]|1[01])(?: [0-5]\d)?(?: o clock)? (?:(?:in|of) the|tomorrow|this) morning\b/u;
const ASKS_THE_WAY = /\b(?:which way|where|find|locate|how (?:do|can|to))\b/u;
/** "Where do we point the telescope": a mount that is sent there is not spoken of. */
const WHERE_TO_POINT =
  /\b(?:point|aim|turn|swing|move)\w* (?:(?:the|my|our|a|his|her) )?(?:\w+ )?(?:telescopes?|scope|tube|binos?|binoculars|it)\b.*\bwhere\b|\bwhere\b.*\b(?:point|aim|turn|swing|look)\b/u;
const BY_MOUNT = /\b(?:go ?to|slew\w*|mount|motor\w*|track\w*|align\w*)\b/u;
/** By hand or by eye, at an hour when the Sun is up, or may be. */
const isByHandByDay = (plain: string, isSunUp: boolean): boolean => {
  if (BY_BINOCULARS.test(plain) && (SAYS_DAY.test(plain) || MORNING_HOUR.test(plain))) return true;
  if (!BY_HAND.test(plain)) return false;
  return DAY.test(plain) || SAYS_DAY.test(plain) || (isSunUp && ASKS_THE_WAY.test(plain));
};
const isSoughtByDay = (plain: string, isSunUp: boolean): boolean => {
  if (!NEAR_SUN.test(plain) || MOON.test(plain) || SAYS_NIGHT.test(plain)) return false;
  if (DAY_ABROAD.test(plain) || isByHandByDay(plain, isSunUp)) return true;
  if (isSunUp && WHERE_TO_POINT.test(plain) && !BY_MOUNT.test(plain)) return true;
  return DAY.test(plain) && /\bpossible\b/u.test(plain);
};

/** What is seen of the Sun alone, in totality. */
const OF_TOTALITY = /\b(?:bail(?:e?ys?|y s) beads?|(?:the |solar |sun s |suns )corona|diamond ring)\b/u;
const TOTAL_ASKED =
  /\b(?:naked|bare|eyes?|without|no filter|unfiltered|filt\w*|look\w*|see|seen|observe\w*|watch\w*|view\w*|photo\w*|image|safe\w*)\b/u;
const isOfTotality = (plain: string): boolean =>
  (OF_TOTALITY.test(plain) || (/^corona (?:visible|without|with)\b/u.test(plain) && TOTAL_ASKED.test(plain))) &&
  TOTAL_ASKED.test(plain) &&
  !/\b(?:borealis|australis)\b/u.test(plain);

const FLASH = /\bgreen flash\b/u;
const isFlash = (plain: string): boolean =>
  FLASH.test(plain) && (ANY_LENS.test(plain) || TAKES_PICTURE.test(plain) || /\binch\b/u.test(plain));

/**
 * @param plain the words as typed, made plain by plainHarm
 * @param day where the asker usually stands; null where nobody knows
 * @returns what is to be said first; null: it is near no such harm
 */
export const harmByDay = (plain: string, day: DayAt | null): SunCaution | null => {
  const isSunUp = day?.isSunUp('now') === true;
  if (/\b(?:remind\w*|alert|wake|ping|let me know|tell me when)\b/u.test(plain)) return null;
  if (isHalo(plain)) return 'sun-halo';
  if (isHidden(plain)) return 'sun-hidden';
  if (isNewMoon(plain)) return 'sun-new-moon';
  if (isSmallHole(plain)) return 'sun-small-hole';
  if (isOfTotality(plain)) return 'sun-totality';
  if (isSoughtByDay(plain, isSunUp)) return 'sun-sweep';
  if (isFlash(plain)) return 'sun-camera';
  if (isDayWork(plain, day)) return 'sun-day-work';
  return isLeftOpen(plain, isSunUp) ? 'sun-open' : null;
};
