/**
 * Readings of a meter. At rest and while the motors run ("12.3 at rest, 10.9 when it slews"), two say together whether the supply holds, which
 * neither says alone; at the battery and at the mount, how much the lead between them loses; and while the motors run a low one speaks for itself.
 */
import type { ReadFact, Reading } from '../../reading/index.js';
import { quotedFrom, withFact, withoutGuesses } from './with-fact.js';

/** Volts about a 12 V supply; no amperes, lengths, minutes, degrees or shares. */
const VOLTS =
  /(?<![\d.,:/])(\d{1,2}(?:[.,]\d{1,2})?)(?= ?v(?:olts?)?\b|(?! ?(?:a|ma|amps?|ampere|ah|m|cm|mm|ft|metres?|meters?|min\w*|sec\w*|s|h|hours?|deg\w*|bit|x|w|watts?)\b)(?![\d:/%\u00b0]|[.,]\d))/giu;
const AT_WORK =
  /\b(?:slew\w*|gotos?|go to|go-to|motors?|both axes|moving|moves?|under load|loaded|while it runs|when it runs|running|arrow\w*)\b/iu;
const AT_REST =
  /\b(?:rest\w*|idle|idling|still|stand\w*|quiet|unloaded|no load|not moving|parked|otherwise|at first)\b/iu;
const FALLS = /\b(?:from|falls?|drops?|dips?|sags?|goes|down|sinks?|then|stays?|to|but|only|reach\w*)\b/iu;
const OF_VOLTS = /\b(?:v|volts?|voltage|meter|multimeter|reads?|measured?|battery|supply)\b|\d ?v\b|\d[.,]\d/iu;

const LEAST_VOLTS = 7;
const MOST_VOLTS = 15.5;
/** A supply that gives way so far under the motors, or so low, does not hold; common practice, no source. */
const SAG_VOLTS = 0.7;
const TOO_LOW_VOLTS = 11.5;
const WELL_ABOVE_VOLTS = 11.9;

interface Volts {
  readonly rest: number;
  readonly work: number;
}

const voltsIn = (text: string): readonly number[] =>
  [...text.matchAll(VOLTS)]
    .map(([, said = '']) => Number(said.replace(',', '.')))
    .filter((volts) => volts >= LEAST_VOLTS && volts <= MOST_VOLTS);

/** Under load it is never more than at rest, so the order does not matter. */
const voltsNamed = (text: string): Volts | null => {
  if (!AT_WORK.test(text) || !OF_VOLTS.test(text) || !(AT_REST.test(text) || FALLS.test(text))) return null;
  const [first, second, third] = voltsIn(text);
  if (first === undefined || second === undefined || third !== undefined) return null;
  return { rest: Math.max(first, second), work: Math.min(first, second) };
};

const AT_SOURCE = /\b(?:batt(?:ery)?|accu|posts?|terminals?|supply|psu|brick|power ?(?:tank|station|pack)|source)\b/iu;
const AT_MOUNT = /\b(?:mount|plug|socket|scope|telescope|(?:far|other|mount) end|handset|hand controller|panel)\b/iu;

/** "12.4 at the battery, 10.4 at the mount", both in the same moment. */
const lostBetween = (text: string): Volts | null => {
  if (AT_WORK.test(text) && AT_REST.test(text)) return null;
  const pieces = text.split(/[,;.](?!\d)|\b(?:but|and|while|yet|though)\b/iu);
  const at = (where: RegExp, not: RegExp): number | undefined => {
    const piece = pieces.find((one) => where.test(one) && !not.test(one) && voltsIn(one).length === 1);
    return piece === undefined ? undefined : voltsIn(piece)[0];
  };
  const [source, mount] = [at(AT_SOURCE, AT_MOUNT), at(AT_MOUNT, AT_SOURCE)];
  if (source === undefined || mount === undefined || source < WELL_ABOVE_VOLTS || source - mount < SAG_VOLTS)
    return null;
  return AT_WORK.test(text) && !AT_WORK.test(pieces.find((one) => AT_SOURCE.test(one)) ?? '')
    ? null
    : { rest: source, work: mount };
};

/** "It drops to 9.8 during a slew": that alone is too little. */
const lowAtWork = (text: string): number | null => {
  const [only, second] = voltsIn(text);
  const isLow = only !== undefined && second === undefined && only < TOO_LOW_VOLTS;
  return isLow && AT_WORK.test(text) && OF_VOLTS.test(text) && /\d[.,]\d|\d ?v\b|meter/iu.test(text) ? only : null;
};

const [BATTERY, LIGHT, LEAD] = ['battery-volts', 'power-light', 'power-lead'];
const SURE = 0.88;
/** What the readings tell of the supply, and the moment they were taken at, which is no moment at which it fails. */
const REPLACED: ReadonlySet<string> = new Set([BATTERY, LIGHT, LEAD, 'when-drops', 'power-walk']);

export const VOLTS_NAMED = 'volts-named';

interface Told {
  readonly fact: Pick<ReadFact, 'what' | 'answer'>;
  readonly label: string;
}

const toldOf = (text: string): Told | null => {
  const lost = lostBetween(text);
  if (lost !== null)
    return {
      fact: { what: LEAD, answer: 'thin' },
      label: `${lost.rest} V at one end and ${lost.work} V at the mount: the lead or a plug between loses it`,
    };
  const volts = voltsNamed(text);
  const low = volts === null ? lowAtWork(text) : null;
  if (low !== null)
    return {
      fact: AT_SOURCE.test(text) ? { what: BATTERY, answer: 'low' } : { what: LIGHT, answer: 'dips' },
      label: `it falls to ${low} V when the motors run`,
    };
  if (volts === null) return null;
  const { rest, work } = volts;
  if (rest - work >= SAG_VOLTS || work < TOO_LOW_VOLTS)
    return { fact: { what: LIGHT, answer: 'dips' }, label: `it falls from ${rest} to ${work} V when the motors run` };
  if (work < WELL_ABOVE_VOLTS) return null;
  return { fact: { what: BATTERY, answer: 'full' }, label: `it holds ${work} V when the motors run` };
};

/** Adds what such readings tell, in place of what one of them alone was taken for. */
export const withVoltsCompared = (read: Reading, text: string): Reading => {
  const found = toldOf(text);
  if (found === null) return read;
  const fact: ReadFact = { ...found.fact, sureness: SURE, quote: quotedFrom(text), by: 'words' };
  const isReplaced = (what: string): boolean => REPLACED.has(what);
  const told = withoutGuesses(withFact(read, { fact, label: found.label }, isReplaced), isReplaced);
  return { ...told, met: [...told.met, VOLTS_NAMED] };
};
