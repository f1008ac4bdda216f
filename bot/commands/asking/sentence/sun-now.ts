/**
 * It is happening: the Sun in the tube or the finder, smoke from it, a tube swept over it. What to do stands first, whether or not the Sun is up by
 * the site that is known. Pure; English, and the plainest words of seven more languages (from memory).
 */
import { CAMERA, SUN, SUN_ABROAD, TUBE } from './sun-harm.js';

/** The Sun where nothing but the Sun can be: an article, or none. */
const ANY_SUN = new RegExp(`${SUN.source}|${SUN_ABROAD.source}|\\b(?:sonne|soleil|sole|sol|zon|slonc\\w+)\\b`, 'u');
/** A finder, or what stands at the tube's end: these have no current to burn by. */
export const AN_OPTIC =
  /\b(?:(?:view)?finders?|finder ?scopes?|eye ?pieces?|ep|sucher\w*|okular\w*|buscador\w*|ocular\w*|cercatore|oculare|chercheur|oculaire|zoeker|szukacz\w*|celownik\w*)\b/u;
export const BURNS =
  /\b(?:burn marks?|stinks|smok(?:e|es|ed|ing|y)|smoulder\w*|smolder\w*|fum(?:es?|ing)|melt(?:s|ed|ing)?|on fire|caught fire|sizzl\w+|(?:smells?|stinks?|reeks?)(?: of)?(?: \w+)? burn\w*|burning|burnt (?:smell|plastic)|burn(?:t|ed|s|ing)? (?:a )?holes?|raucht?|rauchen|qualm\w*|brennt|schmilzt|schmort|humo|humea|quema(?:ndo)?|arde|derrite|fuma|fumo|brucia|fonde|sciolt\w*|fumee|brule|fond|crame|rook|rookt|brandt|smelt|smeult|dym\w*|pali sie|topi sie|fumaca|queima\w*|arde|derrete\w*)\b/u;
/** Something else that burns. */
export const OF_CURRENT =
  /\b(?:boards?|motors?|adapt[eo]rs?|dongles?|suppl(?:y|ies)|power|plugs?|leads?|cables?|wires?|batter(?:y|ies)|electronics?|chips?|usb|fuses?|hand ?sets?|laptop|charger|dew|heater|camp ?fire|bbq|barbecue|chimney|wild ?fires?|bonfire|forest)\b/u;

/** Leave to do it is asked for, or how: that is answered by whether one may. */
const ASKS_LEAVE =
  /^(?:(?:so|and|ok|okay|hi|hey|please|well) )*(?:can|may|could|should|shall|might|is|are|am|how|when|where|what|whats|which|why|would|will|does|do|did|if|must|darf|kann|puedo|posso|puis|mag|kan|moge|mozna|wie|como|come|comment|hoe|jak)\b/u;
const NOW =
  /\b(?:help|hilfe|ayuda|aiuto|aide|au secours|socorro|pomocy|oops|oh no|omg|shit|damn|emergency|quick(?:ly)?|urgent\w*|accident\w*|(?:by )?mistake|just now|right now|suddenly|what do i do|what now|what to do|what should i do|before i could)\b/u;
const FIELD = '(?:view|fov|field(?: of view)?|frame|picture|image|shot|screen|sensor|live ?view)';
/** "The sun is in my finder", "sun in view", "die Sonne ist im Sucher". */
const IN_IT = new RegExp(
  `(?:${ANY_SUN.source})(?: (?:is|s|has|got|came|come|comes|went|drifted|moved|now|right|straight|shining|shines|shone|just|ist|scheint|esta|e|est|dans|da|is er|jest|still|already|there))* (?:in|into|inside|dentro|nel|nella|dans|no|na|en|im|ins|w) ?(?:(?:the|my|our|a|his|her|their|its|el|la|le|il|lo|o|de|het|mijn|mi|mio|mon|den|dem|das) )*(?:\\w+ )?(?:${FIELD}|${TUBE.source}|${CAMERA.source}|${AN_OPTIC.source})`,
  'u',
);
const WENT_THROUGH =
  /\bsun (?:has |had )?(?:just |then )?(?:went|passed|moved|drifted|came|swept) (?:right |straight )?(?:through|across|over) (?:the|my|our|his|her|its)\b/u;
