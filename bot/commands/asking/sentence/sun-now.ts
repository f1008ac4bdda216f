/**
 * It is happening: the Sun in the tube or the finder, smoke from it, a tube swept over it. What to do stands first, whether or not the Sun is up by
 * the site that is known. Pure; English, and the plainest words of seven more languages (from memory).
 */
import { CAMERA, SUN, SUN_ABROAD, TUBE } from './sun-harm.js';

/** The Sun where nothing but the Sun can be: an article, or none. */
const ANY_SUN = new RegExp(`${SUN.source}|${SUN_ABROAD.source}|\\b(?:sonne|soleil|sole|sol|zon|slonc\\w+)\\b`, 'u');
/** A finder, or what stands at the tube's end: these have no current to burn by. */
const AN_OPTIC =
  /\b(?:(?:view)?finders?|finder ?scopes?|eye ?pieces?|ep|sucher\w*|okular\w*|buscador\w*|ocular\w*|cercatore|oculare|chercheur|oculaire|zoeker|szukacz\w*|celownik\w*)\b/u;
const BURNS =
  /\b(?:smok(?:e|es|ed|ing|y)|smoulder\w*|smolder\w*|fum(?:es|ing)|melt(?:s|ed|ing)?|on fire|caught fire|sizzl\w+|(?:smells?|stinks?|reeks?)(?: of)?(?: \w+)? burn\w*|burn(?:ing|t) (?:smell|plastic)|burn(?:t|ed|s|ing)? (?:a )?holes?|raucht?|rauchen|qualm\w*|brennt|schmilzt|schmort|humo|humea|quema(?:ndo)?|arde|derrite|fuma|fumo|brucia|fonde|sciolt\w*|fumee|brule|fond|crame|rook|rookt|brandt|smelt|smeult|dym\w*|pali sie|topi sie|fumaca|queima\w*|arde|derrete\w*)\b/u;
/** Something else that burns. */
const OF_CURRENT =
  /\b(?:boards?|motors?|adapt[eo]rs?|dongles?|suppl(?:y|ies)|power|plugs?|leads?|cables?|wires?|batter(?:y|ies)|electronics?|chips?|usb|fuses?|hand ?sets?|laptop|charger|dew|heater|camp ?fire|bbq|barbecue|chimney|wild ?fires?|bonfire|forest)\b/u;

/** Leave to do it is asked for, or how: that is answered by whether one may. */
const ASKS_LEAVE =
  /^(?:(?:so|and|ok|okay|hi|hey|please|well) )*(?:can|may|could|should|shall|might|is|are|am|how|when|where|what|whats|which|why|would|will|does|do|did|if|must|darf|kann|puedo|posso|puis|mag|kan|moge|mozna|wie|como|come|comment|hoe|jak)\b/u;
const NOW =
  /\b(?:help|hilfe|ayuda|aiuto|aide|au secours|socorro|pomocy|oops|oh no|omg|shit|damn|emergency|quick(?:ly)?|urgent\w*|accident\w*|(?:by )?mistake|just now|right now|suddenly|what do i do|what now|what to do|what should i do|before i could)\b/u;
const FIELD = '(?:view|fov|field(?: of view)?|frame|picture|image|shot|screen|sensor|live ?view)';
/** "The sun is in my finder", "sun in view", "die Sonne ist im Sucher". */
const IN_IT = new RegExp(
  `(?:${ANY_SUN.source})(?: (?:is|s|has|got|came|come|comes|went|drifted|moved|now|right|straight|shining|shines|shone|just|ist|scheint|esta|e|est|dans|da|is er|jest|still|already|there))* (?:in|into|inside|through|dentro|nel|nella|dans|no|na|en|im|ins|durchs?|w) ?(?:(?:the|my|our|a|his|her|their|its|el|la|le|il|lo|o|de|het|mijn|mi|mio|mon|den|dem|das) )*(?:\\w+ )?(?:${FIELD}|${TUBE.source}|${CAMERA.source}|${AN_OPTIC.source})`,
  'u',
);
const WITHIN = /\b(?:dentro|drin|darin|dedans|erin|w srodku|inside it|in it)\b/u;
const MOVER =
  '(?:mount|scope|telescope|tube|ota|it|goto|go to|dob|slew|finder|camera|montierung|teleskop|telescopio|montura|montatura|monture|montering|telescoop|montaz)';
const WENT =
  '(?:went|swept|slewed|passed|swung|moved|drove|ran|drifted|crossed|pointed|stopped|landed|ended up|(?:is|was|s) (?:now |still )?(?:pointing|pointed|aimed|aiming|looking|stuck))';
/** "Mount went past sun", "scope is pointing at the sun". */
const OVER_IT = new RegExp(
  `\\b${MOVER}(?: (?:has|have|had|just|accidentally|suddenly|now))* ${WENT}(?: (?:right|straight|directly|back|itself))* (?:past|over|across|through|at|on|onto|into|by|near|towards?) (?:the )?sun\\b(?! (?:deck|room|terrace|side|shade))|\\bswept (?:over|across|past) the sun\\b`,
  'u',
);
/** With what is proper, or not yet. */
const IS_GUARDED =
  /\b(?:with (?:the |a |my )?(?:solar |sun |front )*(?:filter|film)|filter (?:is |was )?on|filtered|caps? (?:is |was |were |are )?(?:still )?on|through (?:the |a |my )?(?:solar )?filter|tomorrow|will|would|going to|plan\w*|next (?:week|month|year))\b/u;

/** @param plain folded, see plainHarm */
export const isSunNow = (plain: string, isSunUp: boolean): boolean => {
  const isSun = ANY_SUN.test(plain);
  if (BURNS.test(plain) && !OF_CURRENT.test(plain) && !/\bsmoked? (?:glass|film)\b/u.test(plain)) {
    if (AN_OPTIC.test(plain) || (isSun && (TUBE.test(plain) || WITHIN.test(plain)))) return true;
    if (isSunUp && TUBE.test(plain)) return true;
  }
  if (!isSun || IS_GUARDED.test(plain) || (ASKS_LEAVE.test(plain) && !NOW.test(plain))) return false;
  return OVER_IT.test(plain) || (IN_IT.test(plain) && (NOW.test(plain) || /^(?:the )?sun\b/u.test(plain)));
};
