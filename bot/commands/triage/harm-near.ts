/** What hurts people or gear, told or asked of in passing: said before all else, whatever is in hand. Common practice, no source. */
import { cautionText } from '../../cautions/cautions.js';
import { sunHarm } from '../asking/sentence/sun-harm.js';

interface Harm {
  readonly words: RegExp;
  /** It is none then. */
  readonly unless?: RegExp;
  readonly says: string;
}

const GEAR =
  'plugs?|sockets?|contacts?|connectors?|adapter|charger|brick|board|box|battery|supply|psu|mount|lead|cable|power';

/** The most urgent first; only one is said. */
const HARMS: readonly Harm[] = [
  {
    words:
      /\bsmok(?:e|es|ed|ing)\b|\bsmell\w*\b.{0,20}\b(?:burn\w*|hot|electric\w*|plastic|fishy)\b|\b(?:burn\w*|burnt)\b.{0,12}\b(?:smell\w*|plastic)\b|\b(?:is|was|it['’]?s|something) (?:burning|burnt|glowing|melting)\b|\bspark(?:s|ed|ing)?\b|\bmelted\b|\b(?:swollen|bulging|hissing)\b.{0,20}\b(?:battery|pack|tank|cell)\b|\b(?:battery|pack|tank|cell)\b.{0,20}\b(?:swollen|bulging|hissing)\b/iu,
    unless:
      /\b(?:no|not|never|without|nor)\b[^.!?]{0,16}\b(?:smok|smell|burn|spark)|\bsmoked (?:glass|filter)|\bsmoke (?:from|of) (?:a |the )?(?:fire|bonfire|barbecue|chimney)/iu,
    says: 'Stop: take the power off now, at the wall or at the battery, if that is safe, and touch nothing hot. It stays off: do not try it again to see. A board that smoked or smelt burnt is for its maker or an electronics workshop; a swollen or hot battery goes outdoors, away from all that burns.',
  },
  {
    words:
      /\b(?:swapped|reversed?|mixed up|crossed|wrong way (?:a?round)|back to front|backwards)\b.{0,40}\b(?:plus|minus|polarity|positive|negative|red and black|black and red|\+ ?(?:and|\/|&) ?-)|\b(?:plus|minus|polarity|positive|negative|red and black)\b.{0,40}\b(?:swapped|revers\w*|mixed up|crossed|wrong way|back to front|the wrong)\b/iu,
    unless: /\b(?:not|never|n['’]t|no)\b[^.!?]{0,16}\b(?:swapped|revers|mixed|crossed|wrong)|\?/iu,
    says: 'Take that supply off at once and leave it off. The wrong way round, plus and minus can kill a board in a moment. Measure the plug with a meter against the mark on the mount (mostly plus inside), look at the fuse, and if it stays dark or smells, have the board looked at before it gets power again.',
  },
  {
    words: new RegExp(
      String.raw`\b(?:1[6-9]|2\d|3[0-6]|48)(?:[.,]\d+)? ?(?:v|volts?)\b.{0,80}\b(?:${GEAR}|laptop|12 ?(?:v|volts?))\b|\b(?:${GEAR}|laptop|12 ?(?:v|volts?))\b.{0,80}\b(?:1[6-9]|2\d|3[0-6]|48)(?:[.,]\d+)? ?(?:v|volts?)\b`,
      'iu',
    ),
    unless:
      /\b(?:label|sheet|manual|plate|mount) (?:says?|wants?|needs?|is for|takes?) (?:1[6-9]|2\d|3[0-6]|48)\b|\b0 ?(?:to|-) ?(?:1[6-9]|2\d)/iu,
    says: 'If more volts are in than the mount’s own label says, unplug it now. Most mounts take 12 V (some 15 at the most); a laptop’s 19 V or a 24 V supply can kill the board. Use the volts on the label, at least its amps, plus and minus as drawn there. If it had the higher one and stays dark, do not try again: have the board looked at.',
  },
  {
    words:
      /\bfuse\b.{0,80}\b(?:bigger|larger|stronger|higher|more amps?|next size|another size|foil|wire|nail|bridge|bypass|without|leave out)\b|\b(?:bigger|larger|stronger|higher|foil|wire|nail|bridge|bypass|without)\b.{0,80}\bfuse\b/iu,
    says: 'No. Never a bigger fuse, nor foil or wire in its place: it guards the lead, which else burns. A second one that goes tells of a short: take the supply off, and look for damp, bent pins and a crushed lead before the next.',
  },
  {
    words: new RegExp(
      String.raw`\b(?:wet|damp|dripping|soaked|moist)\b.{0,80}\b(?:${GEAR})\b|\b(?:${GEAR})\b.{0,80}\b(?:wet|damp|dripping|soaked|moist)\b`,
      'iu',
    ),
    // Grass is wet most nights.
    unless:
      /\b(?:not|never|isn['’]?t|aren['’]?t|nothing|neither|no)\b[^.!?]{0,14}\b(?:wet|damp|moist)\b|\b(?:grass|ground|lawn|air|night|field|weather|towel|cloth)\b[^.!?]{0,14}\b(?:wet|damp|moist)|\b(?:wet|damp|moist) (?:grass|ground|lawn|air|night|field|weather|cloth)\b/iu,
    says: 'What is wet stays off: take the supply away at its dry end, mains first at the wall, let plugs and sockets dry for a day in a warm room, and clean green or black contacts before they are joined again.',
  },
];

/** A paste of many lines holds such words by chance. */
const LONGEST = 700;
const MOST_LINES = 6;

/** @returns what is to be said of the harm that the words come near; null where they come near none */
export const harmNear = (text: string): string | null => {
  const said = text.trim();
  if (said.length > LONGEST || said.split('\n').length > MOST_LINES) return null;
  return HARMS.find(({ words, unless }) => words.test(said) && unless?.test(said) !== true)?.says ?? null;
};

/** A line, and no account. */
const LONGEST_LINE = 300;

/** @returns the caution of the Sun, where a line that a walk was given outright (in a form) comes near it; null elsewhere */
export const sunHarmNear = (text: string): string | null => {
  const caution = text.length > LONGEST_LINE ? null : sunHarm(text, false);
  return caution === null ? null : cautionText(caution);
};
