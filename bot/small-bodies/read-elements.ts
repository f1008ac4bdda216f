/** Reads orbital elements as the Minor Planet Center publishes them: one line a comet, or one line a minor planet. */
import { MS_PER_DAY } from '../ground/durations.js';
import type { OrbitalElements } from '../sky/types.js';

/** A comet or a minor planet of a list. */
export interface SmallBody {
  readonly kind: 'comet' | 'minor-planet';
  /** As the list names it: "C/2023 A3 (Tsuchinshan-ATLAS)", "1P/Halley", "Ceres". */
  readonly name: string;
  /** Other ways to write it: "C/2023 A3", "Tsuchinshan-ATLAS", "(1) Ceres". */
  readonly aliases: readonly string[];
  readonly elements: OrbitalElements;
}

export interface ElementsRead {
  readonly bodies: readonly SmallBody[];
  /** Lines that are neither (headers, other formats), and orbits that make no sense. */
  readonly skippedLines: number;
}

/** Lists of tens of thousands of lines are cut here: a club's list holds what its members can see. */
export const MOST_BODIES = 20_000;

const GAUSS_DEG_PER_DAY = 0.985_607_668_6;
const J2000_JD = 2_451_545;

/** Days of TT since J2000.0 of a Gregorian date; the day may carry a fraction. */
const ttDaysOf = (year: number, month: number, day: number): number =>
  Date.UTC(year, month - 1, 1) / MS_PER_DAY + (day - 1) + 2_440_587.5 - J2000_JD;

/** A fixed-width field by the columns its description counts (from 1, both ends included). */
const field = (line: string, from: number, to: number): string => line.slice(from - 1, to).trim();
const numberIn = (line: string, from: number, to: number): number => {
  const text = field(line, from, to);
  return text === '' ? NaN : Number(text);
};

/** A digit of the packed form: 0-9, A = 10 …, V = 31. */
const packedDigit = (letter: string): number => parseInt(letter, 36);

const isSound = (e: OrbitalElements): boolean =>
  [e.perihelionTtDays, e.inclinationDeg, e.ascendingNodeDeg, e.perihelionArgumentDeg].every(Number.isFinite) &&
  e.perihelionDistanceAu > 0 &&
  e.perihelionDistanceAu < 1000 &&
  e.eccentricity >= 0 &&
  e.eccentricity < 20;

const law = (kind: 'comet' | 'minor-planet', absolute: number, slope: number): OrbitalElements['magnitude'] =>
  Number.isFinite(absolute) && Number.isFinite(slope) ? { law: kind, absolute, slope } : null;

/** "C/2023 A3 (Tsuchinshan-ATLAS)" → the designation and the discoverers apart; "12P/Pons-Brooks" → "12P" and "Pons-Brooks". */
const cometAliases = (name: string): readonly string[] => {
  const named = /^(.+?) \((.+)\)$/.exec(name);
  if (named) return [named[1] ?? '', named[2] ?? ''];
  const numbered = /^(\d+[PDI])\/(.+)$/.exec(name);
  return numbered ? [numbered[1] ?? '', numbered[2] ?? ''] : [];
};

/** Columns by "Format for orbital elements of comets" of the Minor Planet Center. */
const readComet = (line: string): SmallBody | null => {
  const year = numberIn(line, 15, 18);
  const month = numberIn(line, 20, 21);
  const day = numberIn(line, 23, 29);
  const name = field(line, 103, 158);
  if (!(year > 1000 && month >= 1 && month <= 12 && day >= 0) || name === '') return null;
  const epoch = field(line, 82, 89);
  const elements: OrbitalElements = {
    perihelionTtDays: ttDaysOf(year, month, day),
    perihelionDistanceAu: numberIn(line, 31, 39),
    eccentricity: numberIn(line, 42, 49),
    perihelionArgumentDeg: numberIn(line, 52, 59),
    ascendingNodeDeg: numberIn(line, 62, 69),
    inclinationDeg: numberIn(line, 72, 79),
    epochTtDays: /^\d{8}$/.test(epoch)
      ? ttDaysOf(Number(epoch.slice(0, 4)), Number(epoch.slice(4, 6)), Number(epoch.slice(6)))
      : null,
    magnitude: law('comet', numberIn(line, 92, 95), numberIn(line, 97, 100)),
  };
  return isSound(elements) ? { kind: 'comet', name, aliases: cometAliases(name), elements } : null;
};

/** Columns by "Export format for minor-planet orbits" of the Minor Planet Center. */
const readMinorPlanet = (line: string): SmallBody | null => {
  const packedEpoch = /^([IJK])(\d\d)([1-9A-C])([1-9A-V])$/.exec(field(line, 21, 25));
  const readable = field(line, 167, 194) || field(line, 1, 7);
  if (!packedEpoch) return null;
  const [, century = '', years = '', month = '', day = ''] = packedEpoch;
  const epochTtDays = ttDaysOf(packedDigit(century) * 100 + Number(years), packedDigit(month), packedDigit(day));
  const semimajorAxisAu = numberIn(line, 93, 103);
  const eccentricity = numberIn(line, 71, 79);
  const meanAnomalyDeg = numberIn(line, 27, 35);
  const degreesPerDay = GAUSS_DEG_PER_DAY / semimajorAxisAu ** 1.5;
  const elements: OrbitalElements = {
    perihelionTtDays: epochTtDays - meanAnomalyDeg / degreesPerDay,
    perihelionDistanceAu: semimajorAxisAu * (1 - eccentricity),
    eccentricity,
    perihelionArgumentDeg: numberIn(line, 38, 46),
    ascendingNodeDeg: numberIn(line, 49, 57),
    inclinationDeg: numberIn(line, 60, 68),
    epochTtDays,
    magnitude: law('minor-planet', numberIn(line, 9, 13), numberIn(line, 15, 19)),
  };
  if (!isSound(elements) || eccentricity >= 1) return null;
  const named = /^\((\d+)\) (.+)$/.exec(readable);
  return named
    ? { kind: 'minor-planet', name: named[2] ?? readable, aliases: [readable, `${named[1]} ${named[2]}`], elements }
    : { kind: 'minor-planet', name: readable.replace(/^\((\d+)\)$/, '($1)'), aliases: [], elements };
};

/** Reads a list; never throws. The two formats may be mixed. */
export const readElements = (text: string): ElementsRead => {
  const bodies: SmallBody[] = [];
  let skippedLines = 0;
  for (const line of text.split(/\r?\n/)) {
    if (line.trim() === '' || line.startsWith('#')) continue;
    const body = bodies.length >= MOST_BODIES ? null : (readMinorPlanet(line) ?? readComet(line));
    if (body === null) skippedLines += 1;
    else bodies.push(body);
  }
  return { bodies, skippedLines };
};