/** What stood before the Sun is gone: "my filter blew off", "het filter is gevallen". */
const FILTER_GONE =
  /\b(?:\w*filt\w*|film)(?: (?:has|have|had|is|was|ist|war|est|e|just|suddenly|halfway|nearly))* (?:blew|blown|fell|fallen|came|come|dropped|slid|slipped|flew|torn|ripped|gevallen|gefallen|runtergefallen|abgefallen|caduto|caido|tombe|spadl)\b|\b(?:wind|gust)\b.*\b(?:took|blew|lifted|knocked)\b.*\bfilt\w*/u;
/** Of another filter, or asked for the next time. */
const OTHER_FILTER =
  /\b(?:wheel|drawer|uhc|oiii|ha|nebula|lum\w*|moon|night|how|keep|stop|prevent|would|might|could|if)\b/u;
/** Somebody looks, and it is there. */
const IS_IN_IT =
  /\b(?:sun|sonne|sole|sol|soleil|zon)(?: (?:is|s|was|still|right|now|just|ist|e|est))* (?:in it|still in it|drin|in there)\b|\b(?:had|have|got) the sun in(?: it)?\b/u;
const WITHIN = /\b(?:dentro|drin|darin|dedans|erin|w srodku|inside it|in it)\b/u;
const MOVER =
  '(?:mount|tracking|scope|telescope|tube|ota|it|goto|go to|dob|slew|finder|camera|montierung|teleskop|telescopio|montura|montatura|monture|montering|telescoop|montaz)';
const WENT =
  '(?:went|swept|slewed|passed|swung|moved|drove|ran|drifted|crossed|pointed|stopped|landed|ended up|(?:is|was|s) (?:now |still )?(?:pointing|pointed|aimed|aiming|looking|stuck))';
/** "Mount went past sun", "scope is pointing at the sun". */
const OVER_IT = new RegExp(
  `\\b${MOVER}(?: (?:has|have|had|just|accidentally|suddenly|now))* ${WENT}(?: (?:right|straight|directly|back|itself|it|(?:the|my|our|its) \\w+))* (?:past|over|across|through|at|on|onto|into|by|near|towards?) (?:the )?sun\\b(?! (?:deck|room|terrace|side|shade))|\\bswept (?:over|across|past) the sun\\b`,
  'u',
);
/** With what is proper, or not yet. */
const IS_GUARDED =
  /\b(?:with (?:the |a |my )?(?:solar |sun |front )*(?:filter|film)|filter (?:is |was )?on|filtered|caps? (?:is |was |were |are )?(?:still )?on|through (?:the |a |my )?(?:solar )?filter|tomorrow|will|would|going to|plan\w*|next (?:week|month|year))\b/u;

const isBurning = (plain: string, isSun: boolean, isSunUp: boolean): boolean => {
  if (!BURNS.test(plain) || OF_CURRENT.test(plain) || OF_GLASS.test(plain)) return false;
  if (AN_OPTIC.test(plain)) return true;
  return isSun ? TUBE.test(plain) || WITHIN.test(plain) : isSunUp && TUBE.test(plain);
};
const OF_GLASS = /\bsmoked? (?:glass|film)\b/u;

const isFilterGone = (plain: string, isSun: boolean, isSunUp: boolean): boolean =>
  FILTER_GONE.test(plain) &&
  !OTHER_FILTER.test(plain) &&
  (isSun || isSunUp || /\b(?:solar|sonnenfilt\w*|zonnefilt\w*)\b/u.test(plain));

const isInSight = (plain: string): boolean => {
  if (OVER_IT.test(plain) || WENT_THROUGH.test(plain) || IS_IN_IT.test(plain)) return true;
  return IN_IT.test(plain) && (NOW.test(plain) || /^(?:the )?sun\b/u.test(plain));
};

/**
 * @param plain folded, see plainHarm
 * @param isSunUp where the asker usually stands, now
 */
export const isSunNow = (plain: string, isSunUp: boolean): boolean => {
  const isSun = ANY_SUN.test(plain);
  if (isBurning(plain, isSun, isSunUp) || isFilterGone(plain, isSun, isSunUp)) return true;
  if (!isSun || IS_GUARDED.test(plain) || (ASKS_LEAVE.test(plain) && !NOW.test(plain))) return false;
  return isInSight(plain);
};
