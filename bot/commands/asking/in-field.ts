/** Whether one object of known size, or two fixed ones together, fit a field of so many degrees. */
import { isNamed, resolveTarget, type Catalogue, type Target } from '../../catalogue/index.js';
import { isProblem } from '../../ground/problem.js';
import { separationDeg } from '../../sky/angles.js';
import type { FixedBody } from '../../sky/types.js';
import { runsOf, sentenceOf, take } from './sentence/words.js';

const LONGEST_NAME = 3;
const FITS = /\b(?:fit|fits|whole|all of|too big|too large)\b/u;
const TOGETHER = /\b(?:(?:same|one|single) (?:field|view|fov)|both|together|(?:fit|fits)\b.*\band)\b/u;

const targetsIn = (catalogue: Catalogue, plain: string): readonly Target[] => {
  const sentence = sentenceOf(plain);
  const found: Target[] = [];
  for (const run of runsOf(sentence, LONGEST_NAME)) {
    if (sentence.taken.slice(run.at, run.at + run.count).some((used) => used)) continue;
    const resolved = resolveTarget(catalogue, run.plain);
    if (isProblem(resolved) || !isNamed(resolved) || resolved.isSlip === true) continue;
    take(sentence, run);
    found.push(resolved.target);
  }
  return found;
};

const sizeDegOf = ({ sizeArcmin }: Target): number => (sizeArcmin ?? 0) / 60;
const tenths = (deg: number): string => String(Number(deg.toFixed(1)));

const placeOf = ({ raHoursJ2000, decDegJ2000 }: FixedBody) => ({ raHours: raHoursJ2000, decDeg: decDegJ2000 });

/** Both whole: from the far edge of the one to that of the other. */
const pairWords = (one: Target, other: Target, fieldDeg: number): string | null => {
  if (one.body.kind !== 'fixed' || other.body.kind !== 'fixed') return null;
  const apartDeg = separationDeg(placeOf(one.body), placeOf(other.body));
  const acrossDeg = apartDeg + (sizeDegOf(one) + sizeDegOf(other)) / 2;
  const apart = `${one.name} and ${other.name} are ${tenths(apartDeg)}° apart`;
  if (acrossDeg <= fieldDeg) return `Yes: ${apart}.`;
  return apartDeg <= fieldDeg ? `Just: ${apart}, ${tenths(acrossDeg)}° with their edges.` : `No: ${apart}.`;
};

/** "Yes: M 42 is 1.4° long.", with a space behind; '' where nothing of it is asked. */
export const inFieldWords = (plain: string, catalogue: Catalogue, fieldDeg: number): string => {
  const isOfTwo = TOGETHER.test(plain);
  if (!isOfTwo && !FITS.test(plain)) return '';
  const targets = targetsIn(catalogue, plain);
  const [one, other] = targets;
  const pair = isOfTwo && one !== undefined && other !== undefined ? pairWords(one, other, fieldDeg) : null;
  if (pair !== null) return `${pair} `;
  const sized = targets.find(({ sizeArcmin }) => sizeArcmin !== null);
  if (sized === undefined) return '';
  const long = `${sized.name} is ${tenths(sizeDegOf(sized))}° long`;
  return sizeDegOf(sized) <= fieldDeg
    ? `Yes: ${long}. `
    : `No: ${long}, ${tenths(sizeDegOf(sized) / fieldDeg)} times the field. `;
};
