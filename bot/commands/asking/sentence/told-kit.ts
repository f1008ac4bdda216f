/** What one observes with, told beside where one is: "got a 130 mm tube", "avec un 114/900", "und habe einen 8 Zoll Dobson". Pure; from memory. */

/** A telescope, binoculars or a mount is named, by its size or by its kind. */
const NAMES_KIT =
  /(?<![\d./])\d{1,2}(?:\.\d)? ?-?(?:inch(?:es)?|in|zoll|pulgadas|pouces|pollici|cali|polegadas)\b|(?<![\d./])\d{1,2} ?["″]|(?<![\d./])\d{2,3} ?(?:mm|p)\b|(?<![\d./])\d{2,3}\/\d{3,4}\b|\b\d{1,2} ?x ?\d{2}\b|\b(?:tele?s[ck]op\w*|scopes?|tube|dob\w*|newt\w*|refra[ck]t\w*|lunette|refle[ck]t\w*|mak\w*|sct|bino\w*|prism[aá]ticos|fernglas|feldstecher|jumelles|apo|goto|mount|tracker|montierung|montura|monture|montatura)\b/iu;
/** Something is asked, or fails: that is for others to read. */
const MORE =
  /\?|n['’]t\b|\b(?:what|when|where|which|how|why|who|can|could|should|would|not|no|error|fault|problems?|trouble|stuck|lost|wrong|fail\w*|connect\w*|drift\w*|slew\w*|show|tell|want|need|looking|tonight|remind\w*|see|wont|doesnt|cant|was|wie|wann|wo|kann|que|cuando|donde|puedo|quoi|quand|comment|cosa|come|quando|dove)\b/iu;

/** Nothing but what one observes with. */
export const isToldKit = (rest: string): boolean => rest.length < 90 && NAMES_KIT.test(rest) && !MORE.test(rest);

const MM = /(?<![\d./])(\d{2,3}) ?(?:mm|p)\b|(?<![\d./])(\d{2,3})\/\d{3,4}\b|\bnewt\w* (\d{2,3})\b/iu;
const INCHES =
  /(?<![\d./])(\d{1,2}(?:\.\d)?) ?-?(?:(?:inch(?:es)?|in|zoll|pulgadas|pouces|pollici|cali|polegadas)\b|["″])/iu;
const BINOCULARS = /\b\d{1,2} ?x ?\d{2}\b|\b(?:bino\w*|prism[aá]ticos|fernglas|feldstecher|jumelles)\b/iu;
const MOST_MM = 500;
const LEAST_MM = 30;

/** As `with:` takes it; null where no size is told. */
export const kitToldIn = (rest: string): string | null => {
  const found = MM.exec(rest);
  const mm = Number(found?.[1] ?? found?.[2] ?? found?.[3] ?? 0);
  if (mm >= LEAST_MM && mm <= MOST_MM) return `${mm} mm`;
  const inches = INCHES.exec(rest)?.[1];
  if (inches !== undefined) return `${inches} inch`;
  return BINOCULARS.test(rest) ? 'binoculars' : null;
};
