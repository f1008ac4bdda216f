/**
 * Two readings of a meter, at rest and while the motors run ("12.3 at rest, 10.9 when it slews"): together they say whether the supply
 * holds, which neither says alone.
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

/** Under load it is never more than at rest, so the order does not matter. */
const voltsNamed = (text: string): Volts | null => {
  if (!AT_WORK.test(text) || !OF_VOLTS.test(text) || !(AT_REST.test(text) || FALLS.test(text))) return null;
  const found = [...text.matchAll(VOLTS)]
    .map(([, said = '']) => Number(said.replace(',', '.')))
    .filter((volts) => volts >= LEAST_VOLTS && volts <= MOST_VOLTS);
  const [first, second, third] = found;
  if (first === undefined || second === undefined || third !== undefined) return null;
  return { rest: Math.max(first, second), work: Math.min(first, second) };
};

const BATTERY = 'battery-volts';
const SURE = 0.88;
/** What the readings tell of the supply, and the moment they were taken at, which is no moment at which it fails. */
const REPLACED: ReadonlySet<string> = new Set([BATTERY, 'power-light', 'when-drops']);

export const VOLTS_NAMED = 'volts-named';

/** Adds what two such readings tell, in place of what one of them alone was taken for. */
export const withVoltsCompared = (read: Reading, text: string): Reading => {
  const volts = voltsNamed(text);
  if (volts === null) return read;
  const { rest, work } = volts;
  const sags = rest - work >= SAG_VOLTS || work < TOO_LOW_VOLTS;
  if (!sags && work < WELL_ABOVE_VOLTS) return read;
  const fact: ReadFact = {
    ...(sags ? { what: 'power-light', answer: 'dips' } : { what: BATTERY, answer: 'full' }),
    sureness: SURE,
    quote: quotedFrom(text),
    by: 'words',
  };
  const label = sags
    ? `it falls from ${rest} to ${work} V when the motors run`
    : `it holds ${work} V when the motors run`;
  const isReplaced = (what: string): boolean => REPLACED.has(what);
  const told = withoutGuesses(withFact(read, { fact, label }, isReplaced), isReplaced);
  return { ...told, met: [...told.met, VOLTS_NAMED] };
};
