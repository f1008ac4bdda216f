/** An eye that is not well after a look, or a look that happened: told without the Sun's name, or in other tongues (from memory). */

export const EYE =
  '(?:eyes?|eyesight|sight|vision|auge\\w*|ojos?|yeux|oeil|occhi\\w*|nellocchio|oog|ogen|oczy|oko|olhos?)';
export const SYMPTOM =
  '(?:spots?|blobs?|dots?|patch(?:es)?|smudges?|blurr?\\w*|hurts?|hurting|sore|ach(?:e|es|ing)|burn(?:s|ing|t)?|after-? ?images?|blind|duele\\w*|dolor|fleck\\w*|manchas?|taches?|macchi[ae]|punt(?:o|ino|ini) ner[oi]|weh|bruciano?|vlek\\w*|pijn|bol[ia]\\w*|doi|doem)';
/** What was looked through, or when: without one of these an eye may be tired. */
const OCCASION =
  '(?:scopes?|telescopes?|dob\\w*|finders?|binos?|binoculars?|eyepiece|camera|sun|bright (?:thing|one|light)|glare|midday|noon|lunch\\w*|afternoon|daylight|morning|teleskop\\w*|telescop\\w*|fernrohr\\w*|fernglas\\w*|sucher\\w*|buscador\\w*|chercheur\\w*|cercatore|jumelles|binocol\\w*|prismatic\\w*|mediodia|mittag\\w*|midi|mezzogiorno|swung|swept|slewed|looking|looked)';
const NOT_OF_EYES =
  /\b(?:sun ?spots?|spots? on (?:the )?(?:sun|mirror|lens|sensor|chip|image|picture|glass)|red spot|blind spot of|eye relief|for (?:the )?naked eye|tired|floaters?)\b/u;

const UNWELL = new RegExp(`\\b${EYE}\\b.*\\b${SYMPTOM}\\b|\\b${SYMPTOM}\\b.*\\b${EYE}\\b`, 'u');
const AT_IT = new RegExp(`\\b${OCCASION}\\b`, 'u');
/** "I see a blob after looking through the scope". */
const SEES_SINCE = new RegExp(
  `\\b(?:see|sees|seeing|saw|got|have|has) (?:a |an |some )?(?:\\w+ )?(?:spot|blob|dot|patch|smudge|after-? ?image)s?\\b(?! on\\b).*\\b(?:after|since)\\b.*\\b${OCCASION}\\b|\\b(?:after|since)\\b.*\\b${OCCASION}\\b.*\\b(?:see|sees|seeing) (?:a |an |some )?(?:\\w+ )?(?:spot|blob|dot|patch|smudge)s?\\b(?! on\\b)`,
  'u',
);
const SUN = '(?:sun|sonne|sol|soleil|sole|zon|slonce)';
const DOCTOR = new RegExp(
  `\\b(?:doctor|optician|optometrist|hospital|a ?(?:&|and) ?e|emergency)\\b.*\\b(?:${SUN}|swept|swung)\\b|\\b(?:${SUN}|swept|swung)\\b.*\\b(?:doctor|optician|optometrist|hospital|a ?(?:&|and) ?e|emergency room)\\b`,
  'u',
);
/** It was done, and not meant. */
const BY_ACCIDENT =
  /\b(?:by accident|accident\w*|by mistake|mistakenly|without (?:thinking|meaning)|aus versehen|versehentlich|sin querer|par (?:accident|erreur|megarde)|per (?:sbaglio|errore)|per ongeluk)\b/u;
const LOOKED =
  /\b(?:look(?:ed)?|peek(?:ed)?|peer(?:ed)?|glanced|saw|seen|eye to|geschaut|geguckt|gesehen|geblickt|mire|mirado|regarde|guardato|gekeken|olhei)\b/u;
const LOOKED_INTO_SUN = new RegExp(
  `\\b(?:geschaut|geguckt|gesehen|geblickt)\\b.*\\b(?:sonne)\\b|\\bin die sonne\\b.*\\b(?:geschaut|geguckt|gesehen|geblickt)\\b`,
  'u',
);

const THE_SUN = new RegExp(`\\b${SUN}\\b`, 'u');

/** @param plain in lower case, accents folded */
export const isEyeHurt = (plain: string): boolean => {
  if (NOT_OF_EYES.test(plain)) return false;
  if (UNWELL.test(plain) && AT_IT.test(plain)) return true;
  if (SEES_SINCE.test(plain) || DOCTOR.test(plain) || LOOKED_INTO_SUN.test(plain)) return true;
  return BY_ACCIDENT.test(plain) && LOOKED.test(plain) && THE_SUN.test(plain);
};
